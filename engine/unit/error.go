package unit

import (
	"strconv"
	"strings"
)

// A ParseError says why a typed figure could not be read, where, and what to type
// instead.
type ParseError struct {
	Text   string   // all that was typed
	At     int      // where it went wrong, in characters from 1
	Read   string   // what stands there; empty at the end
	Reason Reason   // the rule, as a key
	Why    string   // the rest of a sentence that begins with Read
	Try    []string // what to type instead, if that can be said
}

// A Reason is a key that says why a figure was refused.
type Reason string

// The reasons.
const (
	TooLong          Reason = "too-long"
	Unexpected       Reason = "unexpected" // a sign, unit or end where a number must stand, or the reverse
	UnknownCharacter Reason = "unknown-character"
	UnknownUnit      Reason = "unknown-unit"
	Grouping         Reason = "grouping" // a comma or point that could group digits
	NoDigits         Reason = "no-digits"
	TwoNumbers       Reason = "two-numbers"
	WrongFraction    Reason = "wrong-fraction"
	FeetAndInches    Reason = "feet-and-inches"
	TwoReadings      Reason = "two-readings"
	WhichUnit        Reason = "which-unit"
	TooFineFigure    Reason = "too-fine"
	TooLargeFigure   Reason = "too-large"
)

// Error returns one sentence: what was read, where, why not, and what to type instead.
func (e *ParseError) Error() string {
	var b strings.Builder
	if e.Read != "" {
		b.WriteString(e.Read + " ")
	}
	b.WriteString(e.Why)
	if e.At > 1 {
		b.WriteString(" (at character " + strconv.Itoa(e.At) + ")")
	}
	if len(e.Try) > 0 {
		b.WriteString("; type " + strings.Join(e.Try, " or "))
	}
	return b.String()
}

// typed returns the tokens from start up to end as they were typed.
func (p *parser) typed(start, end int) string {
	var b strings.Builder
	for i := start; i < min(end, len(p.tokens)); i++ {
		if i > start && p.tokens[i].gap {
			b.WriteByte(' ')
		}
		b.WriteString(p.tokens[i].text)
	}
	return strings.TrimSpace(b.String())
}

// wrong returns an error about the tokens from start up to end.
func (p *parser) wrong(start, end int, reason Reason, why string) *ParseError {
	return &ParseError{Text: p.text, At: p.tokens[start].at, Read: p.typed(start, end), Reason: reason, Why: why}
}

// unexpected returns the error that the next token cannot stand where it stands.
func (p *parser) unexpected() *ParseError {
	t := p.peek(0)
	e := &ParseError{Text: p.text, At: t.at, Read: t.text, Reason: Unexpected, Why: "cannot stand here"}
	switch {
	case t.kind != tokenEnd:
	case p.at == 0:
		e.Why = "there is no figure"
	default:
		e.Why = "a number is missing at the end"
	}
	return e
}
