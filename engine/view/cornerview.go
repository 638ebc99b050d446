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
	origin point      // of the paper, mm
	span   [2]segment // what is shown of each board, along u
	away   [2]point   // along each board, away from the corner
}

// A segment is a stretch along a board, from the corner to where the picture ends.
type segment struct{ near, far float64 }

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
	for i := range k.boards {
		k.pieces(i)
	}
	k.thicknesses()
	k.angles()
	k.slots()
	names := k.o.Names
	if len(names) < 2 {
		names = []string{first.ID, second.ID}
	}
	title := k.say("view.corner", words.Name("first", names[0]), words.Name("second", names[1]), words.Name("scale", ratio(k.k)))
	b := k.box()
	k.text("title", "ink-2", drawing.Text{At: point{X: b.MinX + 8, Y: b.MinY + 2}, Size: wordEm, String: title, Anchor: drawing.AnchorStart})
	return drawing.Drawing{Title: title, Lang: lang, Paper: true, Box: k.box(), Items: k.items}
}

// frame chooses what is shown of the boards, and the scale.
func (k *joint) frame() {
	t := max(k.boards[0].Thickness, k.boards[1].Thickness).MM()
	mid := middle(k.at, k.outer)
	reach := length(sub(k.at, k.outer)) + 1.5*t
	for i := range k.boards {
		b := &k.boards[i]
		s, e := b.Ends()
		low, high := s.Least().MM(), e.Greatest().MM()
		k.span[i] = segment{low, min(low+reach, high)}
		sin, cos := b.Frame.Dir.SinCos()
		k.away[i] = point{X: cos, Y: sin}
		if length(sub(k.place(i, high, t/2), mid)) < length(sub(k.place(i, low, t/2), mid)) {
			k.span[i] = segment{high, max(high-reach, low)}
			k.away[i] = scaled(k.away[i], -1)
		}
	}
	k.origin = mid
	if k.k = k.o.Scale; k.k > 0 {
		return
	}
	for _, s := range [...]float64{5, 2, 1, 0.5, 0.2, 0.1} {
		if k.k = s; 2*reach*s <= 190 {
			break
		}
	}
}

// paper returns where a place of the module's plane comes to.
func (k *joint) paper(q point) point {
	return scaled(sub(q, k.origin), k.k)
}

// place returns where (u, w) of a board comes to in the module's plane, mm.
func (k *joint) place(i int, u, w float64) point {
	f := k.boards[i].Frame
	sin, cos := f.Dir.SinCos()
	return point{X: f.X.MM() + u*cos + w*sin, Y: f.Y.MM() + u*sin - w*cos}
}

// wood draws what is shown of a board; it ends square, without an outline.
func (k *joint) wood(i int) {
	b := &k.boards[i]
	var poly []point
	for _, q := range b.Profile() {
		poly = append(poly, point{X: q.U.MM(), Y: q.W.MM()})
	}
	far := k.span[i].far
	poly = clipLine(poly, point{X: far}, point{X: 0, Y: math.Copysign(1, far-k.span[i].near)})
	if len(poly) < 3 {
		return
	}
	path := make([]point, len(poly))
	for n, q := range poly {
		path[n] = k.paper(k.place(i, q.X, q.Y))
	}
	sin, cos := b.Frame.Dir.SinCos()
	w := drawing.Wood{
		Species: b.Wood, Seed: plank(b.ID, 0), Edge: true, Origin: k.paper(k.place(i, 0, 0)),
		Along: point{X: k.k * cos, Y: k.k * sin}, Across: point{X: k.k * sin, Y: -k.k * cos},
	}
	k.add(drawing.Item{ID: b.ID, Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Path: drawing.Polygon(path...), Wood: w})
	var line []drawing.Step
	for n := range poly {
		a, c := side(poly, n)
		if math.Abs(a.X-far) < near && math.Abs(c.X-far) < near && far != 0 && far != b.Length.MM() {
			continue
		}
		line = append(line, drawing.Step{To: 'M', P: path[n]}, drawing.Step{To: 'L', P: path[(n+1)%len(path)]})
	}
	k.shape("", drawing.Line{Tone: "edge", Width: thick, MM: true, Round: true}, line)
}

