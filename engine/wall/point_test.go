package wall

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// A board 520 long and 24 thick, its middle at (1000, 1500): it reaches from 740 to 1260.
// Rods at 60 and 460 come to 800 and 1200, on the middles of studs 2 and 3.
func TestWallPointsOfAShelf(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	r := arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, 1500*mm, r.Level, "the row of rods")
	require.Equal(t, 740*mm, r.Plumb, "the board's left end")
	p := Point{
		Number: "1", Module: "m1", Bracket: "b1", What: Hole, X: 800 * mm, Y: 1500 * mm, DX: 60 * mm, Drill: 12 * mm, Screw: 12 * mm, Rod: true,
		Depth: 87500 * unit.Micrometre, Grip: 75 * mm, // 12.5 of plasterboard and 75
		In: Structure{Kind: InStud, Stud: 2, Edge: 19 * mm, State: plan.EdgesFound},
	}
	q := p
	q.Number, q.Bracket, q.X, q.DX, q.In.Stud = "2", "b2", 1200*mm, 460*mm, 3
	require.Equal(t, []Point{p, q}, r.Points)
	require.Equal(t, []string{"deep-hole"}, kindsOf(r.Findings))
	require.Equal(t, 87500*unit.Micrometre, r.Findings[0].Value.Length)
}

// The same with plates: a screw 20 below and one 20 above each rod, 70 long under a plate
// of 5; numbers go by x, then by height.
func TestWallPointsOfPlates(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0)
	m.Fixings = []board.Fixing{plateAt("m1.1", "b1", 60*mm, 24*mm), plateAt("m1.1", "b2", 460*mm, 24*mm)}
	a := poses(plan.Pose{Module: "m1", X: 1000*mm + 300*unit.Micrometre, Y: 1500 * mm})
	a.Lines = []plan.Line{{ID: "h1", Height: 1450 * mm}}
	r := arrange(surveyed(), a, m)
	require.Equal(t, 1450*mm, r.Level, "the first line of the arrangement")
	require.Equal(t, 740*mm, r.Plumb, "740.3, rounded")
	type row struct {
		what     string
		dx, dy   unit.Length
		deep     unit.Length
		slot     bool
		roundedX unit.Length
	}
	var got []row
	for _, p := range r.Points {
		got = append(got, row{p.What, p.DX, p.DY, p.Depth, p.Slotted, p.RoundX})
	}
	off := -300 * unit.Micrometre
	require.Equal(t, []row{
		{Hole, 60 * mm, 30 * mm, 65 * mm, true, off}, {Axis, 60 * mm, 50 * mm, 0, false, off}, {Hole, 60 * mm, 70 * mm, 65 * mm, false, off},
		{Hole, 460 * mm, 30 * mm, 65 * mm, true, off}, {Axis, 460 * mm, 50 * mm, 0, false, off}, {Hole, 460 * mm, 70 * mm, 65 * mm, false, off},
	}, got)
}

// Rounding is on the running figure: rods 333.4 apart from a line at 0 come to 333, 667,
// 1000 (not 333, 666, 999).
func TestRoundingIsOnTheRunningFigure(t *testing.T) {
	pitch := 333400 * unit.Micrometre
	m := plank("m1", 1100*mm, 200*mm, 24*mm, 0, pitch, 2*pitch, 3*pitch)
	a := poses(plan.Pose{Module: "m1", X: 550 * mm, Y: 1500 * mm})
	a.Datum = plan.Datum{Level: some(1000 * mm), Plumb: some(unit.Length(0))}
	r := arrange(surveyed(), a, m)
	var got []unit.Length
	for _, p := range r.Points {
		require.Equal(t, p.DX-(p.X-r.Plumb), p.RoundX)
		require.Equal(t, 500*mm, p.DY)
		got = append(got, p.DX)
	}
	require.Equal(t, []unit.Length{333 * mm, 667 * mm, 1000 * mm}, got)
}

