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
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
)

// A Result is how the wood of one module moves.
type Result struct {
	Boards   []Board   // of which the wood's figures are known, in the module's order
	Mitres   []Mitre   // of boards whose figures are known, in the order of the walk
	Dividers []Divider // with at least one housing, likewise
	Unknown  []string  // ids of woods that have no figures, each once
}

// A Change is how a size changes from the shop to the driest and to the dampest use; more
// than 0 where it grows.
type Change struct{ Dry, Damp unit.Length }

// Range returns how far the size goes to and fro, the shop's included.
func (c Change) Range() unit.Length { return max(c.Dry, c.Damp, 0) - min(c.Dry, c.Damp, 0) }

// A Board is one board that moves.
type Board struct {
	ID               string
	Width, Thickness Change
}

// A Mitre is how far one mitre opens at the most, on the inside and on the outside of its
// corner.
type Mitre struct {
	Corner    int // number of the board before it
	Heel, Toe unit.Length
}

// Most returns the wider of the two.
func (m Mitre) Most() unit.Length { return max(m.Heel, m.Toe) }

// A Divider is the free way that a housed divider needs.
type Divider struct {
	ID    string
	Side  Change      // of its thickness, in the width of its housings
	Ends  unit.Length // along it, both ends together, where glue keeps the corners shut
	Front unit.Length // by which its front edge and that of a board may part
}

// seasons are the two ends of use.
const (
	dry = iota
	damp
	seasons
)

// A pair holds one figure for each season, in millimetres or as a part of a size.
type pair [seasons]float64

func (p pair) times(size unit.Length) pair {
	return pair{float64(p[dry] * size.MM()), float64(p[damp] * size.MM())}
}

func (p pair) change() Change { return Change{unit.Nearest(p[dry]), unit.Nearest(p[damp])} }

// A timber is how one wood moves in one shop.
type timber struct {
	id               string
	known            bool
	width, thickness pair
	widths           []pair // that the width may have, by how boards may be sawn
}

// timberOf works out how a wood moves.
func timberOf(id string, m shop.Moisture) timber {
	t := timber{id: id}
	s, ok := wood.Find(id)
	if !ok {
		return t
	}
	ways := []wood.Sawing{wood.Sawing(m.Sawn)}
	if m.Sawn == string(wood.AnySawing) {
		ways = []wood.Sawing{wood.FlatSawn, wood.QuarterSawn}
	}
	t.width, t.thickness, t.known = moved(&s, wood.Sawing(m.Sawn), m)
	for _, w := range ways {
		p, _, _ := moved(&s, w, m)
		t.widths = append(t.widths, p)
	}
	return t
}

// moved returns the parts of width and thickness by which boards move in either season.
func moved(s *wood.Species, sawn wood.Sawing, m shop.Moisture) (width, thickness pair, ok bool) {
	for season, to := range [seasons]float64{m.UseLow, m.UseHigh} {
		by, known := s.Move(sawn, m.Shop, to)
		if !known {
			return pair{}, pair{}, false
		}
		width[season], thickness[season] = by.Width, by.Thickness
	}
	return width, thickness, true
}

// A work is one module being worked out.
type work struct {
	of      *module.Result
	s       shop.Moisture
	timbers []timber // nearly always one
	out     Result
}

// Of returns how the wood of a module moves with the moisture of a shop's profile.
func Of(r module.Result, s shop.Moisture) Result {
	w := work{of: &r, s: s}
	w.moveBoards()
	w.openMitres()
	w.freeDividers()
	return w.out
}

// timber returns how the wood of a board moves.
func (w *work) timber(b *board.Board) *timber {
	i := slices.IndexFunc(w.timbers, func(t timber) bool { return t.id == b.Wood })
	if i < 0 {
		i = len(w.timbers)
		w.timbers = append(w.timbers, timberOf(b.Wood, w.s))
	}
	return &w.timbers[i]
}

func (w *work) moveBoards() {
	w.out.Boards = make([]Board, 0, len(w.of.Boards))
	for i := range w.of.Boards {
		b := &w.of.Boards[i]
		t := w.timber(b)
		if !t.known {
			if !slices.Contains(w.out.Unknown, b.Wood) {
				w.out.Unknown = append(w.out.Unknown, b.Wood)
			}
			continue
		}
		w.out.Boards = append(w.out.Boards, Board{b.ID, t.width.times(b.Width).change(), t.thickness.times(b.Thickness).change()})
	}
}

