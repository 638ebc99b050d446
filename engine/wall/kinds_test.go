package wall

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// everything arranges so that every kind of finding is made at least once.
func everything() (all []Result) {
	shelf := func(id string) module.Result { return plank(id, 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm) }
	one := func(w plan.Wall, m module.Result, p plan.Pose) {
		p.Module = m.ID
		all = append(all, arrange(w, poses(p), m))
	}
	w := surveyed()
	at := plan.Pose{X: 1000 * mm, Y: 1500 * mm}
	for _, gap := range []unit.Length{-5 * mm, 1 * mm, 9 * mm} {
		all = append(all, arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}, plan.Pose{Module: "m2", X: 1520*mm + gap, Y: 1500 * mm}), shelf("m1"), shelf("m2")))
	}
	for _, p := range []plan.Pose{{X: 261 * mm, Y: 1500 * mm}, {X: 3500 * mm, Y: 1500 * mm}, {X: 1000 * mm}, {X: 1000 * mm, Y: 2500 * mm}, {X: 1000 * mm, Y: 2460 * mm},
		{X: 1000 * mm, Y: 1500 * mm, Turn: 90 * deg}, {X: 1015 * mm, Y: 1500 * mm}, {X: 1100 * mm, Y: 1500 * mm}} {
		one(w, shelf("m1"), p)
	}
	for _, kind := range []string{plan.Window, plan.Furniture, plan.Radiator, plan.Socket, "hatch"} {
		for _, y := range []unit.Length{1000 * mm, 1380 * mm, 1480 * mm} {
			v := w
			v.Obstacles = []plan.Obstacle{{ID: "o1", Kind: kind, X: 700 * mm, Y: y, Width: 300 * mm, Height: 100 * mm}}
			one(v, shelf("m1"), at)
			plain := shelf("m1")
			plain.Fixings = nil
			one(v, plain, at)
		}
	}
	single := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm)
	one(w, single, at)
	mixed := shelf("m1")
	mixed.Fixings = append(mixed.Fixings, hookAt("m1.1", "b3", 260*mm, 24*mm))
	one(w, mixed, at)
	plates := shelf("m1")
	plates.Fixings[0] = plateAt("m1.1", "b1", 98*mm, 24*mm)
	plates.Fixings[0].Screws[0].DU = -38 * mm
	one(w, plates, at)
	for _, change := range []func(*plan.Wall){
		func(w *plan.Wall) { w.Studs.State = plan.OnePoint },
		func(w *plan.Wall) { w.Studs.Material = "metal" },
		func(w *plan.Wall) { *w = plan.Wall{ID: "w1", Width: w.Width, Height: w.Height} },
		func(w *plan.Wall) { w.Build = plan.BuildDabs },
		func(w *plan.Wall) { w.BuiltYear = some(1931) },
		func(w *plan.Wall) { w.Flat = []plan.Flat{{X: 800 * mm, Y: 1500 * mm, Over: 1000 * mm, Gap: -2 * mm}} },
		func(w *plan.Wall) {
			w.Flat = []plan.Flat{{X: 900 * mm, Y: 1000 * mm, Over: 1000 * mm, Gap: 4 * mm, Upright: true}}
		},
	} {
		v := w
		change(&v)
		one(v, shelf("m1"), at)
	}
	post := plank("m1", 300*mm, 200*mm, 24*mm, 90*deg)
	post.Fixings = []board.Fixing{hookAt("m1.1", "b1", 250*mm, 24*mm)}
	one(w, post, plan.Pose{X: 1200 * mm, Y: 2340 * mm})
	all = append(all, ring(w))
	round := poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm})
	round.ID, round.Wall = "a2", "w2"
	for _, x := range []unit.Length{3300 * mm, 3200 * mm} {
		a := poses(plan.Pose{Module: "m1", X: x, Y: 1500 * mm})
		a.Corner = "a2"
		round.Poses = []plan.Pose{{Module: "m2", X: 3600*mm - x + 70*mm, Y: 1500 * mm}}
		all = append(all, Share([]Result{arrange(w, a, shelf("m1"), shelf("m2")), arrange(w, round, shelf("m1"), shelf("m2"))})...)
	}
	up := poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm, Turn: 90 * deg})
	up.ID = "a2"
	return append(all, Share([]Result{arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), shelf("m1")), arrange(w, up, shelf("m1"))})...)
}

