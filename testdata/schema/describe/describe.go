// Package describe makes the JSON Schema of the build's document from its Go types.
package describe

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// An Object is a JSON object.
type Object = map[string]any

// Build returns the schema of engine.Document. Root is the top of the repository, in
// which the comments are read.
func Build(root string) (Object, error) {
	w := writer{defs: Object{}}
	if err := w.read(root); err != nil {
		return nil, err
	}
	top := w.object(reflect.TypeFor[engine.Document]())
	top["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	top["$id"] = "ledgewright/build/1"
	top["title"] = "Ledgewright build"
	top["description"] = "A plan worked out: boards with every cut in the board's own frame, placements, joints, wall points, parts, findings. Lengths are millimetres, angles degrees, everything else SI base units. A member that is left out is zero or empty."
	top["$defs"] = w.defs
	return top, nil
}

// A writer gathers the definitions of the types met on the way.
type writer struct {
	defs     Object
	comments map[string]string // "package.Type" and "package.Type.Field"
}

// read gathers the comments of all types in the engine.
func (w *writer) read(root string) error {
	w.comments = map[string]string{}
	return filepath.WalkDir(filepath.Join(root, "engine"), func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if d, ok := n.(*ast.GenDecl); ok && d.Tok == token.TYPE {
				for _, s := range d.Specs {
					w.comment(f.Name.Name, d, s.(*ast.TypeSpec))
				}
			}
			return true
		})
		return nil
	})
}

func (w *writer) comment(pkg string, d *ast.GenDecl, s *ast.TypeSpec) {
	name := pkg + "." + s.Name.Name
	w.comments[name] = plain(d.Doc.Text())
	t, ok := s.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, f := range t.Fields.List {
		for _, n := range f.Names {
			w.comments[name+"."+n.Name] = plain(f.Doc.Text() + f.Comment.Text())
		}
	}
}

// plain makes a comment one line.
func plain(s string) string { return strings.Join(strings.Fields(s), " ") }

// of returns the schema of a type; structs with a name become definitions.
func (w *writer) of(t reflect.Type) Object {
	switch t {
	case reflect.TypeFor[unit.Length]():
		return Object{"type": "number", "exclusiveMinimum": -1e9, "exclusiveMaximum": 1e9}
	case reflect.TypeFor[unit.Angle]():
		return Object{"type": "number", "minimum": -360, "maximum": 360}
	}
	switch t.Kind() {
	case reflect.Bool:
		return Object{"type": "boolean"}
	case reflect.String:
		return Object{"type": "string"}
	case reflect.Float64:
		return Object{"type": "number", "minimum": -1e12, "maximum": 1e12}
	case reflect.Slice:
		return Object{"type": "array", "items": w.of(t.Elem())}
	case reflect.Array:
		return Object{"type": "array", "items": w.of(t.Elem()), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Struct:
		return w.structure(t)
	}
	return Object{"type": "integer", "minimum": -1 << 53, "maximum": 1 << 53}
}

func (w *writer) structure(t reflect.Type) Object {
	if strings.HasPrefix(t.Name(), "Opt[") {
		return w.of(t.Field(0).Type)
	}
	name := packageOf(t) + "." + t.Name()
	if _, ok := w.defs[name]; !ok {
		w.defs[name] = nil // a type may hold itself
		w.defs[name] = w.object(t)
	}
	return Object{"$ref": "#/$defs/" + name}
}

func (w *writer) object(t reflect.Type) Object {
	name, members, required := packageOf(t)+"."+t.Name(), Object{}, []string{}
	open := false
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Type == reflect.TypeFor[document.Extra]() {
			open = true
			continue
		}
		key, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if key == "-" || !f.IsExported() {
			continue
		}
		if key == "" {
			key = lowered(f.Name)
		}
		m := w.of(f.Type)
		if c := w.comments[name+"."+f.Name]; c != "" {
			m["description"] = c
		}
		members[key] = m
		if rest == "" {
			required = append(required, key)
		}
	}
	o := Object{"type": "object", "properties": members, "required": required, "additionalProperties": open}
	if c := w.comments[name]; c != "" {
		o["description"] = c
	}
	return o
}

func packageOf(t reflect.Type) string { return t.PkgPath()[strings.LastIndexByte(t.PkgPath(), '/')+1:] }

// lowered is the name of a member whose field has no tag, as package document has it.
func lowered(name string) string {
	n := 1
	for n < len(name) && name[n] >= 'A' && name[n] <= 'Z' && (n+1 == len(name) || name[n+1] < 'a') {
		n++
	}
	return strings.ToLower(name[:n]) + name[n:]
}
