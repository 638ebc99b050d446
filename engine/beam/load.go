package beam

import (
	"slices"

	"ledgewright/engine/rank"
)

// A sum of states, one a plane.
type states [4]state

// march returns the states at x, a place of the member on piece p, from those at the start
// of the piece, under the loads of the case. With over the loads at x itself are passed, too.
func (m *mesh) march(p *piece, c *Case, at states, x float64, over bool) states {
	s := &m.shapes[p.member]
	var store [16]float64
	breaks := m.breaks(store[:0], p, c, x)
	from := p.from
	m.jump(p, c, &at, from, over || x > from)
	for _, to := range breaks {
		if to > from {
			ramps := m.ramps(p, c, from, to)
			for n := range at {
				at[n] = s.planes[n].carry(at[n], to-from, ramps[n])
			}
			m.jump(p, c, &at, to, over || to < x)
		}
		from = to
	}
	return at
}

// breaks lists where loads begin, end or stand between the start of the piece and x, and x
// itself, in order.
func (m *mesh) breaks(out []float64, p *piece, c *Case, x float64) []float64 {
	add := func(at float64) {
		if at > p.from && at < x {
			out = append(out, at)
		}
	}
	for i := range c.Points {
		if c.Points[i].Member == p.member {
			add(c.Points[i].At)
		}
	}
	for i := range c.Lines {
		if c.Lines[i].Member == p.member {
			add(c.Lines[i].From)
			add(c.Lines[i].To)
		}
	}
	out = append(out, x)
	rank.Up(out)
	return out
}

// ramps sums the lines that load all of the member from from to to.
func (m *mesh) ramps(p *piece, c *Case, from, to float64) (out [4]ramp) {
	s := &m.shapes[p.member]
	for i := range c.Lines {
		l := &c.Lines[i]
		if l.Member != p.member || l.From > from || l.To < to || l.To == l.From {
			continue
		}
		slope := l.Finish.sub(l.Start).scale(1 / (l.To - l.From))
		value := l.Start.add(slope.scale(from - l.From))
		out = plus(out, s.ramps(value, slope, l.Off))
	}
	return out
}

// ramps turns a load per length in the axes of the frame into those of the planes.
func (s *shape) ramps(value, slope, off Vec) (out [4]ramp) {
	q, dq := s.axes.local(value), s.axes.local(slope)
	m, dm := s.axes.local(off.cross(value)), s.axes.local(off.cross(slope))
	return [4]ramp{
		pull:  {q: q[0], dq: dq[0]},
		bendY: {q[1], dq[1], m[2], dm[2]},
		bendZ: {q[2], dq[2], -m[1], -dm[1]},
		twist: {q: m[0], dq: dm[0]},
	}
}

func plus(a, b [4]ramp) [4]ramp {
	for n := range a {
		a[n].q += b[n].q
		a[n].dq += b[n].dq
		a[n].m += b[n].m
		a[n].dm += b[n].dm
	}
	return a
}

// jump passes the point loads at x of the member that belong to the piece, where over says
// so. A load between two pieces belongs to the one that starts there.
func (m *mesh) jump(p *piece, c *Case, at *states, x float64, over bool) {
	if !over || !m.owns(p, x) {
		return
	}
	s := &m.shapes[p.member]
	for i := range c.Points {
		l := &c.Points[i]
		if l.Member != p.member || (l.At != x && !(l.At > x && x == s.length)) {
			continue
		}
		f := s.axes.local(l.Force)
		t := s.axes.local(l.Moment.add(l.Off.cross(l.Force)))
		at[pull].force -= f[0]
		at[bendY].force -= f[1]
		at[bendY].moment -= t[2]
		at[bendZ].force -= f[2]
		at[bendZ].moment += t[1]
		at[twist].force -= t[0]
	}
}

// owns says whether loads at x of the member belong to p: the end of a piece belongs to the
// next one, the end of the member to its last.
func (m *mesh) owns(p *piece, x float64) bool {
	return x < p.to || p.to == m.shapes[p.member].length
}

// fixed returns the forces that hold the ends of the loaded piece still.
func (m *mesh) fixed(p *piece, c *Case) (f [12]float64) {
	if !c.loads(p.member) {
		return f
	}
	free := m.march(p, c, states{}, p.to, true)
	for n := range free {
		q := &p.planes[n]
		root := q.inverse.on([2]float64{free[n].v, free[n].theta})
		passed := q.transfer.d.on(root)
		ends := [4]float64{root[0], root[1], free[n].force - passed[0], free[n].moment - passed[1]}
		for i, slot := range slots[n].of {
			if slot >= 0 {
				f[slot] = ends[i] * sign(n, i)
			}
		}
	}
	return f
}

// loads says whether the case loads the member itself.
func (c *Case) loads(member int) bool {
	return slices.ContainsFunc(c.Points, func(l Point) bool { return l.Member == member }) ||
		slices.ContainsFunc(c.Lines, func(l Line) bool { return l.Member == member })
}

// total returns what the loads on the piece do about the place origin.
func (m *mesh) total(p *piece, c *Case, origin Vec) (w Wrench) {
	s := &m.shapes[p.member]
	for i := range c.Points {
		if l := &c.Points[i]; l.Member == p.member && l.At >= p.from && m.owns(p, l.At) {
			w.add(l.Force, l.Moment, s.at(l.At).add(l.Off).sub(origin))
		}
	}
	for i := range c.Lines {
		if l := &c.Lines[i]; l.Member == p.member {
			m.sum(p, l, origin, &w)
		}
	}
	return w
}

// sum adds a line's load on the piece: Simpson's rule is exact for the product of the load
// and its lever, both of the first degree.
func (m *mesh) sum(p *piece, l *Line, origin Vec, w *Wrench) {
	from, to := max(l.From, p.from), min(l.To, p.to)
	if to <= from {
		return
	}
	s := &m.shapes[p.member]
	for _, part := range [...]struct{ at, weight float64 }{{from, 1}, {(from + to) / 2, 4}, {to, 1}} {
		share := (part.at - l.From) / (l.To - l.From)
		q := l.Start.add(l.Finish.sub(l.Start).scale(share)).scale(part.weight * (to - from) / 6)
		w.add(q, Vec{}, s.at(part.at).add(l.Off).sub(origin))
	}
}

// add adds a force at the end of lever, and a moment.
func (w *Wrench) add(force, moment, lever Vec) {
	w.Force = w.Force.add(force)
	w.Moment = w.Moment.add(moment).add(lever.cross(force))
}
