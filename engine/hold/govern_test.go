package hold

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/testdata/jobs"
)

// kinds lists everything that is checked.
func kinds() []Kind {
	return []Kind{RodBends, RodBears, RodSplits, RodInWood, TipTears, GrooveTears, BoardBends, CornerOpens, ScrewDraws, LinkDraws, HeelCrushes}
}

// Every kind of check governs what a shelf carries in at least one job: the examples, random
// modules on studs, and two that were built for it.
func TestEveryCheckGoverns(t *testing.T) {
	count := map[Kind]int{}
	take := func(v Verdict) {
		for _, c := range v.Shelves {
			if c.Governs.Part > 0.99 {
				count[c.Governs.Kind]++
			}
		}
	}
	for _, x := range examples(t) {
		v, err := x.r.Judge(x.site)
		require.NoError(t, err)
		take(v)
	}
	for _, seed := range []uint64{345, 1193, 1410, 2984} {
		m := module.Derive(jobs.RandomModule(seed), shop.Default(unit.Metric))
		take(onStuds(t, &m))
	}
	for _, kind := range []string{"rod-structure-12", "plate-back-12", "cleat-400"} {
		m := module.Derive(tray(kind), shop.Default(unit.Metric))
		take(onStuds(t, &m))
	}
	short := module.Derive(tray("rod-structure-12"), shop.Default(unit.Metric))
	for i := range short.Fixings {
		short.Fixings[i].Rods[0].InWall = 32 * mm
	}
	take(onStuds(t, &short))
	arms := nearTheEnd()
	m := module.Derive(arms, shop.Default(unit.Metric))
	for i := range m.Fixings {
		m.Fixings[i].Rods[0].Root = 0 // not known: not checked
	}
	take(onMasonry(t, &m))
	t.Log(count)
	for _, k := range kinds() {
		require.Positive(t, count[k], k)
	}
}

// nearTheEnd is a U whose uprights hang on rods near their upper ends.
func nearTheEnd() plan.Module {
	p := tray("plate-upright-12")
	p.Brackets = []plan.Bracket{
		{ID: "b1", Kind: "plate-upright-12", Board: 1, At: 35 * mm},
		{ID: "b2", Kind: "plate-upright-12", Board: 3, At: 230 * mm},
	}
	return p
}

func onStuds(t *testing.T, m *module.Result) Verdict {
	r := hung(t, m)
	require.NotNil(t, r, m.ID)
	v, err := r.Judge(studs(m))
	require.NoError(t, err)
	return v
}

// onMasonry hangs a module on masonry with plugs that bore 50 kN, with corners that the shop
// has found to bear 1 kN m.
func onMasonry(t *testing.T, m *module.Result) Verdict {
	site := studs(m)
	site.Lining = Lining{0, true}
	site.Tests = []CornerTest{{Count: 5, Moment: 1e6, Width: 200, Thickness: 24, Wood: "white-oak"}}
	for id := range site.Screws {
		for i := range site.Screws[id] {
			site.Screws[id][i] = Screw{In: wall.InMasonry, Pull: 50e3}
		}
	}
	r, err := Respond(m, Hanging{Turn: m.Hung}, site.Lining, 12)
	require.NoError(t, err)
	v, err := r.Judge(site)
	require.NoError(t, err)
	return v
}

// Contact is found for modules that hang on little, and what it carries is told.
func TestContactIsFound(t *testing.T) {
	for _, seed := range []uint64{1063, 3210} {
		m := module.Derive(jobs.RandomModule(seed), shop.Default(unit.Metric))
		require.NotEmpty(t, onStuds(t, &m).Shelves)
	}
}

// A module that hangs on nothing but the wall that it would have to pull at comes off.
func TestTheWallDoesNotPull(t *testing.T) {
	_, err := lean([][]float64{{1 / TouchStiffness}}, []float64{0.1})
	var off *Undecided
	require.ErrorAs(t, err, &off)
}
