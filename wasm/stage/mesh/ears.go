package mesh

import "math"

// ears cuts a ring with holes into triangles by cutting off its ears (G. H. Meisters,
// Polygons have ears, 1975); a hole is joined to the ring by a bridge, and a convex ring
// is a fan.
type ears struct {
	loop []knot
	hole []knot
}

// A knot is a corner of a ring and its vertex.
type knot struct {
	p  xy
	at uint32
}

func (e *ears) begin() { e.loop = e.loop[:0] }

// ring takes a ring, the outer one first. The vertex of its i-th corner is first + 2i.
func (e *ears) ring(points []xy, first uint32) {
	if len(e.loop) == 0 {
		for i, p := range points {
			e.loop = append(e.loop, knot{p, first + uint32(2*i)})
		}
		return
	}
	e.hole = e.hole[:0]
	right := 0
	for i, p := range points {
		e.hole = append(e.hole, knot{p, first + uint32(2*i)})
		if p.x > points[right].x {
			right = i
		}
	}
	e.bridge(right)
}

// bridge joins the hole at hand to the loop, from its corner farthest to the right to the
// nearest corner that it sees.
func (e *ears) bridge(right int) {
	from, best, far := e.hole[right].p, -1, math.Inf(1)
	for i, k := range e.loop {
		if d := math.Hypot(k.p.x-from.x, k.p.y-from.y); d < far && !e.blocked(from, k.p) {
			best, far = i, d
		}
	}
	if best < 0 {
		return // a ring that crosses itself: it stays whole
	}
	n := len(e.hole)
	tail := len(e.loop) - best
	for range n + 2 {
		e.loop = append(e.loop, knot{})
	}
	copy(e.loop[best+n+2:], e.loop[best:best+tail])
	for i := range n + 1 {
		e.loop[best+1+i] = e.hole[(right+i)%n]
	}
}

// blocked reports whether a side of the loop or of the hole lies between two points.
func (e *ears) blocked(p, q xy) bool {
	for _, ring := range [...][]knot{e.loop, e.hole} {
		for i, a := range ring {
			if crosses(p, q, a.p, ring[(i+1)%len(ring)].p) {
				return true
			}
		}
	}
	return false
}

// crosses reports whether two lines cross, by more than a touch at their ends.
func crosses(p, q, a, b xy) bool {
	return turn(p, q, a)*turn(p, q, b) < 0 && turn(a, b, p)*turn(a, b, q) < 0
}

// turn is twice the area of a triangle, positive when it turns left with y up.
func turn(a, b, c xy) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }

// clip appends the triangles of the loop.
func (e *ears) clip(out []uint32) []uint32 {
	if e.convex() {
		for i := 2; i < len(e.loop); i++ {
			out = append(out, e.loop[0].at, e.loop[i-1].at, e.loop[i].at)
		}
		return out
	}
	for len(e.loop) > 3 {
		i := e.ear()
		n := len(e.loop)
		out = append(out, e.loop[(i+n-1)%n].at, e.loop[i].at, e.loop[(i+1)%n].at)
		e.loop = append(e.loop[:i], e.loop[i+1:]...)
	}
	return append(out, e.loop[0].at, e.loop[1].at, e.loop[2].at)
}

func (e *ears) convex() bool {
	n := len(e.loop)
	for i := range e.loop {
		if turn(e.loop[i].p, e.loop[(i+1)%n].p, e.loop[(i+2)%n].p) < -1e-9 {
			return false
		}
	}
	return true
}

// ear returns a corner that can be cut off: one that turns left with no other corner in
// it. Where rounding hides them all it is the first that turns left.
func (e *ears) ear() int {
	n, other := len(e.loop), 0
	for i := range e.loop {
		a, b, c := e.loop[(i+n-1)%n], e.loop[i], e.loop[(i+1)%n]
		if turn(a.p, b.p, c.p) <= 0 {
			continue
		}
		if other = i; e.free(a.p, b.p, c.p) {
			return i
		}
	}
	return other
}

// free reports whether no corner lies in a triangle. Corners that come twice, at the ends
// of a bridge, do not count.
func (e *ears) free(a, b, c xy) bool {
	for _, k := range e.loop {
		if k.p == a || k.p == b || k.p == c {
			continue
		}
		if turn(a, b, k.p) >= 0 && turn(b, c, k.p) >= 0 && turn(c, a, k.p) >= 0 {
			return false
		}
	}
	return true
}
