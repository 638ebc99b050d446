package link

import (
	"slices"

	"ledgewright/engine/document"
)

// A shop profile travels as its difference from one of the default profiles of the day on
// which the format was made. They stand in profile1.go and never change, whatever the
// defaults become: a link made with other defaults is a little longer, and still says the
// same.
//
// A difference is an object with up to three members: "set", the members that the profile
// has otherwise or in addition; "in", the objects in which it differs, as differences;
// "not", the names of members that it has not.

// profileBases is the number of profiles to differ from.
const profileBases = 2

// baseProfile returns one of the profiles to differ from.
func baseProfile(i int) document.Node {
	text := metricProfile1
	if i == 1 {
		text = inchProfile1
	}
	n, _ := document.Parse([]byte(text))
	return n
}

// profileText returns the profile from which n differs least, and the difference as
// canonical text; empty when there is none.
func profileText(n document.Node) (base int, text string) {
	for i := range profileBases {
		d := ""
		if diff, differs := differing(baseProfile(i), n); differs {
			b, _ := diff.Canonical()
			d = string(b)
		}
		if i == 0 || len(d) < len(text) {
			base, text = i, d
		}
	}
	return base, text
}

// profileNode returns the profile with a difference from a base.
func profileNode(base int, text string) (document.Node, bool) {
	n := baseProfile(base)
	if text == "" {
		return n, true
	}
	diff, err := document.Parse([]byte(text))
	if err != nil {
		return n, false
	}
	return apply(n, diff), true
}

// differing returns how the object b differs from the object a, and whether it does.
func differing(a, b document.Node) (document.Node, bool) {
	var set, in, not []document.Node
	for _, k := range b.Kids {
		old, ok := a.Get(k.Key)
		switch {
		case ok && same(old, k):
		case ok && old.Kind == document.Object && k.Kind == document.Object:
			d, _ := differing(old, k)
			in = append(in, d.With(k.Key))
		default:
			set = append(set, k)
		}
	}
	for _, k := range a.Kids {
		if _, ok := b.Get(k.Key); !ok {
			not = append(not, document.TextNode(k.Key))
		}
	}
	out := document.ObjectNode()
	if set != nil {
		out.Kids = append(out.Kids, document.ObjectNode(set...).With("set"))
	}
	if in != nil {
		out.Kids = append(out.Kids, document.ObjectNode(in...).With("in"))
	}
	if not != nil {
		out.Kids = append(out.Kids, document.ArrayNode(not...).With("not"))
	}
	return out, len(out.Kids) > 0
}

// apply returns the object n with a difference.
func apply(n, diff document.Node) document.Node {
	not, _ := diff.Get("not")
	for _, k := range not.Kids {
		n = n.Without(k.Text)
	}
	set, _ := diff.Get("set")
	for _, k := range set.Kids {
		n = replaced(n, k)
	}
	in, _ := diff.Get("in")
	for _, d := range in.Kids {
		old, _ := n.Get(d.Key)
		n = replaced(n, apply(old, d).With(d.Key))
	}
	return n
}

// replaced returns the object n with the member k.
func replaced(n, k document.Node) document.Node {
	kids := slices.Clone(n.Kids)
	i := slices.IndexFunc(kids, func(m document.Node) bool { return m.Key == k.Key })
	if i < 0 {
		n.Kids = append(kids, k)
		return n
	}
	kids[i] = k
	n.Kids = kids
	return n
}

// same reports whether two values have the same canonical text.
func same(a, b document.Node) bool {
	x, errX := a.Canonical()
	y, errY := b.Canonical()
	return errX == nil && errY == nil && string(x) == string(y)
}
