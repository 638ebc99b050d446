package browser

import (
	"testing"

	"github.com/stretchr/testify/require"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
	"ledgewright/wasm/panel"
)

// outside notes what a loop asks for.
type outside struct {
	frames int
	turns  int
	did    []app.Effect
	wakes  []float64
}

func (o *outside) AskFrame()       { o.frames++ }
func (o *outside) AskTurn()        { o.turns++ }
func (o *outside) Do(e app.Effect) { o.did = append(o.did, e) }
func (o *outside) Wake(at float64) { o.wakes = append(o.wakes, at) }

// recorder is a loop whose state machine notes its events.
func recorder(page func(app.State) panel.Node) (*Loop, *outside, *fakeDocument, *[]app.Event) {
	var events []app.Event
	d, tree := newFake()
	out := &outside{}
	whole := func(s app.State, _ int) (panel.Node, bool) { return page(s), true }
	l := &Loop{Tree: tree, Out: out, Page: whole, Step: func(s app.State, e app.Event) (app.State, []app.Effect) {
		events = append(events, e)
		if p, ok := e.(app.Pointer); ok {
			s.Hand, _ = s.Hand.Step(p.Event)
		}
		if u, ok := e.(app.Go); ok {
			return s, []app.Effect{app.Focus{Key: "panel-title"}, app.Again{}, app.Say{Text: string('0' + rune(u.Job))}}
		}
		return s, nil
	}}
	return l, out, d, &events
}

func blank(app.State) panel.Node { return el("div", keyed("panel-title", el("h2"))) }

func TestOneUpdateAFrame(t *testing.T) {
	pages := 0
	l, out, _, events := recorder(func(s app.State) panel.Node { pages++; return blank(s) })
	require.Zero(t, out.frames, "nothing happened yet")
	l.Point(hand.Event{Kind: hand.Down, ID: 1, Time: 1})
	for i := range 50 {
		l.Point(hand.Event{Kind: hand.Motion, ID: 1, X: float64(i), Time: 2})
	}
	l.Send(app.Undo{})
	require.Equal(t, 1, out.frames)
	require.Zero(t, pages)
	l.Frame()
	require.Equal(t, 1, pages)
	require.Len(t, *events, 3, "50 moves are one")
	require.Equal(t, 49.0, (*events)[1].(app.Pointer).X)
	require.Equal(t, 1, out.frames, "and then nothing is asked for")
	l.Send(app.Undo{})
	require.Equal(t, 2, out.frames)
}

func TestMovesKeepTheirOrder(t *testing.T) {
	l, _, _, events := recorder(blank)
	move := func(id int, x float64) { l.Point(hand.Event{Kind: hand.Motion, ID: id, X: x}) }
	move(1, 1)
	move(2, 10)
	move(1, 2)
	l.Point(hand.Event{Kind: hand.Wheel, DX: 1, DY: 2})
	l.Point(hand.Event{Kind: hand.Wheel, DX: 3, DY: 4})
	l.Point(hand.Event{Kind: hand.Wheel, DY: 5, Control: true})
	l.Point(hand.Event{Kind: hand.Wheel, DY: 6})
	move(1, 3)
	l.Point(hand.Event{Kind: hand.Up, ID: 1, X: 4})
	var got []hand.Event
	for _, e := range *events {
		got = append(got, e.(app.Pointer).Event)
	}
	require.Equal(t, []hand.Event{
		{Kind: hand.Motion, ID: 1, X: 2}, {Kind: hand.Motion, ID: 2, X: 10},
		{Kind: hand.Wheel, DX: 4, DY: 6}, {Kind: hand.Wheel, DY: 5, Control: true}, {Kind: hand.Wheel, DY: 6},
		{Kind: hand.Motion, ID: 1, X: 3}, {Kind: hand.Up, ID: 1, X: 4},
	}, got)
}

func TestFocusMovesWhenThePageIsThere(t *testing.T) {
	l, out, d, _ := recorder(blank)
	l.Send(app.Go{Job: app.Hang})
	require.Nil(t, d.active)
	require.Equal(t, []app.Effect{app.Again{}, app.Say{Text: "3"}}, out.did)
	l.Frame()
	require.Equal(t, "h2", d.active.tag)
}

func TestFieldFinishedTwiceCountsOnce(t *testing.T) {
	l, _, _, events := recorder(blank)
	entered := app.Entered{Field: app.Field{Key: "length"}, Text: "816"}
	l.Send(entered)
	l.Send(entered)
	require.Len(t, *events, 1)
	l.Send(app.Entered{Field: app.Field{Key: "width"}, Text: "816"})
	require.Len(t, *events, 2)
	l.Frame()
	l.Send(entered)
	require.Len(t, *events, 3)
}

func TestWakesTheHandOnce(t *testing.T) {
	l, out, _, _ := recorder(blank)
	l.Point(hand.Event{Kind: hand.Down, ID: 1, Type: hand.Touch, Primary: true, Time: 100})
	l.Send(app.Undo{})
	require.Equal(t, []float64{600}, out.wakes)
}

// nosy is a document that tells of something while it is changed, as a browser does
// when a field that has the focus loses it.
type nosy struct {
	*fakeDocument
	tell func()
}

