package panel

import (
	"ledgewright/assets"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// start returns the start page: two figures make a wall; or a plan, a link or a code is
// opened; or a kept job, or an example.
func start(s *app.State) []Node {
	return []Node{
		el("header", "head", class("head"), mark(), el("h1", "title", text(term(s, "page.new-plan"))),
			el("p", "kept", class("kept"), text(term(s, "page.nothing-kept"))), helpButton(s)),
		startWall(s),
		startLedge(s),
		startPanel(s),
		startStick(s),
	}
}

// startPanel is the panel of the start page, or how the page works.
func startPanel(s *app.State) Node {
	if s.On[app.Help] {
		return help(s)
	}
	return el("aside", "panel", class("panel"), attr("aria-labelledby=panel-title"), attr("data-job=start"),
		el("header", "", el("h2", "panel-title", attr("id=panel-title"), attr("tabindex=-1"), text(term(s, "page.start-title"))),
			el("p", "", text(term(s, "page.start-asks")))),
		el("div", "cols-start", class("cols"),
			problem(s), newWall(s), keptJobs(s), openOther(s), examples(s), sideChoice(s), paintingChoice(s),
			el("section", "stays", note("", term(s, "page.stays-here")))),
		docked(s))
}

// startWall is a bare wall whose two figures are not known yet.
func startWall(s *app.State) Node {
	line := func(names, d string) Node { return svg("path", "", class(names), at("d", d)) }
	return el("main", "wall", class("wall bare"), at("aria-label", term(s, "page.wall")),
		svg("svg", "picture", class("picture"), at("viewBox", "-420 -240 3800 3000"), attr("aria-hidden=true"), at("preserveAspectRatio", "xMidYMid meet"),
			line("room", "M0 0L-1600-700M2960 0L4560-700M0 2460L-1600 3400M2960 2460L4560 3400"),
			line("edge", "M0-26v2512M2960-26v2512M-26 0h3012M-26 2460h3012"),
			line("thin", "M0 2365h2960"),
			line("asked", "M0 2640h1360M1600 2640h1360M0 2590v100M2960 2590v100M-190 0v1070M-190 1390v1070M-240 0h100M-240 2460h100"),
			svg("text", "", attr("x=1480"), attr("y=2640"), text("?")),
			svg("text", "", attr("x=-190"), attr("y=1230"), text("?"))),
		el("div", "hello", class("hello"), el("b", "", text(term(s, "page.name"))), el("p", "", text(term(s, "page.what-for")))))
}

// startLedge says that nothing is checked yet.
func startLedge(s *app.State) Node {
	row := el("div", "", class("verdicts"))
	for i, of := range [...]string{"fits", "holds", "takes"} {
		shape, key := sign(finding.Unknown), "page.no-wall-yet"
		if i == 2 {
			shape, key = signOf("is-sum", path("thin", "M2 5.5h20v4H2zM2 14.5h13v4H2zM19 14.5h3v4h-3z")), "page.nothing-yet"
		}
		row.add(el("p", "verdict-"+of, shape,
			el("span", "", el("b", "", text(term(s, "page.verdict-"+of))), text(" "), el("span", "", text(term(s, key))))))
	}
	return el("section", "ledge", class("ledge"), at("aria-label", term(s, "page.verdicts")), el("div", "", class("timber")), row)
}

// startStick shows the five jobs; none can be begun without a wall.
func startStick(s *app.State) Node {
	n := el("nav", "stick", class("rod timber"), at("aria-label", term(s, "page.jobs")))
	for i, job := range jobs() {
		n.add(el("button", "job-"+job, attr("type=button"), when(i == 0, attr("aria-current=page")),
			flag("disabled", i > 0), icon(job), text(term(s, "page.job-"+job))))
	}
	return n
}

// problem says why a file or a link did not open, or what is wrong with a figure.
func problem(s *app.State) part {
	if s.Problem == "" {
		return parts(nil)
	}
	return el("section", "problem", el("article", "", class("finding is-warn"), sign(finding.Mend), el("h4", "", said(s.Problem))))
}

// newWall is the form of two figures.
func newWall(s *app.State) Node {
	figure := func(name, label, example string) Node {
		return el("div", "", class("field"), el("label", "", at("for", "f-new-"+name), text(term(s, label))),
			el("input", "new-"+name, at("id", "f-new-"+name), at("name", name), attr("type=text"), attr("inputmode=decimal"),
				attr("autocomplete=off"), at("placeholder", example), used(app.Field{Key: "new-" + name})))
	}
	width, height := "2960", "2460"
	if s.Settings.Units == unit.Inches {
		width, height = `116 1/2`, "97"
	}
	return el("section", "new", el("form", "new-form", class("stack"), at("aria-label", term(s, "page.start-title")), on("submit", app.NewJob{}),
		units(s),
		el("div", "", class("fields"), figure("width", "page.wall-width-plain", width), figure("height", "page.wall-height-plain", height)),
		el("button", "draw", attr("type=submit"), class("btn main"), text(term(s, "page.draw-wall"))),
		note("", term(s, "page.figures-read"))))
}

// units chooses the units of new plans.
func units(s *app.State) Node {
	one := func(u unit.System, key string) Node {
		return el("label", "", class("choice"),
			el("input", "units-"+string(u), attr("type=radio"), attr("name=units"), at("value", string(u)),
				flag("checked", s.Settings.Units == u || s.Settings.Units == "" && u == unit.Metric),
				on("change", app.Set{Name: "units", Value: string(u)})),
			el("span", "", text(term(s, key))))
	}
	return el("fieldset", "units", class("either"), el("legend", "", text(term(s, "page.units"))),
		one(unit.Metric, "page.units-mm"), one(unit.Inches, "page.units-in"))
}

// keptJobs are the jobs that this browser holds.
func keptJobs(s *app.State) part {
	if len(s.Jobs) == 0 {
		return parts(nil)
	}
	list := el("ul", "", class("pieces plain"), at("aria-label", term(s, "page.kept-jobs")))
	for _, j := range s.Jobs {
		list.add(el("li", j.ID,
			el("div", "", el("button", "open-"+j.ID, attr("type=button"), class("name"), onClick(app.Open{Kept: j.ID}), text(j.Title)),
				el("span", "", class("n"), said(say(s, "page.kept-line", words.Name("summary", j.Summary), words.Name("at", j.At))))),
			button("forget-"+j.ID, term(s, "page.forget"), app.Forget{ID: j.ID}, class("btn plain"),
				at("aria-label", say(s, "page.forget-job", words.Name("job", j.Title))))))
	}
	return counted("jobs", term(s, "page.kept-jobs"), len(s.Jobs), list, lasting(s), week(s))
}

// openOther opens a file, a link or a code.
func openOther(s *app.State) Node {
	return section("open", term(s, "page.or-open"),
		el("label", "file-label", class("btn file"), el("input", "file", attr("type=file"), attr("accept=.json,.txt,application/json,text/plain")),
			el("span", "", text(term(s, "page.open-file")))),
		el("form", "paste", class("stack"), at("aria-label", term(s, "page.paste")), on("submit", app.Opened{}),
			el("div", "", class("field"), el("label", "", attr("for=f-code"), text(term(s, "page.paste"))),
				el("textarea", "code", attr("id=f-code"), attr("rows=2"), attr("autocomplete=off"), attr("spellcheck=false"))),
			el("button", "open-code", attr("type=submit"), class("btn"), text(term(s, "page.open-code")))))
}

// examples are finished jobs to look at.
func examples(s *app.State) Node {
	list := el("ul", "", class("pieces plain"), at("aria-label", term(s, "page.examples")))
	for _, e := range assets.Examples() {
		list.add(el("li", "example-"+e.Name,
			el("div", "", el("button", "show-"+e.Name, attr("type=button"), class("name"), onClick(app.Open{Example: e.Name}), text(capital(e.Name))),
				el("span", "", class("n"), text(e.Says)))))
	}
	return section("examples", term(s, "page.examples"), list)
}
