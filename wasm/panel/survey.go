package panel

import (
	"slices"

	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// survey returns the sections of the panel in which a wall is taken down. What is not
// known stays seen as not known.
func survey(s *app.State) []Node {
	w, ok := s.Plan.Wall(s.Wall)
	if !ok {
		return []Node{empty("survey-none", term(s, "survey.none"), term(s, "survey.none-why"), addWall(s, plan.Wall{}))}
	}
	f := form{s: s, key: w.ID, words: "survey.wall", do: "set-wall", of: []any{"wall", w.ID}}
	walls := wallsOf(s, w, f)
	out := []Node{sizeOf(s, w, f), madeOf(s, w, f), studsOf(s, w), stillToFind(s, w), obstaclesOf(s, w), cablesOf(s, w, f), plumbOf(s, w), flatOf(s, w)}
	if len(s.Plan.Walls) > 1 {
		return append([]Node{walls}, out...)
	}
	return append(out, walls)
}

// wallsOf is the list of walls: choose, add, rename, remove.
func wallsOf(s *app.State, w plan.Wall, f form) Node {
	var choose kids
	for _, other := range s.Plan.Walls {
		if len(s.Plan.Walls) > 1 {
			choose.add(button("show-"+other.ID, other.Label(), app.ShowWall{ID: other.ID}, state("aria-pressed", other.ID == w.ID)))
		}
	}
	return counted("survey-walls", term(s, "survey.walls"), len(s.Plan.Walls),
		rowOf(choose, addWall(s, w)),
		f.text("name", w.Name, "form.no-name"),
		removeWall(s, w))
}

// addWall adds a wall as high as the one in view, and an arrangement for it.
func addWall(s *app.State, like plan.Wall) Node {
	if like.Width == 0 {
		like.Width, like.Height = pick(s, 3000, 120), pick(s, 2400, 96)
	}
	style := s.Plan.Style()
	name := words.Text("survey.wall-new", []words.Arg{words.Count("n", len(s.Plan.Walls)+1)}, style)
	add := edit.AddWall{With: edit.Changes(edit.Change("width", like.Width), edit.Change("height", like.Height), edit.Change("name", name))}
	next, _, err := edit.Apply(s.Plan, add)
	if err != nil {
		return note("add-wall", term(s, "survey.no-more-walls"))
	}
	id := next.Walls[len(next.Walls)-1].ID
	return button("add-wall", term(s, "survey.add-wall"), app.Do{Edits: []edit.Edit{add, edit.AddArrangement{Wall: id, Name: words.Text("page.first-arrangement", nil, style)}}})
}

// removeWall takes the wall in view away with its arrangements, or says why it cannot:
// modules hang on it.
func removeWall(s *app.State, w plan.Wall) Node {
	var edits []edit.Edit
	hung := 0
	for _, a := range s.Plan.Arrangements {
		if a.Wall == w.ID {
			hung += len(a.Poses)
			edits = append(edits, edit.RemoveArrangement{Arrangement: a.ID})
		}
	}
	label := say(s, "survey.remove-wall", words.Name("wall", w.Label()))
	if hung > 0 {
		return blocked("remove-wall", label, say(s, "survey.wall-in-use", words.Count("n", hung)))
	}
	return plainButton("remove-wall", label, app.Do{Edits: append(edits, edit.RemoveWall{Wall: w.ID})})
}

// sizeOf are the sizes of the wall.
func sizeOf(s *app.State, w plan.Wall, f form) Node {
	return section("survey-size", term(s, "survey.size"),
		two(f.length("width", w.Width), f.length("height", w.Height)),
		two(f.signed("floorRise", w.FloorRise, true), f.signed("ceilingRise", w.CeilingRise, true)),
		note("rise-how", term(s, "survey.rise-how")))
}

// madeOf is what the wall is made of, how old it is, and what is behind it.
func madeOf(s *app.State, w plan.Wall, f form) Node {
	builds := options(s, "survey.build-", plan.BuildStuds, plan.BuildLath, plan.BuildDabs, plan.BuildBrick, plan.BuildHollow, plan.BuildAerated, plan.BuildConcrete)
	linings := options(s, "survey.lining-", "plasterboard", "plaster", "tile-over-plasterboard", "tile-over-plaster", "none")
	year := f.typed("builtYear", app.CountField, "")
	year.Optional = true
	if w.BuiltYear.Known {
		year.Value = numeral(w.BuiltYear.Value)
	}
	built := placeholder(field(s, year), term(s, "form.not-known"))
	far := f.text("farSide", w.FarSide, "form.not-known")
	if !w.BuiltYear.Known {
		built = asking(built)
	}
	if w.FarSide == "" {
		far = asking(far)
	}
	old := !w.BuiltYear.Known || w.BuiltYear.Value < asbestosYear
	return section("survey-made", term(s, "survey.made"),
		f.unknown("build", w.Build, builds),
		two(f.unknown("lining.kind", w.Lining.Kind, linings), f.asked("lining.thickness", w.Lining.Thickness)),
		two(built, far),
		when(old, notice("caution-old", term(s, "survey.caution-old-title"), term(s, "survey.caution-old"))))
}

// asbestosYear is the first year from which no asbestos is expected in a building of the
// UK, where it was banned in November 1999; lead paint ends earlier, in 1978 in homes of
// the US (EPA).
const asbestosYear = 2000

// cablesOf is where cables are expected.
func cablesOf(s *app.State, w plan.Wall, f form) Node {
	var rules []option
	for _, r := range wall.CableRules() {
		rules = append(rules, option{r.Key, term(s, "survey.rule-"+r.Key)})
	}
	if w.CableRule == wall.NoRule {
		rules = append(rules, option{wall.NoRule, term(s, "survey.rule-"+wall.NoRule)})
	}
	n := 0
	for _, o := range w.Obstacles {
		if wired(o) {
			n++
		}
	}
	follows := term(s, "survey.bands-none")
	i := slices.IndexFunc(wall.CableRules(), func(r wall.CableRule) bool { return r.Key == w.CableRule })
	if i >= 0 {
		r := wall.CableRules()[i]
		follows = term(s, "rule.cable."+r.Key) + ". " + say(s, "survey.bands", words.Count("n", n), words.Length("limit", r.Ceiling))
	}
	return section("survey-cables", term(s, "survey.cables"),
		f.unknown("cableRule", w.CableRule, rules),
		note("bands", follows),
		notice("caution-cables", term(s, "survey.caution-cables-title"), say(s, "survey.caution-cables", words.Length("limit", pick(s, 150, 6)))),
		note("caution-where", term(s, "survey.caution-where")))
}

func wired(o plan.Obstacle) bool { return o.Kind == plan.Socket || o.Kind == plan.Switch }

// stateSign is the state of a stud in a word with its shape.
func stateSign(s *app.State, state string) Node {
	switch state {
	case plan.EdgesFound:
		return label(finding.Note, term(s, "survey.state-"+state))
	case plan.OnePoint, plan.Guess:
		return label(finding.Unknown, term(s, "survey.state-"+state))
	}
	return label(finding.Unknown, term(s, "form.not-known"))
}