// ring is two modules that each have a board close under one of the other's.
func ring(w plan.Wall) Result {
	pair := func(id string, x unit.Length) module.Result {
		m := plank(id, 300*mm, 200*mm, 24*mm, 90*deg)
		b := m.Boards[0]
		b.ID, b.Frame.X = id+".2", x
		m.Boards = append(m.Boards, b)
		o := m.Outlines[0]
		o.Board = b.ID
		o.Points = shift(o.Points, x, 310*mm)
		m.Outlines = append(m.Outlines, o)
		finish(&m)
		m.Fixings = []board.Fixing{hookAt(id+".1", "b1", 250*mm, 24*mm)}
		return m
	}
	a, b := pair("m1", 40*mm), pair("m2", -40*mm)
	// Board 2 of each stands over board 1 of the other with 10 between.
	return arrange(w, poses(plan.Pose{Module: "m1", X: 1200 * mm, Y: 1000 * mm}, plan.Pose{Module: "m2", X: 1200 * mm, Y: 1000 * mm}), a, b)
}

func TestEveryKindIsMadeAndComplete(t *testing.T) {
	declared := map[string]finding.Kind{}
	for _, k := range Kinds() {
		require.NotContains(t, declared, k.Key)
		declared[k.Key] = k
	}
	made := map[string]bool{}
	for _, r := range everything() {
		for _, f := range r.Findings {
			require.Equal(t, declared[f.Kind.Key], f.Kind)
			made[f.Kind.Key] = true
			requireComplete(t, f)
		}
	}
	for k := range declared {
		require.True(t, made[k], "%s is never made", k)
	}
}

// say is a finding in words, as a reader gets it.
func say(f finding.Finding) string {
	args := append([]words.Arg{{Name: "value", Value: f.Value}, {Name: "limit", Value: f.Limit}}, f.Args...)
	return words.Text("finding."+f.Kind.Key, args, unit.Style{System: unit.Metric, Step: mm})
}

func requireComplete(t *testing.T, f finding.Finding) {
	t.Helper()
	text := say(f)
	require.False(t, strings.ContainsAny(text, "[]{}"), text)
	require.NotEqual(t, finding.Place{}, f.Place)
	require.NotEmpty(t, f.Remedies, text)
	if f.Value.Is == words.IsLength {
		require.NotEqual(t, words.None, f.Limit.Is, text)
	}
	for _, r := range f.Remedies {
		text := words.Text("remedy."+r.Key, r.Args, unit.Style{System: unit.Metric, Step: mm})
		require.False(t, strings.ContainsAny(text, "[]{}"), text)
	}
}

func TestWhatIsNotKnownIsListed(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	r := arrange(plan.Wall{ID: "w1", Width: 3000 * mm, Height: 2500 * mm, Build: plan.BuildStuds, BuiltYear: some(1990)}, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	f := only(t, r, "wall-not-surveyed")
	require.Equal(t, "Not known of this wall, so not checked: its lining and how thick it is; where its studs are; whether its studs are wood or metal; "+
		"the slope of the floor; the slope of the ceiling; how plumb it is at three places; what is on the other side.", say(f))
	w := surveyed()
	require.Empty(t, missingFacts(&w, Studs(w)))
	require.Len(t, missingFacts(&plan.Wall{}, nil), 7)
	w.Studs.Width = document.Opt[unit.Length]{}
	require.Equal(t, []string{"missing.stud-width"}, missingFacts(&w, Studs(w)))
}
