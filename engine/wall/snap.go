package wall

import (
	"slices"
	"strconv"

	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Kinds of snapping, in the order in which they go before each other.
const (
	SnapStud   = "stud"   // a bracket on the middle of a found stud
	SnapLine   = "line"   // underside or top on a line at a height
	SnapFlush  = "flush"  // an edge with an edge of something that stands still
	SnapGap    = "gap"    // a gap like that between two others
	SnapCentre = "centre" // a middle with a middle
)

// snapKinds lists them in that order.
var snapKinds = [...]string{SnapStud, SnapLine, SnapFlush, SnapGap, SnapCentre}

// What of a module a snap holds, besides a bracket.
const (
	edgeLeft   = "left"
	edgeRight  = "right"
	edgeBottom = "bottom"
	edgeTop    = "top"
	edgeMiddle = "middle"
)

// A Snap is one thing that a module sticks to while it is moved.
type Snap struct {
	Kind string      // a Snap… constant
	Axis string      // "x" or "y": what it fixes
	At   unit.Length // where the thing lies on the wall: x of a stud, height of a line, edge or middle of the other
	By   unit.Length // how far the module was moved to meet it
	To   string      // id of the module, line, obstacle or wall, number of the stud, or a constant such as LeftEnd

	Of   string      // what of the module meets it: "left", "right", "bottom", "top", "middle", or the id of a bracket
	Gap  unit.Length // left between the module and At
	Like [2]string   // the pair whose gap is repeated; for a middle between two, these two
}

// SnapOptions say how near is near, and what may be stuck to.
type SnapOptions struct {
	Reach unit.Length // how near a thing must be to be stuck to
	Leave unit.Length // how far the module must be pulled off again, if farther than Reach
	Held  []Snap      // what it stuck to at the last step
	Off   []string    // kinds that are switched off
	Lines []plan.Line // besides those of the arrangement, and after them
	Gaps  shop.Gaps   // left where edges face each other
}

// SnapTo returns the pose to which a module goes when it is wanted at a pose, and what it
// sticks to there: at most one thing along x and one along y. Moving names the modules in
// the hand; the pose is that of the first, and the others keep their places beside it, as
// in the arrangement. All that is said of a module's edges and middle is said of the box
// round all of them.
//
// What is in reach goes by kind, then by distance. Of equals the first counts, in the
// order: brackets of the modules in the hand and studs from the left; the arrangement's
// lines, underside before top; modules in the order of their poses, obstacles in theirs,
// the wall itself, the middle between two; like edges before unlike ones, lower before
// higher. Height goes before x, which is then asked at the height that was found.
//
// What a module stuck to at the last step holds it until it is pulled Leave away, or until
// something of a kind that goes before it is in reach.
//
// Where a module and a thing face each other their edges do not meet: a gap is left as
// the shop leaves it. Otherwise an edge goes flush with either edge of the other.
func SnapTo(w plan.Wall, a plan.Arrangement, modules []module.Result, moving []string, pose plan.Pose, o SnapOptions) (plan.Pose, []Snap) {
	s := snapper{w: &w, o: &o}
	s.gather(&a, modules, moving, pose)
	if !s.any {
		return pose, nil
	}
	var out []Snap
	for _, upright := range [...]bool{true, false} {
		got, ok := s.along(upright, &a)
		if !ok {
			continue
		}
		m := move{dx: got.By}
		if upright {
			m = move{dy: got.By}
		}
		pose.X, pose.Y = pose.X+m.dx, pose.Y+m.dy
		s.box = shifted(s.box, m)
		out = slices.Insert(out, 0, got)
	}
	return pose, out
}

// A snapper is one call of SnapTo.
type snapper struct {
	w    *plan.Wall
	o    *SnapOptions
	any  bool       // something with an outline moves
	box  module.Box // of all that moves
	pins []pin
	rest []thing
	row  []slab // working space of along
}

// A pin is the axis of a bracket that works, by its x.
type pin struct {
	bracket string
	x       unit.Length
}

// A thing stands still on the wall.
type thing struct {
	id     string
	box    module.Box
	gap    unit.Length // left to what faces it; 0 where nothing need be
	module bool
	bars   bool // nothing may stand over it
	middle bool // its middle is worth sticking to
}

// gather fills what moves and what does not.
func (s *snapper) gather(a *plan.Arrangement, modules []module.Result, moving []string, pose plan.Pose) {
	at := make(map[string]int, len(modules))
	for i := range modules {
		at[modules[i].ID] = i
	}
	if len(moving) == 0 {
		return
	}
	by, known := move{}, false
	for i := range a.Poses {
		if p := &a.Poses[i]; p.Module == moving[0] {
			by, known = move{pose.X - p.X, pose.Y - p.Y}, true
		}
	}
	if i, ok := at[moving[0]]; ok {
		s.take(&modules[i], pose)
	}
	s.rest = make([]thing, 0, len(a.Poses)+len(s.w.Obstacles))
	for i := range a.Poses {
		p := a.Poses[i]
		k, ok := at[p.Module]
		switch {
		case !ok || p.Module == moving[0] || len(modules[k].Outlines) == 0:
		case !slices.Contains(moving, p.Module):
			box := PlacingOf(modules[k], p).box(&modules[k])
			s.rest = append(s.rest, thing{p.Module, box, s.o.Gaps.Touching, true, true, true})
		case known:
			p.X, p.Y = p.X+by.dx, p.Y+by.dy
			s.take(&modules[k], p)
		}
	}
	s.rest = append(s.rest, obstacles(s.w, s.o.Gaps)...)
}

// take adds a module to what moves.
func (s *snapper) take(m *module.Result, p plan.Pose) {
	if len(m.Outlines) == 0 {
		return
	}
	g := PlacingOf(*m, p)
	box := g.box(m)
	if s.any {
		box = boxOf([]module.XY{{X: box.MinX, Y: box.MinY}, {X: box.MaxX, Y: box.MaxY}, {X: s.box.MinX, Y: s.box.MinY}, {X: s.box.MaxX, Y: s.box.MaxY}})
	}
	s.any, s.box = true, box
	if !slices.Contains(s.o.Off, SnapStud) {
		b := body{m: m, g: g}
		s.pins = append(s.pins, b.pins()...)
	}
}

// pins returns the axes of the brackets that work in the body's pose: of each rod, or of
// the bracket where it has none.
func (b *body) pins() (out []pin) {
	for i := range b.m.Fixings {
		f := &b.m.Fixings[i]
		on := b.board(f.Board)
		if on == nil || !b.g.works(f, on) {
			continue
		}
		for _, r := range f.Rods {
			at, _ := b.g.Point(on.Frame, r.At)
			out = append(out, pin{f.Bracket, at.X})
		}
		if len(f.Rods) == 0 {
			at, _ := b.g.Point(on.Frame, f.At)
			out = append(out, pin{f.Bracket, at.X})
		}
	}
	return out
}

// box returns the box of a placed module's outlines; it must have some. In a quarter turn
// the corners of a box come to corners.
func (g Placing) box(m *module.Result) module.Box {
	if g.Turn%unit.QuarterTurn == 0 {
		return boxOf([]module.XY{g.XY(module.XY{X: m.Box.MinX, Y: m.Box.MinY}), g.XY(module.XY{X: m.Box.MaxX, Y: m.Box.MaxY})})
	}
	var out module.Box
	for i := range m.Outlines {
		for k, p := range m.Outlines[i].Points {
			p = g.XY(p)
			if i == 0 && k == 0 {
				out = module.Box{MinX: p.X, MinY: p.Y, MaxX: p.X, MaxY: p.Y}
			}
			out.MinX, out.MaxX = min(out.MinX, p.X), max(out.MaxX, p.X)
			out.MinY, out.MaxY = min(out.MinY, p.Y), max(out.MaxY, p.Y)
		}
	}
	return out
}

// obstacles returns the obstacles of a wall. The middle of a socket, switch or pipe is
// nothing to hang a shelf by.
func obstacles(w *plan.Wall, g shop.Gaps) (out []thing) {
	j := job{s: &shop.Profile{Gaps: g}}
	for i := range w.Obstacles {
		o := &w.Obstacles[i]
		t := thing{id: o.ID, box: obstacleBox(o), bars: blocks(o)}
		t.middle = o.Kind != plan.Socket && o.Kind != plan.Switch && o.Kind != plan.Pipe
		if t.bars {
			t.gap = j.obstacleGap(o)
		}
		out = append(out, t)
	}
	return out
}

// A slab is a thing seen along one axis.
type slab struct {
	*thing
	lo, hi unit.Length // along the axis
	faces  bool        // it and what moves have something across the axis in common
}

// reachOf returns a box's reach along x, or along y, and its reach across that.
func reachOf(b module.Box, upright bool) (lo, hi, from, to unit.Length) {
	if upright {
		return b.MinY, b.MaxY, b.MinX, b.MaxX
	}
	return b.MinX, b.MaxX, b.MinY, b.MaxY
}

// along returns what the module sticks to along x, or along y, if anything.
func (s *snapper) along(upright bool, a *plan.Arrangement) (Snap, bool) {
	c := choice{o: s.o, axis: "x", names: [2]string{edgeLeft, edgeRight}}
	if upright {
		c.axis, c.names = "y", [2]string{edgeBottom, edgeTop}
	}
	for _, h := range s.o.Held {
		if h.Axis == c.axis {
			h.By = 0
			c.held = h
		}
	}
	var from, to unit.Length
	c.lo, c.hi, from, to = reachOf(s.box, upright)
	s.row = s.row[:0]
	for i := range s.rest {
		lo, hi, f, t := reachOf(s.rest[i].box, upright)
		s.row = append(s.row, slab{&s.rest[i], lo, hi, overlap(from+unit.Touch, to-unit.Touch, f, t)})
	}
	low, high := s.limits(upright)
	if upright {
		c.lines(a.Lines, s.o.Lines)
	} else {
		c.studs(Studs(*s.w), s.pins)
	}
	c.flush(s.row)
	if !upright {
		c.flushWith(&low, true)
		c.flushWith(&high, true)
	}
	c.gaps(s.row)
	c.middles(s.row)
	if !upright {
		c.centre(s.w.ID, 0, s.w.Width, [2]string{})
	}
	c.between(s.row, low, high)
	return c.result()
}

// limits returns the wall's ends, or its floor and ceiling above the box's middle, as
// things that what moves stands between.
func (s *snapper) limits(upright bool) (low, high slab) {
	g := &s.o.Gaps
	if upright {
		x := s.box.MinX + (s.box.MaxX-s.box.MinX)/2
		floor, ceiling := floorAt(s.w, x), ceilingAt(s.w, x)
		return slab{&thing{id: Floor, bars: true}, floor, floor, true}, slab{&thing{id: Ceiling, gap: g.Ceiling, bars: true}, ceiling, ceiling, true}
	}
	return slab{&thing{id: LeftEnd, gap: g.Frame, bars: true}, 0, 0, true}, slab{&thing{id: RightEnd, gap: g.Frame, bars: true}, s.w.Width, s.w.Width, true}
}

// A choice is the search for what to stick to along one axis.
type choice struct {
	o      *SnapOptions
	axis   string
	names  [2]string   // of the lower and the higher edge
	lo, hi unit.Length // what moves
	held   Snap        // as it was offered, By left out
	kept   bool        // it is offered again, and not left
	best   [len(snapKinds)]Snap
	found  [len(snapKinds)]bool
}

// far is how far off a thing may be to count at all.
func (c *choice) far() unit.Length { return max(c.o.Reach, c.o.Leave) }

// off reports whether a kind is switched off.
func (c *choice) off(kind string) bool { return slices.Contains(c.o.Off, kind) }

// offer takes a thing to stick to. What is offered first goes before what is as near.
func (c *choice) offer(s Snap) {
	if s.By.Abs() > c.far() {
		return
	}
	s.Axis = c.axis
	by := s.By
	s.By = 0
	isHeld := s == c.held
	s.By = by
	k := slices.Index(snapKinds[:], s.Kind)
	switch {
	case isHeld:
		c.kept, c.held = true, s
	case by.Abs() <= c.o.Reach && (!c.found[k] || by.Abs() < c.best[k].By.Abs()):
		c.best[k], c.found[k] = s, true
	}
}

// result returns what was chosen.
func (c *choice) result() (Snap, bool) {
	for k, kind := range snapKinds {
		if c.kept && c.held.Kind == kind {
			return c.held, true
		}
		if c.found[k] {
			return c.best[k], true
		}
	}
	return Snap{}, false
}

// studs offers the studs whose edges are found to the brackets.
func (c *choice) studs(studs []Stud, pins []pin) {
	for _, p := range pins {
		from, _ := slices.BinarySearchFunc(studs, p.x-c.far(), func(s Stud, x unit.Length) int { return sign(int64(s.X - x)) })
		for i := from; i < len(studs) && studs[i].X <= p.x+c.far(); i++ {
			if studs[i].found() {
				c.offer(Snap{Kind: SnapStud, At: studs[i].X, By: studs[i].X - p.x, To: strconv.Itoa(studs[i].Number), Of: p.bracket})
			}
		}
	}
}

// found reports whether a stud is known to be there, and how wide it is.
func (s *Stud) found() bool { return s.State == plan.EdgesFound && s.Half > 0 }

// lines offers lines at heights to the underside and the top.
func (c *choice) lines(lists ...[]plan.Line) {
	if c.off(SnapLine) {
		return
	}
	for _, lines := range lists {
		for i := range lines {
			h := lines[i].Height
			c.offer(Snap{Kind: SnapLine, At: h, By: h - c.lo, To: lines[i].ID, Of: c.names[0]})
			c.offer(Snap{Kind: SnapLine, At: h, By: h - c.hi, To: lines[i].ID, Of: c.names[1]})
		}
	}
}

// flush offers the edges of things.
func (c *choice) flush(row []slab) {
	for i := range row {
		c.flushWith(&row[i], false)
	}
}

// flushWith offers the edges of one thing; of a limit, only the edge that faces.
func (c *choice) flushWith(t *slab, limit bool) {
	if c.off(SnapFlush) || t.lo > c.hi+c.far()+t.gap || t.hi < c.lo-c.far()-t.gap {
		return
	}
	offer := func(of int, mine, at, gap unit.Length) {
		c.offer(Snap{Kind: SnapFlush, At: at, By: at + gap - mine, To: t.id, Of: c.names[of], Gap: gap.Abs()})
	}
	gap := unit.Length(0)
	if t.faces {
		gap = t.gap
	}
	if !limit {
		offer(0, c.lo, t.lo, 0)
		offer(1, c.hi, t.hi, 0)
	}
	if !limit || t.id == LeftEnd {
		offer(0, c.lo, t.hi, gap)
	}
	if !limit || t.id == RightEnd {
		offer(1, c.hi, t.lo, -gap)
	}
}

// gaps offers, to the neighbours on both sides, the gaps between the other modules of the
// row: those that face what moves, next to each other.
func (c *choice) gaps(row []slab) {
	if c.off(SnapGap) {
		return
	}
	var in []*slab
	for i := range row {
		if t := &row[i]; t.faces && t.module {
			in = append(in, t)
		}
	}
	rank.By(in, func(a, b *slab) int { return sign(int64(a.lo - b.lo)) })
	at := 0 // how many of the row lie before the middle of what moves
	for at < len(in) && in[at].lo+in[at].hi <= c.lo+c.hi {
		at++
	}
	for i := 1; i < len(in); i++ {
		p, q := in[i-1], in[i]
		gap := q.lo - p.hi
		if i == at || gap < 0 {
			continue
		}
		like := [2]string{p.id, q.id}
		if at > 0 {
			n := in[at-1]
			c.offer(Snap{Kind: SnapGap, At: n.hi, By: n.hi + gap - c.lo, To: n.id, Of: c.names[0], Gap: gap, Like: like})
		}
		if at < len(in) {
			n := in[at]
			c.offer(Snap{Kind: SnapGap, At: n.lo, By: n.lo - gap - c.hi, To: n.id, Of: c.names[1], Gap: gap, Like: like})
		}
	}
}

// middles offers the middles of things.
func (c *choice) middles(row []slab) {
	for i := range row {
		if t := &row[i]; t.middle {
			c.centre(t.id, t.lo, t.hi, [2]string{})
		}
	}
}

// between offers the middle between the two things that what moves stands between, given
// what bounds it where there is none.
func (c *choice) between(row []slab, before, after slab) {
	for i := range row {
		t := &row[i]
		switch {
		case !t.faces || !t.bars:
		case t.lo+t.hi <= c.lo+c.hi:
			if t.hi > before.hi {
				before = *t
			}
		case t.lo < after.lo:
			after = *t
		}
	}
	c.centre(before.id, before.hi, after.lo, [2]string{before.id, after.id})
}

// centre offers the middle between two places, rounded down.
func (c *choice) centre(to string, lo, hi unit.Length, like [2]string) {
	if c.off(SnapCentre) {
		return
	}
	c.offer(Snap{Kind: SnapCentre, At: half(lo + hi), By: half(lo + hi - c.lo - c.hi), To: to, Of: edgeMiddle, Like: like})
}

// half returns half of l, rounded down.
func half(l unit.Length) unit.Length { return l >> 1 }
