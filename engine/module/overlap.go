package module

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A quad is a board's section between its end cuts, in the module's plane.
type quad struct {
	p      [4]arrow
	lo, hi arrow
}

// checkOverlap asks whether boards that do not belong together run into each other: a
// chain that crosses itself, or a divider in the way of another board. Neighbours share
// a plane and cannot; a divider stands in the boards that it is housed in. Rails lie
// behind and between, and are not asked.
func (w *work) checkOverlap() {
	quads := make([]quad, len(w.boards))
	for i := range w.boards {
		quads[i] = quadOf(&w.boards[i])
		for j := range i {
			if !w.together(i, j) && quads[i].overlaps(&quads[j]) {
				w.say(w.overlapFinding(i, j))
			}
		}
	}
}

// together reports whether boards i > j are joined.
func (w *work) together(i, j int) bool {
	n := len(w.m.Boards)
	if i < n {
		return i-j == 1 || w.m.Closed && i-j == n-1
	}
	for _, d := range w.m.Dividers {
		if d.ID == w.boards[i].ID {
			return d.From == j+1 || d.To == j+1
		}
	}
	return false
}

func quadOf(b *board.Board) quad {
	s, e := b.Ends()
	q := quad{lo: arrow{math.Inf(1), math.Inf(1)}, hi: arrow{math.Inf(-1), math.Inf(-1)}}
	for i, c := range [4][2]unit.Length{{s.AtA, 0}, {e.AtA, 0}, {e.AtB, b.Thickness}, {s.AtB, b.Thickness}} {
		x, y := b.Frame.Plane(c[0], c[1])
		p := arrow{x.MM(), y.MM()}
		q.p[i] = p
		q.lo, q.hi = arrow{min(q.lo.x, p.x), min(q.lo.y, p.y)}, arrow{max(q.hi.x, p.x), max(q.hi.y, p.y)}
	}
	return q
}

// overlaps reports whether two quadrangles overlap by more than touching: no side of
// either has the other wholly beyond it.
func (q *quad) overlaps(o *quad) bool {
	if q.lo.x >= o.hi.x || o.lo.x >= q.hi.x || q.lo.y >= o.hi.y || o.lo.y >= q.hi.y {
		return false
	}
	return !q.separates(o) && !o.separates(q)
}

// separates reports whether a side of q has o beyond it. Quadrangles of boards run
// clockwise in the module's plane, so beyond is to the left.
func (q *quad) separates(o *quad) bool {
	for i, a := range q.p {
		b := q.p[(i+1)%4]
		side := arrow{b.x - a.x, b.y - a.y}
		size := math.Hypot(side.x, side.y)
		least := math.Inf(1)
		for _, p := range o.p {
			least = min(least, side.cross(arrow{p.x - a.x, p.y - a.y})/size)
		}
		if least >= -unit.Touch.MM() {
			return true
		}
	}
	return false
}

func (w *work) overlapFinding(i, j int) finding.Finding {
	a, b := &w.boards[i], &w.boards[j]
	f := finding.Finding{
		Kind: overlap, Place: finding.Place{Board: a.ID},
		Args:     []words.Arg{words.Name("board", label(a)), words.Name("other", label(b))},
		Remedies: []finding.Remedy{{Key: "change-lengths"}, {Key: "change-turns"}},
	}
	if a.Role == board.Divider {
		f.Place.Divider = a.ID
		f.Remedies = []finding.Remedy{{Key: "move-divider", Args: []words.Arg{words.Name("divider", a.ID)}}, removeDivider(a.ID)}
	}
	return f
}
