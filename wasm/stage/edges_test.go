//go:build browser

package main

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"testing"

	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/drawing"
	"ledgewright/testdata/visitor"
)

// The SVG in a browser is the other painter of the same drawings: what one draws, the
// other draws too, in the same place.

// A strong edge is a step between neighbouring pixels of so many of 255 in one of the
// colours; where one painter has it, the other must have one at least half as strong, at
// most a pixel away.
const (
	strong = 44
	weak   = strong / 2
)

// step is how much a picture changes at a pixel, to the right or downwards.
func step(m image.Image, x, y int) int {
	at := func(x, y int) [3]int {
		r, g, b, _ := m.At(x, y).RGBA()
		return [3]int{int(r >> 8), int(g >> 8), int(b >> 8)}
	}
	most, p := 0, at(x, y)
	for _, q := range [][3]int{at(x+1, y), at(x, y+1)} {
		for i := range p {
			most = max(most, p[i]-q[i], q[i]-p[i])
		}
	}
	return most
}

// steps works them all out.
func steps(m image.Image, in image.Rectangle) map[image.Point]int {
	out := map[image.Point]int{}
	for y := in.Min.Y; y < in.Max.Y; y++ {
		for x := in.Min.X; x < in.Max.X; x++ {
			if s := step(m, x, y); s >= weak {
				out[image.Pt(x, y)] = s
			}
		}
	}
	return out
}

// missing lists the strong edges of one picture that the other does not have nearby.
func missing(one, other map[image.Point]int) (out []image.Point, n int) {
	for p, s := range one {
		if s < strong {
			continue
		}
		n++
		found := false
		for dy := -1; dy <= 1 && !found; dy++ {
			for dx := -1; dx <= 1 && !found; dx++ {
				found = other[p.Add(image.Pt(dx, dy))] >= weak
			}
		}
		if !found {
			out = append(out, p)
		}
	}
	return out, n
}

// plain is a drawing whose boards have no grain, which the two painters draw differently
// on purpose.
func plain(d drawing.Drawing) drawing.Drawing {
	items := make([]drawing.Item, len(d.Items))
	for i, it := range d.Items {
		if it.Kind == drawing.WoodKind {
			it.Kind, it.Tone, it.Wood = drawing.PathKind, "stud", drawing.Wood{}
		}
		items[i] = it
	}
	d.Items = items
	return d
}

// moved is what a picture's edges would be two pixels beside.
func moved(edges map[image.Point]int) map[image.Point]int {
	out := map[image.Point]int{}
	for p, s := range edges {
		out[p.Add(image.Pt(2, 2))] = s
	}
	return out
}

// both photographs a drawing by both painters.
func (h *host) both(name string, d drawing.Drawing) (stage, svg image.Image, in image.Rectangle) {
	h.T.Helper()
	s, x, y := fit(d.Box, h.Size)
	h.show(name, d, false, s, x, y)
	stage = h.photograph()
	left, top := x+s*d.Box.MinX, y-s*d.Box.MaxY
	require.Empty(h.T, h.Await(fmt.Sprintf(`host.svg(%q, %v, %v)`, fmt.Sprintf("%s.svg?scale=%v", name, s), left, top)))
	svg = h.photograph()
	require.Empty(h.T, h.Await(`host.plain()`))
	in = image.Rect(int(left)+3, int(top)+3, int(left+s*d.Box.Width())-3, int(top+s*d.Box.Height())-3)
	return stage, svg, in
}

func (h *host) photograph() image.Image {
	h.T.Helper()
	b, err := Run(h.Ctx, CaptureScreenshot())
	require.NoError(h.T, err)
	m, err := png.Decode(bytes.NewReader(b))
	require.NoError(h.T, err)
	return m
}

func TestBothPaintersAgreeOnEdges(t *testing.T) {
	h := open(t, visitor.Size{Width: 840, Height: 600})
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		stage, svg, in := h.both(name+"-day", plain(wall(p, false)))
		a, b := steps(stage, in), steps(svg, in)
		onlySVG, n := missing(b, a)
		onlyStage, m := missing(a, b)
		t.Logf("%s: %d edges of the SVG, %d missing; %d of the stage, %d missing", name, n, len(onlySVG), m, len(onlyStage))
		require.Greater(t, n, 500, name)
		require.Empty(t, onlySVG, "%s: edges that the stage has not", name)
		require.Empty(t, onlyStage, "%s: edges that only the stage has", name)
		beside, _ := missing(b, moved(a))
		require.NotEmpty(t, beside, "a picture two pixels beside is told from it")
	}
}
