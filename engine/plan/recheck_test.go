package plan_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

// Over random plans, edits and poses, also such as no wall has room for, checking again
// finds what a check of the whole finds.
func TestRecheckIsCheck(t *testing.T) {
	moved, found := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		was := jobs.RandomPlan(rapid.Uint64Range(0, 1<<40).Draw(t, "seed"))
		checked := plan.Check(was)
		for range rapid.IntRange(1, 6).Draw(t, "steps") {
			p := was
			if rapid.IntRange(0, 4).Draw(t, "edit") == 0 {
				lines := jobs.RandomEdits(rapid.Uint64Range(0, 1<<40).Draw(t, "edits"), was)
				e, err := edit.Decode([]byte(rapid.SampledFrom(lines).Draw(t, "line")))
				require.NoError(t, err)
				if next, _, err := edit.Apply(was, e); err == nil {
					p = next
				}
			} else {
				p = carriedOff(t, was)
			}
			want := plan.Check(p)
			require.Equal(t, want, plan.Recheck(p, was, checked))
			if len(checked) == 0 && slices.ContainsFunc(want, func(f finding.Finding) bool { return f.Place.Module != "" }) {
				found++
			}
			moved++
			was, checked = p, want
		}
	})
	require.Greater(t, found, moved/50, "some poses were found to be out of order")
}

// carriedOff moves a module of a plan to a place that may lie far off its wall.
func carriedOff(t *rapid.T, p plan.Plan) plan.Plan {
	p.Arrangements = slices.Clone(p.Arrangements)
	for i := range p.Arrangements {
		a := &p.Arrangements[i]
		if len(a.Poses) == 0 {
			continue
		}
		a.Poses = slices.Clone(a.Poses)
		q := &a.Poses[rapid.IntRange(0, len(a.Poses)-1).Draw(t, "pose")]
		q.X = unit.Length(rapid.Int64Range(-60, 110).Draw(t, "x")) * unit.Metre
		q.Y = unit.Length(rapid.Int64Range(-25, 45).Draw(t, "y")) * unit.Metre
		q.Turn = unit.Angle(rapid.Int64Range(-20, 380).Draw(t, "turn")) * unit.Degree
	}
	return p
}
