package plan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
)

// A remedy that carries an edit must help: the edit can be done, and the finding is
// gone afterwards.
func TestRemediesHelp(t *testing.T) {
	done := 0
	for _, c := range wrongPlans() {
		p := sample()
		c.change(&p)
		for _, f := range plan.Check(p) {
			for _, r := range f.Remedies {
				if r.Edit.Do == "" {
					continue
				}
				e, err := edit.From(r.Edit)
				require.NoError(t, err, "%s: %s", c.path, r.Key)
				next, _, err := edit.Apply(p, e)
				require.NoError(t, err, "%s: %s", c.path, r.Key)
				for _, after := range plan.Check(next) {
					require.NotEqual(t, [2]string{f.Kind.Key, f.Place.Path}, [2]string{after.Kind.Key, after.Place.Path}, "%s: %s", c.path, r.Key)
				}
				done++
			}
		}
	}
	require.Greater(t, done, 25)
}
