package view

import (
	"math"

	"ledgewright/engine/drawing"
)

// The style of dimensions on paper, in millimetres at final size: extension lines start
// 1.5 off what they measure and run 3 past the dimension line; the first dimension line
// stands at least 10 out, the next 6 more; arrowheads 3 long, 3 : 1; thin lines 0.25,
// thick 0.5; figures at least 2.5 high. Common teaching of technical drawing (ISO 128 and
// ISO 129-1 for what they rule).
const (
	extGap    = 1.5
	extPast   = 3.0
	firstOut  = 10.0
	nextOut   = 6.5
	arrow     = 3.0
	thin      = 0.25
	thick     = 0.5
	figureEm  = 3.7 // digits are 0.7 em high: 2.6 mm
	wordEm    = 3.4
	titleEm   = 5.0
	figureGap = 1.0 // from the line
)

// A sheetOf collects the items of a drawing on paper.
type sheetOf struct {
	o     Options
	items []drawing.Item
	group string
	wrote []drawing.Box // of figures and words, for the tests and for keeping apart
}

func (s *sheetOf) add(it drawing.Item) *drawing.Item {
	it.Group = s.group
	s.items = append(s.items, it)
	return &s.items[len(s.items)-1]
}

func inkLine(width float64, dash ...float64) drawing.Line {
	return drawing.Line{Tone: "ink", Width: width, MM: true, Dash: dash}
}

func chalkLine() drawing.Line { return drawing.Line{Tone: "chalk", Width: thin, MM: true} }

// shape draws a path of the object.
func (s *sheetOf) shape(tone drawing.Tone, line drawing.Line, path []drawing.Step) *drawing.Item {
	return s.add(drawing.Item{Layer: drawing.LayerBoards, Kind: drawing.PathKind, Tone: tone, Line: line, Path: path})
}

// dims draws thin lines of a dimension.
func (s *sheetOf) dims(path []drawing.Step) {
	s.add(drawing.Item{Layer: drawing.LayerSizes, Kind: drawing.PathKind, Line: chalkLine(), Path: path})
}

// head draws an arrowhead with its point at p, pointing along d.
func (s *sheetOf) head(p, d point) {
	n := point{X: -d.Y, Y: d.X}
	back := plus(p, d, -arrow)
	s.add(drawing.Item{
		Layer: drawing.LayerSizes, Kind: drawing.PathKind, Tone: "chalk",
		Path: drawing.Polygon(p, plus(back, n, arrow/6), plus(back, n, -arrow/6)),
	})
}

// text writes a line of text; figures are in the ink of dimensions. Where it would touch
// what was written before, it moves to the nearest free place and keeps a leader.
func (s *sheetOf) text(id string, tone drawing.Tone, t drawing.Text) {
	from := t.At
	box := t.Extent()
	if d := s.room(box); d != (point{}) {
		t.At = plus(t.At, d, 1)
		box = t.Extent()
		if length(d) > 0.8*t.Size {
			s.dims([]drawing.Step{{To: 'M', P: from}, {To: 'L', P: towardsBox(from, box)}})
		}
	}
	s.add(drawing.Item{ID: id, Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: tone, Text: t})
	s.wrote = append(s.wrote, box)
}

// room returns the shortest of some moves that takes a box clear of all that was written;
// none where there is no such move.
func (s *sheetOf) room(box drawing.Box) point {
	if !anyMeets(s.wrote, box) {
		return point{}
	}
	for far := 1.0; far < 120; far += 1 {
		for _, d := range [...]point{{Y: -1}, {X: -1}, {X: 1}, {Y: 1}, {X: -1, Y: -1}, {X: 1, Y: -1}} {
			m := scaled(d, far)
			if !anyMeets(s.wrote, drawing.Box{MinX: box.MinX + m.X, MinY: box.MinY + m.Y, MaxX: box.MaxX + m.X, MaxY: box.MaxY + m.Y}) {
				return m
			}
		}
	}
	return point{}
}

