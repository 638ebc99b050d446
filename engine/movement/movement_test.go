package movement

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/joint"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

const mm = unit.Millimetre

// corner is a mitre of two boards, t₁ and t₂ thick, at a turn.
func corner(t [2]unit.Length, turn unit.Angle) *board.Corner {
	s := joint.Corner{Turn: turn, Joint: joint.Mitre, First: t[0], Second: t[1]}.Shape()
	return &board.Corner{Number: 1, Interior: s.Interior, Lead: [2]unit.Length{s.Sides[0].Lead, s.Sides[1].Lead}}
}

// A drawing of a corner made with nothing but points: two boards as quadrilaterals in a plane,
// laid out at their old thickness, swollen square to their length, and pushed together.
type point struct{ x, y float64 }

func (p point) plus(k float64, q point) point { return point{p.x + k*q.x, p.y + k*q.y} }

func (p point) to(q point) float64 { return math.Hypot(p.x-q.x, p.y-q.y) }

// A slab is a board near its corner: the arrises of its end, and the way back along it.
type slab struct {
	inner, outer point // of the end
	back         point // unit vector from the end into the board
}

// drawn returns the two boards of a corner with its outer point at the origin, a turn to the
// left: the first comes along +x, the second leaves at the turn. Each end is cut from outer
// to inner as it was; then the wood grows by e away from its outer face.
func drawn(t, e [2]float64, turn float64) (first, second slab) {
	sin, cos := math.Sincos(turn)
	// The inner faces are the lines y = t₁ and, to the left of the second board, its own t₂.
	// They meet at the inner point, found by solving for it and not by the leads.
	p := point{y: t[0]}
	p.x = (t[0]*cos - t[1]) / sin
	out1, out2 := point{0, 1}, point{-sin, cos} // from outer to inner face
	first = slab{inner: p.plus(e[0], out1), back: point{-1, 0}}
	second = slab{inner: p.plus(e[1], out2), back: point{cos, sin}}
	return first, second
}

// moved returns a slab moved by a vector.
func (s slab) moved(by point) slab {
	return slab{s.inner.plus(1, by), s.outer.plus(1, by), s.back}
}

// holds reports whether a point lies within the board, clear of its surface.
func (s slab) holds(p point, reach float64) bool {
	area := []point{s.outer, s.inner, s.inner.plus(reach, s.back), s.outer.plus(reach, s.back)}
	left, right := 0, 0
	for i, a := range area {
		b := area[(i+1)%4]
		d := ((b.x-a.x)*(p.y-a.y) - (b.y-a.y)*(p.x-a.x)) / a.to(b)
		if d > 1e-9 {
			left++
		}
		if d < -1e-9 {
			right++
		}
	}
	return left == 4 || right == 4
}

// overlap reports whether a place of one end lies within the other board.
func overlap(a, b slab) bool {
	for i := range 101 {
		k := float64(i) / 100
		on := func(s slab) point {
			return point{s.outer.x + k*(s.inner.x-s.outer.x), s.outer.y + k*(s.inner.y-s.outer.y)}
		}
		if a.holds(on(b), 500) || b.holds(on(a), 500) {
			return true
		}
	}
	return false
}

