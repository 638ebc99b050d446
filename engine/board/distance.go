package board

import "math"

// distance returns how far two bodies are apart, 0 where they meet, in millimetres.
//
// Bodies that stand along v are a plane figure times a stretch of v, so the nearest
// points are found in the plane and along v on their own. A round cut whose axis lies
// in the plane is no such product; for it the method of Gilbert, Johnson and Keerthi
// (IEEE Journal of Robotics and Automation 4, 1988) is used.
func distance(a, b *body) float64 {
	if a.form == leaning || b.form == leaning {
		return nearest(a, b)
	}
	along := max(0, b.v0-a.v1, a.v0-b.v1)
	return math.Hypot(along, flatDistance(a, b))
}

// flatDistance is the distance of two figures in the plane.
func flatDistance(a, b *body) float64 {
	switch {
	case a.form == pin && b.form == pin:
		return max(0, a.from.sub(b.from).size()-a.radius-b.radius)
	case a.form == pin:
		return max(0, outside(b.quad, a.from)-a.radius)
	case b.form == pin:
		return max(0, outside(a.quad, b.from)-b.radius)
	}
	return quadDistance(a.quad, b.quad)
}

// outside returns the distance from p to a convex quadrangle, 0 inside.
func outside(q [4]vec, p vec) float64 {
	near, left, right := math.Inf(1), false, false
	for i, a := range q {
		b := q[(i+1)%4]
		near = min(near, toSegment(p, a, b))
		side := b.sub(a).cross(p.sub(a))
		left, right = left || side > 0, right || side < 0
	}
	if left != right {
		return 0
	}
	return near
}

// toSegment returns the distance from p to the straight line from a to b.
func toSegment(p, a, b vec) float64 {
	d := b.sub(a)
	size := d.dot(d)
	if size == 0 {
		return p.sub(a).size()
	}
	k := min(max(p.sub(a).dot(d)/size, 0), 1)
	return p.sub(a.add(d.scale(k))).size()
}

// quadDistance returns the distance of two convex quadrangles, 0 where they overlap.
func quadDistance(a, b [4]vec) float64 {
	if !apart(a, b) && !apart(b, a) {
		return 0
	}
	near := math.Inf(1)
	for i := range a {
		for j := range b {
			near = min(near, toSegment(a[i], b[j], b[(j+1)%4]), toSegment(b[j], a[i], a[(i+1)%4]))
		}
	}
	return near
}

// apart reports whether a side of a separates it from b.
func apart(a, b [4]vec) bool {
	centre := mid(mid(a[0], a[2]), mid(a[1], a[3]))
	for i, p := range a {
		side := a[(i+1)%4].sub(p)
		inside := side.cross(centre.sub(p))
		if inside == 0 {
			continue
		}
		clear := true
		for _, q := range b {
			clear = clear && side.cross(q.sub(p))*inside <= 0
		}
		if clear {
			return true
		}
	}
	return false
}

// A point is a place in the board's frame, in millimetres.
type point struct{ u, v, w float64 }

func (a point) sub(b point) point           { return point{a.u - b.u, a.v - b.v, a.w - b.w} }
func (a point) add(b point) point           { return point{a.u + b.u, a.v + b.v, a.w + b.w} }
func (a point) scale(k float64) point       { return point{a.u * k, a.v * k, a.w * k} }
func (a point) dot(b point) float64         { return float64(a.u*b.u) + float64(a.v*b.v) + float64(a.w*b.w) }
func (a point) size() float64               { return math.Sqrt(a.dot(a)) }
func (a point) flat() vec                   { return vec{a.u, a.w} }
func (a point) at(b point, k float64) point { return a.add(b.sub(a).scale(k)) }

func (a point) cross(b point) point {
	return point{
		float64(a.v*b.w) - float64(a.w*b.v),
		float64(a.w*b.u) - float64(a.u*b.w),
		float64(a.u*b.v) - float64(a.v*b.u),
	}
}

// support returns the point of a body that lies farthest along d.
func (k *body) support(d point) point {
	out := point{v: k.v0}
	if d.v > 0 {
		out.v = k.v1
	}
	flat := d.flat()
	switch k.form {
	case pin:
		out.u, out.w = k.from.u, k.from.w
		if n := flat.size(); n > 0 {
			out.u, out.w = out.u+k.radius*flat.u/n, out.w+k.radius*flat.w/n
		}
		return out
	case leaning:
		return k.leaningSupport(d)
	}
	best := k.quad[0]
	for _, p := range k.quad[1:] {
		if p.dot(flat) > best.dot(flat) {
			best = p
		}
	}
	out.u, out.w = best.u, best.w
	return out
}

