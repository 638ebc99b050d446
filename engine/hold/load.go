package hold

import (
	"math"

	"ledgewright/engine/beam"
)

// Gravity is the standard acceleration of free fall, m/s², exact by definition (CGPM 1901):
// what a kilogram weighs in N.
const Gravity = 9.80665

// Loads that a shelf meets besides what is put on it (see the table of factors).
const (
	// BooksAt is how far from the wall books stand, as a part of the shelf's depth: flush
	// with the front edge, 3/4 as deep as the shelf. Common practice.
	BooksAt = 0.625
	// BooksDeep is how much of the depth they take then.
	BooksDeep = 2 * (1 - BooksAt)
	// Hand is a hand on the front edge, or an armful dropped on it, N. Our assumption.
	Hand = 300.0
	// Knock is a push along the wall, or upwards, N. Our assumption.
	Knock = 100.0
	// Child is a child's weight on the front edge, N: told in words, never rated.
	Child = 500.0
)

// A Span is a stretch of a board that carries things, as places u along it, mm.
type Span struct{ From, To float64 }

func (s Span) length() float64 { return s.To - s.From }

// A shelf is a level board with room on it.
type shelf struct {
	bar   int
	spans []Span
}

// levelWithin is the sine of 2°, within which a board counts as level.
const levelWithin = 0.0349

// leastSpan is the shortest stretch, mm, that counts as a shelf.
const leastSpan = 30

// shelves lists the level boards that something can stand on, in the order of the boards.
func (f *model) shelves() (out []shelf) {
	for i := range f.boards {
		b := &f.boards[i]
		if math.Abs(b.along[1]) > levelWithin {
			continue
		}
		if spans := f.clear(i); len(spans) > 0 {
			out = append(out, shelf{i, spans})
		}
	}
	return out
}

// clear returns the stretches of a level board between the boards that rise from it.
func (f *model) clear(i int) (out []Span) {
	b := &f.boards[i]
	from := 0.0
	for _, s := range b.stations {
		half, rises := f.rising(i, s.node)
		if !rises {
			continue
		}
		if s.u-half-from >= leastSpan {
			out = append(out, Span{from, s.u - half})
		}
		from = s.u + half
	}
	if to := b.board.Length.MM(); to-from >= leastSpan {
		out = append(out, Span{from, to})
	}
	return out
}

// rising says whether another board rises from a node of board i, and half of what it takes
// of its length.
func (f *model) rising(i, node int) (half float64, rises bool) {
	for j := range f.boards {
		if o := &f.boards[j]; j != i && o.rises(node, f.frame.Nodes) {
			half = max(half, o.board.Thickness.MM()/2/max(math.Abs(o.along[1]), levelWithin))
			rises = true
		}
	}
	return half, rises
}

// rises says whether the board has the node and goes up from it.
func (b *bar) rises(node int, nodes []beam.Node) bool {
	if math.Abs(b.along[1]) <= levelWithin {
		return false
	}
	for _, s := range b.stations {
		if s.node == node {
			first, last := nodes[b.stations[0].node].At[1], nodes[b.stations[len(b.stations)-1].node].At[1]
			return max(first, last) > nodes[node].At[1]+nearStation
		}
	}
	return false
}

// weight is the weight of the wood, where it is.
func (f *model) weight() (c beam.Case) {
	for i := range f.boards {
		b := &f.boards[i]
		span := Span{b.stations[0].u, b.stations[len(b.stations)-1].u}
		force := float64(b.wood.DensityAt(f.moisture)) * float64(b.board.Volume()) * Gravity
		f.spread(&c, b, span, beam.Vec{0, -force}, 0)
	}
	return c
}

// spread spreads a force evenly over a stretch of a board, at the distance ahead of its
// centre line. What lies beyond the centre line's ends acts at the nearest end.
func (f *model) spread(c *beam.Case, b *bar, span Span, force beam.Vec, ahead float64) {
	per := 1 / span.length()
	q := beam.Vec{force[0] * per, force[1] * per, force[2] * per}
	off := beam.Vec{0, 0, ahead}
	for k, m := range b.members {
		a, e := b.stations[k].u, b.stations[k+1].u
		from, to := max(span.From, a), min(span.To, e)
		if to > from {
			c.Lines = append(c.Lines, beam.Line{Member: m, From: from - a, To: to - a, Start: q, Finish: q, Off: off})
		}
	}
	first, last := b.stations[0].u, b.stations[len(b.stations)-1].u
	f.beyond(c, b, 0, Span{span.From, min(span.To, first)}, q, ahead)
	f.beyond(c, b, len(b.stations)-1, Span{max(span.From, last), span.To}, q, ahead)
}

// beyond puts what lies beyond an end of the centre line on its station, with its lever.
func (f *model) beyond(c *beam.Case, b *bar, end int, part Span, q beam.Vec, ahead float64) {
	if part.length() <= 0 {
		return
	}
	s := b.stations[end]
	mid := (part.From+part.To)/2 - s.u
	force := beam.Vec{q[0] * part.length(), q[1] * part.length(), q[2] * part.length()}
	lever := beam.Vec{b.along[0] * mid, b.along[1] * mid, ahead}
	c.Nodes = append(c.Nodes, beam.NodeLoad{Node: s.node, Wrench: beam.Wrench{Force: force, Moment: crossed(lever, force)}})
}

func crossed(a, b beam.Vec) beam.Vec {
	return beam.Vec{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}

// things is one kilogram spread evenly over the stretches of a shelf.
func (f *model) things(s shelf, spans []Span) (c beam.Case) {
	total := 0.0
	for _, p := range spans {
		total += p.length()
	}
	b := &f.boards[s.bar]
	for _, p := range spans {
		f.spread(&c, b, p, beam.Vec{0, -Gravity * p.length() / total}, (BooksAt-0.5)*b.board.Width.MM())
	}
	return c
}

// push is a force at u of a board, at its front edge.
func (f *model) push(i int, u float64, force beam.Vec) (c beam.Case) {
	b := &f.boards[i]
	ahead := b.board.Width.MM() / 2
	for k, m := range b.members {
		if a, e := b.stations[k].u, b.stations[k+1].u; u >= a && u <= e {
			c.Points = []beam.Point{{Member: m, At: u - a, Off: beam.Vec{0, 0, ahead}, Wrench: beam.Wrench{Force: force}}}
			return c
		}
	}
	end := 0
	if u > b.stations[0].u {
		end = len(b.stations) - 1
	}
	s := b.stations[end]
	lever := beam.Vec{b.along[0] * (u - s.u), b.along[1] * (u - s.u), ahead}
	c.Nodes = []beam.NodeLoad{{Node: s.node, Wrench: beam.Wrench{Force: force, Moment: crossed(lever, force)}}}
	return c
}

// half returns the worse half of a shelf: the left or the right half of its length.
func (s shelf) half(right bool) (out []Span) {
	total := 0.0
	for _, p := range s.spans {
		total += p.length()
	}
	left := total / 2
	for _, p := range s.spans {
		part := min(left, p.length())
		left -= part
		cut := p.From + part
		switch {
		case right && cut < p.To:
			out = append(out, Span{cut, p.To})
		case !right && part > 0:
			out = append(out, Span{p.From, cut})
		}
	}
	return out
}
