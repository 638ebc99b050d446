package view

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/light"
	"ledgewright/engine/module"
)

// Shadows fall away from the daylight, downwards; all in millimetres.
const (
	shadowAside = 30.0
	shadowDown  = 44.0
	shadowSoft  = 20.0
)

// shadows draws the shadow of each module on the wall, one shape a module, so that
// boards that meet do not darken each other's.
func (p *painter) shadows(scenes []scene) {
	aside, fade := -shadowAside*p.light, 0.74
	if p.o.Evening {
		aside, fade = 0, 0.62
	}
	for i := range scenes {
		s := &scenes[i]
		n := 0
		for k := range s.solids {
			n += len(s.solids[k].ring) + 1
		}
		path := p.storage(n)[:0]
		for k := range s.solids {
			v := &s.solids[k]
			for n, q := range v.ring {
				q = p.back(q, v.t1)
				to := byte('L')
				if n == 0 {
					to = 'M'
				}
				path = append(path, drawing.Step{To: to, P: point{X: q.X + aside, Y: q.Y - shadowDown}})
			}
			path = append(path, drawing.Close())
		}
		it := p.path(drawing.LayerShadow, s.id, "shade", drawing.Line{}, path)
		it.ID, it.Fade, it.Soft = s.id+"/shadow", fade, shadowSoft
	}
}

// The wash of a strip is drawn to where it has fallen to shownLux on the wall, by package
// light, where nothing is in its way: with as much it is a sixth of what a common strip
// has at its brightest, and a picture that shows both has no darker place for it. Nearer
// than leastReach no strip ends. Where a strip's light is not known it reaches as far as
// a common one does. All three are our own choice for the picture, not photometry.
const (
	shownLux   = 100.0
	leastReach = 160.0
	lightReach = 640.0
)

// reach is how far the wash of a straight piece of a strip is drawn.
func (b *beam) reach() float64 {
	if b.strip.Lumens == 0 || b.standOff <= 0 {
		return lightReach
	}
	return max(light.WallReach(b.strip.Lumens, length(sub(b.to, b.from)), b.standOff, b.back, shownLux), leastReach)
}

// lit returns how much lighter a side is in the evening for the strips of its module: all
// of it where a strip lies in it, less and less where one shines on it.
func (s *scene) lit(f face, normal point) float64 {
	m := middle(f.a, f.b)
	best := 0.0
	for _, b := range s.beams() {
		if b.solid == f.solid && dot(b.out, normal) > 0.99 {
			return litFace
		}
		d := sub(m, middle(b.from, b.to))
		far := max(length(d)-length(sub(b.to, b.from))/2, 0)
		if b.solid != f.solid && dot(d, b.out) > 0 && dot(d, normal) < 0 && far < lightReach {
			best = max(best, 0.5*litFace*(1-far/lightReach))
		}
	}
	return best
}

const litFace = 0.62

// A beam is one straight piece of a strip on the wall.
type beam struct {
	id       string
	from, to point
	out      point // the way the light leaves
	back     bool  // from the back edge, on to the wall, both ways
	solid    int
	strip    *board.Strip
	standOff float64 // of the strip from the wall
}

// beams lists the pieces of a module's strips.
func (s *scene) beams() []beam {
	var out []beam
	for i := range s.m.Strips {
		for k := range s.m.Strips[i].Runs {
			run := &s.m.Strips[i].Runs[k]
			b := s.find(run.Board)
			if b < 0 {
				continue
			}
			m := s.beam(s.m.Strips[i].Light+"/"+itoa(k+1), run, b)
			m.strip = &s.m.Strips[i]
			out = append(out, m)
		}
	}
	return out
}

func (s *scene) find(id string) int {
	for i := range s.solids {
		if s.solids[i].b.ID == id {
			return i
		}
	}
	return -1
}

func (s *scene) beam(id string, run *board.StripRun, b int) beam {
	v := &s.solids[b]
	from, off := s.g.Point(v.b.Frame, run.From)
	to, _ := s.g.Point(v.b.Frame, run.To)
	m := beam{id: id, from: xy(from), to: xy(to), solid: b, out: v.across, standOff: off.MM()}
	if run.Face == board.Back || run.Face == board.Front {
		m.back = run.Face == board.Back
		return m
	}
	// on to the surface of the face that the strip looks out of
	w := v.w0 + v.b.Thickness.MM()
	if run.Face == board.FaceA {
		m.out, w = scaled(v.across, -1), v.w0
	}
	m.from = plus(m.from, v.across, w-dot(m.from, v.across))
	m.to = plus(m.to, v.across, w-dot(m.to, v.across))
	return m
}

func xy(q module.XY) point { return point{X: q.X.MM(), Y: q.Y.MM()} }

// washes draws the light on the wall, under the boards.
func (p *painter) washes(scenes []scene) {
	for i := range scenes {
		for _, m := range scenes[i].beams() {
			p.wash(scenes, i, m, m.out, "")
			if m.back {
				p.wash(scenes, i, m, scaled(m.out, -1), "/over")
			}
		}
	}
}

func (p *painter) wash(scenes []scene, i int, m beam, out point, name string) {
	mid := middle(m.from, m.to)
	along := direct(m.from, m.to)
	if !(length(sub(m.to, m.from)) > 1) {
		return
	}
	stop := nearest(scenes, i, m.solid, mid, out)
	far := m.reach()
	reach := min(far, max(2*stop, 0.6*far))
	start := plus(mid, out, 2)
	before := min(0.36*far, nearest(scenes, i, m.solid, start, scaled(along, -1))-length(sub(m.to, m.from))/2)
	after := min(0.36*far, nearest(scenes, i, m.solid, start, along)-length(sub(m.to, m.from))/2)
	it := p.add(drawing.Item{ID: m.id + "/wash" + name, Group: scenes[i].id, Layer: drawing.LayerLight, Kind: drawing.GlowKind})
	it.Glow = drawing.Glow{From: m.from, To: m.to, Toward: out, Reach: reach, Cut: min(stop, far), Before: max(before, 0), After: max(after, 0), Kelvin: m.strip.Kelvin}
}

// nearest returns how far a ray gets from a place on the wall before it meets a board of
// the module other than the one it starts from; 10 m where it meets none.
func nearest(scenes []scene, i, from int, at, d point) float64 {
	best := 1e4
	for k := range scenes[i].solids {
		if k == from {
			continue
		}
		v := &scenes[i].solids[k]
		for n := range v.ring {
			a, b := side(v.ring, n)
			if t, ok := meets(at, d, a, b); ok {
				best = min(best, t)
			}
		}
	}
	return best
}

// meets returns how far along d from at the segment a–b is met.
func meets(at, d, a, b point) (float64, bool) {
	e := sub(b, a)
	det := cross(d, e)
	if math.Abs(det) < 1e-12 {
		return 0, false
	}
	t := cross(sub(a, at), e) / det
	u := cross(sub(a, at), d) / det
	return t, t > 0 && u >= 0 && u <= 1
}

// strips draws each strip as a warm line along the edge it shines over, on top of the
// boards. A strip in a back edge hides behind its board.
func (p *painter) strips(scenes []scene) {
	for i := range scenes {
		for _, m := range scenes[i].beams() {
			if m.back {
				continue
			}
			a, b := plus(m.from, m.out, 1.2*p.px), plus(m.to, m.out, 1.2*p.px)
			it := p.path(drawing.LayerLight, scenes[i].id, "", stroke("strip", 2.8), drawing.Segment(a.X, a.Y, b.X, b.Y))
			it.ID = m.id
		}
	}
}
