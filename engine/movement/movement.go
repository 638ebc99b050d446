// Package movement tells how the wood of a module moves between the shop and the house: how
// boards get narrower and thinner in the driest use and grow in the dampest, how mitres open
// for it, and what a housed divider needs. It reads a module that is worked out and changes
// nothing of it.
//
// A mitre. Two boards, t₁ and t₂ thick, meet at the interior angle θ; the mitre runs from the
// inner arris P to the outer arris Q. From P, along each board, Q stands off by the leads a₁
// and a₂ (package joint). Thicknesses change by e₁ and e₂, lengths and so the leads do not:
// each cut lies flatter or steeper in its board, and the two no longer meet. With Q as origin,
// n₁ and n₂ the directions square to the boards from outer to inner face, and p the way from
// Q to P, the two inner arrises are now at
//
//	p₁ = p + e₁ n₁     p₂ = p + e₂ n₂
//
// as long as the outer arrises stay together. The two cuts then part by the angle between p₁
// and p₂, and because p × n₂ = a₂, n₁ × p = a₁ and n₁ × n₂ = sin θ,
//
//	p₁ × p₂ = k = e₁ a₁ + e₂ a₂ + e₁ e₂ sin θ
//
// For k < 0, as the boards dry, they part to the inside: the mitre touches at the toe Q and
// opens at the heel P. For k > 0 they would run into each other there, so P takes the place
// of Q with all directions reversed and k the same: it touches at the heel and opens at the
// toe. The arris of the shorter cut then stands off the longer by
//
//	|k|/√((t + e)² + a²)     of the longer cut
//
// which for two equal boards is 2 |e| cos(θ/2) for small e: √2 |e| in a square corner.
//
// A divider in housings. A housing runs across its board, so that its width lies along that
// board's grain and stays, while the thickness of the divider in it moves. Along its own grain
// the divider keeps its length, while a board between whose faces it stands may grow about its
// middle: the floor of a housing h deep comes nearer by e (1/2 − h/t) and an inner face by
// e/2. If mitres open as above, floors go apart and nothing is needed; the figure holds where
// glue keeps them shut. Front edges of divider and board move together if they are sawn alike,
// and part by the difference if not.
//
// Left out: glue and reinforcement, which hold a joint shut until they let go; how wood cups;
// what a finish slows; the slide of cuts along each other where boards are not equally thick;
// butts and rebates, whose parts follow each other.
package movement

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
)

// The two ends of use, as indices.
const (
	Dry = iota
	Damp
	seasons
)

// A Change is how a size changes from the shop to the driest and to the dampest use; more
// than 0 where it grows.
type Change [seasons]unit.Length

// Range returns how far the size goes to and fro, the shop's included.
func (c Change) Range() unit.Length { return c.Growth() - min(c[Dry], c[Damp], 0) }

// Growth returns how much the size grows at the most; 0 where it only shrinks.
func (c Change) Growth() unit.Length { return max(c[Dry], c[Damp], 0) }

// parts are the parts of a size by which it changes.
type parts [seasons]float64

// of returns the change of a size.
func (p *parts) of(size unit.Length) (c Change) {
	for season := range c {
		c[season] = unit.Nearest(p[season] * size.MM())
	}
	return c
}

// A timber is how one wood moves in one shop. Nearly always one is all that a module has.
type timber struct {
	s                *shop.Moisture
	id               string
	known            bool
	width, thickness parts
}

// take makes the timber that of a wood, and reports whether its figures are known.
func (t *timber) take(id string) bool {
	if id == t.id {
		return t.known
	}
	t.id = id
	f, found := wood.Find(id)
	t.known = found && t.saw(&f.Facts, wood.Sawing(t.s.Sawn))
	return t.known
}

// saw fills in the parts for a way of sawing, and reports whether they are known.
func (t *timber) saw(f *wood.Facts, sawn wood.Sawing) bool {
	for season, to := range [seasons]float64{t.s.UseLow, t.s.UseHigh} {
		by, known := f.Move(sawn, t.s.Shop, to)
		if !known {
			return false
		}
		t.width[season], t.thickness[season] = by.Width, by.Thickness
	}
	return true
}

// find returns a board of a module by its id.
func find(r *module.Result, id string) *board.Board {
	for i := range r.Boards {
		if r.Boards[i].ID == id {
			return &r.Boards[i]
		}
	}
	return nil
}

// A Mitre is how far one mitre opens at the most, on the inside and on the outside of its
// corner.
type Mitre struct {
	Corner    int // number of the board before it
	Heel, Toe unit.Length
}

// Most returns the wider of the two.
func (m Mitre) Most() unit.Length { return max(m.Heel, m.Toe) }

// Mitres returns how the mitres of a module open with the moisture of a shop's profile, in
// the order of the walk. Those of wood without figures are left out.
func Mitres(r *module.Result, s *shop.Moisture) (out []Mitre) {
	t := timber{s: s}
	for i := range r.Corners {
		c := &r.Corners[i]
		a, b := find(r, c.First), find(r, c.Second)
		if c.Number == 0 || a == nil || b == nil || !mitred(c, a.Thickness) || !t.take(a.Wood) || !t.take(b.Wood) {
			continue // the end of a divider, a butt, or not known
		}
		m := Mitre{Corner: c.Number}
		second := t.thickness
		t.take(a.Wood)
		for season := range seasons {
			open := unit.Nearest(Opening(c, [2]unit.Length{a.Thickness, b.Thickness},
				[2]float64{t.thickness[season] * a.Thickness.MM(), second[season] * b.Thickness.MM()}))
			m.Heel, m.Toe = max(m.Heel, -open), max(m.Toe, open)
		}
		out = append(out, m)
	}
	return out
}

// mitred reports whether the boards of a corner, the first t thick, meet in a plane from the
// inner to the outer arris. Where one runs through, each leads by its own slant only, t cot θ;
// in a mitre by the other's t/sin θ more.
func mitred(c *board.Corner, t unit.Length) bool {
	sin, cos := c.Interior.SinCos()
	return float64(c.Lead[0].MM()*sin)-float64(t.MM()*cos) > unit.Touch.MM()
}

// Opening returns how far the mitre of a corner opens, in millimetres, as its two boards,
// t thick, grow by e millimetres in thickness: more than 0 at the toe, less at the heel. See
// the package comment.
func Opening(c *board.Corner, t [2]unit.Length, e [2]float64) float64 {
	sin, _ := c.Interior.SinCos()
	k, longer := float64(float64(e[0]*e[1])*sin), 0.0
	for i := range t {
		a := c.Lead[i].MM()
		k += float64(e[i] * a)
		longer = max(longer, math.Hypot(t[i].MM()+e[i], a))
	}
	return k / longer
}

// housing returns the depth of a divider's housing in a board; 0: it has none.
func housing(b *board.Board, divider string) unit.Length {
	for i := range b.Features {
		if f := &b.Features[i]; f.Kind == board.Housing && f.Cause.What == "divider" && f.Cause.ID == divider {
			return f.Depth
		}
	}
	return 0
}

// housed reports whether a board is a divider with a housing.
func housed(r *module.Result, d *board.Board) bool {
	for i := range r.Boards {
		if d.Role == board.Divider && housing(&r.Boards[i], d.ID) > 0 {
			return true
		}
	}
	return false
}
