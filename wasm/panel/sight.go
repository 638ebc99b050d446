package panel

import (
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/wasm/app"
)

// A Sight is the picture of a page as the stage shows it: a drawing, and how it is seen.
type Sight struct {
	Drawing *drawing.Drawing // nil: the page has no picture
	Number  int              // of the drawing: another number, another drawing
	View
}

// A View says how many pixels a millimetre takes, in which pixel of the picture (0, 0) of
// the drawing lies, and in which light it is seen.
type View struct {
	Scale, X, Y float64
	Evening     bool
}

// Sight is the picture of the page that was made last. It holds until the next one is.
func (p *Painter) Sight() Sight {
	l, r := &p.last, &p.round
	switch {
	case r.shown:
		return Sight{&r.drawing, 2*r.number + 1, r.view}
	case !l.sight.shown:
		return Sight{}
	case l.moving.from.drawn:
		return Sight{&l.sight.both, 2 * l.sight.number, l.sight.view}
	}
	return Sight{&l.whole, 2 * l.sight.number, l.sight.view}
}

// seen is how a camera sees the picture.
func seen(s *app.State, c app.Camera) View {
	x, y := c.Pixel(0, 0, s.Size)
	return View{c.Scale, x, y, evening(s)}
}

// A flatSight is what the stage is to show of the wall.
type flatSight struct {
	shown  bool
	number int
	view   View
	both   drawing.Drawing // what stays, and on it what is in the hand
	still  int             // items that stay
}

// see takes the camera of a state.
func (f *flatSight) see(s *app.State) {
	f.shown, f.view = true, seen(s, s.Camera)
}

// carry puts what is in the hand over the rest, which stays as it was when that was
// picked up.
func (f *flatSight) carry(whole *drawing.Drawing, held []drawing.Item, modules []string) {
	if f.still == 0 {
		items := f.both.Items[:0]
		for i := range whole.Items {
			if g := whole.Items[i].Group; g != dimensions && !slices.Contains(modules, g) {
				items = append(items, whole.Items[i])
			}
		}
		f.both, f.still = *whole, len(items)
		f.both.Items = items
	}
	f.both.Items = append(f.both.Items[:f.still], held...)
	f.number++
}

// letGo shows the whole wall again.
func (f *flatSight) letGo() { f.still, f.number = 0, f.number+1 }

// glass is where the stage lies, below all else of the picture.
func glass() Node {
	return el("div", "glass", class("glass"), attr("data-glass"), attr("aria-hidden=true"))
}
