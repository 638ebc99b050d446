package plan_test

import (
	"bytes"
	"encoding/json"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

const schemas = "../../site/schema/"

// compiled returns a schema of the site, its references resolved from file to file.
func compiled(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	for _, file := range []string{"plan-1.schema.json", "shop-1.schema.json"} {
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(read(t, schemas+file)))
		require.NoError(t, err)
		require.NoError(t, c.AddResource(file, doc))
	}
	s, err := c.Compile(name)
	require.NoError(t, err)
	return s
}

func valid(t *testing.T, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	return s.Validate(doc)
}

func TestRightDocumentsAreWithinTheirSchemas(t *testing.T) {
	plans1, shops := compiled(t, "plan-1.schema.json"), compiled(t, "shop-1.schema.json")
	require.NoError(t, valid(t, plans1, read(t, plans+"version-1.json")))
	short := read(t, plans+"short.json")
	require.NoError(t, valid(t, plans1, short))
	require.Empty(t, plan.Check(decoded(t, string(short))))
	for _, s := range []unit.System{unit.Metric, unit.Inches} {
		text, err := plan.Encode(plan.New(s))
		require.NoError(t, err)
		require.NoError(t, valid(t, plans1, text))
		text, err = shop.Encode(shop.Default(s))
		require.NoError(t, err)
		require.NoError(t, valid(t, shops, text))
	}
}

// The table of testdata/wrong says what is wrong with each document and what the
// engine does about it.
func TestWrongDocumentsAreRefusedTwice(t *testing.T) {
	rows := wrongTable(t)
	require.GreaterOrEqual(t, len(rows), 20)
	for _, r := range rows {
		text := read(t, "../../testdata/wrong/"+r.file)
		kind, _, _ := strings.Cut(r.file, "-")
		require.Error(t, valid(t, compiled(t, kind+"-1.schema.json"), text), "%s passes its schema", r.file)
		if kind == "shop" {
			_, err := shop.Decode(text)
			require.Error(t, err, r.file)
			continue
		}
		p, err := plan.Decode(text)
		if path, refused := strings.CutPrefix(r.engine, "refused at "); refused {
			var e *document.Error
			require.ErrorAs(t, err, &e, r.file)
			require.Equal(t, path, e.Path, r.file)
			continue
		}
		require.NoError(t, err, r.file)
		var keys []string
		for _, f := range plan.Check(p) {
			keys = append(keys, "finding "+f.Kind.Key)
		}
		require.Contains(t, keys, r.engine, r.file)
	}
}

type wrongRow struct{ file, what, engine string }

func wrongTable(t *testing.T) (rows []wrongRow) {
	files, err := os.ReadDir("../../testdata/wrong")
	require.NoError(t, err)
	listed := map[string]bool{"README.md": true}
	for line := range strings.Lines(string(read(t, "../../testdata/wrong/README.md"))) {
		cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|")
		if len(cells) != 3 || !strings.HasSuffix(strings.TrimSpace(cells[0]), ".json") {
			continue
		}
		r := wrongRow{strings.TrimSpace(cells[0]), strings.TrimSpace(cells[1]), strings.TrimSpace(cells[2])}
		rows, listed[r.file] = append(rows, r), true
	}
	for _, f := range files {
		if strings.HasPrefix(f.Name(), "plan-") || strings.HasPrefix(f.Name(), "shop-") {
			require.True(t, listed[f.Name()], "%s is not in the table", f.Name())
		}
	}
	return rows
}

// raw is a schema read as plain JSON.
type raw map[string]any

func rawSchema(t *testing.T, file string) raw {
	var r raw
	require.NoError(t, json.Unmarshal(read(t, schemas+file), &r))
	return r
}

// The schemas are written by hand. This walks the types and holds that each member
// stands in the schema and each member of the schema in a type, with the same form.
func TestSchemasHaveTheMembersOfTheTypes(t *testing.T) {
	p := rawSchema(t, "plan-1.schema.json")
	s := rawSchema(t, "shop-1.schema.json")
	w := walker{t: t, defs: p["$defs"].(map[string]any), seen: map[reflect.Type]bool{reflect.TypeFor[shop.Profile](): true}}
	w.object(reflect.TypeFor[plan.Plan](), p, "plan")
	members := s["$defs"].(map[string]any)["members"].(map[string]any)
	w.object(reflect.TypeFor[shop.Profile](), members, "shop")
}

