package mount

import (
	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
)

// A pair of cleats is bevelled 45°. Their tips are cut off by tip, so that the bevels
// meet before the tips do (common practice: 1/16 to 1/8 in).
const (
	tip   = 2 * unit.Millimetre
	loose = unit.Millimetre / 2 // a screw's hole in a rail over the screw
)

// strips fits a rail, or a pair of cleats: wooden strips under the board, along its
// wall edge.
//
// With o how far a strip stands out, h its height and b = o − tip the leg of its bevel,
// the wall's cleat hangs o + h − 2b below the module's, and they hook by 2b − o.
func (j *job) strips() {
	n, long := j.row()
	start := j.At - j.kind.Margin
	out, high := j.kind.Strip.Out, j.kind.Strip.High
	f := &j.out.Fixing
	f.Plate = board.Plate{AlongU: long, AlongW: high, Thickness: out}
	if !j.checkStrip(start, long) {
		return
	}
	if !j.kind.Bevel {
		rail := j.strip("a", start, long, 0)
		j.screwRow(&rail, n, high/2, 0)
		j.out.Extra = []board.Board{rail}
		j.checkCount(n, long)
		return
	}
	leg := out - tip
	drop := out + high - 2*leg
	ours, theirs := j.strip("a", start, long, 0), j.strip("b", start, long, drop)
	j.bevel(&ours, j.roomSide(), far(j.underside()), leg)
	j.bevel(&theirs, j.Edge, near(j.underside()), leg)
	j.screwRow(&theirs, n, (leg+high)/2, drop)
	f.Lift = high - drop + lifting
	f.Top = opposite(j.underside())
	j.out.Extra = []board.Board{ours, theirs}
	j.checkCount(n, long)
}

// strip returns a wooden strip that starts at u and hangs so far below the underside.
func (j *job) strip(letter string, u, long, below unit.Length) board.Board {
	b := board.Board{
		ID: j.Bracket + letter, Role: board.Rail, Wood: j.Board.Wood,
		Length: long, Width: j.kind.Strip.Out, Thickness: j.kind.Strip.High,
		Frame: j.Board.Frame, Features: []board.Feature{},
	}
	w := j.Board.Thickness + below
	if j.underside() == board.FaceA {
		w = -below - b.Thickness
	}
	b.Frame.X, b.Frame.Y = j.Board.Frame.Plane(u, w)
	if j.Edge == board.Front {
		b.Frame.Z += j.Board.Width - b.Width
	}
	return b
}

// bevel cuts the arris between an edge and a face of a strip away.
func (j *job) bevel(b *board.Board, edge, face board.Face, leg unit.Length) {
	arris := "back-"
	if edge == board.Front {
		arris = "front-"
	}
	if face == board.FaceA {
		arris += "a"
	} else {
		arris += "b"
	}
	b.Features = append(b.Features, board.Feature{
		Kind: board.Chamfer, Cause: j.cause(), Arris: arris, Size: leg, After: board.OnBlank,
	})
}

// screwRow bores a strip for its screws, so far below its upper face, and states them.
func (j *job) screwRow(b *board.Board, n int, down, below unit.Length) {
	h := j.kind.Screws[0]
	w, face := down, j.Board.Thickness+below+down
	if j.underside() == board.FaceA {
		w, face = b.Thickness-down, -below-down
	}
	for i := range n {
		du := j.kind.Pitch * unit.Length(i)
		s := j.screw(h, du)
		s.DW = face - j.Board.Thickness/2
		j.out.Fixing.Screws = append(j.out.Fixing.Screws, s)
		out := board.Point{U: j.kind.Margin + du, V: b.Width, W: w}
		if j.roomSide() == board.Back {
			out.V = 0
		}
		b.Features = append(b.Features, board.Feature{
			Kind: board.Bore, Cause: j.cause(), Enter: j.roomSide(), Mouth: out,
			Diameter: s.Diameter + loose, Depth: b.Width, Through: true, After: board.OnBlank,
		})
	}
}

// roomSide returns the edge of the board that looks into the room.
func (j *job) roomSide() board.Face {
	if j.Edge == board.Front {
		return board.Back
	}
	return board.Front
}

// near returns the face of a strip that touches the board above it, far the other one.
func near(underside board.Face) board.Face { return opposite(underside) }
func far(underside board.Face) board.Face  { return underside }

func opposite(f board.Face) board.Face {
	if f == board.FaceA {
		return board.FaceB
	}
	return board.FaceA
}

// head returns the diameter of a screw's head.
func (j *job) head(id string) unit.Length {
	s, _ := hardware.FindScrew(id)
	return s.Head
}
