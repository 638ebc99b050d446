package view

import (
	"cmp"
	"math"
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
)

// A row is a line of running figures: a line with a tick for every place, all measured
// from one datum, and thin lines over to what is measured.
type row struct {
	p      *painter
	origin point   // where the datum crosses the row
	along  point   // unit vector, to the right or up
	low    float64 // between which figures stand, along the row
	high   float64
	marks  []rowMark
}

// A rowMark is one place of a row. One without a figure is a tick alone.
type rowMark struct {
	at     float64 // along the row
	edge   float64 // how far the thin line goes across, towards the wall
	figure string
	id     string
	rank   int // figures of a high one stay where a row has no room for all
}

// How far the rows stand from the wall, in pixels: below it and at its left; and how far
// their figures may stand beyond its ends.
const (
	rowDown, rowDownTight = 20.0, 14.0
	rowSide, rowSideTight = 34.0, 14.0
	rowBeyond             = 24.0
)

// rowBelow is the row under the floor, rowLeft the one at the left of the wall.
func (p *painter) rowBelow() row {
	return row{p: p, origin: point{X: 0, Y: p.lowest() - p.rowsOut(rowDown, rowDownTight)}, along: point{X: 1}, low: -rowBeyond * p.px, high: p.w.Width.MM() + rowBeyond*p.px/2}
}

func (p *painter) rowLeft() row {
	top := max(p.w.Height.MM(), p.ceiling(p.w.Width.MM()))
	return row{p: p, origin: point{X: -p.rowsOut(rowSide, rowSideTight), Y: 0}, along: point{Y: 1}, low: p.lowest() - rowBeyond*p.px, high: top + rowBeyond*p.px}
}

func (p *painter) lowest() float64 { return min(p.floor(0), p.floor(p.w.Width.MM())) }

// rowsOut is how far a row stands from the wall, by the room that there is.
func (p *painter) rowsOut(far, tight float64) float64 {
	if p.o.Tight {
		far = tight
	}
	return far * p.px
}

// draw draws the row and returns the boxes of its figures. Figures that would touch move
// apart along the row and keep a leader.
func (r *row) draw() []drawing.Box {
	px := r.p.px
	across := point{X: r.along.Y, Y: r.along.X} // from the row to the wall
	low, high := r.marks[0].at, r.marks[0].at
	ticks, thin := r.p.storage(2 + 4*len(r.marks))[:2], r.p.storage(2 * len(r.marks))[:0]
	for _, m := range r.marks {
		low, high = min(low, m.at), max(high, m.at)
		q := plus(r.origin, r.along, m.at)
		k := sizeTick * px
		bar, slash := scaled(across, 2*k), point{X: k, Y: k}
		ticks = append(ticks, drawing.Step{To: 'M', P: plus(q, bar, -1)}, drawing.Step{To: 'L', P: plus(q, bar, 1)},
			drawing.Step{To: 'M', P: plus(q, slash, -1)}, drawing.Step{To: 'L', P: plus(q, slash, 1)})
		if m.edge != 0 {
			thin = append(thin, drawing.Step{To: 'M', P: q}, drawing.Step{To: 'L', P: plus(q, across, m.edge)})
		}
	}
	ticks[0] = drawing.Step{To: 'M', P: plus(r.origin, r.along, low)}
	ticks[1] = drawing.Step{To: 'L', P: plus(r.origin, r.along, high)}
	r.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 1}, ticks)
	r.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 0.75}, thin).Fade = 0.6
	return r.figures()
}

// figures writes the figures. Where there is no room for all, those of the lowest rank are
// left out, and then what stands too close to one that was written.
func (r *row) figures() (boxes []drawing.Box) {
	px := r.p.px
	level := r.along.X != 0
	gap := 1.15 * sizeText * px
	var marks []rowMark
	for _, m := range r.marks {
		if m.figure == "" {
			continue
		}
		marks = append(marks, m)
		if level {
			gap = max(gap, drawing.TextWidth(m.figure, sizeText*px)+6*px)
		}
	}
	marks = fitting(marks, gap, r.high-r.low)
	at := make([]float64, len(marks))
	for i, m := range marks {
		at[i] = m.at
	}
	for i, place := range clamped(apart(at, gap), gap, r.low, r.high) {
		boxes = append(boxes, r.figure(marks[i], place, level))
	}
	return boxes
}

