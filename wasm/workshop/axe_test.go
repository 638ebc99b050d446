//go:build browser

package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// accepted lists what axe-core says of this page that is right all the same, by its rule
// and a part of the element or of its own reason. An entry that nothing needs any more
// fails the test too.
var accepted = []struct{ kind, rule, part, why string }{
	{"violations", "target-size", `class="fig`, "WCAG 2.5.8, exception Equivalent: a figure of the picture is a field of the panel too, and a wall point a row of its table, at 44 px; " +
		"besides, the hit box of a figure reaches 13 px beyond it, which axe-core does not see"},
	{"incomplete", "color-contrast", "pseudo element", "the stick's ground is a grain of two tones: see TestContrastOfTokens"},
	{"incomplete", "color-contrast", "contains an image node", "words before the bare wall of the start page: ink on plaster, see TestContrastOfTokens"},
	{"incomplete", "color-contrast", "obscured by another element", "the edge of a box that scrolls: ink on paper, see TestContrastOfTokens"},
	{"incomplete", "color-contrast", "overlaps other elements", "the shadow of the panel, or figures that lie close: see TestContrastOfTokens"},
	{"incomplete", "color-contrast", "overlapped by another element", "a figure of the picture beside a tool or another figure: see TestContrastOfTokens"},
	{"incomplete", "color-contrast", "too short to determine", "a count or a point's number of one digit: see TestContrastOfTokens"},
	{"incomplete", "color-contrast", "Axe encountered an error", "the letters of a drawing that scrolls in its box: ink on leaf, see TestContrastOfTokens"},
	{"incomplete", "label-content-name-mismatch", `aria-label="Add a`, "one letter is all that is to be read, and it is in the name: Add an L"},
}

// A fault is what axe-core says of one element.
type fault struct{ Kind, Rule, Where, Why string }

// accepted returns the number of the entry that accepts a fault, -1 for none.
func (f fault) accepted() int {
	for i, a := range accepted {
		if a.kind == f.Kind && a.rule == f.Rule && (strings.Contains(f.Where, a.part) || strings.Contains(f.Why, a.part)) {
			return i
		}
	}
	return -1
}

// axe runs axe-core over the page as it is.
func axe(b *visitor.Tab) (faults []fault) {
	b.T.Helper()
	source, err := os.ReadFile(filepath.Join(house.Root, "testdata/npm/node_modules/axe-core/axe.min.js"))
	require.NoError(b.T, err, "run testdata/tools.sh")
	if b.Text("typeof axe") == "undefined" {
		b.Do(Evaluate[Void](string(source)))
	}
	text := b.Await(`axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'], resultTypes: ['violations', 'incomplete']}).then(r => {
	  if (r.passes.length < 10) return JSON.stringify([{Kind: 'none', Rule: 'only ' + r.passes.length + ' rules applied'}])
	  return JSON.stringify(['violations', 'incomplete'].flatMap(kind => r[kind].flatMap(v => v.nodes.map(n => ({
	    Kind: kind, Rule: v.id, Where: n.html.slice(0, 160), Why: [...n.any, ...n.all, ...n.none].map(c => c.message).join('; ').slice(0, 200) })))))})`)
	require.NoError(b.T, json.Unmarshal([]byte(text), &faults))
	return faults
}

// On the start page and on every job, at four sizes, by day and in the evening: what
// axe-core finds against WCAG 2.2 AA, and what it cannot decide, is empty, or listed
// above with its reason.
func TestAccessibilityOfEveryJob(t *testing.T) {
	t.Parallel()
	var one sync.Mutex
	needed := map[int]bool{}
	t.Cleanup(func() { // after all sizes
		for i, a := range accepted {
			if !t.Failed() && !needed[i] {
				t.Errorf("not needed any more: %s %s", a.rule, a.part)
			}
		}
	})
	for _, size := range visitor.Sizes() {
		t.Run(size.String(), func(t *testing.T) {
			t.Parallel()
			b := house.Visit(t, size, "").Go("")
			look := func(at string) {
				t.Helper()
				b.Calm()
				said := map[string]int{}
				faults := axe(b)
				one.Lock()
				defer one.Unlock()
				for _, f := range faults {
					if i := f.accepted(); i >= 0 {
						needed[i] = true
						continue
					}
					if said[f.Rule]++; said[f.Rule] <= 3 {
						t.Errorf("%s: %s %s: %s\n%s", at, f.Kind, f.Rule, f.Where, f.Why)
					}
				}
				for rule, n := range said {
					if n > 3 {
						t.Errorf("%s: %s: %d in all", at, rule, n)
					}
				}
			}
			look("start")
			b.Tap("button", "Study")
			b.See("heading", "Arrange")
			for _, view := range []string{"day", "evening"} {
				if view == "evening" {
					b.Job("Arrange")
					b.Tap("button", "Evening")
					b.Until("document.documentElement.dataset.view", view)
				}
				for _, job := range []string{"Survey", "Arrange", "Make", "Hang", "Agree"} {
					b.Job(job)
					look(fmt.Sprint(job, ", ", view))
				}
			}
			toBench(b) // it has one light, whatever that of the page
			look("Make at the bench")
			b.Job("Hang")
			b.See("heading", "Point …")
			look("Hang at the bench")
			b.Tap("button", "All points")
			b.Job("Arrange")
			b.Tap("button", "Box")
			look("a module chosen, evening")
			b.Tap("button", "In the round")
			b.See("slider", "Pull apart")
			look("in the round, evening")
			b.Tap("button", "Only Box")
			b.Tap("button", "Evening")
			b.Until("document.documentElement.dataset.view", "day")
			look("a module in the round, day")
			b.Tap("button", "Evening")
			b.Tap("button", "In the round")
			b.Tap("button", "All jobs")
			b.See("list", "Kept in this browser")
			look("start, evening")
		})
	}
}

