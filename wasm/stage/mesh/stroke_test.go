package mesh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/drawing"
	"ledgewright/wasm/stage/mesh"
)

// ink is how dark a mesh of lines makes the middle of a pixel: the shader's formula of a
// line, worked out for every triangle that holds the place; n is how many darken it.
func ink(m *mesh.Mesh, x, y float64) (sum float64, n int) {
	for i := 0; i < len(m.Indices); i += 3 {
		a, b, c := m.Vertices[m.Indices[i]], m.Vertices[m.Indices[i+1]], m.Vertices[m.Indices[i+2]]
		u, v, w, ok := shares(a, b, c, x, y)
		if !ok {
			continue
		}
		mix := func(p, q, r float32) float64 { return u*float64(p) + v*float64(q) + w*float64(r) }
		across, along, half := mix(a.SrcX, b.SrcX, c.SrcX), mix(a.SrcY, b.SrcY, c.SrcY), float64(a.Custom1)
		k := 0.0
		if a.Custom0 == mesh.PaintDash || a.Custom0 == mesh.PaintDot {
			k = dash(a.Custom0 == mesh.PaintDot, across, along, half, float64(a.Custom2), float64(a.Custom3))
		} else {
			k = line(across, along, half, float64(a.Custom2), int(a.Custom3))
		}
		if k > 0.01 {
			sum += k
			n++
		}
	}
	return sum, n
}

// shares returns what each corner has in a place of a triangle.
func shares(a, b, c mesh.Vertex, x, y float64) (u, v, w float64, ok bool) {
	turn := func(px, py, qx, qy float32) float64 {
		return (float64(qx)-float64(px))*(y-float64(py)) - (float64(qy)-float64(py))*(x-float64(px))
	}
	u, v, w = turn(b.DstX, b.DstY, c.DstX, c.DstY), turn(c.DstX, c.DstY, a.DstX, a.DstY), turn(a.DstX, a.DstY, b.DstX, b.DstY)
	all := u + v + w
	if all == 0 {
		return 0, 0, 0, false
	}
	u, v, w = u/all, v/all, w/all
	return u, v, w, u >= 0 && v > 0 && w > 0
}

// line is the shader's coverage of a line.
func line(across, along, half, length float64, ends int) float64 {
	d, over, cut := math.Abs(across), max(-along, along-length), 1.0
	if ends&1 != 0 {
		cut *= min(max(along+0.5, 0), 1)
	}
	if ends&2 != 0 {
		cut *= min(max(length-along+0.5, 0), 1)
	}
	if over > 0 && !(ends&1 != 0 && along < 0) && !(ends&2 != 0 && along > length) {
		d = math.Hypot(across, over)
	}
	return cut * edge(d, half)
}

// dash is the shader's coverage of a broken line.
func dash(round bool, across, along, half, long, period float64) float64 {
	q := along - period*math.Floor(along/period)
	in := max(min(q, long-q), q-period)
	if round {
		return edge(math.Hypot(across, max(-in, 0)), half)
	}
	return edge(math.Abs(across), half) * min(max(in+0.5, 0), 1)
}

// edge is the share of a pixel d from the middle of a stroke of that half width.
func edge(d, half float64) float64 {
	return min(max(min(d+half, 0.5)-max(d-half, -0.5), 0), 1)
}

// away is the distance from a place to a line of points, the obvious way.
func away(p []drawing.Point, closed bool, x, y float64) float64 {
	best := math.Inf(1)
	n := len(p) - 1
	if closed {
		n = len(p)
	}
	for i := range n {
		a, b := p[i], p[(i+1)%len(p)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := min(max(((x-a.X)*dx+(y-a.Y)*dy)/(dx*dx+dy*dy), 0), 1)
		best = min(best, math.Hypot(x-a.X-t*dx, y-a.Y-t*dy))
	}
	return best
}

// A line is as dark everywhere as its distance says, at joints too, and no place is
// painted twice, as long as its corners are not sharper than a right angle.
func TestALineIsItsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.Float64Range(0.6, 12).Draw(t, "width")
		p := []drawing.Point{{X: 300, Y: 400}}
		way := rapid.Float64Range(0, 2*math.Pi).Draw(t, "way")
		for range rapid.IntRange(1, 4).Draw(t, "pieces") {
			s, c := math.Sincos(way)
			l := rapid.Float64Range(40, 80).Draw(t, "length")
			q := p[len(p)-1]
			p = append(p, drawing.Point{X: q.X + l*c, Y: q.Y + l*s})
			way += rapid.Float64Range(-0.7, 0.7).Draw(t, "turn")
		}
		m := build(drawing.Item{Kind: drawing.PathKind, Path: path(p), Line: drawing.Line{Tone: "ink", Width: width, Round: true}})
		for range 60 {
			k := rapid.IntRange(0, len(p)-1).Draw(t, "near")
			// a little aside, off the diagonals of quads
			x := p[k].X + rapid.Float64Range(-20, 20).Draw(t, "x") + 0.00713
			y := p[k].Y + rapid.Float64Range(-20, 20).Draw(t, "y") + 0.00391
			got, n := ink(m, x, 800-y)
			require.InDelta(t, edge(away(p, false, x, y), width/2), got, 0.02, "%v, %v", x, y)
			require.LessOrEqual(t, n, 1)
		}
	})
}

