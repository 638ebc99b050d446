package view

import (
	"math"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	surface "ledgewright/engine/solid"
	"ledgewright/engine/wall"
)

// roundChord is how far the flat sides of a bore may leave its circle in the round, mm: a
// third of a pixel where a millimetre is about two.
const roundChord = 0.15

// A flat3 is a plane n·p = d; n looks out of what it bounds.
type flat3 struct {
	n spot
	d float64
}

func (f flat3) above(p spot) float64 { return f.n.dot(p) - f.d }

// A mark is a corner of an outline. Where seam is set, no line is drawn from it to the
// next: nothing ends there.
type mark struct {
	spot
	seam bool
}

// A sheet is one flat face in space.
type sheet struct {
	flat3
	loops [][]mark
	part  *part
	face  int  // of the part's solid; names it
	piece int  // 0: all of it; else which piece
	cave  int  // index of the hollow it lines; −1: none
	plain bool // it is not outlined: one of many that stand for something round
	lux   float64
}

// A part is a board, or a piece of a bracket: what moves as one when a module is pulled
// apart.
type part struct {
	id     string
	module int
	b      *board.Board // nil: metal
	seed   uint64
	window float64
	origin spot    // of the board's frame
	axes   [3]spot // of u, v and w
	outer  []sheet // sides of the convex body that the part is cut from
	inner  []sheet // what is cut into it
	caves  [][]flat3
	hull   hull
	shift  spot // at full opening
	glows  []glowing
}

// A hull is a convex body: its planes, and polygons that have all its corners and edges.
type hull struct {
	planes []flat3
	polys  [][]spot
}

// A Round is an arrangement in the round, worked out once; [Round.Open] pulls it apart.
type Round struct {
	wall    plan.Wall
	modules int
	parts   []*part
	middle  spot    // of all modules as they hang
	growth  float64 // share by which they move away from it
}

// NewRound places the modules of an arrangement on its wall in the round. Modules that the
// result does not place are left out.
func NewRound(w plan.Wall, r wall.Result, modules []module.Result) *Round {
	out := &Round{wall: w}
	for i := range r.Placed {
		for k := range modules {
			if m := &modules[k]; m.ID == r.Placed[i].Module && len(m.Outlines) == len(r.Placed[i].Outlines) {
				out.add(m, placing(&r.Placed[i], m))
				break
			}
		}
	}
	out.spread()
	return out
}

// add adds the boards and brackets of a module.
func (r *Round) add(m *module.Result, g wall.Placing) {
	from := len(r.parts)
	for i := range m.Boards {
		r.parts = append(r.parts, r.board(m, g, i))
	}
	r.pull(m, r.parts[from:])
	r.shine(m, g, r.parts[from:])
	for i := range m.Fixings {
		r.bracket(m, g, &m.Fixings[i], r.parts[from:from+len(m.Boards)])
	}
	r.modules++
}

// frame places a board's frame on the wall.
func (p *part) frame(g wall.Placing, b *board.Board) {
	at, z := g.Point(b.Frame, board.Point{})
	p.origin = spot{at.X.MM(), at.Y.MM(), z.MM()}
	sin, cos := g.Dir(b.Frame.Dir).SinCos()
	p.axes = [3]spot{{cos, sin, 0}, {0, 0, 1}, {sin, -cos, 0}}
	if g.Flip {
		p.axes[1], p.axes[2] = spot{0, 0, -1}, spot{-sin, cos, 0}
	}
}

func (p *part) turn(v surface.Vec) spot {
	return spot{}.plus(p.axes[0], v.U).plus(p.axes[1], v.V).plus(p.axes[2], v.W)
}

func (p *part) place(v surface.Vec) spot {
	return p.origin.plus(p.axes[0], v.U).plus(p.axes[1], v.V).plus(p.axes[2], v.W)
}

func (r *Round) board(m *module.Result, g wall.Placing, i int) *part {
	b := &m.Boards[i]
	p := &part{id: b.ID, module: r.modules, b: b, seed: plank(m.ID, i)}
	p.frame(g, b)
	s := surface.Of(b, surface.Options{Chord: roundChord})
	caves := p.hollows(&s)
	for k := range s.Faces {
		f := &s.Faces[k]
		sh := p.sheet(&s, k)
		if sh.cave = caves[k]; f.Feature < 0 {
			p.outer = append(p.outer, sh)
		} else {
			p.inner = append(p.inner, sh)
		}
	}
	p.enclose()
	return p
}

