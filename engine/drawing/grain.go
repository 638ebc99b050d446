package drawing

import (
	"math"

	"ledgewright/engine/rank"
)

// The figure of flat-sawn wood. A log's rings are cylinders round the pith; a plank's
// face is a plane that passes the pith at a distance d. On the face, along the grain a
// and across it b, the ring of radius r is the contour
//
//	r = √(d(a)² + (b − v₀(a))²)
//
// with v₀ where the pith lies across the face. A tree is neither straight nor a
// cylinder: d and v₀ wander slowly along the board (value noise), and where d grows
// past r the two flanks of a ring run together in a pointed arch, the cathedral of the
// trade. Edge grain is the same log cut square to that: lines that are nearly straight.
// End grain is the rings themselves. The amounts of wandering are our own judgement.

// A Figure is the grain of one face as lines in the picture, cut to the face.
type Figure struct {
	Bold, Fine, Pores     [][]Point
	BoldWidth, FineWidth  float64 // mm of the drawing
	BoldStrength          float64 // opacity, 0 to 1
	FineStrength, PoreInk float64
}

// A face is the part of a plank that shows.
type face struct {
	look         Look
	w            Wood
	poly         []Point // in the plank's coordinates
	box          Box     // of poly
	along        float64 // picture mm for a plank mm, along the grain
	across       float64 // likewise across
	detail       float64 // the least thing to be seen, plank mm
	pitch        float64 // between rings
	thin         int     // every so manieth ring is drawn
	depth, pith  float64
	det          float64 // determinant of (Along, Across)
	seedD, seedV uint64
}

// Grain returns the figure of a face. detail is the least thing to be seen in the
// picture, in millimetres: lines that would come closer together are thinned out.
func Grain(look Look, w Wood, path []Step, detail float64) Figure {
	f, ok := newFace(look, w, path, detail)
	if !ok {
		return Figure{}
	}
	g := f.strengths()
	switch {
	case w.End:
		f.rings(&g, f.endSamples(), true)
	case w.Edge:
		f.straights(&g)
		f.pores(&g)
	default:
		f.rings(&g, f.flatSamples(), false)
		f.pores(&g)
	}
	return g
}

// strengths fills in how wide and how dark the lines are. A line is as wide as late
// wood is, but never so thin that it cannot be seen.
func (f *face) strengths() Figure {
	scale := math.Sqrt(float64(f.along * f.across))
	k := f.look.Contrast / 0.6
	return Figure{
		BoldWidth:    min(max(0.85*f.detail, 0.9), 3.6) * scale,
		FineWidth:    min(max(0.46*f.detail, 0.45), 1.9) * scale,
		BoldStrength: min(0.26*k, 0.5),
		FineStrength: min(0.55*k, 0.75),
		PoreInk:      min(0.5*k, 0.6),
	}
}

func newFace(look Look, w Wood, path []Step, detail float64) (*face, bool) {
	f := &face{look: look, w: w, along: math.Hypot(w.Along.X, w.Along.Y), across: math.Hypot(w.Across.X, w.Across.Y)}
	f.det = float64(w.Along.X*w.Across.Y) - float64(w.Along.Y*w.Across.X)
	if f.along < 1e-6 || f.across < 1e-3 || math.Abs(f.det) < 1e-6*f.along*f.across {
		return nil, false
	}
	for _, s := range path {
		if s.To != 'Z' {
			f.poly = append(f.poly, f.plank(s.P))
		}
	}
	if len(f.poly) < 3 {
		return nil, false
	}
	f.box = Box{f.poly[0].X, f.poly[0].Y, f.poly[0].X, f.poly[0].Y}
	for _, p := range f.poly {
		f.box = f.box.With(p)
	}
	f.detail = detail / f.along
	f.spacing(detail)
	f.depth = 14 + 34*unit(w.Seed, 1)
	f.pith = 50 + 130*unit(w.Seed, 2)
	f.seedD, f.seedV = hash(w.Seed, 3), hash(w.Seed, 4)
	return f, f.box.Width() < 1e5 && f.box.Height() < 1e4
}

// spacing chooses the distance between rings: wider than in the tree, so that single
// lines can be told apart, and thinned by halves where the face is foreshortened.
func (f *face) spacing(detail float64) {
	f.pitch = min(max(f.look.Ring*2.4, 4), 14)
	if f.w.End {
		f.pitch = max(f.look.Ring*1.4, 2.5)
	}
	if f.detail < 0.5 {
		f.pitch /= 2 // near full size the tree's own rings can be told apart
	}
	f.thin = 1
	for f.thin < 64 && float64(f.thin)*f.pitch*f.across < 1.6*detail {
		f.thin *= 2
	}
}

// plank returns where a point of the picture lies on the plank.
func (f *face) plank(p Point) Point {
	x, y := p.X-f.w.Origin.X, p.Y-f.w.Origin.Y
	a := (float64(x*f.w.Across.Y) - float64(y*f.w.Across.X)) / f.det
	b := (float64(f.w.Along.X*y) - float64(f.w.Along.Y*x)) / f.det
	return Point{a + f.w.WindowAlong, b + f.w.WindowAcross}
}

