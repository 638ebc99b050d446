// Package joint knows the corners of a module: how two boards end where they meet, and
// how splines, loose tenons, dowels, keys and screws are set out in them. It is the
// only package that knows the kinds of joints.
//
// Two boards, t₁ and t₂ thick, meet at the interior angle θ = 180° − |turn|. Their
// inner faces meet at the inner point P, their outer faces at Q. From P, along each
// board and out of its wood, Q stands off by
//
//	a₁ = (t₂ + t₁·cos θ)/sin θ      a₂ = (t₁ + t₂·cos θ)/sin θ
//
// because the offset lines of the two outer faces meet there (plane trigonometry). A
// mitre runs from P to Q; the blade tilts from square by atan(a/t), which is 90° − θ/2
// when both boards are equally thick. A lead a < 0 means that the long point is on the
// inner face. In a butt the through board ends along the outer face of the other, at
// t/sin θ on its inner face with t the other's thickness, and the other ends on the
// inner face of the through board, with the lead t·cot θ of its own thickness. A rebate
// is a butt at 90° whose other board goes into the through board by half its thickness
// (common practice: a half to two thirds).
package joint

import (
	"math"
	"strconv"

	"ledgewright/engine/board"
	"ledgewright/engine/unit"
)

// Kinds of joints, as they stand in a plan. First and second are the boards in the
// order of the walk.
const (
	Mitre        = "mitre"
	ButtFirst    = "butt-first"    // the first board runs through
	ButtSecond   = "butt-second"   // the second board runs through
	RebateFirst  = "rebate-first"  // the first board runs through and carries the rebate
	RebateSecond = "rebate-second" // the second board runs through and carries the rebate
)

// rebatePart is the part of the board that a rebate takes: common practice.
const rebatePart = 2

// A Corner says how two boards meet.
type Corner struct {
	Number int        // of the board before it, from 1
	Turn   unit.Angle // + to the left; not 0, less than 180° either way
	Joint  string
	First  unit.Length // thickness of the board before the corner
	Second unit.Length // thickness of the board after it
}

// A Side is how one of the two boards ends. Lengths run along the board from the foot
// of the inner point on its inner face, positive out of the wood.
type Side struct {
	Inner  unit.Length // end of the inner face
	Outer  unit.Length // end of the outer face
	Rebate unit.Length // depth of the rebate in the inner face; 0: none
	Over   unit.Length // length of the rebate along the board
	Lead   unit.Length // how far the outer face leads the inner: Outer − Inner
	Tilt   unit.Angle  // blade from square, with the sign of Lead
}

// Reach returns how far the board goes beyond the foot of the inner point.
func (s Side) Reach() unit.Length { return max(s.Inner, s.Outer) }

// A Shape is the geometry of a corner.
type Shape struct {
	Interior unit.Angle  // between the boards, on the side turned to
	Sides    [2]Side     // first and second
	Outer    unit.Length // along the first board from the foot of P to the foot of Q
	Plane    unit.Length // length of the joint's plane across the boards
	Through  int         // which board runs through: 0 or 1; −1 in a mitre
	Inside   board.Face  // the face that both boards have on the inside of the corner
}

// Shape works a corner out. A rebate that is not square is shaped as a butt, and an
// unknown kind as a mitre; [Check] says so.
func (c Corner) Shape() Shape {
	s := Shape{Interior: unit.HalfTurn - c.Turn.Abs(), Through: -1, Inside: board.FaceA}
	if c.Turn < 0 {
		s.Inside = board.FaceB
	}
	sin, cos := s.Interior.SinCos()
	t := [2]float64{c.First.MM(), c.Second.MM()}
	lead := [2]float64{(t[1] + float64(t[0]*cos)) / sin, (t[0] + float64(t[1]*cos)) / sin}
	s.Outer = unit.Nearest(lead[0])
	switch c.Joint {
	case ButtFirst, RebateFirst:
		s.Through = 0
	case ButtSecond, RebateSecond:
		s.Through = 1
	default:
		s.Sides = [2]Side{ending(0, lead[0], t[0]), ending(0, lead[1], t[1])}
		s.Plane = unit.Nearest(math.Hypot(lead[0], t[0]))
		return s
	}
	th := s.Through
	other := 1 - th
	s.Sides[th] = ending(t[other]/sin, lead[th], t[th])
	s.Sides[other] = ending(0, t[other]*cos/sin, t[other])
	s.Plane = unit.Nearest(t[other] / sin)
	if c.rebated() && s.Interior == unit.QuarterTurn {
		s.rebate(th, [2]unit.Length{c.First, c.Second})
	}
	return s
}

