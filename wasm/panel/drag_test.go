package panel

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine"
	testjobs "ledgewright/testdata/jobs"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
)

// A page that is made step by step of a drag, from what the steps before have left, is the
// page that is made from nothing: over random plans, strokes and switches.
func TestDragIsThePageFromNothing(t *testing.T) {
	held := 0
	rapid.Check(t, func(t *rapid.T) {
		s := dragJob(t)
		var p Painter
		p.Page(&s)
		ms := 0.0
		for range rapid.IntRange(1, 3).Draw(t, "strokes") {
			x, y := placeOn(t, &s)
			send := func(kind hand.Kind) {
				ms += 16
				s, _ = app.Step(s, app.Pointer{Event: hand.Event{Kind: kind, ID: 1, Type: hand.Mouse, X: x, Y: y, Time: ms}})
				require.Equal(t, Write(Page(&s)), Write(p.Page(&s)))
			}
			send(hand.Down)
			for range rapid.IntRange(1, 5).Draw(t, "moves") {
				x, y = x+float64(rapid.IntRange(-60, 60).Draw(t, "dx")), y+float64(rapid.IntRange(-60, 60).Draw(t, "dy"))
				send(hand.Motion)
				if holding(&s) {
					held++
				}
			}
			send(rapid.SampledFrom([]hand.Kind{hand.Up, hand.Cancel}).Draw(t, "end"))
		}
	})
	require.Greater(t, held, 50, "steps with a module in the hand")
}

// dragJob is a job with an arrangement in view, by day or in the evening.
func dragJob(t *rapid.T) app.State {
	p := testjobs.S()
	for seed := rapid.Uint64Range(0, 1<<40).Draw(t, "seed"); seed%4 > 0; seed++ {
		if p = testjobs.RandomPlan(seed); len(p.Arrangements) > 0 {
			break
		}
		p = testjobs.S()
	}
	s := startPage()
	s.Screen, s.Job, s.Plan, s.Build = app.AtWork, app.Arrange, p, engine.Derive(p, nil)
	s.Arrangement, s.Wall = p.Arrangements[0].ID, p.Arrangements[0].Wall
	s.On = map[app.Switch]bool{app.Evening: rapid.Bool().Draw(t, "evening"), app.Studs: rapid.Bool().Draw(t, "studs"), app.Several: rapid.Bool().Draw(t, "several")}
	return steps(s, app.Fit{})
}

// placeOn is the middle of a board, or a place anywhere in the picture.
func placeOn(t *rapid.T, s *app.State) (x, y float64) {
	placed := resultOf(s.Build, s.Arrangement).Placed
	if len(placed) == 0 || rapid.IntRange(0, 4).Draw(t, "bare") == 0 {
		return rapid.Float64Range(0, s.Size.Width).Draw(t, "x"), rapid.Float64Range(0, s.Size.Height).Draw(t, "y")
	}
	o := rapid.SampledFrom(placed).Draw(t, "module").Outlines
	q := rapid.SampledFrom(o).Draw(t, "board").Points
	return s.Camera.Pixel((q[0].X+q[2].X).MM()/2, (q[0].Y+q[2].Y).MM()/2, s.Size)
}
