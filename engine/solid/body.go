package solid

import (
	"math"
	"strings"

	"ledgewright/engine/board"
)

// A plane bounds a convex body: n·x <= d in it.
type plane struct {
	n      Vec
	d      float64
	moved  float64 // d as it is when decisions are taken
	body   int
	smooth bool // a facet of something round
	class  int  // faces that lie in one plane and look the same way
}

// A body is a convex polyhedron: the wood, or what a feature takes from it.
type body struct {
	first, last int      // its planes: first <= i < last
	pairs       [][2]int // planes that may share an edge
	lo, hi      Vec
	corners     []Vec
	feature     int // −1: the wood
}

// parallel is the difference up to which two normals are one direction: what rounding
// leaves, not what two angles differ by (a micro-degree is 1.7·10⁻⁸).
const parallel = 1e-9

// plane adds a plane through a place and returns its index. A normal that is that of an
// earlier plane but for rounding becomes the same.
func (m *maker) plane(n, through Vec, smooth bool) int {
	n = n.unit()
	for i := range m.planes {
		o := m.planes[i].n
		switch {
		case n.Sub(o).Size() < parallel:
			n = o
		case n.Add(o, 1).Size() < parallel:
			n = o.scaled(-1)
		}
	}
	m.planes = append(m.planes, plane{n: n, d: n.Dot(through), body: len(m.bodies), smooth: smooth})
	return len(m.planes) - 1
}

// wood adds the wood between the end cuts, less its chamfers and round-overs.
func (m *maker) wood() {
	b := m.b
	start, end := b.Ends()
	t, far := b.Thickness.MM(), b.Width.MM()
	m.plane(Vec{W: -1}, Vec{}, false)
	m.plane(Vec{W: 1}, Vec{W: t}, false)
	m.plane(Vec{V: -1}, Vec{}, false)
	m.plane(Vec{V: 1}, Vec{V: far}, false)
	m.plane(Vec{U: -t, W: (start.AtB - start.AtA).MM()}, Vec{U: start.AtA.MM()}, false)
	m.plane(Vec{U: t, W: -(end.AtB - end.AtA).MM()}, Vec{U: end.AtA.MM()}, false)
	for i := range b.Features {
		m.arris(&b.Features[i], start, end)
	}
	k := body{last: len(m.planes), feature: -1, lo: Vec{U: min(start.Least().MM(), 0)}, hi: Vec{max(end.Greatest().MM(), b.Length.MM()), far, t}}
	for i := range k.last {
		for j := range i {
			k.pairs = append(k.pairs, [2]int{j, i})
		}
	}
	m.bodies = append(m.bodies, k)
}

// arris cuts the wood along an arris. The wood stays convex, so a chamfer is one more
// plane of it and a round-over as many as its chords.
func (m *maker) arris(f *board.Feature, start, end board.Cut) {
	side, face, ok := strings.Cut(f.Arris, "-")
	if f.Kind != board.Chamfer && f.Kind != board.RoundOver || !ok || f.Size <= 0 {
		return
	}
	tip, along, down := m.wedge(board.Face(side), face == "b", start, end)
	size := f.Size.MM()
	if f.Kind == board.Chamfer {
		m.plane(along.Add(down, 1).scaled(-1), tip.Add(along, size), false)
		return
	}
	half := along.Add(down, 1).unit()
	sin := half.Cross(along).Size()
	centre := tip.Add(half, size/sin)
	across := half.Cross(along.Cross(down).unit()) // square to half, in the section
	turn := 2 * math.Acos(min(sin, 1))             // between the normals of the two sides
	n := chords(size, turn, m.o.chord())
	for i := range n {
		s, c := math.Sincos(turn * ((float64(i)+0.5)/float64(n) - 0.5))
		out := half.scaled(-c).Add(across, s)
		m.plane(out, centre.Add(out, size*math.Cos(turn/float64(2*n))), true)
	}
}

// wedge returns the arris as its section sees it: where it is, and the directions from it
// along the face and along the edge or end.
func (m *maker) wedge(side board.Face, onB bool, start, end board.Cut) (tip, along, down Vec) {
	t, far := m.b.Thickness.MM(), m.b.Width.MM()
	if side == board.Start || side == board.End {
		cut, way := start, 1.0
		if side == board.End {
			cut, way = end, -1
		}
		a, b := Vec{U: cut.AtA.MM()}, Vec{U: cut.AtB.MM(), W: t}
		if onB {
			a, b = b, a
		}
		return a, Vec{U: way}, b.Sub(a).unit()
	}
	along, down = Vec{V: 1}, Vec{W: 1}
	if side == board.Front {
		tip.V, along.V = far, -1
	}
	if onB {
		tip.W, down.W = t, -1
	}
	return tip, along, down
}

