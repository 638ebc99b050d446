package light_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/light"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Every edit that a finding offers can be read as an edit.
func TestRemediesAreEdits(t *testing.T) {
	const mm = unit.Millimetre
	seen := map[string]bool{}
	for _, change := range []func(*light.Input){
		func(i *light.Input) { i.Face = "left" },
		func(i *light.Input) { i.Depth = 30 * mm },
		func(i *light.Input) { i.Depth, i.Width, i.Source = 10*mm, 6*mm, "" },
		func(i *light.Input) { i.FromFront = document.Some(500 * mm) },
		func(i *light.Input) { i.FromFront = document.Some(2 * mm) },
		func(i *light.Input) { i.StartStop, i.EndStop = document.Some(mm), document.Some(2*mm) },
		func(i *light.Input) { i.StartStop = document.Some(600 * mm) },
		func(i *light.Input) { i.Strip, i.Source = "strip-12-14.4", "driver-24-15"; i.Lead = 50 * unit.Metre },
		func(i *light.Input) { i.Strip = "none" },
		func(i *light.Input) { i.Source = "none" },
	} {
		i := light.Input{
			Light: "l1", Boards: []board.Board{{ID: "m1.1", Length: 520 * mm, Width: 200 * mm, Thickness: 24 * mm}},
			Face: board.FaceB, Width: 12 * mm, Depth: 8 * mm, Strip: "strip-24-9.6", Source: "driver-24-15", Shop: shop.Default(unit.Metric),
		}
		change(&i)
		for _, f := range light.Fit(i).Findings {
			for _, r := range f.Remedies {
				if r.Edit.Do == "" {
					continue
				}
				_, err := edit.From(r.Edit)
				require.NoError(t, err, f.Kind.Key)
				seen[f.Kind.Key] = true
			}
		}
	}
	require.GreaterOrEqual(t, len(seen), 10, "%v", seen)
}
