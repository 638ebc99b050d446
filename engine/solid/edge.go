package solid

import (
	"ledgewright/engine/board"
	"ledgewright/engine/rank"
)

// A maker finds the surface of one board.
type maker struct {
	b      *board.Board
	o      Options
	planes []plane
	bodies []body // the wood first
	others []int
	edges  []edge
	keys   map[[3]int]int
	places []Vec
}

// An edge goes from one corner to another along the boundary of a face.
type edge struct{ class, from, to int }

// A line is where two planes meet.
type line struct {
	p, q    int
	at, dir Vec
	forward bool // face p has the edge along dir, face q against it
}

// A stop is where a plane ends an edge.
type stop struct {
	t     float64
	plane int
}

// within finds the edges between two planes of one body.
func (m *maker) within() {
	for i := range m.bodies {
		k := &m.bodies[i]
		m.neighbours(i, i)
		for _, pair := range k.pairs {
			l, ok := m.line(pair[0], pair[1])
			l.forward = i == 0
			if ok {
				m.trace(l, i, i)
			}
		}
	}
}

// between finds the edges between planes of two bodies.
func (m *maker) between() {
	for j := range m.bodies {
		for i := range j {
			if m.meet(i, j) {
				m.neighbours(i, j)
				m.cross(i, j)
			}
		}
	}
}

func (m *maker) cross(i, j int) {
	x, y := &m.bodies[i], &m.bodies[j]
	for p := x.first; p < x.last; p++ {
		if i == 0 && m.clear(y, p) {
			continue
		}
		for q := y.first; q < y.last; q++ {
			if l, ok := m.line(p, q); ok {
				l.forward = i > 0
				m.trace(l, i, j)
			}
		}
	}
}

// clear reports whether a body stays off a plane of the wood.
func (m *maker) clear(k *body, p int) bool {
	l := &m.planes[p]
	for _, q := range k.corners {
		if l.n.Dot(q) > l.d-2*touch {
			return false
		}
	}
	return true
}

// meet reports whether the boxes of two bodies come together.
func (m *maker) meet(i, j int) bool {
	x, y := &m.bodies[i], &m.bodies[j]
	return x.lo.U <= y.hi.U+touch && y.lo.U <= x.hi.U+touch &&
		x.lo.V <= y.hi.V+touch && y.lo.V <= x.hi.V+touch &&
		x.lo.W <= y.hi.W+touch && y.lo.W <= x.hi.W+touch
}

// neighbours lists the cuts that may end an edge of two bodies.
func (m *maker) neighbours(i, j int) {
	m.others = m.others[:0]
	for k := 1; k < len(m.bodies); k++ {
		if k != i && k != j && m.meet(k, i) && m.meet(k, j) {
			m.others = append(m.others, k)
		}
	}
}

// line returns where two planes meet; none where they are parallel.
func (m *maker) line(p, q int) (line, bool) {
	a, b := &m.planes[p], &m.planes[q]
	d := a.n.Cross(b.n)
	size := d.Dot(d)
	if size < parallel*parallel {
		return line{}, false
	}
	at := b.n.Cross(d).scaled(a.moved/size).Add(d.Cross(a.n), b.moved/size)
	return line{p: p, q: q, at: at, dir: d}, true
}

// trace adds what of a line is an edge: the part on both bodies' surfaces, inside the
// wood, outside the other cuts.
//
// Which way it runs follows from keeping the face on its left. With n outward normals of
// the bodies and e = n_p × n_q: on an edge of the wood face p has it along e; where a
// cut's face meets one of its own, against e; where the wood's face p meets a cut's q,
// against; where the faces of two cuts meet, along.
func (m *maker) trace(l line, i, j int) {
	lo, hi, ok := m.clip(l, i, stop{-1e9, -1}, stop{1e9, -1})
	if ok && j != i {
		lo, hi, ok = m.clip(l, j, lo, hi)
	}
	if ok && i > 0 {
		lo, hi, ok = m.clip(l, 0, lo, hi)
	}
	if !ok {
		return
	}
	left := [][2]stop{{lo, hi}}
	for _, k := range m.others {
		if lo, hi, ok := m.clip(l, k, stop{-1e9, -1}, stop{1e9, -1}); ok {
			left = without(left, lo, hi)
		}
	}
	for _, s := range left {
		m.emit(l, s[0].plane, s[1].plane)
	}
}

// clip returns the part of a line between two stops that lies in a body.
func (m *maker) clip(l line, k int, lo, hi stop) (_, _ stop, ok bool) {
	for i := m.bodies[k].first; i < m.bodies[k].last; i++ {
		if i == l.p || i == l.q {
			continue
		}
		p := &m.planes[i]
		rate, room := p.n.Dot(l.dir), p.moved-p.n.Dot(l.at)
		switch {
		case rate > 1e-12:
			if t := room / rate; t < hi.t {
				hi = stop{t, i}
			}
		case rate < -1e-12:
			if t := room / rate; t > lo.t {
				lo = stop{t, i}
			}
		case room < 0:
			return lo, hi, false
		}
	}
	return lo, hi, lo.t < hi.t
}

// without takes a stretch out of others.
func without(all [][2]stop, lo, hi stop) (out [][2]stop) {
	for _, s := range all {
		if hi.t <= s[0].t || lo.t >= s[1].t {
			out = append(out, s)
			continue
		}
		if lo.t > s[0].t {
			out = append(out, [2]stop{s[0], lo})
		}
		if hi.t < s[1].t {
			out = append(out, [2]stop{hi, s[1]})
		}
	}
	return out
}

// emit adds an edge to both its faces.
func (m *maker) emit(l line, from, to int) {
	a, b := m.corner(l.p, l.q, from), m.corner(l.p, l.q, to)
	if !l.forward {
		a, b = b, a
	}
	m.edges = append(m.edges, edge{m.planes[l.p].class, a, b}, edge{m.planes[l.q].class, b, a})
}

// corner returns the corner of three planes, where they truly are.
func (m *maker) corner(p, q, r int) int {
	key := [3]int{p, q, r}
	rank.Up(key[:])
	if i, ok := m.keys[key]; ok {
		return i
	}
	a, b, c := &m.planes[key[0]], &m.planes[key[1]], &m.planes[key[2]]
	bc := b.n.Cross(c.n)
	at := bc.scaled(a.d).Add(c.n.Cross(a.n), b.d).Add(a.n.Cross(b.n), c.d).scaled(1 / a.n.Dot(bc))
	if m.keys == nil {
		m.keys = map[[3]int]int{}
	}
	m.keys[key] = len(m.places)
	m.places = append(m.places, at)
	return len(m.places) - 1
}
