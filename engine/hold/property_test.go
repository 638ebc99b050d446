package hold

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/beam"
	"ledgewright/engine/board"
	"ledgewright/engine/edit"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/strength"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/testdata/jobs"
)

// hung returns the response of a module at the turn at which it hangs, or nil where nothing
// holds it.
func hung(t require.TestingT, m *module.Result) *Response {
	works := wall.Working(m, plan.Pose{Module: m.ID, Turn: m.Hung})
	r, err := Respond(m, Hanging{Turn: m.Hung, Works: works}, Lining{12.5, true}, 12)
	var loose *beam.Loose
	if errors.As(err, &loose) {
		return nil
	}
	require.NoError(t, err)
	return r
}

// Two rods in one board carry what plain statics says whatever is assumed of stiffness: V of
// each from its place between the rods, and M from the distance of the load from the wall.
func TestTwoRodsAreStaticsWhateverIsAssumed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tray(rapid.SampledFrom([]string{"plate-back-12-open", "rod-structure-12-open"}).Draw(t, "kind"))
		m := module.Derive(p, shop.Default(unit.Metric))
		a := Likely()
		a.Bore = rapid.Float64Range(BoreSoft, BoreStiff).Draw(t, "bore")
		a.Slip = rapid.Float64Range(SlipSoft, SlipStiff).Draw(t, "slip")
		r, err := RespondAssuming(&m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12, a)
		require.NoError(t, err)
		for _, rod := range r.Shelves[0].Even.Rods {
			require.InEpsilon(t, Gravity/2, rod.V, 1e-9)
			require.InEpsilon(t, Gravity/2*125, rod.M, 1e-9)
		}
		centre := (24.0 + 260.0) / 2
		require.InEpsilon(t, Gravity*(460-centre)/400, r.Shelves[0].Left.Rods[0].V, 1e-9)
		require.InEpsilon(t, Gravity*(centre-60)/400, r.Shelves[0].Left.Rods[1].V, 1e-9)
	})
}

// loaded sums what a case does about the pivot at the wall.
func (f *model) loaded(c beam.Case) (w beam.Wrench) {
	add := func(at, force, moment beam.Vec) {
		m := crossed(at, force)
		for k := range m {
			w.Force[k] += force[k]
			w.Moment[k] += moment[k] + m[k]
		}
	}
	on := func(member int, along float64, off beam.Vec) (at beam.Vec) {
		m := f.frame.Members[member]
		from, to := f.frame.Nodes[m.Start.Node].At, f.frame.Nodes[m.Finish.Node].At
		way := direction(from, to)
		for k := range at {
			at[k] = from[k] + way[k]*along + off[k]
		}
		return at
	}
	for _, l := range c.Nodes {
		add(f.frame.Nodes[l.Node].At, l.Force, l.Moment)
	}
	for _, l := range c.Points {
		add(on(l.Member, l.At, l.Off), l.Force, l.Moment)
	}
	for _, l := range c.Lines { // even all along
		n := l.To - l.From
		add(on(l.Member, (l.From+l.To)/2, l.Off), beam.Vec{l.Start[0] * n, l.Start[1] * n, l.Start[2] * n}, beam.Vec{})
	}
	return w
}

// carried sums what the rods, links and the wall do with an effect about the same place.
func (f *model) carried(e *Effect) (w beam.Wrench) {
	add := func(at, force, moment beam.Vec) {
		m := crossed(at, force)
		for k := range m {
			w.Force[k] += force[k]
			w.Moment[k] += moment[k] + m[k]
		}
	}
	for i := range f.rods {
		q := e.Rods[i]
		add(f.rods[i].at, beam.Vec{q.H, -q.V, q.N}, beam.Vec{q.M, q.T, 0})
	}
	for i, l := range f.links {
		end := f.frame.Members[l.member].Finish
		at := f.frame.Nodes[end.Node].At
		for k := range at {
			at[k] += end.Arm[k]
		}
		add(at, beam.Vec{l.way[0] * e.Links[i], l.way[1] * e.Links[i], l.way[2] * e.Links[i]}, beam.Vec{})
	}
	for i, t := range f.touches {
		at := f.frame.Nodes[t.node].At
		for k := range at {
			at[k] += t.arm[k]
		}
		add(at, beam.Vec{0, 0, -e.Touches[i]}, beam.Vec{})
	}
	return w
}