func path(p []drawing.Point) []drawing.Step {
	out := []drawing.Step{drawing.Move(p[0].X, p[0].Y)}
	for _, q := range p[1:] {
		out = append(out, drawing.LineTo(q.X, q.Y))
	}
	return out
}

// An outline has no gap and no double place at any of its corners.
func TestAnOutlineIsClosed(t *testing.T) {
	p := []drawing.Point{{X: 300, Y: 300}, {X: 500, Y: 300}, {X: 500, Y: 420}, {X: 300, Y: 420}}
	m := build(drawing.Item{Kind: drawing.PathKind, Path: drawing.Polygon(p...), Line: drawing.Line{Tone: "ink", Width: 5}})
	for _, c := range p {
		for dx := -6.5; dx < 7; dx += 1 {
			for dy := -6.5; dy < 7; dy += 1 {
				got, n := ink(m, c.X+dx, 800-c.Y-dy)
				require.InDelta(t, edge(away(p, true, c.X+dx, c.Y+dy), 2.5), got, 0.02)
				require.LessOrEqual(t, n, 1)
			}
		}
	}
}

// A line that is not round ends square, where it ends and not half its width beyond.
func TestEndsAreCutSquare(t *testing.T) {
	m := build(drawing.Item{Kind: drawing.PathKind, Path: drawing.Segment(200, 400, 300, 400), Line: drawing.Line{Tone: "ink", Width: 8}})
	for x, want := range map[float64]float64{198.5: 0, 199.5: 0, 200: 0.5, 200.5: 1, 250: 1, 299.5: 1, 300.5: 0} {
		got, _ := ink(m, x, 402.1)
		require.InDelta(t, want, got, 1e-6, "at %v", x)
	}
}

// darkened adds up a row of pixels along the middle of a level line.
func darkened(m *mesh.Mesh, from, to int, y float64) (sum float64) {
	for x := from; x < to; x++ {
		k, _ := ink(m, float64(x)+0.5, y)
		sum += k
	}
	return sum
}

// on is whether a place so far along a pattern is in a dash, the obvious way.
func on(s float64, pattern []float64) bool {
	if len(pattern)%2 == 1 {
		pattern = append(append([]float64{}, pattern...), pattern...)
	}
	for i := 0; ; i = (i + 1) % len(pattern) {
		if s < pattern[i] {
			return i%2 == 0
		}
		s -= pattern[i]
	}
}

// Dashes and gaps are as long as they are told, for every pattern, and go on round corners.
func TestDashes(t *testing.T) {
	for _, pattern := range [][]float64{{6, 4}, {10, 5, 2, 5}, {7}, {12, 3, 5}} {
		l := drawing.Line{Tone: "ink", Width: 4, Dash: pattern}
		m := build(drawing.Item{Kind: drawing.PathKind, Path: path([]drawing.Point{{X: 100, Y: 400}, {X: 203, Y: 400}, {X: 203, Y: 300}}), Line: l})
		for i := range 200 {
			s := float64(i) + 0.5
			x, y := 100+s, 400.1
			if s > 103 {
				x, y = 203.1, 400-(s-103)
			}
			want := 0.0
			if on(s, pattern) {
				want = 1
			}
			got, _ := ink(m, x, 800-y)
			require.InDelta(t, want, got, 0.01, "%v: pixel %d", pattern, i)
		}
	}
}

// Dots of no length with round ends are circles.
func TestDots(t *testing.T) {
	l := drawing.Line{Tone: "ink", Width: 6, Dash: []float64{0, 10}, Round: true}
	m := build(drawing.Item{Kind: drawing.PathKind, Path: drawing.Segment(100, 400, 300, 400), Line: l})
	for _, p := range []drawing.Point{{X: 120.5, Y: 400.5}, {X: 122.5, Y: 401.5}, {X: 123.1, Y: 402.3}, {X: 125.2, Y: 400.2}, {X: 149.5, Y: 402.2}} {
		far := math.Hypot(p.X-10*math.Round(p.X/10), p.Y-400)
		got, _ := ink(m, p.X, 800-p.Y)
		require.InDelta(t, edge(far, 3), got, 0.01, "%v", p)
	}
}

// A dashed line that goes far beyond the screen looks as if only what is seen were there.
func TestDashesBeyondTheScreen(t *testing.T) {
	l := drawing.Line{Tone: "ink", Width: 4, Dash: []float64{6, 4}}
	long := build(drawing.Item{Kind: drawing.PathKind, Path: drawing.Segment(-1e6, 400, 1e6, 400), Line: l})
	require.Len(t, long.Vertices, 4)
	short := build(drawing.Item{Kind: drawing.PathKind, Path: drawing.Segment(-100, 400, 1100, 400), Line: l})
	for x := 0.5; x < 1000; x++ {
		want, _ := ink(short, x, 399.9)
		got, _ := ink(long, x, 399.9)
		require.InDelta(t, want, got, 0.05, "at %v", x)
	}
}
