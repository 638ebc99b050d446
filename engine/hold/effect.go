package hold

import (
	"math"

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

// read takes the effect out of an answer.
func (f *model) read(a *beam.Answer) Effect {
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
			e.Members = append(e.Members, b.member(a, k))
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

// member reads one member of a board.
func (b *bar) member(a *beam.Answer, k int) (m MemberForce) {
	id := b.members[k]
	length := b.stations[k+1].u - b.stations[k].u
	start, end := a.Ends(id)
	mid := a.Before(id, length/2)
	m.Start, m.Middle, m.End = start.Mz, mid.Mz, end.Mz
	m.Shear = start.Vy
	if math.Abs(end.Vy) > math.Abs(m.Shear) {
		m.Shear = end.Vy
	}
	m.Twist = start.T
	if math.Abs(end.T) > math.Abs(m.Twist) {
		m.Twist = end.T
	}
	m.Sag = (start.Shift[1]+end.Shift[1])/2 - mid.Shift[1]
	return m
}

// plus returns e and k times o together.
func (e Effect) plus(k float64, o Effect) Effect {
	out := Effect{
		Rods: make([]RodForce, len(e.Rods)), Members: make([]MemberForce, len(e.Members)),
		Links: added(e.Links, k, o.Links), Touches: added(e.Touches, k, o.Touches), Away: added(e.Away, k, o.Away),
		Fronts: added(e.Fronts, k, o.Fronts), Backs: added(e.Backs, k, o.Backs),
	}
	for i, r := range e.Rods {
		p := o.Rods[i]
		out.Rods[i] = RodForce{r.V + k*p.V, r.H + k*p.H, r.N + k*p.N, r.M + k*p.M, r.T + k*p.T}
	}
	for i, m := range e.Members {
		p := o.Members[i]
		out.Members[i] = MemberForce{m.Start + k*p.Start, m.Middle + k*p.Middle, m.End + k*p.End,
			m.Shear + k*p.Shear, m.Twist + k*p.Twist, m.Sag + k*p.Sag}
	}
	return out
}

func added(a []float64, k float64, b []float64) []float64 {
	out := make([]float64, len(a))
	for i := range a {
		out[i] = a[i] + float64(k*b[i])
	}
	return out
}
