package view

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/light"
	"ledgewright/engine/module"
	"ledgewright/engine/wall"
)

// In the evening each face is as bright as the strips of its own module make its middle
// while the module hangs together, boards in the way and all; package light says how much
// that is. How lux become lightness is our own choice for the picture: half of the full
// effect at halfLit.
const halfLit = 150.0

// A glowing is one straight piece of a strip in the mouth of its groove.
type glowing struct {
	out      spot
	from, to spot
}

// shine finds how much light falls on the faces of a module, and where its strips are.
func (r *Round) shine(m *module.Result, g wall.Placing, parts []*part) {
	if len(m.Strips) == 0 {
		return
	}
	scene := light.NewScene(m.Boards, m.Strips, 1)
	for _, p := range parts {
		for _, all := range [...][]sheet{p.outer, p.inner} {
			for i := range all {
				all[i].lux = scene.Lux(home(g, all[i].middle()), homeward(g, all[i].n))
			}
		}
	}
	for i := range m.Strips {
		for k := range m.Strips[i].Runs {
			run := &m.Strips[i].Runs[k]
			for _, p := range parts {
				if p.id == run.Board {
					p.glows = append(p.glows, p.glowing(run))
				}
			}
		}
	}
}

// glowing lifts a run from the floor of its groove to the side that it looks out of.
func (p *part) glowing(run *board.StripRun) glowing {
	from, to := run.From, run.To
	out := spot{}
	switch run.Face {
	case board.FaceA:
		from.W, to.W = 0, 0
		out = out.plus(p.axes[2], -1)
	case board.FaceB:
		from.W, to.W = p.b.Thickness, p.b.Thickness
		out = p.axes[2]
	default:
		from.V, to.V = 0, 0
		out = out.plus(p.axes[1], -1)
	}
	at := func(q board.Point) spot { return p.place3(q.U.MM(), q.V.MM(), q.W.MM()) }
	return glowing{out, at(from), at(to)}
}

// home takes a place on the wall back to the module's frame.
func home(g wall.Placing, p spot) light.Spot {
	d := homeward(g, spot{p.x - g.At.X.MM(), p.y - g.At.Y.MM(), p.z})
	d[0] += g.Pivot.X.MM()
	d[1] += g.Pivot.Y.MM()
	if g.Flip {
		d[2] += g.Depth.MM()
	}
	return d
}

// homeward is home for a direction.
func homeward(g wall.Placing, d spot) light.Spot {
	sin, cos := g.Turn.SinCos()
	x, y := float64(d.x*cos)+float64(d.y*sin), float64(d.y*cos)-float64(d.x*sin)
	if g.Flip {
		return light.Spot{-x, y, -d.z}
	}
	return light.Spot{x, y, d.z}
}

// lit3 is how much lighter a face is in the evening.
func lit3(lux float64) float64 { return litFace * lux / (lux + halfLit) }

// glow draws the strips that lie in a face, right after it: what hides the face hides them.
func (p *roundPainter) glow(f *sheet) {
	by := spot{}.plus(f.part.shift, p.share)
	for _, s := range f.part.glows {
		from, to := s.from.plus(by, 1), s.to.plus(by, 1)
		if s.out.dot(f.n) < 0.999 || math.Abs(f.above(from)) > 0.01 || !f.over(from, to) {
			continue
		}
		a, b := p.eye.see(from), p.eye.see(to)
		p.items = append(p.items, drawing.Item{
			Group: f.part.id, Layer: drawing.LayerLight, Kind: drawing.PathKind,
			Line: stroke("strip", 2.8), Path: drawing.Segment(a.X, a.Y, b.X, b.Y),
		})
	}
}

// over reports whether the middle of a strip is within the box of a face: of a face in
// pieces one has it.
func (s *sheet) over(from, to spot) bool {
	m := spot{}.plus(from.plus(to, 1), 0.5)
	return s.bounds().touches(bounds{m, m}.grown())
}

func (b bounds) grown() bounds {
	by := spot{1, 1, 1}
	return bounds{b.lo.minus(by), b.hi.plus(by, 1)}
}
