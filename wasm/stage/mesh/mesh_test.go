package mesh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/testdata/jobs"
	"ledgewright/wasm/stage/mesh"
)

// screen is a camera of one pixel for a millimetre on a screen of 1000 by 800.
func screen() mesh.Camera { return mesh.NewCamera(1, 0, 800, 1, 1000, 800) }

func build(items ...drawing.Item) *mesh.Mesh {
	m := new(mesh.Mesh)
	m.Build(&drawing.Drawing{Items: items}, nil, screen(), mesh.NewInks(drawing.Day))
	return m
}

// shape is a filled path.
func shape(path []drawing.Step) drawing.Item {
	return drawing.Item{Kind: drawing.PathKind, Tone: "ink", Path: path}
}

// covered is how many pixels a mesh covers: the area of its triangles, each with the mean
// of its corners' opacities.
func covered(m *mesh.Mesh) (sum float64) {
	for i := 0; i < len(m.Indices); i += 3 {
		a, b, c := m.Vertices[m.Indices[i]], m.Vertices[m.Indices[i+1]], m.Vertices[m.Indices[i+2]]
		size := float64((b.DstX-a.DstX)*(c.DstY-a.DstY)-(b.DstY-a.DstY)*(c.DstX-a.DstX)) / 2
		sum += math.Abs(size) * float64(a.ColorA+b.ColorA+c.ColorA) / 3
	}
	return sum
}

// area is that of a polygon: half the sum of the cross products of its corners (the
// shoelace formula, A. L. F. Meister, 1769).
func area(p []drawing.Point) (sum float64) {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += a.X*b.Y - a.Y*b.X
	}
	return math.Abs(sum) / 2
}

// star is a polygon that is seen whole from its middle, with corners at given distances.
func star(x, y float64, far []float64) (p []drawing.Point) {
	for i, r := range far {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(far)))
		p = append(p, drawing.Point{X: x + r*c, Y: y + r*s})
	}
	return p
}

// A fill covers as many pixels as its polygon has, whichever way round it goes; the rim
// gives outside what it takes inside, but for the corners.
func TestAFillCoversItsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		far := rapid.SliceOfN(rapid.Float64Range(60, 300), 3, 12).Draw(t, "far")
		p := star(500, 400, far)
		if rapid.Bool().Draw(t, "other way") {
			for i, k := 0, len(p)-1; i < k; i, k = i+1, k-1 {
				p[i], p[k] = p[k], p[i]
			}
		}
		require.InDelta(t, area(p), covered(build(shape(drawing.Polygon(p...)))), 3*float64(len(p)))
	})
}

func TestHolesStayOpen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer := star(500, 400, rapid.SliceOfN(rapid.Float64Range(250, 350), 6, 12).Draw(t, "outer"))
		path, want := drawing.Polygon(outer...), area(outer)
		corners := len(outer)
		for i := range rapid.IntRange(1, 3).Draw(t, "holes") {
			hole := star(400+100*float64(i), 400, rapid.SliceOfN(rapid.Float64Range(10, 45), 3, 8).Draw(t, "hole"))
			path = append(path, drawing.Polygon(hole...)...)
			want -= area(hole)
			corners += len(hole)
		}
		require.InDelta(t, want, covered(build(shape(path))), 3*float64(corners))
	})
}

// An island in a hole is filled again, as the even-odd rule has it.
func TestAnIslandInAHole(t *testing.T) {
	path := append(drawing.Rect(100, 100, 600, 600), drawing.Rect(200, 200, 400, 400)...)
	path = append(path, drawing.Rect(300, 300, 100, 100)...)
	require.InDelta(t, 600*600-400*400+100*100, covered(build(shape(path))), 6)
}

// A circle is one quad for its fill and one for its line, which know middle and radius.
func TestACircleIsOneQuad(t *testing.T) {
	it := shape(drawing.Circle(500, 400, 30))
	it.Line = drawing.Line{Tone: "chalk", Width: 3}
	m := build(it)
	require.Len(t, m.Vertices, 8)
	for i, v := range m.Vertices {
		require.EqualValues(t, mesh.PaintDisc, v.Custom0)
		require.EqualValues(t, 30, v.Custom1)
		require.EqualValues(t, []float32{-1, 1.5}[i/4], v.Custom2)
		require.InDelta(t, float64(v.DstX)-500, v.SrcX, 1e-4)
		require.InDelta(t, float64(v.DstY)-400, v.SrcY, 1e-4)
		require.GreaterOrEqual(t, math.Abs(float64(v.SrcX)), 31.0)
	}
}

