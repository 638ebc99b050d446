package edit

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// handed is a module without any symmetry: unequal boards, turns and joints, edges,
// dividers, a light round a corner, brackets of several kinds.
func handed(r *rapid.T) plan.Module {
	turns := []unit.Angle{90, -90, 60, 120, 45, -30}
	joints := []string{plan.Mitre, plan.Mitre, plan.ButtFirst, plan.ButtSecond}
	m := plan.Module{ID: "m1", Depth: 200 * mm, Wood: "white-oak", Hung: unit.Angle(rapid.IntRange(0, 3).Draw(r, "hung")) * unit.QuarterTurn}
	n := rapid.IntRange(1, 4).Draw(r, "boards")
	for i := range n {
		l := unit.Length(rapid.IntRange(250, 900).Draw(r, "length")) * mm
		b := plan.Board{Length: document.Some(l), Thickness: unit.Length(rapid.IntRange(20, 40).Draw(r, "thickness")) * mm}
		b.Edges = []plan.Edge{{Arris: "front-a", Cut: "round", Size: 2 * mm}, {Arris: "start-b", Cut: "chamfer", Size: mm}}
		m.Boards = append(m.Boards, b)
		if i > 0 {
			c := plan.Corner{Turn: rapid.SampledFrom(turns).Draw(r, "turn") * unit.Degree, Joint: rapid.SampledFrom(joints).Draw(r, "joint")}
			c.Reinforcement.Kind = rapid.SampledFrom([]string{"", "spline", "tenon"}).Draw(r, "reinforcement")
			m.Corners = append(m.Corners, c)
		}
	}
	m.Lights = []plan.Light{{ID: "l1", First: 1, Last: n, Face: "A", Width: 12 * mm, Depth: 6 * mm, Strip: "strip-24-24",
		StartStop: document.Some(15 * mm), FromFront: document.Some(25 * mm), Power: plan.Power{Exit: "start"}}}
	kinds := []string{"rod-structure-12", "plate-back-12", "bar-12-200", "cleat-400", "rail-400", "plate-upright-12"}
	for i := range rapid.IntRange(0, 3).Draw(r, "brackets") {
		m.Brackets = append(m.Brackets, plan.Bracket{ID: "b" + string(rune('2'+i)), Kind: rapid.SampledFrom(kinds).Draw(r, "kind"),
			Board: rapid.IntRange(1, n).Draw(r, "board"), At: unit.Length(rapid.IntRange(60, 190).Draw(r, "at")) * mm})
	}
	return m
}

func with1(m plan.Module) plan.Plan {
	p := plan.New(unit.Metric)
	p.Modules = []plan.Module{m}
	p.Counters = plan.Counters{Module: 1, Part: 9}
	return p
}

// bare takes ids off what was worked out, so that two modules can be compared.
func bare(r module.Result, from plan.Module) ([]board.Board, []unit.Length) {
	ids := map[string]string{r.ID: "m"}
	for i, d := range from.Dividers {
		ids[d.ID] = "d" + string(rune('a'+i))
	}
	for i, b := range from.Brackets {
		ids[b.ID] = "b" + string(rune('a'+i))
	}
	for i, l := range from.Lights {
		ids[l.ID] = "l" + string(rune('a'+i))
	}
	var boards []board.Board
	for i, b := range r.Boards {
		b.ID = string(rune('A' + i))
		b.Features = slices.Clone(b.Features)
		for k := range b.Features {
			if id, ok := ids[b.Features[k].Cause.ID]; ok {
				b.Features[k].Cause.ID = id
			}
		}
		boards = append(boards, b)
	}
	var rods []unit.Length
	for _, f := range r.Fixings {
		for _, rod := range f.Rods {
			rods = append(rods, rod.At.U)
		}
		for _, s := range f.Screws {
			rods = append(rods, f.At.U+s.DU)
		}
	}
	return boards, rods
}

func TestMirrorTwiceGivesTheSameBoardsAndFeatures(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := with1(handed(r))
		if unmade(module.Derive(p.Modules[0], p.Shop)) {
			return
		}
		for _, id := range []string{"m1", "m2"} {
			next, _, err := Apply(p, MirrorModule{Module: id})
			require.NoError(r, err)
			p = next
		}
		require.Equal(r, "m3", p.Modules[2].ID)
		wantBoards, wantRods := bare(module.Derive(p.Modules[0], p.Shop), p.Modules[0])
		boards, rods := bare(module.Derive(p.Modules[2], p.Shop), p.Modules[2])
		require.Equal(r, wantBoards, boards)
		require.Equal(r, wantRods, rods)
	})
}

