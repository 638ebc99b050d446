package strength

// LiningCrushes is the pressure, MPa, at which the heel of a plate crushes gypsum board
// (memory).
const LiningCrushes = 2.4

// What of it is allowed: a quarter while it lasts where the board has a hollow behind it, a
// half where it lies on the stud that the plate is screwed to and cannot break through. Our
// assumptions.
const (
	LiningHollow = LiningCrushes / 4
	LiningBacked = LiningCrushes / 2
)

// HeelHeight is how high the strip is, mm, over which the heel of a plate presses. Our
// assumption.
const HeelHeight = 15

// LeastPair is how far apart, mm, two anchors in a hollow wall must be, one above the
// other, to resist turning. Our assumption.
const LeastPair = 60

// PlateScrews returns the pull in each of n screws in a row above the heel of a plate, with
// the moment m at the wall and the lever z from the row down to the heel.
func PlateScrews(m, z float64, n int) float64 { return m / z / float64(n) }
