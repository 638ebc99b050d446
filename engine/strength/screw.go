package strength

import "math"

// Withdrawal returns the allowable pull of a wood screw in side grain per mm of thread, for
// the specific gravity g and the screw's nominal diameter, at C_D = 1: W = 2850 G² D lb/in
// (NDS 2018, 12.2.2). In end grain it is 0 (12.2.2.3).
func Withdrawal(g, diameter float64) float64 {
	return 2850 * g * g * (diameter / inch) * pound / inch
}

// LagWithdrawal is Withdrawal for a lag screw: W = 1800 G^1.5 D^0.75 lb/in (NDS 2018, 12.2-1).
func LagWithdrawal(g, diameter float64) float64 {
	d := math.Sqrt(diameter / inch)
	return 1800 * g * math.Sqrt(g) * d * math.Sqrt(d) * pound / inch
}

// UltimateWithdrawal returns the pull at which a wood screw comes out of side grain, per mm
// of thread: p = 108.25 G² D L (Wood Handbook, FPL-GTR-282 (2021), eq. 8-10).
func UltimateWithdrawal(g, diameter float64) float64 { return 108.25 * g * g * diameter }

// LeastPenetration returns how deep a wood screw must sit in the wood to count, tip
// included: 6 D (NDS 2018, 12.1.5.6).
func LeastPenetration(diameter float64) float64 { return 6 * diameter }

// EdgeDistance returns how far from a stud's edge a screw or rod in it must stand whose load
// runs along the stud: 1.5 D (NDS 2005, table 11.5.1A, for dowels of 1/4 in and more; we ask
// it of thinner screws, too).
func EdgeDistance(diameter float64) float64 { return 1.5 * diameter }

// Bearing strength of wood under a dowel (NDS 2018, table 12.3.3; Wood Handbook eq. 8-3).

// thinDowel is the diameter below which the direction of the grain does not matter.
const thinDowel = inch / 4

// BearingAlong returns F_e along the grain: 11200 G psi.
func BearingAlong(g, diameter float64) float64 {
	if diameter < thinDowel {
		return bearingThin(g)
	}
	return 11200 * g * psi
}

// BearingAcross returns F_e across the grain: 6100 G^1.45 / √D psi, D in inches.
func BearingAcross(g, diameter float64) float64 {
	if diameter < thinDowel {
		return bearingThin(g)
	}
	return 6100 * power(g, 1.45) / math.Sqrt(diameter/inch) * psi
}

// bearingThin returns F_e of dowels under 1/4 in: 16600 G^1.84 psi.
func bearingThin(g float64) float64 { return 16600 * power(g, 1.84) * psi }

// Hankinson returns a strength at an angle to the grain whose sine squared is sin2, from
// those along and across (Wood Handbook eq. 8-16).
func Hankinson(along, across, sin2 float64) float64 {
	return along * across / (along*sin2 + across*(1-sin2))
}

// power returns x to the power p, for x from 0.01 to 10, the same on every machine:
// math.Pow is written in assembly on some. x^p = 2^(p log2 x), with both by series to the
// last bit or two.
func power(x, p float64) float64 {
	fraction, exponent := math.Frexp(x) // x = fraction 2^exponent, fraction in [½, 1)
	y := p * (float64(exponent)*math.Ln2 + logarithm(fraction))
	whole := math.Floor(y/math.Ln2 + 0.5)
	return math.Ldexp(exponential(y-whole*math.Ln2), int(whole))
}

// logarithm returns ln x for x in [½, 1): 2 artanh((x−1)/(x+1)) by its series.
func logarithm(x float64) float64 {
	t := (x - 1) / (x + 1)
	term, sum := t, t
	for n := 3.0; n < 60; n += 2 {
		term = float64(term * t * t)
		sum += float64(term / n)
	}
	return 2 * sum
}

// exponential returns e^x for |x| ≤ 0.35 by its series.
func exponential(x float64) float64 {
	term, sum := 1.0, 1.0
	for n := 1.0; n < 20; n++ {
		term = float64(term*x) / n
		sum += term
	}
	return sum
}

// Combined returns the allowable load of a wood screw pulled and pushed aside at once, from
// the allowable pull and the allowable push and the angle of the load to the wood's surface
// (NDS 2018, 12.4.2; memory): W Z / (W cos α + Z sin α). As parts of what each alone bears
// the rule is their sum.
func Combined(pull, push, cos, sin float64) float64 {
	return pull * push / (pull*cos + push*sin)
}

// Slip returns the stiffness of a screw against being pulled out, N/mm: 780 d^0.2 l^0.4, d
// its nominal diameter and l the thread in the wood. Technical approvals of self-tapping
// screws have it so (memory); it is an assumption for droop, never for strength.
func Slip(diameter, thread float64) float64 {
	return 780 * power(diameter/10, 0.2) * power(10, 0.2) * power(thread/100, 0.4) * power(10, 0.8)
}