// board returns a board of the module by its id, and how its wood moves.
func (w *work) board(id string) (*board.Board, *timber, bool) {
	for i := range w.of.Boards {
		if b := &w.of.Boards[i]; b.ID == id {
			t := w.timber(b)
			return b, t, t.known
		}
	}
	return nil, nil, false
}

func (w *work) openMitres() {
	for i := range w.of.Corners {
		c := &w.of.Corners[i]
		if c.Number == 0 {
			continue // the end of a divider
		}
		a, ta, okA := w.board(c.First)
		b, tb, okB := w.board(c.Second)
		if !okA || !okB || !mitred(c, a.Thickness, b.Thickness) {
			continue
		}
		m := Mitre{Corner: c.Number}
		for season := range seasons {
			e := [2]float64{ta.thickness.times(a.Thickness)[season], tb.thickness.times(b.Thickness)[season]}
			open := Opening(c, [2]unit.Length{a.Thickness, b.Thickness}, e)
			m.Heel, m.Toe = max(m.Heel, unit.Nearest(-open)), max(m.Toe, unit.Nearest(open))
		}
		w.out.Mitres = append(w.out.Mitres, m)
	}
}

// mitred reports whether two boards of a corner meet in a plane from the inner to the outer
// arris. Where one runs through, each leads by its own slant only, t cot θ; in a mitre by
// the other's t/sin θ more.
func mitred(c *board.Corner, first, second unit.Length) bool {
	sin, cos := c.Interior.SinCos()
	return float64(c.Lead[0].MM()*sin)-float64(first.MM()*cos) > second.MM()/2
}

// Opening returns how far the mitre of a corner opens, in millimetres, as its two boards,
// t thick, grow by e millimetres in thickness: more than 0 at the toe, less at the heel. See
// the package comment.
func Opening(c *board.Corner, t [2]unit.Length, e [2]float64) float64 {
	sin, _ := c.Interior.SinCos()
	a := [2]float64{c.Lead[0].MM(), c.Lead[1].MM()}
	k := float64(e[0]*a[0]) + float64(e[1]*a[1]) + float64(float64(e[0]*e[1])*sin)
	longer := max(math.Hypot(t[0].MM()+e[0], a[0]), math.Hypot(t[1].MM()+e[1], a[1]))
	return k / longer
}

func (w *work) freeDividers() {
	for i := range w.of.Boards {
		d := &w.of.Boards[i]
		t := w.timber(d)
		if d.Role != board.Divider || !t.known {
			continue
		}
		if f, ok := w.free(d, t); ok {
			w.out.Dividers = append(w.out.Dividers, f)
		}
	}
}

// free returns the way that a divider needs, and whether it has a housing.
func (w *work) free(d *board.Board, t *timber) (out Divider, housed bool) {
	out = Divider{ID: d.ID, Side: t.thickness.times(d.Thickness).change()}
	for i := range w.of.Corners {
		c := &w.of.Corners[i]
		if c.Number != 0 || c.Second != d.ID {
			continue
		}
		b, of, ok := w.board(c.First)
		if !ok {
			continue
		}
		deep := housing(b, d.ID)
		housed = housed || deep > 0
		out.Ends += floor(b, of, deep, c.Interior)
		out.Front = max(out.Front, parting(t.widths, of.widths, d.Width))
	}
	return out, housed
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

// floor returns how far the floor of a housing, deep into a board that grows about its
// middle, comes towards the divider, along it.
func floor(b *board.Board, t *timber, deep unit.Length, interior unit.Angle) unit.Length {
	e := max(t.thickness[dry], t.thickness[damp], 0) * max(b.Thickness.MM()/2-deep.MM(), 0)
	sin, _ := interior.SinCos()
	return unit.Nearest(e / sin)
}

// parting returns the farthest that two front edges part in one season, for all ways in which
// the two boards may be sawn.
func parting(a, b []pair, size unit.Length) unit.Length {
	most := 0.0
	for _, x := range a {
		for _, y := range b {
			most = max(most, math.Abs(x[dry]-y[dry]), math.Abs(x[damp]-y[damp]))
		}
	}
	return unit.Nearest(most * size.MM())
}
