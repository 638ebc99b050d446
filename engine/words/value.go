package words

import "ledgewright/engine/unit"

// A Value is one typed argument of a message. Exactly one field is in use, named
// by Is. The zero Value says nothing.
type Value struct {
	Is     Type
	Length unit.Length // of a length, fine or not
	Angle  unit.Angle
	Number float64 // Mass in kg, Force in N, Area in m², plain numbers
	Text   string  // a name given by the maker, or the key of another word
}

// A Type says which field of a Value is in use and how it is printed.
type Type uint8

// The types of Value.
const (
	None     Type = iota
	IsLength      // printed in the plan's unit and step
	IsAngle       // decimal degrees
	IsMass        // kg, or lb in an inch plan
	IsArea        // m², or sq in
	IsCount       // a whole number
	IsNumber      // a plain decimal
	IsName        // a name typed by the maker or an id: printed as it is
	IsWord        // a key of the catalogue: printed as its words
	IsFine        // a length too small for the plan's step: hundredths of a mm, or thousandths of an inch
)

// An Arg is a named Value.
type Arg struct {
	Name  string
	Value Value
}

// Length returns an Arg that prints as a length.
func Length(name string, l unit.Length) Arg { return Arg{name, LengthOf(l)} }

// Angle returns an Arg that prints as an angle.
func Angle(name string, a unit.Angle) Arg { return Arg{name, AngleOf(a)} }

// Mass returns an Arg that prints as a mass.
func Mass(name string, m unit.Mass) Arg { return Arg{name, Value{Is: IsMass, Number: float64(m)}} }

// Count returns an Arg that prints as a whole number.
func Count(name string, n int) Arg { return Arg{name, CountOf(n)} }

// Number returns an Arg that prints as a plain decimal.
func Number(name string, x float64) Arg { return Arg{name, Value{Is: IsNumber, Number: x}} }

// Name returns an Arg that prints s as it is.
func Name(name, s string) Arg { return Arg{name, Value{Is: IsName, Text: s}} }

// Word returns an Arg that prints the words of the catalogue under key.
func Word(name, key string) Arg { return Arg{name, Value{Is: IsWord, Text: key}} }

// Fine returns an Arg that prints as a small length.
func Fine(name string, l unit.Length) Arg { return Arg{name, FineOf(l)} }

// LengthOf returns a Value that prints as a length.
func LengthOf(l unit.Length) Value { return Value{Is: IsLength, Length: l} }

// FineOf returns a Value that prints as a small length.
func FineOf(l unit.Length) Value { return Value{Is: IsFine, Length: l} }

// AngleOf returns a Value that prints as an angle.
func AngleOf(a unit.Angle) Value { return Value{Is: IsAngle, Angle: a} }

// CountOf returns a Value that prints as a whole number.
func CountOf(n int) Value { return Value{Is: IsCount, Number: float64(n)} }
