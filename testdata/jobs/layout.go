package jobs

import (
	"math"

	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A layout is the outline of a chain in floats, worked out here on its own so that
// modules can be put beside each other without asking the engine that is under test.
//
// At a corner with interior angle θ between thicknesses t₁ and t₂, P is the point where
// the inner faces meet. Beyond P, along each board, lie the ends of its inner and outer
// faces; with a₁ = (t₂ + t₁ cos θ)/sin θ and a₂ = (t₁ + t₂ cos θ)/sin θ,
//
//	mitre         first: inner 0, outer a₁                second: inner 0, outer a₂
//	first runs    first: inner t₂/sin θ, outer a₁         second: inner 0, outer t₂ cot θ
//	second runs   first: inner 0, outer t₁ cot θ          second: inner t₁/sin θ, outer a₂
type layout struct {
	boards []placed
}

// A placed is one board: the place of its u = 0 on face A, its direction, and where its
// faces begin and end along u.
type placed struct {
	x, y   float64
	dir    float64 // radians
	t      float64
	startA float64
	startB float64
	endA   float64
	endB   float64
}

type ends struct{ inner, outer float64 }

// corner returns how far the two boards of a corner reach beyond P.
func corner(c plan.Corner, t1, t2 float64) (first, second ends) {
	theta := math.Pi - math.Abs(c.Turn.Degrees())*math.Pi/180
	sin, cos := math.Sincos(theta)
	a1, a2 := (t2+t1*cos)/sin, (t1+t2*cos)/sin
	switch c.Joint {
	case plan.ButtFirst:
		return ends{t2 / sin, a1}, ends{0, t2 * cos / sin}
	case plan.ButtSecond:
		return ends{0, t1 * cos / sin}, ends{t1 / sin, a2}
	}
	return ends{0, a1}, ends{0, a2}
}

// sides returns what ends are on faces A and B: the inner face is A where the walk
// turns left.
func (e ends) sides(turn unit.Angle) (a, b float64) {
	if turn > 0 {
		return e.inner, e.outer
	}
	return e.outer, e.inner
}

// lay places the boards of a chain whose lengths are all known.
func lay(m plan.Module) layout {
	var l layout
	for i, b := range m.Boards {
		p := placed{t: b.Thickness.MM()}
		before, start := cornerBefore(m, i)
		after, end := cornerAfter(m, i)
		sa, sb := start.second.sides(before.Turn)
		ea, eb := end.first.sides(after.Turn)
		length := b.Length.Value.MM()
		p.startA, p.startB = max(sa, sb)-sa, max(sa, sb)-sb // the farther face begins at u = 0
		p.endA, p.endB = length-max(ea, eb)+ea, length-max(ea, eb)+eb
		if i > 0 {
			last := l.boards[i-1]
			p.dir = last.dir + before.Turn.Degrees()*math.Pi/180
			u, w := last.innerEnd(before.Turn)
			x, y := last.point(u-start.first.inner, w)
			u, w = p.innerStart(before.Turn)
			dx, dy := p.point(u+start.second.inner, w)
			p.x, p.y = x-dx, y-dy
		}
		l.boards = append(l.boards, p)
	}
	return l
}

// both is what the two boards of a corner reach beyond P.
type both struct{ first, second ends }

// cornerBefore returns the corner at the start of board i; zero where the chain begins.
func cornerBefore(m plan.Module, i int) (plan.Corner, both) {
	n := len(m.Boards)
	if i == 0 && !m.Closed {
		return plan.Corner{}, both{}
	}
	j := (i - 1 + n) % n
	first, second := corner(m.Corners[j], m.Boards[j].Thickness.MM(), m.Boards[i].Thickness.MM())
	return m.Corners[j], both{first, second}
}

// cornerAfter likewise for its end.
func cornerAfter(m plan.Module, i int) (plan.Corner, both) {
	if i == len(m.Boards)-1 && !m.Closed {
		return plan.Corner{}, both{}
	}
	return cornerBefore(plan.Module{Closed: true, Boards: m.Boards, Corners: m.Corners}, (i+1)%len(m.Boards))
}

// innerEnd returns where the face ends that a walk turns to.
func (p placed) innerEnd(turn unit.Angle) (u, w float64) {
	if turn > 0 {
		return p.endA, 0
	}
	return p.endB, p.t
}

// innerStart returns where the face begins that a walk turned to.
func (p placed) innerStart(turn unit.Angle) (u, w float64) {
	if turn > 0 {
		return p.startA, 0
	}
	return p.startB, p.t
}

// point returns the place of (u, w) of the board; w lies to the right of u.
func (p placed) point(u, w float64) (x, y float64) {
	sin, cos := math.Sincos(p.dir)
	return p.x + u*cos + w*sin, p.y + u*sin - w*cos
}

// outline returns the four corners of the board, counter-clockwise.
func (p placed) outline() (q [4][2]float64) {
	q[0][0], q[0][1] = p.point(p.startB, p.t)
	q[1][0], q[1][1] = p.point(p.endB, p.t)
	q[2][0], q[2][1] = p.point(p.endA, 0)
	q[3][0], q[3][1] = p.point(p.startA, 0)
	return q
}

// box returns the least rectangle around the layout, turned by an angle.
func (l layout) box(turn unit.Angle) (minX, minY, maxX, maxY float64) {
	minX, minY, maxX, maxY = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	sin, cos := turn.SinCos()
	for _, p := range l.boards {
		for _, c := range p.outline() {
			x, y := c[0]*cos-c[1]*sin, c[0]*sin+c[1]*cos
			minX, maxX = min(minX, x), max(maxX, x)
			minY, maxY = min(minY, y), max(maxY, y)
		}
	}
	return minX, minY, maxX, maxY
}

// crosses reports whether two boards overlap or come nearer than gap, but for
// neighbours, which meet at their corner.
func (l layout) crosses(closed bool, gap float64) bool {
	n := len(l.boards)
	for i := range n {
		for j := i + 1; j < n; j++ {
			if j == i+1 || closed && i == 0 && j == n-1 {
				if overlap(l.boards[i].outline(), l.boards[j].outline(), -0.01) {
					return true
				}
				continue
			}
			if overlap(l.boards[i].outline(), l.boards[j].outline(), gap) {
				return true
			}
		}
	}
	return false
}

// overlap reports whether two convex outlines have no axis along which they are at
// least gap apart.
func overlap(a, b [4][2]float64, gap float64) bool {
	return !apart(a, b, gap) && !apart(b, a, gap)
}

// apart looks along the normals of a's sides. A negative gap allows so much overlap.
func apart(a, b [4][2]float64, gap float64) bool {
	for i := range a {
		c, d := a[i], a[(i+1)%4]
		nx, ny := d[1]-c[1], c[0]-d[0]
		size := math.Hypot(nx, ny)
		if size < 1e-9 {
			continue
		}
		least := math.Inf(1)
		for _, p := range b {
			least = min(least, ((p[0]-c[0])*nx+(p[1]-c[1])*ny)/size)
		}
		if least >= gap {
			return true
		}
	}
	return false
}
