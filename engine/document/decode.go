package document

import (
	"errors"
	"reflect"
	"strconv"
	"strings"

	"ledgewright/engine/unit"
)

// DecodeNode reads n into the value that into points at, as [Decode] does. The text is
// the one that n was parsed from; an error's line and column are counted in it, and left
// to whoever called when it is nil, as in an [Unmarshaler].
func DecodeNode(text []byte, n Node, into any) error {
	v := reflect.ValueOf(into)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return errors.New("document: a value that is not a pointer is no place to read into")
	}
	err := decoder{types{}}.value(n, v.Elem())
	if text == nil {
		return err
	}
	return locate(err, text)
}

type decoder struct{ types types }

// value reads n into v.
func (d decoder) value(n Node, v reflect.Value) error {
	t := v.Type()
	switch {
	case reflect.PointerTo(t).Implements(unmarshalerType):
		return d.own(n, v)
	case t.Implements(optionalType):
		v.Field(optKnown).SetBool(true)
		return d.value(n, v.Field(optValue))
	case t == lengthType:
		return d.scaled(n, v, 6, int64(unit.Limit), "length", "a length in millimetres, such as 292.1")
	case t == angleType:
		return d.scaled(n, v, 6, int64(unit.Limit), "angle", "an angle in degrees, such as 22.5")
	}
	switch t.Kind() {
	case reflect.Struct:
		return d.object(n, v)
	case reflect.Slice, reflect.Array:
		return d.array(n, v)
	case reflect.String:
		if n.Kind != String {
			return n.wrong("type", "a text in quotation marks")
		}
		v.SetString(strings.Clone(n.Text)) // not to hold on to the whole document
	case reflect.Bool:
		if n.Kind != Bool {
			return n.wrong("type", "true or false")
		}
		v.SetBool(n.Text == "true")
	case reflect.Float64:
		return d.float(n, v)
	default:
		return d.whole(n, v)
	}
	return nil
}

// own lets a type read itself.
func (d decoder) own(n Node, v reflect.Value) error {
	err := v.Addr().Interface().(Unmarshaler).UnmarshalDocument(n)
	var known *Error
	if err == nil || errors.As(err, &known) {
		return err
	}
	return n.wrong("value", err.Error())
}

// mostWhole is the size below which every whole number is a float of its own.
const mostWhole = 1 << 53

func (d decoder) whole(n Node, v reflect.Value) error {
	switch {
	case v.CanInt():
		return d.scaled(n, v, 0, mostWhole, "whole-number", "a whole number")
	case !v.CanUint():
		return errors.New("document: " + v.Type().String() + " has no form")
	}
	w, err := unit.Scaled(n.Text, 0, mostWhole)
	if n.Kind != Number || err != nil || w < 0 || v.OverflowUint(uint64(w)) {
		return n.wrong("whole-number", "a whole number from 0 up")
	}
	v.SetUint(uint64(w))
	return nil
}

// scaled reads a number that is kept as a whole number of 10^−places.
func (d decoder) scaled(n Node, v reflect.Value, places int, limit int64, reason, allowed string) error {
	if n.Kind != Number {
		return n.wrong("type", allowed)
	}
	w, err := unit.Scaled(n.Text, places, limit)
	switch {
	case err == unit.ErrTooFine && places > 0:
		return n.wrong("too-fine", allowed+", with at most "+strconv.Itoa(places)+" decimals")
	case err == unit.ErrTooLarge && places > 0:
		return n.wrong("range", allowed+", below 10⁹ in size")
	case err != nil:
		return n.wrong(reason, allowed)
	case v.OverflowInt(w):
		return n.wrong("range", allowed+" of at most "+strconv.Itoa(v.Type().Bits())+" bits")
	}
	v.SetInt(w)
	return nil
}

func (d decoder) float(n Node, v reflect.Value) error {
	x, ok := float(n.Text)
	if n.Kind != Number || !ok {
		return n.wrong("number", "a finite number")
	}
	v.SetFloat(x)
	return nil
}

func (d decoder) array(n Node, v reflect.Value) error {
	size := len(n.Kids)
	if n.Kind != Array {
		return n.wrong("type", "an array")
	}
	if v.Kind() == reflect.Array && size != v.Len() {
		e := n.wrong("count", "exactly "+strconv.Itoa(v.Len()))
		e.Found = "an array of " + strconv.Itoa(size)
		return e
	}
	if v.Kind() == reflect.Slice && size > 0 {
		v.Set(reflect.MakeSlice(v.Type(), size, size))
	}
	for i, k := range n.Kids {
		if err := d.value(k, v.Index(i)); err != nil {
			return under(err, item(i))
		}
	}
	return nil
}

func (d decoder) object(n Node, v reflect.Value) error {
	if n.Kind != Object {
		return n.wrong("type", "an object")
	}
	o := d.types.of(v.Type())
	seen := make([]bool, len(o.fields))
	var unknown []Node
	for _, k := range n.Kids {
		i, ok := o.byName[k.Key]
		if !ok {
			unknown = append(unknown, k)
			continue
		}
		seen[i] = true
		if err := d.value(k, v.Field(o.fields[i].index)); err != nil {
			return under(err, member(k.Key))
		}
	}
	for i, f := range o.fields {
		if !seen[i] && !f.omit {
			e := n.wrong("missing", "an object with all its members")
			e.Found = "no member " + quote(f.name)
			return under(e, member(f.name))
		}
	}
	return d.unknown(unknown, o, v)
}

// unknown keeps the members that the type does not know.
func (d decoder) unknown(members []Node, o *object, v reflect.Value) error {
	if len(members) == 0 {
		return nil
	}
	if o.extra < 0 {
		k := members[0]
		e := &Error{Reason: "unknown-member", Found: "the member " + quote(k.Key), Allowed: "only " + o.names(), at: k.name, placed: true}
		return under(e, member(k.Key))
	}
	var extra Extra
	for _, k := range sorted(members) {
		text, err := k.Canonical()
		if err != nil {
			return under(err, member(k.Key))
		}
		extra = append(extra, Member{Key: strings.Clone(k.Key), Value: string(text)})
	}
	v.Field(o.extra).Set(reflect.ValueOf(extra))
	return nil
}

// names lists the names of an object for a message.
func (o *object) names() string {
	names := make([]string, len(o.fields))
	for i, f := range o.fields {
		names[i] = f.name
	}
	return strings.Join(names, ", ")
}
