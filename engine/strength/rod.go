package strength

import "math"

// RodSection returns S = π d³ / 32, mm³, of a round bar.
func RodSection(d float64) float64 { return math.Pi * d * d * d / 32 }

// PlasticRodSection returns Z = d³ / 6 of a round bar.
func PlasticRodSection(d float64) float64 { return d * d * d / 6 }

// RodBending returns the allowable bending stress of a bar whose steel yields at the stress
// yield: F_y / 1.67 on the elastic section, so that it stays straight (AISC 360, F11; the
// standard allows more on the plastic section).
func RodBending(yield float64) float64 { return yield / SteelFactor }

// Yield stress of bars, where nobody says what a bar is made of: EN 10025 S235 up to 16 mm,
// the weakest that is sold as mild steel.
const PlainSteel = 235

// Moduli of steel, N/mm² (EN 1993-1-1, 3.2.6).
const (
	SteelE = 210000
	SteelG = 81000
)

// BoreFullDepth returns the greatest force per mm that a stiff rod in a bore of depth e
// passes to the wood, with the force v at the mouth and the moment m there: (4V + 6M/e)/e.
// Equilibrium of a rigid pin on an even bed.
func BoreFullDepth(v, m, e float64) float64 { return (4*v + 6*m/e) / e }

// BoreContact returns the greatest force per mm between a rod and the roof of its bore when
// the load v comes from above at the distance at from the mouth, and how long the contact
// is. The wood lies on the rod and nothing holds it down: the pressure is a trapezium over
// the depth e while at stands in its middle third, else a triangle three times as long as
// from the load to the nearer end. A load beyond the rod has no contact of one sign:
// contact is 0 then and the force is that of [BoreFullDepth].
func BoreContact(v, at, e float64) (force, contact float64) {
	off := at - e/2
	switch {
	case math.Abs(off) <= e/6:
		return v / e * (1 + 6*math.Abs(off)/e), e
	case at > 0 && at < e:
		contact = 3 * min(at, e-at)
		return 2 * v / contact, contact
	}
	return BoreFullDepth(v, v*math.Abs(at), e), 0
}

// BoreBearing returns the allowable pressure of a lasting load in a bore across the grain,
// for loads as they are: the lesser of
//
//   - F_e⊥ / 4.5: the bearing strength of the NDS over its reduction 4 K at 90° (5), times
//     C_D 0.9;
//   - f_c,90,k k_mod / γ_M / 1.35 of EN 1995-1-1 with f_c,90,k of EN 338 (2016) for hardwoods
//     (memory). An older table prints 8.8 for D40; the lower counts.
func BoreBearing(g, diameter float64) float64 {
	nds := BearingAcross(g, diameter) / 4.5
	en := crushingAcross * KmodPermanent / GammaM / LoadFactorEN
	return min(nds, en)
}

// BoreBearingAlong returns the same for a rod in a board that stands, which pushes along its
// grain: F_e∥ over 4 K at 0° (4), times C_D 0.9.
func BoreBearingAlong(g, diameter float64) float64 {
	return BearingAlong(g, diameter) / 4 * float64(Permanent)
}

// EndDistance is how far from the end of a board, mm, a rod that pushes along the grain must
// be not to split it: 4 D, for compression (NDS 2018, table 12.5.1A; memory).
func EndDistance(diameter float64) float64 { return 4 * diameter }

// crushingAcross is f_c,90,k of the hardwood classes D30 to D40 of EN 338 (2016), MPa.
const crushingAcross = 5.5

// SplitFromBore returns the design force at which a rod splits a board along the grain from
// its bore, for a lasting load raised by [LoadFactorEN]: F90,R = 14 b √(he / (1 − he/h))
// k_mod/γ_M (EN 1995-1-1, 8.1.4, written for softwood; hardwood bears more). b is the length
// of rod that bears, he from the bore's axis to the face that is pushed at, h the thickness.
func SplitFromBore(b, he, h float64) float64 {
	return 14 * b * math.Sqrt(he/(1-he/h)) * KmodPermanent / GammaM
}
