package panel

import (
	engpart "ledgewright/engine/part"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A bigFigure is a figure that is read from two paces off, what it is, and its unit, which
// is known and stands small.
type bigFigure struct{ name, figure, unit string }

// bigLength is a length as a big figure.
func bigLength(s *app.State, name string, l unit.Length) bigFigure {
	u := "mm"
	if s.Plan.Units.System == unit.Inches {
		u = "in"
	}
	return bigFigure{name, s.Plan.Style().Length(l), u}
}

// bigFigures is a list of them.
func bigFigures(key string, of ...bigFigure) Node {
	n := el("dl", key, class("sets"))
	for _, f := range of {
		n.add(el("div", "", el("dt", "", text(f.name)), el("dd", "", class("big"), fractions(f.figure), when(f.unit != "", text(nobreak), el("small", "", text(f.unit))))))
	}
	return n
}

// benchTurning are the buttons of the bench: back, next, and to the whole list. With one thing
// there is nothing to turn to; after the last comes the first.
func benchTurning(s *app.State, job string, here, n int, thing app.Thing) Node {
	to := func(key string, i int, names string) Node {
		thing.Index = (here+i+n)%n + 1
		return button(key, say(s, job+"."+key, words.Name("n", numeral(thing.Index))), app.Point{At: thing}, class(names))
	}
	row := el("div", "turning", class("row turning"))
	if n > 1 {
		row.add(to("before", -1, "btn"), to("next", 1, "btn main"))
	}
	row.add(button("all", say(s, job+".all"), app.Show{What: app.Bench}))
	return row
}

// benchPart is one part at the bench.
func benchPart(s *app.State) []Node {
	i, all := partInHand(s), s.Build.Parts.Parts
	p := all[i]
	m, _ := moduleOfBoard(s, p.Boards[0])
	b, _ := boardOf(m, p.Boards[0])
	title := say(s, "make.part-of", words.Count("n", p.Number), words.Count("all", len(all)))
	return []Node{el("section", "at-bench", class("at-bench"), attr("aria-labelledby=h-at-bench"),
		el("h3", "", attr("id=h-at-bench"), text(title)),
		el("p", "name", class("name"), text(capital(p.Name))), partSays(s, p),
		bigFigures("sizes", partFigures(s, p)...),
		pairs("ends", pair{term(s, "make.left-end"), say(s, p.Start)}, pair{term(s, "make.right-end"), say(s, p.End)}),
		boardDrawing(s, p, b), cutTable(s, b),
		benchTurning(s, "make", i, len(all), app.Thing{Kind: "part"}))}
}

func partFigures(s *app.State, p engpart.Part) []bigFigure {
	out := []bigFigure{bigLength(s, lengthName(s, p), p.Overall)}
	if p.Inside != p.Overall {
		b, _ := moduleOfBoard(s, p.Boards[0])
		of, _ := boardOf(b, p.Boards[0])
		out = append(out, bigLength(s, insideName(s, of), p.Inside))
	}
	return append(out, bigLength(s, term(s, "make.width"), p.Width), bigLength(s, term(s, "make.thickness"), p.Thickness))
}

// bench is one wall point at the wall.
func (h *hanging) bench() []Node {
	i := h.pointInHand()
	p := h.r.Points[i]
	title := h.say("hang.point-of", words.Name("n", p.Number), words.Count("all", len(h.r.Points)))
	of := parts{
		el("h3", "", attr("id=h-at-bench"), text(title)),
		el("p", "name", class("name"), said(h.say("hang.of-module", words.Name("module", h.module(p.Module)), words.Name("bracket", numberIn(h.s, p.Module, "bracket", p.Bracket))))),
		bigFigures("figures", h.bigFigures(p)...),
		when(p.What != wall.Hole, el("p", "axis", said(h.term("hang.rod-axis")))),
		el("p", "into", said(capital(h.into(p)))), el("p", "point-state", h.stateLabel(p)),
		when(p.Slotted, note("slotted", capital(h.term("hang.slotted")))),
		when(p.RoundX != 0 || p.RoundY != 0, note("rounding", h.rounding(p))),
		when(len(p.Shared) > 0, note("shared", h.say("hang.also-for", words.Name("names", h.others(p))))),
		when(p.Band != "", caution(h.s, "caution-cables", h.term("hang.caution-cables"))),
		benchTurning(h.s, "hang", i, len(h.r.Points), app.Thing{Kind: "point", Owner: h.a.ID}),
	}
	return []Node{el("section", "at-bench", class("at-bench"), attr("aria-labelledby=h-at-bench"), of)}
}

// bigFigures are a point's figures; which side of a line it is on stands in words.
func (h *hanging) bigFigures(p wall.Point) []bigFigure {
	side := func(l unit.Length, more, less, on string) string {
		switch {
		case l > 0:
			return h.say(more)
		case l < 0:
			return h.say(less)
		}
		return h.say(on)
	}
	out := []bigFigure{
		bigLength(h.s, side(p.DX, "hang.right", "hang.left", "hang.on-plumb"), p.DX.Abs()),
		bigLength(h.s, side(p.DY, "hang.above", "hang.below", "hang.on-level"), p.DY.Abs()),
	}
	if p.What == wall.Hole {
		out = append(out, bigFigure{h.term("hang.drill"), h.drill(p), ""}, bigLength(h.s, h.term("hang.depth"), p.Depth))
	}
	return out
}

// rounding says what was added to a point's figures.
func (h *hanging) rounding(p wall.Point) string {
	signed := func(l unit.Length) string {
		switch {
		case l > 0:
			return "+" + h.fine().WithUnit(l)
		case l < 0:
			return "−" + h.fine().WithUnit(-l)
		}
		return "0"
	}
	return h.say("hang.point-rounding", words.Name("x", signed(p.RoundX)), words.Name("y", signed(p.RoundY)))
}
