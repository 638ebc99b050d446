// Package hardware holds what is bought or made of metal: brackets, screws, light
// strips, drivers and batteries. There are kinds and sizes, no brands.
//
// A bracket is data, not a shape: its plate, every screw's place relative to its rod,
// the rod's least section at the plate, and what stops the module sliding off. A rod's
// core in a metric thread of pitch P is
//
//	d₃ = d − 1.22687 P
//
// (ISO 68-1 and ISO 724, coarse pitches). Diameters of wood screws by gauge are of the
// Wood Handbook, FPL-GTR-282 (2021), table 8-9. Sizes of plates are our own choice, from
// what can be hidden in the shop's thicknesses; each table says what its other figures
// rest on.
package hardware

import "ledgewright/engine/unit"

// Short names, for the tables only.
const (
	mm = unit.Millimetre
	um = unit.Micrometre
	in = unit.Inch
)

// A Basis says what a row rests on.
type Basis string

// The bases.
const (
	Practice Basis = "common practice"
	Assumed  Basis = "our assumption"
	Cited    Basis = "cited" // the source stands above the table
)
