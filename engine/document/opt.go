package document

// Opt is a value that may be missing. A document leaves the member out when the
// value is missing, and a missing fact is never replaced by a guess.
type Opt[T any] struct {
	Value T
	Known bool
}

// Some returns a known value.
func Some[T any](v T) Opt[T] { return Opt[T]{Value: v, Known: true} }

// Or returns the value, or v when it is missing.
func (o Opt[T]) Or(v T) T {
	if o.Known {
		return o.Value
	}
	return v
}

// Extra keeps the members of an object that this version does not know, as their
// JSON text in the order of their keys, so that they survive a round trip.
type Extra []Member

// A Member is one member of a JSON object.
type Member struct {
	Key   string
	Value string // compact JSON text
}
