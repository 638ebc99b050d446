package wall

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

func centres(w plan.Wall) (xs []unit.Length) {
	for i, s := range Studs(w) {
		if s.Number != i+1 {
			panic("numbers go from the left")
		}
		xs = append(xs, s.X/mm)
	}
	return xs
}

func TestTypedStudsStandForThoseOfTheSpacing(t *testing.T) {
	w := plan.Wall{Build: plan.BuildStuds, Width: 2000 * mm, Studs: plan.Studs{First: some(400 * mm), Spacing: some(400 * mm)}}
	each := func(xs ...unit.Length) []unit.Length {
		w.Studs.Each = nil
		for _, x := range xs {
			w.Studs.Each = append(w.Studs.Each, plan.Stud{X: x * mm, State: plan.EdgesFound})
		}
		return centres(w)
	}
	require.Equal(t, []unit.Length{400, 800, 1200, 1600, 2000}, each())
	require.Equal(t, []unit.Length{400, 807, 1200, 1600, 2000}, each(807))
	require.Equal(t, []unit.Length{400, 990, 1200, 1600, 2000}, each(990), "190 from 800")
	require.Equal(t, []unit.Length{400, 1000, 1200, 1600, 2000}, each(1000), "half way: the left one")
	require.Equal(t, []unit.Length{400, 800, 1001, 1600, 2000}, each(1001))
	require.Equal(t, []unit.Length{790, 810, 1200, 1600, 2000}[1:], each(790, 810)[2:], "a doubled stud")
	require.Equal(t, []unit.Length{200, 800, 1200, 1600, 2000}, each(200))
	require.Equal(t, []unit.Length{199, 400, 800, 1200, 1600, 2000}, each(199))
	w.Studs.Spacing = document.Opt[unit.Length]{}
	require.Equal(t, []unit.Length{500, 900}, each(900, 500))
	w.Build = plan.BuildBrick
	require.Empty(t, each(900, 500))
}

func TestStudsKnowTheirWidthAndState(t *testing.T) {
	w := surveyed()
	w.Studs.State = ""
	w.Studs.Each = []plan.Stud{{X: 800 * mm, Width: some(45 * mm), State: plan.EdgesFound}}
	s := Studs(w)
	require.Equal(t, Stud{Number: 1, X: 400 * mm, Half: 19 * mm, State: plan.Guess, Material: "wood"}, s[0], "what is not said to be found is a guess")
	require.Equal(t, Stud{Number: 2, X: 800 * mm, Half: 22500 * unit.Micrometre, State: plan.EdgesFound, Material: "wood"}, s[1])
	w.Studs.Spacing = some(unit.Nanometre)
	require.Len(t, Studs(w), 1, "a spacing of nothing gives no studs, and no hang")
}

func TestNearestStud(t *testing.T) {
	s := Studs(surveyed())
	for x, want := range map[unit.Length]int{-100: 0, 0: 0, 400: 0, 599: 0, 600: 0, 601: 1, 1200: 2, 9000: 8} {
		require.Equal(t, want, nearest(s, x*mm), "%d", x)
	}
	require.Equal(t, -1, nearest(nil, 5))
}

func TestBandsOfTheUK(t *testing.T) {
	w := plan.Wall{Width: 3000 * mm, Height: 2400 * mm, FloorRise: some(6 * mm), CeilingRise: some(-30 * mm), CableRule: "uk"}
	w.Obstacles = []plan.Obstacle{
		{ID: "o1", Kind: plan.Socket, X: 500 * mm, Y: 300 * mm, Width: 86 * mm, Height: 80 * mm},
		{ID: "o2", Kind: plan.Window, X: 1500 * mm, Y: 900 * mm, Width: 600 * mm, Height: 900 * mm},
	}
	require.Equal(t, []Band{
		{"o1", true, [4]module.XY{xy(500*mm, mm), xy(586*mm, 1172*unit.Micrometre), xy(586*mm, 2400*mm-5860*unit.Micrometre), xy(500*mm, 2395*mm)}},
		{"o1", false, [4]module.XY{xy(0, 300*mm), xy(3000*mm, 300*mm), xy(3000*mm, 380*mm), xy(0, 380*mm)}},
		{Ceiling, false, [4]module.XY{xy(0, 2250*mm), xy(3000*mm, 2220*mm), xy(3000*mm, 2370*mm), xy(0, 2400*mm)}},
		{LeftEnd, true, [4]module.XY{xy(0, 0), xy(150*mm, 300*unit.Micrometre), xy(150*mm, 2398500*unit.Micrometre), xy(0, 2400*mm)}},
		{RightEnd, true, [4]module.XY{xy(2850*mm, 5700*unit.Micrometre), xy(3000*mm, 6*mm), xy(3000*mm, 2370*mm), xy(2850*mm, 2371500*unit.Micrometre)}},
	}, Bands(w))
	w.CableRule = NoRule
	require.Empty(t, Bands(w))
	w.CableRule = ""
	require.Empty(t, Bands(w))
}

func TestInBand(t *testing.T) {
	b := Band{Points: quad(100*mm, 200*mm, 0, 0, 1000*mm, 1000*mm)}
	require.True(t, b.in(xy(150*mm, 500*mm), 0))
	require.True(t, b.in(xy(204*mm, 500*mm), 4*mm), "its edge touches the band")
	require.False(t, b.in(xy(204*mm, 500*mm), 4*mm-1))
	require.False(t, b.in(xy(203*mm, 1003*mm), 4*mm), "beyond the corner: 3√2 is more than 4")
}
