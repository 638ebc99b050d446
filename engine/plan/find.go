package plan

import (
	"slices"
	"strconv"

	"ledgewright/engine/unit"
)

// Style returns how the plan's lengths are printed.
func (p Plan) Style() unit.Style { return unit.Style{System: p.Units.System, Step: p.Units.Step} }

// Wall returns the wall with an id.
func (p Plan) Wall(id string) (Wall, bool) {
	return find(p.Walls, func(w Wall) bool { return w.ID == id })
}

// Module returns the module with an id.
func (p Plan) Module(id string) (Module, bool) {
	return find(p.Modules, func(m Module) bool { return m.ID == id })
}

// Arrangement returns the arrangement with an id.
func (p Plan) Arrangement(id string) (Arrangement, bool) {
	return find(p.Arrangements, func(a Arrangement) bool { return a.ID == id })
}

// Divider returns the divider with an id.
func (m Module) Divider(id string) (Divider, bool) {
	return find(m.Dividers, func(d Divider) bool { return d.ID == id })
}

// Label returns the module's name, or its id when it has none.
func (m Module) Label() string { return label(m.Name, m.ID) }

// Label returns the wall's name, or its id when it has none.
func (w Wall) Label() string { return label(w.Name, w.ID) }

// Label returns the arrangement's name, or its id when it has none.
func (a Arrangement) Label() string { return label(a.Name, a.ID) }

func label(name, id string) string {
	if name != "" {
		return name
	}
	return id
}

func find[T any](all []T, is func(T) bool) (T, bool) {
	i := slices.IndexFunc(all, is)
	if i < 0 {
		var none T
		return none, false
	}
	return all[i], true
}

// A Letter begins the ids of one kind of thing; a number from the counter of its kind
// follows.
type Letter string

// The letters. Walls, modules and arrangements have a counter each; everything else
// shares one.
const (
	LetterWall        Letter = "w"
	LetterModule      Letter = "m"
	LetterArrangement Letter = "a"
	LetterDivider     Letter = "d"
	LetterLight       Letter = "l"
	LetterBracket     Letter = "b"
	LetterObstacle    Letter = "o"
	LetterLine        Letter = "h"
)

// Next returns the next id of a kind, which was never given before, and the counters
// after it.
func (c Counters) Next(l Letter) (string, Counters) {
	n := c.counter(l)
	*n++
	return string(l) + strconv.Itoa(*n), c
}

// counter returns the counter that gives the numbers of a kind of thing.
func (c *Counters) counter(l Letter) *int {
	switch l {
	case LetterWall:
		return &c.Wall
	case LetterModule:
		return &c.Module
	case LetterArrangement:
		return &c.Arrangement
	}
	return &c.Part
}

// number returns the number in an id of the given kind, and whether it is one: the
// letter, and a number from 1 without leading zeros.
func number(id string, l Letter) (int, bool) {
	if len(id) < 2 || len(id) > 10 || id[:1] != string(l) || id[1] == '0' {
		return 0, false
	}
	n, err := strconv.ParseUint(id[1:], 10, 31)
	return int(n), err == nil
}
