package wall

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

func places(w plan.Wall, a plan.Arrangement, id string, n int, modules ...module.Result) []plan.Pose {
	return Places(w, a, modules, id, shop.Default(unit.Metric), plan.Units{System: unit.Metric, Step: mm}, n)
}

// Nothing on the wall: the middle of it, half way up, then 100 mm to the left, to the
// right, and so on, nearest first.
func TestPlacesOnABareWall(t *testing.T) {
	got := places(bare(), plan.Arrangement{}, "m1", 4, shelf("m1"))
	require.Equal(t, []plan.Pose{at("m1", 2000, 1250), at("m1", 1900, 1250), at("m1", 2100, 1250), at("m1", 2000, 1100)}, got,
		"heights go by whole 100; 1200 and 1300 are too near to 1250")
}

// Rods 400 apart on studs at 400 centres: every place has both rods on studs. With 40
// between 360 and 400 no place has, so those with one are offered.
func TestPlacesBringBracketsToStuds(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	got := places(surveyed(), plan.Arrangement{}, "m1", 3, m)
	require.Len(t, got, 3)
	for _, p := range got {
		r := arrange(surveyed(), poses(p), m)
		require.Equal(t, []string{"deep-hole"}, kindsOf(r.Findings), "%+v", p)
	}
	m = plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 420*mm)
	got = places(surveyed(), plan.Arrangement{}, "m1", 3, m)
	require.Len(t, got, 3)
	for _, p := range got {
		r := arrange(surveyed(), poses(p), m)
		require.Equal(t, []string{"nothing-in-stud", "deep-hole"}, kindsOf(r.Findings), "one of the two")
	}
	w := surveyed()
	w.Studs.State = plan.Guess
	require.Len(t, places(w, plan.Arrangement{}, "m1", 3, m), 3, "studs that are not found are none to meet")
	w = surveyed()
	w.Build, w.Studs = plan.BuildBrick, plan.Studs{}
	require.Len(t, places(w, plan.Arrangement{}, "m1", 3, m), 3)
}

// A module that stands badly is offered the nearest mend; one that stands well, other
// places only.
func TestPlacesNearWhereItStands(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	got := places(surveyed(), poses(at("m1", 1015, 1500)), "m1", 1, m)
	require.Equal(t, []plan.Pose{at("m1", 1000, 1500)}, got, "off its studs by 15")
	got = places(surveyed(), poses(at("m1", 1000, 1500)), "m1", 1, m)
	require.Equal(t, []plan.Pose{at("m1", 1000, 1400)}, got)

	other := shelf("m2")
	got = places(bare(), poses(at("m2", 1000, 1500), at("m1", 1300, 1502)), "m1", 1, m, other)
	require.Equal(t, []plan.Pose{at("m1", 1300, 1525)}, got, "it overlaps; above the other, touching, is 10 + 3 + 12 up from 1500")

	turned := at("m1", 1015, 1500)
	turned.Turn, turned.Flip = unit.HalfTurn, true
	got = places(surveyed(), poses(turned), "m1", 1, m)
	require.Equal(t, []unit.Angle{unit.HalfTurn}, []unit.Angle{got[0].Turn}, "it keeps its turn")
	require.True(t, got[0].Flip)
}

// Lines and neighbours give places that the pitch would not.
func TestPlacesByLinesAndNeighbours(t *testing.T) {
	a := poses(at("m1", 1733, 1487))
	a.Lines = []plan.Line{{ID: "h1", Height: 1481 * mm}}
	// Where it stands is where it fits: the others are 100 off, the line's beside it.
	got := places(bare(), a, "m1", 3, shelf("m1"))
	require.Contains(t, got, at("m1", 1600, 1487))
	a = poses(at("m2", 1000, 1500), at("m1", 1000, 1520))
	got = places(bare(), a, "m1", 2, shelf("m1"), shelf("m2"))
	require.Equal(t, []plan.Pose{at("m1", 1000, 1523), at("m1", 900, 1523)}, got, "3 above it; what lies below it, at 1477, is too near to that")
}

// A module that does not stand is wanted in the middle of what is free.
func TestWhereAModuleIsWanted(t *testing.T) {
	lo, hi := widest(nil, 100)
	require.Equal(t, [2]unit.Length{0, 100}, [2]unit.Length{lo, hi})
	lo, hi = widest([]stretch{{60, 70}, {20, 30}, {25, 40}}, 100)
	require.Equal(t, [2]unit.Length{70, 100}, [2]unit.Length{lo, hi})
	lo, hi = widest([]stretch{{20, 80}}, 100)
	require.Equal(t, [2]unit.Length{0, 20}, [2]unit.Length{lo, hi}, "the left one of equals")
	lo, hi = widest([]stretch{{-5, 110}}, 100)
	require.Equal(t, lo, hi)

	w := bare()
	w.Obstacles = []plan.Obstacle{{ID: "o1", Kind: plan.Door, X: 2600 * mm, Width: 900 * mm, Height: 2000 * mm}}
	got := places(w, poses(at("m2", 400, 1500)), "m1", 1, shelf("m1"), shelf("m2"))
	require.Equal(t, []plan.Pose{at("m1", 1600, 1250)}, got, "between 600 and 2600")
}

