package engine_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/board"
	"ledgewright/engine/edit"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

const down = unit.HalfTurn + unit.QuarterTurn

// Gravity is the outside fact of this file: what is below is below on the wall, however a
// module was walked. Every ready shape is hung at each quarter turn, and half a turn about
// its upright axis from there, with a bracket of every kind that asks what is below.
func TestBracketsKnowWhatIsBelow(t *testing.T) {
	for _, s := range edit.Shapes() {
		for quarter := range 4 {
			for _, flip := range []bool{false, true} {
				m := ready(t, s)
				m.Hung = (s.Turn + unit.Angle(quarter)*unit.QuarterTurn).Turn()
				pose := plan.Pose{Turn: m.Hung, Flip: flip}
				if flip {
					pose.Turn = (-m.Hung).Turn()
				}
				for i := range m.Boards {
					requireBelow(t, m, i+1, pose)
				}
			}
		}
	}
}

// ready makes a ready shape of usual size through its edit.
func ready(t *testing.T, s edit.Shape) plan.Module {
	p := plan.New(unit.Metric)
	r := s.Sizes
	p, _, err := edit.Apply(p, edit.AddModule{
		Shape: r.Shape, Width: r.Width, Height: r.Height, Depth: r.Depth, Thickness: r.Thickness, Wood: "white-oak"})
	require.NoError(t, err)
	return p.Modules[0]
}

// requireBelow hangs a module by one of its boards, with every kind of bracket in turn that
// the board's attitude allows.
func requireBelow(t *testing.T, m plan.Module, number int, pose plan.Pose) {
	kinds := []string{"plate-back-12", "rod-structure-12", "bar-12-200", "cleat-400", "rail-400"}
	own := module.Derive(m, plan.New(unit.Metric).Shop).Boards[number-1]
	switch (own.Frame.Dir + m.Hung).Turn() {
	case 0, unit.HalfTurn:
	case unit.QuarterTurn, down:
		kinds = []string{"hook-keyhole", "plate-upright-12"}
	default:
		return // slanted: nothing of it is level or plumb
	}
	edge := ""
	if pose.Flip {
		edge = string(board.Front)
	}
	for _, kind := range kinds {
		m.Brackets = []plan.Bracket{{ID: "b1", Kind: kind, Board: number, At: own.Length / 2, Edge: edge}}
		r := module.Derive(m, plan.New(unit.Metric).Shop)
		what := fmt.Sprintf("%s on board %d of %d, hung at %v, flipped %v", kind, number, len(m.Boards), m.Hung, pose.Flip)
		requireAttitude(t, r, pose, what)
	}
}

// requireAttitude holds what is below of every fixing that works in a pose: lock holes are
// entered from below, keyholes open downwards, rails and cleats hang below their board and
// hook.
func requireAttitude(t *testing.T, r module.Result, pose plan.Pose, what string) (locks, keyholes, strips int) {
	g := wall.PlacingOf(r, pose)
	for _, f := range r.Fixings {
		b := r.Boards[slices.IndexFunc(r.Boards, func(b board.Board) bool { return b.ID == f.Board })]
		if (f.At.V > 0) != pose.Flip {
			continue // stands in the edge that looks into the room
		}
		plumb := g.Up(b.Frame, board.End)%unit.HalfTurn != 0
		for _, c := range b.Features {
			if c.Cause == (board.Cause{What: "bracket", ID: f.Bracket}) && c.After == board.AfterGlue && !plumb {
				require.Equal(t, down, g.Up(b.Frame, c.Enter), "%s: its lock", what)
				locks++
			}
		}
		if f.Lock == "undercut" && plumb {
			requireOpensDown(t, g, b, f, what)
			keyholes++
		}
		if f.Attitude == board.Level {
			strips += requireStripsBelow(t, g, b, r, f, what)
		}
	}
	return locks, keyholes, strips
}

// requireOpensDown holds that the screw's head goes in below its seat.
func requireOpensDown(t *testing.T, g wall.Placing, b board.Board, f board.Fixing, what string) {
	cuts := slices.DeleteFunc(slices.Clone(b.Features), func(c board.Feature) bool { return c.Cause.ID != f.Bracket })
	require.Len(t, cuts, 2, what)
	seat, _ := g.Point(b.Frame, f.At)
	hollow, _ := g.Point(b.Frame, cuts[1].Mouth)
	require.Equal(t, seat.X, hollow.X, what)
	require.Less(t, hollow.Y, seat.Y, what)
	require.Equal(t, unit.QuarterTurn, g.Up(b.Frame, f.Top), "%s: its upper end", what)
}

// requireStripsBelow holds that a rail or pair of cleats lies below its board, and that
// the wall's cleat is cut away above and towards the wall, the module's below and towards
// the room.
func requireStripsBelow(t *testing.T, g wall.Placing, b board.Board, r module.Result, f board.Fixing, what string) (n int) {
	under := min(height(g, b, 0), height(g, b, b.Thickness))
	for _, s := range r.Boards {
		if s.Role != board.Rail || s.ID[:len(s.ID)-1] != f.Bracket {
			continue
		}
		n++
		require.LessOrEqual(t, max(height(g, s, 0), height(g, s, s.Thickness)), under, "%s: %s", what, s.ID)
		_, back := g.Point(s.Frame, board.Point{})
		_, front := g.Point(s.Frame, board.Point{V: s.Width})
		require.Zero(t, min(back, front), "%s: %s lies on the wall", what, s.ID)
		for _, c := range s.Features {
			if c.Kind != board.Chamfer {
				continue
			}
			up, out := arris(g, s, c.Arris)
			wants := s.ID == f.Bracket+"b" // the wall's
			require.Equal(t, wants, up, "%s: %s bevelled above", what, s.ID)
			require.Equal(t, !wants, out, "%s: %s bevelled towards the room", what, s.ID)
		}
	}
	return n
}

// height is where a board's middle at w stands on the wall.
func height(g wall.Placing, b board.Board, w unit.Length) unit.Length {
	at, _ := g.Point(b.Frame, board.Point{U: b.Length / 2, W: w})
	return at.Y
}

// arris says whether an arris of a strip is its upper one, and its outer one.
func arris(g wall.Placing, s board.Board, name string) (up, out bool) {
	face, v := board.FaceA, unit.Length(0)
	if name[len(name)-1] == 'b' {
		face = board.FaceB
	}
	if name[:5] == "front" {
		v = s.Width
	}
	_, here := g.Point(s.Frame, board.Point{V: v})
	_, there := g.Point(s.Frame, board.Point{V: s.Width - v})
	return g.Up(s.Frame, face) == unit.QuarterTurn, here > there
}

// The same of every example, in every way in which it hangs: bores are drilled once, and
// whoever hangs it a second way reaches the locks from below again.
func TestExamplesAreLockedFromBelow(t *testing.T) {
	var locks, keyholes, strips int
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, a := range p.Arrangements {
			for _, o := range a.Poses {
				i := slices.IndexFunc(p.Modules, func(m plan.Module) bool { return m.ID == o.Module })
				l, k, s := requireAttitude(t, module.Derive(p.Modules[i], p.Shop), o, name+" "+a.ID+" "+o.Module)
				locks, keyholes, strips = locks+l, keyholes+k, strips+s
			}
		}
	}
	require.Greater(t, locks, 100)
	require.Greater(t, keyholes, 0)
	require.Greater(t, strips, 6)
}
