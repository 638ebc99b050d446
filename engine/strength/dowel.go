package strength

import "math"

// A Dowel is a screw or pin in single shear between a side member and a main member that
// may be parted by a gap: for a shelf, a plate or board, the lining, and the stud.
//
// Its allowable push follows from the general dowel equations (American Wood Council,
// Technical Report 12, General Dowel Equations for Calculating Lateral Connection Values,
// table 1-1; the quadratics from memory, and for no gap equal to the six modes of NDS 2018,
// table 12.3.1A, to which the tests hold them). With q = F_e D for each member and the
// plastic moment M = F_yb D³/6 of the dowel, the modes II to IV solve A P² + B P + C = 0.
type Dowel struct {
	Diameter  float64 // root in a threaded shear plane
	Yield     float64 // F_yb, bending yield strength
	Side      Bearing
	Main      Bearing
	Gap       float64
	HeadTurns bool // the side member does not hold the head from turning
}

// A Bearing is what a dowel lies in: its length there and F_e. A Rigid one is a steel plate
// so strong that only the dowel yields.
type Bearing struct {
	Length, Strength float64
	Rigid            bool
}

// A Mode is the way a dowel yields.
type Mode string

// The yield modes.
const (
	ModeIm   Mode = "Im"   // the main member crushes
	ModeIs   Mode = "Is"   // the side member crushes
	ModeII   Mode = "II"   // the dowel turns stiffly in both
	ModeIIIm Mode = "IIIm" // one hinge, at the side member
	ModeIIIs Mode = "IIIs" // one hinge, at the main member
	ModeIV   Mode = "IV"   // two hinges
)

// Push returns the allowable push and the mode that governs, at C_D = 1.
func (d Dowel) Push() (least float64, mode Mode) {
	least = math.Inf(1)
	for _, m := range d.modes() {
		if z := m.load / d.reduction(); z < least {
			least, mode = z, m.mode
		}
	}
	return least, mode
}

type yielding struct {
	mode Mode
	load float64
}

// modes lists the loads at which each mode yields. A rigid side member has neither Is, II
// nor IIIs: it neither crushes nor lets the dowel turn in it.
func (d Dowel) modes() []yielding {
	qm, lm := d.Main.Strength*d.Diameter, d.Main.Length
	mm := d.Yield * d.Diameter * d.Diameter * d.Diameter / 6
	ms := mm
	if d.HeadTurns {
		ms = 0
	}
	if d.Side.Rigid {
		return []yielding{
			{ModeIm, qm * lm},
			{ModeIIIm, root(1/(4*qm), d.Gap+lm/2, -ms-qm*lm*lm/4)},
			{ModeIV, root(1/(2*qm), d.Gap, -ms-mm)},
		}
	}
	qs, ls := d.Side.Strength*d.Diameter, d.Side.Length
	return []yielding{
		{ModeIm, qm * lm},
		{ModeIs, qs * ls},
		{ModeII, root(1/(4*qs)+1/(4*qm), ls/2+d.Gap+lm/2, -qs*ls*ls/4-qm*lm*lm/4)},
		{ModeIIIm, root(1/(2*qs)+1/(4*qm), d.Gap+lm/2, -ms-qm*lm*lm/4)},
		{ModeIIIs, root(1/(4*qs)+1/(2*qm), ls/2+d.Gap, -qs*ls*ls/4-mm)},
		{ModeIV, root(1/(2*qs)+1/(2*qm), d.Gap, -ms-mm)},
	}
}

// root returns the positive root of a x² + b x + c for a > 0, b ≥ 0, c < 0, without the
// difference of near numbers.
func root(a, b, c float64) float64 { return -2 * c / (b + math.Sqrt(float64(b*b)-float64(4*a*c))) }

// reduction returns R_d of NDS 2018, table 12.3.1B, for dowels under 1/4 in: 2.2 up to
// 0.17 in, 10 D + 0.5 above, D in inches; for thicker ones 4 K with K = 1.25, which is that
// of Im and Is across the grain and a little more than the table's for the other modes.
//
// D is the root here. The table says "diameter", and taking the nominal one gives up to
// 9 % less for No 10 and thicker (both readings are in use): [NominalReduction] has it.
func (d Dowel) reduction() float64 { return NominalReduction(d.Diameter) }

// NominalReduction returns R_d for a diameter, as reduction has it.
func NominalReduction(diameter float64) float64 {
	switch in := diameter / inch; {
	case in <= 0.17:
		return 2.2
	case in < 0.25:
		return 10*in + 0.5
	}
	return 5
}
