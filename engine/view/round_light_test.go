package view_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/drawing"
	"ledgewright/engine/light"
	"ledgewright/engine/view"
	"ledgewright/testdata/jobs"
)

// woods lists the faces of a board in a picture by id.
func woods(d drawing.Drawing) map[string]float64 {
	out := map[string]float64{}
	for _, it := range d.Items {
		if it.Kind == drawing.WoodKind {
			out[it.ID] = it.Wood.Shade
		}
	}
	return out
}

// A U with its arms down and a strip under its shelf. From above nothing of the light is
// seen; from below the strip is, and the inside of an arm; nothing is darker for it.
func TestRoundInTheEvening(t *testing.T) {
	u := arranged(jobs.One())[0].Open(0)
	strips := func(d drawing.Drawing) (n int) {
		for _, it := range d.Items {
			if it.Line.Tone == "strip" {
				n++
			}
		}
		return n
	}
	for _, c := range []struct {
		pitch float64
		n     int
	}{{70, 0}, {-40, 1}} {
		o := view.RoundOptions{Camera: u.Fit(view.Camera{Yaw: 25, Pitch: c.pitch}, 1)}
		day := u.Draw(o)
		o.Evening = true
		evening := u.Draw(o)
		require.Equal(t, 0, strips(day))
		require.Equal(t, c.n, strips(evening), c.pitch)
		lit := 0
		before := woods(day)
		for id, shade := range woods(evening) {
			require.GreaterOrEqual(t, shade, before[id], id)
			if shade > before[id]+0.01 {
				lit++
			}
		}
		if c.n > 0 {
			require.Positive(t, lit, "the inside of an arm")
		}
	}
}

// The wash has the reach that package light works out, and SVG draws it no farther: the
// half ellipse under the strip goes down to it.
func TestWashReachesAsFarAsItsLight(t *testing.T) {
	at := func(share float64) float64 { return light.WallReach(600*share, 700, 150, false, 20) }
	g := drawing.Glow{From: drawing.Point{X: 100, Y: 500}, To: drawing.Point{X: 800, Y: 500}, Toward: drawing.Point{Y: -1}, Reach: at(1), Kelvin: 3000}
	require.Less(t, at(0.3), g.Reach)
	require.Zero(t, at(0.0001))
	d := drawing.Drawing{Box: drawing.Box{MaxX: 900, MaxY: 600}, Items: []drawing.Item{{ID: "l1/wash", Kind: drawing.GlowKind, Glow: g}}}
	svg := drawing.SVG(d, drawing.SVGOptions{Scale: 1, Theme: drawing.Evening})
	require.Contains(t, svg, `id="lamp-3000"`)
	low := 0.0 // of the paths, from the strip down, on the screen
	for _, path := range strings.Split(svg, ` d="`)[1:] {
		path, _, _ = strings.Cut(path, `"`)
		n := strings.FieldsFunc(path, func(r rune) bool { return !strings.ContainsRune("0123456789.-", r) })
		y, err := strconv.ParseFloat(n[len(n)-1], 64)
		require.NoError(t, err)
		low = max(low, y)
	}
	require.InDelta(t, g.Reach, low, 0.01)
}
