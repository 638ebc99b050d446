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

// stroke draws a line along points; m.current says its width and colour.
func (m *Mesh) stroke(points []xy, closed, round bool) {
	n := len(points)
	last := n - 1
	if closed && n > 2 {
		last = n
	}
	for i := range last {
		p, q := points[i], points[(i+1)%n]
		s := piece{p: p, q: q}
		if closed && n > 2 || i > 0 {
			s.before, s.bound[0] = points[(i+n-1)%n], true
		}
		if closed && n > 2 || i+2 < n {
			s.after, s.bound[1] = points[(i+2)%n], true
		}
		m.piece(s, round)
	}
}

// A piece of a line goes from p to q; before and after are its neighbours' other ends,
// where it has them.
type piece struct {
	p, q, before, after xy
	bound               [2]bool
}

func (m *Mesh) piece(s piece, round bool) {
	d := s.q.minus(s.p)
	l := d.length()
	if l < touch {
		return
	}
	d = xy{d.x / l, d.y / l}
	wide := float64(m.current.Custom1) + feather
	first, last := [2]float64{-wide, -wide}, [2]float64{l + wide, l + wide} // along, at the left and the right edge
	if s.bound[0] {
		if k, ok := lean(s.p.minus(s.before), d, wide, l); ok {
			first = [2]float64{k * wide, -k * wide}
		}
	}
	if s.bound[1] {
		if k, ok := lean(s.after.minus(s.q), d, wide, l); ok {
			last = [2]float64{l + k*wide, l - k*wide}
		}
	}
	if first[0] > last[0] || first[1] > last[1] {
		first, last = [2]float64{-wide, -wide}, [2]float64{l + wide, l + wide}
	}
	m.current.Custom2, m.current.Custom3 = float32(l), 0
	if !round && !s.bound[0] {
		m.current.Custom3 += cutFirst
	}
	if !round && !s.bound[1] {
		m.current.Custom3 += cutLast
	}
	m.quad(m.beside(s.p, d, first[0], wide), m.beside(s.p, d, first[1], -wide), m.beside(s.p, d, last[1], -wide), m.beside(s.p, d, last[0], wide))
}

// beside adds a vertex so far along a piece and to the left of it.
func (m *Mesh) beside(p, d xy, along, across float64) uint32 {
	return m.add(p.plus(d, along).plus(xy{-d.y, d.x}, across), across, along)
}

// steepest is how far along a bisector may lean, for a line's width of 1: a corner that is
// sharper has two overlapping ends.
const steepest = 3

// lean returns how far along a piece of direction d the bisector with a neighbour goes for
// each pixel across, and whether the piece, l long, can end there.
func lean(neighbour, d xy, wide, l float64) (float64, bool) {
	n := neighbour.length()
	if n < touch {
		return 0, false
	}
	e := xy{neighbour.x / n, neighbour.y / n}
	dot := d.x*e.x + d.y*e.y
	if dot < -0.99 {
		return 0, false
	}
	k := (-e.y*d.x + e.x*d.y) / (1 + dot)
	return k, math.Abs(k) <= steepest && math.Abs(k)*wide <= min(l, n)
}

// dashed draws a broken line. unit is the pixels of one unit of dash. What cannot be seen
// is passed by.
func (m *Mesh) dashed(points []xy, closed bool, dash []float64, unit float64, round bool) {
	w := walk{m: m, dash: dash, unit: unit, round: round}
	for i := range dash {
		w.period += dash[i] * unit
	}
	if len(dash)%2 == 1 {
		w.period *= 2 // as SVG has it: an odd pattern is repeated to make it even
	}
	if !(w.period > 0.5) {
		m.stroke(points, closed, round)
		return
	}
	w.left = dash[0] * unit
	n := len(points)
	if closed {
		n++
	}
	m.dashes = append(m.dashes[:0], points[0])
	for i := 1; i < n; i++ {
		w.line(points[i-1], points[i%len(points)])
	}
	w.flush()
}

// A walk goes along a line and draws its dashes.
type walk struct {
	m      *Mesh
	dash   []float64
	unit   float64
	period float64
	k      int     // of the present dash or gap
	left   float64 // of it
	round  bool
}

func (w *walk) drawing() bool { return w.k%2 == 0 }

func (w *walk) line(p, q xy) {
	d := q.minus(p)
	l := d.length()
	if l < touch {
		return
	}
	d = xy{d.x / l, d.y / l}
	from, to := w.m.visible(p, d, l)
	s := w.skip(p, d, 0, from)
	for s+w.left < l {
		s += w.left
		w.corner(p.plus(d, s))
		w.flush()
		w.next()
		if s > to {
			s = w.skip(p, d, s, l)
		}
		w.m.dashes = append(w.m.dashes[:0], p.plus(d, s))
	}
	w.left -= l - s
	w.corner(q)
}

// skip goes on from s by whole periods, not beyond a place along the line.
func (w *walk) skip(p, d xy, s, beyond float64) float64 {
	n := math.Floor((beyond - s) / w.period)
	if n < 1 {
		return s
	}
	w.flush()
	s += n * w.period
	w.m.dashes = append(w.m.dashes[:0], p.plus(d, s))
	return s
}

func (w *walk) corner(p xy) {
	if w.drawing() {
		w.m.dashes = append(w.m.dashes, p)
	}
}

func (w *walk) flush() {
	if w.drawing() && len(w.m.dashes) > 1 {
		w.m.stroke(w.m.dashes, false, w.round)
	}
	w.m.dashes = w.m.dashes[:0]
}

func (w *walk) next() {
	w.k++
	w.left = w.dash[w.k%len(w.dash)] * w.unit
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
