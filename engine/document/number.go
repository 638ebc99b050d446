package document

import (
	"math"
	"strconv"
	"strings"
)

// appendFloat appends x as ECMAScript prints a number (ECMA-262, Number::toString with
// radix 10): the shortest digits that read back as x, as a plain decimal for
// 10⁻⁶ ≤ |x| < 10²¹ and with an exponent otherwise. x must be finite.
func appendFloat(dst []byte, x float64) []byte {
	size := math.Abs(x)
	switch {
	case x == 0:
		return append(dst, '0') // and not -0
	case 1e-6 <= size && size < 1e21:
		return strconv.AppendFloat(dst, x, 'f', -1, 64)
	}
	dst = strconv.AppendFloat(dst, x, 'e', -1, 64)
	// strconv writes an exponent of at least two digits, ECMAScript of at least one.
	if n := len(dst); dst[n-2] == '0' && (dst[n-3] == '-' || dst[n-3] == '+') {
		dst[n-2] = dst[n-1]
		dst = dst[:n-1]
	}
	return dst
}

// float reads a number of JSON as a finite float.
func float(text string) (float64, bool) {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
		return 0, false
	}
	return x + 0, true // −0 + 0 is 0
}

// appendNumber appends a number of JSON as ECMAScript prints it, and reports whether
// that says the same number. A number with more digits than a float keeps would come
// out as another one.
func appendNumber(dst []byte, text string) ([]byte, bool) {
	if short(text) {
		return append(dst, text...), true
	}
	x, ok := float(text)
	if !ok {
		return dst, false
	}
	start := len(dst)
	dst = appendFloat(dst, x)
	was, now := digitsOf(text), digitsOf(string(dst[start:]))
	// 16 or 17 digits of a fraction are how many programs write a float in full; they
	// name the same float, and no whole number is lost.
	full := len(was) <= 17 && x != math.Trunc(x) && math.Abs(x) > 1e-300
	return dst, was == now || full
}

// short reports whether text already is what ECMAScript prints: a plain decimal of at
// most 15 digits, none of them superfluous, and at most 6 of them decimals. Every
// length in range is, so no length passes through a float.
func short(text string) bool {
	whole, fraction, point := strings.Cut(strings.TrimPrefix(text, "-"), ".")
	switch {
	case text == "-0" || len(whole)+len(fraction) > 15 || len(fraction) > 6 || strings.ContainsAny(text, "eE"):
		return false
	case point:
		return fraction[len(fraction)-1] != '0'
	}
	return true
}

// digitsOf returns the significant digits of a number, without zeros at either end.
func digitsOf(text string) string {
	if i := strings.IndexAny(text, "eE"); i >= 0 {
		text = text[:i]
	}
	text = strings.TrimPrefix(text, "-")
	whole, fraction, _ := strings.Cut(text, ".")
	return strings.Trim(whole+fraction, "0")
}
