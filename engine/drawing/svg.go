package drawing

import (
	"math"
	"strconv"
)

// SVGOptions say how a drawing becomes SVG. The zero value is the day theme, a file for
// paper at a scale that suits the drawing, without grain, with text.
type SVGOptions struct {
	Theme      Theme
	Scale      float64   // units of the file for one millimetre of the drawing; zero: a file in millimetres, at full size for a drawing on paper, else at the 1 : n that makes a pixel a thin line
	Millimetre bool      // a unit of the file is a millimetre of paper, and a line of one pixel is 0.25 mm; else a pixel
	Grain      int       // so many of the largest faces are drawn with their grain; negative: all
	NoText     bool      // leaves text out, for a page that puts its own figures on top
	KeepLines  bool      // lines in pixels keep their width however the picture is enlarged (vector-effect, beyond SVG 1.1: for the page, not for files)
	Woods      []Species // how woods look
	Ground     Tone      // fills the box before anything else; empty: nothing
	Prefix     string    // stands before every id, so that two pictures can share a page
}

// linePixel is the width on paper of a line of one pixel: the thin line of technical
// drawings (ISO 128, as in look: thin 0.25, thick 0.5 mm).
const linePixel = 0.25

// fonts of words and of figures, with what most machines have behind them.
const (
	wordFonts   = "Commissioner, 'Segoe UI', 'Noto Sans', 'DejaVu Sans', sans-serif"
	figureFonts = "'Sofia Sans Semi Condensed', Figures, Commissioner, 'Segoe UI', 'DejaVu Sans Condensed', sans-serif"
)

// SVG returns a drawing as the text of an SVG 1.1 file.
func SVG(d Drawing, o SVGOptions) string {
	s := &textSink{}
	WriteSVG(d, o, s)
	return s.b.String()
}

// WriteSVG emits the elements of a drawing, the svg element outermost.
func WriteSVG(d Drawing, o SVGOptions, s Sink) {
	w := newWriter(d, o, s)
	w.root(d)
	w.definitions(d.Items)
	if o.Ground != "" {
		w.start("rect").num("width", w.width).num("height", w.height).str("fill", w.ink(o.Ground)).leaf("")
	}
	w.items(d.Items)
	s.Close()
}

// WriteItems emits only the items, for a page that keeps the svg element and rewrites
// one group. of is the whole drawing, which gives box and scale.
func WriteItems(items []Item, of Drawing, o SVGOptions, s Sink) {
	of.Items = items
	newWriter(of, o, s).items(items)
}

// A writer holds what all elements need.
type writer struct {
	o             SVGOptions
	sink          Sink
	box           Box
	width, height float64 // of the file, in its units
	colours       palette
	grained       map[int]bool // indices of items drawn with grain; nil: all or none
	lines         map[string]float64
	seen          map[string]int // how often a group was opened
	tag           string
	attrs         []Attr
	buf           []byte
}

func newWriter(d Drawing, o SVGOptions, s Sink) *writer {
	if !(o.Scale > 0) {
		o.Scale, o.Millimetre = d.scale(), true
	}
	w := &writer{o: o, sink: s, box: d.Box, colours: newPalette(o.Theme), seen: map[string]int{}}
	w.width, w.height = d.Box.Width()*o.Scale, d.Box.Height()*o.Scale
	w.grained = largest(d.Items, o.Grain)
	return w
}

// scale returns the scale of a file of the drawing: whole parts, 1 : n.
func (d *Drawing) scale() float64 {
	if d.Paper || !(d.Pixel > 0) {
		return 1
	}
	return 1 / max(math.Ceil(d.Pixel/linePixel), 1)
}

// pixel returns the width of a line of one pixel, in units of the file.
func (w *writer) pixel() float64 {
	if w.o.Millimetre {
		return linePixel
	}
	return 1
}

