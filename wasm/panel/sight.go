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
	Over    *drawing.Drawing // what is in the hand, over it; nil: nothing is
	Carried int              // likewise of that
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
		return Sight{Drawing: &r.drawing, Number: 2*r.number + 1, View: r.view}
	case !l.sight.shown:
		return Sight{}
	case l.moving.from.drawn:
		return Sight{&l.sight.still, 2 * l.sight.number, &l.moving.drawing, l.sight.carried, l.sight.view}
	}
	return Sight{Drawing: &l.whole, Number: 2 * l.sight.number, View: l.sight.view}
}

// seen is how a camera sees the picture.
func seen(s *app.State, c app.Camera) View {
	x, y := c.Pixel(0, 0, s.Size)
	return View{c.Scale, x, y, evening(s)}
}

// A flatSight is what the stage is to show of the wall.
type flatSight struct {
	shown   bool
	view    View
	number  int             // of what stays
	carried int             // of what is in the hand
	still   drawing.Drawing // what stays while something is in the hand
	holds   bool
}

// see takes the camera of a state.
func (f *flatSight) see(s *app.State) {
	f.shown, f.view = true, seen(s, s.Camera)
}

// carry takes that modules are in the hand, at the first step out of the whole.
func (f *flatSight) carry(whole *drawing.Drawing, modules []string) {
	f.carried++
	if f.holds {
		return
	}
	items := f.still.Items[:0]
	for i := range whole.Items {
		if g := whole.Items[i].Group; g != dimensions && !slices.Contains(modules, g) {
			items = append(items, whole.Items[i])
		}
	}
	f.still, f.holds = *whole, true
	f.still.Items = items
	f.number++
}

// letGo shows the whole wall again.
func (f *flatSight) letGo() { f.holds, f.number = false, f.number+1 }

// glass is where the stage lies, below all else of the picture.
func glass() Node {
	return el("div", "glass", class("glass"), attr("data-glass"), attr("aria-hidden=true"))
}
