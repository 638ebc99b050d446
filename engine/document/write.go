package document

import "unicode/utf8"

// Canonical returns the text of n by RFC 8785. It fails where n holds a number that
// cannot be kept exactly.
func (n Node) Canonical() ([]byte, error) { return n.appendCanonical(nil) }

func (n Node) appendCanonical(dst []byte) ([]byte, error) {
	var err error
	switch n.Kind {
	case Array:
		dst = append(dst, '[')
		for i, k := range n.Kids {
			if i > 0 {
				dst = append(dst, ',')
			}
			if dst, err = k.appendCanonical(dst); err != nil {
				return dst, under(err, item(i))
			}
		}
		return append(dst, ']'), nil
	case Object:
		dst = append(dst, '{')
		for i, k := range sorted(n.Kids) {
			if i > 0 {
				dst = append(dst, ',')
			}
			dst = append(appendString(dst, k.Key), ':')
			if dst, err = k.appendCanonical(dst); err != nil {
				return dst, under(err, member(k.Key))
			}
		}
		return append(dst, '}'), nil
	}
	return n.appendPlain(dst)
}

// appendPlain appends what is neither an array nor an object.
func (n Node) appendPlain(dst []byte) ([]byte, error) {
	switch n.Kind {
	case Number:
		dst, ok := appendNumber(dst, n.Text)
		if !ok {
			return dst, n.wrong("number", "a number that a 64-bit float keeps, as most programs read it")
		}
		return dst, nil
	case String:
		return appendString(dst, n.Text), nil
	case Bool:
		return append(dst, n.Text...), nil
	}
	return append(dst, "null"...), nil
}

// lineWidth is how many characters a line of [Pretty] has at most where it could be
// broken.
const lineWidth = 100

// Pretty returns the text of n for people, as the function [Pretty] does.
func (n Node) Pretty() ([]byte, error) {
	w := writer{}
	err := w.node(n, 0, 0)
	return append(w.out, '\n'), err
}

// A writer lays a document out in lines.
type writer struct {
	out  []byte
	line int // offset of the present line
}

func (w *writer) column() int { return utf8.RuneCount(w.out[w.line:]) }

// node writes n at an indent, leaving room for what has to follow on the line.
func (w *writer) node(n Node, indent, room int) error {
	if n.Kind != Array && n.Kind != Object {
		out, err := n.appendPlain(w.out)
		w.out = out
		return err
	}
	start, column := len(w.out), w.column()
	fits, err := w.flat(n, start, lineWidth-room-column)
	if fits || err != nil {
		return err
	}
	w.out = w.out[:start]
	return w.broken(n, indent+2)
}

// flat writes n on the present line, and stops as soon as it is wider than width. So
// a try costs no more than a line, however much there is of n.
func (w *writer) flat(n Node, start, width int) (bool, error) {
	if n.Kind != Array && n.Kind != Object {
		out, err := n.appendPlain(w.out)
		w.out = out
		return w.narrow(start, width), err
	}
	opening, closing := brackets(n.Kind)
	w.out = append(w.out, opening)
	for i, k := range n.Kids {
		if i > 0 {
			w.out = append(w.out, ", "...)
		}
		w.name(n.Kind, k)
		if fits, err := w.flat(k, start, width); !fits || err != nil {
			return false, under(err, step(n.Kind, i, k))
		}
	}
	w.out = append(w.out, closing)
	return w.narrow(start, width), nil
}

func (w *writer) narrow(start, width int) bool {
	return len(w.out)-start <= width || utf8.RuneCount(w.out[start:]) <= width
}

// broken writes n over several lines.
func (w *writer) broken(n Node, indent int) error {
	opening, closing := brackets(n.Kind)
	w.out = append(w.out, opening)
	for i, k := range n.Kids {
		w.newline(indent)
		w.name(n.Kind, k)
		room := 1
		if i == len(n.Kids)-1 {
			room = 0
		}
		if err := w.node(k, indent, room); err != nil {
			return under(err, step(n.Kind, i, k))
		}
		if room > 0 {
			w.out = append(w.out, ',')
		}
	}
	w.newline(indent - 2)
	w.out = append(w.out, closing)
	return nil
}

func (w *writer) newline(indent int) {
	w.out = append(w.out, '\n')
	w.line = len(w.out)
	for range indent {
		w.out = append(w.out, ' ')
	}
}

// name writes the name of a member.
func (w *writer) name(in Kind, k Node) {
	if in == Object {
		w.out = append(appendString(w.out, k.Key), ": "...)
	}
}

func brackets(k Kind) (opening, closing byte) {
	if k == Object {
		return '{', '}'
	}
	return '[', ']'
}

func step(in Kind, i int, k Node) string {
	if in == Object {
		return member(k.Key)
	}
	return item(i)
}
