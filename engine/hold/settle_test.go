package hold

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// A beam over two supports with equal overhangs a, under w all along: in the middle
// w L² (5 L² − 24 a²) / (384 E I) + w L² / (8 G A′) below its supports, and at the free ends
// w a (3 a³ + 6 a² L − L³) / (24 E I) + w a² / (2 G A′) below them (Roark's Formulas for
// Stress and Strain, 7th ed., table 8.1, superposed; shear by Timoshenko).
func TestSagOfAnOverhangingBoard(t *testing.T) {
	r, _ := level(t, plank(200*mm, 800*mm))
	out, err := r.Settle([]float64{30}, LimitBy("books"))
	require.NoError(t, err)
	without, err := r.Settle(nil, LimitBy("books"))
	require.NoError(t, err)
	b := &r.model.boards[0]
	e := float64(b.wood.MOE) / 1e6
	stiff, shear := e*200*24*24*24/12, e*shearPart*200*24*5/6
	const l, a = 600.0, 200.0
	w := 30 * Gravity / 1000
	mid := w*l*l*(5*l*l-24*a*a)/(384*stiff) + w*l*l/(8*shear)
	end := w*a*(3*a*a*a+6*a*a*l-l*l*l)/(24*stiff) + w*a*a/(2*shear)
	require.Len(t, out.Sags, 3)
	for i, want := range []float64{end, mid, end} {
		s := out.Sags[i]
		require.InDelta(t, want, s.Now-without.Sags[i].Now, 1e-4+0.01*math.Abs(want), "%d; bores are cut out of the members", i)
		require.InEpsilon(t, 1.6*s.Now, s.Later, 1e-12, "EN 1995-1-1, table 3.2: k_def 0.6")
	}
	require.Equal(t, Sag{Board: "m1.1", From: 200, To: 800, Now: out.Sags[1].Now, Later: out.Sags[1].Later, Limit: 2.5}, out.Sags[1])
	require.True(t, out.Sags[0].Free && out.Sags[2].Free)
	require.InDelta(t, 400.0/240, out.Sags[0].Limit, 1e-12)
}

// The limits as printed: L/144 of the 2009 woodwork standard, 1/32 in a foot is L/384, and
// 0.02 in a foot L/600.
func TestLimits(t *testing.T) {
	require.InDelta(t, 12*32, LimitBy("display").Ratio, 0)
	require.InDelta(t, 12/0.02, LimitBy("strict").Ratio, 1e-9)
	require.InDelta(t, 144, LimitBy("woodwork").Ratio, 0)
	require.Equal(t, LimitBy(UsualLimit), LimitBy("no such"))
}

