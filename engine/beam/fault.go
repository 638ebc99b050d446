package beam

import (
	"math"
	"strconv"
)

// What is wrong with a member.
const (
	NoLength    = "has no length"
	NoUp        = "has its Up along its axis"
	NoSection   = "has a section that is not greater than 0"
	NoMaterial  = "has a modulus that is not greater than 0"
	NoNode      = "ends at a node that is not there"
	BedTooStiff = "lies on a bed too stiff for its length"
	Unstrung    = "is free to move by itself: too many of its ends' freedoms are free"
	NotANumber  = "has a figure that is not a number"
)

// A MemberError says what is wrong with a member of a frame.
type MemberError struct {
	Member int
	Name   string
	What   string
}

// Error names the member and what is wrong.
func (e *MemberError) Error() string {
	return "member " + strconv.Itoa(e.Member) + " " + strconv.Quote(e.Name) + " " + e.What
}

// A NodeError says what is wrong with a node of a frame.
type NodeError struct {
	Node int
	Name string
	What string
}

// Error names the node and what is wrong.
func (e *NodeError) Error() string {
	return "node " + strconv.Itoa(e.Node) + " " + strconv.Quote(e.Name) + " " + e.What
}

// A LoadError says what is wrong with a load.
type LoadError struct{ What string }

// Error says what is wrong.
func (e *LoadError) Error() string { return "load: " + e.What }

// A Loose is a frame, or a part of one, that moves without resistance, or with so little
// that the figures would mean nothing.
type Loose struct {
	// Nodes are the nodes of the frame that move, those that move most first.
	Nodes []int
	// Names are their names.
	Names []string
	// Way is the freedom in which the first of them moves most: 0 to 2 a shift along x, y
	// or z, 3 to 5 a turn about it.
	Way int
}

var ways = [6]string{"along x", "along y", "along z", "about x", "about y", "about z"}

// Error names the part and the way it moves.
func (e *Loose) Error() string {
	return "nothing holds " + strconv.Quote(e.Names[0]) + " " + ways[e.Way] + " (moving nodes: " + strconv.Itoa(len(e.Nodes)) + ")"
}

// check returns what is wrong with the frame.
func (f *Frame) check() error {
	for i := range f.Nodes {
		n := &f.Nodes[i]
		if !finite(n.At[:]...) {
			return &NodeError{i, n.Name, NotANumber}
		}
		for _, h := range n.Hold {
			if !finite(h.Stiffness) || h.Stiffness < 0 {
				return &NodeError{i, n.Name, "is held by a stiffness that is not a number of 0 or more"}
			}
		}
	}
	for i := range f.Members {
		if what := f.Members[i].fault(len(f.Nodes)); what != "" {
			return &MemberError{i, f.Members[i].Name, what}
		}
	}
	return nil
}

// fault returns what is wrong with the member, or nothing.
func (b *Member) fault(nodes int) string {
	s := &b.Section
	missing := func(n int) bool { return n < 0 || n >= nodes }
	switch {
	case missing(b.Start.Node) || missing(b.Finish.Node) || b.Bed.OnNode && missing(b.Bed.Node):
		return NoNode
	case !b.finite():
		return NotANumber
	case s.A <= 0 || s.Iy <= 0 || s.Iz <= 0 || s.J <= 0 || s.Ay < 0 || s.Az < 0:
		return NoSection
	case b.Material.E <= 0 || b.Material.G <= 0:
		return NoMaterial
	}
	return ""
}

func (b *Member) finite() bool {
	s, bed := &b.Section, &b.Bed
	ok := finite(s.A, s.Iy, s.Iz, s.J, s.Ay, s.Az, b.Material.E, b.Material.G, bed.X, bed.Y, bed.Z, bed.Twist)
	for _, e := range []*End{&b.Start, &b.Finish} {
		ok = ok && finite(e.Arm[:]...)
		for _, k := range e.Springs {
			ok = ok && finite(k.Stiffness)
		}
	}
	return ok && finite(b.Up[:]...)
}

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// check returns what is wrong with the loads.
func (m *mesh) check(c *Case) error {
	for _, l := range c.Nodes {
		if l.Node < 0 || l.Node >= len(m.frame.Nodes) {
			return &LoadError{"on a node that is not there"}
		}
		if !finite(l.Force[:]...) || !finite(l.Moment[:]...) {
			return &LoadError{"on a node: not a number"}
		}
	}
	for i := range c.Points {
		l := &c.Points[i]
		if err := m.place(l.Member, l.At, l.At); err != nil {
			return err
		}
		if !finite(l.Force[:]...) || !finite(l.Moment[:]...) || !finite(l.Off[:]...) {
			return &LoadError{"at a point: not a number"}
		}
	}
	for i := range c.Lines {
		l := &c.Lines[i]
		if err := m.place(l.Member, l.From, l.To); err != nil {
			return err
		}
		if !finite(l.Start[:]...) || !finite(l.Finish[:]...) || !finite(l.Off[:]...) {
			return &LoadError{"along a line: not a number"}
		}
	}
	return nil
}

// roundingOfPlaces is how far beyond its end, in parts of its length, a load may stand and
// still be on the member.
const roundingOfPlaces = 1e-9

// place returns what is wrong with the places of a load.
func (m *mesh) place(member int, from, to float64) error {
	if member < 0 || member >= len(m.shapes) {
		return &LoadError{"on a member that is not there"}
	}
	length := m.shapes[member].length
	if !(from >= 0 && from <= to && to <= length*(1+roundingOfPlaces)) {
		return &LoadError{"from " + figure(from) + " to " + figure(to) + " on member " + strconv.Itoa(member) + " " +
			strconv.Quote(m.frame.Members[member].Name) + ", which is " + figure(length) + " long"}
	}
	return nil
}

// figure writes a number as short as it can be.
func figure(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
