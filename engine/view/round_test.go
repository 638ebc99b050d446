package view_test

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
	"ledgewright/testdata/jobs"
)

// arranged works out every arrangement of a plan.
func arranged(p plan.Plan) (out []*view.Round) {
	var modules []module.Result
	for _, m := range p.Modules {
		modules = append(modules, module.Derive(m, p.Shop))
	}
	for _, a := range p.Arrangements {
		for _, w := range p.Walls {
			if w.ID == a.Wall {
				out = append(out, view.NewRound(w, wall.Arrange(w, a, modules, p.Shop, p.Units), modules))
			}
		}
	}
	return out
}

// overlaps returns places inside both of two faces of a picture: on a few level lines, or
// where none of them meets both, wherever the two overlap by more than least each way. For
// that the picture is cut into level strips in which no outline begins, ends or crosses
// another.
func overlaps(a, b *view.Sheet, low, high, least float64) (places [][2]float64) {
	if high-low < 2*least {
		return nil
	}
	for _, k := range [...]float64{0.4991, 0.2513, 0.7489} {
		places = appendShared(places, a, b, low+k*(high-low), least)
	}
	if len(places) > 0 {
		return places
	}
	if parted(a, b) || parted(b, a) {
		return nil
	}
	ys := events(nil, a, b)
	for i := range len(ys) - 1 {
		if ys[i+1]-ys[i] > least && ys[i] >= low && ys[i+1] <= high {
			places = appendShared(places, a, b, (ys[i]+ys[i+1])/2, least)
		}
	}
	return places
}

// appendShared appends the middle of the longest stretch of a level line in both faces.
func appendShared(places [][2]float64, a, b *view.Sheet, y, least float64) [][2]float64 {
	var store [2][64]float64
	p, q := spans(store[0][:0], a, y), spans(store[1][:0], b, y)
	x, best := 0.0, least
	for m := 0; m+1 < len(p); m += 2 {
		for n := 0; n+1 < len(q); n += 2 {
			if lo, hi := max(p[m], q[n]), min(p[m+1], q[n+1]); hi-lo > best {
				x, best = (lo+hi)/2, hi-lo
			}
		}
	}
	if best > least {
		places = append(places, [2]float64{x, y})
	}
	return places
}

// parted reports whether the line of an edge of a has a on one side and b on the other.
func parted(a, b *view.Sheet) (found bool) {
	each(a, func(p, q [2]float64) {
		left := func(s *view.Sheet) (lo, hi float64) {
			lo, hi = math.Inf(1), math.Inf(-1)
			for _, r := range s.Seen[0] {
				d := (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0])
				lo, hi = min(lo, d), max(hi, d)
			}
			return lo, hi
		}
		if lo, _ := left(a); !found && lo > -1e-9 {
			_, hi := left(b)
			found = hi < 1e-9
		}
	})
	return found
}

// events lists the heights at which an outline turns or two outlines cross.
func events(ys []float64, a, b *view.Sheet) []float64 {
	for _, s := range [...]*view.Sheet{a, b} {
		for _, loop := range s.Seen {
			for _, p := range loop {
				ys = append(ys, p[1])
			}
		}
	}
	each(a, func(p, q [2]float64) {
		each(b, func(r, s [2]float64) {
			d, e := [2]float64{q[0] - p[0], q[1] - p[1]}, [2]float64{s[0] - r[0], s[1] - r[1]}
			det := d[0]*e[1] - d[1]*e[0]
			if math.Abs(det) < 1e-12 {
				return
			}
			t := ((r[0]-p[0])*e[1] - (r[1]-p[1])*e[0]) / det
			u := ((r[0]-p[0])*d[1] - (r[1]-p[1])*d[0]) / det
			if t > 0 && t < 1 && u > 0 && u < 1 {
				ys = append(ys, p[1]+t*d[1])
			}
		})
	})
	slices.Sort(ys)
	return ys
}

func each(s *view.Sheet, edge func(p, q [2]float64)) {
	for _, loop := range s.Seen {
		for i, p := range loop {
			edge(p, loop[(i+1)%len(loop)])
		}
	}
}

// spans lists where a level line enters and leaves a face, in the storage given.
func spans(xs []float64, s *view.Sheet, y float64) []float64 {
	for _, loop := range s.Seen {
		p := loop[len(loop)-1]
		for _, q := range loop {
			if (p[1] > y) != (q[1] > y) {
				xs = append(xs, p[0]+(q[0]-p[0])*(y-p[1])/(q[1]-p[1]))
			}
			p = q
		}
	}
	slices.Sort(xs)
	return xs
}

// cameras are n places all round, above and below, evenly spread (a spiral that turns by
// the golden angle), seen in perspective and without by turns, and the fixed views both
// ways.
func cameras(n int) (out []view.Camera) {
	for _, side := range view.Sides() {
		out = append(out, view.Camera{}.Seen(side), view.Camera{Parallel: true}.Seen(side))
	}
	for i := len(out); i < n; i++ {
		k := (float64(i) + 0.5) / float64(n)
		out = append(out, view.Camera{Yaw: float64(i) * 137.50776405, Pitch: math.Asin(2*k-1) * 180 / math.Pi, Parallel: i%2 == 0})
	}
	return out
}

// count says what was compared.
type count struct{ faces, pairs, wrong, rings int }

// logger is where wrong pairs are told.
type logger interface{ Logf(string, ...any) }