// What is nearly a circle is not one: an ellipse, a circle with a corner, half of one. Its
// area by the formula, since its curves leave it by less than a sixth of a pixel.
func TestCurvesThatAreNoCircles(t *testing.T) {
	for _, r := range []float64{2, 8, 30, 200} {
		m := build(shape(drawing.Ellipse(500, 400, r, 1.01*r)))
		require.Greater(t, len(m.Vertices), 8)
		require.InDelta(t, math.Pi*r*1.01*r, covered(m), 2*math.Pi*r*0.16+0.5, "radius %v", r)
	}
	bent := drawing.Circle(500, 400, 30)
	bent[2].P1.Y += 5
	require.Greater(t, len(build(shape(bent)).Vertices), 8)
	require.Greater(t, len(build(shape(drawing.RoundRect(100, 100, 60, 60, 30))).Vertices), 8)
}

func TestTheCameraThereAndBack(t *testing.T) {
	c := mesh.NewCamera(0.4, 30, 700, 2, 1000, 800)
	x, y := c.At(drawing.Point{X: 100, Y: 50})
	require.InDelta(t, (30+0.4*100)*2, x, 1e-9)
	require.InDelta(t, (700-0.4*50)*2, y, 1e-9)
	p := c.Back(x, y)
	require.InDelta(t, 100, p.X, 1e-9)
	require.InDelta(t, 50, p.Y, 1e-9)
}

func TestWhatIsNotSeenIsLeftOut(t *testing.T) {
	require.Empty(t, build(shape(drawing.Rect(-500, 100, 400, 400))).Indices)
	require.NotEmpty(t, build(shape(drawing.Rect(-500, 100, 501, 400))).Indices)
	wide := drawing.Item{Kind: drawing.PathKind, Line: drawing.Line{Tone: "ink", Width: 60, MM: true}, Path: drawing.Segment(-20, 0, -20, 500)}
	require.NotEmpty(t, build(wide).Indices, "half of a wide line shows")
}

// The wall's colour runs from its upper right to its lower left.
func TestATonesGradient(t *testing.T) {
	m := build(drawing.Item{Kind: drawing.PathKind, Tone: "wall", Path: drawing.Rect(0, 0, 1000, 800)})
	paint := drawing.Paints(drawing.Day)["wall"]
	require.NotEqual(t, paint.From, paint.To)
	for _, v := range m.Vertices {
		if v.DstX > 990 && v.DstY < 10 {
			require.InDelta(t, paint.From[0], v.ColorR, 0.002)
		}
		if v.DstX < 10 && v.DstY > 790 {
			require.InDelta(t, paint.To[0], v.ColorR, 0.005)
		}
	}
}

func face(w drawing.Wood) drawing.Item {
	w.Species = "white-oak"
	return drawing.Item{Kind: drawing.WoodKind, Path: drawing.Rect(100, 100, 300, 40), Wood: w}
}

// A vertex of wood knows its place on the plank: along the grain, which may go any way.
func TestWoodKnowsItsPlaceOnThePlank(t *testing.T) {
	level := drawing.Wood{Origin: drawing.Point{X: 100, Y: 100}, Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1}, WindowAlong: 2000, WindowAcross: 10}
	plumb := drawing.Wood{Origin: drawing.Point{X: 400, Y: 100}, Along: drawing.Point{Y: 1}, Across: drawing.Point{X: -1}, End: true}
	for _, v := range build(face(level)).Vertices {
		require.EqualValues(t, mesh.PaintWood, v.Custom0)
		require.InDelta(t, float64(v.DstX)-100+2000, v.SrcX, 0.01)
		require.InDelta(t, 800-float64(v.DstY)-100+10, v.SrcY, 0.01)
	}
	for _, v := range build(face(plumb)).Vertices {
		require.EqualValues(t, mesh.PaintEnd, v.Custom0)
		require.InDelta(t, 800-float64(v.DstY)-100, v.SrcX, 0.01)
		require.InDelta(t, 400-float64(v.DstX), v.SrcY, 0.01)
	}
	edge := level
	edge.Edge = true
	require.EqualValues(t, mesh.PaintEdge, build(face(edge)).Vertices[0].Custom0)
}

