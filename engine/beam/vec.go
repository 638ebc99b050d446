package beam

import "math"

func (a Vec) add(b Vec) Vec { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

func (a Vec) sub(b Vec) Vec { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func (a Vec) scale(k float64) Vec { return Vec{k * a[0], k * a[1], k * a[2]} }

// dot adds exactly rounded products: float64() forbids fusing them with the sum, so that
// every machine finds the same bits.
func (a Vec) dot(b Vec) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

func (a Vec) cross(b Vec) Vec {
	return Vec{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}

func (a Vec) length() float64 { return math.Sqrt(a.dot(a)) }

// axes are the unit vectors of a member's own axes in those of the frame.
type axes [3]Vec

// local returns the components of v along the axes.
func (r axes) local(v Vec) Vec { return Vec{r[0].dot(v), r[1].dot(v), r[2].dot(v)} }

// global is the reverse of local.
func (r axes) global(v Vec) Vec {
	return r[0].scale(v[0]).add(r[1].scale(v[1])).add(r[2].scale(v[2]))
}

// axesOf returns the axes of a member along x with y towards up, and false where up lies
// along x.
func axesOf(x, up Vec) (axes, bool) {
	x = x.scale(1 / x.length())
	z := x.cross(up)
	n := z.length()
	if n < 1e-9*up.length() || n == 0 {
		return axes{}, false
	}
	z = z.scale(1 / n)
	return axes{x, z.cross(x), z}, true
}

// At returns what w is about another point, which off leads to from where w acts.
func (w Wrench) At(off Vec) Wrench {
	return Wrench{w.Force, w.Moment.sub(off.cross(w.Force))}
}

// At returns the motion of a point that off leads to from the one that moves by m.
func (m Motion) At(off Vec) Motion {
	return Motion{m.Shift.add(m.Turn.cross(off)), m.Turn}
}
