package light

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Where the light on the wall is said to have fallen to so many lux it has, by the sum
// over many points of the strip.
func TestWallReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lumens, long := rapid.Float64Range(200, 2000).Draw(t, "lumens"), rapid.Float64Range(300, 2000).Draw(t, "long")
		off, back := rapid.Float64Range(10, 300).Draw(t, "off"), rapid.Bool().Draw(t, "back")
		lux := rapid.Float64Range(10, 100).Draw(t, "lux")
		y := WallReach(lumens, long, off, back, lux)
		l := Line{From: Spot{-long / 2, 0, off}, To: Spot{long / 2, 0, off}, Out: Spot{0, -1, 0}, Lumens: lumens}
		if back {
			l.Out = Spot{0, 0, -1}
		}
		if y > 0 {
			s := Scene{Lines: []Line{l}}
			require.InEpsilon(t, lux, s.Lux(Spot{0, -y, 0}, Spot{0, 0, 1}), 0.01)
		}
	})
	require.Zero(t, WallReach(600, 1000, 0, true, 50), "without a distance nothing can be said")
}