// The numbers that a shader unpacks stay within what a float32 holds exactly with room for
// the last bits, and give the wood's own figures back.
func TestWhatIsPackedForTheShader(t *testing.T) {
	inks := mesh.NewInks(drawing.Day)
	for _, s := range view.Woods() {
		m := new(mesh.Mesh)
		it := face(drawing.Wood{Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1}, Seed: 1<<63 + 77})
		it.Wood.Species = s.ID
		m.Build(&drawing.Drawing{Items: []drawing.Item{it}}, nil, screen(), inks)
		v := m.Vertices[0]
		_, line := drawing.WoodInks(s.Look, &it.Wood, drawing.Day)
		ink, figure := int(v.Custom1), int(v.Custom2)
		require.Less(t, max(ink, figure), 1<<18)
		require.InDelta(t, line[0], float64(ink/4096)/63, 1.0/126+1e-6)
		require.InDelta(t, line[1], float64(ink/64%64)/63, 1.0/126+1e-6)
		require.InDelta(t, line[2], float64(ink%64)/63, 1.0/126+1e-6)
		require.InDelta(t, min(max(2.4*s.Look.Ring, 4), 14), float64(figure/512)/10, 0.051)
		require.InDelta(t, s.Look.Contrast, float64(figure/16%32)/31, 1.0/62+1e-6)
		require.InDelta(t, s.Look.Pores, float64(figure%16)/15, 1.0/30+1e-6)
		require.EqualValues(t, 77, v.Custom3)
	}
}

// A soft shape is the rectangle of its area along its longest side.
func TestASoftShape(t *testing.T) {
	it := shape(drawing.Polygon(drawing.Point{X: 200, Y: 400}, drawing.Point{X: 600, Y: 400}, drawing.Point{X: 560, Y: 440}, drawing.Point{X: 240, Y: 440}))
	it.Soft = 20
	m := build(it)
	require.Len(t, m.Vertices, 4)
	v := m.Vertices[0]
	require.EqualValues(t, mesh.PaintCloud, v.Custom0)
	require.InDelta(t, 360.0/2/20, v.Custom1, 1e-4, "a trapezium of 400 and 320 is 360 wide")
	require.InDelta(t, 40.0/2/20, v.Custom2, 1e-4)
}

func TestALightsWash(t *testing.T) {
	g := drawing.Glow{From: drawing.Point{X: 200, Y: 500}, To: drawing.Point{X: 600, Y: 500}, Reach: 200, Cut: 150, Before: 50, After: 100}
	m := build(drawing.Item{Kind: drawing.GlowKind, Glow: g})
	require.Len(t, m.Vertices, 4)
	low := drawing.Box{MinX: 1e9, MinY: 1e9}
	for _, v := range m.Vertices {
		low.MinX, low.MaxX = min(low.MinX, float64(v.DstX)), max(low.MaxX, float64(v.DstX))
		low.MinY, low.MaxY = min(low.MinY, float64(v.DstY)), max(low.MaxY, float64(v.DstY))
		require.InDelta(t, (float64(v.DstX)-200)/200, v.SrcX, 1e-4)
		require.InDelta(t, (float64(v.DstY)-300)/200, v.SrcY, 1e-4)
	}
	require.Equal(t, drawing.Box{MinX: 150, MinY: 300, MaxX: 700, MaxY: 450}, low)
}

// seen draws all of a plan's walls.
func seen(p plan.Plan, evening bool) (out []drawing.Drawing) {
	b := engine.Derive(p, nil)
	for _, r := range b.Arrangements {
		w, _ := p.Wall(r.Wall)
		out = append(out, view.Wall(w, r, b.Modules, view.Options{Style: b.Style(), Shallow: true, Evening: evening, ShowStuds: true, ShowBands: true, ShowMarks: true, ShowSizes: true, Beyond: 4000}))
	}
	return out
}

// fit is a camera for a tablet that shows a whole drawing.
func fit(b drawing.Box) mesh.Camera {
	s := min(1180/b.Width(), 820/b.Height())
	return mesh.NewCamera(s, -s*b.MinX, s*b.MaxY, 2, 2360, 1640)
}

// Every example is whole: every index has its vertex, every number is finite.
func TestExamplesAsTriangles(t *testing.T) {
	m := new(mesh.Mesh)
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, d := range append(seen(p, false), seen(p, true)...) {
			m.Build(&d, nil, fit(d.Box), mesh.NewInks(drawing.Evening))
			require.NotEmpty(t, m.Indices)
			require.Zero(t, len(m.Indices)%3)
			for _, i := range m.Indices {
				require.Less(t, int(i), len(m.Vertices))
			}
			for _, v := range m.Vertices {
				for _, x := range []float32{v.DstX, v.DstY, v.SrcX, v.SrcY, v.ColorR, v.ColorG, v.ColorB, v.ColorA, v.Custom0, v.Custom1, v.Custom2, v.Custom3} {
					require.False(t, math.IsNaN(float64(x)) || math.IsInf(float64(x), 0), name)
				}
			}
		}
	}
}

