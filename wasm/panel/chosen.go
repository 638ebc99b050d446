package panel

import (
	"slices"

	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// chosen returns the tools for what is chosen: for one module its place and turn, for
// several what they can do together. The module itself follows in parts of its own.
func chosen(s *app.State, all []piece) kids {
	var on []piece
	for _, id := range s.Chosen {
		for _, p := range all {
			if p.m.ID == id {
				on = append(on, p)
			}
		}
	}
	switch len(on) {
	case 0:
		return nil
	case 1:
		return kids{oneChosen(s, all, on[0])}
	}
	return kids{severalChosen(s, on)}
}

// oneChosen are the tools for one module.
func oneChosen(s *app.State, all []piece, p piece) Node {
	id := p.m.ID
	name := app.Field{Key: "name-" + id, Label: term(s, "page.name-of"), Kind: app.TextField, Optional: true,
		Line: line("set-module", "module", id, "name", "$"), Value: p.m.Name}
	n := section("chosen", p.m.Label(), field(s, name))
	if p.stands {
		n.add(placeFields(s, p), poseTurns(s, p), nudges(s, p.m.ID), places(s, p))
	}
	n.add(making(s, all, p))
	return n
}

// placeFields are the figures of a module's place.
func placeFields(s *app.State, p piece) Node {
	b, id := p.placed.Box, p.m.ID
	n := el("div", "place", class("fields"),
		field(s, p.moveX(s, "x-"+id, term(s, "page.from-left"), b.MinX)),
		field(s, p.moveY(s, "y-"+id, term(s, "page.underside"), b.MinY)))
	if f, ok := p.gap(s, s.Plan, "gap-"+id); ok {
		f.Label = say(s, "page.gap-from", words.Name("to", toName(s, s.Plan, p.nearest.To))) + ", " + unitOf(s)
		n.add(field(s, f))
	}
	turn := app.Field{Key: "turn-" + id, Label: term(s, "page.turn-of"), Kind: app.AngleField,
		Line: line("turn", "arrangement", s.Arrangement, "module", id, "to", "$"), Value: s.Plan.Style().Angle(p.pose.Turn)}
	n.add(field(s, turn))
	return n
}

// poseTurns are the turns by a quarter, and the flip.
func poseTurns(s *app.State, p piece) Node {
	id, a := p.m.ID, s.Arrangement
	return el("div", "turning", class("row"),
		act("turn-left", term(s, "page.turn-left"), edit.Turn{Arrangement: a, Module: id, By: unit.QuarterTurn}),
		act("turn-right", term(s, "page.turn-right"), edit.Turn{Arrangement: a, Module: id, By: unit.HalfTurn + unit.QuarterTurn}),
		act("flip", term(s, "page.flip"), edit.Flip{Arrangement: a, Module: id}))
}

// making are the buttons that make a module of a module, and those that take it away.
func making(s *app.State, all []piece, p piece) Node {
	id, a := p.m.ID, ""
	var x, y unit.Length
	if p.stands {
		a = s.Arrangement
		x, y = freeSpot(s, all, p.width(), p.height())
	}
	name := freeName(s, p.m.Label())
	n := el("div", "making", class("row"),
		act("duplicate", term(s, "page.duplicate"), edit.DuplicateModule{Module: id, Name: name, Arrangement: a, X: x, Y: y}),
		act("mirror", term(s, "page.mirror"), edit.MirrorModule{Module: id, Name: name, Arrangement: a, X: x, Y: y}))
	if p.stands {
		n.add(act("take-off", term(s, "page.take-off"), edit.TakeOff{Arrangement: a, Module: id}))
	}
	n.add(act("delete", term(s, "page.delete"), edit.RemoveModule{Module: id}))
	return n
}

// places shows the places that fit, once somebody has asked.
func places(s *app.State, p piece) Node {
	n := el("div", "places", class("stack"))
	poses, asked := s.Suggested(p.m.ID)
	if !asked {
		n.add(button("suggest", term(s, "page.suggest"), app.Suggest{Module: p.m.ID}))
		return n
	}
	if len(poses) == 0 {
		n.add(note("no-place", term(s, "page.no-place")))
		return n
	}
	n.add(note("places-say", say(s, "page.places", words.Count("n", len(poses)))))
	for i, o := range poses {
		style := s.Plan.Style()
		dx, dy := o.X-p.pose.X, o.Y-p.pose.Y
		n.add(button("take-place-"+numeral(i+1),
			say(s, "page.place-at", words.Count("n", i+1), words.Name("x", style.Length(p.placed.Box.MinX+dx)), words.Name("y", style.Length(p.placed.Box.MinY+dy))),
			placeHere(s, o)))
	}
	return n
}

// nudges move what is chosen by steps of the tape, small and large.
func nudges(s *app.State, ids ...string) Node {
	small, large := unit.Millimetre, 10*unit.Millimetre
	if s.Plan.Units.System == unit.Inches {
		small, large = unit.Inch/16, unit.Inch
	}
	n := el("div", "nudges", class("nudges"), attr("role=group"), at("aria-label", term(s, "page.nudge")))
	for _, by := range [...]unit.Length{small, large} {
		for _, k := range [...]struct {
			to     string
			dx, dy unit.Length
		}{{"left", -by, 0}, {"right", by, 0}, {"up", 0, by}, {"down", 0, -by}} {
			n.add(nudge(s, ids, k.to, by, k.dx, k.dy))
		}
	}
	return n
}

func nudge(s *app.State, ids []string, to string, by, dx, dy unit.Length) Node {
	e := edit.Move{Arrangement: s.Arrangement, DX: dx, DY: dy}
	if len(ids) == 1 {
		e.Module = ids[0]
	} else {
		e.Modules = ids
	}
	return el("button", "nudge-"+to+"-"+by.Decimal(), attr("type=button"), class("btn"),
		at("aria-label", say(s, "page.nudge-"+to, words.Length("by", by))), onClick(app.Do{Edits: []edit.Edit{e}}),
		icon(to), length(s, by))
}

// severalChosen are the tools for several modules.
func severalChosen(s *app.State, on []piece) Node {
	n := counted("chosen", term(s, "page.chosen-several"), len(on))
	var ids []string
	for _, p := range on {
		if p.stands {
			ids = append(ids, p.m.ID)
		}
	}
	if len(ids) > 1 {
		n.add(nudges(s, ids...), aligning(s, ids), spreading(s, ids))
	}
	n.add(el("div", "making", class("row"),
		when(len(ids) > 0, several("take-off", term(s, "page.take-off"), ids, func(id string) edit.Edit {
			return edit.TakeOff{Arrangement: s.Arrangement, Module: id}
		})),
		several("delete", term(s, "page.delete"), s.Chosen, func(id string) edit.Edit { return edit.RemoveModule{Module: id} })))
	return n
}

// several makes an edit to each module, as one step.
func several(key, label string, ids []string, of func(id string) edit.Edit) Node {
	var edits []edit.Edit
	for _, id := range slices.Clone(ids) {
		edits = append(edits, of(id))
	}
	return button(key, label, app.Do{Edits: edits})
}

// aligning brings modules to a line with the one that was chosen first.
func aligning(s *app.State, ids []string) Node {
	n := el("div", "align", class("row"), attr("role=group"), at("aria-label", term(s, "page.align")))
	for _, to := range [...]string{"left", "centre", "right", "top", "middle", "bottom"} {
		n.add(act("align-"+to, term(s, "page.align-"+to), edit.Align{Arrangement: s.Arrangement, Modules: ids, To: to}))
	}
	return el("div", "aligning", class("stack"), note("", say(s, "page.align-with", words.Name("module", labelOf(s, ids[0])))), n)
}

// spreading makes the gaps between modules equal.
func spreading(s *app.State, ids []string) Node {
	gap := func(key, word, along string) Node {
		f := lengthField(s, key, term(s, word), line("spread", "arrangement", s.Arrangement, "modules", ids, "along", along, "gap", "$"), 0)
		f.Value = ""
		return field(s, f)
	}
	n := el("div", "spreading", class("stack"))
	if len(ids) > 2 {
		n.add(el("div", "spread", class("row"),
			act("spread-x", term(s, "page.spread-x"), edit.Spread{Arrangement: s.Arrangement, Modules: ids, Along: "x"}),
			act("spread-y", term(s, "page.spread-y"), edit.Spread{Arrangement: s.Arrangement, Modules: ids, Along: "y"})))
	}
	n.add(el("div", "gaps", class("fields"), gap("gap-x", "page.gap-x", "x"), gap("gap-y", "page.gap-y", "y")))
	return n
}

func labelOf(s *app.State, id string) string {
	m, _ := s.Plan.Module(id)
	return m.Label()
}
