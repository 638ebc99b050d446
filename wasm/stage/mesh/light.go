package mesh

import (
	"math"

	"ledgewright/engine/drawing"
)

// cloudReach is how far a soft shape goes beyond its edge, in softnesses: past three
// standard deviations a normal curve has 0.1 % left.
const cloudReach = 3

// clouds paints a path with soft edges: each part as the rectangle of its area that lies
// along its longest side, which a board's outline is but for the slant of its mitres.
func (m *Mesh) clouds(it *drawing.Item) {
	soft := it.Soft * m.cam.scale
	m.current = Vertex{Custom0: paintCloud}
	m.colour(m.inks.tone(it.Tone).From, opacity(it.Fade))
	for i := range m.paths.parts {
		if ring := m.paths.part(i); len(ring) > 2 {
			m.cloud(ring, soft)
		}
	}
}

func (m *Mesh) cloud(ring []xy, soft float64) {
	d := longest(ring)
	e := xy{-d.y, d.x}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		w := p.x*e.x + p.y*e.y
		low, high = min(low, w), max(high, w)
	}
	size := math.Abs(signed(ring)) / 2
	if !(high-low > touch) || !(soft > 0) {
		return
	}
	c := centroid(ring)
	across, along := (high-low)/2/soft, size/(high-low)/2/soft
	m.current.Custom1, m.current.Custom2 = float32(along), float32(across)
	var at [4]uint32
	for i, s := range [4]xy{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		u, v := s.x*(along+cloudReach), s.y*(across+cloudReach)
		at[i] = m.add(c.plus(d, u*soft).plus(e, v*soft), u, v)
	}
	m.quad(at[0], at[1], at[2], at[3])
}

// longest returns the direction of a ring's longest side.
func longest(ring []xy) xy {
	best, far := xy{1, 0}, 0.0
	for i, p := range ring {
		d := ring[(i+1)%len(ring)].minus(p)
		if l := d.length(); l > far {
			best, far = xy{d.x / l, d.y / l}, l
		}
	}
	return best
}

// centroid returns the middle of a ring's area.
func centroid(ring []xy) (c xy) {
	o, sum := ring[0], 0.0
	for i := 2; i < len(ring); i++ {
		a, b := ring[i-1], ring[i]
		k := turn(o, a, b)
		sum += k
		c = c.plus(xy{o.x + a.x + b.x, o.y + a.y + b.y}, k/3)
	}
	if sum == 0 {
		return o
	}
	return xy{c.x / sum, c.y / sum}
}

// glow paints the wash of a strip as one quad; the shader has the shape of its fading.
func (m *Mesh) glow(g *drawing.Glow, fade float64) {
	along := drawing.Point{X: g.To.X - g.From.X, Y: g.To.Y - g.From.Y}
	l := math.Hypot(along.X, along.Y)
	toward := g.Toward
	if toward == (drawing.Point{}) {
		toward.Y = -1
	}
	if !(l > 0) || !(g.Reach > 0) {
		return
	}
	down := g.Reach
	if g.Cut > 0 {
		down = min(g.Cut, g.Reach)
	}
	m.current = Vertex{Custom0: paintGlow, Custom1: float32(l / g.Reach), Custom2: float32(g.Before / g.Reach), Custom3: float32(g.After / g.Reach)}
	m.colour(drawing.LampInk(g.Kelvin), opacity(fade))
	var at [4]uint32
	for i, p := range [4]drawing.Point{{X: -g.Before}, {X: l + g.After}, {X: l + g.After, Y: down}, {X: -g.Before, Y: down}} {
		q := drawing.Point{X: g.From.X + along.X/l*p.X + toward.X*p.Y, Y: g.From.Y + along.Y/l*p.X + toward.Y*p.Y}
		at[i] = m.add(m.cam.at(q), p.X/g.Reach, p.Y/g.Reach)
	}
	m.quad(at[0], at[1], at[2], at[3])
}
