package joint

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// The room for a slot.
//
// Along the joint's plane a slot w wide begins s from the inner point P. It goes d deep
// into the board, square to the plane. In a board whose end tilts by α from square, y
// counts from the inner face to the outer face; the plane runs along (sin α, cos α) and
// the slot goes along (−cos α, sin α), of which y takes the second part. So the slot
// reaches down to
//
//	y = (s + w)·cos α + d·sin α,  and leaves  t − (s + w)·cos α − d·sin α
//
// to the outside. At α = 45° this is t − (s + w + d)/√2. For a cover c the slot may be
//
//	d = (t − c − (s + w)·cos α)/sin α
//
// deep. Where α < 0 the slot leans to the inner face instead and leaves s·cos α − d·|sin α|
// there. s is measured on the plane from the heel, an edge that exists when the slot is
// cut. In a through board of a butt the slot goes straight into the inner face, and
// leaves t − d.

// Kinds of reinforcement, as they stand in a plan.
const (
	Spline = "spline"
	Tenon  = "tenon"
	Dowel  = "dowel"
	Key    = "key"
	Screw  = "screw"
)

// A Reinforcement is what a maker asked for. Missing sizes follow the shop's habits.
type Reinforcement struct {
	Kind      string // one of the kinds; empty: none
	Thickness document.Opt[unit.Length]
	Width     document.Opt[unit.Length] // across the joint
	Count     document.Opt[int]
}

// Input is one corner to be joined.
type Input struct {
	Corner
	Reinforcement
	Boards [2]board.Board // with their end cuts, housings, grooves and bores
	Shop   shop.Profile
}

// Output is what joining gives. Of the corner, the places in the module's plane are
// left to the caller.
type Output struct {
	Features [2][]board.Feature // slots and bores for the first and the second board
	Corner   board.Corner
	Findings []finding.Finding // in the order of Kinds
}

// A job is one corner being joined.
type job struct {
	Input
	shape Shape
	seats [2]Seat
	width unit.Length // of the joint along v
	out   Output
}

// Join checks a corner, sets its reinforcement out and says what may be claimed of it.
func Join(in Input) Output {
	j := job{Input: in, shape: in.Corner.Shape(), width: min(in.Boards[0].Width, in.Boards[1].Width)}
	j.seats = [2]Seat{j.seat(0), j.seat(1)}
	j.describe()
	j.checkJoint()
	switch in.Kind {
	case Spline, Tenon, Dowel:
		j.hidden()
	case Key:
		j.keys()
	case Screw:
		j.screws()
	}
	j.claim()
	return j.out
}

// seat finds the foot of the inner point from a board's end cut.
func (j *job) seat(i int) Seat {
	b := &j.Boards[i]
	start, end := b.Ends()
	s := Seat{At: board.End, Inside: j.shape.Inside, Thickness: b.Thickness}
	cut, out := end, unit.Length(1)
	if i == 1 {
		s.At, cut, out = board.Start, start, -1
	}
	inner := cut.AtA
	if s.Inside == board.FaceB {
		inner = cut.AtB
	}
	s.Foot = inner - out*j.shape.Sides[i].Inner
	return s
}

// describe fills in what the geometry alone says.
func (j *job) describe() {
	c, s := &j.out.Corner, &j.shape
	c.First, c.Second, c.Number = j.Boards[0].ID, j.Boards[1].ID, j.Number
	c.Interior = s.Interior
	for i := range 2 {
		c.Tilt[i], c.Lead[i] = s.Sides[i].Tilt, s.Sides[i].Lead
	}
	c.GlueArea = unit.Rectangle(s.Plane+max(s.Sides[0].Rebate, s.Sides[1].Rebate), j.width) - j.grooved()
}

// grooved returns how much of the joint's plane grooves take away. A groove that goes
// round the corner is in both boards; it is counted once.
func (j *job) grooved() unit.Area {
	var most unit.Area
	for i := range 2 {
		if i == j.shape.Through {
			continue
		}
		sum := unit.Area(0)
		for _, f := range j.Boards[i].Features {
			if f.Kind == board.Groove && j.runsOut(i, &f) {
				sum += unit.Rectangle(unit.Nearest(f.Depth.MM()/j.shape.Sides[i].Tilt.Cos()), f.Across)
			}
		}
		most = max(most, sum)
	}
	return most
}

// runsOut reports whether a groove in face A or B runs out at this corner.
func (j *job) runsOut(i int, f *board.Feature) bool {
	if f.Enter != board.FaceA && f.Enter != board.FaceB {
		return false
	}
	from, to := j.Boards[i].On(f.Enter)
	if f.Through {
		return true
	}
	if j.seats[i].At == board.Start {
		return f.Mouth.U-f.Along/2 <= from
	}
	return f.Mouth.U+f.Along/2 >= to
}

// face reports whether board i takes its slots in the inner face, as the through board
// of a butt does.
func (j *job) face(i int) bool { return i == j.shape.Through }

// room returns how deep a slot may go into board i that begins at s and is w wide, and
// whether the slot's mouth alone fits.
func (j *job) room(i int, s, w unit.Length) (deep unit.Length, ok bool) {
	t, cover := j.Boards[i].Thickness.MM(), j.cover(i).MM()
	if j.face(i) {
		return unit.Nearest(t - cover), t > cover
	}
	sin, cos := j.shape.Sides[i].Tilt.SinCos()
	left := t - cover - float64((s+w).MM()*cos)
	if sin < 0 {
		ok = left >= 0
		left = float64(s.MM()*cos) - cover
	}
	ok = left > 0 && (sin >= 0 || ok)
	deep = j.Boards[i].Length / 3 // a board's grain has to hold the slot
	if ok && math.Abs(sin) > 1e-6 {
		deep = min(deep, unit.Nearest(min(left/math.Abs(sin), 1e6)))
	}
	return deep, ok
}

// cover returns the wood to be left between a slot and the outside of board i.
func (j *job) cover(i int) unit.Length {
	if j.Boards[i].Thickness < j.Shop.Covers.Thin {
		return j.Shop.Covers.SlotThin
	}
	return j.Shop.Covers.Slot
}

// slot returns a slot or dowel bore in board i: from s along the plane, w wide, d deep,
// and along v between from and to.
func (j *job) slot(i int, s, w, d, from, to unit.Length, round bool) board.Feature {
	f := board.Feature{Kind: board.Slot, Cause: cause(j.Number), Depth: d, After: board.AfterMitre}
	at := s + w/2
	f.Mouth = j.onPlane(i, at)
	f.Mouth.V = from + (to-from)/2
	f.Along, f.Across = to-from, w
	if j.face(i) {
		f.Enter, f.Along, f.Across, f.After = j.seats[i].Inside, w, to-from, board.OnBlank
	} else {
		f.Enter, f.Tilt = j.seats[i].At, j.seats[i].tilt(j.shape.Sides[i].Tilt)
		if f.Tilt == 0 {
			f.After = board.OnBlank
		}
	}
	if round {
		f.Kind, f.Diameter, f.Along, f.Across = board.Bore, w, 0, 0
	}
	return f
}

// onPlane returns the point of the joint's plane at l from the inner point, in board i.
func (j *job) onPlane(i int, l unit.Length) board.Point {
	x, y := l, unit.Length(0)
	if !j.face(i) {
		sin, cos := j.shape.Sides[i].Tilt.SinCos()
		x = j.shape.Sides[i].Inner + unit.Nearest(l.MM()*sin)
		y = unit.Nearest(l.MM() * cos)
	}
	u, w := j.seats[i].place(x, y)
	return board.Point{U: u, W: w}
}
