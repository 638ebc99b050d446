package app

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/document"
	"ledgewright/testdata/jobs"
)

// A plan written from what was written before is the plan written anew, after any edits.
func TestPlansAreWrittenAsAnew(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := State{Screen: AtWork, Plan: jobs.RandomPlan(rapid.Uint64().Draw(t, "plan"))}
		var w *written
		for _, line := range jobs.RandomEdits(rapid.Uint64().Draw(t, "edits"), s.Plan) {
			s, _ = Step(s, DoLine{Line: line})
			got, next, err := w.tree(s.Plan)
			require.NoError(t, err)
			want, err := document.Tree(s.Plan)
			require.NoError(t, err)
			require.Equal(t, canonical(t, want), canonical(t, got))
			w = next
		}
	})
}

func canonical(t require.TestingT, n document.Node) string {
	text, err := n.Canonical()
	require.NoError(t, err)
	return string(text)
}
