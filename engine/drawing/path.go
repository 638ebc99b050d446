package drawing

// Move starts a path, or a new part of it.
func Move(x, y float64) Step { return Step{To: 'M', P: Point{x, y}} }

// LineTo goes straight on.
func LineTo(x, y float64) Step { return Step{To: 'L', P: Point{x, y}} }

// Curve goes on by a cubic curve with the controls (x1, y1) and (x2, y2).
func Curve(x1, y1, x2, y2, x, y float64) Step {
	return Step{To: 'C', P1: Point{x1, y1}, P2: Point{x2, y2}, P: Point{x, y}}
}

// Close goes back to where the part began.
func Close() Step { return Step{To: 'Z'} }

// Segment is the path of one straight line.
func Segment(x1, y1, x2, y2 float64) []Step { return []Step{Move(x1, y1), LineTo(x2, y2)} }

// Rect is the path of a rectangle.
func Rect(x, y, width, height float64) []Step {
	return []Step{Move(x, y), LineTo(x+width, y), LineTo(x+width, y+height), LineTo(x, y+height), Close()}
}

// Polygon is the closed path through the points.
func Polygon(p ...Point) []Step {
	s := make([]Step, 0, len(p)+1)
	for i, q := range p {
		to := byte('L')
		if i == 0 {
			to = 'M'
		}
		s = append(s, Step{To: to, P: q})
	}
	return append(s, Close())
}

// arcControl is the length of the control arm of a cubic curve that stands for a
// quarter of a circle, in radii: 4/3·(√2 − 1). The curve leaves the circle by at most
// 0.03 % of the radius.
const arcControl = 0.5522847498307936

// Circle is the path of a circle.
func Circle(x, y, r float64) []Step { return Ellipse(x, y, r, r) }

// Ellipse is the path of an ellipse with level and plumb axes.
func Ellipse(x, y, rx, ry float64) []Step {
	cx, cy := rx*arcControl, ry*arcControl
	return []Step{
		Move(x+rx, y),
		Curve(x+rx, y+cy, x+cx, y+ry, x, y+ry),
		Curve(x-cx, y+ry, x-rx, y+cy, x-rx, y),
		Curve(x-rx, y-cy, x-cx, y-ry, x, y-ry),
		Curve(x+cx, y-ry, x+rx, y-cy, x+rx, y),
		Close(),
	}
}

// RoundRect is the path of a rectangle with rounded corners.
func RoundRect(x, y, width, height, r float64) []Step {
	r = min(r, width/2, height/2)
	k := r * (1 - arcControl)
	l, b, rt, t := x, y, x+width, y+height
	return []Step{
		Move(l+r, b), LineTo(rt-r, b), Curve(rt-k, b, rt, b+k, rt, b+r),
		LineTo(rt, t-r), Curve(rt, t-k, rt-k, t, rt-r, t),
		LineTo(l+r, t), Curve(l+k, t, l, t-k, l, t-r),
		LineTo(l, b+r), Curve(l, b+k, l+k, b, l+r, b), Close(),
	}
}

// Width and Height of a box.
func (b Box) Width() float64 { return b.MaxX - b.MinX }

// Height of a box.
func (b Box) Height() float64 { return b.MaxY - b.MinY }

// With returns the least box round b and p.
func (b Box) With(p Point) Box {
	return Box{min(b.MinX, p.X), min(b.MinY, p.Y), max(b.MaxX, p.X), max(b.MaxY, p.Y)}
}

// Bounds returns the least box round the points of a path, controls included; the zero
// Box for an empty path.
func Bounds(path []Step) Box {
	var b Box
	first := true
	for _, s := range path {
		if s.To == 'Z' {
			continue
		}
		if first {
			b, first = Box{s.P.X, s.P.Y, s.P.X, s.P.Y}, false
		}
		b = b.With(s.P)
		if s.To == 'C' {
			b = b.With(s.P1).With(s.P2)
		}
	}
	return b
}
