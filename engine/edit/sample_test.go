package edit

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

func read(t testing.TB, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return text
}

// schema returns the schema of edits, with those of the plan and the shop that it names.
func schema(t testing.TB) *jsonschema.Schema {
	c := jsonschema.NewCompiler()
	for _, name := range []string{"edit-1", "plan-1", "shop-1"} {
		name += ".schema.json"
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(read(t, "../../site/schema/"+name)))
		require.NoError(t, err)
		require.NoError(t, c.AddResource(name, doc))
	}
	s, err := c.Compile("edit-1.schema.json")
	require.NoError(t, err)
	return s
}

func validate(t testing.TB, s *jsonschema.Schema, text []byte) error {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	return s.Validate(doc)
}

// samples are the edits of a story in which every kind of edit has its turn.
func samples(t testing.TB) []string {
	text := string(read(t, "../../testdata/edits/every-edit.jsonl"))
	return strings.Split(strings.TrimSpace(text), "\n")
}

func TestEveryEditHasASampleThatApplies(t *testing.T) {
	s := schema(t)
	p := plan.New(unit.Metric)
	missing := Names()
	for i, line := range samples(t) {
		require.NoError(t, validate(t, s, []byte(line)), line)
		e, err := Decode([]byte(line))
		require.NoError(t, err, line)
		missing = slices.DeleteFunc(missing, func(n string) bool { return n == e.Do() })

		before := text(t, p)
		next, name, err := Apply(p, e)
		require.NoError(t, err, "%d: %s", i+1, line)
		require.Equal(t, before, text(t, p), "%s changed the plan that it was given", line)
		require.NotContains(t, words.Text(name.Key, name.Args, p.Style()), "?", line)

		back, err := plan.Decode([]byte(text(t, next)))
		require.NoError(t, err, line)
		require.Equal(t, text(t, next), text(t, back), line)
		p = next
	}
	require.Empty(t, missing, "edits without a sample")
}

func TestEncodedSamplesReadBack(t *testing.T) {
	s := schema(t)
	for _, line := range samples(t) {
		e, err := Decode([]byte(line))
		require.NoError(t, err)
		out := Encode(e)
		require.NoError(t, validate(t, s, out), string(out))
		again, err := Decode(out)
		require.NoError(t, err)
		require.Equal(t, e, again)
	}
}

// Each wrong document breaks its schema, and is refused when it is read or when it is
// applied, with these words.
func TestWrongEditsAreRefused(t *testing.T) {
	says := map[string]string{
		"edit-name.json":             `there is no edit mvoe; the nearest is move`,
		"edit-argument-unknown.json": `dz`,
		"edit-argument-missing.json": `add-wall: new wall: height is missing`,
		"edit-schema.json":           `schema is "ledgewright/plan/1"; allowed is ledgewright/edit/1`,
		"edit-thickness-null.json":   `set-board: module m1, board 1: thickness cannot be taken away`,
		"edit-turn-sharp.json":       `set-corner: module m1, corner 1: the turn would be 170°`,
		"edit-width-as-text.json":    `add-light: module m1, new light: width cannot be read`,
		"edit-module-twice.json":     `align: arrangement a1: module m1 is named twice`,
	}
	files, err := filepath.Glob("../../testdata/wrong/edit-*.json")
	require.NoError(t, err)
	require.Len(t, files, len(says))
	s, p := schema(t), bench(t)
	for _, file := range files {
		line := read(t, file)
		require.Error(t, validate(t, s, line), "%s passes the schema", file)
		e, err := Decode(line)
		if err == nil {
			_, _, err = Apply(p, e)
		}
		require.ErrorContains(t, err, says[filepath.Base(file)], file)
	}
}

// Every name and every refusal that the code can give has its words, and no words stand
// there for nothing.
func TestWordsAndCodeAgree(t *testing.T) {
	var code strings.Builder
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, f := range files {
		if !strings.HasSuffix(f, "_test.go") {
			code.Write(read(t, f))
		}
	}
	for _, key := range words.Keys() {
		room, name, _ := strings.Cut(key, ".")
		switch room {
		case "edit":
			base := name
			for _, variant := range []string{"-whole", "-placed", "-bearing", "-several"} {
				base = strings.TrimSuffix(base, variant)
			}
			require.Contains(t, Names(), base, key)
		case "refusal":
			require.Contains(t, code.String(), `"`+name+`"`, key)
		}
	}
	for _, n := range Names() {
		if n != "align" && n != "spread" {
			require.True(t, words.Has("edit."+n), n)
		}
	}
	for _, called := range []string{`refuse("`, `noSuch("`, `number(e.At, len(p.Modules), "`} {
		for i, piece := range strings.Split(code.String(), called) {
			key, _, ok := strings.Cut(piece, `"`)
			if i == 0 || !ok {
				continue
			}
			room := "thing."
			if called == `refuse("` {
				room = "refusal."
			}
			require.True(t, words.Has(room+key), room+key)
		}
	}
}

// The schema is written by hand. Every argument of every type stands in it, and every
// member that it has beside them can be set.
func TestSchemaHasTheArgumentsOfTheTypes(t *testing.T) {
	var doc struct {
		Defs map[string]struct {
			Properties map[string]any `json:"properties"`
		} `json:"$defs"`
	}
	require.NoError(t, json.Unmarshal(read(t, "../../site/schema/edit-1.schema.json"), &doc))
	types := map[string]reflect.Type{}
	for _, line := range samples(t) {
		e, err := Decode([]byte(line))
		require.NoError(t, err)
		types[e.Do()] = reflect.TypeOf(e)
	}
	for do, typ := range types {
		have := doc.Defs[do].Properties
		arguments, more := 0, false
		for i := range typ.NumField() {
			key, _ := memberOf(typ.Field(i))
			if more = more || key == ""; key != "" {
				require.Contains(t, have, key, do)
				arguments++
			}
		}
		rest := len(have) - arguments - len([]string{"schema", "do"})
		require.Equal(t, more, rest > 0, "%s: %d members beside its arguments", do, rest)
	}
}
