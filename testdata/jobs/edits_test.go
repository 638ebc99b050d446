package jobs_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/testdata/jobs"
)

// Every edit can be read; most can be done, and leave a plan that can be written and
// read again.
func TestRandomEditsCanBeReadAndMostlyDone(t *testing.T) {
	done, refused, kinds := 0, 0, map[string]bool{}
	for seed := range uint64(300) {
		p := jobs.RandomPlan(seed)
		require.Equal(t, jobs.RandomEdits(seed, p), jobs.RandomEdits(seed, p))
		for _, line := range jobs.RandomEdits(seed, p) {
			e, err := edit.Decode([]byte(line))
			require.NoError(t, err, line)
			kinds[e.Do()] = true
			next, _, err := edit.Apply(p, e)
			if err != nil {
				refused++
				continue
			}
			done++
			text, err := plan.Encode(next)
			require.NoError(t, err)
			back, err := plan.Decode(text)
			require.NoError(t, err)
			require.Equal(t, next, back, line)
			p = next
		}
	}
	require.Greater(t, done, 5*refused)
	require.Greater(t, len(kinds), 24)
}
