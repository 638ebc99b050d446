package unit

import (
	"math"
	"math/big"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// NIST Special Publication 811 (2008), appendix B.8: 1 in = 25.4 mm and 1 ft = 304.8 mm
// exactly.
func TestInchAndFootAreExact(t *testing.T) {
	require.Equal(t, mm("25.4"), Length(Inch))
	require.Equal(t, mm("304.8"), Length(Foot))
	require.Equal(t, Length(0), Inch%64, "a sixty-fourth of an inch is whole")
	require.NotEqual(t, Length(0), Inch%128)
	require.Equal(t, 25.4, Inch.MM())
}

func TestNearestRoundsHalvesAwayFromZero(t *testing.T) {
	require.Equal(t, Length(1), Nearest(0.0000005))
	require.Equal(t, Length(-1), Nearest(-0.0000005))
	require.Equal(t, Length(0), Nearest(0.0000004))
	require.Equal(t, 22_500_000*MicroDegree, NearestAngle(22.5))
}

func TestMillimetresAndBackAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lengths().Draw(t, "l")
		require.Equal(t, l, Nearest(l.MM()))
	})
}

// MulDiv against exact fractions of math/big.
func TestMulDiv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-1e12, 1e12).Draw(t, "l"))
		num := rapid.Int64Range(-1e6, 1e6).Draw(t, "num")
		den := rapid.Int64Range(-1e6, 1e6).Filter(func(d int64) bool { return d != 0 }).Draw(t, "den")
		exact := new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(int64(l)), big.NewInt(num)), big.NewInt(den))
		want, err := strconv.ParseInt(exact.FloatString(0), 10, 64) // rounds halves away from zero
		require.NoError(t, err)
		require.Equal(t, Length(want), l.MulDiv(num, den))
	})
}

func TestQuarterTurnsAreExact(t *testing.T) {
	for i, want := range [][2]float64{{0, 1}, {1, 0}, {0, -1}, {-1, 0}} {
		sin, cos := (Angle(i)*QuarterTurn - FullTurn).SinCos()
		require.Equal(t, want, [2]float64{sin, cos})
	}
	require.Equal(t, 270*Degree, (-QuarterTurn).Turn())
	require.Equal(t, Angle(0), FullTurn.Turn())
}

func TestFourQuarterTurnsAreNone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := lengths().Draw(t, "x"), lengths().Draw(t, "y")
		a, b := x, y
		for range 4 {
			a, b = Rotate(a, b, QuarterTurn)
		}
		require.Equal(t, [2]Length{x, y}, [2]Length{a, b})
		a, b = Rotate(x, y, HalfTurn)
		require.Equal(t, [2]Length{-x, -y}, [2]Length{a, b})
	})
}

// Values that have a closed form: sin 30° = 1/2, sin 45° = √2/2, sin 60° = √3/2.
func TestSinesOfClosedForm(t *testing.T) {
	for a, want := range map[Angle]float64{30: 0.5, 45: math.Sqrt2 / 2, 60: math.Sqrt(3) / 2, 150: 0.5, -30: -0.5, 210: -0.5} {
		require.InDelta(t, want, (a * Degree).Sin(), 2e-16)
		require.InDelta(t, want, (QuarterTurn - a*Degree).Cos(), 2e-16)
	}
}

func TestSinesMirrorToTheBit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Angle(rapid.Int64Range(-int64(FullTurn), int64(FullTurn)).Draw(t, "a"))
		sin, cos := a.SinCos()
		require.Equal(t, [2]float64{0 - sin, cos}, pairOf((-a).SinCos()))
		require.Equal(t, [2]float64{sin, 0 - cos}, pairOf((HalfTurn - a).SinCos()))
		require.Equal(t, [2]float64{cos, sin}, pairOf((QuarterTurn - a).SinCos()))
		require.Equal(t, [2]float64{sin, cos}, pairOf((a + FullTurn).SinCos()))
		require.InDelta(t, math.Sin(a.Degrees()*math.Pi/180), sin, 2e-15)
		require.InDelta(t, math.Cos(a.Degrees()*math.Pi/180), cos, 2e-15)
	})
}

func pairOf(a, b float64) [2]float64 { return [2]float64{a, b} }

// A turn of any angle keeps the distance from the origin, but for the rounding of both
// coordinates to the nanometre.
func TestRotateKeepsDistances(t *testing.T) {
	const most = 20 * Metre
	rapid.Check(t, func(t *rapid.T) {
		x := Length(rapid.Int64Range(int64(-most), int64(most)).Draw(t, "x"))
		y := Length(rapid.Int64Range(int64(-most), int64(most)).Draw(t, "y"))
		a := Angle(rapid.Int64Range(-int64(2*FullTurn), int64(2*FullTurn)).Draw(t, "a"))
		rx, ry := Rotate(x, y, a)
		require.InDelta(t, math.Hypot(x.MM(), y.MM()), math.Hypot(rx.MM(), ry.MM()), 1e-6)
		bx, by := Rotate(rx, ry, -a)
		require.LessOrEqual(t, (bx - x).Abs(), 2*Nanometre)
		require.LessOrEqual(t, (by - y).Abs(), 2*Nanometre)
	})
}

func TestAreaAndVolume(t *testing.T) {
	require.Equal(t, Area(12), Rectangle(3*Metre, 4*Metre), "more than an int64 of nm² holds")
	require.InDelta(t, 0.00645160, float64(Rectangle(10*Inch, Inch)), 1e-18) // 10 sq in, NIST SP 811
	require.InDelta(t, 0.0024, float64(Prism(0.12, 20*Millimetre)), 1e-18)
}

// Decimals, fractions and sums against exact fractions of math/big.
func TestFiguresAgainstBigFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, 9999).Draw(t, "whole")
		den := rapid.SampledFrom([]int64{2, 4, 8, 16, 32, 64}).Draw(t, "den")
		num := rapid.Int64Range(1, den-1).Draw(t, "num")
		less := rapid.StringOfN(rapid.RuneFrom([]rune("0123456789")), 1, 6, -1).Draw(t, "less")
		unit := rapid.SampledFrom([]mark{millimetres, centimetres, metres, inchesMark, feetMark}).Draw(t, "unit")
		text := strconv.FormatInt(whole, 10) + " " + strconv.FormatInt(num, 10) + "/" + strconv.FormatInt(den, 10) +
			" " + unit.name() + " - 0." + less + " mm"

		exact := new(big.Rat).SetFrac64(whole*den+num, den)
		exact.Mul(exact, new(big.Rat).SetInt64(int64(unit.size(false))))
		minus, _ := new(big.Rat).SetString("0." + less)
		exact.Sub(exact, minus.Mul(minus, new(big.Rat).SetInt64(1_000_000)))

		got, err := ParseLength(text, Metric)
		require.NoError(t, err, text)
		require.True(t, exact.IsInt())
		require.Equal(t, exact.Num().Int64(), int64(got), text)
	})
}
