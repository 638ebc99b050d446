package panel

import (
	"cmp"
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// Survey's dimensions: the wall's size round it, the studs in a row across it, of every
// obstacle its size, and of the one that is chosen its place. Each figure has a few places
// and takes the first that is free of obstacles, modules and other figures: first those of
// the wall and of what is chosen, then the studs, then the obstacles from the largest. One
// that finds no place is left out, and on a narrow picture those of obstacles that are not
// chosen; the panel has them all.

// A surveyed is a figure with its field, and the dimension line that it stands at.
type surveyed struct {
	fig   fig
	field app.Field
	line  [2]drawing.Point // both the same where it has none
}

// A surveyor places figures on a wall.
type surveyor struct {
	s     *app.State
	w     plan.Wall
	px    float64       // mm for a pixel
	taken []drawing.Box // modules and figures
	out   []surveyed
}

// surveyRow is the height of the row of studs, as a share of the wall's.
const surveyRow = 0.62

// surveyOut is how far the wall's own dimensions stand from it, in pixels.
func surveyOut(s *app.State) float64 {
	if s.Size.Narrow() {
		return 14
	}
	return 20
}

// surveyOf places the figures of the survey in view.
func surveyOf(s *app.State) []surveyed {
	now, build := base(s)
	w, ok := now.Wall(s.Wall)
	if !ok || s.Job != app.Survey {
		return nil
	}
	v := surveyor{s: s, w: w, px: wholePixel(s.Camera)}
	for _, p := range resultOf(build, s.Arrangement).Placed {
		v.taken = append(v.taken, drawingBox(p.Box))
	}
	v.wall()
	order := v.bySize()
	for _, i := range order {
		if v.chosen(i) {
			v.obstacle(i)
		}
	}
	if s.On[app.Studs] {
		v.studs()
	}
	for _, i := range order {
		if !v.chosen(i) && !s.Size.Narrow() {
			v.obstacle(i)
		}
	}
	return v.out
}

// wholePixel is the size of a pixel on the wall, as it is at the moment.
func wholePixel(c app.Camera) float64 {
	if !(c.Scale > 0) {
		return 0
	}
	return 1 / c.Scale
}

// bySize are the obstacles from the largest to the smallest.
func (v *surveyor) bySize() []int {
	order := make([]int, len(v.w.Obstacles))
	for i := range order {
		order[i] = i
	}
	area := func(i int) float64 { return v.w.Obstacles[i].Width.MM() * v.w.Obstacles[i].Height.MM() }
	rank.By(order, func(a, b int) int { return cmp.Compare(area(b), area(a)) })
	return order
}

func (v *surveyor) chosen(i int) bool {
	return v.s.At.Kind == "obstacle" && v.s.At.ID == v.w.Obstacles[i].ID
}

// A berth is one of the places that a figure may take.
type berth struct {
	at     drawing.Point
	line   [2]drawing.Point
	anchor drawing.Anchor
}

// How figures are set, in pixels: height of their boxes and the part of it under their
// foot, the room at their sides, what lies between a line and a figure at it. page.css sets
// them so.
const (
	figHigh  = 20.5
	figUnder = 0.18
	figSides = 8.0
	figGap   = 4.0
	figText  = 15.0
	lineOut  = 10.0
)

// place puts a figure at its first free berth; one that must be seen at the first, where
// none is free.
func (v *surveyor) place(f fig, field app.Field, must bool, self drawing.Box, at ...berth) {
	for _, b := range at {
		if v.free(f, b, self) {
			v.put(f, field, b)
			return
		}
	}
	if must {
		v.put(f, field, v.settled(f, at[0]))
	}
}

// settled moves a figure from a berth to the nearest place where it touches no other.
func (v *surveyor) settled(f fig, b berth) berth {
	at := b.at
	f.anchor = b.anchor
	for far := 0.0; far < 300; far += 3 {
		for _, d := range [...]drawing.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
			f.at = drawing.Point{X: at.X + d.X*far*v.px, Y: at.Y + d.Y*far*v.px}
			if !v.touches(v.box(f)) {
				b.at = f.at
				return b
			}
		}
	}
	return b
}

// touches reports whether a box meets a module or a figure.
func (v *surveyor) touches(box drawing.Box) bool {
	return slices.ContainsFunc(v.taken, box.Meets)
}

