package joint_test

import (
	"fmt"

	"ledgewright/engine/joint"
	"ledgewright/engine/unit"
)

// Boards 30 and 20 mm thick at a right angle: each tilts the blade by what the other is
// thick.
func ExampleCorner_Shape() {
	s := joint.Corner{
		Number: 1, Turn: 90 * unit.Degree, Joint: joint.Mitre,
		First: 30 * unit.Millimetre, Second: 20 * unit.Millimetre,
	}.Shape()
	for _, side := range s.Sides {
		fmt.Println("long point", side.Lead, "ahead, blade at", unit.Style{}.Angle(side.Tilt))
	}
	// Output:
	// long point 20 mm ahead, blade at 33.69°
	// long point 30 mm ahead, blade at 56.31°
}
