package wall

import (
	"math"
	"math/bits"
	"slices"

	"ledgewright/engine/module"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// The polygons here are simple: no side crosses another. They need not be convex. Their
// sense does not matter.

// side returns the sign of (b − a) × (c − a): +1 when c lies left of the way from a to
// b, 0 when it lies on the line. It is exact.
func side(a, b, c module.XY) int {
	return compare(int64(b.X-a.X), int64(c.Y-a.Y), int64(b.Y-a.Y), int64(c.X-a.X))
}

// compare returns the sign of a·b − c·d, exactly.
func compare(a, b, c, d int64) int {
	const small = 1 << 31
	if within(a, small) && within(b, small) && within(c, small) && within(d, small) {
		return sign(a*b - c*d)
	}
	h1, l1 := product(a, b)
	h2, l2 := product(c, d)
	switch {
	case h1 != h2:
		return sign2(h1 > h2)
	case l1 != l2:
		return sign2(l1 > l2)
	}
	return 0
}

func within(a, limit int64) bool { return -limit < a && a < limit }

func sign(a int64) int {
	switch {
	case a > 0:
		return 1
	case a < 0:
		return -1
	}
	return 0
}

func sign2(more bool) int {
	if more {
		return 1
	}
	return -1
}

// product returns a·b in 128 bits, two's complement.
func product(a, b int64) (high int64, low uint64) {
	h, l := bits.Mul64(uint64(a), uint64(b))
	// The unsigned product counts a negative factor 2⁶⁴ too high.
	return int64(h) - a>>63&b - b>>63&a, l
}

// meet reports whether two polygons have a point in common, their sides included.
func meet(p, q []module.XY) bool {
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		for j := range q {
			if cross(a, b, q[j], q[(j+1)%len(q)]) {
				return true
			}
		}
	}
	return inside(p[0], q) || inside(q[0], p)
}

// cross reports whether the segments ab and cd have a point in common.
func cross(a, b, c, d module.XY) bool {
	if max(a.X, b.X) < min(c.X, d.X) || max(c.X, d.X) < min(a.X, b.X) ||
		max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	// Their boxes meet, so segments on one line meet as well.
	return side(a, b, c)*side(a, b, d) <= 0 && side(c, d, a)*side(c, d, b) <= 0
}

// inside reports whether a lies in a polygon, by counting the sides that a ray to the
// right crosses. On a side the answer is either.
func inside(a module.XY, p []module.XY) bool {
	in := false
	for i := range p {
		b, c := p[i], p[(i+1)%len(p)]
		if (b.Y > a.Y) == (c.Y > a.Y) {
			continue
		}
		if c.Y < b.Y {
			b, c = c, b
		}
		if side(b, c, a) > 0 {
			in = !in
		}
	}
	return in
}

// apart returns the square of the distance between two polygons that do not meet, in nm².
func apart(p, q []module.XY) float64 {
	return min(corners(p, q), corners(q, p))
}

// corners returns the least square of the distance from a corner of p to a side of q.
func corners(p, q []module.XY) float64 {
	least := math.Inf(1)
	for j := range q {
		a, b := q[j], q[(j+1)%len(q)]
		for _, c := range p {
			least = min(least, toSegment(c, a, b))
		}
	}
	return least
}

// toSegment returns the square of the distance from c to the segment ab.
func toSegment(c, a, b module.XY) float64 {
	ux, uy := float64(b.X-a.X), float64(b.Y-a.Y)
	vx, vy := float64(c.X-a.X), float64(c.Y-a.Y)
	uu := float64(ux*ux) + float64(uy*uy)
	uv := float64(ux*vx) + float64(uy*vy)
	switch {
	case uv <= 0:
		return float64(vx*vx) + float64(vy*vy)
	case uv >= uu:
		vx, vy = float64(c.X-b.X), float64(c.Y-b.Y)
		return float64(vx*vx) + float64(vy*vy)
	}
	x := float64(ux*vy) - float64(uy*vx)
	return x * x / uu
}

// boxApart returns the square of the distance between two boxes, in nm²; 0 if they meet.
func boxApart(a, b module.Box) float64 {
	x := float64(max(a.MinX-b.MaxX, b.MinX-a.MaxX, 0))
	y := float64(max(a.MinY-b.MaxY, b.MinY-a.MaxY, 0))
	return float64(x*x) + float64(y*y)
}

// gap returns the distance between two polygons. Where they overlap it is negative: the
// least distance by which one must move, along x or y, to lie wholly before or behind the
// other at every height that they have in common.
func gap(p, q []module.XY) unit.Length {
	if d, ok := facing(p, q); ok {
		return d
	}
	if !meet(p, q) {
		return unit.Length(math.Round(math.Sqrt(apart(p, q))))
	}
	left, right, _ := reach(p, q, false)
	down, up, _ := reach(p, q, true)
	if deep := min(left, right, down, up); deep > unit.Touch {
		return -deep
	}
	return 0
}