// fitting returns the marks whose figures have room in a length, in their order.
func fitting(marks []rowMark, gap, length float64) []rowMark {
	fits := func(all []rowMark) bool { return float64(len(all)-1)*gap <= length }
	if fits(marks) {
		return marks
	}
	above := slices.DeleteFunc(slices.Clone(marks), func(m rowMark) bool { return m.rank == 0 })
	if len(above) > 0 && fits(above) {
		return above
	}
	best := slices.Clone(marks)
	rank.By(best, func(a, b rowMark) int { return cmp.Compare(b.rank, a.rank) })
	var out []rowMark
	for _, m := range best {
		if !slices.ContainsFunc(out, func(o rowMark) bool { return math.Abs(o.at-m.at) < gap }) {
			out = append(out, m)
		}
	}
	rank.By(out, func(a, b rowMark) int { return cmp.Compare(a.at, b.at) })
	return out
}

// clamped moves places that are a gap apart, and have room, between two ends.
func clamped(places []float64, gap, low, high float64) []float64 {
	for i := range places {
		places[i] = max(places[i], low+float64(i)*gap)
	}
	for i := len(places) - 1; i >= 0; i-- {
		places[i] = min(places[i], high-float64(len(places)-1-i)*gap)
	}
	return places
}

func (r *row) figure(m rowMark, place float64, level bool) drawing.Box {
	px := r.p.px
	q := plus(r.origin, r.along, place)
	t := drawing.Text{Size: sizeText * px, String: m.figure, Figure: true}
	from, to := point{X: q.X - 7*px, Y: q.Y}, plus(r.origin, r.along, m.at)
	if level {
		t.At = point{X: q.X, Y: q.Y - (6+sizeText)*px}
		from = point{X: q.X, Y: q.Y - 9*px}
	} else {
		t.At, t.Anchor = point{X: q.X - 10*px, Y: q.Y - 0.36*sizeText*px}, drawing.AnchorEnd
	}
	if place != m.at {
		r.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 0.75}, drawing.Segment(from.X, from.Y, to.X, to.Y)).Fade = 0.4
	}
	r.p.add(drawing.Item{ID: m.id, Group: "dim", Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "chalk", Text: t})
	return t.Extent()
}

// running draws every hole's distance from the level line and the plumb line as running
// figures, as they are read on the tape. Holes at one distance share a figure.
func (p *painter) running(r wall.Result) {
	if len(r.Points) == 0 {
		return
	}
	across, up := p.rowBelow(), p.rowLeft()
	across.marks, up.marks = []rowMark{{at: r.Plumb.MM()}}, []rowMark{{at: r.Level.MM()}}
	var xs, ys []rowMark
	ranks := p.ranks(r.Points)
	for i := range r.Points {
		q := &r.Points[i]
		xs = append(xs, rowMark{q.X.MM(), q.Y.MM() - across.origin.Y, p.o.Style.Length(q.DX), "x/" + q.DX.Decimal(), ranks[i]})
		ys = append(ys, rowMark{q.Y.MM(), q.X.MM() - up.origin.X, p.signed(q.DY), "y/" + q.DY.Decimal(), ranks[i]})
	}
	across.marks, up.marks = append(across.marks, distinct(xs)...), append(up.marks, distinct(ys)...)
	for _, w := range [...]*row{&across, &up} {
		rank.By(w.marks, func(a, b rowMark) int { return cmp.Compare(a.at, b.at) })
		w.draw()
	}
}

// ranks says which points' figures stay in a crowded row: that of the point that is looked
// at, then one of every pin.
func (p *painter) ranks(points []wall.Point) (out []int) {
	for _, n := range p.pins(points) {
		for i := range n {
			switch {
			case n[i].Number == p.o.Point:
				out = append(out, 2)
			case i == len(n)/2:
				out = append(out, 1)
			default:
				out = append(out, 0)
			}
		}
	}
	return out
}

// signed is a height from the level line, with its sign.
func (p *painter) signed(l unit.Length) string {
	switch s := p.o.Style.Length(l.Abs()); {
	case l > 0:
		return "+" + s
	case l < 0:
		return "−" + s
	default:
		return s
	}
}