func TestInchesRoundToSixteenths(t *testing.T) {
	m := plank("m1", 20*in, 8*in, in, 0, 3*in+in/64, 17*in)
	w := surveyed()
	a := poses(plan.Pose{Module: "m1", X: 40 * in, Y: 60 * in})
	r := Arrange(w, a, []module.Result{m}, shop.Default(unit.Inches), plan.Units{System: unit.Inches, Step: in / 16})
	require.Equal(t, 30*in, r.Plumb)
	require.Equal(t, 3*in, r.Points[0].DX)
	require.Equal(t, -in/64, r.Points[0].RoundX)
}

// Lining and plate count as the bracket sits: let into the lining, the plate lies on the
// stud.
func TestDepths(t *testing.T) {
	j := &job{w: &plan.Wall{Lining: plan.Lining{Kind: "plasterboard", Thickness: some(12 * mm)}}}
	screw := board.Screw{Length: 70 * mm}
	f := board.Fixing{Plate: board.Plate{Thickness: 5 * mm}, Seat: "pocket"}
	deep, in := j.depth(&f, screw)
	require.Equal(t, [2]unit.Length{65 * mm, 53 * mm}, [2]unit.Length{deep, in})
	f.Seat = "lining"
	deep, in = j.depth(&f, screw)
	require.Equal(t, [2]unit.Length{77 * mm, 65 * mm}, [2]unit.Length{deep, in})
	deep, in = j.depth(&f, board.Screw{Length: 75 * mm, Rod: true})
	require.Equal(t, [2]unit.Length{87 * mm, 75 * mm}, [2]unit.Length{deep, in})
}

func TestMasonryAsksForThePlugsHole(t *testing.T) {
	w := surveyed()
	w.Build, w.Studs = plan.BuildBrick, plan.Studs{}
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0)
	m.Fixings = []board.Fixing{plateAt("m1.1", "b1", 60*mm, 24*mm), plateAt("m1.1", "b2", 460*mm, 24*mm)}
	r := arrange(w, poses(plan.Pose{Module: "m1", X: 1037 * mm, Y: 1500 * mm}), m)
	require.Equal(t, 8*mm, r.Points[0].Drill)
	require.Equal(t, Structure{Kind: InMasonry}, r.Points[0].In)
	require.Equal(t, []string{"deep-hole"}, kindsOf(r.Findings), "65 from the surface, wherever it hangs")
}

// Whether a fixing works: its board level or plumb within 2°, its edge at the wall, its
// upper side up.
func TestAttitudes(t *testing.T) {
	level := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	front := plank("m1", 520*mm, 200*mm, 24*mm, 0)
	front.Fixings = []board.Fixing{rodAt("m1.1", "b1", 60*mm, 24*mm)}
	front.Fixings[0].At.V = 200 * mm
	hook := plank("m1", 520*mm, 200*mm, 24*mm, 90*deg)
	hook.Fixings = []board.Fixing{hookAt("m1.1", "b1", 460*mm, 24*mm)}
	cases := []struct {
		name string
		m    module.Result
		turn unit.Angle
		flip bool
		want int
	}{
		{"as made", level, 0, false, 2},
		{"upside down", level, 180 * deg, false, 2},
		{"2° from level", level, 2 * deg, false, 2},
		{"2° from level the other way", level, 358 * deg, false, 2},
		{"more than 2° from level", level, 2*deg + 1, false, 0},
		{"on end", level, 90 * deg, false, 0},
		{"its back to the room", level, 0, true, 0},
		{"bored in front", front, 0, false, 0},
		{"bored in front and flipped", front, 0, true, 1},
		{"hook", hook, 0, false, 1},
		{"hook upside down", hook, 180 * deg, false, 0},
		{"hook on its side", hook, 90 * deg, false, 0},
		{"hook 2° from plumb", hook, 358 * deg, false, 1},
	}
	for _, c := range cases {
		b := body{m: &c.m, g: PlacingOf(c.m, plan.Pose{Turn: c.turn, Flip: c.flip}), p: &Placed{}}
		s := shop.Default(unit.Metric)
		b.prepare(&s)
		require.Equal(t, c.want, b.carrying(), c.name)
		require.Equal(t, len(c.m.Fixings)-c.want, b.idle, c.name)
	}
}

