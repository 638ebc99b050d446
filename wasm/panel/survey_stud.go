package panel

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// studsOf is all about the studs: what holds for all, the list of them as they are
// known, and those taken down one by one.
func studsOf(s *app.State, w plan.Wall) Node {
	st := w.Studs
	f := form{s: s, key: w.ID + ".studs", words: "survey.studs", do: "set-studs", of: []any{"wall", w.ID}}
	found := wall.Studs(w)
	return counted("survey-studs", term(s, "survey.studs"), max(len(found), len(st.Each)),
		note("studs-count", term(s, "survey.studs-count")),
		when(masonry(w), note("studs-masonry", term(s, "survey.studs-masonry"))),
		two(f.unknown("material", st.Material, options(s, "survey.material-", "wood", "metal")), f.asked("width", st.Width)),
		two(f.asked("depth", st.Depth), f.maybe("first", st.First, "form.not-measured")),
		two(f.maybe("spacing", st.Spacing, "form.not-measured"), f.unknown("state", st.State, stateOptions(s))),
		when(len(found) > 0, studTable(s, w, found)),
		eachStud(s, w),
		hint(field(s, newStud(s, w)), term(s, "survey.stud-new-how")))
}

// masonry reports whether the wall is known to have no studs.
func masonry(w plan.Wall) bool {
	return w.Build != "" && w.Build != plan.BuildStuds && w.Build != plan.BuildLath
}

func stateOptions(s *app.State) []option {
	return options(s, "survey.state-", plan.EdgesFound, plan.OnePoint, plan.Guess)
}

// newStud is the field in which a stud is added by its centre.
func newStud(s *app.State, w plan.Wall) app.Field {
	return app.Field{
		Key: w.ID + ".stud-new", Label: say(s, "survey.stud-new", unitWord(s)),
		Line: line("add-stud", "wall", w.ID, "state", plan.Guess, "x", "$"),
	}
}

// studTable lists the studs from the left, each with a way to change it.
func studTable(s *app.State, w plan.Wall, found []wall.Stud) Node {
	style := s.Plan.Style()
	columns := []column{{title: "survey.column-at", right: true}, {title: "survey.column-by", words: true},
		{title: "survey.column-state", words: true}, {title: "survey.column-do", words: true}}
	var rows []row
	for _, st := range found {
		key := "stud-row-" + numeral(st.Number)
		by, do := term(s, "survey.by-spacing"), takeDown(s, w, st)
		if i := typedStud(w, st.X); i > 0 {
			by = term(s, "survey.by-itself")
			do = plainButton(key+"-do", term(s, "survey.change"), goTo(studKey(w, i)+".x"),
				at("aria-label", say(s, "survey.change-stud", words.Count("n", i))))
		}
		rows = append(rows, row{key, []part{fractions(style.Length(st.X)), text(by), stateSign(s, st.State), do}})
	}
	return table(s, "stud-table", say(s, "survey.stud-table", unitWord(s)), columns, rows)
}

// typedStud returns the number of the stud taken down at x, 0 for none.
func typedStud(w plan.Wall, x unit.Length) int {
	for i, st := range w.Studs.Each {
		if st.X == x {
			return i + 1
		}
	}
	return 0
}

// takeDown makes a stud of the spacing one of its own, so that what is found of it can
// be said.
func takeDown(s *app.State, w plan.Wall, st wall.Stud) Node {
	state := st.State
	if state == "" {
		state = plan.Guess
	}
	return plainButton("stud-row-"+numeral(st.Number)+"-do", term(s, "survey.change"),
		app.DoLine{Line: line("add-stud", "wall", w.ID, "x", st.X, "state", state)},
		at("aria-label", say(s, "survey.take-down-stud", words.Length("at", st.X))))
}

func studKey(w plan.Wall, n int) string { return w.ID + ".stud" + numeral(n) }

// eachStud lists the studs taken down one by one.
func eachStud(s *app.State, w plan.Wall) (out kids) {
	for i, st := range w.Studs.Each {
		n, key := i+1, studKey(w, i+1)
		f := form{s: s, key: key, words: "survey.stud", args: []words.Arg{words.Count("n", n)}, do: "set-stud", of: []any{"wall", w.ID, "stud", n}}
		out.add(fold(s, key, app.Thing{Kind: "stud", Owner: w.ID, Index: n},
			say(s, "survey.stud-head", words.Count("n", n), words.Length("at", st.X)), parts{text(" "), stateSign(s, st.State)},
			two(f.length("x", st.X), f.maybe("width", st.Width, "survey.width-of-all")),
			f.choice("state", st.State, stateOptions(s)),
			drops(key+".remove", say(s, "survey.remove-stud", words.Count("n", n)), line("remove-stud", "wall", w.ID, "stud", n))))
	}
	return out
}
