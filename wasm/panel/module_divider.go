package panel

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// dividers are the boards across the inside.
func (e *editor) dividers() Node {
	var list kids
	for i := range e.m.Dividers {
		list.add(e.divider(i))
	}
	return counted("editor-dividers", e.term("editor.dividers"), len(e.m.Dividers), list, e.addDivider())
}

// dividerName is what a divider is called.
func (e *editor) dividerName(i int) string {
	if d := e.m.Dividers[i]; d.Name != "" {
		return d.Name
	}
	return e.say("editor.divider-n", words.Count("n", i+1))
}

func (e *editor) divider(i int) Node {
	d := e.m.Dividers[i]
	name := words.Name("name", e.dividerName(i))
	f := e.form(d.ID, "divider", "set-divider", []words.Arg{name}, "divider", d.ID)
	is := func(p finding.Place) bool { return p.Divider == d.ID || p.Board == d.ID }
	joints := options(e.s, "editor.divider-", "housed", "butt")
	head := e.say("editor.divider-head", name, words.Count("from", d.From), words.Count("to", d.To), words.Length("at", d.At))
	return fold(e.s, d.ID, app.Thing{Kind: "divider", Owner: e.m.ID, ID: d.ID}, head, e.worst(is),
		e.about(is, d.ID),
		two(f.boardChoice(e, "from", d.From), f.boardChoice(e, "to", d.To)),
		two(f.length("at", d.At), f.length("thickness", d.Thickness)),
		two(f.choice("start", d.Start, joints), f.choice("end", d.End, joints)),
		two(f.maybe("housingDepth", d.HousingDepth, "editor.by-shop"), f.text("name", d.Name, "form.no-name")),
		e.edges(d.ID, e.dividerName(i), d.Edges, "divider", d.ID),
		drops(d.ID+".remove", e.say("editor.remove-divider", name), line("remove-divider", "module", e.m.ID, "divider", d.ID)))
}

// addDivider adds a divider between two boards that face each other, or says that there
// are none.
func (e *editor) addDivider() Node {
	from, to := facing(e.m)
	if from == 0 {
		return blocked("add-divider", e.term("editor.add-divider"), e.term("editor.none-facing"))
	}
	at, _ := e.s.Plan.Style().Rounded(e.lengthOf(from) / 2)
	return rowOf(makes("add-divider", e.term("editor.add-divider"), line("add-divider", "module", e.m.ID, "from", from, "to", to, "at", at)))
}

// facing returns two boards between which a divider may stand: in a closed chain the
// first and the one half way round, in an open one the first two that turn the same way
// round a third. 0 where there are none.
func facing(m plan.Module) (from, to int) {
	if m.Closed && len(m.Boards) >= 3 {
		return 1, len(m.Boards)/2 + 1
	}
	for i := range len(m.Boards) - 2 {
		if i+1 < len(m.Corners) && (m.Corners[i].Turn > 0) == (m.Corners[i+1].Turn > 0) {
			return i + 1, i + 3
		}
	}
	return 0, 0
}
