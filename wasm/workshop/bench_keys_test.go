//go:build browser

package main

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// Make and Hang by keys alone: the part list, the drawings, the cards of the bench and the
// points of the wall are gone through, nothing holds the focus, and it is always seen.
func TestKeysAloneInMakeAndHang(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, "").Go("")
	b.TabTo("button", "Porch")
	b.Press(enter)
	b.See("heading", "Arrange")
	b.TabTo("button", "Make")
	b.Press(enter)
	b.See("heading", "Make")

	way := around(b)
	for _, want := range []string{"button Part 1, ", "region Parts", "button Bench", "button Undo", "button Hang"} {
		require.True(t, slices.ContainsFunc(way, func(s string) bool { return strings.HasPrefix(s, want) }), "%s on the way %q", want, way)
	}
	require.True(t, slices.ContainsFunc(way, func(s string) bool {
		return strings.HasPrefix(s, "region ") && strings.Contains(s, "drawing") || strings.HasPrefix(s, "region Drawing")
	}),
		"the drawing on the way %q", way)
	turned(b, "Bench", "Part", "All parts")

	b.TabTo("button", "Hang")
	b.Press(enter)
	b.See("heading", "Hang")
	way = around(b)
	for _, want := range []string{"textbox Level line above the floor", "region Wall points, mm", "button Point 1, ", "button Bench"} {
		require.True(t, slices.ContainsFunc(way, func(s string) bool { return strings.HasPrefix(s, want) }), "%s on the way %q", want, way)
	}
	b.TabTo("button", "Point 1, …")
	b.Press(" ")
	b.Wait("the point to be chosen", func() bool { return b.See("button", "Point 1, …").State("pressed") == "true" })
	turned(b, "Bench", "Point", "All points")
}

// turned goes to the bench by keys, turns all its cards over, and comes back.
func turned(b *visitor.Tab, to, card, back string) {
	b.T.Helper()
	b.TabTo("button", to)
	b.Press(" ")
	b.Until("document.documentElement.dataset.view", "bench")
	first := b.See("heading", card+" …").Name
	_, all, _ := strings.Cut(first, " of ")
	seen := []string{first}
	if all != "1" {
		b.TabTo("button", "Next: …")
		for len(seen) < 40 {
			was := seen[len(seen)-1]
			b.Press(enter)
			b.Gone("heading", was)
			now := b.See("heading", card+" …").Name
			require.True(b.T, strings.HasPrefix(b.Focused().Name, "Next: "), "the focus stays on %s", b.Focused().Name)
			if now == first {
				break
			}
			seen = append(seen, now)
		}
	}
	require.Equal(b.T, all, strconv.Itoa(len(seen)), "%q", seen)
	around(b)
	b.TabTo("button", back)
	b.Press(enter)
	b.Until("document.documentElement.dataset.view", "day")
}

// around goes once round the page with the Tab key and then backwards as far, and returns
// the stops. Each is shown: with an outline, in the window, and not covered.
func around(b *visitor.Tab) (way []string) {
	b.T.Helper()
	b.Calm()
	for range 200 {
		b.Press(tab)
		if b.Text(`document.activeElement === document.body`) == "true" {
			continue // past the end; next comes the beginning
		}
		at := b.Focused()
		stop := at.Role + " " + at.Name
		if len(way) > 0 && stop == way[0] {
			break
		}
		if fault := b.Text(focusSeen); fault != "" {
			require.Fail(b.T, "the focus is not seen", "%s: %s", stop, fault)
		}
		way = append(way, stop)
	}
	require.Less(b.T, len(way), 200, "a way round: %q", way)
	require.Greater(b.T, len(way), 5)
	return way
}

// focusSeen says what is wrong with how the focus is shown: nothing if it is seen.
const focusSeen = `(() => { const e = document.activeElement, of = [e, e.closest('label'), e.closest('.field')].filter(Boolean)
  const drawn = of.some(x => { const s = getComputedStyle(x); return s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2 })
  if (!drawn) return 'no outline'
  const r = (e.closest('label') || e).getBoundingClientRect()
  const x0 = Math.max(r.left, 0), x1 = Math.min(r.right, innerWidth), y0 = Math.max(r.top, 0), y1 = Math.min(r.bottom, innerHeight)
  if (x1 - x0 < 4 || y1 - y0 < 4) return 'outside the window'
  for (const fy of [.5, .2, .8]) for (const fx of [.5, .1, .9]) {
    const at = document.elementFromPoint(x0 + fx * (x1 - x0), y0 + fy * (y1 - y0))
    if (at && (at === e || e.contains(at) || at.contains(e) && at.closest('label') === e.closest('label') && at.tagName === 'LABEL' || of.some(o => o.contains(at)))) return ''
  }
  return 'covered' })()`
