package hold

import (
	"ledgewright/engine/beam"
	"ledgewright/engine/board"
)

// A plate is the metal at a rod's foot with its screws, in the wall's axes about the rod.
type plate struct {
	half   [2]float64 // half its extent along x and y
	screws []plateScrew
}

// A plateScrew is one screw of a plate, from the rod's axis, right and up.
type plateScrew struct {
	of   *board.Screw
	x, y float64
}

// plate returns the plate of a rod. A bar's plate is shared by its rods: each has the screws
// that are nearer to it than to another.
func (f *model) plate(r *rod) (p plate) {
	b := &f.boards[r.bar]
	across := beam.Vec{b.along[1], -b.along[0], 0} // direction of w, right-handed
	if f.hang.Flip {
		across = beam.Vec{-across[0], -across[1], 0}
	}
	u, w := r.fixing.Plate.AlongU.MM()/2, r.fixing.Plate.AlongW.MM()/2
	for k := range p.half {
		p.half[k] = abs(u*b.along[k]) + abs(w*across[k])
	}
	for i := range r.fixing.Screws {
		s := &r.fixing.Screws[i]
		if s.Rod || !r.nearestTo(s) {
			continue
		}
		du := (r.fixing.At.U + s.DU - r.of.At.U).MM()
		dw := (r.fixing.At.W + s.DW - r.of.At.W).MM()
		p.screws = append(p.screws, plateScrew{s, du*b.along[0] + dw*across[0], du*b.along[1] + dw*across[1]})
	}
	return p
}

// nearestTo says whether a screw belongs to the rod and not to another of its bar.
func (r *rod) nearestTo(s *board.Screw) bool {
	u := r.fixing.At.U + s.DU
	mine := (u - r.of.At.U).Abs()
	for i := range r.fixing.Rods {
		other := &r.fixing.Rods[i]
		if d := (u - other.At.U).Abs(); d < mine || d == mine && other.At.U < r.of.At.U {
			return false
		}
	}
	return true
}

// leverX returns how far a screw is above the heel about which a load in front turns the
// plate: its lower edge.
func (p *plate) leverX(s plateScrew) float64 { return max(s.y+p.half[1], 0) }

// leverY is the same for turning about the upright: from the nearer side edge, whichever way
// it turns the weaker one.
func (p *plate) leverY(s plateScrew) float64 { return max(p.half[0]-abs(s.x), 0) }

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// threadIn returns how much of a screw's thread is in the structure behind the lining, mm. A
// plate's own thickness counts as gap in the rules for push, here as nothing.
func threadIn(s *board.Screw, lining float64) float64 {
	return max(s.Length.MM()-lining, 0)
}