// picture is the way back.
func (f *face) picture(p Point) Point {
	a, b := p.X-f.w.WindowAlong, p.Y-f.w.WindowAcross
	return Point{
		f.w.Origin.X + float64(f.w.Along.X*a) + float64(f.w.Across.X*b),
		f.w.Origin.Y + float64(f.w.Along.Y*a) + float64(f.w.Across.Y*b),
	}
}

// A sample is d and v₀ at one place along the board.
type sample struct{ a, d, v float64 }

func (f *face) step() float64 { return min(max(10*f.detail, 3), 40) }

// flatSample is d and v₀ of a flat-sawn face.
func (f *face) flatSample(a float64) sample {
	d := f.depth + 20*noise(f.seedD, a/1100) + 7*noise(f.seedD+1, a/310) + 1.2*noise(f.seedD+2, a/90)
	v := f.pith + 22*noise(f.seedV, a/1000) + 4*noise(f.seedV+1, a/260) + 0.8*noise(f.seedV+2, a/70)
	return sample{a, d, v}
}

func (f *face) flatSamples() []sample {
	step := f.step()
	n := int(f.box.Width()/step) + 2
	s := make([]sample, 0, n+1)
	for i := range n {
		s = append(s, f.flatSample(f.box.MinX+float64(float64(i)*step)))
	}
	return s
}

// endSample is an end's rings in the same form: d is the distance across the width.
func (f *face) endSample(a float64) sample { return sample{a, math.Abs(a - f.pith), -f.depth} }

func (f *face) endSamples() []sample {
	step := min(max(4*f.detail, 1.5), 12)
	n := int(f.box.Width()/step) + 2
	s := make([]sample, 0, n+1)
	for i := range n {
		s = append(s, f.endSample(f.box.MinX+float64(float64(i)*step)))
	}
	return s
}

// rings draws every ring that can show.
func (f *face) rings(g *Figure, s []sample, end bool) {
	least, greatest := f.reach(s)
	first, last := int(least/f.pitch), int(greatest/f.pitch)+1
	for k := first - first%f.thin; k <= last; k += f.thin {
		r := f.pitch * (float64(k) + 0.5*(unit(f.w.Seed, int64(1000+k))-0.5))
		var lines [][]Point
		lines = f.flank(lines, s, r, 1, end)
		if !end {
			lines = f.flank(lines, s, r, -1, end)
		}
		if unit(f.w.Seed, int64(5000+k)) < 0.38 {
			g.Bold = append(g.Bold, lines...)
		} else {
			g.Fine = append(g.Fine, lines...)
		}
	}
}

// reach returns the least and the greatest radius that can show on the face.
func (f *face) reach(s []sample) (least, greatest float64) {
	least = math.Inf(1)
	for _, q := range s {
		low, high := f.box.MinY-q.v, f.box.MaxY-q.v
		far := max(math.Abs(low), math.Abs(high))
		near := max(low, -high, 0)
		greatest = max(greatest, math.Hypot(q.d, far))
		least = min(least, math.Hypot(q.d, near))
	}
	return least, greatest
}

// flank follows one side of a ring along the board and cuts it to the face.
func (f *face) flank(lines [][]Point, s []sample, r, side float64, end bool) [][]Point {
	var run []Point
	for i, q := range s {
		inside := q.d < r
		if i > 0 && inside != (s[i-1].d < r) {
			run = f.tip(run, s[i-1], q, r, side, end)
		}
		if inside {
			run = append(run, Point{q.a, q.v + side*math.Sqrt(float64(r*r)-float64(q.d*q.d))})
		}
		if !inside && len(run) > 0 {
			lines, run = f.cut(lines, run), nil
		}
	}
	return f.cut(lines, run)
}

// tip adds the rounded point where a ring's two flanks meet, between two samples.
func (f *face) tip(run []Point, p, q sample, r, side float64, end bool) []Point {
	at := f.flatSample
	if end {
		at = f.endSample
	}
	in, out := p, q // in: the ring shows
	if p.d >= r {
		in, out = q, p
	}
	from := in.a
	for range 14 {
		m := at((in.a + out.a) / 2)
		if m.d < r {
			in = m
		} else {
			out = m
		}
	}
	points := [...]float64{0, 0.03, 0.12, 0.3, 0.6}
	add := func(k float64) {
		m := at(in.a + float64(k*(from-in.a)))
		run = append(run, Point{m.a, m.v + side*math.Sqrt(max(float64(r*r)-float64(m.d*m.d), 0))})
	}
	if p.d >= r { // the ring begins here
		for _, k := range points {
			add(k)
		}
		return run
	}
	for i := len(points) - 1; i >= 0; i-- {
		add(points[i])
	}
	return run
}

