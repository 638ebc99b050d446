package wall

import (
	"cmp"
	"math"
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// placesApart is how far two places that are offered differ, along x or y.
const placesApart = 100 * unit.Millimetre

// Pitches of the places that are tried where nothing else says where; our assumption.
const (
	pitchMetric = 100 * unit.Millimetre
	pitchInches = 4 * unit.Inch
)

// mostGaps is how many gaps between other modules are tried; the smallest come first.
const mostGaps = 4

// Places returns up to n poses in which a module fits on the wall of an arrangement: it
// keeps its clearances, it can be hung, no hole lies in a cable band or behind something,
// and as many of its brackets as can be are on studs whose edges are found, every hole of
// each with the wood it wants beside it. Poses with fewer brackets on studs than others
// are not offered.
//
// The module keeps its turn and flip. The poses that are nearest to where it stands come
// first, by dx + dy; a module that does not stand yet is taken to be wanted in the middle
// of the widest part of the wall that is free from floor to ceiling. No two are within 100
// mm of each other both in x and in y; and where the module fits as it stands, on all the
// studs, none is so near to that.
//
// The places that are tried bring brackets to studs, undersides and tops to the
// arrangement's lines, edges and middles to those of other modules and obstacles, with the
// gaps of the shop and those between other modules; and besides they follow a pitch of 100
// mm or 4 in. Boxes of boards stand for their outlines, so no place is offered that lies
// within another module's box of a board.
func Places(w plan.Wall, a plan.Arrangement, modules []module.Result, id string, s shop.Profile, u plan.Units, n int) []plan.Pose {
	k := slices.IndexFunc(modules, func(m module.Result) bool { return m.ID == id })
	if k < 0 || len(modules[k].Outlines) == 0 {
		return nil
	}
	f := finder{m: &modules[k]}
	f.start(&w, &a, modules, &s, &u)
	f.candidates(&a, &u)
	var out []plan.Pose
	for len(out) < n {
		p, ok := f.nearest()
		if !ok {
			break
		}
		f.taken = append(f.taken, p)
		o := f.base
		o.X, o.Y = o.X+p.dx, o.Y+p.dy
		out = append(out, o)
	}
	return out
}

// A finder looks for places of one module.
type finder struct {
	j     job // the other modules on the wall
	m     *module.Result
	base  plan.Pose // where it is, or is wanted
	b     body      // it, there
	holes []mark
	sure  bool // the wall has studs whose edges are found

	xs, ys []tried
	tier   int    // brackets that are not on studs; −1: not known yet
	taken  []move // from the base
	lifts  int    // findings about hanging the other modules
}

// A tried way along x, or y.
type tried struct {
	by     unit.Length
	misses int // brackets that it brings beside the studs
}

// start fills the other modules, and the module where it is.
func (f *finder) start(w *plan.Wall, a *plan.Arrangement, modules []module.Result, s *shop.Profile, u *plan.Units) {
	others := *a
	others.Poses = nil
	placed := false
	for _, p := range a.Poses {
		if p.Module == f.m.ID {
			f.base, placed = p, true
			continue
		}
		others.Poses = append(others.Poses, p)
	}
	f.j = job{w: w, a: &others, s: s, studs: Studs(*w), bands: Bands(*w), step: max(u.Step, unit.Nanometre)}
	f.j.place(modules)
	f.sure = slices.ContainsFunc(f.j.studs, func(s Stud) bool { return s.found() })
	f.j.order()
	f.lifts = len(f.j.r.Findings)
	if !placed {
		f.base = plan.Pose{Module: f.m.ID}
		f.base.X, f.base.Y = f.j.wanted(f.m, u)
	}
	f.b = f.at(move{})
	for k, h := range f.b.bears {
		for i := range h.fix.Screws {
			f.holes = append(f.holes, f.j.hole(&f.b, k, &h.fix.Screws[i]))
		}
	}
	f.tier = -1
	if placed && f.misses(0) == 0 && f.fits(move{}) {
		f.taken = append(f.taken, move{})
	}
}

// wanted returns where a module that does not stand yet is wanted: in the middle of the
// widest part of the wall that is free from floor to ceiling, the left one of equals, half
// way up; on whole steps.
func (j *job) wanted(m *module.Result, u *plan.Units) (x, y unit.Length) {
	var stands []stretch
	for i := range j.bodies {
		if b := &j.bodies[i]; len(b.boxes) > 0 {
			stands = append(stands, stretch{b.p.Box.MinX, b.p.Box.MaxX})
		}
	}
	for i := range j.w.Obstacles {
		if o := &j.w.Obstacles[i]; blocks(o) {
			stands = append(stands, stretch{o.X, o.X + o.Width})
		}
	}
	lo, hi := widest(stands, j.w.Width)
	if hi-lo < m.Box.MaxX-m.Box.MinX {
		lo, hi = 0, j.w.Width
	}
	x = half(lo + hi)
	y = half(floorAt(j.w, x) + ceilingAt(j.w, x))
	step := unit.Style{System: u.System, Step: j.step}
	x, _ = step.Rounded(x)
	y, _ = step.Rounded(y)
	return x, y
}

// A stretch is a part of the wall's width.
type stretch struct{ lo, hi unit.Length }

// widest returns the widest part of a width that nothing covers, the left one of equals;
// an empty one where all is covered.
func widest(covered []stretch, width unit.Length) (lo, hi unit.Length) {
	rank.By(covered, func(a, b stretch) int { return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi)) })
	from := unit.Length(0)
	for _, c := range append(covered, stretch{width, width}) {
		if c.lo-from > hi-lo {
			lo, hi = from, c.lo
		}
		from = max(from, c.hi)
	}
	return lo, hi
}

