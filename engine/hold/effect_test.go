package hold

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/beam"
)

// Members without loads read by the closed formula are as those that are integrated.
func TestBareMembers(t *testing.T) {
	r := respond(t, "plate-back-12")
	f := r.model
	system, err := f.frame.Ready()
	require.NoError(t, err)
	touch := f.touches[3]
	force := beam.Vec{3, -7, 5}
	answers, err := system.Solve(beam.Case{Nodes: []beam.NodeLoad{{Node: touch.node, Wrench: beam.Wrench{Force: force, Moment: beam.Vec{100, 200, 300}}}}})
	require.NoError(t, err)
	quick, slow := f.read(&answers[0], true), f.read(&answers[0], false)
	most := 0.0
	for i := range slow.Members {
		most = max(most, abs(slow.Members[i].Sag))
		require.InDelta(t, slow.Members[i].Middle, quick.Members[i].Middle, 1e-6)
		require.InDelta(t, slow.Members[i].Sag, quick.Members[i].Sag, 1e-9)
	}
	require.Greater(t, most, 1e-7)
}
