package wall

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

func fits(r Result) (keys []string) {
	for _, f := range r.Findings {
		if f.Kind.Verdict == finding.Fits && f.Kind != deepHole {
			keys = append(keys, f.Kind.Key)
		}
	}
	return keys
}

func TestGapsBetweenModules(t *testing.T) {
	a := plank("m1", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm)
	b := plank("m2", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm)
	cases := []struct {
		gap  unit.Length
		want []string
	}{
		{-1 * mm, []string{"modules-overlap"}},
		{0, []string{"tight-gap"}},
		{2 * mm, []string{"tight-gap"}},
		{3 * mm, nil},
		{3*mm + unit.Touch, nil},
		{4 * mm, []string{"near-miss"}},
		{19 * mm, []string{"near-miss"}},
		{20*mm - unit.Touch, nil},
		{300 * mm, nil},
	}
	for _, c := range cases {
		r := arrange(surveyed(), poses(
			plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm},
			plan.Pose{Module: "m2", X: 1400*mm + c.gap, Y: 1500 * mm}), a, b)
		require.Equal(t, c.want, fits(r), "%v", c.gap)
		require.Equal(t, []Clearance{{"m1", "m2", c.gap}, {"m2", "m1", c.gap}}, r.Nearest)
	}
}

// The remedies move the later module clear of everything: doing one leaves nothing to
// say.
func TestMovesOfRemediesDoIt(t *testing.T) {
	a := plank("m1", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm)
	b, c := plank("m2", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm), plank("m3", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm)
	w := surveyed()
	w.Obstacles = []plan.Obstacle{{ID: "o1", Kind: plan.Window, Name: "Window", X: 2300 * mm, Y: 900 * mm, Width: 700 * mm, Height: 1000 * mm}}
	pose := plan.Pose{Module: "m2", X: 1350 * mm, Y: 1507 * mm}
	rest := []plan.Pose{{Module: "m1", X: 1000 * mm, Y: 1500 * mm}, {Module: "m3", X: 1790 * mm, Y: 1500 * mm}}
	r := arrange(w, poses(append(rest, pose)...), a, b, c)
	f := r.Findings[slices.Index(kindsOf(r.Findings), "modules-overlap")]
	require.Equal(t, "m2", f.Place.Module)
	moves := 0
	for _, rem := range f.Remedies {
		if rem.Edit.Do != "move" {
			continue
		}
		moves++
		m, p := moveOf(rem), pose
		p.X, p.Y = p.X+m.dx, p.Y+m.dy
		require.Empty(t, fits(arrange(w, poses(append(rest, p)...), a, b, c)), "%+v", m)
		require.Zero(t, (m.dx+m.dy)%mm, "a whole step")
	}
	require.Equal(t, 2, moves)
	require.Equal(t, move{dy: 37 * mm}, moveOf(f.Remedies[0]), "up from 1495 to 1512, and 20 between")
	require.Equal(t, move{dy: -51 * mm}, moveOf(f.Remedies[1]), "down from 1519 to 1488, and 20 between")
}

func TestNearMissIsClosedUpExactly(t *testing.T) {
	a := plank("m1", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm)
	b := plank("m2", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm)
	r := arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}, plan.Pose{Module: "m2", X: 1407300 * unit.Micrometre, Y: 1500 * mm}), a, b)
	f := only(t, r, "near-miss")
	require.Equal(t, 7300*unit.Micrometre, f.Value.Length)
	require.Contains(t, f.Remedies, moved("a1", "m2", "m2", -4300*unit.Micrometre, 0))
}

func TestEndsFloorAndCeiling(t *testing.T) {
	w := surveyed()
	w.FloorRise, w.CeilingRise = some(36*mm), some(-36*mm) // one in a hundred
	m := plank("m1", 400*mm, 200*mm, 20*mm, 0, 100*mm, 300*mm)
	at := func(x, y unit.Length) Result {
		return arrange(w, poses(plan.Pose{Module: "m1", X: x, Y: y}), m)
	}
	cases := []struct {
		x, y  unit.Length
		kind  string
		value unit.Length
		move  move
	}{
		{203 * mm, 1500 * mm, "end-near", 3 * mm, move{dx: 2 * mm}},
		{190 * mm, 1500 * mm, "past-end", 10 * mm, move{dx: 15 * mm}},
		{3500 * mm, 1500 * mm, "past-end", 100 * mm, move{dx: -105 * mm}},
		{1000 * mm, 20 * mm, "below-floor", 2 * mm, move{dy: 2 * mm}},                                         // floor at 1200: 12, board from 10
		{1000 * mm, 2450 * mm, "ceiling-near", 28 * mm, move{dy: -22 * mm}},                                   // ceiling at 1200: 2488
		{1000 * mm, 2480500 * unit.Micrometre, "through-ceiling", 2500 * unit.Micrometre, move{dy: -53 * mm}}, // 52.5, up
	}
	for _, c := range cases {
		f := only(t, at(c.x, c.y), c.kind)
		require.Equal(t, c.value, f.Value.Length, c.kind)
		require.Equal(t, c.move, moveOf(f.Remedies[0]), c.kind)
	}
	require.Equal(t, []Clearance{{"m1", Floor, 300*mm - 12*mm}}, at(1000*mm, 310*mm).Nearest)
	require.Equal(t, []Clearance{{"m1", LeftEnd, 100 * mm}}, at(300*mm, 1500*mm).Nearest)
}

