// Package plan is the document: what somebody decided about a job, and nothing that
// can be worked out from it.
//
// A Plan is a value. Nobody changes a plan in place: an edit returns a new one that
// shares what it did not touch, so two plans whose parts share their storage are
// known to be equal without being read.
package plan

import (
	"ledgewright/engine/document"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Schema names the format of a plan.
const Schema = "ledgewright/plan/1"

// A Plan is one job: walls, modules, and arrangements of the modules on the walls.
type Plan struct {
	Schema       string         `json:"schema"`
	Job          Job            `json:"job"`
	Units        Units          `json:"units"`
	Shop         shop.Profile   `json:"shop"`
	Counters     Counters       `json:"counters"`
	Walls        []Wall         `json:"walls"`
	Modules      []Module       `json:"modules"`
	Arrangements []Arrangement  `json:"arrangements"`
	Extra        document.Extra `json:"-"`
}

// Job is what stands in the title block. None of it leaves the workshop in a link
// unless the maker says so.
type Job struct {
	Number string         `json:"number,omitempty"`
	Title  string         `json:"title,omitempty"`
	Maker  string         `json:"maker,omitempty"`
	Client string         `json:"client,omitempty"`
	Date   string         `json:"date,omitempty"` // ISO 8601
	Note   string         `json:"note,omitempty"`
	Extra  document.Extra `json:"-"`
}

// Units is the one system of a plan and its smallest step for typing.
type Units struct {
	System unit.System    `json:"system"`
	Step   unit.Length    `json:"step"`
	Extra  document.Extra `json:"-"`
}

// Counters hold the last number given to each kind of thing, so that an id is never
// given twice.
type Counters struct {
	Wall        int            `json:"wall,omitempty"`
	Module      int            `json:"module,omitempty"`
	Arrangement int            `json:"arrangement,omitempty"`
	Part        int            `json:"part,omitempty"` // dividers, brackets, lights, obstacles, lines
	Extra       document.Extra `json:"-"`
}

// A Wall is what the survey found. A missing fact stays missing.
type Wall struct {
	ID          string                    `json:"id"` // "w1"
	Name        string                    `json:"name,omitempty"`
	Width       unit.Length               `json:"width"`
	Height      unit.Length               `json:"height"`                // of the wall at its left end
	FloorRise   document.Opt[unit.Length] `json:"floorRise,omitempty"`   // floor at the right end above the floor at the left end
	CeilingRise document.Opt[unit.Length] `json:"ceilingRise,omitempty"` // likewise
	Build       string                    `json:"build,omitempty"`       // a Build… constant; empty: unknown
	Lining      Lining                    `json:"lining,omitempty"`
	Studs       Studs                     `json:"studs,omitempty"`
	Obstacles   []Obstacle                `json:"obstacles,omitempty"`
	CableRule   string                    `json:"cableRule,omitempty"` // key of a rule in package wall; empty: not chosen
	Plumb       []Plumb                   `json:"plumb,omitempty"`
	Flat        []Flat                    `json:"flat,omitempty"`
	FarSide     string                    `json:"farSide,omitempty"` // what is on the other side, in the maker's words
	BuiltYear   document.Opt[int]         `json:"builtYear,omitempty"`
	Extra       document.Extra            `json:"-"`
}

// What a wall is made of.
const (
	BuildStuds    = "studs"            // board or plaster on studs
	BuildLath     = "lath-and-plaster" // on studs
	BuildDabs     = "board-on-dabs"    // board glued to masonry over a cavity
	BuildBrick    = "brick"
	BuildHollow   = "hollow-block"
	BuildAerated  = "aerated-block"
	BuildConcrete = "concrete"
)

// Lining is what lies between the room and the structure.
type Lining struct {
	Kind      string                    `json:"kind,omitempty"`      // "plasterboard", "plaster", "tile-over-plasterboard", "tile-over-plaster", "none"; empty: unknown
	Thickness document.Opt[unit.Length] `json:"thickness,omitempty"` // all layers, tile included
	Extra     document.Extra            `json:"-"`
}

// Studs of a wall: by spacing, or one by one, or both (a stud typed one by one
// stands for the one of the spacing within half a spacing of it).
type Studs struct {
	Material string                    `json:"material,omitempty"` // "wood", "metal"; empty: unknown
	Width    document.Opt[unit.Length] `json:"width,omitempty"`    // face width
	Depth    document.Opt[unit.Length] `json:"depth,omitempty"`
	First    document.Opt[unit.Length] `json:"first,omitempty"` // centre of the first stud from the wall's left end
	Spacing  document.Opt[unit.Length] `json:"spacing,omitempty"`
	State    string                    `json:"state,omitempty"` // of the studs by spacing
	Each     []Stud                    `json:"each,omitempty"`
	Extra    document.Extra            `json:"-"`
}

// How well a stud is known. Only edges found counts as wood to screw into.
const (
	EdgesFound = "edges-found"
	OnePoint   = "one-point"
	Guess      = "guess"
)

// A Stud is one stud, by its centre.
type Stud struct {
	X     unit.Length               `json:"x"`
	Width document.Opt[unit.Length] `json:"width,omitempty"` // missing: that of all studs
	State string                    `json:"state"`
	Extra document.Extra            `json:"-"`
}

// An Obstacle is a rectangle on or before the wall.
type Obstacle struct {
	ID     string                    `json:"id"`   // "o7"
	Kind   string                    `json:"kind"` // an Obstacle… constant
	Name   string                    `json:"name,omitempty"`
	X      unit.Length               `json:"x"` // left edge
	Y      unit.Length               `json:"y"` // lower edge above the floor line
	Width  unit.Length               `json:"width"`
	Height unit.Length               `json:"height"`
	Depth  document.Opt[unit.Length] `json:"depth,omitempty"` // out of the wall; missing: taken as deep
	Extra  document.Extra            `json:"-"`
}

// Kinds of obstacles.
const (
	Socket    = "socket"
	Switch    = "switch"
	Pipe      = "pipe"
	Radiator  = "radiator"
	Window    = "window"
	Door      = "door"
	Picture   = "picture"
	Furniture = "furniture"
	Other     = "other"
)

// Plumb is one reading of how far the wall is out of plumb.
type Plumb struct {
	X     unit.Length    `json:"x"`
	Over  unit.Length    `json:"over"` // height between the two ends of the level
	Lean  unit.Length    `json:"lean"` // the top's distance from plumb; + when the top leans into the room
	Extra document.Extra `json:"-"`
}

// Flat is one reading along a straightedge: + for a hump, − for a hollow.
type Flat struct {
	X       unit.Length    `json:"x"` // left end of the straightedge
	Y       unit.Length    `json:"y"`
	Over    unit.Length    `json:"over"`
	Gap     unit.Length    `json:"gap"`
	Upright bool           `json:"upright,omitempty"` // straightedge held upright
	Extra   document.Extra `json:"-"`
}

// A Module is a chain of boards in a plane parallel to the wall, walked board by
// board, open or closed, with dividers, lights and brackets.
type Module struct {
	ID        string         `json:"id"` // "m1"
	Name      string         `json:"name,omitempty"`
	Depth     unit.Length    `json:"depth"` // wall to front edge
	Wood      string         `json:"wood"`  // id of a species in package wood
	Closed    bool           `json:"closed,omitempty"`
	Boards    []Board        `json:"boards"`
	Corners   []Corner       `json:"corners,omitempty"` // one fewer than boards; as many in a closed module
	Dividers  []Divider      `json:"dividers,omitempty"`
	Lights    []Light        `json:"lights,omitempty"`
	Brackets  []Bracket      `json:"brackets,omitempty"`
	GrainWrap bool           `json:"grainWrap,omitempty"` // figure runs round the corners
	Hung      unit.Angle     `json:"hung,omitempty"`      // turn at which it hangs, [0°, 360°): says which side of a board is below, for lock holes and cleats
	Extra     document.Extra `json:"-"`
}

// A Board is one board of the chain. Its length is the greatest u minus the least u
// over both faces; a missing length is "to close" and computed.
type Board struct {
	Name      string                    `json:"name,omitempty"`
	Length    document.Opt[unit.Length] `json:"length,omitempty"`
	Thickness unit.Length               `json:"thickness"`
	Edges     []Edge                    `json:"edges,omitempty"`
	Extra     document.Extra            `json:"-"`
}

// An Edge says how one arris of a board is treated. An arris that is not named stays
// sharp.
type Edge struct {
	Arris string         `json:"arris"` // "front-a", "front-b", "back-a", "back-b", "start-a", "start-b", "end-a", "end-b"
	Cut   string         `json:"cut"`   // "chamfer", "round"
	Size  unit.Length    `json:"size"`  // leg of a 45° chamfer, or radius
	Extra document.Extra `json:"-"`
}

// A Corner joins a board to the next of the walk.
type Corner struct {
	Turn          unit.Angle     `json:"turn"`  // + to the left; never 0, at most 150° either way
	Joint         string         `json:"joint"` // a Joint… constant
	Reinforcement Reinforcement  `json:"reinforcement,omitempty"`
	Extra         document.Extra `json:"-"`
}

// Kinds of corner joints. First and second are the boards in the order of the walk.
const (
	Mitre        = "mitre"
	ButtFirst    = "butt-first"    // the first board runs through
	ButtSecond   = "butt-second"   // the second board runs through
	RebateFirst  = "rebate-first"  // the first board carries the rebate
	RebateSecond = "rebate-second" // the second board carries the rebate
)

// Reinforcement of a corner. Missing sizes follow the shop's habits.
type Reinforcement struct {
	Kind      string                    `json:"kind,omitempty"`      // "spline", "tenon", "dowel", "key", "screw"; empty: none
	Thickness document.Opt[unit.Length] `json:"thickness,omitempty"` // spline, tenon or key; diameter of a dowel or screw
	Width     document.Opt[unit.Length] `json:"width,omitempty"`     // across the joint: spline or tenon in both slots together
	Count     document.Opt[int]         `json:"count,omitempty"`     // tenons, dowels, keys or screws across the depth
	Extra     document.Extra            `json:"-"`
}

// A Divider is a straight board across the inside, square to the board it starts
// from, as long as it takes to meet the board it ends at.
type Divider struct {
	ID           string                    `json:"id"` // "d3"
	Name         string                    `json:"name,omitempty"`
	From         int                       `json:"from"` // index of the board it starts from, from 1
	To           int                       `json:"to"`   // index of the board it ends at, from 1
	At           unit.Length               `json:"at"`   // its centre line along the starting board, u
	Thickness    unit.Length               `json:"thickness"`
	Start        string                    `json:"start"` // joint at the start: "housed" or "butt"
	End          string                    `json:"end"`
	HousingDepth document.Opt[unit.Length] `json:"housingDepth,omitempty"`
	Edges        []Edge                    `json:"edges,omitempty"`
	Extra        document.Extra            `json:"-"`
}

// A Light is a strip in a groove along one board, or along boards that follow each
// other round their corners.
type Light struct {
	ID        string                    `json:"id"`                  // "l4"
	First     int                       `json:"first"`               // index of the first board, from 1
	Last      int                       `json:"last"`                // index of the last board; less than First when the run passes the closing corner
	Face      string                    `json:"face"`                // "A", "B", or "back"
	FromFront document.Opt[unit.Length] `json:"fromFront,omitempty"` // near side of the groove from the front edge; missing: centred. On the back edge: from face A
	Width     unit.Length               `json:"width"`
	Depth     unit.Length               `json:"depth"`
	StartStop document.Opt[unit.Length] `json:"startStop,omitempty"` // groove stops so far from the run's start; missing: through
	EndStop   document.Opt[unit.Length] `json:"endStop,omitempty"`
	Strip     string                    `json:"strip"` // id in package hardware
	Power     Power                     `json:"power,omitempty"`
	Extra     document.Extra            `json:"-"`
}

// Power says what feeds a light.
type Power struct {
	Source string                    `json:"source,omitempty"` // id of a driver or battery in package hardware; empty: not chosen
	Exit   string                    `json:"exit,omitempty"`   // end of the run where the lead leaves: "start" or "end"
	Lead   document.Opt[unit.Length] `json:"lead,omitempty"`   // length of the lead to the source
	Extra  document.Extra            `json:"-"`
}

// A Bracket is one bracket of a module: which, on which board, how far along.
type Bracket struct {
	ID      string                    `json:"id"`                // "b5"
	Kind    string                    `json:"kind"`              // id in package hardware
	Board   int                       `json:"board,omitempty"`   // index from 1
	Divider string                    `json:"divider,omitempty"` // id, for a bracket on a divider
	At      unit.Length               `json:"at"`                // u of its axis (of its first rod, for a bar)
	Edge    string                    `json:"edge,omitempty"`    // "back" (also when empty) or "front", for a module that is flipped
	Length  document.Opt[unit.Length] `json:"length,omitempty"`  // of a bar, cleat or rail
	Extra   document.Extra            `json:"-"`
}

// An Arrangement places modules on one wall.
type Arrangement struct {
	ID     string         `json:"id"` // "a1"
	Name   string         `json:"name,omitempty"`
	Wall   string         `json:"wall"`
	Poses  []Pose         `json:"poses,omitempty"`
	Lines  []Line         `json:"lines,omitempty"`
	Datum  Datum          `json:"datum,omitempty"`
	Corner string         `json:"corner,omitempty"` // id of the arrangement on the wall round the corner to the right
	Extra  document.Extra `json:"-"`
}

// A Pose places a module: its pivot on the wall, its turn, and whether it is
// flipped (half a turn about the upright axis, before the turn).
type Pose struct {
	Module string         `json:"module"`
	X      unit.Length    `json:"x"`
	Y      unit.Length    `json:"y"`
	Turn   unit.Angle     `json:"turn,omitempty"` // [0°, 360°)
	Flip   bool           `json:"flip,omitempty"`
	Extra  document.Extra `json:"-"`
}

// A Line is a line at a height, to set modules on.
type Line struct {
	ID     string         `json:"id"` // "h6"
	Height unit.Length    `json:"height"`
	Extra  document.Extra `json:"-"`
}

// Datum is the crossing of the level line and the plumb line from which the wall
// points are measured. Each is placed once: from the floor, and from the wall's end.
type Datum struct {
	Level document.Opt[unit.Length] `json:"level,omitempty"` // height of the level line; missing: chosen by package wall
	Plumb document.Opt[unit.Length] `json:"plumb,omitempty"` // x of the plumb line; missing likewise
	Extra document.Extra            `json:"-"`
}
