package joint

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/unit"
)

const deg = unit.Degree

func mitre(turn unit.Angle, t1, t2 unit.Length) Shape {
	return Corner{Number: 1, Turn: turn, Joint: Mitre, First: t1, Second: t2}.Shape()
}

// Worked: a₁ = t₂ at 90°; θ = 150° with 24 and 40 mm gives a₂ = (24 + 40·cos 150°)/sin 150°
// = −21.28; 30 and 20 mm at 90° tilt atan(20/30) = 33.7° and atan(30/20) = 56.3°.
func TestWorkedMitres(t *testing.T) {
	s := mitre(90*deg, 24*mm, 24*mm)
	require.Equal(t, [2]unit.Length{24 * mm, 24 * mm}, [2]unit.Length{s.Sides[0].Lead, s.Sides[1].Lead})
	require.Equal(t, 45*deg, s.Sides[0].Tilt)
	s = mitre(30*deg, 24*mm, 40*mm)
	require.Equal(t, 150*deg, s.Interior)
	require.Equal(t, "-21.28", unit.Style{Step: mm / 100}.Length(s.Sides[1].Lead))
	require.Equal(t, unit.Length(0), s.Sides[1].Reach(), "the long point is on the inner face")
	s = mitre(90*deg, 30*mm, 20*mm)
	require.Equal(t, "33.69°", unit.Style{}.Angle(s.Sides[0].Tilt))
	require.Equal(t, "56.31°", unit.Style{}.Angle(s.Sides[1].Tilt))
}

// Blade settings printed in the operator's manual of a 10 in compound mitre saw (model
// 315.21212, page 24, table "Compound angle settings for popular structures", first
// row), for 4 to 10 sides; "given to the closest 0.005°".
func TestTiltsOfRegularPolygonsAsPrinted(t *testing.T) {
	printed := map[int]float64{4: 45.00, 5: 36.00, 6: 30.00, 7: 25.71, 8: 22.50, 9: 20.00, 10: 18.00}
	for n := 3; n <= 12; n++ {
		turn := unit.NearestAngle(360 / float64(n))
		s := mitre(turn, 24*mm, 24*mm)
		require.InDelta(t, 180/float64(n), s.Sides[0].Tilt.Degrees(), 1e-6, "%d sides", n)
		require.Equal(t, s.Sides[0], s.Sides[1])
		if p, ok := printed[n]; ok {
			require.InDelta(t, p, s.Sides[0].Tilt.Degrees(), 0.005, "%d sides", n)
		}
	}
}

// The second board of a corner seen from the first: x and y of the first board's frame
// of inner point, outward and outer face.
func fromFirst(interior unit.Angle, x, y float64) (float64, float64) {
	s, c := interior.SinCos()
	// b₂ = (cos θ, sin θ) along the second board from P, outward is −b₂; its outer
	// normal is (−sin θ, cos θ). The first board runs along +1 from P, outward is −1,
	// and its outer normal is −y.
	px, py := -x*c-y*s, -x*s+y*c
	return -px, -py
}

// Both boards end in one plane from P to Q, at any angle and thickness, in any joint.
func TestBothBoardsEndInOnePlane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCorner(t)
		s := c.Shape()
		first, second := s.Sides[0], s.Sides[1]
		thick := [2]float64{c.First.MM(), c.Second.MM()}
		ends := func(i int) (inner, outer [2]float64) {
			side := s.Sides[i]
			inner, outer = [2]float64{side.Inner.MM(), 0}, [2]float64{side.Outer.MM(), thick[i]}
			if i == 1 {
				inner[0], inner[1] = fromFirst(s.Interior, inner[0], inner[1])
				outer[0], outer[1] = fromFirst(s.Interior, outer[0], outer[1])
			}
			return inner, outer
		}
		_, q0 := ends(0)
		p1, q1 := ends(1)
		near := func(a, b [2]float64, what string) {
			require.InDelta(t, a[0], b[0], 2e-6, what)
			require.InDelta(t, a[1], b[1], 2e-6, what)
		}
		switch s.Through {
		case -1:
			near([2]float64{}, p1, "P")
			near(q0, q1, "Q")
			require.InDelta(t, math.Hypot(first.Lead.MM(), thick[0]), s.Plane.MM(), 2e-6)
			require.InDelta(t, math.Hypot(second.Lead.MM(), thick[1]), s.Plane.MM(), 2e-6)
		case 0:
			require.InDelta(t, first.Rebate.MM(), p1[1], 2e-6, "the second board ends in the first board's face")
			require.InDelta(t, first.Rebate.MM(), q1[1], 2e-6)
			near(q0, [2]float64{s.Outer.MM(), thick[0]}, "the first board ends at Q")
		}
	})
}

