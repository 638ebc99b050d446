package edit

import (
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// onDivider changes the module that holds a divider, given the divider's place.
func onDivider(p plan.Plan, e Edit, claimed, id string, change func(plan.Module, int) (plan.Module, error)) (plan.Plan, Name, error) {
	dividers := func(m plan.Module) []plan.Divider { return m.Dividers }
	of, err := owner(p.Modules, moduleID, dividers, dividerID, "divider", "module", claimed, id)
	if err != nil {
		return p, Name{}, err
	}
	return onModule(p, e, of, func(m plan.Module) (plan.Module, error) {
		return change(m, slices.IndexFunc(m.Dividers, func(d plan.Divider) bool { return d.ID == id }))
	})
}

// onLight changes the module that holds a light, given the light's place.
func onLight(p plan.Plan, e Edit, claimed, id string, change func(plan.Module, int) (plan.Module, error)) (plan.Plan, Name, error) {
	lights := func(m plan.Module) []plan.Light { return m.Lights }
	of, err := owner(p.Modules, moduleID, lights, lightID, "light", "module", claimed, id)
	if err != nil {
		return p, Name{}, err
	}
	return onModule(p, e, of, func(m plan.Module) (plan.Module, error) {
		return change(m, slices.IndexFunc(m.Lights, func(l plan.Light) bool { return l.ID == id }))
	})
}

// onBracket changes the module that holds a bracket, given the bracket's place.
func onBracket(p plan.Plan, e Edit, claimed, id string, change func(plan.Module, int) (plan.Module, error)) (plan.Plan, Name, error) {
	brackets := func(m plan.Module) []plan.Bracket { return m.Brackets }
	of, err := owner(p.Modules, moduleID, brackets, bracketID, "bracket", "module", claimed, id)
	if err != nil {
		return p, Name{}, err
	}
	return onModule(p, e, of, func(m plan.Module) (plan.Module, error) {
		return change(m, slices.IndexFunc(m.Brackets, func(b plan.Bracket) bool { return b.ID == id }))
	})
}

// AddDivider adds a divider between two boards of a module: from, to, at. Its thickness
// is that of the board it starts from, and it is housed at both ends, unless said.
type AddDivider struct {
	Module string         `json:"module"`
	With   document.Extra `json:"-"`
}

// Do returns "add-divider".
func (AddDivider) Do() string { return "add-divider" }

func (e AddDivider) apply(p plan.Plan) (plan.Plan, Name, error) {
	id := next(&p, plan.LetterDivider)
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		at := where("module", m.ID) + ", new divider"
		d, err := patch(plan.Divider{Start: housed, End: housed}, e.With, at, "id")
		if err != nil {
			return m, err
		}
		if d.Thickness == 0 && d.From >= 1 && d.From <= len(m.Boards) {
			d.Thickness = m.Boards[d.From-1].Thickness
		}
		for _, key := range []string{"from", "to", "at"} {
			if !has(e.With, key) {
				return m, refuse("missing", at, words.Name("member", key))
			}
		}
		d.ID = id
		m.Dividers = inserted(m.Dividers, len(m.Dividers), d)
		return m, checkDivider(m, d)
	})
}

const housed, butted = "housed", "butt"

func checkDivider(m plan.Module, d plan.Divider) error {
	at := where("module", m.ID) + ", divider " + d.ID
	for _, n := range []int{d.From, d.To} {
		if _, err := number(n, len(m.Boards), "board", at); err != nil {
			return err
		}
	}
	switch {
	case d.From == d.To:
		return refuse("same-board", at, words.Count("n", d.From))
	case d.Thickness <= 0:
		return refuse("not-positive", at, words.Name("member", "thickness"), words.Length("value", d.Thickness))
	case d.Start != housed && d.Start != butted:
		return notOneOf(at, "start", d.Start, housed, butted)
	case d.End != housed && d.End != butted:
		return notOneOf(at, "end", d.End, housed, butted)
	}
	return nil
}

// SetDivider changes a divider.
type SetDivider struct {
	Module  string         `json:"module,omitempty"`
	Divider string         `json:"divider"`
	With    document.Extra `json:"-"`
}

// Do returns "set-divider".
func (SetDivider) Do() string { return "set-divider" }

func (e SetDivider) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onDivider(p, e, e.Module, e.Divider, func(m plan.Module, i int) (plan.Module, error) {
		d, err := patch(m.Dividers[i], e.With, where("divider", e.Divider), "id")
		if err == nil {
			err = checkDivider(m, d)
		}
		m.Dividers = with(m.Dividers, i, d)
		return m, err
	})
}

