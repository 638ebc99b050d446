package edit

import (
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Move moves one module of an arrangement, or several together: to a place of the pivot
// (x, y, one module only), by a distance (dx, dy), or both, one in each direction.
type Move struct {
	Arrangement string                    `json:"arrangement"`
	Module      string                    `json:"module,omitempty"`
	Modules     []string                  `json:"modules,omitempty"`
	X           document.Opt[unit.Length] `json:"x,omitempty"`
	Y           document.Opt[unit.Length] `json:"y,omitempty"`
	DX          unit.Length               `json:"dx,omitempty"`
	DY          unit.Length               `json:"dy,omitempty"`
}

// Do returns "move".
func (Move) Do() string { return "move" }

func (e Move) apply(p plan.Plan) (plan.Plan, Name, error) {
	at := where("arrangement", e.Arrangement)
	ids, err := oneOrMore(e.Module, e.Modules, at)
	switch {
	case err != nil:
		return p, Name{}, err
	case e.X.Known && e.DX != 0:
		return p, Name{}, refuse("either", at, words.Name("member", "x"), words.Name("other", "dx"))
	case e.Y.Known && e.DY != 0:
		return p, Name{}, refuse("either", at, words.Name("member", "y"), words.Name("other", "dy"))
	case len(ids) > 1 && (e.X.Known || e.Y.Known):
		return p, Name{}, refuse("one-module", at, words.Count("value", len(ids)))
	}
	p, err = changePoses(p, e.Arrangement, ids, func(_ int, o plan.Pose) plan.Pose {
		o.X, o.Y = e.X.Or(o.X)+e.DX, e.Y.Or(o.Y)+e.DY
		return o
	})
	return p, group(p, e, ids), err
}

// oneOrMore returns the modules of an edit that names one or several.
func oneOrMore(one string, several []string, where string) ([]string, error) {
	switch {
	case one != "" && several != nil:
		return nil, refuse("either", where, words.Name("member", "module"), words.Name("other", "modules"))
	case one != "":
		return []string{one}, nil
	case len(several) == 0:
		return nil, refuse("missing", where, words.Name("member", "module"))
	}
	for i, id := range several {
		if slices.Contains(several[:i], id) {
			return nil, refuse("twice", where, words.Name("id", id))
		}
	}
	return several, nil
}

// changePoses changes the poses of modules in one arrangement, given each one's place
// among ids.
func changePoses(p plan.Plan, arrangement string, ids []string, change func(int, plan.Pose) plan.Pose) (plan.Plan, error) {
	return changeArrangement(p, arrangement, func(a plan.Arrangement) (plan.Arrangement, error) {
		a.Poses = slices.Clone(a.Poses)
		for i, id := range ids {
			j, err := findPose(a, id)
			if err != nil {
				return a, err
			}
			a.Poses[j] = change(i, a.Poses[j])
			if err := far(where("module", id), a.Poses[j].X, a.Poses[j].Y); err != nil {
				return a, err
			}
		}
		return a, nil
	})
}

// group names an edit on one module after it, and one on several after their count.
func group(p plan.Plan, e Edit, ids []string) Name {
	if len(ids) == 1 {
		return did(e, nameOf(p, ids[0]))
	}
	return doing(e, "several", words.Count("n", len(ids)))
}

// Turn turns a module of an arrangement about its pivot, counter-clockwise: by an angle,
// or to one.
type Turn struct {
	Arrangement string                   `json:"arrangement"`
	Module      string                   `json:"module"`
	By          unit.Angle               `json:"by,omitempty"`
	To          document.Opt[unit.Angle] `json:"to,omitempty"`
}

// Do returns "turn".
func (Turn) Do() string { return "turn" }

func (e Turn) apply(p plan.Plan) (plan.Plan, Name, error) {
	if e.To.Known && e.By != 0 {
		return p, Name{}, refuse("either", where("module", e.Module), words.Name("member", "by"), words.Name("other", "to"))
	}
	p, err := changePoses(p, e.Arrangement, []string{e.Module}, func(_ int, o plan.Pose) plan.Pose {
		o.Turn = (e.To.Or(o.Turn).Turn() + e.By.Turn()).Turn()
		return o
	})
	return p, group(p, e, []string{e.Module}), err
}

// Flip turns a module half round about the upright axis through its pivot, so that its
// front edge comes to the wall. A module that stands turned by t then stands turned by
// −t: F·T(t) = T(−t)·F, with F the half turn and T the turn in the wall's plane.
type Flip struct {
	Arrangement string `json:"arrangement"`
	Module      string `json:"module"`
}

// Do returns "flip".
func (Flip) Do() string { return "flip" }

func (e Flip) apply(p plan.Plan) (plan.Plan, Name, error) {
	p, err := changePoses(p, e.Arrangement, []string{e.Module}, func(_ int, o plan.Pose) plan.Pose {
		o.Flip = !o.Flip
		o.Turn = (-o.Turn).Turn()
		return o
	})
	return p, group(p, e, []string{e.Module}), err
}
