package panel

import (
	"ledgewright/engine/board"
	"ledgewright/engine/module"
	engpart "ledgewright/engine/part"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// cornersOf are the set-outs of a module's corners.
func cornersOf(s *app.State, m module.Result) Node {
	var all kids
	for _, c := range m.Corners {
		if c.Number > 0 {
			all.add(cornerSetOut(s, m, c))
		}
	}
	name := words.Name("module", moduleLabel(m))
	if all == nil {
		all = kids{note("no-corners", say(s, "make.no-corners", name))}
	}
	return section("corners", say(s, "make.corners", name), all, otherModules(s, m))
}

// otherModules are buttons to the module before and after, which come round.
func otherModules(s *app.State, m module.Result) part {
	var all []module.Result
	here := 0
	for _, o := range s.Build.Modules {
		if o.ID == m.ID {
			here = len(all)
		}
		if len(o.Boards) > 0 {
			all = append(all, o)
		}
	}
	n := len(all)
	if n < 2 {
		return parts(nil)
	}
	to := func(key, says string, i int) Node {
		o := all[(here+i+n)%n]
		return button(key, moduleLabel(o), app.Choose{Module: o.ID}, at("aria-label", say(s, says, words.Name("module", moduleLabel(o)))))
	}
	return el("div", "other-modules", class("row"),
		withIcon(to("module-before", "make.module-before", -1), "left"), withIcon(to("module-after", "make.module-after", 1), "right"))
}

// withIcon puts an icon on the side of a button that it points to.
func withIcon(n Node, name string) Node {
	if name == "right" {
		n.add(icon(name))
		return n
	}
	n.Kids = append([]Node{icon(name)}, n.Kids...)
	return n
}

// cornerSetOut is one corner: picture, figures, pieces, and the cuts in both boards.
func cornerSetOut(s *app.State, m module.Result, c board.Corner) Node {
	key := "corner-" + numeral(c.Number)
	of, _ := plannedCorner(s, m.ID, c.Number)
	title := say(s, "make.corner", words.Count("n", c.Number), words.Name("first", boardWord(s, c.First)), words.Name("second", boardWord(s, c.Second)), words.Word("joint", "joint."+of.Joint))
	name := say(s, "make.corner-picture", words.Count("n", c.Number), words.Name("module", moduleLabel(m)))
	first, _ := boardOf(m, c.First)
	second, _ := boardOf(m, c.Second)
	o := view.Options{Style: s.Plan.Style(), Scale: cornerScale(max(first.Thickness, second.Thickness)),
		Names: []string{capital(boardWord(s, c.First)), boardWord(s, c.Second)}}
	return el("article", key, class("corner"), el("h4", "title", said(title)),
		drawn(s, key+"-picture", name, view.Corner(m, c.Number, o)),
		pairs("figures", cornerPairs(s, m, c, of)...), loosePieces(s, c), cornerCuts(s, c, first, second))
}

// plannedCorner returns a corner as the plan has it.
func plannedCorner(s *app.State, id string, number int) (plan.Corner, bool) {
	m, ok := s.Plan.Module(id)
	if !ok || number > len(m.Corners) {
		return plan.Corner{Joint: plan.Mitre}, false
	}
	return m.Corners[number-1], true
}

// cornerScale is the largest usual scale at which a corner of boards so thick fits a
// narrow panel, about 70 mm of paper besides its figures. The picture shows 4.2 times the
// thickness.
func cornerScale(thick unit.Length) float64 {
	for _, k := range [...]float64{2, 1, 0.5, 0.2} {
		if 4.2*thick.MM()*k <= 70 {
			return k
		}
	}
	return 0.1
}

// cornerPairs are the figures of a corner; what is the same on both boards stands once.
func cornerPairs(s *app.State, m module.Result, c board.Corner, of plan.Corner) []pair {
	style := s.Plan.Style()
	turn := "make.turn-left"
	if of.Turn < 0 {
		turn = "make.turn-right"
	}
	out := []pair{
		{term(s, "make.turn"), say(s, turn, words.Angle("turn", of.Turn.Abs()))},
		{term(s, "make.interior"), style.Angle(c.Interior)},
	}
	both := func(key string, a, b string) {
		if a == b {
			out = append(out, pair{term(s, key), a})
			return
		}
		out = append(out, pair{say(s, key+"-of", words.Name("board", boardWord(s, c.First))), a}, pair{say(s, key+"-of", words.Name("board", boardWord(s, c.Second))), b})
	}
	both("make.tilt", style.Angle(c.Tilt[0].Abs()), style.Angle(c.Tilt[1].Abs()))
	both("make.lead", style.WithUnit(c.Lead[0].Abs()), style.WithUnit(c.Lead[1].Abs()))
	for _, id := range [...]string{c.First, c.Second} {
		if p, ok := partOf(s, id); ok {
			board := words.Name("board", boardWord(s, id))
			out = append(out, pair{say(s, "make.overall-of", board), style.WithUnit(p.Overall)})
			if p.Inside != p.Overall {
				out = append(out, pair{say(s, "make.inside-of", board), style.WithUnit(p.Inside)})
			}
		}
	}
	return out
}

// partOf returns the part that a board is.
func partOf(s *app.State, id string) (engpart.Part, bool) {
	for _, p := range s.Build.Parts.Parts {
		for _, b := range p.Boards {
			if b == id {
				return p, true
			}
		}
	}
	return engpart.Part{}, false
}

// loosePieces are the pieces of a corner.
func loosePieces(s *app.State, c board.Corner) part {
	style, out := s.Plan.Style(), parts{}
	for i, p := range c.Pieces {
		key := "make.piece-flat"
		if p.Width == 0 {
			key = "make.piece-round"
		}
		out = append(out, note("piece-"+numeral(i+1), say(s, key, words.Count("n", p.Count), words.Word("what", "piece."+p.What),
			words.Length("t", p.Thickness), words.Name("w", style.WithUnit(p.Width)), words.Length("l", p.Length))))
	}
	return out
}

// cornerCuts is the table of what is cut for a corner into its two boards besides their
// ends.
func cornerCuts(s *app.State, c board.Corner, boards ...board.Board) part {
	var rows []row
	for k, b := range boards {
		for i, f := range b.Features {
			if f.Kind == board.EndCut || f.Cause != (board.Cause{What: "corner", ID: numeral(c.Number)}) {
				continue
			}
			cells := append([]part{text(capital(boardWord(s, b.ID)))}, cutCells(s, b, f)...)
			rows = append(rows, row{key: "cut-" + numeral(k+1) + "-" + numeral(i), cells: cells})
		}
	}
	if rows == nil {
		return parts(nil)
	}
	columns := append([]column{{title: "make.col-board", area: "board"}}, cutColumns()...)
	return table(s, "cuts", perUnit(s, "make.corner-cuts", words.Count("n", c.Number)), columns, rows)
}
