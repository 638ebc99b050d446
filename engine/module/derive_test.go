package module

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The words of a plan and of the joints are the same.
func TestJointsHaveTheSameNames(t *testing.T) {
	require.Equal(t, []string{plan.Mitre, plan.ButtFirst, plan.ButtSecond, plan.RebateFirst, plan.RebateSecond},
		[]string{joint.Mitre, joint.ButtFirst, joint.ButtSecond, joint.RebateFirst, joint.RebateSecond})
}

// reinforced gives every corner of a random module a reinforcement.
func reinforced(seed uint64) plan.Module {
	m := randomModule(seed)
	rng := rand.New(rand.NewPCG(seed, 3))
	for i := range m.Corners {
		m.Corners[i].Reinforcement.Kind = []string{"spline", "tenon", "dowel", "key", "screw"}[rng.IntN(5)]
	}
	return m
}

// The two slots of a piece open to each other in the module, and run opposite ways.
func TestSlotsMeetInTheModule(t *testing.T) {
	pairs := 0
	for seed := range uint64(600) {
		m := reinforced(seed)
		r := derive(m)
		if len(r.Boards) == 0 {
			continue
		}
		for i := range m.Corners {
			if k := m.Corners[i].Reinforcement.Kind; k == "screw" {
				continue
			}
			a, b := r.Boards[i], r.Boards[(i+1)%len(m.Boards)]
			cause := board.Cause{What: "corner", ID: strconv.Itoa(i + 1)}
			fa, fb := slots(a, cause), slots(b, cause)
			require.Equal(t, len(fa), len(fb))
			for j := range fa {
				ax, ay, az := a.Point(fa[j].Mouth)
				bx, by, bz := b.Point(fb[j].Mouth)
				require.InDelta(t, ax.MM(), bx.MM(), 5e-6, "seed %d, corner %d", seed, i+1)
				require.InDelta(t, ay.MM(), by.MM(), 5e-6, "seed %d, corner %d", seed, i+1)
				require.Equal(t, az, bz)
				dx, dy := axis(a, fa[j])
				ex, ey := axis(b, fb[j])
				require.InDelta(t, -1, dx*ex+dy*ey, 1e-9, "seed %d, corner %d", seed, i+1)
				pairs++
			}
		}
	}
	require.Greater(t, pairs, 1000)
}

func slots(b board.Board, c board.Cause) (out []board.Feature) {
	for _, f := range b.Features {
		if f.Cause == c && (f.Kind == board.Slot || f.Kind == board.Bore) {
			out = append(out, f)
		}
	}
	return out
}

// axis returns the direction of a tool in the module's plane.
func axis(b board.Board, f board.Feature) (x, y float64) {
	normal := map[board.Face]float64{board.Start: 0, board.FaceA: 90, board.End: 180, board.FaceB: 270}[f.Enter]
	// u runs along Dir, w 90° clockwise from it: an angle from u towards w turns clockwise
	a := (b.Frame.Dir.Degrees() - normal - f.Tilt.Degrees()) * math.Pi / 180
	return math.Cos(a), math.Sin(a)
}

// A mitre's glued area is its plane, from inner to outer point, by the depth.
func TestGlueAreaIsThePlane(t *testing.T) {
	for seed := range uint64(300) {
		m := randomModule(seed)
		r := derive(m)
		for i, c := range r.Corners {
			if i >= len(m.Corners) || m.Corners[i].Joint != plan.Mitre {
				continue
			}
			plane := math.Hypot((c.At[0] - c.Outer[0]).MM(), (c.At[1] - c.Outer[1]).MM())
			require.InDelta(t, plane*m.Depth.MM()*1e-6, float64(c.GlueArea), 1e-8)
		}
	}
}

// What crosses itself by the finding does so by the geometry library as well.
func TestCrossingsAreReal(t *testing.T) {
	crossed := 0
	for seed := uint64(0); crossed < 60; seed++ {
		r := derive(randomModule(seed))
		for _, f := range r.Findings {
			if f.Kind != overlap {
				continue
			}
			crossed++
			worst := 0.
			for i := range r.Outlines {
				for j := range i {
					worst = max(worst, overlay(t, seed, intersection, 0, r.Outlines[i], r.Outlines[j]).Area())
				}
			}
			require.Greater(t, worst, 1e-3, "seed %d", seed)
			break
		}
	}
}

