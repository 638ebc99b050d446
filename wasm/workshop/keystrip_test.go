//go:build browser

package main

import (
	"encoding/json"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// A field of the panel has the strip of keys that pads for figures lack, on the start page
// and in a job: its keys are 44 px, stand where they can be reached and do not cover the
// field, and what they put in is read and set as if it had been typed.
func TestKeysAtTheFootOfThePanel(t *testing.T) {
	t.Parallel()
	for _, size := range []visitor.Size{visitor.Tablet, visitor.Upright, visitor.Phone} {
		t.Run(size.String(), func(t *testing.T) {
			b := house.Visit(t, size, "").Go("")
			b.Tap("radio", "Inches")
			b.Write("Wall width", "116")
			b.Tap("button", "and a half")
			b.Write("Height", "97")
			b.Tap("button", "Draw this wall")
			k := b.Keeps("the wall", func(k visitor.Kept) bool { return len(k.Plan.Walls) == 1 })
			require.Equal(t, "2959.1", k.Plan.Walls[0].Width.Decimal(), "116 1/2 in")

			b.Calm()
			require.False(t, b.Has("group", "Keys"), "no field is in use")
			last := "Stud spacing, in" // on a phone it stands at the foot of the panel
			b.Write(last, "3")
			b.See("group", "Keys")
			b.Spot("textbox", last)
			boxes := keyBoxes(b)
			require.Len(t, boxes, 11)
			for _, box := range boxes {
				require.GreaterOrEqual(t, min(box[0], box[1]), 44.0, "%v", boxes)
			}
			b.Tap("button", "/ over")
			b.Press("8")
			b.Press(kb.Home)
			b.Press("16")
			b.Tap("button", "␣ space") // where the caret stands
			require.Equal(t, last, b.Focused().Name)
			require.Equal(t, "16 3/8", b.Value(b.See("textbox", last)))
			b.Says("16 3/8 in")
			b.Press(enter)
			b.Keeps("the spacing", func(k visitor.Kept) bool { return k.Plan.Walls[0].Studs.Spacing.Value.Decimal() == "415.925" })
		})
	}
}

// keyBoxes are the sizes of the keys of the strip, in pixels.
func keyBoxes(b *visitor.Tab) (boxes [][2]float64) {
	b.T.Helper()
	text := b.Text(`JSON.stringify([...document.querySelectorAll('.docked button')].map(k => { const r = k.getBoundingClientRect(); return [r.width, r.height] }))`)
	require.NoError(b.T, json.Unmarshal([]byte(text), &boxes))
	return boxes
}
