package app

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/wasm/hand"
)

var tablet = Size{Width: 754, Height: 660}

// play steps through events and returns the last state and all effects.
func play(s State, events ...Event) (State, []Effect) {
	var all []Effect
	for _, e := range events {
		next, effects := Step(s, e)
		s, all = next, append(all, effects...)
	}
	return s, all
}

func atStart(t *testing.T) State {
	t.Helper()
	s, _ := play(State{}, Started{Now: "14:02", Size: tablet})
	require.Equal(t, AtStart, s.Screen)
	return s
}

// aShelf is a wall with studs and one shelf on it.
func aShelf(t *testing.T) State {
	t.Helper()
	s, _ := play(atStart(t),
		NewJob{Width: "2960", Height: "2460"},
		DoLine{`{"schema":"ledgewright/edit/1","do":"set-studs","wall":"w1","material":"wood","width":38,"depth":90,"first":150,"spacing":400,"state":"edges-found"}`},
		Go{Arrange},
		DoLine{`{"schema":"ledgewright/edit/1","do":"add-module","shape":"shelf","name":"Long","width":800,"depth":200,"thickness":26,"wood":"white-oak","arrangement":"a1","x":1200,"y":1500}`},
	)
	require.Empty(t, s.Problem)
	require.Len(t, s.Plan.Modules, 1, s.Toast.Text)
	return s
}

func TestTwoFiguresMakeAWall(t *testing.T) {
	s, effects := play(atStart(t), NewJob{Width: "2.96 m", Height: "2460"})
	require.Equal(t, AtWork, s.Screen)
	require.Equal(t, Survey, s.Job)
	require.Equal(t, 2960*unit.Millimetre, s.Plan.Walls[0].Width)
	require.Equal(t, "a1", s.Arrangement)
	require.Contains(t, effects, Effect(After{Name: "keep", Ms: keepAfter, Event: keepNow{}}))

	s, _ = play(atStart(t), NewJob{Width: "wide", Height: "2460"})
	require.Equal(t, AtStart, s.Screen)
	require.NotEmpty(t, s.Problem)
}

func TestEveryStepIsUndoneByName(t *testing.T) {
	s := aShelf(t)
	before, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	s, _ = play(s, DoLine{`{"schema":"ledgewright/edit/1","do":"turn","arrangement":"a1","module":"m1","by":90}`})
	require.Equal(t, "turn Long", s.Called(s.History.Past[len(s.History.Past)-1].Name))
	s, _ = play(s, Undo{})
	after, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	require.Equal(t, string(before), string(after))
	require.Contains(t, s.Toast.Text, "turn Long")
	s, _ = play(s, Redo{})
	require.Equal(t, unit.QuarterTurn, s.Plan.Arrangements[0].Poses[0].Turn)
}

func TestTwoHundredStepsCanBeUndone(t *testing.T) {
	s := aShelf(t)
	for range 250 {
		s, _ = play(s, Key{Name: "Escape"}, Choose{Module: "m1"}, Key{Name: "ArrowRight"})
	}
	require.Equal(t, 1450*unit.Millimetre, s.Plan.Arrangements[0].Poses[0].X)
	for range 200 {
		s, _ = play(s, Undo{})
	}
	require.Equal(t, 1250*unit.Millimetre, s.Plan.Arrangements[0].Poses[0].X)
}

// stroke is a finger that goes down at a place on the wall, moves in steps, and up.
func stroke(s State, fromX, fromY, toX, toY float64) []Event {
	var events []Event
	x0, y0 := s.Camera.Pixel(fromX, fromY, s.Size)
	x1, y1 := s.Camera.Pixel(toX, toY, s.Size)
	at := func(k hand.Kind, f, ms float64) {
		events = append(events, Pointer{hand.Event{Kind: k, ID: 1, Type: hand.Touch, X: x0 + f*(x1-x0), Y: y0 + f*(y1-y0), Time: ms}})
	}
	at(hand.Down, 0, 0)
	for i := 1; i <= 10; i++ {
		at(hand.Motion, float64(i)/10, float64(20*i))
	}
	at(hand.Up, 1, 220)
	return events
}

