package panel

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A tracer writes paths in the drawing's millimetres: x from the left of its box, y
// down from its top.
type tracer struct {
	b      strings.Builder
	box    drawing.Box
	digits []byte
}

func (t *tracer) to(command byte, x, y float64) {
	t.b.WriteByte(command)
	t.number(x - t.box.MinX)
	t.b.WriteByte(' ')
	t.number(t.box.MaxY - y)
}

// number writes a tenth of a millimetre.
func (t *tracer) number(x float64) {
	n := int64(math.Round(x * 10))
	t.digits = strconv.AppendInt(t.digits[:0], n/10, 10)
	if n > -10 && n < 0 {
		t.digits = append(t.digits[:0], '-', '0')
	}
	if rest := n % 10; rest != 0 {
		t.digits = append(t.digits, '.', byte('0'+max(rest, -rest)))
	}
	t.b.Write(t.digits)
}

func (t *tracer) segment(x1, y1, x2, y2 float64) {
	t.to('M', x1, y1)
	t.to('L', x2, y2)
}

// outlines traces boards.
func (t *tracer) outlines(all []module.Outline) {
	for _, o := range all {
		for i, q := range o.Points {
			command := byte('L')
			if i == 0 {
				command = 'M'
			}
			t.to(command, q.X.MM(), q.Y.MM())
		}
		t.b.WriteByte('Z')
	}
}

// ink returns a path of the layer over the drawing. Its lines keep their width.
func ink(key, names, d string) Node {
	return svg("path", key, class(names), at("d", d))
}

// outlined returns boards as one path.
func outlined(key, names string, box drawing.Box, all []module.Outline) Node {
	t := tracer{box: box}
	t.outlines(all)
	return ink(key, names, t.b.String())
}

// over is what lies on the drawing: what would be, what was, what is chosen, and what
// the hand sticks to.
func over(s *app.State, box drawing.Box) kids {
	var out kids
	out.add(ghosts(s, box)...)
	out.add(suggestions(s, box)...)
	if s.Job == app.Arrange {
		out.add(corners(s, box)...)
		out.add(leftRow(s, box)...)
	}
	switch s.Job {
	case app.Survey:
		out = append(out, surveyLines(s, surveyOf(s), box)...)
		out = append(out, pointed(s, box)...)
	case app.Hang:
		out = append(out, ringed(s, box)...)
	}
	return append(out, snaps(s, box)...)
}

// pointed marks the obstacle or stud that is looked at.
func pointed(s *app.State, box drawing.Box) kids {
	now, _ := base(s)
	w, _ := now.Wall(s.Wall)
	px, t := pixelOf(s.Camera), tracer{box: box}
	for i, st := range w.Studs.Each {
		if s.At.Kind == "stud" && s.At.Index == i+1 {
			t.segment(st.X.MM(), 0, st.X.MM(), w.Height.MM())
		}
	}
	for _, o := range w.Obstacles {
		if s.At.Kind == "obstacle" && s.At.ID == o.ID {
			t.corners(module.Box{MinX: o.X, MinY: o.Y, MaxX: o.X + o.Width, MaxY: o.Y + o.Height}, 5*px, 25*px)
		}
	}
	if t.b.Len() == 0 {
		return nil
	}
	return kids{ink("pointed", "sel", t.b.String())}
}

// ghosts are the dashed outlines of what would stand elsewhere; while something is in
// the hand or is tried, of where it was.
func ghosts(s *app.State, box drawing.Box) (out kids) {
	if !s.Preview.Shown || s.Job == app.Survey {
		return nil
	}
	was, would := resultOf(s.Build, s.Arrangement), resultOf(s.Preview.Build, s.Arrangement)
	name := "ghost"
	if s.Drag.Active || s.Preview.Tried {
		was, would, name = would, was, "ghost was"
	}
	for i := range would.Placed {
		p := &would.Placed[i]
		if o := placedIn(was.Placed, p.Module, i); o == nil || !samePlace(o, p) {
			out = append(out, outlined("ghost-"+p.Module, name, box, p.Outlines))
		}
	}
	return append(out, ghostLines(s, box)...)
}

// placedIn returns the place of a module, which is looked for first where it most likely is.
func placedIn(all []wall.Placed, id string, likely int) *wall.Placed {
	if likely < len(all) && all[likely].Module == id {
		return &all[likely]
	}
	for i := range all {
		if all[i].Module == id {
			return &all[i]
		}
	}
	return nil
}

