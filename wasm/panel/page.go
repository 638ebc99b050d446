package panel

import (
	"reflect"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"ledgewright/engine"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// page returns the page.
func (p *Painter) page(s *app.State) Node {
	root := el("div", "app", class("app"), at("data-view", viewOf(s)), at("data-side", sideOf(s)), at("data-title", titleOf(s)))
	if s.Screen == app.AtStart {
		p.last.sight.shown, p.round.shown = false, false
		root.Kids = start(s)
		return root
	}
	at("data-sheet", sheets()[s.SheetAt%3]).join(root)
	root.with(p.wood.once(s))
	root.Kids = []Node{p.head.once(s, head), p.wall(s)}
	if s.Typing.Open {
		root.add(typing(s))
	}
	root.add(p.ledge.once(s), withDocked(s, p.aside(s)), p.stick.once(s, stick))
	return root
}

func sheets() [3]string { return [...]string{"low", "half", "full"} }

func titleOf(s *app.State) string {
	if s.Screen == app.AtStart {
		return term(s, "page.name")
	}
	return s.Title() + " · " + term(s, "page.name")
}

// viewOf is the light that the page is in.
func viewOf(s *app.State) string {
	switch {
	case benching(s):
		return "bench"
	case evening(s):
		return "evening"
	}
	return "day"
}

// benching reports whether the page is the bench's, which has no wall: only where there is
// a part or a point to show, and the way back with it.
func benching(s *app.State) bool {
	switch {
	case !s.On[app.Bench]:
		return false
	case s.Job == app.Make:
		return len(s.Build.Parts.Parts) > 0
	}
	return s.Job == app.Hang && len(resultOf(s.Build, s.Arrangement).Points) > 0
}

func evening(s *app.State) bool {
	return !benching(s) && (s.On[app.Evening] || s.Settings.Theme == "evening")
}

// sideOf is the side of the hand that holds the tablet.
func sideOf(s *app.State) string {
	if s.Settings.Hand == "left" {
		return "left"
	}
	return "right"
}

// mark is the sign of the project: a mitred corner.
func mark() Node {
	return svg("svg", "", class("mark"), at("viewBox", "0 0 26 26"), attr("aria-hidden=true"),
		path("a", "M3 3h6v11.5l-6 6z"), path("b", "M3.6 21.5l6-6H24v6z"))
}

// head is the strip with the job's title, and how it is kept.
func head(s *app.State) Node {
	return el("header", "head", class("head"),
		el("button", "home", attr("type=button"), class("home"), at("aria-label", term(s, "page.home")), onClick(app.Home{}), mark()),
		el("h1", "title", text(s.Title())),
		kept(s),
		helpButton(s),
		button("copies", term(s, "page.copies"), app.Go{Job: app.Agree}, class("btn opt")))
}

// kept says when the job was kept here, and when a copy last left this browser.
func kept(s *app.State) Node {
	if s.Store.Err != "" {
		return el("p", "kept", class("kept is-warn"), sign(finding.Stop), el("span", "", text(term(s, "page.kept-not"))))
	}
	here, short := term(s, "page.keeping"), term(s, "page.keeping")
	if s.Store.Stored > 0 && s.Store.At != "" {
		here = say(s, "page.kept", words.Name("at", s.Store.At))
		short = say(s, "page.kept-short", words.Name("at", s.Store.At))
	}
	copied, copyShort := term(s, "page.no-copy"), term(s, "page.no-copy-short")
	if s.Store.CopyAt != "" {
		copied = say(s, "page.copied", words.Name("at", s.When(s.Store.CopyAt)))
		copyShort = say(s, "page.copied-short", words.Name("at", s.When(s.Store.CopyAt)))
	}
	weight := part(nothing())
	if n := s.Uncopied(); s.Store.Due && n > 0 {
		copied, copyShort, weight = say(s, "page.uncopied", words.Count("n", n)), say(s, "page.uncopied-short", words.Count("n", n)), class("b")
	}
	both := func(name, a, b string) Node {
		return el("span", "", class(name), text(a), el("br", ""), el("span", "", weight, text(b)))
	}
	return el("p", "kept", class("kept"), both("opt", here, copied), both("narrow", short, copyShort))
}

// wall is the picture with its tools; in the shop the boards, which need as much room.
func (p *Painter) wall(s *app.State) Node {
	names, name, shows, tool := "wall", "page.wall", part(nil), part(nil)
	p.last.sight.shown, p.round.shown = false, false
	switch {
	case s.InRound():
		names, shows, tool = "wall inround", p.round.picture(s), p.round.tools(s)
	case shopping(s):
		names, name, shows = "wall shop", "page.shop", parts{ruler(), p.large(&p.boards, s, sameDesk, boards)}
	default:
		shows = p.picture(s)
	}
	if tool == nil {
		tool = p.tools[fitted(s)].once(s, tools)
	}
	n := el("main", "wall", class(names), at("aria-label", term(s, name)), glass(), shows, tool)
	if s.Toast.Text != "" {
		n.add(toast(s))
	}
	return n
}

// ruler is what the browser measures for the size of the picture where there is none; it
// takes no pointer.
func ruler() Node {
	return el("div", "hand", class("hand ruler"), attr("data-hand=ruler"), attr("aria-hidden=true"))
}

// boards is what stands in the place of the wall while boards are made.
func boards(s *app.State) kids {
	return kids{el("div", "boards", class("boards"), kids(makeTable(s)))}
}

// toast is a sentence at the foot of the wall; the browser speaks it besides.
func toast(s *app.State) Node {
	return el("div", "toast", class("toast"), el("span", "", said(s.Toast.Text)),
		when(s.Toast.Undo, button("toast-undo", term(s, "page.undo"), app.Undo{})),
		button("toast-close", term(s, "page.dismiss"), app.Dismiss{}))
}

// fitted is 0 where the picture shows the whole wall as it was fitted, else 1.
func fitted(s *app.State) int {
	if s.Camera.Fitted {
		return 0
	}
	return 1
}

// tools are the buttons on the wall.
func tools(s *app.State) Node {
	group := func(key string, names class, of ...part) Node {
		n := el("div", key, names)
		n.with(of)
		return n
	}
	return el("div", "tools", class("tools"), attr("role=group"), at("aria-label", term(s, "page.tools")),
		group("undoing", "set", back(s), again(s)),
		when(!shopping(s), group("zooming", "set",
			bare("zoom-out", "minus", term(s, "page.zoom-out"), app.Zoom{By: 1 / zoomStep}),
			bare("fit", "fit", term(s, "page.fit"), app.Fit{}),
			bare("zoom-in", "plus", term(s, "page.zoom-in"), app.Zoom{By: zoomStep}))),
		when(!shopping(s) && !s.Camera.Fitted, group("panning", "set along",
			bare("look-left", "left", term(s, "page.look-left"), app.Pan{X: -panStep}),
			bare("look-up", "up", term(s, "page.look-up"), app.Pan{Y: panStep}),
			bare("look-down", "down", term(s, "page.look-down"), app.Pan{Y: -panStep}),
			bare("look-right", "right", term(s, "page.look-right"), app.Pan{X: panStep}))),
		group("showing", "set gap",
			when(s.Job == app.Arrange, toggle(s, "chalk-line", term(s, "page.line-tool"), app.LineTool, s.On[app.LineTool])),
			when(!shopping(s), toggle(s, "studs", term(s, "page.studs"), app.Studs, s.On[app.Studs])),
			when(s.Job == app.Survey || s.Job == app.Hang, toggle(s, "bands", term(s, "page.bands"), app.Bands, s.On[app.Bands])),
			when(s.Job == app.Make || s.Job == app.Hang, toggle(s, "bench", term(s, "page.bench"), app.Bench, s.On[app.Bench])),
			when(!benching(s), lamp(s))),
		when(s.RoundOffered(), group("rounding", "set rounding", roundTool(s))))
}

// panStep is the part of the picture by which a tap on an arrow looks further along.
const panStep = 0.25

// zoomStep is what a tap on + enlarges by.
const zoomStep = 1.25

// back undoes, and says what.
func back(s *app.State) Node {
	label, none := term(s, "page.undo"), len(s.History.Past) == 0
	if !none {
		label = say(s, "page.undo-what", words.Name("what", s.Called(s.History.Past[len(s.History.Past)-1].Name)))
	}
	return iconButton("undo", "undo", label, app.Undo{}, when(none, attr("aria-disabled=true")))
}

func again(s *app.State) Node {
	label, none := term(s, "page.redo"), len(s.History.Future) == 0
	if !none {
		label = say(s, "page.redo-what", words.Name("what", s.Called(s.History.Future[len(s.History.Future)-1].Name)))
	}
	return bare("redo", "redo", label, app.Redo{}, when(none, attr("aria-disabled=true")))
}

// bare is a tool that shows its icon only.
func bare(key, name, label string, e app.Event, of ...part) Node {
	n := el("button", key, attr("type=button"), at("aria-label", label), onClick(e), icon(name))
	n.with(of)
	return n
}

// toggle is a tool that is on or off.
func toggle(_ *app.State, name, label string, of app.Switch, pressed bool) Node {
	return iconButton("tool-"+name, name, label, app.Show{What: of}, state("aria-pressed", pressed))
}

// lamp turns the evening on and off, whichever of switch and setting has made it.
func lamp(s *app.State) Node {
	n := toggle(s, "evening", term(s, "page.evening"), app.Evening, evening(s))
	if s.Job == app.Hang { // where a phone has room for eight tools
		class("lamp").join(n)
	}
	if s.Settings.Theme == "evening" && !s.On[app.Evening] {
		n.On = []Handler{{"click", app.Set{Name: "theme", Value: "day"}}}
	}
	return n
}

// A ledged is the ledge with the verdicts that it holds.
type ledged struct {
	node  Node
	holds [3]engine.Verdict
	style unit.Style
}

// once makes the ledge anew only if a verdict has changed: at most steps of a drag none has.
func (l *ledged) once(s *app.State) Node {
	_, build := base(s)
	style := s.Plan.Style()
	same := l.node != nil && l.style == style
	for i, v := range build.Verdicts {
		o := &l.holds[i]
		same = same && o.Of == v.Of && o.Severity == v.Severity && o.Key == v.Key && slices.Equal(o.Args, v.Args)
	}
	if !same {
		*l = ledged{ledge(s), build.Verdicts, style}
	}
	return l.node
}

// ledge holds the three verdicts, each of which leads to its worst finding.
func ledge(s *app.State) Node {
	row := el("div", "", class("verdicts"))
	_, build := base(s)
	for i, v := range build.Verdicts {
		row.add(verdict(s, i, v))
	}
	return el("section", "ledge", class("ledge"), at("aria-label", term(s, "page.verdicts")), el("div", "", class("timber")), row)
}

func verdict(s *app.State, i int, v engine.Verdict) Node {
	severity := v.Severity
	if strings.HasSuffix(v.Key, ".empty") || strings.HasSuffix(v.Key, ".unplaced") {
		severity = finding.Unknown
	}
	title := verdictTitle(s, v, severity)
	sentence := engine.SayVerdict(v, s.Plan.Style())
	if rest, ok := strings.CutPrefix(sentence, title+": "); ok {
		sentence = capital(rest)
	}
	shape := sign(severity)
	if v.Of == finding.Takes && severity <= finding.Note {
		shape = signOf("is-sum", path("thin", "M2 5.5h20v4H2zM2 14.5h13v4H2zM19 14.5h3v4h-3z"))
	}
	name := ""
	if severity >= finding.Mend {
		name = "is-warn"
	}
	return el("button", "verdict-"+numeral(i+1), attr("type=button"), onClick(app.Lead{Verdict: i}),
		shape, el("span", "", el("b", "", when(name != "", class(name)), text(title)), text(" "), el("span", "", said(sentence))))
}

// verdictTitle is the word of a verdict.
func verdictTitle(s *app.State, v engine.Verdict, severity finding.Severity) string {
	of := [...]string{finding.Fits: "fits", finding.Holds: "holds", finding.Takes: "takes"}[v.Of]
	switch {
	case severity == finding.Stop:
		return term(s, "page.verdict-"+of+"-stop")
	case severity == finding.Mend:
		return term(s, "page.verdict-"+of+"-mend")
	case severity == finding.Unknown && v.Of != finding.Takes:
		return term(s, "page.not-checked")
	}
	return term(s, "page.verdict-"+of)
}

func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// samePanel reports whether two states have one panel. What the state machine changes it
// copies, so things that lie at the same place are the same.
func samePanel(a, b *app.State) bool {
	return a.Lasting == b.Lasting && a.Today == b.Today && a.Store == b.Store && a.SheetAt == b.SheetAt && a.Painted == b.Painted && a.Size == b.Size && a.Now == b.Now && sameSlice(a.Jobs, b.Jobs) &&
		sameSlice(a.History.Past, b.History.Past) && sameSlice(a.History.Future, b.History.Future) && sameDesk(a, b)
}

// sameDesk is samePanel for what shows the plan alone: not how it is kept, nor when, nor
// what can be undone.
func sameDesk(a, b *app.State) bool { return sameMap(a.Fields, b.Fields) && sameShown(a, b) }

// sameShown is sameDesk for parts without fields.
func sameShown(a, b *app.State) bool {
	return a.Job == b.Job && a.Wall == b.Wall && a.Arrangement == b.Arrangement && a.At == b.At &&
		a.Settings == b.Settings && sameMap(a.On, b.On) && sameSlice(a.Chosen, b.Chosen) &&
		a.Store.Revision == b.Store.Revision && a.Places.Asked == b.Places.Asked && a.Places.Module == b.Places.Module &&
		a.Places.Revision == b.Places.Revision && sameSlice(a.Places.Poses, b.Places.Poses) &&
		sameSlice(a.Plan.Walls, b.Plan.Walls) && sameSlice(a.Plan.Modules, b.Plan.Modules) && sameSlice(a.Plan.Arrangements, b.Plan.Arrangements) &&
		a.Plan.Job.Title == b.Plan.Job.Title && a.Plan.Style() == b.Plan.Style() &&
		sameSlice(a.Build.Modules, b.Build.Modules) && sameSlice(a.Build.Arrangements, b.Build.Arrangements) &&
		sameSlice(a.Build.Findings, b.Build.Findings) && sameSlice(a.Build.Holds, b.Build.Holds)
}

func sameSlice[T any](a, b []T) bool { return len(a) == len(b) && first(a) == first(b) }

func sameMap[K comparable, V any](a, b map[K]V) bool {
	return reflect.ValueOf(a).Pointer() == reflect.ValueOf(b).Pointer()
}

// jobs are the five jobs with the keys of their words.
func jobs() []string { return []string{"survey", "arrange", "make", "hang", "agree"} }

// side is the sheet of the job in hand.
func (p *Painter) side(s *app.State) Node {
	if s.On[app.Help] {
		return help(s)
	}
	job := jobs()[s.Job]
	return el("aside", "panel", class("panel"), attr("aria-labelledby=panel-title"), at("data-job", job),
		grab(s),
		el("header", "", el("h2", "panel-title", attr("id=panel-title"), attr("tabindex=-1"), text(term(s, "page.job-"+job))),
			el("p", "", text(term(s, "page.asks-"+job)))),
		el("div", "cols-"+job, class("cols"), led(s), p.sections(s)))
}

// led is the finding that a verdict has led to, on panels that do not list findings.
func led(s *app.State) part {
	i := s.At.Index - 1
	if s.At.Kind != "finding" || s.Job == app.Arrange || i < 0 || i >= len(s.Build.Findings) {
		return parts(nil)
	}
	return el("section", "led", findingCard(s, i))
}

// grab is the handle of the sheet on narrow windows.
func grab(s *app.State) Node {
	key := "page.sheet-raise"
	if s.SheetAt == 2 {
		key = "page.sheet-lower"
	}
	return el("button", "grab", attr("type=button"), class("grab"), state("aria-expanded", s.SheetAt == 2),
		at("aria-label", term(s, key)), onClick(app.Sheet{}))
}

// stick is the setting-out stick with the five jobs as its notches.
func stick(s *app.State) Node {
	n := el("nav", "stick", class("rod timber"), at("aria-label", term(s, "page.jobs")))
	open := waiting(s)
	for i, job := range jobs() {
		n.add(notch(s, app.Job(i), job, open[i]))
	}
	return n
}

func notch(s *app.State, of app.Job, job string, open int) Node {
	return el("button", "job-"+job, attr("type=button"), when(s.Job == of, attr("aria-current=page")), onClick(app.Go{Job: of}),
		icon(job), text(term(s, "page.job-"+job)),
		when(open > 0, text(" "), el("small", "open", text(say(s, "page.open", words.Count("n", open))))))
}

// waiting counts, for each job, the findings that wait there: what is not known of the
// wall or must be put right on it, what does not fit, what cannot be made, what does not
// hold.
func waiting(s *app.State) (n [5]int) {
	for _, f := range s.Build.Findings {
		switch {
		case f.Kind.Verdict == finding.Fits && f.Place.Module == "" && f.Kind.Severity >= finding.Unknown:
			n[app.Survey]++
		case f.Kind.Severity < finding.Mend:
		case f.Kind.Verdict == finding.Fits:
			n[app.Arrange]++
		case f.Kind.Verdict == finding.Takes:
			n[app.Make]++
		default:
			n[app.Hang]++
		}
	}
	return n
}
