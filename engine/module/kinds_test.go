package module

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
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

// What holds for all corners alike is said at the first.
func TestSplinesAreSpokenOfOnce(t *testing.T) {
	m := plan.Module{ID: "m1", Depth: 200 * mm, Wood: "white-oak", Closed: true}
	for range 4 {
		m.Boards = append(m.Boards, plan.Board{Length: document.Some(400 * mm), Thickness: 26 * mm})
		m.Corners = append(m.Corners, plan.Corner{Turn: unit.QuarterTurn, Joint: plan.Mitre, Reinforcement: plan.Reinforcement{Kind: "spline"}})
	}
	r := Derive(m, shop.Default(unit.Metric))
	require.Len(t, r.Findings, 1)
	require.Equal(t, "spline-long", r.Findings[0].Kind.Key)
	require.Equal(t, 1, r.Findings[0].Place.Corner)
}