// The picture of a mirrored module on the wall is the mirror picture: its boards, rails
// and cleats, and every rod and screw, each with x on the other side.
func TestMirrorIsTheMirrorPicture(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := with1(handed(r))
		was := module.Derive(p.Modules[0], p.Shop)
		if len(was.Boards) == 0 || unmade(was) {
			return
		}
		p.Walls = []plan.Wall{{ID: "w1", Width: 4000 * mm, Height: 2500 * mm}}
		p.Arrangements = []plan.Arrangement{{ID: "a1", Wall: "w1", Poses: []plan.Pose{{
			Module: "m1", Turn: unit.Angle(rapid.IntRange(0, 3).Draw(r, "turn")) * unit.QuarterTurn, Flip: rapid.Bool().Draw(r, "flip")}}}}
		p, _, err := Apply(p, MirrorModule{Module: "m1", Arrangement: "a1"})
		require.NoError(r, err)
		now := module.Derive(p.Modules[1], p.Shop)
		n := len(p.Modules[0].Boards)
		one, other := wall.PlacingOf(was, p.Arrangements[0].Poses[0]), wall.PlacingOf(now, p.Arrangements[0].Poses[1])
		// Where a corner is not square the pivots, centres of boxes, are not each other's
		// mirror pictures, so the picture is shifted until its first point is.
		p0, _ := one.Point(was.Boards[0].Frame, board.Point{})
		q0, _ := other.Point(now.Boards[n-1].Frame, board.Point{U: now.Boards[n-1].Length})
		other.At.X, other.At.Y = other.At.X-p0.X-q0.X, other.At.Y+p0.Y-q0.Y
		for i := range n {
			samePicture(r, one, other, was.Boards[i], now.Boards[n-1-i])
		}
		for i, f := range was.Fixings {
			sameFixing(r, one, other, was, now, f, now.Fixings[i])
		}
	})
}

// unmade reports whether a rail or cleat does not fit its board, and so is not there to be
// mirrored.
func unmade(r module.Result) bool {
	return slices.ContainsFunc(r.Findings, func(f finding.Finding) bool {
		return slices.Contains([]string{"bracket-too-early", "bracket-too-long", "bracket-off-board"}, f.Kind.Key)
	})
}

func onBoard(r module.Result, id string) board.Board {
	return r.Boards[slices.IndexFunc(r.Boards, func(b board.Board) bool { return b.ID == id })]
}

const close = 20 * unit.Nanometre // each corner of a chain is rounded to the nanometre

func mirrorEach(r *rapid.T, one, other module.XY) {
	require.LessOrEqual(r, (one.X + other.X).Abs(), close)
	require.LessOrEqual(r, (one.Y - other.Y).Abs(), close)
}

func samePicture(r *rapid.T, one, other wall.Placing, a, b board.Board) {
	require.LessOrEqual(r, (a.Length - b.Length).Abs(), close)
	for _, face := range []unit.Length{0, a.Thickness} {
		for _, u := range []unit.Length{0, a.Length} {
			p, z := one.Point(a.Frame, board.Point{U: u, W: face})
			q, y := other.Point(b.Frame, board.Point{U: b.Length - u, W: face})
			mirrorEach(r, p, q)
			require.Equal(r, z, y)
		}
	}
	require.Equal(r, len(a.Features), len(b.Features), "%v\n%v", a.Features, b.Features)
}

func sameFixing(r *rapid.T, one, other wall.Placing, was, now module.Result, a, b board.Fixing) {
	require.Equal(r, len(a.Rods), len(b.Rods))
	require.Equal(r, len(a.Screws), len(b.Screws))
	on, in := onBoard(was, a.Board), onBoard(now, b.Board)
	for i, rod := range a.Rods {
		p, z := one.Point(on.Frame, rod.At)
		q, y := other.Point(in.Frame, b.Rods[len(b.Rods)-1-i].At)
		mirrorEach(r, p, q)
		require.Equal(r, z, y, "bores keep to the back")
	}
	if len(a.Rods) == 0 {
		return // the screws of a rail or cleat are set out from its start, whichever end that is
	}
	var left, right []module.XY
	for i := range a.Screws {
		left, right = append(left, hole(one, on, a, i)), append(right, hole(other, in, b, i))
	}
	for _, p := range left {
		require.True(r, slices.ContainsFunc(right, func(q module.XY) bool {
			return (p.X+q.X).Abs() <= close && (p.Y-q.Y).Abs() <= close
		}), "%v has no picture in %v", p, right)
	}
}

// hole is the place of a screw on the wall.
func hole(g wall.Placing, b board.Board, f board.Fixing, i int) module.XY {
	at, _ := g.Point(b.Frame, board.Point{U: f.At.U + f.Screws[i].DU, V: f.At.V, W: f.At.W + f.Screws[i].DW})
	return at
}
