// Package lint reads every text of the repository: documents, code, pages, style sheets,
// schemas and words.
package lint

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// top is the top of the repository.
const top = "../.."

// A rule is what no text may say, and why.
type rule struct {
	name string
	bad  *regexp.Regexp
	why  string
}

// word matches any of some words, whole, in whatever case.
func word(any ...string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(` + strings.Join(any, "|") + `)\b`)
}

// rules are all of them. Their words are put together here, so that this file does not
// break them.
func rules() []rule {
	return []rule{
		{"promise", word("sa"+"fe", "sa"+"fely", "guaran"+"tee[sd]?", "certi"+"fied", "certi"+"fies"),
			"nobody can promise that of a shelf; say what was computed, from what, and what was not checked"},
		{"path", regexp.MustCompile(`(^|[^\w.~/$}*)-])/(ho` + `me|ro` + `ot|tm` + `p|wo` + `rk|Use` + `rs|usr|var|opt|mnt|private)/[\w.]|\b[A-Z]:\\\\?Use` + `rs\b`),
			"a path of one machine means nothing on another"},
		{"talk", word(`(this|last|next|previous|earlier|my|our) ses`+`sion`, "(sub)?age"+"nts?", "assis"+"tants?", "chat"+"bots?", "LL"+"M", "iss"+"ue #?[0-9]+", "promp"+"ts?"),
			"the project speaks of shelves and of itself, not of how it was written"},
		{"elsewhere", regexp.MustCompile(`\.\./sha` + `red\b|\b(design|interface|style|bench|trade|measured|look|contract)\.m` + `d\b`),
			"it names a document that is not in the repository"},
	}
}

// exceptions are files that may break a rule in the words of part, and why. One that
// nothing needs any more fails the test too.
func exceptions() []struct{ rule, file, part, why string } {
	return []struct{ rule, file, part, why string }{
		{"promise", "engine/wall/judge.go", "wiki.diyfaq.org.uk, Sa" + "fe zones for electric cables", "the title of the page that is cited"},
		{"promise", "engine/wall/cable.go", "wiki.diyfaq.org.uk, Sa" + "fe zones for electric cables", "the title of the page that is cited"},
		{"promise", "site/workshop/page.css", "env(sa" + "fe-area-inset-", "the name that CSS has for it"},
		{"promise", "site/workshop/shell.css", "env(sa" + "fe-area-inset-", "the name that CSS has for it"},
		{"promise", "engine/words/catalogue_test.go", `"sa` + `fe", "guaran` + `tee", "certi` + `fied"`, "the words that the catalogue must not say"},
		{"promise", "engine/words/catalogue_test.go", `"This is quite Sa` + `fe."`, "a text that the test of the test must refuse"},
		{"promise", "site/site_test.go", `"sa` + `fe", "guaran` + `tee", "certi` + `fied"`, "the words that the still page must not say"},
		{"path", ".ci/run", "#!/us" + "r/bin/env bash", "where every Unix has env"},
		{"talk", "testdata/npm/package-lock.json", "promp" + "ts", "the name of a package"},
	}
}

// camel is where a word begins inside a name, as in wallSpan.
var camel = regexp.MustCompile(`([a-z])([A-Z])`)

// faults are the rules that a line breaks.
func faults(line string) (broken []rule) {
	apart := camel.ReplaceAllString(line, "$1 $2")
	for _, r := range rules() {
		if r.bad.MatchString(line) || r.bad.MatchString(apart) {
			broken = append(broken, r)
		}
	}
	return broken
}

// accepted returns the number of the exception that lets a line break a rule, or -1. The
// rest of the line must keep it.
func accepted(r rule, file, line string) int {
	for i, e := range exceptions() {
		if e.rule == r.name && e.file == file && strings.Contains(line, e.part) && !r.bad.MatchString(strings.ReplaceAll(line, e.part, " ")) {
			return i
		}
	}
	return -1
}

// texts calls do for every text file of the repository; what is built, installed or
// written by tools of the language is left out.
func texts(t *testing.T, do func(file, text string)) {
	t.Helper()
	skip := map[string]bool{".git": true, "build": true, "site/dist": true, "testdata/out": true, "testdata/npm/node_modules": true}
	require.NoError(t, filepath.WalkDir(top, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		file, err := filepath.Rel(top, path)
		file = filepath.ToSlash(file)
		switch {
		case err != nil:
			return err
		case d.IsDir() && (skip[file] || d.Name() == "rapid"):
			return filepath.SkipDir
		case d.IsDir() || strings.HasSuffix(file, ".test") || strings.HasSuffix(file, ".prof"):
			return nil
		}
		body, err := os.ReadFile(path)
		if err == nil && !bytes.ContainsRune(body, 0) {
			do(file, string(body))
		}
		return err
	}))
}

// Nothing that is read here promises what nobody can, names a place of one machine, or
// speaks of anything but the project.
func TestNoTextSaysWhatItMustNot(t *testing.T) {
	needed, read := map[int]bool{}, map[string]bool{}
	texts(t, func(file, text string) {
		read[file] = true
		if len(faults(text)) == 0 {
			return
		}
		for i, line := range strings.Split(text, "\n") {
			for _, r := range faults(line) {
				if at := accepted(r, file, line); at >= 0 {
					needed[at] = true
					continue
				}
				t.Errorf("%s:%d: %s\n%.160s\n%s", file, i+1, r.name, strings.TrimSpace(line), r.why)
			}
		}
	})
	for _, file := range []string{"README.md", "DEVELOPERS.md", "Makefile", "cmd/ledgewright/main.go", "engine/words/catalogue.go", "site/still.html", "site/workshop/app.html", "site/schema/plan-1.schema.json"} {
		require.True(t, read[file], "%s was not read", file)
	}
	for i, e := range exceptions() {
		require.True(t, needed[i], "not needed any more: %s in %s, %s", e.rule, e.file, e.part)
	}
}

func TestRulesFindWhatTheyAreFor(t *testing.T) {
	for line, want := range map[string]string{
		"This shelf is sa" + "fe.":                             "promise",
		"Carries 20 kg, GUARAN" + "TEED":                       "promise",
		`"isSa` + `fe": {"type": "boolean"}`:                   "promise",
		"a certi" + "fied fixing":                              "promise",
		"go run /ho" + "me/joiner/ledgewright":                 "path",
		`read("/tm` + `p/plan.json")`:                          "path",
		`C:\Use` + `rs\joiner\plan.json`:                       "path",
		"done in the last ses" + "sion":                        "talk",
		"as the age" + "nt said":                               "talk",
		"see iss" + "ue 12":                                    "talk",
		"as in ../sha" + "red":                                 "elsewhere",
		"rule T2 of interface.m" + "d says":                    "elsewhere",
		"a strip that was certi" + "fied by an assis" + "tant": "promise talk",
	} {
		var names []string
		for _, r := range faults(line) {
			names = append(names, r.name)
		}
		require.Equal(t, want, strings.Join(names, " "), line)
	}
	for _, line := range []string{
		"script-src 'self' 'wasm-unsafe-eval'", "not checked", "a recorded session of gestures", "safety glass",
		"site/dist/index.html", "https://example.org/usr", "../../site/work/page.css", "the user's home", "README.md and DEVELOPERS.md",
	} {
		require.Empty(t, faults(line), line)
	}
}

// Every test that the table of the interface's rules names is in the file that it names,
// and no rule of its first two tables is left out.
func TestMustsNameTestsThatAreThere(t *testing.T) {
	body, err := os.ReadFile(filepath.Join(top, "testdata/musts.md"))
	require.NoError(t, err)
	text := string(body)
	place := regexp.MustCompile("((?:(?:Test|Fuzz|Benchmark)\\w+(?:, )?)+) \\(`([^`]+)`\\)")
	named := 0
	for _, m := range place.FindAllStringSubmatch(text, -1) {
		code, err := os.ReadFile(filepath.Join(top, m[2]))
		require.NoError(t, err)
		for _, name := range strings.Split(m[1], ", ") {
			named++
			require.Contains(t, string(code), "func "+name+"(", m[2])
		}
	}
	require.Len(t, regexp.MustCompile(`\b(Test|Fuzz|Benchmark)[A-Z]\w+`).FindAllString(text, -1), named, "a test without its file")
	for letter, n := range map[string]int{"A": 22, "T": 14} {
		for i := range n {
			require.Equal(t, 1, strings.Count(text, "\n| "+letter+strconv.Itoa(i+1)+" | "), "%s%d", letter, i+1)
		}
	}
}