// leaningSupport is support for a cylinder whose axis lies in the plane.
func (k *body) leaningSupport(d point) point {
	axis := k.to.sub(k.from)
	end := k.from
	if axis.dot(d.flat()) > 0 {
		end = k.to
	}
	side := axis.across().scale(1 / axis.size())
	x, v := side.dot(d.flat()), d.v
	out := point{end.u, (k.v0 + k.v1) / 2, end.w}
	if n := math.Hypot(x, v); n > 0 {
		out.v += k.radius * v / n
		out.u += k.radius * x / n * side.u
		out.w += k.radius * x / n * side.w
	}
	return out
}

// nearest returns the distance of two bodies by walking to the point nearest to the
// origin in the set of all differences a − b. It stops when no difference lies nearer
// by more than one part in 10¹⁰, or after 100 steps.
func nearest(a, b *body) float64 {
	to := a.support(point{1, 0, 0}).sub(b.support(point{-1, 0, 0}))
	simplex := make([]point, 0, 4)
	for range 100 {
		size := to.dot(to)
		if size < 1e-18 {
			return 0
		}
		next := a.support(to.scale(-1)).sub(b.support(to))
		if size-to.dot(next) <= 1e-10*size {
			return math.Sqrt(size)
		}
		simplex = append(simplex, next)
		to, simplex = nearestOf(simplex)
		if len(simplex) == 4 {
			return 0
		}
	}
	return math.Sqrt(to.dot(to))
}

// nearestOf returns the point of a simplex nearest to the origin, and the corners that
// it hangs on; all four when the origin lies inside.
func nearestOf(s []point) (point, []point) {
	switch len(s) {
	case 1:
		return s[0], s
	case 2:
		return nearestOnSegment(s[0], s[1], s)
	case 3:
		p, keep := nearestOnTriangle(s[0], s[1], s[2])
		return p, append(s[:0], keep...)
	}
	best, found := point{}, []point(nil)
	for i := range s {
		a, b, c := s[(i+1)%4], s[(i+2)%4], s[(i+3)%4]
		normal := b.sub(a).cross(c.sub(a))
		here, there := normal.dot(a.scale(-1)), normal.dot(s[i].sub(a))
		if here*there > 0 {
			continue
		}
		if p, keep := nearestOnTriangle(a, b, c); found == nil || p.dot(p) < best.dot(best) {
			best, found = p, keep
		}
	}
	if found == nil {
		return point{}, s
	}
	return best, append(s[:0], found...)
}

func nearestOnSegment(a, b point, s []point) (point, []point) {
	d := b.sub(a)
	k := -a.dot(d) / d.dot(d)
	switch {
	case !(k > 0):
		return a, append(s[:0], a)
	case k >= 1:
		return b, append(s[:0], b)
	}
	return a.at(b, k), append(s[:0], a, b)
}

// nearestOnTriangle follows Ericson, Real-Time Collision Detection (2005), section
// 5.1.5, for the origin.
func nearestOnTriangle(a, b, c point) (point, []point) {
	ab, ac := b.sub(a), c.sub(a)
	d1, d2 := -ab.dot(a), -ac.dot(a)
	if d1 <= 0 && d2 <= 0 {
		return a, []point{a}
	}
	d3, d4 := -ab.dot(b), -ac.dot(b)
	if d3 >= 0 && d4 <= d3 {
		return b, []point{b}
	}
	vc := float64(d1*d4) - float64(d3*d2)
	if vc <= 0 && d1 >= 0 && d3 <= 0 {
		return a.at(b, d1/(d1-d3)), []point{a, b}
	}
	d5, d6 := -ab.dot(c), -ac.dot(c)
	if d6 >= 0 && d5 <= d6 {
		return c, []point{c}
	}
	vb := float64(d5*d2) - float64(d1*d6)
	if vb <= 0 && d2 >= 0 && d6 <= 0 {
		return a.at(c, d2/(d2-d6)), []point{a, c}
	}
	va := float64(d3*d6) - float64(d5*d4)
	if va <= 0 && d4 >= d3 && d5 >= d6 {
		return b.at(c, (d4-d3)/((d4-d3)+(d5-d6))), []point{b, c}
	}
	n := va + vb + vc
	return a.add(ab.scale(vb / n)).add(ac.scale(vc / n)), []point{a, b, c}
}
