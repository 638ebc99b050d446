package view

import (
	"ledgewright/engine/drawing"
	"ledgewright/engine/wall"
)

// The numbers of holes stand in pins beside them. The holes of one bracket that lie so
// close together on the screen that their pins could not stand apart have one pin with the
// first and the last number; where the wall is seen larger each has its own. A pin that
// finds no room is left out: the list has them all.

// Sizes of pins, in pixels: half their height, their text and the room at its sides, the
// room round a hole, and how near the holes of one pin lie.
const (
	pinHalf  = 9.5
	pinText  = 12.5
	pinSides = 4.5
	holeRoom = 6.0
	pinReach = 22.0
)

// pinOut are the distances of pins from their holes, in pixels.
func pinOut() [3]float64 { return [3]float64{16, 27, 40} }

// A pinned is a run of points that have one pin.
type pinned []wall.Point

// pins divides points into runs of one bracket that lie close together.
func (p *painter) pins(points []wall.Point) (out []pinned) {
	for i := range points {
		q := points[i]
		if n := len(out); n > 0 {
			a := out[n-1][0]
			if a.Module == q.Module && a.Bracket == q.Bracket && length(sub(pointAt(a), pointAt(q))) < pinReach*p.px {
				out[n-1] = append(out[n-1], q)
				continue
			}
		}
		out = append(out, pinned{q})
	}
	return out
}

func pointAt(q wall.Point) point { return point{X: q.X.MM(), Y: q.Y.MM()} }

// text is what stands in the pin.
func (n pinned) text() string {
	if len(n) == 1 {
		return n[0].Number
	}
	return n[0].Number + "–" + n[len(n)-1].Number
}

// middle is the middle of its holes.
func (n pinned) middle() point { return middle(pointAt(n[0]), pointAt(n[len(n)-1])) }

// numbered draws the holes with their numbers. Pins keep clear of each other, of all
// holes, and of what is written already.
func (p *painter) numbered(points []wall.Point, taken []drawing.Box) {
	for i := range points {
		q := &points[i]
		from := len(p.items)
		p.cross(q, pointAt(*q))
		if !p.draws(q.Module) {
			p.items = p.items[:from]
		}
		taken = append(taken, aroundPoint(pointAt(*q), holeRoom*p.px, holeRoom*p.px))
	}
	for _, n := range p.pins(points) {
		if c, ok := p.pinPlace(n, taken); ok {
			taken = append(taken, p.pinBox(n, c))
			if p.draws(n[0].Module) {
				p.pin(n, c)
			}
		}
	}
}

func aroundPoint(c point, x, y float64) drawing.Box {
	return drawing.Box{MinX: c.X - x, MinY: c.Y - y, MaxX: c.X + x, MaxY: c.Y + y}
}

func (p *painter) pinBox(n pinned, c point) drawing.Box {
	half := max(pinHalf, pinSides+drawing.TextWidth(n.text(), pinText)/2)
	return aroundPoint(c, half*p.px, pinHalf*p.px)
}

// pinPlace finds the nearest free place for a pin, upwards before downwards.
func (p *painter) pinPlace(n pinned, taken []drawing.Box) (point, bool) {
	at := n.middle()
	wide := p.pinBox(n, at).Width()/2/p.px + holeRoom + 1
	for _, out := range pinOut() {
		side := max(out, wide)
		for _, d := range [...]point{{X: out, Y: out}, {X: -out, Y: out}, {X: out, Y: -out}, {X: -out, Y: -out}, {Y: 1.6 * out}, {Y: -1.6 * out}, {X: side}, {X: -side}} {
			c := plus(at, d, p.px)
			if b := p.pinBox(n, c); !anyMeets(taken, b) && p.inside(b) {
				return c, true
			}
		}
	}
	return point{}, false
}

// inside reports whether something lies on the wall.
func (p *painter) inside(b drawing.Box) bool {
	return b.MinX >= 0 && b.MaxX <= p.w.Width.MM() && b.MinY >= p.floor(b.MinX) && b.MaxY <= p.ceiling(b.MinX)
}

// pin draws a pin; one that stands away from its hole has a leader.
func (p *painter) pin(n pinned, c point) {
	module, b := n[0].Module, p.pinBox(n, c)
	if far := sub(c, n.middle()); length(far) > 1.7*pinOut()[0]*p.px {
		p.path(drawing.LayerMarks, module, "", stroke("ink", 0.75), drawing.Segment(c.X-far.X, c.Y-far.Y, c.X, c.Y)).Fade = 0.4
	}
	p.path(drawing.LayerMarks, module, "leaf", drawing.Line{Tone: "ink", Width: 1.2}, drawing.RoundRect(b.MinX, b.MinY, b.Width(), b.Height(), pinHalf*p.px))
	it := p.add(drawing.Item{Group: module, Layer: drawing.LayerMarks, Kind: drawing.TextKind, Tone: "ink"})
	it.ID = module + "/number" + n.text()
	it.Text = drawing.Text{At: point{X: c.X, Y: c.Y - 4.3*p.px}, Size: pinText * p.px, String: n.text(), Figure: true, Bold: true}
}
