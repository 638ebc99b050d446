package edit

import (
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
)

// AddArrangement adds an arrangement, still empty, on a wall.
type AddArrangement struct {
	Wall string `json:"wall"`
	Name string `json:"name,omitempty"`
}

// Do returns "add-arrangement".
func (AddArrangement) Do() string { return "add-arrangement" }

func (e AddArrangement) apply(p plan.Plan) (plan.Plan, Name, error) {
	if _, err := findWall(p, e.Wall); err != nil {
		return p, Name{}, err
	}
	a := plan.Arrangement{ID: next(&p, plan.LetterArrangement), Name: e.Name, Wall: e.Wall}
	p.Arrangements = inserted(p.Arrangements, len(p.Arrangements), a)
	return p, did(e, ofArrangement(a)), nil
}

// SetArrangement changes an arrangement: name, wall, corner (the arrangement round the
// corner to the right; null for none).
type SetArrangement struct {
	Arrangement string         `json:"arrangement"`
	With        document.Extra `json:"-"`
}

// Do returns "set-arrangement".
func (SetArrangement) Do() string { return "set-arrangement" }

func (e SetArrangement) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onArrangement(p, e, e.Arrangement, func(a plan.Arrangement) (plan.Arrangement, error) {
		a, err := patch(a, e.With, where("arrangement", a.ID), "id", "poses", "lines", "datum")
		if err == nil {
			_, err = findWall(p, a.Wall)
		}
		if err != nil || a.Corner == "" {
			return a, err
		}
		if a.Corner == a.ID {
			return a, refuse("corner-itself", where("arrangement", a.ID))
		}
		_, err = findArrangement(p, a.Corner)
		return a, err
	})
}

// onArrangement applies a change to one arrangement and names it after e.
func onArrangement(p plan.Plan, e Edit, id string, change func(plan.Arrangement) (plan.Arrangement, error)) (plan.Plan, Name, error) {
	var name Name
	p, err := changeArrangement(p, id, func(a plan.Arrangement) (plan.Arrangement, error) {
		a, err := change(a)
		name = did(e, ofArrangement(a))
		return a, err
	})
	return p, name, err
}

// RemoveArrangement takes an arrangement away. The modules stay. An arrangement that
// named it as its neighbour round the corner names none.
type RemoveArrangement struct {
	Arrangement string `json:"arrangement"`
}

// Do returns "remove-arrangement".
func (RemoveArrangement) Do() string { return "remove-arrangement" }

func (e RemoveArrangement) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findArrangement(p, e.Arrangement)
	if err != nil {
		return p, Name{}, err
	}
	name := did(e, ofArrangement(p.Arrangements[i]))
	p.Arrangements = without(p.Arrangements, i)
	for j, a := range p.Arrangements {
		if a.Corner == e.Arrangement {
			a.Corner = ""
			p.Arrangements = with(p.Arrangements, j, a)
		}
	}
	return p, name, nil
}

// DuplicateArrangement adds a copy of an arrangement, on the same wall.
type DuplicateArrangement struct {
	Arrangement string `json:"arrangement"`
	Name        string `json:"name,omitempty"`
}

// Do returns "duplicate-arrangement".
func (DuplicateArrangement) Do() string { return "duplicate-arrangement" }

func (e DuplicateArrangement) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findArrangement(p, e.Arrangement)
	if err != nil {
		return p, Name{}, err
	}
	a := p.Arrangements[i]
	name := did(e, ofArrangement(a))
	a.ID = next(&p, plan.LetterArrangement)
	if e.Name != "" {
		a.Name = e.Name
	}
	a.Lines = slices.Clone(a.Lines)
	for j := range a.Lines {
		a.Lines[j].ID = next(&p, plan.LetterLine)
	}
	p.Arrangements = inserted(p.Arrangements, len(p.Arrangements), a)
	return p, name, nil
}

// SetDatum says where the level line and the plumb line of an arrangement stand: level,
// plumb; null leaves the choice to the wall.
type SetDatum struct {
	Arrangement string         `json:"arrangement"`
	With        document.Extra `json:"-"`
}

// Do returns "set-datum".
func (SetDatum) Do() string { return "set-datum" }

func (e SetDatum) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onArrangement(p, e, e.Arrangement, func(a plan.Arrangement) (_ plan.Arrangement, err error) {
		a.Datum, err = patch(a.Datum, e.With, where("arrangement", a.ID)+", datum")
		return a, err
	})
}

// AddLine adds a line at a height.
type AddLine struct {
	Arrangement string         `json:"arrangement"`
	With        document.Extra `json:"-"`
}

// Do returns "add-line".
func (AddLine) Do() string { return "add-line" }