// at returns the module moved from its base.
func (f *finder) at(m move) body {
	o := f.base
	o.X, o.Y = o.X+m.dx, o.Y+m.dy
	p := Place(*f.m, o)
	// Asked already: nobody reads the moves that would help.
	b := body{m: f.m, rank: math.MaxInt, g: PlacingOf(*f.m, o), p: &p, nearSq: math.Inf(1), asked: true}
	b.prepare(f.j.s)
	return b
}

// hole returns one hole of a body's fixing, and what it meets.
func (j *job) hole(b *body, k int, s *board.Screw) mark {
	h := b.bears[k]
	m := mark{bear: k}
	m.What, m.Screw, m.Rod, m.Drill = Hole, s.Diameter, s.Rod, drill(j.w, *s)
	j.stand(&m, b, h, board.Point{U: h.fix.At.U + s.DU, V: h.fix.At.V, W: h.fix.At.W + s.DW})
	return m
}

// misses returns how many brackets have a hole without the wood it wants, when the module
// is moved by dx. A wall whose studs are not found has none to miss.
func (f *finder) misses(dx unit.Length) (n int) {
	if !f.sure {
		return 0
	}
	last := -1
	for i := range f.holes {
		h := &f.holes[i]
		in := meets(f.j.w, f.j.studs, h.X+dx)
		if h.bear != last && (!in.Wood() || short(in.Edge, edgeWanted(&h.Point))) {
			n, last = n+1, h.bear
		}
	}
	return n
}

// candidates fills the ways that are tried, the shortest first, and of two the one to the
// left or down.
func (f *finder) candidates(a *plan.Arrangement, u *plan.Units) {
	things := f.things()
	pitch := pitchMetric
	if u.System == unit.Inches {
		pitch = pitchInches
	}
	g := &f.j.s.Gaps
	box := f.b.p.Box
	var xs, ys []unit.Length
	for _, p := range f.b.pins() {
		for i := range f.j.studs {
			if f.j.studs[i].found() {
				xs = append(xs, f.j.studs[i].X-p.x)
			}
		}
	}
	xs = append(xs, g.Frame-box.MinX, f.j.w.Width-g.Frame-box.MaxX)
	xs = beside(xs, things, box, false)
	for x := pitch; x < f.j.w.Width; x += pitch {
		xs = append(xs, x-f.base.X)
	}
	for i := range a.Lines {
		ys = append(ys, a.Lines[i].Height-box.MinY, a.Lines[i].Height-box.MaxY)
	}
	ys = beside(ys, things, box, true)
	for y := pitch; y < f.j.w.Height; y += pitch {
		ys = append(ys, y-f.base.Y)
	}
	f.xs, f.ys = ordered(xs, f.misses), ordered(ys, nil)
}

// A near is something that the module may be set by, and the gaps that may be left.
type near struct {
	box  module.Box
	gaps []unit.Length
}

// things returns the other modules and the obstacles.
func (f *finder) things() (out []near) {
	g := &f.j.s.Gaps
	gaps := append([]unit.Length{g.Touching, g.Apart}, f.repeated()...)
	for i := range f.j.bodies {
		if b := &f.j.bodies[i]; len(b.boxes) > 0 {
			out = append(out, near{b.p.Box, gaps})
		}
	}
	for _, o := range obstacles(f.j.w, *g) {
		out = append(out, near{o.box, []unit.Length{o.gap}})
	}
	return out
}

// repeated returns the gaps along x between modules that face each other, next to each
// other: the smallest of them.
func (f *finder) repeated() (out []unit.Length) {
	for i := range f.j.bodies {
		p := f.j.bodies[i].p.Box
		least := unit.Length(math.MaxInt64)
		for k := range f.j.bodies {
			q := f.j.bodies[k].p.Box
			if q.MinX >= p.MaxX && overlap(p.MinY, p.MaxY, q.MinY, q.MaxY) {
				least = min(least, q.MinX-p.MaxX)
			}
		}
		if least < math.MaxInt64 {
			out = append(out, least)
		}
	}
	rank.Up(out)
	out = slices.Compact(out)
	return out[:min(len(out), mostGaps)]
}

