package plan

import (
	"strconv"

	"ledgewright/engine/document"
)

// A migration brings the document of one version to the next.
type migration func(document.Node) (document.Node, error)

// migrations lists the migrations in order: the first brings version 1 to version 2.
// There is one for every version before the present one, and testdata/plans has a
// document of each version that was ever written.
func migrations() []migration { return nil }

// migrate brings the document n from the version of to the one after the last of the
// migrations. A newer document stays as it is.
func migrate(n document.Node, of int, steps []migration) (document.Node, error) {
	for i := of; i <= len(steps); i++ {
		next, err := steps[i-1](n)
		if err != nil {
			return n, err
		}
		name := document.TextNode(format + strconv.Itoa(i+1)).With("schema")
		next = next.Without("schema")
		next.Kids = append([]document.Node{name}, next.Kids...)
		n = next
	}
	return n, nil
}
