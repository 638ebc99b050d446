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

func whys(v Verdict, kind Kind) (out []Why) {
	for _, g := range v.Gaps {
		if g.Kind == kind {
			out = append(out, g.Why)
		}
	}
	return out
}

// in puts every screw of a plated U into one structure.
func (w *worked) in(s Screw) Verdict {
	for id := range w.site.Screws {
		for i := range w.site.Screws[id] {
			w.site.Screws[id][i] = s
		}
	}
	r, err := Respond(&w.m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
	require.NoError(w, err)
	v, err := r.Judge(w.site)
	require.NoError(w, err)
	return v
}

// Anchors in a hollow wall count only as tested, a quarter of it; masonry half; pull and push
// add up in a line. The plate's two anchors stand 70 mm apart.
func TestTestedFixings(t *testing.T) {
	pair := func() *worked { return plated(t, 90*mm, 35*mm, -35*mm, 0) }
	v := pair().in(Screw{In: wall.InLining})
	require.Contains(t, whys(v, ScrewDraws), NotInStud)
	v = pair().in(Screw{In: wall.InMasonry})
	require.Contains(t, whys(v, ScrewDraws), MasonryUntried)

	const pull, push = 800.0, 1600.0
	for _, c := range []struct {
		in     string
		factor float64
	}{{wall.InLining, 4}, {wall.InMasonry, 2}} {
		w := pair()
		v = w.in(Screw{In: c.in, Pull: pull, Push: push})
		require.Empty(t, whys(v, ScrewDraws))
		// By hand, 10 kg: each plate has M about its lower edge, 45 below the rod; screws at 80 and
		// 10 above it.
		u := w.uses(10, even)
		m, down := 35.6/2*100+10*Gravity/2*125, 35.6/2+10*Gravity/2
		top := m * 80 / (80*80 + 10*10)
		require.InEpsilon(t, top/(pull/c.factor)+down/2/(push/c.factor), u[ScrewDraws].Part, 0.002, c.in)
	}
	// without a tested push it is taken as the pull
	w := pair()
	w.in(Screw{In: wall.InLining, Pull: pull})
	alone := w.uses(10, even)[ScrewDraws].Part
	w.in(Screw{In: wall.InLining, Pull: pull, Push: push})
	require.Greater(t, alone, w.uses(10, even)[ScrewDraws].Part)
}

// One anchor in a hollow wall resists no turning, nor do two that are nearer than 60 mm; the
// board under the heel bears 0.6 MPa there.
func TestHollowWall(t *testing.T) {
	hollow := Screw{In: wall.InLining, Pull: 5000}
	v := plated(t, 60*mm, 10*mm, -30*mm, 0).in(hollow)
	require.Contains(t, whys(v, ScrewDraws), OneInHollow)
	w := plated(t, 90*mm, 35*mm, -35*mm, 0)
	require.Empty(t, whys(w.in(hollow), ScrewDraws))
	require.InDelta(t, 0.6, w.uses(10, even)[HeelCrushes].Limit, 1e-12)
}

// What is not checked, each with its reason.
func TestWhatIsNotChecked(t *testing.T) {
	stud := Screw{In: wall.InStud, State: plan.EdgesFound, Edge: 19, Grip: 39}
	for _, c := range []struct {
		change func(*Screw)
		why    Why
	}{
		{func(s *Screw) { s.Metal = true }, MetalStud},
		{func(s *Screw) { s.Edge = 6 }, NearEdge}, // 1.5 x 4.5 is 6.75
		{func(s *Screw) { s.State = plan.OnePoint }, StudUncertain},
		{func(s *Screw) { s.In = wall.InUnknown }, WallUnknown},
		{func(s *Screw) { s.Grip = 20 }, NotInStud},
		{func(s *Screw) { s.Metal, s.In, s.Pull = true, wall.InStud, 5000 }, MetalStud},
	} {
		s := stud
		c.change(&s)
		w := plated(t, 60*mm, 10*mm, -30*mm, 0)
		require.Equal(t, []Why{c.why, c.why}, whys(w.in(s), ScrewDraws))
		require.NotContains(t, w.uses(1, even), ScrewDraws)
	}
	w := plated(t, 60*mm, 10*mm, -30*mm, 0)
	for i := range w.m.Fixings {
		for k := range w.m.Fixings[i].Screws {
			w.m.Fixings[i].Screws[k].Slotted = true
		}
	}
	require.Contains(t, whys(w.in(stud), ScrewDraws), AllSlotted)
	require.Contains(t, w.uses(1, even), ScrewDraws, "their pull is checked all the same")
}

// Five corners broken by the shop, the weakest at 60 N m on 200 mm, allow 24 N m on as much;
// four do not count.
func TestShopsOwnCorners(t *testing.T) {
	tests := []CornerTest{{Count: strength.ShopTestLeast, Moment: 60e3, Width: 200, Thickness: 24, Wood: "white-oak", Date: "2026-11-02"}}
	m := module.Derive(tray("plate-back-12-open"), shop.Default(unit.Metric))
	r := hung(t, &m)
	r.model.mitres[0].corner.Claim = 0
	site := studs(&m)
	site.Tests = tests
	v, err := r.Judge(site)
	require.NoError(t, err)
	require.Empty(t, whys(v, CornerOpens))
	for _, u := range v.Uses {
		if u.Kind == CornerOpens {
			require.InDelta(t, 24e3, u.Limit, 1e-9)
		}
	}
	tests[0].Count = 4
	v, err = r.Judge(site)
	require.NoError(t, err)
	require.Contains(t, whys(v, CornerOpens), NoClaim)
	tests[0].Count, tests[0].Wood = 9, "ash"
	_, ok := r.model.mitres[0].tested(tests)
	require.False(t, ok)
}

// The worked example at 15 kg pulls the upper screw of a plate 60 high with 274 N: a fixing in
// a wall that nobody knows is tried with twice that.
func TestPullToTry(t *testing.T) {
	w := plated(t, 60*mm, 10*mm, -30*mm, 0)
	r, err := Respond(&w.m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
	require.NoError(t, err)
	pulls, err := r.Pulls([]float64{15})
	require.NoError(t, err)
	require.Len(t, pulls, 2)
	require.InEpsilon(t, 274, pulls[0].Service, 0.01)
	require.InEpsilon(t, 2*pulls[0].Service, pulls[0].Try, 1e-12)
}
