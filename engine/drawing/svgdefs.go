package drawing

import (
	"math"
	"slices"
)

// definitions emits the gradients and blurs that the items use.
func (w *writer) definitions(items []Item) {
	tones, softs, kelvins := w.needs(items)
	if len(tones)+len(softs)+len(kelvins) == 0 {
		return
	}
	w.start("defs").open("defs")
	for _, t := range tones {
		w.gradient(t)
	}
	for _, s := range softs {
		w.blur(s)
	}
	for _, k := range kelvins {
		w.lightGradients(k)
	}
	w.sink.Close()
}

// needs lists what must be defined, each once, in order of first use.
func (w *writer) needs(items []Item) (tones []Tone, softs, kelvins []float64) {
	use := func(t Tone) {
		if w.colours.of[t][1] != "" && !slices.Contains(tones, t) {
			tones = append(tones, t)
		}
	}
	use(w.o.Ground)
	for i := range items {
		it := &items[i]
		use(it.Tone)
		use(it.Line.Tone)
		use(it.Text.Halo)
		if it.Kind == PathKind && it.Soft > 0 && !slices.Contains(softs, it.Soft) {
			softs = append(softs, it.Soft)
		}
		if k := it.Glow.kelvin(); it.Kind == GlowKind && !slices.Contains(kelvins, k) {
			kelvins = append(kelvins, k)
		}
	}
	return tones, softs, kelvins
}

// gradient defines a tone of two colours, from the upper right to the lower left.
func (w *writer) gradient(t Tone) {
	c := w.colours.of[t]
	w.start("linearGradient").str("id", w.o.Prefix+"tone-"+string(t))
	w.str("x1", "1").str("y1", "0").str("x2", "0").str("y2", ".25").open("tone-" + string(t))
	w.start("stop").str("offset", "0").str("stop-color", c[0]).leaf("")
	w.start("stop").str("offset", "1").str("stop-color", c[1]).leaf("")
	w.sink.Close()
}

func softID(s float64) string {
	return "soft-" + string(appendNumber(nil, s, 3))
}

// blur defines a soft edge.
func (w *writer) blur(s float64) {
	w.start("filter").str("id", w.o.Prefix+softID(s))
	w.str("x", "-30%").str("y", "-60%").str("width", "160%").str("height", "220%").open(softID(s))
	w.start("feGaussianBlur").num("stdDeviation", s*w.o.Scale).leaf("")
	w.sink.Close()
}

func (g Glow) kelvin() float64 {
	if g.Kelvin > 0 {
		return g.Kelvin
	}
	return 2700
}

// lamp returns about the colour of a lamp as the eye sees it in a lit room: amber at
// 2 200 K, cream at 2 700 K, white at 5 000 K. Our own choice, not a black body, whose
// colour would look orange on a screen.
func lamp(kelvin float64) rgb {
	k := min(max((kelvin-2200)/2800, 0), 1)
	return rgb{0xff, 0xc4, 0x7a}.mixed(rgb{0xff, 0xfa, 0xf0}, k)
}

func lampID(kelvin float64) string { return "lamp-" + string(appendNumber(nil, kelvin, 0)) }

// A fade is how light dies away: share of the reach, and strength there.
type fade [6][2]float64

// nearFade is the light close under a strip, farFade what it throws into the room.
func nearFade() fade {
	return fade{{0, 0.62}, {0.1, 0.44}, {0.28, 0.22}, {0.55, 0.07}, {0.8, 0.015}, {1, 0}}
}

func farFade() fade {
	return fade{{0, 0.72}, {0.16, 0.52}, {0.36, 0.31}, {0.6, 0.13}, {0.82, 0.035}, {1, 0}}
}

