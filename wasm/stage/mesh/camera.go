package mesh

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"ledgewright/engine/drawing"
)

// An xy is a place on the screen in its own pixels, y down.
type xy struct{ x, y float64 }

func (p xy) plus(d xy, k float64) xy { return xy{p.x + k*d.x, p.y + k*d.y} }
func (p xy) minus(q xy) xy           { return xy{p.x - q.x, p.y - q.y} }

// length is without math.Hypot, which guards against an overflow that pixels never come
// near and takes five times as long.
func (p xy) length() float64 { return math.Sqrt(p.x*p.x + p.y*p.y) }

// A Camera looks at a drawing: its millimetres with y up become pixels with y down.
type Camera struct {
	to, back      mgl64.Mat3
	scale         float64 // pixels for a millimetre
	pixel         float64 // pixels of the screen for one of the page's
	width, height float64 // of the screen
}

// NewCamera returns a camera for a screen of so many pixels, ratio of them to one of the
// page's. scale is the page's pixels for a millimetre; the drawing's (0, 0) comes to
// (x, y), in the page's pixels from the upper left.
func NewCamera(scale, x, y, ratio, width, height float64) Camera {
	to := mgl64.Translate2D(x*ratio, y*ratio).Mul3(mgl64.Scale2D(scale*ratio, -scale*ratio))
	return Camera{to: to, back: to.Inv(), scale: scale * ratio, pixel: ratio, width: width, height: height}
}

// at returns where a point of the drawing is on the screen.
func (c *Camera) at(p drawing.Point) xy {
	m := &c.to
	return xy{m[0]*p.X + m[3]*p.Y + m[6], m[1]*p.X + m[4]*p.Y + m[7]}
}

// Back returns the point of the drawing at a place on the screen.
func (c *Camera) Back(x, y float64) drawing.Point {
	m := &c.back
	return drawing.Point{X: m[0]*x + m[3]*y + m[6], Y: m[1]*x + m[4]*y + m[7]}
}