// clipLine keeps the part of a polygon to the left of the line through q along d
// (Sutherland and Hodgman, 1974).
func clipLine(poly []point, q, d point) (out []point) {
	for i, b := range poly {
		a := poly[(i+len(poly)-1)%len(poly)]
		da, db := cross(d, sub(a, q)), cross(d, sub(b, q))
		if (da < 0) != (db < 0) {
			out = append(out, plus(a, sub(b, a), da/(da-db)))
		}
		if db >= 0 {
			out = append(out, b)
		}
	}
	return out
}

// within cuts a convex piece to the profile of a board. A profile with housings is cut to
// its hull's sides only where they look outward, which is where cuts of corners lie.
func (k *joint) within(i int, quad [4]point) []point {
	b := &k.boards[i]
	s, e := b.Ends()
	poly := quad[:]
	t := b.Thickness.MM()
	// the four sides of the board, wood on the left
	for _, l := range [...][2]point{
		{{X: 0, Y: 0}, {X: 1, Y: 0}},
		{{X: 0, Y: t}, {X: -1, Y: 0}},
		{{X: s.AtA.MM()}, {X: s.AtA.MM() - s.AtB.MM(), Y: -t}},
		{{X: e.AtA.MM()}, {X: e.AtB.MM() - e.AtA.MM(), Y: t}},
	} {
		poly = clipLine(poly, l[0], l[1])
	}
	return poly
}

// of reports whether a feature belongs to the corner and is more than its end cut.
func (k *joint) of(f board.Feature) bool {
	return f.Cause.What == "corner" && f.Cause.ID == strconv.Itoa(k.c.Number) && (f.Kind == board.Slot || f.Kind == board.Bore)
}

// pieces draws the slots and bores of one board, and in them the spline, tenon, dowel or
// key.
func (k *joint) pieces(i int) {
	one := bench{b: k.boards[i]}
	for _, f := range k.boards[i].Features {
		e, ok := one.extentOf(f)
		if !k.of(f) || !ok {
			continue
		}
		poly := k.within(i, e.quad)
		if len(poly) < 3 {
			continue
		}
		q := make([]point, len(poly))
		for n, c := range poly {
			q[n] = k.paper(k.place(i, c.X, c.Y))
		}
		k.shape("loose", drawing.Line{Tone: "edge", Width: 0.35, MM: true, Round: true}, drawing.Polygon(q...))
	}
}

