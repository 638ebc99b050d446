// Package part lists what a job is made of: wooden parts, hardware, consumables.
package part

import "ledgewright/engine/unit"

// A List is the parts of a job.
type List struct {
	Parts    []Part      `json:"parts"`
	Hardware []Item      `json:"hardware"`
	Volume   unit.Volume `json:"volume"` // net, finished wood
	Mass     unit.Mass   `json:"mass"`   // wood at the moisture content in use
	Boards   int         `json:"boards"`
	Glue     unit.Area   `json:"glue"`
}

// A Part is one or more boards that are the same in every cut.
type Part struct {
	Number    int         `json:"number"`
	Name      string      `json:"name"`
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
	Figures []unit.Length `json:"figures,omitempty"`
}

// An Item is bought hardware.
type Item struct {
	Kind     string      `json:"kind"` // key of words, or id in package hardware
	Size     string      `json:"size,omitempty"`
	Quantity int         `json:"quantity"`
	Length   unit.Length `json:"length,omitempty"` // of each, where it is cut to length
}
