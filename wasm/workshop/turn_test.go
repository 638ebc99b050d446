//go:build browser

package main

import (
	"encoding/json"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
	"ledgewright/testdata/visitor"
)

// both watches the place of the first shelf where it stands twice: its figure in the picture and
// its row in the list.
const both = `window.seen = []
new MutationObserver(() => {
  const figure = document.querySelector('.fig[aria-label^="Shelf from the left end"]'), row = document.querySelector('.pieces .on [id^=place-]')
  if (figure && row) seen.push([figure.textContent, row.textContent.match(/([\d.]+) from left/)[1]])
}).observe(document, {subtree: true, childList: true, characterData: true, attributes: true})`

// What is changed in the picture stands in the list a few turns of the page later, however
// it is changed, and until then the list shows what it showed.
func TestListFollowsThePicture(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	n := steps(b)
	b.Run(both)
	agree := func(how, want string) {
		t.Helper()
		var seen [][2]string
		b.Wait("the figure "+want, func() bool {
			seen = nil
			require.NoError(t, json.Unmarshal([]byte(b.Text("JSON.stringify(seen)")), &seen))
			if len(seen) == 0 {
				return false
			}
			last := seen[len(seen)-1]
			return last[0] == last[1] && (want == "" || last[0] == want)
		})
		before := seen[0][1]
		for _, s := range seen {
			require.Contains(t, []string{before, s[0]}, s[1], "%s: figure and list in %v", how, seen)
		}
		b.Run("seen = []")
	}
	b.Tap("button", "Shelf from the left end, mm: …")
	b.Until("document.activeElement.tagName", "INPUT")
	b.Type("300")
	b.Steps(n + 1)
	agree("typed", "300")

	b.TabTo("group", "Wall: …")
	b.Calm()
	b.Run("seen = []") // the way led over remedies, which show what they would do
	for _, want := range []string{"301", "302", "303"} {
		b.Press(arrowRight)
		b.See("button", "Shelf from the left end, mm: "+want)
		agree("by an arrow key", want)
	}

	k := b.Steps(n + 4)
	at := k.Plan.Arrangements[0].Poses[0]
	from := b.Wall(at.X.MM()-330, at.Y.MM())
	b.Down(from)
	for i := range 6 {
		b.Moved(visitor.Point{X: from.X + float64(10*i), Y: from.Y + 30})
	}
	b.Calm()
	b.Run("seen = []")
	b.Up()
	b.Steps(n + 5)
	b.Calm()
	agree("dragged", "")
}

// echoes notes, at the end of the frame that follows a letter, what stands in the field and
// what the page says below it.
const echoes = `window.heard = []
addEventListener('input', e => askFrame(() => { const end = new MessageChannel(), at = e.target
  end.port1.onmessage = () => heard.push([at.value, document.getElementById(at.getAttribute('aria-describedby')?.split(' ').pop())?.textContent || ''])
  end.port2.postMessage(0) }), true)`

// What was understood of a length stands below its field in the frame that follows the
// letter, for every letter of it, in the panel and in the picture.
func TestEchoComesWithTheLetter(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	b.Run(echoes)
	style := unit.Style{System: unit.Metric, Step: unit.Millimetre / 2}
	types := func(where string) {
		t.Helper()
		b.Run("heard = []; document.activeElement.select()")
		for i, letter := range letters {
			b.Press(string(letter))
			b.Until("heard.length", strconv.Itoa(i+1))
			var heard [2]string
			require.NoError(t, json.Unmarshal([]byte(b.Text("JSON.stringify(heard.at(-1))")), &heard))
			require.Equal(t, letters[:i+1], heard[0])
			says := "" // where a text is no length yet, why
			if l, err := unit.ParseLength(heard[0], unit.Metric); err != nil {
				says = err.Error()
			} else {
				says = style.WithUnit(l)
			}
			require.Contains(t, plainly(heard[1]), plainly(says), where)
		}
	}
	b.Tap("textbox", "From the left end, mm")
	b.Until("document.activeElement.tagName", "INPUT")
	types("panel")
	b.Press(escape)
	b.Tap("button", "Width of Shelf, mm: 800")
	b.Until("document.activeElement.id", "f-typing")
	types("picture")
}

// letters are typed one by one: millimetres at first, then feet, and in between no length.
const letters = `7' 3 1/2"`
