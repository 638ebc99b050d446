package wall

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// near20 is a reach of 20 mm on the wall, and a leave of 32: 10 and 16 px at 2 mm a px.
func near20(off ...string) SnapOptions {
	return SnapOptions{Reach: 20 * mm, Leave: 32 * mm, Off: off, Gaps: shop.Default(unit.Metric).Gaps}
}

// only one kind, the others off.
func kind(k string) SnapOptions {
	var off []string
	for _, other := range snapKinds {
		if other != k {
			off = append(off, other)
		}
	}
	return near20(off...)
}

// bare is a wall of 4000 by 2500 of which no stud is known.
func bare() plan.Wall { return plan.Wall{ID: "w1", Width: 4000 * mm, Height: 2500 * mm} }

// shelf is a board without brackets: 400 by 20, its pivot in the middle.
func shelf(id string) module.Result { return plank(id, 400*mm, 200*mm, 20*mm, 0) }

func at(id string, x, y unit.Length) plan.Pose { return plan.Pose{Module: id, X: x * mm, Y: y * mm} }

func TestSnapToAStud(t *testing.T) {
	// Rods at 60 and 460 of 520: with the pivot at 1000 they come to 800 and 1200.
	m := []module.Result{plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)}
	w := surveyed()
	snap := func(x unit.Length, o SnapOptions) (plan.Pose, []Snap) {
		return SnapTo(w, plan.Arrangement{}, m, []string{"m1"}, at("m1", x, 1500), o)
	}
	p, s := snap(1012, kind(SnapStud))
	require.Equal(t, at("m1", 1000, 1500), p)
	require.Equal(t, []Snap{{Kind: SnapStud, Axis: "x", At: 800 * mm, By: -12 * mm, To: "2", Of: "b1"}}, s, "both rods are as near: the first")
	p, s = snap(1021, kind(SnapStud))
	require.Equal(t, at("m1", 1021, 1500), p, "out of reach")
	require.Empty(t, s)

	w.Studs.Each = []plan.Stud{{X: 1210 * mm, State: plan.EdgesFound}}
	_, s = snap(1012, kind(SnapStud))
	require.Equal(t, []Snap{{Kind: SnapStud, Axis: "x", At: 1210 * mm, By: -2 * mm, To: "3", Of: "b2"}}, s, "the nearer")

	w.Studs.Each[0].State = plan.OnePoint
	_, s = snap(1012, kind(SnapStud))
	require.Equal(t, "2", s[0].To, "a stud found at one point is no wood yet")
	w.Studs.State = plan.Guess
	_, s = snap(1012, kind(SnapStud))
	require.Empty(t, s)
	w = surveyed()
	w.Studs.Width = plan.Studs{}.Width
	_, s = snap(1012, kind(SnapStud))
	require.Empty(t, s, "nor is one of which the width is not known")

	w = surveyed()
	_, s = snap(1012, near20(SnapStud, SnapCentre))
	require.Empty(t, s, "switched off")
}

// A rod works in a level board only, so a module that stands upright sticks to no stud;
// upside down it sticks with what is then on the right.
func TestSnapToAStudAsksThePose(t *testing.T) {
	m := []module.Result{plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 400*mm)}
	snap := func(turn unit.Angle, x unit.Length) []Snap {
		p := at("m1", x, 1500)
		p.Turn = turn
		_, s := SnapTo(surveyed(), plan.Arrangement{}, m, []string{"m1"}, p, kind(SnapStud))
		return s
	}
	require.Empty(t, snap(unit.QuarterTurn, 1003))
	require.Equal(t, []Snap{{Kind: SnapStud, Axis: "x", At: 1200 * mm, By: -3 * mm, To: "3", Of: "b1"}}, snap(unit.HalfTurn, 1003), "1003 + 200")
}

