//go:build browser

package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/plan"
	"ledgewright/testdata/visitor"
)

// fills has the page's storage refuse, once full is set, as a browser does whose space is
// used up: by an error in the transaction, or by throwing.
const fills = `window.full = ''
const put = IDBObjectStore.prototype.put
IDBObjectStore.prototype.put = function(value) {
  const error = new DOMException('no more room', 'QuotaExceededError')
  if (full === 'thrown') throw error
  const request = put.call(this, value), tx = this.transaction
  if (full === 'aborted') {
    Object.defineProperty(tx, 'error', {value: error, configurable: true})
    queueMicrotask(() => { try { tx.abort() } catch {} })
  }
  return request
}`

// A storage that is full is explained, and nothing else stops: the plan is changed on and
// saved as a file. Once there is room again, all of it is kept.
func TestFullStorage(t *testing.T) {
	for _, how := range []string{"aborted", "thrown"} {
		t.Run(how, func(t *testing.T) {
			b := house.Visit(t, visitor.Tablet, fills).Go("")
			b.Tap("button", "Study")
			before := b.Keeps("the study", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 4 })
			b.Tap("button", "Box")
			b.Run(`full = '` + how + `'`)
			b.Tap("button", "Duplicate")
			b.Says("Not kept here: save a copy")
			b.Wait("the reason, spoken", func() bool {
				return strings.Contains(b.Text(`[...document.querySelectorAll('[role=alert]')].map(e => e.textContent).join()`), "its space is full")
			})
			now, _ := b.Kept()
			require.Equal(t, before.Plan, now.Plan, "what was kept before is whole")

			saved, err := plan.Decode(savedPlan(b))
			require.NoError(t, err)
			require.Len(t, saved.Modules, 5)
			b.Says("Not kept in this browser: its space is full")

			b.Run(`full = ''`)
			b.Job("Arrange")
			b.Tap("button", "Move up 10 mm")
			b.Keeps("all five", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 5 })
			b.Says("Kept here")
		})
	}
}

// After the first change that is kept the browser is asked to keep it; its answer stands in
// Agree, beside when a copy last left, which is known again after a reload. The notice about
// a week without a visit stays until it is read, and does not come back.
func TestWhatTheBrowserAnswers(t *testing.T) {
	b := house.Visit(t, visitor.Tablet, `window.asked = 0; if (window.StorageManager) {
	  StorageManager.prototype.persist = function() { asked++; return Promise.resolve(false) }
	  StorageManager.prototype.persisted = function() { return Promise.resolve(localStorage.getItem('grant') === 'yes') } }`).Go("")
	b.Tap("button", "Study")
	b.See("heading", "Arrange")
	b.Job("Agree")
	b.Says("The browser may delete it")
	b.Wait("one request", func() bool { return b.Text("String(asked)") == "1" })
	b.See("article", "A week without a visit")
	b.Tap("button", "Understood")
	b.Gone("article", "A week without a visit")

	b.Says("No copy outside yet")
	b.Saved(func() { b.Tap("button", "Save a copy") })
	b.Says("Last copy outside: ")
	b.Wait("the copy to be noted", func() bool { return strings.Contains(b.KeptText(), `"copyAt":"20`) })
	b.Run(`localStorage.setItem('grant', 'yes')`)
	b.Go("")
	b.See("heading", "Agree")
	b.Says("Last copy outside: ")
	b.Says("kept until you delete it")
	b.Run(`localStorage.removeItem('grant')`)
	b.Tap("button", "All jobs")
	b.Says("Kept in this browser")
	require.False(t, b.Has("article", "A week without a visit"))
}

// Help is a tap away on every page, at the same place.
func TestHelpIsATapAway(t *testing.T) {
	b := arrive(t)
	b.Tap("button", "Help")
	b.See("heading", "How this works")
	b.Tap("button", "Back to the job")
	b.See("heading", "Start with the wall")
	b.Tap("button", "Study")
	at := visitor.Point{}
	for _, job := range []string{"Survey", "Arrange", "Make", "Hang", "Agree"} {
		b.Job(job)
		p := b.Spot("button", "Help")
		if at != (visitor.Point{}) {
			require.Equal(t, at, p, job)
		}
		at = p
		b.TapAt(p)
		b.See("heading", "How this works")
		require.Equal(t, "How this works", b.Focused().Name)
	}
}
