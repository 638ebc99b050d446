package hold

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/beam"
	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

const mm = unit.Millimetre

func some(l unit.Length) document.Opt[unit.Length] { return document.Some(l) }

// tray is a U, uprights up: 520 wide, 260 high, 200 deep, 24 mm white oak, on two rods of
// 12 mm at 60 and 460 of its bottom board.
func tray(kind string) plan.Module {
	board := func(l unit.Length) plan.Board { return plan.Board{Length: some(l), Thickness: 24 * mm} }
	return plan.Module{
		ID: "m1", Depth: 200 * mm, Wood: "white-oak", Hung: unit.QuarterTurn * 3 % (4 * unit.QuarterTurn),
		Boards:  []plan.Board{board(260 * mm), board(520 * mm), board(260 * mm)},
		Corners: []plan.Corner{{Turn: unit.QuarterTurn, Joint: plan.Mitre}, {Turn: unit.QuarterTurn, Joint: plan.Mitre}},
		Brackets: []plan.Bracket{
			{ID: "b1", Kind: kind, Board: 2, At: 60 * mm},
			{ID: "b2", Kind: kind, Board: 2, At: 460 * mm},
		},
	}
}

func respond(t *testing.T, kind string) *Response {
	m := module.Derive(tray(kind), shop.Default(unit.Metric))
	r, err := Respond(&m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
	require.NoError(t, err, kind)
	return r
}

// Two rods in one board carry what plain statics says, whatever the stiffness guesses: half
// of the load each where it is even, and the moment V times its distance from the wall.
func TestTwoRodsAreStatics(t *testing.T) {
	for _, kind := range []string{"plate-back-12-open", "rod-structure-12-open"} {
		r := respond(t, kind)
		require.Len(t, r.model.rods, 2)
		require.Len(t, r.Shelves, 1, "uprights are no shelves")
		require.Equal(t, []Span{{24, 496}}, r.Shelves[0].spans)
		for _, rod := range r.Shelves[0].Even.Rods {
			require.InEpsilon(t, Gravity/2, rod.V, 1e-9, kind)
			require.InEpsilon(t, Gravity/2*125, rod.M, 1e-9, kind)
			require.InDelta(t, 0, rod.H, 1e-9)
			require.InDelta(t, 0, rod.N, 1e-9)
		}
		// all of it on the left half: 0.825 of it on the near rod
		centre := (24.0 + 260.0) / 2
		require.InEpsilon(t, Gravity*(460-centre)/400, r.Shelves[0].Left.Rods[0].V, 1e-9)
		require.InDelta(t, 0.8, (460-centre)/400, 0.03)
	}
}

// 4.762 litres of white oak weigh 3.63 kg and pull evenly at both rods, 100 from the wall.
func TestOwnWeight(t *testing.T) {
	r := respond(t, "plate-back-12-open")
	w := r.Weight.Rods
	require.InEpsilon(t, w[0].V, w[1].V, 1e-9)
	require.InEpsilon(t, 35.6/2, w[0].V, 0.02, "the bores are not in 35.6 N")
	require.InEpsilon(t, w[0].V*100, w[0].M, 1e-6)
}

// A locked module's moment goes to the tie and the back edges: what comes out of the wall at
// the rods goes into it at the backs.
func TestLockedModuleLeansOnTheWall(t *testing.T) {
	r := respond(t, "rod-structure-12")
	e, err := r.Together(Amount{15, &r.Shelves[0].Even})
	require.NoError(t, err)
	pull, push := 0.0, 0.0
	for _, rod := range e.Rods {
		pull += rod.N
	}
	for i, force := range e.Touches {
		require.GreaterOrEqual(t, force, 0.0)
		require.InDelta(t, max(-e.Away[i], 0)*TouchStiffness, force, 1e-6, "touch %d", i)
		push += force
	}
	require.InDelta(t, pull, push, 1e-6*(1+pull))
	require.Greater(t, push, 1.0)
	open := respond(t, "rod-structure-12-open")
	o, err := open.Together(Amount{15, &open.Shelves[0].Even})
	require.NoError(t, err)
	require.Less(t, e.Rods[0].M, o.Rods[0].M, "a tie helps")
}

// One rod alone lets the module swing: said, not solved.
func TestOneRodIsLoose(t *testing.T) {
	m := tray("plate-back-12-open")
	m.Brackets = m.Brackets[:1]
	r := module.Derive(m, shop.Default(unit.Metric))
	_, err := Respond(&r, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
	var loose *beam.Loose
	require.ErrorAs(t, err, &loose)
}

// Sections by hand: 200 x 24 with a groove 12 wide and 8 deep, and with a bore of 12.5.
func TestSectionsLeft(t *testing.T) {
	s := left(200, 24, nil)
	require.InDelta(t, 4800, s.Area, 1e-9)
	require.InDelta(t, 200*24*24*24/12.0, s.Flat, 1e-6)
	require.InDelta(t, 24*200*200*200/12.0, s.Deep, 1e-3)
	s = left(200, 24, []cell{{150, 162, 16, 24}})
	require.InDelta(t, 4800-96, s.Area, 1e-9)
	require.InDelta(t, 16, s.Least, 1e-12)
	mid := (4800*12 - 96*20) / 4704.0
	want := 200*24*24*24/12.0 + 4800*sq(12-mid) - (12*8*8*8/12.0 + 96*sq(20-mid))
	require.InDelta(t, want, s.Flat, 1e-6)
	over := left(200, 24, []cell{{0, 18, 4, 20}, {0, 120, 6, 18}})
	require.InDelta(t, 4800-18*16-102*12, over.Area, 1e-9, "a bore in a pocket counts once")
}
