package hold

import (
	"math"

	"ledgewright/engine/strength"
)

// A Limit is how much a shelf may sag: the span over Ratio.
type Limit struct {
	Key    string // of the words "sag-limit.<key>"
	Ratio  float64
	Source string
	Basis  strength.Basis
}

// Limits lists the limits to choose from, the loosest first.
func Limits() []Limit {
	return []Limit{
		{"woodwork", 144, "Architectural Woodwork Standards, 1st ed. (2009), 1.2.21.3.1.1", strength.Read},
		{"books", 240, "span tables of sheet-goods associations: slightly more than 1/8 in over 36 in is noticed", strength.Read},
		{"display", 384, "common practice for fine furniture: 1/32 in a foot", strength.Memory},
		{"strict", 600, "common practice for display shelves: 0.02 in a foot", strength.Memory},
	}
}

// UsualLimit is the key of the limit that is taken where nobody chooses.
const UsualLimit = "books"

// Creep is k_def of solid wood indoors: what stays on a shelf for years adds 0.6 times what
// it sags at once (EN 1995-1-1, table 3.2, service class 1). Books count as permanent.
const Creep = 0.6

// FreeSpan is the span that stands for the length of a free end: twice as long (EN 1995-1-1,
// table 7.2, allows a cantilever twice the part of its length; memory).
const FreeSpan = 2

// A Sag is how far a board sags below the line between two of its supports, or at a free end
// below its last.
type Sag struct {
	Board    string
	From, To float64 // places along the board, mm
	Free     bool    // To, or From, is a free end
	Now      float64 // mm
	Later    float64 // after years
	Limit    float64
}

// A height is how far a board's centre line has gone down at a place.
type height struct{ u, down float64 }

// heights returns the heights along a board, from its stations and the middles between them.
func (f *model) heights(e *Effect, bar int) (out []height) {
	station, member := 0, 0
	for i := range bar {
		station += len(f.boards[i].stations)
		member += len(f.boards[i].members)
	}
	b := &f.boards[bar]
	centre := func(k int) float64 { return (e.Fronts[station+k] + e.Backs[station+k]) / 2 }
	for k, s := range b.stations {
		out = append(out, height{s.u, centre(k)})
		if k < len(b.members) {
			mid := (centre(k)+centre(k+1))/2 + e.Members[member+k].Sag
			out = append(out, height{(s.u + b.stations[k+1].u) / 2, mid})
		}
	}
	return out
}

// supports returns the places at which a board is held: by its brackets, or where it has
// none by the boards that it meets.
func (f *model) supports(bar int) (out []float64) {
	b := &f.boards[bar]
	for i := range f.rods {
		if f.rods[i].bar == bar {
			out = append(out, f.rods[i].of.At.U.MM())
		}
	}
	for _, l := range f.links {
		if x := &f.of.Fixings[l.fixing]; x.Board == b.board.ID && l.way[1] != 0 {
			out = append(out, (x.At.U + x.Screws[l.screw].DU).MM())
		}
	}
	if len(out) > 0 {
		return ordered(out)
	}
	for _, s := range b.stations {
		for j := range f.boards {
			if j != bar && f.boards[j].has(s.node) {
				out = append(out, s.u)
			}
		}
	}
	return ordered(out)
}

// ordered sorts a few places and drops those that stand together.
func ordered(u []float64) (out []float64) {
	for range u {
		next, found := 0.0, false
		for _, x := range u {
			if (len(out) == 0 || x > out[len(out)-1]+nearStation) && (!found || x < next) {
				next, found = x, true
			}
		}
		if found {
			out = append(out, next)
		}
	}
	return out
}

// sags lists how a board sags between its supports and at its free ends.
func (f *model) sags(e *Effect, bar int, limit Limit) (out []Sag) {
	at, held := f.heights(e, bar), f.supports(bar)
	if len(held) == 0 {
		return nil
	}
	add := func(from, to float64, free bool, now float64) {
		span := to - from
		if free {
			span *= FreeSpan
		}
		if span < leastSpan {
			return
		}
		out = append(out, Sag{f.boards[bar].board.ID, from, to, free, now, now * (1 + Creep), span / limit.Ratio})
	}
	first, last := at[0], at[len(at)-1]
	add(first.u, held[0], true, first.down-downAt(at, held[0]))
	for i := range len(held) - 1 {
		add(held[i], held[i+1], false, between(at, held[i], held[i+1]))
	}
	add(held[len(held)-1], last.u, true, last.down-downAt(at, held[len(held)-1]))
	return out
}

// downAt returns the height nearest to u.
func downAt(at []height, u float64) float64 {
	best := at[0]
	for _, h := range at {
		if math.Abs(h.u-u) < math.Abs(best.u-u) {
			best = h
		}
	}
	return best.down
}

// between returns the greatest distance below, or else above, the line between two supports;
// below is +.
func between(at []height, from, to float64) (most float64) {
	a, b := downAt(at, from), downAt(at, to)
	for _, h := range at {
		if h.u <= from || h.u >= to {
			continue
		}
		line := a + (b-a)*(h.u-from)/(to-from)
		if d := h.down - line; math.Abs(d) > math.Abs(most) {
			most = d
		}
	}
	return most
}
