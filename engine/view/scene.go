package view

import (
	"math"
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// A point is a place on the wall, in millimetres.
type point = drawing.Point

// A solid is one board on the wall: its front outline, pulled back from t0 to t1 behind
// the picture plane. Cuts that do not run from edge to edge are not shown.
type solid struct {
	b      *board.Board
	ring   []point // counter-clockwise
	box    drawing.Box
	t0, t1 float64
	along  point // unit vector of u on the wall
	across point // unit vector of w
	u0, w0 float64
	seed   uint64
	window float64 // of the plank, along
}

// A scene is one module on the wall.
type scene struct {
	id      string
	m       *module.Result
	placed  *wall.Placed
	g       wall.Placing
	solids  []solid
	box     drawing.Box
	touched [][]bool // by solid and side: the side lies on another board
	plain   bool     // no board runs into another
}

// place finds the modules that the arrangement places, with their boards. Of a module
// that is not to be drawn only the box is filled in.
func (p *painter) place(r wall.Result, modules []module.Result) []scene {
	out := slices.Grow(p.scenes[:0], len(r.Placed))
	for i := range r.Placed {
		placed := &r.Placed[i]
		m := find(modules, placed.Module)
		if m == nil || len(placed.Outlines) != len(m.Outlines) {
			continue
		}
		s := scene{id: m.ID, m: m, placed: placed}
		if !s.bounds() {
			continue
		}
		if p.draws(s.id) {
			p.build(&s)
		}
		out = append(out, s)
	}
	p.scenes = out
	return out
}

// find returns the first module of that id.
func find(modules []module.Result, id string) *module.Result {
	for i := range modules {
		if modules[i].ID == id {
			return &modules[i]
		}
	}
	return nil
}

// build fills in the boards of a scene.
func (p *painter) build(s *scene) {
	m, placed := s.m, s.placed
	s.g, s.solids = placing(placed, m), make([]solid, 0, len(placed.Outlines))
	wrapped := slices.Contains(p.o.Wrapped, m.ID)
	run := 0.0
	for i := range placed.Outlines {
		o := &placed.Outlines[i]
		b := boardOf(m, o.Board, i)
		if b == nil || len(o.Points) < 3 {
			continue
		}
		v := solid{b: b, ring: ring(o.Points), seed: plank(m.ID, i)}
		v.box = boxOf(v.ring...)
		if wrapped && b.Role == board.Chain {
			v.seed, v.window = plank(m.ID, 0), run
			run += b.Length.MM()
		}
		v.t0 = (m.Depth - b.Frame.Z - b.Width).MM()
		v.t1 = (m.Depth - b.Frame.Z).MM()
		if placed.Flip {
			v.t0, v.t1 = b.Frame.Z.MM(), (b.Frame.Z + b.Width).MM()
		}
		v.axes(s.g)
		s.solids = append(s.solids, v)
	}
	s.touch()
	s.plain = s.isPlain()
}

// placing recovers how a module was placed from one of its points.
func placing(placed *wall.Placed, m *module.Result) wall.Placing {
	g := wall.Placing{Pivot: m.Pivot, Turn: placed.Turn, Flip: placed.Flip, Depth: m.Depth}
	for i := range m.Outlines {
		from, to := m.Outlines[i].Points, placed.Outlines[i].Points
		if len(from) == 0 || len(from) != len(to) {
			continue
		}
		k := 0
		if placed.Flip {
			k = len(to) - 1 // a flip turns the outline's sense round
		}
		at := g.XY(from[0])
		g.At = module.XY{X: to[k].X - at.X, Y: to[k].Y - at.Y}
		break
	}
	return g
}

func boardOf(m *module.Result, id string, i int) *board.Board {
	if i >= 0 && i < len(m.Boards) && m.Boards[i].ID == id {
		return &m.Boards[i]
	}
	for k := range m.Boards {
		if m.Boards[k].ID == id {
			return &m.Boards[k]
		}
	}
	return nil
}

func ring(points []module.XY) []point {
	out := make([]point, len(points))
	for i, q := range points {
		out[i] = point{X: q.X.MM(), Y: q.Y.MM()}
	}
	return out
}

// plank is the seed of a board's wood: of the module and the board's index, so that
// the figure never jumps while the module is dragged (FNV-1a, 64 bit).
func plank(module string, index int) uint64 {
	h := uint64(14695981039346656037)
	for i := range len(module) {
		h = (h ^ uint64(module[i])) * 1099511628211
	}
	return (h ^ uint64(index)) * 1099511628211
}

// axes finds the board's directions on the wall and where its frame begins.
func (v *solid) axes(g wall.Placing) {
	sin, cos := g.Dir(v.b.Frame.Dir).SinCos()
	v.along, v.across = point{X: cos, Y: sin}, point{X: sin, Y: -cos}
	if g.Flip {
		v.across = point{X: -sin, Y: cos}
	}
	v.u0, v.w0 = math.Inf(1), math.Inf(1)
	for _, q := range v.ring {
		v.u0, v.w0 = min(v.u0, dot(q, v.along)), min(v.w0, dot(q, v.across))
	}
}

// bounds finds the box of a scene's boards, and reports false where it has none.
func (s *scene) bounds() (found bool) {
	var least, most module.XY
	for i := range s.placed.Outlines {
		o := &s.placed.Outlines[i]
		if len(o.Points) < 3 || boardOf(s.m, o.Board, i) == nil {
			continue
		}
		if !found {
			least, most, found = o.Points[0], o.Points[0], true
		}
		for _, q := range o.Points {
			least.X, least.Y = min(least.X, q.X), min(least.Y, q.Y)
			most.X, most.Y = max(most.X, q.X), max(most.Y, q.Y)
		}
	}
	s.box = drawing.Box{MinX: least.X.MM(), MinY: least.Y.MM(), MaxX: most.X.MM(), MaxY: most.Y.MM()}
	return found
}

// boxOf returns the box of some points; there must be one.
func boxOf(p ...point) drawing.Box {
	b := drawing.Box{MinX: p[0].X, MinY: p[0].Y, MaxX: p[0].X, MaxY: p[0].Y}
	for _, q := range p[1:] {
		b = b.With(q)
	}
	return b
}

func dot(a, b point) float64   { return float64(a.X*b.X) + float64(a.Y*b.Y) }
func cross(a, b point) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }
func sub(a, b point) point     { return point{X: a.X - b.X, Y: a.Y - b.Y} }
func plus(a, b point, k float64) point {
	return point{X: a.X + float64(k*b.X), Y: a.Y + float64(k*b.Y)}
}
func middle(a, b point) point { return point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2} }
func length(a point) float64  { return math.Hypot(a.X, a.Y) }

