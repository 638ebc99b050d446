package strength

// A mitred corner of boards glued edge to edge has no published strength: no standard
// covers it, and the few tests that are printed were made on frames and on sheet goods. What
// is here is our figure, and is to be called that wherever it is shown.

// MitreStress returns the bending stress on the mitre plane of width b and length l along
// the cut, with the moment m in the corner: 6 m / (b l²).
func MitreStress(m, b, l float64) float64 { return 6 * m / (b * l * l) }

// Stress that we claim for a mitre, MPa: glue alone, and with a spline or tenons glued over
// 60 % of the width and more. Small tests broke at 4 to 5. Keys add nothing to the claim.
const (
	MitrePlain   = 1.0
	MitreSplined = 1.3
)

// MitreAllowed returns the stress that we claim for a mitre.
func MitreAllowed(splined bool) float64 {
	if splined {
		return MitreSplined
	}
	return MitrePlain
}

// ShopTestFactor divides the least moment of a shop's own tests of its corner.
const ShopTestFactor = 2.5

// ShopTestLeast is how many corners such a test must have broken to count.
const ShopTestLeast = 5