func (v *surveyor) put(f fig, field app.Field, b berth) {
	f.at, f.anchor = b.at, b.anchor
	v.taken = append(v.taken, v.box(f))
	v.out = append(v.out, surveyed{f, field, b.line})
}

// box is what a figure fills on the page, in millimetres.
func (v *surveyor) box(f fig) drawing.Box {
	wide, under := drawing.TextWidth(f.text, figText)*v.px+figSides*v.px, figUnder*figHigh*v.px
	over := figHigh*v.px - under
	from := -wide / 2
	switch f.anchor {
	case drawing.AnchorStart:
		from = 0
	case drawing.AnchorEnd:
		from = -wide
	}
	if f.up {
		return drawing.Box{MinX: f.at.X - over, MaxX: f.at.X + under, MinY: f.at.Y + from, MaxY: f.at.Y + from + wide}
	}
	return drawing.Box{MinX: f.at.X + from, MaxX: f.at.X + from + wide, MinY: f.at.Y - under, MaxY: f.at.Y + over}
}

// free reports whether a figure may stand at a berth: on the wall, its line longer than
// itself, and clear of all else.
func (v *surveyor) free(f fig, b berth, self drawing.Box) bool {
	f.at, f.anchor = b.at, b.anchor
	box := v.box(f)
	if d := max(b.line[1].X-b.line[0].X, b.line[1].Y-b.line[0].Y); d > 0 && d < max(box.Width(), box.Height()) {
		return false
	}
	if box.MinX < 0 || box.MaxX > v.w.Width.MM() || box.MinY < 0 || box.MaxY > v.w.Height.MM() {
		return false
	}
	return !v.touches(box) && !slices.ContainsFunc(v.w.Obstacles, func(o plan.Obstacle) bool {
		t := obstacleBox(o)
		return t != self && t.Meets(box)
	})
}

func obstacleBox(o plan.Obstacle) drawing.Box {
	return drawing.Box{MinX: o.X.MM(), MinY: o.Y.MM(), MaxX: (o.X + o.Width).MM(), MaxY: (o.Y + o.Height).MM()}
}

// level and plumb are berths over or left of a dimension line.
func (v *surveyor) level(x1, x2, y float64) berth {
	return berth{drawing.Point{X: (x1 + x2) / 2, Y: y + figGap*v.px}, [2]drawing.Point{{X: x1, Y: y}, {X: x2, Y: y}}, drawing.AnchorMiddle}
}

func (v *surveyor) plumb(x, y1, y2 float64) berth {
	return berth{drawing.Point{X: x - figGap*v.px, Y: (y1 + y2) / 2}, [2]drawing.Point{{X: x, Y: y1}, {X: x, Y: y2}}, drawing.AnchorMiddle}
}

// wall are the two sizes of the wall.
func (v *surveyor) wall() {
	w, out := v.w, surveyOut(v.s)*v.px
	field := func(id, says, member string, l unit.Length) app.Field {
		return lengthField(v.s, "fig-"+id, term(v.s, says), line("set-wall", "wall", w.ID, member, "$"), l)
	}
	v.put(v.fig("wall/width", w.Width, false), field("wall/width", "page.wall-width", "width", w.Width),
		v.level(0, w.Width.MM(), w.Height.MM()+out))
	v.put(v.fig("wall/height", w.Height, true), field("wall/height", "page.wall-height", "height", w.Height),
		v.plumb(-out, 0, w.Height.MM()))
}

func (v *surveyor) fig(id string, l unit.Length, up bool) fig {
	return fig{id: id, up: up, text: v.s.Plan.Style().Length(l), figure: true}
}

// studs are the places of the studs that are known one by one. What would touch stands in
// another row.
func (v *surveyor) studs() {
	for i, st := range v.w.Studs.Each {
		n, x := numeral(i+1), st.X.MM()
		f := v.fig("stud/"+n, st.X, false)
		var at []berth
		for _, up := range [...]float64{9, 9 + figHigh, -5 - figHigh, 9 + 2*figHigh, -5 - 2*figHigh} {
			at = append(at, berth{at: drawing.Point{X: x, Y: surveyRow*v.w.Height.MM() + up*v.px}})
		}
		v.place(f, lengthField(v.s, "fig-"+f.id, say(v.s, "page.stud-at", words.Name("number", n)),
			line("set-stud", "wall", v.w.ID, "stud", i+1, "x", "$"), st.X), false, drawing.Box{}, at...)
	}
}

