package module

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

const (
	mm  = unit.Millimetre
	deg = unit.Degree
)

// chain returns a module of boards t thick and 200 deep, mitred at each turn. A length
// of 0 is to close.
func chain(t unit.Length, closed bool, lengths []unit.Length, turns ...unit.Angle) plan.Module {
	m := plan.Module{ID: "m1", Depth: 200 * mm, Wood: "white-oak", Closed: closed}
	for _, l := range lengths {
		b := plan.Board{Thickness: t}
		if l > 0 {
			b.Length = document.Some(l)
		}
		m.Boards = append(m.Boards, b)
	}
	for _, a := range turns {
		m.Corners = append(m.Corners, plan.Corner{Turn: a, Joint: plan.Mitre})
	}
	return m
}

func derive(m plan.Module) Result { return Derive(m, shop.Default(unit.Metric)) }

func size(r Result) [2]unit.Length {
	return [2]unit.Length{r.Box.MaxX - r.Box.MinX, r.Box.MaxY - r.Box.MinY}
}

func repeat[T any](v T, n int) (out []T) {
	for range n {
		out = append(out, v)
	}
	return out
}

func keys(r Result) (out []string) {
	for _, f := range r.Findings {
		out = append(out, f.Kind.Key)
	}
	return out
}

// Boards 24 thick, 320, 260 and 520 long, mitred at 90°. A mitred board counts to the
// outside at both ends, so the sizes are sums and differences that a hand can check.
func TestWorkedShapes(t *testing.T) {
	const q = 90 * deg
	cases := []struct {
		name string
		m    plan.Module
		want [2]unit.Length
	}{
		{"U lies on its side: 520 x 260 when turned", chain(24*mm, false, []unit.Length{260 * mm, 520 * mm, 260 * mm}, q, q), [2]unit.Length{260 * mm, 520 * mm}},
		{"Z", chain(24*mm, false, []unit.Length{320 * mm, 260 * mm, 520 * mm}, q, -q), [2]unit.Length{816 * mm, 260 * mm}},
		{"Z of the other hand", chain(24*mm, false, []unit.Length{320 * mm, 260 * mm, 520 * mm}, -q, q), [2]unit.Length{816 * mm, 260 * mm}},
		{"L", chain(24*mm, false, []unit.Length{320 * mm, 260 * mm}, q), [2]unit.Length{320 * mm, 260 * mm}},
		{"box, two to close", chain(24*mm, true, []unit.Length{460 * mm, 340 * mm, 0, 0}, q, q, q, q), [2]unit.Length{460 * mm, 340 * mm}},
		{"box, all typed", chain(24*mm, true, []unit.Length{460 * mm, 340 * mm, 460 * mm, 340 * mm}, q, q, q, q), [2]unit.Length{460 * mm, 340 * mm}},
		{"shelf", chain(24*mm, false, []unit.Length{800 * mm}), [2]unit.Length{800 * mm, 24 * mm}},
	}
	for _, c := range cases {
		r := derive(c.m)
		require.Empty(t, keys(r), c.name)
		require.Equal(t, c.want, size(r), c.name)
	}
}

// Z: the long points of the middle board lie on opposite faces.
func TestOppositeTurnsSwapTheLongPoint(t *testing.T) {
	r := derive(chain(24*mm, false, []unit.Length{320 * mm, 260 * mm, 520 * mm}, 90*deg, -90*deg))
	start, end := r.Boards[1].Ends()
	require.Equal(t, unit.Length(0), start.AtB)
	require.Equal(t, 24*mm, start.AtA)
	require.Equal(t, 260*mm, end.AtA)
	require.Equal(t, 236*mm, end.AtB)
}

