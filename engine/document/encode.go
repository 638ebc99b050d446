package document

import (
	"errors"
	"math"
	"reflect"
	"unicode/utf8"

	"ledgewright/engine/unit"
)

// Tree returns v as a node, its members in the order of the struct.
func Tree(v any) (Node, error) {
	return encoder{types{}}.value(reflect.ValueOf(v))
}

type encoder struct{ types types }

var errRange = errors.New("is out of range for a document")

func (e encoder) value(v reflect.Value) (Node, error) {
	if !v.IsValid() {
		return Node{}, errors.New("document: nil has no form")
	}
	t := v.Type()
	switch {
	case t.Implements(marshalerType):
		return v.Interface().(Marshaler).MarshalDocument()
	case t.Implements(optionalType):
		return e.optional(v)
	case t == lengthType:
		l := unit.Length(v.Int())
		return within(LengthNode(l), int64(l), int64(unit.Limit))
	case t == angleType:
		a := unit.Angle(v.Int())
		return within(AngleNode(a), int64(a), int64(unit.Limit))
	}
	switch t.Kind() {
	case reflect.Pointer:
		return e.value(v.Elem())
	case reflect.Struct:
		return e.object(v)
	case reflect.Slice, reflect.Array:
		return e.array(v)
	}
	return e.plain(v)
}

// plain returns what is neither an array nor an object.
func (e encoder) plain(v reflect.Value) (Node, error) {
	switch {
	case v.Kind() == reflect.String:
		if !characters(v.String()) {
			return Node{}, errors.New("is no text of Unicode characters")
		}
		return TextNode(v.String()), nil
	case v.Kind() == reflect.Bool:
		return BoolNode(v.Bool()), nil
	case v.CanFloat():
		x := v.Float()
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return Node{}, errors.New("is no finite number")
		}
		return Node{Kind: Number, Text: string(appendFloat(nil, x))}, nil
	case v.CanInt():
		return within(WholeNode(v.Int()), v.Int(), mostWhole)
	case v.CanUint():
		n := int64(min(v.Uint(), mostWhole))
		return within(WholeNode(n), n, mostWhole)
	}
	return Node{}, errors.New("document: " + v.Type().String() + " has no form")
}

// characters reports whether s could be read back.
func characters(s string) bool {
	for _, r := range s {
		if nonCharacter(r) {
			return false
		}
	}
	return utf8.ValidString(s)
}

func within(n Node, value, limit int64) (Node, error) {
	if value <= -limit || value >= limit {
		return n, errRange
	}
	return n, nil
}

// optional returns the value of an Opt. One that is missing has no form where there is
// no member to leave out.
func (e encoder) optional(v reflect.Value) (Node, error) {
	if !v.Field(optKnown).Bool() {
		return Node{}, errors.New("is missing")
	}
	return e.value(v.Field(optValue))
}

func (e encoder) array(v reflect.Value) (Node, error) {
	kids := make([]Node, v.Len())
	for i := range kids {
		var err error
		if kids[i], err = e.value(v.Index(i)); err != nil {
			return Node{}, inside(err, item(i))
		}
	}
	return ArrayNode(kids...), nil
}

func (e encoder) object(v reflect.Value) (Node, error) {
	o := e.types.of(v.Type())
	kids := make([]Node, 0, len(o.fields))
	for _, f := range o.fields {
		at := v.Field(f.index)
		if f.omit && e.types.silent(at) {
			continue
		}
		n, err := e.value(at)
		if err != nil {
			return Node{}, inside(err, member(f.name))
		}
		kids = append(kids, n.With(f.name))
	}
	if o.extra < 0 {
		return ObjectNode(kids...), nil
	}
	more, err := extraNodes(v.Field(o.extra).Interface().(Extra), o)
	return ObjectNode(append(kids, more...)...), err
}

// kept lets through whatever a reader with wider limits than the default has kept.
var kept = Limits{Bytes: 1 << 30, Depth: 1 << 10, Runes: 1 << 30, Items: 1 << 30, Values: 1 << 30}

// extraNodes returns the members that were kept unread.
func extraNodes(x Extra, o *object) ([]Node, error) {
	nodes := make([]Node, len(x))
	for i, m := range x {
		n, err := kept.Parse([]byte(m.Value))
		if err != nil {
			return nil, inside(err, member(m.Key))
		}
		if _, known := o.byName[m.Key]; known || i > 0 && compareUTF16(x[i-1].Key, m.Key) >= 0 || !characters(m.Key) {
			return nil, inside(errors.New("is no name of an unknown member, or out of order"), member(m.Key))
		}
		nodes[i] = n.With(m.Key)
	}
	return nodes, nil
}

// An encodeError says where in a Go value something has no form.
type encodeError struct {
	path string
	err  error
}

func (e *encodeError) Error() string { return "document: " + e.path + " " + e.err.Error() }
func (e *encodeError) Unwrap() error { return e.err }

func inside(err error, step string) error {
	e, ok := err.(*encodeError)
	if !ok {
		return &encodeError{step, err}
	}
	if e.path[0] != '[' {
		step += "."
	}
	return &encodeError{step + e.path, e.err}
}
