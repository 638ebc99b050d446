package wall

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// box is four mitred boards, w by h outside, on two rods in its upper board.
func box(id string, w, h, t unit.Length) module.Result {
	r := module.Result{ID: id, Depth: 200 * mm}
	add := func(f board.Frame, length unit.Length) {
		b := board.Board{ID: fmt.Sprintf("%s.%d", id, len(r.Boards)+1), Length: length, Width: 200 * mm, Thickness: t, Frame: f}
		r.Boards = append(r.Boards, b)
		corner := func(u, w unit.Length) module.XY {
			x, y := unit.Rotate(u, -w, f.Dir)
			return xy(f.X+x, f.Y+y)
		}
		// Face A is the inside of a box that is walked with the inside to the left.
		r.Outlines = append(r.Outlines, module.Outline{Board: b.ID, Points: []module.XY{corner(0, t), corner(length, t), corner(length-t, 0), corner(t, 0)}})
	}
	add(board.Frame{Y: t}, w)
	add(board.Frame{X: w - t, Dir: 90 * deg}, h)
	add(board.Frame{X: w, Y: h - t, Dir: 180 * deg}, w)
	add(board.Frame{X: t, Y: h, Dir: 270 * deg}, h)
	finish(&r)
	for i, u := range []unit.Length{w/2 - 100*mm, w/2 + 100*mm} {
		r.Fixings = append(r.Fixings, rodAt(r.Boards[2].ID, fmt.Sprintf("b%d", i+1), u, t))
	}
	return r
}

// jobOf is a wall of n modules in rows of twelve, boxes and shelves in turn.
func jobOf(n int) (plan.Wall, plan.Arrangement, []module.Result) {
	w := surveyed()
	w.Width, w.Height = 5200*mm, unit.Length(n/12+2)*330*mm
	w.Studs.First, w.Studs.Spacing = some(100*mm), some(100*mm)
	w.Obstacles = []plan.Obstacle{
		{ID: "o1", Kind: plan.Socket, X: 60 * mm, Y: 300 * mm, Width: 86 * mm, Height: 86 * mm},
		{ID: "o2", Kind: plan.Door, X: 5000 * mm, Width: 190 * mm, Height: 300 * mm},
	}
	var modules []module.Result
	a := plan.Arrangement{ID: "a1", Wall: "w1"}
	for i := range n {
		id := fmt.Sprintf("m%d", i+1)
		x, y := unit.Length(i%12)*400*mm+300*mm, unit.Length(i/12)*330*mm+400*mm
		if i%3 == 0 {
			modules = append(modules, plank(id, 380*mm, 200*mm, 24*mm, 0, 90*mm, 290*mm))
		} else {
			modules = append(modules, box(id, 380*mm, 300*mm, 24*mm))
		}
		a.Poses = append(a.Poses, plan.Pose{Module: id, X: x, Y: y, Turn: unit.Angle(i%2) * 180 * deg})
	}
	return w, a, modules
}

// A slow and obvious twin: every module against every other, every outline against every
// outline, every board against every end.
func TestNearestIsThatOfAllPairs(t *testing.T) {
	for _, n := range []int{1, 2, 30, 48} {
		w, a, modules := jobOf(n)
		for i := range a.Poses {
			a.Poses[i].X += unit.Length(i*i%17) * mm
			a.Poses[i].Y += unit.Length(i*i%13) * mm
			a.Poses[i].Turn += unit.Angle(i%5) * 7 * deg
		}
		r := arrange(w, a, modules...)
		require.Len(t, r.Nearest, n)
		for i := range r.Placed {
			least := min(r.Placed[i].Box.MinX, w.Width-r.Placed[i].Box.MaxX, r.Placed[i].Box.MinY, w.Height-r.Placed[i].Box.MaxY)
			for k := range r.Placed {
				if k != i {
					least = min(least, slowGap(r.Placed[i], r.Placed[k]))
				}
			}
			for _, o := range w.Obstacles {
				q := rectangle(&o)
				least = min(least, slowGap(r.Placed[i], Placed{Outlines: []module.Outline{{Points: q[:]}}}))
			}
			require.Equal(t, least, r.Nearest[i].Gap, "%+v", r.Nearest[i])
			require.Equal(t, r.Placed[i].Module, r.Nearest[i].Module)
		}
	}
}