// The worked example at 15 kg: rod and bore 0.44 mm at the front, by a plate program that
// bends the board, too, and lets it lift off its rods: between our 0.33 of a bore that holds
// the rod all along and 0.49 of a board that only lies on its tip. The screws of a plate 60
// high give 0.27 mm, as ours, those of one 18 high 4.1; their lever is not printed, ours is 7.
func TestDroopOfTheWorkedExample(t *testing.T) {
	for _, c := range []struct {
		of     *worked
		screws float64
	}{
		{plated(t, 60*mm, 10*mm, -30*mm, 0), 0.27},
		{plated(t, 18*mm, -2*mm, -2*mm, 12*mm), 4.1},
	} {
		r, err := Respond(&c.of.m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
		require.NoError(t, err)
		out, err := r.Settle([]float64{15}, LimitBy("books"))
		require.NoError(t, err)
		require.Len(t, out.Droops, 2)
		d := out.Droops[0]
		t.Logf("%+v", d)
		require.Less(t, d.Rod.Likely+d.Bore.Likely, 0.44)
		require.Greater(t, d.Rod.Most+d.Bore.Most, 0.44)
		require.Greater(t, c.screws, d.Screws.Least)
		require.Less(t, c.screws, d.Screws.Most)
		require.InEpsilon(t, c.screws, d.Screws.Likely, 0.25)
		require.InDelta(t, 0, d.Slack.Likely, 0, "the common centre at 120 is before the tip at 125")
		require.InDelta(t, 2, d.Limit, 1e-12)
		require.Less(t, d.Front.Least, d.Front.Likely)
		require.Less(t, d.Front.Likely, d.Front.Most)
		require.InEpsilon(t, d.Front.Likely+d.Back.Likely, d.Tilt.Likely, 1e-9)
	}
}

// What rod, bore and screws give by themselves is what the whole frame says at the rods.
func TestDroopIsThatOfTheFrame(t *testing.T) {
	for _, kind := range []string{"plate-back-12-open", "plate-back-12", "rod-structure-12-open", "rod-structure-12"} {
		r := respond(t, kind)
		e, err := r.Together(Amount{15, &r.Shelves[0].Even})
		require.NoError(t, err)
		base := len(r.model.boards[0].stations)
		for i := range r.model.rods {
			d, err := r.model.droop(&e, i)
			require.NoError(t, err)
			for k, s := range r.model.boards[1].stations {
				if s.node == r.model.rods[i].station {
					require.InDelta(t, e.Fronts[base+k], d.Rod.Likely+d.Bore.Likely+d.Screws.Likely, 0.01*e.Fronts[base+k]+1e-4, kind)
				}
			}
		}
	}
}

// A bore 1 mm wider than its rod, tip at 125 of a shelf 200 deep, 120 in the bore, and the load
// beyond the tip: the front drops 0.6 mm, the back rises 1.0, 1.6 over the depth.
func TestSlackTurnsAboutTheTip(t *testing.T) {
	r := respond(t, "plate-back-12-open")
	rod := &r.model.rods[0]
	of := *rod.of
	of.Bore, of.Diameter, of.InBoard = 13*mm, 12*mm, 125*mm
	rod.of, rod.mouth = &of, 5
	front, back := r.model.slack(rod, RodForce{V: 100, M: 12600})
	require.InDelta(t, 0.625, front.Likely, 1e-12)
	require.InDelta(t, 1.0, back.Likely, 1e-12)
	front, back = r.model.slack(rod, RodForce{V: 100, M: 12000})
	require.Zero(t, front.Likely)
	require.InDelta(t, 0.625, front.Most, 1e-12)
	require.InDelta(t, 1, back.Most, 1e-12)
	front, _ = r.model.slack(rod, RodForce{V: 100, M: 8000})
	require.Zero(t, front.Most)
	rod.tied = true
	front, _ = r.model.slack(rod, RodForce{V: 100, M: 12600})
	require.Zero(t, front.Most)
}

// Two rods one above the other, 312 apart, with 1 mm of slack: an end 236 away moves 0.8 mm.
func TestRodsOneAboveTheOtherLetItTurn(t *testing.T) {
	f := model{boards: []bar{{at: [3]float64{-236, 0, 100}, to: [3]float64{100, 0, 100}}}}
	of := &board.Rod{Bore: 13 * mm, Diameter: 12 * mm}
	f.rods = []rod{{of: of}, {of: of, at: [3]float64{0, 312, 0}}}
	require.InDelta(t, 0.756, f.turning().Move, 0.001)
	f.rods[1].at = [3]float64{312, 0, 0}
	require.Zero(t, f.turning().Move, "it lies on rods side by side")
	m := module.Derive(tray("plate-back-12-open"), shop.Default(unit.Metric))
	require.InDelta(t, 400, hung(t, &m).model.turning().Spacing, 1e-9)
}

// What is no load is refused, with the shelf's number.
func TestLoadsThatAreNone(t *testing.T) {
	r := respond(t, "plate-back-12-open")
	for _, kg := range []float64{math.NaN(), -1, math.Inf(1)} {
		_, err := r.Settle([]float64{kg}, LimitBy(""))
		require.EqualError(t, err, "the load of shelf 1 is no load")
		_, err = r.Pulls([]float64{kg})
		require.Error(t, err)
		_, err = r.Worked(&Site{}, 0, kg, nil)
		require.Error(t, err)
	}
}