func TestSnapToALine(t *testing.T) {
	m := []module.Result{shelf("m1")}
	a := plan.Arrangement{Lines: []plan.Line{{ID: "h1", Height: 1500 * mm}, {ID: "h2", Height: 1535 * mm}}}
	snap := func(y unit.Length) []Snap {
		_, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", 1000, y), kind(SnapLine))
		return s
	}
	line := func(to string, at, by unit.Length, of string) []Snap {
		return []Snap{{Kind: SnapLine, Axis: "y", At: at * mm, By: by * mm, To: to, Of: of}}
	}
	require.Equal(t, line("h1", 1500, -3, "bottom"), snap(1513))
	require.Equal(t, line("h1", 1500, 3, "top"), snap(1487))
	require.Equal(t, line("h1", 1500, 10, "bottom"), snap(1500), "as near either way: the underside")
	require.Equal(t, line("h2", 1535, 4, "top"), snap(1521), "nearer than 11")
	require.Empty(t, snap(1566))

	o := kind(SnapLine)
	o.Lines = []plan.Line{{ID: "level", Height: 1700 * mm}}
	p, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", 1000, 1705), o)
	require.Equal(t, line("level", 1700, 5, "bottom"), s)
	require.Equal(t, at("m1", 1000, 1710), p)
}

func TestSnapFlush(t *testing.T) {
	m := []module.Result{shelf("m1"), shelf("m2")}
	a := plan.Arrangement{Poses: []plan.Pose{at("m2", 1000, 1500)}} // 800 to 1200 by 1490 to 1510
	flush := func(axis, of string, at, by, gap unit.Length) Snap {
		return Snap{Kind: SnapFlush, Axis: axis, At: at * mm, By: by * mm, To: "m2", Of: of, Gap: gap * mm}
	}
	cases := []struct {
		x, y unit.Length
		want []Snap
	}{
		{1005, 1700, []Snap{flush("x", "left", 800, -5, 0)}},
		{1395, 1700, []Snap{flush("x", "left", 1200, 5, 0)}},
		{610, 1700, []Snap{flush("x", "right", 800, -10, 0)}},
		{1395, 1525, []Snap{flush("x", "left", 1200, 5, 0), flush("y", "bottom", 1510, -2, 3)}}, // it faces until it lies above
		{1395, 1518, []Snap{flush("x", "left", 1200, 5, 0), flush("y", "bottom", 1510, 5, 3)}},  // it overlaps, and does not when x is asked
		{2000, 1507, []Snap{flush("y", "bottom", 1490, -7, 0)}},
		{2000, 1523, []Snap{flush("y", "bottom", 1510, -3, 0)}},
		{1100, 1514, []Snap{flush("y", "bottom", 1510, 9, 3)}}, // touching, as the shop leaves it
		{1100, 1485, []Snap{flush("y", "top", 1490, -8, 3)}},
		{2000, 1700, nil},
	}
	for _, c := range cases {
		_, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", c.x, c.y), kind(SnapFlush))
		require.Equal(t, c.want, s, "%d %d", c.x, c.y)
	}
	// Side by side, heights off: the gap of 3.
	o := kind(SnapFlush)
	p, s := SnapTo(bare(), plan.Arrangement{Poses: []plan.Pose{at("m2", 1000, 1500)}}, m, []string{"m1"}, at("m1", 1397, 1500), o)
	require.Equal(t, at("m1", 1403, 1500), p)
	require.Equal(t, []Snap{flush("x", "left", 1200, 6, 3), flush("y", "bottom", 1490, 0, 0)}, s)
}