// shelf is a U with everything: splines, rods, a light round a corner, a divider,
// chamfers.
func shelf() plan.Module {
	m := chain(26*mm, false, []unit.Length{260 * mm, 900 * mm, 260 * mm}, 90*deg, 90*deg)
	for i := range m.Corners {
		m.Corners[i].Reinforcement.Kind = "spline"
	}
	m.Boards[1].Edges = []plan.Edge{{Arris: "front-a", Cut: "chamfer", Size: mm}, {Arris: "front-b", Cut: "round", Size: 2 * mm}}
	m.Brackets = []plan.Bracket{{ID: "b1", Kind: "rod-structure-12", Board: 2, At: 200 * mm}, {ID: "b2", Kind: "rod-structure-12", Board: 2, At: 700 * mm}}
	m.Lights = []plan.Light{{ID: "l1", First: 2, Last: 2, Face: "A", FromFront: document.Some(22 * mm), Width: 11 * mm, Depth: 8 * mm, StartStop: document.Some(40 * mm), EndStop: document.Some(40 * mm), Strip: "strip-24-9.6"}}
	m.Dividers = []plan.Divider{{ID: "d1", From: 1, To: 3, At: 60 * mm, Thickness: 20 * mm, Start: "housed", End: "housed"}}
	return m
}

func TestShelfWithEverything(t *testing.T) {
	r := derive(shelf())
	for _, f := range r.Findings {
		require.Less(t, f.Kind.Severity, finding.Stop, "%s", say(f))
	}
	require.Len(t, r.Boards, 4)
	require.Len(t, r.Fixings, 2)
	require.Len(t, r.Strips, 1)
	kinds := map[board.Kind]int{}
	for _, f := range r.Boards[1].Features {
		kinds[f.Kind]++
	}
	require.Equal(t, 2, kinds[board.EndCut])
	require.Equal(t, 2, kinds[board.Slot])
	require.GreaterOrEqual(t, kinds[board.Bore], 2)
	require.Equal(t, 1, kinds[board.Groove])
	require.Equal(t, 1, kinds[board.Chamfer])
	require.Equal(t, 1, kinds[board.RoundOver])
	require.Equal(t, board.EndCut, r.Boards[1].Features[0].Kind)
	require.Equal(t, board.EndCut, r.Boards[1].Features[1].Kind)
	require.Positive(t, float64(r.Volume))
	require.InDelta(t, float64(r.Volume)*745, float64(r.Mass), float64(r.Mass)*0.03, "white oak weighs about 745 kg/m³ at 8.5 %%")
}

func say(f finding.Finding) string {
	args := append(append([]words.Arg{}, f.Args...), words.Arg{Name: "value", Value: f.Value}, words.Arg{Name: "limit", Value: f.Limit})
	return words.Text("finding."+f.Kind.Key, args, unit.Style{Step: unit.Millimetre / 10})
}

// Bores in the wrong place, a groove across them, a light past the board: the boards'
// own findings carry their module.
func TestClashesCarryTheirModule(t *testing.T) {
	m := shelf()
	m.Lights[0].FromFront = document.Some(100 * mm)
	r := derive(m)
	n := 0
	for _, f := range r.Findings {
		require.Equal(t, "m1", f.Place.Module)
		require.NotContains(t, say(f), "[")
		if f.Kind.Key == "cuts-meet" {
			n++
			require.Equal(t, "m1.2", f.Place.Board)
		}
		for _, rem := range f.Remedies {
			require.NotContains(t, words.Text("remedy."+rem.Key, rem.Args, unit.Style{}), "[")
			if rem.Edit.Do != "" {
				require.True(t, has(rem.Edit.Args, "module"), rem.Key)
			}
		}
	}
	require.Equal(t, 2, n)
}

func TestEdges(t *testing.T) {
	m := chain(24*mm, false, []unit.Length{300 * mm, 300 * mm}, 90*deg)
	edge := func(e plan.Edge) Result { m.Boards[0].Edges = []plan.Edge{e}; return derive(m) }
	last := func(r Result) board.Feature { return r.Boards[0].Features[len(r.Boards[0].Features)-1] }
	r := edge(plan.Edge{Arris: "front-a", Cut: "chamfer", Size: mm})
	require.Equal(t, board.OnBlank, last(r).After, "the inside is chamfered before glue-up")
	r = edge(plan.Edge{Arris: "front-b", Cut: "round", Size: mm})
	require.Equal(t, board.AfterGlue, last(r).After)
	require.Equal(t, board.RoundOver, last(r).Kind)
	r = edge(plan.Edge{Arris: "end-b", Cut: "chamfer", Size: mm})
	require.Equal(t, board.AfterGlue, last(r).After, "the outside of the corner")
	r = edge(plan.Edge{Arris: "end-a", Cut: "chamfer", Size: mm})
	require.Equal(t, []string{"arris-in-joint"}, keys(r))
	require.Equal(t, board.EndCut, last(r).Kind)
	r = edge(plan.Edge{Arris: "start-a", Cut: "chamfer", Size: 13 * mm})
	require.Equal(t, []string{"arris-too-large"}, keys(r))
	require.Equal(t, 12*mm, r.Findings[0].Limit.Length)
}

