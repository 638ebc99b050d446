package strength

// LiningCrushing is the pressure, MPa, that the heel of a plate may put on gypsum board
// while it lasts: 2.4 as the board crushes, over 4 (memory).
const LiningCrushing = 0.6

// HeelHeight is how high the strip is, mm, over which the heel of a plate presses. Our
// assumption.
const HeelHeight = 15

// LeastPair is how far apart, mm, two anchors in a hollow wall must be, one above the
// other, to resist turning. Our assumption.
const LeastPair = 60

// PlateScrews returns the pull in each of n screws in a row above the heel of a plate, with
// the moment m at the wall and the lever z from the row down to the heel.
func PlateScrews(m, z float64, n int) float64 { return m / z / float64(n) }