// What the wall does to a module, with its back edges leaning where they do, is in
// equilibrium with what stands on it, for any module: the six equations of statics.
func TestReactionsAreInEquilibrium(t *testing.T) {
	held := 0
	rapid.Check(t, func(t *rapid.T) {
		p := jobs.SimpleModule(rapid.Uint64().Draw(t, "seed"))
		m := module.Derive(p, shop.Default(unit.Metric))
		r := hung(t, &m)
		if r == nil {
			return
		}
		held++
		f := r.model
		check := func(want beam.Wrench, parts ...Amount) {
			e, err := r.Together(parts...)
			require.NoError(t, err)
			got := f.carried(&e)
			own := f.loaded(f.weight())
			for k := range 3 {
				require.InDelta(t, own.Force[k]+want.Force[k], got.Force[k], 1e-5, "force %d", k)
				require.InDelta(t, own.Moment[k]+want.Moment[k], got.Moment[k], 1e-2, "moment %d", k)
			}
		}
		check(beam.Wrench{})
		for i := range r.Shelves {
			s := &r.Shelves[i]
			check(f.loaded(f.things(s.shelf, s.half(false))), Amount{1, &s.Left})
		}
		for i := range r.Pushes {
			q := &r.Pushes[i]
			way := map[Push]beam.Vec{Down: {0, -1}, Up: {0, 1}, Side: {1, 0}}[q.Kind]
			check(f.loaded(f.push(q.bar, q.At, way)), Amount{1, &q.Effect})
		}
	})
	require.Positive(t, held)
}

// What hangs on the wall weighs what the wood of the module weighs, by its volume.
func TestWeightIsThatOfTheWood(t *testing.T) {
	m := module.Derive(tray("plate-back-12-open"), shop.Default(unit.Metric))
	r := hung(t, &m)
	sum := r.Weight.Rods[0].V + r.Weight.Rods[1].V
	s := shop.Default(unit.Metric).Moisture
	require.InDelta(t, 12, (s.UseLow+s.UseHigh)/2, 6)
	require.InEpsilon(t, float64(r.model.boards[0].wood.DensityAt(12))*float64(m.Volume)*Gravity, sum, 1e-9)
}

// A mirrored module carries the same on the mirrored shelves.
func TestMirrored(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		p := jobs.RandomPlan(rapid.Uint64Range(0, 1<<40).Draw(t, "seed"))
		for i := range p.Modules {
			if mirrorsItself(t, p, i) {
				compared++
			}
		}
	})
	require.Positive(t, compared)
}

// mirrorsItself compares module i with its mirror picture, and says whether there was
// anything to compare.
func mirrorsItself(t *rapid.T, p plan.Plan, i int) bool {
	q, _, err := edit.Apply(p, edit.MirrorModule{Module: p.Modules[i].ID})
	if err != nil {
		return false
	}
	was, is := module.Derive(p.Modules[i], p.Shop), module.Derive(q.Modules[len(q.Modules)-1], p.Shop)
	odd := func(x board.Fixing) bool {
		return len(x.Rods) != 1 || strings.HasPrefix(x.Kind, "bar-")
	}
	if slices.ContainsFunc(was.Fixings, odd) || slices.ContainsFunc(is.Fixings, odd) {
		return false // a bar's screws and rods are counted from one end of it, so that its picture has others
	}
	a, b := hung(t, &was), hung(t, &is)
	require.Equal(t, a == nil, b == nil)
	if a == nil || len(a.Shelves) == 0 {
		return false
	}
	require.Len(t, b.Shelves, len(a.Shelves))
	require.InEpsilonSlice(t, loads(t, a, &was), loads(t, b, &is), 2e-3)
	return true
}

// loads lists what the shelves carry alone, the greatest first.
func loads(t require.TestingT, r *Response, m *module.Result) (out []float64) {
	v, err := r.Judge(studs(m))
	require.NoError(t, err)
	for _, s := range v.Shelves {
		out = append(out, s.Alone+1, s.Even+1) // + 1: nothing is near nothing
	}
	slices.SortFunc(out, func(a, b float64) int { return int(math.Copysign(1, b-a)) })
	return out
}

// What can be carried never rises when something bears less: here a screw's grip, the wood
// of a board, and a corner's claim.
func TestLessCapacityNeverCarriesMore(t *testing.T) {
	kinds := []string{"plate-back-12", "plate-back-12-open", "rod-structure-12", "plate-lining-12", "cleat-400", "bar-12-400"}
	rapid.Check(t, func(t *rapid.T) {
		m := module.Derive(tray(rapid.SampledFrom(kinds).Draw(t, "kind")), shop.Default(unit.Metric))
		r, err := Respond(&m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
		require.NoError(t, err)
		site := studs(&m)
		before := loads(t, r, &m)
		for id := range site.Screws {
			for i := range site.Screws[id] {
				site.Screws[id][i].Grip *= rapid.Float64Range(0.75, 1).Draw(t, "grip")
			}
		}
		for i := range r.model.mitres {
			c := *r.model.mitres[i].corner
			c.Claim *= unit.Pressure(rapid.Float64Range(0.1, 1).Draw(t, "claim"))
			r.model.mitres[i].corner = &c
		}
		for i := range r.model.boards {
			r.model.boards[i].wood.MOR *= unit.Pressure(rapid.Float64Range(0.1, 1).Draw(t, "mor"))
		}
		v, err := r.Judge(site)
		require.NoError(t, err)
		require.LessOrEqual(t, v.Shelves[0].Alone+1, before[1]*(1+2*closeness))
		require.Less(t, 0.0, strength.TensionAcross())
	})
}
