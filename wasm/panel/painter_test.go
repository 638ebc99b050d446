package panel

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
	"ledgewright/wasm/app"
)

// A page whose large parts follow one by one is in the end the page that is made at once;
// until then picture and verdicts are new already, and no more than one part is made anew
// at a time.
func TestPartsFollowOneByOne(t *testing.T) {
	for _, job := range []app.Job{app.Survey, app.Arrange, app.Make, app.Hang, app.Agree} {
		s := steps(opened(t, "study"), app.Go{Job: job}, app.Choose{Module: "m1"})
		var p Painter
		_, whole := p.Part(&s, 0)
		require.True(t, whole, "a page of another job is whole")
		move := edit.Move{Arrangement: s.Arrangement, Module: "m1", DX: 20 * unit.Millimetre}
		s = steps(s, app.Do{Edits: []edit.Edit{move}})
		part, whole := p.Part(&s, 0)
		require.False(t, whole)
		for _, key := range []string{"picture", "ledge"} {
			want, shown := nodeIn(Page(&s), key)
			now, ok := nodeIn(part, key)
			require.Equal(t, shown, ok)
			require.Equal(t, want, now, key)
		}
		turns := 0
		for ; !whole; turns++ {
			require.Less(t, turns, 9)
			part, whole = p.Part(&s, 1)
		}
		require.Equal(t, Write(Page(&s)), Write(part))
		if job == app.Arrange {
			require.Greater(t, turns, 3)
		}
	}
}
