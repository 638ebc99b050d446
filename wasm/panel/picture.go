package panel

import (
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
	"ledgewright/wasm/app"
)

// The picture is three layers. The lowest is a drawing in millimetres, y down from the
// top of its box, in one group that the camera moves and enlarges by its attribute
// transform. On it lies the hand, the layer that takes the pointer; the figures are its
// kids, placed in millimetres of the wall, and the camera stands in three custom
// properties of their parent. So a step of panning or zooming changes one attribute and
// three properties, whatever hangs on the wall.
//
// What is in the hand is drawn above all else, step by step; what stays keeps the nodes
// that it had when it was picked up.

// A picture is what was drawn last, and from what.
type picture struct {
	from   source
	world  []Node // in the group that the camera moves
	figs   []fig
	box    drawing.Box
	groups [2]groups // of the picture without grain, and with

	held  string // the modules in the hand, for which the next was found
	still []Node // the world without them and without dimensions

	woods []drawing.Species // how woods look; made once
	hand  view.Held         // draws what is in the hand

	whole  drawing.Drawing // of all the wall
	moving carried
	sight  flatSight
}

// A carried is what was in the hand when it was drawn last, and from what.
type carried struct {
	from    source
	drawing drawing.Drawing
	figs    []fig
	nodes   []Node // only where no stage stands in the place of the picture
	written bool
}

// A source is all that a drawing depends on. Plans and builds are told apart by where
// their parts lie: an edit copies what it changes and shares the rest, and what is
// worked out again lies elsewhere.
type source struct {
	drawn             bool
	walls             *plan.Wall
	arrangements      *plan.Arrangement
	arrangementCount  int
	modules           *module.Result
	results           *wall.Result
	wall, arrangement string
	selected          string
	job               app.Job
	evening, studs    bool
	grain             bool
	bands, sizes      bool
	pixel             float64
	tight             bool
	point             string // the number of the wall point that is looked at
	style             unit.Style
}

func first[T any](all []T) *T {
	if len(all) == 0 {
		return nil
	}
	return &all[0]
}

// largestGrained is how many faces have their grain drawn, once nothing has changed for a
// while.
const largestGrained = 12

// grained is how many faces have their grain drawn.
func (f source) grained() int {
	if f.grain {
		return largestGrained
	}
	return 0
}

// base is what the picture shows as being there: what is decided, or, while something
// is in the hand, where it would land; a remedy that is looked at shows what would come of
// it, and a survey what is being typed.
func base(s *app.State) (plan.Plan, engine.Build) {
	if holding(s) || s.Preview.Tried || s.Job == app.Survey {
		return s.Shown()
	}
	return s.Plan, s.Build
}

// holding reports whether modules are in the hand.
func holding(s *app.State) bool { return s.Drag.Active && !s.Drag.Pan && s.Preview.Shown }

func sourceOf(s *app.State, p plan.Plan, b engine.Build) source {
	return source{
		drawn: true, walls: first(p.Walls), arrangements: first(p.Arrangements), arrangementCount: len(p.Arrangements),
		modules: first(b.Modules), results: first(b.Arrangements),
		wall: s.Wall, arrangement: s.Arrangement, selected: selected(s), job: s.Job,
		evening: evening(s), studs: s.On[app.Studs], bands: bands(s), grain: s.Rests && !s.Preview.Tried && !s.Painted.Shown,
		sizes: sized(s, b), tight: s.Size.Narrow(), point: numberAt(s, b),
		pixel: pixelOf(s.Camera), style: p.Style(),
	}
}

// mostSized is how many modules have their sizes shown at once.
const mostSized = 12

// sized reports whether dimensions are drawn: in Arrange of what is chosen, or of all
// where nothing is and they are few enough to be read.
func sized(s *app.State, b engine.Build) bool {
	if s.Job == app.Arrange && selected(s) == "" {
		return len(resultOf(b, s.Arrangement).Placed) <= mostSized
	}
	return s.Job != app.Make
}

// selected is the module whose sizes are shown.
func selected(s *app.State) string {
	if s.Job == app.Survey || s.Job == app.Hang {
		return ""
	}
	return lastOf(s.Chosen)
}

func bands(s *app.State) bool {
	return (s.Job == app.Survey || s.Job == app.Hang) && !s.On[app.Bands]
}

// pixelOf is the size on the wall that marks take for a pixel. While the picture is
// enlarged it keeps to steps of a half octave, so that marks need not be drawn anew at
// every moment of a pinch.
func pixelOf(c app.Camera) float64 {
	switch {
	case !(c.Scale > 0):
		return 0
	case c.Fitted:
		return 1 / c.Scale
	}
	const half = 1.4142135623730951
	at := 1.0
	for at*half < 1/c.Scale {
		at *= half
	}
	for at > 1/c.Scale {
		at /= half
	}
	return at
}

