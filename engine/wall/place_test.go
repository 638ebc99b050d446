package wall

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// An L as seen from the front: 300 along x below, 200 up at its right end.
func ell() module.Result {
	r := module.Result{
		ID: "m1", Depth: 200 * mm,
		Boards: []board.Board{
			{ID: "m1.1", Length: 300 * mm, Width: 200 * mm, Thickness: 20 * mm},
			{ID: "m1.2", Length: 200 * mm, Width: 200 * mm, Thickness: 20 * mm, Frame: board.Frame{X: 280 * mm, Y: -20 * mm, Dir: 90 * deg}},
		},
		Outlines: []module.Outline{
			{Board: "m1.1", Points: []module.XY{xy(0, -20*mm), xy(280*mm, -20*mm), xy(280*mm, 0), xy(0, 0)}},
			{Board: "m1.2", Points: []module.XY{xy(280*mm, -20*mm), xy(300*mm, -20*mm), xy(300*mm, 180*mm), xy(280*mm, 180*mm)}},
		},
	}
	finish(&r)
	return r
}

func TestPlaceByHand(t *testing.T) {
	m := ell() // box 0…300 by −20…180, pivot 150, 80
	p := Place(m, plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm})
	require.Equal(t, module.Box{MinX: 850 * mm, MinY: 1400 * mm, MaxX: 1150 * mm, MaxY: 1600 * mm}, p.Box)
	require.Equal(t, rect(850*mm, 1400*mm, 1130*mm, 1420*mm), p.Outlines[0].Points)

	p = Place(m, plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm, Turn: 90 * deg})
	require.Equal(t, module.Box{MinX: 900 * mm, MinY: 1350 * mm, MaxX: 1100 * mm, MaxY: 1650 * mm}, p.Box)
	require.Equal(t, xy(1100*mm, 1350*mm), p.Outlines[0].Points[0], "the free end now looks down, at the right")

	p = Place(m, plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm, Flip: true})
	require.Equal(t, []module.XY{xy(1150*mm, 1420*mm), xy(870*mm, 1420*mm), xy(870*mm, 1400*mm), xy(1150*mm, 1400*mm)}, p.Outlines[0].Points)
	require.Equal(t, xy(850*mm, 1400*mm), p.Outlines[1].Points[2], "the upright now stands at the left")
}

func TestPointsOfBoardsFollowTheirOutlines(t *testing.T) {
	m := ell()
	rapid.Check(t, func(t *rapid.T) {
		pose := anyPose(t)
		g, p := PlacingOf(m, pose), Place(m, pose)
		// The outline of board 2 begins at (u, w) = (0, 0) and ends at its far end, face A;
		// flipped, it comes backwards.
		at, z := g.Point(m.Boards[1].Frame, board.Point{U: 200 * mm, V: 30 * mm})
		want := p.Outlines[1].Points[3]
		if pose.Flip {
			want = p.Outlines[1].Points[0]
			require.Equal(t, 170*mm, z, "the front edge is at the wall")
		} else {
			require.Equal(t, 30*mm, z)
		}
		requireNear(t, want.X, at.X, 2) // two roundings
		requireNear(t, want.Y, at.Y, 2)
		at, _ = g.Point(m.Boards[1].Frame, board.Point{U: 200 * mm, W: 20 * mm})
		want = p.Outlines[1].Points[2]
		if pose.Flip {
			want = p.Outlines[1].Points[1]
		}
		requireNear(t, want.X, at.X, 2)
		requireNear(t, want.Y, at.Y, 2)
	})
}

func anyPose(t *rapid.T) plan.Pose {
	l := rapid.Int64Range(-4_000_000_000, 4_000_000_000)
	turn := rapid.OneOf(rapid.Int64Range(0, 359_999_999), rapid.SampledFrom([]int64{0, 90e6, 180e6, 270e6}))
	return plan.Pose{Module: "m1", X: unit.Length(l.Draw(t, "x")), Y: unit.Length(l.Draw(t, "y")), Turn: unit.Angle(turn.Draw(t, "turn")), Flip: rapid.Bool().Draw(t, "flip")}
}

// turned is the pose after a quarter turn more, flipped the pose after half a turn about
// the upright axis: F·T(t) = T(−t)·F.
func quarter(p plan.Pose) plan.Pose { p.Turn = (p.Turn + unit.QuarterTurn).Turn(); return p }
func flipped(p plan.Pose) plan.Pose { p.Flip, p.Turn = !p.Flip, (-p.Turn).Turn(); return p }

func TestFourQuarterTurnsAndTwoFlipsAreNothing(t *testing.T) {
	m := ell()
	rapid.Check(t, func(t *rapid.T) {
		pose := anyPose(t)
		require.Equal(t, Place(m, pose), Place(m, quarter(quarter(quarter(quarter(pose))))))
		require.Equal(t, Place(m, pose), Place(m, flipped(flipped(pose))))
	})
}

// A quarter turn of what is placed already is exact at whole quarters, point by point.
func TestQuarterTurnsAreExact(t *testing.T) {
	m := ell()
	pose := plan.Pose{Module: "m1", X: 7, Y: -3}
	for range 4 {
		was := Place(m, pose)
		pose = quarter(pose)
		for i, o := range Place(m, pose).Outlines {
			for k, c := range o.Points {
				old := was.Outlines[i].Points[k]
				require.Equal(t, xy(pose.X-(old.Y-pose.Y), pose.Y+(old.X-pose.X)), c)
			}
		}
	}
}

// A flip about the upright axis through the pivot takes every point to the other side of
// it at the same height, to the nanometre of a rounding.
func TestFlipIsAReflection(t *testing.T) {
	m := ell()
	rapid.Check(t, func(t *rapid.T) {
		pose := anyPose(t)
		was, now := Place(m, pose), Place(m, flipped(pose))
		for i, o := range now.Outlines {
			n := len(o.Points)
			for k, c := range o.Points {
				old := was.Outlines[i].Points[n-1-k]
				requireNear(t, 2*pose.X-old.X, c.X, 1)
				requireNear(t, old.Y, c.Y, 1)
			}
		}
	})
}

func TestDirections(t *testing.T) {
	up := board.Frame{Dir: 90 * deg}
	along := board.Frame{}
	plain, flip := Placing{}, Placing{Flip: true}
	require.Equal(t, 90*deg, plain.Up(along, board.FaceA))
	require.Equal(t, 270*deg, plain.Up(along, board.FaceB))
	require.Equal(t, 90*deg, plain.Up(up, board.End))
	require.Equal(t, 270*deg, plain.Up(up, board.Start))
	require.Equal(t, 180*deg, plain.Up(up, board.FaceA))
	require.Equal(t, 90*deg, flip.Up(along, board.FaceA), "a flip leaves up what was up")
	require.Equal(t, unit.Angle(0), flip.Up(up, board.FaceA))
	require.Equal(t, 180*deg, flip.Dir(0))
	require.Equal(t, 120*deg, Placing{Turn: 120 * deg}.Dir(0))
	require.Equal(t, 240*deg, Placing{Flip: true, Turn: 270 * deg}.Dir(210*deg), "180 − 210 + 270")
}

func requireNear(t require.TestingT, want, got, within unit.Length) {
	require.LessOrEqual(t, (want - got).Abs(), within, "want %v, got %v", want, got)
}
