package jobs_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/testdata/jobs"
)

// The jobs are what a shop would build: the engine has notes about them and says that
// what they carry is not checked, but nothing has to be put right.
func TestJobsNeedNothingPutRight(t *testing.T) {
	for name, p := range map[string]plan.Plan{"One": jobs.One(), "S": jobs.S(), "M": jobs.M(3), "L": jobs.L()} {
		b := engine.Derive(p, nil)
		require.NotEmpty(t, b.Findings)
		for _, f := range b.Findings {
			require.Less(t, f.Kind.Severity, finding.Mend, "%s: %s %v", name, engine.Say(f, b.Style()), f.Place)
		}
	}
}
