package view_test

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
)

// hit returns how deep a ray of the eye through q meets a face. It works in three
// dimensions and knows nothing of orders: the slow twin of order.go.
func hit(f view.Face, eye, q drawing.Point) (float64, bool) {
	at := func(t float64) drawing.Point {
		k := (view.EyeDepth + t) / view.EyeDepth
		return drawing.Point{X: eye.X + (q.X-eye.X)*k, Y: eye.Y + (q.Y-eye.Y)*k}
	}
	if f.Ring != nil {
		return f.T0, holds(f.Ring, at(f.T0))
	}
	// the ray's place at depth t is linear in t: find where it is on the line A–B
	p0, p1 := at(0), at(1)
	nx, ny := f.B.Y-f.A.Y, f.A.X-f.B.X
	off := func(p drawing.Point) float64 { return nx*(p.X-f.A.X) + ny*(p.Y-f.A.Y) }
	if off(p1) == off(p0) {
		return 0, false
	}
	t := off(p0) / (off(p0) - off(p1))
	p := at(t)
	along := ((p.X-f.A.X)*(f.B.X-f.A.X) + (p.Y-f.A.Y)*(f.B.Y-f.A.Y)) / (nx*nx + ny*ny)
	return t, t >= f.T0 && t <= f.T1 && along >= 0 && along <= 1
}

func holds(ring []drawing.Point, p drawing.Point) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// wrong counts sample rays on which the face painted last is not the nearest one.
func wrong(t *testing.T, r *rand.Rand, rays int, w plan.Wall, res wall.Result, m []module.Result) (bad, met int) {
	eye, painted, all := view.Painted(w, res, m)
	for range rays {
		q := drawing.Point{X: r.Float64() * w.Width.MM(), Y: r.Float64() * w.Height.MM()}
		top, found := 0.0, false
		for _, f := range painted {
			if d, ok := hit(f, eye, q); ok {
				top, found = d, true
			}
		}
		nearest, any := math.Inf(1), false
		for _, f := range all {
			if d, ok := hit(f, eye, q); ok {
				nearest, any = min(nearest, d), true
			}
		}
		if any {
			met++
		}
		if any != found || any && math.Abs(nearest-top) > 0.01 {
			bad++
			if bad < 4 {
				t.Logf("at %.2f, %.2f: painted %.3f (%v), nearest %.3f (%v)", q.X, q.Y, top, found, nearest, any)
			}
		}
	}
	return bad, met
}

func TestTopmostIsNearestInTheReadingCorner(t *testing.T) {
	w, res, m := corner()
	bad, met := wrong(t, rand.New(rand.NewSource(1)), 40_000, w, res, m)
	require.Zero(t, bad)
	require.Greater(t, met, 1500)
}

func TestTopmostIsNearestOnRandomWalls(t *testing.T) {
	met := 0
	for seed := range int64(120) {
		r := rand.New(rand.NewSource(seed))
		w, res, m := randomWall(r)
		bad, n := wrong(t, r, 1500, w, res, m)
		require.Zero(t, bad, "seed %d", seed)
		met += n
	}
	require.Greater(t, met, 20_000)
}

// Round the eye four shelves lie like a pinwheel, each before the next: there is no order
// of the modules as wholes.
func TestRingRoundTheEyeIsSplit(t *testing.T) {
	w := plan.Wall{ID: "w1", Width: 3000 * mm, Height: 2660 * mm}
	var res wall.Result
	var m []module.Result
	// C is (1 500, 1 330); each shelf ends in front of the one before it
	for i, at := range [][3]unit.Length{{1560, 730, 0}, {2100, 1390, 90}, {1440, 1930, 0}, {900, 1270, 90}} {
		id := fmt.Sprintf("m%d", i+1)
		m = append(m, chain(id, "white-ash", 220*mm, 30*mm, mms(1280), nil, false))
		res.Placed = append(res.Placed, wall.Place(m[i], plan.Pose{Module: id, X: at[0] * mm, Y: at[1] * mm, Turn: unit.Angle(at[2]) * unit.Degree}))
	}
	bad, met := wrong(t, rand.New(rand.NewSource(2)), 60_000, w, res, m)
	require.Zero(t, bad)
	require.Greater(t, met, 500)
	require.Equal(t, 1, view.Clusters(w, res, m), "a ring is ordered face by face")
}

