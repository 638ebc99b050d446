// Package unit holds the quantities of the trade as types.
//
// What is cut, counted or compared is a whole number: a [Length] counts
// nanometres, an [Angle] counts micro-degrees, [Money] counts minor units of its
// currency. What is measured or estimated is a named float64 in SI base units.
//
// Going from a Length to a float64 of millimetres is exact up to 9 007 km. Coming
// back is [Nearest], and nothing else.
package unit

import "math"

// A Length is a distance in whole nanometres. An inch is exactly 25 400 000 nm,
// so millimetres, inches and sixty-fourths of an inch are all exact; 1/128 in is
// not. The range is about ±9.2 million km.
type Length int64

// Lengths of one.
const (
	Nanometre  Length = 1
	Micrometre        = 1_000 * Nanometre
	Millimetre        = 1_000_000 * Nanometre
	Metre             = 1_000 * Millimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
)

// Touch is the distance under which two places that come out of trigonometry
// count as one.
const Touch = Micrometre

// MM returns l in millimetres, exactly for every |l| below 9 007 km.
func (l Length) MM() float64 { return float64(l) / 1e6 }

// Abs returns |l|.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Nearest returns the Length nearest to mm millimetres, halves away from zero. It
// is the only way back from a float. mm must be finite and below 9·10⁹ in size.
func Nearest(mm float64) Length { return Length(math.Round(mm * 1e6)) }

// MulDiv returns l·num/den rounded to the nearest nanometre, halves away from
// zero. The product must fit an int64; den must not be zero.
func (l Length) MulDiv(num, den int64) Length {
	n := int64(l) * num
	if (n < 0) != (den < 0) {
		return Length((n - den/2) / den)
	}
	return Length((n + den/2) / den)
}

// An Angle counts micro-degrees, so that 22.5° and 1/3 of a tenth of a degree's
// usual fractions stay exact. Counter-clockwise is positive.
type Angle int64

// Angles of one.
const (
	MicroDegree Angle = 1
	Degree            = 1_000_000 * MicroDegree
	QuarterTurn       = 90 * Degree
	HalfTurn          = 180 * Degree
	FullTurn          = 360 * Degree
)

// Degrees returns a in degrees.
func (a Angle) Degrees() float64 { return float64(a) / 1e6 }

// NearestAngle returns the Angle nearest to deg degrees, halves away from zero.
func NearestAngle(deg float64) Angle { return Angle(math.Round(deg * 1e6)) }

// Abs returns |a|.
func (a Angle) Abs() Angle {
	if a < 0 {
		return -a
	}
	return a
}

// Turn returns a brought into [0°, 360°).
func (a Angle) Turn() Angle {
	a %= FullTurn
	if a < 0 {
		a += FullTurn
	}
	return a
}

// Sin returns the sine of a, as [Angle.SinCos] does.
func (a Angle) Sin() float64 { s, _ := a.SinCos(); return s }

// Cos returns the cosine of a, as [Angle.SinCos] does.
func (a Angle) Cos() float64 { _, c := a.SinCos(); return c }

// SinCos returns the sine and cosine of a. Angles that mirror or quarter turns take
// into each other have the same digits, so a mirrored chain of boards has the mirrored
// places to the bit. Whole quarter turns are exact; the halves of 30° and 60° too.
func (a Angle) SinCos() (sin, cos float64) {
	a = a.Turn()
	s, c := (a % QuarterTurn).firstQuarter()
	switch a / QuarterTurn {
	case 0:
		return s, c
	case 1:
		return c, 0 - s // and not −s, which would be −0 for 0
	case 2:
		return 0 - s, 0 - c
	}
	return 0 - c, s
}

// firstQuarter returns the sine and cosine of 0 ≤ a < 90°.
func (a Angle) firstQuarter() (sin, cos float64) {
	switch {
	case a == 30*Degree:
		return 0.5, math.Sqrt(3) / 2
	case a == 45*Degree:
		return math.Sqrt2 / 2, math.Sqrt2 / 2
	case a > 45*Degree:
		c, s := (QuarterTurn - a).firstQuarter()
		return s, c
	}
	return math.Sincos(float64(a) * (math.Pi / 180e6))
}

// Rotate turns the vector (x, y) by a about the origin. Whole quarter turns are
// exact; every other turn is rounded once, to the nanometre.
func Rotate(x, y Length, a Angle) (Length, Length) {
	switch a.Turn() {
	case 0:
		return x, y
	case QuarterTurn:
		return -y, x
	case HalfTurn:
		return -x, -y
	case HalfTurn + QuarterTurn:
		return y, -x
	}
	s, c := a.SinCos()
	fx, fy := x.MM(), y.MM()
	return Nearest(float64(fx*c) - float64(fy*s)), Nearest(float64(fx*s) + float64(fy*c))
}

// Quantities that are measured or estimated, in SI base units.
type (
	Area     float64 // m²
	Volume   float64 // m³
	Mass     float64 // kg
	Density  float64 // kg/m³
	Force    float64 // N
	Moment   float64 // N·m
	Pressure float64 // Pa
	Power    float64 // W
)

// Rectangle returns the area a × b. Length times Length does not fit an int64
// above 9.2 m², so this is the one place where an Area is formed.
func Rectangle(a, b Length) Area { return Area(a.MM() * b.MM() * 1e-6) }

// Prism returns the volume of area a over the length l.
func Prism(a Area, l Length) Volume { return Volume(float64(a) * l.MM() * 1e-3) }

// Money is an amount in whole minor units (cents, pence) of an ISO 4217 currency.
type Money struct {
	Minor    int64  `json:"minor"`
	Currency string `json:"currency"`
}

// A System is the system of units in which a plan is typed and printed.
type System string

// The two systems.
const (
	Metric System = "mm"
	Inches System = "in"
)
