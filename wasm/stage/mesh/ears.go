package mesh

import "math"

// ears cuts a ring with holes into triangles by cutting off its ears (G. H. Meisters,
// Polygons have ears, 1975); a hole is joined to the ring by a bridge, and a convex ring
// is a fan.
type ears struct {
	loop  []knot
	holes []knot // one after the other
	ends  []int  // of each hole in holes
}

// A knot is a corner of a ring and its vertex.
type knot struct {
	p  xy
	at uint32
}

func (e *ears) begin() { e.loop, e.holes, e.ends = e.loop[:0], e.holes[:0], e.ends[:0] }

// ring takes a ring, the outer one first. The vertex of its i-th corner is first + 2i.
func (e *ears) ring(points []xy, first uint32) {
	to := &e.loop
	if len(e.loop) > 0 {
		to = &e.holes
	}
	for i, p := range points {
		*to = append(*to, knot{p, first + uint32(2*i)})
	}
	if to == &e.holes {
		e.ends = append(e.ends, len(e.holes))
	}
}

func (e *ears) hole(i int) []knot {
	from := 0
	if i > 0 {
		from = e.ends[i-1]
	}
	return e.holes[from:e.ends[i]]
}

// bridge joins a hole to the loop, from its corner farthest to the right to the nearest
// corner that it sees. A hole that sees none stays closed.
func (e *ears) bridge(hole []knot) {
	right := 0
	for i, k := range hole {
		if k.p.x > hole[right].p.x {
			right = i
		}
	}
	from, best, far := hole[right].p, -1, math.Inf(1)
	for i, k := range e.loop {
		if d := k.p.minus(from).length(); d < far && e.facing(i, from) && !e.blocked(from, k.p) {
			best, far = i, d
		}
	}
	if best < 0 {
		return
	}
	n, tail := len(hole), len(e.loop)-best
	for range n + 2 {
		e.loop = append(e.loop, knot{})
	}
	copy(e.loop[best+n+2:], e.loop[best:best+tail])
	for i := range n + 1 {
		e.loop[best+1+i] = hole[(right+i)%n]
	}
}

// facing reports whether a point lies in the angle of a corner of the loop, on the side
// of the fill (J. O'Rourke, Computational geometry in C, 1998, section 1.6.3): a corner
// at the end of a bridge comes twice, and only one of the two faces the point.
func (e *ears) facing(i int, p xy) bool {
	a, b, c := e.corner(i)
	if turn(b, c, a) >= 0 {
		return turn(b, p, a) > 0 && turn(p, b, c) > 0
	}
	return !(turn(b, p, c) >= 0 && turn(p, b, a) >= 0)
}

// blocked reports whether a side of the loop or of a hole lies between two points.
func (e *ears) blocked(p, q xy) bool {
	if across(e.loop, p, q) {
		return true
	}
	for i := range e.ends {
		if across(e.hole(i), p, q) {
			return true
		}
	}
	return false
}

// across reports whether a side of a ring, or a corner of it, lies between two points.
func across(ring []knot, p, q xy) bool {
	for i, a := range ring {
		if crosses(p, q, a.p, ring[(i+1)%len(ring)].p) || between(p, q, a.p) {
			return true
		}
	}
	return false
}

// crosses reports whether two lines cross, by more than a touch at their ends.
func crosses(p, q, a, b xy) bool {
	return turn(p, q, a)*turn(p, q, b) < 0 && turn(a, b, p)*turn(a, b, q) < 0
}

// between reports whether a lies on the line from p to q, at neither end.
func between(p, q, a xy) bool {
	d, e := q.minus(p), a.minus(p)
	along, l := d.x*e.x+d.y*e.y, d.x*d.x+d.y*d.y
	return math.Abs(turn(p, q, a)) <= 1e-9*l && along > 1e-9*l && along < (1-1e-9)*l
}

// turn is twice the area of a triangle, positive when it turns left with y up.
func turn(a, b, c xy) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }

// clip appends the triangles of the loop less its holes.
func (e *ears) clip(out []uint32) []uint32 {
	for i := range e.ends {
		e.bridge(e.hole(i))
	}
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
// it; failing that, one with no corner well inside; where rounding hides those too, the
// smallest that turns left.
func (e *ears) ear() int {
	for _, slack := range [...]float64{0, 1e-7} {
		for i := range e.loop {
			if a, b, c := e.corner(i); turn(a, b, c) > 0 && e.free(a, b, c, slack*turn(a, b, c)) {
				return i
			}
		}
	}
	best, least := 0, math.Inf(1)
	for i := range e.loop {
		if t := turn(e.corner(i)); t > 0 && t < least {
			best, least = i, t
		}
	}
	return best
}

// corner returns a corner of the loop between its neighbours.
func (e *ears) corner(i int) (a, b, c xy) {
	n := len(e.loop)
	return e.loop[(i+n-1)%n].p, e.loop[i].p, e.loop[(i+1)%n].p
}

// free reports whether no corner lies more than slack inside a triangle. Corners that
// come twice, at the ends of a bridge, do not count.
func (e *ears) free(a, b, c xy, slack float64) bool {
	for _, k := range e.loop {
		if k.p == a || k.p == b || k.p == c {
			continue
		}
		if turn(a, b, k.p) >= slack && turn(b, c, k.p) >= slack && turn(c, a, k.p) >= slack {
			return false
		}
	}
	return true
}