// lightGradients defines the wash of one colour: straight for the middle of a strip,
// round for its ends, and wide for the room. They are in shares of the shape that they
// fill.
func (w *writer) lightGradients(kelvin float64) {
	colour, id := lamp(kelvin).String(), lampID(kelvin)
	stops := func(f fade) {
		for _, s := range f {
			w.start("stop").num("offset", s[0]).str("stop-color", colour).num("stop-opacity", s[1]).leaf("")
		}
		w.sink.Close()
	}
	w.start("linearGradient").str("id", w.o.Prefix+id).str("x1", "0").str("y1", "0").str("x2", "0").str("y2", "1").open(id)
	stops(nearFade())
	for _, r := range [...]struct {
		name, cx string
		f        fade
	}{{"-a", "1", nearFade()}, {"-b", "0", nearFade()}, {"-c", "1", farFade()}, {"-d", "0", farFade()}} {
		w.start("radialGradient").str("id", w.o.Prefix+id+r.name).str("cx", r.cx).str("cy", "0").str("r", "1").open(id + r.name)
		stops(r.f)
	}
}

// glow writes a wash of light: close to the strip a rectangle along it with a quarter of
// an ellipse at each end, and over all of it half an ellipse that goes out into the
// room. It is written as light that falls down and turned as it stands.
func (w *writer) glow(it *Item) {
	g := it.Glow
	toward := g.Toward
	if toward == (Point{}) {
		toward = Point{0, -1}
	}
	from, to := Point{w.x(g.From.X), w.y(g.From.Y)}, Point{w.x(g.To.X), w.y(g.To.Y)}
	length := math.Hypot(to.X-from.X, to.Y-from.Y)
	reach := g.Reach * w.o.Scale
	if !(length > 0) || !(reach > 0) {
		return
	}
	// with the light falling down the screen the strip runs to the left or to the right
	turn := -angle(toward) - 90
	left, before, after := from, g.Before*w.o.Scale, g.After*w.o.Scale
	along := turned(Point{1, 0}, turn)
	if float64((to.X-from.X)*along.X)+float64((to.Y-from.Y)*along.Y) < 0 {
		left, before, after = to, after, before
	}
	w.start("g").id(it.ID).str("transform", "translate("+w.text(left.X)+" "+w.text(left.Y)+") rotate("+w.text(turn)+")")
	// whole pixels, or a hair of the wall shows between the parts
	w.str("shape-rendering", "crispEdges")
	w.fade(it.Fade)
	w.open(it.ID)
	if cut := g.Cut * w.o.Scale; cut > 0 && cut < reach {
		w.clip(it.ID, -before, length+after, cut)
		defer w.sink.Close()
	}
	w.wash(length, reach, before, after, "url(#"+w.o.Prefix+lampID(g.kelvin()))
	w.sink.Close()
}

// clip opens a group that shows no more than a rectangle under the strip.
func (w *writer) clip(id string, left, right, down float64) {
	name := xmlName(w.o.Prefix + id + "/clip")
	w.start("clipPath").str("id", name).open("clip")
	w.start("rect").num("x", left).num("width", right-left).num("height", down).leaf("")
	w.sink.Close()
	w.start("g").str("clip-path", "url(#"+name+")").open("clipped")
}

// closeShare is how much of the reach the light close to the strip has.
const closeShare = 0.42

func (w *writer) wash(length, reach, before, after float64, id string) {
	half, short := length/2, closeShare*reach
	part := func(x, side, reach float64, paint string) {
		if math.Abs(side) > 0 {
			w.start("path").str("d", w.quarter(x, side, reach)).str("fill", id+paint).leaf("")
		}
	}
	part(half, -half-before, reach, "-c)")
	part(half, half+after, reach, "-d)")
	w.start("rect").num("width", length).num("height", short).str("fill", id+")").leaf("")
	part(0, -min(before, 0.3*short), short, "-a)")
	part(length, min(after, 0.3*short), short, "-b)")
}

// quarter is a quarter of an ellipse below the point (x, 0) of the screen, going out
// to x + side.
func (w *writer) quarter(x, side, reach float64) string {
	const k = arcControl
	b := append(w.buf[:0], 'M')
	numbers := func(v ...float64) {
		for i, n := range v {
			if i > 0 {
				b = append(b, ' ')
			}
			b = appendNumber(b, n, 3)
		}
	}
	numbers(x, 0)
	b = append(b, 'H')
	numbers(x + side)
	b = append(b, 'C')
	numbers(x+side, reach*k, x+side*k, reach, x, reach)
	b = append(b, 'Z')
	w.buf = b
	return string(b)
}
