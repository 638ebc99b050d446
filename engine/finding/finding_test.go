package finding

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Worst first, and those of one severity as they stood: what a stable sort gives, written
// the slow way.
func TestWorstFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var all []Finding
		for i, s := range rapid.SliceOf(rapid.IntRange(int(Note), int(Stop))).Draw(t, "severities") {
			all = append(all, Finding{Kind: Kind{Severity: Severity(s)}, Place: Place{Corner: i}})
		}
		was := append([]Finding(nil), all...)
		got := WorstFirst(all)
		require.Equal(t, was, all, "what was given stays as it is")
		require.ElementsMatch(t, all, got)
		for i := 1; i < len(got); i++ {
			a, b := got[i-1], got[i]
			require.True(t, a.Kind.Severity > b.Kind.Severity || a.Kind.Severity == b.Kind.Severity && a.Place.Corner < b.Place.Corner)
		}
	})
	require.Nil(t, WorstFirst([]Finding{}))
}
