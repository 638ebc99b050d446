package document

import (
	"reflect"
	"slices"
	"strings"
	"unicode"

	"ledgewright/engine/unit"
)

// An object describes how the fields of one struct type stand in a document.
type object struct {
	fields []field
	byName map[string]int
	extra  int // index of the struct field that keeps unknown members, or −1
}

// A field is one member.
type field struct {
	name  string
	index int
	omit  bool // leave out what says nothing
}

// types remembers the objects of the struct types met in one call.
type types map[reflect.Type]*object

func (ts types) of(t reflect.Type) *object {
	if o, ok := ts[t]; ok {
		return o
	}
	o := &object{byName: map[string]int{}, extra: -1}
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Type == extraType {
			o.extra = i
			continue
		}
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" || !f.IsExported() {
			continue
		}
		if name == "" {
			name = lowered(f.Name)
		}
		o.byName[name] = len(o.fields)
		omit := slices.Contains(strings.Split(options, ","), "omitempty") || f.Type.Implements(optionalType)
		o.fields = append(o.fields, field{name, i, omit})
	}
	ts[t] = o
	return o
}

// lowered returns a Go name with its first capitals in lower case: X is x, MinX is
// minX, ID is id.
func lowered(name string) string {
	r := []rune(name)
	for i := range r {
		if i > 0 && i+1 < len(r) && unicode.IsLower(r[i+1]) || !unicode.IsUpper(r[i]) {
			break
		}
		r[i] = unicode.ToLower(r[i])
	}
	return string(r)
}

// optional is implemented by every Opt.
type optional interface{ isOptional() }

func (Opt[T]) isOptional() {}

// The two fields of an Opt.
const (
	optValue = 0
	optKnown = 1
)

var (
	optionalType    = reflect.TypeFor[optional]()
	extraType       = reflect.TypeFor[Extra]()
	lengthType      = reflect.TypeFor[unit.Length]()
	angleType       = reflect.TypeFor[unit.Angle]()
	marshalerType   = reflect.TypeFor[Marshaler]()
	unmarshalerType = reflect.TypeFor[Unmarshaler]()
)

// silent reports whether v says nothing and is left out under omitempty.
func (ts types) silent(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Slice, reflect.String:
		return v.Len() == 0
	case reflect.Struct:
		return ts.silentStruct(v)
	case reflect.Array:
		for i := range v.Len() {
			if !ts.silent(v.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Float32, reflect.Float64:
		return v.Float() == 0 // −0 too: it is written as 0
	}
	return v.IsZero()
}

func (ts types) silentStruct(v reflect.Value) bool {
	if v.Type().Implements(optionalType) {
		return !v.Field(optKnown).Bool()
	}
	if v.Type().Implements(marshalerType) {
		return v.IsZero()
	}
	o := ts.of(v.Type())
	for _, f := range o.fields {
		if !ts.silent(v.Field(f.index)) {
			return false
		}
	}
	return o.extra < 0 || v.Field(o.extra).Len() == 0
}
