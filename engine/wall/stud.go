package wall

import (
	"slices"

	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// A Stud is one stud of a wall as far as it is known.
type Stud struct {
	Number   int         // from the left, from 1
	X        unit.Length // centre
	Half     unit.Length // half its face width; 0: not known
	State    string      // plan.EdgesFound …; only edges found counts as wood
	Material string      // "wood", "metal"; empty: not known
}

// Studs more than a wall has; a spacing that gives more is not believed.
const mostStuds = 2000

// Studs returns the studs of a wall from the left: those of the spacing, and those typed
// one by one. A typed stud stands for the one of the spacing that is nearest to it, the
// left one of two, if it is within half a spacing. A wall without studs has none.
func Studs(w plan.Wall) []Stud {
	if w.Build != plan.BuildStuds && w.Build != plan.BuildLath {
		return nil
	}
	out := regular(w)
	for _, s := range w.Studs.Each {
		if i := replaced(w, s.X); i >= 0 && i < len(out) {
			out[i].Number = -1
		}
	}
	out = slices.DeleteFunc(out, func(s Stud) bool { return s.Number < 0 })
	for _, s := range w.Studs.Each {
		width := s.Width.Or(w.Studs.Width.Or(0))
		out = append(out, Stud{X: s.X, Half: width / 2, State: s.State, Material: w.Studs.Material})
	}
	rank.By(out, func(a, b Stud) int { return sign(int64(a.X - b.X)) })
	for i := range out {
		out[i].Number = i + 1
	}
	return out
}

// regular returns the studs of the spacing.
func regular(w plan.Wall) []Stud {
	s := w.Studs
	if !s.First.Known || !s.Spacing.Known || s.Spacing.Value <= 0 || s.First.Value < 0 || s.First.Value > w.Width {
		return nil
	}
	n := (w.Width-s.First.Value)/s.Spacing.Value + 1
	if n > mostStuds {
		return nil
	}
	out := make([]Stud, 0, int(n)+len(s.Each))
	state := s.State
	if state == "" {
		state = plan.Guess
	}
	for i := range n {
		out = append(out, Stud{X: s.First.Value + i*s.Spacing.Value, Half: s.Width.Or(0) / 2, State: state, Material: s.Material})
	}
	return out
}

// replaced returns which stud of the spacing a typed one at x stands for: the index, or
// one that is out of range. Every x is within half a spacing of some place of the row.
func replaced(w plan.Wall, x unit.Length) int {
	s := w.Studs
	if !s.First.Known || s.Spacing.Or(0) <= 0 {
		return -1
	}
	from := x - s.First.Value + s.Spacing.Value/2
	if from < 0 {
		return -1
	}
	i, rest := from/s.Spacing.Value, from%s.Spacing.Value
	if rest == 0 && i > 0 && s.Spacing.Value%2 == 0 {
		i--
	}
	return int(min(i, mostStuds))
}

// nearest returns the index of the stud nearest to x, −1 if there is none.
func nearest(studs []Stud, x unit.Length) int {
	i, _ := slices.BinarySearchFunc(studs, x, func(s Stud, x unit.Length) int { return sign(int64(s.X - x)) })
	switch {
	case i == len(studs):
		return i - 1
	case i > 0 && x-studs[i-1].X <= studs[i].X-x:
		return i - 1
	}
	return i
}

// lining returns the thickness of what lies before the structure, and whether it is
// known.
func lining(w plan.Wall) (unit.Length, bool) {
	if w.Lining.Kind == "none" {
		return w.Lining.Thickness.Or(0), true
	}
	return w.Lining.Thickness.Value, w.Lining.Thickness.Known
}

// meets returns what a hole at x meets.
func meets(w *plan.Wall, studs []Stud, x unit.Length) Structure {
	switch w.Build {
	case "":
		return Structure{Kind: InUnknown}
	case plan.BuildStuds, plan.BuildLath:
	default:
		return Structure{Kind: InMasonry}
	}
	i := nearest(studs, x)
	if i < 0 {
		return Structure{Kind: InUnknown}
	}
	s := &studs[i]
	out := Structure{Kind: InUnknown, Stud: s.Number, State: s.State}
	if s.Half == 0 {
		return out
	}
	out.Edge = s.Half - (x - s.X).Abs()
	out.Kind = InStud
	if out.Edge <= 0 {
		out.Kind = InLining
	}
	return out
}

// Wood reports whether a hole is known to meet wood.
func (s Structure) Wood() bool { return s.Kind == InStud && s.State == plan.EdgesFound }