func TestAModuleOnEndHangsOnNothing(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	r := arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm, Turn: 90 * deg}), m)
	f := only(t, r, "nothing-carries")
	require.Equal(t, 2*deg, f.Limit.Angle)
	require.Empty(t, r.Points, "nothing is drilled that does not carry")
	require.Equal(t, "place-brackets", f.Remedies[0].Edit.Do)
	none := plank("m2", 520*mm, 200*mm, 24*mm, 0)
	only(t, arrange(surveyed(), poses(plan.Pose{Module: "m2", X: 1000 * mm, Y: 1500 * mm}), none), "no-bracket")
	one := plank("m2", 520*mm, 200*mm, 24*mm, 0, 260*mm)
	only(t, arrange(surveyed(), poses(plan.Pose{Module: "m2", X: 1200 * mm, Y: 1500 * mm}), one), "one-bracket")
}

// Each hole is asked by itself: 7 mm off the middle of a 38 mm stud a 12 mm rod has its 6
// mm of cover, 7.1 mm off it has not, and 19 mm off it is in the lining.
func TestHolesInStuds(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	at := func(off unit.Length) Result {
		return arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1000*mm + off, Y: 1500 * mm}), m)
	}
	require.Equal(t, []string{"deep-hole"}, kindsOf(at(7*mm).Findings))
	require.Equal(t, []string{"stud-edge", "stud-edge", "deep-hole"}, kindsOf(at(7100*unit.Micrometre).Findings))
	f := at(-19 * mm).Findings[0]
	require.Equal(t, "nothing-in-stud", f.Kind.Key)
	require.Equal(t, unit.Length(0), f.Value.Length)
	require.Equal(t, 12*mm, f.Limit.Length)
	require.Equal(t, "move-right-to-stud", f.Remedies[0].Key)
	require.Equal(t, 19*mm, f.Remedies[0].Edit.Args[2].Value.Length)
	require.Equal(t, InLining, at(200 * mm).Points[0].In.Kind)
	require.Equal(t, -181*mm, at(200 * mm).Points[0].In.Edge)
}

// Of a plate with its screws 38 to both sides of the rod none meets a stud that its rod
// is in the middle of; of one that is 38 off, one does.
func TestScrewsBesideARod(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0)
	for _, u := range []unit.Length{60 * mm, 460 * mm} {
		f := plateAt("m1.1", "b1", u, 24*mm)
		f.Screws[0].DU, f.Screws[0].DW, f.Screws[1].DU, f.Screws[1].DW = -38*mm, 0, 38*mm, 0
		m.Fixings = append(m.Fixings, f)
	}
	m.Fixings[1].Bracket = "b2"
	r := arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []string{"nothing-in-stud", "nothing-in-stud", "deep-hole"}, kindsOf(r.Findings))
	r = arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1038 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []string{"screw-off-stud", "screw-off-stud", "deep-hole"}, kindsOf(r.Findings))
}

func TestAGuessedStudIsNotChecked(t *testing.T) {
	w := surveyed()
	w.Studs.State = plan.Guess
	w.Studs.Each = []plan.Stud{{X: 801 * mm, State: plan.EdgesFound}}
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	r := arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []string{"stud-guessed", "deep-hole"}, kindsOf(r.Findings))
	require.True(t, r.Points[0].In.Wood())
	require.False(t, r.Points[1].In.Wood())
	w.Studs.Material = "metal"
	require.Contains(t, kindsOf(arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m).Findings), "metal-studs")
	w.Build = ""
	r = arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, InUnknown, r.Points[0].In.Kind)
	only(t, r, "wall-not-surveyed")
}