// away returns how far a point is from a stretch, by looking at very many places of it near
// and nearer.
func away(p, from, to point) float64 {
	low, high := 0.0, 1.0
	at := func(k float64) float64 {
		return p.to(point{from.x + k*(to.x-from.x), from.y + k*(to.y-from.y)})
	}
	for range 200 {
		third := (high - low) / 3
		if at(low+third) < at(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	return at(low)
}

// opened pushes the two boards together until an arris touches, and measures how far the
// other arris of the shorter cut stands off the longer: + on the outside.
func opened(t require.TestingT, first, second slab) float64 {
	shorter, longer := first, second
	if first.inner.to(first.outer) > second.inner.to(second.outer) {
		shorter, longer = second, first
	}
	if !overlap(first, second) { // outer arrises are together
		return -away(shorter.inner, longer.outer, longer.inner)
	}
	by := point{longer.inner.x - shorter.inner.x, longer.inner.y - shorter.inner.y}
	shorter = shorter.moved(by)
	require.False(t, overlap(shorter, longer), "neither arris lets the boards stand without running into each other")
	return away(shorter.outer, longer.outer, longer.inner)
}

// The closed formula is the drawing, for boards of any two thicknesses at any corner, grown
// or shrunk each by its own.
func TestOpeningIsTheDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick := [2]float64{rapid.Float64Range(12, 60).Draw(t, "t1"), rapid.Float64Range(12, 60).Draw(t, "t2")}
		turn := rapid.Float64Range(20, 150).Draw(t, "turn")
		grow := rapid.SampledFrom([]float64{-0.02, -0.01, -0.002, 0.002, 0.01, 0.02}).Draw(t, "grow")
		e := [2]float64{grow * thick[0], grow * rapid.Float64Range(0.3, 1).Draw(t, "unlike") * thick[1]}
		c := corner([2]unit.Length{unit.Nearest(thick[0]), unit.Nearest(thick[1])}, unit.NearestAngle(turn))
		got := Opening(c, [2]unit.Length{unit.Nearest(thick[0]), unit.Nearest(thick[1])}, e)
		if math.Abs(got) < 1e-4 {
			return // nearly no wedge: which arris touches is decided by nothing that can be drawn
		}
		first, second := drawn(thick, e, turn*math.Pi/180)
		require.InDelta(t, opened(t, first, second), got, 2e-6) // leads are whole nanometres
	})
}

// 24 mm of flat-sawn white oak over 4 %: thickness 0.17 mm, and a square mitre opens by
// 0.24 mm; quarter-sawn 0.35 and 0.50. Worked by hand: √2 · 24 · 4 · C.
func TestSquareMitresWorkedByHand(t *testing.T) {
	for _, c := range []struct {
		sawn      string
		thickness float64
		opens     float64
	}{{"flat", 0.1728, 0.24}, {"quarter", 0.3504, 0.50}} {
		s := shop.Default(unit.Metric).Moisture
		s.Sawn, s.Shop, s.UseLow, s.UseHigh = c.sawn, 10, 10, 14
		r := module.Derive(box(24*mm, "white-oak"), shop.Default(unit.Metric))
		mitres := Mitres(&r, &s)
		require.Len(t, mitres, 4)
		for _, m := range mitres {
			require.InDelta(t, c.opens, m.Toe.MM(), 0.005)
			require.Zero(t, m.Heel, "nothing dries")
		}
		boards := Boards(&r, &s)
		require.Len(t, boards, 4)
		for _, b := range boards {
			require.InDelta(t, c.thickness, b.Thickness[Damp].MM(), 1e-6)
			require.InDelta(t, 200*(0.0018+0.00365)*4-200*c.thickness/24, b.Width[Damp].MM(), 1e-6, "with the other figure")
			require.Zero(t, b.Thickness[Dry])
		}
		s.UseLow, s.UseHigh = 6, 10
		for _, m := range Mitres(&r, &s) {
			require.InDelta(t, c.opens, m.Heel.MM(), 0.005)
			require.Zero(t, m.Toe, "nothing swells")
		}
	}
}

// Two equal boards open by 2 |e| cos(θ/2) for small e, whatever the corner; which is nothing
// for boards in one line and 2 |e| for boards that lie on each other.
func TestEqualBoardsOpenByTheCosine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := unit.Angle(rapid.IntRange(1, 150).Draw(t, "turn")) * unit.Degree
		thick := [2]unit.Length{26 * mm, 26 * mm}
		e := rapid.Float64Range(-0.4, 0.4).Draw(t, "e")
		c := corner(thick, turn)
		want := 2 * e * math.Cos(c.Interior.Degrees()*math.Pi/360)
		require.InDelta(t, want, Opening(c, thick, [2]float64{e, e}), 0.02*math.Abs(want)+1e-6)
	})
}

