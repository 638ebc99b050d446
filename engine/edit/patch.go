package edit

import (
	"reflect"
	"slices"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/rank"
	"ledgewright/engine/words"
)

// Change returns a member that sets key to v, for the edits that begin with "set-" and
// "add-". A nil v takes an optional member away. It panics when v is nothing that a
// document can hold, which is a programmer's mistake.
func Change(key string, v any) document.Member {
	if v == nil {
		return document.Member{Key: key, Value: null}
	}
	text, err := document.Encode(v)
	if err != nil {
		panic("edit.Change: " + err.Error())
	}
	return document.Member{Key: key, Value: string(text)}
}

// Changes are several members in the order of their keys.
func Changes(members ...document.Member) document.Extra {
	rank.By(members, func(a, b document.Member) int { return strings.Compare(a.Key, b.Key) })
	return members
}

const null = "null"

// patch returns v with the members of changes set, by their names in a document. A
// member that v has not, or that stands in except, is refused. Members that are not
// named keep their storage.
func patch[T any](v T, changes document.Extra, where string, except ...string) (T, error) {
	err := patchStruct(reflect.ValueOf(&v).Elem(), changes, where, except)
	return v, err
}

// fresh is patch on a thing that is made new: every member that a document cannot
// leave out must be named, but those that v has already.
func fresh[T any](v T, changes document.Extra, where string, except ...string) (T, error) {
	err := freshStruct(reflect.ValueOf(&v).Elem(), changes, where, except)
	return v, err
}

func freshStruct(s reflect.Value, changes document.Extra, where string, except []string) error {
	if err := patchStruct(s, changes, where, except); err != nil {
		return err
	}
	for i := range s.NumField() {
		key, optional := memberOf(s.Type().Field(i))
		if key == "" || optional || slices.Contains(except, key) || has(changes, key) || !s.Field(i).IsZero() {
			continue
		}
		return refuse("missing", where, words.Name("member", key))
	}
	return nil
}

func has(changes document.Extra, key string) bool {
	return slices.ContainsFunc(changes, func(m document.Member) bool { return m.Key == key })
}

func patchStruct(s reflect.Value, changes document.Extra, where string, except []string) error {
	for _, c := range changes {
		field, optional := fieldOf(s, c.Key)
		if !field.IsValid() || slices.Contains(except, c.Key) {
			return unknownMember(s, c.Key, where, except)
		}
		if err := patchField(field, c, optional, where); err != nil {
			return err
		}
	}
	return nil
}

func patchField(field reflect.Value, c document.Member, optional bool, where string) error {
	switch {
	case c.Value == null && !optional:
		return refuse("not-optional", where, words.Name("member", c.Key))
	case c.Value == null:
		field.SetZero()
		return nil
	case isObject(field.Type()):
		var inner struct {
			Extra document.Extra `json:"-"`
		}
		if err := document.Decode([]byte(c.Value), &inner); err != nil {
			return unreadable(err, c.Key, where)
		}
		return patchStruct(field, inner.Extra, where+", "+c.Key, nil)
	}
	v := reflect.New(field.Type())
	if err := document.Decode([]byte(c.Value), v.Interface()); err != nil {
		return unreadable(err, c.Key, where)
	}
	field.Set(v.Elem())
	return nil
}

// isObject reports whether values of t are objects with members of their own: every
// struct but the optional values of package document.
func isObject(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.PkgPath() != reflect.TypeFor[document.Member]().PkgPath()
}

// memberOf returns a field's name in a document, "" for none, and whether it may be
// left out.
func memberOf(f reflect.StructField) (key string, optional bool) {
	key, options, _ := strings.Cut(f.Tag.Get("json"), ",")
	if key == "-" {
		return "", true
	}
	return key, strings.Contains(options, "omitempty")
}

func fieldOf(s reflect.Value, key string) (field reflect.Value, optional bool) {
	for i := range s.NumField() {
		if k, o := memberOf(s.Type().Field(i)); k == key && k != "" {
			return s.Field(i), o
		}
	}
	return reflect.Value{}, false
}

func unknownMember(s reflect.Value, key, where string, except []string) *Error {
	var have []string
	for i := range s.NumField() {
		if k, _ := memberOf(s.Type().Field(i)); k != "" && !slices.Contains(except, k) {
			have = append(have, k)
		}
	}
	return refuse("unknown-member", where, words.Name("member", key), words.Name("nearest", nearest(key, have)))
}

func unreadable(err error, key, where string) *Error {
	return refuse("unreadable-member", where, words.Name("member", key), words.Name("why", err.Error()))
}
