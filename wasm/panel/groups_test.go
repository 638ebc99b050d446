package panel

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
	testjobs "ledgewright/testdata/jobs"
	"ledgewright/wasm/app"
)

// A page made after edits, from what the pages before have left, is the page that is made
// from nothing: over random plans and edits, by day and in the evening, near and far.
func TestEditsShowThePageFromNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := dragJob(t)
		var p Painter
		p.Page(&s)
		for _, line := range testjobs.RandomEdits(rapid.Uint64().Draw(t, "seed"), s.Plan) {
			s, _ = app.Step(s, app.DoLine{Line: line})
			switch rapid.IntRange(0, 9).Draw(t, "besides") {
			case 0:
				s, _ = app.Step(s, app.Fit{})
			case 1:
				s, _ = app.Step(s, app.Undo{})
			}
			require.Equal(t, Write(Page(&s)), Write(p.Page(&s)), line)
		}
	})
}

// After an edit of one module the groups of all others stay.
func BenchmarkEditPageM(b *testing.B) {
	s := jobM()
	var p Painter
	p.Page(&s)
	id := s.Plan.Modules[20].ID
	states := make([]app.State, 2)
	for i := range states {
		e := edit.Move{Arrangement: s.Arrangement, Module: id, DX: unit.Length(5*(i+1)) * unit.Millimetre}
		states[i], _ = app.Step(s, app.DoLine{Line: string(edit.Encode(e))})
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		p.Page(&states[i%2])
	}
}
