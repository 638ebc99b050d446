package plan_test

import (
	"errors"
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

var update = flag.Bool("update", false, "write the documents of testdata again")

const plans = "../../testdata/plans/"

func TestNewPlanIsEmptyAndInOrder(t *testing.T) {
	for _, s := range []unit.System{unit.Metric, unit.Inches} {
		p := plan.New(s)
		require.Equal(t, plan.Schema, p.Schema)
		require.Equal(t, s, p.Units.System)
		require.Equal(t, shop.Default(s), p.Shop)
		require.Empty(t, plan.Check(p))
		text, err := plan.Encode(p)
		require.NoError(t, err)
		require.Equal(t, p, decoded(t, string(text)))
	}
	require.Equal(t, unit.Inch/32, plan.New(unit.Inches).Units.Step)
}

// The document of version 1 is written by this test until version 1 is released, and
// then stays as it is: every later version must open it.
func TestVersionOneOpens(t *testing.T) {
	pretty, err := plan.Pretty(sample())
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.WriteFile(plans+"version-1.json", pretty, 0o644))
	}
	text := read(t, plans+"version-1.json")
	require.Equal(t, string(pretty), string(text))
	p := decoded(t, string(text))
	require.Equal(t, sample(), p)
	require.False(t, p.Newer())
	require.Empty(t, plan.Check(p))
}

func TestEncodingIsCanonical(t *testing.T) {
	text, err := plan.Encode(sample())
	require.NoError(t, err)
	again, err := document.Canonical(text)
	require.NoError(t, err)
	require.Equal(t, string(text), string(again))
	require.NotContains(t, string(text), "\n")
	require.Equal(t, sample(), decoded(t, string(text)))
}

// A document of a newer version, with members and words that this version does not
// know on every level.
func TestNewerPlanOpensAndKeepsWhatItDoesNotKnow(t *testing.T) {
	text := read(t, plans+"newer-2.json")
	p := decoded(t, string(text))
	require.True(t, p.Newer())
	require.Equal(t, "ledgewright/plan/2", p.Schema)
	require.Equal(t, document.Extra{{Key: "weather", Value: `{"damp":[1,2.5,null]}`}}, p.Extra)
	require.Equal(t, document.Extra{{Key: "hue", Value: `"amber"`}}, p.Modules[0].Boards[0].Extra)
	require.Equal(t, document.Extra{{Key: "blade", Value: "60"}}, p.Shop.Machines.Saw.Extra)
	wrote, err := plan.Encode(p)
	require.NoError(t, err)
	same, err := document.Canonical(text)
	require.NoError(t, err)
	require.Equal(t, string(same), string(wrote), "nothing is lost, nothing is added")
}

func TestNewerPlanThatCannotBeUnderstoodSaysSo(t *testing.T) {
	_, err := plan.Decode([]byte(`{"schema":"ledgewright/plan/7","modules":{}}`))
	require.ErrorContains(t, err, "written by a newer version (ledgewright/plan/7)")
	var e *document.Error
	require.ErrorAs(t, err, &e)
	require.Equal(t, "modules", e.Path)
}

func TestWhatIsNoPlanSaysWhatWasExpected(t *testing.T) {
	cases := []struct {
		text, path, says string
		line, column     int
	}{
		{`{"schema":"ledgewright/edit/1"}`, "schema", `found the text "ledgewright/edit/1"; allowed is "ledgewright/plan/1"`, 1, 11},
		{"{\n  \"schema\": \"ledgewright/plan/0\"}", "schema", `"ledgewright/plan/1"`, 2, 13},
		{`{"schema":"ledgewright/plan/01"}`, "schema", `"ledgewright/plan/1"`, 1, 11},
		{`{"schema":"ledgewright/plan/"}`, "schema", `"ledgewright/plan/1"`, 1, 11},
		{`{"schema":"ledgewright/plan/99999999999999999999"}`, "schema", `"ledgewright/plan/1"`, 1, 11},
		{`{"schema":1}`, "schema", `found the number 1; allowed is "ledgewright/plan/1"`, 1, 11},
		{`{"job":{}}`, "schema", `no member "schema"`, 1, 1},
		{`[]`, "", `found an array; allowed is an object`, 1, 1},
		{`{"schema":"ledgewright/plan/1"}`, "job", `no member "job"`, 1, 1},
		{`{`, "", `end of the text`, 1, 2},
		{``, "", `end of the text`, 1, 1},
		{`{"schema":"ledgewright/plan/1","schema":"ledgewright/plan/1"}`, "schema", "schema", 1, 32},
	}
	for _, c := range cases {
		_, err := plan.Decode([]byte(c.text))
		var e *document.Error
		require.ErrorAs(t, err, &e, c.text)
		require.ErrorContains(t, err, c.says, c.text)
		require.Equal(t, c.path, e.Path, c.text)
		require.Equal(t, [2]int{c.line, c.column}, [2]int{e.Line, e.Column}, c.text)
	}
}

