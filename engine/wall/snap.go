package wall

import "ledgewright/engine/unit"

// A Snap is one thing that a module sticks to while it is moved.
type Snap struct {
	Kind string      // "stud", "line", "flush", "gap", "centre"
	Axis string      // "x" or "y": what it fixes
	At   unit.Length // where the thing lies on the wall: x of a stud, height of a line, edge of the other module
	By   unit.Length // how far the module was moved to meet it
	To   string      // id of the module, line or obstacle, or number of the stud
}
