package mount

import (
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
)

// Room returns the least and the greatest u at which a bracket keeps its distances
// from the ends of its board. There is none when from is greater than to. An unknown
// kind may stand anywhere.
func Room(in Input) (from, to unit.Length) {
	k, ok := kindOf(&in)
	if !ok {
		return 0, in.Board.Length
	}
	j := job{Input: in, kind: k}
	j.start, j.end = in.Board.Ends()
	return j.room()
}

func (j *job) room() (from, to unit.Length) {
	first, last := j.heels()
	n, long := j.row()
	ends := j.kind.Rod * unit.Length(j.Shop.Brackets.FirstDiameters)
	span := j.kind.Pitch * unit.Length(n-1)
	from = max(ends, first)
	to = j.Board.Length - max(ends+span, last+max(long-2*j.kind.Margin, 0))
	return from, to
}

// Heels returns how much of each end of a board the bracket keeps clear with its axis:
// the heel of a mitre, or a square end, and what the shop leaves between it and a bore
// or a pocket. The board's own end distance, in rod diameters, is not in it.
func Heels(in Input) (start, end unit.Length) {
	k, ok := kindOf(&in)
	if !ok {
		return 0, 0
	}
	j := job{Input: in, kind: k}
	j.start, j.end = in.Board.Ends()
	return j.heels()
}

func (j *job) heels() (start, end unit.Length) {
	if j.kind.Strip.Out > 0 {
		from, to := j.Board.On(j.underside())
		return from + j.kind.Margin, j.Board.Length - to + j.kind.Margin
	}
	c := j.Shop.Covers
	if j.kind.Seat == hardware.InPocket {
		start, end = j.half()+c.PocketToHeel, j.half()+c.PocketToHeel
	}
	if j.kind.Rod > 0 {
		radius := (j.bore() + 1) / 2
		if j.start.AtA != j.start.AtB {
			start = max(start, radius+c.BoreToHeel)
		}
		if j.end.AtA != j.end.AtB {
			end = max(end, radius+c.BoreToHeel)
		}
	}
	return start + j.start.Greatest(), end + j.Board.Length - j.end.Least()
}

// half returns how far the pocket reaches from the axis, to both sides.
func (j *job) half() unit.Length {
	if j.kind.Margin > 0 {
		return j.kind.Margin + j.Shop.Covers.Plate
	}
	return (j.kind.Plate.AlongU+1)/2 + j.Shop.Covers.Plate
}