// toBench goes to the bench, at its first part.
func toBench(b *visitor.Tab) {
	b.T.Helper()
	b.Job("Make")
	b.Tap("button", "Bench")
	b.Until("document.documentElement.dataset.view", "bench")
}

// On a window of 320 pixels, and on one of a tablet with text of twice the size:
// nothing scrolls sideways but tables and drawings in boxes of their own, no text is cut off, and every
// target is 24 pixels high and wide at least.
func TestNarrowWindowsAndLargeText(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		size visitor.Size
		text string
	}{
		{"320 wide", visitor.Small, ""},
		{"320 by 256", visitor.Size{Width: 320, Height: 256}, ""},
		{"text at 200 %", visitor.Tablet, "200%"},
		{"text at 200 % on a phone", visitor.Phone, "200%"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			b := house.Visit(t, c.size, "").Go("")
			if c.text != "" {
				b.Run(`document.documentElement.style.setProperty('font-size', '` + c.text + `')`)
			}
			look := func(at string) {
				b.Calm()
				for _, line := range strings.Split(b.Text(cramped), "\n") {
					if line != "" {
						t.Errorf("%s: %s", at, line)
					}
				}
			}
			look("start")
			b.Tap("button", "Study")
			eachView(b, look)
		})
	}
}

// eachView goes through all jobs, with a module chosen and at the bench.
func eachView(b *visitor.Tab, look func(at string)) {
	b.T.Helper()
	for _, job := range []string{"Survey", "Arrange", "Make", "Hang", "Agree"} {
		b.Job(job)
		look(job)
	}
	b.Job("Arrange")
	b.Tap("button", "Box")
	look("a module chosen")
	b.Tap("button", "In the round")
	b.See("slider", "Pull apart")
	look("in the round")
	b.Tap("button", "In the round")
	toBench(b)
	look("Make at the bench")
	b.Job("Hang")
	b.See("heading", "Point …")
	look("Hang at the bench")
}

// cramped says what does not fit: sideways scrolling of page and panels, text cut off
// in a control, targets under 24 px without 24 px of room. Targets in a sentence and in
// the picture, whose figures have a hit box of their own, are asked for their hit box.
const cramped = `(() => { const said = []
  const name = e => e.tagName.toLowerCase() + ' “' + (e.getAttribute('aria-label') || e.textContent || e.id).trim().slice(0, 40) + '”'
  if (document.documentElement.scrollWidth > innerWidth) said.push('the page scrolls sideways, ' + document.documentElement.scrollWidth)
  for (const e of document.querySelectorAll('.panel, .panel *, .ledge *, .head *')) {
    if (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && /auto|scroll/.test(getComputedStyle(e).overflowX) && !e.querySelector(':scope > table, :scope > svg'))
      said.push(name(e) + ' scrolls sideways, ' + e.scrollWidth + ' in ' + e.clientWidth)
  }
  const box = e => { const r = e.getBoundingClientRect(), a = getComputedStyle(e, '::after')
    if (a.content === 'none' || a.position !== 'absolute') return [r.width, r.height]
    return [Math.max(r.width, parseFloat(a.width) || 0), Math.max(r.height, parseFloat(a.height) || 0)] }
  for (const e of document.querySelectorAll('button, a[href], input, select, textarea, summary')) {
    const r = e.getBoundingClientRect(), of = e.closest('label') || e
    if (r.width === 0 || getComputedStyle(e).visibility === 'hidden') continue
    const [w, h] = of === e ? box(e) : [of.getBoundingClientRect().width, of.getBoundingClientRect().height]
    if (w < 24 || h < 24) said.push('small target ' + name(e) + ' ' + w.toFixed() + '×' + h.toFixed())
    if (/^(BUTTON|SUMMARY)$/.test(e.tagName) && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflowX === 'hidden')
      said.push('cut off ' + name(e))
    if (e.closest('.panel, .ledge, .head') && (r.right > innerWidth + 1 || r.left < -1) && !e.closest('table')) said.push('outside ' + name(e) + ' ' + r.left.toFixed() + ' to ' + r.right.toFixed())
  }
  return [...new Set(said)].slice(0, 12).join('\n') })()`
