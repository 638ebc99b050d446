package unit

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// in and mm are written lengths: nanometres of an inch fraction and of a millimetre
// decimal.
func in(whole, num, den int64) Length { return Length(whole)*Inch + Inch.MulDiv(num, den) }

func mm(text string) Length {
	l, err := ParseDecimal(text)
	if err != nil {
		panic(text)
	}
	return l
}

// read lists what is accepted. An inch is exactly 25.4 mm and a foot 304.8 mm (NIST
// Special Publication 811, 2008 edition, appendix B.8).
var read = []struct {
	text string
	sys  System
	want Length
}{
	// bare numbers are in the plan's unit
	{"600", Metric, mm("600")},
	{"600", Inches, mm("15240")},
	{"0", Metric, 0},
	{"007", Metric, mm("7")},
	{"  600  ", Metric, mm("600")},
	{"+600", Metric, mm("600")},
	{"-18", Metric, mm("-18")},
	{"- 18", Metric, mm("-18")},
	{"\u221218", Metric, mm("-18")},
	{"999999999", Metric, mm("999999999")},
	// decimals
	{"2,5", Metric, mm("2.5")},
	{"2.5", Metric, mm("2.5")},
	{"2.5", Inches, mm("63.5")},
	{".5", Inches, mm("12.7")},
	{",5", Metric, mm("0.5")},
	{"0,600", Metric, mm("0.6")},
	{"1.200", Metric, mm("1.2")},
	{"1200,125", Metric, mm("1200.125")},
	{"1,25", Metric, mm("1.25")},
	{"0.000001", Metric, Nanometre},
	{"600.0000000000", Metric, mm("600")},
	{"0.015625", Inches, mm("0.396875")},
	{"11.5", Inches, mm("292.1")},
	// units
	{"600 mm", Metric, mm("600")},
	{"600mm", Inches, mm("600")},
	{"600 MM", Metric, mm("600")},
	{"60 cm", Metric, mm("600")},
	{"60cm", Inches, mm("600")},
	{"0.6 m", Metric, mm("600")},
	{"0,6 m", Metric, mm("600")},
	{"1.2 metres", Metric, mm("1200")},
	{"1/2 m", Metric, mm("500")},
	{"600\u00a0mm", Metric, mm("600")},
	{"600\u202fmm", Metric, mm("600")},
	{"10 in", Metric, mm("254")},
	{"10 in.", Metric, mm("254")},
	{"10 inches", Metric, mm("254")},
	{`10"`, Metric, mm("254")},
	{"10″", Metric, mm("254")},
	{"10”", Metric, mm("254")},
	{"10''", Metric, mm("254")},
	{"10′′", Metric, mm("254")},
	{"2 ft", Metric, mm("609.6")},
	{"2 ft.", Inches, mm("609.6")},
	{"1 foot", Inches, mm("304.8")},
	{"3 feet", Inches, mm("914.4")},
	// fractions
	{"23 5/8", Inches, mm("600.075")},
	{`23 5/8"`, Inches, mm("600.075")},
	{`23 5/8"`, Metric, mm("600.075")},
	{"23 5/8 in", Inches, mm("600.075")},
	{"23 5/8", Metric, mm("23.625")},
	{"23⅝", Inches, mm("600.075")},
	{"23 ⅝", Inches, mm("600.075")},
	{"23 5⁄8", Inches, mm("600.075")},
	{"23\u00a05/8", Inches, mm("600.075")},
	{"23\u20095∕8″", Inches, mm("600.075")},
	{"600½", Metric, mm("600.5")},
	{"½", Inches, mm("12.7")},
	{"¼ in", Metric, mm("6.35")},
	{"⅛", Inches, mm("3.175")},
	{"1/16", Inches, mm("1.5875")},
	{"1/64", Inches, mm("0.396875")},
	{"5 / 8", Inches, mm("15.875")},
	{"-1/2", Inches, mm("-12.7")},
	{"-23 5/8", Inches, mm("-600.075")},
	{"1/3 ft", Inches, mm("101.6")},
	{"7 1/2'", Inches, mm("2286")},
	{"1200/3", Metric, mm("400")},
	{"1200/3 - 18", Metric, mm("382")},
	{"8/4", Inches, mm("50.8")},
	// feet and inches
	{"7'", Inches, mm("2133.6")},
	{"7'", Metric, mm("2133.6")},
	{`7' 3-1/2"`, Inches, mm("2222.5")},
	{`7' 3-1/2"`, Metric, mm("2222.5")},
	{`7' 3 1/2"`, Inches, mm("2222.5")},
	{`7'3½"`, Inches, mm("2222.5")},
	{"7′ 3½″", Inches, mm("2222.5")},
	{"7’ 3 1/2”", Inches, mm("2222.5")},
	{"7'3", Inches, mm("2209.8")},
	{"7'3", Metric, mm("2209.8")},
	{`4'-3 1/2"`, Inches, mm("1308.1")},
	{`4'-3 1/2"`, Metric, mm("1308.1")},
	{`7'-3-1/2"`, Inches, mm("2222.5")},
	{`7'-0"`, Inches, mm("2133.6")},
	{`-4'-3 1/2"`, Inches, mm("-1308.1")},
	{"7 ft 3 1/2 in", Inches, mm("2222.5")},
	{"7ft 3-1/2in", Metric, mm("2222.5")},
	{"7-3 1/2", Inches, mm("2222.5")},
	{"7-3-1/2", Inches, mm("2222.5")},
	{"7-3½", Inches, mm("2222.5")},
	{`7-3 1/2"`, Inches, mm("2222.5")},
	{"7-3", Inches, mm("2209.8")},
	{"7-0", Inches, mm("2133.6")},
	{"7‑3", Inches, mm("2209.8")},
	{"7-11.5", Inches, mm("2425.7")},
	{"7-1/2", Inches, mm("190.5")},
	{"3-1/2", Inches, mm("88.9")},
	{`23-5/8"`, Metric, mm("600.075")},
	// sums
	{"1200-18", Metric, mm("1182")},
	{"1200-18", Inches, mm("30022.8")},
	{"1200 - 18 + 3.5", Metric, mm("1185.5")},
	{"1200 − 18", Metric, mm("1182")},
	{"1200–18", Metric, mm("1182")},
	{"1200+2,5", Metric, mm("1202.5")},
	{"7-3", Metric, mm("4")},
	{"7-3-2", Metric, mm("2")},
	{"7.5-3", Inches, mm("114.3")},
	{"36 - 3", Inches, mm("838.2")},
	{"36 - 3-1/2", Inches, mm("825.5")},
	{"36 - 3 1/2", Inches, mm("825.5")},
	{"600 - 3 - 3 - 3", Metric, mm("591")},
	{"23 5/8 + 1/16", Inches, mm("601.6625")},
	{"18 - 600", Metric, mm("-582")},
	{"60 cm - 18 mm", Metric, mm("582")},
	{`60 cm - 1/2"`, Metric, mm("587.3")},
	{"1200 mm - 18", Metric, mm("1182")},
	{"1200 - 18 mm", Metric, mm("1182")},
	{"7' - 15\"", Inches, mm("1752.6")},
	{"7' + 3", Inches, mm("2209.8")},
	{"7' - 18 mm", Inches, mm("2115.6")},
	{"7'-18 mm", Inches, mm("2115.6")},
	{"7' - 2'", Metric, mm("1524")},
	{`7' 0" - 3"`, Inches, mm("2057.4")},
	{`7'-0" - 1/2`, Inches, mm("2120.9")},
	{"7-3 + 2", Inches, mm("2260.6")},
}

