package panel

import (
	"strconv"

	"ledgewright/engine/plan"
	"ledgewright/engine/wood"
	"ledgewright/wasm/app"
)

// Ledge and stick are of the job's own wood: that of most of its modules. It is darker in
// the evening, and paled or darkened as little as it takes for the words on the stick to
// be read on its grain, in whichever of the two inks that takes less.

// A timber is how a wood looks on the page, as the style sheet's tokens of these names.
type timber struct{ wood, wood2, line, ink rgb }

// A tinted is the timber of a job, and what it was worked out of.
type tinted struct {
	of      *plan.Module
	n       int
	evening bool
	props   parts
}

// once returns the custom properties of the job's wood; none on the first page, which has the
// style sheet's.
func (t *tinted) once(s *app.State) parts {
	of, n, dark := first(s.Plan.Modules), len(s.Plan.Modules), evening(s)
	if t.of != of || t.n != n || t.evening != dark {
		*t = tinted{of, n, dark, nil}
		if w, ok := wood.Find(mostUsed(s.Plan.Modules)); ok {
			k := timberOf(w.Look, dark)
			t.props = parts{set("--wood", k.wood.hex()), set("--wood-2", k.wood2.hex()), set("--wood-line", k.line.hex()), set("--on-wood", k.ink.hex())}
		}
	}
	return t.props
}

// mostUsed is the wood of most modules, of as many the first.
func mostUsed(modules []plan.Module) (id string) {
	most := 0
	for i := range modules {
		n := 0
		for k := range modules {
			if modules[k].Wood == modules[i].Wood {
				n++
			}
		}
		if n > most {
			most, id = n, modules[i].Wood
		}
	}
	return id
}

// grainShare is the opacity of the grain in the style sheet, legible the contrast that
// words need: 4.5 in WCAG 2.2, 1.4.3, and a little for the approximation of linear.
const (
	grainShare = 0.42
	legible    = 4.7
)

// timberOf is how a wood looks on the page.
func timberOf(l wood.Look, dark bool) timber {
	k := timber{wood: parsed(l.Colour), wood2: parsed(l.Edge), line: parsed(l.Line)}
	black, white := rgb{}, rgb{255, 255, 255}
	if dark {
		k = timber{wood: k.wood.mixed(black, 0.43), wood2: k.wood2.mixed(black, 0.49), line: k.line.mixed(black, 0.63)}
	}
	onPale, onDark := rgb{0x2a, 0x21, 0x17}, rgb{0xfb, 0xf3, 0xe4}
	for share := 0.0; share < 1; share += 0.05 {
		for _, c := range [...]struct{ ink, to rgb }{{onPale, white}, {onDark, black}} {
			out := timber{k.wood.mixed(c.to, share), k.wood2.mixed(c.to, share), k.line.mixed(c.to, share), c.ink}
			if out.legible() {
				return out
			}
		}
	}
	return k
}

// legible reports whether words in the ink can be read on the wood and on its grain.
func (k timber) legible() bool {
	for _, under := range [...]rgb{k.wood, k.wood2} {
		if under.contrast(k.ink) < legible || under.mixed(k.line, grainShare).contrast(k.ink) < legible {
			return false
		}
	}
	return true
}

// An rgb is a colour of the screen, 0 to 255.
type rgb [3]float64

// parsed reads "#rrggbb", as the looks have it.
func parsed(hex string) (c rgb) {
	n, _ := strconv.ParseUint(hex[1:], 16, 32) // the looks are checked where they are
	return rgb{float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)}
}

func (c rgb) hex() string {
	n := uint64(1)
	for _, v := range c {
		n = n<<8 | uint64(v+0.5)
	}
	return "#" + strconv.FormatUint(n, 16)[1:]
}

// mixed goes a share of the way to another colour.
func (c rgb) mixed(to rgb, share float64) rgb {
	for i := range c {
		c[i] += share * (to[i] - c[i])
	}
	return c
}

// contrast is the contrast ratio of WCAG 2.2.
func (c rgb) contrast(o rgb) float64 {
	a, b := c.luminance(), o.luminance()
	return (max(a, b) + 0.05) / (min(a, b) + 0.05)
}

func (c rgb) luminance() float64 {
	return 0.2126*linear(c[0]) + 0.7152*linear(c[1]) + 0.0722*linear(c[2])
}

// linear is a cubic through the curve of sRGB, within 0.002 of it.
func linear(v float64) float64 {
	v /= 255
	return v * (v*(v*0.305306011+0.682171111) + 0.012522878)
}
