package plan_test

import (
	"fmt"

	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A plan that can be read may still be wrong; what cannot be read says where.
func ExampleDecode() {
	text := `{
  "schema": "ledgewright/plan/1", "job": {}, "units": {"system": "mm", "step": 1}, "counters": {"module": 1},
  "walls": [], "arrangements": [], "modules": [
    {"id": "m1", "depth": 200, "wood": "white-oak", "boards": [{"length": 800, "thickness": "26"}]}
  ]
}`
	_, err := plan.Decode([]byte(text))
	fmt.Println(err)
	// Output:
	// line 4, column 93, at modules[0].boards[0].thickness: found the text "26"; allowed is a length in millimetres, such as 292.1
}

// Ids come from the counters of the plan and are never given twice.
func ExampleCounters_Next() {
	p := plan.New(unit.Inches)
	var id string
	id, p.Counters = p.Counters.Next(plan.LetterWall)
	p.Walls = append(p.Walls, plan.Wall{ID: id, Width: 126 * unit.Inch, Height: 96 * unit.Inch})
	fmt.Println(id, len(plan.Check(p)))
	// Output:
	// w1 0
}
