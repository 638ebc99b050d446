package mount

import (
	"slices"

	"ledgewright/engine/rank"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// One bracket for each 380 mm (15 in) of board, and two at least: common practice.
const (
	each = 380 * unit.Millimetre
	few  = 2
)

// A Placing asks where the brackets of one board go. All figures are along the board.
type Placing struct {
	Length    unit.Length      // of the board
	Studs     []Interval       // studs that count, edge to edge, in any order
	Rule      shop.BracketRule // which rule, and its figures
	Rod       unit.Length      // diameter; an axis keeps as much from a stud's edge
	HeelStart unit.Length      // kept clear at the start, see [Heels]
	HeelEnd   unit.Length
	Step      unit.Length // places that are not on a stud are rounded down to it, from both ends; 0: not rounded
	Count     int         // how many; 0: by the length
}

// An Interval is a stretch along a board.
type Interval struct{ From, To unit.Length }

// Places returns where the brackets of a board go, from its start.
func Places(p Placing) []unit.Length {
	at, _ := Placed(p)
	return at
}

// Placed returns where the brackets of a board go, from its start, and the key of the
// words that say how they were found.
//
// By the rule "studs": among all pairs of studs in reach the one with the least overhang
// over L/Overhang, of those the most even, of those the widest, of those the first; then
// more studs between the two, as evenly as they stand, if the board asks for more. With
// one stud in reach the second bracket stands opposite it, if they come a third of the
// board apart; else, and with none, the rule "overhang" is used. By "overhang": L/5 from
// both ends, not over L/Overhang; by "fixed": at the shop's distance. Every bracket
// keeps FirstDiameters rods, and the heels, from the ends.
func Placed(p Placing) (at []unit.Length, how string) {
	from := max(p.HeelStart, p.Rod*unit.Length(p.Rule.FirstDiameters))
	to := p.Length - max(p.HeelEnd, p.Rod*unit.Length(p.Rule.FirstDiameters))
	if from >= to {
		return []unit.Length{p.Length / 2}, "place.no-room"
	}
	switch p.Rule.Rule {
	case shop.RuleFixed:
		return p.spread(max(p.Rule.Fixed, 0), from, to), "place.fixed"
	case shop.RuleStuds:
		if at, how = p.onStuds(from, to); at != nil {
			return at, how
		}
		return p.spread(p.fifth(), from, to), "place.no-stud"
	}
	return p.spread(p.fifth(), from, to), "place.overhang"
}

// count returns how many brackets the board asks for.
func (p Placing) count() int {
	if p.Count > 0 {
		return min(p.Count, most)
	}
	return int(min(max((p.Length+each-1)/each, few), most))
}

// fifth returns the overhang asked of the rule "overhang".
func (p Placing) fifth() unit.Length {
	return min(p.Length/5, p.Length/unit.Length(max(p.Rule.Overhang, 1)))
}

// spread returns places from so far off both ends, evenly between, all within [from,
// to]. One bracket alone stands in the middle.
func (p Placing) spread(off, from, to unit.Length) []unit.Length {
	n := p.count()
	if n == 1 {
		return []unit.Length{min(max(p.Length/2, from), to)}
	}
	if p.Step > 0 {
		off -= off % p.Step
	}
	first, last := max(off, from), min(p.Length-off, to)
	if first >= last {
		first, last = from, to
	}
	at := make([]unit.Length, n)
	for i := range at {
		at[i] = first + (last-first).MulDiv(int64(i), int64(n-1))
		if p.Step > 0 && i > 0 && i < n-1 {
			at[i] -= at[i] % p.Step
		}
	}
	return at
}

// onStuds returns places on studs within [from, to], or nothing.
func (p Placing) onStuds(from, to unit.Length) ([]unit.Length, string) {
	reach := p.reached(from, to)
	switch len(reach) {
	case 0:
		return nil, ""
	case 1:
		opposite := p.Length - reach[0]
		if p.count() < few {
			return reach, "place.studs"
		}
		if opposite < from || opposite > to || 3*(opposite-reach[0]).Abs() < p.Length {
			return nil, ""
		}
		return []unit.Length{min(reach[0], opposite), max(reach[0], opposite)}, "place.one-stud"
	}
	first, last := p.bestPair(reach)
	return between(reach[first:last+1], p.count()), "place.studs"
}

// reached returns the axes on studs within [from, to], in order: a stud's middle, or as
// near to it as the ends allow while the rod keeps its diameter from the stud's edge.
func (p Placing) reached(from, to unit.Length) []unit.Length {
	var out []unit.Length
	for _, s := range p.Studs {
		lo, hi := max(from, s.From+p.Rod), min(to, s.To-p.Rod)
		if lo <= hi {
			out = append(out, min(max(s.From+(s.To-s.From)/2, lo), hi))
		}
	}
	rank.Up(out)
	return slices.Compact(out)
}

// bestPair returns the outer two of the places in reach.
func (p Placing) bestPair(reach []unit.Length) (first, last int) {
	best := [3]unit.Length{-1}
	limit := p.Length / unit.Length(max(p.Rule.Overhang, 1))
	for i := range reach {
		for k := i + 1; k < len(reach); k++ {
			a, b := reach[i], p.Length-reach[k]
			rank := [3]unit.Length{max(a-limit, b-limit, 0), (a - b).Abs(), a + b}
			if best[0] < 0 || slices.Compare(rank[:], best[:]) < 0 {
				best, first, last = rank, i, k
			}
		}
	}
	return first, last
}

// between returns the outer two of the places in reach and, for n brackets, those
// inside that stand nearest to an even spacing.
func between(reach []unit.Length, n int) []unit.Length {
	last := len(reach) - 1
	out := []unit.Length{reach[0]}
	used := 0
	for i := 1; i < n-1; i++ {
		want := reach[0] + (reach[last]-reach[0]).MulDiv(int64(i), int64(n-1))
		best := used + 1
		for k := best; k < last; k++ {
			if (reach[k] - want).Abs() < (reach[best] - want).Abs() {
				best = k
			}
		}
		if best >= last {
			break
		}
		used = best
		out = append(out, reach[best])
	}
	return append(out, reach[last])
}
