package mesh

import (
	"math"

	"ledgewright/engine/drawing"
)

// An outline is a path in pixels, its curves in straight pieces. Its parts share one
// list of points.
type outline struct {
	points    []xy
	parts     []part
	low, high xy // of all points
}

type part struct {
	from, to int
	closed   bool
}

func (o *outline) part(i int) []xy { return o.points[o.parts[i].from:o.parts[i].to] }

// trace follows a path.
func (o *outline) trace(path []drawing.Step, cam *Camera) {
	o.points, o.parts = o.points[:0], o.parts[:0]
	from := 0
	end := func(closed bool) {
		if len(o.points)-from > 1 {
			o.parts = append(o.parts, part{from, len(o.points), closed})
		} else {
			o.points = o.points[:from]
		}
		from = len(o.points)
	}
	for i := range path {
		s := &path[i]
		switch s.To {
		case 'M':
			end(false)
			o.point(cam.at(s.P), from)
		case 'L':
			o.point(cam.at(s.P), from)
		case 'C':
			if len(o.points) > from {
				o.curve(cam.at(s.P1), cam.at(s.P2), cam.at(s.P), from)
			}
		case 'Z':
			if n := len(o.points); n-from > 1 && near(o.points[n-1], o.points[from]) {
				o.points = o.points[:n-1]
			}
			end(true)
		}
	}
	end(false)
	o.measure()
}

// measure finds the box of the points. Comparing is several times as fast as min and max,
// which have to think of numbers that are none.
func (o *outline) measure() {
	o.low, o.high = xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, p := range o.points {
		if p.x < o.low.x {
			o.low.x = p.x
		}
		if p.x > o.high.x {
			o.high.x = p.x
		}
		if p.y < o.low.y {
			o.low.y = p.y
		}
		if p.y > o.high.y {
			o.high.y = p.y
		}
	}
}

// touch is how near to each other two points are one, in pixels.
const touch = 1e-3

func near(p, q xy) bool { return math.Abs(p.x-q.x) < touch && math.Abs(p.y-q.y) < touch }

// point appends a point that differs from the last.
func (o *outline) point(p xy, from int) {
	if n := len(o.points); n > from && near(o.points[n-1], p) {
		return
	}
	o.points = append(o.points, p)
}

// flat is how far a straight piece may leave its curve, in pixels.
const flat = 0.15

// curve appends a cubic curve in n equal pieces, n by its second differences (the bound
// of G. Wang: the chords leave the curve by at most M·6/8/n², M the greater of them).
func (o *outline) curve(p1, p2, p3 xy, from int) {
	p0 := o.points[len(o.points)-1]
	m := max(xy{p0.x - 2*p1.x + p2.x, p0.y - 2*p1.y + p2.y}.length(), xy{p1.x - 2*p2.x + p3.x, p1.y - 2*p2.y + p3.y}.length())
	n := min(int(math.Ceil(math.Sqrt(0.75*m/flat))), 64)
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		s := 1 - t
		a, b, c, d := s*s*s, 3*s*s*t, 3*s*t*t, t*t*t
		o.point(xy{a*p0.x + b*p1.x + c*p2.x + d*p3.x, a*p0.y + b*p1.y + c*p2.y + d*p3.y}, from)
	}
	o.point(p3, from)
}