func scaled(a point, k float64) point { return point{X: a.X * k, Y: a.Y * k} }

// direct is the unit vector from a to b; along x where they are one place.
func direct(a, b point) point {
	d := sub(b, a)
	size := length(d)
	if size == 0 {
		return point{X: 1}
	}
	return scaled(d, 1/size)
}

// outward is the normal of a side of a counter-clockwise outline.
func outward(a, b point) point { d := direct(a, b); return point{X: d.Y, Y: -d.X} }

// side returns the ends of side i of an outline.
func side(ring []point, i int) (a, b point) { return ring[i], ring[(i+1)%len(ring)] }

// near is what counts as touching in a picture: twice [unit.Touch].
const near = 2e-6 * float64(unit.Touch)

// touch marks the sides that lie wholly on a side of another board of the module:
// mitres and the ends of butted boards. Nobody sees them.
func (s *scene) touch() {
	s.touched = make([][]bool, len(s.solids))
	n := 0
	for i := range s.solids {
		n += len(s.solids[i].ring)
	}
	all := make([]bool, n)
	for i := range s.solids {
		v := &s.solids[i]
		s.touched[i], all = all[:len(v.ring)], all[len(v.ring):]
		for k := range v.ring {
			a, b := side(v.ring, k)
			for j := range s.solids {
				if j != i && s.solids[j].covers(a, b, v.t0, v.t1) {
					s.touched[i][k] = true
				}
			}
		}
	}
}

// covers reports whether a side of v runs the other way along all of a–b, over the
// depths from t0 to t1.
func (v *solid) covers(a, b point, t0, t1 float64) bool {
	if v.t0 > t0+near || v.t1 < t1-near {
		return false
	}
	for k := range v.ring {
		p, q := side(v.ring, k)
		d := sub(q, p)
		size := length(d)
		if size < near {
			continue
		}
		d = scaled(d, 1/size)
		if dot(d, sub(b, a)) >= 0 || math.Abs(cross(d, sub(a, p))) > near || math.Abs(cross(d, sub(b, p))) > near {
			continue
		}
		if dot(d, sub(b, p)) >= -near && dot(d, sub(a, p)) <= size+near {
			return true
		}
	}
	return false
}
