package link

import (
	"hash/crc32"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
)

// FuzzLink asks of any bytes, read as a link and read as columns: nothing panics, what
// opens is a plan, and a plan that opens comes back from a link of its own.
func FuzzLink(f *testing.F) {
	for _, p := range samples(f) {
		code, err := EncodePlan(p, Options{Names: true})
		require.NoError(f, err)
		f.Add([]byte(code))
		n, err := document.Parse([]byte(text(f, p)))
		require.NoError(f, err)
		f.Add(pack(planShape(), n, p.Units.Step))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if p, err := DecodePlan(string(data)); err == nil {
			comesBack(t, p)
		}
		text, err := canonical(data)
		if err != nil || len(text) > mostBytes {
			return
		}
		code, ok := seal(envelope{KindPlan, versionColumns, crc32.ChecksumIEEE(text), deflated(data)})
		require.True(t, ok)
		if p, err := DecodePlan(code); err == nil {
			comesBack(t, p)
		}
	})
}

func comesBack(t *testing.T, p plan.Plan) {
	if len(text(t, p)) > mostBytes {
		return // defaults that were left out have made it too long
	}
	code, err := EncodePlan(p, Options{Names: true})
	require.NoError(t, err)
	back, err := DecodePlan(code)
	require.NoError(t, err)
	require.Equal(t, text(t, p), text(t, back))
}
