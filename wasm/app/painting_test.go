package app

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The place of the bare wall under a finger stays under it, step by step.
func TestBareWallFollowsTheFinger(t *testing.T) {
	s := aShelf(t)
	const x, y = 200, 2300
	require.Empty(t, s.modulesAt(x, y))
	for _, to := range [][2]float64{{1500, 1200}, {260, 2250}} {
		px, py := s.Camera.Pixel(to[0], to[1], s.Size)
		s, _ = play(s, stroke(s, x, y, to[0], to[1])...)
		atX, atY := s.Camera.Pixel(x, y, s.Size)
		require.InDelta(t, px, atX, 1e-6)
		require.InDelta(t, py, atY, 1e-6)
		s, _ = play(s, Fit{})
	}
}

// The address says who paints until the maker does, whose choice is kept.
func TestWhoPaints(t *testing.T) {
	s, _ := play(State{}, Started{Picture: "svg", Settings: Settings{Picture: "stage"}}, Stage{Why: "software"})
	require.Equal(t, "svg address", s.Picture()+" "+s.WhyPlain())
	for _, c := range []struct{ value, picture, why string }{{"any", "", "software"}, {"svg", "svg", "chosen"}, {"stage", "stage", "software"}} {
		var effects []Effect
		s, effects = play(s, Set{Name: "picture", Value: c.value})
		require.Equal(t, []Effect{KeepSettings{s.Settings}}, effects)
		require.Equal(t, c.picture+" "+c.why, s.Picture()+" "+s.WhyPlain())
		require.Equal(t, c.picture, s.Settings.Picture)
	}
	s, _ = play(s, Stage{Shown: true})
	require.Equal(t, Painting{Shown: true}, s.Painted)
}