// judge compares every two faces of a picture that overlap where they do: what is drawn
// later must not be farther away by more than what corners may be off their faces.
func (n *count) judge(says logger, faces []view.Sheet, near func(*view.Sheet, float64, float64) float64, c view.Camera) {
	n.faces += len(faces)
	type item struct {
		k   int
		box drawing.Box
	}
	items := make([]item, len(faces))
	for k := range faces {
		b := drawing.Box{MinX: math.Inf(1), MinY: math.Inf(1), MaxX: math.Inf(-1), MaxY: math.Inf(-1)}
		for _, p := range faces[k].Seen[0] {
			b = b.With(drawing.Point{X: p[0], Y: p[1]})
		}
		items[k] = item{k, b}
	}
	slices.SortFunc(items, func(a, b item) int { return cmp.Compare(a.box.MinX, b.box.MinX) })
	for i := range items {
		for j := i + 1; j < len(items) && items[j].box.MinX < items[i].box.MaxX; j++ {
			if !items[i].box.Meets(items[j].box) {
				continue
			}
			first, later := &faces[min(items[i].k, items[j].k)], &faces[max(items[i].k, items[j].k)]
			low, high := max(items[i].box.MinY, items[j].box.MinY), min(items[i].box.MaxY, items[j].box.MaxY)
			at := overlaps(first, later, low, high, 0.02)
			n.pairs += min(len(at), 1)
			for _, q := range at {
				if over := near(later, q[0], q[1]) - near(first, q[0], q[1]); over > 0.05 {
					n.wrong++
					says.Logf("camera %+v: %s is drawn over %s and %.3f mm behind it at %.1f, %.1f", c, later.ID, first.ID, over, q[0], q[1])
					break
				}
			}
		}
	}
}

// In all examples, as they hang and pulled apart, from 200 places.
func TestRoundOrderOfExamples(t *testing.T) {
	places := 200
	if testing.Short() {
		places = 24
	}
	for _, name := range assets.Names() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := example(t, name)
			var opened []*view.Pulled
			for _, share := range []float64{0, 0.04, 0.5, 1} {
				opened = append(opened, r.Open(share))
			}
			var n count
			for i, c := range cameras(places) {
				faces, near, _ := view.Sheets(opened[i%4], c)
				n.judge(t, faces, near, c)
			}
			require.Zero(t, n.wrong)
			require.Greater(t, n.pairs, 10*places, "pairs that overlap")
		})
	}
}

// covers reports whether a face has a place of the picture in it, and whether so have the
// places just beside it: of an edge nothing is asked.
func covers(s *view.Sheet, x, y float64) (in, sure bool) {
	var store [64]float64
	xs := spans(store[:0], s, y)
	sure = true
	for _, e := range xs {
		in = in != (e < x)
		sure = sure && math.Abs(e-x) > 0.01
	}
	return in, sure
}

// shot compares what is drawn last with what a ray of the eye meets first, at some places
// of a picture: of all faces of all parts, whole, with none left out and none cut. It
// returns how many places had something.
func shot(t *testing.T, u *view.Pulled, c view.Camera, rng *rand.Rand, says string) (asked int) {
	faces, near, _ := view.Sheets(u, c)
	all := view.All(u, c)
	fit := u.Fit(c, 1)
	for range 60 {
		x, y := fit.X+(rng.Float64()-0.5)*fit.Span, fit.Y+(rng.Float64()-0.5)*fit.Span
		want, have, sure := math.Inf(1), math.Inf(1), true
		for k := range all {
			if in, ok := covers(&all[k], x, y); in || !ok {
				want, sure = min(want, near(&all[k], x, y)), sure && ok
			}
		}
		for k := range faces {
			if in, _ := covers(&faces[k], x, y); in {
				have = near(&faces[k], x, y)
			}
		}
		if !sure || math.IsInf(want, 1) && math.IsInf(have, 1) {
			continue
		}
		asked++
		require.InDelta(t, want, have, 0.05, "%s, camera %+v, place %.3f, %.3f", says, c, x, y)
	}
	return asked
}

func TestRoundShowsWhatARayMeetsFirst(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 7))
	asked := 0
	for _, name := range assets.Names()[:12] { // all but the wall of 48 pieces
		r := example(t, name)
		for i, share := range []float64{0, 0.5} {
			u := r.Open(share)
			for _, c := range cameras(30)[i:] {
				asked += shot(t, u, c, rng, name)
			}
		}
	}
	for seed := range uint64(12) {
		for _, r := range arranged(jobs.RandomPlan(seed)) {
			u := r.Open(0)
			for _, c := range cameras(18)[10:] {
				asked += shot(t, u, c, rng, fmt.Sprint("plan ", seed))
			}
		}
	}
	require.Greater(t, asked, 5000)
	t.Logf("%d places", asked)
}

type silent struct{}

func (silent) Logf(string, ...any) {}

// The judge of the test above finds what is wrong: all faces the other way round.
func TestRoundOrderIsJudged(t *testing.T) {
	p, err := assets.Plan("laundry")
	require.NoError(t, err)
	u := arranged(p)[0].Open(0)
	var n count
	for _, c := range cameras(40) {
		faces, near, _ := view.Sheets(u, c)
		slices.Reverse(faces)
		n.judge(silent{}, faces, near, c)
	}
	require.Greater(t, n.wrong, n.pairs/2)
}

// Random plans, whose modules may run into each other, from a few places each.
func TestRoundOrderOfRandomPlans(t *testing.T) {
	var all count
	for seed := range uint64(30) {
		for _, r := range arranged(jobs.RandomPlan(seed)) {
			for i, share := range []float64{0, 0.3} {
				u := r.Open(share)
				for _, c := range cameras(24)[12+i:] {
					faces, near, rings := view.Sheets(u, c)
					all.judge(t, faces, near, c)
					all.rings += rings
				}
			}
		}
	}
	t.Logf("%+v", all)
	require.Zero(t, all.wrong)
}