func (n nosy) Create(tag string, svg bool) Element {
	n.tell()
	return n.fakeDocument.Create(tag, svg)
}

func TestWhatIsToldDuringAChangeWaits(t *testing.T) {
	l, out, d, events := recorder(blank)
	l.Tree = NewTree(nosy{d, func() {
		l.Send(app.Redo{})
		require.Len(t, *events, 1)
	}}, d.body)
	l.Send(app.Undo{})
	l.Frame()
	require.Equal(t, []app.Event{app.Undo{}, app.Redo{}, app.Redo{}}, *events)
	require.Equal(t, 2, out.frames)
}

func TestVoiceSpacesItsMessages(t *testing.T) {
	var v voice
	speak := func(now float64, want string, wantAgain float64) {
		t.Helper()
		text, again := v.speak(now)
		require.Equal(t, want, text)
		require.Equal(t, wantAgain, again)
	}
	v.say("Undone: move Box")
	speak(0, "Undone: move Box", -1)
	v.say("Undone: move Tray")
	speak(100, "", 400)
	v.say("a")
	v.say("a")
	v.say("b")
	v.say("c")
	speak(500, "a", 500)
	speak(1000, "b", 500)
	speak(1500, "c", -1)
	speak(9000, "", -1)
	v.say("later")
	speak(9000, "later", -1)
}

func TestTwentyStatesStay(t *testing.T) {
	var all []stored
	for i := range 25 {
		all = append(all, stored{revision: i + 1})
	}
	require.ElementsMatch(t, []int{1, 2, 3, 4, 5}, stale(all))
	require.Empty(t, stale(all[:20]))
	require.Empty(t, stale(nil))
}

// However many blank states follow, the last one with something in it stays.
func TestBlankStatesNeverDriveOutTheOnlyCopy(t *testing.T) {
	all := []stored{{revision: 1}, {revision: 2}}
	for i := range 30 {
		all = append(all, stored{revision: 3 + i, blank: true})
	}
	gone := stale(all)
	require.Contains(t, gone, 1)
	require.NotContains(t, gone, 2)
	require.Len(t, gone, 32-21)
}

func TestNobodyStoresOverWhatHeHasNotSeen(t *testing.T) {
	require.True(t, mayFollow(0, 0, 0), "a new job")
	require.True(t, mayFollow(7, 7, 0), "read and changed")
	require.True(t, mayFollow(8, 7, 8), "this page stored it, and has not been told yet")
	require.False(t, mayFollow(9, 7, 8))
	require.False(t, mayFollow(3, 0, 0), "another tab began a job of that id")
}

func TestJobsAreListedNewestFirst(t *testing.T) {
	job := func(at float64, id string) dated { return dated{at, app.Listing{ID: id}} }
	got := newestFirst([]dated{job(1, "j1"), job(3, "j3"), job(3, "j2")})
	require.Equal(t, []app.Listing{{ID: "j2"}, {ID: "j3"}, {ID: "j1"}}, got)
}

// What a frame is too short for follows in turns, one asked for at a time; where the focus
// is to move the page is whole at once.
func TestLargePartsFollowInTurns(t *testing.T) {
	l, out, d, events := recorder(nil)
	wait := 2
	var asked []int
	l.Page = func(_ app.State, most int) (panel.Node, bool) {
		asked = append(asked, most)
		wait = max(wait-most, 0)
		return el("p", text(string('0'+rune(wait)))), wait == 0
	}
	l.Send(app.Undo{})
	l.Frame()
	require.Equal(t, 1, out.turns)
	l.Send(app.Undo{})
	l.Frame()
	require.Equal(t, 1, out.turns, "one is asked for already")
	l.Turn()
	require.Equal(t, 2, out.turns)
	l.Turn()
	require.Equal(t, 2, out.turns, "the page is whole")
	require.Equal(t, []int{0, 0, 1, 1}, asked)
	require.Equal(t, "0", d.body.kids[0].kids[0].text)

	wait = 2
	entered := app.Entered{Field: app.Field{Key: "width"}, Text: "600"}
	l.Send(entered)
	l.Frame()
	before := len(*events)
	l.Send(entered)
	require.Len(t, *events, before, "the field that it was left from is still the one of before")
	l.Turn()
	l.Turn()
	l.Send(entered)
	require.Len(t, *events, before+1)

	wait = 2
	l.Send(app.Go{Job: app.Make})
	turns := out.turns
	l.Frame()
	require.Equal(t, turns, out.turns)
	require.Greater(t, asked[len(asked)-1], 2)
}

// A button in a part that still waits means what it means on the whole page.
func TestWhatStillWaitsIsMadeBeforeItIsHeard(t *testing.T) {
	l, _, d, _ := recorder(nil)
	l.Page = func(_ app.State, most int) (panel.Node, bool) {
		job := app.Job(min(most, 1))
		return on("click", app.Go{Job: job}, el("button")), job == 1
	}
	l.Send(app.Undo{})
	l.Frame()
	press := Signal{On: "click", Mark: d.body.kids[0].mark}
	require.Equal(t, app.Go{Job: 1}, l.Hear(press).Event)
}
