package link

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

// values that a document may have anywhere, whether a plan expects them or not.
func values() *rapid.Generator[document.Node] {
	return rapid.OneOf(
		rapid.Just(document.ObjectNode()), rapid.Just(document.ArrayNode()), rapid.Just(document.BoolNode(false)),
		rapid.Map(rapid.Int64Range(-1<<40, 1<<40), func(v int64) document.Node { return document.LengthNode(unit.Length(v)) }),
		rapid.Map(rapid.IntRange(-3, 400), func(v int) document.Node { return document.WholeNode(int64(v)) }),
		rapid.Map(rapid.SampledFrom([]string{"", "m1", "m01", "w2", "A", "mitre", "white-oak", "Ü木", "x\x00y"}), document.TextNode),
	)
}

// changed returns n with a value somewhere inside it replaced, taken out or added.
func changed(r *rapid.T, n document.Node) document.Node {
	n.Kids = slices.Clone(n.Kids)
	if len(n.Kids) == 0 || rapid.IntRange(0, 5).Draw(r, "stop") == 0 {
		if _, has := n.Get("later"); n.Kind == document.Object && !has && rapid.Bool().Draw(r, "add") {
			n.Kids = append(n.Kids, values().Draw(r, "value").With("later"))
			return n
		}
		if n.Kind == document.Number && rapid.Bool().Draw(r, "number") {
			return document.LengthNode(unit.Length(rapid.Int64Range(0, 1<<30).Draw(r, "length"))).With(n.Key)
		}
		return values().Draw(r, "value").With(n.Key)
	}
	i := rapid.IntRange(0, len(n.Kids)-1).Draw(r, "child")
	if rapid.IntRange(0, 9).Draw(r, "remove") == 0 {
		n.Kids = slices.Delete(n.Kids, i, i+1)
		return n
	}
	n.Kids[i] = changed(r, n.Kids[i])
	return n
}

// Whatever plan can be read comes back from a link, whatever stands in it.
func TestChangedPlansComeBack(t *testing.T) {
	n, err := document.Parse([]byte(text(t, shelves(t, unit.Metric, 4, 2))))
	require.NoError(t, err)
	opened := 0
	rapid.Check(t, func(r *rapid.T) {
		raw, err := changed(r, n).Canonical()
		if err != nil {
			return
		}
		p, err := plan.Decode(raw)
		if err != nil {
			return
		}
		opened++
		code, err := EncodePlan(p, Options{Names: true})
		require.NoError(r, err)
		back, err := DecodePlan(code)
		require.NoError(r, err)
		require.Equal(r, text(t, p), text(t, back))
	})
	require.Greater(t, opened, 5, "plans that could be read")
}

func TestRandomPlansComeBack(t *testing.T) {
	for seed := range uint64(300) {
		p := jobs.RandomPlan(seed)
		code, err := EncodePlan(p, Options{Names: true})
		require.NoError(t, err, "seed %d", seed)
		back, err := DecodePlan(code)
		require.NoError(t, err, "seed %d", seed)
		require.Equal(t, text(t, p), text(t, back), "seed %d", seed)
	}
}

// Columns hold any JSON object at all, not only plans.
func TestAnyObjectFitsColumns(t *testing.T) {
	n, err := document.Parse([]byte(text(t, shelves(t, unit.Inches, 3, 2))))
	require.NoError(t, err)
	rapid.Check(t, func(r *rapid.T) {
		c := n
		for range rapid.IntRange(1, 6).Draw(r, "changes") {
			c = changed(r, c)
		}
		want, err := c.Canonical()
		if err != nil || c.Kind != document.Object {
			return
		}
		got, err := canonical(pack(planShape(), c, unit.Inch/16))
		require.NoError(r, err)
		require.Equal(r, string(want), string(got))
	})
}

// Links of every version, with the SHA-256 of the canonical text that they hold. They
// were sent, and open for ever: lines are added here and never changed.
func TestOldLinksOpen(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/links/v1.txt")
	require.NoError(t, err)
	lines := 0
	for line := range strings.Lines(string(raw)) {
		name, rest, _ := strings.Cut(strings.TrimSpace(line), "\t")
		digest, code, ok := strings.Cut(rest, "\t")
		require.True(t, ok, name)
		_, err := DecodePlan(code)
		require.NoError(t, err, name)
		e, ok := unseal(code)
		require.True(t, ok, name)
		held, err := e.text()
		require.NoError(t, err, name)
		sum := sha256.Sum256(held)
		require.Equal(t, digest, hex.EncodeToString(sum[:]), name)
		lines++
	}
	require.GreaterOrEqual(t, lines, 6)
}
