package shop

import (
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// leaves lists the paths of all fields of a profile that hold a value, and the type
// of each, read from the struct itself.
func leaves(t reflect.Type, prefix string, out map[string]reflect.Type) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" || prefix+name == "schema" {
			continue
		}
		optional := f.Type == reflect.TypeFor[document.Opt[unit.Length]]()
		if f.Type.Kind() == reflect.Struct && !optional {
			leaves(f.Type, prefix+name+".", out)
			continue
		}
		out[prefix+name] = f.Type
	}
}

func TestTheTableHasEveryFieldOnce(t *testing.T) {
	want := map[string]reflect.Type{}
	leaves(reflect.TypeFor[Profile](), "", want)
	require.Greater(t, len(want), 50)
	seen := map[string]bool{}
	for _, r := range Defaults() {
		require.False(t, seen[r.Path], "%s stands twice", r.Path)
		seen[r.Path] = true
		require.Contains(t, want, r.Path)
		require.Equal(t, want[r.Path], reflect.TypeOf(r.Metric), r.Path)
		require.Equal(t, want[r.Path], reflect.TypeOf(r.Inches), r.Path)
		require.Equal(t, want[r.Path], reflect.TypeOf(r.at(&Profile{})).Elem(), r.Path)
	}
	require.Len(t, seen, len(want))
}

// Each row must point at the field that its path names: set the field through the
// row, and look for it through the document.
func TestRowsPointWhereTheySay(t *testing.T) {
	for _, r := range Defaults() {
		empty, err := document.Tree(Profile{})
		require.NoError(t, err)
		var p Profile
		field := reflect.ValueOf(r.at(&p)).Elem()
		switch field.Kind() {
		case reflect.String:
			field.SetString("x")
		case reflect.Bool:
			field.SetBool(true)
		case reflect.Float64:
			field.SetFloat(7)
		case reflect.Slice:
			field.Set(reflect.ValueOf([]unit.Length{7}))
		case reflect.Struct:
			field.Set(reflect.ValueOf(document.Some(unit.Length(7))))
		default:
			field.SetInt(7)
		}
		set, err := document.Tree(p)
		require.NoError(t, err)
		at := strings.Split(r.Path, ".")
		require.NotEqual(t, child(empty, at), child(set, at), r.Path)
	}
}

func child(n document.Node, path []string) document.Node {
	for _, name := range path {
		n, _ = n.Get(name)
	}
	return n
}

func TestEveryRowHasItsReasonAndBasis(t *testing.T) {
	for _, r := range Defaults() {
		require.NotEmpty(t, r.Reason, r.Path)
		require.Contains(t, []Basis{Practice, Cited, Assumed}, r.Basis, r.Path)
		require.Equal(t, r.Basis == Cited, r.Source != "", "%s: a source stands with what is cited, and only there", r.Path)
		require.True(t, r.allows(r.Metric), r.Path)
		require.True(t, r.allows(r.Inches), r.Path)
	}
}

func TestInchDefaultsAreOnAnInchTape(t *testing.T) {
	for _, r := range Defaults() {
		for _, l := range lengthsOf(r.Inches) {
			require.Zero(t, l%(unit.Inch/64), "%s: %s is no multiple of 1/64 in", r.Path, l)
		}
		for _, l := range lengthsOf(r.Metric) {
			require.Zero(t, l%(unit.Millimetre/10), "%s: %s is no multiple of 0.1 mm", r.Path, l)
		}
	}
}

// The two systems describe the same workshop: an inch default is within a tenth or
// 0.6 mm (the play between two common drill bits) of the metric one.
func TestTheSystemsAgree(t *testing.T) {
	for _, r := range Defaults() {
		m, i := lengthsOf(r.Metric), lengthsOf(r.Inches)
		require.Len(t, i, len(m), r.Path)
		for k := range m {
			near := max(m[k]/10, unit.Millimetre*6/10)
			require.LessOrEqual(t, (m[k] - i[k]).Abs(), near, "%s: %s and %s", r.Path, m[k], i[k])
		}
	}
}

