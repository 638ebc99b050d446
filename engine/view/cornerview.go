package view

import (
	"math"
	"slices"
	"strconv"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A joint is one corner being drawn: two boards in the module's plane.
type joint struct {
	sheetOf
	c      board.Corner
	boards [2]board.Board
	k      float64
	at     point // inner point, mm
	outer  point
	window drawing.Box // mm, about the corner
}

// Corner returns the picture of a corner of a module by its number, at scale: wood, the
// joint's plane, what reinforces it, angle and thicknesses. It is empty where the module
// has no such corner.
func Corner(m module.Result, number int, o Options) drawing.Drawing {
	i := slices.IndexFunc(m.Corners, func(c board.Corner) bool { return c.Number == number })
	if i < 0 || number == 0 {
		return drawing.Drawing{Lang: lang, Paper: true, Box: drawing.Box{MaxX: 1, MaxY: 1}}
	}
	c := m.Corners[i]
	first, second := boardOf(&m, c.First, -1), boardOf(&m, c.Second, -1)
	if first == nil || second == nil {
		return drawing.Drawing{Lang: lang, Paper: true, Box: drawing.Box{MaxX: 1, MaxY: 1}}
	}
	return pictureOf(c, *first, *second, o)
}

func pictureOf(c board.Corner, first, second board.Board, o Options) drawing.Drawing {
	k := joint{sheetOf: sheetOf{o: o}, c: c, boards: [2]board.Board{first, second}}
	k.at = point{X: c.At[0].MM(), Y: c.At[1].MM()}
	k.outer = point{X: c.Outer[0].MM(), Y: c.Outer[1].MM()}
	k.frame()
	for i := range k.boards {
		k.wood(i)
	}
	k.plane()
	for i := range k.boards {
		k.pieces(i)
	}
	k.thicknesses()
	k.angles()
	k.slots()
	title := k.say("view.corner", words.Name("first", first.ID), words.Name("second", second.ID), words.Name("scale", ratio(k.k)))
	b := k.box()
	k.text("title", "ink-2", drawing.Text{At: point{X: b.MinX + 8, Y: b.MinY + 2}, Size: wordEm, String: title, Anchor: drawing.AnchorStart})
	return drawing.Drawing{Title: title, Lang: lang, Paper: true, Box: k.box(), Items: k.items}
}

// frame chooses the part that is shown and the scale.
func (k *joint) frame() {
	t := max(k.boards[0].Thickness, k.boards[1].Thickness).MM()
	mid := middle(k.at, k.outer)
	half := max(2.1*t, 0.5*length(sub(k.at, k.outer))+1.4*t)
	k.window = drawing.Box{MinX: mid.X - half, MinY: mid.Y - half, MaxX: mid.X + half, MaxY: mid.Y + half}
	k.k = k.o.Scale
	if k.k > 0 {
		return
	}
	for _, s := range [...]float64{5, 2, 1, 0.5, 0.2, 0.1} {
		if k.k = s; 2*half*s <= 160 {
			break
		}
	}
}

// paper returns where a place of the module's plane comes to.
func (k *joint) paper(q point) point {
	return point{X: (q.X - k.window.MinX) * k.k, Y: (q.Y - k.window.MinY) * k.k}
}

// place returns where (u, w) of a board comes to in the module's plane, mm.
func (k *joint) place(i int, u, w float64) point {
	f := k.boards[i].Frame
	sin, cos := f.Dir.SinCos()
	return point{X: f.X.MM() + u*cos + w*sin, Y: f.Y.MM() + u*sin - w*cos}
}

func (k *joint) wood(i int) {
	b := &k.boards[i]
	var poly []point
	for _, q := range b.Profile() {
		poly = append(poly, k.place(i, q.U.MM(), q.W.MM()))
	}
	poly = clipped(poly, k.window)
	if len(poly) < 3 {
		return
	}
	path := make([]point, len(poly))
	for n, q := range poly {
		path[n] = k.paper(q)
	}
	sin, cos := b.Frame.Dir.SinCos()
	w := drawing.Wood{
		Species: b.Wood, Seed: plank(b.ID, 0), Edge: true, Origin: k.paper(k.place(i, 0, 0)),
		Along: point{X: k.k * cos, Y: k.k * sin}, Across: point{X: k.k * sin, Y: -k.k * cos},
	}
	k.add(drawing.Item{ID: b.ID, Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Path: drawing.Polygon(path...), Wood: w})
	// the outline, but for where the window cuts it
	var line []drawing.Step
	for n := range poly {
		a, c := side(poly, n)
		if k.onWindow(a, c) {
			continue
		}
		line = append(line, drawing.Step{To: 'M', P: k.paper(a)}, drawing.Step{To: 'L', P: k.paper(c)})
	}
	k.shape("", drawing.Line{Tone: "edge", Width: thick, MM: true, Round: true}, line)
}

func (k *joint) onWindow(a, b point) bool {
	w := k.window
	return a.X == b.X && (a.X == w.MinX || a.X == w.MaxX) || a.Y == b.Y && (a.Y == w.MinY || a.Y == w.MaxY)
}

// clipped cuts a polygon to a box, side by side (Sutherland and Hodgman, 1974).
func clipped(poly []point, b drawing.Box) []point {
	for side1 := range 4 {
		within := func(q point) float64 {
			return [4]float64{q.X - b.MinX, b.MaxX - q.X, q.Y - b.MinY, b.MaxY - q.Y}[side1]
		}
		var out []point
		for i, q := range poly {
			p := poly[(i+len(poly)-1)%len(poly)]
			dp, dq := within(p), within(q)
			if (dp < 0) != (dq < 0) {
				m := plus(p, sub(q, p), dp/(dp-dq))
				switch side1 { // exactly on the border
				case 0:
					m.X = b.MinX
				case 1:
					m.X = b.MaxX
				case 2:
					m.Y = b.MinY
				default:
					m.Y = b.MaxY
				}
				out = append(out, m)
			}
			if dq >= 0 {
				out = append(out, q)
			}
		}
		poly = out
	}
	return poly
}

// plane draws the joint's plane over both woods.
func (k *joint) plane() {
	a, b := k.paper(k.at), k.paper(k.outer)
	k.shape("", drawing.Line{Tone: "edge", Width: 0.35, MM: true}, drawing.Segment(a.X, a.Y, b.X, b.Y))
}

// of reports whether a feature belongs to the corner and is more than its end cut.
func (k *joint) of(f board.Feature) bool {
	return f.Cause.What == "corner" && f.Cause.ID == strconv.Itoa(k.c.Number) && (f.Kind == board.Slot || f.Kind == board.Bore)
}

// pieces draws the slots and bores of one board, and in them the spline, tenon, dowel or
// key, with half a millimetre of play round it.
func (k *joint) pieces(i int) {
	one := bench{b: k.boards[i]}
	for _, f := range k.boards[i].Features {
		e, ok := one.extentOf(f)
		if !k.of(f) || !ok {
			continue
		}
		var q, in [4]point
		for n, c := range e.quad {
			q[n] = k.paper(k.place(i, c.X, c.Y))
		}
		k.shape("groove", drawing.Line{Tone: "edge", Width: thin, MM: true}, drawing.Polygon(q[:]...))
		wide, deep := direct(q[0], q[1]), direct(q[1], q[2])
		play := min(0.5*k.k, 0.12*length(sub(q[1], q[0])))
		in = [4]point{plus(q[0], wide, play), plus(q[1], wide, -play), plus(plus(q[2], wide, -play), deep, -play), plus(plus(q[3], wide, play), deep, -play)}
		k.shape("loose", drawing.Line{}, drawing.Polygon(in[:]...))
	}
}

// far returns a place along board i inside the window, away from the corner, on a face.
func (k *joint) far(i int, w float64) point {
	b := &k.boards[i]
	s, e := b.Ends()
	mid := middle(k.at, k.outer)
	near, away := k.place(i, e.Greatest().MM(), w), k.place(i, s.Least().MM(), w)
	if length(sub(away, mid)) < length(sub(near, mid)) {
		near, away = away, near
	}
	d := direct(near, away)
	reach := min(length(sub(away, near)), 0.5*k.window.Width()/max(math.Abs(d.X), math.Abs(d.Y))+0.2*k.window.Width())
	q := plus(near, d, reach)
	for n := 0; n < 60 && (q.X < k.window.MinX || q.X > k.window.MaxX || q.Y < k.window.MinY || q.Y > k.window.MaxY); n++ {
		q = plus(q, d, -0.02*reach)
	}
	return q
}

// thicknesses dimensions both boards at the border of the picture.
func (k *joint) thicknesses() {
	mid := middle(k.at, k.outer)
	for i := range k.boards {
		t := k.boards[i].Thickness
		a, b := k.far(i, 0), k.far(i, t.MM())
		// square across the board
		sin, cos := k.boards[i].Frame.Dir.SinCos()
		across := point{X: sin, Y: -cos}
		b = plus(a, across, t.MM())
		out := point{X: cos, Y: sin}
		if dot(out, sub(a, mid)) < 0 {
			out = scaled(out, -1)
		}
		pa, pb := k.paper(a), k.paper(b)
		if math.Abs(across.X)+math.Abs(across.Y) > 1.01 {
			k.slantedThickness(pa, pb, across, out, t)
			continue
		}
		k.linear(pa, pb, across, out, 7, k.figureOf(t))
	}
}

// slantedThickness dimensions a board that runs at an angle: its figure stands level.
func (k *joint) slantedThickness(pa, pb, across, out point, t unit.Length) {
	qa, qb := plus(pa, out, 7), plus(pb, out, 7)
	k.dims([]drawing.Step{
		{To: 'M', P: plus(pa, out, extGap)}, {To: 'L', P: plus(qa, out, extPast)},
		{To: 'M', P: plus(pb, out, extGap)}, {To: 'L', P: plus(qb, out, extPast)},
		{To: 'M', P: qa}, {To: 'L', P: qb},
	})
	k.head(qa, scaled(across, -1))
	k.head(qb, across)
	m := plus(middle(qa, qb), out, 1.5)
	k.figure(beyond(m, out, k.figureOf(t), true))
}

// angles writes the interior angle at the inner point, and the tilt of the blade at each
// board's end where it is not square.
func (k *joint) angles() {
	mid := middle(k.at, k.outer)
	var dirs [2]point
	for i := range dirs {
		a := k.far(i, 0)
		sin, cos := k.boards[i].Frame.Dir.SinCos()
		dirs[i] = point{X: cos, Y: sin}
		if dot(dirs[i], sub(a, mid)) < 0 {
			dirs[i] = scaled(dirs[i], -1)
		}
	}
	r := 11.0
	p := k.paper(k.at)
	from, to := math.Atan2(dirs[0].Y, dirs[0].X), math.Atan2(dirs[1].Y, dirs[1].X)
	turn := math.Mod(to-from+5*math.Pi, 2*math.Pi) - math.Pi
	var arc []drawing.Step
	for i := range 17 {
		t := from + turn*float64(i)/16
		step := drawing.LineTo(p.X+r*math.Cos(t), p.Y+r*math.Sin(t))
		if i == 0 {
			step.To = 'M'
		}
		arc = append(arc, step)
	}
	k.dims(arc)
	half := from + turn/2
	label := point{X: p.X + (r+6)*math.Cos(half), Y: p.Y + (r+6)*math.Sin(half) - 0.35*figureEm}
	k.figure(drawing.Text{At: label, String: k.o.Style.Angle(k.c.Interior)})
	for i := range dirs {
		if k.c.Tilt[i] != 0 {
			k.tilt(i, dirs[i])
		}
	}
}

// tilt writes the blade's tilt in the board, beside the joint's plane.
func (k *joint) tilt(i int, away point) {
	q := plus(middle(k.at, k.outer), away, 0.85*k.boards[i].Thickness.MM())
	p := k.paper(q)
	s := k.o.Style.Angle(k.c.Tilt[i])
	w := drawing.TextWidth(s, figureEm) + 2.4
	k.shape("leaf", drawing.Line{}, drawing.RoundRect(p.X-w/2, p.Y-2.6, w, 5.2, 0.8)).Layer = drawing.LayerSizes
	k.add(drawing.Item{Layer: drawing.LayerSizes, Kind: drawing.TextKind, Tone: "ink", Text: drawing.Text{At: point{X: p.X, Y: p.Y - 1.3}, Size: figureEm, String: s, Figure: true}})
}

// slots dimensions the first slot that enters the joint's plane: from the heel along it,
// and how far the piece goes across.
func (k *joint) slots() {
	along := direct(k.at, k.outer)
	size := length(sub(k.outer, k.at))
	across := point{X: along.Y, Y: -along.X}
	var low, high float64
	var stops []stop
	for i := range k.boards {
		one := bench{b: k.boards[i]}
		for _, f := range k.boards[i].Features {
			e, ok := one.extentOf(f)
			if !k.of(f) || !ok || f.Enter != board.Start && f.Enter != board.End {
				continue
			}
			from, to := math.Inf(1), math.Inf(-1)
			for _, c := range e.quad {
				q := sub(k.place(i, c.X, c.Y), k.at)
				low, high = min(low, dot(q, across)), max(high, dot(q, across))
				from, to = min(from, dot(q, along)), max(to, dot(q, along))
			}
			for _, d := range [...]float64{from, to} {
				stops = append(stops, stop{at: k.k * d, figure: k.figureOf(unit.Nearest(d))})
			}
		}
	}
	if len(stops) == 0 {
		return
	}
	// across: outside the corner, past its point
	a, b := plus(k.outer, across, low), plus(k.outer, across, high)
	pa, pb := k.paper(a), k.paper(b)
	qa, qb := plus(pa, along, 9), plus(pb, along, 9)
	inner := -k.k * (size - (stops[0].at / k.k))
	k.dims([]drawing.Step{
		{To: 'M', P: plus(pa, along, inner)}, {To: 'L', P: plus(qa, along, extPast)},
		{To: 'M', P: plus(pb, along, inner)}, {To: 'L', P: plus(qb, along, extPast)},
		{To: 'M', P: qa}, {To: 'L', P: qb},
	})
	k.head(qa, scaled(across, -1))
	k.head(qb, across)
	text := k.say("view.across", words.Name("size", k.figureOf(unit.Nearest(high-low))))
	k.figure(beyond(plus(middle(qa, qb), along, 2), along, text, math.Abs(along.Y) > math.Abs(along.X)))
	k.heelStops(along, stops)
}

// heelStops writes the slot's place along the plane, on a line beside it, from the heel.
func (k *joint) heelStops(along point, stops []stop) {
	stops = once(stops)
	if len(stops) > 2 {
		stops = []stop{stops[0], stops[len(stops)-1]}
	}
	parts := []words.Arg{words.Name("from", stops[0].figure), words.Name("to", stops[len(stops)-1].figure)}
	p := plus(k.paper(k.outer), along, 9+extPast+7+figureEm)
	k.figure(beyond(p, along, k.say("view.heel", parts...), math.Abs(along.Y) > math.Abs(along.X)))
}
