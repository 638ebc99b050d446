package panel

import (
	"slices"
	"strconv"
	"strings"

	"ledgewright/wasm/app"
)

// A part is what an element is made of: an attribute, a handler, a kid, or several; nil
// is none. Parts are pointers, or words known beforehand: so a call that makes an element
// is short, and keeps nothing but them.
type part interface{ join(Node) }

func (a *Attr) join(n Node)    { n.Attrs = append(n.Attrs, *a) }
func (h *Handler) join(n Node) { n.On = append(n.On, *h) }
func (k *Element) join(n Node) { n.Kids = append(n.Kids, k) }

// An attr is an attribute known beforehand: "type=button", or its name alone.
type attr string

func (a attr) join(n Node) {
	name, value, _ := strings.Cut(string(a), "=")
	n.Attrs = append(n.Attrs, Attr{name, value})
}

// A class is the attribute of that name.
type class string

func (c class) join(n Node) { n.Attrs = append(n.Attrs, Attr{"class", string(c)}) }

// parts are several parts in a row; none where a condition does not hold.
type parts []part

func (p parts) join(n Node) { n.with(p) }

// kids are several elements or runs of text in a row.
type kids []Node

func (k kids) join(n Node) { n.Kids = append(n.Kids, k...) }

// add adds some to the row.
func (k *kids) add(more ...Node) { *k = append(*k, more...) }

type prop Attr

func (p *prop) join(n Node) { n.Props = append(n.Props, Attr(*p)) }

// with adds parts to an element.
func (n *Element) with(of []part) {
	n.reserve(of)
	for _, p := range of {
		if p != nil {
			p.join(n)
		}
	}
}

// reserve makes room for parts.
func (n *Element) reserve(of []part) {
	attrs, more := 0, 0
	for _, p := range of {
		switch p := p.(type) {
		case *Attr, attr, class:
			attrs++
		case *Element:
			more++
		case kids:
			more += len(p)
		}
	}
	if n.Attrs == nil && attrs > 1 {
		n.Attrs = make([]Attr, 0, attrs)
	}
	if n.Kids == nil && more > 1 {
		n.Kids = make([]Node, 0, more)
	}
}

// add adds kids to an element.
func (n *Element) add(more ...Node) { n.Kids = append(n.Kids, more...) }

// el returns an element. The key is empty where its place among its neighbours says
// enough.
func el(tag, key string, of ...part) Node {
	n := &Element{Tag: tag, Key: key}
	n.with(of)
	return n
}

// svg returns an element of a picture.
func svg(tag, key string, of ...part) Node {
	n := &Element{Tag: tag, Key: key, SVG: true}
	n.with(of)
	return n
}

// text returns a run of text.
func text(s string) Node { return &Element{Text: s} }

// at returns an attribute.
func at(name, value string) *Attr { return &Attr{name, value} }

// flag returns an attribute without a value, or nothing.
func flag(name string, on bool) part {
	if !on {
		return nil
	}
	return attr(name)
}

// state returns an attribute that says "true" or "false", such as aria-pressed.
func state(name string, on bool) *Attr { return &Attr{name, strconv.FormatBool(on)} }

// when returns parts if a condition holds, and nothing else.
func when(ok bool, of ...part) part {
	switch {
	case !ok:
		return nil
	case len(of) == 1:
		return of[0]
	}
	return parts(slices.Clone(of))
}

// set returns a custom property of the style, such as "--x".
func set(name, value string) part { return &prop{name, value} }

// onClick returns a handler of clicks.
func onClick(e app.Event) *Handler { return &Handler{"click", e} }

// on returns a handler.
func on(kind string, e app.Event) *Handler { return &Handler{kind, e} }
