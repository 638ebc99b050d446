package edit_test

import (
	"fmt"

	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A plan is changed by values: every edit gives a new plan and a name for undoing it.
func Example() {
	p := plan.New(unit.Metric)
	for _, line := range []string{
		`{"schema":"ledgewright/edit/1","do":"add-wall","name":"Long wall","width":3600,"height":2500}`,
		`{"schema":"ledgewright/edit/1","do":"add-arrangement","wall":"w1"}`,
		`{"schema":"ledgewright/edit/1","do":"add-module","shape":"U","name":"Tray","width":520,"height":260,"depth":200,"thickness":24,"wood":"white-oak","arrangement":"a1","x":800,"y":1300}`,
		`{"schema":"ledgewright/edit/1","do":"move","arrangement":"a1","module":"m1","dx":16}`,
	} {
		e, err := edit.Decode([]byte(line))
		if err != nil {
			fmt.Println(err)
			return
		}
		next, name, err := edit.Apply(p, e)
		if err != nil {
			fmt.Println(err)
			return
		}
		p = next
		fmt.Println("Undo:", words.Text(name.Key, name.Args, p.Style()))
	}
	fmt.Println(p.Arrangements[0].Poses[0].X)
	// Output:
	// Undo: add Long wall
	// Undo: add a1
	// Undo: add Tray
	// Undo: move Tray
	// 816 mm
}

// In Go an edit is a value of its type; members that need not be named stand in With.
func ExampleSetBoard() {
	e := edit.SetBoard{Module: "m1", Board: 2, With: edit.Changes(edit.Change("length", 640*unit.Millimetre), edit.Change("name", nil))}
	fmt.Println(string(edit.Encode(e)))
	// Output:
	// {"board":2,"do":"set-board","length":640,"module":"m1","name":null,"schema":"ledgewright/edit/1"}
}
