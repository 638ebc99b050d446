package drawing

import "strings"

// An Attr is one attribute of an element.
type Attr struct{ Name, Value string }

// A Sink takes the elements of a picture as they are written. Open and Close come in
// pairs; Text comes after Open and before its Close. key tells an element from its
// neighbours under the same parent, for a sink that makes a tree and compares it with
// the one before; it is empty where the place among the neighbours says enough. attrs
// is the writer's own storage and changes after the call.
type Sink interface {
	Open(tag, key string, attrs []Attr)
	Text(s string)
	Close()
}

// A Keeper is a sink that may have a group already. Before the items of a group are written
// it is asked with the group's key, the items, and which of them have grain; where it
// answers true it has put in what it had, and nothing is written. The items are the
// drawing's own.
type Keeper interface {
	Sink
	Keep(key string, items []Item, grain []bool) bool
}

// textSink writes elements as XML text.
type textSink struct {
	b     strings.Builder
	stack []string
	empty bool // the last element has no content yet
}

func (s *textSink) Open(tag, _ string, attrs []Attr) {
	s.finish()
	if len(s.stack) > 0 && tag != "tspan" {
		s.b.WriteByte('\n')
	}
	s.b.WriteByte('<')
	s.b.WriteString(tag)
	for _, a := range attrs {
		s.b.WriteByte(' ')
		s.b.WriteString(a.Name)
		s.b.WriteString(`="`)
		escape(&s.b, a.Value)
		s.b.WriteByte('"')
	}
	s.stack = append(s.stack, tag)
	s.empty = true
}

func (s *textSink) Text(text string) {
	if text == "" {
		return
	}
	s.finish()
	escape(&s.b, text)
}

func (s *textSink) Close() {
	tag := s.stack[len(s.stack)-1]
	s.stack = s.stack[:len(s.stack)-1]
	if s.empty {
		s.b.WriteString("/>")
		s.empty = false
	} else {
		if tag == "g" || tag == "svg" {
			s.b.WriteByte('\n')
		}
		s.b.WriteString("</")
		s.b.WriteString(tag)
		s.b.WriteByte('>')
	}
	if len(s.stack) == 0 {
		s.b.WriteByte('\n')
	}
}

// finish ends the start tag of an element that turns out to have content.
func (s *textSink) finish() {
	if s.empty {
		s.b.WriteByte('>')
		s.empty = false
	}
}

// escape writes s as character data. Characters that XML 1.0 does not allow are left
// out (section 2.2, production Char).
func escape(b *strings.Builder, s string) {
	for _, r := range s {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&quot;")
		case r == '\n' || r == '\t' || r == '\r':
			b.WriteByte(' ')
		case r < 0x20 || r == 0xfffe || r == 0xffff || r == 0xfffd:
		default:
			b.WriteRune(r)
		}
	}
}