func TestFiguresThatAreRead(t *testing.T) {
	require.GreaterOrEqual(t, len(read), 80)
	for _, c := range read {
		got, err := ParseLength(c.text, c.sys)
		require.NoError(t, err, "%q in a plan in %s", c.text, c.sys)
		require.Equal(t, c.want, got, "%q in a plan in %s", c.text, c.sys)
	}
}

// refused lists what is not accepted, with the whole sentence.
var refused = []struct {
	text   string
	sys    System
	reason Reason
	want   string
}{
	{"", Metric, Unexpected, "there is no figure"},
	{"   ", Metric, Unexpected, "there is no figure (at character 4)"},
	{"mm", Metric, Unexpected, "mm cannot stand here"},
	{"-", Metric, Unexpected, "a number is missing at the end (at character 2)"},
	{"600 -", Metric, Unexpected, "a number is missing at the end (at character 6)"},
	{"600 + + 3", Metric, Unexpected, "+ cannot stand here (at character 7)"},
	{"--18", Metric, Unexpected, "- cannot stand here (at character 2)"},
	{"600 - -18", Metric, Unexpected, "- cannot stand here (at character 7)"},
	{"600 mm mm", Metric, Unexpected, "mm cannot stand here (at character 8)"},
	{"1 m 20 cm", Metric, Unexpected, "20 cannot stand here (at character 5)"},
	{"/2", Metric, Unexpected, "/ cannot stand here"},
	{"1/", Metric, Unexpected, "a number is missing at the end (at character 3)"},
	{"600 * 2", Metric, UnknownCharacter, "* cannot stand in a figure (at character 5)"},
	{"(600)", Metric, UnknownCharacter, "( cannot stand in a figure"},
	{"６００", Metric, UnknownCharacter, "６ cannot stand in a figure"},
	{"600 km", Metric, UnknownUnit, `km is no unit; units are mm, cm, m, in (or ") and ft (or ') (at character 5)`},
	{"1e3", Metric, UnknownUnit, `e is no unit; units are mm, cm, m, in (or ") and ft (or ') (at character 2)`},
	{"NaN", Metric, UnknownUnit, `NaN is no unit; units are mm, cm, m, in (or ") and ft (or ')`},
	{"45°", Metric, UnknownUnit, "45° is an angle"},
	{"1,200", Metric, Grouping, "1,200 could be 1.200 or 1200; type 1.200 or 1200"},
	{"12,345", Inches, Grouping, "12,345 could be 12.345 or 12345; type 12.345 or 12345"},
	{"1.200,5", Metric, Grouping, "1.200,5 has more than one point or comma; digits are not grouped; type 1200.5"},
	{"1,200.5", Metric, Grouping, "1,200.5 has more than one point or comma; digits are not grouped; type 1200.5"},
	{"1,200,000", Metric, Grouping, "1,200,000 has more than one point or comma; digits are not grouped; type 1200000"},
	{"1.200.000", Metric, Grouping, "1.200.000 has more than one point or comma; digits are not grouped; type 1200000"},
	{"1 200", Metric, TwoNumbers, "1 200 are two numbers with nothing between them; type 1200 or 1 + 200"},
	{"600.", Metric, NoDigits, "600. has no digits after its point or comma"},
	{"3 1/0", Inches, WrongFraction, "1/0 divides by zero (at character 3)"},
	{"3 5/4", Inches, WrongFraction, "3 5/4 has a fraction that is not less than one"},
	{"3.5 1/2", Inches, WrongFraction, "3.5 1/2 has a fraction after decimals"},
	{"1/2/3", Inches, WrongFraction, "1/2/3 has two slashes"},
	{"1.5/2", Inches, WrongFraction, "1.5/2 is no fraction of whole numbers of at most 9 digits"},
	{"1/1234567890", Inches, WrongFraction, "1/1234567890 is no fraction of whole numbers of at most 9 digits"},
	{"7' 15\"", Inches, FeetAndInches, `7' 15" has 12 inches or more after feet; put + or - with spaces between them, or add to the feet`},
	{"7'-12", Inches, FeetAndInches, `7'-12 has 12 inches or more after feet; put + or - with spaces between them, or add to the feet`},
	{"1'200", Metric, FeetAndInches, `1'200 has 12 inches or more after feet; put + or - with spaces between them, or add to the feet`},
	{"7.5' 3\"", Inches, FeetAndInches, `7.5' 3" has inches after feet that are not whole`},
	{"7' 3 cm", Inches, FeetAndInches, "7' 3 cm has feet followed by what are no inches; put + or - between them"},
	{`7' - 3"`, Inches, TwoReadings, `7' - 3" could be feet and inches or a subtraction; type 7'-3" or 7' 0" - 3"`},
	{`7' -3`, Inches, TwoReadings, `7' -3 could be feet and inches or a subtraction; type 7'-3" or 7' 0" - 3"`},
	{"7-3-2", Inches, TwoReadings, `7-3-2 could be feet and inches or subtractions; type 7'-3" or spaces on both sides of each minus`},
	{"23-1/2", Metric, TwoReadings, "23-1/2 could be a whole number with a fraction or a subtraction; type 23 1/2 or 23 - 1/2"},
	{"60 cm - 18", Metric, WhichUnit, "18 has no unit, and 60 cm has one of its own (at character 9); type 18 mm or 18 cm"},
	{"60 - 5 cm", Metric, WhichUnit, "60 has no unit, and 5 cm has one of its own; type 60 mm or 60 cm"},
	{`600 - 1/2"`, Metric, WhichUnit, `600 has no unit, and 1/2" has one of its own; type 600 mm or 600 in`},
	{"24 - 18 mm", Inches, WhichUnit, "24 has no unit, and 18 mm has one of its own; type 24 in or 24 mm"},
	{"7-3 1/2\"", Metric, WhichUnit, `7 has no unit, and 3 1/2" has one of its own; type 7 mm or 7 in`},
	{"0.0000001", Metric, TooFineFigure, "0.0000001 does not come out in whole nanometres"},
	{"1/128", Inches, TooFineFigure, "1/128 does not come out in whole nanometres; type 0.008"},
	{"1000/3", Metric, TooFineFigure, "1000/3 does not come out in whole nanometres; type 333.333"},
	{"1/3 in", Metric, TooFineFigure, "1/3 in does not come out in whole nanometres; type 0.333 in"},
	{"0.1234567890123456789", Metric, TooFineFigure, "0.1234567890123456789 has more decimals than whole nanometres can hold"},
	{"1000000000", Metric, TooLargeFigure, "1000000000 is out of range"},
	{"1000000 m", Metric, TooLargeFigure, "1000000 m is out of range"},
	{"99999999999999999999999999", Metric, TooLargeFigure, "99999999999999999999999999 is out of range"},
	{"999999999 + 1", Metric, TooLargeFigure, "999999999 + 1 is too long; a length is below 1000 km"},
	{strings.Repeat("1", 101), Metric, TooLong, "a figure has at most 100 characters (at character 101)"},
}