func TestADragIsOneEditAtRelease(t *testing.T) {
	s := aShelf(t)
	steps, was := len(s.History.Past), s.Plan.Arrangements[0].Poses[0]
	events := stroke(s, 1200, 1500, 1204, 1730)
	mid, _ := play(s, events[:6]...)
	require.True(t, mid.Preview.Shown, "the ghost is shown while the finger is down")
	require.Len(t, mid.History.Past, steps, "a preview is not an edit")
	s, _ = play(s, events...)
	require.Len(t, s.History.Past, steps+1)
	pose := s.Plan.Arrangements[0].Poses[0]
	require.Greater(t, pose.Y, was.Y+200*unit.Millimetre)
	require.False(t, s.Preview.Shown)
}

func TestASecondFingerLeavesNoTrace(t *testing.T) {
	s := aShelf(t)
	want, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	steps, camera := len(s.History.Past), s.Camera
	events := stroke(s, 1200, 1500, 1500, 1500)[:6]
	events = append(events,
		Pointer{hand.Event{Kind: hand.Down, ID: 2, Type: hand.Touch, X: 500, Y: 300, Time: 150}},
		Pointer{hand.Event{Kind: hand.Motion, ID: 2, Type: hand.Touch, X: 600, Y: 200, Time: 170}},
		Pointer{hand.Event{Kind: hand.Up, ID: 2, Type: hand.Touch, X: 600, Y: 200, Time: 180}},
		Pointer{hand.Event{Kind: hand.Up, ID: 1, Type: hand.Touch, X: 300, Y: 300, Time: 190}},
	)
	s, _ = play(s, events...)
	have, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	require.Equal(t, string(want), string(have))
	require.Len(t, s.History.Past, steps)
	require.False(t, s.Preview.Shown)
	require.NotEqual(t, camera, s.Camera, "two fingers move the picture")
}

func TestTapsChooseAndBareWallLetsGo(t *testing.T) {
	s := aShelf(t)
	tap := func(x, y float64) []Event {
		all := stroke(s, x, y, x, y)
		return []Event{all[0], all[len(all)-1]}
	}
	s, _ = play(s, tap(1200, 1500)...)
	require.Equal(t, []string{"m1"}, s.Chosen)
	s, _ = play(s, tap(2600, 2200)...)
	require.Empty(t, s.Chosen)
}

func TestFieldsReadEchoAndRefuse(t *testing.T) {
	s := aShelf(t)
	f := Field{Key: "m1.depth", Label: "Depth", Line: `{"schema":"ledgewright/edit/1","do":"set-module","module":"m1","depth":"$"}`, Value: "200"}
	s, _ = play(s, TypedInto{f, "22"})
	require.Equal(t, Echo{Text: "22", Says: "22 mm"}, s.Fields[f.Key])
	s, _ = play(s, TypedInto{f, "1,200"})
	require.True(t, s.Fields[f.Key].Bad, "ambiguous")
	steps := len(s.History.Past)
	s, _ = play(s, Entered{f, "1,200"})
	require.Len(t, s.History.Past, steps, "what cannot be read changes nothing")
	s, _ = play(s, Entered{f, "22 cm"})
	require.Equal(t, 220*unit.Millimetre, s.Plan.Modules[0].Depth)
	require.Empty(t, s.Fields)
}

func TestTypingOnAFigureShowsWhatItWouldCause(t *testing.T) {
	s := aShelf(t)
	f := Field{Key: "fig", Line: `{"schema":"ledgewright/edit/1","do":"move","arrangement":"a1","module":"m1","y":"$"}`, Value: "1500"}
	s, _ = play(s, OpenTyping{f}, TypedInto{f, "2700"})
	require.True(t, s.Preview.Shown)
	require.NotEmpty(t, s.Typing.Causes, "through the ceiling")
	require.Equal(t, 1500*unit.Millimetre, s.Plan.Arrangements[0].Poses[0].Y)
	s, _ = play(s, Dismiss{})
	require.False(t, s.Preview.Shown)
}

func TestAKeptJobComesBackWithItsHistory(t *testing.T) {
	s := aShelf(t)
	s, _ = play(s, Choose{Module: "m1"}, Key{Name: "ArrowRight"}, Key{Name: "ArrowUp", Shift: true}, Undo{})
	_, effects := play(s, Flush())
	require.Len(t, effects, 1)
	k := effects[0].(Keep)
	require.Equal(t, s.Store.Revision, k.Revision)

	back, _ := play(atStart(t), Read{ID: k.ID, Record: k.Record})
	want, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	have, err := plan.Encode(back.Plan)
	require.NoError(t, err)
	require.Equal(t, string(want), string(have))
	require.Len(t, back.History.Past, len(s.History.Past))
	require.Len(t, back.History.Future, 1)
	require.Equal(t, Arrange, back.Job)

	s, _ = play(s, Redo{})
	back, _ = play(back, Redo{})
	require.Equal(t, s.Plan.Arrangements[0].Poses, back.Plan.Arrangements[0].Poses)
	for range len(s.History.Past) {
		s, _ = play(s, Undo{})
		back, _ = play(back, Undo{})
	}
	want, err = plan.Encode(s.Plan)
	require.NoError(t, err)
	have, err = plan.Encode(back.Plan)
	require.NoError(t, err)
	require.Equal(t, string(want), string(have))
}

