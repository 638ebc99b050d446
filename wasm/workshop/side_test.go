//go:build browser

package main

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// Who draws with the left hand has panel, jobs and tools at the left, by a choice that is
// kept: the boxes of the page are mirrored, on a tablet whichever way it is held.
func TestLeftHand(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, "").Go("")
	b.Tap("button", "Study")
	b.See("heading", "Arrange")
	right := sides(b)
	require.Less(t, right["wall"], right["panel"])
	require.Less(t, right["panel"], right["jobs"])
	require.Less(t, right["undo"], right["show"])

	b.Job("Agree")
	b.Tap("radio", "at the left")
	b.Until(`document.querySelector('.app').dataset.side`, "left")
	b.Job("Arrange")
	left := sides(b)
	require.Less(t, left["jobs"], left["panel"])
	require.Less(t, left["panel"], left["wall"])
	require.Less(t, left["show"], left["undo"])
	require.InDelta(t, right["wide"], left["wide"], 0.5, "as much wall as for the right hand")

	// A drag works as well: the wall begins beside the panel.
	b.Tap("button", "Box")
	at := pose(b, "m2")
	from := b.Wall(at.X, at.Y)
	b.Stroke(from, visitor.Point{X: from.X + 40, Y: from.Y + 60}, 8)
	b.Steps(1)

	b.Reload()
	b.See("heading", "Arrange")
	require.Equal(t, "left", b.Text(`document.querySelector('.app').dataset.side`))
	b.Resize(visitor.Upright)
	b.Calm()
	require.Less(t, sides(b)["show"], sides(b)["undo"])
}

// sides are the middles of the page's parts, from the left edge of the window.
func sides(b *visitor.Tab) map[string]float64 {
	b.T.Helper()
	b.Calm()
	var out map[string]float64
	text := b.Text(`JSON.stringify((() => { const m = q => { const r = document.querySelector(q).getBoundingClientRect(); return r.left + r.width / 2 }
	  return {wall: m('main'), panel: m('aside'), jobs: m('nav'), undo: m('main .tools > :first-child'), show: m('main .tools > :last-child'),
	    wide: document.querySelector('main').getBoundingClientRect().width} })())`)
	require.NoError(b.T, json.Unmarshal([]byte(text), &out), text)
	return out
}

// pose is where a module hangs in the first arrangement, in millimetres.
func pose(b *visitor.Tab, module string) visitor.Point {
	b.T.Helper()
	k := b.Keeps("the module", func(k visitor.Kept) bool { return len(k.Plan.Arrangements) > 0 })
	for _, p := range k.Plan.Arrangements[0].Poses {
		if p.Module == module {
			return visitor.Point{X: p.X.MM(), Y: p.Y.MM()}
		}
	}
	require.Fail(b.T, "not on the wall", module)
	return visitor.Point{}
}
