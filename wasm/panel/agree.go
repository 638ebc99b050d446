package panel

import (
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/finding"
	"ledgewright/engine/link"
	"ledgewright/engine/module"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// agree returns the sections of the panel for handing on: the link, files, what the job
// is, what is not checked, the title block, and the way to other jobs.
func agree(s *app.State) []Node { return agreeBy(s, encodeLink(s)) }

// agreeBy is agree with the plan's link at hand.
func agreeBy(s *app.State, code linkCode) []Node {
	return []Node{linkSection(s, code), fileSection(s), keepingSection(s), summarySection(s), notChecked(s), childrenCaution(s), jobSection(s), otherJobs(s), sideChoice(s), paintingChoice(s)}
}

// jobSection are the fields of the title block.
func jobSection(s *app.State) Node {
	j := s.Plan.Job
	fields := el("div", "fields", class("fields"))
	for _, f := range [...]struct{ member, value string }{
		{"title", j.Title}, {"number", j.Number}, {"maker", j.Maker}, {"client", j.Client}, {"date", j.Date}, {"note", j.Note},
	} {
		fields.add(field(s, app.Field{
			Key: "job-" + f.member, Label: term(s, "agree."+f.member), Kind: app.TextField, Value: f.value,
			Line: line("set-job", f.member, "$"),
		}))
	}
	return section("job", term(s, "agree.job"), fields, note("names-stay", term(s, "agree.names-stay")))
}

// A linkCode is the plan of a job at a revision as a link, or why it is none.
type linkCode struct {
	job      string
	revision int
	code     string
	err      error
}

func encodeLink(s *app.State) linkCode {
	code, err := link.EncodePlan(s.Plan, link.Options{})
	return linkCode{s.Store.ID, s.Store.Revision, code, err}
}

// link is the plan as a link, encoded once for each revision.
func (p *Painter) link(s *app.State) linkCode {
	if c := &p.code; c.revision == 0 || c.job != s.Store.ID || c.revision != s.Store.Revision {
		*c = encodeLink(s)
	}
	return p.code
}

// linkSection hands the plan on as a link, as long as one will do.
func linkSection(s *app.State, of linkCode) Node {
	code, err := of.code, of.err
	title := term(s, "agree.link")
	if err != nil {
		return section("link", title, el("p", "link-not", label(finding.Stop, say(s, "agree.link-not", words.Name("why", err.Error())))))
	}
	n, warn := words.Count("n", len(code)), words.Count("warn", link.Warn)
	if len(code) > link.Most {
		return section("link", title, el("p", "link-only-file", label(finding.Stop, say(s, "agree.link-only-file", n, words.Count("most", link.Most)))))
	}
	length := note("link-length", say(s, "agree.link-length", n, warn))
	if len(code) > link.Warn {
		length = el("p", "link-length", label(finding.Mend, say(s, "agree.link-long", n, warn)))
	}
	return section("link", title,
		el("div", "", class("row"),
			button("copy-link", term(s, "agree.copy-link"), app.HandOn{What: "link", By: "copy"}, class("btn main")),
			button("share-link", term(s, "agree.share-link"), app.HandOn{What: "link", By: "share"})),
		length, note("link-holds", term(s, "agree.link-holds")))
}

// fileSection hands on files.
func fileSection(s *app.State) Node {
	list := el("ul", "file-list", class("handing"))
	for _, what := range [...]string{"plan", "build", "parts", "picture"} {
		list.add(el("li", "file-"+what,
			el("p", "", el("b", "", text(term(s, "agree.file-"+what))), text(" "), el("span", "", class("small mute"), text(term(s, "agree.file-"+what+"-is")))),
			el("div", "", class("row"), handOn(s, what, "download"), handOn(s, what, "copy"), handOn(s, what, "share"))))
	}
	return section("files", term(s, "agree.files"), list)
}

func handOn(s *app.State, what, by string) Node {
	name := words.Name("what", strings.ToLower(term(s, "agree.file-"+what)))
	return button(by+"-"+what, term(s, "agree."+by), app.HandOn{What: what, By: by}, at("aria-label", say(s, "agree."+by+"-what", name)))
}

// summarySection says what the job is.
func summarySection(s *app.State) Node {
	var rows []row
	for _, m := range s.Build.Modules {
		if len(m.Boards) > 0 {
			rows = append(rows, row{key: "module-" + m.ID, cells: moduleCells(s, m)})
		}
	}
	title := term(s, "agree.summary")
	if rows == nil {
		return section("summary", title, note("no-module", term(s, "agree.no-module")))
	}
	columns := []column{
		{title: "agree.col-module", area: "name", words: true}, {title: "agree.col-size", area: "whole"},
		{title: "agree.col-wood", area: "stuff", words: true}, {title: "agree.col-mass", area: "mass", right: true},
	}
	l := s.Build.Parts
	return section("summary", title, table(s, "sizes", perUnit(s, "agree.sizes"), columns, rows), pairs("sums-of",
		pair{term(s, "agree.boards"), numeral(l.Boards)},
		pair{term(s, "agree.volume"), volume(s, l.Volume)},
		pair{term(s, "agree.mass"), s.Plan.Style().Mass(l.Mass)},
		pair{term(s, "agree.arrangements"), numeral(len(s.Plan.Arrangements))}))
}

// moduleCells are a module's name, its size as it hangs, or as it is walked where it does
// not hang, its wood and its mass.
func moduleCells(s *app.State, m module.Result) []part {
	style, box := s.Plan.Style(), hungBox(s, m)
	size := say(s, "agree.size", words.Name("w", style.Length(box.MaxX-box.MinX)), words.Name("h", style.Length(box.MaxY-box.MinY)),
		words.Name("d", style.Length(m.Depth)))
	return []part{text(moduleLabel(m)), fractions(size), text(woodName(m.Boards[0].Wood)), fractions(style.Mass(m.Mass))}
}

func hungBox(s *app.State, m module.Result) module.Box {
	for _, p := range placedInView(s) {
		if p.Module == m.ID {
			return p.Box
		}
	}
	return m.Box
}

func placedInView(s *app.State) []wall.Placed { return resultOf(s.Build, s.Arrangement).Placed }

// notChecked lists what nobody has checked: in this job, and ever.
func notChecked(s *app.State) Node {
	var here kids
	for i, f := range s.Build.Findings {
		if f.Kind.Severity == finding.Unknown {
			here.add(el("li", "unchecked-"+numeral(i+1), sign(finding.Unknown), el("span", "", said(engine.Say(f, s.Plan.Style())))))
		}
	}
	n := len(here)
	ever := el("ul", "ever", class("unchecked"))
	for _, key := range [...]string{"survey", "hidden", "work", "person"} {
		ever.add(el("li", key, sign(finding.Unknown), el("span", "", text(term(s, "agree.never-"+key)))))
	}
	first := part(note("nothing-open", term(s, "agree.nothing-open")))
	if n > 0 {
		first = parts{el("p", "here-title", class("b"), text(term(s, "agree.not-checked-here"))), el("ul", "here", class("unchecked"), here)}
	}
	return counted("not-checked", term(s, "agree.not-checked"), n, first,
		el("p", "ever-title", class("b"), text(term(s, "agree.not-checked-ever"))), ever)
}

// otherJobs leads to the first page, where plans are opened.
func otherJobs(s *app.State) Node {
	return section("others", term(s, "agree.others"), note("others-how", term(s, "agree.others-how")),
		button("all-jobs", term(s, "agree.all-jobs"), app.Home{}))
}