// box is a box of four boards with mitres.
func box(thick unit.Length, of string) plan.Module {
	m := plan.Module{ID: "m1", Name: "Box", Depth: 200 * mm, Wood: of, Closed: true}
	for i := range 4 {
		long := 400 * mm
		if i%2 == 1 {
			long = 300 * mm
		}
		m.Boards = append(m.Boards, plan.Board{Length: document.Some(long), Thickness: thick})
		m.Corners = append(m.Corners, plan.Corner{Turn: unit.QuarterTurn, Joint: plan.Mitre})
	}
	return m
}

// divided is a box with a divider between its long boards.
func divided(thick, divider unit.Length, start, end string) plan.Module {
	m := box(thick, "white-oak")
	m.Dividers = []plan.Divider{{ID: "d1", From: 1, To: 3, At: 200 * mm, Thickness: divider, Start: start, End: end}}
	return m
}

func mitres(m plan.Module, s shop.Profile) []Mitre {
	r := module.Derive(m, s)
	return Mitres(&r, &s.Moisture)
}

func dividers(m plan.Module, s shop.Profile) []Divider {
	r := module.Derive(m, s)
	return Dividers(&r, &s.Moisture)
}

func TestButtsAndRebatesHaveNoMitre(t *testing.T) {
	for _, kind := range []string{plan.ButtFirst, plan.ButtSecond, plan.RebateFirst, plan.RebateSecond} {
		m := box(26*mm, "white-oak")
		for i := range m.Corners {
			m.Corners[i].Joint = kind
		}
		require.Empty(t, mitres(m, shop.Default(unit.Metric)), kind)
	}
}

// Whatever the angle and the thicknesses, a mitre counts as one and a butt does not.
func TestMitresAreToldFromButts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := joint.Corner{
			Turn:  unit.Angle(rapid.IntRange(1, 150_000_000).Draw(t, "turn")),
			Joint: rapid.SampledFrom([]string{joint.Mitre, joint.ButtFirst, joint.ButtSecond}).Draw(t, "joint"),
			First: unit.Length(rapid.IntRange(6, 100).Draw(t, "t1")) * mm, Second: unit.Length(rapid.IntRange(6, 100).Draw(t, "t2")) * mm,
		}
		if rapid.Bool().Draw(t, "right") {
			c.Turn = -c.Turn
		}
		s := c.Shape()
		k := board.Corner{Interior: s.Interior, Lead: [2]unit.Length{s.Sides[0].Lead, s.Sides[1].Lead}}
		require.Equal(t, c.Joint == joint.Mitre, mitred(&k, c.First))
	})
}

// By hand, white oak from 8 % to 6 and 11 %, as the profile begins: 0.00365 · 20 mm · 3 % =
// 0.219 mm of a divider that may be quarter-sawn; its housings are 8.5 mm deep in boards of
// 26 mm, so that each floor comes nearer by 0.00365 · 3 · (13 − 8.5) = 0.0493 mm; and over
// 200 mm of depth a flat-sawn and a quarter-sawn front part by 0.00185 · 200 · 3 = 1.11 mm.
func TestFreeWayByHand(t *testing.T) {
	s := shop.Default(unit.Metric)
	got := dividers(divided(26*mm, 20*mm, "housed", "housed"), s)
	require.Len(t, got, 1)
	d := got[0]
	require.Equal(t, "d1", d.ID)
	require.InDelta(t, 0.219, d.Side[Damp].MM(), 1e-6)
	require.InDelta(t, -0.146, d.Side[Dry].MM(), 1e-6)
	require.InDelta(t, 0.365, d.Side.Range().MM(), 1e-6)
	require.InDelta(t, 2*0.049275, d.Ends.MM(), 2e-6)
	require.InDelta(t, 1.11, d.Front.MM(), 1e-6)

	half := dividers(divided(26*mm, 20*mm, "housed", "butt"), s)[0]
	require.InDelta(t, 0.049275+0.00365*3*13, half.Ends.MM(), 2e-6)
	require.Empty(t, dividers(divided(26*mm, 20*mm, "butt", "butt"), s))

	s.Moisture.Sawn = "flat"
	flat := dividers(divided(26*mm, 20*mm, "housed", "housed"), s)[0]
	require.InDelta(t, 0.0018*20*3, flat.Side[Damp].MM(), 1e-6)
	require.Zero(t, flat.Front, "all fronts move alike")
}

