//go:build browser

package main

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// The page's process is killed again and again. What was seen to be kept is there when
// the page is opened again; where nobody waited for that, at most the last change is lost,
// and what was before it is whole.
func TestKilledTwentyTimes(t *testing.T) {
	t.Parallel()
	b := aWall(t)
	kept := ""
	for i := range 20 {
		waits := i%2 == 0
		now := fmt.Sprint("kitchen ", i)
		b.Fill("On the other side", now)
		if waits {
			b.Keeps(now, func(k visitor.Kept) bool { return k.Plan.Walls[0].FarSide == now })
		}
		b.Kill()
		b.See("heading", "Survey")
		k, ok := b.Kept()
		require.True(t, ok, "round %d", i)
		require.Equal(t, k.Plan.Walls[0].FarSide, b.Value(b.See("textbox", "On the other side")), "what is kept is what is shown")
		if waits || k.Plan.Walls[0].FarSide != kept {
			require.Equal(t, now, k.Plan.Walls[0].FarSide, "round %d", i)
		}
		require.NotEmpty(t, k.Steps, "the steps are there too")
		kept = k.Plan.Walls[0].FarSide
	}
	b.See("button", "Undo: …")
}