func TestNothingIsStoredTwice(t *testing.T) {
	s := aShelf(t)
	s, effects := play(s, Flush())
	require.Len(t, effects, 1)
	s, _ = play(s, Kept{Revision: s.Store.Revision, Now: "14:03"})
	_, effects = play(s, Flush())
	require.Empty(t, effects)
	require.Equal(t, "14:03", s.Store.At)

	// What is looked at is kept too, under the same revision.
	s, _ = play(s, Go{Hang})
	s, effects = play(s, Flush())
	keep := effects[0].(Keep)
	require.Equal(t, keep.Before, keep.Revision)
	back, _ := play(atStart(t), Read{ID: "j1", Record: keep.Record})
	require.Equal(t, Hang, back.Job)
	_, effects = play(s, Flush())
	require.Empty(t, effects)
	s, effects = play(s, Kept{Err: "the disk is full"})
	require.Equal(t, "the disk is full", s.Store.Err)
	require.True(t, effects[0].(Say).Urgent)
}

func TestALinkOpensAsTheSamePlan(t *testing.T) {
	s := aShelf(t)
	_, effects := play(s, HandOn{What: "link", By: "copy"})
	code := effects[0].(Save).Text
	back, _ := play(State{}, Started{Size: tablet, Address: code})
	require.Equal(t, AtWork, back.Screen)
	want, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	have, err := plan.Encode(back.Plan)
	require.NoError(t, err)
	require.Equal(t, string(want), string(have))

	back, _ = play(State{}, Started{Size: tablet, Address: code[:len(code)-9]})
	require.Equal(t, AtStart, back.Screen, "a cut link never opens another design")
	require.NotEmpty(t, back.Problem)
}

func TestZoomKeepsThePointUnderTheFingers(t *testing.T) {
	s := aShelf(t)
	w := s.Plan.Walls[0]
	x, y := s.Camera.mm(200, 150, s.Size)
	c := s.Camera.zoom(2, 200, 150, w, s.Size)
	px, py := c.Pixel(x, y, s.Size)
	require.InDelta(t, 200, px, 1e-6)
	require.InDelta(t, 150, py, 1e-6)
}

// Whatever edits are made, all of them undone give the first plan again.
func TestUndoGivesTheSameBytes(t *testing.T) {
	s := aShelf(t)
	first, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	n := len(s.History.Past)
	for _, e := range []edit.Edit{
		edit.Flip{Arrangement: "a1", Module: "m1"},
		edit.DuplicateModule{Module: "m1", Arrangement: "a1", X: 2000 * unit.Millimetre, Y: 900 * unit.Millimetre},
		edit.RemoveModule{Module: "m1"},
	} {
		s, _ = play(s, Do{[]edit.Edit{e}})
	}
	for len(s.History.Past) > n {
		s, _ = play(s, Undo{})
	}
	have, err := plan.Encode(s.Plan)
	require.NoError(t, err)
	require.Equal(t, string(first), string(have))
}

func TestTheFocusGoesBackToTheFigureThatWasTyped(t *testing.T) {
	s := aShelf(t)
	f := Field{Key: "fig-x", Kind: LengthField, Value: "1200", Line: `{"schema":"ledgewright/edit/1","do":"move","arrangement":"a1","module":"m1","x":"$"}`}
	s, _ = play(s, OpenTyping{Field: f})
	_, effects := play(s, Dismiss{})
	require.Equal(t, []Effect{Focus{Key: "fig-x"}}, effects)
	_, effects = play(s, Entered{Field: f, Text: "1300"})
	require.Contains(t, effects, Effect(Focus{Key: "fig-x"}))
	_, effects = play(s, Dismiss{}, Dismiss{})
	require.Len(t, effects, 1, "nothing was open any more")
}
