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
	return rgb{0xff, 0xc8, 0x82}.mixed(rgb{0xff, 0xfa, 0xf0}, k)
}

func lampID(kelvin float64) string { return "lamp-" + string(appendNumber(nil, kelvin, 0)) }

// fades is how light dies away from the line of a strip: share of the reach, and
// strength there.
func fades() [6][2]float64 {
	return [6][2]float64{{0, 0.78}, {0.12, 0.58}, {0.3, 0.30}, {0.55, 0.12}, {0.8, 0.03}, {1, 0}}
}

// lightGradients defines the wash of one colour: straight for the middle of a strip,
// round for its ends. Both are in shares of the shape that they fill.
func (w *writer) lightGradients(kelvin float64) {
	colour := lamp(kelvin).String()
	stops := func() {
		for _, s := range fades() {
			w.start("stop").num("offset", s[0]).str("stop-color", colour).num("stop-opacity", s[1]).leaf("")
		}
		w.sink.Close()
	}
	id := lampID(kelvin)
	w.start("linearGradient").str("id", w.o.Prefix+id).str("x1", "0").str("y1", "0").str("x2", "0").str("y2", "1").open(id)
	stops()
	w.start("radialGradient").str("id", w.o.Prefix+id+"-a").str("cx", "1").str("cy", "0").str("r", "1").open(id + "-a")
	stops()
	w.start("radialGradient").str("id", w.o.Prefix+id+"-b").str("cx", "0").str("cy", "0").str("r", "1").open(id + "-b")
	stops()
}

// glow writes a wash of light: a rectangle along the strip and a quarter of an ellipse
// at each end, so that no edge shows. It is written as light that falls down and
// turned as it stands.
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
	left, right := from, to
	along := turned(Point{1, 0}, turn)
	if float64((to.X-from.X)*along.X)+float64((to.Y-from.Y)*along.Y) < 0 {
		left, right = to, from
	}
	_ = right
	w.start("g").id(it.ID).str("transform", "translate("+w.text(left.X)+" "+w.text(left.Y)+") rotate("+w.text(turn)+")")
	w.fade(it.Fade)
	w.open(it.ID)
	id := "url(#" + w.o.Prefix + lampID(g.kelvin())
	side := 0.55 * reach
	w.start("rect").num("width", length).num("height", reach).str("fill", id+")").leaf("")
	w.start("path").str("d", w.quarter(0, -side, reach)).str("fill", id+"-a)").leaf("")
	w.start("path").str("d", w.quarter(length, side, reach)).str("fill", id+"-b)").leaf("")
	w.sink.Close()
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
