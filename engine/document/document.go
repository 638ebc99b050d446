// Package document reads JSON strictly and writes it exactly.
//
// Reading refuses what another program could understand differently: a member that
// stands twice, a string that is no valid Unicode, a byte order mark, anything after
// the value (I-JSON, RFC 7493), and whatever passes the [Limits]. A document is
// complete or refused: a member without omitempty in its tag must be present. A
// member that is not known goes to the field of type [Extra], and is refused where a
// type has none. An [*Error] says where, what was found, and what is allowed.
//
// Writing has two forms of the same content. [Encode] gives the canonical text of RFC
// 8785: members sorted by the UTF-16 units of their names, numbers as ECMAScript
// prints them (ECMA-262, Number::toString), no spaces. One value has one such text.
// [Pretty] keeps the order of the struct and indents.
//
// How a Go type stands in a document:
//
//   - A struct is an object. A field's name is that of its json tag, or else its own
//     with the first capitals lowered; "-" leaves it out. Under omitempty a member is
//     left out when it says nothing: zero, empty, or a struct whose members all say
//     nothing.
//   - [unit.Length] is decimal millimetres and [unit.Angle] decimal degrees, at most six
//     decimals and below 10⁹ in size, read and written from the whole number and never
//     through a float. Any other whole number is below 2⁵³ in size; a float is finite.
//   - [Opt] is its value, or no member at all. null is refused everywhere that a
//     type is known.
//   - An empty array reads as a nil slice; a nil slice without omitempty is written as
//     an empty array. An array type must have as many items as it says.
//   - Maps, pointers and interfaces have no form. A type with one of its own
//     implements [Marshaler] and [Unmarshaler].
package document

// Limits bound what is read, so that hostile text costs little. A zero field means
// the default.
type Limits struct {
	Bytes  int // length of the text: 1 MiB
	Depth  int // arrays and objects inside each other: 32
	Runes  int // characters of a string or a name: 500
	Items  int // items of an array, members of an object: 10 000
	Values int // values altogether: 200 000
}

func (l Limits) filled() Limits {
	fill := func(n *int, normal int) {
		if *n <= 0 {
			*n = normal
		}
	}
	fill(&l.Bytes, 1<<20)
	fill(&l.Depth, 32)
	fill(&l.Runes, 500)
	fill(&l.Items, 10_000)
	fill(&l.Values, 200_000)
	return l
}

// A Marshaler has a form of its own in a document. The node must be one that could
// have been read.
type Marshaler interface {
	MarshalDocument() (Node, error)
}

// An Unmarshaler reads its own form. An error that is no [*Error] is reported as what
// is allowed at the node's place.
type Unmarshaler interface {
	UnmarshalDocument(Node) error
}

// Decode reads text into the value that into points at, under the default limits. The
// value must be zero; after an error it must not be used. The error is an [*Error]
// unless into is of a type that has no form in a document.
func Decode(text []byte, into any) error { return Limits{}.Decode(text, into) }

// Decode is [Decode] under the limits l.
func (l Limits) Decode(text []byte, into any) error {
	n, err := l.Parse(text)
	if err != nil {
		return err
	}
	return DecodeNode(text, n, into)
}

// Encode returns the canonical text of v, by RFC 8785. It fails when v holds what has
// no form in a document, such as a number that is not finite.
func Encode(v any) ([]byte, error) {
	n, err := Tree(v)
	if err != nil {
		return nil, err
	}
	return n.Canonical()
}

// Pretty returns the text of v for people: members in the order of the struct, two
// spaces a level, arrays and objects on one line where that fits 100 characters, and a
// newline at the end.
func Pretty(v any) ([]byte, error) {
	n, err := Tree(v)
	if err != nil {
		return nil, err
	}
	return n.Pretty()
}

// Canonical returns the canonical text of any JSON text within the default limits.
func Canonical(text []byte) ([]byte, error) {
	n, err := Limits{}.Parse(text)
	if err != nil {
		return nil, err
	}
	out, err := n.Canonical()
	return out, locate(err, text)
}