// sheet places a face of a solid.
func (p *part) sheet(s *surface.Solid, k int) sheet {
	f := &s.Faces[k]
	sh := sheet{part: p, face: k, plain: f.Smooth}
	sh.n = p.turn(f.Normal)
	for _, loop := range f.Loops {
		ring := make([]mark, len(loop))
		for i, v := range loop {
			ring[i].spot = p.place(s.Vertices[v])
		}
		sh.loops = append(sh.loops, ring)
	}
	sh.d = sh.n.dot(sh.loops[0][0].spot)
	return sh
}

// hollows finds which faces line one hollow, and through which sides of the board it can
// be looked into: those that its faces share an edge with.
func (p *part) hollows(s *surface.Solid) []int {
	owner := map[[2]int]int{}
	for k := range s.Faces {
		for _, loop := range s.Faces[k].Loops {
			for i, a := range loop {
				owner[[2]int{a, loop[(i+1)%len(loop)]}] = k
			}
		}
	}
	cave := make([]int, len(s.Faces))
	for k := range cave {
		cave[k] = -1
	}
	for k := range s.Faces {
		if s.Faces[k].Feature < 0 || cave[k] >= 0 {
			continue
		}
		cave[k] = len(p.caves)
		p.caves = append(p.caves, p.mouths(s, owner, cave, k))
	}
	return cave
}

// mouths spreads over the faces of one hollow and returns the sides that it opens in.
func (p *part) mouths(s *surface.Solid, owner map[[2]int]int, cave []int, first int) (out []flat3) {
	seen := map[int]bool{}
	for todo := []int{first}; len(todo) > 0; {
		k := todo[0]
		todo = todo[1:]
		for _, loop := range s.Faces[k].Loops {
			for i, a := range loop {
				o, ok := owner[[2]int{loop[(i+1)%len(loop)], a}]
				switch {
				case !ok:
				case s.Faces[o].Feature < 0 && !seen[o]:
					seen[o] = true
					n := p.turn(s.Faces[o].Normal)
					out = append(out, flat3{n, n.dot(p.place(s.Vertices[a]))})
				case s.Faces[o].Feature >= 0 && cave[o] < 0:
					cave[o] = cave[first]
					todo = append(todo, o)
				}
			}
		}
	}
	return out
}

// enclose finds the convex body that a board is cut from: between its end cuts, less its
// arrises.
func (p *part) enclose() {
	for _, side := range [...]board.Face{board.FaceA, board.FaceB, board.Back, board.Front, board.Start, board.End} {
		var ring []spot
		for _, q := range p.b.Corners(side) {
			ring = append(ring, p.place(surface.Vec{U: q.U.MM(), V: q.V.MM(), W: q.W.MM()}))
		}
		p.hull.add(ring)
	}
	for i := range p.outer {
		if f := p.outer[i].flat3; !p.hull.has(f) {
			p.hull, _ = p.hull.cut(f)
		}
	}
}

// add adds a side whose corners go counter-clockwise as seen from outside.
func (h *hull) add(ring []spot) {
	n := ring[1].minus(ring[0]).cross(ring[2].minus(ring[0]))
	n = spot{}.plus(n, 1/n.size())
	h.planes = append(h.planes, flat3{n, n.dot(ring[0])})
	h.polys = append(h.polys, ring)
}

func (h *hull) has(f flat3) bool {
	for _, o := range h.planes {
		if o.n.minus(f.n).size() < 1e-6 && math.Abs(o.d-f.d) < apart3 {
			return true
		}
	}
	return false
}

