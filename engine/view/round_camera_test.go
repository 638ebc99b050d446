package view_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/assets"
	"ledgewright/engine/drawing"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
	"ledgewright/testdata/jobs"
)

func example(t testing.TB, name string) *view.Round {
	p, err := assets.Plan(name)
	require.NoError(t, err)
	return arranged(p)[0]
}

// What is fitted is all shown, and fills the picture in one direction.
func TestRoundFits(t *testing.T) {
	for _, name := range []string{"porch", "study", "nursery"} {
		u := example(t, name).Open(0.5)
		for _, aspect := range []float64{0.5, 1, 1.9} {
			for _, c := range cameras(30) {
				c = u.Fit(c, aspect)
				d := u.Draw(view.RoundOptions{Camera: c, Aspect: aspect, Bare: true})
				require.InEpsilon(t, aspect, d.Box.Width()/d.Box.Height(), 1e-9)
				var all drawing.Box
				for i, it := range d.Items {
					b := drawing.Bounds(it.Path)
					if i == 0 {
						all = b
					}
					all = all.With(drawing.Point{X: b.MinX, Y: b.MinY}).With(drawing.Point{X: b.MaxX, Y: b.MaxY})
				}
				require.LessOrEqual(t, d.Box.MinX, all.MinX)
				require.LessOrEqual(t, d.Box.MinY, all.MinY)
				require.GreaterOrEqual(t, d.Box.MaxX, all.MaxX)
				require.GreaterOrEqual(t, d.Box.MaxY, all.MaxY)
				require.Greater(t, max(all.Width()/d.Box.Width(), all.Height()/d.Box.Height()), 0.75)
			}
		}
	}
}

// A parallel look from the front is the elevation: the front edge of the porch's board is
// as wide as the board is long.
func TestRoundFromTheFrontIsTrueToScale(t *testing.T) {
	p, err := assets.Plan("porch")
	require.NoError(t, err)
	long := p.Modules[0].Boards[0].Length.Value.MM()
	d := arranged(p)[0].Open(0).Draw(view.RoundOptions{Camera: view.Camera{Parallel: true, Span: 1000}.Seen(view.FromFront), Bare: true})
	require.Len(t, d.Items, 7, "the front edge, and three chords of the round-over on each of its arrises")
	all := drawing.Bounds(d.Items[0].Path)
	for _, it := range d.Items {
		b := drawing.Bounds(it.Path)
		all = all.With(drawing.Point{X: b.MinX, Y: b.MinY}).With(drawing.Point{X: b.MaxX, Y: b.MaxY})
	}
	require.InDelta(t, long, all.Width(), 1e-6)
	require.InDelta(t, p.Modules[0].Boards[0].Thickness.MM(), all.Height(), 1e-6)
}

func TestRoundCamera(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		c := view.Camera{Yaw: f("yaw", -180, 180), Pitch: f("pitch", -90, 90), X: f("x", -500, 500), Y: f("y", -500, 500), Span: f("span", 100, 3000)}
		x, y, k := f("at x", -500, 500), f("at y", -500, 500), f("k", 0.5, 2)
		z := c.Zoom(k, x, y)
		require.InDelta(t, (x-c.X)/c.Span, (x-z.X)/z.Span, 1e-9, "the place under the fingers stays")
		require.InDelta(t, (y-c.Y)/c.Span, (y-z.Y)/z.Span, 1e-9)
		o := c.Orbit(f("right", -400, 400), f("up", -200, 200))
		require.LessOrEqual(t, math.Abs(o.Pitch), 90.0)
		require.LessOrEqual(t, math.Abs(o.Yaw), 180.0)
		p := c.Pan(x, y).Pan(-x, -y)
		require.InDelta(t, c.X, p.X, 1e-9)
		require.InDelta(t, c.Y, p.Y, 1e-9)
	})
	c := view.Camera{}
	for _, side := range view.Sides() {
		require.Equal(t, c.Seen(side), c.Orbit(50, 40).Seen(side), side)
	}
	require.Equal(t, view.Camera{Yaw: 7}, view.Camera{Yaw: 7}.Seen("nowhere"))
}

// Pulled fully apart no board, rail or rod is in another any more.
func TestRoundComesApart(t *testing.T) {
	for _, name := range assets.Names() {
		r := example(t, name)
		bodies, parts := view.Bodies(r.Open(1))
		require.Equal(t, parts, bodies, name)
		require.Greater(t, view.Gap(r.Open(1)), 15.0, "%s: boards stand apart", name)
	}
	bodies, parts := view.Bodies(example(t, "laundry").Open(0))
	require.Greater(t, parts, 0)
	require.Greater(t, bodies, parts, "dividers and rails are let in, and cut where they are")
}

// The same plan gives the same picture, whatever was drawn before.
func TestRoundIsTheSameEachTime(t *testing.T) {
	c := view.Camera{Yaw: 35, Pitch: 20}
	once := func(before bool) string {
		u := example(t, "laundry").Open(0.3)
		if before {
			u.Draw(view.RoundOptions{Camera: view.Camera{Yaw: 200}})
		}
		return drawing.SVG(u.Draw(view.RoundOptions{Camera: u.Fit(c, 1)}), view.FileOptions(false))
	}
	require.Equal(t, once(false), once(false))
	require.Equal(t, once(false), once(true))
}

func TestRoundOfNothing(t *testing.T) {
	w, _, _ := corner()
	r := view.NewRound(w, wall.Result{}, nil)
	d := r.Open(0.5).Draw(view.RoundOptions{Camera: r.Open(0.5).Fit(view.Camera{}, 1)})
	require.Len(t, d.Items, 1, "the wall")
}

func benchRound(b *testing.B, r *view.Round, share float64) {
	b.Run("open", func(b *testing.B) {
		for b.Loop() {
			r.Open(share)
		}
	})
	b.Run("draw", func(b *testing.B) {
		u := r.Open(share)
		cams := cameras(60)[12:]
		for i := range cams {
			cams[i] = u.Fit(cams[i], 1.5)
		}
		items, i := 0, 0
		b.ReportAllocs()
		for b.Loop() {
			items += len(u.Draw(view.RoundOptions{Camera: cams[i%len(cams)], Aspect: 1.5}).Items)
			i++
		}
		b.ReportMetric(float64(items)/float64(i), "items")
	})
}

func BenchmarkRoundStudy(b *testing.B) { benchRound(b, example(b, "study"), 0.3) }

func BenchmarkRoundJobM(b *testing.B) {
	p := jobs.M(1)
	b.Run("make", func(b *testing.B) {
		for b.Loop() {
			arranged(p)
		}
	})
	benchRound(b, arranged(p)[0], 0.3)
}
