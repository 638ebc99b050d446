// Package wall places modules on a wall: poses, clearances, cable bands, reach, and
// the wall points of an arrangement.
package wall

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
)

// A Result is one arrangement worked out.
type Result struct {
	Arrangement string
	Wall        string
	Placed      []Placed    // in the order of the poses
	Points      []Point     // in the order of the modules, then x, then height; numbers follow it
	Level       unit.Length // height of the level line above the floor at the wall's left end
	Plumb       unit.Length // x of the plumb line
	Order       []string    // modules in an order in which they can be hung, where one is forced; else empty
	Nearest     []Clearance // the nearest thing to each module, for display
	Findings    []finding.Finding
}

// Placed is a module on the wall.
type Placed struct {
	Module   string
	Outlines []module.Outline // in wall coordinates
	Box      module.Box
	Turn     unit.Angle
	Flip     bool
}

// A Point is one thing to set out on the wall: a rod's axis or a screw's hole.
type Point struct {
	Number         string // "1", "2" … in the stated order
	Module         string
	Bracket        string      // id
	What           string      // "rod" (axis only), "hole" (to be drilled)
	X, Y           unit.Length // exact, from the wall's left end and the floor
	DX, DY         unit.Length // from the plumb and the level line, rounded to the site tape
	RoundX, RoundY unit.Length // rounding applied: DX − exact
	Drill          unit.Length // 0 for an axis
	Depth          unit.Length // from the wall's face
	Screw          unit.Length // nominal diameter
	In             Structure
	Slotted        bool
	Shared         []string // other arrangements of the same wall that use this hole
}

// Structure says what a hole meets.
type Structure struct {
	Kind  string      // "stud", "masonry", "lining", "unknown"
	Stud  int         // number of the stud from the left, from 1
	Edge  unit.Length // from the hole's axis to the nearer edge of the stud; negative outside
	State string      // how well the stud is known
}

// A Clearance is the gap between a module and the nearest thing.
type Clearance struct {
	Module string
	To     string // module or obstacle id, or "left-end", "right-end", "floor", "ceiling"
	Gap    unit.Length
}
