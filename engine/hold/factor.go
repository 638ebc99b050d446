package hold

// A Basis says how well a figure is known.
type Basis string

// The bases.
const (
	Read       Basis = "read"       // seen in print
	Memory     Basis = "memory"     // known, not seen
	Assumption Basis = "assumption" // ours
)
