package view

import (
	"math"

	"ledgewright/engine/drawing"
)

// RoundOptions say what a picture in the round shows.
type RoundOptions struct {
	Camera  Camera
	Aspect  float64 // width of the picture in heights; 0: 1
	Evening bool    // lights are on
	Bare    bool    // without the wall
	Pixels  float64 // of the shorter side of the picture on the screen; 0: 800
}

// Fit returns a camera that looks from where c does and shows all of it, in a picture so
// many times as wide as high.
func (u *Pulled) Fit(c Camera, aspect float64) Camera {
	c.X, c.Y, c.Span = 0, 0, 1000
	if len(u.groups) == 0 {
		return c
	}
	s := u.sight(c)
	box := drawing.Box{MinX: math.Inf(1), MinY: math.Inf(1), MaxX: math.Inf(-1), MaxY: math.Inf(-1)}
	for _, g := range u.groups {
		for i := range g.bodies {
			b := s.window(&g.bodies[i].hull)
			box = box.With(point{X: b.MinX, Y: b.MinY}).With(point{X: b.MaxX, Y: b.MaxY})
		}
	}
	if !(aspect > 0) {
		aspect = 1
	}
	const room = 1.12 // a little air all round
	c.X, c.Y = (box.MinX+box.MaxX)/2, (box.MinY+box.MaxY)/2
	c.Span = room * max(box.Width()/max(aspect, 1), box.Height()*min(aspect, 1), minSpan)
	return c
}

// A roundPainter collects the items of a picture in the round.
type roundPainter struct {
	*sight
	o     RoundOptions
	pixel float64
	items []drawing.Item
	steps []drawing.Step
}

// Draw returns the picture that a camera sees.
func (u *Pulled) Draw(o RoundOptions) drawing.Drawing {
	window := o.Camera.window(o.Aspect)
	pixels := o.Pixels
	if !(pixels > 0) {
		pixels = 800
	}
	p := roundPainter{sight: u.sight(o.Camera), o: o, pixel: o.Camera.Span / pixels}
	faces := p.order()
	p.items = make([]drawing.Item, 0, len(faces)+len(faces)/8+8)
	p.behind()
	for _, f := range faces {
		p.sheet(f)
		if o.Evening && len(f.part.glows) > 0 {
			p.glow(f)
		}
	}
	return drawing.Drawing{Title: u.round.wall.Name, Lang: lang, Box: window, Pixel: p.pixel, Items: p.items}
}

// behind draws the wall and the floor where the eye is before the one and above the other:
// then they are behind everything.
func (p *roundPainter) behind() {
	w := &p.round.wall
	width, height := w.Width.MM(), w.Height.MM()
	if p.o.Bare || p.eye.side(spot{z: 1}, 0) <= level3 || !(width > 0 && height > 0) {
		return
	}
	hair := stroke("hair", 0.8)
	p.flat("wall", "wall", hair, spot{}, spot{x: width}, spot{width, height, 0}, spot{y: height})
	if p.eye.side(spot{y: 1}, 0) > level3 {
		p.flat("floor", "floor", hair, spot{}, spot{x: width}, spot{width, 0, floorDeep}, spot{z: floorDeep})
	}
}

// floorDeep is how much of the floor is shown before the wall, mm.
const floorDeep = 450.0

// flat draws a part of the room. It grows as the modules move apart.
func (p *roundPainter) flat(id string, tone drawing.Tone, line drawing.Line, corners ...spot) {
	at := make([]point, len(corners))
	for i, q := range corners {
		d := q.minus(p.round.middle)
		at[i] = p.eye.see(q.plus(spot{d.x, d.y, 0}, p.round.growth*p.share))
	}
	p.items = append(p.items, drawing.Item{ID: id, Layer: drawing.LayerWall, Kind: drawing.PathKind, Tone: tone, Line: line, Path: drawing.Polygon(at...)})
}

// sheet draws one face, and its outline where something ends there.
func (p *roundPainter) sheet(f *sheet) {
	path := p.path(f)
	if f.cave >= 0 && p.tiny(path) {
		return
	}
	id := f.part.id + "/" + itoa(f.face)
	if f.piece > 0 {
		id += "/" + itoa(f.piece)
	}
	it := drawing.Item{ID: id, Group: p.group3(f.part), Layer: drawing.LayerBoards, Kind: drawing.WoodKind, Path: path}
	if f.part.b == nil {
		it.Kind, it.Tone, it.Line = drawing.PathKind, "hair", drawing.Line{Tone: "ink-2", Width: 0.7}
	} else {
		it.Wood = p.wood(f)
		it.Line = drawing.Line{Tone: "arris", Width: 0.7}
	}
	line := it.Line
	edges := []drawing.Step(nil)
	if f.plain || f.seams() {
		it.Line = drawing.Line{}
		edges = p.edges(f)
	}
	p.items = append(p.items, it)
	if !f.plain && len(edges) > 0 {
		p.items = append(p.items, drawing.Item{Group: it.Group, Layer: it.Layer, Kind: drawing.PathKind, Line: line, Path: edges})
	}
}

