package unit

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestStyles(t *testing.T) {
	half, tenth := Style{Metric, Millimetre / 2}, Style{Metric, Millimetre / 10}
	s16, s32, s64 := Style{Inches, Inch / 16}, Style{Inches, Inch / 32}, Style{Inches, Inch / 64}
	cases := []struct {
		style              Style
		l                  Length
		length, unit, site string
	}{
		{Style{}, mm("816"), "816", "816 mm", "816"},
		{Style{}, mm("816.5"), "817", "817 mm", "817"},
		{Style{}, mm("-816.5"), "-817", "-817 mm", "-817"},
		{Style{}, mm("816.499999"), "816", "816 mm", "816"},
		{Style{}, 0, "0", "0 mm", "0"},
		{half, mm("-0.2"), "0", "0 mm", "0"},
		{half, mm("816.25"), "816.5", "816.5 mm", "816.5"},
		{half, mm("816.7"), "816.5", "816.5 mm", "816.5"},
		{tenth, mm("519.615242"), "519.6", "519.6 mm", "519.6"},
		{Style{Metric, Millimetre / 100}, mm("519.615242"), "519.62", "519.62 mm", "519.62"},
		{Style{Metric, Nanometre}, mm("519.615242"), "519.615242", "519.615242 mm", "519.615242"},
		{s16, in(20, 1, 2), "20 1/2", "20 1/2 in", `1'-8 1/2"`},
		{s16, in(51, 1, 2), "51 1/2", "51 1/2 in", `4'-3 1/2"`},
		{s16, in(84, 0, 1), "84", "84 in", `7'-0"`},
		{s16, in(-51, -1, 2), "-51 1/2", "-51 1/2 in", `-4'-3 1/2"`},
		{s16, in(3, 1, 2), "3 1/2", "3 1/2 in", `3 1/2"`},
		{s16, in(0, 1, 2), "1/2", "1/2 in", `1/2"`},
		{s16, in(84, 1, 2), "84 1/2", "84 1/2 in", `7'-0 1/2"`},
		{s16, 0, "0", "0 in", `0"`},
		{s16, in(11, 63, 64), "12", "12 in", `1'-0"`},
		{s16, in(0, 1, 32), "1/16", "1/16 in", `1/16"`},
		{s16, in(0, -1, 32), "-1/16", "-1/16 in", `-1/16"`},
		{s16, in(0, 1, 64), "0", "0 in", `0"`},
		{s32, in(0, 10, 32), "5/16", "5/16 in", `5/16"`},
		{s32, in(23, 5, 8), "23 5/8", "23 5/8 in", `1'-11 5/8"`},
		{s64, in(23, 39, 64), "23 39/64", "23 39/64 in", `1'-11 39/64"`},
		{Style{Inches, Inch / 128}, in(23, 39, 64), "23 39/64", "23 39/64 in", `1'-11 39/64"`},
		{Style{Inches, Millimetre}, in(23, 39, 64), "23 39/64", "23 39/64 in", `1'-11 39/64"`},
		{Style{Inches, Inch}, in(23, 1, 2), "24", "24 in", `2'-0"`},
		{Style{Inches, 0}, in(23, 1, 16), "23 1/16", "23 1/16 in", `1'-11 1/16"`},
	}
	for _, c := range cases {
		require.Equal(t, c.length, c.style.Length(c.l), "%v", c)
		require.Equal(t, c.unit, c.style.WithUnit(c.l), "%v", c)
		require.Equal(t, c.site, c.style.Site(c.l), "%v", c)
	}
}

func TestFineIsFinerThanTheStep(t *testing.T) {
	for _, c := range []struct {
		style Style
		l     Length
		want  string
	}{
		{Style{}, mm("0.2352"), "0.24 mm"},
		{Style{Metric, Millimetre / 2}, mm("-0.004"), "0.00 mm"},
		{Style{Metric, Millimetre / 2}, mm("-1.5"), "-1.50 mm"},
		{Style{Inches, Inch / 16}, mm("0.2352"), "0.009 in"},
		{Style{Inches, Inch / 64}, Inch / 2, "0.500 in"},
	} {
		require.Equal(t, c.want, c.style.Fine(c.l))
	}
}

func TestRoundedSaysWhatItDid(t *testing.T) {
	s := Style{Metric, Millimetre}
	for text, want := range map[string][2]string{
		"816.3": {"816", "-0.3"}, "816.5": {"817", "0.5"}, "-816.5": {"-817", "-0.5"}, "816": {"816", "0"}, "-816.3": {"-816", "0.3"},
	} {
		rounded, applied := s.Rounded(mm(text))
		require.Equal(t, want, [2]string{rounded.Decimal(), applied.Decimal()}, text)
	}
}

// An inch figure is reduced, and never finer than 1/64.
func TestFractionsAreReduced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Style{Inches, rapid.SampledFrom([]Length{Inch / 16, Inch / 32, Inch / 64}).Draw(t, "step")}
		text := s.Length(Length(rapid.Int64Range(0, int64(10*Metre)).Draw(t, "l")))
		i := strings.IndexByte(text, '/')
		if i < 0 {
			return
		}
		require.Contains(t, "13579", text[i-1:i], "the upper number is odd in %s", text)
		require.Contains(t, []string{"2", "4", "8", "16", "32", "64"}, text[i+1:])
	})
}

func TestOtherQuantities(t *testing.T) {
	metric, inch := Style{System: Metric}, Style{System: Inches}
	require.Equal(t, "22.5°", metric.Angle(22*Degree+Degree/2))
	require.Equal(t, "45°", inch.Angle(45*Degree))
	require.Equal(t, "36.87°", metric.Angle(36_869_898))
	require.Equal(t, "-0.01°", metric.Angle(-5_000))
	require.Equal(t, "0°", metric.Angle(-4_999))
	require.Equal(t, "12.3 kg", metric.Mass(12.34))
	require.Equal(t, "0.0 kg", metric.Mass(-0.01))
	// NIST Special Publication 811 (2008), appendix B.8: 1 lb = 0.453 592 37 kg exactly.
	require.Equal(t, "1.0 lb", inch.Mass(0.45359237))
	require.Equal(t, "22.0 lb", inch.Mass(10))
	require.Equal(t, "0.35 m²", metric.Area(0.3456))
	require.Equal(t, "1550 sq in", inch.Area(1), "1 m² is 1550.003 sq in")
	require.Equal(t, "? kg", metric.Mass(Mass(math.NaN())))
	require.Equal(t, "? lb", inch.Mass(Mass(math.Inf(-1))))
}