// distinct keeps one mark a figure, with the longest thin line.
func distinct(marks []rowMark) (out []rowMark) {
	for _, m := range marks {
		k := slices.IndexFunc(out, func(o rowMark) bool { return o.figure == m.figure })
		if k < 0 {
			out = append(out, m)
			continue
		}
		out[k].edge, out[k].rank = max(out[k].edge, m.edge), max(out[k].rank, m.rank)
	}
	return out
}

// datum draws the level line and the plumb line, each with its own place in words.
func (p *painter) datum(r wall.Result) {
	if len(r.Points) == 0 {
		return
	}
	x, y, width, height := r.Plumb.MM(), r.Level.MM(), p.w.Width.MM(), p.ceiling(r.Plumb.MM())
	line := drawing.Line{Tone: "chalk", Width: 1.5, Dash: []float64{14, 4, 2, 4}}
	p.path(drawing.LayerSizes, "dim", "", line, drawing.Segment(0, y, width, y)).ID = "level"
	p.path(drawing.LayerSizes, "dim", "", line, drawing.Segment(x, p.floor(x), x, height)).ID = "plumb"
	p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 1.8}, drawing.Circle(x, y, 8*p.px))
	p.words("plumb", r.Plumb, p.plumbPlaces(x, height), nil)
	var boards []drawing.Box
	for i := range r.Placed {
		b := &r.Placed[i].Box
		boards = append(boards, drawing.Box{MinX: b.MinX.MM(), MinY: b.MinY.MM(), MaxX: b.MaxX.MM(), MaxY: b.MaxY.MM()})
	}
	p.words("level", r.Level, p.levelPlaces(x, y), boards)
}

// wordSize is the size of the words at the two lines, in pixels.
const wordSize = 15.0

// A wordPlace is where words may begin or end.
type wordPlace struct {
	at     point
	anchor drawing.Anchor
}

// plumbPlaces are over the ceiling, beside the plumb line.
func (p *painter) plumbPlaces(x, ceiling float64) []wordPlace {
	y := ceiling + 7*p.px
	right := wordPlace{point{X: x + 6*p.px, Y: y}, drawing.AnchorStart}
	return []wordPlace{right, {point{X: x - 6*p.px, Y: y}, drawing.AnchorEnd}, right}
}

// levelPlaces are at the ends of the level line, over and under it, and beside the wall,
// where one on which the words have no room leaves some.
func (p *painter) levelPlaces(plumb, y float64) (out []wordPlace) {
	over, under := y+5*p.px, y-wordSize*p.px
	for _, q := range [...]wordPlace{
		{point{X: p.w.Width.MM() - 6*p.px}, drawing.AnchorEnd}, {point{X: plumb + 12*p.px}, drawing.AnchorStart}, {point{X: 6 * p.px}, drawing.AnchorStart},
	} {
		out = append(out, wordPlace{point{X: q.at.X, Y: over}, q.anchor}, wordPlace{point{X: q.at.X, Y: under}, q.anchor})
	}
	return append(out, wordPlace{point{X: p.w.Width.MM() + 10*p.px, Y: y - 0.36*wordSize*p.px}, drawing.AnchorStart})
}

// words says where a line is, at the first place that is on the wall's width and free of
// boards and other words, else before boards, else at the last.
func (p *painter) words(of string, l unit.Length, places []wordPlace, boards []drawing.Box) {
	key := "view." + of
	if p.o.Tight {
		key += "-short"
	}
	t := drawing.Text{Size: wordSize * p.px, String: words.Text(key, []words.Arg{words.Length("at", l)}, p.o.Style), Halo: "plaster"}
	put := func(w wordPlace) drawing.Box { t.At, t.Anchor = w.at, w.anchor; return t.Extent() }
	onWall := func(w wordPlace) bool {
		b := put(w)
		return b.MinX >= 0 && b.MaxX <= p.w.Width.MM() && !anyMeets(p.said, b)
	}
	free := func(w wordPlace) bool { return onWall(w) && !anyMeets(boards, put(w)) }
	if slices.IndexFunc(places, free) < 0 && slices.IndexFunc(places, onWall) < 0 {
		put(places[len(places)-1])
	}
	p.said = append(p.said, t.Extent().Grown(5*p.px))
	p.add(drawing.Item{ID: of + "/words", Group: "dim", Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "chalk", Text: t})
}
