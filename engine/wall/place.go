package wall

import (
	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A Placing takes a module's plane to the wall.
type Placing struct {
	At    module.XY // where the pivot comes to
	Pivot module.XY
	Turn  unit.Angle
	Flip  bool
	Depth unit.Length // of the module
}

// PlacingOf returns how a pose places a module.
func PlacingOf(m module.Result, p plan.Pose) Placing {
	return Placing{At: module.XY{X: p.X, Y: p.Y}, Pivot: m.Pivot, Turn: p.Turn.Turn(), Flip: p.Flip, Depth: m.Depth}
}

// XY returns where a point of the module's plane comes to on the wall.
func (g Placing) XY(p module.XY) module.XY {
	x, y := p.X-g.Pivot.X, p.Y-g.Pivot.Y
	if g.Flip {
		x = -x
	}
	x, y = unit.Rotate(x, y, g.Turn)
	return module.XY{X: g.At.X + x, Y: g.At.Y + y}
}

// Dir returns the direction on the wall, counter-clockwise from x, of a direction in the
// module's plane.
func (g Placing) Dir(a unit.Angle) unit.Angle {
	if g.Flip {
		a = unit.HalfTurn - a
	}
	return (a + g.Turn).Turn()
}

// Z returns the distance from the wall of what is z from the module's back.
func (g Placing) Z(z unit.Length) unit.Length {
	if g.Flip {
		return g.Depth - z
	}
	return z
}

// Point returns where a point of a board comes to, and its distance from the wall.
func (g Placing) Point(f board.Frame, p board.Point) (at module.XY, z unit.Length) {
	o := g.XY(module.XY{X: f.X, Y: f.Y})
	w := p.W
	if g.Flip {
		// A reflection turns the board's left to its right.
		w = -w
	}
	x, y := unit.Rotate(p.U, -w, g.Dir(f.Dir))
	return module.XY{X: o.X + x, Y: o.Y + y}, g.Z(f.Z + p.V)
}

// Up returns the direction on the wall in which a side of a board faces. Side must not be
// the back or the front, which face the wall and the room.
func (g Placing) Up(f board.Frame, side board.Face) unit.Angle {
	a := f.Dir
	switch side {
	case board.FaceA:
		a += unit.QuarterTurn
	case board.FaceB:
		a -= unit.QuarterTurn
	case board.Start:
		a += unit.HalfTurn
	}
	return g.Dir(a)
}

// Place returns a module's outlines on the wall.
func Place(m module.Result, p plan.Pose) Placed {
	g := PlacingOf(m, p)
	out := Placed{Module: m.ID, Turn: g.Turn, Flip: g.Flip, Box: module.Box{MinX: p.X, MinY: p.Y, MaxX: p.X, MaxY: p.Y}}
	if len(m.Outlines) == 0 {
		return out
	}
	n := 0
	for i := range m.Outlines {
		n += len(m.Outlines[i].Points)
	}
	all := make([]module.XY, 0, n)
	out.Outlines = make([]module.Outline, len(m.Outlines))
	for i := range m.Outlines {
		from := len(all)
		all = g.outline(all, m.Outlines[i].Points)
		out.Outlines[i] = module.Outline{Board: m.Outlines[i].Board, Points: all[from:len(all):len(all)]}
	}
	out.Box = boxOf(all)
	return out
}

// outline appends a placed outline. A flip turns its sense round, so the points then come
// backwards, and it stays counter-clockwise.
func (g Placing) outline(to, points []module.XY) []module.XY {
	for i := range points {
		if g.Flip {
			i = len(points) - 1 - i
		}
		to = append(to, g.XY(points[i]))
	}
	return to
}

// boxOf returns the box of some points; there must be one.
func boxOf(points []module.XY) module.Box {
	b := module.Box{MinX: points[0].X, MinY: points[0].Y, MaxX: points[0].X, MaxY: points[0].Y}
	for _, p := range points[1:] {
		b.MinX, b.MaxX = min(b.MinX, p.X), max(b.MaxX, p.X)
		b.MinY, b.MaxY = min(b.MinY, p.Y), max(b.MaxY, p.Y)
	}
	return b
}
