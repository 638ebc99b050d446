// Package browser puts the page's tree of elements into the document, turns what the
// document tells into events of the page, and carries out effects.
//
// It decides nothing: what an event means is for package app, what the page shows is
// for package panel. The core is native and works on a small interface, [Document];
// calls to a browser stand in files that end in _js.go.
//
// A page is one tree. The last one is held with its elements, and of the next one only
// the difference is applied:
//
//   - Kids with a key keep their element when they move; kids without one are matched
//     by their place among their neighbours and their tag.
//   - The element with the focus is not moved: its neighbours move around it. What is
//     being typed in a field is not written over.
//   - Handlers are data beside the element. One listener for each kind of event stands
//     at the root; elements that can be meant by it carry a number, the mark, under
//     which the tree finds its node. A node that goes takes its mark along.
//   - Elements are made and set by name, never by a string of markup.
package browser

import (
	"slices"
	"strings"

	"ledgewright/wasm/panel"
)

// A Document makes elements.
type Document interface {
	Create(tag string, svg bool) Element
	Text(s string) Element
	// Active returns the mark of the element with the focus, 0 for one without a mark.
	Active() int
}

// An Element is one element or run of text of the document.
type Element interface {
	SetText(s string)
	SetAttr(name, value string)
	RemoveAttr(name string)
	SetProp(name, value string) // of the style; an empty value takes it away
	InsertBefore(kid, before Element)
	Remove()
	Mark(mark int)

	// Of controls: what they hold, which is not what their attributes say.
	Value() string
	SetValue(s string)
	Insert(s string) // at the caret, in place of what is selected
	Checked() bool
	SetChecked(on bool)
	Select(option int)

	// Of dialogs.
	ShowModal()
	Close()

	Focus()
	ScrollIntoView()
}

// A Tree is the page as it stands in the document.
type Tree struct {
	doc    Document
	top    *node // the place where the page stands; not part of it
	marked map[int]*node
	marks  int
	active *node    // the node with the focus, while a tree is applied
	later  []func() // what needs the element to be in the document
	held   *node    // the node with the attribute data-hand
	glass  *node    // that with the attribute data-glass
	part   bool     // the page that is applied is not whole
	stir   bool     // a person touched a control since the page was last applied
}

// A node is a node of the page with its element.
type node struct {
	is   panel.Node
	el   Element
	up   *node
	kids []*node
	mark int
	hot  bool // it, or one inside it, has the focus; while a tree is applied
	gone bool // it is no longer part of the page
	sort sort
	said said
}

// NewTree returns an empty page at a place in the document.
func NewTree(doc Document, place Element) *Tree {
	return &Tree{doc: doc, top: &node{el: place, is: new(panel.Element)}, marked: map[int]*node{}}
}

// ApplyPart is Apply for a page of which a part is still to come: the nodes in it that
// stand there already are left alone, with what a person has put into their controls,
// which the next page may have taken over.
func (t *Tree) ApplyPart(page panel.Node) {
	stir := t.stir
	t.part = true
	t.Apply(page)
	t.part, t.stir = false, t.stir || stir
}

// Apply changes the document so that it shows the page. Applying the same page again
// changes nothing.
func (t *Tree) Apply(page panel.Node) {
	t.active = t.marked[t.doc.Active()]
	key := ""
	for o := t.active; o != nil; o = o.up {
		o.hot = true
	}
	was := t.active
	if was != nil {
		key = was.is.Key // before it is patched
	}
	t.patchKids(t.top, []panel.Node{page})
	for o := t.active; o != nil; o = o.up {
		o.hot = false
	}
	for _, do := range t.later {
		do()
	}
	t.stir = was != nil && was.said == typing
	t.active, t.later = nil, nil
	if was != nil && t.doc.Active() != was.mark {
		t.refocus(was, key)
	}
}

// refocus gives the focus to the node of the same key, which came to stand elsewhere, or
// else, if nothing has it, to a neighbour of the one that is gone: the keyboard goes on
// from where it was. It opens no field, which on glass would bring up its keys.
func (t *Tree) refocus(was *node, key string) {
	if key != "" && t.Focus(key) || t.doc.Active() != 0 {
		return
	}
	near := was.up
	for near != nil && near.gone {
		near = near.up
	}
	if near == nil || near == t.top || near.up == t.top {
		return // so much went that nothing is a neighbour
	}
	if o := near.find(func(o *node) bool { return o.mark != 0 && o.reachable() }); o != nil {
		o.el.Focus()
	}
}

// reachable reports whether a node can take the focus and is no field.
func (o *node) reachable() bool {
	_, off := attr(o.is.Attrs, "disabled")
	_, hidden := attr(o.is.Attrs, "hidden")
	return !off && !hidden && (o.is.Tag == "button" || o.is.Tag == "a" || o.is.Tag == "summary")
}

// Held returns the element with the attribute data-hand, on which the hand works.
func (t *Tree) Held() (Element, bool) {
	if t.held == nil {
		return nil, false
	}
	return t.held.el, true
}

// isHeld says whether a mark is that of the element on which the hand works.
func (t *Tree) isHeld(mark int) bool { return t.held != nil && t.held.mark == mark }

// Glass returns the element with the attribute data-glass, in which the stage stands.
func (t *Tree) Glass() (Element, bool) {
	if t.glass == nil {
		return nil, false
	}
	return t.glass.el, true
}

// Focus gives the focus to the first node of that key, and reports whether there is
// one.
func (t *Tree) Focus(key string) bool {
	o := t.top.find(func(o *node) bool { return o.is.Key == key })
	if o == nil {
		return false
	}
	o.el.Focus()
	return true
}