// towardsBox returns the point of a box's border that is nearest to p.
func towardsBox(p point, b drawing.Box) point {
	return point{X: min(max(p.X, b.MinX), b.MaxX), Y: min(max(p.Y, b.MinY), b.MaxY)}
}

func (s *sheetOf) figure(t drawing.Text) {
	t.Size, t.Figure = figureEm, true
	s.text("", "chalk", t)
}

// linear dimensions the distance from a to b along the unit vector along, on a line that
// lies so far out in the direction out. Where arrows do not fit between, they come from
// outside and the figure stands beside them.
func (s *sheetOf) linear(a, b, along, out point, far float64, figure string) {
	pa, pb := plus(a, out, far), plus(a, out, far)
	pb = plus(pb, along, dot(sub(b, a), along))
	off := dot(sub(b, a), out) // b may lie deeper or shallower than a
	path := []drawing.Step{
		{To: 'M', P: plus(a, out, extGap)}, {To: 'L', P: plus(pa, out, extPast)},
		{To: 'M', P: plus(b, out, extGap)}, {To: 'L', P: plus(b, out, far-off+extPast)},
	}
	size := length(sub(pb, pa))
	width := drawing.TextWidth(figure, figureEm)
	wide := size >= width+2*arrow+1
	if size >= 2*arrow+1 {
		path = append(path, drawing.Step{To: 'M', P: pa}, drawing.Step{To: 'L', P: pb})
		s.head(pa, scaled(along, -1))
		s.head(pb, along)
	} else {
		tail := arrow + 2
		path = append(path, drawing.Step{To: 'M', P: plus(pa, along, -tail)}, drawing.Step{To: 'L', P: pa},
			drawing.Step{To: 'M', P: pb}, drawing.Step{To: 'L', P: plus(pb, along, tail)})
		s.head(pa, along)
		s.head(pb, scaled(along, -1))
		wide = wide || size >= width+1
	}
	s.dims(path)
	s.figure(s.beside(pa, pb, along, figure, wide))
}

// beside places the figure of a linear dimension: over its line, or past its end.
func (s *sheetOf) beside(pa, pb, along point, figure string, wide bool) drawing.Text {
	m := middle(pa, pb)
	if math.Abs(along.Y) > 0.5 { // read from the right, on the left of the line
		if wide {
			return drawing.Text{At: point{X: m.X - figureGap, Y: m.Y}, String: figure, Turn: 90}
		}
		return drawing.Text{At: point{X: m.X + extPast + 0.8, Y: m.Y - 0.35*figureEm}, String: figure, Anchor: drawing.AnchorStart}
	}
	if wide {
		return drawing.Text{At: point{X: m.X, Y: m.Y + figureGap}, String: figure}
	}
	end := pb
	if pa.X > pb.X {
		end = pa
	}
	return drawing.Text{At: point{X: end.X + arrow + 2.5, Y: end.Y - 0.35*figureEm}, String: figure, Anchor: drawing.AnchorStart}
}

// A stop is one place of a running dimension.
type stop struct {
	at     float64 // paper mm from the datum
	figure string
}

// running dimensions places from one datum, as a tape reads them: a circle at the datum,
// an arrowhead at every place, figures beyond the line. Figures that would touch move
// apart and keep a leader. origin is the datum on the object's edge; the line lies far out
// from it. It returns how far out the figures reach.
func (s *sheetOf) running(origin, along, out point, far float64, stops []stop) float64 {
	stops = once(stops)
	if len(stops) == 0 {
		return far
	}
	base := plus(origin, out, far)
	path := []drawing.Step{{To: 'M', P: plus(origin, out, extGap)}, {To: 'L', P: plus(base, out, extPast)}}
	last := 0.0
	for _, t := range stops {
		q := plus(base, along, t.at)
		inner := plus(plus(origin, along, t.at), out, extGap)
		path = append(path, drawing.Step{To: 'M', P: inner}, drawing.Step{To: 'L', P: plus(q, out, extPast)})
		switch {
		case t.at == 0:
		case t.at-last < arrow+0.4: // no room for an arrowhead
			s.add(drawing.Item{Layer: drawing.LayerSizes, Kind: drawing.PathKind, Tone: "chalk", Path: drawing.Circle(q.X, q.Y, 0.5)})
		default:
			s.head(q, along)
		}
		last = max(last, t.at)
	}
	path = append(path, drawing.Step{To: 'M', P: base}, drawing.Step{To: 'L', P: plus(base, along, last)})
	s.dims(path)
	s.add(drawing.Item{Layer: drawing.LayerSizes, Kind: drawing.PathKind, Tone: "leaf", Line: chalkLine(), Path: drawing.Circle(base.X, base.Y, 0.9)})
	return s.runningFigures(base, along, out, far, stops)
}

