package panel

import (
	"slices"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A fig is one text of the drawing, which the page sets itself.
type fig struct {
	id     string
	at     drawing.Point
	up     bool // turned by a quarter
	anchor drawing.Anchor
	text   string
	bold   bool
	figure bool
}

// figsOf returns the texts of a drawing.
func figsOf(items []drawing.Item) []fig {
	var out []fig
	for i := range items {
		it := &items[i]
		if it.Kind == drawing.TextKind && it.ID != "" {
			out = append(out, fig{it.ID, it.Text.At, it.Text.Turn != 0, it.Text.Anchor, it.Text.String, it.Text.Bold, it.Text.Figure})
		}
	}
	return out
}

// figures are the texts of the drawing, each a button where it can be typed.
func figures(s *app.State, now plan.Plan, b engine.Build, figs []fig) kids {
	out := make(kids, 0, len(figs))
	of := figured{now, b}
	for _, f := range figs {
		out.add(f.node(s, of))
	}
	return out
}

// figured is what the figures are of.
type figured struct {
	plan  plan.Plan
	build engine.Build
}

// node is the figure on the page.
func (f fig) node(s *app.State, of figured) Node {
	if _, _, ok := strings.Cut(f.id, "/number"); ok {
		return f.pin(s, of.build)
	}
	field, ok := f.field(s, of)
	if !ok {
		return f.placed("span", "note"+f.tail(s), attr("aria-hidden=true"), fractions(f.text)) // the panel has it with its name
	}
	return f.button(s, field)
}

// pin is the number of a hole, or the first and the last of several. A tap chooses the
// hole, of several one after the other.
func (f fig) pin(s *app.State, b engine.Build) Node {
	low, high, several := strings.Cut(f.text, "–")
	if !several {
		high = low
	}
	points := resultOf(b, s.Arrangement).Points
	index := func(number string) int {
		return 1 + slices.IndexFunc(points, func(p wall.Point) bool { return p.Number == number })
	}
	from, to := index(low), index(high)
	on := s.At.Kind == "point" && s.At.Index >= from && s.At.Index <= to
	next := from
	if on && s.At.Index < to {
		next = s.At.Index + 1
	}
	label := say(s, "page.point", words.Name("number", low))
	if several {
		label = say(s, "page.points", words.Name("first", low), words.Name("last", high))
	}
	return f.placed("button", "fig pin-on", attr("type=button"),
		onClick(app.Point{At: app.Thing{Kind: "point", Owner: s.Arrangement, Index: next}}),
		at2("aria-label", label), state("aria-pressed", on), text(f.text))
}

// button is a figure that can be typed.
func (f fig) button(s *app.State, field app.Field) Node {
	open := s.Typing.Open && s.Typing.Field.Key == field.Key
	return f.placed("button", "fig"+f.tail(s), attr("type=button"), state("aria-expanded", open),
		at2("aria-label", field.Label+": "+f.text), onClick(app.OpenTyping{Field: field}), fractions(f.text))
}

// at2 is at, where at is the place of a figure.
func at2(name, value string) *Attr { return at(name, value) }

// tail are the classes that say how the figure stands; a figure of what is not chosen
// gives way on narrow windows.
func (f fig) tail(s *app.State) (names string) {
	if f.up {
		names += " up"
	}
	switch f.anchor {
	case drawing.AnchorStart:
		names += " from"
	case drawing.AnchorEnd:
		names += " to"
	}
	if unchosen(s) {
		names += " minor"
	}
	if strings.HasSuffix(f.id, "/gap") {
		names += " gap"
	}
	return names
}

// unchosen reports whether the sizes in the picture are of all modules, not of what is
// chosen: on narrow windows they are then too many.
func unchosen(s *app.State) bool { return s.Job == app.Arrange && len(s.Chosen) == 0 }

// placed is an element at the figure's place on the wall.
func (f fig) placed(tag, names string, of ...part) Node {
	n := el(tag, "fig-"+f.id, class(names), set("--x", decimal(f.at.X)), set("--y", decimal(f.at.Y)))
	n.with(of)
	return n
}

// field is what typing the figure changes.
func (f fig) field(s *app.State, of figured) (app.Field, bool) {
	key := "fig-" + f.id
	owner, what, _ := strings.Cut(f.id, "/")
	switch {
	case s.Job == app.Hang:
		return datumField(s, key, of.build, owner, what)
	case s.Job != app.Arrange:
		return app.Field{}, false
	case owner == "height":
		return heightField(s, key, of, what)
	}
	p, ok := pieceOf(s, of.plan, of.build, owner)
	if !ok || !p.stands {
		return app.Field{}, false
	}
	switch what {
	case "width":
		return p.size(s, key, false)
	case "height":
		return p.size(s, key, true)
	case "gap":
		return p.gap(s, of.plan, key)
	}
	return app.Field{}, false
}

// datumField moves the level or the plumb line of the wall points.
func datumField(s *app.State, key string, b engine.Build, owner, what string) (app.Field, bool) {
	r := resultOf(b, s.Arrangement)
	if what != "words" {
		return app.Field{}, false
	}
	switch owner {
	case "level":
		return lengthField(s, key, term(s, "page.level-line"), line("set-datum", "arrangement", s.Arrangement, "level", "$"), r.Level), true
	case "plumb":
		return lengthField(s, key, term(s, "page.plumb-line"), line("set-datum", "arrangement", s.Arrangement, "plumb", "$"), r.Plumb), true
	}
	return app.Field{}, false
}

// heightField changes a height above the floor: of a line at that height, or else of
// the undersides that are there, all of them together.
func heightField(s *app.State, key string, of figured, height string) (app.Field, bool) {
	a, _ := of.plan.Arrangement(s.Arrangement)
	for _, l := range a.Lines {
		if l.Height.Decimal() == height {
			return lineField(s, key, l), true
		}
	}
	var on []piece
	for i := range of.plan.Modules {
		id := of.plan.Modules[i].ID
		if len(s.Chosen) > 0 && !slices.Contains(s.Chosen, id) {
			continue
		}
		if p, _ := pieceOf(s, of.plan, of.build, id); p.stands && p.placed.Box.MinY.Decimal() == height {
			on = append(on, p)
		}
	}
	switch len(on) {
	case 0:
		return app.Field{}, false
	case 1:
		return on[0].moveY(s, key, say(s, "page.underside-of", on[0].named()), on[0].placed.Box.MinY), true
	}
	var ids []string
	for _, p := range on {
		ids = append(ids, p.m.ID)
	}
	y := on[0].placed.Box.MinY
	f := lengthField(s, key, say(s, "page.underside-of-several", words.Count("n", len(ids))),
		line("move", "arrangement", s.Arrangement, "modules", ids, "dy", "$"), y)
	f.Offset = -y
	return f, true
}

// lineField changes the height of a chalk line.
func lineField(s *app.State, key string, l plan.Line) app.Field {
	return lengthField(s, key, term(s, "page.line-height"), line("set-line", "arrangement", s.Arrangement, "line", l.ID, "height", "$"), l.Height)
}

// spot is a figure of the page's own.
func spot(id string, x, y unit.Length, l unit.Length, s *app.State) fig {
	return fig{id: id, at: drawing.Point{X: x.MM(), Y: y.MM()}, text: s.Plan.Style().Length(l), figure: true}
}
