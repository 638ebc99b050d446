package hold

import (
	"slices"

	"ledgewright/engine/board"
)

// Stiffnesses that nobody has measured. Two rods in one board carry what statics says
// whatever these are; they move droop only, and droop is told as a range over them.
const (
	// BoreStiffness is the force per mm of rod and mm of give, N/mm², with which wood bears
	// on a rod across the grain. Our assumption, between BoreSoft and BoreStiff.
	BoreStiffness = 500.0
	BoreSoft      = 100.0
	BoreStiff     = 2000.0
	// LockStiffness is the same along the rod where a lock ties it. Our assumption.
	LockStiffness = 200.0
	// TouchStiffness is the force per mm, N/mm, of a board's back edge on the wall at one
	// place, and of a screw of a hook or cleat. Our assumption.
	TouchStiffness = 2000.0
	// SlipSoft and SlipStiff are the parts of the screws' stiffness between which it may lie.
	// Our assumption.
	SlipSoft, SlipStiff = 0.5, 2.0
)

// An Assumed is what a frame assumes where nothing is known.
type Assumed struct {
	Bore   float64 // as BoreStiffness
	Lock   float64 // as LockStiffness
	Slip   float64 // part of the stiffness of screws against being drawn out
	Pinned bool    // corners carry no moment in the module's plane
	lack   []rodID // rods that carry nothing: set a little low
}

// Likely returns what is assumed where nobody asks otherwise.
func Likely() Assumed { return Assumed{Bore: BoreStiffness, Lock: LockStiffness, Slip: 1} }

// A rodID is a rod as the place of its fixing in the module, and its own in the fixing.
type rodID struct{ fixing, rod int }

// lacks says whether a rod carries nothing.
func (a *Assumed) lacks(r rodID) bool { return slices.Contains(a.lack, r) }

// hangsOn says whether a bracket works as the module hangs. What should have rods and has
// none, because they do not fit its board, holds nothing: other rooms say so.
func (f *model) hangsOn(x *board.Fixing) bool {
	if len(x.Rods) == 0 && x.Lock != "screwed" && x.Lock != "undercut" {
		return false
	}
	return f.works == nil || slices.Contains(f.works, x.Bracket)
}

// pin lets every board that ends at a corner turn there in the plane of the module, where
// that is assumed.
func (f *model) pin() {
	if !f.assumed.Pinned {
		return
	}
	for i := range f.of.Corners {
		c := &f.of.Corners[i]
		a, b := f.find(c.First), f.find(c.Second)
		if a < 0 || b < 0 {
			continue
		}
		if !f.pinEnd(&f.boards[b], &f.boards[a]) {
			f.pinEnd(&f.boards[a], &f.boards[b])
		}
	}
}

// pinEnd lets the end of a board that is at a station of the other turn, and returns false
// where it is no end of it.
func (f *model) pinEnd(b, at *bar) bool {
	last := len(b.stations) - 1
	switch {
	case at.has(b.stations[0].node):
		f.frame.Members[b.members[0]].Start.Springs[5].Free = true
	case at.has(b.stations[last].node):
		f.frame.Members[b.members[last-1]].Finish.Springs[5].Free = true
	default:
		return false
	}
	return true
}
