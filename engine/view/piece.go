package view

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/rank"
)

// Boards that are let into each other (a rail into a divider, a divider into a housing
// that stops short of the front) share wood: in the plan their outlines overlap. What of a
// side lies inside the other board is then no surface at all. Nor is what lies on a side of
// the other board that faces it, such as a divider's end part in its housing. Both are cut
// away, so that no two faces cross and all of them can be ordered.

// pieces appends what is left of a side outside the other boards of its module: the side
// itself, where it runs into none. Boards of a chain that are all as wide only touch.
func (s *scene) pieces(to []face, f face) []face {
	if s.plain {
		return append(to, f)
	}
	out, whole := []face{f}, true
	for i := range s.solids {
		u := &s.solids[i]
		if i == f.solid || !u.box.Grown(near).Meets(boxOf(f.a, f.b).Grown(near)) {
			continue
		}
		var next []face
		for _, g := range out {
			left, cut := u.outside(g)
			next, whole = append(next, left...), whole && !cut
		}
		out = next
	}
	if whole {
		return append(to, f)
	}
	for i := range out {
		out[i].part = i + 1
	}
	return append(to, out...)
}

// isPlain reports whether all boards are of the chain and stand at one depth.
func (s *scene) isPlain() bool {
	for i := range s.solids {
		v := &s.solids[i]
		if v.b.Role != board.Chain || v.t0 != s.solids[0].t0 || v.t1 != s.solids[0].t1 {
			return false
		}
	}
	return true
}

// outside cuts away what of a side lies inside a solid, and reports whether that was any
// of it.
func (u *solid) outside(f face) (out []face, cut bool) {
	from, to := max(f.t0, u.t0), min(f.t1, u.t1)
	in := u.inside(f.a, f.b)
	if to-from <= near || len(in) == 0 {
		return []face{f}, false
	}
	add := func(a, b, t0, t1 float64) {
		if b-a > 1e-9 && t1-t0 > near {
			g := f
			d := sub(f.b, f.a)
			g.a, g.b, g.t0, g.t1 = plus(f.a, d, a), plus(f.a, d, b), t0, t1
			out = append(out, g)
		}
	}
	add(0, 1, f.t0, from)
	last := 0.0
	for _, r := range in {
		add(last, r[0], from, to)
		last = r[1]
	}
	add(last, 1, from, to)
	add(0, 1, to, f.t1)
	return out, true
}

// inside returns the parts of a–b, as shares of it, that lie inside the outline by more
// than a touch, or on a side of it that runs the other way.
func (u *solid) inside(a, b point) (out [][2]float64) {
	cuts := append(make([]float64, 0, 4), 0, 1)
	d := sub(b, a)
	for i := range u.ring {
		p, q := side(u.ring, i)
		e := sub(q, p)
		det := cross(d, e)
		if math.Abs(det) < near*length(d) { // along it: its ends are where it may begin to touch
			for _, c := range [...]point{p, q} {
				if t := dot(sub(c, a), d) / dot(d, d); t > 0 && t < 1 {
					cuts = append(cuts, t)
				}
			}
			continue
		}
		t, k := cross(sub(p, a), e)/det, cross(sub(p, a), d)/det
		if t > 0 && t < 1 && k >= 0 && k <= 1 {
			cuts = append(cuts, t)
		}
	}
	rank.Up(cuts)
	for i := 1; i < len(cuts); i++ {
		if m := plus(a, d, (cuts[i]+cuts[i-1])/2); cuts[i]-cuts[i-1] < 1e-9 || !u.holds(m) && !u.meets(m, d) {
			continue
		}
		if n := len(out); n > 0 && out[n-1][1] == cuts[i-1] {
			out[n-1][1] = cuts[i]
			continue
		}
		out = append(out, [2]float64{cuts[i-1], cuts[i]})
	}
	return out
}

// meets reports whether a point lies on a side of the outline that runs against d.
func (u *solid) meets(q, d point) bool {
	for i := range u.ring {
		a, b := side(u.ring, i)
		e := direct(a, b)
		if dot(d, e) < 0 && math.Abs(cross(d, e)) < near*length(d) && math.Abs(cross(e, sub(q, a))) < near && dot(e, sub(q, a)) > 0 && dot(e, sub(q, b)) < 0 {
			return true
		}
	}
	return false
}

// holds reports whether a point lies inside the outline by more than a touch.
func (u *solid) holds(q point) bool {
	in := false
	for i := range u.ring {
		a, b := side(u.ring, i)
		if d := direct(a, b); cross(d, sub(q, a)) < near && cross(d, sub(q, a)) > -near && dot(d, sub(q, a)) > -near && dot(d, sub(q, b)) < near {
			return false
		}
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
