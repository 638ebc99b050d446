package hold

import (
	"math"
	"slices"

	"ledgewright/engine/beam"
)

// An Effect is what one case does to the parts that are checked. Effects of one contact
// state add up and grow with their loads.
type Effect struct {
	Rods    []RodForce
	Members []MemberForce // of the boards' members, in their order
	Links   []float64     // what each link carries, N, + where the board is pulled
	Touches []float64     // how hard each place of a back edge bears on the wall, N; + always
	Away    []float64     // how far it moves off the wall, mm
	Fronts  []float64     // how far front edges go down at the stations, mm
	Backs   []float64     // the same of back edges
}

// A RodForce is what a module does to one rod where it leaves the wall.
type RodForce struct {
	V float64 // down, N
	H float64 // to the right, N
	N float64 // out of the wall, N
	M float64 // about the axis to the right: down in front, N mm
	T float64 // about the upright axis: to the right in front, N mm
}

// A MemberForce is what passes through a member of a board.
type MemberForce struct {
	Start, Middle, End float64 // bending moment in the plane of the module, N mm; + opens face A
	Shear              float64 // greatest of the two ends, N
	Twist              float64 // N mm
	Sag                float64 // of the middle below the line between the ends, mm
}

// read takes the effect out of an answer; bare says that no load stands on a member.
func (f *model) read(a *beam.Answer, bare bool) Effect {
	e := Effect{}
	for i := range f.rods {
		e.Rods = append(e.Rods, f.rods[i].read(a))
	}
	for _, l := range f.links {
		c := a.After(l.member, 0)
		e.Links = append(e.Links, c.N)
	}
	for _, t := range f.touches {
		e.Away = append(e.Away, a.Move(t.node).At(t.arm).Shift[2])
	}
	e.Touches = make([]float64, len(f.touches))
	for i := range f.boards {
		b := &f.boards[i]
		for k := range b.members {
			e.Members = append(e.Members, f.member(b, a, k, bare))
		}
		half := b.board.Width.MM() / 2
		for _, s := range b.stations {
			m := a.Move(s.node)
			e.Fronts = append(e.Fronts, -m.At(beam.Vec{0, 0, half}).Shift[1])
			e.Backs = append(e.Backs, -m.At(beam.Vec{0, 0, -half}).Shift[1])
		}
	}
	return e
}

// read returns what the module does to the rod: the cut at its root, from the far side.
func (r *rod) read(a *beam.Answer) RodForce {
	c := a.After(r.root, 0)
	// The rod's own x is out of the wall, y up, z to the left.
	return RodForce{V: -c.Vy, H: -c.Vz, N: c.N, M: -c.Mz, T: c.My}
}

// member reads one member of a board. Between bare ends the moment changes evenly, and the
// middle lies off the line between them by L² (κ1 + κ2) / 16; shear adds nothing there.
func (f *model) member(b *bar, a *beam.Answer, k int, bare bool) (m MemberForce) {
	id := b.members[k]
	length := b.stations[k+1].u - b.stations[k].u
	start, end := a.Ends(id)
	m.Start, m.End = start.Mz, end.Mz
	if bare {
		of := &f.frame.Members[id]
		m.Middle = (start.Mz + end.Mz) / 2
		m.Sag = b.along[0] * length * length * m.Middle / (8 * of.Material.E * of.Section.Iz)
	} else {
		mid := a.Before(id, length/2)
		m.Middle = mid.Mz
		m.Sag = (start.Shift[1]+end.Shift[1])/2 - mid.Shift[1]
	}
	m.Shear = start.Vy
	if math.Abs(end.Vy) > math.Abs(m.Shear) {
		m.Shear = end.Vy
	}
	m.Twist = start.T
	if math.Abs(end.T) > math.Abs(m.Twist) {
		m.Twist = end.T
	}
	return m
}

// plus returns e and k times o together.
func (e Effect) plus(k float64, o Effect) Effect {
	out := e.clone()
	out.add(k, &o)
	return out
}

// clone returns a copy that shares nothing with e.
func (e *Effect) clone() Effect {
	return Effect{
		Rods: slices.Clone(e.Rods), Members: slices.Clone(e.Members), Links: slices.Clone(e.Links),
		Touches: slices.Clone(e.Touches), Away: slices.Clone(e.Away),
		Fronts: slices.Clone(e.Fronts), Backs: slices.Clone(e.Backs),
	}
}

// add adds k times o to e.
func (e *Effect) add(k float64, o *Effect) {
	for i := range e.Rods {
		r, p := &e.Rods[i], &o.Rods[i]
		r.V += float64(k * p.V)
		r.H += float64(k * p.H)
		r.N += float64(k * p.N)
		r.M += float64(k * p.M)
		r.T += float64(k * p.T)
	}
	for i := range e.Members {
		m, p := &e.Members[i], &o.Members[i]
		m.Start += float64(k * p.Start)
		m.Middle += float64(k * p.Middle)
		m.End += float64(k * p.End)
		m.Shear += float64(k * p.Shear)
		m.Twist += float64(k * p.Twist)
		m.Sag += float64(k * p.Sag)
	}
	added(e.Links, k, o.Links)
	added(e.Touches, k, o.Touches)
	added(e.Away, k, o.Away)
	added(e.Fronts, k, o.Fronts)
	added(e.Backs, k, o.Backs)
}

func added(a []float64, k float64, b []float64) {
	for i := range a {
		a[i] += float64(k * b[i])
	}
}
