package hold

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// plank is one board of 1000 x 200 x 24 mm white oak on rods of 12 mm at the places.
func plank(at ...unit.Length) plan.Module {
	m := plan.Module{ID: "m1", Depth: 200 * mm, Wood: "white-oak",
		Boards: []plan.Board{{Length: some(1000 * mm), Thickness: 24 * mm}}}
	for i, u := range at {
		m.Brackets = append(m.Brackets, plan.Bracket{ID: "b" + string(rune('1'+i)), Kind: "plate-back-12-open", Board: 1, At: u})
	}
	return m
}

func level(t *testing.T, p plan.Module) (*Response, Verdict) {
	m := module.Derive(p, shop.Default(unit.Metric))
	r := hung(t, &m)
	require.NotNil(t, r)
	v, err := r.Judge(studs(&m))
	require.NoError(t, err)
	return r, v
}

// Three rods carry no more than any two of them: each is taken away in turn, and each such
// shelf is statically determinate.
func TestThreeRodsCarryWhatTwoOfThemDo(t *testing.T) {
	places := []unit.Length{100 * mm, 500 * mm, 900 * mm}
	r, three := level(t, plank(places...))
	require.Len(t, r.lacking, 3)
	least := 1e9
	for i := range places {
		_, two := level(t, plank(slices.Delete(slices.Clone(places), i, i+1)...))
		least = min(least, two.Shelves[0].Even)
	}
	require.Positive(t, least)
	require.InEpsilon(t, least, three.Shelves[0].Even, 0.01, "but for the wood of one bore")
	require.NotEmpty(t, three.Shelves[0].Governs.Missing)
}

// Two rods in each of two boards: either board's may carry all of it.
func TestTwoRowsEachCarryAll(t *testing.T) {
	p := tray("plate-back-12-open")
	p.Boards = append(p.Boards, plan.Board{Thickness: 24 * mm})
	p.Boards[2].Length = some(260 * mm)
	p.Boards[3].Length = some(520 * mm)
	p.Corners = append(p.Corners, p.Corners[0], p.Corners[0])
	p.Closed = true
	p.Boards[2].Length, p.Boards[3].Length = p.Boards[0].Length, p.Boards[1].Length
	for _, at := range []unit.Length{60 * mm, 460 * mm} {
		p.Brackets = append(p.Brackets, plan.Bracket{ID: "t" + at.String()[:2], Kind: "plate-back-12-open", Board: 4, At: at})
	}
	m := module.Derive(p, shop.Default(unit.Metric))
	r := hung(t, &m)
	require.NotNil(t, r)
	require.Len(t, r.model.rods, 4)
	require.Len(t, r.lacking, 2)
	for _, less := range r.lacking {
		sum := 0.0
		for _, q := range less.Shelves[0].Even.Rods {
			sum += q.V
		}
		require.Len(t, less.model.rods, 2)
		require.InEpsilon(t, Gravity, sum, 1e-9)
	}
	p.Brackets = p.Brackets[:2]
	m = module.Derive(p, shop.Default(unit.Metric))
	require.Nil(t, hung(t, &m).pinned, "four boards with four hinges fold up")
	require.NotNil(t, r.pinned, "uprights may have hinges where both boards hang by themselves")
}

// Only the brackets that work carry: of three, two.
func TestOnlyWhatWorksCarries(t *testing.T) {
	m := module.Derive(plank(100*mm, 500*mm, 900*mm), shop.Default(unit.Metric))
	r, err := Respond(&m, Hanging{Works: []string{"b1", "b3"}}, Lining{12.5, true}, 12)
	require.NoError(t, err)
	require.Len(t, r.model.rods, 2)
	require.InEpsilon(t, Gravity/2, r.Shelves[0].Even.Rods[0].V, 1e-9)
	_, err = Respond(&m, Hanging{Works: []string{}}, Lining{12.5, true}, 12)
	require.Error(t, err)
}

// A triangle stands with hinges at its corners.
func TestTriangleNeedsNoCorners(t *testing.T) {
	p := plan.Module{ID: "m1", Depth: 200 * mm, Wood: "white-oak", Closed: true,
		Boards: []plan.Board{{Length: some(600 * mm), Thickness: 24 * mm}, {Length: some(600 * mm), Thickness: 24 * mm}, {Length: some(600 * mm), Thickness: 24 * mm}},
		Brackets: []plan.Bracket{
			{ID: "b1", Kind: "plate-back-12-open", Board: 1, At: 150 * mm},
			{ID: "b2", Kind: "plate-back-12-open", Board: 1, At: 450 * mm},
		}}
	for range 3 {
		p.Corners = append(p.Corners, plan.Corner{Turn: 120 * unit.Degree, Joint: plan.Mitre})
	}
	r, v := level(t, p)
	require.NotNil(t, r.pinned)
	e, err := r.pinned.Together()
	require.NoError(t, err)
	for i := range r.pinned.model.mitres {
		c := &r.pinned.model.mitres[i]
		moment := e.Members[c.member].Start
		if c.end {
			moment = e.Members[c.member].End
		}
		if c.corner.Number > 1 {
			require.InDelta(t, 0, moment, 1e-6, "corner %d", c.corner.Number)
		}
	}
	require.True(t, v.NoCorners)
}
