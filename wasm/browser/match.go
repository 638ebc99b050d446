package browser

import (
	"slices"

	"ledgewright/wasm/panel"
)

// patchKids turns the kids of a node into others.
func (t *Tree) patchKids(o *node, now []panel.Node) {
	matched := match(o.kids, now)
	if matched == nil {
		for i, k := range o.kids {
			t.patch(k, now[i])
		}
		return
	}
	kept := make([]bool, len(o.kids))
	for _, m := range matched {
		if m >= 0 {
			kept[m] = true
		}
	}
	for i, k := range o.kids {
		if !kept[i] {
			t.forget(k)
			k.el.Remove()
		}
	}
	o.kids = t.arrange(o, now, matched)
}

// arrange patches, makes and moves kids, from the last to the first so that the element
// to stand before is always there.
func (t *Tree) arrange(o *node, now []panel.Node, matched []int) []*node {
	stays := staying(matched, slices.IndexFunc(o.kids, func(k *node) bool { return k.hot }))
	kids := make([]*node, len(now))
	var next Element
	for i := len(now) - 1; i >= 0; i-- {
		if matched[i] < 0 {
			kids[i] = t.create(now[i], o)
		} else {
			kids[i] = o.kids[matched[i]]
			t.patch(kids[i], now[i])
		}
		if !stays[i] {
			o.el.InsertBefore(kids[i].el, next)
		}
		next = kids[i].el
	}
	return kids
}

// match returns for each new kid the index of the old one that becomes it, −1 for none.
// It returns nil where all keep their places.
func match(was []*node, now []panel.Node) []int {
	n := min(len(was), len(now))
	from := 0
	for from < n && same(was[from], now[from]) {
		from++
	}
	if from == len(was) && from == len(now) {
		return nil
	}
	tail := 0
	for tail < n-from && same(was[len(was)-1-tail], now[len(now)-1-tail]) {
		tail++
	}
	m := matching{was: was, now: now, to: make([]int, len(now)), taken: make([]bool, len(was))}
	for i := range m.to {
		m.to[i] = -1
	}
	for i := range from {
		m.take(i, i)
	}
	for i := range tail {
		m.take(len(was)-1-i, len(now)-1-i)
	}
	m.keyed(from, len(was)-tail, len(now)-tail)
	m.unkeyed(from, len(was)-tail, len(now)-tail)
	return m.to
}

// same reports whether an old kid can become a new one.
func same(o *node, n panel.Node) bool {
	return o.is.Key == n.Key && alike(o, n)
}

// alike reports whether an element can become that of a node, keys apart.
func alike(o *node, n panel.Node) bool {
	return o.is.Tag == n.Tag && o.is.SVG == n.SVG && o.sort == sortOf(n)
}

// A matching finds old kids for new ones.
type matching struct {
	was   []*node
	now   []panel.Node
	to    []int
	taken []bool
}

func (m *matching) take(old, new int) { m.to[new], m.taken[old] = old, true }

// keyed matches kids by their keys. Of two with one key the first is meant.
func (m *matching) keyed(from, wasEnd, nowEnd int) {
	var at map[string]int
	for i := from; i < wasEnd; i++ {
		if k := m.was[i].is.Key; k != "" {
			if at == nil {
				at = map[string]int{}
			}
			if _, twice := at[k]; !twice {
				at[k] = i
			}
		}
	}
	for i := from; i < nowEnd; i++ {
		k := m.now[i].Key
		if old, ok := at[k]; ok && k != "" && !m.taken[old] && alike(m.was[old], m.now[i]) {
			m.take(old, i)
		}
	}
}

// unkeyed matches what has no key: each with the next old one of its tag. The one with
// the focus, if it was passed over, takes the first place that it can.
func (m *matching) unkeyed(from, wasEnd, nowEnd int) {
	next := from
	for i := from; i < nowEnd; i++ {
		if m.now[i].Key != "" || m.to[i] >= 0 {
			continue
		}
		for j := next; j < wasEnd; j++ {
			if !m.taken[j] && same(m.was[j], m.now[i]) {
				m.take(j, i)
				next = j + 1
				break
			}
		}
	}
	for j := from; j < wasEnd; j++ {
		if m.was[j].hot && !m.taken[j] && m.was[j].is.Key == "" {
			for i := from; i < nowEnd; i++ {
				if m.to[i] < 0 && same(m.was[j], m.now[i]) {
					m.take(j, i)
					return
				}
			}
		}
	}
}

// staying says which new kids need not be moved: a longest rising run of old indices,
// through the old kid that is pinned where one is (−1: none).
func staying(to []int, pinned int) []bool {
	stays := make([]bool, len(to))
	at := -1
	if pinned >= 0 {
		at = slices.Index(to, pinned)
	}
	if at < 0 {
		rising(to, 0, len(to), -1, int(^uint(0)>>1), stays)
		return stays
	}
	stays[at] = true
	rising(to, 0, at, -1, pinned, stays)
	rising(to, at+1, len(to), pinned, int(^uint(0)>>1), stays)
	return stays
}

// rising marks a longest rising run of to[from:end] with values above low and below
// high. It keeps, for each length, the run that ends lowest (patience sorting).
func rising(to []int, from, end, low, high int, stays []bool) {
	var ends []int // for each length, the place in to of the run's last value
	before := make([]int, end)
	for i := from; i < end; i++ {
		if to[i] <= low || to[i] >= high {
			continue
		}
		n, _ := slices.BinarySearchFunc(ends, to[i], func(at, v int) int { return to[at] - v })
		before[i] = -1
		if n > 0 {
			before[i] = ends[n-1]
		}
		if n == len(ends) {
			ends = append(ends, i)
		} else {
			ends[n] = i
		}
	}
	if len(ends) == 0 {
		return
	}
	for i := ends[len(ends)-1]; i >= 0; i = before[i] {
		stays[i] = true
	}
}