// beside appends the ways that bring a box flush with things, to their middle, or beside
// them.
func beside(to []unit.Length, things []near, box module.Box, upright bool) []unit.Length {
	lo, hi, _, _ := reachOf(box, upright)
	for _, t := range things {
		l, h, _, _ := reachOf(t.box, upright)
		to = append(to, l-lo, h-hi, half(l+h-lo-hi))
		for _, gap := range t.gaps {
			to = append(to, h+gap-lo, l-gap-hi)
		}
	}
	return to
}

// ordered returns the ways in the order in which they are tried, that of going nowhere
// first.
func ordered(by []unit.Length, misses func(unit.Length) int) []tried {
	by = append(by, 0)
	rank.By(by, func(a, b unit.Length) int { return cmp.Or(cmp.Compare(a.Abs(), b.Abs()), cmp.Compare(a, b)) })
	by = slices.Compact(by)
	out := make([]tried, len(by))
	for i, l := range by {
		out[i].by = l
		if misses != nil {
			out[i].misses = misses(l)
		}
	}
	return out
}

// nearest returns the shortest move to a place that fits and is not near one that is
// taken; among those that bring equally few brackets beside the studs as the first that
// was found.
func (f *finder) nearest() (move, bool) {
	if f.tier >= 0 {
		return f.nearestOf(f.tier)
	}
	for tier := 0; tier <= len(f.b.bears); tier++ {
		if m, ok := f.nearestOf(tier); ok {
			f.tier = tier
			return m, true
		}
	}
	return move{}, false
}

// nearestOf is nearest for a number of brackets beside the studs. Both lists are sorted,
// so what is longer than the best so far need not be looked at.
func (f *finder) nearestOf(tier int) (best move, ok bool) {
	size := unit.Length(math.MaxInt64)
	for _, x := range f.xs {
		if x.by.Abs() >= size {
			break
		}
		if x.misses != tier {
			continue
		}
		sub := f.facing(x.by)
		for _, y := range f.ys {
			m := move{x.by, y.by}
			if m.size() >= size {
				break
			}
			if f.free(&sub, m) {
				best, size, ok = m, m.size(), true
				break
			}
		}
	}
	return best, ok
}

// facing returns the others that are not clear of the module, along x, when it is moved.
func (f *finder) facing(dx unit.Length) job {
	sub := job{w: f.j.w, s: f.j.s}
	p, want := shifted(f.b.p.Box, move{dx: dx}), f.j.s.Gaps.Apart
	for i := range f.j.bodies {
		b := &f.j.bodies[i]
		if len(b.boxes) > 0 && p.MinX-b.p.Box.MaxX < want && b.p.Box.MinX-p.MaxX < want {
			sub.bodies = append(sub.bodies, *b)
		}
	}
	return sub
}

// free reports whether a move brings the module to a place that is not taken, and fits.
// The boxes are asked first, because they settle most.
func (f *finder) free(sub *job, m move) bool {
	for _, t := range f.taken {
		if (m.dx-t.dx).Abs() < placesApart && (m.dy-t.dy).Abs() < placesApart {
			return false
		}
	}
	return sub.onWall(&f.b, m) && sub.push(&f.b, m, move{dx: 1}) == 0 && f.fits(m)
}

// fits asks every rule of the verdict "fits" about the module in one place.
func (f *finder) fits(m move) bool {
	j := f.j // its findings and bodies are put aside
	j.r.Findings = nil
	b := f.at(m)
	j.ends(&b)
	j.floorAndCeiling(&b)
	for i := range j.w.Obstacles {
		j.obstacle(&b, &j.w.Obstacles[i])
	}
	for i := range j.bodies {
		o := &j.bodies[i]
		if len(o.boxes) > 0 && boxApart(o.p.Box, b.p.Box) <= square(j.s.Gaps.Apart) {
			j.pair(o, &b, gapBetween(o, &b))
		}
	}
	if slices.ContainsFunc(j.r.Findings, against) {
		return false
	}
	return f.drillable(&b) && f.hangs(j, b)
}

// against reports whether a finding speaks against a place.
func against(f finding.Finding) bool {
	return f.Kind == tightGap || f.Kind.Verdict == finding.Fits && f.Kind.Severity >= finding.Mend
}

// drillable reports whether every hole can be drilled where it comes.
func (f *finder) drillable(b *body) bool {
	for k, h := range b.bears {
		for i := range h.fix.Screws {
			if m := f.j.hole(b, k, &h.fix.Screws[i]); m.Band != "" || m.Behind != "" {
				return false
			}
		}
	}
	return true
}

// hangs reports whether the module can be hung, and keeps no other from being hung.
func (f *finder) hangs(j job, b body) bool {
	j.r.Findings = nil
	j.bodies = append(j.bodies[:len(j.bodies):len(j.bodies)], b)
	j.order()
	return len(j.r.Findings) <= f.lifts
}
