package plan_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/testdata/jobs"
)

// Random plans survive both of their texts, and a check of them twice says the same.
func TestRandomPlansSurviveTheirDocument(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := jobs.RandomPlan(rapid.Uint64().Draw(t, "seed"))
		text, err := plan.Encode(p)
		require.NoError(t, err)
		back, err := plan.Decode(text)
		require.NoError(t, err)
		require.Equal(t, p, back)
		pretty, err := plan.Pretty(p)
		require.NoError(t, err)
		back, err = plan.Decode(pretty)
		require.NoError(t, err)
		require.Equal(t, p, back)
		require.Equal(t, plan.Check(p), plan.Check(back))
	})
}

// A job as large as a plan may be must stay far below the limit of its text.
func TestTheLargestJobFitsItsLimit(t *testing.T) {
	text, err := plan.Encode(jobs.L())
	require.NoError(t, err)
	pretty, err := plan.Pretty(jobs.L())
	require.NoError(t, err)
	t.Logf("200 modules: %d bytes canonical, %d for people", len(text), len(pretty))
	require.Less(t, len(pretty)*plan.MostModules/200, plan.MostBytes)
}

// A text cut anywhere is refused, and says where.
func TestCutTextsAreRefused(t *testing.T) {
	text, err := plan.Encode(sample())
	require.NoError(t, err)
	for n := range len(text) {
		_, err := plan.Decode(text[:n])
		var e *document.Error
		require.ErrorAs(t, err, &e, "cut at %d", n)
		require.Equal(t, 1, e.Line)
		require.InDelta(t, n, e.Column, 45, "cut at %d: where the value began that was cut", n)
	}
}

func BenchmarkCheckM(b *testing.B) {
	p := jobs.M(1)
	b.ReportAllocs()
	for b.Loop() {
		plan.Check(p)
	}
}

func BenchmarkDecodeM(b *testing.B) {
	text, err := plan.Encode(jobs.M(1))
	require.NoError(b, err)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := plan.Decode(text); err != nil {
			b.Fatal(err)
		}
	}
}
