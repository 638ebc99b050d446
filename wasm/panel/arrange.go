package panel

import (
	"math"
	"slices"

	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// arrangeParts are the sections of the panel in which modules are placed, in the parts in
// which they are made.
func arrangeParts() [7]arrangePart {
	return [...]arrangePart{
		{false, func(s *app.State, _ []piece) kids { return findings(s) }},
		{true, chosen},
		{true, func(s *app.State, _ []piece) kids { return editorOfBoards(s) }},
		{true, func(s *app.State, _ []piece) kids { return editorOfFittings(s) }},
		{false, func(s *app.State, all []piece) kids { return kids{onWall(s, all)} }},
		{false, func(s *app.State, all []piece) (out kids) {
			if n := offWall(s, all); n != nil {
				out.add(n)
			}
			return append(out, addModule(s, all))
		}},
		{true, func(s *app.State, _ []piece) (out kids) {
			if len(s.Chosen) == 0 {
				out.add(noEditor(s))
			}
			return append(out, arrangements(s), snapping(s), lines(s))
		}},
	}
}

// An arrangePart is a part of Arrange's panel, and whether it has fields.
type arrangePart struct {
	fields bool
	of     func(*app.State, []piece) kids
}

// Findings that stand open in the panel, and all that it ever shows.
const (
	openFindings = 2
	mostFindings = 30
)

// findings are the worst findings with their remedies, those of what is chosen first;
// the others are folded away.
func findings(s *app.State) kids {
	var own, rest []int
	for i, f := range s.Build.Findings {
		switch {
		case s.At.Kind == "finding" && s.At.Index == i+1:
			own = append([]int{i}, own...)
		case f.Kind.Severity < finding.Mend:
			rest = append(rest, i)
		case f.Place.Module != "" && slices.Contains(s.Chosen, f.Place.Module):
			own = append(own, i)
		default:
			rest = append(rest, i)
		}
	}
	order := append(own, rest...)
	if len(order) == 0 {
		return nil
	}
	shown := openFindings
	for shown > 0 && (shown > len(order) || s.Build.Findings[order[shown-1]].Kind.Severity < finding.Mend && s.At.Index != order[shown-1]+1) {
		shown--
	}
	n := el("section", "findings", at("aria-label", term(s, "page.findings")))
	for _, i := range order[:shown] {
		n.add(findingCard(s, i))
	}
	if more := order[shown:]; len(more) > 0 {
		n.add(folded(s, more, len(order)))
	}
	return kids{n}
}

// folded are further findings.
func folded(s *app.State, order []int, all int) Node {
	key := "page.more-findings"
	if len(order) == all {
		key = "page.all-findings"
	}
	n := el("details", "more-findings", class("more"), el("summary", "", el("span", "", said(say(s, key, words.Count("n", len(order)))))))
	for k, i := range order {
		if k == mostFindings {
			n.add(note("too-many", say(s, "page.findings-left", words.Count("n", len(order)-k))))
			break
		}
		n.add(findingCard(s, i))
	}
	return n
}

// silhouette is a module's outline in small.
func silhouette(p piece) Node {
	b := p.box()
	box := drawingBox(b)
	pad := 0.06 * max(box.Width(), box.Height(), 1)
	return svg("svg", "", class("nss"), attr("aria-hidden=true"),
		at("viewBox", decimal(-pad)+" "+decimal(-pad)+" "+decimal(box.Width()+2*pad)+" "+decimal(box.Height()+2*pad)),
		outlined("", "wood", box, p.outlines()))
}

// onWall lists the modules that hang on the wall in view.
func onWall(s *app.State, all []piece) Node {
	worst := severities(s.Build)
	list := el("ul", "", class("pieces"), at("aria-label", term(s, "page.on-wall")))
	n := 0
	for _, p := range all {
		if !p.stands {
			continue
		}
		n++
		list.add(pieceRow(s, p, worst[p.m.ID]))
	}
	out := counted("on-wall", term(s, "page.on-wall"), n)
	if n == 0 {
		out.add(empty("none", term(s, "page.none-on-wall"), term(s, "page.none-on-wall-do")))
		return out
	}
	out.add(list, toggleBox(s, "several", term(s, "page.several"), app.Several, s.On[app.Several]))
	return out
}

// pieceRow is one module of the list.
func pieceRow(s *app.State, p piece, worst finding.Severity) Node {
	on := slices.Contains(s.Chosen, p.m.ID)
	names := "off"
	if on {
		names = "on"
	}
	b, style := p.placed.Box, s.Plan.Style()
	at1 := say(s, "page.stands-at", words.Name("x", style.Length(b.MinX)), words.Name("y", style.Length(b.MinY)))
	size := style.Length(p.width()) + " × " + style.Length(p.height())
	return el("li", p.m.ID, class(names),
		silhouette(p),
		el("div", "", choosing(s, p, on, at("aria-describedby", "place-"+p.m.ID+" state-"+p.m.ID+" size-"+p.m.ID)),
			el("p", "size", class("n"), at("id", "size-"+p.m.ID), sizes(size)), el("p", "place", class("n"), at("id", "place-"+p.m.ID), said(at1))),
		moduleState(s, "state-"+p.m.ID, worst))
}

// sizes sets a width and a height.
func sizes(size string) kids {
	var out kids
	for i, half := range splitTimes(size) {
		if i > 0 {
			out.add(text(" × "))
		}
		out.add(parted(half)...)
	}
	return out
}

// choosing is the button with the module's name; what else its row says describes it.
func choosing(_ *app.State, p piece, on bool, described part) Node {
	return el("button", "choose-"+p.m.ID, attr("type=button"), class("name"), state("aria-pressed", on), described,
		onClick(app.Choose{Module: p.m.ID}), text(p.m.Label()))
}

// moduleState is the worst of a module's findings in a word.
func moduleState(s *app.State, id string, worst finding.Severity) Node {
	key := "page.state-fits"
	switch worst {
	case finding.Stop:
		key = "page.state-stop"
	case finding.Mend:
		key = "page.state-mend"
	case finding.Unknown:
		key = "page.state-unknown"
	}
	n := label(worst, term(s, key))
	at("id", id).join(n)
	return n
}

// offWall lists the modules that hang elsewhere or nowhere.
func offWall(s *app.State, all []piece) Node {
	list := el("ul", "", class("pieces plain"), at("aria-label", term(s, "page.off-wall")))
	for _, p := range all {
		if p.stands {
			continue
		}
		style := s.Plan.Style()
		list.add(el("li", p.m.ID, silhouette(p),
			el("div", "", choosing(s, p, slices.Contains(s.Chosen, p.m.ID), at("aria-describedby", "size-"+p.m.ID)),
				el("p", "", class("n"), at("id", "size-"+p.m.ID), sizes(style.Length(p.width())+" × "+style.Length(p.height())))),
			when(s.Arrangement != "", act("place-"+p.m.ID, term(s, "page.place"), placeFree(s, all, p),
				at("aria-label", say(s, "page.place-module", p.named()))))))
	}
	if len(list.Kids) == 0 {
		return nil
	}
	return counted("off-wall", term(s, "page.off-wall"), len(list.Kids), list)
}

// placeFree places a module where the wall is free.
func placeFree(s *app.State, all []piece, p piece) edit.Edit {
	x, y := freeSpot(s, all, p.width(), p.height())
	return edit.Place{Arrangement: s.Arrangement, Module: p.m.ID, With: edit.Changes(edit.Change("x", x), edit.Change("y", y))}
}

// placeHere moves or puts the module of a pose there.
func placeHere(s *app.State, o plan.Pose) app.Event {
	return app.Do{Edits: []edit.Edit{edit.Place{Arrangement: s.Arrangement, Module: o.Module, With: edit.Changes(
		edit.Change("x", o.X), edit.Change("y", o.Y), edit.Change("turn", o.Turn), edit.Change("flip", o.Flip))}}}
}

// freeSpot returns a middle for something of a size at which it meets nothing: the
// nearest on a grid to the middle of the wall at the height of the eyes, or that itself
// where the wall is full.
func freeSpot(s *app.State, all []piece, width, height unit.Length) (x, y unit.Length) {
	w, _ := s.Plan.Wall(s.Wall)
	taken := make([]module.Box, 0, len(all)+len(w.Obstacles))
	for _, p := range all {
		if p.stands {
			taken = append(taken, p.placed.Box)
		}
	}
	for _, o := range w.Obstacles {
		taken = append(taken, module.Box{MinX: o.X, MinY: o.Y, MaxX: o.X + o.Width, MaxY: o.Y + o.Height})
	}
	style := s.Plan.Style()
	midX, midY := w.Width/2, min(1500*unit.Millimetre, w.Height*6/10)
	midX, _ = style.Rounded(midX)
	midY, _ = style.Rounded(midY)
	best := int64(math.MaxInt64)
	x, y = midX, midY
	stepX, stepY := gridStep(s, w.Width), gridStep(s, w.Height)
	const steps = 8
	for i := unit.Length(-steps); i <= steps; i++ {
		for k := unit.Length(-steps); k <= steps; k++ {
			dx, dy := i*stepX, k*stepY
			u, v := int64(dx/unit.Millimetre), int64(dy/unit.Millimetre)
			away := 2*u*u + 3*v*v // a height is changed less gladly
			if away >= best {
				continue
			}
			b := module.Box{MinX: midX + dx - width/2, MinY: midY + dy - height/2}
			b.MaxX, b.MaxY = b.MinX+width, b.MinY+height
			if b.MinX >= 0 && b.MaxX <= w.Width && b.MinY >= 0 && b.MaxY <= w.Height && !meets(taken, b) {
				best, x, y = away, midX+dx, midY+dy
			}
		}
	}
	return x, y
}

// gridStep is a sixteenth of the wall, in whole steps of the tape.
func gridStep(s *app.State, whole unit.Length) unit.Length {
	step, _ := s.Plan.Style().Rounded(whole / 16)
	return step
}

func meets(taken []module.Box, b module.Box) bool {
	for _, t := range taken {
		if t.MinX < b.MaxX && b.MinX < t.MaxX && t.MinY < b.MaxY && b.MinY < t.MaxY {
			return true
		}
	}
	return false
}

// addModule offers the ready shapes; each is added and hung where the wall is free.
func addModule(s *app.State, all []piece) Node {
	row := el("div", "", class("shapes"), attr("role=group"), at("aria-label", term(s, "page.add-module")))
	for _, shape := range edit.Shapes() {
		e := readyShape(s, shape)
		e.Arrangement = s.Arrangement
		if s.Arrangement != "" {
			e.X, e.Y = freeSpot(s, all, e.Width, max(e.Height, e.Thickness))
		}
		row.add(act("add-"+shape.ID, term(s, "page.shape-"+wordKey(shape.ID)), e, class("btn shape"),
			at("aria-label", term(s, "page.add-"+wordKey(shape.ID))), shapeIcon(shape.ID)))
	}
	return section("add", term(s, "page.add-module"), row)
}

// readyShape is a ready shape in its usual sizes, of the wood, depth and thickness of the
// module that was made last.
func readyShape(s *app.State, shape edit.Shape) edit.AddModule {
	r := shape.Sizes
	e := edit.AddModule{Shape: shape.ID, Width: r.Width, Height: r.Height, Upper: r.Upper, Depth: r.Depth, Thickness: r.Thickness, Wood: "white-oak",
		Name: freeName(s, term(s, "page.shape-"+wordKey(shape.ID)))}
	if s.Plan.Units.System == unit.Inches {
		whole := unit.Style{System: unit.Inches, Step: unit.Inch}
		for _, l := range [...]*unit.Length{&e.Width, &e.Height, &e.Upper, &e.Depth, &e.Thickness} {
			*l, _ = whole.Rounded(*l)
		}
	}
	if n := len(s.Plan.Modules); n > 0 {
		m := s.Plan.Modules[n-1]
		e.Wood, e.Depth = m.Wood, m.Depth
		if len(m.Boards) > 0 {
			e.Thickness = m.Boards[0].Thickness
		}
	}
	return e
}

// freeName is a name that no module has: "Box", "Box 2" …
func freeName(s *app.State, name string) string {
	for n, try := 2, name; ; n++ {
		if !slices.ContainsFunc(s.Plan.Modules, func(m plan.Module) bool { return m.Name == try }) {
			return try
		}
		try = name + " " + numeral(n)
	}
}

// snapping are the things that a module sticks to while it is moved.
func snapping(s *app.State) Node {
	n := el("div", "", class("ticks"))
	for _, k := range app.Snapping() {
		n.add(toggleBox(s, string(k.Off), term(s, "page.sticks-"+k.Kind), k.Off, !s.On[k.Off]))
	}
	return section("snapping", term(s, "page.snapping"), n)
}

// lines are the chalk lines with their heights.
func lines(s *app.State) Node {
	a, _ := s.Plan.Arrangement(s.Arrangement)
	n := counted("lines", term(s, "page.lines"), len(a.Lines))
	for i, l := range a.Lines {
		f := lineField(s, "line-"+l.ID, l)
		f.Label = say(s, "page.line-number", words.Count("n", i+1)) + ", " + unitOf(s)
		n.add(el("div", l.ID, class("pairing"), field(s, f),
			act("remove-"+l.ID, term(s, "page.remove"), edit.RemoveLine{Arrangement: a.ID, Line: l.ID}, class("btn plain"),
				at("aria-label", say(s, "page.remove-line", words.Count("n", i+1))))))
	}
	if a.ID != "" {
		f := lengthField(s, "line-new", term(s, "page.new-line"), line("add-line", "arrangement", a.ID, "height", "$"), 0)
		f.Value = ""
		n.add(field(s, f))
	}
	return n
}