func TestObstacles(t *testing.T) {
	m := plank("m1", 400*mm, 200*mm, 20*mm, 0, 100*mm, 300*mm) // 800 to 1200 by 1490 to 1510
	pose := poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm})
	thing := func(kind string, y unit.Length, depth ...unit.Length) plan.Obstacle {
		o := plan.Obstacle{ID: "o1", Kind: kind, X: 950 * mm, Y: y, Width: 100 * mm, Height: 100 * mm}
		if len(depth) > 0 {
			o.Depth = some(depth[0])
		}
		return o
	}
	cases := []struct {
		name string
		o    plan.Obstacle
		want []string
	}{
		{"deep enough to be in the way", thing(plan.Picture, 1450*mm, 3*mm), []string{"obstacle-overlap"}},
		{"unknown depth is deep", thing(plan.Other, 1450*mm), []string{"obstacle-overlap"}},
		{"flat on the wall", thing(plan.Picture, 1450*mm, 0), nil},
		{"a window is a hole, however flat", thing(plan.Window, 1450*mm, 0), []string{"obstacle-overlap"}},
		{"4 above a window", thing(plan.Window, 1386*mm), []string{"obstacle-near"}},
		{"5 above a window", thing(plan.Window, 1385*mm), nil},
		{"149 above a socket", thing(plan.Socket, 1241*mm), []string{"obstacle-near"}},
		{"150 above a socket", thing(plan.Socket, 1240*mm), nil},
		{"furniture below", thing(plan.Furniture, 1000*mm, 400*mm), nil},
		{"furniture in front of a shelf on rods", thing(plan.Furniture, 1450*mm, 400*mm), []string{"room-in-front"}},
		{"above a radiator", thing(plan.Radiator, 500*mm, 80*mm), []string{"above-radiator"}},
	}
	for _, c := range cases {
		w := surveyed()
		w.CableRule = NoRule
		w.Obstacles = []plan.Obstacle{c.o}
		r := arrange(w, pose, m)
		got := slices.DeleteFunc(fits(r), func(k string) bool { return k == "cables-not-checked" })
		require.Equal(t, c.want, append([]string(nil), got...), c.name)
	}
	w := surveyed()
	w.Obstacles = []plan.Obstacle{thing(plan.Furniture, 1450*mm, 400*mm)}
	f := only(t, arrange(w, pose, m), "room-in-front")
	require.Equal(t, 145*mm, f.Limit.Length, "125 of rod in the board and 20")
	w.Obstacles = []plan.Obstacle{thing(plan.Picture, 1450*mm, 3*mm)}
	f = only(t, arrange(w, pose, m), "obstacle-overlap")
	require.Equal(t, 20*mm+40*mm, f.Value.Length, "up from 1490 to 1550")
}

// Two hooked uprights one above the other: the lower is raised by 15, so it goes first
// when less than that is between them.
func TestOrderOfHanging(t *testing.T) {
	low, high := plank("m1", 300*mm, 200*mm, 24*mm, 90*deg), plank("m2", 300*mm, 200*mm, 24*mm, 90*deg)
	low.Fixings = []board.Fixing{hookAt("m1.1", "b1", 250*mm, 24*mm)}
	high.Fixings = []board.Fixing{hookAt("m2.1", "b1", 250*mm, 24*mm)}
	at := func(gap unit.Length) Result {
		return arrange(surveyed(), poses(plan.Pose{Module: "m2", X: 1200 * mm, Y: 1300*mm + gap}, plan.Pose{Module: "m1", X: 1200 * mm, Y: 1000 * mm}), low, high)
	}
	require.Empty(t, at(15*mm).Order)
	require.Equal(t, []string{"m1", "m2"}, at(3*mm).Order)
	w := surveyed()
	w.Height = 1160 * mm
	f := only(t, arrange(w, poses(plan.Pose{Module: "m1", X: 1200 * mm, Y: 1000 * mm}), low), "no-lift")
	require.Equal(t, [2]unit.Length{10 * mm, 15 * mm}, [2]unit.Length{f.Value.Length, f.Limit.Length})
	w = surveyed()
	w.Obstacles = []plan.Obstacle{{ID: "o1", Kind: plan.Window, X: 1100 * mm, Y: 1158 * mm, Width: 200 * mm, Height: 100 * mm}}
	f = only(t, arrange(w, poses(plan.Pose{Module: "m1", X: 1200 * mm, Y: 1000 * mm}), low), "no-lift")
	require.Equal(t, 8*mm, f.Value.Length)
}

func TestSequence(t *testing.T) {
	order, stuck := sequence([][]int{{1}, nil, {0}, nil})
	require.Equal(t, []int{2, 0, 1, 3}, order)
	require.Equal(t, -1, stuck)
	order, stuck = sequence([][]int{nil, {2}, {3}, {1}, {1}})
	require.Empty(t, order)
	require.Contains(t, []int{1, 2, 3}, stuck, "one of the ring, not who waits for it")
}
