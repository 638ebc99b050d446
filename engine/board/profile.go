package board

import (
	"math"
	"slices"

	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// slant returns the length of a cut from face to face.
func slant(c Cut, t unit.Length) unit.Length {
	return unit.Nearest(math.Hypot((c.AtB - c.AtA).MM(), t.MM()))
}

// Profile returns the section of the board square to v (V is 0 in every point), with
// the housings and rebates that run through from edge to edge taken out. It goes
// counter-clockwise as seen in the module's plane from the room: along face B with
// u, then back along face A.
func (b Board) Profile() []Point {
	start, end := b.Ends()
	from, to := start.Least(), end.Greatest()
	p := make([]Point, 0, 8)
	p = b.contour(p, FaceB, from, to)
	half := len(p)
	p = b.contour(p, FaceA, from, to)
	slices.Reverse(p[half:])
	p = clip(p, start, b.Thickness, 1)
	return clip(p, end, b.Thickness, -1)
}

// Outline returns the profile in the module's plane, counter-clockwise.
func (b Board) Outline() [][2]unit.Length {
	p := b.Profile()
	out := make([][2]unit.Length, 0, len(p))
	for _, q := range p {
		x, y := b.Frame.Plane(q.U, q.W)
		if xy := [2]unit.Length{x, y}; len(out) == 0 || out[len(out)-1] != xy {
			out = append(out, xy)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// housedThrough reports whether f is a housing in the given face that runs from the
// back edge to the front edge.
func (b Board) housedThrough(f *Feature, face Face) bool {
	return f.Kind == Housing && f.Enter == face && f.Tilt == 0 && f.Along > 0 && f.Depth > 0 &&
		f.Mouth.V-f.Across/2 <= 0 && f.Mouth.V+(f.Across+1)/2 >= b.Width
}

// contour appends the edge of the profile along a face, with u, between from and to.
// Where housings overlap the deeper one counts.
func (b Board) contour(p []Point, face Face, from, to unit.Length) []Point {
	var marks []unit.Length
	for i := range b.Features {
		if f := &b.Features[i]; b.housedThrough(f, face) {
			l, r := f.spanU()
			marks = append(marks, max(l, from), min(r, to))
		}
	}
	if len(marks) == 0 {
		w := b.inFrom(face, 0)
		return append(p, Point{U: from, W: w}, Point{U: to, W: w})
	}
	marks = append(marks, from, to)
	rank.Up(marks)
	marks = slices.Compact(marks)
	for i := range len(marks) - 1 {
		w := b.inFrom(face, b.housed(face, marks[i], marks[i+1]))
		if n := len(p); i > 0 && p[n-1].W == w {
			p[n-1].U = marks[i+1]
			continue
		}
		p = append(p, Point{U: marks[i], W: w}, Point{U: marks[i+1], W: w})
	}
	return p
}

// housed returns the depth of the deepest through housing over the whole of [l, r].
func (b Board) housed(face Face, l, r unit.Length) (deep unit.Length) {
	for i := range b.Features {
		f := &b.Features[i]
		if !b.housedThrough(f, face) {
			continue
		}
		if x, y := f.spanU(); x <= l && y >= r {
			deep = max(deep, min(f.Depth, b.Thickness))
		}
	}
	return deep
}

// spanU returns the extent of a mouth along u.
func (f *Feature) spanU() (from, to unit.Length) {
	from = f.Mouth.U - f.Along/2
	return from, from + f.Along
}

// inFrom returns w at a depth below face A or B.
func (b Board) inFrom(face Face, depth unit.Length) unit.Length {
	if face == FaceB {
		return b.Thickness - depth
	}
	return depth
}

// clip keeps the part of a polygon on one side of a cut: at larger u than the cut for
// side 1, at smaller u for −1 (the method of Sutherland and Hodgman, 1974).
func clip(p []Point, c Cut, t unit.Length, side unit.Length) []Point {
	square := c.AtA == c.AtB
	inside := true
	for _, q := range p {
		inside = inside && side*(q.U-c.At(q.W, t)) >= 0
	}
	if inside {
		return p
	}
	out := make([]Point, 0, len(p)+2)
	for i, q := range p {
		last := p[(i+len(p)-1)%len(p)]
		in, was := side*(q.U-c.At(q.W, t)) >= 0, side*(last.U-c.At(last.W, t)) >= 0
		if in != was {
			out = append(out, crossing(last, q, c, t, square))
		}
		if in {
			out = append(out, q)
		}
	}
	return dropRepeated(out)
}

// crossing returns where the edge from p to q meets a cut. Edges along u or w, which
// are nearly all, give one coordinate exactly.
func crossing(p, q Point, c Cut, t unit.Length, square bool) Point {
	switch {
	case p.W == q.W:
		return Point{U: c.At(p.W, t), W: p.W}
	case p.U == q.U && !square:
		return Point{U: p.U, W: unit.Nearest(t.MM() * ((p.U - c.AtA).MM() / (c.AtB - c.AtA).MM()))}
	}
	over, under := (p.U - c.At(p.W, t)).MM(), (q.U - c.At(q.W, t)).MM()
	k := over / (over - under)
	return Point{U: p.U + unit.Nearest((q.U-p.U).MM()*k), W: p.W + unit.Nearest((q.W-p.W).MM()*k)}
}

// dropRepeated removes points equal to the one before.
func dropRepeated(p []Point) []Point {
	p = slices.Compact(p)
	for len(p) > 1 && p[0] == p[len(p)-1] {
		p = p[:len(p)-1]
	}
	return p
}
