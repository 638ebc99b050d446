package mesh

import (
	"ledgewright/engine/drawing"
	"ledgewright/engine/wood"
)

// Inks are the colours of one theme, and how woods look.
type Inks struct {
	theme drawing.Theme
	tones map[drawing.Tone]drawing.Paint
	woods map[string]drawing.Look
}

// NewInks returns the colours of a theme.
func NewInks(theme drawing.Theme) *Inks {
	k := &Inks{theme: theme, tones: drawing.Paints(theme), woods: map[string]drawing.Look{}}
	for _, s := range wood.All() {
		k.woods[s.ID] = drawing.Look(s.Look)
	}
	return k
}

// tone returns the paint of a tone; one that is not in the table is black, so that the
// mistake is seen.
func (k *Inks) tone(t drawing.Tone) drawing.Paint { return k.tones[t] }

func (k *Inks) look(species string) drawing.Look {
	if look, ok := k.woods[species]; ok {
		return look
	}
	return drawing.PlainWood()
}

// A grain is the paint of a face of wood: what its vertices have in common, and the way
// from the screen to the plank.
type grain struct {
	vertex     Vertex
	cam        *Camera
	wood       *drawing.Wood
	a, b, c, d float64 // the picture's millimetres to the plank's
}

// grain returns the paint of a face, and whether its plank can be seen at all: a face
// that is seen from its edge has no grain.
func (k *Inks) grain(w *drawing.Wood, alpha float32, cam *Camera) (g grain, ok bool) {
	look := k.look(w.Species)
	fill, line := drawing.WoodInks(look, w, k.theme)
	det := w.Along.X*w.Across.Y - w.Along.Y*w.Across.X
	g = grain{cam: cam, wood: w}
	v := Vertex{ColorR: float32(fill[0]), ColorG: float32(fill[1]), ColorB: float32(fill[2]), ColorA: alpha}
	if det > -1e-6 && det < 1e-6 {
		g.vertex = v
		return g, false
	}
	g.a, g.b, g.c, g.d = w.Across.Y/det, -w.Across.X/det, -w.Along.Y/det, w.Along.X/det
	v.Custom0 = paintWood
	switch {
	case w.End:
		v.Custom0 = paintEnd
	case w.Edge:
		v.Custom0 = paintEdge
	}
	v.Custom1, v.Custom2, v.Custom3 = packedInk(line), packedFigure(look, w.End), float32(w.Seed&0xffff)
	g.vertex = v
	return g, true
}

// place gives a vertex its place on the plank.
func (g *grain) place(v *Vertex) {
	p := g.cam.Back(float64(v.DstX), float64(v.DstY))
	x, y := p.X-g.wood.Origin.X, p.Y-g.wood.Origin.Y
	v.SrcX = float32(g.a*x + g.b*y + g.wood.WindowAlong)
	v.SrcY = float32(g.c*x + g.d*y + g.wood.WindowAcross)
}

// packedInk puts a colour into a number that a shader reads back exactly: 6 bits a part,
// since what lies between two equal vertices may differ from them in the last bits.
func packedInk(c drawing.Ink) float32 {
	part := func(x float64) float32 { return float32(int(min(max(x, 0), 1)*63 + 0.5)) }
	return part(c[0])*4096 + part(c[1])*64 + part(c[2])
}

// packedFigure puts what a wood's figure depends on into a number: tenths of the distance
// of its rings in 8 bits, strength of its lines in 5, share of its pores in 4.
//
// Rings stand wider than in the tree, as the SVG writer has them, so that single lines
// can be told apart.
func packedFigure(look drawing.Look, end bool) float32 {
	ring := min(max(look.Ring*2.4, 4), 14)
	if end {
		ring = min(max(look.Ring*1.4, 2.5), 14)
	}
	part := func(x float64, most int) int { return min(max(int(x*float64(most)+0.5), 0), most) }
	return float32(int(ring*10+0.5)*512 + part(look.Contrast, 31)*16 + part(look.Pores, 15))
}