// A board that lies at 60° across a divider comes nearer by 1/sin 60° of what its face does.
func TestFreeWayToASlantedBoard(t *testing.T) {
	m := plan.Module{ID: "m1", Depth: 200 * mm, Wood: "white-oak"}
	for _, long := range []unit.Length{600, 300, 500} {
		m.Boards = append(m.Boards, plan.Board{Length: document.Some(long * mm), Thickness: 26 * mm})
	}
	m.Corners = []plan.Corner{{Turn: unit.QuarterTurn, Joint: plan.Mitre}, {Turn: 60 * unit.Degree, Joint: plan.Mitre}}
	m.Dividers = []plan.Divider{{ID: "d1", From: 1, To: 3, At: 400 * mm, Thickness: 20 * mm, Start: "housed", End: "butt"}}
	got := dividers(m, shop.Default(unit.Metric))
	require.Len(t, got, 1)
	require.InDelta(t, 0.049275+0.00365*3*13/math.Sin(math.Pi/3), got[0].Ends.MM(), 2e-6)
}

func TestRange(t *testing.T) {
	for want, c := range map[unit.Length]Change{5: {-2, 3}, 3: {1, 3}, 4: {-4, -1}, 0: {}} {
		require.Equal(t, want, c.Range())
	}
}

// Wood without coefficients, or in no table, moves by nobody knows what.
func TestUnknownWoods(t *testing.T) {
	s := shop.Default(unit.Metric)
	for _, id := range []string{"sapele", "marble", ""} {
		m := divided(26*mm, 20*mm, "housed", "housed")
		m.Wood = id
		r := module.Derive(m, s)
		require.Len(t, r.Boards, 5)
		require.Empty(t, Boards(&r, &s.Moisture))
		require.Empty(t, Mitres(&r, &s.Moisture))
		require.Empty(t, Dividers(&r, &s.Moisture))
	}
}

// Boards of two woods in one corner each move by their own: of a mitre of oak and one board
// that nobody knows, nothing is said; of oak and pine, something between the two.
func TestCornersOfTwoWoods(t *testing.T) {
	s := shop.Default(unit.Metric)
	r := module.Derive(box(26*mm, "white-oak"), s)
	oak := Mitres(&r, &s.Moisture)[0].Most()
	r.Boards[1].Wood = "sugar-pine"
	mixed := Mitres(&r, &s.Moisture)
	require.Len(t, mixed, 4)
	require.Less(t, mixed[0].Most(), oak)
	require.Less(t, mixed[1].Most(), oak)
	require.InDelta(t, mixed[0].Most().MM(), mixed[1].Most().MM(), 1e-6)
	require.Equal(t, oak, mixed[2].Most())
	for i := range r.Boards {
		r.Boards[i].Wood = "sugar-pine"
	}
	require.Greater(t, mixed[0].Most(), Mitres(&r, &s.Moisture)[0].Most())
	r.Boards[1].Wood = "marble"
	require.Len(t, Mitres(&r, &s.Moisture), 2)
	require.Len(t, Boards(&r, &s.Moisture), 3)
}

// Dried below where it was made, a mitre only ever opens at the heel; the drier, the wider.
func TestDrierOpensWider(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shop.Default(unit.Metric)
		low := rapid.Float64Range(2, 7).Draw(t, "low")
		s.Moisture.Sawn = rapid.SampledFrom([]string{"", "flat", "quarter"}).Draw(t, "sawn")
		s.Moisture.Shop, s.Moisture.UseLow, s.Moisture.UseHigh = 12, low, 10
		one := mitres(box(26*mm, "black-walnut"), s)
		s.Moisture.UseLow = low - 0.5
		two := mitres(box(26*mm, "black-walnut"), s)
		require.Len(t, one, 4)
		for i := range one {
			require.Zero(t, one[i].Toe)
			require.Greater(t, two[i].Heel, one[i].Heel)
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	s := shop.Default(unit.Metric)
	r := module.Derive(divided(26*mm, 20*mm, "housed", "housed"), s)
	b.ReportAllocs()
	for b.Loop() {
		Check(&r, &s.Moisture)
	}
}