func lengthsOf(v any) []unit.Length {
	switch v := v.(type) {
	case unit.Length:
		return []unit.Length{v}
	case []unit.Length:
		return v
	}
	return nil
}

func TestDefaultIsTheTable(t *testing.T) {
	m, i := Default(unit.Metric), Default(unit.Inches)
	require.Empty(t, Check(m))
	require.Empty(t, Check(i))
	require.Equal(t, 3*unit.Millimetre, m.Covers.Pocket)
	require.Equal(t, unit.Inch/8, i.Covers.Pocket)
	require.Equal(t, unit.Inch*33/32, i.Stock.Thicknesses[1])
	require.Equal(t, m, Default("ell"), "an unknown system counts as metric")
}

// Published arithmetic of a known good shelf: rod 1/2 in, 3 in into the stud (Fine
// Homebuilding, Hidden shelf connections, September 1981), and the rule for bores
// from the place and angle errors of a hand-set rod.
func TestDefaultsAgainstKnownShelves(t *testing.T) {
	i := Default(unit.Inches)
	require.Equal(t, 3*unit.Inch, unit.Length(i.Rods.InStudDiameters)*unit.Inch/2)
	require.Equal(t, 3*unit.Inch, i.Rods.InStudLeast)
	require.Equal(t, 5*unit.Inch, i.Brackets.Fixed, "marks 5 in from each end")
	require.Equal(t, unit.Inch, i.Covers.Front)
	m := Default(unit.Metric)
	quarter := unit.Degree / 4
	need := 0.5 + 120*quarter.Sin()/quarter.Cos()
	require.InDelta(t, need, m.Rods.SlackSingle.MM(), 0.05)
}

// A change of one default must not reach a profile that was given out before.
func TestProfilesDoNotShareTheirLists(t *testing.T) {
	a, b := Default(unit.Metric), Default(unit.Metric)
	a.Stock.Thicknesses[0] = 1
	require.Equal(t, 20*unit.Millimetre, b.Stock.Thicknesses[0])
	require.Equal(t, 20*unit.Millimetre, Default(unit.Metric).Stock.Thicknesses[0])
}

func TestCheckNamesEachFault(t *testing.T) {
	p := Default(unit.Metric)
	p.Tape.Bench = 0
	p.Grooves.DeepestPart = 0
	p.Brackets.Rule = "by-eye"
	p.Stock.Thicknesses = []unit.Length{20 * mm, -mm}
	p.Machines.Saw.MaxTilt = 91 * deg
	p.Joints.SplineThickness = document.Some(30 * mm)
	p.Moisture.UseLow = 12
	p.System = "ell"
	var got []string
	for _, f := range Check(p) {
		got = append(got, f.Error())
	}
	require.Equal(t, []string{
		`shop profile, system: found "ell"; allowed is one of mm, in`,
		`shop profile, tape.bench: found 0 mm; allowed is 0.05 mm to 5 mm`,
		`shop profile, brackets.rule: found "by-eye"; allowed is one of studs, overhang, fixed`,
		`shop profile, joints.splineThickness: found 30 mm; allowed is 1 mm to 20 mm`,
		`shop profile, grooves.deepestPart: found 0; allowed is 2 to 20`,
		`shop profile, stock.thicknesses: found 20, -1 mm; allowed is 6 mm to 150 mm`,
		`shop profile, machines.saw.maxTilt: found 91°; allowed is 0° to 60°`,
		`shop profile, moisture.useLow: found 12; allowed is 2 to 11`,
	}, got)
}

