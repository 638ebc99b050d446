package panel

import (
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// What the maker calls the things of a module: by their own name or by their number in it,
// as the editor lists them, never by the ids of the plan.

// boardWord is what a board is called in its module.
func boardWord(s *app.State, id string) string {
	m, ok := moduleOfBoard(s, id)
	b, _ := boardOf(m, id)
	switch {
	case !ok:
		return id
	case b.Name != "":
		return b.Name
	case b.Role == board.Divider:
		return say(s, "make.divider-number", words.Count("n", ordinal(s, m.ID, "divider", id)))
	case b.Role == board.Rail:
		if p, ok := partOf(s, id); ok {
			return p.Name
		}
	}
	return say(s, "make.board-number", words.Count("n", chainNumber(m, id)))
}

// chainNumber is the number of a board along its module.
func chainNumber(m module.Result, id string) int {
	n := 0
	for _, b := range m.Boards {
		if b.Role == board.Chain {
			n++
		}
		if b.ID == id {
			break
		}
	}
	return n
}

// boardName is what a board is called where all modules are spoken of.
func boardName(s *app.State, id string) string {
	m, _ := moduleOfBoard(s, id)
	return say(s, "make.board-of", words.Name("board", boardWord(s, id)), words.Name("module", moduleLabel(m)))
}

// ordinal is the number of a bracket, light or divider in its module; 0 where it is not
// there.
func ordinal(s *app.State, of, what, id string) int {
	m, _ := s.Plan.Module(of)
	switch what {
	case "bracket":
		return 1 + slices.IndexFunc(m.Brackets, func(b plan.Bracket) bool { return b.ID == id })
	case "light":
		return 1 + slices.IndexFunc(m.Lights, func(l plan.Light) bool { return l.ID == id })
	case "divider":
		return 1 + slices.IndexFunc(m.Dividers, func(d plan.Divider) bool { return d.ID == id })
	}
	return 0
}

// numberIn writes the number of a thing in its module, or its id where it has none.
func numberIn(s *app.State, of, what, id string) string {
	if n := ordinal(s, of, what, id); n > 0 {
		return numeral(n)
	}
	return id
}