func samePlace(a, b *wall.Placed) bool {
	if a.Box != b.Box || a.Turn != b.Turn || a.Flip != b.Flip || len(a.Outlines) != len(b.Outlines) {
		return false
	}
	for i := range a.Outlines {
		if !slices.Equal(a.Outlines[i].Points, b.Outlines[i].Points) {
			return false
		}
	}
	return true
}

// ghostLines are chalk lines at the height that is being typed.
func ghostLines(s *app.State, box drawing.Box) (out kids) {
	now, _ := s.Plan.Arrangement(s.Arrangement)
	would, _ := s.Preview.Plan.Arrangement(s.Arrangement)
	w, _ := s.Plan.Wall(s.Wall)
	for _, l := range would.Lines {
		if !slices.ContainsFunc(now.Lines, func(o plan.Line) bool { return o.ID == l.ID && o.Height == l.Height }) {
			t := tracer{box: box}
			t.segment(0, l.Height.MM(), w.Width.MM(), l.Height.MM())
			out.add(ink("ghost-"+l.ID, "ghost", t.b.String()))
		}
	}
	return out
}

// suggestions are the places that fit.
func suggestions(s *app.State, box drawing.Box) (out kids) {
	id := lastOf(s.Chosen)
	poses, _ := s.Suggested(id)
	p, ok := pieceOf(s, s.Plan, s.Build, id)
	if !ok || s.Job != app.Arrange {
		return nil
	}
	for i, pose := range poses {
		out.add(outlined("place-"+numeral(i+1), "ghost", box, wall.Place(p.worked, pose).Outlines))
	}
	return out
}

// corners are the marks round what is chosen, besides the module whose sizes are shown.
func corners(s *app.State, box drawing.Box) (out kids) {
	_, b := base(s)
	px := pixelOf(s.Camera)
	all := resultOf(b, s.Arrangement).Placed
	for i := range all {
		p := &all[i]
		if !slices.Contains(s.Chosen, p.Module) || p.Module == selected(s) {
			continue
		}
		t := tracer{box: box}
		t.corners(p.Box, 5*px, 25*px)
		out.add(ink("chosen-"+p.Module, "sel", t.b.String()))
	}
	return out
}

// corners traces the four corners of a box, so far out from it and so long.
func (t *tracer) corners(b module.Box, out, long float64) {
	l, r, d, u := b.MinX.MM()-out, b.MaxX.MM()+out, b.MinY.MM()-out, b.MaxY.MM()+out
	kx, ky := min(long, 0.3*(r-l)), min(long, 0.3*(u-d))
	for _, c := range [...][4]float64{{l, d, kx, ky}, {r, d, -kx, ky}, {r, u, -kx, -ky}, {l, u, kx, -ky}} {
		t.to('M', c[0]+c[2], c[1])
		t.to('L', c[0], c[1])
		t.to('L', c[0], c[1]+c[3])
	}
}

// ringed marks the hole that is looked at.
func ringed(s *app.State, box drawing.Box) kids {
	_, b := base(s)
	number := numberAt(s, b)
	for _, q := range resultOf(b, s.Arrangement).Points {
		if q.Number == number {
			t, r := tracer{box: box}, ringRadius*pixelOf(s.Camera)
			t.ring(q.X.MM(), q.Y.MM(), r)
			return kids{ink("ringed", "sel", t.b.String())}
		}
	}
	return nil
}

// ringRadius is that of the ring round the hole that is looked at, in pixels.
const ringRadius = 14.0

// ring traces a circle as four curves.
func (t *tracer) ring(x, y, r float64) {
	for _, s := range drawing.Circle(x, y, r) {
		switch s.To {
		case 'C':
			t.to('C', s.P1.X, s.P1.Y)
			t.to(' ', s.P2.X, s.P2.Y)
			t.to(' ', s.P.X, s.P.Y)
		case 'Z':
			t.b.WriteByte('Z')
		default:
			t.to(s.To, s.P.X, s.P.Y)
		}
	}
}

// rowBelow is how far below the floor the row of the chosen module's left edge stands,
// in pixels; its figure stands under it.
func rowBelow(s *app.State) float64 {
	if s.Size.Narrow() {
		return 14
	}
	return 20
}

// rowFigure is how far under that row the foot of the figure is.
const rowFigure = 21.0