func anyCorner(t *rapid.T) Corner {
	c := Corner{
		Number: 1,
		First:  unit.Length(rapid.Int64Range(12, 60).Draw(t, "first")) * mm,
		Second: unit.Length(rapid.Int64Range(12, 60).Draw(t, "second")) * mm,
		Turn:   unit.Angle(rapid.Int64Range(10, 150).Draw(t, "turn")) * deg,
		Joint:  rapid.SampledFrom([]string{Mitre, ButtFirst, ButtSecond, RebateFirst, RebateSecond}).Draw(t, "joint"),
	}
	if rapid.Bool().Draw(t, "right") {
		c.Turn = -c.Turn
	}
	if rapid.IntRange(0, 2).Draw(t, "square") == 0 {
		c.Turn = unit.QuarterTurn
	}
	return c
}

// A corner walked the other way round is the same corner.
func TestCornersAreTheSameFromBothSides(t *testing.T) {
	swap := map[string]string{Mitre: Mitre, ButtFirst: ButtSecond, ButtSecond: ButtFirst, RebateFirst: RebateSecond, RebateSecond: RebateFirst}
	rapid.Check(t, func(t *rapid.T) {
		c := anyCorner(t)
		r := c
		r.Turn, r.First, r.Second, r.Joint = -c.Turn, c.Second, c.First, swap[c.Joint]
		a, b := c.Shape(), r.Shape()
		require.Equal(t, a.Sides, [2]Side{b.Sides[1], b.Sides[0]})
		require.Equal(t, a.Plane, b.Plane)
		require.NotEqual(t, a.Inside, b.Inside)
	})
}

// A butt through board ends as the mitre does outside, and the other board's own
// formula: lead t·cot θ.
func TestButts(t *testing.T) {
	s := Corner{Turn: 90 * deg, Joint: ButtFirst, First: 24 * mm, Second: 30 * mm}.Shape()
	require.Equal(t, Side{Inner: 30 * mm, Outer: 30 * mm}, s.Sides[0])
	require.Equal(t, Side{}, s.Sides[1])
	require.Equal(t, 30*mm, s.Plane)
	s = Corner{Turn: 120 * deg, Joint: ButtSecond, First: 20 * mm, Second: 20 * mm}.Shape()
	require.InDelta(t, 20/math.Tan(math.Pi/3), s.Sides[0].Lead.MM(), 1e-6)
	require.Equal(t, 30*deg, s.Sides[0].Tilt, "square across the thickness would be 0; at 60° it tilts 30°")
}

func TestRebates(t *testing.T) {
	s := Corner{Turn: 90 * deg, Joint: RebateFirst, First: 24 * mm, Second: 30 * mm}.Shape()
	require.Equal(t, Side{Inner: 30 * mm, Outer: 30 * mm, Rebate: 12 * mm, Over: 30 * mm}, s.Sides[0])
	require.Equal(t, Side{Inner: 12 * mm, Outer: 12 * mm}, s.Sides[1])
	s = Corner{Turn: 80 * deg, Joint: RebateFirst, First: 24 * mm, Second: 30 * mm}.Shape()
	require.Zero(t, s.Sides[0].Rebate, "a rebate that is not square is a butt, and a finding")
}

// The seat's place and tilt, for both ends and both inner faces: a slot that leans to
// the outer face as it goes into the wood.
func TestSeats(t *testing.T) {
	for _, c := range []struct {
		at, in     board.Face
		u, w       unit.Length
		tiltOf45   unit.Angle
		axisU, axW float64
	}{
		{board.End, board.FaceA, 110 * mm, 5 * mm, -45 * deg, -1, 1},
		{board.End, board.FaceB, 110 * mm, 19 * mm, 45 * deg, -1, -1},
		{board.Start, board.FaceA, 90 * mm, 5 * mm, 45 * deg, 1, 1},
		{board.Start, board.FaceB, 90 * mm, 19 * mm, -45 * deg, 1, -1},
	} {
		s := Seat{At: c.at, Inside: c.in, Foot: 100 * mm, Thickness: 24 * mm}
		u, w := s.place(10*mm, 5*mm)
		require.Equal(t, []unit.Length{c.u, c.w}, []unit.Length{u, w})
		tilt := s.tilt(45 * deg)
		require.Equal(t, c.tiltOf45, tilt)
		sin, cos := tilt.SinCos()
		normal := 1. // at the start
		if c.at == board.End {
			normal = -1
		}
		require.InDelta(t, c.axisU, math.Sqrt2*normal*cos, 1e-9)
		require.InDelta(t, c.axW, math.Sqrt2*normal*sin, 1e-9)
	}
}
