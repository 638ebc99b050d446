// Package mesh turns a drawing into triangles for the graphics processor: one list of
// vertices in painter's order, for one draw call with one shader.
//
// Every vertex carries what the shader needs to colour its triangle (see [Vertex]), so
// wood, flat fills, lines, soft shadows and washes of light can follow each other in any
// order, as the drawing has them, without a change of shader between them. Edges are
// smooth by coverage: a fill has a rim one pixel wide over which it fades, a line tells
// the shader how far from its middle it is.
package mesh

import (
	"slices"

	"ledgewright/engine/drawing"
)

// A Vertex is one corner of a triangle: a place on the screen in pixels, a place in the
// paint, a colour (straight, its last part the opacity) and four numbers for the shader.
// Its members are those of Ebitengine's vertex, in its order, so that a list of the one
// is a list of the other.
type Vertex struct {
	DstX, DstY                         float32
	SrcX, SrcY                         float32
	ColorR, ColorG, ColorB, ColorA     float32
	Custom0, Custom1, Custom2, Custom3 float32
}

// The kinds of paint, in Custom0. What the other numbers mean is said with each.
const (
	paintFlat  = 0 // the colour alone
	paintLine  = 1 // Src: across and along, px; Custom: half width, length, ends that are cut straight (1 first, 2 last)
	paintWood  = 2 // Src: plank, mm; Custom: grain line (6 bits a part), figure (see look), seed
	paintEdge  = 3 // likewise, edge grain
	paintEnd   = 4 // likewise, end grain
	paintGlow  = 5 // Src: along and away, in reaches; Custom: length, before, after, likewise
	paintCloud = 6 // Src: from the middle, in softnesses; Custom: half sizes, likewise
	paintDash  = 7 // Src: across and along, px; Custom: half width, length of a dash, period
	paintDot   = 8 // likewise, with round ends
	paintDisc  = 9 // Src: from the middle, px; Custom: radius, half width of its line; below 0: filled
)

// A Mesh is a drawing as triangles. It keeps its memory from drawing to drawing.
type Mesh struct {
	Vertices []Vertex
	Indices  []uint32

	items   []made
	last    memory
	cam     Camera
	inks    *Inks
	paths   outline // of the item at hand, in pixels
	ears    ears
	ring    []xy
	inner   []xy           // of the ring, inside its rim
	one     []drawing.Step // the circle of radius 1
	current Vertex         // what the next vertices have in common
}

// Build makes the triangles of a drawing as a camera sees it. sums has a number for each
// item by which it is known again ([drawing.Unpacker.Sums]); without them all is made anew.
func (m *Mesh) Build(d *drawing.Drawing, sums []uint64, cam Camera, inks *Inks) {
	known := len(sums) == len(d.Items)
	stay := m.begin(sums, known && cam == m.cam && inks == m.inks)
	m.cam, m.inks = cam, inks
	for i := stay; i < len(d.Items); i++ {
		if !known {
			m.item(&d.Items[i])
			continue
		}
		vertex, index := len(m.Vertices), len(m.Indices)
		if !m.again(sums[i]) {
			m.item(&d.Items[i])
		}
		m.keep(sums[i], vertex, index)
	}
}

func (m *Mesh) item(it *drawing.Item) {
	switch it.Kind {
	case drawing.PathKind:
		m.path(it)
	case drawing.WoodKind:
		m.wood(it)
	case drawing.GlowKind:
		m.glow(&it.Glow, it.Fade)
	}
}

// seen follows a path and reports whether any of it can show on the screen.
func (m *Mesh) seen(it *drawing.Item) bool {
	m.paths.trace(it.Path, &m.cam)
	margin := it.Line.Width*m.unit(&it.Line)/2 + cloudReach*it.Soft*m.cam.scale + 2
	o := &m.paths
	return o.low.x < m.cam.width+margin && o.high.x > -margin && o.low.y < m.cam.height+margin && o.high.y > -margin
}

// unit is the pixels of one unit of a line's width and dashes.
func (m *Mesh) unit(l *drawing.Line) float64 {
	if l.MM {
		return m.cam.scale
	}
	return m.cam.pixel
}

func (m *Mesh) path(it *drawing.Item) {
	if !m.seen(it) {
		return
	}
	if it.Soft > 0 {
		m.clouds(it)
		return
	}
	if m.round(it) {
		return
	}
	if it.Tone != "" {
		m.fill(it)
	}
	m.outline(it)
}

// fill paints the inside of the path at hand.
func (m *Mesh) fill(it *drawing.Item) {
	paint := m.inks.tone(it.Tone)
	m.current = Vertex{Custom0: paintFlat}
	m.colour(paint.From, opacity(it.Fade))
	if paint.From == paint.To {
		m.area(func(*Vertex) {})
		return
	}
	b := drawing.Bounds(it.Path)
	m.area(func(v *Vertex) {
		p := m.cam.Back(float64(v.DstX), float64(v.DstY))
		c := paint.Along((p.X-b.MinX)/max(b.Width(), 1e-9), (p.Y-b.MinY)/max(b.Height(), 1e-9))
		v.ColorR, v.ColorG, v.ColorB = float32(c[0]), float32(c[1]), float32(c[2])
	})
}

// wood paints a face of wood and its outline.
func (m *Mesh) wood(it *drawing.Item) {
	if !m.seen(it) {
		return
	}
	g, ok := m.inks.grain(&it.Wood, opacity(it.Fade), &m.cam)
	m.current = g.vertex
	if ok {
		m.area(g.place)
	} else {
		m.area(func(*Vertex) {})
	}
	m.outline(it)
}

// outline draws the line round the path at hand.
func (m *Mesh) outline(it *drawing.Item) {
	if !(it.Line.Width > 0) {
		return
	}
	k := m.unit(&it.Line)
	m.current = Vertex{Custom0: paintLine, Custom1: float32(it.Line.Width * k / 2)}
	m.colour(m.inks.tone(it.Line.Tone).From, opacity(it.Fade))
	for i := range m.paths.parts {
		part := m.paths.part(i)
		if len(it.Line.Dash) > 0 {
			m.dashed(part, m.paths.parts[i].closed, it.Line.Dash, k, it.Line.Round)
			continue
		}
		m.stroke(part, m.paths.parts[i].closed, it.Line.Round)
	}
}

// opacity is what is left of a thing that fades.
func opacity(fade float64) float32 { return float32(1 - min(max(fade, 0), 1)) }

func (m *Mesh) colour(c drawing.Ink, alpha float32) {
	m.current.ColorR, m.current.ColorG, m.current.ColorB, m.current.ColorA = float32(c[0]), float32(c[1]), float32(c[2]), alpha
}

// add appends a vertex like the current one, written in its place: this is where most of
// the time goes.
func (m *Mesh) add(p xy, u, v float64) uint32 {
	n := len(m.Vertices)
	if n == cap(m.Vertices) {
		m.Vertices = slices.Grow(m.Vertices, n+1024)
	}
	m.Vertices = m.Vertices[:n+1]
	q := &m.Vertices[n]
	*q = m.current
	q.DstX, q.DstY, q.SrcX, q.SrcY = float32(p.x), float32(p.y), float32(u), float32(v)
	return uint32(n)
}

// quad appends the two triangles of four vertices in a row.
func (m *Mesh) quad(a, b, c, d uint32) { m.Indices = append(m.Indices, a, b, c, a, c, d) }