func TestFiguresThatAreRefused(t *testing.T) {
	for _, c := range refused {
		_, err := ParseLength(c.text, c.sys)
		require.Error(t, err, "%q in a plan in %s", c.text, c.sys)
		e := err.(*ParseError)
		require.Equal(t, c.reason, e.Reason, "%q", c.text)
		require.Equal(t, c.text, e.Text)
		require.Equal(t, c.want, e.Error(), "%q", c.text)
	}
}

// What an error says to type instead is itself read, wherever it is a figure.
func TestWhatIsOfferedIsRead(t *testing.T) {
	for _, c := range refused {
		_, err := ParseLength(c.text, c.sys)
		for _, try := range err.(*ParseError).Try {
			if strings.HasPrefix(try, "spaces") {
				continue
			}
			_, err := ParseLength(try, c.sys)
			require.NoError(t, err, "%q offers %q", c.text, try)
		}
	}
}

func TestAngles(t *testing.T) {
	for text, want := range map[string]Angle{
		"45": 45 * Degree, "45°": 45 * Degree, "22.5°": 22_500_000, "22,5": 22_500_000, "22 1/2": 22_500_000,
		"22½ deg": 22_500_000, "-90 degrees": -QuarterTurn, "−90": -QuarterTurn, "0.000001": MicroDegree, "0": 0,
	} {
		got, err := ParseAngle(text)
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
	}
	for text, want := range map[string]string{
		"":           "there is no figure",
		"45 mm":      "45 mm is no angle; angles are decimal degrees",
		"22° 30'":    "30 cannot stand here (at character 5)",
		"90 - 45":    "- cannot stand here (at character 4)",
		"45,000":     "45,000 could be 45.000 or 45000; type 45.000 or 45000",
		"1/3":        "1/3 does not come out in whole nanometres; type 0.333",
		"x":          `x is no unit; units are mm, cm, m, in (or ") and ft (or ')`,
		"9999999999": "9999999999 is out of range",
	} {
		_, err := ParseAngle(text)
		require.EqualError(t, err, want)
	}
}

func TestAnglesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Angle(lengths().Draw(t, "a"))
		got, err := ParseAngle(a.String())
		require.NoError(t, err)
		require.Equal(t, a, got)
	})
}

var styles = []Style{
	{Metric, Millimetre}, {Metric, Millimetre / 2}, {Metric, Millimetre / 10}, {Metric, Millimetre / 100}, {},
	{Inches, Inch / 16}, {Inches, Inch / 32}, {Inches, Inch / 64}, {Inches, 0},
}

// What is printed is read back as the rounded length, in every form.
func TestPrintedLengthsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(styles).Draw(t, "style")
		l := Length(rapid.Int64Range(int64(-20*Metre), int64(20*Metre)).Draw(t, "l"))
		want, applied := s.Rounded(l)
		require.Equal(t, want, l+applied)
		require.LessOrEqual(t, 2*applied.Abs(), s.step())
		for _, text := range []string{s.Length(l), s.WithUnit(l), s.Site(l)} {
			got, err := ParseLength(text, s.System)
			require.NoError(t, err, text)
			require.Equal(t, want, got, text)
		}
	})
}

// Whatever is read prints exactly in millimetres, and that is read as the same; and
// what a style prints of it is read as its rounding. An error points into the text.
func FuzzParseLength(f *testing.F) {
	for _, c := range read {
		f.Add(c.text, c.sys == Inches)
	}
	for _, c := range refused {
		f.Add(c.text, c.sys == Inches)
	}
	f.Fuzz(func(t *testing.T, text string, inch bool) {
		sys := Metric
		if inch {
			sys = Inches
		}
		l, err := ParseLength(text, sys)
		if err != nil {
			e := err.(*ParseError)
			require.NotEmpty(t, e.Reason)
			require.NotEmpty(t, e.Error())
			require.True(t, 1 <= e.At && e.At <= utf8.RuneCountInString(text)+1)
			return
		}
		require.Less(t, l.Abs(), Limit)
		again, err := ParseLength(l.String(), sys)
		require.NoError(t, err)
		require.Equal(t, l, again)
		for _, s := range styles {
			want, _ := s.Rounded(l)
			if want.Abs() >= Limit {
				continue
			}
			got, err := ParseLength(s.WithUnit(l), sys)
			require.NoError(t, err)
			require.Equal(t, want, got)
		}
	})
}