func TestSnapFlushWithObstaclesAndEnds(t *testing.T) {
	m := []module.Result{shelf("m1")}
	w := bare()
	w.Obstacles = []plan.Obstacle{
		{ID: "o1", Kind: plan.Window, X: 1000 * mm, Y: 900 * mm, Width: 800 * mm, Height: 1000 * mm},
		{ID: "o2", Kind: plan.Socket, X: 3000 * mm, Y: 300 * mm, Width: 80 * mm, Height: 80 * mm},
	}
	g := shop.Default(unit.Metric).Gaps
	snap := func(x, y unit.Length) []Snap {
		_, s := SnapTo(w, plan.Arrangement{}, m, []string{"m1"}, at("m1", x, y), kind(SnapFlush))
		return s
	}
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "x", At: 1000 * mm, By: 8 * mm, To: "o1", Of: "left"}}, snap(1192, 2100), "above the window, at its left edge")
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "x", At: 1000 * mm, By: 10*mm - g.Frame, To: "o1", Of: "right", Gap: g.Frame}}, snap(790, 1400), "beside it, clear of its frame")
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "y", At: 1900 * mm, By: -4 * mm, To: "o1", Of: "top"}}, snap(500, 1894), "its top with the window's")
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "y", At: 380 * mm, By: g.Socket - 145*mm, To: "o2", Of: "bottom", Gap: g.Socket}}, snap(3020, 535), "above a socket, clear of its plugs")
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "x", At: 0, By: g.Frame + 7*mm, To: LeftEnd, Of: "left", Gap: g.Frame}}, snap(193, 2300))
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "x", At: 4000 * mm, By: 11*mm - g.Frame, To: RightEnd, Of: "right", Gap: g.Frame}}, snap(3789, 2300))
	require.Empty(t, snap(-195, 2300), "off the wall, beyond its left end")
}

// m1 is moved beside a row whose gaps are 60 and 90: between 400, 400 and 400 wide ones.
func TestSnapToAGap(t *testing.T) {
	m := []module.Result{shelf("m1"), shelf("m2"), shelf("m3"), shelf("m4"), shelf("m5")}
	a := plan.Arrangement{Poses: []plan.Pose{at("m4", 1150, 1500), at("m2", 200, 1500), at("m3", 660, 1500)}} // 0–400, 460–860, 950–1350
	snap := func(x, y unit.Length) []Snap {
		_, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", x, y), kind(SnapGap))
		return s
	}
	gap := func(of, to string, at, by, gap unit.Length, like ...string) []Snap {
		return []Snap{{Kind: SnapGap, Axis: "x", At: at * mm, By: by * mm, To: to, Of: of, Gap: gap * mm, Like: [2]string{like[0], like[1]}}}
	}
	require.Equal(t, gap("left", "m4", 1350, 4, 60, "m2", "m3"), snap(1606, 1500))
	require.Equal(t, gap("left", "m4", 1350, -4, 90, "m3", "m4"), snap(1644, 1500))
	require.Equal(t, gap("left", "m4", 1350, -15, 60, "m2", "m3"), snap(1625, 1500), "15 is as near as 15: the pair from the left")
	require.Empty(t, snap(1606, 1530), "above the row")
	a.Poses = append(a.Poses, at("m5", 2500, 1500))
	require.Equal(t, gap("right", "m5", 2300, 5, 60, "m2", "m3"), snap(2035, 1500))

	// A column, from below: gaps count along y as well.
	a.Poses = []plan.Pose{at("m2", 1000, 500), at("m3", 1100, 700)} // 490–510, 690–710: 180 between
	_, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", 1050, 905), kind(SnapGap))
	require.Equal(t, []Snap{{Kind: SnapGap, Axis: "y", At: 710 * mm, By: -5 * mm, To: "m3", Of: "bottom", Gap: 180 * mm, Like: [2]string{"m2", "m3"}}}, s)
}

// The gap in which the module itself stands is none that it could repeat.
func TestSnapGapPassesOverItsOwn(t *testing.T) {
	m := []module.Result{shelf("m1"), shelf("m2"), plank("m3", 1000*mm, 200*mm, 20*mm, 0)}
	a := plan.Arrangement{Poses: []plan.Pose{at("m2", 500, 1500), at("m3", 1500, 1500)}} // 700 to 1000
	_, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", 1205, 1500), kind(SnapGap))
	require.Empty(t, s, "300 right of m2 is where m3 begins")
}

