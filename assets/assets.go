// Package assets holds the example jobs that the tool ships, as plans.
//
// The examples are the shelves of one house, the house at the weir, from one board in
// its porch to a wall of 48 modules. The house is invented. testdata/examples writes
// them: as documents into plans, for people, and as the codes of links into codes.go,
// which are a third as large in the page's program. The fonts stand in assets/fonts,
// for the page's program has no use for them.
package assets

import (
	"errors"
	"strconv"
	"strings"

	"ledgewright/engine/link"
	"ledgewright/engine/plan"
)

// An Example is a job that shows what the tool is for.
type Example struct {
	Name string // one short word
	Says string // one sentence
}

// Examples returns the examples, the smallest job first.
func Examples() []Example {
	return []Example{
		{"porch", "One oak board on two rods set in the studs."},
		{"hall", "A coat shelf with an upright end, on rods in the masonry behind board on dabs."},
		{"kitchen", "Two thick ash shelves on bars with three rods each, in brick; in inches."},
		{"bath", "A box screwed through its back rail, and a narrow shelf below it; tiled."},
		{"laundry", "A long box with two dividers on a cleat, in hollow block."},
		{"attic", "A shallow box on a cleat and a peg shelf on a rail, across metal studs that nobody has tested."},
		{"larder", "Two tall ladders of shelves, plates in the backs of their uprights."},
		{"stair", "Three ash steps that climb with the stair, on the studs of an old wall."},
		{"nursery", "Five hexagons in maple that hang as a comb or in a row."},
		{"study", "Four oak shapes over the desk, one with a light, on plates let in on the studs."},
		{"music", "Deep walnut record boxes on cleats, in concrete."},
		{"landing", "Five walnut pieces that hang in three ways on the same studs; in inches."},
		{"library", "48 pieces on a wall of almost ten metres."},
	}
}

// Names returns the names of the examples, in their order.
func Names() []string {
	var names []string
	for _, e := range Examples() {
		names = append(names, e.Name)
	}
	return names
}

// Text returns the plan document of an example.
func Text(name string) ([]byte, error) {
	p, err := Plan(name)
	if err != nil {
		return nil, err
	}
	return plan.Pretty(p)
}

// Plan returns the plan of an example.
func Plan(name string) (plan.Plan, error) {
	for line := range strings.Lines(codes) {
		if of, code, _ := strings.Cut(strings.TrimSpace(line), " "); of == name {
			return link.DecodePlan(code)
		}
	}
	return plan.Plan{}, errors.New("no example is called " + strconv.Quote(name))
}
