package jobs

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"ledgewright/engine/hardware"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

func planSchema(t *testing.T) *jsonschema.Schema {
	c := jsonschema.NewCompiler()
	for _, file := range []string{"plan-1.schema.json", "shop-1.schema.json"} {
		text, err := os.ReadFile("../../site/schema/" + file)
		require.NoError(t, err)
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		require.NoError(t, err)
		require.NoError(t, c.AddResource(file, doc))
	}
	s, err := c.Compile("plan-1.schema.json")
	require.NoError(t, err)
	return s
}

func TestPlansAreWithinTheirSchema(t *testing.T) {
	s := planSchema(t)
	check := func(name string, p plan.Plan) {
		text, err := plan.Encode(p)
		require.NoError(t, err)
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		require.NoError(t, err)
		require.NoError(t, s.Validate(doc), name)
	}
	for name, p := range all() {
		check(name, p)
	}
	for seed := range uint64(400) {
		check("random", RandomPlan(seed))
	}
}

func TestRandomPlansAreInOrderAndTheSameEveryTime(t *testing.T) {
	for seed := range uint64(400) {
		p := RandomPlan(seed)
		requireInOrder(t, "random", p)
		require.Equal(t, p, RandomPlan(seed))
	}
}

// Over many seeds everything that a plan may hold is met: every member of the document
// and every kind of joint, reinforcement, bracket family and cut.
func TestRandomPlansHaveSomethingOfEverything(t *testing.T) {
	met := map[string]bool{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, x := range v {
				walk(path+"."+k, x)
			}
		case []any:
			for _, x := range v {
				walk(path+"[]", x)
			}
		case string:
			met[path+"="+v] = true
		}
		met[path] = true
	}
	for seed := range uint64(300) {
		text, err := plan.Encode(RandomPlan(seed))
		require.NoError(t, err)
		var doc any
		require.NoError(t, json.Unmarshal(text, &doc))
		walk("", doc)
	}
	sample, err := os.ReadFile("../plans/version-1.json")
	require.NoError(t, err)
	var doc any
	require.NoError(t, json.Unmarshal(sample, &doc))
	have := met
	met = map[string]bool{}
	walk("", doc)
	for path := range met {
		if !bytes.ContainsRune([]byte(path), '=') {
			require.True(t, have[path], "no random plan has %s", path)
		}
	}
	for _, j := range []string{plan.Mitre, plan.ButtFirst, plan.ButtSecond, plan.RebateFirst, plan.RebateSecond} {
		require.True(t, have[".modules[].corners[].joint="+j], j)
	}
	for _, k := range []string{"spline", "tenon", "dowel", "key", "screw"} {
		require.True(t, have[".modules[].corners[].reinforcement.kind="+k], k)
	}
	for _, f := range hardware.Families() {
		require.True(t, have[".modules[].brackets[].kind="+string(f)], f)
	}
	require.True(t, have[".units.system=in"] && have[".units.system=mm"])
	require.True(t, have[".modules[].X-hue"], "unknown members")
}

// Most boards are longer than their ends, chains of SimpleModule do not cross
// themselves, and closed ones come round once.
func TestSimpleModules(t *testing.T) {
	open, ring := 0, 0
	for seed := range uint64(500) {
		m := SimpleModule(seed)
		require.Empty(t, m.Dividers)
		if !m.Closed {
			require.False(t, lay(m).crosses(false, 1.9), "seed %d", seed)
			open++
			continue
		}
		ring++
		var sum unit.Angle
		for _, c := range m.Corners {
			sum += c.Turn
			require.LessOrEqual(t, c.Turn.Abs(), 150*deg)
		}
		require.Equal(t, unit.FullTurn, sum.Abs())
	}
	require.Greater(t, open, 250)
	require.Greater(t, ring, 100)
}

func TestRandomModulesReachEveryShape(t *testing.T) {
	crossed, boards := 0, map[int]bool{}
	for seed := range uint64(500) {
		m := RandomModule(seed)
		boards[len(m.Boards)] = true
		if !m.Closed && lay(m).crosses(false, 0) {
			crossed++
		}
		for i, b := range m.Boards {
			r := random{}
			if b.Length.Known {
				require.Greater(t, b.Length.Value, r.taken(m, i), "seed %d board %d", seed, i+1)
			}
		}
	}
	require.Len(t, boards, 8)
	require.Greater(t, crossed, 10)
	require.Less(t, crossed, 200)
}
