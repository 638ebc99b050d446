package wall_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

const mm = unit.Millimetre

func some[T any](v T) document.Opt[T] { return document.Some(v) }

// Every edit that a remedy offers is one that can be read.
func TestEditsOfRemediesAreEdits(t *testing.T) {
	done := map[string]bool{}
	for _, r := range wall.Everything() {
		for _, f := range r.Findings {
			for _, m := range f.Remedies {
				if m.Edit.Do == "" {
					continue
				}
				e, err := edit.From(m.Edit)
				require.NoError(t, err, "%s: %s", f.Kind.Key, m.Key)
				require.Equal(t, m.Edit.Do, e.Do())
				done[e.Do()] = true
			}
		}
	}
	require.Equal(t, map[string]bool{"move": true, "place-brackets": true, "set-wall": true}, done)
}

// job is a shelf of 700 on a wall with studs of 38 at 400 centres, its brackets in no
// stud.
func job() plan.Plan {
	p := plan.New(unit.Metric)
	p.Counters = plan.Counters{Wall: 1, Module: 1, Arrangement: 1, Part: 2}
	p.Walls = []plan.Wall{{
		ID: "w1", Width: 3000 * mm, Height: 2500 * mm, Build: plan.BuildStuds,
		Studs: plan.Studs{Material: "wood", Width: some(38 * mm), First: some(300 * mm), Spacing: some(400 * mm), State: plan.EdgesFound},
	}}
	p.Modules = []plan.Module{{
		ID: "m1", Name: "Ledge", Depth: 200 * mm, Wood: "white-oak", Boards: []plan.Board{{Length: some(700 * mm), Thickness: 26 * mm}},
		Brackets: []plan.Bracket{{ID: "b1", Kind: "rod-structure", Board: 1, At: 150 * mm}, {ID: "b2", Kind: "rod-structure", Board: 1, At: 550 * mm}},
	}}
	p.Arrangements = []plan.Arrangement{{ID: "a1", Wall: "w1", Poses: []plan.Pose{{Module: "m1", X: 1000 * mm, Y: 1500 * mm}}}}
	return p
}

func arranged(p plan.Plan) wall.Result {
	m := module.Derive(p.Modules[0], p.Shop)
	return wall.Share([]wall.Result{wall.Arrange(p.Walls[0], p.Arrangements[0], []module.Result{m}, p.Shop, p.Units)})[0]
}

func has(r wall.Result, key string) int {
	return slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Kind.Key == key })
}

// Rods at 800 and 1200, studs at 300, 700, 1100, 1500: what helps is to move the shelf by
// 100, or to place the brackets again. Either leaves nothing of it.
func TestRemediesHelp(t *testing.T) {
	p := job()
	r := arranged(p)
	i := has(r, "nothing-in-stud")
	require.GreaterOrEqual(t, i, 0)
	tried := 0
	for _, m := range r.Findings[i].Remedies {
		if m.Edit.Do == "" {
			continue
		}
		tried++
		e, err := edit.From(m.Edit)
		require.NoError(t, err)
		next, _, err := edit.Apply(p, e)
		require.NoError(t, err)
		require.Negative(t, has(arranged(next), "nothing-in-stud"), m.Key)
	}
	require.Equal(t, 2, tried)
	require.GreaterOrEqual(t, has(r, "cables-not-checked"), 0)
	e, err := edit.From(r.Findings[has(r, "cables-not-checked")].Remedies[0].Edit)
	require.NoError(t, err)
	p, _, err = edit.Apply(p, e)
	require.NoError(t, err)
	require.Negative(t, has(arranged(p), "cables-not-checked"))
}

// The wall points of a shelf: from the level line and the plumb line, and what each hole
// meets.
func ExampleArrange() {
	p := job()
	p.Arrangements[0].Poses[0].X = 1100 * mm
	p.Walls[0].Studs.First = some(100 * mm)
	r := arranged(p)
	s := unit.Style{Step: mm}
	fmt.Println("level line", s.Length(r.Level), "plumb line", s.Length(r.Plumb))
	for _, h := range r.Points {
		fmt.Println(h.Number, s.Length(h.DX), s.Length(h.DY), "in", h.In.Kind, h.In.Stud, "edge", s.Length(h.In.Edge))
	}
	// Output:
	// level line 1500 plumb line 750
	// 1 150 0 in stud 3 edge 19
	// 2 550 0 in stud 4 edge 19
}