func TestHolesInCableBands(t *testing.T) {
	w := surveyed()
	w.Obstacles = []plan.Obstacle{{ID: "o1", Kind: plan.Socket, X: 790 * mm, Y: 300 * mm, Width: 86 * mm, Height: 86 * mm, Depth: some(10 * mm)}}
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	r := arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	f := only(t, r, "hole-in-cable-band")
	require.Equal(t, "1", f.Place.Point)
	require.Equal(t, "o1", r.Points[0].Band)
	require.Empty(t, r.Points[1].Band)
	// The hole reaches from 794 to 806, the band from 790 to 876: left by 17 in whole mm.
	require.Equal(t, -17*mm, f.Remedies[0].Edit.Args[2].Value.Length)
	require.Equal(t, 83*mm, f.Remedies[1].Edit.Args[2].Value.Length)
	w.CableRule = ""
	r = arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []string{"cables-not-checked", "deep-hole"}, kindsOf(r.Findings))
	require.Equal(t, "set-wall", r.Findings[0].Remedies[0].Edit.Do)
	w.Obstacles = []plan.Obstacle{{ID: "o2", Kind: plan.Pipe, X: 1190 * mm, Width: 15 * mm, Height: 2500 * mm, Depth: some(unit.Length(0))}}
	w.CableRule = "uk"
	r = arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []string{"hole-behind-obstacle", "deep-hole"}, kindsOf(r.Findings), "a pipe in the wall is in no module's way, but in a drill's")
}

// Shims as bench practice reckons them: 6 mm in a metre, plates 60 and 18 high.
func TestShims(t *testing.T) {
	w := surveyed()
	w.Plumb = []plan.Plumb{{X: 0, Over: 1000 * mm, Lean: 6 * mm}, {X: 2000 * mm, Over: 2000 * mm, Lean: 12 * mm}}
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0)
	m.Fixings = []board.Fixing{plateAt("m1.1", "b1", 60*mm, 24*mm), plateAt("m1.1", "b2", 460*mm, 24*mm)}
	m.Fixings[1].Plate.AlongW = 18 * mm
	r := arrange(w, poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []Shim{
		{Module: "m1", Bracket: "b1", Thickness: 360 * unit.Micrometre},
		{Module: "m1", Bracket: "b2", Thickness: 108 * unit.Micrometre},
	}, r.Shims, "the top leans into the room, so the lower end is packed")
	w.Plumb[0].Lean, w.Plumb[1].Lean = 0, -8*mm // 0 at the left end, −4 in a metre at 2000
	r = arrange(w, poses(plan.Pose{Module: "m1", X: 1100 * mm, Y: 1500 * mm}), m)
	require.Equal(t, []Shim{{Module: "m1", Bracket: "b1", Thickness: 108 * unit.Micrometre, Top: true}}, r.Shims, "60 × 1.8/1000 at 900; 18 × 2.6/1000 at 1300 is paper")
}

func TestMovingAllMovesAllPoints(t *testing.T) {
	a, b := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm), ell()
	b.ID, b.Boards[1].ID = "m2", "m2.2"
	b.Fixings = []board.Fixing{hookAt("m2.2", "b7", 150*mm, 20*mm)}
	rapid.Check(t, func(t *rapid.T) {
		p, q := anyPose(t), anyPose(t)
		p.Turn, q.Module = 0, "m2"
		q.Turn, q.Flip = unit.Angle(rapid.Int64Range(0, int64(2*deg)).Draw(t, "lean")), false
		dx, dy := unit.Length(rapid.Int64Range(-1e9, 1e9).Draw(t, "dx")), unit.Length(rapid.Int64Range(-1e9, 1e9).Draw(t, "dy"))
		ar := poses(p, q)
		was := arrange(surveyed(), ar, a, b)
		p.X, p.Y, q.X, q.Y = p.X+dx, p.Y+dy, q.X+dx, q.Y+dy
		now := arrange(surveyed(), poses(p, q), a, b)
		require.Len(t, now.Points, len(was.Points))
		find := func(r Result, like Point) Point {
			for _, p := range r.Points {
				if p.Bracket == like.Bracket && p.Module == like.Module {
					return p
				}
			}
			return Point{}
		}
		for _, p := range was.Points {
			got := find(now, p)
			require.Equal(t, [2]unit.Length{p.X + dx, p.Y + dy}, [2]unit.Length{got.X, got.Y})
		}
	})
}