// facing returns the distance between two polygons of which each has its outermost side,
// towards the other, along the same axis, where these sides overlap. The boxes are then
// as far apart as the polygons. Most boards on a wall stand so.
func facing(p, q []module.XY) (unit.Length, bool) {
	a, b := boxOf(p), boxOf(q)
	switch {
	case b.MinX > a.MaxX && sidesMeet(p, q, a.MaxX, b.MinX, false):
		return b.MinX - a.MaxX, true
	case a.MinX > b.MaxX && sidesMeet(p, q, a.MinX, b.MaxX, false):
		return a.MinX - b.MaxX, true
	case b.MinY > a.MaxY && sidesMeet(p, q, a.MaxY, b.MinY, true):
		return b.MinY - a.MaxY, true
	case a.MinY > b.MaxY && sidesMeet(p, q, a.MinY, b.MaxY, true):
		return a.MinY - b.MaxY, true
	}
	return 0, false
}

// sidesMeet reports whether the corners of p at the place atP along x (y when upright)
// and those of q at atQ reach to a common height. The corners at an outermost place that
// follow each other in the polygon bound a side of it.
func sidesMeet(p, q []module.XY, atP, atQ unit.Length, upright bool) bool {
	lo1, hi1, ok1 := sideAt(p, atP, upright)
	lo2, hi2, ok2 := sideAt(q, atQ, upright)
	return ok1 && ok2 && lo1 <= hi2 && lo2 <= hi1
}

// sideAt returns the heights from where to where one side of p lies at a place.
func sideAt(p []module.XY, at unit.Length, upright bool) (lo, hi unit.Length, ok bool) {
	for i := range p {
		x1, h1 := along(p[i], upright)
		x2, h2 := along(p[(i+1)%len(p)], upright)
		if x1 == at && x2 == at {
			return min(h1, h2), max(h1, h2), true
		}
	}
	return 0, 0, false
}

// reach returns how far p must move backwards, and how far forwards, until it lies wholly
// before or behind q at every height that they have in common: along x, or along y when
// upright is true. A negative distance says that p lies there already, with that much
// between them. With no height in common to speak of both are 0, and ok is false.
//
// Between two heights at which no corner lies, the sides are straight and the distance is
// a convex function of the height, so it is greatest at one of the two.
func reach(p, q []module.XY, upright bool) (back, forth unit.Length, ok bool) {
	lo, hi, ok := common(p, q, upright)
	if !ok {
		return 0, 0, false
	}
	heights := between(p, lo, hi, upright, make([]unit.Length, 0, 16))
	heights = between(q, lo, hi, upright, heights)
	rank.Up(heights)
	heights = slices.Compact(heights)
	b, f := math.Inf(-1), math.Inf(-1)
	for i := range len(heights) - 1 {
		p1, p2, okP := extent(p, heights[i], heights[i+1], upright)
		q1, q2, okQ := extent(q, heights[i], heights[i+1], upright)
		if !okP || !okQ {
			continue
		}
		b = max(b, p1.hi-q1.lo, p2.hi-q2.lo)
		f = max(f, q1.hi-p1.lo, q2.hi-p2.lo)
	}
	if math.IsInf(b, -1) {
		return 0, 0, false
	}
	return unit.Length(math.Ceil(b)), unit.Length(math.Ceil(f)), true
}

// common returns the heights that two polygons have in common, and whether there are any
// to speak of.
func common(p, q []module.XY, upright bool) (lo, hi unit.Length, ok bool) {
	a, b := boxOf(p), boxOf(q)
	if upright {
		lo, hi = max(a.MinX, b.MinX), min(a.MaxX, b.MaxX)
	} else {
		lo, hi = max(a.MinY, b.MinY), min(a.MaxY, b.MaxY)
	}
	return lo, hi, hi-lo > unit.Touch
}

// between appends the heights of the corners of p from lo to hi, these two included.
func between(p []module.XY, lo, hi unit.Length, upright bool, to []unit.Length) []unit.Length {
	for _, c := range p {
		if _, h := along(c, upright); lo < h && h < hi {
			to = append(to, h)
		}
	}
	return append(to, lo, hi)
}

// along returns a point's place along the way of [reach], and its height across it.
func along(c module.XY, upright bool) (at, height unit.Length) {
	if upright {
		return c.Y, c.X
	}
	return c.X, c.Y
}

type span struct{ lo, hi float64 }

// extent returns from where to where p reaches just above the height lo and just below
// hi. No corner may lie between the two.
func extent(p []module.XY, lo, hi unit.Length, upright bool) (atLo, atHi span, ok bool) {
	atLo = span{math.Inf(1), math.Inf(-1)}
	atHi = atLo
	for i := range p {
		x1, h1 := along(p[i], upright)
		x2, h2 := along(p[(i+1)%len(p)], upright)
		if h1 > h2 {
			x1, h1, x2, h2 = x2, h2, x1, h1
		}
		if h1 > lo || h2 < hi {
			continue
		}
		atLo.take(on(x1, h1, x2, h2, lo))
		atHi.take(on(x1, h1, x2, h2, hi))
		ok = true
	}
	return atLo, atHi, ok
}

func (s *span) take(x float64) { s.lo, s.hi = min(s.lo, x), max(s.hi, x) }

// on returns where the line from (x1, h1) to (x2, h2) is at the height h.
func on(x1, h1, x2, h2, h unit.Length) float64 {
	switch h {
	case h1:
		return float64(x1)
	case h2:
		return float64(x2)
	}
	return float64(x1) + float64(float64(x2-x1)*(float64(h-h1)/float64(h2-h1)))
}
