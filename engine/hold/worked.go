package hold

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine/strength"
)

// How a verdict was worked out is printed line by line, each
//
//	sum = result unit
//
// where the sum is of figures with + − x / ( ) and √( ), every figure is printed as it is
// used, and every result is used on as it is printed: whoever follows with a pocket
// calculator comes to the same digits. What a frame of more unknowns than statics has
// solved for is one figure without a sum.

// A Line is one line of it.
type Line struct {
	Key    string // of the words "worked.<key>"
	Where  string // id of the bracket or board; empty: the module
	Kind   Kind   // of the check whose use this line is; empty: a step on the way
	Corner int
	Sum    string
	Result string
	Unit   string
}

// Text returns the line as it is printed, without its words.
func (l *Line) Text() string { return strings.TrimRight(l.Sum+" = "+l.Result+" "+l.Unit, " ") }

// A figure is a number as printed, or a sum of such.
type figure struct {
	text  string
	value float64
}

// digits is to how many digits figures are printed.
const digits = 4

// printed returns a number as it is printed.
func printed(v float64) figure {
	decimals := digits
	for x := math.Abs(v); x >= 1 && decimals > 0; x /= 10 {
		decimals--
	}
	for x := math.Abs(v); x > 0 && x < 0.1 && decimals < 12; x *= 10 {
		decimals++
	}
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	value, _ := strconv.ParseFloat(text, 64)
	return figure{strings.Replace(text, "-", "−", 1), value}
}

func (a figure) x(b figure) figure    { return figure{a.text + " x " + b.text, a.value * b.value} }
func (a figure) over(b figure) figure { return figure{a.text + " / " + b.text, a.value / b.value} }
func (a figure) plus(b figure) figure { return figure{a.text + " + " + b.text, a.value + b.value} }
func (a figure) less(b figure) figure { return figure{a.text + " − " + b.text, a.value - b.value} }
func (a figure) whole() figure        { return figure{"(" + a.text + ")", a.value} }
func (a figure) root() figure         { return figure{"√(" + a.text + ")", math.Sqrt(a.value)} }
func hypotenuse(a, b figure) figure   { return a.x(a).plus(b.x(b)).root() }
func (a figure) square() figure       { return a.x(a) }
func num(v float64) figure            { return printed(v) }
func (a figure) small(b figure) bool  { return math.Abs(a.value) < negligible*math.Abs(b.value) }

// negligible is the part of a force at which another beside it, square to it, is left out.
const negligible = 0.005

// A working is lines being written.
type working struct {
	r     *Response
	site  *Site
	lasts strength.DurationNDS
	where string
	lines []Line
}

// step writes a line and returns its result as printed.
func (w *working) step(key, unit string, sum figure) figure {
	out := printed(sum.value)
	w.lines = append(w.lines, Line{Key: key, Where: w.where, Sum: sum.text, Result: out.text, Unit: unit})
	return out
}

// use writes the line that says how much is used.
func (w *working) use(kind Kind, corner int, sum figure) {
	w.step("use-"+string(kind), "", sum)
	l := &w.lines[len(w.lines)-1]
	l.Kind, l.Corner = kind, corner
}

// Worked returns how the uses follow from kg on a shelf, on the given stretches of it, or
// spread over all of it where there are none given, with the other shelves empty. Where a
// rod may carry nothing it is the case that comes out worst.
func (r *Response) Worked(site *Site, shelf int, kg float64, on []Span) ([]Line, error) {
	if !(kg >= 0 && kg <= mostLoad) {
		return nil, &LoadError{shelf}
	}
	loads := []load{{shelf, r.Shelves[shelf].way(on), kg}}
	worst, most := r, -1.0
	for _, x := range append([]*Response{r}, r.lacking...) {
		j, err := x.judgedAsIs(site, loads)
		if err != nil {
			return nil, err
		}
		if part := j.worst().Part; part > most {
			worst, most = x, part
		}
	}
	return worst.worked(site, loads[0])
}

// way returns the place of the stretches among the ways that things stand on a shelf.
func (s *ShelfResponse) way(on []Span) int {
	return max(slices.IndexFunc(s.ways, func(w stand) bool { return slices.Equal(w.on, on) }), 0)
}

func (r *Response) worked(site *Site, l load) ([]Line, error) {
	j, err := r.judgedAsIs(site, []load{l})
	if err != nil {
		return nil, err
	}
	stand := &r.Shelves[l.shelf].ways[l.stand]
	e, err := r.Together(Amount{l.kg, stand.effect})
	if err != nil {
		return nil, err
	}
	w := &working{r: r, site: site, lasts: strength.Permanent}
	things := w.step("things", "N", num(l.kg).x(num(Gravity)))
	wood := w.step("wood", "N", num(r.model.mass()).x(num(Gravity)))
	for i := range r.model.rods {
		w.rod(j, &e, i, stand, l.shelf, things, wood)
	}
	w.boards(&e)
	w.corners(&e)
	w.strips(&e)
	return w.lines, nil
}

// mass returns what the wood weighs, kg.
func (f *model) mass() (kg float64) {
	for i := range f.boards {
		kg += float64(f.boards[i].wood.DensityAt(f.moisture)) * float64(f.boards[i].board.Volume())
	}
	return kg
}
