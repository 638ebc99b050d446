package app

import (
	"fmt"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/module"
	"ledgewright/engine/wall"
)

// Of two pieces beside the finger the nearest wins, whichever was made first. Distances by
// github.com/peterstace/simplefeatures v0.50.0, package geom.
func TestTheNearestPieceWins(t *testing.T) {
	start, chosen := aShelf(t), 0
	rapid.Check(t, func(t *rapid.T) {
		s := start
		for i := range 3 {
			x := rapid.IntRange(500, 2400).Draw(t, "x")
			y := rapid.IntRange(400, 2200).Draw(t, "y")
			shape := rapid.SampledFrom([]string{"shelf", "l", "box"}).Draw(t, "shape")
			sizes := map[string]string{"shelf": `"width":500`, "l": `"width":400,"height":300`, "box": `"width":400,"height":400`}[shape]
			s, _ = play(s, DoLine{fmt.Sprintf(`{"schema":"ledgewright/edit/1","do":"add-module","shape":%q,"name":"P%d",%s,"depth":200,"thickness":26,"wood":"white-oak","arrangement":"a1","x":%d,"y":%d}`, shape, i, sizes, x, y)})
		}
		placed := s.Build.Arrangements[0].Placed
		by := placed[rapid.IntRange(0, len(placed)-1).Draw(t, "by")]
		x := by.Box.MinX.MM() + rapid.Float64Range(-60, 460).Draw(t, "dx")
		y := by.Box.MinY.MM() + rapid.Float64Range(-60, 460).Draw(t, "dy")
		ids := s.modulesAt(x, y)
		for i := 1; i < len(ids); i++ {
			require.LessOrEqual(t, apart(t, placed, ids[i-1], x, y), apart(t, placed, ids[i], x, y)+1e-5, "%v", ids)
		}
		if len(ids) > 1 {
			chosen++
		}
	})
	require.Greater(t, chosen, 5, "places with several pieces in reach")
}

// apart is how far a place is from a module's wood.
func apart(t require.TestingT, placed []wall.Placed, id string, x, y float64) float64 {
	at := geom.XY{X: x, Y: y}.AsPoint().AsGeometry()
	for _, p := range placed {
		if p.Module != id {
			continue
		}
		var boards []geom.Polygon
		for _, o := range p.Outlines {
			boards = append(boards, polygon(o.Points))
		}
		var all []geom.Geometry
		for _, b := range boards {
			all = append(all, b.AsGeometry())
		}
		far, ok := geom.Distance(geom.NewGeometryCollection(all).AsGeometry(), at)
		require.True(t, ok)
		return far
	}
	require.Fail(t, "no such module")
	return 0
}

func polygon(points []module.XY) geom.Polygon {
	var flat []float64
	for i := range len(points) + 1 {
		p := points[i%len(points)]
		flat = append(flat, p.X.MM(), p.Y.MM())
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(flat, geom.DimXY))})
}
