package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/plan"
)

// FuzzEdit asks of any line: nothing panics; what is read as an edit is written and read
// back as the same edit; what is applied gives a plan that can be read back as the same
// plan; and the plan that was given stays as it was.
func FuzzEdit(f *testing.F) {
	for _, line := range samples(f) {
		f.Add([]byte(line))
	}
	p := bench(f)
	before := text(f, p)
	f.Fuzz(func(t *testing.T, line []byte) {
		e, err := Decode(line)
		if err != nil {
			return
		}
		out := Encode(e)
		require.NotNil(t, out)
		again, err := Decode(out)
		require.NoError(t, err, string(out))
		require.Equal(t, e, again)

		next, name, err := Apply(p, e)
		require.Equal(t, before, text(t, p))
		if err != nil {
			return
		}
		require.NotEmpty(t, name.Key)
		after := text(t, next)
		back, err := plan.Decode([]byte(after))
		require.NoError(t, err, "%s makes a plan that cannot be read", line)
		require.Equal(t, after, text(t, back))
	})
}