// RemoveDivider takes a divider away, and the brackets on it.
type RemoveDivider struct {
	Module  string `json:"module,omitempty"`
	Divider string `json:"divider"`
}

// Do returns "remove-divider".
func (RemoveDivider) Do() string { return "remove-divider" }

func (e RemoveDivider) apply(p plan.Plan) (plan.Plan, Name, error) {
	gone := 0
	p, name, err := onDivider(p, e, e.Module, e.Divider, func(m plan.Module, i int) (plan.Module, error) {
		m.Dividers = without(m.Dividers, i)
		n := len(m.Brackets)
		m.Brackets = kept(m.Brackets, func(b plan.Bracket) bool { return b.Divider != e.Divider })
		gone = n - len(m.Brackets)
		return m, nil
	})
	if gone > 0 {
		name = doing(e, "bearing", append(name.Args, words.Count("gone", gone))...)
	}
	return p, name, err
}

// SetEdge changes how one arris of a board or divider is treated. Without a cut, the
// arris is left sharp.
type SetEdge struct {
	Module  string      `json:"module"`
	Board   int         `json:"board,omitempty"`
	Divider string      `json:"divider,omitempty"`
	Arris   string      `json:"arris"`
	Cut     string      `json:"cut,omitempty"`
	Size    unit.Length `json:"size,omitempty"`
}

// Do returns "set-edge".
func (SetEdge) Do() string { return "set-edge" }

func (e SetEdge) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		if err := e.check(where("module", m.ID)); err != nil {
			return m, err
		}
		if e.Divider != "" {
			i, err := find(m.Dividers, dividerID, "divider", where("module", m.ID), e.Divider)
			if err != nil {
				return m, err
			}
			d := m.Dividers[i]
			d.Edges = e.edges(d.Edges)
			m.Dividers = with(m.Dividers, i, d)
			return m, nil
		}
		i, err := number(e.Board, len(m.Boards), "board", where("module", m.ID))
		if err != nil {
			return m, err
		}
		b := m.Boards[i]
		b.Edges = e.edges(b.Edges)
		m.Boards = with(m.Boards, i, b)
		return m, nil
	})
}

func arrises() []string {
	return []string{"front-a", "front-b", "back-a", "back-b", "start-a", "start-b", "end-a", "end-b"}
}

func (e SetEdge) check(where string) error {
	switch {
	case e.Divider != "" && e.Board != 0:
		return refuse("either", where, words.Name("member", "board"), words.Name("other", "divider"))
	case !slices.Contains(arrises(), e.Arris):
		return notOneOf(where, "arris", e.Arris, arrises()...)
	case e.Cut != "" && e.Cut != "chamfer" && e.Cut != "round":
		return notOneOf(where, "cut", e.Cut, "chamfer", "round")
	case e.Cut != "" && e.Size <= 0:
		return refuse("not-positive", where, words.Name("member", "size"), words.Length("value", e.Size))
	}
	return nil
}

// edges returns the treatments with this one in the place of the one before it. They
// stand in the order of the arrises.
func (e SetEdge) edges(old []plan.Edge) []plan.Edge {
	was := slices.IndexFunc(old, func(o plan.Edge) bool { return o.Arris == e.Arris })
	if e.Cut == "" {
		if was < 0 {
			return old
		}
		return without(old, was)
	}
	if was >= 0 {
		now := old[was]
		now.Cut, now.Size = e.Cut, e.Size
		return with(old, was, now)
	}
	all := inserted(old, len(old), plan.Edge{Arris: e.Arris, Cut: e.Cut, Size: e.Size})
	rank.By(all, func(a, b plan.Edge) int {
		return slices.Index(arrises(), a.Arris) - slices.Index(arrises(), b.Arris)
	})
	return all
}

// AddLight adds a light along a board, or along several that follow each other. Without
// a last board the run is the first alone.
type AddLight struct {
	Module string         `json:"module"`
	With   document.Extra `json:"-"`
}

// Do returns "add-light".
func (AddLight) Do() string { return "add-light" }

func (e AddLight) apply(p plan.Plan) (plan.Plan, Name, error) {
	id := next(&p, plan.LetterLight)
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		changes := e.With
		if !has(changes, "last") {
			for _, c := range e.With {
				if c.Key == "first" {
					changes = inserted(changes, len(changes), document.Member{Key: "last", Value: c.Value})
				}
			}
		}
		l, err := fresh(plan.Light{}, changes, where("module", m.ID)+", new light", "id")
		if err != nil {
			return m, err
		}
		l.ID = id
		m.Lights = inserted(m.Lights, len(m.Lights), l)
		return m, checkLight(m, l)
	})
}