// Six boards of 300 at 120°: flat to flat 300·√3 = 519.615242 mm.
func TestHexagon(t *testing.T) {
	turns := repeat(60*deg, 6)
	for name, m := range map[string]plan.Module{
		"typed":    chain(24*mm, true, repeat(300*mm, 6), turns...),
		"to close": chain(24*mm, true, append(repeat(300*mm, 4), 0, 0), turns...),
	} {
		r := derive(m)
		require.Empty(t, keys(r), name)
		require.InDelta(t, float64(unit.Nearest(519.615242)), float64(size(r)[1]), float64(unit.Touch), name)
		require.InDelta(t, float64(600*mm), float64(size(r)[0]), float64(unit.Touch), name)
		for _, b := range r.Boards {
			require.InDelta(t, float64(300*mm), float64(b.Length), float64(unit.Touch), name)
		}
		for _, c := range r.Corners {
			require.Equal(t, [2]unit.Angle{30 * deg, 30 * deg}, c.Tilt, name)
		}
	}
}

// Regular polygons close with any number of sides; the outer apothem is s/(2·tan(π/n)).
func TestRegularPolygonsClose(t *testing.T) {
	for n := 3; n <= 12; n++ {
		if 360%n != 0 {
			continue // the turn is no whole number of micro-degrees, and the sum is not 360°
		}
		turns := repeat(360*deg/unit.Angle(n), n)
		r := derive(chain(20*mm, true, repeat(400*mm, n), turns...))
		for _, f := range r.Findings {
			require.Equal(t, "tilt-over-saw", f.Kind.Key, "%d sides", n)
		}
		require.Equal(t, n == 3, len(r.Findings) > 0, "a triangle tilts 60°")
		apothem := 200 / math.Tan(math.Pi/float64(n))
		high := apothem // from the first board's outer face to the middle of the box
		if n%2 == 1 {
			high = (apothem + 200/math.Sin(math.Pi/float64(n))) / 2
		}
		require.InDelta(t, high-20, r.Pivot.Y.MM(), unit.Touch.MM(), "%d sides", n)
	}
}

func TestGapIsStated(t *testing.T) {
	box := func(last unit.Length) plan.Module {
		return chain(24*mm, true, []unit.Length{460 * mm, 340 * mm, 460 * mm, last}, repeat(90*deg, 4)...)
	}
	require.Empty(t, keys(derive(box(340*mm+unit.Touch))))
	r := derive(box(340*mm + 50*unit.Micrometre))
	require.Equal(t, []string{"gap-taken-up"}, keys(r))
	r = derive(box(341 * mm))
	require.Equal(t, []string{"chain-does-not-close"}, keys(r))
	require.Equal(t, mm, r.Findings[0].Value.Length)
	fix := r.Findings[0].Remedies[0].Edit
	require.Equal(t, "set-board", fix.Do)
	require.Equal(t, 4., fix.Args[0].Value.Number)
	require.Equal(t, 340*mm, fix.Args[1].Value.Length)
}

func TestParallelBoardsDoNotClose(t *testing.T) {
	r := derive(chain(24*mm, true, []unit.Length{0, 340 * mm, 0, 340 * mm}, repeat(90*deg, 4)...))
	require.Equal(t, []string{"closing-boards-parallel"}, keys(r))
	require.Empty(t, r.Boards)
}

func TestBoardShorterThanItsMitres(t *testing.T) {
	r := derive(chain(24*mm, false, []unit.Length{300 * mm, 48 * mm, 300 * mm}, 90*deg, 90*deg))
	require.Equal(t, []string{"board-too-short"}, keys(r))
	require.Equal(t, 48*mm, r.Findings[0].Limit.Length, "both leads together leave nothing of the inside")
	require.Empty(t, r.Boards)
	r = derive(chain(24*mm, false, []unit.Length{300 * mm, 49 * mm, 300 * mm}, 90*deg, 90*deg))
	require.NotEmpty(t, r.Boards)
	r = derive(chain(24*mm, false, []unit.Length{300 * mm, 48 * mm, 300 * mm}, 90*deg, -90*deg))
	require.NotEmpty(t, r.Boards, "in a Z the faces are both 24 shorter than the board")
}

