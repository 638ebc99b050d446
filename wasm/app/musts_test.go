package app

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
	"ledgewright/wasm/hand"
)

// The picture goes from a twentieth of the size at which the wall fits to eight times it,
// and no further.
func TestZoomHasItsRange(t *testing.T) {
	s := aShelf(t)
	fit := s.Camera.Scale
	for range 100 {
		s, _ = play(s, Zoom{By: 1.3})
	}
	require.InDelta(t, 8*fit, s.Camera.Scale, 1e-9)
	for range 100 {
		s, _ = play(s, Zoom{By: 0.7})
	}
	require.InDelta(t, 0.05*fit, s.Camera.Scale, 1e-9)
	s, _ = play(s, Fit{})
	require.InDelta(t, fit, s.Camera.Scale, 1e-9)
}

// Having zoomed in, one gets about by taps on arrows: by a quarter of the picture, at the
// same size. The arrow keys do the same while nothing is chosen, and change nothing.
func TestTheViewMovesByTaps(t *testing.T) {
	s := aShelf(t)
	s, _ = play(s, Choose{}, Zoom{By: 3})
	edits := len(s.History.Past)
	at := s.Camera
	wide, high := s.Size.Width/at.Scale, s.Size.Height/at.Scale
	for _, c := range []struct {
		e    Event
		x, y float64
	}{
		{Pan{X: 0.25}, 0.25 * wide, 0}, {Pan{X: -0.25}, -0.25 * wide, 0}, {Pan{Y: 0.25}, 0, 0.25 * high}, {Pan{Y: -0.25}, 0, -0.25 * high},
		{Key{Name: "ArrowRight"}, 0.05 * wide, 0}, {Key{Name: "ArrowLeft", Shift: true}, -0.25 * wide, 0},
		{Key{Name: "ArrowUp"}, 0, 0.05 * high}, {Key{Name: "ArrowDown", Shift: true}, 0, -0.25 * high},
	} {
		is, _ := play(s, c.e)
		require.InDelta(t, at.X+c.x, is.Camera.X, 1e-9, "%v", c.e)
		require.InDelta(t, at.Y+c.y, is.Camera.Y, 1e-9, "%v", c.e)
		require.Equal(t, at.Scale, is.Camera.Scale)
		require.Len(t, is.History.Past, edits)
	}
}

// tapAt is a finger that taps a pixel.
func tapAt(x, y float64) []Event {
	return []Event{
		Pointer{hand.Event{Kind: hand.Down, ID: 1, Type: hand.Touch, X: x, Y: y, Primary: true}},
		Pointer{hand.Event{Kind: hand.Up, ID: 1, Type: hand.Touch, X: x, Y: y, Time: 60}},
	}
}

// However small or large the picture is, a finger that comes down 20 px beside a shelf
// has it, and one 25 px beside it has not.
func TestReachIsInPixels(t *testing.T) {
	for _, by := range []float64{0.2, 0.5, 1, 3, 8} {
		s := aShelf(t)
		s, _ = play(s, Zoom{By: by})
		box := s.Build.Arrangements[0].Placed[0].Box
		x, y := s.Camera.Pixel((box.MinX.MM()+box.MaxX.MM())/2, box.MinY.MM(), s.Size)
		near, _ := play(s, tapAt(x, y+20)...)
		require.Equal(t, []string{"m1"}, near.Chosen, "%g", by)
		far, _ := play(s, tapAt(x, y+25)...)
		require.Empty(t, far.Chosen, "%g", by)
	}
}

// Modules that lie over each other are chosen in turn by tapping the same place.
func TestTapsGoThroughWhatLiesOverEachOther(t *testing.T) {
	s := aShelf(t)
	s, _ = play(s,
		DoLine{`{"schema":"ledgewright/edit/1","do":"add-module","shape":"shelf","name":"Over","width":800,"depth":200,"thickness":26,"wood":"white-oak","arrangement":"a1","x":1200,"y":1500}`},
		Choose{})
	x, y := s.Camera.Pixel(1200, 1500, s.Size)
	var chosen []string
	for range 4 {
		s, _ = play(s, tapAt(x, y)...)
		require.Len(t, s.Chosen, 1)
		chosen = append(chosen, s.Chosen[0])
	}
	require.ElementsMatch(t, []string{"m1", "m2"}, chosen[:2])
	require.Equal(t, chosen[:2], chosen[2:])
}

// In a plan in inches the arrows move by a sixteenth, with the shift key by an inch.
func TestArrowsMoveByAStepOfTheUnit(t *testing.T) {
	for system, want := range map[string][2]unit.Length{
		"mm": {unit.Millimetre, 10 * unit.Millimetre},
		"in": {unit.Inch / 16, unit.Inch},
	} {
		s := aShelf(t)
		s, _ = play(s, DoLine{`{"schema":"ledgewright/edit/1","do":"set-units","system":"` + system + `"}`}, Choose{Module: "m1"})
		require.Equal(t, system, string(s.Plan.Units.System))
		x := s.Plan.Arrangements[0].Poses[0].X
		s, _ = play(s, Key{Name: "ArrowRight"})
		require.Equal(t, want[0], s.Plan.Arrangements[0].Poses[0].X-x)
		s, _ = play(s, Key{Name: "ArrowLeft", Shift: true})
		require.Equal(t, want[0]-want[1], s.Plan.Arrangements[0].Poses[0].X-x)
	}
}

// Of a job that was kept and read again, as many steps can be undone as before.
func TestStepsAreUndoneAfterReading(t *testing.T) {
	s := aShelf(t)
	for i := range 60 {
		s, _ = play(s, DoLine{`{"schema":"ledgewright/edit/1","do":"set-module","module":"m1","name":"Long ` + strconv.Itoa(i) + `"}`})
	}
	_, effects := play(s, Flush())
	k := effects[0].(Keep)
	back, _ := play(atStart(t), Read{ID: k.ID, Record: k.Record})
	require.Len(t, back.History.Past, len(s.History.Past))
	for i := 59; i > 0; i-- {
		require.Equal(t, "Long "+strconv.Itoa(i), back.Plan.Modules[0].Name)
		back, _ = play(back, Undo{})
	}
	require.Equal(t, "Long 0", back.Plan.Modules[0].Name)
}