func checkLight(m plan.Module, l plan.Light) error {
	at := where("module", m.ID) + ", light " + l.ID
	for _, n := range []int{l.First, l.Last} {
		if _, err := number(n, len(m.Boards), "board", at); err != nil {
			return err
		}
	}
	switch {
	case !m.Closed && l.Last < l.First:
		return refuse("run-backwards", at, words.Count("n", l.First), words.Count("value", l.Last))
	case l.Face != "A" && l.Face != "B" && l.Face != "back":
		return notOneOf(at, "face", l.Face, "A", "B", "back")
	case l.Width <= 0:
		return refuse("not-positive", at, words.Name("member", "width"), words.Length("value", l.Width))
	case l.Depth <= 0:
		return refuse("not-positive", at, words.Name("member", "depth"), words.Length("value", l.Depth))
	case l.Power.Exit != "" && l.Power.Exit != "start" && l.Power.Exit != "end":
		return notOneOf(at, "exit", l.Power.Exit, "start", "end")
	}
	return nil
}

// SetLight changes a light.
type SetLight struct {
	Module string         `json:"module,omitempty"`
	Light  string         `json:"light"`
	With   document.Extra `json:"-"`
}

// Do returns "set-light".
func (SetLight) Do() string { return "set-light" }

func (e SetLight) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onLight(p, e, e.Module, e.Light, func(m plan.Module, i int) (plan.Module, error) {
		l, err := patch(m.Lights[i], e.With, where("light", e.Light), "id")
		if err == nil {
			err = checkLight(m, l)
		}
		m.Lights = with(m.Lights, i, l)
		return m, err
	})
}

// RemoveLight takes a light away.
type RemoveLight struct {
	Module string `json:"module,omitempty"`
	Light  string `json:"light"`
}

// Do returns "remove-light".
func (RemoveLight) Do() string { return "remove-light" }

func (e RemoveLight) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onLight(p, e, e.Module, e.Light, func(m plan.Module, i int) (plan.Module, error) {
		m.Lights = without(m.Lights, i)
		return m, nil
	})
}

// AddBracket adds a bracket to a board or divider of a module. Without a kind it is of
// the shop's own.
type AddBracket struct {
	Module string         `json:"module"`
	With   document.Extra `json:"-"`
}

// Do returns "add-bracket".
func (AddBracket) Do() string { return "add-bracket" }

func (e AddBracket) apply(p plan.Plan) (plan.Plan, Name, error) {
	id := next(&p, plan.LetterBracket)
	return onModule(p, e, e.Module, func(m plan.Module) (plan.Module, error) {
		b, err := fresh(plan.Bracket{Kind: p.Shop.Brackets.Kind}, e.With, where("module", m.ID)+", new bracket", "id")
		if err != nil {
			return m, err
		}
		b.ID = id
		m.Brackets = inserted(m.Brackets, len(m.Brackets), b)
		return m, checkBracket(m, b)
	})
}

func checkBracket(m plan.Module, b plan.Bracket) error {
	at := where("module", m.ID) + ", bracket " + b.ID
	if b.Edge != "" && b.Edge != "back" && b.Edge != "front" {
		return notOneOf(at, "edge", b.Edge, "back", "front")
	}
	if b.Divider == "" {
		_, err := number(b.Board, len(m.Boards), "board", at)
		return err
	}
	if b.Board != 0 {
		return refuse("either", at, words.Name("member", "board"), words.Name("other", "divider"))
	}
	_, err := find(m.Dividers, dividerID, "divider", at, b.Divider)
	return err
}

// SetBracket changes a bracket.
type SetBracket struct {
	Module  string         `json:"module,omitempty"`
	Bracket string         `json:"bracket"`
	With    document.Extra `json:"-"`
}

// Do returns "set-bracket".
func (SetBracket) Do() string { return "set-bracket" }

func (e SetBracket) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onBracket(p, e, e.Module, e.Bracket, func(m plan.Module, i int) (plan.Module, error) {
		b, err := patch(m.Brackets[i], e.With, where("bracket", e.Bracket), "id")
		if err == nil {
			err = checkBracket(m, b)
		}
		m.Brackets = with(m.Brackets, i, b)
		return m, err
	})
}

// RemoveBracket takes a bracket away.
type RemoveBracket struct {
	Module  string `json:"module,omitempty"`
	Bracket string `json:"bracket"`
}

// Do returns "remove-bracket".
func (RemoveBracket) Do() string { return "remove-bracket" }

func (e RemoveBracket) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onBracket(p, e, e.Module, e.Bracket, func(m plan.Module, i int) (plan.Module, error) {
		m.Brackets = without(m.Brackets, i)
		return m, nil
	})
}
