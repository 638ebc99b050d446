package module

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
)

// polygon hands an outline to the geometry library, in millimetres, with every edge
// moved outward by grow.
func polygon(t *testing.T, points []XY, grow float64) geom.Geometry {
	var xy []float64
	n := len(points)
	at := func(i int) (x, y float64) { p := points[(i+n)%n]; return p.X.MM(), p.Y.MM() }
	for i := range n + 1 {
		x, y := at(i)
		px, py := at(i - 1)
		qx, qy := at(i + 1)
		a, b := math.Hypot(x-px, y-py), math.Hypot(qx-x, qy-y)
		// outward normals of the two edges that meet here; the outline runs counter-clockwise
		ux, uy, vx, vy := (y-py)/a, (px-x)/a, (qy-y)/b, (x-qx)/b
		k := grow / (1 + ux*vx + uy*vy)
		xy = append(xy, x+k*(ux+vx), y+k*(uy+vy))
	}
	g := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
	require.NoError(t, g.Validate())
	return g
}

// checkOutlines holds a module against the general-purpose geometry library
// github.com/peterstace/simplefeatures v0.50.0.
//
// Outlines that share a slanting plane agree there to a nanometre of rounding and no
// better, so the library may see a slit where the boards touch. Parts and holes are
// therefore counted with every outline grown by 1e-4 mm, far below the 1e-3 mm² that
// overlaps and areas are held to, which are measured on the outlines as they are.
func checkOutlines(t *testing.T, seed uint64, r Result, boards int, closed bool) {
	sum := 0.0
	parts := make([]geom.Geometry, len(r.Outlines))
	for i, o := range r.Outlines {
		parts[i] = polygon(t, o.Points, 0)
		sum += parts[i].Area()
		require.Positive(t, areaOf(o.Points), "seed %d: counter-clockwise", seed)
	}
	union := parts[0]
	for i, g := range parts {
		for j := range i {
			both, err := geom.Intersection(g, parts[j])
			require.NoError(t, err)
			require.LessOrEqual(t, both.Area(), 1e-3, "seed %d: boards %d and %d", seed, j, i)
		}
		var err error
		union, err = geom.Union(union, g)
		require.NoError(t, err)
	}
	require.InDelta(t, sum, union.Area(), 1e-3*float64(1+len(r.Corners)), "seed %d", seed)
	var shape geom.Geometry
	for _, o := range r.Outlines {
		var err error
		shape, err = geom.Union(shape, polygon(t, o.Points, 1e-4))
		require.NoError(t, err)
	}
	require.True(t, shape.IsPolygon(), "seed %d: one piece, not %s", seed, shape.Type())
	holes := len(r.Boards) - boards // a divider closes one loop more
	if closed {
		holes++
	}
	require.Equal(t, holes, shape.MustAsPolygon().NumInteriorRings(), "seed %d: holes", seed)
}

func TestOutlinesAgainstAGeometryLibrary(t *testing.T) {
	checked, crossed, refused, closed, divided := 0, 0, 0, 0, 0
	for seed := uint64(0); checked < 2000; seed++ {
		m := randomModule(seed)
		r := derive(m)
		stop := map[string]bool{}
		for _, f := range r.Findings {
			stop[f.Kind.Key] = true
		}
		switch {
		case len(r.Boards) == 0:
			refused++
			continue
		case stop["boards-overlap"]:
			crossed++
			continue
		}
		checked++
		if m.Closed {
			closed++
		}
		if len(r.Boards) > len(m.Boards) {
			divided++
		}
		checkOutlines(t, seed, r, len(m.Boards), m.Closed)
	}
	t.Logf("%d closed, %d with dividers; %d more refused, %d more cross themselves", closed, divided, refused, crossed)
}
