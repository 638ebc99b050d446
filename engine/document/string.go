package document

import (
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// string reads a string, from quotation mark to quotation mark. One without escapes is
// a piece of the text itself.
func (p *parser) string() (string, error) {
	open := p.at
	p.at++
	start, runes := p.at, 0
	var made strings.Builder
	for {
		switch c := p.next(); {
		case c == '"':
			p.at++
			if made.Len() == 0 {
				return p.text[start : p.at-1], nil
			}
			made.WriteString(p.text[start : p.at-1])
			return made.String(), nil
		case c == '\\':
			made.WriteString(p.text[start:p.at])
			r, err := p.escape()
			if err != nil {
				return "", err
			}
			made.WriteRune(r)
			start = p.at
		default:
			if err := p.plain(); err != nil {
				return "", err
			}
		}
		if runes++; runes > p.limits.Runes {
			p.at = open
			return "", p.wrong("string-too-long", "a text of more than "+strconv.Itoa(p.limits.Runes)+" characters", "at most that many")
		}
	}
}

// plain passes one character of a string that is not escaped.
func (p *parser) plain() error {
	if p.at >= len(p.text) {
		return p.wrong("syntax", p.here(), "a quotation mark at the end of a text")
	}
	if p.text[p.at] < ' ' {
		return p.wrong("syntax", "a control character inside a text", `an escape such as \n`)
	}
	r, size := utf8.DecodeRuneInString(p.text[p.at:])
	if r == utf8.RuneError && size <= 1 {
		return p.wrong("utf-8", p.here(), "text in UTF-8")
	}
	if nonCharacter(r) {
		return p.notACharacter(r)
	}
	p.at += size
	return nil
}

// nonCharacter reports whether r is set aside by Unicode for no character; I-JSON does
// not let it into a text (RFC 7493, section 2.1).
func nonCharacter(r rune) bool { return r&0xFFFE == 0xFFFE || 0xFDD0 <= r && r <= 0xFDEF }

func (p *parser) notACharacter(r rune) *Error {
	return p.wrong("no-character", "U+"+strings.ToUpper(strconv.FormatInt(int64(r), 16)), "what Unicode has made a character")
}

// escape reads one escape, or two of them that are the halves of one character.
func (p *parser) escape() (rune, error) {
	const short = `""\\//b` + "\b" + `f` + "\f" + `n` + "\n" + `r` + "\r" + `t` + "\t"
	start := p.at
	p.at++
	c := p.next()
	for i := 0; i < len(short); i += 2 {
		if c == short[i] {
			p.at++
			return rune(short[i+1]), nil
		}
	}
	if c != 'u' {
		return 0, p.wrong("syntax", p.here()+` after \`, `one of " \ / b f n r t u`)
	}
	r, err := p.hex()
	if err != nil {
		return 0, err
	}
	if utf16.IsSurrogate(r) {
		if r, err = p.secondHalf(r); err != nil {
			return 0, err
		}
	}
	if nonCharacter(r) {
		p.at = start
		return 0, p.notACharacter(r)
	}
	return r, nil
}

// hex reads the four digits of an escape, from its u.
func (p *parser) hex() (rune, error) {
	p.at++
	digits := p.text[p.at:min(p.at+4, len(p.text))]
	n, err := strconv.ParseUint(digits, 16, 16)
	if err != nil || len(digits) < 4 {
		return 0, p.wrong("syntax", quote(digits), `four hexadecimal digits after \u`)
	}
	p.at += 4
	return rune(n), nil
}

// secondHalf reads the escape that completes the surrogate first to a character.
func (p *parser) secondHalf(first rune) (rune, error) {
	start := p.at
	if strings.HasPrefix(p.text[p.at:], `\u`) {
		p.at++
		second, err := p.hex()
		if err != nil {
			return 0, err
		}
		if r := utf16.DecodeRune(first, second); r != utf8.RuneError {
			return r, nil
		}
	}
	p.at = start - len(`\ud800`)
	return 0, p.wrong("surrogate", "half of a surrogate pair", `both halves, such as \ud83d\ude00`)
}

// appendString appends s as RFC 8785, section 3.2.2.2 writes it: escapes only where
// JSON asks for them, the short ones where there is one.
func appendString(dst []byte, s string) []byte {
	dst = append(dst, '"')
	start := 0
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c >= ' ' && c != '"' && c != '\\' {
			continue
		}
		dst = append(dst, s[start:i]...)
		dst = appendEscape(dst, c)
		start = i + 1
	}
	return append(append(dst, s[start:]...), '"')
}

func appendEscape(dst []byte, c byte) []byte {
	switch c {
	case '"', '\\':
		return append(dst, '\\', c)
	case '\b':
		return append(dst, `\b`...)
	case '\f':
		return append(dst, `\f`...)
	case '\n':
		return append(dst, `\n`...)
	case '\r':
		return append(dst, `\r`...)
	case '\t':
		return append(dst, `\t`...)
	}
	const digits = "0123456789abcdef"
	return append(dst, '\\', 'u', '0', '0', digits[c>>4], digits[c&15])
}