func (w *writer) root(d Drawing) {
	unit := ""
	if w.o.Millimetre {
		unit = "mm"
	}
	width, height := w.text(w.width), w.text(w.height)
	w.start("svg").str("xmlns", "http://www.w3.org/2000/svg").str("version", "1.1")
	w.str("width", width+unit).str("height", height+unit).str("viewBox", "0 0 "+width+" "+height)
	if d.Lang != "" {
		w.str("xml:lang", d.Lang)
	}
	w.str("font-family", wordFonts).open("")
	if d.Title != "" {
		w.start("title").open("title")
		w.sink.Text(d.Title)
		w.sink.Close()
	}
}

// items emits the items; neighbours of one layer and group share an element, which is
// what moves when a module is dragged.
func (w *writer) items(items []Item) {
	for i := 0; i < len(items); {
		j := i + 1
		for j < len(items) && items[j].Layer == items[i].Layer && items[j].Group == items[i].Group {
			j++
		}
		w.group(items, i, j)
		i = j
	}
}

func (w *writer) group(items []Item, from, to int) {
	first := &items[from]
	if first.Group != "" || first.Layer != "" {
		key := first.Group + "/" + string(first.Layer)
		w.seen[key]++
		if n := w.seen[key]; n > 1 {
			key += "/" + strconv.Itoa(n)
		}
		if w.kept(key, items, from, to) {
			return
		}
		w.start("g").id("group-" + key)
		if first.Layer != "" {
			w.str("class", string(first.Layer))
		}
		w.open(key)
		defer w.sink.Close()
	}
	for i := from; i < to; i++ {
		w.item(i, &items[i])
	}
}

// kept asks a sink that keeps groups for this one.
func (w *writer) kept(key string, items []Item, from, to int) bool {
	k, ok := w.sink.(Keeper)
	if !ok {
		return false
	}
	grain := make([]bool, to-from)
	for i := range grain {
		grain[i] = items[from+i].Kind == WoodKind && w.hasGrain(from+i)
	}
	return k.Keep(key, items[from:to], grain)
}

func (w *writer) item(i int, it *Item) {
	switch it.Kind {
	case PathKind:
		w.path(it)
	case WoodKind:
		w.wood(i, it)
	case TextKind:
		if !w.o.NoText {
			w.line(it)
		}
	case GlowKind:
		w.glow(it)
	}
}

func (w *writer) path(it *Item) {
	if it.Soft > 0 && w.o.Theme == Paper {
		return // a drawing on paper has no shadows
	}
	w.start("path").id(it.ID).str("d", w.steps(it.Path))
	if it.Tone == "" {
		w.str("fill", "none")
	} else {
		w.str("fill", w.ink(it.Tone)).str("fill-rule", "evenodd")
	}
	w.stroke(it.Line)
	w.fade(it.Fade)
	if it.Soft > 0 {
		w.str("filter", "url(#"+w.o.Prefix+softID(it.Soft)+")")
	}
	w.leaf(it.ID)
}

func (w *writer) fade(fade float64) {
	if fade > 0 {
		w.num("opacity", 1-fade)
	}
}

// stroke adds the attributes of an outline.
func (w *writer) stroke(l Line) {
	if l.Width <= 0 {
		return
	}
	k := w.pixel()
	if l.MM {
		k = w.o.Scale
	}
	w.str("stroke", w.ink(l.Tone)).num("stroke-width", l.Width*k)
	if l.Round {
		w.str("stroke-linecap", "round").str("stroke-linejoin", "round")
	} else {
		w.str("stroke-linejoin", "round")
	}
	if len(l.Dash) > 0 {
		w.buf = w.buf[:0]
		for i, d := range l.Dash {
			if i > 0 {
				w.buf = append(w.buf, ' ')
			}
			w.buf = appendNumber(w.buf, d*k, 3)
		}
		w.str("stroke-dasharray", string(w.buf))
	}
	if w.o.KeepLines && !l.MM {
		w.str("vector-effect", "non-scaling-stroke")
	}
}

// line writes a text. Its halo is a second text below it: paint-order is not in
// SVG 1.1.
func (w *writer) line(it *Item) {
	if it.Text.Halo != "" {
		w.letters(it, true)
	}
	w.letters(it, false)
}

