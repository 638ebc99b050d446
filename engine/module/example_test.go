package module_test

import (
	"fmt"

	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// A U of three oak boards, mitred and splined: how long each board is inside, and what
// it weighs.
func ExampleDerive() {
	board := func(mm unit.Length) plan.Board {
		return plan.Board{Length: document.Some(mm * unit.Millimetre), Thickness: 24 * unit.Millimetre}
	}
	corner := plan.Corner{Turn: 90 * unit.Degree, Joint: plan.Mitre, Reinforcement: plan.Reinforcement{Kind: "spline"}}
	r := module.Derive(plan.Module{
		ID: "m1", Depth: 200 * unit.Millimetre, Wood: "white-oak",
		Boards:  []plan.Board{board(260), board(520), board(260)},
		Corners: []plan.Corner{corner, corner},
	}, shop.Default(unit.Metric))
	for _, b := range r.Boards {
		from, to := b.On("A")
		fmt.Println(b.ID, b.Length, "outside,", to-from, "inside")
	}
	fmt.Println(r.Corners[0].Tilt[0], r.Corners[0].Pieces[0].Width, "wide spline")
	fmt.Println(unit.Style{}.Mass(r.Mass))
	// Output:
	// m1.1 260 mm outside, 236 mm inside
	// m1.2 520 mm outside, 472 mm inside
	// m1.3 260 mm outside, 236 mm inside
	// 45° 24 mm wide spline
	// 3.6 kg
}
