package view

import (
	"strconv"
	"strings"

	"ledgewright/engine/drawing"
)

// A sight is one camera's look at a Pulled.
type sight struct {
	*Pulled
	eye  eye
	open []bool // by hollow: a side that it opens in looks at the eye
	out  []*sheet

	rings int // how often faces had to be ordered one by one
}

// level3 is how far the eye must be off a plane to be on one side of it, mm.
const level3 = 1e-6

func (u *Pulled) sight(c Camera) *sight {
	s := &sight{Pulled: u, eye: c.eye(u.middle, u.radius), open: make([]bool, len(u.caves))}
	for i, mouths := range u.caves {
		for _, f := range mouths {
			s.open[i] = s.open[i] || s.eye.side(f.n, f.d) > 0
		}
	}
	return s
}

// order lists the faces that look at the eye, from back to front.
func (s *sight) order() []*sheet {
	boxes := make([]bounds, len(s.groups))
	all := make([]int, len(s.groups))
	for i, g := range s.groups {
		boxes[i], all[i] = g.box, i
	}
	hides := func(i, j int) (bool, bool) { return s.eye.boxHides(boxes[i], boxes[j]) }
	sorted, ring := toposort(len(boxes), hides)
	for _, i := range sorted {
		s.group(s.groups[i])
	}
	if len(ring) > 0 {
		s.group(s.merge(ring))
	}
	return s.out
}

// boxHides reports whether box a may hide part of b from the eye, and b part of a. Where
// a lies below b along an axis every plane between them parts them, and a hides part of b
// only from below all of these.
func (e *eye) boxHides(a, b bounds) (ab, ba bool) {
	ab, ba = true, true
	for _, n := range [...]spot{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
		if p, q := n.dot(a.hi), n.dot(b.lo); p <= q+apart3 {
			ab, ba = ab && e.side(n, p) < -level3, ba && e.side(n, q) > level3
		}
		if p, q := n.dot(b.hi), n.dot(a.lo); p <= q+apart3 {
			ba, ab = ba && e.side(n, p) < -level3, ab && e.side(n, q) > level3
		}
	}
	return ab, ba
}

// toposort orders things so that each comes after what it may hide; of those that are free
// the first comes first. What lies in a ring, or waits for one, is returned apart.
func toposort(n int, hides func(i, j int) (ij, ji bool)) (out, ring []int) {
	wait := make([]int, n)
	front := make([][]int, n) // what waits for i
	for i := range n {
		for j := range i {
			ij, ji := hides(i, j)
			if ij {
				wait[i]++
				front[j] = append(front[j], i)
			}
			if ji {
				wait[j]++
				front[i] = append(front[i], j)
			}
		}
	}
	done := make([]bool, n)
	for {
		k := -1
		for i := range n {
			if !done[i] && wait[i] == 0 {
				k = i
				break
			}
		}
		if k < 0 {
			break
		}
		done[k] = true
		out = append(out, k)
		for _, i := range front[k] {
			wait[i]--
		}
	}
	for i := range n {
		if !done[i] {
			ring = append(ring, i)
		}
	}
	return out, ring
}

// merge returns groups as one, made once.
func (s *sight) merge(which []int) *group3 {
	return s.made(s.merged, which, func() *group3 {
		g := &group3{box: noBounds()}
		for _, i := range which {
			g.box = g.box.with(s.groups[i].box.lo).with(s.groups[i].box.hi)
			g.bodies = append(g.bodies, s.groups[i].bodies...)
		}
		g.part()
		return g
	})
}

// faces returns the tree over all faces of some bodies of a group, made once.
func (s *sight) faces(g *group3, which []int) *branch {
	if g.rings == nil {
		g.rings = map[string]*group3{}
	}
	return s.made(g.rings, which, func() *group3 {
		var all []sheet
		for _, i := range which {
			all = append(all, g.bodies[i].inner...)
			all = append(all, g.bodies[i].outer...)
		}
		return &group3{tree: grow3(all)}
	}).tree
}

func (s *sight) made(store map[string]*group3, which []int, make func() *group3) *group3 {
	var key strings.Builder
	for _, i := range which {
		key.WriteString(strconv.Itoa(i))
		key.WriteByte(' ')
	}
	g, ok := store[key.String()]
	if !ok {
		g = make()
		store[key.String()] = g
	}
	return g
}

// group appends the faces of a group.
func (s *sight) group(g *group3) {
	windows := make([]drawing.Box, len(g.bodies))
	for i := range g.bodies {
		windows[i] = s.window(&g.bodies[i].hull)
	}
	at := 0
	hides := func(i, j int) (bool, bool) { // j < i, asked in the order of the pairs
		p := &g.pairs[at]
		at++
		if !windows[i].Meets(windows[j]) {
			return false, false
		}
		ji, ij := s.eye.hides(p.planes)
		return ij, ji
	}
	sorted, ring := toposort(len(g.bodies), hides)
	for _, i := range sorted {
		s.body(&g.bodies[i])
	}
	if len(ring) == 0 {
		return
	}
	s.rings++
	s.faces(g, ring).walk(&s.eye, s.visit)
}

// window is the box that a hull takes in the picture.
func (s *sight) window(h *hull) drawing.Box {
	first := true
	var b drawing.Box
	for _, ring := range h.polys {
		for _, q := range ring {
			p := s.eye.see(q)
			if first {
				b, first = drawing.Box{MinX: p.X, MinY: p.Y, MaxX: p.X, MaxY: p.Y}, false
			}
			b = b.With(p)
		}
	}
	return b
}

// hides reports whether the body below all of some planes may hide part of the one above
// them from the eye, and the other way round.
func (e *eye) hides(planes []flat3) (below, above bool) {
	below, above = true, true
	for _, f := range planes {
		d := e.side(f.n, f.d)
		below = below && d < -level3
		above = above && d > level3
	}
	return below, above
}

// body appends what is cut into a body, then its sides.
func (s *sight) body(b *body3) {
	if s.looksInto(b) {
		if b.tree == nil {
			b.tree = grow3(b.inner)
		}
		b.tree.walk(&s.eye, s.visit)
	}
	for i := range b.outer {
		s.visit(&b.outer[i])
	}
}

// looksInto reports whether anything that is cut or let into a body may be seen.
func (s *sight) looksInto(b *body3) bool {
	for i := range b.inner {
		if s.open[b.inner[i].cave] {
			return true
		}
	}
	return false
}

// visit appends a face that may be seen.
func (s *sight) visit(f *sheet) {
	if s.eye.side(f.n, f.d) > level3 && (f.cave < 0 || s.open[f.cave]) {
		s.out = append(s.out, f)
	}
}
