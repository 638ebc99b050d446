package module

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/joint"
	"ledgewright/engine/words"
)

// Every kind of the three rooms of wood that is cut has its words, and is declared once.
func TestKindsHaveWords(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range slices.Concat(board.Kinds(), joint.Kinds(), Kinds()) {
		require.False(t, seen[k.Key], k.Key)
		seen[k.Key] = true
		require.True(t, words.Has("finding."+k.Key), k.Key)
		require.NotZero(t, k.Verdict)
		require.NotZero(t, k.Severity)
	}
}
