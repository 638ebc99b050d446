package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/finding"
	"ledgewright/engine/words"
)

// A remedy may change a member of a member: what feeds a light stands in its power.
func TestFromNestsPoints(t *testing.T) {
	e, err := From(finding.Edit{Do: "set-light", Args: []words.Arg{
		words.Name("light", "l4"), words.Name("power.source", "driver-24-15"), words.Name("power.exit", "end"),
	}})
	require.NoError(t, err)
	require.Equal(t, `{"do":"set-light","light":"l4","power":{"exit":"end","source":"driver-24-15"},"schema":"ledgewright/edit/1"}`, string(Encode(e)))
}
