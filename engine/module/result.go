// Package module turns a plan's module into its boards, exact, in the module's frame.
//
// The chain is walked board by board. The first board starts at the origin and runs
// along +x; the module's frame is whatever that gives. A pose turns it on the wall.
package module

import (
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
)

// A Result is a module worked out.
type Result struct {
	ID       string            `json:"id"`
	Name     string            `json:"name,omitempty"` // what the maker calls it
	Boards   []board.Board     `json:"boards"`         // chain in walk order, then dividers, then rails
	Corners  []board.Corner    `json:"corners,omitempty"`
	Fixings  []board.Fixing    `json:"fixings,omitempty"` // in the plan's order of brackets
	Strips   []board.Strip     `json:"strips,omitempty"`
	Outlines []Outline         `json:"outlines"` // front outline of each board, in the order of Boards
	Box      Box               `json:"box"`      // of all outlines
	Pivot    XY                `json:"pivot"`    // centre of Box, rounded down to the nanometre
	Depth    unit.Length       `json:"depth"`
	Hung     unit.Angle        `json:"hung,omitempty"` // turn at which it hangs, as in the plan: says what is level
	Volume   unit.Volume       `json:"volume"`         // of finished wood, features taken out
	Mass     unit.Mass         `json:"mass"`           // at the moisture content in use, hardware not counted
	Findings []finding.Finding `json:"-"`              // stand in the build, worst first
}

// An XY is a place in a module's plane.
type XY struct{ X, Y unit.Length }

// An Outline is the outline of one board in the module's plane, counter-clockwise,
// housings and rebates taken out.
type Outline struct {
	Board  string `json:"board"`
	Points []XY   `json:"points"`
}

// A Box is a rectangle in a module's plane.
type Box struct{ MinX, MinY, MaxX, MaxY unit.Length }
