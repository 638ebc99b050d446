package app

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/view"
	"ledgewright/wasm/hand"
)

// inRound is the study seen in the round.
func inRound(t *testing.T) State {
	t.Helper()
	s, _ := play(atStart(t), Open{Example: "study"}, Resized{Size: tablet}, Show{What: InTheRound})
	require.True(t, s.InRound())
	require.NotNil(t, s.Round.Pulled)
	return s
}

// touch is one event of a finger.
func touch(kind hand.Kind, id int, x, y, time float64) Event {
	return Pointer{hand.Event{Kind: kind, ID: id, Type: hand.Touch, X: x, Y: y, Time: time, Primary: kind == hand.Down && id == 1}}
}

// fingerStroke is a finger that goes from one pixel to another in ten moves.
func fingerStroke(x1, y1, x2, y2 float64) (out []Event) {
	out = append(out, touch(hand.Down, 1, x1, y1, 0))
	for i := range 10 {
		k := float64(i+1) / 10
		out = append(out, touch(hand.Motion, 1, x1+k*(x2-x1), y1+k*(y2-y1), float64(16*(i+1))))
	}
	return append(out, touch(hand.Up, 1, x2, y2, 180))
}

// pinch is two fingers that go from two pixels to two others in ten moves.
func pinch(a, b, c, d [2]float64) (out []Event) {
	out = append(out, touch(hand.Down, 1, a[0], a[1], 0), touch(hand.Down, 2, b[0], b[1], 10))
	for i := range 10 {
		k, at := float64(i+1)/10, float64(16*(i+2))
		out = append(out, touch(hand.Motion, 1, a[0]+k*(c[0]-a[0]), a[1]+k*(c[1]-a[1]), at),
			touch(hand.Motion, 2, b[0]+k*(d[0]-b[0]), b[1]+k*(d[1]-b[1]), at))
	}
	return append(out, touch(hand.Up, 1, c[0], c[1], 300), touch(hand.Up, 2, d[0], d[1], 310))
}

// A finger turns what is seen by half a turn over the shorter side of the picture, the way
// that it goes; buttons and keys turn it the same way, and it is said from where it is seen.
func TestAFingerTurnsTheRound(t *testing.T) {
	s := inRound(t)
	per := 180 / min(s.Size.Width, s.Size.Height)
	by, effects := play(s, fingerStroke(300, 300, 300+30/per, 300+15/per)...)
	require.InDelta(t, firstYaw-30, by.Round.Camera.Yaw, 1e-9, "what is taken to the right is seen from farther left")
	require.InDelta(t, firstPitch+15, by.Round.Camera.Pitch, 1e-9)
	require.Contains(t, effects, Say{Text: "Seen from the front left, 35° above"})
	for _, same := range [][]Event{
		{Orbit{X: OrbitStep}, Orbit{X: OrbitStep}, Orbit{Y: -OrbitStep}},
		{Key{Name: "ArrowRight"}, Key{Name: "ArrowRight"}, Key{Name: "ArrowDown"}},
	} {
		other, effects := play(s, same...)
		require.InDelta(t, by.Round.Camera.Yaw, other.Round.Camera.Yaw, 1e-9)
		require.InDelta(t, by.Round.Camera.Pitch, other.Round.Camera.Pitch, 1e-9)
		require.Contains(t, effects, Say{Text: "Seen from the front left, 35° above"})
	}
	over, _ := play(s, fingerStroke(300, 50, 300, 50+200/per)...)
	require.InDelta(t, 90, over.Round.Camera.Pitch, 1e-9, "it stops overhead")
}

// A mouse, a pen and a finger do the same.
func TestMouseAndPenTurnTheRoundAsAFingerDoes(t *testing.T) {
	s := inRound(t)
	finger, _ := play(s, fingerStroke(200, 200, 330, 240)...)
	for _, of := range []hand.Type{hand.Mouse, hand.Pen} {
		events := fingerStroke(200, 200, 330, 240)
		for i := range events {
			p := events[i].(Pointer)
			p.Type = of
			events[i] = p
		}
		other, _ := play(s, events...)
		require.Equal(t, finger.Round.Camera, other.Round.Camera)
	}
}

// What was between two fingers stays there, within two pixels; the picture follows them.
func TestAPinchKeepsThePlaceUnderTheFingers(t *testing.T) {
	s := inRound(t)
	for _, c := range [][4][2]float64{
		{{300, 300}, {380, 300}, {240, 300}, {440, 300}},
		{{200, 200}, {260, 320}, {300, 230}, {330, 290}},
		{{500, 100}, {500, 400}, {420, 240}, {420, 300}},
	} {
		x, y := s.RoundPicture().mm((c[0][0]+c[1][0])/2, (c[0][1]+c[1][1])/2, s.Size)
		after, _ := play(s, pinch(c[0], c[1], c[2], c[3])...)
		px, py := after.RoundPicture().Pixel(x, y, after.Size)
		require.LessOrEqual(t, math.Hypot(px-(c[2][0]+c[3][0])/2, py-(c[2][1]+c[3][1])/2), 2.0)
		apart := func(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }
		require.InEpsilon(t, apart(c[2], c[3])/apart(c[0], c[1]), s.Round.Camera.Span/after.Round.Camera.Span, 0.02)
		require.Equal(t, s.Round.Camera.Yaw, after.Round.Camera.Yaw, "nothing is turned")
		require.False(t, after.Round.Fitted)
	}
}

