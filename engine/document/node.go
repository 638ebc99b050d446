package document

import (
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// A Node is one value of a JSON text.
type Node struct {
	Kind Kind
	Key  string // name of the member that the value belongs to, in an object
	Text string // a string's characters, a number as it is written, "true" or "false"
	Kids []Node // items of an array, members of an object, in the order of the text
	At   int    // offset of the value in the text
	name int    // offset of the member's name
}

// MarshalDocument returns the node: a member that is a Node is written as the value that
// it is.
func (n Node) MarshalDocument() (Node, error) { return n, nil }

// UnmarshalDocument takes a value as it stands.
func (n *Node) UnmarshalDocument(value Node) error {
	*n = value
	return nil
}

// A Kind is one of the six kinds of JSON values.
type Kind uint8

// The kinds of values.
const (
	Null Kind = iota
	Bool
	Number
	String
	Array
	Object
)

// Get returns the member called name.
func (n Node) Get(name string) (Node, bool) {
	if n.Kind == Object {
		for _, k := range n.Kids {
			if k.Key == name {
				return k, true
			}
		}
	}
	return Node{}, false
}

// Without returns the object n without the member called name.
func (n Node) Without(name string) Node {
	kids := make([]Node, 0, len(n.Kids))
	for _, k := range n.Kids {
		if k.Key != name {
			kids = append(kids, k)
		}
	}
	n.Kids = kids
	return n
}

// With returns n as the member called name, to be put among the Kids of an object.
func (n Node) With(name string) Node {
	n.Key = name
	return n
}

// TextNode returns a node that is the string s.
func TextNode(s string) Node { return Node{Kind: String, Text: s} }

// BoolNode returns a node that is true or false.
func BoolNode(b bool) Node { return Node{Kind: Bool, Text: strconv.FormatBool(b)} }

// WholeNode returns a node that is a whole number.
func WholeNode(n int64) Node { return Node{Kind: Number, Text: strconv.FormatInt(n, 10)} }

// LengthNode returns a node that is a length in millimetres.
func LengthNode(l unit.Length) Node { return Node{Kind: Number, Text: l.Decimal()} }

// AngleNode returns a node that is an angle in degrees.
func AngleNode(a unit.Angle) Node { return Node{Kind: Number, Text: a.Decimal()} }

// ArrayNode returns a node that is an array.
func ArrayNode(items ...Node) Node { return Node{Kind: Array, Kids: items} }

// ObjectNode returns a node that is an object; each member was named by [Node.With].
func ObjectNode(members ...Node) Node { return Node{Kind: Object, Kids: members} }

// found says what n is, for a message.
func (n Node) found() string {
	switch n.Kind {
	case Null:
		return "null"
	case Bool:
		return n.Text
	case Number:
		if len(n.Text) > 40 {
			return "the number " + n.Text[:40] + "…"
		}
		return "the number " + n.Text
	case String:
		return "the text " + quote(n.Text)
	case Array:
		return "an array"
	}
	return "an object"
}

// wrong returns the error that n is not what is allowed.
func (n Node) wrong(reason, allowed string) *Error {
	return &Error{Reason: reason, Found: n.found(), Allowed: allowed, at: n.At, placed: true}
}

// sorted returns the members of an object by the UTF-16 units of their names.
func sorted(members []Node) []Node {
	byName := func(a, b Node) int { return compareUTF16(a.Key, b.Key) }
	if slices.IsSortedFunc(members, byName) {
		return members
	}
	members = slices.Clone(members)
	rank.By(members, byName)
	return members
}

// compareUTF16 compares strings by their UTF-16 units (RFC 8785, section 3.2.3). It
// differs from a comparison of bytes only where one of the first different
// characters lies beyond U+FFFF and the other in U+E000 to U+FFFF: the former is
// written with surrogates, U+D800 to U+DFFF, and comes first.
func compareUTF16(a, b string) int {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	if i == len(a) || i == len(b) || a[i] < 0xEE || b[i] < 0xEE || a[i] >= 0xF0 == (b[i] >= 0xF0) {
		return strings.Compare(a[i:], b[i:])
	}
	return strings.Compare(b[i:], a[i:])
}
