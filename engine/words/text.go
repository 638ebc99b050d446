package words

import (
	"math"
	"strconv"
	"strings"

	"ledgewright/engine/unit"
)

// deepest bounds words that name other words, so that a ring of them ends.
const deepest = 4

// Text returns the words under key with args filled in, in the given style. An
// unknown key gives "[key?]" and an argument that is missing or of no type gives
// "[key: name?]", so that a mistake is seen and found by a test, never hidden.
func Text(key string, args []Arg, style unit.Style) string {
	return fill(key, args, style, 0)
}

// fill is Text at some depth of words within words.
func fill(key string, args []Arg, style unit.Style, depth int) string {
	text, ok := find(key)
	if !ok || depth > deepest {
		return "[" + key + "?]"
	}
	var b strings.Builder
	for _, p := range split(text) {
		if p.name == "" {
			b.WriteString(p.text)
			continue
		}
		s, ok := p.fill(args, style, depth)
		if !ok {
			s = "[" + key + ": " + p.name + "?]"
		}
		b.WriteString(s)
	}
	return b.String()
}

// fill returns what stands in a place.
func (p piece) fill(args []Arg, style unit.Style, depth int) (string, bool) {
	v, ok := argument(args, p.name)
	if !ok {
		return "", false
	}
	if !p.plural {
		return v.print(args, style, depth)
	}
	if v.Is != IsCount {
		return "", false
	}
	if v.Number == 1 {
		return p.one, true
	}
	return p.many, true
}

func argument(args []Arg, name string) (Value, bool) {
	for _, a := range args {
		if a.Name == name {
			return a.Value, true
		}
	}
	return Value{}, false
}

// Print returns v alone, in the given style, and whether v says anything.
func (v Value) Print(style unit.Style) (string, bool) { return v.print(nil, style, 0) }

// print returns v; a word within words is filled from the same arguments.
func (v Value) print(args []Arg, style unit.Style, depth int) (string, bool) {
	switch v.Is {
	case IsLength:
		return style.WithUnit(v.Length), true
	case IsFine:
		return style.Fine(v.Length), true
	case IsAngle:
		return style.Angle(v.Angle), true
	case IsMass:
		return style.Mass(unit.Mass(v.Number)), true
	case IsArea:
		return style.Area(unit.Area(v.Number)), true
	case IsCount:
		return strconv.FormatFloat(v.Number, 'f', 0, 64), true
	case IsNumber:
		return number(v.Number), true
	case IsName:
		return v.Text, true
	case IsWord:
		return fill(v.Text, args, style, depth+1), true
	}
	return "", false
}

// number returns x with at most three decimals, and "?" for what is no number.
func number(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "?"
	}
	s := strconv.FormatFloat(x, 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