func (s *sheetOf) runningFigures(base, along, out point, far float64, stops []stop) float64 {
	level := math.Abs(along.X) > 0.5
	gap := 1.2 * figureEm
	at := make([]float64, len(stops))
	widest := 0.0
	for i, t := range stops {
		at[i] = t.at
		widest = max(widest, drawing.TextWidth(t.figure, figureEm))
	}
	if slanted := math.Abs(along.X) > 0.1 && math.Abs(along.Y) > 0.1; level && !slanted {
		gap = widest + 1.2
	} else if slanted {
		gap = 1.6 * figureEm
	}
	places := apart(at, gap)
	moved := 0.0
	for i := range places {
		if places[i] != at[i] {
			moved = 2.6 // room for the leaders
		}
	}
	foot := extPast + 0.8 + moved
	for i, t := range stops {
		q := plus(plus(base, along, places[i]), out, foot)
		if moved > 0 {
			s.dims([]drawing.Step{
				{To: 'M', P: plus(plus(base, along, at[i]), out, extPast)}, {To: 'L', P: plus(q, out, -0.5)},
			})
		}
		s.figure(beyond(q, out, t.figure, level))
	}
	if level {
		return far + foot + figureEm
	}
	return far + foot + widest
}

// beyond sets a figure just beyond q in one of the four directions.
func beyond(q, out point, figure string, level bool) drawing.Text {
	t := drawing.Text{At: q, String: figure}
	if math.Abs(out.X) > 0.1 && math.Abs(out.Y) > 0.1 { // a slanted row
		t.Anchor, t.At.Y = drawing.AnchorStart, q.Y-0.35*figureEm+0.6*out.Y*figureEm
		if out.X < 0 {
			t.Anchor = drawing.AnchorEnd
		}
		return t
	}
	switch {
	case level && out.Y > 0:
		t.At.Y += 0.4
	case level:
		t.At.Y -= 0.72 * figureEm
	case out.X > 0:
		t.Anchor, t.At.Y = drawing.AnchorStart, q.Y-0.35*figureEm
	default:
		t.Anchor, t.At.Y = drawing.AnchorEnd, q.Y-0.35*figureEm
	}
	return t
}

// clear moves all that was added since a mark downwards, until none of its figures and
// words meets one that was there before.
func (s *sheetOf) clear(items, texts int) float64 {
	down := 0.0
	for meets := true; meets && down < 200; {
		meets = false
		for _, b := range s.wrote[texts:] {
			b.MinY, b.MaxY = b.MinY-down, b.MaxY-down
			meets = meets || anyMeets(s.wrote[:texts], b.Grown(0.8))
		}
		if meets {
			down += 1
		}
	}
	for i := range s.items[items:] {
		raise(&s.items[items+i], -down)
	}
	for i := range s.wrote[texts:] {
		s.wrote[texts+i].MinY -= down
		s.wrote[texts+i].MaxY -= down
	}
	return down
}

// raise moves an item up.
func raise(it *drawing.Item, y float64) {
	for i := range it.Path {
		it.Path[i].P.Y += y
		it.Path[i].P1.Y += y
		it.Path[i].P2.Y += y
	}
	it.Text.At.Y += y
	it.Wood.Origin.Y += y
}

// once sorts stops and keeps one a figure.
func once(stops []stop) (out []stop) {
	sorted := sortedStops(stops)
	for _, t := range sorted {
		if n := len(out); n == 0 || out[n-1].figure != t.figure {
			out = append(out, t)
		}
	}
	return out
}
