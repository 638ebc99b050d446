package mesh

import "math"

// A line is one quad for each straight piece. Its vertices say how far they are from the
// piece's middle line and along it, and the shader makes coverage of the distance to the
// piece: that gives smooth edges, round joins and round ends at any width. Where two
// pieces meet, both end at the bisector of their corner, on which the two distances are
// equal; so no place is painted twice, and a line that fades has no dots at its joints.

const (
	cutFirst = 1 // Custom3: the piece ends square at its first point
	cutLast  = 2
)

// feather is how far a quad goes beyond its line, for the smooth edge, in pixels.
const feather = 1.0

// A side is one straight piece of a line: its direction and how long it is. One that is not
// there has no length.
type side struct {
	d xy
	l float64
}

func sideOf(p, q xy) side {
	d := q.minus(p)
	l := d.length()
	if l < touch {
		return side{}
	}
	return side{xy{d.x / l, d.y / l}, l}
}

// stroke draws a line along points; m.current says its width and colour.
func (m *Mesh) stroke(points []xy, closed, round bool) {
	n := len(points)
	closed = closed && n > 2
	last := n - 1
	var before side
	if closed {
		last, before = n, sideOf(points[n-1], points[0])
	}
	at := sideOf(points[0], points[1])
	for i := range last {
		var after side
		if closed || i+2 < n {
			after = sideOf(points[(i+1)%n], points[(i+2)%n])
		}
		if at.l > 0 {
			m.piece(points[i], before, at, after, round)
		}
		before, at = at, after
	}
}

// piece draws one side of a line, from p, between its neighbours.
func (m *Mesh) piece(p xy, before, s, after side, round bool) {
	wide := float64(m.current.Custom1) + feather
	first, last := -wide, s.l+wide // along, at the left and the right edge
	fore, aft := 0.0, 0.0          // how much farther along at the left edge, and less far at the right
	k, ok := lean(before, s, wide)
	j, fine := lean(s, after, wide)
	if ok {
		first, fore = 0, k*wide
	}
	if fine {
		last, aft = s.l, -j*wide
	}
	if first+fore > last+aft || first-fore > last-aft {
		first, last, fore, aft = -wide, s.l+wide, 0, 0
	}
	ends := float32(0)
	if !round && before.l == 0 {
		ends += cutFirst
	}
	if !round && after.l == 0 {
		ends += cutLast
	}
	m.current.Custom2, m.current.Custom3 = float32(s.l), ends
	m.quad(m.beside(p, s.d, first+fore, wide, first+fore), m.beside(p, s.d, first-fore, -wide, first-fore),
		m.beside(p, s.d, last-aft, -wide, last-aft), m.beside(p, s.d, last+aft, wide, last+aft))
}

// beside adds a vertex so far along a side and to the left of it; s is what the shader is
// told of how far along.
func (m *Mesh) beside(p, d xy, along, across, s float64) uint32 {
	return m.add(xy{p.x + d.x*along - d.y*across, p.y + d.y*along + d.x*across}, across, s)
}

// steepest is how far along a bisector may lean, for a line's width of 1: a corner that is
// sharper has two overlapping ends.
const steepest = 3

// lean returns how far along the second of two sides the bisector of their corner goes for
// each pixel to the left, which is how far back it goes along the first, and whether they
// can end there.
func lean(a, b side, wide float64) (float64, bool) {
	dot := a.d.x*b.d.x + a.d.y*b.d.y
	if a.l == 0 || b.l == 0 || dot < -0.99 {
		return 0, false
	}
	k := (a.d.x*b.d.y - a.d.y*b.d.x) / (1 + dot)
	return k, math.Abs(k) <= steepest && math.Abs(k)*wide <= min(a.l, b.l)
}

// dashed draws a broken line. unit is the pixels of one unit of dash. The shader makes
// the dashes, of how far along the line a place is: one pass for each dash of the pattern,
// so that a long line of many dots is as light as a whole one.
func (m *Mesh) dashed(points []xy, closed bool, dash []float64, unit float64, round bool) {
	n := len(dash)
	if n%2 == 1 {
		n *= 2 // as SVG has it: an odd pattern is repeated to make it even
	}
	period := 0.0
	for i := range n {
		period += dash[i%len(dash)] * unit
	}
	if !(period > 0.5) {
		m.stroke(points, closed, round)
		return
	}
	m.current.Custom0 = paintDash
	if round {
		m.current.Custom0 = paintDot
	}
	m.current.Custom3 = float32(period)
	at := 0.0
	for i := 0; i < n; i += 2 {
		m.current.Custom2 = float32(dash[i%len(dash)] * unit)
		m.passes(points, closed, -at, period)
		at += (dash[i%len(dash)] + dash[(i+1)%len(dash)]) * unit
	}
}

// passes draws one dash of a pattern along a line; s is how far along it is where the line
// begins.
func (m *Mesh) passes(points []xy, closed bool, s, period float64) {
	n := len(points)
	last := n - 1
	if closed {
		last = n
	}
	for i := range last {
		p, at := points[i], sideOf(points[i], points[(i+1)%n])
		if from, to := m.visible(p, at.d, at.l); from < to {
			wide := float64(m.current.Custom1) + feather
			first := s + from
			first -= math.Floor(first/period) * period // small numbers, where the screen is far along a line
			end := first + to - from
			m.quad(m.beside(p, at.d, from, wide, first), m.beside(p, at.d, from, -wide, first), m.beside(p, at.d, to, -wide, end), m.beside(p, at.d, to, wide, end))
		}
		s += at.l
	}
}

// visible returns from where to where along a line it can be on the screen, with room for
// its width.
func (m *Mesh) visible(p, d xy, l float64) (from, to float64) {
	margin := float64(m.current.Custom1) + 2
	from, to = 0, l
	for _, a := range [...]struct{ p, d, size float64 }{{p.x, d.x, m.cam.width}, {p.y, d.y, m.cam.height}} {
		if math.Abs(a.d) < 1e-12 {
			if a.p < -margin || a.p > a.size+margin {
				return l, l
			}
			continue
		}
		s, t := (-margin-a.p)/a.d, (a.size+margin-a.p)/a.d
		from, to = max(from, min(s, t)), min(to, max(s, t))
	}
	if from > to {
		return l, l
	}
	return from, to
}
