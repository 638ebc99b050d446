package wood

import "math"

// A board gets wider and thicker as its moisture content goes from M_I to M_F percent, and
// hardly longer: 0.1 to 0.2 % from green to ovendry, taken as nothing. Of a size D across
// the grain,
//
//	ΔD = D C (M_F − M_I)                            both from 6 to 14 %
//	ΔD = D (M_F − M_I)/(30·100/S − 30 + M_I)        otherwise
//
// with the coefficient C or the shrinkage S, green to ovendry in percent, along the growth
// rings (tangential) or across them (radial). Wood Handbook, FPL-GTR-190 (2010), eq. 13-2
// and 13-3; C from its table 13-5, S from tables 4-3 and 4-4. Eq. 13-3 is what a straight
// line of shrinkage from 30 % to 0 (eq. 4-9) gives for the size at M_I.
//
// The rings of a flat-sawn board lie along its width, so its width moves with the tangential
// figure and its thickness with the radial one; a quarter-sawn board the other way about.

// A Sawing says how the growth rings lie in a board.
type Sawing string

// The sawings.
const (
	AnySawing   Sawing = ""        // not known: the greater figure counts, for width and thickness each
	FlatSawn    Sawing = "flat"    // rings along the width
	QuarterSawn Sawing = "quarter" // rings along the thickness
)

// Driest and dampest moisture content for which table 13-5 holds, in percent.
const (
	driestOfTable  = 6
	dampestOfTable = 14
)

// Moved is how much a board of some size has moved: parts of its width and thickness, more
// than 0 where it has swollen.
type Moved struct{ Width, Thickness float64 }

// Move returns how a board moves as its moisture content goes from one to another, in
// percent. It is false where the species has no figures for that. A species without
// coefficients counts as one without figures also where its shrinkage would do: of imported
// woods the two do not agree, by up to two fifths.
func (f *Facts) Move(sawn Sawing, from, to float64) (Moved, bool) {
	from, to = withinFibre(from), withinFibre(to)
	by, radial, tangential := moveWithin, f.CR, f.CT
	if min(from, to) < driestOfTable || max(from, to) > dampestOfTable {
		by, radial, tangential = moveBeyond, f.ShrinkRadial, f.ShrinkTangential
	}
	if !(radial > 0 && tangential > 0 && f.CR > 0) || math.IsNaN(from) || math.IsNaN(to) {
		return Moved{}, false
	}
	width, thickness := tangential, radial
	switch sawn {
	case FlatSawn:
	case QuarterSawn:
		width, thickness = radial, tangential
	default:
		width = max(radial, tangential)
		thickness = width
	}
	return Moved{by(width, from, to), by(thickness, from, to)}, true
}

// moveWithin is eq. 13-2 for a size of 1.
func moveWithin(c, from, to float64) float64 { return c * (to - from) }

// moveBeyond is eq. 13-3 for a size of 1.
func moveBeyond(shrinkage, from, to float64) float64 {
	return (to - from) / (fibreSaturation*100/shrinkage - fibreSaturation + from)
}

// Coefficient returns what eq. 13-3 makes of a shrinkage at 10 % of moisture, for each
// percent: (S/3000)/(1 − S/150). It gives the printed coefficients of hardwoods, and not
// those of imported woods nor of the oaks, which the table has as commercial groups.
func Coefficient(shrinkage float64) float64 { return shrinkage / 3000 / (1 - shrinkage/150) }

// withinFibre holds a moisture content to what moves wood: 0 to 30 %.
func withinFibre(mc float64) float64 { return min(max(mc, 0), fibreSaturation) }