// bracket adds the plate and the rods of a bracket. What is let into the wall is not seen.
func (r *Round) bracket(m *module.Result, g wall.Placing, f *board.Fixing, boards []*part) {
	var on *part
	for _, p := range boards {
		if p.id == f.Board {
			on = p
		}
	}
	if on == nil || railed(f, boards) {
		return
	}
	way, edge := 1.0, 0.0 // from the wall edge inwards
	if f.At.V > on.b.Width/2 {
		way, edge = -1, on.b.Width.MM()
	}
	if on.place(surface.Vec{V: edge}).z > on.place(surface.Vec{V: on.b.Width.MM() - edge}).z {
		return // it is for an arrangement in which the module hangs the other way round
	}
	thick := f.Plate.Thickness.MM()
	if f.Plate.AlongU > 0 && f.Plate.AlongW > 0 && thick > 0 && f.Seat != "lining" {
		at := plateAt(f)
		u, w := f.Plate.AlongU.MM()/2, f.Plate.AlongW.MM()/2
		ring := []surface.Vec{{U: at.U - u, W: at.W - w}, {U: at.U + u, W: at.W - w}, {U: at.U + u, W: at.W + w}, {U: at.U - u, W: at.W + w}}
		r.metal(on, f.Bracket+"/plate", ring, edge, way, 0, thick, f.Seat == "module")
	} else {
		thick = 0
	}
	for i := range f.Rods {
		rod := &f.Rods[i]
		const n = 12
		var ring []surface.Vec
		for k := range n {
			s, c := math.Sincos(2 * math.Pi * float64(k) / n)
			ring = append(ring, surface.Vec{U: rod.At.U.MM() + rod.Diameter.MM()/2*c, W: rod.At.W.MM() + rod.Diameter.MM()/2*s})
		}
		r.metal(on, f.Bracket+"/rod"+itoa(i+1), ring, edge, way, thick, rod.InBoard.MM(), false)
	}
}

// railed reports whether a bracket is of wood, and so among the boards.
func railed(f *board.Fixing, boards []*part) bool {
	for _, p := range boards {
		if p.b.Role == board.Rail && strings.HasPrefix(p.id, f.Bracket) {
			return true
		}
	}
	return false
}

// plateAt is the middle of a plate: that of its rods, of its screws, or the bracket's own
// axis.
func plateAt(f *board.Fixing) surface.Vec {
	if n := len(f.Rods); n > 0 {
		a, b := f.Rods[0].At, f.Rods[n-1].At
		return surface.Vec{U: (a.U + b.U).MM() / 2, W: (a.W + b.W).MM() / 2}
	}
	at := surface.Vec{U: f.At.U.MM(), W: f.At.W.MM()}
	if n := len(f.Screws); n > 0 {
		a, b := f.Screws[0], f.Screws[n-1]
		at.U, at.W = at.U+(a.DU+b.DU).MM()/2, at.W+(a.DW+b.DW).MM()/2
	}
	return at
}

// metal adds a prism over a ring of (u, w), from one depth to another.
func (r *Round) metal(on *part, id string, ring []surface.Vec, edge, way, from, to float64, moves bool) {
	if to-from < 0.1 {
		return
	}
	p := &part{id: id, module: on.module, origin: on.origin, axes: on.axes, shift: on.shift}
	if !moves {
		p.shift.z = 0 // it stays on the wall, in line with its bore
	}
	n := len(ring)
	low, high := make([]spot, n), make([]spot, n)
	for i, q := range ring {
		q.V = edge + way*from
		low[i] = p.place(q)
		q.V = edge + way*to
		high[i] = p.place(q)
	}
	rings := [][]spot{low, high}
	for i := range ring {
		k := (i + 1) % n
		rings = append(rings, []spot{low[i], low[k], high[k], high[i]})
	}
	middle := mean(low).plus(mean(high), 1)
	middle = spot{}.plus(middle, 0.5)
	for i, ring := range rings {
		p.side(ring, middle, i, n > 4 && i > 1)
	}
	r.parts = append(r.parts, p)
}

func mean(ring []spot) (m spot) {
	for _, q := range ring {
		m = m.plus(q, 1/float64(len(ring)))
	}
	return m
}

// side adds a side to a convex part, turned so that it looks away from the middle.
func (p *part) side(ring []spot, middle spot, face int, plain bool) {
	n := ring[1].minus(ring[0]).cross(ring[2].minus(ring[0]))
	if n.dot(ring[0].minus(middle)) < 0 {
		turned := make([]spot, len(ring))
		for i, q := range ring {
			turned[len(ring)-1-i] = q
		}
		ring = turned
	}
	p.hull.add(ring)
	marks := make([]mark, len(ring))
	for i, q := range ring {
		marks[i].spot = q
	}
	f := p.hull.planes[len(p.hull.planes)-1]
	p.outer = append(p.outer, sheet{flat3: f, loops: [][]mark{marks}, part: p, face: face, cave: -1, plain: plain})
}
