package shop

import (
	"errors"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

// Decode reads a profile that stands in a file of its own. A member left out has the
// default of the profile's system; unknown members are kept. A value outside its
// limits is refused with its [Fault].
func Decode(text []byte) (Profile, error) {
	n, err := document.Parse(text)
	if err != nil {
		return Profile{}, err
	}
	if s, _ := n.Get("schema"); s.Kind != document.String || s.Text != Schema {
		return Profile{}, errors.New("shop profile: \"schema\" must be \"" + Schema + "\"")
	}
	n, err = Complete(n, unit.Metric)
	if err != nil {
		return Profile{}, err
	}
	var p Profile
	if err := document.DecodeNode(text, n, &p); err != nil {
		return Profile{}, err
	}
	if faults := Check(p); len(faults) > 0 {
		return Profile{}, faults[0]
	}
	return p, nil
}

// Encode returns the canonical text of p.
func Encode(p Profile) ([]byte, error) { return document.Encode(p) }

// Pretty returns the text of p for people.
func Pretty(p Profile) ([]byte, error) { return document.Pretty(p) }

// Complete returns the profile n with every member that it leaves out taken from
// [Default], so that a profile written before a member existed still opens. The
// default is that of the system that n names, or else of system.
func Complete(n document.Node, system unit.System) (document.Node, error) {
	if s, ok := n.Get("system"); ok && s.Kind == document.String {
		system = unit.System(s.Text)
	}
	whole, err := document.Tree(Default(system))
	if err != nil {
		return n, err
	}
	return fill(n, whole), nil
}

// fill adds to the object n what stands in whole and not in n, object by object.
func fill(n, whole document.Node) document.Node {
	if n.Kind != document.Object {
		return n
	}
	n.Kids = append([]document.Node(nil), n.Kids...)
	for _, d := range whole.Kids {
		i := index(n.Kids, d.Key)
		switch {
		case i < 0:
			n.Kids = append(n.Kids, d)
		case d.Kind == document.Object:
			n.Kids[i] = fill(n.Kids[i], d)
		}
	}
	return n
}

func index(members []document.Node, key string) int {
	for i, m := range members {
		if m.Key == key {
			return i
		}
	}
	return -1
}

// Set returns p with the field at path, such as "covers.pocket", set to the JSON text
// value. null leaves open what may be left open. The error is a [Fault], a
// *document.Error, or says that there is no such path.
func Set(p Profile, path, value string) (Profile, error) {
	r, ok := find(path)
	if !ok {
		return p, errors.New("shop profile: there is no field " + path + nearest(path))
	}
	next := p
	if err := read(value, r.at(&next)); err != nil {
		return p, err
	}
	if faults := Check(next); len(faults) > 0 && faults[0].Path == path {
		return p, faults[0]
	}
	return next, nil
}

// read reads one value into the field that at points to.
func read(value string, at any) error {
	if o, ok := at.(*document.Opt[unit.Length]); ok {
		if strings.TrimSpace(value) == "null" {
			*o = document.Opt[unit.Length]{}
			return nil
		}
		o.Known = true
		return read(value, &o.Value)
	}
	if l, ok := at.(*[]unit.Length); ok {
		*l = nil
	}
	return document.Decode([]byte(value), at)
}

// nearest lists the fields of the group that path names, for a message.
func nearest(path string) string {
	group, _, _ := strings.Cut(path, ".")
	var names []string
	for _, r := range rows() {
		if strings.HasPrefix(r.Path, group+".") {
			names = append(names, r.Path)
		}
	}
	if names == nil {
		return ""
	}
	return "; there are " + strings.Join(names, ", ")
}
