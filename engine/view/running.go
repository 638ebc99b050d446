package view

import (
	"cmp"
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
)

// A row is a line of running figures: a line with a tick for every place, all measured
// from one datum, and thin lines over to what is measured.
type row struct {
	p      *painter
	origin point // where the datum crosses the row
	along  point // unit vector, to the right or up
	marks  []rowMark
}

// A rowMark is one place of a row. One without a figure is a tick alone.
type rowMark struct {
	at     float64 // along the row
	edge   float64 // how far the thin line goes across, towards the wall
	figure string
	id     string
}

func (p *painter) newRow(origin, along point) row { return row{p: p, origin: origin, along: along} }

// draw draws the row and returns the boxes of its figures. Figures that would touch move
// apart along the row and keep a leader.
func (r *row) draw() []drawing.Box {
	px := r.p.px
	across := point{X: r.along.Y, Y: r.along.X} // from the row to the wall
	low, high := r.marks[0].at, r.marks[0].at
	var ticks, thin []drawing.Step
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
	line := []drawing.Step{{To: 'M', P: plus(r.origin, r.along, low)}, {To: 'L', P: plus(r.origin, r.along, high)}}
	r.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 1}, append(line, ticks...))
	r.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 0.75}, thin).Fade = 0.6
	return r.figures()
}

func (r *row) figures() (boxes []drawing.Box) {
	px := r.p.px
	level := r.along.X != 0
	var at []float64
	gap := 1.15 * sizeText * px
	for _, m := range r.marks {
		if m.figure != "" {
			at = append(at, m.at)
			if level {
				gap = max(gap, drawing.TextWidth(m.figure, sizeText*px)+6*px)
			}
		}
	}
	places := apart(at, gap)
	i := 0
	for _, m := range r.marks {
		if m.figure == "" {
			continue
		}
		boxes = append(boxes, r.figure(m, places[i], level))
		i++
	}
	return boxes
}

func (r *row) figure(m rowMark, place float64, level bool) drawing.Box {
	px := r.p.px
	q := plus(r.origin, r.along, place)
	t := drawing.Text{Size: sizeText * px, String: m.figure, Figure: true}
	from, to := point{X: q.X - 10*px, Y: q.Y}, plus(r.origin, r.along, m.at)
	if level {
		t.At = point{X: q.X, Y: q.Y - (10+sizeText)*px}
		from = point{X: q.X, Y: q.Y - 12*px}
	} else {
		t.At, t.Anchor = point{X: q.X - 13*px, Y: q.Y - 0.36*sizeText*px}, drawing.AnchorEnd
	}
	if place != m.at {
		r.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 0.75}, drawing.Segment(from.X, from.Y, to.X, to.Y)).Fade = 0.4
	}
	r.p.add(drawing.Item{ID: m.id, Group: "dim", Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "chalk", Text: t})
	return t.Extent()
}

// running draws the level line and the plumb line, and every hole's distance from them as
// running figures, as they are read on the tape. Holes at one distance share a figure.
func (p *painter) running(r wall.Result) {
	p.datum(r)
	var xs, ys []rowMark
	for i := range r.Points {
		q := &r.Points[i]
		xs = append(xs, rowMark{at: q.X.MM(), edge: q.Y.MM(), figure: p.o.Style.Length(q.DX), id: "x/" + q.DX.Decimal()})
		ys = append(ys, rowMark{at: q.Y.MM(), edge: q.X.MM(), figure: p.signed(q.DY), id: "y/" + q.DY.Decimal()})
	}
	down, side := 26*p.px, 34*p.px
	for i := range xs {
		xs[i].edge, ys[i].edge = xs[i].edge+down, ys[i].edge+side
	}
	low := p.floor(0)
	for _, g := range [...]struct {
		marks []rowMark
		datum float64
		r     row
	}{
		{xs, r.Plumb.MM(), p.newRow(point{X: 0, Y: low - down}, point{X: 1, Y: 0})},
		{ys, r.Level.MM(), p.newRow(point{X: -side, Y: 0}, point{X: 0, Y: 1})},
	} {
		g.r.marks = append(g.r.marks, rowMark{at: g.datum})
		g.r.marks = append(g.r.marks, distinct(g.marks)...)
		slices.SortStableFunc(g.r.marks, func(a, b rowMark) int { return cmp.Compare(a.at, b.at) })
		g.r.draw()
	}
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
		out[k].edge = max(out[k].edge, m.edge)
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
	size := 13 * p.px
	say := func(id, key string, l unit.Length, at point, a drawing.Anchor) {
		text := words.Text(key, []words.Arg{words.Length("at", l)}, p.o.Style)
		p.add(drawing.Item{
			ID: id, Group: "dim", Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "chalk",
			Text: drawing.Text{At: at, Size: size, String: text, Anchor: a, Halo: "plaster"},
		})
	}
	say("level/words", "view.level", r.Level, point{X: width - 6*p.px, Y: y + 5*p.px}, drawing.AnchorEnd)
	say("plumb/words", "view.plumb", r.Plumb, point{X: x + 6*p.px, Y: height - 1.6*size}, drawing.AnchorStart)
}
