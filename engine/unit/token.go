package unit

import (
	"strings"
	"unicode"
)

// A token is the smallest piece of a typed figure.
type token struct {
	kind tokenKind
	text string // as it was typed
	at   int    // position of its first character, from 1
	gap  bool   // space before it
	unit mark   // of a unit
	n, d int64  // of a fraction in one character
}

type tokenKind uint8

const (
	tokenEnd    tokenKind = iota
	tokenNumber           // digits with points and commas among them
	tokenVulgar           // ½ and its like
	tokenPlus
	tokenHyphen // a minus, or the hyphen of 7'-3" and 3-1/2
	tokenSlash
	tokenUnit
)

// A mark is a unit as it can be typed; none is a bare number.
type mark uint8

const (
	none mark = iota
	millimetres
	centimetres
	metres
	inchesMark
	feetMark
	degrees
)

// unitWord returns the unit that a word in lower case stands for.
func unitWord(word string) mark {
	switch word {
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return millimetres
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return centimetres
	case "m", "metre", "metres", "meter", "meters":
		return metres
	case "in", "inch", "inches":
		return inchesMark
	case "ft", "foot", "feet":
		return feetMark
	case "deg", "degree", "degrees":
		return degrees
	}
	return none
}

// vulgar returns the fraction that r is, if Unicode has it as one character (The
// Unicode Standard, code charts Latin-1 Supplement and Number Forms).
func vulgar(r rune) (n, d int64) {
	const all = "½1/2 ¼1/4 ¾3/4 ⅛1/8 ⅜3/8 ⅝5/8 ⅞7/8 ⅓1/3 ⅔2/3 ⅕1/5 ⅖2/5 ⅗3/5 ⅘4/5 ⅙1/6 ⅚5/6 ⅐1/7 ⅑1/9"
	i := strings.IndexRune(all, r)
	if i < 0 || r < 0x80 {
		return 0, 0
	}
	rest := all[i+len(string(r)):]
	return int64(rest[0] - '0'), int64(rest[2] - '0')
}

// A scanner cuts a typed figure into tokens.
type scanner struct {
	all  []rune
	at   int
	text string
}

// tokens cuts s into tokens, the last of which is tokenEnd.
func tokens(s string) ([]token, *ParseError) {
	sc := scanner{all: []rune(s), text: s}
	if len(sc.all) > longestFigure {
		return nil, &ParseError{Text: s, At: longestFigure + 1, Reason: TooLong, Why: "a figure has at most 100 characters"}
	}
	var out []token
	for {
		t, err := sc.next()
		if err != nil {
			return nil, err
		}
		out = append(out, t)
		if t.kind == tokenEnd {
			return out, nil
		}
	}
}

const longestFigure = 100

func (sc *scanner) next() (token, *ParseError) {
	start := sc.at
	for sc.at < len(sc.all) && unicode.IsSpace(sc.all[sc.at]) {
		sc.at++
	}
	t := token{at: sc.at + 1, gap: sc.at > start}
	if sc.at == len(sc.all) {
		return t, nil
	}
	r := sc.all[sc.at]
	switch {
	case isDigit(r) || isPoint(r):
		t.kind = tokenNumber
		t.text = sc.run(func(r rune) bool { return isDigit(r) || isPoint(r) })
	case unicode.IsLetter(r):
		return sc.word(t)
	default:
		return sc.sign(t)
	}
	return t, nil
}

// run takes the characters for which is holds.
func (sc *scanner) run(is func(rune) bool) string {
	start := sc.at
	for sc.at < len(sc.all) && is(sc.all[sc.at]) {
		sc.at++
	}
	return string(sc.all[start:sc.at])
}

// word takes a unit that is a word, and the full stop of "in." and "ft.".
func (sc *scanner) word(t token) (token, *ParseError) {
	t.kind, t.text = tokenUnit, sc.run(unicode.IsLetter)
	t.unit = unitWord(strings.ToLower(t.text))
	if t.unit == none {
		return t, &ParseError{
			Text: sc.text, At: t.at, Read: t.text, Reason: UnknownUnit,
			Why: "is no unit; units are mm, cm, m, in (or \") and ft (or ')",
		}
	}
	if (t.unit == inchesMark || t.unit == feetMark) && len(t.text) == 2 && sc.at < len(sc.all) && sc.all[sc.at] == '.' {
		sc.at++
	}
	return t, nil
}

// sign takes one character that is neither a digit nor a letter; two feet marks are
// one inch mark.
func (sc *scanner) sign(t token) (token, *ParseError) {
	r := sc.all[sc.at]
	sc.at++
	t.text = string(r)
	t.n, t.d = vulgar(r)
	switch {
	case t.d > 0:
		t.kind = tokenVulgar
	case r == '+':
		t.kind = tokenPlus
	case strings.ContainsRune("-\u2010\u2011\u2012\u2013\u2212", r):
		t.kind = tokenHyphen
	case strings.ContainsRune("/\u2044\u2215", r):
		t.kind = tokenSlash
	case isPrime(r):
		t.kind, t.unit = tokenUnit, feetMark
		if sc.at < len(sc.all) && isPrime(sc.all[sc.at]) {
			sc.at++
			t.text, t.unit = t.text+t.text, inchesMark
		}
	case strings.ContainsRune("\"\u2033\u201c\u201d\u02ba", r):
		t.kind, t.unit = tokenUnit, inchesMark
	case r == '°' || r == 'º':
		t.kind, t.unit = tokenUnit, degrees
	default:
		return t, &ParseError{
			Text: sc.text, At: t.at, Read: t.text, Reason: UnknownCharacter,
			Why: "cannot stand in a figure",
		}
	}
	return t, nil
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }
func isPoint(r rune) bool { return r == '.' || r == ',' }
func isPrime(r rune) bool { return strings.ContainsRune("'\u2032\u2018\u2019\u02b9", r) }