func TestSetChangesOneField(t *testing.T) {
	cases := []struct {
		path, value string
		check       func(Profile) bool
	}{
		{"covers.pocket", "3.5", func(p Profile) bool { return p.Covers.Pocket == 7*mm/2 }},
		{"covers.pocket", "3.175", func(p Profile) bool { return p.Covers.Pocket == in/8 }},
		{"name", `"Bench by the window"`, func(p Profile) bool { return p.Name == "Bench by the window" }},
		{"machines.saw.tiltsLeft", "false", func(p Profile) bool { return !p.Machines.Saw.TiltsLeft }},
		{"machines.saw.maxTilt", "47", func(p Profile) bool { return p.Machines.Saw.MaxTilt == 47*deg }},
		{"moisture.shop", "9.5", func(p Profile) bool { return p.Moisture.Shop == 9.5 }},
		{"moisture.sawn", `"quarter"`, func(p Profile) bool { return p.Moisture.Sawn == "quarter" }},
		{"moisture.sawn", `""`, func(p Profile) bool { return p.Moisture.Sawn == "" }},
		{"moisture.seen", "0.3", func(p Profile) bool { return p.Moisture.Gap() == 3*mm/10 }},
		{"moisture.seen", "null", func(p Profile) bool { return !p.Moisture.Seen.Known && p.Moisture.Gap() == mm/2 }},
		{"brackets.overhang", "5", func(p Profile) bool { return p.Brackets.Overhang == 5 }},
		{"brackets.rule", `"fixed"`, func(p Profile) bool { return p.Brackets.Rule == RuleFixed }},
		{"joints.splineThickness", "4", func(p Profile) bool { return p.Joints.SplineThickness == document.Some(4*mm) }},
		{"joints.splineThickness", "null", func(p Profile) bool { return !p.Joints.SplineThickness.Known }},
		{"stock.thicknesses", "[18, 27]", func(p Profile) bool {
			return reflect.DeepEqual(p.Stock.Thicknesses, []unit.Length{18 * mm, 27 * mm})
		}},
		{"system", `"in"`, func(p Profile) bool { return p.System == unit.Inches }},
	}
	for _, c := range cases {
		before := Default(unit.Metric)
		got, err := Set(before, c.path, c.value)
		require.NoError(t, err, c.path)
		require.True(t, c.check(got), "%s = %s", c.path, c.value)
		require.Equal(t, Default(unit.Metric), before, "the profile that was given is left alone")
		back := read2(t, got, before, c.path)
		require.Equal(t, before, back, "%s: nothing else changed", c.path)
	}
}

// read2 puts the value that stands at path in old back into p.
func read2(t *testing.T, p, old Profile, path string) Profile {
	r, ok := find(path)
	require.True(t, ok)
	put(r.at(&p), get(r.at(&old)))
	return p
}

func TestSetSaysWhatIsWrong(t *testing.T) {
	cases := []struct{ path, value, says string }{
		{"covers.pocket", "0", "shop profile, covers.pocket: found 0 mm; allowed is 0.5 mm to 50 mm"},
		{"covers.pocket", `"3"`, `found the text "3"`},
		{"covers.pocket", "3.1234567", "at most 6 decimals"},
		{"covers.pocket", "3 4", "nothing after the end"},
		{"covers.pocket", "", "end of the text"},
		{"covers.pocket", "null", "found null"},
		{"covers.pokcet", "3", "there is no field covers.pokcet; there are covers.pocket, covers.bore,"},
		{"cover", "3", "there is no field cover"},
		{"", "3", "there is no field"},
		{"brackets.rule", `"by-eye"`, "one of studs, overhang, fixed"},
		{"moisture.useLow", "12", "allowed is 2 to 11"},
		{"moisture.sawn", `"rift"`, `found "rift"; allowed is one of "", flat, quarter`},
		{"moisture.seen", "0.01", "allowed is 0.05 mm to 5 mm"},
		{"stock.thicknesses", "[18, 400]", "allowed is 6 mm to 150 mm"},
		{"extra", "{}", "there is no field extra"},
	}
	for _, c := range cases {
		before := Default(unit.Metric)
		got, err := Set(before, c.path, c.value)
		require.ErrorContains(t, err, c.says, "%s = %s", c.path, c.value)
		require.Equal(t, before, got)
	}
}