func (w *writer) letters(it *Item, halo bool) {
	t := &it.Text
	x, y := w.x(t.At.X), w.y(t.At.Y)
	w.start("text")
	if !halo {
		w.id(it.ID)
	}
	w.num("x", x).num("y", y).num("font-size", t.Size*w.o.Scale)
	if t.Figure {
		w.str("font-family", figureFonts)
	}
	if t.Bold {
		w.str("font-weight", "600")
	}
	if t.Slant {
		w.str("font-style", "italic")
	}
	switch t.Anchor {
	case AnchorMiddle:
		w.str("text-anchor", "middle")
	case AnchorEnd:
		w.str("text-anchor", "end")
	}
	if t.Turn != 0 {
		w.str("transform", "rotate("+w.text(-t.Turn)+" "+w.text(x)+" "+w.text(y)+")")
	}
	key := it.ID
	if halo {
		w.str("fill", w.ink(t.Halo)).str("stroke", w.ink(t.Halo)).num("stroke-width", 0.3*t.Size*w.o.Scale).str("stroke-linejoin", "round")
		key += "/halo"
	} else {
		w.str("fill", w.ink(it.Tone))
	}
	w.fade(it.Fade)
	w.open(key)
	w.sink.Text(t.String)
	w.sink.Close()
}

// x and y go from the drawing to the file.
func (w *writer) x(x float64) float64 { return (x - w.box.MinX) * w.o.Scale }
func (w *writer) y(y float64) float64 { return (w.box.MaxY - y) * w.o.Scale }

// steps writes a path's data.
func (w *writer) steps(path []Step) string {
	b := w.buf[:0]
	for _, s := range path {
		b = append(b, s.To)
		switch s.To {
		case 'C':
			b = w.point(b, s.P1)
			b = append(b, ' ')
			b = w.point(b, s.P2)
			b = append(b, ' ')
			b = w.point(b, s.P)
		case 'M', 'L':
			b = w.point(b, s.P)
		}
	}
	w.buf = b
	return string(b)
}

func (w *writer) point(b []byte, p Point) []byte {
	b = appendNumber(b, w.x(p.X), 3)
	b = append(b, ' ')
	return appendNumber(b, w.y(p.Y), 3)
}

// ink returns the paint of a tone: a colour, or a reference to its gradient.
func (w *writer) ink(t Tone) string {
	if c := w.colours.of[t]; c[1] != "" {
		return "url(#" + w.o.Prefix + "tone-" + string(t) + ")"
	}
	return w.colours.colour(t)
}

// The next functions collect an element.

func (w *writer) start(tag string) *writer {
	w.tag, w.attrs = tag, w.attrs[:0]
	return w
}

func (w *writer) str(name, value string) *writer {
	w.attrs = append(w.attrs, Attr{name, value})
	return w
}

func (w *writer) num(name string, x float64) *writer { return w.str(name, w.text(x)) }

// id adds an id, in the letters that an XML name may have.
func (w *writer) id(id string) *writer {
	if id == "" {
		return w
	}
	return w.str("id", xmlName(w.o.Prefix+id))
}

func xmlName(id string) string {
	b := []byte(id)
	for i, c := range b {
		letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
		other := c >= '0' && c <= '9' || c == '.' || c == '-'
		if !letter && (!other || i == 0) {
			b[i] = '_'
		}
	}
	return string(b)
}

func (w *writer) open(key string) { w.sink.Open(w.tag, key, w.attrs) }

func (w *writer) leaf(key string) {
	w.open(key)
	w.sink.Close()
}

func (w *writer) text(x float64) string {
	var b [32]byte
	return string(appendNumber(b[:0], x, 3))
}

// angle returns the direction of v in degrees, counter-clockwise from x.
func angle(v Point) float64 { return math.Atan2(v.Y, v.X) * (180 / math.Pi) }

// turned returns p turned by deg degrees about the origin; quarter turns are exact.
func turned(p Point, deg float64) Point {
	switch deg {
	case 0:
		return p
	case 90:
		return Point{-p.Y, p.X}
	case -90, 270:
		return Point{p.Y, -p.X}
	}
	s, c := math.Sincos(deg * (math.Pi / 180))
	return Point{float64(p.X*c) - float64(p.Y*s), float64(p.X*s) + float64(p.Y*c)}
}
