package jobs

import (
	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A shape draws a module without ids: the module, the number of the board that
// carries, and the turn that sets it upright.
type shape func(d *draw, t, pitch unit.Length) (m plan.Module, carry int, turn unit.Angle)

// fitted draws a module of a shape until it fits its cell and does not cross itself.
// The boards of a closed module that are to close lose their lengths. It panics when the
// shape never fits.
func fitted(d *draw, of shape, pitch unit.Length) (plan.Module, int, unit.Angle) {
	for range 10_000 {
		t := one(d, 26*mm, 26*mm, 32*mm)
		m, carry, turn := of(d, t, pitch)
		l := lay(m)
		if !fits(l, m, carry, turn, pitch) || l.crosses(m.Closed, 30) {
			continue
		}
		m.Depth = one(d, 200*mm, 220*mm)
		if m.Boards[carry-1].Thickness == 32*mm {
			m.Depth = one(d, 200*mm, 240*mm, 260*mm) // room for the thicker rods of deeper boards
		}
		m.Wood = one(d, "white-oak", "white-oak", "white-oak", "black-walnut", "black-cherry", "white-ash", "sugar-maple")
		finish(m.Boards[carry-1:carry], m.Boards[carry-1].Thickness)
		if m.Closed {
			return opened(m), carry, turn
		}
		return m, carry, turn
	}
	panic("jobs: a shape that fits no cell")
}

// fits reports whether a module stays within its cell.
func fits(l layout, m plan.Module, carry int, turn unit.Angle, pitch unit.Length) bool {
	c := m.Boards[carry-1].Length.Value
	x, y := l.boards[carry-1].point(overhang(c, pitch).MM(), 0)
	sin, cos := turn.SinCos()
	x, y = x*cos-y*sin, x*sin+y*cos
	minX, minY, maxX, maxY := l.box(turn)
	return minX-x >= cellLeft && maxX-x <= cellRight && minY-y >= cellDown && maxY-y <= cellUp
}

// finish breaks the front arrises of boards.
func finish(boards []plan.Board, t unit.Length) {
	for i := range boards {
		boards[i].Edges = []plan.Edge{{Arris: "front-a", Cut: "chamfer", Size: 3 * mm / 2}, {Arris: "front-b", Cut: "round", Size: min(3*mm, t/4)}}
	}
}

// opened leaves the last two boards of a closed module to close.
func opened(m plan.Module) plan.Module {
	n := len(m.Boards)
	m.Boards[n-2].Length, m.Boards[n-1].Length = document.Opt[unit.Length]{}, document.Opt[unit.Length]{}
	return m
}

// lengthened gives the boards of a job's closed module that are to close the lengths
// of those across: its shapes are symmetrical.
func lengthened(m plan.Module) plan.Module {
	if !m.Closed {
		return m
	}
	m.Boards = append([]plan.Board(nil), m.Boards...)
	n := len(m.Boards)
	for i := n - 2; i < n; i++ {
		m.Boards[i].Length = m.Boards[i-n/2].Length
	}
	return m
}

// board is a board of a length.
func board(l, t unit.Length) plan.Board {
	return plan.Board{Length: document.Some(l), Thickness: t}
}

// turned is a corner as this shop makes it: a mitre with a spline, sometimes with loose
// tenons, keys or nothing.
func turned(d *draw, a unit.Angle) plan.Corner {
	kind := one(d, "spline", "spline", "tenon", "key", "")
	return plan.Corner{Turn: a, Joint: plan.Mitre, Reinforcement: plan.Reinforcement{Kind: kind}}
}

// carrying draws the length of a board that two brackets a pitch apart carry, with an
// overhang of a quarter at most.
func carrying(d *draw, pitch unit.Length) unit.Length {
	return pitch + d.length(140*mm, 360*mm, 10*mm)
}

func plainShelf(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	return plan.Module{Name: "Shelf", Boards: []plan.Board{board(carrying(d, pitch), t)}}, 1, 0
}

// leftL is an upright with a shelf to its right on top of it.
func leftL(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	m := plan.Module{Name: "Left L"}
	m.Boards = []plan.Board{board(d.length(220*mm, 460*mm, 10*mm), t), board(carrying(d, pitch), t)}
	m.Corners = []plan.Corner{turned(d, -90*deg)}
	return m, 2, 90 * deg
}

// rightL is its mirror image.
func rightL(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	m := plan.Module{Name: "Right L"}
	m.Boards = []plan.Board{board(carrying(d, pitch), t), board(d.length(220*mm, 460*mm, 10*mm), t)}
	m.Corners = []plan.Corner{turned(d, -90*deg)}
	return m, 1, 0
}

// uDown is a shelf with an upright below each end. Where the uprights are thinner than
// the shelf it runs through over them, because mitres of unequal boards tilt the blade
// past 45°.
func uDown(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	m := plan.Module{Name: "U"}
	h := d.length(200*mm, 420*mm, 10*mm)
	m.Boards = []plan.Board{board(h, t), board(carrying(d, pitch), t), board(h, t)}
	m.Corners = []plan.Corner{turned(d, -90*deg), turned(d, -90*deg)}
	if d.chance(30) {
		m.Boards[0].Thickness, m.Boards[2].Thickness = 20*mm, 20*mm
		dowels := plan.Reinforcement{Kind: one(d, "dowel", "screw", "tenon")}
		m.Corners[0] = plan.Corner{Turn: -90 * deg, Joint: plan.ButtSecond, Reinforcement: dowels}
		m.Corners[1] = plan.Corner{Turn: -90 * deg, Joint: plan.ButtFirst, Reinforcement: dowels}
	}
	return m, 2, 90 * deg
}

// zShape is a shelf, an upright down from its end, and a shelf on from there.
func zShape(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	m := plan.Module{Name: "Z"}
	m.Boards = []plan.Board{board(pitch+140*mm, t), board(d.length(220*mm, 420*mm, 10*mm), t), board(d.length(110*mm, 140*mm, 10*mm), t)}
	m.Corners = []plan.Corner{turned(d, -90*deg), turned(d, 90*deg)}
	return m, 1, 0
}

// box is closed, hangs by its top board, and may have a divider.
func box(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	w, h := carrying(d, pitch), d.length(260*mm, 480*mm, 10*mm)
	m := plan.Module{Name: "Box", Closed: true, Boards: []plan.Board{board(w, t), board(h, t), board(w, t), board(h, t)}}
	for range m.Boards {
		m.Corners = append(m.Corners, turned(d, -90*deg))
	}
	if d.chance(40) {
		m.Dividers = []plan.Divider{{Name: "Middle", From: 1, To: 3, At: w / 2, Thickness: 20 * mm, Start: "housed", End: "housed"}}
	}
	return m, 1, 0
}

// hexagon lies on a long side, and is closed.
func hexagon(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	a, b := pitch+140*mm, d.length(150*mm, 230*mm, 10*mm)
	m := plan.Module{Name: "Hexagon", Closed: true}
	for _, l := range []unit.Length{a, b, b, a, b, b} {
		m.Boards = append(m.Boards, board(l, t))
		m.Corners = append(m.Corners, turned(d, -60*deg))
	}
	return m, 1, 0
}

// free is a shelf from which a chain goes on below it.
func free(d *draw, t, pitch unit.Length) (plan.Module, int, unit.Angle) {
	m := plan.Module{Name: "Chain", Boards: []plan.Board{board(pitch+140*mm, t)}}
	for i := range 1 + d.upTo(3) {
		a := one(d, 30*deg, 45*deg, 60*deg, 75*deg, 90*deg)
		if i == 0 || d.chance(50) {
			a = -a
		}
		m.Corners = append(m.Corners, turned(d, a))
		m.Boards = append(m.Boards, board(d.length(180*mm, 360*mm, 10*mm), t))
	}
	return m, 1, 0
}
