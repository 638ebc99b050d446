package document

import (
	"encoding/hex"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// RFC 8785 (2020), section 3.2.2, the sample object, and section 3.2.4, its canonical
// text in UTF-8.
func TestSampleOfRFC8785(t *testing.T) {
	const sample = `{
  "numbers": [333333333.33333329, 1E30, 4.50,
              2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`
	want, err := hex.DecodeString(strings.Join(strings.Fields(`
		7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72
		75 65 2c 66 61 6c 73 65 5d 2c 22 6e 75 6d 62 65 72 73 22 3a
		5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31
		65 2b 33 30 2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37
		5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30
		30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d`), ""))
	require.NoError(t, err)
	got, err := Canonical([]byte(sample))
	require.NoError(t, err)
	require.Equal(t, string(want), string(got))
}

// RFC 8785 (2020), section 3.2.3: members sorted by UTF-16 units.
func TestSortingOfRFC8785(t *testing.T) {
	const sample = `{
  "\u20ac": "Euro Sign",
  "\r": "Carriage Return",
  "\ufb33": "Hebrew Letter Dalet With Dagesh",
  "1": "One",
  "\ud83d\ude00": "Emoji: Grinning Face",
  "\u0080": "Control",
  "\u00f6": "Latin Small Letter O With Diaeresis"
}`
	got, err := Canonical([]byte(sample))
	require.NoError(t, err)
	n, err := Parse(got)
	require.NoError(t, err)
	var values []string
	for _, k := range n.Kids {
		values = append(values, k.Text)
	}
	require.Equal(t, []string{
		"Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis",
		"Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh",
	}, values)
}

// RFC 8785 (2020), appendix B, table 1: IEEE 754 bits and their JSON.
var appendixB = []struct {
	bits uint64
	want string
}{
	{0x0000000000000000, "0"},
	{0x8000000000000000, "0"},
	{0x0000000000000001, "5e-324"},
	{0x8000000000000001, "-5e-324"},
	{0x7fefffffffffffff, "1.7976931348623157e+308"},
	{0xffefffffffffffff, "-1.7976931348623157e+308"},
	{0x4340000000000000, "9007199254740992"},
	{0xc340000000000000, "-9007199254740992"},
	{0x4430000000000000, "295147905179352830000"},
	{0x44b52d02c7e14af5, "9.999999999999997e+22"},
	{0x44b52d02c7e14af6, "1e+23"},
	{0x44b52d02c7e14af7, "1.0000000000000001e+23"},
	{0x444b1ae4d6e2ef4e, "999999999999999700000"},
	{0x444b1ae4d6e2ef4f, "999999999999999900000"},
	{0x444b1ae4d6e2ef50, "1e+21"},
	{0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
	{0x3eb0c6f7a0b5ed8d, "0.000001"},
	{0x41b3de4355555553, "333333333.3333332"},
	{0x41b3de4355555554, "333333333.33333325"},
	{0x41b3de4355555555, "333333333.3333333"},
	{0x41b3de4355555556, "333333333.3333334"},
	{0x41b3de4355555557, "333333333.33333343"},
	{0xbecbf647612f3696, "-0.0000033333333333333333"},
	{0x43143ff3c1cb0959, "1424953923781206.2"},
}

func TestNumbersOfRFC8785(t *testing.T) {
	for _, c := range appendixB {
		x := math.Float64frombits(c.bits)
		require.Equal(t, c.want, string(appendFloat(nil, x)))
		again, ok := appendNumber(nil, c.want)
		require.True(t, ok)
		require.Equal(t, c.want, string(again), "the canonical form of a canonical number")
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := Encode(x)
		require.ErrorContains(t, err, "is no finite number")
	}
}

// slowFloat is ECMA-262 (15th edition, 2024), section 6.1.6.1.20, Number::toString
// with radix 10, line by line: s are the k shortest digits, and the value is
// s × 10^(n−k). The digits are those of strconv's shortest form.
func slowFloat(x float64) string {
	if x == 0 {
		return "0"
	}
	if x < 0 {
		return "-" + slowFloat(-x)
	}
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(x, 'e', -1, 64), "e")
	s := strings.Replace(mantissa, ".", "", 1)
	e, _ := strconv.Atoi(exponent)
	k, n := len(s), e+1
	switch {
	case k <= n && n <= 21:
		return s + strings.Repeat("0", n-k)
	case 0 < n && n <= 21:
		return s[:n] + "." + s[n:]
	case -6 < n && n <= 0:
		return "0." + strings.Repeat("0", -n) + s
	}
	sign := "+"
	if n < 1 {
		sign = "-"
	}
	power := strconv.Itoa(max(n-1, 1-n))
	if k == 1 {
		return s + "e" + sign + power
	}
	return s[:1] + "." + s[1:] + "e" + sign + power
}

func TestFloatsArePrintedAsECMAScriptDoes(t *testing.T) {
	finite := rapid.Uint64().Filter(func(bits uint64) bool {
		x := math.Float64frombits(bits)
		return !math.IsNaN(x) && !math.IsInf(x, 0)
	})
	rapid.Check(t, func(t *rapid.T) {
		x := math.Float64frombits(finite.Draw(t, "bits"))
		require.Equal(t, slowFloat(x), string(appendFloat(nil, x)))
	})
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e22, 1e22).Draw(t, "x")
		require.Equal(t, slowFloat(x), string(appendFloat(nil, x)))
	})
}

// A number that is already in its canonical form is not read as a float. Both ways have
// to agree.
func TestShortNumbersAreCanonical(t *testing.T) {
	digit := rapid.StringOfN(rapid.RuneFrom([]rune("0123456789")), 0, 16, -1)
	rapid.Check(t, func(t *rapid.T) {
		text := strings.TrimLeft(digit.Draw(t, "whole"), "0")
		if text == "" {
			text = "0"
		}
		if f := digit.Draw(t, "fraction"); f != "" {
			text += "." + f
		}
		if rapid.Bool().Draw(t, "negative") {
			text = "-" + text
		}
		if short(text) {
			x, ok := float(text)
			require.True(t, ok)
			require.Equal(t, slowFloat(x), text)
		}
	})
	require.True(t, short("292.1"))
	require.True(t, short("-999999999.999999"))
	for _, text := range []string{"-0", "1.0", "1e5", "0.0000001", "1234567890123456"} {
		require.False(t, short(text), text)
	}
}

func TestNumbersThatNoFloatKeepsAreRefused(t *testing.T) {
	for _, text := range []string{"12345678901234567890", "9007199254740993", "0.123456789012345678901", "1e-400", "4.9e-324"} {
		_, err := Canonical([]byte(text))
		require.ErrorContains(t, err, "a number that a 64-bit float keeps", text)
	}
	for text, want := range map[string]string{
		"12345678901234567000": "12345678901234567000",
		"0.10000000000000001":  "0.1",
		"1E2":                  "100",
		"-0.0":                 "0",
		"1.50e-7":              "1.5e-7",
	} {
		got, err := Canonical([]byte(text))
		require.NoError(t, err)
		require.Equal(t, want, string(got))
	}
}
