// Package part lists what a job is made of: wooden parts, hardware, consumables.
//
// Boards that are the same piece of wood make one part. A part's sizes are finished
// sizes, without allowance:
//
//	overall = greatest u − least u      along the grain, long point to long point
//	inside  = overall − what mitres, housings take at each end: short point to short point
//
// where a divider's inside length is what is seen of it between its housings. Numbers
// follow the order of the modules and, in a module, of its boards: chain, dividers,
// rails. Rough sizes are of package stock.
package part

import (
	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// A List is the parts of a job.
type List struct {
	Parts    []Part      `json:"parts"`
	Hardware []Item      `json:"hardware"` // brackets, rods, locks, screws, joint pieces, strips, channels, sources
	Volume   unit.Volume `json:"volume"`   // net, finished wood
	Mass     unit.Mass   `json:"mass"`     // wood at the moisture content in use
	Boards   int         `json:"boards"`
	Glue     unit.Area   `json:"glue"` // in joints and in their slots
}

// A Part is one or more boards that are the same in every cut.
type Part struct {
	Number    int         `json:"number"`
	Name      string      `json:"name"`   // what the maker calls all of them, or what they are
	Boards    []string    `json:"boards"` // ids, in module order
	Quantity  int         `json:"quantity"`
	Wood      string      `json:"wood"`
	Thickness unit.Length `json:"thickness"` // the smaller of the two cross dimensions
	Width     unit.Length `json:"width"`
	Overall   unit.Length `json:"overall"` // along the grain, long point to long point
	Inside    unit.Length `json:"inside"`  // short point to short point; equal to Overall for square ends
	Start     string      `json:"start"`
	End       string      `json:"end"`             // keys of words: what each end is ("end.square", "end.mitre", …)
	Edges     []string    `json:"edges,omitempty"` // arrises that are treated, as in a plan
	Notes     []Note      `json:"notes,omitempty"`
	MirrorOf  int         `json:"mirrorOf,omitempty"` // number of the part that is its mirror twin; 0 if none
	Differs   []string    `json:"differs,omitempty"`  // keys of words saying where the twins differ
}

// A Note is a remark on a part: words with a figure or two.
type Note struct {
	Key     string        `json:"key"`
	Count   int           `json:"count,omitempty"` // of what it speaks of
	Figures []unit.Length `json:"figures,omitempty"`
	Angle   unit.Angle    `json:"angle,omitempty"`
}

// An Item is bought hardware.
type Item struct {
	Kind     string      `json:"kind"` // key of words, or id in package hardware
	Size     string      `json:"size,omitempty"`
	Quantity int         `json:"quantity"`
	Length   unit.Length `json:"length,omitempty"` // of each, where it is cut to length
}

// Of returns the parts of a job.
func Of(modules []module.Result, s shop.Profile) List {
	counts := make([]Counted, len(modules))
	for i := range modules {
		counts[i] = Count(modules[i], s)
	}
	return Merge(counts)
}

// A Counted is what one module adds to a list. It depends on the module alone and can be
// kept as long as the module is the same.
type Counted struct {
	boards []counted
	items  []item
	volume unit.Volume
	mass   unit.Mass
	glue   unit.Area
}

// Count returns what a module adds to a list.
func Count(m module.Result, s shop.Profile) Counted {
	c := Counted{boards: make([]counted, len(m.Boards)), volume: m.Volume, mass: m.Mass}
	for i := range m.Boards {
		c.boards[i] = count(&m, &m.Boards[i])
	}
	for i := range m.Corners {
		c.glue += m.Corners[i].GlueArea + m.Corners[i].SlotArea
	}
	c.items = items(&m, &s)
	return c
}

// Merge returns the list of some modules.
func Merge(all []Counted) List {
	l := List{Parts: []Part{}, Hardware: []Item{}}
	n := 0
	for i := range all {
		l.Volume += all[i].volume
		l.Mass += all[i].mass
		l.Glue += all[i].glue
		n += len(all[i].boards)
	}
	l.Boards = n
	l.Parts = group(all, n)
	l.Hardware = gather(all)
	return l
}
