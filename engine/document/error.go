package document

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// An Error says where a text could not be read, what was found there, and what is
// allowed.
type Error struct {
	Line    int    // from 1
	Column  int    // from 1, in characters
	Path    string // into the document: "modules[2].boards[0].thickness"; empty at the top
	Reason  string // the rule, as a key: "missing", "unknown-member", "length", …
	Found   string // what stands there, quoted if it is text of the document
	Allowed string // what may stand there

	at     int  // offset in the text
	placed bool // at is known
}

// Error returns all of it as one sentence.
func (e *Error) Error() string {
	var b strings.Builder
	if e.Line > 0 {
		b.WriteString("line " + strconv.Itoa(e.Line) + ", column " + strconv.Itoa(e.Column))
	}
	if e.Path != "" {
		if b.Len() > 0 {
			b.WriteString(", ")
		}
		b.WriteString("at " + e.Path)
	}
	if b.Len() > 0 {
		b.WriteString(": ")
	}
	b.WriteString("found " + e.Found + "; allowed is " + e.Allowed)
	return b.String()
}

// under puts a step in front of the path of err, if it is an Error.
func under(err error, step string) error {
	e, ok := err.(*Error)
	if !ok {
		return err
	}
	if e.Path != "" && e.Path[0] != '[' {
		step += "."
	}
	e.Path = step + e.Path
	return e
}

// item is the step of a path into an array.
func item(i int) string { return "[" + strconv.Itoa(i) + "]" }

// member is the step of a path into an object. A name that is not plain is quoted.
func member(name string) string {
	plain := name != ""
	for _, r := range name {
		letter := 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' || r == '-' || r == '_'
		plain = plain && letter
	}
	if plain {
		return name
	}
	return "[" + quote(name) + "]"
}

// quote returns s in quotation marks, shortened to what a message can carry.
func quote(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) > most {
		n := 0
		for i := range s {
			if n == most {
				s = s[:i] + "…"
				break
			}
			n++
		}
	}
	return strconv.Quote(s)
}

// locate fills in line and column from the offset. Lines end as JSON text may end
// them: "\n", "\r" or both together.
func locate(err error, text []byte) error {
	e, ok := err.(*Error)
	if !ok || !e.placed || e.Line > 0 {
		return err
	}
	start := 0
	e.Line = 1
	for i := 0; i < e.at && i < len(text); i++ {
		if text[i] == '\n' || text[i] == '\r' && !(i+1 < len(text) && text[i+1] == '\n') {
			e.Line, start = e.Line+1, i+1
		}
	}
	e.Column = 1 + utf8.RuneCount(text[start:min(e.at, len(text))])
	return e
}
