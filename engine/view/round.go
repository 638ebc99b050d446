package view

import (
	"math"

	"ledgewright/engine/drawing"
)

// The view in the round: the boards with all their cuts, seen from anywhere, pulled apart
// as far as is wanted. It is drawn as flat faces in painter's order, so that SVG shows it
// as it stands; round_order.go says how the order is found.
//
// Places are on the wall (x to the right, y up, z into the room), in millimetres. The eye
// walks on a ball about the middle of all boards. With E the direction from the middle M
// to the eye, R to the right and U up in the picture, a place p comes to
//
//	parallel     x = R·(p − M),  y = U·(p − M)
//	perspective  the same, times D/(D − E·(p − M))
//
// with the eye D from M, far enough to be outside of everything.

// A Camera says from where a Round is seen and what part of the picture is shown.
type Camera struct {
	Yaw      float64 // degrees that the eye walks round to the right of straight in front
	Pitch    float64 // degrees that it rises, −90 to 90
	X, Y     float64 // middle of what is shown, mm of the picture from the middle of the boards
	Span     float64 // mm that the shorter side of the picture shows, where the middle of the boards is
	Parallel bool    // no perspective
}

// A Side is one of the fixed views.
type Side string

// The fixed views.
const (
	FromFront Side = "front"
	FromLeft  Side = "left"
	FromRight Side = "right"
	FromAbove Side = "above"
	FromBelow Side = "below"
	FromBack  Side = "back"
)

// Sides lists the fixed views.
func Sides() []Side {
	return []Side{FromFront, FromLeft, FromRight, FromAbove, FromBelow, FromBack}
}

// Seen turns a camera to a fixed view. What is not one leaves it as it is.
func (c Camera) Seen(from Side) Camera {
	switch from {
	case FromFront:
		c.Yaw, c.Pitch = 0, 0
	case FromLeft:
		c.Yaw, c.Pitch = -90, 0
	case FromRight:
		c.Yaw, c.Pitch = 90, 0
	case FromAbove:
		c.Yaw, c.Pitch = 0, 90
	case FromBelow:
		c.Yaw, c.Pitch = 0, -90
	case FromBack:
		c.Yaw, c.Pitch = 180, 0
	}
	return c
}

// Orbit walks the eye on by so many degrees to the right and up. It stops overhead and
// underneath.
func (c Camera) Orbit(right, up float64) Camera {
	c.Yaw = math.Remainder(c.Yaw+right, 360)
	c.Pitch = min(max(c.Pitch+up, -90), 90)
	return c
}

// Pan moves the picture by so many of its millimetres to the right and up.
func (c Camera) Pan(right, up float64) Camera {
	c.X -= right
	c.Y -= up
	return c
}

// Zoom shows everything k times as large; the place (x, y) of the picture stays where it
// is.
func (c Camera) Zoom(k, x, y float64) Camera {
	k = min(max(k, c.Span/maxSpan), c.Span/minSpan)
	c.X, c.Y = x+(c.X-x)/k, y+(c.Y-y)/k
	c.Span /= k
	return c
}

// What a picture may show across: from a joint to the widest wall.
const (
	minSpan = 40.0
	maxSpan = 60000.0
)

// A spot is a place in space or a direction.
type spot struct{ x, y, z float64 }

func (a spot) dot(b spot) float64 {
	return float64(a.x*b.x) + float64(a.y*b.y) + float64(a.z*b.z)
}

func (a spot) cross(b spot) spot {
	return spot{
		float64(a.y*b.z) - float64(a.z*b.y),
		float64(a.z*b.x) - float64(a.x*b.z),
		float64(a.x*b.y) - float64(a.y*b.x),
	}
}

func (a spot) plus(b spot, k float64) spot {
	return spot{a.x + float64(k*b.x), a.y + float64(k*b.y), a.z + float64(k*b.z)}
}

func (a spot) minus(b spot) spot { return spot{a.x - b.x, a.y - b.y, a.z - b.z} }

func (a spot) size() float64 { return math.Sqrt(a.dot(a)) }

// An eye is a camera worked out.
type eye struct {
	toward, right, up spot
	middle            spot
	at                spot // of the eye
	far               float64
	parallel          bool
}

// eyeFar is how far the eye stands from the middle of the boards, in radii of the ball
// round them: a view of a wall from across the room. It must be above 1.
const eyeFar = 3.2

func (c Camera) eye(middle spot, radius float64) eye {
	sy, cy := math.Sincos(c.Yaw * math.Pi / 180)
	sp, cp := math.Sincos(c.Pitch * math.Pi / 180)
	e := eye{toward: spot{sy * cp, sp, cy * cp}, right: spot{cy, 0, -sy}, middle: middle, parallel: c.Parallel}
	e.up = e.toward.cross(e.right)
	e.far = eyeFar * max(radius, 1)
	e.at = middle.plus(e.toward, e.far)
	return e
}

// side tells where the eye is of the plane n·p = d: a distance, or only its sign where the
// eye is at no finite place.
func (e *eye) side(n spot, d float64) float64 {
	if e.parallel {
		return n.dot(e.toward) * 1e6
	}
	return n.dot(e.at) - d
}

// scale is how large things at p are drawn.
func (e *eye) scale(p spot) float64 {
	if e.parallel {
		return 1
	}
	return e.far / (e.far - e.toward.dot(p.minus(e.middle)))
}

// see returns where a place comes to in the picture.
func (e *eye) see(p spot) point {
	k := e.scale(p)
	d := p.minus(e.middle)
	return point{X: e.right.dot(d) * k, Y: e.up.dot(d) * k}
}

// direction returns what a direction at p becomes in the picture, near p.
func (e *eye) direction(p, d spot) point {
	k := e.scale(p)
	out := point{X: e.right.dot(d) * k, Y: e.up.dot(d) * k}
	if e.parallel {
		return out
	}
	return plus(out, e.see(p), e.toward.dot(d)*k/e.far)
}

// window is the box that a camera shows in a picture so many times as wide as high.
func (c Camera) window(aspect float64) drawing.Box {
	if !(aspect > 0) {
		aspect = 1
	}
	w, h := c.Span/2, c.Span/2
	if aspect > 1 {
		w *= aspect
	} else {
		h /= aspect
	}
	return drawing.Box{MinX: c.X - w, MinY: c.Y - h, MaxX: c.X + w, MaxY: c.Y + h}
}
