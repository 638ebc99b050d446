package link

import (
	"encoding/binary"
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// mostValues bounds the values of a document that is read from columns, and mostBytes the
// bytes of its texts: a column of one value for all takes no bytes, and a text can be
// named again and again.
const mostValues = 200_000

// A reading takes the values of columns one by one, in the order in which a table was
// filled. What is wrong is remembered in bad, and only zeros come after it.
type reading struct {
	columns []column
	words   [][]string
	texts   []string
	part    int64
	before  []int64
	left    int // values that may still be read
	room    int // bytes of text that may still be read
	large   bool
	bad     bool
}

// unpack returns the document that columns of the given shape hold.
func unpack(shape *field, src []byte) (document.Node, error) {
	all := numbered(shape)
	r := reading{words: make([][]string, len(all)), before: make([]int64, len(all)), left: mostValues, room: mostBytes}
	if !r.open(all, src) {
		return document.Node{}, incomplete()
	}
	n := r.get(shape)
	switch {
	case r.large:
		return n, &Error{Key: TooLarge}
	case r.bad || !r.done():
		return n, incomplete()
	}
	return n, nil
}

// open takes the columns and texts apart.
func (r *reading) open(all []*field, src []byte) bool {
	own, n := binary.Uvarint(src)
	if n <= 0 || own == 0 || own >= 1<<50 {
		return false
	}
	src = src[n:]
	for i, f := range all {
		c, rest, ok := readColumn(src, f.steps(i-f.column, unit.Length(own)))
		if !ok {
			return false
		}
		r.columns, src = append(r.columns, c), rest
	}
	return r.openTexts(src)
}

// openTexts takes the texts apart: their count, their sizes, and their bytes.
func (r *reading) openTexts(src []byte) bool {
	count, n := binary.Uvarint(src)
	if n <= 0 || count > mostValues {
		return false
	}
	sizes, src, ok := readColumn(src[n:], wholeSteps())
	for i := uint64(0); ok && i < count; i++ {
		var size int64
		size, ok = sizes.next()
		if !ok || size < 0 || size > int64(len(src)) {
			return false
		}
		r.texts, src = append(r.texts, string(src[:size])), src[size:]
	}
	return ok && sizes.done() && len(src) == 0
}

// done reports whether nothing was left over.
func (r *reading) done() bool {
	for i := range r.columns {
		if !r.columns[i].done() {
			return false
		}
	}
	return len(r.texts) == 0
}

// next returns the next value of a column.
func (r *reading) next(column int) int64 {
	if r.left--; r.left < 0 {
		r.large, r.bad = true, true
	}
	if r.bad {
		return 0
	}
	v, ok := r.columns[column].next()
	if !ok {
		r.bad = true
		return 0
	}
	return v
}

// within returns v, or 0 and remembers that it is out of range.
func (r *reading) within(v, most int64) int64 {
	if v < 0 || v > most {
		r.bad = true
		return 0
	}
	return v
}

// get returns the next value of a field.
func (r *reading) get(f *field) document.Node {
	if r.bad {
		return document.Node{}
	}
	switch f.form {
	case object:
		return r.getObject(f)
	case list:
		return r.getList(f)
	case length:
		return document.LengthNode(unit.Length(r.next(f.column)))
	case angle:
		return document.AngleNode(unit.Angle(r.next(f.column)))
	case whole:
		return document.WholeNode(r.next(f.column))
	case flag:
		return document.BoolNode(r.within(r.next(f.column), 1) == 1)
	case word:
		return document.TextNode(r.getWord(f.column, f.words))
	case id, ref:
		v := r.within(r.next(f.column)+*r.expected(f), 999_999_999)
		*r.expected(f) = v + 1
		return document.TextNode(f.letter + strconv.FormatInt(v, 10))
	}
	base := r.within(r.next(f.column), profileBases-1)
	n, ok := profileNode(int(base), r.getWord(f.column+1, []string{""}))
	r.bad = r.bad || !ok
	return n
}

func (r *reading) expected(f *field) *int64 {
	t := table{before: r.before}
	if p := t.expected(f); p != &t.part {
		return p
	}
	return &r.part
}

func (r *reading) getList(f *field) document.Node {
	count := r.next(f.column)
	if f.most == mostModules && count > mostModules {
		r.large = true
	}
	count = r.within(count, int64(f.most))
	t := table{before: r.before}
	t.restart(f.item)
	n := document.ArrayNode()
	for i := int64(0); i < count && !r.bad; i++ {
		n.Kids = append(n.Kids, r.get(f.item))
	}
	return n
}

func (r *reading) getWord(column int, known []string) string {
	s := r.lookUp(column, known)
	if r.room -= len(s); r.room < 0 {
		r.large, r.bad = true, true
	}
	return s
}

// lookUp returns the next text of a column of words: one that need not travel, one that
// stood there before, or a new one.
func (r *reading) lookUp(column int, known []string) string {
	v := r.within(r.next(column), int64(len(known)+len(r.words[column])))
	switch {
	case r.bad:
		return ""
	case v > int64(len(known)):
		return r.words[column][v-1-int64(len(known))]
	case v > 0:
		return known[v-1]
	case len(r.texts) == 0:
		r.bad = true
		return ""
	}
	s := r.texts[0]
	r.texts = r.texts[1:]
	r.words[column] = append(r.words[column], s)
	return s
}

func (r *reading) getObject(f *field) document.Node {
	mask := r.within(r.next(f.column), 2<<len(f.members)-1)
	n := document.ObjectNode()
	if mask&1 != 0 {
		rest, err := document.Limits{}.Parse([]byte(r.getWord(f.column+1, nil)))
		if err != nil || rest.Kind != document.Object {
			r.bad = true
		}
		n.Kids = rest.Kids
	}
	for i, m := range f.members {
		if m.usual != (mask&(2<<i) != 0) && !r.bad {
			n.Kids = append(n.Kids, r.get(m).With(m.key))
		}
	}
	return n
}