func TestSnapToACentre(t *testing.T) {
	m := []module.Result{shelf("m1"), shelf("m2"), plank("m3", 401*mm, 200*mm, 20*mm, 0)}
	snap := func(x, y unit.Length, w plan.Wall, poses ...plan.Pose) []Snap {
		_, s := SnapTo(w, plan.Arrangement{Poses: poses}, m, []string{"m1"}, at("m1", x, y), kind(SnapCentre))
		return s
	}
	centre := func(axis, to string, at, by unit.Length, like ...string) Snap {
		s := Snap{Kind: SnapCentre, Axis: axis, At: at * mm, By: by * mm, To: to, Of: "middle"}
		copy(s.Like[:], like)
		return s
	}
	require.Equal(t, []Snap{centre("x", "m2", 700, -8)}, snap(708, 2100, bare(), at("m2", 700, 1500)))
	require.Equal(t, []Snap{centre("x", "w1", 2000, -8)}, snap(2008, 2100, bare()), "the wall's middle")
	require.Equal(t, []Snap{centre("y", Floor, 1250, 10, Floor, Ceiling)}, snap(1000, 1240, bare()), "between floor and ceiling")
	require.Equal(t, []Snap{centre("x", LeftEnd, 400, 5, LeftEnd, "m2"), centre("y", "m2", 1500, -3)}, snap(395, 1503, bare(), at("m2", 1000, 1500)), "between the end and 800")

	w := bare()
	w.Obstacles = []plan.Obstacle{{ID: "o1", Kind: plan.Furniture, X: 500 * mm, Width: 1400 * mm, Height: 800 * mm}, {ID: "o2", Kind: plan.Socket, X: 3000 * mm, Y: 200 * mm, Width: 80 * mm, Height: 80 * mm}}
	require.Equal(t, []Snap{centre("x", "o1", 1200, 9)}, snap(1191, 1600, w), "over the sofa")
	require.Empty(t, snap(3045, 1700, w), "over a socket")

	// Widths that differ by an odd number of nanometres: rounded down once.
	p, s := SnapTo(bare(), plan.Arrangement{Poses: []plan.Pose{at("m2", 700, 1500)}}, []module.Result{plank("m1", 400*mm+1, 200*mm, 20*mm, 0), m[1]}, []string{"m1"}, at("m1", 708, 2100), kind(SnapCentre))
	require.Equal(t, -8*mm-1, s[0].By)
	require.Equal(t, 700*mm-1, p.X)
}

// Each kind goes before the next, however near that is.
func TestKindsGoInOrder(t *testing.T) {
	m := []module.Result{plank("m1", 520*mm, 200*mm, 20*mm, 0, 60*mm, 460*mm), shelf("m2"), shelf("m3"), shelf("m4")}
	a := plan.Arrangement{
		Poses: []plan.Pose{at("m2", 250, 1500), at("m3", 950, 1500), at("m4", 1500, 800)}, // 50–450, 750–1150: 300 between
		Lines: []plan.Line{{ID: "h1", Height: 1495 * mm}},
	}
	// Wanted at 1705, 1500: rods at 1505 and 1905 and a stud at 1520, 15 away; its left
	// edge at 1445, 5 from a gap of 300 and 145 from m4's left at 1300, and its middle 5
	// from m4's right at 1700.
	w := bare()
	w.Build = plan.BuildStuds
	w.Studs = plan.Studs{Material: "wood", Width: some(38 * mm), Each: []plan.Stud{{X: 1520 * mm, State: plan.EdgesFound}}}
	w.Obstacles = []plan.Obstacle{
		{ID: "o1", Kind: plan.Other, X: 1433 * mm, Y: 100 * mm, Width: 200 * mm, Height: 100 * mm},
		{ID: "o2", Kind: plan.Other, X: 1604 * mm, Y: 300 * mm, Width: 200 * mm, Height: 100 * mm},
	}
	var off []string
	for _, want := range []struct {
		x, y string
		by   unit.Length
	}{
		{SnapStud, SnapLine, 15}, {SnapFlush, SnapLine, -12}, {SnapFlush, SnapFlush, -12}, {SnapGap, SnapCentre, 5}, {SnapCentre, SnapCentre, -1},
	} {
		_, s := SnapTo(w, a, m, []string{"m1"}, at("m1", 1705, 1500), near20(off...))
		require.Len(t, s, 2, "%v", off)
		require.Equal(t, []string{want.x, want.y}, []string{s[0].Kind, s[1].Kind}, "%v", off)
		require.Equal(t, want.by*mm, s[0].By)
		off = append(off, snapKinds[len(off)])
	}
	_, s := SnapTo(w, a, m, []string{"m1"}, at("m1", 1705, 1500), near20(off...))
	require.Empty(t, s)
}

