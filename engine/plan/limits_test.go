package plan_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
)

// What the schema refuses for its size, the engine must refuse or have a finding
// about: every number of the sample in turn is set just outside its limits.
func TestNoNumberOutsideItsSchemaPassesTheEngine(t *testing.T) {
	p := rawSchema(t, "plan-1.schema.json")
	members := rawSchema(t, "shop-1.schema.json")["$defs"].(map[string]any)["members"].(map[string]any)
	var doc any
	require.NoError(t, json.Unmarshal(read(t, plans+"version-1.json"), &doc))
	tried := 0
	n := numbers{defs: p["$defs"].(map[string]any), shop: members, visit: func(path string, schema map[string]any, set func(any)) {
		for _, v := range outside(schema) {
			set(v)
			text, err := json.Marshal(doc)
			require.NoError(t, err)
			require.True(t, refused(text), "%s = %v passes", path, v)
			tried++
		}
	}}
	n.walk("", doc, p, nil)
	require.Greater(t, tried, 200)
}

// outside returns a number just below the least and one just above the most.
func outside(schema map[string]any) (out []any) {
	if v, ok := schema["minimum"].(float64); ok {
		out = append(out, v-1)
	}
	if v, ok := schema["maximum"].(float64); ok {
		out = append(out, v+1)
	}
	if v, ok := schema["exclusiveMaximum"].(float64); ok {
		out = append(out, v)
	}
	return out
}

// refused reports whether the engine will not read a plan, or says that something must
// be put right.
func refused(text []byte) bool {
	p, err := plan.Decode(text)
	return err != nil || slices.ContainsFunc(plan.Check(p), func(f finding.Finding) bool { return f.Kind.Severity >= finding.Mend })
}

// numbers visits every number of a document with its schema.
type numbers struct {
	defs, shop map[string]any
	visit      func(path string, schema map[string]any, set func(any))
}

func (n numbers) walk(path string, v any, schema map[string]any, set func(any)) {
	if ref, ok := schema["$ref"].(string); ok {
		schema = n.defs[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
	}
	if path == ".shop" {
		schema = n.shop
	}
	switch v := v.(type) {
	case float64:
		n.visit(path, schema, set)
		set(v)
	case []any:
		for i := range v {
			n.walk(path+"[]", v[i], schema["items"].(map[string]any), func(x any) { v[i] = x })
		}
	case map[string]any:
		properties := schema["properties"].(map[string]any)
		for name := range v {
			n.walk(path+"."+name, v[name], properties[name].(map[string]any), func(x any) { v[name] = x })
		}
	}
}
