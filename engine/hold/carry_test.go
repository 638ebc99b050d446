package hold

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/strength"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// studs gives every screw of a module a stud of wood found by both edges, behind 12.5 mm of
// plasterboard, as deep as it reaches.
func studs(m *module.Result) *Site {
	s := &Site{Lining: Lining{12.5, true}, Screws: map[string][]Screw{}}
	for i := range m.Fixings {
		x := &m.Fixings[i]
		for k := range x.Screws {
			grip := x.Screws[k].Length.MM()
			if !x.Screws[k].Rod {
				grip -= x.Plate.Thickness.MM()
				if x.Seat != "lining" {
					grip -= 12.5
				}
			}
			s.Screws[x.Bracket] = append(s.Screws[x.Bracket], Screw{In: wall.InStud, State: plan.EdgesFound, Edge: 19, Grip: grip})
		}
	}
	return s
}

func judged(t *testing.T, m *module.Result) Verdict {
	r, err := Respond(m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
	require.NoError(t, err)
	v, err := r.Judge(studs(m))
	require.NoError(t, err)
	return v
}

// The load that is found, put back, uses what governs wholly.
func TestLoadPutBackUsesAll(t *testing.T) {
	for _, kind := range []string{"plate-back-12", "plate-back-12-open", "rod-structure-12", "plate-lining-12", "cleat-400", "bar-12-400"} {
		m := module.Derive(tray(kind), shop.Default(unit.Metric))
		v := judged(t, &m)
		require.Len(t, v.Shelves, 1, kind)
		c := v.Shelves[0]
		t.Logf("%s: even %.1f kg, alone %.1f kg (%s), governs %s %.3f of %.3f; gaps %v", kind, c.Even, c.Alone, c.Case, c.Governs.Kind, c.Governs.Value, c.Governs.Limit, v.Gaps)
		require.Positive(t, c.Alone, kind)
		require.LessOrEqual(t, c.Alone, c.Even)
		require.InDelta(t, 1, c.Governs.Part, 1e-3, kind)
	}
}

// A hand of 300 N over one of two rods of 12 mm in a shelf 200 deep: the boards share it, so
// that the rod sees between 300 N 200 mm / 2 and all of it, near its yield of 40 N m; a
// plate program had 44 N m.
func TestHandOnTheEdge(t *testing.T) {
	m := module.Derive(tray("plate-back-12-open"), shop.Default(unit.Metric))
	v := judged(t, &m)
	hand := map[Kind]Use{}
	for _, u := range v.Hand {
		hand[u.Kind] = u
		t.Logf("%s %.3f of %.3f", u.Kind, u.Value, u.Limit)
	}
	moment := hand[RodBends].Value * strength.RodSection(12) / 1000
	require.InDelta(t, 44, moment, 12)
	require.Contains(t, hand, TipTears)

	// A child's 500 N bends the rods: by hand 51 N m each where each has half, of 40 N m at yield.
	r := hung(t, &m)
	child := map[Kind]Use{}
	for _, u := range r.Child(studs(&m)) {
		child[u.Kind] = u
	}
	require.Greater(t, child[RodBends].Part, 1.0)
	require.Greater(t, child[RodBends].Part, hand[RodBends].Part*1.4)
}
