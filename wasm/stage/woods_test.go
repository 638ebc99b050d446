//go:build browser

package main

import (
	"image"
	"path"
	"testing"

	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/engine/drawing"
	"ledgewright/engine/wood"
	"ledgewright/testdata/visitor"
)

// samples are woods of every kind of figure: strong and faint rings, many pores and none,
// pale and dark.
func samples() []string {
	return []string{
		"white-oak", "northern-red-oak", "white-ash", "black-walnut", "sugar-maple", "black-cherry", "american-beech", "western-larch",
		"american-elm", "eastern-white-pine", "teak", "mahogany", "douglas-fir-coast", "western-redcedar",
	}
}

// boards is a sheet of them: a face, an edge and an end of each.
func boards(t *testing.T) drawing.Drawing {
	d := drawing.Drawing{Box: drawing.Box{MaxX: 1800, MaxY: 1280}}
	d.Items = append(d.Items, drawing.Item{Kind: drawing.PathKind, Tone: "plaster", Path: drawing.Rect(0, 0, 1800, 1280)})
	for i, id := range samples() {
		_, ok := wood.Find(id)
		require.True(t, ok, id)
		x, y := 20+float64(i%2)*890, 1100-float64(i/2)*178
		add := func(left, bottom, width, height float64, w drawing.Wood) {
			w.Species, w.Seed, w.Origin = id, uint64(7777*(i+1)), drawing.Point{X: left, Y: bottom}
			d.Items = append(d.Items, drawing.Item{Kind: drawing.WoodKind, Path: drawing.Rect(left, bottom, width, height), Wood: w, Line: drawing.Line{Tone: "edge", Width: 1}})
		}
		along, across := drawing.Point{X: 1}, drawing.Point{Y: 1}
		add(x, y+40, 760, 120, drawing.Wood{Along: along, Across: across})
		add(x, y, 760, 34, drawing.Wood{Along: along, Across: across, Edge: true})
		add(x+775, y, 40, 160, drawing.Wood{Along: across, Across: along, End: true})
	}
	return d
}

// differ counts the pixels of two pictures that are not the same, one moved so far to the
// right, by more than the last bits of a sum.
func differ(a, b image.Image, moved int) (n int) {
	r := a.Bounds().Inset(40)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X-moved; x++ {
			p, q, s, _ := a.At(x, y).RGBA()
			u, v, w, _ := b.At(x+moved, y).RGBA()
			if apart(p, u) || apart(q, v) || apart(s, w) {
				n++
			}
		}
	}
	return n
}

func apart(a, b uint32) bool { return max(a, b)-min(a, b) > 3<<8 }

// A board's figure hangs on its plank alone: the same after the program has begun anew,
// and the same when the picture has moved.
func TestWoodIsTheSameEveryTime(t *testing.T) {
	h := open(t, visitor.Size{Width: 900, Height: 640})
	d := boards(t)
	s, x, y := fit(d.Box, h.Size)
	h.show("woods", d, false, s, x, y)
	first := h.photograph()
	h.Photograph(path.Join(house.Root, "build", "stage", "woods.png"))
	h.Run(`host.pan(20, 0)`)
	require.Less(t, differ(first, h.photograph(), 20), 40, "moved")
	require.Greater(t, differ(first, h.photograph(), 0), 10_000, "what has moved is seen to have moved")
	h.Run(`host.pan(-20, 0)`)
	h.Do(Evaluate[Void](`{ host.ready = 0; host.stage().location.reload() }`))
	arrives(h.Tab, `host.ready`, "1")
	require.Zero(t, differ(first, h.photograph(), 0), "begun anew")
}
