package module

import (
	"math"

	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A closed chain comes back to where it began:
//
//	Σ (lₖ − rₖ)·ûₖ + cₖ·ŵₖ = 0
//
// with lₖ the length of board k, rₖ what it reaches beyond its two inner points, ûₖ its
// direction, and cₖ·ŵₖ the step across the board where its inner points lie on opposite
// faces. Two boards i and j without a length solve the two equations:
//
//	lᵢ·ûᵢ + lⱼ·ûⱼ = s,   lᵢ = (s × ûⱼ)/(ûᵢ × ûⱼ),   lⱼ = (ûᵢ × s)/(ûᵢ × ûⱼ)
//
// They cannot be parallel. Nearly parallel boards move far for little; within a degree
// they count as parallel.
const (
	leastAngle = unit.Degree
	mostGap    = 50 * unit.Micrometre // taken up in the last corner's glue line
)

// An arrow is a vector in the module's plane, in millimetres.
type arrow struct{ x, y float64 }

func (a arrow) cross(b arrow) float64 { return float64(a.x*b.y) - float64(a.y*b.x) }

// step returns what board i adds to the walk when it is l long, from inner point to
// inner point.
func (w *work) step(i int, l unit.Length) arrow {
	k, t := &w.links[i], w.m.Boards[i].Thickness
	start, end := k.foot(l, t)
	sin, cos := k.dir.SinCos()
	u, across := (end.U - start.U).MM(), (end.W - start.W).MM()
	return arrow{float64(u*cos) + float64(across*sin), float64(u*sin) - float64(across*cos)}
}

// measure fills in the lengths: those typed, and those of the boards to close. It
// reports whether there are any.
func (w *work) measure() bool {
	w.lengths = make([]unit.Length, len(w.m.Boards))
	var open []int
	for i, b := range w.m.Boards {
		if w.lengths[i] = b.Length.Value; !b.Length.Known {
			open = append(open, i)
		}
	}
	if len(open) != 2 {
		return true
	}
	i, j := open[0], open[1]
	if w.parallel(i, j) {
		w.say(w.parallelFinding(i, j))
		return false
	}
	w.lengths[i], w.lengths[j] = w.closing(i, j)
	return true
}

// parallel reports whether two boards of the chain lie within a degree of parallel.
func (w *work) parallel(i, j int) bool {
	apart := (w.links[i].dir - w.links[j].dir).Turn() % unit.HalfTurn
	return min(apart, unit.HalfTurn-apart) < leastAngle
}

// closing returns the lengths with which boards i and j close the chain. They must not
// be parallel.
func (w *work) closing(i, j int) (li, lj unit.Length) {
	var s arrow
	for k := range w.links {
		l := w.lengths[k]
		if k == i || k == j {
			l = 0
		}
		d := w.step(k, l)
		s.x, s.y = s.x-d.x, s.y-d.y
	}
	sin, cos := w.links[i].dir.SinCos()
	ui := arrow{cos, sin}
	sin, cos = w.links[j].dir.SinCos()
	uj := arrow{cos, sin}
	both := ui.cross(uj)
	return unit.Nearest(s.cross(uj) / both), unit.Nearest(ui.cross(s) / both)
}

func (w *work) parallelFinding(i, j int) finding.Finding {
	apart := (w.links[i].dir - w.links[j].dir).Turn() % unit.HalfTurn
	f := finding.Finding{
		Kind: closingParallel, Value: words.AngleOf(min(apart, unit.HalfTurn-apart)), Limit: words.AngleOf(leastAngle),
		Place: finding.Place{Board: w.id(j)},
		Args:  []words.Arg{words.Name("board", w.label(i)), words.Name("other", w.label(j))},
	}
	for k := range w.links {
		if k != i && k != j && !w.parallel(k, j) {
			f.Remedies = append(f.Remedies, finding.Remedy{
				Key: "close-by-another", Args: []words.Arg{words.Name("board", w.label(k)), words.Name("typed", w.label(i))},
			})
			break
		}
	}
	f.Remedies = append(f.Remedies, finding.Remedy{Key: "type-all-lengths"})
	return f
}

// checkClosed measures the gap that is left between the end of the last board and the
// start of the first.
func (w *work) checkClosed() {
	n := len(w.boards) - 1
	if !w.m.Closed {
		return
	}
	_, end := w.links[n].foot(w.lengths[n], w.boards[n].Thickness)
	start, _ := w.links[0].foot(w.lengths[0], w.boards[0].Thickness)
	x, y := w.boards[n].Frame.Plane(end.U, end.W)
	x0, y0 := w.boards[0].Frame.Plane(start.U, start.W)
	gap := unit.Nearest(math.Hypot((x - x0).MM(), (y - y0).MM()))
	switch {
	case gap <= unit.Touch:
	case gap <= mostGap:
		w.say(w.gapFinding(gapTaken, gap))
	default:
		w.say(w.gapFinding(gapOpen, gap))
	}
}

func (w *work) gapFinding(k finding.Kind, gap unit.Length) finding.Finding {
	f := finding.Finding{
		Kind: k, Value: words.LengthOf(gap), Limit: words.LengthOf(mostGap),
		Place: finding.Place{Corner: len(w.m.Corners)}, Args: []words.Arg{words.Count("corner", len(w.m.Corners))},
	}
	if i, j, ok := w.nearestClosing(); ok {
		li, lj := w.closing(i, j)
		for _, c := range [2]struct {
			i int
			l unit.Length
		}{{i, li}, {j, lj}} {
			if (c.l - w.lengths[c.i]).Abs() > unit.Touch {
				f.Remedies = append(f.Remedies, setLength("length-to-close", c.i, c.l, words.Name("board", w.label(c.i))))
			}
		}
	}
	f.Remedies = append(f.Remedies, finding.Remedy{Key: "leave-two-open"})
	return f
}

// nearestClosing returns the two boards that close the chain with the least change of
// length together; of equal ones, the last.
func (w *work) nearestClosing() (bestI, bestJ int, ok bool) {
	least := unit.Length(math.MaxInt64)
	for i := range w.links {
		for j := i + 1; j < len(w.links); j++ {
			if w.parallel(i, j) {
				continue
			}
			li, lj := w.closing(i, j)
			change := (li - w.lengths[i]).Abs() + (lj - w.lengths[j]).Abs()
			if long := li > w.links[i].least(w.m.Boards[i].Thickness) && lj > w.links[j].least(w.m.Boards[j].Thickness); long && change <= least {
				bestI, bestJ, least, ok = i, j, change, true
			}
		}
	}
	return bestI, bestJ, ok
}