func TestEveryFieldCanBeSetToItsOtherDefault(t *testing.T) {
	p := Default(unit.Metric)
	whole, err := document.Tree(Default(unit.Inches))
	require.NoError(t, err)
	for _, r := range Defaults() {
		n := child(whole, strings.Split(r.Path, "."))
		if n.Kind == document.Null {
			continue // left out because it says nothing
		}
		text, err := n.Canonical()
		require.NoError(t, err)
		p, err = Set(p, r.Path, string(text))
		require.NoError(t, err, r.Path)
	}
	require.Equal(t, Default(unit.Inches), p)
}

func TestProfileSurvivesItsDocument(t *testing.T) {
	for _, s := range []unit.System{unit.Metric, unit.Inches} {
		text, err := Encode(Default(s))
		require.NoError(t, err)
		back, err := Decode(text)
		require.NoError(t, err)
		require.Equal(t, Default(s), back)
		pretty, err := Pretty(back)
		require.NoError(t, err)
		again, err := Decode(pretty)
		require.NoError(t, err)
		require.Equal(t, Default(s), again)
	}
}

func TestWhatAProfileLeavesOutIsTheDefaultOfItsSystem(t *testing.T) {
	p, err := Decode([]byte(`{"schema":"ledgewright/shop/1","system":"in","covers":{"pocket":4},"hue":7}`))
	require.NoError(t, err)
	want := Default(unit.Inches)
	want.Covers.Pocket = 4 * mm
	want.Extra = document.Extra{{Key: "hue", Value: "7"}}
	require.Equal(t, want, p)
	p, err = Decode([]byte(`{"schema":"ledgewright/shop/1"}`))
	require.NoError(t, err)
	require.Equal(t, Default(unit.Metric), p)
}

func TestWrongProfilesAreRefused(t *testing.T) {
	cases := []struct{ text, says string }{
		{`{}`, `"schema" must be "ledgewright/shop/1"`},
		{`{"schema":"ledgewright/plan/1"}`, `"schema" must be "ledgewright/shop/1"`},
		{`{"schema":"ledgewright/shop/1","system":"ell"}`, "one of mm, in"},
		{`{"schema":"ledgewright/shop/1","covers":{"pocket":0}}`, "covers.pocket: found 0 mm"},
		{`{"schema":"ledgewright/shop/1","covers":7}`, "at covers: found the number 7"},
		{`{"schema":"ledgewright/shop/1","covers":{"pocket":"3"}}`, "at covers.pocket"},
		{`[`, "line 1"},
	}
	for _, c := range cases {
		_, err := Decode([]byte(c.text))
		require.ErrorContains(t, err, c.says, c.text)
	}
}

// Set never lets in what Check refuses.
func TestSetKeepsAProfileInOrder(t *testing.T) {
	table := Defaults()
	rapid.Check(t, func(t *rapid.T) {
		p := Default(unit.Metric)
		for range rapid.IntRange(1, 8).Draw(t, "n") {
			r := rapid.SampledFrom(table).Draw(t, "row")
			value := rapid.SampledFrom([]string{"0", "1", "-3", "7.5", "25", "1000", "true", "null", `"studs"`, `"in"`, "[20]", "[]"}).Draw(t, "value")
			if next, err := Set(p, r.Path, value); err == nil {
				p = next
			}
			require.Empty(t, Check(p))
		}
	})
}

func FuzzProfile(f *testing.F) {
	for _, s := range []unit.System{unit.Metric, unit.Inches} {
		text, err := Pretty(Default(s))
		require.NoError(f, err)
		f.Add(text)
	}
	f.Add([]byte(`{"schema":"ledgewright/shop/1","covers":{"pocket":4,"x":[1,{"y":null}]}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		p, err := Decode(text)
		if err != nil {
			return
		}
		require.Empty(t, Check(p))
		once, err := Encode(p)
		require.NoError(t, err)
		back, err := Decode(once)
		require.NoError(t, err)
		require.Equal(t, p, back)
		twice, err := Encode(back)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice))
	})
}
