package hold

import (
	"errors"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/beam"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/wall"
)

// A hanging place of a module in an example.
type example struct {
	name string
	m    *module.Result
	r    *Response
	site *Site
}

// examples hangs every module of every arrangement of the examples on its wall.
func examples(t *testing.T) (out []example) {
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		var modules []module.Result
		for _, m := range p.Modules {
			modules = append(modules, module.Derive(m, p.Shop))
		}
		for _, a := range p.Arrangements {
			for _, w := range p.Walls {
				if w.ID == a.Wall {
					out = append(out, arranged(t, name, p, w, a, modules)...)
				}
			}
		}
	}
	return out
}

func arranged(t *testing.T, name string, p plan.Plan, w plan.Wall, a plan.Arrangement, modules []module.Result) (out []example) {
	points := wall.Arrange(w, a, modules, p.Shop, p.Units).Points
	lining := Lining{w.Lining.Thickness.Value.MM(), w.Lining.Thickness.Known}
	for _, pose := range a.Poses {
		for i := range modules {
			m := &modules[i]
			if m.ID != pose.Module {
				continue
			}
			h := Hanging{Turn: pose.Turn, Flip: pose.Flip, Works: wall.Working(m, pose)}
			r, err := Respond(m, h, lining, (p.Shop.Moisture.UseLow+p.Shop.Moisture.UseHigh)/2)
			if loose := (*beam.Loose)(nil); errors.As(err, &loose) {
				t.Logf("%s: %s: %v", name, m.ID, err)
				continue
			}
			require.NoError(t, err)
			out = append(out, example{name, m, r, siteOf(m, lining, points)})
		}
	}
	return out
}

// siteOf says what the screws of a module are in.
func siteOf(m *module.Result, lining Lining, points []wall.Point) *Site {
	s := &Site{Lining: lining, Screws: map[string][]Screw{}}
	for i := range m.Fixings {
		x := &m.Fixings[i]
		holes := make([]Screw, len(x.Screws))
		for k := range points {
			if q := &points[k]; q.What == wall.Hole && q.Module == m.ID && q.Bracket == x.Bracket {
				holes[q.Nth()] = Screw{In: q.In.Kind, State: q.In.State, Edge: q.In.Edge.MM(), Grip: q.Grip.MM()}
			}
		}
		s.Screws[x.Bracket] = holes
	}
	return s
}

// What every shelf of every example carries, put back as a load, uses what governs wholly,
// and nothing more than wholly.
func TestLoadsOfExamplesPutBack(t *testing.T) {
	all := examples(t)
	require.Greater(t, len(all), 20)
	governed := 0
	for _, x := range all {
		v, err := x.r.Judge(x.site)
		require.NoError(t, err)
		for i, c := range v.Shelves {
			t.Logf("%s %s %s: %.1f kg (%s), even %.1f, with all %.1f; %s %s %.2f", x.name, x.m.ID, c.Board, c.Alone, c.Case, c.Even, c.Carries, c.Governs.Kind, c.Governs.Bracket, c.Governs.Part)
			if c.Alone == 0 || c.Alone == mostCarried {
				continue
			}
			governed++
			for k, stand := range x.r.Shelves[i].ways {
				j, err := x.r.judged(x.site, []load{{i, k, c.Alone}})
				require.NoError(t, err)
				require.Less(t, j.worst().Part, 1.001)
				if slices.Equal(stand.on, c.On) {
					require.InDelta(t, 1, j.worst().Part, 1e-3, "%s %s", x.name, c.Board)
				}
			}
		}
	}
	require.Greater(t, governed, 10)
}
