package words

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

func TestEveryKeyStandsOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range Catalogue() {
		require.False(t, seen[e.Key], "two texts for %s", e.Key)
		seen[e.Key] = true
		require.True(t, Has(e.Key))
		require.NotEmpty(t, strings.TrimSpace(e.Text), e.Key)
	}
	require.Len(t, Keys(), len(seen))
	require.IsIncreasing(t, append([]string{""}, Keys()...))
}

// Words that promise what no program can, and words that say nothing.
var banned = []string{"safe", "guarantee", "certified", "oops", "please", "successfully"}

func TestNoWordPromisesTooMuch(t *testing.T) {
	for _, e := range Catalogue() {
		require.Empty(t, lint(e), "%s: %s", e.Key, e.Text)
	}
}

// lint says what is wrong with an entry, or nothing.
func lint(e Entry) string {
	low := strings.ToLower(e.Text)
	for _, w := range banned {
		if strings.Contains(low, w) {
			return "says " + w
		}
	}
	kind, _, _ := strings.Cut(e.Key, ".")
	sentence := kind == "finding" || kind == "remedy"
	switch {
	case e.Key != strings.ToLower(e.Key) && kind != "arris" && kind != "face":
		return "key is not in lower case"
	case e.Text != strings.TrimSpace(e.Text) || strings.Contains(e.Text, "  "):
		return "has a space too many"
	case sentence && !strings.HasSuffix(e.Text, "."):
		return "is a sentence without its full stop"
	case kind == "verdict" && strings.HasSuffix(e.Text, "."):
		return "is a verdict with a full stop"
	case kind == "verdict" && utf8.RuneCountInString(e.Text) > 60:
		return "is longer than 60 characters"
	case strings.Count(e.Text, "{") != strings.Count(e.Text, "}"):
		return "has a brace without its partner"
	case !utf8.ValidString(e.Text):
		return "is no valid text"
	}
	for _, p := range split(e.Text) {
		if strings.ContainsAny(p.name, " .,:") || p.plural && (p.one == "" || p.many == "") {
			return "has a place that is no name: " + p.name
		}
	}
	return ""
}

// A verdict stays one short line when its places are filled.
func TestFilledVerdictsAreShort(t *testing.T) {
	for _, e := range Catalogue() {
		if !strings.HasPrefix(e.Key, "verdict.") {
			continue
		}
		text := ""
		for _, p := range split(e.Text) {
			switch {
			case p.plural:
				text += longer(p.one, p.many)
			case p.name == "n" || p.name == "boards":
				text += "200"
			case p.name != "":
				text += "1234.5 mm"
			default:
				text += p.text
			}
		}
		require.LessOrEqual(t, utf8.RuneCountInString(text), 60, text)
	}
}

func longer(a, b string) string {
	if len(a) > len(b) {
		return a
	}
	return b
}

func TestLintFindsEachMistake(t *testing.T) {
	long := strings.Repeat("word ", 13) + "end"
	for _, e := range []Entry{
		{"finding.x", "This is quite Safe."},
		{"finding.x", "No full stop"},
		{"remedy.x", "No full stop"},
		{"verdict.x", "A full stop."},
		{"verdict.x", long},
		{"end.x", "two  spaces"},
		{"end.x", " leading"},
		{"end.X", "upper case"},
		{"end.x", "a { brace"},
		{"end.x", "no {name here, see}"},
		{"end.x", "{n|board}"},
		{"end.x", "\xff"},
	} {
		require.NotEmpty(t, lint(e), "%+v", e)
	}
	require.Empty(t, lint(Entry{"finding.x", "{module}: {n} {n|board|boards} too short."}))
}

// A word may name another only by an argument, so the places of an entry are all that
// has to be given.
func TestPlaceholdersAreListedOnce(t *testing.T) {
	for _, e := range Catalogue() {
		for _, name := range Placeholders(e.Key) {
			require.Contains(t, e.Text, "{"+name)
		}
	}
	require.Empty(t, Placeholders("finding.of-nothing"))
}
