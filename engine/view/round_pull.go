package view

import (
	"math"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
)

// How a module is pulled apart. Walking the chain, each board goes away from the one before
// it along the line between the two boards' axes, u₁ + u₂. For boards of one thickness
// that is square to their mitre; a butt slides along its face and lifts off it. In a ring
// that always turns the same way the gaps are in proportion to sin(|turn|/2): then they
// add up to nothing round the ring, because with n the outward normals of the boards the
// step from one to the next is n₂ − n₁. A divider stands halfway between the boards that it
// is let into; where they do not open wide enough it comes forward. All boards come off
// the wall far enough to clear their rods and rails, rails half as far; a wall's cleat stays.
const (
	pullGap   = 120.0 // at a joint
	pullClear = 40.0  // that is left to a rod's tip, and more between modules
	pullFree  = 60.0  // that a divider wants at its ends together
)

// pull sets how far each board of a module goes.
func (r *Round) pull(m *module.Result, parts []*part) {
	out := pullClear
	for i := range m.Fixings {
		for _, rod := range m.Fixings[i].Rods {
			out = max(out, pullClear+rod.InBoard.MM())
		}
	}
	for _, p := range parts {
		if p.b.Role == board.Rail {
			out = max(out, 2*(pullClear+p.b.Width.MM()))
		}
	}
	n := 0
	for n < len(parts) && parts[n].b.Role == board.Chain {
		n++
	}
	chain := parts[:n]
	steps := pullSteps(chain, closedRing(m, n))
	var at, sum spot
	for i, p := range chain {
		if i > 0 {
			at = at.plus(steps[i-1], pullGap)
		}
		p.shift = at
		sum = sum.plus(at, 1/float64(n))
	}
	for _, p := range chain {
		p.shift = p.shift.plus(sum, -1)
		p.shift.z = out
	}
	for _, p := range parts[n:] {
		if p.b.Role == board.Rail {
			p.shift = rests(m, p, parts).shift
			p.shift.z = out / 2
			if strings.HasSuffix(p.id, "b") {
				p.shift.z = 0 // of two cleats the second is the wall's
			}
		} else {
			p.pullOut(m, parts, out)
		}
	}
}

// closedRing reports whether the last board of a chain of n meets the first.
func closedRing(m *module.Result, n int) bool {
	for i := range m.Corners {
		if m.Corners[i].Number == n {
			return true
		}
	}
	return false
}

// pullSteps returns the way from each board of a chain to the next.
func pullSteps(chain []*part, ring bool) []spot {
	n := len(chain)
	steps := make([]spot, n)
	turns := make([]float64, n)
	for i, p := range chain {
		a, b := p.axes[0], chain[(i+1)%n].axes[0]
		turns[i] = a.x*b.y - a.y*b.x
		d := a.plus(b, 1)
		steps[i] = spot{}.plus(d, 1/max(d.size(), 0.1))
		ring = ring && turns[i]*turns[0] > 0
	}
	for i, p := range chain {
		if ring {
			cos := p.axes[0].dot(chain[(i+1)%n].axes[0])
			steps[i] = spot{}.plus(steps[i], math.Sqrt(max(1-cos, 0))) // √2·sin(|turn|/2)
		}
	}
	return steps
}

// rests returns the board that the bracket of a rail is on.
func rests(m *module.Result, rail *part, parts []*part) *part {
	for i := range m.Fixings {
		if !strings.HasPrefix(rail.id, m.Fixings[i].Bracket) {
			continue
		}
		for _, p := range parts {
			if p.id == m.Fixings[i].Board {
				return p
			}
		}
	}
	return parts[0]
}

// pullOut sets how far a divider goes.
func (p *part) pullOut(m *module.Result, parts []*part, out float64) {
	var hosts []*part
	for i := range m.Corners {
		c := &m.Corners[i]
		if c.Number != 0 || c.First != p.id && c.Second != p.id {
			continue
		}
		for _, q := range parts {
			if q != p && (q.id == c.First || q.id == c.Second) {
				hosts = append(hosts, q)
			}
		}
	}
	p.shift = spot{z: out}
	if len(hosts) == 0 {
		return
	}
	a, b := hosts[0], hosts[len(hosts)-1]
	p.shift.x, p.shift.y = (a.shift.x+b.shift.x)/2, (a.shift.y+b.shift.y)/2
	opens := b.shift.minus(a.shift).dot(p.axes[0])
	if b.center().minus(a.center()).dot(p.axes[0]) < 0 {
		opens = -opens
	}
	if opens < pullFree {
		p.shift.z += p.b.Width.MM() + pullFree
	}
}

