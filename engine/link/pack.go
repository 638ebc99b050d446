package link

import (
	"encoding/binary"
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// A table is the columns of a document: values by column, and texts that travel.
type table struct {
	values [][]int64
	words  []map[string]int // number of each text in each column of words, in the order of their first use
	texts  []string
	part   int64 // number in the id before, of the counter that dividers, lights and the like share
	before []int64
}

// pack returns the document n, in columns of the given shape.
func pack(shape *field, n document.Node, own unit.Length) []byte {
	all := numbered(shape)
	t := table{values: make([][]int64, len(all)), words: make([]map[string]int, len(all)), before: make([]int64, len(all))}
	t.put(shape, n)
	out := binary.AppendUvarint(nil, uint64(own))
	for i, f := range all {
		out = appendColumn(out, t.values[i], f.steps(i-f.column, own))
	}
	sizes := make([]int64, len(t.texts))
	for i, s := range t.texts {
		sizes[i] = int64(len(s))
	}
	out = binary.AppendUvarint(out, uint64(len(sizes)))
	out = appendColumn(out, sizes, wholeSteps())
	for _, s := range t.texts {
		out = append(out, s...)
	}
	return out
}

// steps returns the steps of the nth column of a field.
func (f *field) steps(n int, own unit.Length) []int64 {
	switch {
	case n == 0 && f.form == length:
		return lengthSteps(own)
	case n == 0 && f.form == angle:
		return angleSteps()
	}
	return wholeSteps()
}

func (t *table) add(column int, v int64) { t.values[column] = append(t.values[column], v) }

// put adds the value n, which fits the field.
func (t *table) put(f *field, n document.Node) {
	switch f.form {
	case object:
		t.putObject(f, n)
	case list:
		t.add(f.column, int64(len(n.Kids)))
		t.restart(f.item)
		for _, k := range n.Kids {
			t.put(f.item, k)
		}
	case length, angle:
		v, _ := millionths(n)
		t.add(f.column, v)
	case whole:
		v, _ := strconv.ParseInt(n.Text, 10, 64)
		t.add(f.column, v)
	case flag:
		v := int64(0)
		if n.Text == "true" {
			v = 1
		}
		t.add(f.column, v)
	case word:
		t.putWord(f.column, f.words, n.Text)
	case id, ref:
		v, _ := idNumber(n.Text, f.letter)
		t.add(f.column, v-*t.expected(f))
		*t.expected(f) = v + 1
	case profile:
		base, difference := profileText(n)
		t.add(f.column, int64(base))
		t.putWord(f.column+1, []string{""}, difference)
	}
}

// expected is the number that the next id or reference of a field probably has. Things
// that share a counter share it.
func (t *table) expected(f *field) *int64 {
	if f.form == id && strings.Contains("dlboh", f.letter) {
		return &t.part
	}
	return &t.before[f.column]
}

// restart begins the references of a list anew: the poses of each arrangement name the
// first module first.
func (t *table) restart(item *field) {
	for _, m := range item.members {
		if m.form == ref {
			t.before[m.column] = 0
		}
	}
}

func (t *table) putWord(column int, known []string, s string) {
	if i := slices.Index(known, s); i >= 0 {
		t.add(column, int64(1+i))
		return
	}
	if i, ok := t.words[column][s]; ok {
		t.add(column, int64(1+len(known)+i))
		return
	}
	if t.words[column] == nil {
		t.words[column] = map[string]int{}
	}
	t.words[column][s] = len(t.words[column])
	t.texts = append(t.texts, s)
	t.add(column, 0)
}

// putObject adds which members n has, then the members, then the text of those that the
// shape does not know or that do not fit it.
func (t *table) putObject(f *field, n document.Node) {
	mask := int64(0)
	var rest []document.Node
	values := make([]*document.Node, len(f.members))
	for i := range n.Kids {
		k := &n.Kids[i]
		j := slices.IndexFunc(f.members, func(m *field) bool { return m.key == k.Key })
		if j < 0 || !f.members[j].fits(*k) {
			rest = append(rest, *k)
			continue
		}
		values[j] = k
	}
	for i, m := range f.members {
		if (values[i] != nil) != m.usual {
			mask |= 2 << i
		}
	}
	if rest != nil {
		mask |= 1
	}
	t.add(f.column, mask)
	if rest != nil {
		text, _ := document.ObjectNode(rest...).Canonical()
		t.putWord(f.column+1, nil, string(text))
	}
	for i, m := range f.members {
		if values[i] != nil {
			t.put(m, *values[i])
		}
	}
}

// fits reports whether a column of the field can hold n so that the same text comes out
// again.
func (f *field) fits(n document.Node) bool {
	switch f.form {
	case object, profile:
		return n.Kind == document.Object
	case list:
		if n.Kind != document.Array || len(n.Kids) > f.most {
			return false
		}
		return !slices.ContainsFunc(n.Kids, func(k document.Node) bool { return !f.item.fits(k) })
	case length, angle:
		_, ok := millionths(n)
		return ok
	case whole:
		v, err := strconv.ParseInt(n.Text, 10, 64)
		return n.Kind == document.Number && err == nil && strconv.FormatInt(v, 10) == n.Text
	case flag:
		return n.Kind == document.Bool
	case word:
		return n.Kind == document.String
	case id, ref:
		_, ok := idNumber(n.Text, f.letter)
		return n.Kind == document.String && ok
	}
	return false
}

// millionths reads a decimal with at most six places as a whole number of millionths.
func millionths(n document.Node) (int64, bool) {
	text, minus := strings.CutPrefix(n.Text, "-")
	whole, decimals, _ := strings.Cut(text, ".")
	if n.Kind != document.Number || len(whole) > 9 || len(decimals) > 6 {
		return 0, false
	}
	v, err := strconv.ParseInt(whole+decimals+"000000"[len(decimals):], 10, 64)
	if minus {
		v = -v
	}
	return v, err == nil && unit.Length(v).Decimal() == n.Text
}

// idNumber returns the number behind an id's letter.
func idNumber(s, letter string) (int64, bool) {
	digits, ok := strings.CutPrefix(s, letter)
	if !ok || len(digits) > 9 {
		return 0, false
	}
	v, err := strconv.ParseInt(digits, 10, 64)
	return v, err == nil && v >= 0 && strconv.FormatInt(v, 10) == digits
}
