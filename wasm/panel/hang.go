package panel

import (
	"slices"
	"strings"

	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A hanging is what the panel for the wall is about: an arrangement, worked out, and its
// wall.
type hanging struct {
	s *app.State
	w plan.Wall
	a plan.Arrangement
	r wall.Result
}

// hang returns the sections of the panel for the wall: the two lines, the wall points,
// cautions, shims, order and findings; at the bench one point at a time.
func hang(s *app.State) []Node {
	h := &hanging{s: s, r: resultOf(s.Build, s.Arrangement)}
	h.w, _ = s.Plan.Wall(s.Wall)
	h.a, _ = s.Plan.Arrangement(s.Arrangement)
	switch {
	case len(h.r.Placed) == 0:
		return append(h.choice(), h.nothing("hang.none"))
	case len(h.r.Points) == 0:
		return append(h.choice(), h.nothing("hang.no-points"), h.cautions(), h.findings())
	case s.On[app.Bench]:
		return h.bench()
	}
	return append(h.choice(), h.lines(), h.points(), h.cautions(), h.shims(), h.order(), h.findings())
}

// term is term in the plan's units.
func (h *hanging) term(key string) string { return term(h.s, key) }

// say is say in the plan's units.
func (h *hanging) say(key string, args ...words.Arg) string { return say(h.s, key, args...) }

func (h *hanging) nothing(key string) Node {
	return empty("hang-none", h.say(key), h.say(key+"-why"),
		button("hang-to-arrange", h.term("hang.to-arrange"), app.Go{Job: app.Arrange}, class("btn main")))
}

// choice is the list of arrangements, where there are several.
func (h *hanging) choice() []Node {
	if len(h.s.Plan.Arrangements) < 2 {
		return nil
	}
	var of kids
	for i, a := range h.s.Plan.Arrangements {
		of.add(el("option", "o-"+a.ID, at("value", a.ID), flag("selected", a.ID == h.a.ID), text(nameOfArrangement(h.s, a, i))))
	}
	return []Node{el("section", "arrangement", at("aria-label", h.term("hang.arrangement")),
		el("div", "", class("field"), el("label", "", attr("for=hang-arrangement"), text(h.term("hang.arrangement"))),
			el("select", "hang-arrangement", attr("id=hang-arrangement"), on("change", app.ShowArrangement{}), of)))}
}

// nameOfArrangement is what an arrangement is called: the one with that index by its
// number, where nobody has named it.
func nameOfArrangement(s *app.State, a plan.Arrangement, i int) string {
	if a.Name != "" {
		return a.Name
	}
	return say(s, "page.arrangement-number", words.Count("n", i+1))
}

// lines are the level line and the plumb line, each placed once.
func (h *hanging) lines() Node {
	style := h.s.Plan.Style()
	of := func(key, member string, value, most unit.Length) Node {
		return field(h.s, app.Field{
			Key: "datum-" + member, Label: h.say("hang." + member), Kind: app.LengthField, Optional: true,
			Line: line("set-datum", "arrangement", h.a.ID, member, "$"), Value: style.Length(value), Least: 0, Most: most,
		})
	}
	return section("datum", h.term("hang.lines"),
		el("div", "fields", class("fields"), of("hang.level", "level", h.r.Level, h.w.Height), of("hang.plumb", "plumb", h.r.Plumb, h.w.Width)),
		note("lines-stand", h.stand()), note("lines-how", h.term("hang.lines-how")))
}

// stand says which of the lines somebody has put where they are.
func (h *hanging) stand() string {
	level, plumb := h.a.Datum.Level.Known, h.a.Datum.Plumb.Known
	switch {
	case level && plumb:
		return h.term("hang.both-set")
	case level:
		return h.term("hang.level-set")
	case plumb:
		return h.term("hang.plumb-set")
	}
	return h.term("hang.both-chosen")
}

// pointInHand is the index of the point that is looked at.
func (h *hanging) pointInHand() int {
	if h.s.At.Kind == "point" && h.s.At.Index >= 1 && h.s.At.Index <= len(h.r.Points) {
		return h.s.At.Index - 1
	}
	return 0
}

// points is the table of wall points.
func (h *hanging) points() Node {
	columns := []column{
		{title: "hang.col-number", area: "no"}, {title: "hang.col-across", area: "across", right: true}, {title: "hang.col-up", area: "up", right: true},
		{title: "hang.col-drill", area: "drill", right: true}, {title: "hang.col-depth", area: "deep", right: true},
		{title: "hang.col-into", area: "into", words: true}, {title: "hang.col-state", area: "state", words: true},
		{title: "hang.col-shared", area: "shared", words: true,
			none: !slices.ContainsFunc(h.r.Points, func(p wall.Point) bool { return len(p.Shared) > 0 })},
	}
	rows := make([]row, len(h.r.Points))
	for i := range h.r.Points {
		rows[i] = row{"point-" + numeral(i+1), h.pointCells(i)}
	}
	t := table(h.s, "points", perUnit(h.s, "hang.points"), columns, rows)
	if h.s.At.Kind == "point" {
		t = markedRow(t, "point-"+numeral(h.pointInHand()+1))
	}
	return el("section", "wall-points", t,
		note("signs", h.term("hang.signs")), note("rounded", h.rounded()), h.sharing())
}

func (h *hanging) pointCells(i int) []part {
	p := h.r.Points[i]
	pick := pickPin("pick-point-"+numeral(i+1), p.Number,
		h.say("hang.pick", words.Name("n", p.Number), words.Name("module", h.module(p.Module))),
		h.thing(i), h.s.At.Kind == "point" && h.pointInHand() == i)
	drill, deep := part(text(h.term("hang.axis"))), part(nil)
	if p.What == wall.Hole {
		drill, deep = fractions(h.drill(p)), fractions(h.s.Plan.Style().Length(p.Depth))
	}
	return []part{pick, el("b", "", fractions(h.across(p))), el("b", "", fractions(h.up(p))), drill, deep, said(capital(h.into(p))), h.stateLabel(p), text(h.others(p))}
}

func (h *hanging) thing(i int) app.Point {
	return app.Point{At: app.Thing{Kind: "point", Owner: h.a.ID, Index: i + 1}}
}

// drill is the size of a drill, finer than a tape reads.
func (h *hanging) drill(p wall.Point) string {
	return h.say("hang.round", words.Name("drill", h.fine().Length(p.Drill)))
}

// across and up are the running figures, as the picture has them: a height has its sign.
func (h *hanging) across(p wall.Point) string {
	if p.DX < 0 {
		return "−" + h.s.Plan.Style().Length(-p.DX)
	}
	return h.s.Plan.Style().Length(p.DX)
}

func (h *hanging) up(p wall.Point) string {
	switch size := h.s.Plan.Style().Length(p.DY.Abs()); {
	case p.DY > 0:
		return "+" + size
	case p.DY < 0:
		return "−" + size
	default:
		return size
	}
}

func (h *hanging) module(id string) string {
	if m, ok := h.s.Plan.Module(id); ok && m.Name != "" {
		return m.Name
	}
	return id
}

// into says what a point meets in the wall.
func (h *hanging) into(p wall.Point) string {
	n := words.Count("n", p.In.Stud)
	switch p.In.Kind {
	case wall.InStud:
		return h.studWords(p, n)
	case wall.InMasonry:
		return h.term("hang.into-masonry")
	case wall.InLining:
		return h.say("hang.into-lining", n, words.Length("by", p.In.Edge.Abs()))
	}
	if p.In.Stud > 0 {
		return h.studWords(p, n)
	}
	return h.term("hang.into-unknown")
}

func (h *hanging) studWords(p wall.Point, n words.Arg) string {
	state := p.In.State
	if state != plan.EdgesFound && state != plan.OnePoint {
		state = plan.Guess
	}
	return h.say("hang.into-"+state, n)
}

// stateLabel is a word and a shape for a hole; an axis is not drilled and has none.
func (h *hanging) stateLabel(p wall.Point) part {
	if p.What != wall.Hole {
		return parts(nil)
	}
	return label(h.pointState(p))
}

// pointState is the worst that is to be said of a hole.
func (h *hanging) pointState(p wall.Point) (finding.Severity, string) {
	switch {
	case p.Band != "":
		return finding.Stop, h.term("hang.is-band")
	case p.Behind != "":
		return finding.Stop, h.say("hang.is-behind", words.Word("obstacle", "obstacle."+h.kindOf(p.Behind)))
	case p.In.Kind == wall.InLining:
		return finding.Mend, h.term("hang.is-lining")
	case p.In.Kind == wall.InUnknown && p.In.Stud == 0:
		return finding.Unknown, h.term("hang.is-unknown")
	case p.In.Kind == wall.InMasonry:
		return finding.Note, h.term("hang.is-in-masonry")
	case !p.In.Wood():
		return finding.Unknown, h.term("hang.is-guess")
	case h.w.Studs.Material == "metal":
		return finding.Unknown, h.term("hang.is-metal")
	case p.NearEdge():
		return finding.Mend, h.term("hang.is-edge")
	}
	return finding.Note, h.term("hang.is-in-stud")
}

func (h *hanging) kindOf(obstacle string) string {
	for _, o := range h.w.Obstacles {
		if o.ID == obstacle {
			return o.Kind
		}
	}
	return plan.Other
}

// others names the other arrangements that use a hole.
func (h *hanging) others(p wall.Point) string {
	var names []string
	for i, a := range h.s.Plan.Arrangements {
		if slices.Contains(p.Shared, a.ID) {
			names = append(names, nameOfArrangement(h.s, a, i))
		}
	}
	return strings.Join(names, ", ")
}

// fine is the style for what is too small for a tape: hundredths of a millimetre, or
// sixty-fourths of an inch.
func (h *hanging) fine() unit.Style {
	if h.s.Plan.Units.System == unit.Inches {
		return unit.Style{System: unit.Inches, Step: unit.Inch / 64}
	}
	return unit.Style{System: unit.Metric, Step: unit.Millimetre / 100}
}

// rounded says to what figures are rounded, and the most that it took.
func (h *hanging) rounded() string {
	var most unit.Length
	for _, p := range h.r.Points {
		most = max(most, p.RoundX.Abs(), p.RoundY.Abs())
	}
	step := words.Name("step", h.fine().WithUnit(h.s.Plan.Shop.Tape.Site))
	if most == 0 {
		return h.say("hang.not-rounded", step)
	}
	return h.say("hang.rounded", step, words.Name("most", roundedUp(most, h.fine())))
}

// roundedUp never says less than what was rounded off.
func roundedUp(l unit.Length, style unit.Style) string {
	if r, _ := style.Rounded(l); r < l {
		l += style.Step
	}
	return style.WithUnit(l)
}

// sharing counts the holes of all arrangements of the wall together.
func (h *hanging) sharing() part {
	n := 0
	for _, r := range h.s.Build.Arrangements {
		if r.Wall == h.w.ID {
			n++
		}
	}
	if n < 2 {
		return parts(nil)
	}
	all, shared := wall.CountHoles(h.s.Build.Arrangements, h.w.ID)
	return note("sharing", h.say("hang.shared", words.Count("all", all), words.Count("shared", shared)))
}

// shims says where a plate has to stand off to be plumb, and on which side.
func (h *hanging) shims() Node {
	var of kids
	for i, sh := range h.r.Shims {
		of.add(el("p", "shim-"+numeral(i+1), said(h.shim(sh))))
	}
	readings := len(h.w.Plumb)
	switch {
	case readings == 0:
		of = kids{el("p", "shims-none", label(finding.Unknown, h.term("hang.shims-not-checked")))}
	case of == nil:
		of = kids{note("shims-none", h.term("hang.shims-none"))}
	}
	return section("shims", h.term("hang.shims"), of,
		when(readings > 0, note("readings", h.say("hang.shims-readings", words.Count("n", readings)))))
}

func (h *hanging) shim(sh wall.Shim) string {
	var numbers []string
	for _, p := range h.r.Points {
		if p.Module == sh.Module && p.Bracket == sh.Bracket {
			numbers = append(numbers, p.Number)
		}
	}
	end := "hang.lower-end"
	if sh.Top {
		end = "hang.upper-end"
	}
	return h.say("hang.shim", words.Name("bracket", numberIn(h.s, sh.Module, "bracket", sh.Bracket)), words.Name("module", h.module(sh.Module)),
		words.Name("points", h.say("hang.shim-points", words.Name("points", strings.Join(numbers, ", ")))),
		words.Name("thickness", h.fine().WithUnit(sh.Thickness)), words.Word("end", end))
}

// order is the order of hanging, where one is forced.
func (h *hanging) order() Node {
	if len(h.r.Order) == 0 {
		return section("order", h.term("hang.order"), note("order-any", h.term("hang.order-any")))
	}
	n := el("ol", "order-list", class("order"))
	for _, id := range h.r.Order {
		n.add(el("li", "hang-"+id, text(h.module(id))))
	}
	return section("order", h.term("hang.order"), note("order-forced", h.term("hang.order-forced")), n)
}

// findings are those about the holes, and about what holds what hangs on them.
func (h *hanging) findings() Node {
	var of kids
	for i, f := range h.s.Build.Findings {
		if h.concerns(f) && !(h.s.At.Kind == "finding" && h.s.At.Index == i+1) {
			of.add(findingCard(h.s, i))
		}
	}
	return counted("hang-findings", h.term("hang.findings"), len(of), of)
}

// concerns reports whether a finding is about the holes of this arrangement. The age of
// the wall stands among the cautions.
func (h *hanging) concerns(f finding.Finding) bool {
	p := f.Place
	switch {
	case f.Kind.Key == "old-wall":
		return false
	case p.Arrangement == h.a.ID:
		return p.Point != "" || f.Kind.Verdict == finding.Holds || f.Kind.Key == "corner-order"
	case p.Arrangement != "" || p.Module != "":
		return false
	}
	return p.Wall == h.w.ID && (f.Kind.Verdict == finding.Holds || f.Kind.Severity == finding.Unknown)
}
