package view

import (
	"cmp"
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// A sizer writes the dimensions of a wall and keeps them apart.
type sizer struct {
	p     *painter
	taken []drawing.Box // modules and figures
}

// sizes dimensions the chosen module, or all where none is chosen: outside size, height
// above the floor, gap to what is nearest. A figure that finds no room is left out
// unless its module was chosen: the list has them all.
func (p *painter) sizes(r wall.Result, scenes []scene) {
	z := sizer{p: p, taken: slices.Grow(p.taken[:0], len(scenes)+8)}
	for i := range scenes {
		z.taken = append(z.taken, scenes[i].box)
	}
	chosen := slices.ContainsFunc(scenes, func(s scene) bool { return s.id == p.o.Selected })
	z.heights(r, scenes, chosen)
	for i := range scenes {
		s := &scenes[i]
		if chosen && s.id != p.o.Selected {
			continue
		}
		z.gap(s, scenes, r.Nearest, chosen)
		z.outside(s, exact(r, s.id), chosen)
	}
	p.taken = z.taken
}

// exact returns a module's box as it was worked out.
func exact(r wall.Result, id string) (b wall.Placed) {
	for i := range r.Placed {
		if r.Placed[i].Module == id {
			return r.Placed[i]
		}
	}
	return b
}

// Distances and sizes of chalk dimensions, in pixels.
const (
	sizeOut  = 19.0 // line from the module
	sizeFar  = 42.0 // likewise, where that is taken
	sizeText = 15.0
	sizeBar  = 8.0
	sizeTick = 4.0
)

// outside dimensions width and height.
func (z *sizer) outside(s *scene, placed wall.Placed, must bool) {
	b := s.box
	width := z.p.o.Style.Length(placed.Box.MaxX - placed.Box.MinX)
	height := z.p.o.Style.Length(placed.Box.MaxY - placed.Box.MinY)
	var level, plumb [][2]point
	for _, px := range [...]float64{sizeOut, sizeFar} {
		o := px * z.p.px
		level = append(level, [2]point{{X: b.MinX, Y: b.MaxY + o}, {X: b.MaxX, Y: b.MaxY + o}},
			[2]point{{X: b.MinX, Y: b.MinY - o}, {X: b.MaxX, Y: b.MinY - o}})
		plumb = append(plumb, [2]point{{X: b.MaxX + o, Y: b.MinY}, {X: b.MaxX + o, Y: b.MaxY}},
			[2]point{{X: b.MinX - o, Y: b.MinY}, {X: b.MinX - o, Y: b.MaxY}})
	}
	z.try(s.id+"/width", must, width, level...)
	z.try(s.id+"/height", must, height, plumb...)
}

// try draws a dimension at the first of the places where it and its figure are free.
func (z *sizer) try(id string, must bool, figure string, places ...[2]point) {
	for _, q := range places {
		if t := z.figure(figure, q[0], q[1]); z.free(t, q) {
			z.draw(id, t, q)
			return
		}
	}
	if must {
		z.draw(id, z.settled(z.figure(figure, places[0][0], places[0][1])), places[0])
	}
}

// settled moves a figure off its line to the nearest place where nothing is written.
func (z *sizer) settled(t drawing.Text) drawing.Text {
	at := t.At
	for far := 0.0; far < 300; far += 3 {
		for _, d := range [...]point{{Y: 1}, {Y: -1}, {X: 1}, {X: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}} {
			t.At = plus(at, d, far*z.p.px)
			if b := t.Extent(); !anyMeets(z.taken, b) && b.MinX >= z.p.box.MinX && b.MaxX <= z.p.box.MaxX && b.MinY >= z.p.box.MinY && b.MaxY <= z.p.box.MaxY {
				return t
			}
		}
	}
	t.At = at
	return t
}

// figure sets a figure over the middle of a line, or at its left where it is plumb.
func (z *sizer) figure(s string, a, b point) drawing.Text {
	px := z.p.px
	t := drawing.Text{Size: sizeText * px, String: s, Figure: true, Halo: "plaster"}
	m := middle(a, b)
	if a.X == b.X {
		t.At, t.Turn = point{X: m.X - 4.5*px, Y: m.Y}, 90
		if drawing.TextWidth(s, t.Size) > length(sub(b, a))-2*px {
			t.Turn, t.Anchor = 0, drawing.AnchorStart
			t.At = point{X: m.X + 7*px, Y: m.Y - 0.36*t.Size}
		}
		return t
	}
	t.At = point{X: m.X, Y: m.Y + 4.5*px}
	return t
}

func (z *sizer) free(t drawing.Text, q [2]point) bool {
	b := t.Extent()
	in := b.MinX >= z.p.box.MinX && b.MaxX <= z.p.box.MaxX && b.MinY >= z.p.box.MinY && b.MaxY <= z.p.box.MaxY
	return in && !anyMeets(z.taken, b) && !anyMeets(z.taken, z.p.lineBox(q))
}

// lineBox is the room that a dimension line needs: short of its ends, which stand on what
// it measures.
func (p *painter) lineBox(q [2]point) drawing.Box {
	d := scaled(direct(q[0], q[1]), p.px)
	b := drawing.Box{MinX: q[0].X, MinY: q[0].Y, MaxX: q[0].X, MaxY: q[0].Y}.With(q[1])
	if q[0].X == q[1].X {
		return drawing.Box{MinX: b.MinX - p.px, MaxX: b.MaxX + p.px, MinY: b.MinY + d.Y, MaxY: b.MaxY - d.Y}
	}
	return drawing.Box{MinX: b.MinX + d.X, MaxX: b.MaxX - d.X, MinY: b.MinY - p.px, MaxY: b.MaxY + p.px}
}

// draw draws a dimension line with its bars, ticks and figure.
func (z *sizer) draw(id string, t drawing.Text, q [2]point) {
	px := z.p.px
	d := direct(q[0], q[1])
	n := point{X: -d.Y, Y: d.X}
	slash := scaled(point{X: d.X + n.X, Y: d.Y + n.Y}, sizeTick*px)
	path := append(z.p.storage(10)[:0], drawing.Step{To: 'M', P: q[0]}, drawing.Step{To: 'L', P: q[1]})
	for _, e := range q {
		path = append(path, drawing.Step{To: 'M', P: plus(e, n, -sizeBar*px)}, drawing.Step{To: 'L', P: plus(e, n, sizeBar*px)})
		path = append(path, drawing.Step{To: 'M', P: plus(e, slash, -1)}, drawing.Step{To: 'L', P: plus(e, slash, 1)})
	}
	z.p.path(drawing.LayerSizes, "dim", "", drawing.Line{Tone: "chalk", Width: 1}, path).ID = id + "/line"
	z.taken = append(z.taken, z.p.lineBox(q))
	z.write(id, t)
}

func (z *sizer) write(id string, t drawing.Text) {
	z.p.add(drawing.Item{ID: id, Group: "dim", Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "chalk", Text: t})
	z.taken = append(z.taken, t.Extent())
}

// gap dimensions the distance to the nearest thing, where it lies level or plumb.
func (z *sizer) gap(s *scene, scenes []scene, nearest []wall.Clearance, must bool) {
	for _, c := range nearest {
		if c.Module != s.id || c.Gap <= 0 {
			continue
		}
		a := s.box
		b, ok := z.box(c.To, scenes, a)
		if !ok {
			return
		}
		if lines := between(a, b); len(lines) > 0 && c.Gap.MM() < 3000 {
			z.try(s.id+"/gap", must, z.p.o.Style.Length(c.Gap), lines...)
		}
		return
	}
}

// box returns the box of what a clearance is measured to.
func (z *sizer) box(to string, scenes []scene, a drawing.Box) (drawing.Box, bool) {
	p := z.p
	switch to {
	case wall.LeftEnd:
		return drawing.Box{MinX: -1, MinY: a.MinY, MaxX: 0, MaxY: a.MaxY}, true
	case wall.RightEnd:
		w := p.w.Width.MM()
		return drawing.Box{MinX: w, MinY: a.MinY, MaxX: w + 1, MaxY: a.MaxY}, true
	case wall.Floor, wall.Ceiling:
		return drawing.Box{}, false // heights have a column of their own; the ceiling says little
	}
	for i := range scenes {
		if scenes[i].id == to {
			return scenes[i].box, true
		}
	}
	for i := range p.w.Obstacles {
		if o := &p.w.Obstacles[i]; o.ID == to {
			return obstacleBox(o), true
		}
	}
	return drawing.Box{}, false
}

func obstacleBox(o *plan.Obstacle) drawing.Box {
	return drawing.Box{MinX: o.X.MM(), MinY: o.Y.MM(), MaxX: (o.X + o.Width).MM(), MaxY: (o.Y + o.Height).MM()}
}

// between returns level or plumb lines across the gap of two boxes, from left to right or
// from below upwards, the one in the middle first.
func between(a, b drawing.Box) (lines [][2]point) {
	places := [...]float64{0.5, 0.8, 0.2}
	if low, high := max(a.MinY, b.MinY), min(a.MaxY, b.MaxY); low < high && (a.MaxX <= b.MinX || b.MaxX <= a.MinX) {
		l, r := min(a.MaxX, b.MaxX), max(a.MinX, b.MinX)
		for _, k := range places {
			y := low + float64(k*(high-low))
			lines = append(lines, [2]point{{X: l, Y: y}, {X: r, Y: y}})
		}
		return lines
	}
	if low, high := max(a.MinX, b.MinX), min(a.MaxX, b.MaxX); low < high && (a.MaxY <= b.MinY || b.MaxY <= a.MinY) {
		l, h := min(a.MaxY, b.MaxY), max(a.MinY, b.MinY)
		for _, k := range places {
			x := low + float64(k*(high-low))
			lines = append(lines, [2]point{{X: x, Y: l}, {X: x, Y: h}})
		}
	}
	return lines
}

// A level is one height in the column of heights.
type level struct {
	y    unit.Length
	edge float64 // of the module that has it, nearest to the column
}

// heights writes the heights of undersides and chalk lines above the floor as running
// figures in one column at the left, each once; figures that would touch move apart and
// keep a leader.
func (z *sizer) heights(r wall.Result, scenes []scene, chosen bool) {
	var levels []level
	for _, l := range z.p.o.Lines {
		levels = append(levels, level{l.Height, 0})
	}
	for i := range scenes {
		if chosen && scenes[i].id != z.p.o.Selected {
			continue
		}
		levels = append(levels, level{exact(r, scenes[i].id).Box.MinY, scenes[i].box.MinX})
	}
	z.column(levels)
}

// legible keeps each height once, and of heights that lie too close together to be told
// apart the chalk line, or else the lowest.
func legible(levels []level, least float64) (out []level) {
	for _, l := range levels {
		if n := len(out); n > 0 && (l.y-out[n-1].y).MM() < least {
			if l.edge == 0 && out[n-1].edge != 0 {
				out[n-1] = l
			}
			continue
		}
		out = append(out, l)
	}
	return out
}

// column writes heights from the floor at the left of the wall.
func (z *sizer) column(levels []level) {
	rank.By(levels, func(a, b level) int { return cmp.Compare(a.y, b.y) })
	levels = legible(levels, 0.7*sizeText*z.p.px)
	if len(levels) == 0 {
		return
	}
	row := z.p.rowLeft()
	row.marks = append(row.marks, rowMark{})
	for _, l := range levels {
		row.marks = append(row.marks, rowMark{at: l.y.MM(), edge: l.edge + z.p.rowsOut(rowSide, rowSideTight), figure: z.p.o.Style.Length(l.y), id: "height/" + l.y.Decimal()})
	}
	z.taken = append(z.taken, row.draw()...)
	x, k := row.origin.X, 2.5*sizeTick*z.p.px
	z.taken = append(z.taken, drawing.Box{MinX: x - k, MaxX: x + k, MaxY: levels[len(levels)-1].y.MM()})
}

// apart moves places that rise so that each is at least gap above the one before, with
// the least sum of squares of the moves: isotonic regression of at − i·gap by pooling
// adjacent violators (Ayer and others, Annals of Mathematical Statistics 26, 1955).
func apart(at []float64, gap float64) []float64 {
	type block struct {
		sum float64
		n   int
	}
	var blocks []block
	for i, y := range at {
		blocks = append(blocks, block{y - float64(i)*gap, 1})
		for k := len(blocks) - 1; k > 0; k-- {
			b, c := blocks[k-1], blocks[k]
			if b.sum/float64(b.n) <= c.sum/float64(c.n) {
				break
			}
			blocks = append(blocks[:k-1], block{b.sum + c.sum, b.n + c.n})
		}
	}
	out := make([]float64, 0, len(at))
	for _, b := range blocks {
		for range b.n {
			out = append(out, b.sum/float64(b.n)+float64(len(out))*gap)
		}
	}
	for i, y := range at { // a place that stays, stays exactly
		if d := out[i] - y; d < 1e-9 && d > -1e-9 {
			out[i] = y
		}
	}
	return out
}
