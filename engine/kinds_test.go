package engine_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/testdata/jobs"
)

func TestEveryKindIsDeclaredOnceAndHasWords(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range engine.Kinds() {
		require.False(t, seen[k.Key], "%s is declared twice", k.Key)
		seen[k.Key] = true
		require.True(t, words.Has("finding."+k.Key), "finding.%s has no words", k.Key)
		require.NotZero(t, k.Verdict, k.Key)
		require.NotZero(t, k.Severity, k.Key)
	}
}

// The kinds that a wrong plan makes must be the declared ones, each with a place, a
// limit where its words speak of one, a remedy, and words without a hole.
func TestFindingsOfWrongPlansAreComplete(t *testing.T) {
	declared := map[string]finding.Kind{}
	for _, k := range engine.Kinds() {
		declared[k.Key] = k
	}
	for seed := range uint64(300) {
		p := jobs.RandomPlan(seed)
		b := engine.Derive(p, nil)
		for _, f := range b.Findings {
			k, ok := declared[f.Kind.Key]
			require.True(t, ok, "seed %d: %s is not declared", seed, f.Kind.Key)
			require.Equal(t, k, f.Kind)
			requireComplete(t, f, b.Style())
		}
		for _, v := range b.Verdicts {
			text := engine.SayVerdict(v, b.Style())
			require.LessOrEqual(t, len([]rune(text)), 60, text)
			require.NotContains(t, text, "[")
		}
	}
}

func requireComplete(t *testing.T, f finding.Finding, style unit.Style) {
	t.Helper()
	text := engine.Say(f, style)
	require.NotEqual(t, finding.Place{}, f.Place, text)
	require.NotEmpty(t, f.Remedies, text)
	require.False(t, strings.ContainsAny(text, "[]{}"), text)
	for _, name := range words.Placeholders("finding." + f.Kind.Key) {
		if name == "limit" {
			require.NotEqual(t, words.None, f.Limit.Is, text)
		}
	}
	for _, r := range f.Remedies {
		say := engine.SayRemedy(r, style)
		require.False(t, strings.ContainsAny(say, "[]{}"), say)
	}
}
