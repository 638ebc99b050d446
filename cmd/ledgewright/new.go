package main

import (
	"fmt"
	"slices"
	"strings"

	"ledgewright/assets"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// newPlan writes a plan to begin with.
type newPlan struct {
	Example string `help:"Write this example." placeholder:"NAME" xor:"what"`
	List    bool   `help:"List the examples, one a line, each with its name first." xor:"what"`
	Inches  bool   `help:"Begin an inch plan." xor:"what"`
}

func (c *newPlan) Run(s *streams) error {
	switch {
	case c.List:
		return s.write(listing())
	case c.Example != "":
		text, err := assets.Text(c.Example)
		if err != nil {
			return fmt.Errorf("%w: %s", err, suggestion(c.Example))
		}
		return s.write(text)
	}
	system := unit.Metric
	if c.Inches {
		system = unit.Inches
	}
	text, err := plan.Pretty(plan.New(system))
	if err != nil {
		return err
	}
	return s.write(text)
}

// listing is one line an example: its name, a dash and a sentence.
func listing() []byte {
	var b strings.Builder
	for _, e := range assets.Examples() {
		fmt.Fprintf(&b, "%s - %s\n", e.Name, e.Says)
	}
	return []byte(b.String())
}

// suggestion names the example that is nearest to what was asked for, or all of them.
func suggestion(asked string) string {
	names := assets.Names()
	near := slices.MinFunc(names, func(a, b string) int { return distance(asked, a) - distance(asked, b) })
	if d := distance(asked, near); d <= 2 || d <= len(near)/2 {
		return fmt.Sprintf("did you mean %s? (ledgewright new --list names them all)", near)
	}
	return "they are " + strings.Join(names, ", ")
}

// distance is the number of letters to put in, take out or change between a and b,
// whatever their case (the Levenshtein distance).
func distance(a, b string) int {
	x, y := []rune(strings.ToLower(a)), []rune(strings.ToLower(b))
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		corner := row[0]
		row[0] = i + 1
		for j := range y {
			change := corner
			if x[i] != y[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(y)]
}
