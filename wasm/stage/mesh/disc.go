package mesh

import (
	"math"

	"ledgewright/engine/drawing"
)

// A circle is one quad: the shader makes it of the distance to its middle. Marks and
// screws are circles, and in pieces they were a third of a picture.

// circle returns middle and radius of a path that is one circle as [drawing.Circle] makes
// it, in the drawing's millimetres.
func (m *Mesh) circle(path []drawing.Step) (c drawing.Point, r float64, ok bool) {
	if m.one == nil {
		m.one = drawing.Circle(0, 0, 1)
	}
	if len(path) != len(m.one) {
		return c, 0, false
	}
	east, north, west, south := &path[0].P, &path[1].P, &path[2].P, &path[3].P
	c, r = drawing.Point{X: (east.X + west.X) / 2, Y: (north.Y + south.Y) / 2}, (east.X-west.X)/2
	for i := range path {
		s, one := &path[i], &m.one[i]
		switch {
		case s.To != one.To:
			return c, 0, false
		case s.To == 'Z':
		case !onCircle(s.P, one.P, c, r) || s.To == 'C' && !(onCircle(s.P1, one.P1, c, r) && onCircle(s.P2, one.P2, c, r)):
			return c, 0, false
		}
	}
	return c, r, true
}

// onCircle reports whether a point differs by less than anybody sees from where it is on
// the circle of radius 1, once that is moved and enlarged.
func onCircle(p, one, c drawing.Point, r float64) bool {
	return math.Abs(p.X-c.X-r*one.X) <= 1e-6*r && math.Abs(p.Y-c.Y-r*one.Y) <= 1e-6*r
}

// round paints a path if it is a circle with a whole line or none, and reports whether
// it was.
func (m *Mesh) round(it *drawing.Item) bool {
	c, r, ok := m.circle(it.Path)
	if !ok || len(it.Line.Dash) > 0 || m.inks.tone(it.Tone).From != m.inks.tone(it.Tone).To {
		return false
	}
	at, far := m.cam.at(c), r*m.cam.scale
	if it.Tone != "" {
		m.current = Vertex{Custom0: paintDisc, Custom1: float32(far), Custom2: -1}
		m.colour(m.inks.tone(it.Tone).From, opacity(it.Fade))
		m.disc(at, far)
	}
	if it.Line.Width > 0 {
		half := it.Line.Width * m.unit(&it.Line) / 2
		m.current = Vertex{Custom0: paintDisc, Custom1: float32(far), Custom2: float32(half)}
		m.colour(m.inks.tone(it.Line.Tone).From, opacity(it.Fade))
		m.disc(at, far+half)
	}
	return true
}

// disc adds the quad round a circle.
func (m *Mesh) disc(at xy, far float64) {
	far += feather
	var v [4]uint32
	for i, s := range [4]xy{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		v[i] = m.add(at.plus(s, far), s.x*far, s.y*far)
	}
	m.quad(v[0], v[1], v[2], v[3])
}
