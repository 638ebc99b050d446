package app

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A Camera says which part of the wall the picture shows: the place of the wall in
// the middle of the picture, and how many pixels a millimetre takes. Fitted says that
// it follows the size of the picture.
type Camera struct {
	X, Y   float64 // mm
	Scale  float64 // px per mm
	Fitted bool
}

// Zoom bounds, as parts of the scale at which the whole wall is seen.
const (
	zoomLeast = 0.05
	zoomMost  = 8
)

// Room about the wall, in pixels, for figures, tools and a strip of floor. The column of
// heights stands at the left.
const (
	roomLeft  = 96
	roomRight = 30
	roomAbove = 50
	roomBelow = 102
)

// narrowWidth is the width of a picture under which there is less room about the wall.
const narrowWidth = 600

// Narrow reports whether a picture is so narrow that dimensions stand close to the wall.
func (z Size) Narrow() bool { return z.Width < narrowWidth }

// room is the room about the wall; about a narrow picture it is less.
func room(size Size) (left, right, above, below float64) {
	if size.Narrow() {
		return 68, 12, 38, 92
	}
	return roomLeft, roomRight, roomAbove, roomBelow
}

// fit shows the whole wall.
func fit(w plan.Wall, size Size) Camera {
	scale := fitScale(w, size)
	low, high := span(w)
	left, right, above, below := room(size)
	return Camera{
		Scale: scale, Fitted: true,
		X: w.Width.MM()/2 - (left-right)/2/scale,
		Y: (low+high)/2 + (above-below)/2/scale,
	}
}

func fitScale(w plan.Wall, size Size) float64 {
	left, right, above, below := room(size)
	across := (size.Width - left - right) / max(w.Width.MM(), 1)
	low, high := span(w)
	up := (size.Height - above - below) / max(high-low, 1)
	return max(min(across, up), 0.005)
}

// span is from where a wall is lowest to where it is highest: floors and ceilings rise and
// fall.
func span(w plan.Wall) (low, high float64) {
	return min(w.FloorRise.Or(0).MM(), 0), w.Height.MM() + max(w.CeilingRise.Or(0).MM(), 0)
}

// zoom zooms by a factor about a pixel, which stays where it is.
func (c Camera) zoom(by, px, py float64, w plan.Wall, size Size) Camera {
	least := fitScale(w, size)
	scale := min(max(c.Scale*by, least*zoomLeast), least*zoomMost)
	x, y := c.mm(px, py, size)
	c.Scale, c.Fitted = scale, false
	c.X = x - (px-size.Width/2)/scale
	c.Y = y + (py-size.Height/2)/scale
	return c
}

// pan moves the picture by pixels.
func (c Camera) pan(dx, dy float64) Camera {
	c.X -= dx / c.Scale
	c.Y += dy / c.Scale
	c.Fitted = false
	return c
}

// mm returns the place on the wall under a pixel.
func (c Camera) mm(px, py float64, size Size) (x, y float64) {
	return c.X + (px-size.Width/2)/c.Scale, c.Y - (py-size.Height/2)/c.Scale
}

// Pixel returns the pixel over a place on the wall.
func (c Camera) Pixel(x, y float64, size Size) (px, py float64) {
	return size.Width/2 + (x-c.X)*c.Scale, size.Height/2 - (y-c.Y)*c.Scale
}

// reach returns so many pixels as a length on the wall.
func (c Camera) reach(px float64) unit.Length { return unit.Nearest(px / c.Scale) }
