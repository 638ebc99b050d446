package unit

import (
	"math"
	"strconv"
)

// A Style is the way in which one plan, tape or sheet prints its figures: a system
// and the smallest step that is printed.
//
// Metric figures are decimal millimetres. Inch figures are whole inches and a
// reduced fraction, never finer than 1/64 in. A missing system is [Metric]. A
// missing step is 1 mm or 1/16 in, what a tape on a wall is read to; an inch step
// that is no multiple of 1/64 in counts as 1/64 in.
type Style struct {
	System System
	Step   Length
}

const sixtyFourth = Inch / 64

// step returns the step in use, never zero.
func (s Style) step() Length {
	switch {
	case s.Step <= 0 && s.System == Inches:
		return Inch / 16
	case s.Step <= 0:
		return Millimetre
	case s.System == Inches && s.Step%sixtyFourth != 0:
		return sixtyFourth
	}
	return s.Step
}

// Rounded returns l rounded to the step, halves away from zero, and the rounding
// that was applied: rounded − l.
func (s Style) Rounded(l Length) (rounded, applied Length) {
	rounded = roundTo(l, s.step())
	return rounded, rounded - l
}

// roundTo returns the multiple of step nearest to l, halves away from zero.
func roundTo(l, step Length) Length {
	rest := l % step
	switch {
	case rest >= step-rest && rest > 0:
		return l - rest + step
	case -rest >= step+rest && rest < 0:
		return l - rest - step
	}
	return l - rest
}

// Length returns l rounded to the step, without its unit: "816", "816.5" or
// "20 1/2". [ParseLength] reads it back as the rounded length.
func (s Style) Length(l Length) string {
	l, _ = s.Rounded(l)
	if s.System == Inches {
		return sign(l) + inches(l.Abs())
	}
	return l.Decimal()
}

// WithUnit is Length followed by the unit: "816 mm" or "20 1/2 in".
func (s Style) WithUnit(l Length) string {
	if s.System == Inches {
		return s.Length(l) + " in"
	}
	return s.Length(l) + " mm"
}

// Fine returns l with its unit as it is measured with a feeler gauge or a dial, whatever the
// step: hundredths of a millimetre, "0.24 mm", or thousandths of an inch, "0.009 in".
func (s Style) Fine(l Length) string {
	if s.System == Inches {
		return fixed(l.MM()/Inch.MM(), 3) + " in"
	}
	return fixed(l.MM(), 2) + " mm"
}

// Site returns l as it is read on a building site: in feet and inches, such as
// 4'-3 1/2", 7'-0" or 3 1/2"; in millimetres without a unit in a metric style.
func (s Style) Site(l Length) string {
	if s.System != Inches {
		return s.Length(l)
	}
	l, _ = s.Rounded(l)
	size := l.Abs()
	if size < Foot {
		return sign(l) + inches(size) + `"`
	}
	rest := inches(size % Foot)
	if size%Foot < Inch && size%Foot > 0 {
		rest = "0 " + rest // 7'-0 1/2" and not 7'-1/2"
	}
	return sign(l) + strconv.FormatInt(int64(size/Foot), 10) + "'-" + rest + `"`
}

// Angle returns a in degrees, rounded to a hundredth: "22.5°".
func (s Style) Angle(a Angle) string {
	return Length(roundTo(Length(a), 10_000)).Decimal() + "°"
}

// Pounds in a kilogram: the international pound is exactly 0.45359237 kg (NIST
// Special Publication 811, 2008 edition, appendix B.8).
const kilogramsPerPound = 0.45359237

// Mass returns m with one decimal and its unit: "12.3 kg" or "27.1 lb".
func (s Style) Mass(m Mass) string {
	if s.System == Inches {
		return fixed(float64(m)/kilogramsPerPound, 1) + " lb"
	}
	return fixed(float64(m), 1) + " kg"
}

// Area returns a with its unit: "0.35 m²" or "543 sq in".
func (s Style) Area(a Area) string {
	if s.System == Inches {
		return fixed(float64(a)/(0.0254*0.0254), 0) + " sq in"
	}
	return fixed(float64(a), 2) + " m²"
}

// inches returns l, a multiple of 1/64 in that is not negative, as whole inches and
// a reduced fraction.
func inches(l Length) string {
	whole, rest := int64(l/Inch), int64(l%Inch/sixtyFourth)
	if rest == 0 {
		return strconv.FormatInt(whole, 10)
	}
	den := int64(64)
	for rest%2 == 0 {
		rest, den = rest/2, den/2
	}
	fraction := strconv.FormatInt(rest, 10) + "/" + strconv.FormatInt(den, 10)
	if whole == 0 {
		return fraction
	}
	return strconv.FormatInt(whole, 10) + " " + fraction
}

func sign(l Length) string {
	if l < 0 {
		return "-"
	}
	return ""
}

// fixed returns x with n decimals, and "0" without a sign for what rounds to zero.
// What is not a finite number prints as "?".
func fixed(x float64, n int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "?"
	}
	s := strconv.FormatFloat(x, 'f', n, 64)
	if z := strconv.FormatFloat(0, 'f', n, 64); s == "-"+z {
		return z
	}
	return s
}
