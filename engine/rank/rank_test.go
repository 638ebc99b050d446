package rank_test

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/rank"
)

// TestAsTheStandardLibrary compares with slices.SortStableFunc: many equal keys, and
// lengths to both sides of what is inserted and of what needs no memory.
func TestAsTheStandardLibrary(t *testing.T) {
	type thing struct {
		key, at int
		text    string
	}
	rapid.Check(t, func(t *rapid.T) {
		keys := rapid.SliceOfN(rapid.IntRange(-5, 20), 0, 80).Draw(t, "keys")
		var got []thing
		for i, k := range keys {
			got = append(got, thing{k, i, strings.Repeat("x", i)})
		}
		want := slices.Clone(got)
		by := func(a, b thing) int { return cmp.Compare(a.key, b.key) }
		slices.SortStableFunc(want, by)
		rank.By(got, by)
		require.Equal(t, want, got)
		sorted := slices.Clone(keys)
		slices.Sort(sorted)
		rank.Up(keys)
		require.Equal(t, sorted, keys)
	})
}

func TestUp(t *testing.T) {
	words := []string{"oak", "ash", "elm", "ash"}
	rank.Up(words)
	require.Equal(t, []string{"ash", "ash", "elm", "oak"}, words)
	rank.Up[float64](nil)
}
