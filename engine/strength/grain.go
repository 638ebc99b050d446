package strength

// Wood torn across its grain. Stiffness there is a fourteenth of that along the grain, and
// strength a twentieth or less, and no grading rule allows any in sawn wood (NDS 2018,
// 3.8.2: to be avoided or reinforced). EN 338 gives f_t,90,k = 0.6 MPa to all hardwood
// classes; for a lasting load that is 0.6 k_mod / γ_M.

// tensionAcross is f_t,90,k of the hardwood classes of EN 338, MPa.
const tensionAcross = 0.6

// TensionAcross returns the design strength across the grain for a lasting load raised by
// [LoadFactorEN].
func TensionAcross() float64 { return tensionAcross * KmodPermanent / GammaM }

// TensionAcrossBriefly returns the same for a hand's load of a moment, as it is: a third of
// the species' mean for clear wood (our assumption), or by EN 1995-1-1 with the volume of
// the strip that is torn (k_vol = (0.01 m³ / V)^0.2, 6.4.3; memory), whichever is less.
// mean is 0 where no figure is printed; then only EN's counts.
func TensionAcrossBriefly(mean, volume float64) float64 {
	en := tensionAcross * KmodInstant / GammaM * power(0.01*1e9/volume, 0.2)
	if mean == 0 {
		return en
	}
	return min(en, mean/3)
}

// A Strip is the wood of a board that carries, across the grain, what stands in front of a
// rod's tip or of a groove: a cantilever from there to the front edge.
type Strip struct {
	Out    float64 // c, from the root of the strip to the front edge
	Left   float64 // thickness left at the root
	Rod    float64 // diameter of the rod at the root; 0 at a groove
	Groove bool
	Room   float64 // wood along the board that can help: to the ends, and half way to the next rod
	Rib    bool    // a mitred upright stands within 100 mm
}

// How the strip spreads a load along the grain: by 1.1 c beyond a rod, by 1.8 c in front of a
// groove, whose thin wood is softer than what is in front of it, but never over more than
// 0.65 of the wood there; and a rib within 100 mm takes 0.4 of it. A plate program holds
// these against orthotropic plates of all sizes, and finds the rule between 0.9 of its stress
// and twice that; see testdata. Our figures.
const (
	spreadAtRod    = 1.1
	spreadAtGroove = 1.8
	ribTakes       = 0.4
	roomPart       = 0.65
	RibReach       = 100
)

// HandPart is the part of the rule's stress that a load at one place of the front edge has,
// over a rod: 72 plates had 0.25 to 0.81 of it, since it spreads wider. Our figure.
const HandPart = 0.8

// Spread returns the part of the strip's length by which it widens.
func (s Strip) Spread() float64 {
	if s.Groove {
		return spreadAtGroove
	}
	return spreadAtRod
}

// Width returns the breadth b of the strip that resists.
func (s Strip) Width() float64 { return min(s.Rod+s.Spread()*s.Out, roomPart*s.Room) }

// RibLeaves returns the part of the stress that a rib leaves.
func RibLeaves() float64 { return 1 - ribTakes }

// AcrossStrength returns f_t,90,k, before its factors.
func AcrossStrength() float64 { return tensionAcross }

// Stress returns the bending stress across the grain of the moment m about the root:
// 6 m / (b t²).
func (s Strip) Stress(m float64) float64 {
	stress := 6 * m / (s.Width() * s.Left * s.Left)
	if s.Rib {
		stress *= 1 - ribTakes
	}
	return stress
}
