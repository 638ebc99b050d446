package link_test

import (
	"fmt"

	"ledgewright/engine/link"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A code stands behind the "#" of an address. What was cut on the way does not open.
func Example() {
	p := plan.New(unit.Metric)
	p.Job.Client = "The corner house"
	code, _ := link.EncodePlan(p, link.Options{})
	back, err := link.DecodePlan("https://shelves.example.org/#" + code)
	fmt.Println(back.Units.System, err, back.Job.Client == "")
	_, err = link.DecodePlan("https://shelves.example.org/#" + code[:len(code)-1])
	fmt.Println(err)
	// Output:
	// mm <nil> true
	// this link arrived incomplete: some of it was cut off or changed on the way; ask for it again, or for the design as a file
}
