package board

import (
	"cmp"
	"math"

	"ledgewright/engine/rank"
)

// The area that several cuts take out of a section of a board, each place counted
// once, is found in strips. The strips run along w; between two neighbouring strip
// edges no corner lies and no two outlines cross. So in each strip the same pieces of
// outline bound the union from end to end, and each piece, a straight line or an arc,
// is integrated in closed form:
//
//	straight:  ∫ (a + k·u) du
//	arc:       ∫ (w₀ ± √(r² − x²)) dx = w₀·x ± ½ (x·√(r² − x²) + r²·asin(x/r))
//
// Nothing is approximated but by rounding.

// A flat is what a body takes out of one section: a convex quadrangle, a disc, or a
// quadrangle less a disc.
type flat struct {
	quad   [4]vec
	at     vec
	radius float64
	disc   bool // the disc alone
	less   bool // the quadrangle less the disc
}

// A curve is a piece of outline as a function of u.
type curve struct {
	from, to float64 // the u between which it runs
	a, k     float64 // straight: w = a + k·u
	at       vec     // arc: centre
	radius   float64 // arc
	sign     float64 // arc: +1 at larger w, −1 at smaller; 0: straight
}

func (c *curve) value(u float64) float64 {
	if c.sign == 0 {
		return c.a + float64(c.k*u)
	}
	x := u - c.at.u
	return c.at.w + float64(c.sign*math.Sqrt(max(0, float64(c.radius*c.radius)-float64(x*x))))
}

// integral returns the integral of the curve from u = l to u = r.
func (c *curve) integral(l, r float64) float64 {
	if c.sign == 0 {
		return (r - l) * c.value((l+r)/2)
	}
	return float64(c.at.w*(r-l)) + float64(c.sign*(c.segment(r)-c.segment(l)))
}

// segment is ∫ √(r² − x²) dx up to u.
func (c *curve) segment(u float64) float64 {
	r := c.radius
	x := min(max(u-c.at.u, -r), r)
	return (float64(x*math.Sqrt(float64(r*r)-float64(x*x))) + float64(r*r*math.Asin(x/r))) / 2
}

// A span is a stretch along w at one u, with the curves that bound it.
type span struct {
	lo, hi   float64
	low, top *curve
}

// A scratch is the storage of one computation of areas, used again from strip to strip
// and from section to section.
type scratch struct {
	group  []*body
	steps  []float64 // along v
	flats  []flat
	curves []curve
	first  []int // where each flat's curves begin
	marks  []float64
	spans  []span
}

// taken returns the area of the union of flats inside the quadrangle wood, in mm².
// Flats that lie in the wood anyway are not clipped by it.
func (s *scratch) taken(wood [4]vec, flats []flat) float64 {
	clipped := !allIn(wood, flats)
	s.curves, s.first = s.curves[:0], s.first[:0]
	if clipped {
		s.curves = appendEdges(s.curves, wood)
	}
	for i := range flats {
		s.first = append(s.first, len(s.curves))
		s.curves = flats[i].appendCurves(s.curves)
	}
	s.first = append(s.first, len(s.curves))
	s.stripEdges()
	sum := 0.0
	for i := range len(s.marks) - 1 {
		l, r := s.marks[i], s.marks[i+1]
		if r-l < 1e-12 {
			continue
		}
		u := (l + r) / 2
		inside, ok := span{lo: math.Inf(-1), hi: math.Inf(1)}, true
		if clipped {
			inside, ok = between(s.curves[:4], u)
		}
		if !ok {
			continue
		}
		s.spans = s.spans[:0]
		for j := range flats {
			s.spans = flats[j].appendSpans(s.spans, s.curves[s.first[j]:s.first[j+1]], u)
		}
		sum += unionOf(s.spans, inside, l, r)
	}
	return sum
}

// allIn reports whether all flats lie in a quadrangle.
func allIn(wood [4]vec, flats []flat) bool {
	w := flat{quad: wood}
	for i := range flats {
		if !w.covers(&flats[i]) {
			return false
		}
	}
	return true
}

// appendEdges appends the four edges of a quadrangle. An edge along w bounds nothing
// and keeps its place with an empty range.
func appendEdges(curves []curve, q [4]vec) []curve {
	for i, p := range q {
		n := q[(i+1)%4]
		if p.u > n.u {
			p, n = n, p
		}
		c := curve{from: p.u, to: n.u, a: p.w}
		if n.u > p.u {
			c.k = (n.w - p.w) / (n.u - p.u)
			c.a = p.w - float64(c.k*p.u)
		}
		curves = append(curves, c)
	}
	return curves
}

func (f *flat) appendCurves(curves []curve) []curve {
	if !f.disc {
		curves = appendEdges(curves, f.quad)
	}
	if f.disc || f.less {
		c := curve{from: f.at.u - f.radius, to: f.at.u + f.radius, at: f.at, radius: f.radius, sign: -1}
		curves = append(curves, c)
		c.sign = 1
		curves = append(curves, c)
	}
	return curves
}