func TestPlaceOfAWrongMember(t *testing.T) {
	cases := []struct{ old, wrong, path, says string }{
		{`"thickness": 26`, `"thickness": "26"`, "modules[0].boards[0].thickness", "a length in millimetres"},
		{`"turn": 90`, `"turn": 90.00000001`, "modules[0].corners[0].turn", "at most 6 decimals"},
		{`"wood": "white-oak"`, `"wood": 7`, "modules[0].wood", "a text in quotation marks"},
		{`"closed": true`, `"closed": "yes"`, "modules[1].closed", "true or false"},
		{`"x": 400`, `"x": 1e12`, "walls[0].studs.each[0].x", "below 10⁹"},
		{`"pocket": 3`, `"pocket": 0`, "shop.covers.pocket", "found 0 mm; allowed is 0.5 mm to 50 mm"},
		{`"system": "mm"`, `"system": "ell"`, "shop.system", "one of mm, in"},
	}
	whole := string(read(t, plans+"version-1.json"))
	for _, c := range cases {
		at := strings.Index(whole, c.old)
		if c.path == "shop.system" {
			at = strings.LastIndex(whole, c.old)
		}
		require.Positive(t, at, c.old)
		_, err := plan.Decode([]byte(whole[:at] + c.wrong + whole[at+len(c.old):]))
		var e *document.Error
		require.ErrorAs(t, err, &e, c.wrong)
		require.Equal(t, c.path, e.Path)
		require.ErrorContains(t, err, c.says)
	}
}

func TestShopThatIsLeftOutIsTheDefaultOfThePlansUnits(t *testing.T) {
	text := `{"schema":"ledgewright/plan/1","job":{},"units":{"system":"in","step":0.79375},"counters":{},"walls":[],"modules":[],"arrangements":[]}`
	require.Equal(t, plan.New(unit.Inches), decoded(t, text))
}

func TestTooManyModulesAndBoardsAreRefusedWithTheirNumber(t *testing.T) {
	head := `{"schema":"ledgewright/plan/1","job":{},"units":{"system":"mm","step":1},"counters":{},"walls":[],"arrangements":[],"modules":[`
	_, err := plan.Decode([]byte(head + strings.Repeat("0,", plan.MostModules) + `0]}`))
	require.ErrorContains(t, err, "at modules: found 2001 modules; allowed is at most 2000")
	module := `{"boards":[` + strings.Repeat("0,", 5000) + `0]}`
	_, err = plan.Decode([]byte(head + module + "," + module + `]}`))
	require.ErrorContains(t, err, "at modules: found 10002 boards; allowed is at most 10000")
	_, err = plan.Decode([]byte(head + strings.Repeat(" ", plan.MostBytes) + `]}`))
	require.ErrorContains(t, err, "at most 8388608 bytes")
	_, err = plan.Decode([]byte(head + strings.Repeat("[", 40) + strings.Repeat("]", 40) + `]}`))
	var e *document.Error
	require.ErrorAs(t, err, &e)
	require.Equal(t, "too-deep", e.Reason)
	_, err = plan.Decode([]byte(strings.Replace(head, `"job":{}`, `"job":{"title":"`+strings.Repeat("é", 501)+`"}`, 1) + `]}`))
	require.ErrorAs(t, err, &e)
	require.ErrorContains(t, err, "500")
}

func TestFindAndNextID(t *testing.T) {
	p := sample()
	m, ok := p.Module("m2")
	require.True(t, ok)
	require.Equal(t, "Box", m.Label())
	_, ok = p.Module("m3")
	require.False(t, ok)
	w, ok := p.Wall("w1")
	require.True(t, ok)
	require.Equal(t, "North wall", w.Label())
	require.Equal(t, "w7", plan.Wall{ID: "w7"}.Label())
	a, ok := p.Arrangement("a2")
	require.True(t, ok)
	require.Equal(t, "Round the corner", a.Label())
	d, ok := m.Divider("d5")
	require.True(t, ok)
	require.Equal(t, "Middle", d.Name)

	c := p.Counters
	id, c := c.Next(plan.LetterModule)
	require.Equal(t, "m3", id)
	id, c = c.Next(plan.LetterBracket)
	require.Equal(t, "b10", id)
	id, c = c.Next(plan.LetterDivider)
	require.Equal(t, "d11", id, "parts share a counter")
	id, c = c.Next(plan.LetterWall)
	require.Equal(t, "w3", id)
	id, c = c.Next(plan.LetterArrangement)
	require.Equal(t, "a3", id)
	require.Equal(t, plan.Counters{Wall: 3, Module: 3, Arrangement: 3, Part: 11}, c)
	require.Equal(t, plan.Counters{Wall: 2, Module: 2, Arrangement: 2, Part: 9}, p.Counters)
}

func FuzzPlan(f *testing.F) {
	for _, name := range []string{"version-1.json", "newer-2.json"} {
		f.Add(read(f, plans+name))
	}
	for _, s := range []unit.System{unit.Metric, unit.Inches} {
		text, err := plan.Encode(plan.New(s))
		require.NoError(f, err)
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		p, err := plan.Decode(text)
		if err != nil {
			var e *document.Error
			require.True(t, errors.As(err, &e), "%v", err)
			require.NotEmpty(t, e.Found)
			require.NotEmpty(t, e.Allowed)
			return
		}
		plan.Check(p)
		once, err := plan.Encode(p)
		require.NoError(t, err)
		back, err := plan.Decode(once)
		require.NoError(t, err)
		require.Equal(t, p, back)
		twice, err := plan.Encode(back)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice))
		pretty, err := plan.Pretty(p)
		require.NoError(t, err)
		back, err = plan.Decode(pretty)
		require.NoError(t, err)
		require.Equal(t, p, back)
	})
}
