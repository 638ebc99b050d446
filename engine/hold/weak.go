package hold

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/unit"
)

// A groove is a long cut in a face of a board: in front of it the wood hangs on what is
// left under it.
type groove struct {
	span Span
	back float64 // its side towards the wall, from the wall
	left float64 // thickness under it
}

// longGroove is the length, mm, from which a cut in a face is a groove to the wood in front
// of it, rather than a hole.
const longGroove = 60

// A mitre is a corner as far as strength goes: the moment in it is that at an end of a
// member.
type mitre struct {
	corner *board.Corner
	member int
	end    bool
	width  float64 // of the narrower board
	length float64 // along the cut, mm

	thickness float64 // of the thinner board
	wood      string  // of both; empty where they differ
}

// weak notes the places where boards are weakest.
func (f *model) weak() {
	for i := range f.boards {
		b := &f.boards[i]
		for _, s := range b.stations {
			b.least = append(b.least, sectionAt(b.board, unit.Nearest(s.u)))
		}
		for k := range b.board.Features {
			if g, ok := grooveOf(b.board, &b.board.Features[k], f.hang.Flip); ok {
				b.grooves = append(b.grooves, g)
			}
		}
	}
	for i := range f.of.Corners {
		if m, ok := f.mitre(&f.of.Corners[i]); ok {
			f.mitres = append(f.mitres, m)
		}
	}
}

// grooveOf returns a feature as a groove, and whether it is one. In a module that is flipped
// the board's front is at the wall.
func grooveOf(b *board.Board, f *board.Feature, flip bool) (groove, bool) {
	face := f.Enter == board.FaceA || f.Enter == board.FaceB
	if !face || f.Along.MM() < longGroove || f.Kind == board.Housing {
		return groove{}, false
	}
	u, half := f.Mouth.U.MM(), f.Along.MM()/2
	v := f.Mouth.V
	if flip {
		v = b.Width - v
	}
	return groove{
		span: Span{u - half, u + half},
		back: v.MM() - f.Across.MM()/2,
		left: b.Thickness.MM() - f.Depth.MM(),
	}, true
}

// mitre finds the member whose end is at a corner.
func (f *model) mitre(c *board.Corner) (mitre, bool) {
	a, b := f.find(c.First), f.find(c.Second)
	if a < 0 || b < 0 || c.Number == 0 {
		return mitre{}, false
	}
	one, two := &f.boards[a], &f.boards[b]
	k, end, ok := one.meets(two)
	if !ok {
		return mitre{}, false
	}
	dx, dy := (c.Outer[0] - c.At[0]).MM(), (c.Outer[1] - c.At[1]).MM()
	kind := one.board.Wood
	if two.board.Wood != kind {
		kind = ""
	}
	return mitre{
		wood: kind, thickness: min(one.board.Thickness, two.board.Thickness).MM(),
		corner: c, member: one.members[k], end: end,
		width:  min(one.board.Width, two.board.Width).MM(),
		length: math.Sqrt(sq(dx) + sq(dy)),
	}, true
}

// meets returns which member of a board ends in a station of the other, and which end.
func (b *bar) meets(o *bar) (member int, end, ok bool) {
	for i, s := range b.stations {
		for _, t := range o.stations {
			if s.node != t.node {
				continue
			}
			if i == 0 {
				return 0, false, true
			}
			return i - 1, true, true
		}
	}
	return 0, false, false
}

// ribbed says whether a board stands on, or hangs from, board i within reach of u: it
// stiffens it across its grain.
func (f *model) ribbed(i int, u, reach float64) bool {
	b := &f.boards[i]
	for _, s := range b.stations {
		if math.Abs(s.u-u) > reach {
			continue
		}
		for j := range f.boards {
			if o := &f.boards[j]; j != i && math.Abs(o.along[1]) > levelWithin && o.has(s.node) {
				return true
			}
		}
	}
	return false
}

func (b *bar) has(node int) bool {
	for _, s := range b.stations {
		if s.node == node {
			return true
		}
	}
	return false
}

// tributary returns how much of a shelf's length hangs on the rod: to half way to its
// neighbours, or to the shelf's end.
func (f *model) tributary(r *rod) Span {
	u := r.of.At.U.MM()
	out := Span{0, f.boards[r.bar].board.Length.MM()}
	for i := range f.rods {
		o := &f.rods[i]
		if o.bar != r.bar {
			continue
		}
		switch v := o.of.At.U.MM(); {
		case v < u:
			out.From = max(out.From, (u+v)/2)
		case v > u:
			out.To = min(out.To, (u+v)/2)
		}
	}
	return out
}