// numberAt is the number of the wall point that is looked at while holes are made.
func numberAt(s *app.State, b engine.Build) string {
	points := resultOf(b, s.Arrangement).Points
	if s.Job != app.Hang || s.At.Kind != "point" || s.At.Index < 1 || s.At.Index > len(points) {
		return ""
	}
	return points[s.At.Index-1].Number
}

// resultOf returns an arrangement worked out.
func resultOf(b engine.Build, id string) wall.Result {
	for i := range b.Arrangements {
		if b.Arrangements[i].Arrangement == id {
			return b.Arrangements[i]
		}
	}
	return wall.Result{}
}

// picture returns the three layers.
func (p *Painter) picture(s *app.State) part {
	now, build := base(s)
	w, ok := now.Wall(s.Wall)
	if !ok {
		p.last.sight.shown = false
		return el("div", "hand", class("hand"), attr("data-hand=picture"))
	}
	still, moving, figs := p.draw(s, now, build, w)
	c := s.Camera
	p.last.sight.see(s)
	world := svg("g", "world", class("world"))
	world.Kids = still
	hand := el("div", "hand", class("hand"), attr("data-hand=picture"), attr("tabindex=0"), attr("role=group"),
		at("aria-label", term(s, "page.hand")),
		set("--s", decimal(c.Scale)), set("--ox", decimal(s.Size.Width/2-c.X*c.Scale)), set("--oy", decimal(s.Size.Height/2+c.Y*c.Scale)),
		figures(s, now, build, figs), overFigures(s, build))
	return parts{
		svg("svg", "picture", class(pictureClass(s)), attr("aria-hidden=true"),
			svg("g", "camera", at("transform", transform(c, s.Size, p.last.box)), world,
				svg("g", "moving", class("moving"), kids(moving)), svg("g", "over", over(s, p.last.box)))),
		hand,
	}
}

func pictureClass(s *app.State) string {
	names := "picture"
	if unchosen(s) {
		names += " unchosen"
	}
	if s.Painted.Shown {
		names += " staged"
	}
	return names
}

// draw returns the nodes of what stays, of what is in the hand, and the texts. The wall
// is drawn only if it is not the one that was drawn last. While a stage stands in the
// place of the picture what is in the hand has no nodes, and stays where it was.
func (p *Painter) draw(s *app.State, now plan.Plan, build engine.Build, w plan.Wall) (still, moving []Node, figs []fig) {
	l := &p.last
	if !holding(s) {
		p.rest(s, now, build, w)
		l.letGo()
		return l.world, nil, l.figs
	}
	p.rest(s, s.Plan, s.Build, w)
	if held := strings.Join(s.Drag.Modules, " "); l.held != held {
		l.letGo()
		l.held, l.still = held, nil
	}
	l.carry(s, now, build, w)
	if s.Painted.Shown {
		return l.world, nil, l.moving.figs
	}
	if l.still == nil {
		l.still = without(l.world, s.Drag.Modules)
	}
	return l.still, l.written(), l.moving.figs
}

// carry draws what is in the hand.
func (l *picture) carry(s *app.State, now plan.Plan, build engine.Build, w plan.Wall) {
	from := sourceOf(s, now, build)
	if l.moving.from == from {
		return
	}
	a, _ := now.Arrangement(s.Arrangement)
	d := l.hand.Draw(w, resultOf(build, s.Arrangement), build.Modules, viewOptions(s, now, w, a, from), s.Drag.Modules)
	l.moving = carried{from: from, drawing: d, figs: figsOf(d.Items)}
	l.sight.carry(&l.whole, s.Drag.Modules)
}

// written is what is in the hand, as nodes.
func (l *picture) written() []Node {
	m := &l.moving
	if !m.written {
		sink := nodeSink{}
		drawing.WriteItems(m.drawing.Items, m.drawing, l.svgOptions(m.from, 0), &sink)
		m.nodes, m.written = sink.roots, true
	}
	return m.nodes
}

// letGo is the end of carrying.
func (l *picture) letGo() {
	if l.moving.from.drawn {
		l.moving = carried{}
		l.sight.letGo()
	}
}

