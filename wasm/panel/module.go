package panel

import (
	"ledgewright/engine"
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// noEditor stands in the place of the editor while nothing is chosen.
func noEditor(s *app.State) Node {
	return empty("editor-none", term(s, "editor.none"), term(s, "editor.none-why"), newForm(s))
}

// editorOfBoards is the part of the editor about boards and corners.
func editorOfBoards(s *app.State) []Node {
	return editorOf(s, (*editor).whole, (*editor).boards, (*editor).corners)
}

// editorOfFittings is the part about what is let into the boards and what carries them.
func editorOfFittings(s *app.State) []Node {
	return editorOf(s, (*editor).dividers, (*editor).lights, (*editor).brackets)
}

// editorOf returns sections of the editor of the one module that is chosen, or none.
func editorOf(s *app.State, sections ...func(*editor) Node) (out []Node) {
	if len(s.Chosen) != 1 {
		return nil
	}
	m, ok := s.Plan.Module(s.Chosen[0])
	if !ok {
		return nil
	}
	e := &editor{s: s, m: m, worked: workedBoards(s.Build, m)}
	for _, of := range sections {
		out = append(out, of(e))
	}
	return out
}

// An editor is the module that is being changed, with its chain as it is worked out:
// none where it could not be.
type editor struct {
	s      *app.State
	m      plan.Module
	worked []board.Board
}

// workedBoards returns the boards of a module's chain as they are worked out.
func workedBoards(b engine.Build, m plan.Module) []board.Board {
	for _, r := range b.Modules {
		if r.ID == m.ID && len(r.Boards) >= len(m.Boards) {
			return r.Boards[:len(m.Boards)]
		}
	}
	return nil
}

// lengthOf returns the length of a board, by its number: as worked out, or as typed.
func (e *editor) lengthOf(n int) unit.Length {
	if n < 1 || n > len(e.m.Boards) {
		return 0
	}
	if e.worked != nil {
		return e.worked[n-1].Length
	}
	return e.m.Boards[n-1].Length.Or(0)
}

// form returns the form of a thing of the module.
func (e *editor) form(key, kind, do string, args []words.Arg, of ...any) form {
	return form{s: e.s, key: key, words: "editor." + kind, args: args, do: do, of: append([]any{"module", e.m.ID}, of...)}
}

// term is term in the plan's units.
func (e *editor) term(key string) string { return term(e.s, key) }

// say is say with the plan's units.
func (e *editor) say(key string, args ...words.Arg) string { return say(e.s, key, args...) }

// newForm begins a free form: one board, which others join.
func newForm(s *app.State) Node {
	thickness := pick(s, 26, 1)
	if all := s.Plan.Shop.Stock.Thicknesses; len(all) > 0 {
		thickness = all[min(1, len(all)-1)]
	}
	kind := commonWood
	if n := len(s.Plan.Modules); n > 0 {
		kind = s.Plan.Modules[n-1].Wood
	}
	name := say(s, "editor.new-name", words.Count("n", len(s.Plan.Modules)+1))
	members := []any{"shape", "shelf", "name", name, "width", pick(s, 600, 24), "depth", pick(s, 200, 8), "thickness", thickness, "wood", kind}
	if w, ok := s.Plan.Wall(s.Wall); ok && s.Arrangement != "" {
		x, _ := s.Plan.Style().Rounded(w.Width / 2)
		members = append(members, "arrangement", s.Arrangement, "x", x, "y", min(pick(s, 1500, 60), w.Height/2))
	}
	return button("new-form", term(s, "editor.new"), app.DoLine{Line: line("add-module", members...)}, class("btn main"))
}

// commonWood is the wood of the first module.
const commonWood = "white-oak"

// whole is what holds for the whole module.
func (e *editor) whole() Node {
	m := e.m
	f := e.form(m.ID, "module", "set-module", []words.Arg{words.Name("module", m.Label())})
	var woods []option
	for _, w := range wood.All() {
		woods = append(woods, option{w.ID, w.Name})
	}
	all := f.typed("thickness", app.LengthField, "")
	if t, same := sameThickness(m); same {
		all.Value = exact(e.s, t)
	}
	hung := f.typed("hung", app.AngleField, m.Hung.Decimal())
	return section("editor-module", e.term("editor.module"),
		e.about(func(p finding.Place) bool {
			return p.Board == "" && p.Corner == 0 && p.Divider == "" && p.Light == "" && p.Bracket == "" && p.Arrangement == ""
		}, m.ID),
		f.choice("wood", m.Wood, woods),
		two(f.length("depth", m.Depth), placeholder(field(e.s, all), e.term("editor.differs"))),
		f.tick("closed", m.Closed), f.tick("grainWrap", m.GrainWrap),
		hint(field(e.s, hung), e.term("editor.hung-how")))
}

// sameThickness returns the thickness of all boards of the chain, if it is the same.
func sameThickness(m plan.Module) (unit.Length, bool) {
	if len(m.Boards) == 0 {
		return 0, false
	}
	t := m.Boards[0].Thickness
	for _, b := range m.Boards {
		if b.Thickness != t {
			return 0, false
		}
	}
	return t, true
}

// about lists the findings of the module that point at one of its things.
func (e *editor) about(is func(finding.Place) bool, key string) (out kids) {
	for i, f := range e.s.Build.Findings {
		if f.Place.Module != e.m.ID || !is(f.Place) {
			continue
		}
		out.add(el("p", key+".finding-"+numeral(i+1), class("says "+tone(f.Kind.Severity)),
			sign(f.Kind.Severity), el("span", "", said(engine.Say(f, e.s.Plan.Style())))))
	}
	return out
}

// worst is the sign of the worst of findings, for the summary of a thing; nothing where
// there are none.
func (e *editor) worst(is func(finding.Place) bool) part {
	worst, n := finding.Note, 0
	for _, f := range e.s.Build.Findings {
		if f.Place.Module == e.m.ID && is(f.Place) {
			worst = max(worst, f.Kind.Severity)
			n++
		}
	}
	if n == 0 {
		return parts(nil)
	}
	return parts{text(" "), label(worst, e.say("editor.findings", words.Count("n", n)))}
}

// boardOptions are the boards of the chain to choose from.
func (e *editor) boardOptions() (out []option) {
	for i, b := range e.m.Boards {
		name := e.say("editor.board-n", words.Count("n", i+1))
		if b.Name != "" {
			name += ", " + b.Name
		}
		out = append(out, option{numeral(i + 1), name})
	}
	return out
}

// boardChoice is a list of the boards for a member that holds a board's number.
func (f form) boardChoice(e *editor, member string, n int) Node {
	return choice(f.s, f.typed(member, app.CountField, numeral(n)), e.boardOptions())
}
