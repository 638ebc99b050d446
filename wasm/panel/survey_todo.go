package panel

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A fact is something to find out about a wall: what to do, whether it is done, and the
// field that takes the answer.
type fact struct {
	key   string // "survey.todo-<key>" are its words
	done  bool
	field string
	args  []words.Arg
}

// stillToFind lists the facts that are asked of every wall, those that are known with a
// tick.
func stillToFind(s *app.State, w plan.Wall) Node {
	var open, done kids
	for _, f := range factsOf(w) {
		if f.done {
			done.add(factRow(s, f))
		} else {
			open.add(factRow(s, f))
		}
	}
	return counted("survey-todo", term(s, "survey.todo"), len(open),
		when(open == nil, note("todo-none", term(s, "survey.todo-none"))),
		when(open != nil, el("ul", "todo", class("todo"), open)),
		when(done != nil, fold(s, "known", app.Thing{}, say(s, "survey.known", words.Count("n", len(done))), sign(finding.Note),
			el("ul", "", class("todo"), done))))
}

func factRow(s *app.State, f fact) Node {
	says := say(s, "survey.todo-"+f.key, f.args...)
	if f.done {
		return el("li", "todo-"+f.key, sign(finding.Note), el("span", "", said(says)), el("span", "", class("small mute"), text(term(s, "survey.done"))))
	}
	return el("li", "todo-"+f.key, el("span", "", class("box")), el("span", "", said(says)),
		plainButton("todo-"+f.key+"-do", term(s, "survey.do"), goTo(f.field), at("aria-label", say(s, "survey.do-what", words.Name("what", says)))))
}

// factsOf returns the facts of a wall in the order of its survey.
func factsOf(w plan.Wall) []fact {
	studs := w.Build == plan.BuildStuds || w.Build == plan.BuildLath
	lined := w.Lining.Kind == "none" || w.Lining.Kind != "" && w.Lining.Thickness.Known
	lining := w.ID + ".lining-kind"
	if w.Lining.Kind != "" {
		lining = w.ID + ".lining-thickness"
	}
	facts := []fact{
		{key: "build", done: w.Build != "", field: w.ID + ".build"},
		{key: "lining", done: lined, field: lining},
	}
	if studs {
		facts = append(facts, studFacts(w)...)
	}
	plumb := "add-plumb"
	rule := w.CableRule != "" && w.CableRule != wall.NoRule
	return append(facts,
		fact{key: "floor", done: w.FloorRise.Known, field: w.ID + ".floor-rise"},
		fact{key: "ceiling", done: w.CeilingRise.Known, field: w.ID + ".ceiling-rise"},
		fact{key: "cables", done: rule, field: w.ID + ".cable-rule"},
		deepFact(w),
		fact{key: "plumb", done: len(w.Plumb) >= plumbPlaces, field: plumb, args: []words.Arg{words.Count("n", len(w.Plumb)), words.Count("limit", plumbPlaces)}},
		fact{key: "far-side", done: w.FarSide != "", field: w.ID + ".far-side"},
		fact{key: "year", done: w.BuiltYear.Known, field: w.ID + ".built-year"})
}

// studFacts are the facts of a wall with studs.
func studFacts(w plan.Wall) []fact {
	found := wall.Studs(w)
	facts := []fact{
		{key: "studs", done: len(found) > 0, field: w.ID + ".stud-new"},
		{key: "stud-material", done: w.Studs.Material != "", field: w.ID + ".studs.material"},
		{key: "stud-width", done: w.Studs.Width.Known, field: w.ID + ".studs.width"},
	}
	unsure := 0
	var first wall.Stud
	for _, st := range found {
		if st.State == plan.EdgesFound {
			continue
		}
		if unsure == 0 {
			first = st
		}
		unsure++
	}
	if len(found) == 0 {
		return facts
	}
	edges := fact{key: "edges", done: true}
	if unsure > 0 {
		edges = fact{key: "edges-of", field: w.ID + ".studs.state", args: []words.Arg{words.Count("n", unsure), words.Length("at", first.X)}}
		if i := typedStud(w, first.X); i > 0 {
			edges.field = studKey(w, i) + ".state"
		}
	}
	return append(facts, edges)
}

// deepFact asks how far the things on the wall stand out.
func deepFact(w plan.Wall) fact {
	n, first := 0, ""
	for _, o := range w.Obstacles {
		if o.Depth.Known {
			continue
		}
		if n == 0 {
			first = o.ID
		}
		n++
	}
	if n == 0 {
		return fact{key: "depth", done: true, args: []words.Arg{words.Count("n", len(w.Obstacles))}}
	}
	return fact{key: "depth-of", field: first + ".depth", args: []words.Arg{words.Count("n", n)}}
}
