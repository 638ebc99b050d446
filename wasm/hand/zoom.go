package hand

import "math"

// Zooming by the wheel multiplies the scale by
//
//	(1 + s)/(1 − s),   s = −DY · wheelRate/2
//
// which is near e^(−DY·wheelRate) and, unlike a power, comes back exactly to 1 after a
// step up and the same step down. A notch of a mouse's wheel sends 100 px and more, a
// track pad's pinch a few; wheelLimit keeps one event from leaping. Both are our
// assumption.
const (
	wheelRate  = 0.01 // for each px
	wheelLimit = 24   // px
)

// closest is the distance of two fingers, in px, below which their zoom is not read: they
// are thicker than that, and what is read there is noise.
const closest = 16

// A spread is where two fingers are: the point between them, and their distance.
type spread struct{ x, y, apart float64 }

// spread returns that of the first two pointers.
func (h Hand) spread() spread {
	a, b := h.at[0], h.at[1]
	return spread{
		x:     (a.x + b.x) / 2,
		y:     (a.y + b.y) / 2,
		apart: max(math.Hypot(b.x-a.x, b.y-a.y), closest),
	}
}

// pinch pans and zooms by what two fingers moved since the last gesture, so that what was
// at the point between them stays there.
func (h Hand) pinch(e Event) (Hand, []Gesture) {
	was := h.mid
	h.mid = h.spread()
	if h.mid == was {
		return h, nil
	}
	return h, []Gesture{{
		Kind: PanZoom, X: h.mid.x, Y: h.mid.y, DX: h.mid.x - was.x, DY: h.mid.y - was.y,
		Scale: h.mid.apart / was.apart, Shift: e.Shift, Type: Touch,
	}}
}

// pan moves the picture along with one pointer.
func (h Hand) pan(was contact, e Event) []Gesture {
	if e.X == was.x && e.Y == was.y {
		return nil
	}
	return []Gesture{{Kind: PanZoom, X: e.X, Y: e.Y, DX: e.X - was.x, DY: e.Y - was.y, Scale: 1, Shift: e.Shift, Type: was.kind}}
}

// wheel pans, or zooms about the pointer. With shift, a wheel that knows only up and down
// pans sideways.
func (h Hand) wheel(e Event) []Gesture {
	if h.n > 0 || e.DX == 0 && e.DY == 0 {
		return nil
	}
	g := Gesture{Kind: PanZoom, X: e.X, Y: e.Y, Scale: 1, Shift: e.Shift, Type: Mouse}
	switch {
	case e.Control:
		s := -min(max(e.DY, -wheelLimit), wheelLimit) * wheelRate / 2
		g.Scale = (1 + s) / (1 - s)
	case e.Shift && e.DX == 0:
		g.DX = -e.DY
	default:
		g.DX, g.DY = 0-e.DX, 0-e.DY // and not −e.DX, which would be −0 for 0
	}
	return []Gesture{g}
}

// WheelFor returns the DY that zooms by scale with the control key down, as near as one
// event can: for a browser that tells of a track pad's pinch by its scale. The scale must
// be positive.
func WheelFor(scale float64) float64 {
	dy := -2 / wheelRate * (scale - 1) / (scale + 1)
	return min(max(dy, -wheelLimit), wheelLimit)
}
