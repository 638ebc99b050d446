//go:build browser

package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/testdata/visitor"
)

// From the start page to a module on the wall, with one finger.
func TestFirstVisitToTheFirstModule(t *testing.T) {
	t.Parallel()
	b := arrive(t)
	b.See("heading", "Start with the wall")
	b.Write("Wall width", "2960")
	b.Write("Height", "2460")
	b.Tap("button", "Draw this wall")
	b.See("heading", "Survey")
	k := b.Keeps("a wall", func(k visitor.Kept) bool { return len(k.Plan.Walls) == 1 })
	require.Equal(t, 2960*unit.Millimetre, k.Plan.Walls[0].Width)
	require.Equal(t, 2460*unit.Millimetre, k.Plan.Walls[0].Height)

	b.Job("Arrange")
	b.Says("No modules on this wall")
	b.Tap("button", "Add a Shelf")
	k = b.Keeps("a module", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 1 })
	require.Len(t, k.Plan.Arrangements[0].Poses, 1)
	require.Equal(t, "true", b.See("button", "Shelf").State("pressed"), "what was made is chosen")
	b.See("button", "Undo: add Shelf")
	require.Equal(t, derived(t, k), build(b))
}

// A wall taken down from nothing: by figures typed and lists chosen from.
func TestSurveyFromNothing(t *testing.T) {
	t.Parallel()
	b := aWall(t)
	b.See("region", "Verdicts")
	b.Says("Not checked") // what is not known is seen not to be known

	b.Fill("Wall width, mm", "3.1 m")
	b.Pick("Made of", "board on studs")
	b.Pick("Lining", "plasterboard")
	b.Fill("Lining thickness, mm", "12.5")
	b.Fill("Year built", "1994")
	b.Fill("On the other side", "kitchen")
	b.Pick("Stud material", "wood")
	b.Fill("Stud width, mm", "1 1/2 in")
	b.Fill("Stud depth, mm", "89")
	b.Fill("First stud at, mm", "150")
	b.Fill("Stud spacing, mm", "600")
	b.Pick("Studs by spacing are", "guess")
	b.Fill("Add a stud at, mm", "1350")
	b.Steps(13)
	b.Tap("button", "Change stud 1")
	b.Pick("Stud 1 is", "edges found")
	b.Tap("button", "Add a socket")
	b.Tap("button", "Add a window")
	b.Steps(16)
	b.Pick("Where cables are expected", "UK practice; other countries differ")
	b.Tap("button", "Add a plumb reading")
	k := b.Steps(18)

	w := k.Plan.Walls[0]
	require.Equal(t, 3100*unit.Millimetre, w.Width)
	require.Equal(t, plan.BuildStuds, w.Build)
	require.Equal(t, "plasterboard", w.Lining.Kind)
	require.Equal(t, unit.Length(12_500_000), w.Lining.Thickness.Value)
	require.Equal(t, 1994, w.BuiltYear.Value)
	require.Equal(t, "kitchen", w.FarSide)
	require.Equal(t, unit.Length(38_100_000), w.Studs.Width.Value)
	require.Equal(t, "uk", w.CableRule)
	require.Len(t, w.Obstacles, 2)
	require.Len(t, w.Plumb, 1)
	states := map[string]int{}
	for _, s := range wall.Studs(w) {
		states[s.State]++
	}
	require.Equal(t, 1, states[plan.EdgesFound])
	require.Positive(t, states[plan.Guess])
	require.False(t, w.Studs.Each[0].Width.Known, "what nobody has measured stays unknown")

	// A figure that cannot be read says so beside its field, and changes nothing.
	b.Fill("Stud depth, mm", "thick")
	require.Equal(t, "true", b.See("textbox", "Stud depth, mm").State("invalid"))
	require.Equal(t, 18, steps(b))
}

// A shelf dragged past a stud sticks to it: one step, undone and made again by name.
func TestDragToAStud(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	before, _ := b.Kept()
	n := len(before.Steps)

	was := before.Plan.Arrangements[0].Poses[0]
	grip := b.Wall(was.X.MM(), was.Y.MM())
	to := b.Wall(was.X.MM()+toStud(t, before.Plan)+4, was.Y.MM()-260)
	b.Down(grip)
	for i := 1; i <= 12; i++ {
		b.Moved(grip.To(to, float64(i)/12))
	}
	b.Says("bracket on a stud")
	require.Equal(t, n, steps(b), "what is in the hand is not yet a step")
	b.Up()

	after := b.Steps(n + 1)
	require.True(t, onStuds(after.Plan), "the rods are on studs")
	moved := after.Plan.Arrangements[0].Poses[0]
	require.NotEqual(t, was.X, moved.X)
	require.Less(t, moved.Y, was.Y)

	k := b.Undo("move Shelf")
	require.Equal(t, was, k.Plan.Arrangements[0].Poses[0])
	b.Says("Undone: move Shelf")
	b.Tap("button", "Redo: move Shelf")
	k = b.Steps(n + 1)
	require.Equal(t, moved, k.Plan.Arrangements[0].Poses[0])
	require.Equal(t, derived(t, k), build(b))
}

