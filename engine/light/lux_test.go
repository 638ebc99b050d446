package light

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// band is a line along x, z mm off the wall, shining down.
func band(long, z, lumens float64) Line {
	return Line{From: Spot{0, 0, z}, To: Spot{long, 0, z}, Out: Spot{0, -1, 0}, Lumens: lumens}
}

// By hand: 1 000 lm/m, straight below an end of a strip so long that β is a right angle:
// E = Φ′/(π h) · π/4 = Φ′/(4 h) = 1000/(4 · 0.3) lx at 0.3 m. Below its middle twice that.
func TestLuxByHand(t *testing.T) {
	l := band(1e5, 0, 1000)
	up := Spot{0, 1, 0}
	require.InEpsilon(t, 1000/(4*0.3), l.closed(Spot{0, -300, 0}, up), 1e-4)
	require.InEpsilon(t, 1000/(2*0.3), l.closed(Spot{5e4, -300, 0}, up), 1e-4)
	// a strip as long as it is far, opposite one end: β = 45°, ½(π/4 + ½)
	l = band(300, 0, 1000)
	require.InEpsilon(t, 1000/(math.Pi*0.3)*(math.Pi/4+0.5)/2, l.closed(Spot{0, -300, 0}, up), 1e-12)
	// on a surface square to it ½ sin² 45° = ¼
	require.InEpsilon(t, 1000/(math.Pi*0.3)/4, l.closed(Spot{0, -300, 0}, Spot{1, 0, 0}), 1e-12)
}

// Far away a strip is a point: I/d² with I = Φ/π straight before it (Lambert).
func TestLuxFarAwayIsThatOfAPoint(t *testing.T) {
	s := Scene{Lines: []Line{band(200, 0, 1000)}}
	require.InEpsilon(t, 200/math.Pi/100, s.Lux(Spot{100, -10000, 0}, Spot{0, 1, 0}), 1e-3)
}

// Everything that a band emits arrives: over the half ball round it the light sums to its
// flux. The ball is so large that the band is a point.
func TestAllLightArrives(t *testing.T) {
	s := Scene{Lines: []Line{band(10, 0, 1000)}}
	const r, n = 5000.0, 200
	sum := 0.0
	for i := range n {
		polar := math.Pi / 2 * (float64(i) + 0.5) / n
		for k := range n {
			turn := 2 * math.Pi * (float64(k) + 0.5) / n
			out := Spot{math.Sin(polar) * math.Cos(turn), -math.Cos(polar), math.Sin(polar) * math.Sin(turn)}
			at := Spot{5, 0, 0}.plus(out, r)
			area := r * r * 1e-6 * math.Sin(polar) * (math.Pi / 2 / n) * (2 * math.Pi / n)
			sum += s.Lux(at, Spot{}.plus(out, -1)) * area
		}
	}
	require.InEpsilon(t, 10.0, sum, 1e-3)
}

// The sum of the pieces against the closed formula, anywhere before the strip, on any
// surface that looks at all of it.
func TestLuxIsThatOfTheClosedFormula(t *testing.T) {
	worst := 0.0
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		l := band(f("long", 100, 3000), f("off", 0, 300), 1000)
		at := Spot{f("x", -500, 3500), -f("down", 5, 1500), f("z", 0, 300)}
		looks := [...]Spot{{0, 1, 0}, {0, 0, 1}}[rapid.IntRange(0, 1).Draw(t, "surface")]
		want := l.closed(at, looks)
		if want <= 0 {
			require.Zero(t, (&Scene{Lines: []Line{l}}).Lux(at, looks))
			return
		}
		have := (&Scene{Lines: []Line{l}}).Lux(at, looks)
		worst = max(worst, math.Abs(have/want-1))
		require.InEpsilon(t, want, have, 0.001)
	})
	t.Logf("worst %.5f", worst)
}