// The job of 48 modules stays under 60 000 vertices, and a mesh that has seen it needs no
// new memory for it.
func TestTheLargeJobIsLightEnough(t *testing.T) {
	d := seen(jobs.M(1), true)[0]
	m, cam, inks := new(mesh.Mesh), fit(d.Box), mesh.NewInks(drawing.Evening)
	m.Build(&d, nil, cam, inks)
	t.Logf("%d items: %d vertices, %d triangles", len(d.Items), len(m.Vertices), len(m.Indices)/3)
	require.LessOrEqual(t, len(m.Vertices), 60_000)
	require.Zero(t, testing.AllocsPerRun(10, func() { m.Build(&d, nil, cam, inks) }))
}

// wire is a drawing as the stage gets it, with the sums of its items.
func wire(t require.TestingT, u *drawing.Unpacker, d *drawing.Drawing) (drawing.Drawing, []uint64) {
	got, err := u.Read((&drawing.Packer{Bare: true}).Append(nil, d))
	require.NoError(t, err)
	return got, u.Sums()
}

// A mesh that knows items again makes what one makes that knows none: whatever items come,
// go, move and change places between two drawings, and when the camera or the colours are
// others.
func TestWhatComesAgainIsTheSame(t *testing.T) {
	all := append(seen(jobs.S(), true)[0].Items, seen(jobs.One(), false)[0].Items...)
	inks := []*mesh.Inks{mesh.NewInks(drawing.Day), mesh.NewInks(drawing.Evening)}
	rapid.Check(t, func(t *rapid.T) {
		u, m := new(drawing.Unpacker), new(mesh.Mesh)
		items := append([]drawing.Item(nil), all[:rapid.IntRange(1, len(all)).Draw(t, "items")]...)
		cam, ink := mesh.NewCamera(0.1, 0, 400, 1, 1000, 800), 0
		for range 5 {
			i, k := rapid.IntRange(0, len(items)-1).Draw(t, "i"), rapid.IntRange(0, len(items)-1).Draw(t, "k")
			switch rapid.IntRange(0, 6).Draw(t, "change") {
			case 0:
				items[i], items[k] = items[k], items[i]
			case 1:
				items = append(items[:i:i], items[min(i+1+k%5, len(items)):]...)
			case 2:
				items = append(append(items[:i:i], all[k%len(all)]), items[i:]...)
			case 3:
				items[i].Fade = 0.5 - items[i].Fade/2
			case 4:
				cam = mesh.NewCamera(0.1, float64(i), 400, 1, 1000, 800)
			case 5:
				ink = 1 - ink
			}
			if len(items) == 0 {
				return
			}
			d, sums := wire(t, u, &drawing.Drawing{Items: items})
			m.Build(&d, sums, cam, inks[ink])
			anew := new(mesh.Mesh)
			anew.Build(&d, nil, cam, inks[ink])
			require.Equal(t, anew.Vertices, m.Vertices)
			require.Equal(t, anew.Indices, m.Indices)
		}
	})
}

func TestADragNeedsNoMemoryOnceWarm(t *testing.T) {
	d, sums := wire(t, new(drawing.Unpacker), &seen(jobs.M(1), true)[0])
	m, cam, inks := new(mesh.Mesh), fit(d.Box), mesh.NewInks(drawing.Evening)
	m.Build(&d, sums, cam, inks)
	require.Zero(t, testing.AllocsPerRun(10, func() {
		sums[len(sums)/2]++ // one item is another each time
		m.Build(&d, sums, cam, inks)
	}))
}

// BenchmarkMesh is the job of 48 modules: all of it, as when the view changes, and one
// item of it, as in a drag.
func BenchmarkMesh(b *testing.B) {
	d, sums := wire(b, new(drawing.Unpacker), &seen(jobs.M(1), true)[0])
	m, cam, inks := new(mesh.Mesh), fit(d.Box), mesh.NewInks(drawing.Evening)
	for name, sums := range map[string][]uint64{"all": nil, "drag": sums} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if sums != nil {
					sums[len(sums)/2]++
				}
				m.Build(&d, sums, cam, inks)
			}
			b.ReportMetric(float64(len(m.Vertices)), "vertices")
			b.ReportMetric(float64(len(m.Indices)/3), "triangles")
		})
	}
}
