package view

import (
	"ledgewright/engine/drawing"
	"ledgewright/engine/wall"
)

// lines draws the chalk lines between their pegs.
func (p *painter) lines() {
	for i, l := range p.o.Lines {
		y, width := l.Height.MM(), p.w.Width.MM()
		if width <= 0 {
			continue
		}
		p.chalked(l.ID, uint64(i), y, width)
		k := 8 * p.px
		pegs := []drawing.Step{
			drawing.Move(-k, y+0.75*k), drawing.LineTo(0, y), drawing.LineTo(-k, y-0.75*k),
			drawing.Move(width+k, y+0.75*k), drawing.LineTo(width, y), drawing.LineTo(width+k, y-0.75*k),
		}
		p.path(drawing.LayerMarks, l.ID, "", stroke("chalk", 2), pegs).ID = l.ID + "/pegs"
	}
}

// chalked is the line itself, broken and a little off the straight as snapped chalk is.
// The line stands where it says within half a pixel.
func (p *painter) chalked(id string, seed uint64, y, width float64) {
	var main, dust []drawing.Step
	step := 18 * p.px
	for k := uint64(0); float64(k)*step < width; k++ {
		x := float64(k) * step
		h := plank(id, int(k)) ^ seed
		off := func(n uint, size float64) float64 { return (float64(h>>n&255)/127.5 - 1) * size * p.px }
		end := min(x+step*(0.86+0.3*float64(h>>40&255)/255), width)
		main = append(main, drawing.Move(x, y+off(0, 0.35)), drawing.LineTo(end, y+off(8, 0.35)))
		if h>>48&3 != 0 {
			dust = append(dust, drawing.Move(x+0.2*step, y+off(16, 1.3)), drawing.LineTo(min(x+step*(0.35+0.5*float64(h>>56)/255), width), y+off(24, 1.3)))
		}
	}
	it := p.path(drawing.LayerMarks, id, "", stroke("chalk", 1.5), main)
	it.ID, it.Fade = id+"/line", 0.12
	p.path(drawing.LayerMarks, id, "", stroke("chalk", 1), dust).Fade = 0.55
}

// chosen puts four corner marks round the module that is chosen.
func (p *painter) chosen(scenes []scene) {
	for i := range scenes {
		if scenes[i].id != p.o.Selected || p.o.Selected == "" {
			continue
		}
		b := scenes[i].box.Grown(5 * p.px)
		k := min(25*p.px, 0.3*b.Width(), 0.3*b.Height())
		path := p.storage(12)[:0]
		for _, c := range corners(b) {
			sx, sy := k, k
			if c.X > b.MinX {
				sx = -k
			}
			if c.Y > b.MinY {
				sy = -k
			}
			path = append(path, drawing.Move(c.X+sx, c.Y), drawing.LineTo(c.X, c.Y), drawing.LineTo(c.X, c.Y+sy))
		}
		it := p.path(drawing.LayerMarks, scenes[i].id, "", drawing.Line{Tone: "chalk", Width: 2.25}, path)
		it.ID = scenes[i].id + "/chosen"
	}
}

// points draws where the brackets are: filled with a ring where the point is known to
// meet wood or masonry, hollow where that is not known, slashed in the warning ink where
// there is only lining.
func (p *painter) points(points []wall.Point) {
	if p.o.Numbers {
		p.numbered(points, p.said)
		return
	}
	points = p.pointsOf(points)
	first := shown(points)
	for i := range points {
		if q := &points[i]; first[i] {
			p.mark(q, point{X: q.X.MM(), Y: q.Y.MM()}, held(points, i))
		}
	}
}

// pointsOf returns the points of the modules that are drawn: what a mark shows is of its own
// module.
func (p *painter) pointsOf(points []wall.Point) (out []wall.Point) {
	if !p.some {
		return points
	}
	for i := range points {
		if p.draws(points[i].Module) {
			out = append(out, points[i])
		}
	}
	return out
}

