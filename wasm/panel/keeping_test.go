package panel

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/wasm/app"
)

// sectionText is the text of a part of the page.
func sectionText(t *testing.T, s app.State, key string) string {
	t.Helper()
	n, ok := nodeIn(Page(&s), key)
	require.True(t, ok, key)
	return textIn(n)
}

// What the browser has said of how long it keeps a job stands where jobs are kept: in the
// list of jobs and in Agree. The notice about a week without a visit stands there too until
// it is read, and nowhere covers anything.
func TestWordsWhereJobsAreKept(t *testing.T) {
	listed := app.Listed{Jobs: []app.Listing{{ID: "j1", Title: "Porch", Summary: "1 module", At: "14:02"}}}
	for key, s := range map[string]app.State{
		"jobs":    steps(startPage(), listed),
		"keeping": steps(opened(t, "study"), app.Go{Job: app.Agree}),
	} {
		text := sectionText(t, s, key)
		require.NotContains(t, text, "until you delete it")
		require.NotContains(t, text, "may delete it")
		require.Contains(t, text, "not visited for a week")
		s = steps(s, app.Persisted{})
		require.Contains(t, sectionText(t, s, key), "The browser may delete it")
		button, ok := nodeIn(Page(&s), "week-read")
		require.True(t, ok)
		read := steps(s, eventOn(button, "click"))
		require.NotContains(t, sectionText(t, read, key), "not visited for a week")
		require.Contains(t, sectionText(t, read, key), "The browser may delete it")
		s = steps(s, app.Persisted{Lasts: true})
		require.Contains(t, sectionText(t, s, key), "kept until you delete it")
		require.NotContains(t, sectionText(t, s, key), "not visited for a week")
		_, modal := nodeIn(Page(&s), "dialog")
		require.False(t, modal)
	}
}

// When the last copy left stands in the head and in Agree; a reminder takes its place in
// the head.
func TestTheLastCopyIsShown(t *testing.T) {
	s := steps(opened(t, "study"), app.Kept{Revision: 1, Now: "14:02"})
	require.Contains(t, sectionText(t, s, "kept"), "No copy outside yet")
	s = steps(s, app.Clock{Now: "15:30", Today: "2026-05-31"}, app.Done{What: "plan"}, app.Clock{Now: "08:00", Today: "2026-06-02"}, app.Go{Job: app.Agree})
	require.Contains(t, sectionText(t, s, "kept"), "Last copy outside: 2026-05-31 15:30")
	require.Contains(t, sectionText(t, s, "last-copy"), "Last copy outside: 2026-05-31 15:30")
	s = steps(s, app.Go{Job: app.Survey})
	for i := range 6 {
		s = steps(s, app.DoLine{Line: `{"schema":"ledgewright/edit/1","do":"set-job","note":"` + strconv.Itoa(i) + `"}`})
	}
	require.Contains(t, sectionText(t, s, "kept"), "Last copy outside")
	s = steps(s, app.Go{Job: app.Agree})
	require.Contains(t, sectionText(t, s, "kept"), "6 changes have no copy outside")
	require.Contains(t, sectionText(t, s, "last-copy"), "6 changes have no copy outside")
	s = steps(s, app.Done{What: "link"})
	require.NotContains(t, sectionText(t, s, "kept"), "no copy")
}

// A storage that takes nothing more is explained, with what still works.
func TestFullStorageIsExplained(t *testing.T) {
	s := steps(opened(t, "study"), app.Kept{Revision: 1, Err: "its space is full"}, app.Go{Job: app.Agree})
	require.Contains(t, sectionText(t, s, "kept"), "Not kept here")
	require.Contains(t, sectionText(t, s, "keeping"), "Not kept in this browser: its space is full")
	require.Contains(t, sectionText(t, s, "keeping"), "save a copy now")
	copying, ok := nodeIn(Page(&s), "keep-copy")
	require.True(t, ok)
	_, effects := app.Step(s, eventOn(copying, "click"))
	require.Len(t, effects, 1)
	require.IsType(t, app.Save{}, effects[0])
}

// Help stands at one place, in the head of the start page and of every job, and opens in
// the panel's; another job closes it.
func TestHelpIsAtOnePlace(t *testing.T) {
	pages := []app.State{startPage()}
	for _, job := range []app.Job{app.Survey, app.Arrange, app.Make, app.Hang, app.Agree} {
		pages = append(pages, steps(opened(t, "study"), app.Go{Job: job}))
	}
	for i, s := range pages {
		head, ok := nodeIn(Page(&s), "head")
		require.True(t, ok)
		button, ok := nodeIn(head, "help")
		require.True(t, ok, "page %d", i)
		s = steps(s, eventOn(button, "click"))
		page := Page(&s)
		require.Empty(t, faults(page))
		panel, ok := nodeIn(page, "panel")
		require.True(t, ok)
		require.Contains(t, textIn(panel), "How this works")
		closing, ok := nodeIn(panel, "help-close")
		require.True(t, ok)
		s = steps(s, eventOn(closing, "click"))
		require.NotContains(t, sectionText(t, s, "panel"), "How this works")
	}
	s := steps(pages[1], app.Show{What: app.Help}, app.Go{Job: app.Make})
	require.NotContains(t, sectionText(t, s, "panel"), "How this works")
}
