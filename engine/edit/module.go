package edit

import (
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// AddModule adds a module: one of the ready shapes, or a whole module as it stands in a
// plan. The module and everything in it that has an id gets a new one. With an
// arrangement it is placed there at once, as it hangs.
type AddModule struct {
	Shape       string                    `json:"shape,omitempty"` // as in Ready
	Width       unit.Length               `json:"width,omitempty"`
	Height      unit.Length               `json:"height,omitempty"`
	Upper       unit.Length               `json:"upper,omitempty"`
	Depth       unit.Length               `json:"depth,omitempty"`
	Thickness   unit.Length               `json:"thickness,omitempty"`
	Wood        string                    `json:"wood,omitempty"`
	Joint       string                    `json:"joint,omitempty"`
	Typed       bool                      `json:"typed,omitempty"`
	Name        string                    `json:"name,omitempty"`
	Module      document.Opt[plan.Module] `json:"module,omitempty"`
	Arrangement string                    `json:"arrangement,omitempty"`
	X           unit.Length               `json:"x,omitempty"` // of the pivot
	Y           unit.Length               `json:"y,omitempty"`
}

// Do returns "add-module".
func (AddModule) Do() string { return "add-module" }

func (e AddModule) apply(p plan.Plan) (plan.Plan, Name, error) {
	m, err := e.module()
	if err != nil {
		return p, Name{}, err
	}
	m = renamed(&p, m)
	p.Modules = inserted(p.Modules, len(p.Modules), m)
	p, err = placedAt(p, e.Arrangement, plan.Pose{Module: m.ID, X: e.X, Y: e.Y, Turn: m.Hung})
	return p, did(e, ofModule(m)), err
}

// module returns what the edit adds.
func (e AddModule) module() (m plan.Module, err error) {
	ready := Ready{e.Shape, e.Width, e.Height, e.Upper, e.Depth, e.Thickness, e.Wood, e.Joint, e.Typed}
	if !e.Module.Known {
		m, err = ready.module()
	} else if m = e.Module.Value; ready != (Ready{}) {
		err = refuse("either", "new module", words.Name("member", "module"), words.Name("other", "shape"))
	}
	if e.Name != "" {
		m.Name = e.Name
	}
	return m, err
}

// placedAt adds a pose to an arrangement, if one is named.
func placedAt(p plan.Plan, arrangement string, o plan.Pose) (plan.Plan, error) {
	if arrangement == "" {
		return p, nil
	}
	if err := far(where("module", o.Module), o.X, o.Y); err != nil {
		return p, err
	}
	return changeArrangement(p, arrangement, func(a plan.Arrangement) (plan.Arrangement, error) {
		a.Poses = inserted(a.Poses, len(a.Poses), o)
		return a, nil
	})
}

// renamed returns m with new ids for itself and all that it holds.
func renamed(p *plan.Plan, m plan.Module) plan.Module {
	m.ID = next(p, plan.LetterModule)
	ids := map[string]string{}
	m.Dividers = slices.Clone(m.Dividers)
	for i := range m.Dividers {
		id := next(p, plan.LetterDivider)
		ids[m.Dividers[i].ID] = id
		m.Dividers[i].ID = id
	}
	m.Lights = slices.Clone(m.Lights)
	for i := range m.Lights {
		m.Lights[i].ID = next(p, plan.LetterLight)
	}
	m.Brackets = slices.Clone(m.Brackets)
	for i := range m.Brackets {
		m.Brackets[i].ID = next(p, plan.LetterBracket)
		if d, ok := ids[m.Brackets[i].Divider]; ok {
			m.Brackets[i].Divider = d
		}
	}
	return m
}

// SetModule changes what holds for a whole module: name, depth, wood, grainWrap, hung; with
// thickness every board of its chain; with closed whether its chain closes.
//
// A chain that is closed gets the corner that makes its turns a full one, and its last
// two boards are to close. A chain that is opened loses its last corner, and boards that
// were to close keep the length that they had.
type SetModule struct {
	Module    string                    `json:"module"`
	Thickness document.Opt[unit.Length] `json:"thickness,omitempty"`
	Closed    document.Opt[bool]        `json:"closed,omitempty"`
	With      document.Extra            `json:"-"` // name, depth, wood, grainWrap, hung
}

// Do returns "set-module".
func (SetModule) Do() string { return "set-module" }

func (e SetModule) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		m, err := patch(m, e.With, where("module", m.ID),
			"id", "closed", "boards", "corners", "dividers", "lights", "brackets")
		m.Hung = m.Hung.Turn()
		if err == nil && e.Thickness.Known {
			m, err = thicknessed(m, e.Thickness.Value)
		}
		if err == nil && e.Closed.Known && e.Closed.Value != m.Closed {
			if e.Closed.Value {
				return closed(m)
			}
			return opened(m, p.Shop)
		}
		return m, err
	})
}

