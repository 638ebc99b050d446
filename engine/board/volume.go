package board

import (
	"math"

	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// Volume returns the volume of the finished wood: the prism between the end cuts less
// what the features take out of it.
//
// A cut that meets no other and lies wholly in the wood is subtracted by its closed
// formula. Cuts that overlap, and cuts that run out of the wood, are taken together:
// their union inside the wood is V = ∫ A(v) dv, with the area A of the union in the
// section at v found exactly. Between the v at which cuts begin and end A is
// constant, unless a round cut or a long arris changes with v; there the integral is
// taken by Gauss's rule of 8 points over each half after v = m + h·sin φ, which makes
// the square roots at both ends smooth. What is left of error is far below a part in 10⁷ of the
// board.
func (b Board) Volume() unit.Volume {
	start, end := b.Ends()
	wood := b.quad(start, end)
	v := area(wood) * b.Width.MM()
	var store [16]body
	bodies := b.bodies(store[:0], start, end)
	group := make([]int, len(bodies))
	for i := range group {
		group[i] = -1
	}
	var s scratch
	for i := range bodies {
		if group[i] < 0 {
			s.gather(bodies, group, i)
			v -= b.removed(&s, wood)
		}
	}
	return unit.Volume(v * 1e-9)
}

// quad returns the section between the end cuts.
func (b *Board) quad(start, end Cut) [4]vec {
	t := b.Thickness
	return [4]vec{place(start.AtA, 0), place(end.AtA, 0), place(end.AtB, t), place(start.AtB, t)}
}

// area returns the area of a convex quadrangle.
func area(q [4]vec) float64 {
	return math.Abs(q[2].sub(q[0]).cross(q[3].sub(q[1]))) / 2
}

// bodies returns the bodies of all features that remove wood from the blank.
func (b *Board) bodies(out []body, start, end Cut) []body {
	for i := range b.Features {
		if k := b.body(&b.Features[i], start, end); k.form != nothing {
			out = append(out, k)
		}
	}
	return out
}

// gather fills group with the bodies that hang together with the first, by their boxes,
// and marks them as taken.
func (s *scratch) gather(bodies []body, taken []int, first int) {
	taken[first] = first
	s.group = append(s.group[:0], &bodies[first])
	for n := 0; n < len(s.group); n++ {
		for j := range bodies {
			if taken[j] < 0 && s.group[n].meetsBox(&bodies[j]) {
				taken[j] = first
				s.group = append(s.group, &bodies[j])
			}
		}
	}
}

// meetsBox reports whether the boxes of two bodies overlap.
func (k *body) meetsBox(o *body) bool {
	return k.v0 < o.v1 && o.v0 < k.v1 &&
		k.lo.u < o.hi.u && o.lo.u < k.hi.u && k.lo.w < o.hi.w && o.lo.w < k.hi.w
}

// removed returns the volume of a group of bodies inside the wood, in mm³.
func (b *Board) removed(s *scratch, wood [4]vec) float64 {
	if len(s.group) == 1 {
		if v, ok := b.alone(wood, s.group[0]); ok {
			return v
		}
	}
	far := b.Width.MM()
	s.steps = append(s.steps[:0], 0, far)
	for _, k := range s.group {
		s.steps = append(s.steps, min(max(k.v0, 0), far), min(max(k.v1, 0), far))
	}
	rank.Up(s.steps)
	sum := 0.0
	for i := range len(s.steps) - 1 {
		if s.steps[i+1] > s.steps[i] {
			sum += b.slab(s, wood, s.steps[i], s.steps[i+1])
		}
	}
	return sum
}

// alone returns the volume of a body by its closed formula, if it lies in the wood.
func (b *Board) alone(wood [4]vec, k *body) (float64, bool) {
	if k.v0 < 0 || k.v1 > b.Width.MM() {
		return 0, false
	}
	switch k.form {
	case prism, leaning:
		for _, p := range k.quad {
			if !holds(wood, p) {
				return 0, false
			}
		}
		if k.form == leaning {
			return math.Pi * k.radius * k.radius * k.to.sub(k.from).size(), true
		}
		return area(k.quad) * (k.v1 - k.v0), true
	case pin:
		if depthIn(wood, k.from) < k.radius {
			return 0, false
		}
		return math.Pi * k.radius * k.radius * (k.v1 - k.v0), true
	case ledge:
		return k.alongArris(wood)
	}
	return 0, false
}

// alongArris returns the volume of a chamfer or round-over from end to end: its
// section times the length of the wood at the section's centroid, which lies s/3 from
// both sides for a chamfer and s·(10 − 3π)/(12 − 3π) for a round-over.
func (k *body) alongArris(wood [4]vec) (float64, bool) {
	t := wood[2].w
	if k.radius > t {
		return 0, false
	}
	section, deep := k.radius*k.radius/2, k.radius/3
	if k.round {
		section, deep = k.radius*k.radius*(1-math.Pi/4), k.radius*(10-3*math.Pi)/(12-3*math.Pi)
	}
	if k.onB {
		deep = t - deep
	}
	from, to := towards(wood[0], wood[3], deep/t), towards(wood[1], wood[2], deep/t)
	return section * (to.u - from.u), true
}

// holds reports whether p lies in the wood, its outline included, within what rounding
// to the nanometre does to a mouth on a slanting end.
func holds(wood [4]vec, p vec) bool { return depthIn(wood, p) >= -2e-6 }

// depthIn returns how far p lies inside the outline, negative outside.
func depthIn(wood [4]vec, p vec) float64 {
	deep := math.Inf(1)
	for i, a := range wood {
		edge := wood[(i+1)%4].sub(a)
		deep = min(deep, edge.cross(p.sub(a))/edge.size())
	}
	return deep
}

// The nodes and weights of Gauss's rule of 8 points on (−1, 1), by symmetry half of
// them: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 25.4.
func gauss8() [4][2]float64 {
	return [4][2]float64{
		{0.183434642495650, 0.362683783378362},
		{0.525532409916329, 0.313706645877887},
		{0.796666477413627, 0.222381034453374},
		{0.960289856497536, 0.101228536290376},
	}
}

// slab returns the volume that the group takes between two neighbouring v.
func (b *Board) slab(s *scratch, wood [4]vec, v0, v1 float64) float64 {
	m, h := (v0+v1)/2, (v1-v0)/2
	var changes bool
	s.flats, changes = b.sections(s.flats[:0], s.group, m)
	if len(s.flats) == 0 {
		return 0
	}
	if !changes {
		return s.union(wood) * (v1 - v0)
	}
	sum := b.half(s, wood, m, h)
	if symmetric(s.group, m) {
		return 2 * sum
	}
	return sum + b.half(s, wood, m, -h)
}

// half returns the volume between m and m + h. At the axis of a round cut, where two
// such cuts of one size cross, A has a corner; that is why a slab is halved.
func (b *Board) half(s *scratch, wood [4]vec, m, h float64) (sum float64) {
	for _, g := range gauss8() {
		for _, x := range [2]float64{1 - g[0], 1 + g[0]} {
			sin, cos := math.Sincos(x * math.Pi / 4)
			s.flats, _ = b.sections(s.flats[:0], s.group, m+float64(h*sin))
			sum += float64(g[1] * cos * s.union(wood))
		}
	}
	return sum * math.Abs(h) * math.Pi / 4
}

// symmetric reports whether every section that changes with v does so evenly about m,
// as about the axis of a round cut.
func symmetric(group []*body, m float64) bool {
	for _, k := range group {
		switch {
		case k.v0 >= m || k.v1 <= m:
		case k.form == ledge, k.form == leaning && math.Abs(k.v0+k.v1-2*m) > 1e-9:
			return false
		}
	}
	return true
}

// union is the area of all flats together inside the wood. Cuts inside one another, such
// as a bore in its pocket, and one cut alone inside the wood need no strips.
func (s *scratch) union(wood [4]vec) float64 {
	left := s.flats[:0]
	for i := range s.flats {
		covered := false
		for j := range s.flats {
			f, o := &s.flats[j], &s.flats[i]
			covered = covered || i != j && f.covers(o) && !(j > i && o.covers(f))
		}
		if !covered {
			left = append(left, s.flats[i])
		}
	}
	if len(left) == 1 && !left[0].less && allIn(wood, left) {
		if left[0].disc {
			return math.Pi * left[0].radius * left[0].radius
		}
		return area(left[0].quad)
	}
	return s.taken(wood, left)
}

// covers reports whether the quadrangle of f has all of o in it. A disc or a hollow
// quadrangle covers nothing that is asked about.
func (f *flat) covers(o *flat) bool {
	if f.disc || f.less || o.less {
		return false
	}
	q := f.quad
	if q[2].sub(q[0]).cross(q[3].sub(q[1])) < 0 {
		q[1], q[3] = q[3], q[1]
	}
	if o.disc {
		return depthIn(q, o.at) >= o.radius
	}
	return holds(q, o.quad[0]) && holds(q, o.quad[1]) && holds(q, o.quad[2]) && holds(q, o.quad[3])
}

// sections appends what each body takes at v and reports whether any of it changes
// with v nearby.
func (b *Board) sections(flats []flat, group []*body, v float64) (_ []flat, changes bool) {
	for _, k := range group {
		if v <= k.v0 || v >= k.v1 {
			continue
		}
		switch k.form {
		case prism:
			flats = append(flats, flat{quad: k.quad})
		case pin:
			flats = append(flats, flat{disc: true, at: k.from, radius: k.radius})
		case fillet:
			flats = append(flats, flat{quad: k.quad, less: true, at: k.from, radius: k.radius})
		case leaning:
			flats, changes = append(flats, k.leaningAt(v)), true
		case ledge:
			flats, changes = append(flats, b.ledgeAt(k, v)), true
		}
	}
	return flats, changes
}

// leaningAt returns the rectangle that a round cut leaves in the section at v.
func (k *body) leaningAt(v float64) flat {
	x := v - (k.v0+k.v1)/2
	share := math.Sqrt(max(0, float64(k.radius*k.radius)-float64(x*x))) / k.radius
	q := k.quad
	from, to := mid(q[0], q[3]), mid(q[1], q[2])
	return flat{quad: [4]vec{towards(from, q[0], share), towards(to, q[1], share), towards(to, q[2], share), towards(from, q[3], share)}}
}

// ledgeAt returns the rectangle that a chamfer or round-over takes at v.
func (b *Board) ledgeAt(k *body, v float64) flat {
	x := v // from the edge
	if k.atFront {
		x = b.Width.MM() - v
	}
	deep := k.radius - x
	if k.round {
		deep = k.radius - math.Sqrt(max(0, float64(k.radius*k.radius)-float64(deep*deep)))
	}
	lo, hi := k.lo, k.hi
	if k.onB {
		lo.w = hi.w - deep
	} else {
		hi.w = lo.w + deep
	}
	return flat{quad: [4]vec{lo, {hi.u, lo.w}, hi, {lo.u, hi.w}}}
}
