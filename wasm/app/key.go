package app

import (
	"slices"

	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
)

// key does what a key means. Keys without a modifier work only while the picture has
// the focus, so that nothing typed elsewhere changes the plan.
func key(s State, k Key) (State, []Effect) {
	if k.Control {
		return chord(s, k)
	}
	if k.InField {
		return s, nil
	}
	if right, up, ok := arrow(k.Name); ok {
		return arrows(s, right, up, k.Shift)
	}
	switch k.Name {
	case "Escape":
		if s.Drag.Active || s.Preview.Shown || s.Typing.Open {
			s.Drag, s.Preview, s.Typing = Drag{}, Preview{}, Typing{}
			return s, nil
		}
		return choose(s, "", false), nil
	case "Delete", "Backspace":
		return takeOff(s)
	case "Tab":
		return s, nil
	}
	return s, nil
}

// chord takes the keys with Control or Command.
func chord(s State, k Key) (State, []Effect) {
	switch {
	case k.InField:
		return s, nil
	case k.Name == "z" || k.Name == "Z":
		if k.Shift {
			return redo(s)
		}
		return undo(s)
	case k.Name == "y":
		return redo(s)
	}
	return s, nil
}

// arrow returns the way of an arrow key.
func arrow(name string) (right, up int, ok bool) {
	switch name {
	case "ArrowLeft":
		return -1, 0, true
	case "ArrowRight":
		return 1, 0, true
	case "ArrowUp":
		return 0, 1, true
	case "ArrowDown":
		return 0, -1, true
	}
	return 0, 0, false
}

// Parts of the picture by which an arrow key looks further along.
const (
	panStep  = 0.05
	panShift = 0.25
)

// arrows moves what is chosen by a step, with the shift key by a larger one; where
// nothing is chosen that stands on the wall, it moves the view.
func arrows(s State, right, up int, shift bool) (State, []Effect) {
	by, part := s.nudge(), panStep
	if shift {
		by, part = 10*unit.Millimetre, panShift
		if s.Plan.Units.System == unit.Inches {
			by = unit.Inch
		}
	}
	ids := slices.DeleteFunc(slices.Clone(s.Chosen), func(id string) bool { _, ok := s.pose(id); return !ok })
	if len(ids) == 0 {
		return Step(s, Pan{X: part * float64(right), Y: part * float64(up)})
	}
	e := edit.Move{Arrangement: s.Arrangement, Modules: ids, DX: by * unit.Length(right), DY: by * unit.Length(up)}
	if len(ids) == 1 {
		e.Module, e.Modules = ids[0], nil
	}
	return commit(s, e)
}

// takeOff takes what is chosen off the wall; the modules stay in the job.
func takeOff(s State) (State, []Effect) {
	var edits []edit.Edit
	for _, id := range s.Chosen {
		if _, ok := s.pose(id); ok {
			edits = append(edits, edit.TakeOff{Arrangement: s.Arrangement, Module: id})
		}
	}
	if edits == nil {
		return s, nil
	}
	return commit(s, edits...)
}
