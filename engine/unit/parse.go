package unit

import (
	"math/bits"
	"strconv"
	"strings"
)

// ParseLength reads a length as a maker types it in a plan of the given system. It
// never guesses: what can be read in two ways is refused, and the error says both.
//
//   - A bare number is in the plan's unit, mm or in. A number with a unit is in its
//     own: 60 cm, 0.6 m, 23 5/8", 7'. Words and marks, straight or curly, are the same.
//   - A number is a decimal with a point or a comma (2,5), a whole number with a
//     fraction (23 5/8, 23½), or a fraction (5/8). A fraction whose upper number is
//     the larger is a division (1200/3), which must come out exactly. No digits are
//     grouped, so 1,200 may mean 1.2 or 1200 and is refused; a point is always decimal.
//   - Terms are added and subtracted: 1200 - 18 + 3.5. Once a term has another unit
//     than the plan's, every term needs its own: 60 cm - 18 is refused. Feet count as
//     the plan's own in an inch plan.
//
// The hyphen also joins, as it does on drawings, and the spaces round it tell the two
// apart. Without spaces it joins
//
//   - feet to inches under 12: 7'-3 1/2" in every plan; 7-3 1/2 in an inch plan, where
//     a hyphen between bare numbers has long meant feet and inches. 48-18 can only be
//     a subtraction, because inches end at 12; a millimetre plan has no feet, so there
//     1200-18 always subtracts;
//   - a whole number to its fraction: 3-1/2" in every plan, 3-1/2 in an inch plan. In a
//     millimetre plan the latter could as well subtract and is refused.
//
// With spaces on both sides it subtracts: 36 - 3 is 33 in. Only 7' - 3", in which
// the spaces are easily a habit, is refused.
//
// What does not come out in whole nanometres is an error, as is a size of [Limit] or
// more. The error is a [*ParseError].
func ParseLength(s string, sys System) (Length, error) {
	p := parser{text: s, inch: sys == Inches}
	var err *ParseError
	if p.tokens, err = tokens(s); err != nil {
		return 0, err
	}
	l, err := p.sum()
	if err != nil {
		return 0, err
	}
	return l, nil
}

// ParseAngle reads an angle in degrees: 45, 22.5°, 22,5 or 22 1/2 deg, with a sign if
// it is negative. Minutes and seconds are not read. The error is a [*ParseError].
func ParseAngle(s string) (Angle, error) {
	p := parser{text: s}
	var err *ParseError
	if p.tokens, err = tokens(s); err != nil {
		return 0, err
	}
	l, err := p.angle()
	if err != nil {
		return 0, err
	}
	return Angle(l), nil
}

// A parser reads the tokens of one figure.
type parser struct {
	text   string
	tokens []token
	at     int
	inch   bool // an inch plan
}

func (p *parser) peek(ahead int) token { return p.tokens[min(p.at+ahead, len(p.tokens)-1)] }

func (p *parser) take() token {
	t := p.peek(0)
	p.at = min(p.at+1, len(p.tokens)-1)
	return t
}

// joined reports whether the next token is a hyphen without a space on either side.
func (p *parser) joined() bool {
	return p.peek(0).kind == tokenHyphen && !p.peek(0).gap && !p.peek(1).gap
}

// A term is one summand.
type term struct {
	size  Length
	unit  mark
	start int // tokens that it is made of
	end   int
}

// sum reads all of it.
func (p *parser) sum() (Length, *ParseError) {
	var total Length
	var terms []term
	negative, tight := p.sign(), false
	for {
		t, err := p.term(tight)
		if err != nil {
			return 0, err
		}
		terms = append(terms, t)
		if negative {
			t.size = -t.size
		}
		if total += t.size; total.Abs() >= Limit {
			return 0, p.wrong(0, len(p.tokens), TooLargeFigure, "is too long; a length is below 1000 km")
		}
		switch p.peek(0).kind {
		case tokenEnd:
			return total, p.units(terms)
		case tokenPlus, tokenHyphen:
			tight = p.joined()
			negative = p.take().kind == tokenHyphen
		default:
			return 0, p.unexpected()
		}
	}
}

// sign takes the sign before the first term.
func (p *parser) sign() bool {
	switch p.peek(0).kind {
	case tokenPlus:
		p.take()
	case tokenHyphen:
		p.take()
		return true
	}
	return false
}

// units refuses bare terms beside such as have another unit than the plan's.
func (p *parser) units(terms []term) *ParseError {
	own := millimetres
	if p.inch {
		own = inchesMark
	}
	for _, other := range terms {
		if other.unit == none || other.unit == own || p.inch && other.unit == feetMark {
			continue
		}
		for _, bare := range terms {
			if bare.unit != none {
				continue
			}
			n := p.typed(bare.start, bare.end)
			e := p.wrong(bare.start, bare.end, WhichUnit, "has no unit, and "+p.typed(other.start, other.end)+" has one of its own")
			e.Try = []string{n + " " + own.name(), n + " " + other.unit.name()}
			return e
		}
	}
	return nil
}

// term reads one summand: a quantity, or feet and inches. A term that follows a hyphen
// without spaces is tight: it does not take another one as the joint of feet and inches.
func (p *parser) term(tight bool) (term, *ParseError) {
	start := p.at
	q, err := p.quantity()
	if err != nil {
		return term{}, err
	}
	switch {
	case q.unit == feetMark:
		return p.afterFeet(q, start)
	case p.inch && q.unit == none && q.whole && !tight && p.joined():
		return p.barePair(q, start)
	}
	return p.finish(q, start)
}