// Uncover scrolls the first node of that key into view.
func (t *Tree) Uncover(key string) {
	if o := t.top.find(func(o *node) bool { return o.is.Key == key }); o != nil {
		o.el.ScrollIntoView()
	}
}

// Root returns the value of an attribute of the page's outermost element.
func (t *Tree) Root(name string) string {
	if len(t.top.kids) == 0 {
		return ""
	}
	value, _ := attr(t.top.kids[0].is.Attrs, name)
	return value
}

// find returns the first node below o that is meant, in the order of the document.
func (o *node) find(meant func(*node) bool) *node {
	for _, k := range o.kids {
		if meant(k) {
			return k
		}
		if f := k.find(meant); f != nil {
			return f
		}
	}
	return nil
}

// create makes the element of a node and of all that is inside it.
func (t *Tree) create(n panel.Node, up *node) *node {
	o := &node{is: n, up: up, sort: sortOf(n)}
	if n.Tag == "" {
		o.el = t.doc.Text(n.Text)
		return o
	}
	o.el = t.doc.Create(n.Tag, n.SVG)
	t.patchAttrs(o, nil, n.Attrs)
	patchProps(o.el, nil, n.Props)
	t.remark(o)
	if n.Tag != "textarea" {
		o.kids = make([]*node, 0, len(n.Kids))
		for _, k := range n.Kids {
			kid := t.create(k, o)
			o.el.InsertBefore(kid.el, nil)
			o.kids = append(o.kids, kid)
		}
	}
	t.sync(o, &panel.Element{})
	return o
}

// patch turns the element of a node into that of another of the same kind.
func (t *Tree) patch(o *node, n panel.Node) {
	was := o.is
	if was == n && t.part {
		return
	}
	o.is = n
	if n.Tag == "" {
		if was.Text != n.Text {
			o.el.SetText(n.Text)
		}
		return
	}
	if was != n {
		t.patchAttrs(o, was.Attrs, n.Attrs)
		patchProps(o.el, was.Props, n.Props)
		t.remark(o)
	}
	if n.Tag != "textarea" && (t.stir || !identical(was.Kids, n.Kids)) {
		t.patchKids(o, n.Kids)
	}
	t.sync(o, was)
}

// identical reports whether two lists are one and the same, so that a page that keeps a
// part of the last one costs nothing there.
func identical(was, now []panel.Node) bool {
	return len(was) == len(now) && (len(was) == 0 || &was[0] == &now[0])
}

// patchAttrs sets the attributes that changed. What a control holds is not set here.
func (t *Tree) patchAttrs(o *node, was, now []panel.Attr) {
	if slices.Equal(was, now) {
		return
	}
	for _, a := range was {
		if _, still := attr(now, a.Name); !still && o.mayHave(a.Name) {
			o.el.RemoveAttr(a.Name)
			t.attrGone(o, a.Name)
		}
	}
	for _, a := range now {
		old, had := attr(was, a.Name)
		if had && old == a.Value || !o.mayHave(a.Name) {
			continue
		}
		o.el.SetAttr(a.Name, a.Value)
		if !had {
			t.attrCame(o, a.Name)
		}
	}
}

// attrCame does what the coming of an attribute asks for.
func (t *Tree) attrCame(o *node, name string) {
	switch name {
	case "data-here":
		t.later = append(t.later, o.el.ScrollIntoView)
	case "data-hand":
		t.held = o
	case "data-glass":
		t.glass = o
	}
}

func (t *Tree) attrGone(o *node, name string) {
	switch {
	case name == "data-hand" && t.held == o:
		t.held = nil
	case name == "data-glass" && t.glass == o:
		t.glass = nil
	}
}

// mayHave reports whether an attribute is set as such: not what a control holds, whether
// a dialog is open, and nothing that a browser would read as program or style.
func (o *node) mayHave(name string) bool {
	return !o.sort.holds(name) && !strings.HasPrefix(name, "on") && name != "style" && name != "srcdoc"
}

func patchProps(el Element, was, now []panel.Attr) {
	if slices.Equal(was, now) {
		return
	}
	for _, a := range was {
		if _, still := attr(now, a.Name); !still {
			el.SetProp(a.Name, "")
		}
	}
	for _, a := range now {
		if old, had := attr(was, a.Name); !had || old != a.Value {
			el.SetProp(a.Name, a.Value)
		}
	}
}

// attr returns the attribute of that name.
func attr(attrs []panel.Attr, name string) (string, bool) {
	for _, a := range attrs {
		if a.Name == name {
			return a.Value, true
		}
	}
	return "", false
}

// focusable are the elements that can have the focus, or close, of themselves.
var focusable = [...]string{"a", "button", "input", "select", "textarea", "summary", "dialog"}

// remark gives a mark to a node that can be meant by an event or have the focus.
func (t *Tree) remark(o *node) {
	if o.mark != 0 {
		return
	}
	_, reached := attr(o.is.Attrs, "tabindex")
	if len(o.is.On) == 0 && !reached && !slices.Contains(focusable[:], o.is.Tag) {
		return
	}
	t.marks++
	o.mark = t.marks
	t.marked[o.mark] = o
	o.el.Mark(o.mark)
}

// forget takes a node and all inside it out of the books.
func (t *Tree) forget(o *node) {
	if o.sort == dialog && isOpen(o.is) {
		o.el.Close() // gives the focus back to where it was
	}
	o.gone = true
	if o.mark != 0 {
		delete(t.marked, o.mark)
	}
	if t.held == o {
		t.held = nil
	}
	if t.glass == o {
		t.glass = nil
	}
	for _, k := range o.kids {
		t.forget(k)
	}
}