func (p *roundPainter) group3(of *part) string {
	if of.b == nil {
		return of.id
	}
	return of.b.ID
}

// tiny reports whether a path is less than a pixel each way: a facet of a bore in a wall
// that is seen whole is not worth its place in the list.
func (p *roundPainter) tiny(path []drawing.Step) bool {
	b := drawing.Bounds(path)
	return max(b.Width(), b.Height()) < p.pixel
}

// seams reports whether a face has edges where nothing ends.
func (s *sheet) seams() bool {
	for _, loop := range s.loops {
		for i := range loop {
			if loop[i].seam {
				return true
			}
		}
	}
	return false
}

// path is the closed path of a face, holes going round the other way.
func (p *roundPainter) path(f *sheet) []drawing.Step {
	n := 0
	for _, loop := range f.loops {
		n += len(loop) + 1
	}
	out := p.room(n)
	for _, loop := range f.loops {
		for i, m := range loop {
			to := byte('L')
			if i == 0 {
				to = 'M'
			}
			out = append(out, drawing.Step{To: to, P: p.eye.see(m.spot)})
		}
		out = append(out, drawing.Close())
	}
	return out
}

// room hands out storage for a path of n steps.
func (p *roundPainter) room(n int) []drawing.Step {
	if cap(p.steps)-len(p.steps) < n {
		p.steps = make([]drawing.Step, 0, max(n, 2048))
	}
	from := len(p.steps)
	p.steps = p.steps[:from+n]
	return p.steps[from : from : from+n]
}

// edges is the path of the edges of a face that are none of a cut's.
func (p *roundPainter) edges(f *sheet) (out []drawing.Step) {
	for _, loop := range f.loops {
		pen := false
		for i, m := range loop {
			if m.seam {
				pen = false
				continue
			}
			if !pen {
				out = append(out, drawing.Step{To: 'M', P: p.eye.see(m.spot)})
			}
			out = append(out, drawing.Step{To: 'L', P: p.eye.see(loop[(i+1)%len(loop)].spot)})
			pen = true
		}
	}
	return out
}

// wood lays the plank's coordinates on a face: those at its middle stand for all of it.
func (p *roundPainter) wood(f *sheet) drawing.Wood {
	q := f.part
	local := spot{f.n.dot(q.axes[0]), f.n.dot(q.axes[1]), f.n.dot(q.axes[2])}
	w := drawing.Wood{Species: q.b.Wood, Seed: q.seed, Shade: p.shade(f)}
	middle := f.middle()
	at := middle.minus(q.origin.plus(q.shift, p.share))
	u, v, t := at.dot(q.axes[0]), at.dot(q.axes[1]), at.dot(q.axes[2])
	along, across := q.axes[0], q.axes[1]
	w.WindowAlong, w.WindowAcross = q.window+u, v
	switch {
	case math.Abs(local.x) > 0.5:
		w.End = true
		along, across = q.axes[1], f.n.cross(q.axes[1])
		w.WindowAlong, w.WindowAcross = v, t
	case math.Abs(local.y) > 0.7:
		w.Edge = true
		across, w.WindowAcross = q.axes[2], t
	}
	w.Origin = p.eye.see(middle)
	w.Along, w.Across = p.eye.direction(middle, along), p.eye.direction(middle, across)
	return w
}

// middle is the mean of a face's outer corners.
func (s *sheet) middle() (m spot) {
	for _, q := range s.loops[0] {
		m = m.plus(q.spot, 1/float64(len(s.loops[0])))
	}
	return m
}

// Shades in the round: those of the elevation for tops, uprights and undersides; daylight
// comes from the left, and what is turned to the wall or cut into a board has less of it.
const (
	shadeLeft = shadeUpright + 0.05
	shadeFar  = shadeUpright - 0.05
	shadeBack = -0.34
	shadeCut  = -0.12
)

// shade is by the face's normal, each direction by its share in it.
func (p *roundPainter) shade(f *sheet) float64 {
	n := f.n
	x, y, z := shadeLeft, shadeTop, 0.0
	if n.x > 0 {
		x = shadeFar
	}
	if n.y < 0 {
		y = shadeUnder
	}
	if n.z < 0 {
		z = shadeBack
	}
	s := float64(n.x*n.x*x) + float64(n.y*n.y*y) + float64(n.z*n.z*z)
	if f.cave >= 0 {
		s += shadeCut
	}
	if p.o.Evening {
		s += lit3(f.lux)
	}
	return s
}
