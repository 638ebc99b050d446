// Package panel turns the page's state into a tree of elements. It touches no
// browser: a tree is tested as text.
package panel

import "ledgewright/wasm/app"

// A Node points at an element of the page. What is part of a page is not changed any
// more: the next page may hold the same node again, and where it does nothing is compared.
type Node = *Element

// An Element is one element, or a run of text where Tag is empty. Attributes come in a
// fixed order; kids with a Key keep their element when they move among their
// neighbours, and an element with the focus is never replaced.
type Element struct {
	Tag   string
	Key   string
	Attrs []Attr
	Props []Attr // custom properties and the few style properties set by script: "--x"
	Text  string // of a text node
	Kids  []Node
	On    []Handler
	SVG   bool // in the SVG name space
}

// An Attr is one attribute. An empty value is the attribute alone, as in "hidden".
type Attr struct{ Name, Value string }

// A Handler sends an event of the page to the state machine. For "input" and
// "change" the browser puts the control's text into it: TypedInto and Entered take
// their Text so.
type Handler struct {
	On    string // "click", "input", "change", "submit", "keydown"
	Event app.Event
}
