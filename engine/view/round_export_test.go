package view

import "math"

// A Sheet is a face as it is drawn in the round.
type Sheet struct {
	ID     string
	Normal [3]float64
	D      float64
	Loops  [][][3]float64 // on the wall
	Seen   [][][2]float64 // in the picture
}

// Sheets returns the faces that a camera sees in the order they are drawn, how near the
// eye a place of the picture is on the plane of a face, and how often faces lay in a ring.
func Sheets(u *Pulled, c Camera) (out []Sheet, near func(s *Sheet, x, y float64) float64, rings int) {
	s := u.sight(c)
	for _, f := range s.order() {
		out = append(out, s.shown(f))
	}
	near = func(f *Sheet, x, y float64) float64 {
		from, way := s.eye.ray(x, y)
		n := spot{f.Normal[0], f.Normal[1], f.Normal[2]}
		return (f.D - n.dot(from)) / n.dot(way)
	}
	return out, near, s.rings
}

// shown returns a face with where it is seen.
func (s *sight) shown(f *sheet) Sheet {
	t := Sheet{ID: f.part.id + "/" + itoa(f.face) + "/" + itoa(f.piece), Normal: [3]float64{f.n.x, f.n.y, f.n.z}, D: f.d}
	for _, loop := range f.loops {
		var at [][3]float64
		var seen [][2]float64
		for _, m := range loop {
			q := s.eye.see(m.spot)
			at = append(at, [3]float64{m.x, m.y, m.z})
			seen = append(seen, [2]float64{q.X, q.Y})
		}
		t.Loops, t.Seen = append(t.Loops, at), append(t.Seen, seen)
	}
	return t
}

// ray returns where the ray through a place of the picture starts and its direction away
// from the eye, a unit vector.
func (e *eye) ray(x, y float64) (from, way spot) {
	at := e.middle.plus(e.right, x).plus(e.up, y)
	if e.parallel {
		return at.plus(e.toward, e.far), spot{}.plus(e.toward, -1)
	}
	way = at.minus(e.at)
	return e.at, spot{}.plus(way, 1/way.size())
}

// Bodies counts the bodies that are ordered, and the parts that they come from: as many
// where nothing is let into another. Plates that go with their board count for neither.
func Bodies(u *Pulled) (bodies, parts int) {
	for _, g := range u.groups {
		for i := range g.bodies {
			if p := g.bodies[i].outer[0].part; p.b != nil || p.shift.z == 0 {
				bodies++
			}
		}
	}
	for _, p := range u.round.parts {
		if p.b != nil || p.shift.z == 0 {
			parts++
		}
	}
	return bodies, parts
}

// Gap returns how far apart the nearest two boards are, at least: by the plane that parts
// them best.
func Gap(u *Pulled) float64 {
	least := math.Inf(1)
	for _, g := range u.groups {
		for _, p := range g.pairs {
			a, b := &g.bodies[p.a], &g.bodies[p.b]
			if a.outer[0].part.b == nil || b.outer[0].part.b == nil {
				continue
			}
			best := 0.0
			for _, f := range p.planes {
				_, below := a.hull.along(f)
				above, _ := b.hull.along(f)
				best = max(best, above-below)
			}
			least = min(least, best)
		}
	}
	return least
}

// All returns every face of every part where it is now, whole, seen or not.
func All(u *Pulled, c Camera) (out []Sheet) {
	s := u.sight(c)
	for _, p := range u.round.parts {
		by := spot{}.plus(p.shift, u.share)
		for _, all := range [...][]sheet{movedSheets(p.outer, by, 0), movedSheets(p.inner, by, 0)} {
			for i := range all {
				out = append(out, s.shown(&all[i]))
			}
		}
	}
	return out
}
