package engine_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine"
	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/link"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

func encoded(t require.TestingT, b engine.Build) string {
	text, err := engine.Encode(b)
	require.NoError(t, err)
	return string(text)
}

func anyPlan(t *rapid.T) plan.Plan { return jobs.RandomPlan(rapid.Uint64().Draw(t, "seed")) }

func TestSamePlanSameBytes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlan(t)
		require.Equal(t, encoded(t, engine.Derive(p, nil)), encoded(t, engine.Derive(p, nil)))
	})
}

// An earlier build only lends; it never changes the answer. Two plans that share
// most of their modules are the usual case, two that share nothing the unusual one.
func TestBeforeOnlyLends(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := anyPlan(t), anyPlan(t)
		first, second := engine.Derive(p, nil), engine.Derive(q, nil)
		require.Equal(t, encoded(t, first), encoded(t, engine.Derive(p, &first)))
		require.Equal(t, encoded(t, first), encoded(t, engine.Derive(p, &second)))
		for _, e := range jobs.RandomEdits(rapid.Uint64().Draw(t, "edits"), p) {
			parsed, err := edit.Decode([]byte(e))
			require.NoError(t, err, e)
			next, _, err := edit.Apply(p, parsed)
			if err != nil {
				continue
			}
			was := engine.Derive(p, nil)
			require.Equal(t, encoded(t, engine.Derive(next, nil)), encoded(t, engine.Derive(next, &was)), e)
			p = next
		}
	})
}

func TestLiveAndReckonEndInDerive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlan(t)
		b, done := engine.DeriveLive(p, nil), false
		for steps := 0; !done; steps++ {
			require.Less(t, steps, 1000)
			b, done = engine.Reckon(b, 1)
		}
		require.Equal(t, encoded(t, engine.Derive(p, nil)), encoded(t, b))
	})
}

func TestBuildSurvivesItsDocument(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := encoded(t, engine.Derive(anyPlan(t), nil))
		back, err := engine.Decode([]byte(text))
		require.NoError(t, err)
		require.Equal(t, text, encoded(t, back))
	})
}

// A link carries the whole plan, names left out unless asked for: the build of what
// arrives is the build of what was sent.
func TestLinkCarriesThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlan(t)
		code, err := link.EncodePlan(p, link.Options{Names: true})
		require.NoError(t, err)
		back, err := link.DecodePlan(code)
		require.NoError(t, err)
		require.Equal(t, encoded(t, engine.Derive(p, nil)), encoded(t, engine.Derive(back, nil)))
	})
}

// Figures that can be read but make no sense stop the thing they belong to, and the
// build can still be written.
func TestAbsurdFiguresStopAndAreWritten(t *testing.T) {
	far := 999_999_999 * unit.Millimetre
	for name, spoil := range map[string]func(*plan.Plan){
		"wall":     func(p *plan.Plan) { p.Walls[0].Width = far },
		"pose":     func(p *plan.Plan) { p.Arrangements[0].Poses[0].X = far },
		"board":    func(p *plan.Plan) { p.Modules[0].Boards[0].Length = document.Some(far) },
		"negative": func(p *plan.Plan) { p.Modules[0].Depth = -far },
		"stud":     func(p *plan.Plan) { p.Walls[0].Studs.Depth = document.Some(far) },
	} {
		p := jobs.M(1)
		text, err := plan.Encode(p)
		require.NoError(t, err)
		p, err = plan.Decode(text) // a copy that shares nothing
		require.NoError(t, err)
		spoil(&p)
		b := engine.Derive(p, nil)
		require.True(t, b.Stops(), name)
		_, err = engine.Encode(b)
		require.NoError(t, err, name)
	}
}