// leftRow dimensions the left edge of the chosen module from the wall's left end.
func leftRow(s *app.State, box drawing.Box) kids {
	_, b := base(s)
	at, ok := placedOf(b, s.Arrangement, selected(s))
	if !ok || at.Box.MinX <= 0 {
		return nil
	}
	px := pixelOf(s.Camera)
	x, y := at.Box.MinX.MM(), -rowBelow(s)*px
	line, thin := tracer{box: box}, tracer{box: box}
	line.segment(0, y, x, y)
	for _, e := range [...]float64{0, x} {
		line.segment(e, y-8*px, e, y+8*px)
		line.segment(e-4*px, y-4*px, e+4*px, y+4*px)
	}
	thin.segment(x, y, x, at.Box.MinY.MM())
	return kids{ink("left-line", "dim", line.b.String()), ink("left-leader", "dim thin", thin.b.String())}
}

func placedOf(b engine.Build, arrangement, id string) (wall.Placed, bool) {
	if id == "" {
		return wall.Placed{}, false
	}
	if at := placedIn(resultOf(b, arrangement).Placed, id, 0); at != nil {
		return *at, true
	}
	return wall.Placed{}, false
}

// snaps are the lines to which the hand sticks.
func snaps(s *app.State, box drawing.Box) (out kids) {
	w, _ := s.Plan.Wall(s.Wall)
	for _, n := range s.Drag.Snaps {
		t := tracer{box: box}
		if n.Axis == "x" {
			t.segment(n.At.MM(), 0, n.At.MM(), w.Height.MM())
		} else {
			t.segment(0, n.At.MM(), w.Width.MM(), n.At.MM())
		}
		out.add(ink("snap-"+n.Axis, "snap-line "+n.Kind, t.b.String()))
	}
	return out
}

// overFigures are the texts and buttons that belong to what lies on the drawing.
func overFigures(s *app.State, b engine.Build) kids {
	var out kids
	if s.Job == app.Arrange {
		out.add(leftFigure(s)...)
		out.add(placeButtons(s)...)
	}
	out.add(snapWords(s, b)...)
	return append(out, surveyFigures(s)...)
}

// leftFigure is the figure of leftRow.
func leftFigure(s *app.State) kids {
	now, b := base(s)
	p, ok := pieceOf(s, now, b, selected(s))
	if !ok || !p.stands || p.placed.Box.MinX <= 0 {
		return nil
	}
	x := p.placed.Box.MinX
	f := spot(p.m.ID+"/left", x/2, -unit.Nearest((rowBelow(s)+rowFigure)*pixelOf(s.Camera)), x, s)
	return kids{f.button(s, p.moveX(s, "fig-"+f.id, say(s, "page.left-of", p.named()), x))}
}

// placeButtons are the numbers on the places that fit.
func placeButtons(s *app.State) (out kids) {
	id := lastOf(s.Chosen)
	poses, _ := s.Suggested(id)
	for i, pose := range poses {
		n := numeral(i + 1)
		beside := float64(i-1) * 36 * pixelOf(s.Camera) // places may lie close together
		f := fig{id: "place-" + n, at: drawing.Point{X: pose.X.MM() + beside, Y: pose.Y.MM()}}
		out.add(f.placed("button", "fig place", attr("type=button"),
			at("aria-label", say(s, "page.place-number", words.Name("number", n))), onClick(placeHere(s, pose)), text(n)))
	}
	return out
}

// snapWords say what the hand sticks to.
func snapWords(s *app.State, b engine.Build) (out kids) {
	w, _ := s.Plan.Wall(s.Wall)
	for _, n := range s.Drag.Snaps {
		f := fig{id: "snap-" + n.Axis, at: drawing.Point{X: 0, Y: n.At.MM()}, anchor: drawing.AnchorStart}
		if n.Axis == "x" {
			f.at = drawing.Point{X: n.At.MM(), Y: w.Height.MM()}
		}
		out.add(f.placed("span", "note from snapped", text(snapSays(s, b, n))))
	}
	return out
}

// snapSays is a snap in words.
func snapSays(s *app.State, _ engine.Build, n wall.Snap) string {
	if n.Kind == wall.SnapStud || n.Kind == wall.SnapLine {
		return term(s, "page.snap-"+n.Kind)
	}
	return say(s, "page.snap-"+n.Kind, words.Name("to", toName(s, s.Plan, n.To)))
}
