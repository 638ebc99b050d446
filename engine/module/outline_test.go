package module

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

// polygon hands an outline to the geometry library, in millimetres, with every edge
// moved outward by grow and the whole turned about the origin.
func polygon(t *testing.T, points []XY, grow float64, turn unit.Angle) geom.Geometry {
	var xy []float64
	n := len(points)
	sin, cos := turn.SinCos()
	at := func(i int) (x, y float64) {
		p := points[(i+n)%n]
		return p.X.MM()*cos - p.Y.MM()*sin, p.X.MM()*sin + p.Y.MM()*cos
	}
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

// overlay asks the library for the union or the intersection of outlines. Now and then
// it stops, with an error and no result, at outlines that touch along a slanting line;
// it is then asked again with the module turned a little, which changes no area.
func overlay(t *testing.T, seed uint64, ask func([]geom.Geometry) (geom.Geometry, error), grow float64, outlines ...Outline) geom.Geometry {
	var last error
	for try := range unit.Angle(8) {
		parts := make([]geom.Geometry, len(outlines))
		for i, o := range outlines {
			parts[i] = polygon(t, o.Points, grow, try*7*unit.Degree)
		}
		g, err := ask(parts)
		if last = err; err == nil {
			return g
		}
	}
	require.NoError(t, last, "seed %d", seed)
	return geom.Geometry{}
}

func intersection(g []geom.Geometry) (geom.Geometry, error) { return geom.Intersection(g[0], g[1]) }

// checkOutlines holds a module against the general-purpose geometry library
// github.com/peterstace/simplefeatures v0.50.0.
//
// Outlines that share a slanting plane agree there to a nanometre of rounding and no
// better, so the library may see a slit where the boards touch. Parts and holes are
// therefore counted with every outline grown by 1e-4 mm, far below the 1e-3 mm² that
// overlaps and areas are held to, which are measured on the outlines as they are.
func checkOutlines(t *testing.T, seed uint64, r Result, boards int, closed bool) {
	sum := 0.0
	for i, o := range r.Outlines {
		sum += polygon(t, o.Points, 0, 0).Area()
		require.Positive(t, areaOf(o.Points), "seed %d: counter-clockwise", seed)
		for j := range i {
			both := overlay(t, seed, intersection, 0, o, r.Outlines[j])
			require.LessOrEqual(t, both.Area(), 1e-3, "seed %d: boards %d and %d", seed, j, i)
		}
	}
	require.InDelta(t, sum, overlay(t, seed, geom.UnionMany, 0, r.Outlines...).Area(), 1e-3*float64(1+len(r.Corners)), "seed %d", seed)
	shape := overlay(t, seed, geom.UnionMany, 1e-4, r.Outlines...)
	require.True(t, shape.IsPolygon(), "seed %d: one piece, not %s", seed, shape.Type())
	holes := len(r.Boards) - boards // a divider closes one loop more
	if closed {
		holes++
	}
	require.Equal(t, holes, shape.MustAsPolygon().NumInteriorRings(), "seed %d: holes", seed)
}

// Modules drawn so that a second, simpler layout says that they do not cross themselves.
func TestOutlinesOfSimpleModules(t *testing.T) {
	for seed := range uint64(2000) {
		m := jobs.SimpleModule(seed)
		m.Brackets = nil // rails lie behind other boards
		r := derive(m)
		require.Len(t, r.Boards, len(m.Boards), "seed %d", seed)
		for _, f := range r.Findings {
			require.NotContains(t, []string{overlap.Key, gapOpen.Key}, f.Kind.Key, "seed %d", seed)
		}
		checkOutlines(t, seed, r, len(m.Boards), m.Closed)
	}
}

func TestOutlinesAgainstAGeometryLibrary(t *testing.T) {
	checked, crossed, refused, closed, divided := 0, 0, 0, 0, 0
	for seed := uint64(0); checked < 1000; seed++ {
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

// The modules of every example; rails and cleats lie behind other boards, so brackets are
// left out.
func TestOutlinesOfTheExamples(t *testing.T) {
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for i, m := range p.Modules {
			m.Brackets = nil
			r := Derive(m, p.Shop)
			require.Len(t, r.Boards, len(m.Boards)+len(m.Dividers), "%s, %s", name, m.ID)
			checkOutlines(t, uint64(i), r, len(m.Boards), m.Closed)
		}
	}
}
