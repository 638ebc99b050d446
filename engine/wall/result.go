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
	Arrangement string            `json:"arrangement"`
	Wall        string            `json:"wall"`
	Placed      []Placed          `json:"placed"`            // in the order of the poses
	Points      []Point           `json:"points"`            // in the order of the modules, then x, then height; numbers follow it
	Level       unit.Length       `json:"level"`             // height of the level line above the floor at the wall's left end
	Plumb       unit.Length       `json:"plumb"`             // x of the plumb line
	Order       []string          `json:"order,omitempty"`   // modules in an order in which they can be hung, where one is forced; else empty
	Nearest     []Clearance       `json:"nearest,omitempty"` // the nearest thing to each module, for display
	Findings    []finding.Finding `json:"-"`                 // stand in the build, worst first
}

// Placed is a module on the wall.
type Placed struct {
	Module   string           `json:"module"`
	Outlines []module.Outline `json:"outlines"` // in wall coordinates
	Box      module.Box       `json:"box"`
	Turn     unit.Angle       `json:"turn"`
	Flip     bool             `json:"flip,omitempty"`
}

// A Point is one thing to set out on the wall: a rod's axis or a screw's hole.
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
	In      Structure   `json:"in"`
	Slotted bool        `json:"slotted,omitempty"`
	Shared  []string    `json:"shared,omitempty"` // other arrangements of the same wall that use this hole
}

// Structure says what a hole meets.
type Structure struct {
	Kind  string      `json:"kind"`            // "stud", "masonry", "lining", "unknown"
	Stud  int         `json:"stud,omitempty"`  // number of the stud from the left, from 1
	Edge  unit.Length `json:"edge,omitempty"`  // from the hole's axis to the nearer edge of the stud; negative outside
	State string      `json:"state,omitempty"` // how well the stud is known
}

// A Clearance is the gap between a module and the nearest thing.
type Clearance struct {
	Module string      `json:"module"`
	To     string      `json:"to"` // module or obstacle id, or "left-end", "right-end", "floor", "ceiling"
	Gap    unit.Length `json:"gap"`
}
