package panel

import (
	"strconv"

	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// numeral writes a whole number.
func numeral(n int) string { return strconv.Itoa(n) }

// boards are the boards of the chain in the order of the walk.
func (e *editor) boards() Node {
	var list kids
	for i := range e.m.Boards {
		list.add(e.board(i + 1))
	}
	return counted("editor-boards", e.term("editor.boards"), len(e.m.Boards), list,
		rowOf(e.addBoard("add-board", "editor.add-board", len(e.m.Boards)+1)))
}

// board is one board of the chain, by its number.
func (e *editor) board(n int) Node {
	b, key, count := e.m.Boards[n-1], e.m.ID+".b"+numeral(n), words.Count("n", n)
	f := e.form(key, "board", "set-board", []words.Arg{count}, "board", n)
	is := func(p finding.Place) bool { return p.Corner == 0 && p.Board == e.m.ID+"."+numeral(n) }
	length := f.maybe("length", b.Length, "editor.to-close")
	if !b.Length.Known && e.worked != nil {
		length = hint(length, e.say("editor.comes-to", words.Length("value", e.lengthOf(n))))
	}
	return fold(e.s, key, app.Thing{Kind: "board", Owner: e.m.ID, Index: n}, e.boardHead(n), e.worst(is),
		e.about(is, key),
		two(length, f.length("thickness", b.Thickness)),
		f.text("name", b.Name, "form.no-name"),
		e.edges(key, e.say("editor.board-n", count), b.Edges, "board", n),
		rowOf(e.addBoard(key+".before", "editor.add-before", n), e.addBoard(key+".after", "editor.add-after", n+1), e.removeBoard(key, n)))
}

func (e *editor) boardHead(n int) string {
	b := e.m.Boards[n-1]
	key := "editor.board-head"
	if !b.Length.Known {
		key = "editor.board-head-closing"
		if e.worked == nil {
			key = "editor.board-head-open"
		}
	}
	name := b.Name
	if name != "" {
		name = ", " + name
	}
	return e.say(key, words.Count("n", n), words.Name("name", name), words.Length("length", b.Length.Or(e.lengthOf(n))), words.Length("thickness", b.Thickness))
}

// addBoard adds a board with the number n. In an open chain it turns a quarter to the
// left, as long as its neighbour; in a closed chain it cuts the corner where it comes to
// stand, so that the turns still come round.
func (e *editor) addBoard(key, says string, n int) Node {
	beside := min(n, len(e.m.Boards))
	if says == "editor.add-after" {
		beside = n - 1
	}
	label := e.say(says, words.Count("n", beside))
	if len(e.m.Boards) == 0 {
		return makes(key, label, line("add-board", "module", e.m.ID, "thickness", pick(e.s, 26, 1), "length", pick(e.s, 600, 24)))
	}
	if e.m.Closed && len(e.m.Corners) == len(e.m.Boards) {
		return button(key, label, app.Do{Edits: e.cutCorner(n)})
	}
	near := max(n-1, 1)
	length := e.lengthOf(near)
	if length <= 0 {
		length = pick(e.s, 600, 24)
	}
	return makes(key, label, line("add-board", "module", e.m.ID, "at", n, "length", length, "turn", unit.QuarterTurn))
}

// cutCorner is a new board n in the corner before it: half the corner's turn before the
// board, half after it.
func (e *editor) cutCorner(n int) []edit.Edit {
	corners := len(e.m.Corners)
	// The corner that the new board stands in joins the board before it to the next; a
	// board before the first stands in the first board's own corner.
	at := max(n-2, 0)
	turn := e.m.Corners[at%corners].Turn
	half := turn / 2
	add := edit.AddBoard{Module: e.m.ID, At: n, Turn: half, Joint: e.m.Corners[at%corners].Joint,
		With: edit.Changes(edit.Change("length", pick(e.s, 150, 6)))}
	rest := edit.SetCorner{Module: e.m.ID, Corner: at + 2, With: edit.Changes(edit.Change("turn", turn-half))}
	return []edit.Edit{add, rest}
}

// removeBoard takes a board out of the chain, or says why it cannot go.
func (e *editor) removeBoard(key string, n int) Node {
	fewest := 1
	if e.m.Closed {
		fewest = 3
	}
	label := e.say("editor.remove-board", words.Count("n", n))
	if len(e.m.Boards) <= fewest {
		return blocked(key+".remove", label, e.say("editor.fewest", words.Count("limit", fewest)))
	}
	return drops(key+".remove", label, line("remove-board", "module", e.m.ID, "board", n))
}

func arrises() []string {
	return []string{"front-a", "front-b", "back-a", "back-b", "start-a", "start-b", "end-a", "end-b"}
}

// edges are the arrises of a board or divider: which is cut, how, and how much. The
// last two arguments name it in the edit.
func (e *editor) edges(key, of string, edges []plan.Edge, member string, id any) Node {
	var list kids
	for _, arris := range arrises() {
		list.add(e.edge(key+".edge-"+arris, of, arris, edgeAt(edges, arris), member, id))
	}
	return fold(e.s, key+".edges", app.Thing{}, e.say("editor.edges-head", words.Name("of", of), words.Count("n", len(edges))), nothing(), two(list))
}

func edgeAt(edges []plan.Edge, arris string) plan.Edge {
	for _, e := range edges {
		if e.Arris == arris {
			return e
		}
	}
	return plan.Edge{Arris: arris}
}

// edge is one arris: its cut, and the size of the cut where there is one.
func (e *editor) edge(key, of, arris string, now plan.Edge, member string, id any) Node {
	args := []words.Arg{words.Name("of", of), words.Word("arris", "arris."+arris), unitWord(e.s)}
	size := now.Size
	if size <= 0 {
		size = pick(e.s, 3, 1) / 2
		if e.s.Plan.Units.System == unit.Inches {
			size = unit.Inch / 16
		}
	}
	cut := app.Field{Key: key + ".cut", Label: e.say("editor.edge-cut", args...), Kind: app.ChoiceField, Value: now.Cut,
		Line: line("set-edge", "module", e.m.ID, member, id, "arris", arris, "size", size, "cut", "$")}
	cuts := []option{{"", e.term("editor.cut-none")}, {"chamfer", e.term("editor.cut-chamfer")}, {"round", e.term("editor.cut-round")}}
	if now.Cut == "" {
		return el("div", key, choice(e.s, cut, cuts))
	}
	much := app.Field{Key: key + ".size", Label: e.say("editor.edge-size", args...), Value: exact(e.s, now.Size),
		Line: line("set-edge", "module", e.m.ID, member, id, "arris", arris, "cut", now.Cut, "size", "$")}
	return el("div", key, choice(e.s, cut, cuts), field(e.s, much))
}