// thicknesses dimensions both boards where the picture ends.
func (k *joint) thicknesses() {
	for i := range k.boards {
		t := k.boards[i].Thickness
		sin, cos := k.boards[i].Frame.Dir.SinCos()
		across := point{X: sin, Y: -cos}
		pa := k.paper(k.place(i, k.span[i].far, 0))
		pb := plus(pa, across, k.k*t.MM())
		if math.Abs(across.X)+math.Abs(across.Y) > 1.01 {
			k.slantedThickness(pa, pb, across, k.away[i], t)
			continue
		}
		k.linear(pa, pb, across, k.away[i], 7, k.figureOf(t))
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
	const r = 11.0
	p := k.paper(k.at)
	from, to := math.Atan2(k.away[0].Y, k.away[0].X), math.Atan2(k.away[1].Y, k.away[1].X)
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
	for i := range k.away {
		if k.c.Tilt[i] != 0 {
			k.tilt(i)
		}
	}
}

// tilt writes the blade's tilt in the board, beside the joint's plane.
func (k *joint) tilt(i int) {
	deep := 0.0
	one := bench{b: k.boards[i]}
	mid := middle(k.at, k.outer)
	for _, f := range k.boards[i].Features {
		if e, ok := one.extentOf(f); ok && k.of(f) {
			for _, c := range k.within(i, e.quad) {
				deep = max(deep, dot(sub(k.place(i, c.X, c.Y), mid), k.away[i]))
			}
		}
	}
	s := k.o.Style.Angle(k.c.Tilt[i])
	w := drawing.TextWidth(s, figureEm) + 2.4
	p := k.paper(plus(mid, k.away[i], max(0.85*k.boards[i].Thickness.MM(), deep+0.7*w/k.k)))
	k.shape("leaf", drawing.Line{}, drawing.RoundRect(p.X-w/2, p.Y-2.6, w, 5.2, 0.8)).Layer = drawing.LayerSizes
	k.text("", "ink", drawing.Text{At: point{X: p.X, Y: p.Y - 1.3}, Size: figureEm, String: s, Figure: true})
}

// slots dimensions what reinforces the corner: how far it goes across the joint's plane,
// and where it lies along the plane from the heel. The plane is the end of the board that
// has slots in its end.
func (k *joint) slots() {
	for i := range k.boards {
		v := endView{side: board.Start, t: k.boards[i].Thickness.MM()}
		s, e := k.boards[i].Ends()
		v.cut = s
		if k.span[i].near > k.span[i].far {
			v.side, v.cut = board.End, e
		}
		if k.slotted(i, v.side) {
			heel, along, _ := v.heel()
			tip := plus(heel, along, math.Hypot((v.cut.AtA-v.cut.AtB).MM(), v.t))
			k.across(k.place(i, heel.X, heel.Y), k.place(i, tip.X, tip.Y))
			return
		}
	}
}

func (k *joint) slotted(i int, end board.Face) bool {
	for _, f := range k.boards[i].Features {
		if k.of(f) && f.Enter == end {
			return true
		}
	}
	return false
}

// across writes the dimensions of the pieces about the plane from heel to tip.
func (k *joint) across(heel, tip point) {
	along := direct(heel, tip)
	over := point{X: along.Y, Y: -along.X}
	low, high, from, to := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for i := range k.boards {
		one := bench{b: k.boards[i]}
		for _, f := range k.boards[i].Features {
			e, ok := one.extentOf(f)
			if !k.of(f) || !ok {
				continue
			}
			for _, c := range k.within(i, e.quad) {
				q := sub(k.place(i, c.X, c.Y), heel)
				low, high = min(low, dot(q, over)), max(high, dot(q, over))
				from, to = min(from, dot(q, along)), max(to, dot(q, along))
			}
		}
	}
	if !(high > low) {
		return
	}
	p := k.paper(heel)
	out := k.k*length(sub(tip, heel)) + 9
	pa, pb := plus(p, over, k.k*low), plus(p, over, k.k*high)
	qa, qb := plus(pa, along, out), plus(pb, along, out)
	k.dims([]drawing.Step{
		{To: 'M', P: plus(pa, along, k.k*to+extGap)}, {To: 'L', P: plus(qa, along, extPast)},
		{To: 'M', P: plus(pb, along, k.k*to+extGap)}, {To: 'L', P: plus(qb, along, extPast)},
		{To: 'M', P: qa}, {To: 'L', P: qb},
	})
	k.head(qa, scaled(over, -1))
	k.head(qb, over)
	t := beyond(plus(middle(qa, qb), along, 3.6), along, k.say("view.across", words.Name("size", k.figureOf(unit.Nearest(high-low)))), math.Abs(along.Y) > math.Abs(along.X))
	if along.Y > 0.1 {
		t.At.Y += 1.3 * figureEm
	}
	k.figure(t)
	t.At.Y -= 1.3 * figureEm
	t.String = k.say("view.heel", words.Name("from", k.figureOf(unit.Nearest(from))), words.Name("to", k.figureOf(unit.Nearest(to))))
	k.figure(t)
}
