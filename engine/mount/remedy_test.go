package mount_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/edit"
	"ledgewright/engine/hardware"
	"ledgewright/engine/mount"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Every edit that a finding offers can be read as an edit.
func TestRemediesAreEdits(t *testing.T) {
	const mm = unit.Millimetre
	seen := map[string]bool{}
	for _, k := range hardware.Brackets() {
		for _, thick := range []unit.Length{14 * mm, 26 * mm} {
			for _, at := range []unit.Length{-mm, 5 * mm, 60 * mm, 300 * mm} {
				o := mount.Fit(mount.Input{
					Bracket: "b5", Kind: k.ID, At: at, Length: 480 * mm, Shop: shop.Default(unit.Metric),
					Board: board.Board{ID: "m1.1", Length: 520 * mm, Width: 90 * mm, Thickness: thick},
				})
				for _, f := range o.Findings {
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
		}
	}
	require.GreaterOrEqual(t, len(seen), 9, "%v", seen)
}