// A second finger calls the turning back.
func TestASecondFingerCallsTurningBack(t *testing.T) {
	s := inRound(t)
	turned, _ := play(s, fingerStroke(300, 300, 400, 300)[:8]...)
	require.NotEqual(t, s.Round.Camera.Yaw, turned.Round.Camera.Yaw)
	back, _ := play(turned, touch(hand.Down, 2, 500, 300, 150))
	require.Equal(t, s.Round.Camera.Yaw, back.Round.Camera.Yaw)
	require.False(t, back.Drag.Active)
}

// Two taps in one place show all of it; taps far from each other in place or time do not,
// nor does one.
func TestADoubleTapFits(t *testing.T) {
	s := inRound(t)
	away, _ := play(s, Zoom{By: 3}, Pan{X: 0.4})
	taps := func(x, y, time float64) []Event {
		return append([]Event{touch(hand.Down, 1, 200, 200, 0), touch(hand.Up, 1, 200, 200, 60)},
			touch(hand.Down, 1, x, y, time-60), touch(hand.Up, 1, x, y, time))
	}
	is, _ := play(away, taps(204, 197, 300)...)
	require.Equal(t, s.Round.Camera, is.Round.Camera)
	require.True(t, is.Round.Fitted)
	for _, no := range [][]Event{taps(204, 197, 900), taps(300, 200, 300), taps(204, 197, 300)[:2]} {
		is, _ := play(away, no...)
		require.Equal(t, away.Round.Camera, is.Round.Camera)
	}
}

// Buttons and keys zoom, move and fit; the wheel with Control zooms about the pointer.
func TestKeysOfTheRound(t *testing.T) {
	s := inRound(t)
	near, _ := play(s, Key{Name: "+"})
	button, _ := play(s, Zoom{By: keyZoom})
	require.Equal(t, button.Round.Camera, near.Round.Camera)
	require.InEpsilon(t, s.Round.Camera.Span/keyZoom, near.Round.Camera.Span, 1e-9)
	back, _ := play(near, Key{Name: "-"})
	require.InEpsilon(t, s.Round.Camera.Span, back.Round.Camera.Span, 1e-9)
	moved, _ := play(s, Key{Name: "ArrowRight", Shift: true}, Key{Name: "ArrowUp", Shift: true})
	require.Greater(t, moved.Round.Camera.X, s.Round.Camera.X)
	require.Greater(t, moved.Round.Camera.Y, s.Round.Camera.Y)
	require.Equal(t, s.Round.Camera.Yaw, moved.Round.Camera.Yaw)
	fit, _ := play(moved, Key{Name: "0"})
	require.Equal(t, s.Round.Camera, fit.Round.Camera)

	x, y := s.RoundPicture().mm(120, 90, s.Size)
	wheel, _ := play(s, Pointer{hand.Event{Kind: hand.Wheel, X: 120, Y: 90, DY: -20, Control: true}})
	require.Less(t, wheel.Round.Camera.Span, s.Round.Camera.Span)
	px, py := wheel.RoundPicture().Pixel(x, y, s.Size)
	require.InDelta(t, 120, px, 1e-6)
	require.InDelta(t, 90, py, 1e-6)

	field, _ := play(s, Key{Name: "ArrowRight", InField: true})
	require.Equal(t, s.Round.Camera, field.Round.Camera, "arrows of the slider are its own")
}

// The fixed views show all of it from where they say.
func TestFixedViews(t *testing.T) {
	s := inRound(t)
	for side, says := range map[view.Side]string{
		view.FromFront: "Seen from the front", view.FromLeft: "Seen from the left", view.FromRight: "Seen from the right",
		view.FromAbove: "Seen from above", view.FromBelow: "Seen from below", view.FromBack: "Seen from the back",
	} {
		is, effects := play(s, Zoom{By: 5}, SeeFrom{Side: side})
		require.Contains(t, effects, Say{Text: says})
		require.Equal(t, is.Round.Pulled.Fit(view.Camera{}.Seen(side), s.Size.Width/s.Size.Height), is.Round.Camera)
	}
	require.Equal(t, "Seen from the back right, 10° below", (&State{Round: Round{Camera: view.Camera{Yaw: 140, Pitch: -10}}}).SeenFrom())
	require.Equal(t, "Seen from the back", (&State{Round: Round{Camera: view.Camera{Yaw: -179}}}).SeenFrom())
}