func (e AddLine) apply(p plan.Plan) (plan.Plan, Name, error) {
	id := next(&p, plan.LetterLine)
	return onArrangement(p, e, e.Arrangement, func(a plan.Arrangement) (plan.Arrangement, error) {
		l, err := fresh(plan.Line{}, e.With, where("arrangement", a.ID)+", new line", "id")
		l.ID = id
		a.Lines = inserted(a.Lines, len(a.Lines), l)
		return a, err
	})
}

// SetLine changes a line at a height.
type SetLine struct {
	Arrangement string         `json:"arrangement,omitempty"`
	Line        string         `json:"line"`
	With        document.Extra `json:"-"`
}

// Do returns "set-line".
func (SetLine) Do() string { return "set-line" }

func (e SetLine) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onLine(p, e, e.Arrangement, e.Line, func(s []plan.Line, i int) ([]plan.Line, error) {
		l, err := patch(s[i], e.With, where("line", e.Line), "id")
		return with(s, i, l), err
	})
}

// RemoveLine takes a line at a height away.
type RemoveLine struct {
	Arrangement string `json:"arrangement,omitempty"`
	Line        string `json:"line"`
}

// Do returns "remove-line".
func (RemoveLine) Do() string { return "remove-line" }

func (e RemoveLine) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onLine(p, e, e.Arrangement, e.Line, func(s []plan.Line, i int) ([]plan.Line, error) {
		return without(s, i), nil
	})
}

// onLine changes the lines of the arrangement that holds one, given its place.
func onLine(p plan.Plan, e Edit, claimed, id string, change func([]plan.Line, int) ([]plan.Line, error)) (plan.Plan, Name, error) {
	lines := func(a plan.Arrangement) []plan.Line { return a.Lines }
	on, err := owner(p.Arrangements, arrangementID, lines, lineID, "line", "arrangement", claimed, id)
	if err != nil {
		return p, Name{}, err
	}
	return onArrangement(p, e, on, func(a plan.Arrangement) (_ plan.Arrangement, err error) {
		i := slices.IndexFunc(a.Lines, func(l plan.Line) bool { return l.ID == id })
		a.Lines, err = change(a.Lines, i)
		return a, err
	})
}

// Place puts a module into an arrangement, with its pivot at a point, or moves and turns
// the one that stands there.
type Place struct {
	Arrangement string         `json:"arrangement"`
	Module      string         `json:"module"`
	With        document.Extra `json:"-"` // x, y, turn, flip
}

// Do returns "place".
func (Place) Do() string { return "place" }

func (e Place) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	at := where("arrangement", e.Arrangement) + ", module " + e.Module
	p, err = changeArrangement(p, e.Arrangement, func(a plan.Arrangement) (plan.Arrangement, error) {
		j := slices.IndexFunc(a.Poses, func(o plan.Pose) bool { return o.Module == e.Module })
		if j < 0 {
			o, err := fresh(plan.Pose{Module: e.Module}, e.With, at)
			o.Turn = o.Turn.Turn()
			a.Poses = inserted(a.Poses, len(a.Poses), o)
			return a, err
		}
		o, err := patch(a.Poses[j], e.With, at, "module")
		o.Turn = o.Turn.Turn()
		a.Poses = with(a.Poses, j, o)
		return a, err
	})
	return p, did(e, ofModule(p.Modules[i])), err
}

// TakeOff takes a module off an arrangement. The module stays in the plan.
type TakeOff struct {
	Arrangement string `json:"arrangement"`
	Module      string `json:"module"`
}

// Do returns "take-off".
func (TakeOff) Do() string { return "take-off" }

func (e TakeOff) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onPose(p, e, e.Arrangement, e.Module, func(a plan.Arrangement, i int) (plan.Arrangement, error) {
		a.Poses = without(a.Poses, i)
		return a, nil
	})
}

// onPose changes the arrangement in which a module stands, given the place of its pose,
// and names the module.
func onPose(p plan.Plan, e Edit, arrangement, module string, change func(plan.Arrangement, int) (plan.Arrangement, error)) (plan.Plan, Name, error) {
	p, err := changeArrangement(p, arrangement, func(a plan.Arrangement) (plan.Arrangement, error) {
		i, err := findPose(a, module)
		if err != nil {
			return a, err
		}
		return change(a, i)
	})
	if err != nil {
		return p, Name{}, err
	}
	return p, did(e, nameOf(p, module)), nil
}

// nameOf is what the maker calls the module with an id.
func nameOf(p plan.Plan, id string) words.Arg {
	for _, m := range p.Modules {
		if m.ID == id {
			return ofModule(m)
		}
	}
	return words.Name("module", id)
}
