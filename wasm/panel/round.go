package panel

import (
	"strconv"
	"strings"

	"ledgewright/engine/drawing"
	"ledgewright/engine/view"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// The picture in the round is layered as the flat one is. Its drawing is in millimetres
// from the middle of the boards, as large as they are there, so that moving and enlarging
// it change the camera's transform alone; turning it and pulling it apart draw it anew. Its
// faces are in painter's order and change places from one drawing to the next. So they have
// neither groups nor keys: the first element stays the first and gets another outline.

// A round is the picture in the round that was drawn last, and from what.
type round struct {
	from  roundSource
	world []Node
	spots []nameSpot // where the names of modules may stand
	woods []drawing.Species
	bar   made
	apart int

	drawing drawing.Drawing
	number  int  // of it
	written bool // as nodes
	shown   bool
	view    View
}

// A roundSource is all that a drawing in the round depends on.
type roundSource struct {
	pulled         *view.Pulled
	yaw, pitch     float64
	evening, grain bool
	pixel          float64 // what is smaller each way, in millimetres, is left out
	turning        bool    // and what is thinner
}

// roundBox is the box that the drawing is written in. It goes on beyond it.
const roundBox = 2000.0

// picture returns the layers.
func (r *round) picture(s *app.State) part {
	r.draw(s)
	c := s.RoundPicture()
	box := drawing.Box{MinX: -roundBox / 2, MinY: -roundBox / 2, MaxX: roundBox / 2, MaxY: roundBox / 2}
	world := svg("g", "world", class("world"))
	world.Kids = r.world
	names := "picture"
	if s.Painted.Shown {
		names = "picture staged"
	}
	return parts{
		svg("svg", "picture", class(names), attr("aria-hidden=true"),
			svg("g", "camera", at("transform", transform(c, s.Size, box)), world)),
		el("div", "hand", class("hand"), attr("data-hand=picture"), attr("tabindex=0"), attr("role=group"),
			at("aria-label", roundName(s)),
			set("--s", decimal(c.Scale)), set("--ox", decimal(s.Size.Width/2-c.X*c.Scale)), set("--oy", decimal(s.Size.Height/2+c.Y*c.Scale)),
			r.names(s, c)),
	}
}

// roundName says what is seen, and from where.
func roundName(s *app.State) string {
	ids := s.InSight()
	what := say(s, "round.modules", words.Count("n", len(ids)))
	if len(ids) == 1 {
		what = labelOf(s, ids[0])
	}
	return say(s, "round.picture", words.Name("what", what), words.Name("seen", s.SeenFrom()), words.Name("apart", s.PulledApart()))
}

// draw draws the boards, if anything is not as it was. While a stage stands in the place
// of the picture only it has them.
func (r *round) draw(s *app.State) {
	r.shown, r.view = true, seen(s, s.RoundPicture())
	from := roundSourceOf(s)
	if from != r.from {
		c := s.Round.Camera
		c.X, c.Y, c.Span = 0, 0, roundBox
		d := s.Round.Pulled.Draw(view.RoundOptions{Camera: c, Aspect: 1, Evening: from.evening, Pixels: roundBox / from.pixel})
		d.Items = from.shown(d.Items)
		r.from, r.drawing, r.spots = from, d, spotsOf(s, d.Items, s.RoundPicture().Scale)
		r.number++
		r.written = false
	}
	if !r.written && !s.Painted.Shown {
		r.write()
	}
}

func roundSourceOf(s *app.State) roundSource {
	c := s.RoundPicture()
	c.Fitted = false // so that its pixel goes in steps
	from := roundSource{
		pulled: s.Round.Pulled, yaw: s.Round.Camera.Yaw, pitch: s.Round.Camera.Pitch,
		evening: evening(s), grain: s.Rests && !s.Painted.Shown, pixel: pixelOf(c), turning: s.Drag.Active,
	}
	if from.turning {
		from.pixel *= 2
	}
	return from
}

// shown leaves out the strip of floor before the wall, which would end in mid-air, and
// while the boards are being turned the facets of arrises and bores that are thinner than
// they need be for that.
func (from *roundSource) shown(items []drawing.Item) []drawing.Item {
	kept := items[:0]
	for i := range items {
		it := &items[i]
		if it.ID == "floor" || from.turning && it.Kind == drawing.WoodKind && it.Line.Width == 0 && from.thin(it.Path) {
			continue
		}
		kept = append(kept, *it)
	}
	return kept
}

func (from *roundSource) thin(path []drawing.Step) bool {
	b := drawing.Bounds(path)
	return min(b.Width(), b.Height()) < from.pixel
}

// write makes nodes of the drawing.
func (r *round) write() {
	if r.woods == nil {
		r.woods = view.Woods()
	}
	o := drawing.SVGOptions{Scale: 1, NoText: true, KeepLines: true, Prefix: "w-", Woods: r.woods}
	if r.from.evening {
		o.Theme = drawing.Evening
	}
	if r.from.grain {
		o.Grain = largestGrained
	}
	sink := flatSink{}
	drawing.WriteSVG(r.drawing, o, &sink)
	r.world, r.written = sink.nodes, true
}

// A flatSink takes a picture's paths as nodes in a row, without their groups, and what they
// refer to.
type flatSink struct {
	nodeSink
	nodes []Node
	defs  int // how deep in definitions
}

// Open begins an element.
func (t *flatSink) Open(tag, key string, attrs []drawing.Attr) {
	switch {
	case t.defs > 0 || tag == "defs":
		t.defs++
		t.nodeSink.Open(tag, key, attrs)
	case tag == "path":
		n := &Element{Tag: tag, SVG: true, Attrs: make([]Attr, 0, len(attrs))}
		for _, a := range attrs {
			if a.Name != "id" {
				n.Attrs = append(n.Attrs, Attr(a))
			} else if strings.Contains(a.Value, "_rod") || strings.Contains(a.Value, "_plate") {
				n.Attrs = append(n.Attrs, Attr{"class", "metal"})
			}
		}
		t.nodes = append(t.nodes, n)
	}
}

// Text adds a run of text to definitions.
func (t *flatSink) Text(s string) {
	if t.defs > 0 {
		t.nodeSink.Text(s)
	}
}

// Close ends an element.
func (t *flatSink) Close() {
	if t.defs == 0 {
		return
	}
	t.nodeSink.Close()
	if t.defs--; t.defs == 0 {
		t.nodes = append(t.nodes, t.root)
	}
}

// tools are the buttons of the picture in the round, and the slider.
func (r *round) tools(s *app.State) Node {
	if r.apart != s.Round.Apart {
		r.bar, r.apart = made{}, s.Round.Apart
	}
	return r.bar.once(s, roundTools)
}

func roundTools(s *app.State) Node {
	return el("div", "tools", class("tools"), attr("role=group"), at("aria-label", term(s, "round.tools")),
		el("div", "undoing", class("set"), back(s), again(s)),
		el("div", "zooming", class("set"),
			bare("zoom-out", "minus", term(s, "page.zoom-out"), app.Zoom{By: 1 / zoomStep}),
			bare("fit", "fit", term(s, "round.fit"), app.Fit{}),
			bare("zoom-in", "plus", term(s, "page.zoom-in"), app.Zoom{By: zoomStep})),
		el("div", "showing", class("set gap"), aloneTool(s), lamp(s)),
		el("div", "rounding", class("set rounding"), roundTool(s)),
		sides(s), turns(s), slider(s))
}

// roundTool is the way into the view in the round and out of it.
func roundTool(s *app.State) Node {
	return toggle(s, "round", term(s, "round.show"), app.InTheRound, s.InRound())
}

// turns are the four ways to turn.
func turns(s *app.State) Node {
	n := el("div", "turning", class("set"))
	for _, t := range [...]struct {
		way  string
		x, y float64
	}{{"left", -1, 0}, {"up", 0, 1}, {"down", 0, -1}, {"right", 1, 0}} {
		n.add(bare("turn-"+t.way, t.way, term(s, "round.turn-"+t.way), app.Orbit{X: t.x * app.OrbitStep, Y: t.y * app.OrbitStep}))
	}
	return n
}

// sides are the fixed views.
func sides(s *app.State) Node {
	n := el("div", "sides", class("set sides"), attr("role=group"), at("aria-label", term(s, "round.sides")))
	for _, side := range view.Sides() {
		n.add(button("side-"+string(side), term(s, "round."+string(side)), app.SeeFrom{Side: side}, class("side")))
	}
	return n
}

// slider pulls the boards apart.
func slider(s *app.State) Node {
	says := s.PulledApart()
	return el("label", "pulling", class("set pulling"), at("for", "f-apart"),
		el("span", "", text(term(s, "round.pull"))), el("output", "apart-says", at("for", "f-apart"), text(says)),
		el("input", "apart", at("id", "f-apart"), attr("type=range"), attr("min=0"), attr("max=100"), attr("step=5"),
			at("value", strconv.Itoa(s.Round.Apart)), at("aria-label", term(s, "round.pull")), at("aria-valuetext", says),
			on("input", app.PullApart{})))
}

// aloneTool shows only the module that is chosen.
func aloneTool(s *app.State) part {
	id := s.AloneAt()
	if id == "" {
		return nil
	}
	return toggle(s, "alone", say(s, "round.alone", words.Name("module", labelOf(s, id))), app.Alone, s.On[app.Alone])
}
