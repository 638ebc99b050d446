//go:build browser

package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// After zooming in, arrows move the view by taps: what a drag over bare wall does. On the
// smallest window they are there too, of a size for fingers, and nothing is wider than it.
func TestLookingAboutByTaps(t *testing.T) {
	t.Parallel()
	for _, size := range []visitor.Size{visitor.Tablet, visitor.Small} {
		t.Run(size.String(), func(t *testing.T) {
			b := house.Visit(t, size, "").Go("")
			b.Tap("button", "Study")
			b.See("heading", "Arrange")
			b.Calm()
			require.False(t, b.Has("button", "Look right"))
			b.Tap("button", "Zoom in")
			b.Tap("button", "Zoom in")
			b.Calm()
			at := b.Wall(1000, 1000)
			for _, c := range []struct {
				name string
				x, y int
			}{{"Look right", -1, 0}, {"Look up", 0, 1}, {"Look left", 1, 0}, {"Look down", 0, -1}} {
				b.Tap("button", c.name)
				b.Calm()
				to := b.Wall(1000, 1000)
				require.Equal(t, [2]int{c.x, c.y}, [2]int{sign(to.X - at.X), sign(to.Y - at.Y)}, c.name)
				at = to
			}
			require.Equal(t, "true", b.Text(`String(document.documentElement.scrollWidth <= innerWidth)`))
			b.Tap("button", "Fit the wall")
			b.Gone("button", "Look right")
		})
	}
}

func sign(x float64) int {
	switch {
	case x > 1:
		return 1
	case x < -1:
		return -1
	}
	return 0
}
