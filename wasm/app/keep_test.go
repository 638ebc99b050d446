package app

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// afterSteps is a job after a copy and then so many changes.
func afterSteps(t *testing.T, n int) State {
	t.Helper()
	s := aShelf(t)
	s, _ = play(s, Done{What: "plan"})
	for i := range n {
		s, _ = play(s, DoLine{fmt.Sprintf(`{"schema":"ledgewright/edit/1","do":"set-module","module":"m1","name":"Long %d"}`, i)})
	}
	return s
}

// When the last copy left is kept with the job, with its day; a moment of today is shown
// as its time.
func TestTheLastCopyOutsideIsRemembered(t *testing.T) {
	s := aShelf(t)
	require.Equal(t, 2, s.Uncopied(), "changes of a job that has never left")
	s, effects := play(s, Clock{Now: "15:30", Today: "2026-05-31"}, Done{What: "plan"})
	require.Contains(t, effects, Effect(After{Name: "keep", Ms: keepAfter, Event: keepNow{}}), "it is stored with the job")
	require.Zero(t, s.Uncopied())
	require.Equal(t, "15:30", s.When(s.Store.CopyAt))
	_, effects = play(s, Flush())
	record := effects[0].(Keep).Record

	back := atStart(t)
	back, _ = play(back, Clock{Now: "09:00", Today: "2026-06-02"}, Read{ID: "j1", Record: record})
	require.Equal(t, "2026-05-31 15:30", back.When(back.Store.CopyAt))
	require.Zero(t, back.Uncopied())
	back, _ = play(back, DoLine{`{"schema":"ledgewright/edit/1","do":"remove-module","module":"m1"}`})
	require.Equal(t, 1, back.Uncopied())
	for what, want := range map[string]int{"parts": 1, "picture": 1, "build": 1, "link": 0} {
		s, _ := play(back, Done{What: what})
		require.Equal(t, want, s.Uncopied(), what)
	}
	s, _ = play(back, Done{What: "plan", Err: "refused"})
	require.Equal(t, 1, s.Uncopied(), "what was not handed on is no copy")
}

// One is reminded of a copy after many changes, after a survey, and half an hour after the
// first change without one; never before, and no longer once there is a copy.
func TestOneIsRemindedOfACopy(t *testing.T) {
	stored := func(s State) (State, []Effect) { return play(s, Kept{Revision: s.Store.Revision, Now: "14:03"}) }
	spoken := func(effects []Effect) (n int) {
		for _, e := range effects {
			if _, ok := e.(Say); ok {
				n++
			}
		}
		return n
	}
	s := afterSteps(t, manySteps-1)
	s, effects := stored(s)
	require.False(t, s.Store.Due)
	wait := After{Name: "copy", Ms: 30 * 60 * 1000, Event: copyDue{}}
	require.Contains(t, effects, Effect(wait))
	_, effects = stored(s)
	require.NotContains(t, effects, Effect(wait), "the half hour counts from the first change")

	late, effects := play(s, wait.Event)
	require.True(t, late.Store.Due)
	require.Equal(t, 1, spoken(effects))

	s, _ = play(s, DoLine{`{"schema":"ledgewright/edit/1","do":"set-module","module":"m1","name":"One more"}`})
	s, effects = stored(s)
	require.True(t, s.Store.Due)
	require.Equal(t, 1, spoken(effects))
	_, effects = stored(s)
	require.Zero(t, spoken(effects), "once")
	s, _ = play(s, Done{What: "plan"})
	require.False(t, s.Store.Due)
	s, effects = play(s, wait.Event)
	require.False(t, s.Store.Due, "there is a copy by now")
	require.Empty(t, effects)

	for n, want := range map[int]bool{surveyed - 1: false, surveyed: true} {
		s, _ := play(afterSteps(t, n), Go{Arrange}, Go{Survey}, Go{Make})
		require.Equal(t, want, s.Store.Due, "%d changes", n)
	}
	s, _ = play(afterSteps(t, surveyed), Go{Arrange}, Go{Make})
	require.False(t, s.Store.Due, "no survey")
}

// What the browser answers is held; a browser that has not been asked has not answered.
func TestTheBrowsersAnswerIsHeld(t *testing.T) {
	s := aShelf(t)
	require.Equal(t, NotAsked, s.Lasting)
	s, _ = play(s, Persisted{})
	require.Equal(t, MayGo, s.Lasting)
	s, _ = play(s, Persisted{Lasts: true})
	require.Equal(t, Lasts, s.Lasting)
	s, effects := play(s, Set{"week", "read"})
	require.Equal(t, []Effect{KeepSettings{s.Settings}}, effects)
	require.Equal(t, "read", s.Settings.Week)
}
