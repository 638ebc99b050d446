package jobs

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// Vigna, splitmix64.c: the first numbers of seed 1234567, as printed at Rosetta Code,
// Pseudo-random numbers/Splitmix64.
func TestSplitMix(t *testing.T) {
	d := draw{1234567}
	for _, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		require.Equal(t, want, d.next())
	}
}

func chainOf(closed bool, t unit.Length, lengths []unit.Length, turns ...unit.Angle) plan.Module {
	m := plan.Module{Closed: closed}
	for _, l := range lengths {
		m.Boards = append(m.Boards, plan.Board{Length: document.Some(l * mm), Thickness: t})
	}
	for _, a := range turns {
		m.Corners = append(m.Corners, plan.Corner{Turn: a * deg, Joint: plan.Mitre})
	}
	return m
}

// Worked shapes: boards 24 mm thick, mitred at 90°. U of 260, 520, 260: outside 520 x
// 260. Z of 320, 260, 520: outside 816 x 260. Six boards of 300 at 120°: flat to flat
// 300·√3.
func TestLayoutOfWorkedShapes(t *testing.T) {
	size := func(m plan.Module, turn unit.Angle) (w, h float64) {
		x0, y0, x1, y1 := lay(m).box(turn)
		return x1 - x0, y1 - y0
	}
	w, h := size(chainOf(false, 24*mm, []unit.Length{260, 520, 260}, 90, 90), 270*deg)
	require.InDelta(t, 520, w, 1e-9)
	require.InDelta(t, 260, h, 1e-9)
	w, h = size(chainOf(false, 24*mm, []unit.Length{320, 260, 520}, 90, -90), 0)
	require.InDelta(t, 816, w, 1e-9)
	require.InDelta(t, 260, h, 1e-9)
	w, h = size(chainOf(true, 24*mm, []unit.Length{300, 300, 300, 300, 300, 300}, -60, -60, -60, -60, -60, -60), 0)
	require.InDelta(t, 600, w, 1e-9)
	require.InDelta(t, 300*math.Sqrt(3), h, 1e-9)
}

// Butt joints at 90°: the board that runs through counts to the outside.
func TestLayoutOfButtJoints(t *testing.T) {
	m := chainOf(false, 24*mm, []unit.Length{260, 472, 260}, 90, 90)
	m.Corners[0].Joint, m.Corners[1].Joint = plan.ButtFirst, plan.ButtSecond
	x0, y0, x1, y1 := lay(m).box(270 * deg)
	require.InDelta(t, 520, x1-x0, 1e-9)
	require.InDelta(t, 260, y1-y0, 1e-9)
	m.Corners[0].Joint, m.Corners[1].Joint = plan.ButtSecond, plan.ButtFirst
	m.Boards[0].Length, m.Boards[1].Length, m.Boards[2].Length = document.Some(236*mm), document.Some(520*mm), document.Some(236*mm)
	x0, y0, x1, y1 = lay(m).box(270 * deg)
	require.InDelta(t, 520, x1-x0, 1e-9)
	require.InDelta(t, 260, y1-y0, 1e-9)
}

func TestCrossingIsSeen(t *testing.T) {
	spiral := chainOf(false, 24*mm, []unit.Length{600, 400, 500, 300, 400}, 90, 90, 90, 90)
	require.False(t, lay(spiral).crosses(false, 2))
	spiral.Boards[3].Length = document.Some(450 * mm)
	require.True(t, lay(spiral).crosses(false, 2), "the fourth board runs into the first")
	box := chainOf(true, 24*mm, []unit.Length{460, 340, 460, 340}, -90, -90, -90, -90)
	require.False(t, lay(box).crosses(true, 2))
	star := chainOf(false, 24*mm, []unit.Length{600, 600, 600}, 144, 144)
	require.True(t, lay(star).crosses(false, 2))
}
