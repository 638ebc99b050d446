package mount

import (
	"ledgewright/engine/board"
	"ledgewright/engine/unit"
)

// A keyhole's screw head goes in below and slides up behind the plate.
const (
	travel   = 10 * unit.Millimetre // from where the head goes in to its seat
	headRoom = 10 * unit.Millimetre // behind the plate, for the head and what stands out of the wall
	headPlay = 2 * unit.Millimetre  // round the head
	lifting  = 5 * unit.Millimetre  // clearance of a module that is raised to hang it
)

// keyhole fits a keyhole plate in the back of an upright, its seat on the axis: a
// pocket for the plate, and a hollow behind it for the screw's head.
func (j *job) keyhole() {
	f := &j.out.Fixing
	h := j.kind.Screws[0]
	s := j.screw(h, 0)
	f.Screws = append(f.Screws, s)
	f.Lift = travel + lifting
	head := j.head(h.Screw) + headPlay
	down := unit.Length(-1)
	if f.Top = board.End; j.Board.Frame.Dir.Turn() > unit.HalfTurn {
		f.Top, down = board.Start, 1
	}
	extent := j.addPocket(0)
	deep := f.Plate.Thickness + j.Shop.Covers.Plate + headRoom
	j.out.Features = append(j.out.Features, board.Feature{
		Kind: board.Pocket, Cause: j.cause(), Enter: j.Edge, Mouth: j.at(j.At + down*travel/2),
		Along: travel + head, Across: head, Depth: deep, After: board.OnBlank,
	})
	j.checkPlate()
	j.checkFront(deep)
	j.checkEnds(nil, 0, extent)
}
