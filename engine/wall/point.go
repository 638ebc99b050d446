package wall

import (
	"cmp"
	"slices"
	"strconv"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// A mark is a wall point with where it comes from.
type mark struct {
	Point
	body, bear int // indices
}

// setOut fills the wall points, the two lines they are measured from, the shims, and what
// is to be said of them.
func (j *job) setOut() {
	marks := j.marks()
	j.datum(marks)
	for i := range marks {
		j.measure(&marks[i])
	}
	order := make([]*mark, len(marks))
	for i := range marks {
		order[i] = &marks[i]
	}
	rank.By(order, j.inOrder)
	j.r.Points = make([]Point, len(marks))
	for i, m := range order {
		m.Number = strconv.Itoa(i + 1)
		j.r.Points[i] = m.Point
	}
	j.judge(order)
	j.shim()
}

// inOrder is the order of the numbers: modules in their order, then x, then height, both
// as they are printed.
func (j *job) inOrder(a, b *mark) int {
	return cmp.Or(
		cmp.Compare(j.bodies[a.body].rank, j.bodies[b.body].rank), cmp.Compare(a.body, b.body),
		cmp.Compare(a.DX, b.DX), cmp.Compare(a.DY, b.DY), cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
}

// marks returns every rod's axis and every hole of the fixings that work.
func (j *job) marks() []mark {
	n := 0
	for i := range j.bodies {
		for _, h := range j.bodies[i].bears {
			n += len(h.fix.Rods) + len(h.fix.Screws)
		}
	}
	out := make([]mark, 0, n)
	for i := range j.bodies {
		for k, h := range j.bodies[i].bears {
			out = j.ofFixing(out, i, k, h)
		}
	}
	return out
}

func (j *job) ofFixing(to []mark, i, k int, h bearing) []mark {
	b := &j.bodies[i]
	for _, r := range h.fix.Rods {
		if ownHole(h.fix, r) {
			continue
		}
		to = append(to, mark{body: i, bear: k})
		m := &to[len(to)-1]
		m.What, m.Screw = Axis, r.Diameter
		j.stand(m, b, h, r.At)
	}
	for nth, s := range h.fix.Screws {
		to = append(to, mark{body: i, bear: k})
		m := &to[len(to)-1]
		m.What, m.Screw, m.Rod, m.Slotted, m.nth = Hole, s.Diameter, s.Rod, s.Slotted, nth
		m.Drill = drill(j.w, s)
		m.Depth, m.Grip = j.depth(h.fix, s)
		at := board.Point{U: h.fix.At.U + s.DU, V: h.fix.At.V, W: h.fix.At.W + s.DW}
		j.stand(m, b, h, at)
	}
	return to
}

// ownHole reports whether a rod sits in a hole that stands among the screws.
func ownHole(f *board.Fixing, r board.Rod) bool {
	return slices.ContainsFunc(f.Screws, func(s board.Screw) bool {
		return s.Rod && (f.At.U+s.DU-r.At.U).Abs() <= unit.Touch && (f.At.W+s.DW-r.At.W).Abs() <= unit.Touch
	})
}

// drill returns the hole that a screw asks for: its plug's in masonry.
func drill(w *plan.Wall, s board.Screw) unit.Length {
	if s.Plug > 0 && meets(w, nil, 0).Kind == InMasonry {
		return s.Plug
	}
	return s.Drill
}

// depth returns how deep a hole is from the wall's face, and how deep in the structure. A
// rod's length counts from the structure; a screw's from its head, on the plate, which
// stands on the wall or, let into the lining, on the structure.
func (j *job) depth(f *board.Fixing, s board.Screw) (fromFace, inStructure unit.Length) {
	front, _ := lining(*j.w)
	if s.Rod {
		return front + s.Length, s.Length
	}
	in := s.Length - f.Plate.Thickness
	if f.Seat == "lining" {
		return front + in, in
	}
	return in, max(in-front, 0)
}

// stand fills where a mark is on the wall and what it meets there.
func (j *job) stand(m *mark, b *body, h bearing, at board.Point) {
	p, _ := b.g.Point(h.on.Frame, at)
	m.Module, m.Bracket = b.m.ID, h.fix.Bracket
	m.X, m.Y = p.X, p.Y
	m.In = meets(j.w, j.studs, p.X)
	if m.What != Hole {
		return
	}
	for i := range j.bands {
		if j.bands[i].in(p, m.Drill/2) {
			m.Band = j.bands[i].From
			break
		}
	}
	for i := range j.w.Obstacles {
		o := &j.w.Obstacles[i]
		if hides(o) && boxMeets(obstacleBox(o), p, m.Drill/2) {
			m.Behind = o.ID
			break
		}
	}
}

// hides reports whether there is no drilling behind an obstacle. Pictures and furniture
// can be taken away.
func hides(o *plan.Obstacle) bool { return o.Kind != plan.Picture && o.Kind != plan.Furniture }

// datum chooses the two lines, as [Arrange] says.
func (j *job) datum(marks []mark) {
	d := &j.a.Datum
	j.r.Level, j.r.Plumb = d.Level.Or(j.level(marks)), d.Plumb.Or(j.plumb(marks))
}

func (j *job) level(marks []mark) unit.Length {
	if len(j.a.Lines) > 0 {
		return j.a.Lines[0].Height
	}
	top, rod := unit.Length(0), false
	for i := range marks {
		m := &marks[i]
		isRod := m.Rod || m.What == Axis
		if i == 0 || isRod && !rod || isRod == rod && m.Y > top {
			top, rod = m.Y, isRod
		}
	}
	top, _ = j.tape.Rounded(top)
	return top
}

func (j *job) plumb(marks []mark) unit.Length {
	if len(marks) == 0 {
		return 0
	}
	least := &marks[0]
	for i := range marks {
		if marks[i].X < least.X {
			least = &marks[i]
		}
	}
	x, _ := j.tape.Rounded(j.bodies[least.body].p.Box.MinX)
	return x
}

// measure gives a mark its running figures, each from its line and never from another
// figure, rounded to the site tape.
func (j *job) measure(m *mark) {
	m.DX, m.RoundX = j.tape.Rounded(m.X - j.r.Plumb)
	m.DY, m.RoundY = j.tape.Rounded(m.Y - j.r.Level)
}

// shim fills the shims of all plates that lie on the wall, from the nearest readings of
// how far the wall is out of plumb.
func (j *job) shim() {
	for i := range j.bodies {
		for _, h := range j.bodies[i].bears {
			lean, ok := j.lean(j.bodies[i].g, h)
			if ok && lean.Abs() >= thinnest {
				j.r.Shims = append(j.r.Shims, Shim{Module: j.bodies[i].m.ID, Bracket: h.fix.Bracket, Thickness: lean.Abs(), Top: lean < 0})
			}
		}
	}
}

// A shim thinner than a sheet of paper is not set; our assumption.
const thinnest = 50 * unit.Micrometre

// lean returns how far the upper end of a plate comes nearer to the room than its lower
// end: plate height × slope of the wall there.
func (j *job) lean(g Placing, h bearing) (unit.Length, bool) {
	high := h.fix.Plate.AlongW
	if h.fix.Attitude == board.Plumb {
		high = h.fix.Plate.AlongU
	}
	if high == 0 || h.fix.Seat == "module" {
		return 0, false
	}
	at, _ := g.Point(h.on.Frame, h.fix.At)
	slope, ok := slopeAt(j.w.Plumb, at.X)
	return unit.Nearest(high.MM() * slope), ok
}

// slopeAt returns by how much the wall leans into the room for each unit of height at x:
// between two readings in proportion, beyond the last one as there.
func slopeAt(readings []plan.Plumb, x unit.Length) (float64, bool) {
	var left, right *plan.Plumb
	for i := range readings {
		r := &readings[i]
		switch {
		case r.Over <= 0:
		case r.X <= x && (left == nil || r.X > left.X):
			left = r
		case r.X > x && (right == nil || r.X < right.X):
			right = r
		}
	}
	switch {
	case left == nil && right == nil:
		return 0, false
	case left == nil:
		return slope(right), true
	case right == nil:
		return slope(left), true
	}
	part := (x - left.X).MM() / (right.X - left.X).MM()
	return slope(left) + float64(part*(slope(right)-slope(left))), true
}

func slope(r *plan.Plumb) float64 { return r.Lean.MM() / r.Over.MM() }

// holes returns the box of the holes among some marks, with their radius.
func holes(marks []*mark, is func(*mark) bool) (box module.Box, n, first int) {
	first = -1
	for i, m := range marks {
		if !is(m) {
			continue
		}
		r := m.Drill / 2
		b := module.Box{MinX: m.X - r, MinY: m.Y - r, MaxX: m.X + r, MaxY: m.Y + r}
		if n == 0 {
			box, first = b, i
		} else {
			box = module.Box{MinX: min(box.MinX, b.MinX), MinY: min(box.MinY, b.MinY), MaxX: max(box.MaxX, b.MaxX), MaxY: max(box.MaxY, b.MaxY)}
		}
		n++
	}
	return box, n, first
}
