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
	ID       string
	Boards   []board.Board // chain in walk order, then dividers, then rails
	Corners  []board.Corner
	Fixings  []board.Fixing // in the plan's order of brackets
	Strips   []board.Strip
	Outlines []Outline // front outline of each board, in the order of Boards
	Box      Box       // of all outlines
	Pivot    XY        // centre of Box, rounded down to the nanometre
	Depth    unit.Length
	Volume   unit.Volume // of finished wood, features taken out
	Mass     unit.Mass   // at the moisture content in use, hardware not counted
	Findings []finding.Finding
}

// An XY is a place in a module's plane.
type XY struct{ X, Y unit.Length }

// An Outline is the outline of one board in the module's plane, counter-clockwise,
// housings and rebates taken out.
type Outline struct {
	Board  string
	Points []XY
}

// A Box is a rectangle in a module's plane.
type Box struct{ MinX, MinY, MaxX, MaxY unit.Length }