// While all of it is shown, all stays in the picture however it is turned and pulled apart.
func TestAllStaysInThePicture(t *testing.T) {
	s := inRound(t)
	for i := range 30 {
		s, _ = play(s, Orbit{X: 37, Y: float64(20 - 41*(i%2))}, PullApart{Text: []string{"0", "35", "100"}[i%3]})
		c, fit := s.Round.Camera, s.Round.Pulled.Fit(s.Round.Camera, s.Size.Width/s.Size.Height)
		require.InDelta(t, fit.X, c.X, 1e-9)
		require.InDelta(t, fit.Y, c.Y, 1e-9)
		require.GreaterOrEqual(t, c.Span, fit.Span)
	}
	require.Equal(t, "Wholly apart", s.PulledApart())
	s, _ = play(s, PullApart{Text: "40"})
	require.Equal(t, "40 % apart", s.PulledApart())
	s, _ = play(s, PullApart{Text: "no figure"})
	require.Equal(t, 40, s.Round.Apart)
}

// Whatever the hand and the keys do in the round, the plan is the same, and so is the flat
// view once it is back.
func TestTheRoundLeavesThePlanAndTheFlatViewAlone(t *testing.T) {
	flat, _ := play(atStart(t), Open{Example: "study"}, Resized{Size: tablet}, Choose{Module: "m1"}, Zoom{By: 2}, Pan{X: 0.1})
	s, _ := play(flat, Show{What: InTheRound}, Resized{Size: Size{tablet.Width, tablet.Height - 110}})
	for i := range 20 {
		x, y := float64(60+31*i), float64(80+17*i)
		s, _ = play(s, fingerStroke(x, y, y, x)...)
		s, _ = play(s, pinch([2]float64{x, y}, [2]float64{x + 60, y}, [2]float64{x - 20, y}, [2]float64{x + 90, y + 30})...)
		s, _ = play(s, touch(hand.Down, 1, x, y, 0), Pointer{hand.Event{Kind: hand.Tick, Time: 600}}, touch(hand.Up, 1, x, y, 700))
		s, _ = play(s, tapAt(x, y)...)
	}
	for _, k := range []string{"ArrowLeft", "ArrowUp", "Delete", "Backspace", "a", "+", "0"} {
		s, _ = play(s, Key{Name: k}, Key{Name: k, Shift: true})
	}
	require.True(t, s.InRound())
	s, _ = play(s, Key{Name: "Escape"}, Resized{Size: tablet})
	require.False(t, s.InRound())
	require.Equal(t, flat.Plan, s.Plan)
	require.Equal(t, flat.History, s.History)
	require.Equal(t, flat.Store.Revision, s.Store.Revision)
	require.Equal(t, flat.Camera, s.Camera)
	require.Equal(t, flat.Chosen, s.Chosen)
	require.Equal(t, flat.SheetAt, s.SheetAt)
	require.Zero(t, s.Round)
}

// The view is left for another job, and is not there for a job with nothing on the wall.
// What is changed meanwhile is seen in it.
func TestWhenThereIsARound(t *testing.T) {
	s := inRound(t)
	for _, job := range []Job{Survey, Make, Hang, Agree} {
		is, _ := play(s, Go{Job: job})
		require.False(t, is.InRound())
		require.Zero(t, is.Round)
	}
	made, _ := play(s, Go{Job: Make}, Show{What: InTheRound})
	require.True(t, made.InRound())
	benched, _ := play(made, Show{What: Bench})
	require.False(t, benched.InRound())
	bare, _ := play(atStart(t), NewJob{Width: "2960", Height: "2460"}, Go{Arrange}, Show{What: InTheRound})
	require.False(t, bare.InRound())

	whole := s.Round.Pulled
	one, _ := play(s, Choose{Module: "m2"}, Show{What: Alone})
	require.Equal(t, []string{"m2"}, one.InSight())
	require.NotSame(t, whole, one.Round.Pulled)
	require.Less(t, one.Round.Camera.Span, s.Round.Camera.Span)
	all, _ := play(one, Show{What: InTheRound}, Show{What: InTheRound})
	require.Equal(t, s.InSight(), all.InSight())
	less, _ := play(s, Choose{Module: "m2"}, DoLine{`{"schema":"ledgewright/edit/1","do":"take-off","arrangement":"a1","module":"m2"}`})
	require.Len(t, less.InSight(), len(s.InSight())-1)
	again, _ := play(less, Undo{})
	require.Equal(t, s.InSight(), again.InSight(), "undoing changes the plan, not the view")
	require.True(t, again.InRound())
}

// On a phone the sheet gives way to the view, and comes back after it.
func TestTheSheetGivesWay(t *testing.T) {
	phone := Size{Width: 390, Height: 330}
	s, _ := play(atStart(t), Open{Example: "study"}, Resized{Size: phone})
	is, _ := play(s, Show{What: InTheRound})
	require.Zero(t, is.SheetAt)
	back, _ := play(is, Show{What: InTheRound})
	require.Equal(t, s.SheetAt, back.SheetAt)
}
