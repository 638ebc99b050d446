package panel

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/drawing"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
)

// bytesOf are those that the stage is shown of a page.
func bytesOf(s Sight) (out [2][]byte) {
	var k drawing.Packer
	for i, d := range []*drawing.Drawing{s.Drawing, s.Over} {
		if d != nil {
			out[i] = k.Append(nil, d)
		}
	}
	return out
}

// What the stage is shown step by step of a drag, while it comes and goes, is what it
// would be shown of a page made from nothing, which is the page too; and a drawing is
// another one exactly where its number is.
func TestSightIsThatOfThePageFromNothing(t *testing.T) {
	carried := 0
	rapid.Check(t, func(t *rapid.T) {
		s := dragJob(t)
		var p Painter
		var last Sight
		var were [2][]byte
		look := func() {
			var anew Painter
			require.Equal(t, Write(anew.Page(&s)), Write(p.Page(&s)))
			now := p.Sight()
			is := bytesOf(now)
			require.Equal(t, bytesOf(anew.Sight()), is)
			require.Equal(t, anew.Sight().View, now.View)
			if now.Number == last.Number {
				require.Equal(t, were[0], is[0])
			}
			if now.Over != nil && now.Carried == last.Carried {
				require.Equal(t, were[1], is[1])
			}
			if now.Over != nil {
				carried++
			}
			last, were = now, is
		}
		look()
		x, y := placeOn(t, &s)
		for i := range 6 {
			kind := hand.Motion
			switch i {
			case 0:
				kind = hand.Down
			case 5:
				kind = hand.Up
			}
			if rapid.Bool().Draw(t, "turns") {
				s, _ = app.Step(s, app.Stage{Shown: !s.Painted.Shown})
			}
			s, _ = app.Step(s, app.Pointer{Event: hand.Event{Kind: kind, ID: 1, Type: hand.Mouse, X: x, Y: y, Time: float64(16 * i)}})
			look()
			x, y = x+float64(rapid.IntRange(-60, 60).Draw(t, "dx")), y+float64(rapid.IntRange(-60, 60).Draw(t, "dy"))
		}
	})
	require.Greater(t, carried, 50)
}

// While the stage shows the picture, neither what is carried nor a turn in the round
// writes elements; where it goes they are there.
func TestNothingIsWrittenBehindTheStage(t *testing.T) {
	s := steps(opened(t, "study"), app.Go{Job: app.Arrange}, app.Show{What: app.InTheRound})
	var p Painter
	p.Page(&s)
	before := p.round.world
	s = steps(s, app.Stage{Shown: true}, app.Orbit{X: 30})
	page := p.Page(&s)
	require.Same(t, before[0], p.round.world[0])
	picture, _ := nodeIn(page, "picture")
	names, _ := attrIn(picture, "class")
	require.Contains(t, names, "staged")
	require.NotNil(t, p.Sight().Drawing)
	s = steps(s, app.Stage{Why: "lost"})
	require.Equal(t, Write(Page(&s)), Write(p.Page(&s)))
	s = steps(s, app.Home{})
	p.Page(&s)
	require.Nil(t, p.Sight().Drawing, "the start page has no picture")
}
