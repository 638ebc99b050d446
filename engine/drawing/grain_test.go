package drawing_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/drawing"
)

func luminance(t *testing.T, tone drawing.Tone, theme drawing.Theme) float64 {
	s, ok := drawing.Colour(tone, theme)
	require.True(t, ok, "%s", tone)
	sum := 0.0
	for i, k := range [3]float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(s[1+2*i:3+2*i], 16, 8)
		require.NoError(t, err)
		c := float64(n) / 255
		if c <= 0.03928 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += k * c
	}
	return sum
}

// Every line of the grain lies on its face, whatever way the face lies in the picture.
func TestGrainStaysOnTheFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		x, y, l, w, lean := f(-500, 500, "x"), f(-500, 500, "y"), f(40, 1500, "l"), f(10, 300, "w"), f(0, 13, "lean")
		turn := f(0, 2*math.Pi, "turn")
		s, c := math.Sincos(turn)
		at := func(a, b float64) drawing.Point { return drawing.Point{X: x + a*c - b*s, Y: y + a*s + b*c} }
		corners := []drawing.Point{at(0, 0), at(l, 0), at(l-lean, w), at(lean, w)}
		wood := drawing.Wood{
			Species: "oak", Seed: rapid.Uint64().Draw(t, "seed"), Origin: corners[0], Along: drawing.Point{X: c, Y: s}, Across: drawing.Point{X: -s, Y: c},
			Edge: rapid.Bool().Draw(t, "edge"), End: rapid.Bool().Draw(t, "end"), WindowAlong: f(0, 3000, "window"),
		}
		g := drawing.Grain(woods()[0].Look, wood, drawing.Polygon(corners...), f(0.2, 8, "detail"))
		for _, set := range [][][]drawing.Point{g.Bold, g.Fine, g.Pores} {
			for _, line := range set {
				if len(line) < 2 {
					t.Fatal("a line of one point")
				}
				for _, p := range line {
					if d := outside(corners, p); d > 1e-6 {
						t.Fatalf("%v is %v outside", p, d)
					}
				}
			}
		}
	})
}

// outside returns how far a point lies outside a counter-clockwise convex polygon.
func outside(corners []drawing.Point, p drawing.Point) (far float64) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		dx, dy := b.X-a.X, b.Y-a.Y
		far = max(far, -(dx*(p.Y-a.Y)-dy*(p.X-a.X))/math.Hypot(dx, dy))
	}
	return far
}

// Where the pith sinks past a ring, its two flanks meet in a point inside the face.
func TestFlatGrainHasCathedrals(t *testing.T) {
	wood := drawing.Wood{Species: "oak", Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1}}
	tips := 0
	for seed := range uint64(20) {
		wood.Seed = seed * 977
		g := drawing.Grain(woods()[0].Look, wood, drawing.Rect(0, 0, 1800, 230), 1)
		ends := map[drawing.Point]int{}
		for _, set := range [][][]drawing.Point{g.Bold, g.Fine} {
			for _, line := range set {
				for _, p := range []drawing.Point{line[0], line[len(line)-1]} {
					ends[drawing.Point{X: math.Round(p.X), Y: math.Round(p.Y)}]++
				}
			}
		}
		for p, n := range ends {
			if n >= 2 && p.X > 5 && p.X < 1795 && p.Y > 5 && p.Y < 225 {
				tips++
			}
		}
	}
	require.Greater(t, tips, 20, "two flanks of a ring meet in a point inside the face")
}

func TestGrainIsOfThePlankNotOfTheFace(t *testing.T) {
	wood := drawing.Wood{Species: "oak", Seed: 5, Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1}}
	a := drawing.Grain(woods()[0].Look, wood, drawing.Rect(0, 0, 500, 100), 1)
	require.Equal(t, a, drawing.Grain(woods()[0].Look, wood, drawing.Rect(0, 0, 500, 100), 1))
	// moved on the wall, the figure goes along
	wood.Origin = drawing.Point{X: 1000, Y: 200}
	b := drawing.Grain(woods()[0].Look, wood, drawing.Rect(1000, 200, 500, 100), 1)
	require.Equal(t, len(a.Fine), len(b.Fine))
	require.InDelta(t, a.Fine[0][0].X+1000, b.Fine[0][0].X, 1e-6)
	require.InDelta(t, a.Fine[0][0].Y+200, b.Fine[0][0].Y, 1e-6)
	wood.Seed = 6
	require.NotEqual(t, b, drawing.Grain(woods()[0].Look, wood, drawing.Rect(1000, 200, 500, 100), 1))
}

// Faces without room for grain, or without sense, give none and do not fail.
func TestGrainOfNothing(t *testing.T) {
	for _, w := range []drawing.Wood{
		{}, {Along: drawing.Point{X: 1}}, {Along: drawing.Point{X: 1}, Across: drawing.Point{X: 2}},
		{Along: drawing.Point{X: math.NaN()}, Across: drawing.Point{Y: 1}}, {Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1e-9}},
		{Along: drawing.Point{X: 1e-7}, Across: drawing.Point{Y: 1}}, {Along: drawing.Point{X: 1e-5}, Across: drawing.Point{Y: 1}},
	} {
		g := drawing.Grain(woods()[0].Look, w, drawing.Rect(0, 0, 900, 30), 1)
		require.Empty(t, g.Bold)
		require.Empty(t, g.Fine)
	}
	require.Empty(t, drawing.Grain(woods()[0].Look, drawing.Wood{Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1}}, nil, 1).Fine)
}

// A curve of the circle leaves it by 0.03 % at most.
func TestCircleIsRound(t *testing.T) {
	path := drawing.Circle(0, 0, 1)
	for i := 1; i < 5; i++ {
		p0, s := path[i-1].P, path[i]
		for k := range 101 {
			u := float64(k) / 100
			v := 1 - u
			x := v*v*v*p0.X + 3*v*v*u*s.P1.X + 3*v*u*u*s.P2.X + u*u*u*s.P.X
			y := v*v*v*p0.Y + 3*v*v*u*s.P1.Y + 3*v*u*u*s.P2.Y + u*u*u*s.P.Y
			require.InDelta(t, 1, math.Hypot(x, y), 3e-4)
		}
	}
}

func TestExtentOfText(t *testing.T) {
	text := drawing.Text{At: drawing.Point{X: 10, Y: 20}, Size: 10, String: "88", Anchor: drawing.AnchorStart}
	w := drawing.TextWidth("88", 10)
	require.InDelta(t, 12.06, w, 1e-9) // two digits of 0.603 em
	b := text.Extent()
	require.InDelta(t, 10, b.MinX, 1e-9)
	require.InDelta(t, 10+w, b.MaxX, 1e-9)
	text.Turn = 90
	b = text.Extent()
	require.InDelta(t, 20, b.MinY, 1e-9)
	require.InDelta(t, 20+w, b.MaxY, 1e-9)
}
