// Package wall places modules on a wall: poses, clearances, cable bands, the order of
// hanging, and the wall points of an arrangement.
//
// The wall's frame has x to the right from the wall's left end, y up from the floor at
// that end, z out of the wall. A point p of a module's plane comes to the wall at
//
//	place + R(turn) · F (p − pivot)
//
// where F takes x to −x in a module that is flipped, and is nothing else otherwise. The
// four quarter turns are exact; every other turn is rounded once, to the nanometre.
//
// Whether outlines meet is decided on whole numbers, without rounding; how far they are
// apart is rounded once, to the nanometre. What comes to less than [unit.Touch] counts as
// nothing, because places that come out of trigonometry are no better.
//
// What is not known of a wall is said to be not checked, and never assumed.
package wall

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
)

// A Result is one arrangement worked out.
type Result struct {
	Arrangement string            `json:"arrangement"`
	Wall        string            `json:"wall"`
	Placed      []Placed          `json:"placed"`            // in the order of the poses
	Points      []Point           `json:"points"`            // in the order of the modules, then x, then height; numbers follow it
	Level       unit.Length       `json:"level"`             // height of the level line above the floor at the wall's left end
	Plumb       unit.Length       `json:"plumb"`             // x of the plumb line
	Order       []string          `json:"order,omitempty"`   // modules in an order in which they can be hung, where one is forced; else empty
	Nearest     []Clearance       `json:"nearest,omitempty"` // the nearest thing to each module, for display
	Shims       []Shim            `json:"shims,omitempty"`   // in the order of the modules, then of their brackets
	Findings    []finding.Finding `json:"-"`                 // stand in the build, worst first

	hung   []hung // what Share compares, in the order of Placed
	corner string // the arrangement round the corner to the right
	width  unit.Length
}

// Placed is a module on the wall.
type Placed struct {
	Module   string           `json:"module"`
	Outlines []module.Outline `json:"outlines"` // in wall coordinates, counter-clockwise
	Box      module.Box       `json:"box"`
	Turn     unit.Angle       `json:"turn"`
	Flip     bool             `json:"flip,omitempty"`
}

// A Point is one thing to set out on the wall: a rod's axis or a screw's hole. A rod that
// sits in a hole of its own is that hole.
type Point struct {
	Number  string      `json:"number"` // "1", "2" … in the stated order
	Module  string      `json:"module"`
	Bracket string      `json:"bracket"` // id
	What    string      `json:"what"`    // "rod" (axis only), "hole" (to be drilled)
	X       unit.Length `json:"x"`
	Y       unit.Length `json:"y"` // exact, from the wall's left end and the floor
	DX      unit.Length `json:"dx"`
	DY      unit.Length `json:"dy"` // from the plumb and the level line, rounded to the site tape
	RoundX  unit.Length `json:"roundX"`
	RoundY  unit.Length `json:"roundY"`          // rounding applied: DX − exact
	Drill   unit.Length `json:"drill,omitempty"` // 0 for an axis
	Depth   unit.Length `json:"depth,omitempty"` // from the wall's face
	Screw   unit.Length `json:"screw,omitempty"` // nominal diameter
	Rod     bool        `json:"rod,omitempty"`   // the hole takes a rod
	In      Structure   `json:"in"`
	Band    string      `json:"band,omitempty"`   // what the cable band that it lies in comes from: as Band.From
	Behind  string      `json:"behind,omitempty"` // obstacle that it lies behind
	Slotted bool        `json:"slotted,omitempty"`
	Shared  []string    `json:"shared,omitempty"` // other arrangements of the same wall that use this hole
	Grip    unit.Length `json:"grip,omitempty"`   // how deep the screw or rod sits in the structure

	nth int // place among its fixing's screws
}

// Nth returns which of its fixing's screws a hole is for, from 0.
func (p *Point) Nth() int { return p.nth }

// What a point is.
const (
	Axis = "rod"
	Hole = "hole"
)

// Structure says what a hole meets.
type Structure struct {
	Kind  string      `json:"kind"`            // "stud", "masonry", "lining", "unknown"
	Stud  int         `json:"stud,omitempty"`  // number of the nearest stud from the left, from 1
	Edge  unit.Length `json:"edge,omitempty"`  // from the hole's axis to the nearer edge of the stud; negative outside
	State string      `json:"state,omitempty"` // how well the stud is known
}

// Kinds of structure.
const (
	InStud    = "stud"
	InMasonry = "masonry"
	InLining  = "lining"
	InUnknown = "unknown"
)

// A Clearance is the gap between a module and the nearest thing.
type Clearance struct {
	Module string      `json:"module"`
	To     string      `json:"to"`  // module or obstacle id, or "left-end", "right-end", "floor", "ceiling"
	Gap    unit.Length `json:"gap"` // negative: they overlap, and one of them must move so far, along x or y, to part them
}

// What a module is clear of, besides modules and obstacles.
const (
	LeftEnd  = "left-end"
	RightEnd = "right-end"
	Floor    = "floor"
	Ceiling  = "ceiling"
)

// A Shim goes under one end of a bracket's plate, so that the plate stands plumb on a
// wall that does not.
type Shim struct {
	Module    string      `json:"module"`
	Bracket   string      `json:"bracket"`
	Thickness unit.Length `json:"thickness"`
	Top       bool        `json:"top"` // under the plate's upper end; else under its lower end
}
