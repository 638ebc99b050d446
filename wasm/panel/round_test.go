package panel

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/drawing"
	"ledgewright/engine/view"
	testjobs "ledgewright/testdata/jobs"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
)

// metals counts the faces of brackets in a picture.
func metals(page Node) (n int) {
	world, _ := nodeIn(page, "world")
	for _, k := range world.Kids {
		if c, _ := attrIn(k, "class"); c == "metal" {
			n++
		}
	}
	return n
}

// From behind the brackets are to be seen; from in front, while all is together, nothing of
// them, because they are in the boards.
func TestTheBackShowsBrackets(t *testing.T) {
	s := desk(t, "study", app.Show{What: app.InTheRound})
	back := Page(new(steps(s, app.SeeFrom{Side: view.FromBack})))
	require.GreaterOrEqual(t, metals(back), 8, "a plate or a rod for each bracket")
	world, _ := nodeIn(back, "world")
	for _, k := range world.Kids {
		require.Contains(t, []string{"path", "defs"}, k.Tag)
		require.Empty(t, k.Key, "faces change places")
	}
	front, _ := nodeIn(Page(new(steps(s, app.SeeFrom{Side: view.FromFront}))), "world")
	require.NotEmpty(t, front.Kids)
}

// The picture says what is seen and from where, the slider how far it is pulled apart.
func TestTheRoundIsSaid(t *testing.T) {
	s := desk(t, "study", app.Show{What: app.InTheRound}, app.PullApart{Text: "40"})
	page := Page(&s)
	hand, _ := nodeIn(page, "hand")
	name, _ := attrIn(hand, "aria-label")
	require.True(t, strings.HasPrefix(name, "In the round: 4 modules. Seen from the front left, 20° above. 40 % apart. "), name)
	input, _ := nodeIn(page, "apart")
	for name, want := range map[string]string{"type": "range", "value": "40", "aria-valuetext": "40 % apart", "aria-label": "Pull apart"} {
		is, _ := attrIn(input, name)
		require.Equal(t, want, is)
	}
	tools, _ := nodeIn(page, "tools")
	for _, words := range []string{"Front", "Left", "Right", "Above", "Below", "Back", "Evening", "In the round", "Pull apart", "40 % apart"} {
		require.Contains(t, textIn(tools), words)
	}
	require.NotContains(t, textIn(tools), "Only")

	s = steps(s, app.Choose{Module: "m2"}, app.Show{What: app.Alone})
	page = Page(&s)
	hand, _ = nodeIn(page, "hand")
	name, _ = attrIn(hand, "aria-label")
	require.True(t, strings.HasPrefix(name, "In the round: Box. "), name)
	only, _ := nodeIn(page, "tool-alone")
	require.Equal(t, "Only Box", textIn(only))
}

// Moving the picture draws nothing anew, nor does enlarging it a little: the drawing keeps
// its nodes. While a finger turns it, less is drawn than when it rests.
func TestMovingTheRoundDrawsNothing(t *testing.T) {
	s := desk(t, "study", app.Show{What: app.InTheRound})
	var p Painter
	before, _ := nodeIn(p.Page(&s), "world")
	s = steps(s, app.Pan{X: 0.1}, app.Zoom{By: 1.01})
	after, _ := nodeIn(p.Page(&s), "world")
	require.Same(t, before.Kids[0], after.Kids[0])
	s = steps(s, app.Orbit{X: 15})
	turned, _ := nodeIn(p.Page(&s), "world")
	require.NotSame(t, before.Kids[1], turned.Kids[1])

	s = jobOf(testjobs.S())
	s = steps(s, app.Show{What: app.InTheRound}, finger(hand.Down, 300, 300), finger(hand.Motion, 320, 300))
	drawn := func() int { return len(faceKids(p.Page(&s))) }
	turning := drawn()
	s = steps(s, finger(hand.Up, 320, 300))
	require.Less(t, turning, drawn()*9/10)
}

// A name lies on no other name and on no other module's box, and is wholly in the picture.
func TestNamesHaveRoom(t *testing.T) {
	shown := 0
	for _, name := range assets.Names() {
		s := desk(t, name, app.Show{What: app.InTheRound})
		for i := range 12 {
			s = steps(s, app.Orbit{X: 37, Y: float64(10 - 23*(i%2))})
			var r round
			r.draw(&s)
			c := s.RoundPicture()
			var boxes []drawing.Box
			for _, n := range r.names(&s, c) {
				var x, y float64
				for _, p := range n.Props {
					switch p.Name {
					case "--x":
						x = asNumber(t, p.Value)
					case "--y":
						y = asNumber(t, p.Value)
					}
				}
				px, py := c.Pixel(x, y, s.Size)
				half := letterWide * float64(len(textIn(n))) / 2
				b := drawing.Box{MinX: px - half, MinY: py, MaxX: px + half, MaxY: py + nameHigh}
				require.True(t, b.MinX >= 0 && b.MinY >= 0 && b.MaxX <= s.Size.Width && b.MaxY <= s.Size.Height, "%s %v", name, b)
				require.False(t, onAny(boxes, b), "%s: %s on another name", name, textIn(n))
				boxes = append(boxes, b)
				shown++
			}
		}
	}
	require.Greater(t, shown, 200)
}

// In Make the boards in the round take the place of the list, and give it back.
func TestTheRoundInMake(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make})
	flat := Page(&s)
	_, listed := nodeIn(flat, "boards")
	require.True(t, listed)
	s = steps(s, app.Show{What: app.InTheRound})
	page := Page(&s)
	_, listed = nodeIn(page, "boards")
	require.False(t, listed)
	require.NotZero(t, len(faceKids(page)))
	s = steps(s, app.Show{What: app.InTheRound})
	again := Page(&s)
	a, _ := nodeIn(flat, "wall")
	b, _ := nodeIn(again, "wall")
	require.Equal(t, a, b)
}

func faceKids(page Node) []Node {
	world, _ := nodeIn(page, "world")
	return world.Kids
}