// chords returns how many chords stand for an arc of a radius so that none leaves it by
// more than tol: r·(1 − cos(φ/2)) <= tol for each.
func chords(r, turn, tol float64) int {
	if tol >= r {
		return 1
	}
	return max(int(math.Ceil(turn/(2*math.Acos(1-tol/r))-1e-9)), 1)
}

// Facets returns how many flat sides stand for a bore of a radius, so that no side lies
// nearer to the axis than the radius less the chord: at least 8, and a multiple of 4.
func Facets(radius, chord float64) int {
	n := max(chords(radius, 2*math.Pi, chord), 8)
	return (n + 3) / 4 * 4
}

// removed adds what a feature takes away, unless it only touches the wood from outside.
func (m *maker) removed(r board.Removed) {
	first := len(m.planes)
	k := body{first: first, feature: r.Feature}
	if r.Radius == 0 {
		m.prism(&k, r)
	} else {
		m.cylinder(&k, r)
	}
	k.last = len(m.planes)
	k.box()
	if m.outside(&k) {
		m.planes = m.planes[:first]
		return
	}
	m.bodies = append(m.bodies, k)
}

func (k *body) box() {
	k.lo, k.hi = k.corners[0], k.corners[0]
	for _, q := range k.corners[1:] {
		k.lo, k.hi = least(k.lo, q), greatest(k.hi, q)
	}
}

// outside reports whether a body lies beyond one of the planes of the wood.
func (m *maker) outside(k *body) bool {
	w := &m.bodies[0]
	for i := w.first; i < w.last; i++ {
		if m.depth(k, i) < touch {
			return true
		}
	}
	return false
}

// depth returns how far a body reaches behind a plane.
func (m *maker) depth(k *body, i int) float64 {
	p := &m.planes[i]
	deep := math.Inf(-1)
	for _, q := range k.corners {
		deep = max(deep, p.d-p.n.Dot(q))
	}
	return deep
}

func (m *maker) prism(k *body, r board.Removed) {
	ring := make([]Vec, 4)
	for i, q := range r.Section {
		ring[i] = Vec{U: q[0], V: r.V0, W: q[1]}
	}
	m.extrude(k, ring, Vec{V: r.V1 - r.V0}, false)
}

// cylinder adds the prism that stands for a round cut: its corners lie on the circle.
func (m *maker) cylinder(k *body, r board.Removed) {
	centre := Vec{U: r.From[0], V: r.V0, W: r.From[1]}
	axis := Vec{V: r.V1 - r.V0}
	x, y := Vec{U: 1}, Vec{W: 1}
	if !r.AlongV {
		centre.V = (r.V0 + r.V1) / 2
		axis = Vec{U: r.To[0] - r.From[0], W: r.To[1] - r.From[1]}
		x, y = Vec{V: 1}, Vec{V: 1}.Cross(axis.unit())
	}
	n := Facets(r.Radius, m.o.chord())
	ring := make([]Vec, n)
	for i := range ring {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		ring[i] = centre.Add(x, r.Radius*c).Add(y, r.Radius*s)
	}
	m.extrude(k, ring, axis, true)
}

// extrude adds the prism over a flat convex ring.
func (m *maker) extrude(k *body, ring []Vec, axis Vec, round bool) {
	n := len(ring)
	mid := Vec{}
	for _, q := range ring {
		mid = mid.Add(q, 1/float64(n))
	}
	base, top := k.first, k.first+1
	m.plane(axis.scaled(-1), ring[0], false)
	m.plane(axis, ring[0].Add(axis, 1), false)
	for i, q := range ring {
		next := ring[(i+1)%n]
		out := next.Sub(q).Cross(axis)
		if out.Dot(q.Sub(mid)) < 0 {
			out = out.scaled(-1)
		}
		m.plane(out, q, round)
		side := k.first + 2 + i
		k.pairs = append(k.pairs, [2]int{base, side}, [2]int{top, side}, [2]int{side, k.first + 2 + (i+1)%n})
	}
	for _, q := range ring {
		k.corners = append(k.corners, q, q.Add(axis, 1))
	}
}
