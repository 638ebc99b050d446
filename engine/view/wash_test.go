package view_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/view"
)

// What a strip throws on the wall in the picture follows its own light: with more of it
// the wash reaches farther, and its colour is the strip's.
func TestWashFollowsTheStrip(t *testing.T) {
	p, err := assets.Plan("study")
	require.NoError(t, err)
	b := engine.Derive(p, nil)
	w, _ := p.Wall(b.Arrangements[0].Wall)
	wash := func(lumens, kelvin float64) drawing.Glow {
		for i := range b.Modules {
			for k := range b.Modules[i].Strips {
				b.Modules[i].Strips[k].Lumens, b.Modules[i].Strips[k].Kelvin = lumens, kelvin
			}
		}
		for _, it := range view.Wall(w, b.Arrangements[0], b.Modules, view.Options{Style: b.Style(), Evening: true}).Items {
			if it.Kind == drawing.GlowKind {
				return it.Glow
			}
		}
		require.Fail(t, "there is no light")
		return drawing.Glow{}
	}
	last := 0.0
	for _, lumens := range []float64{200, 400, 800, 1600} {
		g := wash(lumens, 4000)
		require.Greater(t, g.Reach, last, "%v lm/m", lumens)
		require.Equal(t, 4000.0, g.Kelvin)
		last = g.Reach
	}
	require.Less(t, last, 1700.0, "a wall is no taller than two and a half metres")
	require.Equal(t, 640.0, wash(0, 0).Reach, "of a light that is not known")
}
