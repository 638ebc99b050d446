// Package mount fits a bracket to a board: bores, pockets and lock holes, rails and
// cleats, and what mechanics and the wall need to know of it. It knows the kinds of
// brackets; nobody after it does.
//
// Along the board a bracket stands at u; across it the axis lies at mid-thickness. With
// t the thickness, D the depth of the board, d the rod and c the shop's covers:
//
//	bore        d + slack wide, rod + deeper deep
//	rod         max(2D/3, 5D/8 + 10 mm) from the wall edge to its tip, rounded up
//	wood        (t − bore)/2 ≥ max(c.bore, d/2) above and below,
//	            D − depth ≥ c.front before the tip
//	pocket      plate + 2 c.plate wide and high, plate + c.plate deep
//	plate       ≤ t − 2 c.pocket − 2 c.plate, or it stands proud of what hides it
//
// The rod's two thirds of the depth, and its 10 mm beyond a load of books at 5/8 of the
// depth, are common practice and our assumption; a known good shelf has 69 % (Fine
// Homebuilding, Hidden shelf connections, September 1981). What a bracket carries is
// not here.
package mount

import (
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Input is one bracket to be fitted.
type Input struct {
	Bracket string      // id in the plan
	Module  string      // id of its module, for places and remedies; empty: taken from the board's id
	Kind    string      // id in package hardware; a family alone stands for its size by the board's depth
	Board   board.Board // with its end cuts
	Upright bool        // the board is plumb in the module's frame
	At      unit.Length // u of the axis, of the first rod or screw where there are several
	Edge    board.Face  // Back (also when empty), or Front for a module that is flipped
	Length  unit.Length // of a bar, cleat or rail; 0: the kind's own
	Shop    shop.Profile
}

// Output is what fitting a bracket gives.
type Output struct {
	Features []board.Feature // to be added to the board: bores, pocket, lock holes
	Extra    []board.Board   // rails and cleats, in the module's frame
	Fixing   board.Fixing
	Findings []finding.Finding // in the order of Kinds
}

// A job is one bracket being fitted.
type job struct {
	Input
	kind       hardware.BracketKind
	start, end board.Cut
	out        Output
}

// Fit fits a bracket. A kind that does not exist, or a place off the board, is a
// finding, and nothing is cut.
func Fit(in Input) Output {
	if in.Edge == "" {
		in.Edge = board.Back
	}
	j := job{Input: in}
	j.start, j.end = in.Board.Ends()
	j.out.Fixing = board.Fixing{Bracket: in.Bracket, Kind: in.Kind, Board: in.Board.ID, At: j.at(in.At)}
	k, ok := kindOf(&in)
	if !ok {
		j.unknownKind()
		return j.out
	}
	j.kind = k
	if in.At < 0 || in.At > in.Board.Length {
		j.offBoard()
		return j.out
	}
	j.fit()
	return j.out
}

// kindOf returns the kind that is asked for, a family's in the size for the board.
func kindOf(in *Input) (hardware.BracketKind, bool) {
	id := in.Kind
	if hardware.IsFamily(id) {
		id = hardware.Sized(id, in.Board.Width, in.Shop.System)
	}
	return hardware.Bracket(id)
}

// fit cuts what the kind asks for, and checks it.
func (j *job) fit() {
	j.describe()
	j.checkAttitude()
	switch j.kind.Family {
	case hardware.Cleat, hardware.Rail:
		j.strips()
		return
	case hardware.Hook:
		if j.kind.Rod == 0 {
			j.keyhole()
			return
		}
	}
	j.rods()
}

// describe fills in what holds for every kind.
func (j *job) describe() {
	f := &j.out.Fixing
	f.Kind = j.kind.ID
	f.Lock = string(j.kind.Lock)
	f.Seat = string(j.kind.Seat)
	f.Attitude = board.Attitude(j.kind.Attitude)
	f.Carries = j.kind.Carries
	f.Plate = board.Plate(j.kind.Plate)
}

// at returns the point on the axis at the wall edge, u along the board.
func (j *job) at(u unit.Length) board.Point {
	return board.Point{U: u, V: j.v(0), W: j.Board.Thickness / 2}
}

// v returns v of a point so far from the wall edge.
func (j *job) v(from unit.Length) unit.Length {
	if j.Edge == board.Front {
		return j.Board.Width - from
	}
	return from
}

func (j *job) cause() board.Cause { return board.Cause{What: "bracket", ID: j.Bracket} }

// underside returns the face that looks down in the module's frame, face B of a board
// that is walked to the right. Of an upright it is face A, the inside of a chain that
// turns left.
func (j *job) underside() board.Face {
	if d := j.Board.Frame.Dir.Turn(); d < unit.QuarterTurn || d > unit.FullTurn-unit.QuarterTurn {
		return board.FaceB
	}
	return board.FaceA
}

// face returns w of face A or B.
func (j *job) face(f board.Face) unit.Length {
	if f == board.FaceB {
		return j.Board.Thickness
	}
	return 0
}

// screw returns hole h, moved along the board by du, as a screw of the fixing.
func (j *job) screw(h hardware.Hole, du unit.Length) board.Screw {
	s, _ := hardware.FindScrew(h.Screw)
	return board.Screw{
		DU: h.DU + du, DW: h.DW, Diameter: s.Diameter, Root: s.Root, Length: s.Length,
		Slotted: h.Slotted, Drill: s.Pilot, Plug: s.Plug,
	}
}
