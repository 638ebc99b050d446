// Package part lists what a job is made of: wooden parts, hardware, consumables.
package part

import "ledgewright/engine/unit"

// A List is the parts of a job.
type List struct {
	Parts    []Part
	Hardware []Item
	Volume   unit.Volume // net, finished wood
	Mass     unit.Mass   // wood at the moisture content in use
	Boards   int
	Glue     unit.Area
}

// A Part is one or more boards that are the same in every cut.
type Part struct {
	Number     int
	Name       string
	Boards     []string // ids, in module order
	Quantity   int
	Wood       string
	Thickness  unit.Length // the smaller of the two cross dimensions
	Width      unit.Length
	Overall    unit.Length // along the grain, long point to long point
	Inside     unit.Length // short point to short point; equal to Overall for square ends
	Start, End string      // keys of words: what each end is ("end.square", "end.mitre", …)
	Edges      []string    // arrises that are treated, as in a plan
	Notes      []Note
	MirrorOf   int      // number of the part that is its mirror twin; 0 if none
	Differs    []string // keys of words saying where the twins differ
}

// A Note is a remark on a part: words with a figure or two.
type Note struct {
	Key     string
	Figures []unit.Length
}

// An Item is bought hardware.
type Item struct {
	Kind     string // key of words, or id in package hardware
	Size     string
	Quantity int
	Length   unit.Length // of each, where it is cut to length
}
