// Package strength holds the rules for what wood, steel, screws and walls bear: one
// function a rule, in N, mm and N/mm² (MPa), each with the place where it is published, or
// the words "our assumption". It knows no shelves: package hold asks it.
//
// Where two families of rules meet, each keeps its own factors: those of the NDS and of
// steel give allowable values for loads as they are, those of EN 1995 give design values
// for loads raised by [LoadFactorEN].
package strength

// Conversions that are exact by definition.
const (
	inch  = 25.4            // mm
	pound = 4.4482216152605 // N: pound-force
	psi   = pound / (inch * inch)
)

// DurationNDS are the factors C_D of the NDS by how long the load lasts (NDS 2018, table
// 2.3.2; from memory). They raise strength, never stiffness.
type DurationNDS float64

// The durations.
const (
	Permanent DurationNDS = 0.9
	TenYears  DurationNDS = 1.0
	Minutes   DurationNDS = 1.6
)

// Factors of EN 1995-1-1 for solid wood indoors: k_mod of table 3.1 (as printed in the ICE
// Manual of Structural Design, table 19.9), γ_M of table 2.3 and γ_G of EN 1990 (memory).
const (
	KmodPermanent = 0.60
	KmodInstant   = 1.10
	GammaM        = 1.3
	LoadFactorEN  = 1.35
)

// SteelFactor divides the yield stress of steel: Ω_b of AISC 360, chapter F (memory).
const SteelFactor = 1.67

// HollowAnchorFactor divides the ultimate load, as tested, of an anchor in a hollow wall.
// Common practice: at least 4.
const HollowAnchorFactor = 4

// MasonryTestFactor divides a pull that a fixing in unknown masonry took at the site for
// five minutes without moving. Our assumption.
const MasonryTestFactor = 2
