package panel

import (
	"slices"

	"ledgewright/engine/drawing"
)

// groups are the groups of the last picture, with the items that they show: most stay as
// they are when something is changed, and their nodes with them.
type groups struct {
	box     drawing.Box
	evening bool
	of      map[string]keptGroup
}

type keptGroup struct {
	items []drawing.Item
	grain []bool
	node  Node
}

// next returns a sink for the next picture, which has these groups to offer where it is as
// large and lit alike: where an item comes to depends on the whole picture's box.
func (g *groups) next(box drawing.Box, evening bool) keepingSink {
	s := keepingSink{keeping: groups{box, evening, make(map[string]keptGroup, len(g.of))}}
	if g.box == box && g.evening == evening {
		s.had = g.of
	}
	return s
}

// A keepingSink takes a picture's elements as nodes, and groups as they were where they show
// the same.
type keepingSink struct {
	nodeSink
	had     map[string]keptGroup
	keeping groups
	asked   string // key of the group that is written now
}

// Keep puts in the group of the last picture if it shows the same.
func (t *keepingSink) Keep(key string, items []drawing.Item, grain []bool) bool {
	was, ok := t.had[key]
	if ok && slices.Equal(was.grain, grain) && sameItems(was.items, items) {
		t.keeping.of[key] = was
		t.put(was.node)
		return true
	}
	t.keeping.of[key] = keptGroup{items: items, grain: grain}
	t.asked = key
	return false
}

func sameItems(a, b []drawing.Item) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !drawing.Same(&a[i], &b[i]) {
			return false
		}
	}
	return true
}

// Open begins an element.
func (t *keepingSink) Open(tag, key string, attrs []drawing.Attr) {
	t.nodeSink.Open(tag, key, attrs)
	if g, ok := t.keeping.of[key]; ok && key == t.asked {
		g.node = t.stack[len(t.stack)-1]
		t.keeping.of[key] = g
		t.asked = ""
	}
}