type walker struct {
	t    *testing.T
	defs map[string]any
	seen map[reflect.Type]bool
}

func (w walker) object(typ reflect.Type, schema map[string]any, path string) {
	require.Equal(w.t, "object", schema["type"], path)
	properties := schema["properties"].(map[string]any)
	var required []string
	names := map[string]bool{}
	for i := range typ.NumField() {
		f := typ.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" {
			continue
		}
		names[name] = true
		require.Contains(w.t, properties, name, path)
		w.value(f.Type, properties[name].(map[string]any), path+"."+name)
		if options != "omitempty" {
			required = append(required, name)
		}
	}
	for name := range properties {
		require.True(w.t, names[name], "%s.%s is in no type", path, name)
	}
	if !strings.HasPrefix(path, "shop") {
		w.required(required, schema, path)
	}
}

// required holds that what a type cannot leave out is required, but for the profile,
// which has defaults.
func (w walker) required(want []string, schema map[string]any, path string) {
	var have []string
	list, _ := schema["required"].([]any)
	for _, v := range list {
		have = append(have, v.(string))
	}
	want = slices.DeleteFunc(want, func(s string) bool { return s == "shop" })
	require.ElementsMatch(w.t, want, have, path)
}

func (w walker) value(typ reflect.Type, schema map[string]any, path string) {
	require.NotEmpty(w.t, path)
	if ref, ok := schema["$ref"].(string); ok {
		schema = w.defs[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
	}
	require.NotEmpty(w.t, schema["description"], path)
	if typ.Kind() == reflect.Struct && typ.NumField() == 2 && typ.Field(1).Name == "Known" {
		typ = typ.Field(0).Type
	}
	switch {
	case typ == reflect.TypeFor[unit.Length](), typ == reflect.TypeFor[unit.Angle](), typ.Kind() == reflect.Float64:
		require.Equal(w.t, "number", schema["type"], path)
		require.Contains(w.t, schema, "minimum", path)
		require.True(w.t, schema["maximum"] != nil || schema["exclusiveMaximum"] != nil, path)
	case typ.Kind() == reflect.Int:
		require.Equal(w.t, "integer", schema["type"], path)
	case typ.Kind() == reflect.Bool:
		require.Equal(w.t, "boolean", schema["type"], path)
	case typ.Kind() == reflect.String:
		require.True(w.t, schema["type"] == "string" || schema["enum"] != nil || schema["const"] != nil, path)
	case typ.Kind() == reflect.Slice:
		require.Equal(w.t, "array", schema["type"], path)
		w.value(typ.Elem(), schema["items"].(map[string]any), path+"[]")
	case typ.Kind() == reflect.Struct && !w.seen[typ]:
		w.seen[typ] = true
		w.object(typ, schema, path)
	}
}

// The limits of a profile stand in the table of defaults and in the schema; they must
// be the same.
func TestLimitsOfTheProfileAreThoseOfItsSchema(t *testing.T) {
	s := rawSchema(t, "shop-1.schema.json")
	members := s["$defs"].(map[string]any)["members"].(map[string]any)
	for _, r := range shop.Defaults() {
		at := members
		for _, name := range strings.Split(r.Path, ".") {
			at = at["properties"].(map[string]any)[name].(map[string]any)
		}
		if items, ok := at["items"].(map[string]any); ok {
			at = items
		}
		if r.Choice != nil {
			var have []string
			for _, v := range at["enum"].([]any) {
				have = append(have, v.(string))
			}
			require.Equal(t, r.Choice, have, r.Path)
			continue
		}
		if r.Least == nil {
			require.NotContains(t, at, "minimum", r.Path)
			continue
		}
		require.InDelta(t, plainNumber(r.Least), at["minimum"], 1e-9, r.Path)
		require.InDelta(t, plainNumber(r.Most), at["maximum"], 1e-9, r.Path)
	}
}

func plainNumber(v any) float64 {
	switch v := v.(type) {
	case unit.Length:
		return v.MM()
	case unit.Angle:
		return v.Degrees()
	case int:
		return float64(v)
	}
	return v.(float64)
}
