package beam

import "math"

// A plane is one of the four independent systems of a member: bending in two planes, and,
// with no bending in it, pull and torsion, which obey the same equations with θ = 0:
//
//	v′ = θ + V flexShear    θ′ = M flexBend    M′ = −V − m    V′ = bed v − q
type plane struct{ flexShear, flexBend, bed float64 }

// A state is what a plane carries at a place of the member.
type state struct{ v, theta, moment, force float64 }

// A load on a stretch of a plane: value at its start and growth per length.
type ramp struct{ q, dq, m, dm float64 }

// precision ends the power series: a term below this part of the largest so far cannot
// change a sum of numbers with 53 bits.
const precision = 1.0 / (1 << 60)

// carry returns the state at h from the state at 0 under the load r.
//
// Put power series into the four equations and compare coefficients: the coefficients of
// power n+1 follow from those of power n. Without a bed all are 0 beyond the fifth power.
// With one, members are cut (see pieces) so that the series ends after some 20.
func (p plane) carry(s state, h float64, r ramp) state {
	if p.bed == 0 {
		return p.carryFree(s, h, r)
	}
	term, sum := s, s
	peak := state{math.Abs(s.v), math.Abs(s.theta), math.Abs(s.moment), math.Abs(s.force)}
	quiet := 0
	for n := 0; quiet < 4; n++ {
		term = p.next(term, n, h, r)
		sum.add(term)
		if peak.rise(term) {
			quiet = 0
		} else {
			quiet++
		}
	}
	return sum
}

// carryFree is carry without a bed: five powers are all.
func (p plane) carryFree(s state, h float64, r ramp) state {
	term, sum := s, s
	for n := range 5 {
		term = p.next(term, n, h, r)
		sum.add(term)
	}
	return sum
}

// next returns the term of power n+1 from that of power n.
func (p plane) next(term state, n int, h float64, r ramp) state {
	q, m := r.at(n, h)
	by := h / float64(n+1)
	return state{
		v:      (term.theta + float64(term.force*p.flexShear)) * by,
		theta:  term.moment * p.flexBend * by,
		moment: (-term.force - m) * by,
		force:  (float64(p.bed*term.v) - q) * by,
	}
}

// at returns the terms of the load with power n of the place, times h to that power.
func (r ramp) at(n int, h float64) (q, m float64) {
	switch n {
	case 0:
		return r.q, r.m
	case 1:
		return r.dq * h, r.dm * h
	}
	return 0, 0
}

func (s *state) add(t state) {
	s.v += t.v
	s.theta += t.theta
	s.moment += t.moment
	s.force += t.force
}

// rise keeps the largest sizes in s and says whether any part of t still counts.
func (s *state) rise(t state) bool {
	v, theta := math.Abs(t.v), math.Abs(t.theta)
	moment, force := math.Abs(t.moment), math.Abs(t.force)
	counts := v > s.v*precision || theta > s.theta*precision ||
		moment > s.moment*precision || force > s.force*precision
	s.v, s.theta = max(s.v, v), max(s.theta, theta)
	s.moment, s.force = max(s.moment, moment), max(s.force, force)
	return counts
}

// reach returns the greatest length over which the series of the plane is short: where
// bed h⁴ flexBend ≤ 16 and bed h² flexShear ≤ 4.
func (p plane) reach() float64 {
	h := math.Inf(1)
	if k := p.bed * p.flexBend; k > 0 {
		h = 2 / math.Sqrt(math.Sqrt(k))
	}
	if k := p.bed * p.flexShear; k > 0 {
		h = min(h, 2/math.Sqrt(k))
	}
	return h
}

// A stiff is the stiffness of a plane between its ends in the order v, θ at the start,
// v, θ at the end; where the plane does not bend its θ have none.
type stiff [4][4]float64

// A transfer is what carry does to the four unit states, split by displacements (v, θ) and
// forces (V, M): d2 = a d1 + b f1, f2 = c d1 + d f1.
type transfer struct{ a, b, c, d two }

// two is a matrix of two rows.
type two [2][2]float64

// over returns the transfer over the length h.
func (p plane) over(h float64) transfer {
	units := [4]state{{v: 1}, {theta: 1}, {force: 1}, {moment: 1}}
	var t transfer
	for j, u := range units {
		s := p.carry(u, h, ramp{})
		d, f := &t.a, &t.c
		if j >= 2 {
			d, f = &t.b, &t.d
		}
		d[0][j%2], d[1][j%2], f[0][j%2], f[1][j%2] = s.v, s.theta, s.force, s.moment
	}
	return t
}

// bInverse returns the inverse of b; of a plane that does not bend only its first element
// counts.
func (t *transfer) bInverse(bends bool) two {
	if !bends {
		return two{{1 / t.b[0][0], 0}, {0, 0}}
	}
	det := float64(t.b[0][0]*t.b[1][1]) - float64(t.b[0][1]*t.b[1][0])
	return two{{t.b[1][1] / det, -t.b[0][1] / det}, {-t.b[1][0] / det, t.b[0][0] / det}}
}

// times returns m n.
func (m two) times(n two) (out two) {
	for i := range 2 {
		for j := range 2 {
			out[i][j] = float64(m[i][0]*n[0][j]) + float64(m[i][1]*n[1][j])
		}
	}
	return out
}

// on returns m x.
func (m two) on(x [2]float64) [2]float64 {
	return [2]float64{
		float64(m[0][0]*x[0]) + float64(m[0][1]*x[1]),
		float64(m[1][0]*x[0]) + float64(m[1][1]*x[1]),
	}
}

// stiffness returns what the ends of a plane of length h must be pushed with per
// displacement. From d2 = a d1 + b f1: the start is pushed with −f1 = b⁻¹a d1 − b⁻¹d2, the
// end with f2 = c d1 + d f1.
func (p plane) stiffness(h float64) (k stiff, inverse two, t transfer) {
	t = p.over(h)
	inverse = t.bInverse(p.flexBend > 0)
	ba := inverse.times(t.a)
	dba, db := t.d.times(ba), t.d.times(inverse)
	bends := 1
	if p.flexBend > 0 {
		bends = 2
	}
	for i := range bends {
		for j := range bends {
			k[i][j] = ba[i][j]
			k[i][j+2] = -inverse[i][j]
			k[i+2][j] = t.c[i][j] - dba[i][j]
			k[i+2][j+2] = db[i][j]
		}
	}
	k.even()
	return k, inverse, t
}

// even takes the mean of what by reciprocity is the same.
func (k *stiff) even() {
	for i := range 4 {
		for j := range i {
			mean := (k[i][j] + k[j][i]) / 2
			k[i][j], k[j][i] = mean, mean
		}
	}
}