// randomWall sets modules of several shapes, depths and turns on a wall, apart from each
// other or one inside another.
func randomWall(r *rand.Rand) (plan.Wall, wall.Result, []module.Result) {
	w := plan.Wall{ID: "w1", Width: 3600 * mm, Height: 2600 * mm}
	var res wall.Result
	var all []module.Result
	place := func(m module.Result, x, y, turn unit.Length, flip bool) {
		all = append(all, m)
		res.Placed = append(res.Placed, wall.Place(m, plan.Pose{Module: m.ID, X: x * mm, Y: y * mm, Turn: unit.Angle(turn) * unit.Degree, Flip: flip}))
	}
	for i := range 4 {
		for j := range 3 {
			id := fmt.Sprintf("m%d", len(all)+1)
			x, y := unit.Length(450+900*i), unit.Length(430+870*j)
			switch r.Intn(7) {
			case 0: // a box in a box, the inner one turned and less deep
				place(box(id, 780, 640, 300), x, y, 0, false)
				place(box(id+"i", 300, 260, 180), x, y, unit.Length(r.Intn(90)), r.Intn(2) == 0)
			case 1:
				place(hexagon(id, unit.Length(150+r.Intn(200))), x, y, unit.Length(r.Intn(360)), false)
			case 2: // a shelf in a U
				place(chain(id, "elm", 250*mm, 24*mm, mms(500, 700, 500), []unit.Angle{left, left}, false), x, y, unit.Length(90*r.Intn(4)), false)
				place(chain(id+"i", "elm", 150*mm, 20*mm, mms(300), nil, false), x, y, unit.Length(r.Intn(180)), false)
			default:
				place(random(r, id), x, y, unit.Length(r.Intn(360)), r.Intn(2) == 0)
			}
		}
	}
	if r.Intn(2) == 0 { // boards that stand back from the front
		for k := range all {
			b := &all[k].Boards[r.Intn(len(all[k].Boards))]
			b.Width -= unit.Length(r.Intn(60)) * mm
		}
	}
	return w, res, all
}

func mms(l ...unit.Length) []unit.Length {
	for i := range l {
		l[i] *= mm
	}
	return l
}

func box(id string, w, h, depth unit.Length) module.Result {
	return chain(id, "white-oak", depth*mm, 26*mm, mms(w, h, w, h), []unit.Angle{left, left, left, left}, true)
}

func hexagon(id string, side unit.Length) module.Result {
	s := 60 * unit.Degree
	return chain(id, "white-oak", 200*mm, 24*mm, mms(side, side, side, side, side, side), []unit.Angle{s, s, s, s, s, s}, true)
}

// random walks a chain that does not run into itself.
func random(r *rand.Rand, id string) module.Result {
	for {
		n := 1 + r.Intn(4)
		var l []unit.Length
		var turns []unit.Angle
		for i := range n {
			l = append(l, unit.Length(160+r.Intn(240))*mm)
			if i > 0 {
				turn := unit.Angle(15+r.Intn(106)) * unit.Degree
				if r.Intn(2) == 0 {
					turn = -turn
				}
				turns = append(turns, turn)
			}
		}
		m := chain(id, "black-walnut", unit.Length(120+r.Intn(200))*mm, 22*mm, l, turns, false)
		if !tangled(m) && m.Box.MaxX-m.Box.MinX < 600*mm && m.Box.MaxY-m.Box.MinY < 600*mm {
			return m
		}
	}
}

// tangled reports whether outlines of boards that are not neighbours meet, or a board's
// mitres cross.
func tangled(m module.Result) bool {
	for i, a := range m.Outlines {
		if len(a.Points) != 4 {
			return true
		}
		for j := range i {
			b := m.Outlines[j]
			for k, p := range a.Points {
				for n, q := range b.Points {
					p2, q2 := a.Points[(k+1)%len(a.Points)], b.Points[(n+1)%len(b.Points)]
					if crosses(p, p2, q, q2) {
						return true
					}
				}
			}
		}
	}
	return false
}

func crosses(a, b, c, d module.XY) bool {
	s := func(p, q, r module.XY) float64 {
		return (q.X-p.X).MM()*(r.Y-p.Y).MM() - (q.Y-p.Y).MM()*(r.X-p.X).MM()
	}
	const e = 1e-3
	s1, s2, s3, s4 := s(a, b, c), s(a, b, d), s(c, d, a), s(c, d, b)
	return (s1 > e && s2 < -e || s1 < -e && s2 > e) && (s3 > e && s4 < -e || s3 < -e && s4 > e)
}
