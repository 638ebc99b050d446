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
	by := s.nudge()
	if k.Shift {
		by = 10 * unit.Millimetre
		if s.Plan.Units.System == unit.Inches {
			by = unit.Inch
		}
	}
	switch k.Name {
	case "ArrowLeft":
		return nudge(s, -by, 0)
	case "ArrowRight":
		return nudge(s, by, 0)
	case "ArrowUp":
		return nudge(s, 0, by)
	case "ArrowDown":
		return nudge(s, 0, -by)
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

// nudge moves what is chosen by a step.
func nudge(s State, dx, dy unit.Length) (State, []Effect) {
	ids := slices.DeleteFunc(slices.Clone(s.Chosen), func(id string) bool { _, ok := s.pose(id); return !ok })
	switch len(ids) {
	case 0:
		return s, nil
	case 1:
		return commit(s, edit.Move{Arrangement: s.Arrangement, Module: ids[0], DX: dx, DY: dy})
	}
	return commit(s, edit.Move{Arrangement: s.Arrangement, Modules: ids, DX: dx, DY: dy})
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