// Stuck from 20, it holds to 32 and no farther; and it does not stick again until 20.
func TestSnapsHoldUntilPulledOff(t *testing.T) {
	m := []module.Result{shelf("m1"), shelf("m2")}
	a := plan.Arrangement{Poses: []plan.Pose{at("m2", 1000, 1500)}}
	o := kind(SnapFlush)
	step := func(x unit.Length) unit.Length {
		p, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", x, 2000), o)
		o.Held = s
		return p.X / mm
	}
	require.Equal(t, unit.Length(975), step(975), "not near enough")
	require.Equal(t, unit.Length(1000), step(980))
	require.Equal(t, unit.Length(1000), step(1032))
	require.Equal(t, unit.Length(1000), step(968))
	require.Equal(t, unit.Length(967), step(967))
	require.Equal(t, unit.Length(968), step(968))
	require.Equal(t, unit.Length(1000), step(981))

	// Along x and along y at a time.
	o.Held = nil
	both := func(x, y unit.Length) plan.Pose {
		p, s := SnapTo(bare(), a, m, []string{"m1"}, at("m1", x, y), o)
		o.Held = s
		return p
	}
	require.Equal(t, at("m1", 1000, 1513+10), both(1010, 1530))
	require.Equal(t, at("m1", 1000, 1513+10), both(1030, 1550))
	require.Equal(t, at("m1", 1033, 1513+10), both(1033, 1550))
	require.Equal(t, at("m1", 1033, 1556), both(1033, 1556))

	// Something as good that comes nearer does not take it away.
	o.Held = []Snap{{Kind: SnapFlush, Axis: "x", At: 800 * mm, To: "m2", Of: "left"}}
	m, a.Poses = append(m, shelf("m3")), append(a.Poses, at("m3", 1025, 600))
	require.Equal(t, unit.Length(1000), step(1024))
	o.Held = nil
	require.Equal(t, unit.Length(1025), step(1024))
	// What goes before it does.
	o = near20(SnapCentre)
	o.Held = []Snap{{Kind: SnapFlush, Axis: "y", At: 1490 * mm, To: "m2", Of: "bottom"}}
	low := plan.Arrangement{Poses: []plan.Pose{at("m2", 3000, 1500)}}
	p, s := SnapTo(bare(), low, m, []string{"m1"}, at("m1", 1000, 1530), o)
	require.Equal(t, at("m1", 1000, 1500), p, "held at 30")
	low.Lines = []plan.Line{{ID: "h1", Height: 1538 * mm}}
	p, s = SnapTo(bare(), low, m, []string{"m1"}, at("m1", 1000, 1530), o)
	require.Equal(t, at("m1", 1000, 1528), p)
	require.Equal(t, "h1", s[0].To)
	// What was held and is gone, or switched off, holds nothing.
	o.Off = append(o.Off, SnapFlush, SnapLine)
	p, s = SnapTo(bare(), low, m, []string{"m1"}, at("m1", 1000, 1530), o)
	require.Equal(t, at("m1", 1000, 1530), p)
	require.Empty(t, s)
}