func TestUnknownWoodIsNotChecked(t *testing.T) {
	m := chain(24*mm, false, []unit.Length{300 * mm})
	m.Wood = "unobtainium"
	r := derive(m)
	require.Equal(t, []string{"mass-not-checked"}, keys(r))
	require.Zero(t, r.Mass)
	require.Positive(t, float64(r.Volume))
}

// Whatever stands in a plan, working it out ends, and every figure is a number.
func TestNothingBreaksIt(t *testing.T) {
	shop := shop.Default(unit.Metric)
	for seed := range uint64(4000) {
		rng := rand.New(rand.NewPCG(seed, 5))
		m := reinforced(seed)
		if rng.IntN(2) == 0 {
			m.Brackets = shelf().Brackets
			m.Lights = shelf().Lights
		}
		spoil(rng, &m)
		r := Derive(m, shop)
		require.False(t, math.IsNaN(float64(r.Volume)) || math.IsInf(float64(r.Volume), 0), "seed %d", seed)
		require.False(t, math.IsNaN(float64(r.Mass)), "seed %d", seed)
		for _, c := range r.Corners {
			require.False(t, math.IsNaN(float64(c.GlueArea+c.SlotArea)), "seed %d", seed)
		}
		for _, f := range r.Findings {
			require.NotContains(t, say(f), "[", "seed %d", seed)
			require.NotEmpty(t, f.Remedies, "seed %d: %s", seed, f.Kind.Key)
		}
	}
}

// spoil sets some fields to what no maker means.
func spoil(rng *rand.Rand, m *plan.Module) {
	odd := func() unit.Length {
		return []unit.Length{0, 1, -1, 1000, -5 * mm, 7 * mm, 99 * unit.Metre, math.MaxInt64, math.MinInt64, math.MaxInt64 / 2}[rng.IntN(10)]
	}
	for range 1 + rng.IntN(3) {
		b := &m.Boards[rng.IntN(len(m.Boards))]
		switch rng.IntN(12) {
		case 0:
			b.Length = document.Some(odd())
		case 1:
			b.Thickness = odd()
		case 2:
			m.Depth = odd()
		case 3:
			b.Edges = append(b.Edges, plan.Edge{Arris: []string{"front-a", "end-b", "x", ""}[rng.IntN(4)], Cut: "round", Size: odd()})
		case 4, 5:
			for i := range m.Corners {
				m.Corners[i].Reinforcement.Thickness = document.Some(odd())
			}
		case 6:
			for i := range m.Corners {
				m.Corners[i].Reinforcement.Width = document.Some(odd())
			}
		case 7:
			for i := range m.Corners {
				m.Corners[i].Reinforcement.Count = document.Some(rng.IntN(3) * 500_000_000)
			}
		case 8:
			for i := range m.Dividers {
				m.Dividers[i].At, m.Dividers[i].Thickness = odd(), odd()
			}
		case 9:
			for i := range m.Dividers {
				m.Dividers[i].HousingDepth = document.Some(odd())
			}
		case 10:
			for i := range m.Lights {
				m.Lights[i].Width, m.Lights[i].Depth, m.Lights[i].FromFront = odd(), odd(), document.Some(odd())
			}
		case 11:
			for i := range m.Brackets {
				m.Brackets[i].At, m.Brackets[i].Board = odd(), rng.IntN(9)-2
			}
		}
	}
}

func TestSamePlanSameResult(t *testing.T) {
	for seed := range uint64(200) {
		m := reinforced(seed)
		require.Equal(t, derive(m), derive(m))
	}
}

func BenchmarkDerive(b *testing.B) {
	m, s := shelf(), shop.Default(unit.Metric)
	b.ReportAllocs()
	for b.Loop() {
		Derive(m, s)
	}
}
