package browser

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// A fakeDocument behaves as a browser does in what the tree relies on: an element that
// is taken out or moved loses the focus, a select shows its first option, of radio
// buttons with one name one is on. It counts what is changed.
type fakeDocument struct {
	body   *fake
	active *fake
	ops    int
	log    []string
}

func newFake() (*fakeDocument, *Tree) {
	d := &fakeDocument{}
	d.body = &fake{doc: d, tag: "body"}
	return d, NewTree(d, d.body)
}

func (d *fakeDocument) Create(tag string, svg bool) Element {
	d.did("create " + tag)
	return &fake{doc: d, tag: tag, svg: svg}
}

func (d *fakeDocument) Text(s string) Element {
	d.did("text " + s)
	return &fake{doc: d, text: s}
}

func (d *fakeDocument) Active() int {
	if d.active == nil {
		return 0
	}
	return d.active.mark
}

func (d *fakeDocument) did(what string) { d.ops++; d.log = append(d.log, what) }

// A fake is an element, or text where tag is empty.
type fake struct {
	doc      *fakeDocument
	tag      string
	svg      bool
	text     string
	attrs    map[string]string
	props    map[string]string
	kids     []*fake
	up       *fake
	mark     int
	value    string
	checked  bool
	caret    [2]int // what is selected of the value
	chosen   *fake  // the option of a select
	modal    bool
	scrolled int
}

func (f *fake) SetText(s string) { f.doc.did("text " + s); f.text = s }

func (f *fake) SetAttr(name, value string) {
	f.doc.did("set " + name)
	if f.attrs == nil {
		f.attrs = map[string]string{}
	}
	f.attrs[name] = value
}

func (f *fake) RemoveAttr(name string) { f.doc.did("unset " + name); delete(f.attrs, name) }

func (f *fake) SetProp(name, value string) {
	f.doc.did("prop " + name)
	if f.props == nil {
		f.props = map[string]string{}
	}
	f.props[name] = value
	if value == "" {
		delete(f.props, name)
	}
}

func (f *fake) InsertBefore(kid, before Element) {
	f.doc.did("insert")
	k := kid.(*fake)
	k.out()
	at := len(f.kids)
	if before != nil {
		if at = slices.Index(f.kids, before.(*fake)); at < 0 {
			panic("to stand before an element that is not here")
		}
	}
	f.kids = slices.Insert(f.kids, at, k)
	k.up = f
}

func (f *fake) Remove() { f.doc.did("remove " + f.tag); f.out() }

func (f *fake) out() {
	if f.up == nil {
		return
	}
	i := slices.Index(f.up.kids, f)
	f.up.kids = slices.Delete(f.up.kids, i, i+1)
	f.up = nil
	for a := f.doc.active; a != nil; a = a.up {
		if a == f {
			f.doc.active = nil
			break
		}
	}
	f.each(func(k *fake) { k.modal = false })
}

func (f *fake) each(do func(*fake)) {
	do(f)
	for _, k := range f.kids {
		k.each(do)
	}
}

func (f *fake) Mark(mark int)     { f.mark = mark }
func (f *fake) Value() string     { return f.value }
func (f *fake) SetValue(s string) { f.doc.did("value " + s); f.value = s }
func (f *fake) Checked() bool     { return f.checked }

// Insert replaces what is selected; the caret then stands behind it.
func (f *fake) Insert(s string) {
	f.doc.did("insert " + s)
	f.value = f.value[:f.caret[0]] + s + f.value[f.caret[1]:]
	f.caret = [2]int{f.caret[0] + len(s), f.caret[0] + len(s)}
}

func (f *fake) SetChecked(on bool) {
	f.doc.did("checked")
	f.tick(on)
}

// tick does as a browser: one of the radio buttons of a name is on.
func (f *fake) tick(on bool) {
	f.checked = on
	if on && f.attrs["type"] == "radio" {
		f.root().each(func(o *fake) {
			if o != f && o.attrs["type"] == "radio" && o.attrs["name"] == f.attrs["name"] {
				o.checked = false
			}
		})
	}
}

func (f *fake) root() *fake {
	for f.up != nil {
		f = f.up
	}
	return f
}

func (f *fake) Select(option int) { f.doc.did("select"); f.pick(option) }

// pick chooses an option, which stays chosen when it moves.
func (f *fake) pick(option int) { f.chosen = f.kids[option] }

// option is the number of the one that is chosen: the first where that one is gone.
func (f *fake) option() int { return max(slices.Index(f.kids, f.chosen), 0) }

func (f *fake) ShowModal() {
	f.doc.did("show")
	if f.root() != f.doc.body {
		panic("a dialog that opens must be in the document")
	}
	if f.modal {
		panic("the dialog is open")
	}
	f.modal = true
}

func (f *fake) Close()          { f.doc.did("close"); f.modal = false }
func (f *fake) Focus()          { f.doc.did("focus"); f.doc.active = f }
func (f *fake) ScrollIntoView() { f.doc.did("scroll"); f.scrolled++ }

// String writes the element as a browser would show it, controls with what they hold.
func (f *fake) String() string {
	var b strings.Builder
	f.write(&b)
	return b.String()
}

func (f *fake) write(b *strings.Builder) {
	if f.tag == "" {
		fmt.Fprintf(b, "%q", f.text)
		return
	}
	fmt.Fprintf(b, "<%s", f.tag)
	if f.svg {
		b.WriteString(" svg")
	}
	for _, name := range slices.Sorted(maps.Keys(f.attrs)) {
		fmt.Fprintf(b, " %s=%q", name, f.attrs[name])
	}
	for _, name := range slices.Sorted(maps.Keys(f.props)) {
		fmt.Fprintf(b, " %s:%q", name, f.props[name])
	}
	fmt.Fprintf(b, " holds %q %t %d %t>", f.value, f.checked, f.option(), f.modal)
	for _, k := range f.kids {
		k.write(b)
	}
	b.WriteString("</>")
}