func slowGap(a, b Placed) unit.Length {
	least := unit.Length(math.MaxInt64)
	for _, p := range a.Outlines {
		for _, q := range b.Outlines {
			least = min(least, gap(p.Points, q.Points))
		}
	}
	return least
}

// Whatever a document may hold, Arrange ends, and gives the same twice.
func TestAnyWallAndPose(t *testing.T) {
	modules := []module.Result{ell(), box("m2", 300*mm, 200*mm, 20*mm), plank("m3", 520*mm, 200*mm, 24*mm, 30*deg, 60*mm, 460*mm), {ID: "m4"}}
	modules[3].Fixings = []board.Fixing{{Board: "m9.1"}}
	modules[0].Fixings = []board.Fixing{hookAt("m1.2", "b1", 150*mm, 20*mm)}
	rapid.Check(t, func(t *rapid.T) {
		l := rapid.Custom(func(t *rapid.T) unit.Length {
			return unit.Length(rapid.OneOf(rapid.Int64Range(-3e9, 3e9), rapid.Int64Range(-1e15, 1e15), rapid.Just[int64](0)).Draw(t, "l"))
		})
		w := plan.Wall{ID: "w1", Width: l.Draw(t, "width"), Height: l.Draw(t, "height"), Build: rapid.SampledFrom([]string{"", plan.BuildStuds, plan.BuildBrick}).Draw(t, "build"),
			FloorRise: some(l.Draw(t, "floor")), CableRule: "uk"}
		w.Studs = plan.Studs{First: some(l.Draw(t, "first")), Spacing: some(l.Draw(t, "spacing")), Width: some(l.Draw(t, "stud"))}
		for range rapid.IntRange(0, 3).Draw(t, "studs") {
			w.Studs.Each = append(w.Studs.Each, plan.Stud{X: l.Draw(t, "x"), State: plan.EdgesFound})
		}
		for i := range rapid.IntRange(0, 3).Draw(t, "obstacles") {
			w.Obstacles = append(w.Obstacles, plan.Obstacle{ID: fmt.Sprint("o", i), Kind: rapid.SampledFrom([]string{plan.Socket, plan.Furniture, plan.Pipe}).Draw(t, "kind"),
				X: l.Draw(t, "ox"), Y: l.Draw(t, "oy"), Width: l.Draw(t, "ow").Abs(), Height: l.Draw(t, "oh").Abs()})
		}
		w.Plumb = []plan.Plumb{{X: l.Draw(t, "px"), Over: l.Draw(t, "over"), Lean: l.Draw(t, "lean")}}
		a := plan.Arrangement{ID: "a1", Wall: "w1"}
		for i := range rapid.IntRange(0, 5).Draw(t, "poses") {
			p := anyPose(t)
			p.Module = fmt.Sprint("m", i%5+1)
			a.Poses = append(a.Poses, p)
		}
		r := Share([]Result{arrange(w, a, modules...)})
		require.Equal(t, r, Share([]Result{arrange(w, a, modules...)}))
		for _, f := range r[0].Findings {
			require.NotEmpty(t, f.Remedies)
		}
	})
}

func BenchmarkArrange(b *testing.B) {
	s, u := shop.Default(unit.Metric), plan.Units{System: unit.Metric, Step: mm}
	for _, n := range []int{1, 12, 48, 200} {
		w, a, modules := jobOf(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Arrange(w, a, modules, s, u)
			}
		})
	}
	w, a, modules := jobOf(48)
	for i := range a.Poses {
		a.Poses[i].X = 1000 * mm
	}
	b.Run("48 on one heap", func(b *testing.B) {
		for b.Loop() {
			Arrange(w, a, modules, s, u)
		}
	})
}

func BenchmarkShare(b *testing.B) {
	w, a, modules := jobOf(48)
	var results []Result
	for _, id := range []string{"a1", "a2", "a3"} {
		a.ID = id
		results = append(results, arrange(w, a, modules...))
	}
	b.ReportAllocs()
	for b.Loop() {
		Share(results)
	}
}
