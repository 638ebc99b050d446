package panel

import (
	"strings"

	"ledgewright/engine/drawing"
	"ledgewright/engine/edit"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// arrangements lists the arrangements side by side, each as a small picture that is
// chosen by a tap, and what can be done with the one in view.
func arrangements(s *app.State) Node {
	n := counted("arrangements", term(s, "page.arrangements"), len(s.Plan.Arrangements))
	row := el("div", "", class("shapes wide"), attr("role=group"), at("aria-label", term(s, "page.arrangements")))
	for i, a := range s.Plan.Arrangements {
		row.add(el("button", "show-"+a.ID, attr("type=button"), class("btn shape"), state("aria-pressed", a.ID == s.Arrangement),
			onClick(app.ShowArrangement{ID: a.ID}), thumbnail(s, a), el("span", "", text(nameOfArrangement(s, a, i)))))
	}
	if row.Kids != nil {
		n.add(row)
	}
	if a, ok := s.Plan.Arrangement(s.Arrangement); ok {
		n.add(arrangementTools(s, a))
	}
	if s.Wall != "" {
		n.add(act("add-arrangement", term(s, "page.add-arrangement"), edit.AddArrangement{Wall: s.Wall, Name: nextArrangement(s)}))
	}
	return n
}

// arrangementTools rename, duplicate and remove the arrangement in view.
func arrangementTools(s *app.State, a plan.Arrangement) Node {
	name := app.Field{Key: "name-" + a.ID, Label: term(s, "page.arrangement-name"), Kind: app.TextField,
		Line: line("set-arrangement", "arrangement", a.ID, "name", "$"), Value: a.Name}
	return el("div", "arrangement", class("stack"), field(s, name),
		el("div", "", class("row"),
			act("duplicate-arrangement", term(s, "page.duplicate-arrangement"), edit.DuplicateArrangement{Arrangement: a.ID, Name: nextArrangement(s)}),
			when(len(s.Plan.Arrangements) > 1, act("remove-arrangement", term(s, "page.remove-arrangement"), edit.RemoveArrangement{Arrangement: a.ID}))))
}

// nextArrangement is a name for one more arrangement.
func nextArrangement(s *app.State) string {
	return say(s, "page.arrangement-number", words.Count("n", s.Plan.Counters.Arrangement+1))
}

// thumbnail is an arrangement on its wall in small.
func thumbnail(s *app.State, a plan.Arrangement) Node {
	w, _ := s.Plan.Wall(a.Wall)
	box := drawing.Box{MaxX: max(w.Width.MM(), 1), MaxY: max(w.Height.MM(), 1)}
	n := svg("svg", "", class("nss"), attr("aria-hidden=true"), at("viewBox", "0 0 "+decimal(box.Width())+" "+decimal(box.Height())),
		ink("", "rim", "M0 0H"+decimal(box.Width())+"V"+decimal(box.Height())+"H0Z"))
	t := tracer{box: box}
	for _, p := range resultOf(s.Build, a.ID).Placed {
		t.outlines(p.Outlines)
	}
	if t.b.Len() > 0 {
		n.add(ink("", "wood", t.b.String()))
	}
	return n
}

// shapeIcon is the picture of a ready shape.
func shapeIcon(id string) Node {
	d := map[string]string{
		"shelf": "M2 13h20", "L": "M4 5v13h18", "U": "M3 7v10h18V7", "Z": "M2 8h10v10h10", "box": "M4 5h16v14H4z",
		"hexagon": "M7.5 4.5h9L21 12l-4.5 7.5h-9L3 12z",
	}[id]
	return svg("svg", "", class("ready"), at("viewBox", "0 0 24 24"), attr("aria-hidden=true"), path("", d))
}

// wordKey makes an id fit for the key of a word.
func wordKey(id string) string { return strings.ToLower(id) }

func splitTimes(size string) []string { return strings.Split(size, " × ") }

func drawingBox(b module.Box) drawing.Box {
	return drawing.Box{MinX: b.MinX.MM(), MinY: b.MinY.MM(), MaxX: b.MaxX.MM(), MaxY: b.MaxY.MM()}
}
