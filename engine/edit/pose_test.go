package edit

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/document"
	"ledgewright/engine/unit"
)

func TestTurnsAndFlipsComeBack(t *testing.T) {
	before := bench(t)
	rapid.Check(t, func(r *rapid.T) {
		start := unit.Angle(rapid.Int64Range(0, int64(unit.FullTurn)-1).Draw(r, "turn"))
		p := applied(t, before)
		p, _, err := Apply(p, Turn{Arrangement: "a1", Module: "m1", To: document.Some(start)})
		require.NoError(t, err)
		want := text(t, p)
		q := p
		for range 4 {
			q, _, err = Apply(q, Turn{Arrangement: "a1", Module: "m1", By: unit.QuarterTurn})
			require.NoError(t, err)
		}
		require.Equal(t, want, text(t, q), "four quarter turns")
		for range 2 {
			q, _, err = Apply(q, Flip{Arrangement: "a1", Module: "m1"})
			require.NoError(t, err)
		}
		require.Equal(t, want, text(t, q), "two flips")
	})
}

func TestFlipIsHalfATurnAboutTheUprightAxis(t *testing.T) {
	p := applied(t, bench(t), `{"do":"flip","arrangement":"a1","module":"m1"}`)
	o, ok := poseOf(p, "a1", "m1")
	require.True(t, ok)
	require.True(t, o.Flip)
	require.Equal(t, unit.QuarterTurn, o.Turn, "−270°")
}
