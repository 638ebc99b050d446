package wall

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/module"
	"ledgewright/engine/unit"
)

func xy(x, y unit.Length) module.XY { return module.XY{X: x, Y: y} }

// star draws a simple polygon: corners at rising angles about a centre, at any distance.
func star(t *rapid.T, name string) []module.XY {
	n := rapid.IntRange(4, 9).Draw(t, name+" corners")
	cx := unit.Length(rapid.Int64Range(-600_000, 600_000).Draw(t, name+" x"))
	cy := unit.Length(rapid.Int64Range(-600_000, 600_000).Draw(t, name+" y"))
	p := make([]module.XY, n)
	for i := range p {
		// From four corners on no two neighbours are half a turn apart, so the sides go
		// round the centre and none crosses another.
		a := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.9).Draw(t, name+" angle")) / float64(n)
		r := rapid.Float64Range(20_000, 400_000).Draw(t, name+" radius")
		p[i] = xy(cx+unit.Length(r*math.Cos(a)), cy+unit.Length(r*math.Sin(a)))
	}
	return p
}

// outside is a polygon of the general-purpose library.
func outside(p []module.XY) geom.Geometry {
	var flat []float64
	for _, c := range append(slices.Clone(p), p[0]) {
		flat = append(flat, float64(c.X), float64(c.Y))
	}
	ring := geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// overlapArea is the library's area of what two polygons have in common, in nm².
func overlapArea(t require.TestingT, p, q []module.XY) float64 {
	g, err := geom.Intersection(outside(p), outside(q))
	require.NoError(t, err)
	return g.Area()
}

func shift(p []module.XY, dx, dy unit.Length) []module.XY {
	out := make([]module.XY, len(p))
	for i, c := range p {
		out[i] = xy(c.X+dx, c.Y+dy)
	}
	return out
}

// Against simplefeatures v0.50.0, package geom: Intersects, Distance, Intersection.
func TestGapIsThatOfAGeneralLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := star(t, "p"), star(t, "q")
		touch := geom.Intersects(outside(p), outside(q))
		require.Equal(t, touch, meet(p, q))
		require.Equal(t, touch, meet(q, p))
		d := gap(p, q)
		require.Equal(t, d, gap(q, p))
		if !touch {
			far, ok := geom.Distance(outside(p), outside(q))
			require.True(t, ok)
			require.InDelta(t, far, float64(d), 0.51, "rounded once to the nanometre")
			return
		}
		require.LessOrEqual(t, d, unit.Length(0))
		if d < 0 {
			require.Greater(t, overlapArea(t, p, q), 0.0)
		}
	})
}

// Moving by what reach says parts two polygons, whichever way; the library finds nothing
// in common then, but for the rounding of its own corners.
func TestReachParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := star(t, "p"), star(t, "q")
		const sliver = 1e4 // nm², of sides up to 8e5 nm that lie within a hundredth of a nanometre
		for _, upright := range []bool{false, true} {
			back, forth, ok := reach(p, q, upright)
			if !ok {
				continue
			}
			dx, dy := unit.Length(1), unit.Length(0)
			if upright {
				dx, dy = 0, 1
			}
			require.LessOrEqual(t, overlapArea(t, shift(p, -back*dx, -back*dy), q), sliver)
			require.LessOrEqual(t, overlapArea(t, shift(p, forth*dx, forth*dy), q), sliver)
		}
	})
}

// The sign of a·b − c·d against the exact integers of math/big.
func TestCompareIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-1<<62, 1<<62)
		a, b, c, d := n.Draw(t, "a"), n.Draw(t, "b"), n.Draw(t, "c"), n.Draw(t, "d")
		if rapid.Bool().Draw(t, "near") {
			c, d = b, a+rapid.Int64Range(-1, 1).Draw(t, "by")
		}
		x := new(big.Int).Mul(big.NewInt(a), big.NewInt(b))
		y := new(big.Int).Mul(big.NewInt(c), big.NewInt(d))
		require.Equal(t, x.Cmp(y), compare(a, b, c, d))
	})
}

func rect(x1, y1, x2, y2 unit.Length) []module.XY {
	return []module.XY{xy(x1, y1), xy(x2, y1), xy(x2, y2), xy(x1, y2)}
}

func TestGapByHand(t *testing.T) {
	square := rect(0, 0, 100*mm, 100*mm)
	notched := []module.XY{xy(0, 0), xy(300*mm, 0), xy(300*mm, 24*mm), xy(162*mm, 24*mm), xy(162*mm, 16*mm), xy(138*mm, 16*mm), xy(138*mm, 24*mm), xy(0, 24*mm)}
	cases := []struct {
		name string
		p, q []module.XY
		want unit.Length
	}{
		{"side by side", square, rect(103*mm, 0, 200*mm, 50*mm), 3 * mm},
		{"3-4-5 from corner to corner", square, rect(130*mm, 140*mm, 200*mm, 200*mm), 50 * mm},
		{"a common side", square, rect(100*mm, 20*mm, 200*mm, 50*mm), 0},
		{"a common corner", square, rect(100*mm, 100*mm, 200*mm, 200*mm), 0},
		{"one inside the other", square, rect(10*mm, 20*mm, 50*mm, 60*mm), -50 * mm},
		{"the same", square, square, -100 * mm},
		{"overlap by 7 across", square, rect(93*mm, -50*mm, 300*mm, 150*mm), -7 * mm},
		{"overlap by a nanometre touches", square, rect(100*mm-1, 0, 200*mm, 50*mm), 0},
		{"overlap by the touch touches", square, rect(100*mm-unit.Touch, 0, 200*mm, 50*mm), 0},
		{"overlap by more than the touch", square, rect(100*mm-unit.Touch-1, 0, 200*mm, 50*mm), -unit.Touch - 1},
		{"a divider in its housing", notched, rect(138*mm, 16*mm, 162*mm, 200*mm), 0},
		{"a divider beside its housing, parted upwards", notched, rect(139*mm, 16*mm, 163*mm, 200*mm), -8 * mm},
		{"45°: a point before a side", []module.XY{xy(100*mm, 0), xy(200*mm, 100*mm), xy(100*mm, 200*mm), xy(0, 100*mm)}, rect(150*mm, 150*mm, 300*mm, 300*mm), 0},
		{"45°: by Pythagoras", []module.XY{xy(0, 0), xy(100*mm, 100*mm), xy(0, 200*mm)}, []module.XY{xy(20*mm, 0), xy(200*mm, 0), xy(200*mm, 180*mm)}, 14142136}, // 20/√2 mm
	}
	for _, c := range cases {
		require.Equal(t, c.want, gap(c.p, c.q), c.name)
		require.Equal(t, c.want, gap(c.q, c.p), c.name)
	}
}
