package mesh

// rim is half the width over which a fill fades at its edge, in pixels.
const rim = 0.5

// area fills the path at hand by the even-odd rule, as long as its parts do not cross
// each other: a part inside another is a hole in it. finish is called for each vertex;
// its opacity is then the share that the rim leaves of it.
func (m *Mesh) area(finish func(*Vertex)) {
	for i := range m.paths.parts {
		if !m.hole(i) {
			m.island(i, finish)
		}
	}
}

// hole reports whether a part lies inside an odd number of others.
func (m *Mesh) hole(i int) bool {
	n := 0
	for k := range m.paths.parts {
		if k != i && inside(m.paths.part(k), m.paths.part(i)[0]) {
			n++
		}
	}
	return n%2 == 1
}

// holeOf reports whether part k is a hole right in part i.
func (m *Mesh) holeOf(i, k int) bool {
	if k == i || !m.hole(k) || !inside(m.paths.part(i), m.paths.part(k)[0]) {
		return false
	}
	for j := range m.paths.parts { // not with another part between them
		if j != i && j != k && !m.hole(j) && inside(m.paths.part(j), m.paths.part(k)[0]) && inside(m.paths.part(i), m.paths.part(j)[0]) {
			return false
		}
	}
	return true
}

// island fills a part with its holes.
func (m *Mesh) island(i int, finish func(*Vertex)) {
	if len(m.paths.part(i)) < 3 {
		return
	}
	m.ears.begin()
	m.border(m.paths.part(i), 1, finish)
	for k := range m.paths.parts {
		if len(m.paths.part(k)) > 2 && len(m.paths.parts) > 1 && m.holeOf(i, k) {
			m.border(m.paths.part(k), -1, finish)
		}
	}
	m.Indices = m.ears.clip(m.Indices)
}

// border adds the vertices of a ring, those where the fill is whole and those where it is
// gone, and the rim between them. The ring is turned so that the fill is on the same side
// of an outer ring (side 1) and of a hole (side -1).
func (m *Mesh) border(points []xy, side float64, finish func(*Vertex)) {
	m.ring = append(m.ring[:0], points...)
	if signed(m.ring)*side < 0 {
		for i, k := 0, len(m.ring)-1; i < k; i, k = i+1, k-1 {
			m.ring[i], m.ring[k] = m.ring[k], m.ring[i]
		}
	}
	n := len(m.ring)
	first := uint32(len(m.Vertices))
	alpha := m.current.ColorA
	m.inner = m.inner[:0]
	for i, p := range m.ring {
		out := corner(m.ring[(i+n-1)%n], p, m.ring[(i+1)%n])
		in := p.plus(out, -rim)
		m.inner = append(m.inner, in)
		a := m.add(in, 0, 0)
		finish(&m.Vertices[a])
		m.current.ColorA = 0
		b := m.add(p.plus(out, rim), 0, 0)
		m.current.ColorA = alpha
		finish(&m.Vertices[b])
	}
	for i := range m.ring {
		a, b := first+uint32(2*i), first+uint32(2*((i+1)%n))
		m.quad(a, a+1, b+1, b)
	}
	m.ears.ring(m.inner, first)
}

// sharpest is how far the rim may go out at a sharp corner, in widths of the rim.
const sharpest = 4

// corner returns which way, and how far for a rim of 1, a corner q of a ring p q r moves
// when both its sides move outwards.
func corner(p, q, r xy) xy {
	a, b := normal(p, q), normal(q, r)
	both := xy{a.x + b.x, a.y + b.y}
	l := both.length() // twice the cosine of half the turn
	if l < 1e-9 {
		return xy{}
	}
	return xy{}.plus(both, min(2/l, sharpest)/l)
}

// normal returns the unit vector to the right of p–q as it is seen with y up.
func normal(p, q xy) xy {
	d := q.minus(p)
	l := d.length()
	if l == 0 {
		return xy{}
	}
	return xy{d.y / l, -d.x / l}
}

// signed returns twice the area of a ring, positive when it turns left with y up.
func signed(ring []xy) float64 {
	sum := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += p.x*q.y - p.y*q.x
	}
	return sum
}

// inside reports whether a point lies in a ring, by the even-odd rule.
func inside(ring []xy, p xy) bool {
	in := false
	for i, c := range ring {
		b := ring[(i+len(ring)-1)%len(ring)]
		if (c.y > p.y) != (b.y > p.y) && p.x < b.x+(p.y-b.y)/(c.y-b.y)*(c.x-b.x) {
			in = !in
		}
	}
	return in
}
