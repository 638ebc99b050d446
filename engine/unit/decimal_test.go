package unit

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestParseDecimal(t *testing.T) {
	cases := []struct {
		text string
		want Length
		err  error
	}{
		{"0", 0, nil},
		{"-0", 0, nil},
		{"0.0", 0, nil},
		{"0e99", 0, nil},
		{"292.1", 23 * Inch / 2, nil},
		{"0.396875", sixtyFourth, nil},
		{"-0.000001", -Nanometre, nil},
		{"1e-6", Nanometre, nil},
		{"1E-06", Nanometre, nil},
		{"2.921e2", 23 * Inch / 2, nil},
		{"1200.000000000", 1200 * Millimetre, nil},
		{"999999999.999999", Limit - Nanometre, nil},
		{"1000000000", 0, ErrTooLarge},
		{"-1e9", 0, ErrTooLarge},
		{"1e999999999999999999999", 0, ErrTooLarge},
		{"1e-999999999999999999999", 0, ErrTooFine},
		{"0.0000001", 0, ErrTooFine},
		{"1.0000005", 0, ErrTooFine},
		{"", 0, ErrNoNumber},
		{"-", 0, ErrNoNumber},
		{"+1", 0, ErrNoNumber},
		{"01", 0, ErrNoNumber},
		{"1.", 0, ErrNoNumber},
		{".5", 0, ErrNoNumber},
		{"1e", 0, ErrNoNumber},
		{"1e+", 0, ErrNoNumber},
		{"1e5x", 0, ErrNoNumber},
		{"1 ", 0, ErrNoNumber},
		{"0x10", 0, ErrNoNumber},
		{"NaN", 0, ErrNoNumber},
	}
	for _, c := range cases {
		got, err := ParseDecimal(c.text)
		require.Equal(t, c.want, got, c.text)
		require.Equal(t, c.err, err, c.text)
	}
}

func TestScaledReadsWholeNumbers(t *testing.T) {
	for text, want := range map[string]int64{"7": 7, "7.0": 7, "-12e2": -1200, "9007199254740991": 1<<53 - 1} {
		got, err := Scaled(text, 0, 1<<53)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	_, err := Scaled("9007199254740992", 0, 1<<53)
	require.Equal(t, ErrTooLarge, err)
	_, err = Scaled("0.5", 0, 1<<53)
	require.Equal(t, ErrTooFine, err)
}

func lengths() *rapid.Generator[Length] {
	return rapid.Map(rapid.Int64Range(int64(-Limit)+1, int64(Limit)-1), func(n int64) Length { return Length(n) })
}

func TestDecimalReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lengths().Draw(t, "l")
		got, err := ParseDecimal(l.Decimal())
		require.NoError(t, err)
		require.Equal(t, l, got)
		a, err := ParseDecimalAngle(Angle(l).Decimal())
		require.NoError(t, err)
		require.Equal(t, Angle(l), a)
	})
}

// A reader that knows only 64-bit floats gets every length in range back to the digit,
// because 15 significant digits survive a float (IEEE 754 binary64; C's DBL_DIG). So
// the decimal is also the shortest text of the float, the form that ECMAScript prints.
func TestDecimalSurvivesFloats(t *testing.T) {
	check := func(t require.TestingT, l Length) {
		x, err := strconv.ParseFloat(l.Decimal(), 64)
		require.NoError(t, err)
		require.Equal(t, l.Decimal(), strconv.FormatFloat(x, 'f', -1, 64))
	}
	for l := Length(1); l < Limit; l *= 3 {
		check(t, l)
		check(t, Limit-l)
		check(t, -l)
	}
	rapid.Check(t, func(t *rapid.T) { check(t, lengths().Draw(t, "l")) })
}

func TestDecimalOfTheWholeRange(t *testing.T) {
	require.Equal(t, "9223372036854.775807", Length(math.MaxInt64).Decimal())
	require.Equal(t, "-9223372036854.775808", Length(math.MinInt64).Decimal())
	require.Equal(t, "292.1 mm", (23 * Inch / 2).String())
	require.Equal(t, "22.5°", (22*Degree + Degree/2).String())
}
