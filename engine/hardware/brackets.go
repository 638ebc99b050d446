package hardware

import (
	"sync"

	"ledgewright/engine/unit"
)

// Bracket returns the kind with the given id, and whether there is one. A family's
// name alone stands for its size in a board 200 mm deep.
func Bracket(id string) (BracketKind, bool) {
	if IsFamily(id) {
		id = Sized(id, 200*mm, unit.Metric)
	}
	r := find(id)
	if r == nil {
		return BracketKind{}, false
	}
	return r.kind(), true
}

// IsBracket reports whether there is a kind or a family called id.
func IsBracket(id string) bool { return IsFamily(id) || find(id) != nil }

// Brackets returns every kind, family by family, those in millimetres first.
func Brackets() (out []BracketKind) {
	for _, r := range rows() {
		out = append(out, r.kind())
	}
	return out
}

// Of returns every kind of one family, in the order of the table.
func Of(f Family) (out []BracketKind) {
	for _, r := range rows() {
		if r.family == f {
			out = append(out, r.kind())
		}
	}
	return out
}

// rows holds both tables, made on first need: nobody writes to them.
var rows = sync.OnceValue(func() []row {
	metric, inches := metricRows(), inchRows()
	return append(metric[:], inches[:]...)
})

// find returns the row called id, or nil.
func find(id string) *row {
	all := rows()
	for i := range all {
		if all[i].id == id {
			return &all[i]
		}
	}
	return nil
}

// Sized returns the id of a family's size for a board of the given depth in a shop of
// the given system. Any other id comes back as it is; one that does not exist as "".
//
// Rods by depth: up to 150 mm 10, to 220 mm 12, to 280 mm 14, above 16; in inches 3/8
// to 6 in, 1/2 to 9 in, 5/8 above. Two such rods carry 18 to 35 kg on the worse half of
// the board before the steel reaches 141 N/mm², worked out by us.
func Sized(id string, depth unit.Length, system unit.System) string {
	switch f := Family(id); f {
	case PlateBack, RodStructure, PlateUpright, PlateLining:
		return id + "-" + rodFor(depth, system)
	case Bar:
		return id + "-" + rodFor(depth, system) + "-" + pitchFor(system)
	case Cleat, Rail:
		return id + "-" + pitchFor(system)
	case Hook:
		return "hook-keyhole"
	}
	if find(id) != nil {
		return id
	}
	return ""
}

func rodFor(depth unit.Length, system unit.System) string {
	switch inches := system == unit.Inches; {
	case inches && depth <= 6*in:
		return "3-8in"
	case inches && depth <= 9*in:
		return "1-2in"
	case inches:
		return "5-8in"
	case depth <= 150*mm:
		return "10"
	case depth <= 220*mm:
		return "12"
	case depth <= 280*mm:
		return "14"
	}
	return "16"
}

// pitchFor returns the usual pitch of studs: 400 mm, or 16 in.
func pitchFor(system unit.System) string {
	if system == unit.Inches {
		return "16in"
	}
	return "400"
}

// A row is one line of the table.
type row struct {
	id     string
	family Family
	rod    unit.Length
	root   unit.Length // 0: not known
	inWall unit.Length
	drill  unit.Length
	plate  Plate
	screw  string
	pairs  [2]unit.Length // screws so far to both sides of the axis; 0, 0: one on the axis
	slots  slots
	pitch  unit.Length
	strip  Section
	lock   Lock
	basis  Basis
}

// slots says which screws of a row have slotted holes.
type slots uint8

const (
	round     slots = iota // none
	outerSlot              // the outer pair
	allSlots
)

// kind spells a row out.
func (r *row) kind() BracketKind {
	b := BracketKind{
		ID: r.id, Family: r.family, Rod: r.rod, Root: r.root, InWall: r.inWall, Drill: r.drill,
		Plate: r.plate, Screws: r.holes(), Pitch: r.pitch, Strip: r.strip, Lock: r.lock,
		Bevel: r.family == Cleat, Seat: seat(r.family), Attitude: Level, Carries: true, Basis: r.basis,
	}
	switch r.family {
	case PlateUpright:
		b.Attitude = Plumb
	case Hook:
		b.Attitude = Plumb
		b.Carries = r.rod == 0
		if r.rod > 0 {
			b.Reach, b.Seat = 40*mm, OnWall
		}
	case Bar:
		b.Margin = 30 * mm
	case Cleat, Rail:
		b.Margin = 50 * mm
	}
	return b
}

func seat(f Family) Seat {
	switch f {
	case PlateBack, PlateUpright, Bar, Hook:
		return InPocket
	case PlateLining:
		return InLining
	case RodStructure:
		return OnWall
	}
	return InModule
}

// holes returns the holes of a row: beside the axis in a level board, above and below
// it in an upright and in a plate let into the lining.
func (r *row) holes() []Hole {
	if r.screw == "" {
		return nil
	}
	if r.pairs[0] == 0 {
		return []Hole{{Screw: r.screw}}
	}
	out := make([]Hole, 0, 4)
	for i, d := range r.pairs {
		if d == 0 {
			continue
		}
		for _, s := range []unit.Length{-d, d} {
			h := Hole{DU: s, Screw: r.screw, Slotted: r.slots == allSlots || r.slots == outerSlot && i == 1}
			if r.family == PlateLining {
				h.DU, h.DW = 0, s
			}
			out = append(out, h)
		}
	}
	return out
}

// IsFamily reports whether id is a family's name alone.
func IsFamily(id string) bool {
	switch Family(id) {
	case PlateBack, RodStructure, PlateUpright, PlateLining, Bar, Hook, Cleat, Rail:
		return true
	}
	return false
}