// Several in the hand: the box round both sticks, each bracket counts, and they do not
// stick to each other.
func TestSnapSeveral(t *testing.T) {
	m := []module.Result{shelf("m1"), plank("m2", 400*mm, 200*mm, 20*mm, 0, 100*mm), shelf("m3")}
	a := plan.Arrangement{Poses: []plan.Pose{at("m1", 1000, 1500), at("m2", 1500, 1600), at("m3", 3000, 1000)}}
	snap := func(x, y unit.Length, k string) []Snap {
		_, s := SnapTo(surveyed(), a, m, []string{"m1", "m2"}, at("m1", x, y), kind(k))
		return s
	}
	require.Equal(t, []Snap{{Kind: SnapStud, Axis: "x", At: 1600 * mm, By: -10 * mm, To: "4", Of: "b1"}}, snap(1210, 1500, SnapStud), "m2 then stands at 1710, its rod at 1610")
	require.Equal(t, []Snap{{Kind: SnapFlush, Axis: "y", At: 1010 * mm, By: -9 * mm, To: "m3", Of: "top"}}, snap(1000, 909, SnapFlush), "the top of m2 is at 1019")
	require.Empty(t, snap(1000, 1500, SnapFlush))
}

func TestSnapOfNothing(t *testing.T) {
	p := at("m1", 5, 5)
	for _, moving := range [][]string{nil, {"m1"}, {"m9"}} {
		got, s := SnapTo(surveyed(), poses(p), []module.Result{{ID: "m1"}}, moving, p, near20())
		require.Equal(t, p, got)
		require.Empty(t, s)
	}
	bad := shelf("m1")
	bad.Fixings = plank("m1", 100*mm, 0, 0, 0, 50*mm).Fixings
	bad.Boards = nil
	_, s := SnapTo(surveyed(), plan.Arrangement{}, []module.Result{bad}, []string{"m1"}, at("m1", 990, 300), kind(SnapStud))
	require.Empty(t, s)
}

// drawWall draws a wall with modules on it, some turned, on places of whole 10 mm so that
// much is near to much.
func drawWall(t *rapid.T) (plan.Wall, plan.Arrangement, []module.Result) {
	w := surveyed()
	w.FloorRise, w.CeilingRise = some(unit.Length(rapid.Int64Range(-30, 30).Draw(t, "rise"))*mm), some(unit.Length(0))
	for i := range rapid.IntRange(0, 4).Draw(t, "obstacles") {
		ten := func(name string, lo, hi int64) unit.Length {
			return 10 * mm * unit.Length(rapid.Int64Range(lo, hi).Draw(t, name))
		}
		w.Obstacles = append(w.Obstacles, plan.Obstacle{
			ID: fmt.Sprint("o", i), Kind: rapid.SampledFrom([]string{plan.Socket, plan.Window, plan.Furniture, plan.Radiator, plan.Picture}).Draw(t, "kind"),
			X: ten("x", 0, 300), Y: ten("y", 0, 200), Width: ten("width", 5, 90), Height: ten("height", 5, 90),
		})
	}
	var ms []module.Result
	var a plan.Arrangement
	for i := range rapid.IntRange(1, 12).Draw(t, "modules") {
		length := 10 * mm * unit.Length(rapid.Int64Range(10, 90).Draw(t, "length"))
		m := plank(fmt.Sprint("m", i), length, 200*mm, 24*mm, 0, 30*mm, length-30*mm)
		ms = append(ms, m)
		p := at(m.ID, 10*unit.Length(rapid.Int64Range(0, 360).Draw(t, "x")), 10*unit.Length(rapid.Int64Range(0, 250).Draw(t, "y")))
		p.Turn = unit.Angle(rapid.SampledFrom([]int64{0, 0, 90, 180, 270, 33}).Draw(t, "turn")) * deg
		p.Flip = rapid.Bool().Draw(t, "flip")
		a.Poses = append(a.Poses, p)
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "lines") {
		a.Lines = append(a.Lines, plan.Line{ID: fmt.Sprint("h", i), Height: 10 * mm * unit.Length(rapid.Int64Range(0, 240).Draw(t, "height"))})
	}
	return w, a, ms
}