// finish makes a term of a quantity that stands alone.
func (p *parser) finish(q quantity, start int) (term, *ParseError) {
	if q.unit == degrees {
		return term{}, p.wrong(start, p.at, UnknownUnit, "is an angle")
	}
	size, err := p.length(q, q.unit.size(p.inch), start)
	return term{size, q.unit, start, p.at}, err
}

// afterFeet reads the inches after feet, if there are any.
func (p *parser) afterFeet(feet quantity, start int) (term, *ParseError) {
	back := p.at
	hyphen, tight := p.peek(0).kind == tokenHyphen, p.joined()
	if hyphen {
		p.take()
	} else if k := p.peek(0).kind; k != tokenNumber && k != tokenVulgar {
		return p.finish(feet, start)
	}
	in, err := p.quantity()
	under12 := err == nil && in.under(12)
	if hyphen && (err != nil || in.unit != none && in.unit != inchesMark || !tight && !under12) {
		p.at = back // a subtraction, or an error that will come up again
		return p.finish(feet, start)
	}
	if err != nil {
		return term{}, err
	}
	if !hyphen || tight {
		return p.pair(feet, in, start)
	}
	f, i := p.typed(start, back), strings.TrimSuffix(p.typed(back+1, p.at), `"`)
	e := p.wrong(start, p.at, TwoReadings, "could be feet and inches or a subtraction")
	e.Try = []string{f + "-" + i + `"`, f + ` 0" - ` + i + `"`}
	return term{}, e
}

// barePair reads 7-3 1/2 as feet and inches, or leaves the hyphen as a minus.
func (p *parser) barePair(feet quantity, start int) (term, *ParseError) {
	back := p.at
	p.take()
	in, err := p.quantity()
	pair := err == nil && in.under(12) && (in.unit == none || in.unit == inchesMark) && (in.den == 0 || in.mixed)
	if !pair {
		p.at = back
		return p.finish(feet, start)
	}
	if p.joined() {
		e := p.wrong(start, p.at+2, TwoReadings, "could be feet and inches or subtractions")
		e.Try = []string{p.typed(start, back) + "'-" + p.typed(back+1, p.at) + `"`, "spaces on both sides of each minus"}
		return term{}, e
	}
	return p.pair(feet, in, start)
}

// pair makes a term of feet and inches.
func (p *parser) pair(feet, in quantity, start int) (term, *ParseError) {
	switch {
	case !feet.whole:
		return term{}, p.wrong(start, p.at, FeetAndInches, "has inches after feet that are not whole")
	case in.unit != none && in.unit != inchesMark:
		return term{}, p.wrong(start, p.at, FeetAndInches, "has feet followed by what are no inches; put + or - between them")
	case !in.under(12):
		return term{}, p.wrong(start, p.at, FeetAndInches, "has 12 inches or more after feet; put + or - with spaces between them, or add to the feet")
	}
	f, err := p.length(feet, Foot, start)
	if err != nil {
		return term{}, err
	}
	i, err := p.length(in, Inch, start)
	return term{f + i, inchesMark, start, p.at}, err
}

// angle reads one number of degrees.
func (p *parser) angle() (Length, *ParseError) {
	negative := p.sign()
	start := p.at
	q, err := p.quantity()
	switch {
	case err != nil:
		return 0, err
	case p.peek(0).kind != tokenEnd:
		return 0, p.unexpected()
	case q.unit != none && q.unit != degrees:
		return 0, p.wrong(start, p.at, UnknownUnit, "is no angle; angles are decimal degrees")
	}
	l, err := p.length(q, Length(Degree), start)
	if negative {
		l = -l
	}
	return l, err
}

// size returns one unit of m; that of a bare number is the plan's.
func (m mark) size(inch bool) Length {
	switch m {
	case centimetres:
		return 10 * Millimetre
	case metres:
		return Metre
	case inchesMark:
		return Inch
	case feetMark:
		return Foot
	case none:
		if inch {
			return Inch
		}
	}
	return Millimetre
}

func (m mark) name() string {
	return [...]string{none: "", millimetres: "mm", centimetres: "cm", metres: "m", inchesMark: "in", feetMark: "ft", degrees: "°"}[m]
}

// length returns q in units of one, exactly.
func (p *parser) length(q quantity, one Length, start int) (Length, *ParseError) {
	whole, fine, ok := ratio(q.digits, int64(one), q.tens)
	part, rest := int64(0), int64(0)
	if q.den > 0 {
		part, rest = q.num*int64(one)/q.den, q.num*int64(one)%q.den
	}
	total := whole + part
	switch {
	case !ok || total >= int64(Limit):
		return 0, p.wrong(start, p.at, TooLargeFigure, "is out of range")
	case fine || rest != 0:
		e := p.wrong(start, p.at, TooFineFigure, "does not come out in whole nanometres")
		if near := strconv.FormatFloat(float64(total)/float64(one), 'f', 3, 64); near != "0.000" {
			e.Try = []string{near + q.suffix()}
		}
		return 0, e
	}
	return Length(total), nil
}

func (q quantity) suffix() string {
	if q.unit == none {
		return ""
	}
	return " " + q.unit.name()
}

// ratio returns digits × one / 10^tens, whether something was left over, and whether
// it fits. The product is formed in 128 bits.
func ratio(digits uint64, one int64, tens int) (n int64, rest, ok bool) {
	den := uint64(1)
	for range tens {
		den *= 10
	}
	hi, lo := bits.Mul64(digits, uint64(one))
	if hi >= den {
		return 0, false, false
	}
	quo, rem := bits.Div64(hi, lo, den)
	if quo >= 1<<62 {
		return 0, false, false
	}
	return int64(quo), rem != 0, true
}
