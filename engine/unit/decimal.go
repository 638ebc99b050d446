package unit

import (
	"errors"
	"strconv"
	"strings"
)

// What can be wrong with a decimal number.
var (
	ErrNoNumber = errors.New("is not a decimal number")
	ErrTooFine  = errors.New("has more decimals than are kept")
	ErrTooLarge = errors.New("is out of range")
)

// Limit is the least length, either way, that no document and no typed figure may
// reach: 10⁹ mm. Below it a length in millimetres has at most 15 significant digits,
// so that it stands exactly in a file whose readers know only 64-bit floats.
const Limit Length = 1_000_000_000 * Millimetre

// ParseDecimal reads a decimal number of millimetres, such as a length in a document,
// exactly: "292.1" or "2.921e2". It accepts what JSON accepts as a number; it does
// not round.
func ParseDecimal(s string) (Length, error) {
	n, err := Scaled(s, 6, int64(Limit))
	return Length(n), err
}

// ParseDecimalAngle reads a decimal number of degrees as [ParseDecimal] does.
func ParseDecimalAngle(s string) (Angle, error) {
	n, err := Scaled(s, 6, int64(Limit))
	return Angle(n), err
}

// Scaled reads the decimal number s exactly as a whole number of 10^−places and never
// through a float. It is an error when s is no number in the sense of JSON, when it
// does not come out whole, and when its size is limit or more.
func Scaled(s string, places int, limit int64) (int64, error) {
	digits, exponent, negative, ok := significand(s)
	if !ok {
		return 0, ErrNoNumber
	}
	zeros := exponent + places
	switch {
	case digits == "":
		return 0, nil
	case len(digits)+zeros > 18:
		return 0, ErrTooLarge
	case zeros < 0:
		return 0, ErrTooFine
	}
	n, _ := strconv.ParseInt(digits+strings.Repeat("0", zeros), 10, 64)
	if n >= limit {
		return 0, ErrTooLarge
	}
	if negative {
		n = -n
	}
	return n, nil
}

// significand splits the number s into its digits, without zeros at either end, and
// the power of ten that they are multiplied by. Zero has no digits.
func significand(s string) (digits string, exponent int, negative, ok bool) {
	s, negative = strings.CutPrefix(s, "-")
	whole, s := leadingDigits(s)
	if whole == "" || len(whole) > 1 && whole[0] == '0' {
		return "", 0, false, false
	}
	fraction := ""
	if rest, dot := strings.CutPrefix(s, "."); dot {
		if fraction, s = leadingDigits(rest); fraction == "" {
			return "", 0, false, false
		}
	}
	if exponent, ok = tenth(s); !ok {
		return "", 0, false, false
	}
	all := strings.TrimLeft(whole+fraction, "0")
	digits = strings.TrimRight(all, "0")
	return digits, exponent - len(fraction) + len(all) - len(digits), negative, true
}

// tenth reads the exponent of a number, which may be missing. One that no number in
// range can have counts as ±1 000 000.
func tenth(s string) (int, bool) {
	if s == "" {
		return 0, true
	}
	if s[0] != 'e' && s[0] != 'E' {
		return 0, false
	}
	s = s[1:]
	negative := strings.HasPrefix(s, "-")
	if negative || strings.HasPrefix(s, "+") {
		s = s[1:]
	}
	digits, rest := leadingDigits(s)
	if digits == "" || rest != "" {
		return 0, false
	}
	n, err := strconv.Atoi(digits)
	if err != nil || n > 1_000_000 {
		n = 1_000_000
	}
	if negative {
		n = -n
	}
	return n, true
}

// leadingDigits cuts s behind its leading digits.
func leadingDigits(s string) (digits, rest string) {
	i := 0
	for i < len(s) && '0' <= s[i] && s[i] <= '9' {
		i++
	}
	return s[:i], s[i:]
}
