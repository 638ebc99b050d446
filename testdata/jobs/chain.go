package jobs

import (
	"math"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// chain draws the boards and corners of a module: open, or closed. Every board is
// longer than its ends take.
func (r *random) chain() plan.Module {
	for range 200 {
		var m plan.Module
		if r.chance(35) {
			m = r.ring()
		} else {
			m = r.open()
		}
		if !r.simple || !lay(m).crosses(m.Closed, 2) {
			if m.Closed {
				return r.closing(m)
			}
			return m
		}
	}
	return plan.Module{Boards: []plan.Board{board(600*mm, 26*mm)}}
}

// open draws an open chain of one to six boards.
func (r *random) open() (m plan.Module) {
	n := one(&r.draw, 1, 2, 2, 3, 3, 3, 4, 5, 6)
	for i := range n {
		m.Boards = append(m.Boards, plan.Board{Thickness: r.thickness()})
		if i > 0 {
			m.Corners = append(m.Corners, r.corner(r.turn()))
		}
	}
	r.even(&m)
	for i := range m.Boards {
		least := r.taken(m, i) + 60*mm
		m.Boards[i].Length = document.Some(r.size(least, max(least+50*mm, 900*mm)))
	}
	return m
}

// thickness draws a thickness, most often one that shops work in.
func (r *random) thickness() unit.Length {
	if r.chance(30) {
		return r.size(14*mm, 45*mm)
	}
	if r.system == unit.Inches {
		return one(&r.draw, in*13/16, in*33/32, in*5/4)
	}
	return one(&r.draw, 20*mm, 24*mm, 26*mm, 26*mm, 32*mm)
}

// even gives all boards one thickness in most modules.
func (r *random) even(m *plan.Module) {
	if r.chance(60) {
		for i := range m.Boards {
			m.Boards[i].Thickness = m.Boards[0].Thickness
		}
	}
}

// turn draws a turn: a right angle in half of all, else any in ±150°.
func (r *random) turn() unit.Angle {
	a := 90 * deg
	switch {
	case r.chance(50):
	case r.chance(60):
		a = one(&r.draw, 30*deg, 45*deg, 60*deg, 120*deg, 135*deg, 150*deg, deg*45/2)
	default:
		a = 2*deg + unit.Angle(r.upTo(int(148*deg)+1))
	}
	if r.chance(50) {
		return -a
	}
	return a
}

// corner draws the joint and what reinforces it.
func (r *random) corner(turn unit.Angle) plan.Corner {
	c := plan.Corner{Turn: turn, Joint: plan.Mitre, Extra: r.extra()}
	switch {
	case r.chance(70):
	case turn.Abs() == 90*deg:
		c.Joint = one(&r.draw, plan.ButtFirst, plan.ButtSecond, plan.RebateFirst, plan.RebateSecond)
	case turn.Abs() > 40*deg: // a butt joint of boards that are nearly in line has no end
		c.Joint = one(&r.draw, plan.ButtFirst, plan.ButtSecond)
	}
	k := &c.Reinforcement
	k.Kind = one(&r.draw, "", "spline", "spline", "tenon", "dowel", "key", "screw")
	if k.Kind == "" {
		return c
	}
	k.Thickness, k.Width = r.maybe(25, 3*mm, 8*mm), r.maybe(20, 12*mm, 30*mm)
	if r.chance(25) {
		k.Count = document.Some(1 + r.upTo(4))
	}
	k.Extra = r.extra()
	return c
}

// taken returns how much of board i its two ends take: what one face is longer than
// the other at each, and the other board of a joint that lies on it.
func (r *random) taken(m plan.Module, i int) unit.Length {
	_, start := cornerBefore(m, i)
	_, end := cornerAfter(m, i)
	more := math.Abs(start.second.inner-start.second.outer) + math.Abs(end.first.inner-end.first.outer) +
		max(start.second.inner, 0) + max(end.first.inner, 0)
	return unit.Nearest(more)/mm*mm + mm
}

// ring draws a closed chain with all its lengths: a rectangle, a regular polygon, an
// L, or a convex polygon with its corners on a circle.
func (r *random) ring() plan.Module {
	m := plan.Module{Closed: true}
	var turns []unit.Angle
	var lengths []float64
	switch r.upTo(4) {
	case 0:
		w, h := r.size(250*mm, 900*mm).MM(), r.size(250*mm, 700*mm).MM()
		turns, lengths = []unit.Angle{90 * deg, 90 * deg, 90 * deg, 90 * deg}, []float64{w, h, w, h}
	case 1:
		turns, lengths = regular(3+r.upTo(6), r.size(220*mm, 420*mm).MM())
	case 2:
		w, h, a, b := r.size(400*mm, 900*mm).MM(), r.size(220*mm, 420*mm).MM(), r.size(180*mm, 250*mm).MM(), r.size(220*mm, 420*mm).MM()
		turns = []unit.Angle{90 * deg, 90 * deg, -90 * deg, 90 * deg, 90 * deg, 90 * deg}
		lengths = []float64{w, h, a, b, w - a, h + b}
	default:
		turns, lengths = r.onCircle(3 + r.upTo(5))
	}
	other := r.chance(50)
	for i, a := range turns {
		if other {
			a = -a
		}
		m.Corners = append(m.Corners, r.corner(a))
		m.Boards = append(m.Boards, board(unit.Nearest(lengths[i])/mm*mm, r.thickness()))
	}
	r.even(&m)
	for i := range m.Boards {
		b := &m.Boards[i]
		b.Length.Value = max(b.Length.Value, r.taken(m, i)+40*mm)
		if r.system == unit.Inches {
			b.Length.Value = b.Length.Value / (in / 32) * (in / 32)
		}
	}
	return m
}

// regular returns the turns and lengths of a regular polygon. What the turns lack of a
// full one is in the last.
func regular(n int, side float64) (turns []unit.Angle, lengths []float64) {
	each := unit.NearestAngle(360 / float64(n))
	for range n {
		turns, lengths = append(turns, each), append(lengths, side)
	}
	turns[n-1] = unit.FullTurn - each*unit.Angle(n-1)
	return turns, lengths
}

// onCircle returns the turns and lengths of a polygon with n corners on a circle, none
// of which turns by more than 150°.
func (r *random) onCircle(n int) (turns []unit.Angle, lengths []float64) {
	radius := r.size(320*mm, 520*mm).MM()
	least := 30 // degrees of an arc; the corner across from it turns by 180° less half
	if n == 3 {
		least = 60
	}
	arcs := make([]float64, n)
	for i := range arcs {
		arcs[i] = float64(least)
	}
	for range 360 - least*n {
		arcs[r.upTo(n)]++
	}
	sum := unit.Angle(0)
	for i, a := range arcs {
		// A corner of an inscribed polygon turns by half of the two arcs beside it.
		turn := unit.NearestAngle((a + arcs[(i+1)%n]) / 2)
		turns, lengths = append(turns, turn), append(lengths, 2*radius*math.Sin(a*math.Pi/360))
		sum += turn
	}
	turns[n-1] += unit.FullTurn - sum
	return turns, lengths
}

// closing leaves two boards of a closed chain without a length.
func (r *random) closing(m plan.Module) plan.Module {
	n := len(m.Boards)
	m.Boards[n-2].Length, m.Boards[n-1].Length = document.Opt[unit.Length]{}, document.Opt[unit.Length]{}
	return m
}