// rest draws what stays as it is.
func (p *Painter) rest(s *app.State, now plan.Plan, build engine.Build, w plan.Wall) {
	from := sourceOf(s, now, build)
	if from == p.last.from {
		return
	}
	a, _ := now.Arrangement(s.Arrangement)
	d := view.Wall(w, resultOf(build, s.Arrangement), build.Modules, viewOptions(s, now, w, a, from))
	groups := &p.last.groups[min(from.grained(), 1)]
	sink := groups.next(d.Box, from.evening)
	drawing.WriteSVG(d, p.last.svgOptions(from, from.grained()), &sink)
	*groups = sink.keeping
	p.last.from, p.last.whole, p.last.box, p.last.figs, p.last.held = from, d, d.Box, figsOf(d.Items), ""
	p.last.letGo()
	p.last.sight.number++
	p.last.world = withoutTitle(sink.roots[0].Kids)
}

// beyond is how far the room goes on round the picture, so that none of it ends while
// the picture is moved about.
func beyond(w plan.Wall) float64 { return 3 * max(w.Width.MM(), w.Height.MM()) }

func (p *picture) svgOptions(from source, grain int) drawing.SVGOptions {
	if p.woods == nil {
		p.woods = view.Woods()
	}
	o := drawing.SVGOptions{Scale: 1, NoText: true, KeepLines: true, Prefix: "w-", Woods: p.woods, Grain: grain}
	if from.evening {
		o.Theme = drawing.Evening
	}
	return o
}

// dimensions is the group of the drawing's dimensions.
const dimensions = "dim"

// without leaves out the groups of modules, and the dimensions. A group's key is what it
// belongs to, and its layer.
func without(nodes []Node, modules []string) []Node {
	out := make([]Node, 0, len(nodes))
	for _, n := range nodes {
		group, _, _ := strings.Cut(n.Key, "/")
		if group != dimensions && !slices.Contains(modules, group) {
			out = append(out, n)
		}
	}
	return out
}

func viewOptions(s *app.State, now plan.Plan, w plan.Wall, a plan.Arrangement, from source) view.Options {
	o := view.Options{
		Style: now.Style(), Selected: from.selected, Shallow: s.Job == app.Arrange || s.Job == app.Make || s.Job == app.Agree,
		Evening: from.evening, ShowStuds: from.studs, ShowBands: from.bands, ShowSizes: from.sizes && s.Job != app.Survey,
		ShowMarks: s.Job != app.Survey, Numbers: s.Job == app.Hang, Pixel: from.pixel, Tight: from.tight, Point: from.point, Beyond: beyond(w),
	}
	if s.Job == app.Arrange {
		o.Lines = a.Lines
	}
	for _, m := range now.Modules {
		if m.GrainWrap {
			o.Wrapped = append(o.Wrapped, m.ID)
		}
	}
	return o
}

func withoutTitle(nodes []Node) []Node {
	for i := range nodes {
		if nodes[i].Tag == "title" {
			return append(nodes[:i:i], nodes[i+1:]...)
		}
	}
	return nodes
}

// transform takes the drawing's millimetres to the pixels of the picture.
func transform(c app.Camera, size app.Size, box drawing.Box) string {
	x, y := c.Pixel(box.MinX, box.MaxY, size)
	k := decimal(c.Scale)
	return "matrix(" + k + " 0 0 " + k + " " + decimal(x) + " " + decimal(y) + ")"
}

// decimal writes a number for the screen.
func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 32) }

// A nodeSink takes a picture's elements as nodes.
type nodeSink struct {
	root  Node // the last of them
	roots []Node
	stack []Node
}

// Open begins an element.
func (t *nodeSink) Open(tag, key string, attrs []drawing.Attr) {
	n := &Element{Tag: tag, Key: key, SVG: true, Attrs: make([]Attr, len(attrs))}
	for i, a := range attrs {
		n.Attrs[i] = Attr(a)
	}
	t.stack = append(t.stack, n)
}

// Text adds a run of text.
func (t *nodeSink) Text(s string) {
	top := t.stack[len(t.stack)-1]
	top.add(text(s))
}

// Close ends an element.
func (t *nodeSink) Close() {
	n := t.stack[len(t.stack)-1]
	t.stack = t.stack[:len(t.stack)-1]
	t.put(n)
}

// put adds a whole element.
func (t *nodeSink) put(n Node) {
	if len(t.stack) == 0 {
		t.root = n
		t.roots = append(t.roots, n)
		return
	}
	t.stack[len(t.stack)-1].add(n)
}

// severities is the worst finding of each module.
func severities(b engine.Build) map[string]finding.Severity {
	worst := map[string]finding.Severity{}
	for _, f := range b.Findings {
		if f.Place.Module != "" && f.Kind.Severity > worst[f.Place.Module] {
			worst[f.Place.Module] = f.Kind.Severity
		}
	}
	return worst
}
