package unit

import (
	"strconv"
	"strings"
)

// A quantity is a number and its unit: digits / 10^tens + num / den, where den is 0
// if there is no fraction.
type quantity struct {
	digits   uint64
	tens     int
	num, den int64
	whole    bool // nothing but a whole number
	mixed    bool // a whole number with a fraction
	unit     mark
}

// under reports whether q is less than n of its unit.
func (q quantity) under(n uint64) bool {
	for range q.tens {
		n *= 10
	}
	return q.den == 0 && q.digits < n || q.den > 0 && q.num < q.den && q.digits < n
}

// quantity reads a number and the unit behind it.
func (p *parser) quantity() (quantity, *ParseError) {
	q, err := p.number()
	if err != nil {
		return q, err
	}
	if p.peek(0).kind == tokenUnit {
		q.unit = p.take().unit
	}
	return q, nil
}

// number reads a decimal, a fraction, or a whole number with a fraction.
func (p *parser) number() (quantity, *ParseError) {
	switch p.peek(0).kind {
	case tokenVulgar:
		return p.fraction()
	case tokenNumber:
	default:
		return quantity{}, p.unexpected()
	}
	if p.peek(1).kind == tokenSlash {
		return p.fraction()
	}
	start := p.at
	q, err := p.decimal()
	if err != nil {
		return q, err
	}
	switch {
	case p.fractionAt(0):
		return p.withFraction(q, start)
	case p.joined() && p.fractionAt(1) && !p.peek(1).gap && q.whole && p.proper(1):
		return p.hyphenated(q, start)
	case p.peek(0).kind == tokenNumber:
		e := p.wrong(start, p.at+1, TwoNumbers, "are two numbers with nothing between them")
		e.Try = []string{p.tokens[start].text + p.peek(0).text, p.tokens[start].text + " + " + p.peek(0).text}
		return q, e
	}
	return q, nil
}

// fractionAt reports whether a fraction starts so many tokens ahead.
func (p *parser) fractionAt(ahead int) bool {
	return p.peek(ahead).kind == tokenVulgar || p.peek(ahead).kind == tokenNumber && p.peek(ahead+1).kind == tokenSlash
}

// proper reports whether the fraction so many tokens ahead is less than one. Only such
// a one can be joined to a whole number.
func (p *parser) proper(ahead int) bool {
	look := *p
	look.at += ahead
	f, err := look.fraction()
	return err == nil && f.num < f.den
}

// withFraction reads the fraction behind a whole number.
func (p *parser) withFraction(q quantity, start int) (quantity, *ParseError) {
	f, err := p.fraction()
	switch {
	case err != nil:
		return q, err
	case !q.whole:
		return q, p.wrong(start, p.at, WrongFraction, "has a fraction after decimals")
	case f.num >= f.den:
		return q, p.wrong(start, p.at, WrongFraction, "has a fraction that is not less than one")
	}
	q.num, q.den, q.whole, q.mixed = f.num, f.den, false, true
	return q, nil
}

// hyphenated reads the fraction joined to a whole number by a hyphen: 3-1/2. In a
// millimetre plan it takes an inch or foot mark to tell that it is no subtraction.
func (p *parser) hyphenated(q quantity, start int) (quantity, *ParseError) {
	whole := p.typed(start, p.at)
	p.take()
	from := p.at
	q, err := p.withFraction(q, start)
	if err != nil {
		return q, err
	}
	if unit := p.peek(0).unit; !p.inch && unit != inchesMark && unit != feetMark {
		e := p.wrong(start, p.at, TwoReadings, "could be a whole number with a fraction or a subtraction")
		e.Try = []string{whole + " " + p.typed(from, p.at), whole + " - " + p.typed(from, p.at)}
		return q, e
	}
	return q, nil
}

// fraction reads 5/8 or ⅝.
func (p *parser) fraction() (quantity, *ParseError) {
	if t := p.peek(0); t.kind == tokenVulgar {
		p.take()
		return quantity{num: t.n, den: t.d}, nil
	}
	start := p.at
	n, first := part(p.take())
	p.take() // the slash
	if p.peek(0).kind != tokenNumber {
		return quantity{}, p.unexpected()
	}
	d, second := part(p.take())
	switch {
	case !first || !second:
		return quantity{}, p.wrong(start, p.at, WrongFraction, "is no fraction of whole numbers of at most 9 digits")
	case d == 0:
		return quantity{}, p.wrong(start, p.at, WrongFraction, "divides by zero")
	case p.peek(0).kind == tokenSlash:
		return quantity{}, p.wrong(start, p.at+2, WrongFraction, "has two slashes")
	}
	return quantity{num: n, den: d}, nil
}

// part reads the upper or lower number of a fraction.
func part(t token) (int64, bool) {
	n, err := strconv.ParseInt(t.text, 10, 64)
	return n, err == nil && len(t.text) <= 9
}

// ungrouped leaves points and commas out.
func ungrouped(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, ".", ""), ",", "")
}

// decimal reads a number without a fraction, with a point or a comma.
func (p *parser) decimal() (quantity, *ParseError) {
	start := p.at
	text := p.take().text
	points := strings.Count(text, ".") + strings.Count(text, ",")
	if points == 0 {
		return p.digits(text, "", start)
	}
	if points > 1 {
		e := p.wrong(start, p.at, Grouping, "has more than one point or comma; digits are not grouped")
		if i := strings.LastIndexAny(text, ".,"); strings.Count(text, text[i:i+1]) == 1 {
			e.Try = []string{ungrouped(text[:i]) + "." + text[i+1:]}
		} else {
			e.Try = []string{ungrouped(text)}
		}
		return quantity{}, e
	}
	i := strings.IndexAny(text, ".,")
	whole, fraction := text[:i], text[i+1:]
	switch {
	case fraction == "":
		return quantity{}, p.wrong(start, p.at, NoDigits, "has no digits after its point or comma")
	case text[i] == ',' && len(fraction) == 3 && 1 <= len(whole) && len(whole) <= 3 && whole[0] != '0':
		e := p.wrong(start, p.at, Grouping, "could be "+whole+"."+fraction+" or "+whole+fraction)
		e.Try = []string{whole + "." + fraction, whole + fraction}
		return quantity{}, e
	}
	return p.digits(whole, fraction, start)
}

// digits makes a quantity of the digits before and after the point.
func (p *parser) digits(whole, fraction string, start int) (quantity, *ParseError) {
	kept := strings.TrimRight(fraction, "0")
	all := strings.TrimLeft(whole+kept, "0")
	q := quantity{tens: len(kept), whole: fraction == ""}
	switch {
	case len(strings.TrimLeft(whole, "0")) > 15:
		return q, p.wrong(start, p.at, TooLargeFigure, "is out of range")
	case len(all) > 18 || len(kept) > 18:
		return q, p.wrong(start, p.at, TooFineFigure, "has more decimals than whole nanometres can hold")
	case all != "":
		q.digits, _ = strconv.ParseUint(all, 10, 64)
	}
	return q, nil
}