func (c Corner) rebated() bool { return c.Joint == RebateFirst || c.Joint == RebateSecond }

// rebate lets the other board into the through board of a square corner.
func (s *Shape) rebate(through int, t [2]unit.Length) {
	deep := t[through] / rebatePart
	s.Sides[through].Rebate, s.Sides[through].Over = deep, t[1-through]
	s.Sides[1-through].Inner += deep
	s.Sides[1-through].Outer += deep
}

// ending returns the side of a board of thickness t that ends at inner and outer.
func ending(inner, outer, t float64) Side {
	s := Side{Inner: unit.Nearest(inner), Outer: unit.Nearest(outer)}
	s.Lead = s.Outer - s.Inner
	s.Tilt = unit.NearestAngle(math.Atan2(outer-inner, t) * (180 / math.Pi))
	return s
}

// A Seat is where a side lies in its board: at which end, and where the foot of the
// inner point is.
type Seat struct {
	At        board.Face // Start or End
	Inside    board.Face // the face that is the inner one at this corner: A or B
	Foot      unit.Length
	Thickness unit.Length
}

// place returns u and w of the point x beyond the foot and y below the inner face.
func (s Seat) place(x, y unit.Length) (u, w unit.Length) {
	if s.Inside == board.FaceB {
		y = s.Thickness - y
	}
	if s.At == board.Start {
		return s.Foot - x, y
	}
	return s.Foot + x, y
}

// tilt returns the tilt of a tool at this end that goes into the wood and, for a
// positive angle, towards the outer face.
func (s Seat) tilt(a unit.Angle) unit.Angle {
	if (s.At == board.End) == (s.Inside == board.FaceA) {
		return -a
	}
	return a
}

// outside returns the face that is the outer one.
func (s Seat) outside() board.Face {
	if s.Inside == board.FaceA {
		return board.FaceB
	}
	return board.FaceA
}

// Cut returns the end cut of a side in its board.
func (s Side) Cut(at Seat, number int) board.Feature {
	in, _ := at.place(s.Inner, 0)
	out, _ := at.place(s.Outer, 0)
	f := board.Feature{Kind: board.EndCut, Cause: cause(number), Enter: at.At, AtA: in, AtB: out, After: board.AfterMitre}
	if at.Inside == board.FaceB {
		f.AtA, f.AtB = out, in
	}
	if f.AtA == f.AtB {
		f.After = board.OnBlank
	}
	return f
}

// Housing returns the rebate of a side in its board, which is width wide, if it has one.
func (s Side) Housing(at Seat, width unit.Length, number int) (board.Feature, bool) {
	if s.Rebate == 0 {
		return board.Feature{}, false
	}
	from, w := at.place(0, 0)
	to, _ := at.place(s.Over, 0)
	return board.Feature{
		Kind: board.Housing, Cause: cause(number), Enter: at.Inside,
		Mouth: board.Point{U: min(from, to) + s.Over/2, V: width / 2, W: w},
		Along: s.Over, Across: width, Depth: s.Rebate, Through: true, After: board.OnBlank,
	}, true
}

// cause is the corner as the cause of a feature.
func cause(number int) board.Cause {
	return board.Cause{What: "corner", ID: strconv.Itoa(number)}
}