func TestChainThatCrossesItself(t *testing.T) {
	m := chain(24*mm, false, []unit.Length{500 * mm, 200 * mm, 300 * mm, 400 * mm}, repeat(90*deg, 3)...)
	require.Equal(t, []string{"boards-overlap"}, keys(derive(m)))
}

// Every joint joins without a gap: the corner's quadrangle is filled.
func TestJointsOfASquareCorner(t *testing.T) {
	for kind, want := range map[string][2]unit.Length{
		joint.Mitre: {320 * mm, 260 * mm}, joint.ButtFirst: {320 * mm, 284 * mm}, joint.ButtSecond: {350 * mm, 260 * mm},
		joint.RebateFirst: {320 * mm, 272 * mm}, joint.RebateSecond: {335 * mm, 260 * mm},
	} {
		m := chain(24*mm, false, []unit.Length{320 * mm, 260 * mm}, 90*deg)
		m.Boards[1].Thickness = 30 * mm
		m.Corners[0].Joint = kind
		r := derive(m)
		require.Equal(t, want, size(r), kind)
		area := 0.0
		for _, o := range r.Outlines {
			area += areaOf(o.Points)
		}
		solid := 320*24 + 260*30 - 24*30.
		switch kind {
		case joint.ButtFirst, joint.ButtSecond:
			solid = 320*24 + 260*30
		case joint.RebateFirst:
			solid = 320*24 + 260*30 - 12*30
		case joint.RebateSecond:
			solid = 320*24 + 260*30 - 15*24
		}
		require.InDelta(t, solid, area, 1e-6, kind)
	}
}

// areaOf is Gauss's area formula in mm².
func areaOf(p []XY) (sum float64) {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += a.X.MM()*b.Y.MM() - b.X.MM()*a.Y.MM()
	}
	return sum / 2
}

func TestPivotIsRoundedDown(t *testing.T) {
	m := chain(24*mm, false, []unit.Length{300*mm + 1})
	r := derive(m)
	require.Equal(t, XY{150 * mm, -12 * mm}, r.Pivot)
	m.Boards[0].Thickness = 24*mm + 1
	require.Equal(t, XY{150 * mm, -12*mm - 1}, derive(m).Pivot)
}

func TestBrokenModulesGiveNoBoards(t *testing.T) {
	u := func() plan.Module {
		return chain(24*mm, false, []unit.Length{260 * mm, 520 * mm, 260 * mm}, 90*deg, 90*deg)
	}
	for name, change := range map[string]func(*plan.Module){
		"no boards":          func(m *plan.Module) { m.Boards = nil },
		"a corner missing":   func(m *plan.Module) { m.Corners = m.Corners[:1] },
		"no turn":            func(m *plan.Module) { m.Corners[0].Turn = 0 },
		"a turn too sharp":   func(m *plan.Module) { m.Corners[0].Turn = 151 * deg },
		"no thickness":       func(m *plan.Module) { m.Boards[1].Thickness = 0 },
		"negative thickness": func(m *plan.Module) { m.Boards[1].Thickness = -mm },
		"negative length":    func(m *plan.Module) { m.Boards[1].Length.Value = -mm },
		"absurd length":      func(m *plan.Module) { m.Boards[1].Length.Value = math.MaxInt64 },
		"absurd thickness":   func(m *plan.Module) { m.Boards[1].Thickness = math.MaxInt64 },
		"no depth":           func(m *plan.Module) { m.Depth = 0 },
		"absurd depth":       func(m *plan.Module) { m.Depth = math.MaxInt64 },
		"a length missing":   func(m *plan.Module) { m.Boards[1].Length = document.Opt[unit.Length]{} },
		"closed of three at 90°": func(m *plan.Module) {
			m.Closed = true
			m.Corners = append(m.Corners, m.Corners[0])
		},
	} {
		m := u()
		change(&m)
		r := derive(m)
		require.Equal(t, []string{"module-not-worked-out"}, keys(r), name)
		require.Empty(t, r.Boards, name)
	}
}