func TestNoPlaces(t *testing.T) {
	long := plank("m1", 4100*mm, 200*mm, 24*mm, 0)
	require.Empty(t, places(bare(), plan.Arrangement{}, "m1", 3, long), "longer than the wall")
	require.Empty(t, places(bare(), plan.Arrangement{}, "m2", 3, shelf("m1")), "no such module")
	require.Empty(t, places(bare(), plan.Arrangement{}, "m1", 3, module.Result{ID: "m1"}), "nothing of it")
	require.Empty(t, places(bare(), plan.Arrangement{}, "m1", 0, shelf("m1")))
	require.Empty(t, places(bare(), plan.Arrangement{}, "m1", -1, shelf("m1")))
}

// Cable bands, rods that need room in front, and lift are asked of every place.
func TestPlacesAskEveryRule(t *testing.T) {
	w := surveyed()
	w.Obstacles = []plan.Obstacle{
		{ID: "o1", Kind: plan.Socket, X: 760 * mm, Y: 300 * mm, Width: 86 * mm, Height: 86 * mm},
		{ID: "o2", Kind: plan.Furniture, X: 1000 * mm, Y: 0, Width: 1400 * mm, Height: 1900 * mm},
	}
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	got := places(w, plan.Arrangement{}, "m1", 6, m)
	require.NotEmpty(t, got)
	for _, p := range got {
		require.Empty(t, fits(arrange(w, poses(p), m)), "%+v", p)
	}
	// A module on a hook is raised by 15 to hang it, so 5 under a window is not enough.
	w = bare()
	w.Obstacles = []plan.Obstacle{{ID: "o1", Kind: plan.Window, X: 800 * mm, Y: 1500 * mm, Width: 800 * mm, Height: 900 * mm}}
	hook := plank("m2", 300*mm, 200*mm, 24*mm, unit.QuarterTurn)
	stands := poses(at("m2", 1000, 1351)) // its top at 1501
	require.Equal(t, at("m2", 1000, 1345), places(w, stands, "m2", 1, hook)[0])
	hook.Fixings = []board.Fixing{hookAt("m2.1", "b9", 250*mm, 24*mm)}
	got = places(w, stands, "m2", 1, hook)
	require.Equal(t, at("m2", 1000, 1300), got[0])
	require.Empty(t, fits(arrange(surveyed(), poses(got[0]), hook)))
}

// A module that stands too near to the wall's end, the ceiling or the floor does not stand
// well, so its place is not kept.
func TestPlacesMendTheWallsEdges(t *testing.T) {
	g := shop.Default(unit.Metric).Gaps
	for _, c := range []struct{ x, y, wantX, wantY unit.Length }{
		{202 * mm, 1500 * mm, 200*mm + g.Frame, 1500 * mm},
		{3810 * mm, 1500 * mm, 3800*mm - g.Frame, 1500 * mm},
		{1000 * mm, 2470 * mm, 1000 * mm, 2400 * mm},
		{1000 * mm, 5 * mm, 1000 * mm, 100 * mm},
	} {
		got := places(bare(), poses(plan.Pose{Module: "m1", X: c.x, Y: c.y}), "m1", 1, shelf("m1"))
		require.Equal(t, []plan.Pose{{Module: "m1", X: c.wantX, Y: c.wantY}}, got)
	}
}

// Modules that are placed one after the other, each in the last of its places, leave an
// arrangement with which nothing is wrong by the verdict "fits"; the places differ by 100
// mm; and the same is said again when asked again.
func TestPlacesFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, drawn, ms := drawWall(t)
		a := plan.Arrangement{ID: "a1", Lines: drawn.Lines}
		for i, p := range drawn.Poses[:min(len(ms), 6)] {
			before := a
			if rapid.Bool().Draw(t, "stands") {
				before.Poses = append(before.Poses[:len(before.Poses):len(before.Poses)], p)
			}
			got := places(w, before, ms[i].ID, 3, ms...)
			require.LessOrEqual(t, len(got), 3)
			require.Equal(t, got, places(w, before, ms[i].ID, 3, ms...))
			next := a
			for k, o := range got {
				for _, other := range got[:k] {
					require.True(t, (o.X-other.X).Abs() >= placesApart || (o.Y-other.Y).Abs() >= placesApart)
				}
				next.Poses = append(a.Poses[:len(a.Poses):len(a.Poses)], o)
				r := arrange(w, next, ms...)
				for _, f := range r.Findings {
					require.False(t, f.Kind.Verdict == finding.Fits && f.Kind.Severity >= finding.Mend, "%s: %+v", f.Kind.Key, f)
				}
			}
			a = next
		}
	})
}

// Of a module that stands, one that does not, and one that fits nowhere, for which every
// place is tried.
func BenchmarkPlaces(b *testing.B) {
	for _, n := range []int{48, 200} {
		for _, module := range []string{"m5", "new", "vast"} {
			b.Run(fmt.Sprint(module, "/", n), func(b *testing.B) {
				w, a, ms := crowd(n)
				ms = append(ms, plank("new", 500*mm, 200*mm, 24*mm, 0), plank("vast", 700*mm, 200*mm, 700*mm, 0))
				for b.Loop() {
					places(w, a, module, 3, ms...)
				}
			})
		}
	}
}