// onStuds reports whether all rods stand in studs.
func onStuds(p plan.Plan) bool {
	points := rods(p)
	for _, pt := range points {
		if pt.In.Kind != wall.InStud {
			return false
		}
	}
	return len(points) > 0
}

// rods are the axes of the rods of the first arrangement.
func rods(p plan.Plan) (out []wall.Point) {
	for _, pt := range engine.Derive(p, nil).Arrangements[0].Points {
		if pt.What == wall.Axis || pt.Rod {
			out = append(out, pt)
		}
	}
	return out
}

// toStud is how far the first rod is from the next stud to the right that it is not on,
// in millimetres.
func toStud(t *testing.T, p plan.Plan) float64 {
	t.Helper()
	x := rods(p)[0].X.MM()
	best := math.Inf(1)
	for _, s := range wall.Studs(p.Walls[0]) {
		if d := s.X.MM() - x; d > 60 {
			best = math.Min(best, d)
		}
	}
	require.False(t, math.IsInf(best, 1), "rods %v, studs %v", rods(p), wall.Studs(p.Walls[0]))
	return best
}

// What was made is there after the page is loaded again, with the steps that led to it.
func TestReloadFindsEverything(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	b.Tap("button", "Turn right 90°")
	b.Tap("button", "Move up 10 mm")
	b.Tap("button", "Move up 10 mm")
	b.Keeps("two moves", func(k visitor.Kept) bool { return k.Plan.Arrangements[0].Poses[0].Y == 1496*unit.Millimetre })
	k := b.Undo("move Shelf")

	b.Reload()
	b.See("heading", "Arrange")
	again, ok := b.Kept()
	require.True(t, ok)
	require.Equal(t, k, again)
	b.See("button", "Undo: move Shelf")
	b.Tap("button", "Redo: move Shelf")
	b.Keeps("no undone step", func(k visitor.Kept) bool { return len(k.Undone) == 0 })
	for range len(k.Steps) + 1 {
		b.Tap("button", "Undo: …")
	}
	empty := b.Steps(0)
	require.Empty(t, empty.Plan.Modules)
	b.See("button", "Undo")

	b.Tap("button", "All jobs")
	b.See("list", "Kept in this browser")
	b.Tap("button", "Wall")
	b.See("heading", "Arrange")
}

// Turning, flipping and mirroring, a gap and a size typed: each one step under a name.
func TestTurnFlipMirrorAndTypedFigures(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	n := steps(b)
	pose := func(k visitor.Kept) plan.Pose { return k.Plan.Arrangements[0].Poses[0] }
	b.Tap("button", "Turn left 90°")
	require.Equal(t, unit.QuarterTurn, pose(b.Steps(n+1)).Turn)
	b.Undo("turn Shelf")
	b.Fill("Turned by, degrees", "30")
	require.Equal(t, 30*unit.Degree, pose(b.Steps(n+1)).Turn)
	b.Undo("turn Shelf")
	b.Tap("button", "Flip")
	require.True(t, pose(b.Steps(n+1)).Flip)
	b.Undo("flip Shelf")

	b.Tap("button", "Mirror")
	k := b.Steps(n + 1)
	require.Len(t, k.Plan.Modules, 2, "a mirror is a module of its own")
	b.Undo("mirror Shelf")
	b.Tap("button", "Shelf")

	// The list's field and the picture's figure change the same thing.
	b.Fill("From the left end, mm", "300")
	k = b.Steps(n + 1)
	require.Equal(t, 300*unit.Millimetre, engine.Derive(k.Plan, nil).Arrangements[0].Placed[0].Box.MinX)
	b.Tap("button", "Shelf from the left end, mm: 300")
	b.See("textbox", "Shelf from the left end, mm")
	b.Until("document.activeElement.tagName", "INPUT")
	b.Replace("1200-18")
	b.Says("1182 mm")
	require.Equal(t, n+1, steps(b), "what is being typed is not yet a step")
	b.Press(enter)
	k = b.Steps(n + 2)
	require.Equal(t, 1182*unit.Millimetre, engine.Derive(k.Plan, nil).Arrangements[0].Placed[0].Box.MinX)
	k = b.Undo("move Shelf")
	require.Equal(t, 300*unit.Millimetre, engine.Derive(k.Plan, nil).Arrangements[0].Placed[0].Box.MinX)
	b.Tap("button", "Width of Shelf, mm: 800")
	b.Until("document.activeElement.tagName", "INPUT")
	b.Type("2' 6\"")
	k = b.Steps(n + 2)
	require.Equal(t, unit.Length(762_000_000), k.Plan.Modules[0].Boards[0].Length.Value)
	require.Equal(t, derived(t, k), build(b))
}
