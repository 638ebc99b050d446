package engine

import (
	"reflect"

	"ledgewright/engine/part"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/wall"
)

// A lending finds results of an earlier build that still hold.
type lending struct {
	from *Build
	at   map[string]int // place of a module in the earlier build, by id; made on first need
}

func lender(before *Build, s shop.Profile) lending {
	if before == nil || !same(before.from.plan.Shop, s) {
		return lending{}
	}
	return lending{from: before}
}

// find returns the place of a module with the content of m in the earlier build, or
// −1. Most modules stay at their place, so that is looked at first.
func (l *lending) find(i int, m plan.Module) int {
	if l.from == nil {
		return -1
	}
	old := l.from.from.plan.Modules
	if i < len(old) && old[i].ID == m.ID {
		if sameModule(&old[i], &m) && l.usable(i) {
			return i
		}
		return -1
	}
	if l.at == nil {
		l.at = map[string]int{}
		for j := range old {
			l.at[old[j].ID] = j
		}
	}
	if j, ok := l.at[m.ID]; ok && sameModule(&old[j], &m) && l.usable(j) {
		return j
	}
	return -1
}

// usable refuses what was broken before: whether a module is broken depends on the
// whole plan (its id may stand twice), not on its content alone.
func (l *lending) usable(j int) bool { return !l.from.from.broken[l.from.Modules[j].ID] }

// sameModule compares modules by content, and first by shared storage, so that most
// comparisons end without reading a board.
func sameModule(a, b *plan.Module) bool { return a.Shares(b) || same(*a, *b) }

func same(a, b any) bool { return reflect.DeepEqual(a, b) }

// lendPlacing returns the earlier result of an arrangement if nothing that it reads
// has changed.
func lendPlacing(before *Build, now source, i int, a plan.Arrangement, w plan.Wall, lent []bool) (wall.Result, bool) {
	if before == nil || i >= len(before.from.placings) {
		return wall.Result{}, false
	}
	old := before.from.placings[i]
	if !sameArrangement(&old.arrangement, &a) || !same(before.from.plan.Units, now.plan.Units) || !same(before.from.plan.Shop, now.plan.Shop) {
		return wall.Result{}, false
	}
	was, ok := findWall(before.from.plan.Walls, a.Wall)
	if !ok || !same(was, w) || len(before.from.plan.Modules) != len(now.plan.Modules) {
		return wall.Result{}, false
	}
	for j, m := range now.plan.Modules {
		if placed(a, m.ID) && !(lent[j] && before.from.plan.Modules[j].ID == m.ID) {
			return wall.Result{}, false
		}
	}
	return old.result, true
}

// lendParts returns the earlier part list if every module's parts are those of before.
func lendParts(before *Build, now source, lent []bool) (part.List, bool) {
	if before == nil || len(before.from.plan.Modules) != len(now.plan.Modules) {
		return part.List{}, false
	}
	for i, ok := range lent {
		if !ok || before.from.plan.Modules[i].ID != now.plan.Modules[i].ID {
			return part.List{}, false
		}
	}
	return before.Parts, true
}

func sameArrangement(a, b *plan.Arrangement) bool {
	shared := a.ID == b.ID && a.Name == b.Name && a.Wall == b.Wall && a.Corner == b.Corner &&
		plan.Shared(a.Poses, b.Poses) && plan.Shared(a.Lines, b.Lines) &&
		plan.Shared(a.Extra, b.Extra) && same(a.Datum, b.Datum)
	return shared || same(*a, *b)
}

func placed(a plan.Arrangement, module string) bool {
	for _, p := range a.Poses {
		if p.Module == module {
			return true
		}
	}
	return false
}