// shelves are two level boards of 800 × 250 × 20, one 320 mm below the other, and a strip
// in the underside of the upper one.
func shelves(gap unit.Length) ([]board.Board, board.Strip) {
	b := func(id string, y unit.Length) board.Board {
		return board.Board{ID: id, Length: 800 * mm, Width: 250 * mm, Thickness: 20 * mm, Frame: board.Frame{Y: y}}
	}
	s := board.Strip{Lumens: 500, Runs: []board.StripRun{{
		Board: "m1.1", Face: board.FaceB,
		From: board.Point{U: 50 * mm, V: 200 * mm, W: 12 * mm}, To: board.Point{U: 750 * mm, V: 200 * mm, W: 12 * mm},
	}}}
	return []board.Board{b("m1.1", gap), b("m1.2", -20*mm)}, s
}

// The book lies 300 mm below on the lower board's face A; two halves of 350 mm, β =
// atan(350/h) each.
func TestBookOnTheShelfBelow(t *testing.T) {
	boards, s := shelves(340 * mm)
	boards[1].Frame.Y = 0
	lit := Book(boards, &s, 0)
	require.Equal(t, "m1.2", lit.Board)
	require.Equal(t, 320*mm, lit.Below)
	beta := math.Atan(350.0 / 320)
	require.InEpsilon(t, 500/(math.Pi*0.32)*(beta+math.Sin(beta)*math.Cos(beta)), lit.Lux, 0.002)

	lit = Book(boards[:1], &s, 0)
	require.Equal(t, "", lit.Board, "no shelf below")
	require.Equal(t, 300*mm, lit.Below)

	s.Light, s.Book = "l1", lit
	key, args, ok := Says(&s)
	require.True(t, ok)
	require.Equal(t, fmt.Sprintf("l1 gives %.0f lx on a book 300 mm below; direct light only", lit.Lux), words.Text(key, args, unit.Style{}))
	s.Book.Board = "m1.2"
	key, args, _ = Says(&s)
	require.Contains(t, words.Text(key, args, unit.Style{}), "on a book on m1.2, 300 mm below")

	require.Zero(t, Book(boards, &s, unit.HalfTurn), "upside down it shines up")
	require.Zero(t, Book(boards, &s, unit.QuarterTurn), "upright it shines aside")
}

func TestBoardsStandInTheWay(t *testing.T) {
	boards, s := shelves(340 * mm)
	scene := NewScene(boards, []board.Strip{s}, 1)
	up := Spot{0, 1, 0}
	require.Zero(t, scene.Lux(Spot{400, -200, 200}, up), "under the lower shelf")
	open := NewScene(boards[:1], []board.Strip{s}, 1)
	require.Greater(t, open.Lux(Spot{400, -200, 200}, up), 100.0)
	half := NewScene(boards, []board.Strip{s}, 0.5)
	at := Spot{400, 0, 100}
	require.InEpsilon(t, scene.Lux(at, up), 2*half.Lux(at, up), 1e-12, "dimmed by half")
	require.Zero(t, scene.Lux(Spot{400, 400, 0}, Spot{0, 0, 1}), "the wall above it")
}

func TestDotsShow(t *testing.T) {
	k, ok := hardware.FindStrip("strip-24-9.6") // 120 a metre: 8.33 mm apart
	require.True(t, ok)
	require.True(t, Dots(k, 8.3))
	require.False(t, Dots(k, 8.4))
}