// obstacle are the sizes of an obstacle, and its place while it is chosen.
func (v *surveyor) obstacle(i int) {
	o, must, b := v.w.Obstacles[i], v.chosen(i), obstacleBox(v.w.Obstacles[i])
	field := func(member string, now unit.Length) app.Field {
		return lengthField(v.s, "fig-"+o.ID+"/"+member, say(v.s, "page.obstacle-"+member, words.Name("what", obstacleName(v.s, v.w, i))),
			line("set-obstacle", "wall", v.w.ID, "obstacle", o.ID, member, "$"), now)
	}
	out, deep := lineOut*v.px, figHigh*v.px+figGap*v.px
	v.place(v.fig(o.ID+"/width", o.Width, false), field("width", o.Width), must, b,
		v.level(b.MinX, b.MaxX, b.MaxY+out), v.level(b.MinX, b.MaxX, b.MinY-out-deep), v.level(b.MinX, b.MaxX, b.MaxY-out-deep))
	v.place(v.fig(o.ID+"/height", o.Height, true), field("height", o.Height), must, b,
		v.plumb(b.MaxX+out+deep, b.MinY, b.MaxY), v.plumb(b.MinX-out, b.MinY, b.MaxY), v.plumb(b.MaxX-out, b.MinY, b.MaxY))
	if !must {
		return
	}
	side := 8 * v.px
	v.place(v.fig(o.ID+"/x", o.X, false), field("x", o.X), true, b,
		berth{at: drawing.Point{X: b.MinX - side, Y: b.MinY + side/2}, anchor: drawing.AnchorEnd},
		berth{at: drawing.Point{X: b.MinX - side, Y: b.MaxY - deep}, anchor: drawing.AnchorEnd},
		berth{at: drawing.Point{X: b.MaxX + side, Y: b.MinY + side/2}, anchor: drawing.AnchorStart})
	v.place(v.fig(o.ID+"/y", o.Y, false), field("y", o.Y), true, b,
		berth{at: drawing.Point{X: (b.MinX + b.MaxX) / 2, Y: b.MinY - deep}},
		berth{at: drawing.Point{X: (b.MinX + b.MaxX) / 2, Y: b.MinY + side/2}},
		berth{at: drawing.Point{X: b.MaxX + side, Y: b.MinY - deep}, anchor: drawing.AnchorStart})
}

// surveyLines are the lines of Survey's dimensions.
func surveyLines(s *app.State, all []surveyed, box drawing.Box) kids {
	if len(all) == 0 {
		return nil
	}
	t, px := tracer{box: box}, wholePixel(s.Camera)
	for _, f := range all {
		if a, b := f.line[0], f.line[1]; a != b {
			t.dimension(a.X, a.Y, b.X, b.Y, px)
		}
	}
	now, _ := base(s)
	w, _ := now.Wall(s.Wall)
	if s.On[app.Studs] {
		for _, st := range w.Studs.Each {
			x, y, k := st.X.MM(), surveyRow*w.Height.MM(), 5*px
			t.segment(x-k, y, x+k, y)
			t.segment(x, y-k, x, y+k)
		}
	}
	return kids{ink("survey-lines", "dim", t.b.String())}
}

// dimension traces a level or plumb dimension line with its bars and ticks.
func (t *tracer) dimension(x1, y1, x2, y2, px float64) {
	t.segment(x1, y1, x2, y2)
	bx, by := 0.0, 8*px
	if x1 == x2 {
		bx, by = by, bx
	}
	for _, e := range [...][2]float64{{x1, y1}, {x2, y2}} {
		t.segment(e[0]-bx, e[1]-by, e[0]+bx, e[1]+by)
		t.segment(e[0]-4*px, e[1]-4*px, e[0]+4*px, e[1]+4*px)
	}
}

// surveyFigures are the figures of Survey's dimensions.
func surveyFigures(s *app.State) (out kids) {
	for _, f := range surveyOf(s) {
		out.add(f.fig.button(s, f.field))
	}
	return out
}
