package view_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/drawing"
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