// shown picks the points that get a mark when holes are not numbered: the axes of rods,
// and of a bracket without rods its first hole.
func shown(points []wall.Point) []bool {
	out := make([]bool, len(points))
	rods := map[[2]string]bool{}
	for i := range points {
		if q := &points[i]; q.What == wall.Axis {
			out[i], rods[[2]string{q.Module, q.Bracket}] = true, true
		}
	}
	for i := range points {
		key := [2]string{points[i].Module, points[i].Bracket}
		if !rods[key] {
			out[i], rods[key] = true, true
		}
	}
	return out
}

// held returns what a bracket's holes meet at best: wood or masonry before the unknown
// before lining alone. A bracket without holes is asked at its axis.
func held(points []wall.Point, i int) wall.Structure {
	best := points[i].In
	found := false
	for k := range points {
		q := &points[k]
		if q.Module != points[i].Module || q.Bracket != points[i].Bracket || q.What != wall.Hole {
			continue
		}
		if !found || holdRank(q.In) > holdRank(best) {
			best, found = q.In, true
		}
	}
	return best
}

func holdRank(s wall.Structure) int {
	switch {
	case s.Wood() || s.Kind == wall.InMasonry:
		return 2
	case s.Kind == wall.InLining:
		return 0
	}
	return 1
}

// Marks have their full size up to a wall on which largePixel mm take a pixel. On one that
// is smaller on the screen they would hide the boards: there they keep their size on the
// wall, down to a ring with a radius of 4 px, and to crosses that can still be told apart.
const (
	largePixel = 7.0
	leastMark  = 4 / 8.5
	leastCross = 0.6
)

// markPixel is the size of a pixel for marks that shrink at most to a part.
func (p *painter) markPixel(least float64) float64 {
	return p.px * min(max(largePixel/p.px, least), 1)
}

// mark is a bracket point as it shows through the board.
func (p *painter) mark(q *wall.Point, at point, in wall.Structure) {
	id := q.Bracket + "/point" + q.Number
	px := p.markPixel(leastMark)
	small, ring := drawing.Circle(at.X, at.Y, 4.3*px), drawing.Circle(at.X, at.Y, 8.5*px)
	switch holdRank(in) {
	case 2:
		p.path(drawing.LayerMarks, q.Module, "", drawing.Line{Tone: "chalk", Width: 1.5}, ring)
		p.path(drawing.LayerMarks, q.Module, "chalk", drawing.Line{}, small).ID = id
	case 0:
		p.path(drawing.LayerMarks, q.Module, "leaf", drawing.Line{Tone: "warn", Width: 1.5}, drawing.Circle(at.X, at.Y, 6.2*px)).ID = id
		k := 8.5 * px
		p.path(drawing.LayerMarks, q.Module, "", stroke("warn", 1.5), drawing.Segment(at.X-k, at.Y-k, at.X+k, at.Y+k))
	default:
		p.path(drawing.LayerMarks, q.Module, "leaf", drawing.Line{Tone: "chalk", Width: 1.5}, drawing.Circle(at.X, at.Y, 6.2*px)).ID = id
	}
}

// cross is a hole mark for hanging: a cross and a circle; an axis is a cross alone.
func (p *painter) cross(q *wall.Point, at point) {
	px := p.markPixel(leastCross)
	k, r := 10*px, 4.6*px
	tone := drawing.Tone("ink")
	if q.In.Kind == wall.InLining {
		tone = "warn"
	}
	p.path(drawing.LayerMarks, q.Module, "", stroke(tone, 1.2), []drawing.Step{
		drawing.Move(at.X-k, at.Y), drawing.LineTo(at.X+k, at.Y), drawing.Move(at.X, at.Y-k), drawing.LineTo(at.X, at.Y+k),
	}).ID = q.Module + "/hole" + q.Number
	if q.In.Kind == wall.InLining { // not by its colour alone
		p.path(drawing.LayerMarks, q.Module, "", stroke(tone, 1.2), drawing.Segment(at.X-k, at.Y-k, at.X+k, at.Y+k))
	}
	if q.Drill > 0 {
		p.path(drawing.LayerMarks, q.Module, "leaf", drawing.Line{Tone: tone, Width: 1.5}, drawing.Circle(at.X, at.Y, r))
	}
}

func anyMeets(taken []drawing.Box, b drawing.Box) bool {
	for _, t := range taken {
		if t.Meets(b) {
			return true
		}
	}
	return false
}
