package view

import (
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// skirting is the height of the skirting board in the picture: decoration, not surveyed.
const (
	skirting     = 95.0
	skirtingStep = 78.0
	floorBoard   = 185.0
)

// room draws the wall, what meets it, and the skirting.
func (p *painter) room() {
	c := p.wallCorners()
	far := [4]point{}
	for i, q := range c {
		far[i] = p.towards(q)
	}
	id := p.w.ID
	none := drawing.Line{}
	p.path(drawing.LayerWall, id, "floor", none, drawing.Polygon(c[0], c[1], far[1], far[0]))
	p.path(drawing.LayerWall, id, "side", none, drawing.Polygon(c[1], c[2], far[2], far[1]))
	p.path(drawing.LayerWall, id, "side", none, drawing.Polygon(c[3], c[0], far[0], far[3]))
	p.path(drawing.LayerWall, id, "ceiling", none, drawing.Polygon(c[2], c[3], far[3], far[2]))
	p.floorBoards(c, id)
	p.path(drawing.LayerWall, id, "wall", none, drawing.Polygon(c[:]...)).ID = id + "/wall"
	p.skirting(c, id)
	var seams []drawing.Step
	for i, q := range c {
		seams = append(seams, drawing.Step{To: 'M', P: q}, drawing.Step{To: 'L', P: far[i]})
	}
	p.path(drawing.LayerWall, id, "", stroke("line", 1), seams)
	p.path(drawing.LayerWall, id, "", stroke("wall-ink", 1.5), p.overrun(c))
}

// wallCorners returns the corners of the wall from the lower left, counter-clockwise.
func (p *painter) wallCorners() [4]point {
	w := p.w
	floor, ceiling := w.FloorRise.Or(0).MM(), w.CeilingRise.Or(0).MM()
	return [4]point{{X: 0, Y: 0}, {X: w.Width.MM(), Y: floor}, {X: w.Width.MM(), Y: w.Height.MM() + ceiling}, {X: 0, Y: w.Height.MM()}}
}

// reach returns the scale by which the wall's outline, drawn out from the eye's point,
// lies outside the picture, and what is wanted beyond it, on every side.
func (p *painter) reach(width, height float64) float64 {
	k := 1.05
	b := p.box.Grown(p.o.Beyond)
	for _, d := range [...][2]float64{
		{p.eye.X - b.MinX, p.eye.X}, {b.MaxX - p.eye.X, width - p.eye.X},
		{p.eye.Y - b.MinY, p.eye.Y}, {b.MaxY - p.eye.Y, height - p.eye.Y},
	} {
		if d[1] > 0 {
			k = max(k, 1.05*d[0]/d[1])
		}
	}
	return min(k, 50)
}

// towards returns what lies towards the room from a place on the wall's outline: away
// from the eye's point in the picture, beyond its border.
func (p *painter) towards(q point) point { return plus(p.eye, sub(q, p.eye), p.far) }

// overrun is the wall's outline with its lines running past the corners, as a pencil
// does.
func (p *painter) overrun(c [4]point) []drawing.Step {
	over := 8 * p.px
	var out []drawing.Step
	for i := range c {
		a, b := c[i], c[(i+1)%4]
		d := direct(a, b)
		out = append(out, drawing.Step{To: 'M', P: plus(a, d, -over)}, drawing.Step{To: 'L', P: plus(b, d, over)})
	}
	return out
}

func (p *painter) floorBoards(c [4]point, id string) {
	var out []drawing.Step
	width := p.w.Width.MM()
	n := int(width / floorBoard)
	if n < 1 || n > 200 {
		return
	}
	rise := (c[1].Y - c[0].Y) / width
	for i := -3; i <= n+3; i++ {
		x := width/2 + floorBoard*(float64(i)-float64(n)/2)
		q := point{X: x, Y: rise * min(max(x, 0), width)}
		if x < 0 || x > width {
			continue
		}
		out = append(out, drawing.Step{To: 'M', P: q}, drawing.Step{To: 'L', P: p.towards(q)})
	}
	p.path(drawing.LayerWall, id, "", stroke("line", 0.75), out).Fade = 0.65
}

// skirting draws the skirting board, with a gap where a door or a window comes down to
// it.
func (p *painter) skirting(c [4]point, id string) {
	width := p.w.Width.MM()
	rise := 0.0
	if width > 0 {
		rise = (c[1].Y - c[0].Y) / width
	}
	for _, g := range p.skirtingRuns(width) {
		a, b := point{X: g[0], Y: rise * g[0]}, point{X: g[1], Y: rise * g[1]}
		up := point{X: 0, Y: skirting}
		p.path(drawing.LayerWall, id, "skirting", stroke("line", 1), drawing.Polygon(a, b, plus(b, up, 1), plus(a, up, 1)))
		p.path(drawing.LayerWall, id, "", stroke("line", 0.75), []drawing.Step{
			drawing.Move(a.X, a.Y+skirtingStep), drawing.LineTo(b.X, b.Y+skirtingStep),
		}).Fade = 0.5
	}
}

func (p *painter) skirtingRuns(width float64) [][2]float64 {
	runs := [][2]float64{{0, width}}
	for i := range p.w.Obstacles {
		o := &p.w.Obstacles[i]
		if o.Kind != plan.Door && o.Kind != plan.Window || o.Y.MM() > skirting {
			continue
		}
		from, to := o.X.MM(), (o.X + o.Width).MM()
		var next [][2]float64
		for _, r := range runs {
			if from > r[0] {
				next = append(next, [2]float64{r[0], min(from, r[1])})
			}
			if to < r[1] {
				next = append(next, [2]float64{max(to, r[0]), r[1]})
			}
			if from <= r[0] && to >= r[1] {
				continue
			}
		}
		runs = next
	}
	return runs
}

// studs draws what stands behind the lining: shaded and dotted where both edges were
// found, dashed and empty where a stud is only guessed.
func (p *painter) studs() {
	for _, s := range wall.Studs(*p.w) {
		half := s.Half
		known := s.State == plan.EdgesFound && half > 0
		if half == 0 {
			half = 2 * unit.Millimetre
		}
		l, r := (s.X - half).MM(), (s.X + half).MM()
		low := max(p.floor(s.X.MM())+skirting, 0)
		high := p.ceiling(s.X.MM())
		id := p.w.ID + "/stud" + itoa(s.Number)
		lines := []drawing.Step{drawing.Move(l, low), drawing.LineTo(l, high), drawing.Move(r, low), drawing.LineTo(r, high)}
		if known {
			it := p.path(drawing.LayerBehind, p.w.ID, "stud", drawing.Line{}, drawing.Rect(l, low, r-l, high-low))
			it.ID, it.Fade = id, 0.78
			p.path(drawing.LayerBehind, p.w.ID, "", dashed("line", 1, 2, 5), lines).Fade = 0.3
			continue
		}
		it := p.path(drawing.LayerBehind, p.w.ID, "", dashed("line", 1, 9, 7), lines)
		it.ID, it.Fade = id, 0.35
	}
}

// floor and ceiling return their heights at x.
func (p *painter) floor(x float64) float64 {
	return slope(p.w.FloorRise.Or(0).MM(), x, p.w.Width.MM())
}

func (p *painter) ceiling(x float64) float64 {
	return p.w.Height.MM() + slope(p.w.CeilingRise.Or(0).MM(), x, p.w.Width.MM())
}

func slope(rise, x, width float64) float64 {
	if width <= 0 {
		return 0
	}
	return rise * x / width
}

// bands hatches where cables are expected.
func (p *painter) bands() {
	for _, b := range wall.Bands(*p.w) {
		var c [4]point
		for i, q := range b.Points {
			c[i] = point{X: q.X.MM(), Y: q.Y.MM()}
		}
		name := "/sideways"
		if b.Upright {
			name = "/upright"
		}
		it := p.path(drawing.LayerBehind, p.w.ID, "", stroke("warn", 1), hatch(c[:], 11*p.px))
		it.ID, it.Fade = b.From+name, 0.62
		p.path(drawing.LayerBehind, p.w.ID, "", dashed("warn", 0.9, 6, 4), drawing.Polygon(c[:]...)).Fade = 0.25
	}
}

// hatch returns lines at 45° through a convex polygon, so far apart, at places that do not
// depend on the polygon, so that two hatches that meet go on in each other.
func hatch(poly []point, gap float64) []drawing.Step {
	low, high := span(poly, point{}, point{X: 1, Y: 1}, 1)
	var out []drawing.Step
	if !(gap > 0) || (high-low)/gap > 5000 {
		return nil
	}
	for k := int(low / gap); float64(k)*gap <= high; k++ {
		c := float64(k) * gap // y − x = c
		var hit []point
		for i := range poly {
			a, b := side(poly, i)
			fa, fb := a.Y-a.X-c, b.Y-b.X-c
			if (fa < 0) != (fb < 0) {
				hit = append(hit, plus(a, sub(b, a), fa/(fa-fb)))
			}
		}
		if len(hit) == 2 {
			out = append(out, drawing.Step{To: 'M', P: hit[0]}, drawing.Step{To: 'L', P: hit[1]})
		}
	}
	return out
}