// The light on the wall has fallen to what was asked at its reach, by the closed formula,
// and is brightest where the formula of a long strip says.
func TestLightOnTheWall(t *testing.T) {
	const least = 5.0
	reach := WallReach(600, 800, 60, false, least)
	l := Line{From: Spot{-400, 0, 60}, To: Spot{400, 0, 60}, Out: Spot{0, -1, 0}, Lumens: 600}
	wall := Spot{0, 0, 1}
	require.InEpsilon(t, least, l.closed(Spot{0, -reach, 0}, wall), 1e-6)
	at, peak := brightest(onWall(600, 800, 60, false), 60)
	require.InEpsilon(t, peak, l.closed(Spot{0, -at, 0}, wall), 1e-9)
	require.InDelta(t, 60/math.Sqrt2, at, 0.3, "y z/(y² + z²)^{3/2} of a long strip is greatest at y = z/√2")
	require.Zero(t, WallReach(600, 800, 0, false, least), "on the wall itself it shines along it")
	require.Less(t, WallReach(60, 800, 60, false, least), reach)
}

// Chromaticities of black bodies. Of 2 856 K: CIE standard illuminant A (ISO 11664-2), x =
// 0.44758, y = 0.40745. The others are from memory of the tables in Wyszecki and Stiles,
// Color Science, 2nd edition; the test below derives them again.
func TestChromaticityOfBlackBodies(t *testing.T) {
	for _, c := range [][3]float64{
		{2000, 0.5267, 0.4133}, {2700, 0.4599, 0.4106}, {2856, 0.44758, 0.40745}, {3000, 0.4369, 0.4041},
		{4000, 0.3805, 0.3768}, {5000, 0.3451, 0.3516}, {6500, 0.3135, 0.3237},
	} {
		x, y := Chromaticity(c[0])
		require.InDelta(t, c[1], x, 6e-4, "%v K", c[0])
		require.InDelta(t, c[2], y, 6e-4, "%v K", c[0])
	}
}

// Planck's law through the observer of CIE 1931, as fitted by Wyman, Sloan and Shirley,
// Simple analytic approximations to the CIE XYZ color matching functions, Journal of
// Computer Graphics Techniques 2 (2013), listing 1, whose fit is within about 0.01 of the
// tables.
func TestChromaticityIsThatOfPlancksLaw(t *testing.T) {
	lobe := func(l, top, at, below, above float64) float64 {
		k := 1 / below
		if l > at {
			k = 1 / above
		}
		return top * math.Exp(-(l-at)*(l-at)*k*k/2)
	}
	for kelvin := 1700.0; kelvin <= 8000; kelvin += 100 {
		var xx, yy, zz float64
		for l := 360.0; l <= 830; l++ {
			p := math.Pow(l, -5) / (math.Exp(1.438777e7/(l*kelvin)) - 1)
			xx += p * (lobe(l, 1.056, 599.8, 37.9, 31.0) + lobe(l, 0.362, 442.0, 16.0, 26.7) + lobe(l, -0.065, 501.1, 20.4, 26.2))
			yy += p * (lobe(l, 0.821, 568.8, 46.9, 40.5) + lobe(l, 0.286, 530.9, 16.3, 31.1))
			zz += p * (lobe(l, 1.217, 437.0, 11.8, 36.0) + lobe(l, 0.681, 459.0, 26.0, 13.8))
		}
		x, y := Chromaticity(kelvin)
		require.InDelta(t, xx/(xx+yy+zz), x, 0.004, "%v K", kelvin)
		require.InDelta(t, yy/(xx+yy+zz), y, 0.004, "%v K", kelvin)
	}
}

// On a screen a warm lamp is orange to the meter, day is white: 6 500 K is near the white
// of sRGB itself.
func TestColourOfLight(t *testing.T) {
	for i, c := range Linear(6500) {
		require.InDelta(t, 1, c, 0.06, i)
	}
	warm := Linear(2700)
	require.Equal(t, 1.0, warm[0])
	require.Greater(t, warm[1], warm[2])
	last := 0.0
	for k := 1700.0; k < 6600; k += 100 {
		blue := Linear(k)[2]
		require.GreaterOrEqual(t, blue, last, "the hotter the bluer")
		last = blue
	}
	require.InDelta(t, math.Pow(0.5, 1/2.4)*1.055-0.055, encoded(0.5), 1e-12, "sRGB's curve")
}