// between returns the stretch between the straight curves at u.
func between(edges []curve, u float64) (span, bool) {
	s := span{lo: math.Inf(1), hi: math.Inf(-1)}
	for i := range edges {
		c := &edges[i]
		if u < c.from || u > c.to || c.from == c.to {
			continue
		}
		w := c.value(u)
		if w < s.lo {
			s.lo, s.low = w, c
		}
		if w > s.hi {
			s.hi, s.top = w, c
		}
	}
	return s, s.low != nil && s.hi > s.lo
}

// appendSpans appends what the flat takes at u.
func (f *flat) appendSpans(spans []span, curves []curve, u float64) []span {
	if f.disc {
		if u <= curves[0].from || u >= curves[0].to {
			return spans
		}
		return append(spans, span{curves[0].value(u), curves[1].value(u), &curves[0], &curves[1]})
	}
	s, ok := between(curves[:4], u)
	if !ok {
		return spans
	}
	if !f.less || u <= curves[4].from || u >= curves[4].to {
		return append(spans, s)
	}
	lo, hi := curves[4].value(u), curves[5].value(u)
	if lo >= s.hi || hi <= s.lo {
		return append(spans, s)
	}
	if lo > s.lo {
		spans = append(spans, span{s.lo, lo, s.low, &curves[4]})
	}
	if hi < s.hi {
		spans = append(spans, span{hi, s.hi, &curves[5], s.top})
	}
	return spans
}

// unionOf returns the area of the union of spans inside one, over the strip from l to r.
func unionOf(spans []span, inside span, l, r float64) (sum float64) {
	if len(spans) > 1 {
		rank.By(spans, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	}
	at := span{hi: math.Inf(-1)} // what has been counted so far ends here
	for _, s := range spans {
		if s.lo < inside.lo {
			s.lo, s.low = inside.lo, inside.low
		}
		if s.hi > inside.hi {
			s.hi, s.top = inside.hi, inside.top
		}
		if s.lo < at.hi {
			s.lo, s.low = at.hi, at.top
		}
		if s.hi > s.lo {
			sum += s.top.integral(l, r) - s.low.integral(l, r)
			at = s
		}
	}
	return sum
}

// stripEdges fills marks with all u at which a curve begins or ends or two curves cross,
// sorted.
func (s *scratch) stripEdges() {
	s.marks = s.marks[:0]
	for i := range s.curves {
		s.marks = append(s.marks, s.curves[i].from, s.curves[i].to)
		for j := range i {
			s.marks = appendCrossings(s.marks, &s.curves[i], &s.curves[j])
		}
	}
	rank.Up(s.marks)
}

// appendCrossings appends the u at which two curves cross, in their common range.
func appendCrossings(marks []float64, a, b *curve) []float64 {
	l, r := max(a.from, b.from), min(a.to, b.to)
	if l >= r {
		return marks
	}
	var u [2]float64
	n := 0
	switch {
	case a.sign == 0 && b.sign == 0:
		if a.k != b.k {
			u[0], n = (b.a-a.a)/(a.k-b.k), 1
		}
	case a.sign != 0 && b.sign != 0:
		u, n = circles(a, b)
	case a.sign != 0:
		u, n = lineCircle(b, a)
	default:
		u, n = lineCircle(a, b)
	}
	for _, x := range u[:n] {
		if x > l && x < r {
			marks = append(marks, x)
		}
	}
	return marks
}

// lineCircle returns where a straight line meets the circle of an arc.
func lineCircle(line, arc *curve) (u [2]float64, n int) {
	k, d := line.k, line.value(arc.at.u)-arc.at.w // w − w₀ = d + k·x
	return quadratic(1+float64(k*k), float64(k*d), float64(d*d)-float64(arc.radius*arc.radius), arc.at.u)
}

// touching is what counts as a line or circle that touches another, mm². Where they touch
// a strip must end as where they cross: halfway between its edges they would be equal, and
// neither above the other.
const touching = 1e-9

// quadratic solves a·x² + 2·b·x + c = 0 and adds from to the solutions.
func quadratic(a, b, c, from float64) (x [2]float64, n int) {
	root := float64(b*b) - float64(a*c)
	if root < -touching {
		return x, 0
	}
	s := math.Sqrt(max(root, 0))
	return [2]float64{from + (-b-s)/a, from + (-b+s)/a}, 2
}

// circles returns the u at which the circles of two arcs meet.
func circles(a, b *curve) (u [2]float64, n int) {
	d := b.at.sub(a.at)
	size := d.dot(d)
	if size == 0 {
		return u, 0
	}
	k := (size + float64(a.radius*a.radius) - float64(b.radius*b.radius)) / (2 * size)
	h := float64(a.radius*a.radius) - float64(k*k*size)
	if h < -touching {
		return u, 0
	}
	side := math.Sqrt(max(h, 0) / size)
	foot := a.at.u + float64(k*d.u)
	return [2]float64{foot - float64(side*d.w), foot + float64(side*d.w)}, 2
}
