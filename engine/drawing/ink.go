package drawing

// An Ink is a colour, sRGB, its parts from 0 to 1: what a writer needs that paints by
// numbers and not by names.
type Ink [3]float64

func (c rgb) ink() Ink { return Ink{c[0] / 255, c[1] / 255, c[2] / 255} }

// A Paint is what a tone fills with: one ink, or two, from the first at the upper right
// of the shape to the second at its lower left.
type Paint struct{ From, To Ink }

// Paints returns the table of tones in a theme.
func Paints(theme Theme) map[Tone]Paint {
	out := map[Tone]Paint{}
	for name, c := range newPalette(theme).of {
		p := Paint{From: parseColour(c[0]).ink()}
		p.To = p.From
		if c[1] != "" {
			p.To = parseColour(c[1]).ink()
		}
		out[name] = p
	}
	return out
}

// Along returns the colour of a paint at a place of the box that it fills, as shares of
// the box from its lower left. It is the gradient of the SVG writer: from (1, 1) towards
// (0, ¾), in the box's own shares.
func (p Paint) Along(x, y float64) Ink {
	const across, down = 1, 0.25
	t := ((1-x)*across + (1-y)*down) / (across*across + down*down)
	t = min(max(t, 0), 1)
	var c Ink
	for i := range c {
		c[i] = p.From[i] + float64((p.To[i]-p.From[i])*t)
	}
	return c
}

// WoodInks returns the fill and the grain line of a face of wood.
func WoodInks(look Look, w *Wood, theme Theme) (fill, line Ink) {
	f, l := woodInk(look, *w, theme)
	return f.ink(), l.ink()
}

// LampInk returns the colour of a lamp as [Glow] means it; 0 is its usual one.
func LampInk(kelvin float64) Ink { return lamp(Glow{Kelvin: kelvin}.kelvin()).ink() }

// PlainWood is how a wood looks that a table does not have.
func PlainWood() Look { return plainWood() }