// What snaps goes no farther than the reach, or the leave where it was held; it goes where
// it says; and a hand that rests does not make it jump: asked again, holding what it
// holds, it says the same.
func TestSnapsAreInReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, a, ms := drawWall(t)
		o := near20()
		moving := []string{ms[0].ID}
		if len(ms) > 2 && rapid.Bool().Draw(t, "two") {
			moving = append(moving, ms[1].ID)
		}
		wanted := a.Poses[0]
		for range 3 {
			wanted.X += unit.Length(rapid.Int64Range(-30e6, 30e6).Draw(t, "dx"))
			wanted.Y += unit.Length(rapid.Int64Range(-30e6, 30e6).Draw(t, "dy"))
			limit := o.Reach
			if len(o.Held) > 0 {
				limit = o.Leave
			}
			got, s := SnapTo(w, a, ms, moving, wanted, o)
			moved := map[string]unit.Length{"x": got.X - wanted.X, "y": got.Y - wanted.Y}
			require.LessOrEqual(t, len(s), 2)
			for _, axis := range []string{"x", "y"} {
				require.LessOrEqual(t, moved[axis].Abs(), limit)
			}
			for _, p := range s {
				require.Equal(t, moved[p.Axis], p.By)
				delete(moved, p.Axis)
			}
			for axis, by := range moved {
				require.Zero(t, by, "moved along %s and does not say why", axis)
			}
			o.Held = s
			again, held := SnapTo(w, a, ms, moving, wanted, o)
			require.Equal(t, got, again)
			require.Equal(t, s, held)
		}
	})
}

// The box that snapping reckons with is that of the outlines.
func TestBoxOfAPlacing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, a, ms := drawWall(t)
		for i, p := range a.Poses {
			require.Equal(t, Place(ms[i], p).Box, PlacingOf(ms[i], p).box(&ms[i]))
		}
	})
}

// crowd is a wall with n modules in rows of shelves with uprights.
func crowd(n int) (plan.Wall, plan.Arrangement, []module.Result) {
	w := surveyed()
	w.Width, w.Height = unit.Length(n)*250*mm, 2600*mm
	var ms []module.Result
	var a plan.Arrangement
	for i := range n {
		m := plank(fmt.Sprint("m", i), unit.Length(300+i%7*40)*mm, 200*mm, 24*mm, 0, 60*mm, 240*mm)
		for k := range 3 {
			o := module.Outline{Board: fmt.Sprint(m.ID, ".", k+2)}
			for _, p := range m.Outlines[0].Points {
				o.Points = append(o.Points, module.XY{X: p.X, Y: p.Y + unit.Length(k+1)*90*mm})
			}
			m.Outlines = append(m.Outlines, o)
		}
		finish(&m)
		ms = append(ms, m)
		a.Poses = append(a.Poses, at(m.ID, unit.Length(300+i/4*700), unit.Length(300+i%4*500)))
	}
	a.Lines = []plan.Line{{ID: "h1", Height: 1500 * mm}, {ID: "h2", Height: 900 * mm}}
	return w, a, ms
}

func BenchmarkSnapTo(b *testing.B) {
	for _, n := range []int{48, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			w, a, ms := crowd(n)
			o := near20()
			for b.Loop() {
				_, o.Held = SnapTo(w, a, ms, []string{"m5"}, at("m5", 1011, 1507), o)
			}
		})
	}
}
