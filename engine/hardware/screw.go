package hardware

import "ledgewright/engine/unit"

// A Screw is one size of wood screw with a flat head.
type Screw struct {
	ID       string
	Diameter unit.Length // nominal, over the thread
	Root     unit.Length // core of the thread
	Length   unit.Length // under the head's top face: what a flat head leaves in plate and wood
	Thread   unit.Length // threaded part
	Head     unit.Length // diameter of the head
	Pilot    unit.Length // hole to drill in a wooden stud
	Plug     unit.Length // hole to drill for its plug in masonry
	Basis    Basis
}

// FindScrew returns the screw with the given id, and whether there is one.
func FindScrew(id string) (Screw, bool) {
	for _, s := range screws() {
		if s.ID == id {
			return s, true
		}
	}
	return Screw{}, false
}

// Screws returns every screw, thinnest and shortest first.
func Screws() []Screw { s := screws(); return s[:] }

// screws holds the screws. The gauge is nominal 0.060 in + 0.013 in for each number
// (table 8-9 of the handbook); roots, heads and pilots are what screws of these sizes
// are commonly made with and drilled for, not a standard's figures.
func screws() [7]Screw {
	return [...]Screw{
		{"4.5x60", 4500 * um, 3100 * um, 60 * mm, 40 * mm, 9 * mm, 2500 * um, 8 * mm, Practice},
		{"no9x2-1-2in", 4496 * um, 3100 * um, 5 * in / 2, in * 13 / 8, 9 * mm, 2500 * um, 8 * mm, Practice},
		{"no10x3in", 4826 * um, 3300 * um, 3 * in, 2 * in, 9500 * um, 3 * mm, 8 * mm, Practice},
		{"5x70", 5 * mm, 3400 * um, 70 * mm, 42 * mm, 10 * mm, 3 * mm, 8 * mm, Practice},
		{"5x80", 5 * mm, 3400 * um, 80 * mm, 50 * mm, 10 * mm, 3 * mm, 8 * mm, Practice},
		{"6x80", 6 * mm, 4 * mm, 80 * mm, 50 * mm, 12 * mm, 3500 * um, 10 * mm, Practice},
		{"6x100", 6 * mm, 4 * mm, 100 * mm, 60 * mm, 12 * mm, 3500 * um, 10 * mm, Practice},
	}
}
