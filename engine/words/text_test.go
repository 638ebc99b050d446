package words

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
)

var (
	mm   = unit.Style{System: unit.Metric, Step: unit.Millimetre / 2}
	inch = unit.Style{System: unit.Inches, Step: unit.Inch / 16}
)

// filled fills a text that stands in no catalogue.
func filled(text string, style unit.Style, args ...Arg) string {
	s := ""
	for _, p := range split(text) {
		if p.name == "" {
			s += p.text
			continue
		}
		v, ok := p.fill(args, style, 0)
		if !ok {
			v = "[" + p.name + "?]"
		}
		s += v
	}
	return s
}

func TestPlacesAreFilledByType(t *testing.T) {
	cases := []struct {
		text  string
		style unit.Style
		arg   Arg
		want  string
	}{
		{"is {x} long", mm, Length("x", 816*unit.Millimetre), "is 816 mm long"},
		{"is {x} long", mm, Length("x", 816*unit.Millimetre+300*unit.Micrometre), "is 816.5 mm long"},
		{"is {x} long", inch, Length("x", 41*unit.Inch/2), "is 20 1/2 in long"},
		{"opens {x}", mm, Fine("x", 242*unit.Micrometre), "opens 0.24 mm"},
		{"opens {x}", inch, Fine("x", 242*unit.Micrometre), "opens 0.010 in"},
		{"tilts {x}.", mm, Angle("x", 22*unit.Degree+unit.Degree/2), "tilts 22.5°."},
		{"weighs {x}", mm, Mass("x", 12.34), "weighs 12.3 kg"},
		{"weighs {x}", inch, Mass("x", 10), "weighs 22.0 lb"},
		{"{x} of glue", mm, Arg{"x", Value{Is: IsArea, Number: 0.126}}, "0.13 m² of glue"},
		{"{x} {x|board|boards}", mm, Count("x", 1), "1 board"},
		{"{x} {x|board|boards}", mm, Count("x", 0), "0 boards"},
		{"{x} {x|board|boards}", mm, Count("x", 48), "48 boards"},
		{"drops {x} V", mm, Number("x", 0.1234), "drops 0.123 V"},
		{"drops {x} V", mm, Number("x", -0.0001), "drops 0 V"},
		{"drops {x} V", mm, Number("x", math.NaN()), "drops ? V"},
		{"{x}: too short", mm, Name("x", "Left {arm}"), "Left {arm}: too short"},
	}
	for _, c := range cases {
		require.Equal(t, c.want, filled(c.text, c.style, c.arg), c.text)
	}
}

func TestMistakesShow(t *testing.T) {
	require.Equal(t, "[finding.of-nothing?]", Text("finding.of-nothing", nil, mm))
	require.Equal(t, "a [b?] c", filled("a {b} c", mm))
	require.Equal(t, "a [b?] c", filled("a {b} c", mm, Arg{Name: "b"}), "a value of no type")
	require.Equal(t, "[b?]", filled("{b|board|boards}", mm, Name("b", "1")), "a plural of what is no count")
	require.Equal(t, "[end.of-nothing?]", filled("{b}", mm, Word("b", "end.of-nothing")))
}

func TestBracesWithoutPartnersArePlainText(t *testing.T) {
	for _, text := range []string{"", "a", "a { b", "a } b", "} {", "{"} {
		require.Equal(t, text, filled(text, mm))
	}
}