func thicknessed(m plan.Module, t unit.Length) (plan.Module, error) {
	if t <= 0 {
		return m, refuse("not-positive", where("module", m.ID), words.Name("member", "thickness"), words.Length("value", t))
	}
	m.Boards = slices.Clone(m.Boards)
	for i := range m.Boards {
		m.Boards[i].Thickness = t
	}
	return m, nil
}

// onModule applies a change to one module and names it after e.
func onModule(p plan.Plan, e Edit, id string, change func(plan.Module) (plan.Module, error)) (plan.Plan, Name, error) {
	var name Name
	p, err := changeModule(p, id, func(m plan.Module) (plan.Module, error) {
		m, err := change(m)
		name = did(e, ofModule(m))
		return m, err
	})
	return p, name, err
}

// RemoveModule takes a module away, and off every arrangement.
type RemoveModule struct {
	Module string `json:"module"`
}

// Do returns "remove-module".
func (RemoveModule) Do() string { return "remove-module" }

func (e RemoveModule) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	m := p.Modules[i]
	p.Modules = without(p.Modules, i)
	poses := 0
	p.Arrangements = slices.Clone(p.Arrangements)
	for j := range p.Arrangements {
		a := &p.Arrangements[j]
		if k := slices.IndexFunc(a.Poses, func(o plan.Pose) bool { return o.Module == m.ID }); k >= 0 {
			a.Poses = without(a.Poses, k)
			poses++
		}
	}
	if poses > 0 {
		return p, doing(e, "placed", ofModule(m), words.Count("poses", poses)), nil
	}
	return p, did(e, ofModule(m)), nil
}

// DuplicateModule adds a copy of a module. With an arrangement it is placed there, the
// same way up as the original stands there.
type DuplicateModule struct {
	Module      string      `json:"module"`
	Name        string      `json:"name,omitempty"`
	Arrangement string      `json:"arrangement,omitempty"`
	X           unit.Length `json:"x,omitempty"`
	Y           unit.Length `json:"y,omitempty"`
}

// Do returns "duplicate-module".
func (DuplicateModule) Do() string { return "duplicate-module" }

func (e DuplicateModule) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	m := renamed(&p, p.Modules[i])
	if e.Name != "" {
		m.Name = e.Name
	}
	name := did(e, ofModule(p.Modules[i]))
	p.Modules = inserted(p.Modules, len(p.Modules), m)
	o := plan.Pose{Module: m.ID, X: e.X, Y: e.Y, Turn: m.Hung}
	if was, ok := poseOf(p, e.Arrangement, e.Module); ok {
		o.Turn, o.Flip = was.Turn, was.Flip
	}
	p, err = placedAt(p, e.Arrangement, o)
	return p, name, err
}

// poseOf returns the pose of a module in an arrangement, if it has one.
func poseOf(p plan.Plan, arrangement, module string) (plan.Pose, bool) {
	for _, a := range p.Arrangements {
		if a.ID != arrangement {
			continue
		}
		for _, o := range a.Poses {
			if o.Module == module {
				return o, true
			}
		}
	}
	return plan.Pose{}, false
}

// OrderModule moves a module to another place in the order of the modules, which is the
// order of part and hole numbers.
type OrderModule struct {
	Module string `json:"module"`
	At     int    `json:"at"` // from 1
}

// Do returns "order-module".
func (OrderModule) Do() string { return "order-module" }

func (e OrderModule) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	to, err := number(e.At, len(p.Modules), "place", where("module", e.Module))
	if err != nil {
		return p, Name{}, err
	}
	m := p.Modules[i]
	rest := slices.Concat(p.Modules[:i], p.Modules[i+1:])
	p.Modules = inserted(rest, to, m)
	return p, did(e, ofModule(m)), nil
}
