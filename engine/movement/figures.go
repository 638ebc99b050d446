package movement

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
)

// These figures are for who asks; nothing is found from them, so a program that does not ask
// need not carry them.

// A Board is one board that moves.
type Board struct {
	ID               string
	Width, Thickness Change
}

// Boards returns how the boards of a module move with the moisture of a shop's profile, in the
// module's order. Those of wood without figures are left out.
func Boards(r *module.Result, s *shop.Moisture) (out []Board) {
	t := timber{s: s}
	for i := range r.Boards {
		if b := &r.Boards[i]; t.take(b.Wood) {
			out = append(out, Board{b.ID, t.width.of(b.Width), t.thickness.of(b.Thickness)})
		}
	}
	return out
}

// A Divider is the free way that a housed divider needs.
type Divider struct {
	ID    string
	Side  Change      // of its thickness, in the width of its housings
	Ends  unit.Length // along it, both ends together, where glue keeps the corners shut
	Front unit.Length // by which its front edge and that of a board may part
}

// Dividers returns the free way of every divider with at least one housing, in the module's
// order. Those of wood without figures are left out.
func Dividers(r *module.Result, s *shop.Moisture) (out []Divider) {
	t := timber{s: s}
	for i := range r.Boards {
		d := &r.Boards[i]
		if !housed(r, d) || !t.take(d.Wood) {
			continue
		}
		free := Divider{ID: d.ID, Side: t.thickness.of(d.Thickness)}
		for k := range r.Corners {
			c := &r.Corners[k]
			if b := find(r, c.First); c.Number == 0 && c.Second == d.ID && b != nil {
				free.Ends += floor(&t, b, housing(b, d.ID), c.Interior)
				free.Front = max(free.Front, parting(s, b.Wood, d.Wood, d.Width))
			}
		}
		out = append(out, free)
	}
	return out
}

// floor returns how far the floor of a housing, deep into a board that grows about its
// middle, comes towards the divider, along it.
func floor(t *timber, b *board.Board, deep unit.Length, interior unit.Angle) unit.Length {
	if !t.take(b.Wood) {
		return 0
	}
	sin, _ := interior.SinCos()
	return unit.Nearest(max(t.thickness[Dry], t.thickness[Damp], 0) * max(b.Thickness.MM()/2-deep.MM(), 0) / sin)
}

// parting returns the farthest that the front edges of boards of two woods part in one season,
// for all ways in which either may be sawn.
func parting(s *shop.Moisture, one, other string, size unit.Length) unit.Length {
	most := 0.0
	for _, x := range widths(s, one) {
		for _, y := range widths(s, other) {
			most = max(most, math.Abs(x[Dry]-y[Dry]), math.Abs(x[Damp]-y[Damp]))
		}
	}
	return unit.Nearest(most * size.MM())
}

// widths returns the parts by which the width of a wood's boards may change.
func widths(s *shop.Moisture, id string) (out []parts) {
	f, _ := wood.Find(id)
	ways := []wood.Sawing{wood.Sawing(s.Sawn)}
	if ways[0] == wood.AnySawing {
		ways = []wood.Sawing{wood.FlatSawn, wood.QuarterSawn}
	}
	for _, w := range ways {
		if t := (timber{s: s}); t.saw(&f.Facts, w) {
			out = append(out, t.width)
		}
	}
	return out
}