func (p *part) center() spot {
	return p.place3(p.b.Length.MM()/2, p.b.Width.MM()/2, p.b.Thickness.MM()/2)
}

func (p *part) place3(u, v, w float64) spot {
	return p.origin.plus(p.axes[0], u).plus(p.axes[1], v).plus(p.axes[2], w)
}

// A bounds is a box in space.
type bounds struct{ lo, hi spot }

func noBounds() bounds {
	inf := math.Inf(1)
	return bounds{spot{inf, inf, inf}, spot{-inf, -inf, -inf}}
}

func (b bounds) with(p spot) bounds {
	return bounds{
		spot{min(b.lo.x, p.x), min(b.lo.y, p.y), min(b.lo.z, p.z)},
		spot{max(b.hi.x, p.x), max(b.hi.y, p.y), max(b.hi.z, p.z)},
	}
}

func (b bounds) middle() spot { return spot{}.plus(b.lo.plus(b.hi, 1), 0.5) }

// bounds is the box round a part, shifted by a share of its shift.
func (p *part) bounds(t float64) bounds {
	b := noBounds()
	for _, ring := range p.hull.polys {
		for _, q := range ring {
			b = b.with(q.plus(p.shift, t))
		}
	}
	return b
}

// moduleBounds returns the boxes of the modules.
func (r *Round) moduleBounds(t float64) []bounds {
	out := make([]bounds, r.modules)
	for i := range out {
		out[i] = noBounds()
	}
	for _, p := range r.parts {
		b := p.bounds(t)
		out[p.module] = out[p.module].with(b.lo).with(b.hi)
	}
	return out
}

// spread moves the modules away from the middle of all, so that those which stood apart
// stand a little farther apart when they are opened: in proportion to where they stand, by
// as much as the closest pair asks for.
func (r *Round) spread() {
	before, after := r.moduleBounds(0), r.moduleBounds(1)
	share := 0.0
	for i := range before {
		for j := range i {
			share = max(share, asks(before[i], before[j], after[i], after[j]))
		}
	}
	all := noBounds()
	for _, b := range before {
		all = all.with(b.lo).with(b.hi)
	}
	if len(r.parts) == 0 {
		return
	}
	r.middle, r.growth = all.middle(), share
	for _, p := range r.parts {
		d := before[p.module].middle().minus(r.middle)
		p.shift = p.shift.plus(spot{d.x, d.y, 0}, share)
	}
}

// asks returns the share by which two boxes must move apart to stay apart when they grow.
func asks(a, b, grownA, grownB bounds) float64 {
	best := math.Inf(1)
	for _, k := range [...]func(spot) float64{func(s spot) float64 { return s.x }, func(s spot) float64 { return s.y }} {
		if k(a.lo) > k(b.lo) {
			a, b, grownA, grownB = b, a, grownB, grownA
		}
		if k(a.hi) > k(b.lo) {
			continue
		}
		over := k(grownA.hi) - k(grownB.lo) - (k(a.hi) - k(b.lo)) + pullClear
		apart := k(b.middle()) - k(a.middle())
		best = min(best, max(over, 0)/apart)
	}
	if d := b.middle().minus(a.middle()).size(); math.IsInf(best, 1) && d > 1 { // let into each other, as a comb
		return (grownA.grewBy(a) + grownB.grewBy(b) + pullClear) / d
	}
	if math.IsInf(best, 1) {
		return 0 // one lies on the other
	}
	return best
}

// grewBy returns by how much a box is wider or higher than another, each side.
func (b bounds) grewBy(o bounds) float64 {
	d := b.hi.minus(b.lo).minus(o.hi.minus(o.lo))
	return max(d.x, d.y, 0) / 2
}