// straights draws edge grain.
func (f *face) straights(g *Figure) {
	lean := 0.012 * (unit(f.w.Seed, 11) - 0.5)
	step := max(2*f.step(), 12)
	n := int(f.box.Width()/step) + 2
	first, last := int(math.Floor((f.box.MinY-8)/f.pitch)), int((f.box.MaxY+8)/f.pitch)+1
	for k := first; k <= last; k++ {
		if ((k%f.thin)+f.thin)%f.thin != 0 {
			continue
		}
		b := f.pitch * (float64(k) + 0.7*(unit(f.w.Seed, int64(2000+k))-0.5))
		run := make([]Point, 0, n)
		for i := range n {
			a := f.box.MinX + float64(float64(i)*step)
			wander := 1.7*noise(f.seedD, a/520) + 0.7*noise(f.seedV+uint64(k), a/240)
			run = append(run, Point{a, b + wander + float64(lean*(a-f.box.MinX))})
		}
		if unit(f.w.Seed, int64(7000+k)) < 0.4 {
			g.Bold = f.cut(g.Bold, run)
		} else {
			g.Fine = f.cut(g.Fine, run)
		}
	}
}

// Pores lie in a grid of cells; a cell holds one or none.
const (
	poreCell  = 30.0
	poreRow   = 4.5
	poreShare = 0.30
)

// pores draws open pores as short dashes along the grain.
func (f *face) pores(g *Figure) {
	row := poreRow * float64(f.thin)
	if f.look.Pores <= 0 || f.across < 0.08 || f.detail > 12 {
		return
	}
	for i := int64(math.Floor(f.box.MinX / poreCell)); float64(i)*poreCell < f.box.MaxX; i++ {
		for j := int64(math.Floor(f.box.MinY / row)); float64(j)*row < f.box.MaxY; j++ {
			h := hash(f.seedD, i*8192+j)
			if float64(h&1023)/1023 > poreShare*f.look.Pores {
				continue
			}
			a := poreCell * (float64(i) + float64(h>>10&255)/255)
			b := row * (float64(j) + float64(h>>18&255)/255)
			size := 4 + 14*float64(h>>26&255)/255
			p, q := Point{a, b}, Point{a + size, b + 0.3}
			if inside(f.poly, p) && inside(f.poly, q) {
				g.Pores = append(g.Pores, []Point{f.picture(p), f.picture(q)})
			}
		}
	}
}

// cut appends the parts of a run of the plank that lie on the face, in the picture's
// coordinates.
func (f *face) cut(lines [][]Point, run []Point) [][]Point {
	var part []Point
	flush := func() {
		if len(part) > 1 {
			lines = append(lines, part)
		}
		part = nil
	}
	for i := 1; i < len(run); i++ {
		p, q := run[i-1], run[i]
		if !(Box{min(p.X, q.X), min(p.Y, q.Y), max(p.X, q.X), max(p.Y, q.Y)}).Meets(f.box.Grown(1e-9)) {
			flush()
			continue
		}
		t := crossings(f.poly, p, q)
		for j := 1; j < len(t); j++ {
			m := between(p, q, (t[j-1]+t[j])/2)
			if t[j]-t[j-1] < 1e-9 {
				continue
			}
			if !inside(f.poly, m) {
				flush()
				continue
			}
			if part == nil {
				part = append(part, f.picture(between(p, q, t[j-1])))
			}
			part = append(part, f.picture(between(p, q, t[j])))
		}
	}
	flush()
	return lines
}

func between(p, q Point, t float64) Point {
	return Point{p.X + float64(t*(q.X-p.X)), p.Y + float64(t*(q.Y-p.Y))}
}

// crossings returns where along p–q the sides of a polygon are crossed, with 0 and 1,
// in order.
func crossings(poly []Point, p, q Point) []float64 {
	t := append(make([]float64, 0, 6), 0, 1)
	dx, dy := q.X-p.X, q.Y-p.Y
	for i, c := range poly {
		b := poly[(i+len(poly)-1)%len(poly)]
		ex, ey := c.X-b.X, c.Y-b.Y
		det := float64(dx*ey) - float64(dy*ex)
		if det == 0 {
			continue
		}
		fx, fy := b.X-p.X, b.Y-p.Y
		s := (float64(fx*ey) - float64(fy*ex)) / det
		u := (float64(fx*dy) - float64(fy*dx)) / det
		if s > 0 && s < 1 && u >= 0 && u <= 1 {
			t = append(t, s)
		}
	}
	rank.Up(t)
	return t
}

// inside reports whether a point lies in a polygon, by the even-odd rule.
func inside(poly []Point, p Point) bool {
	in := false
	for i, c := range poly {
		b := poly[(i+len(poly)-1)%len(poly)]
		if (c.Y > p.Y) != (b.Y > p.Y) && p.X < b.X+float64((p.Y-b.Y)/(c.Y-b.Y)*(c.X-b.X)) {
			in = !in
		}
	}
	return in
}
