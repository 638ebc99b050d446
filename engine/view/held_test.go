package view_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
	"ledgewright/testdata/jobs"
)

// What is drawn of the modules in the hand is, to the last bit, what a drawing of the wall
// has where only they hang, and the marks and dimensions are those of the whole wall: over
// random plans, and modules carried step by step to random places.
func TestHeldIsPartOfTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := randomJob(t)
		a := &p.Arrangements[rapid.IntRange(0, len(p.Arrangements)-1).Draw(t, "arrangement")]
		w, _ := p.Wall(a.Wall)
		var modules []module.Result
		for _, m := range p.Modules {
			modules = append(modules, module.Derive(m, p.Shop))
		}
		o := view.Options{
			Style: p.Style(), Shallow: rapid.Bool().Draw(t, "shallow"), Evening: rapid.Bool().Draw(t, "evening"), ShowStuds: true, ShowBands: true,
			ShowSizes: rapid.Bool().Draw(t, "sizes"), ShowMarks: rapid.Bool().Draw(t, "marks"), Numbers: rapid.Bool().Draw(t, "numbers"),
			Lines: a.Lines, Pixel: rapid.SampledFrom([]float64{0, 1, 3, 12}).Draw(t, "pixel"),
		}
		var hand view.Held
		for range rapid.IntRange(1, 4).Draw(t, "steps") {
			held := carried(t, a, w)
			o.Selected = rapid.SampledFrom(append([]string{"", "m1"}, held...)).Draw(t, "selected")
			r := wall.Arrange(w, *a, modules, p.Shop, p.Units)
			part := hand.Draw(w, r, modules, o, held)
			alone, whole := view.Wall(w, only(r, held), modules, o), view.Wall(w, r, modules, o)
			want := []drawing.Item{}
			for _, it := range alone.Items {
				if slices.Contains(held, it.Group) && it.Layer != drawing.LayerMarks {
					want = append(want, it)
				}
			}
			for _, it := range whole.Items {
				if it.Group == "dim" || slices.Contains(held, it.Group) && it.Layer == drawing.LayerMarks {
					want = append(want, it)
				}
			}
			require.Equal(t, want, part.Items)
			whole.Items, part.Items = nil, nil
			require.Equal(t, whole, part)
		}
	})
}

// only is an arrangement of which only some modules hang.
func only(r wall.Result, held []string) wall.Result {
	r.Placed = slices.DeleteFunc(slices.Clone(r.Placed), func(p wall.Placed) bool { return !slices.Contains(held, p.Module) })
	return r
}

// randomJob is a random plan with an arrangement, or one of the jobs.
func randomJob(t *rapid.T) plan.Plan {
	switch rapid.IntRange(0, 3).Draw(t, "job") {
	case 0:
		return jobs.S()
	case 1:
		return jobs.M(1)
	}
	for seed := rapid.Uint64Range(0, 1<<40).Draw(t, "seed"); ; seed++ {
		if p := jobs.RandomPlan(seed); len(p.Arrangements) > 0 {
			return p
		}
	}
}

// carried moves a few modules of an arrangement to random places on its wall and returns
// them, with those that stay where they are.
func carried(t *rapid.T, a *plan.Arrangement, w plan.Wall) (held []string) {
	a.Poses = slices.Clone(a.Poses)
	for i := range a.Poses {
		q := &a.Poses[i]
		if rapid.IntRange(0, len(a.Poses)/3).Draw(t, "moves") > 0 {
			continue
		}
		q.X = unit.Length(rapid.Int64Range(0, int64(w.Width)).Draw(t, "x"))
		q.Y = unit.Length(rapid.Int64Range(0, int64(w.Height)).Draw(t, "y"))
		if rapid.IntRange(0, 2).Draw(t, "held") > 0 {
			held = append(held, q.Module)
		}
	}
	return held
}
