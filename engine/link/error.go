package link

import (
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// An Error says why a link was not opened or made, in words under Key.
type Error struct {
	Key  string
	Args []words.Arg
}

// Error returns the words.
func (e *Error) Error() string { return words.Text(e.Key, e.Args, unit.Style{}) }

// Keys of the reasons.
const (
	Incomplete   = "link.incomplete"    // cut, altered, or no link at all
	NewerVersion = "link.newer-version" // made by a version of the program that this one does not know
	OtherKind    = "link.other-kind"    // not a plan
	TooLarge     = "link.too-large"     // past what a link may carry
)

func incomplete() error { return &Error{Key: Incomplete} }
