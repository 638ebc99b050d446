package joint

import (
	"ledgewright/engine/board"
	"ledgewright/engine/unit"
)

const mm = unit.Millimetre

// What a spline, tenon, dowel, key or screw measures when nobody says: common practice
// in the proportions, our assumption in the steps. A sixth of the thinner board for a
// spline, a quarter for a loose tenon (6 mm in 24 mm stock), a third for a dowel; as
// wide across the joint as the board is thick for a spline, a quarter more for a tenon
// or dowel.

// thin returns the thickness of the thinner board.
func (j *job) thin() unit.Length { return min(j.First, j.Second) }

// thickness returns the thickness or diameter of a piece.
func (j *job) thickness() unit.Length {
	if j.Reinforcement.Thickness.Known {
		return j.Reinforcement.Thickness.Value
	}
	step := j.cutterStep()
	switch j.Kind {
	case Spline:
		if h := j.Shop.Joints.SplineThickness; h.Known {
			return h.Value
		}
		return down(j.thin()/6, j.step())
	case Tenon:
		return down(j.thin()/4, step)
	case Dowel:
		return down(j.thin()/3, step)
	case Key:
		return down(max(j.thin()/8, step), step)
	}
	return down(j.thin()/5, step)
}

// step is the finest step that a depth is set to.
func (j *job) step() unit.Length { return max(j.Shop.Tape.Bench, unit.Micrometre) }

// cutterStep is the step in which bits come.
func (j *job) cutterStep() unit.Length {
	if j.Shop.System == unit.Inches {
		return unit.Inch / 16
	}
	return mm
}

// down returns l rounded down to a step, at least one step.
func down(l, step unit.Length) unit.Length { return max(l-l%step, step) }

// across returns how wide a piece is across the joint, and whether somebody said so.
func (j *job) across() (width unit.Length, typed bool) {
	switch {
	case j.Width.Known:
		return j.Width.Value, true
	case j.Kind == Spline:
		return down(j.thin(), j.step()), false
	}
	return down(j.thin()*5/4, j.step()), false
}

// along returns how long a piece is along v; 0 for a spline, which runs from stop to
// stop.
func (j *job) along(thickness unit.Length) unit.Length {
	switch {
	case j.Kind == Tenon && j.thin() < 28*mm:
		return 40 * mm
	case j.Kind == Tenon:
		return 50 * mm
	case j.Kind == Spline:
		return 0
	}
	return thickness
}

// pitch returns the widest spacing of pieces.
func (j *job) pitch() unit.Length {
	switch j.Kind {
	case Tenon:
		return j.Shop.Joints.TenonPitch
	case Dowel:
		return j.Shop.Joints.DowelPitch
	case Key:
		return j.Shop.Joints.KeyPitch
	}
	return j.Shop.Joints.ScrewPitch
}

// shortRun is the shortest piece of spline worth a slot: our assumption.
const shortRun = 20 * mm

// runs returns the stretches of v that a spline fills: from stop to stop, clear of what
// is cut there already.
func (j *job) runs(taken []board.Span) (runs []board.Span) {
	stop := j.Shop.Grooves.StopShown
	for _, s := range free(board.Span{From: stop, To: j.width - stop}, taken) {
		if s.To-s.From >= shortRun {
			runs = append(runs, s)
		}
	}
	return runs
}

// free returns what is left of a stretch beside those taken, which are sorted.
func free(all board.Span, taken []board.Span) (left []board.Span) {
	for _, t := range taken {
		if t.From > all.From {
			left = append(left, board.Span{From: all.From, To: min(t.From, all.To)})
		}
		all.From = max(all.From, t.To)
		if all.From >= all.To {
			return left
		}
	}
	return append(left, all)
}

// most pieces in one joint: more is a slip of the hand.
const mostPieces = 100

// count returns how many pieces stand in a stretch: as many as were asked for, or as
// the pitch asks.
func (j *job) count(room, long unit.Length) int {
	switch {
	case j.Count.Known:
		return min(max(j.Count.Value, 0), mostPieces)
	case j.Kind == Key:
		return min(max(int((j.width+j.pitch()/2)/j.pitch()), 1), mostPieces)
	}
	span := max(room-long, 0)
	return min(int((span+j.pitch()-1)/j.pitch())+1, mostPieces)
}

// rows returns the stretches of v for pieces of a length, evenly spaced and each moved
// as little as it takes to stand clear of what is cut there already, and how many were
// wanted.
func (j *job) rows(long unit.Length, taken []board.Span) (rows []board.Span, wanted int) {
	lo, hi := j.Shop.Joints.TenonEdge, j.width-j.Shop.Joints.TenonEdge
	if hi-lo < long { // a narrow board: closer to the edges
		lo, hi = j.Shop.Joints.TenonEdge/3, j.width-j.Shop.Joints.TenonEdge/3
	}
	wanted = j.count(hi-lo, long)
	if j.Kind == Key { // half a space from the edges
		space := j.width / unit.Length(max(wanted, 1))
		lo, hi = space/2-long/2, j.width-space/2+long-long/2
	}
	open := free(board.Span{From: lo, To: hi}, taken)
	from := lo
	for i := range wanted {
		at := lo + (hi-lo-long)/2
		if wanted > 1 {
			at = lo + (hi-lo-long).MulDiv(int64(i), int64(wanted-1))
		}
		if s, ok := fit(open, from, at, long); ok {
			rows = append(rows, s)
			from = s.To + long/2
		}
	}
	return rows, wanted
}

// fit returns the place for a length nearest to at, and not before from, among the
// stretches that are open.
func fit(open []board.Span, from, at, long unit.Length) (best board.Span, ok bool) {
	for _, o := range open {
		o.From = max(o.From, from)
		if o.To-o.From < long {
			continue
		}
		s := min(max(at, o.From), o.To-long)
		if !ok || (s-at).Abs() < (best.From-at).Abs() {
			best, ok = board.Span{From: s, To: s + long}, true
		}
	}
	return best, ok
}
