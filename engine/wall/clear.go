package wall

import (
	"cmp"
	"math"

	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// clear asks every module what is near it.
func (j *job) clear() {
	for i := range j.bodies {
		j.bodies[i].nearSq = math.Inf(1)
	}
	for i := range j.bodies {
		b := &j.bodies[i]
		if len(b.boxes) == 0 {
			continue
		}
		j.ends(b)
		j.floorAndCeiling(b)
		for k := range j.w.Obstacles {
			j.obstacle(b, &j.w.Obstacles[k])
		}
	}
	j.neighbours()
	for i := range j.bodies {
		if b := &j.bodies[i]; b.near.To != "" {
			b.near.Module = b.m.ID
			j.r.Nearest = append(j.r.Nearest, b.near)
		}
	}
}

// keep remembers a thing if none is nearer.
func (b *body) keep(to string, gap unit.Length) {
	sq := float64(gap) * float64(gap)
	if gap < 0 {
		sq = -sq
	}
	if sq < b.nearSq {
		b.nearSq, b.near = sq, Clearance{To: to, Gap: gap}
	}
}

// short reports whether a gap falls short of a limit by more than touch.
func short(gap, limit unit.Length) bool { return gap < limit-unit.Touch }

// ends asks for the gap to the wall's ends.
func (j *job) ends(b *body) {
	j.end(b, LeftEnd, b.p.Box.MinX, 1)
	j.end(b, RightEnd, j.w.Width-b.p.Box.MaxX, -1)
}

// end asks for the gap to one end, from which back leads away.
func (j *job) end(b *body, to string, gap, back unit.Length) {
	b.keep(to, gap)
	limit := j.s.Gaps.Frame
	if !short(gap, limit) {
		return
	}
	f := finding.Finding{
		Kind: endNear, Place: j.at(b), Value: words.LengthOf(gap), Limit: words.LengthOf(limit),
		Args:     []words.Arg{words.Name("module", b.label()), words.Word("side", "side."+to)},
		Remedies: []finding.Remedy{j.moved(b, back*j.up(limit-gap), 0), turned(b)},
	}
	if short(gap, 0) {
		f.Kind, f.Value = pastEnd, words.LengthOf(-gap)
	}
	j.add(f)
}

func turned(b *body) finding.Remedy {
	return finding.Remedy{Key: "turn-or-shorten", Args: []words.Arg{words.Name("module", b.label())}}
}

// floorAndCeiling asks for the gaps below and above. Floor and ceiling are straight, so
// the nearest point of an outline is a corner.
func (j *job) floorAndCeiling(b *body) {
	below, above := unit.Length(math.MaxInt64), unit.Length(math.MaxInt64)
	for i := range b.p.Outlines {
		for _, c := range b.p.Outlines[i].Points {
			below = min(below, c.Y-floorAt(j.w, c.X))
			above = min(above, ceilingAt(j.w, c.X)-c.Y)
		}
	}
	b.keep(Floor, below)
	b.keep(Ceiling, above)
	limit := j.s.Gaps.Ceiling
	if !short(below, 0) && !short(above, limit) {
		return
	}
	name := []words.Arg{words.Name("module", b.label())}
	switch {
	case short(below, 0):
		j.add(finding.Finding{Kind: belowFloor, Place: j.at(b), Value: words.LengthOf(-below), Limit: words.LengthOf(0),
			Args: name, Remedies: []finding.Remedy{j.moved(b, 0, j.up(-below))}})
	case short(above, 0):
		j.add(finding.Finding{Kind: throughCeiling, Place: j.at(b), Value: words.LengthOf(-above), Limit: words.LengthOf(limit),
			Args: name, Remedies: []finding.Remedy{j.moved(b, 0, -j.up(limit-above))}})
	default:
		j.add(finding.Finding{Kind: ceilingNear, Place: j.at(b), Value: words.LengthOf(above), Limit: words.LengthOf(limit),
			Args: name, Remedies: []finding.Remedy{j.moved(b, 0, -j.up(limit-above))}})
	}
}

// blocks reports whether an obstacle is in a module's way. A module stands from the wall
// outwards, so whatever stands out of the wall is, and what is not known to be flat counts
// as standing out. Furniture stands in the room before the wall.
func blocks(o *plan.Obstacle) bool {
	switch o.Kind {
	case plan.Furniture:
		return false
	case plan.Window, plan.Door, plan.Socket, plan.Switch:
		return true
	}
	return !o.Depth.Known || o.Depth.Value > 0
}

// obstacleGap is the least gap to an obstacle.
func (j *job) obstacleGap(o *plan.Obstacle) unit.Length {
	if o.Kind == plan.Socket {
		return j.s.Gaps.Socket
	}
	return j.s.Gaps.Frame
}

func rectangle(o *plan.Obstacle) [4]module.XY {
	return quad(o.X, o.X+o.Width, o.Y, o.Y, o.Y+o.Height, o.Y+o.Height)
}

func obstacleBox(o *plan.Obstacle) module.Box {
	return module.Box{MinX: o.X, MinY: o.Y, MaxX: o.X + o.Width, MaxY: o.Y + o.Height}
}

// obstacle asks for the gap to one obstacle.
func (j *job) obstacle(b *body, o *plan.Obstacle) {
	if o.Kind == plan.Radiator {
		j.radiator(b, o)
	}
	box, limit := obstacleBox(o), j.obstacleGap(o)
	if sq := boxApart(b.p.Box, box); sq > b.nearSq && sq > square(limit) || o.Kind == plan.Furniture && sq > 0 {
		return
	}
	rect := rectangle(o)
	gap := b.gapTo(rect[:], box)
	if o.Kind == plan.Furniture {
		j.before(b, o, gap)
		return
	}
	if !blocks(o) {
		return
	}
	b.keep(o.ID, gap)
	if !short(gap, limit) {
		return
	}
	f := finding.Finding{
		Kind: obstacleNear, Place: j.at(b), Value: words.LengthOf(gap), Limit: words.LengthOf(limit),
		Args:     []words.Arg{words.Name("module", b.label()), obstacleName(o)},
		Remedies: append(j.moves(b), finding.Remedy{Key: "move-obstacle", Args: []words.Arg{obstacleName(o)}}),
	}
	f.Place.Obstacle = o.ID
	if short(gap, 0) {
		f.Kind, f.Value = obstacleOverlap, words.LengthOf(-gap)
	}
	j.add(f)
}

func square(l unit.Length) float64 { return float64(l) * float64(l) }

// obstacleName is what the maker calls an obstacle, or what it is.
func obstacleName(o *plan.Obstacle) words.Arg {
	if o.Name != "" {
		return words.Name("obstacle", o.Name)
	}
	switch o.Kind {
	case plan.Socket, plan.Switch, plan.Pipe, plan.Radiator, plan.Window, plan.Door, plan.Picture, plan.Furniture:
		return words.Word("obstacle", "obstacle."+o.Kind)
	}
	return words.Word("obstacle", "obstacle."+plan.Other)
}

// before says that something stands in front. A module on rods has to slide out over
// them; any other is only hidden.
func (j *job) before(b *body, o *plan.Obstacle, gap unit.Length) {
	if !short(gap, 0) {
		return
	}
	f := finding.Finding{
		Kind: standsBefore, Place: j.at(b), Args: []words.Arg{words.Name("module", b.label()), obstacleName(o)},
		Remedies: []finding.Remedy{{Key: "clear-room", Args: []words.Arg{obstacleName(o)}}},
	}
	f.Place.Obstacle = o.ID
	if b.out > 0 {
		f.Kind, f.Limit = roomInFront, words.LengthOf(b.out)
	}
	j.add(f)
}

// radiator says that a module hangs straight above a radiator.
func (j *job) radiator(b *body, o *plan.Obstacle) {
	if b.p.Box.MinY < o.Y+o.Height || b.p.Box.MaxX <= o.X || b.p.Box.MinX >= o.X+o.Width {
		return
	}
	p := j.at(b)
	p.Obstacle = o.ID
	j.add(finding.Finding{Kind: aboveRadiator, Place: p, Args: []words.Arg{words.Name("module", b.label()), obstacleName(o)},
		Remedies: []finding.Remedy{{Key: "shield-radiator"}}})
}

// noNearer reports whether things in boxes so far apart can be passed over when others
// are so near already. Boxes that meet cannot: what is in them may overlap deeper.
func noNearer(boxes, so float64) bool { return boxes > 0 && boxes >= so }

// gapTo returns the gap to a polygon: the least to any board, or the deepest overlap.
func (b *body) gapTo(q []module.XY, box module.Box) unit.Length {
	least, sq := unit.Length(math.MaxInt64), math.Inf(1)
	for i := range b.boxes {
		if noNearer(boxApart(b.boxes[i], box), sq) {
			continue
		}
		if d := gap(b.p.Outlines[i].Points, q); d < least {
			least, sq = d, square(max(d, 0))
		}
	}
	return least
}

// gapBetween returns the gap between two modules, likewise.
func gapBetween(a, b *body) unit.Length {
	least, sq := unit.Length(math.MaxInt64), math.Inf(1)
	for i := range b.boxes {
		if noNearer(boxApart(a.p.Box, b.boxes[i]), sq) {
			continue
		}
		for k := range a.boxes {
			if noNearer(boxApart(a.boxes[k], b.boxes[i]), sq) {
				continue
			}
			if d := gap(a.p.Outlines[k].Points, b.p.Outlines[i].Points); d < least {
				least, sq = d, square(max(d, 0))
			}
		}
	}
	return least
}

// neighbours asks for the gaps between modules. Along the wall the near pairs come first,
// so that most of the far ones are passed over by their boxes.
func (j *job) neighbours() {
	row := make([]*body, 0, len(j.bodies))
	for i := range j.bodies {
		if len(j.bodies[i].boxes) > 0 {
			row = append(row, &j.bodies[i])
		}
	}
	rank.By(row, func(a, b *body) int { return cmp.Compare(a.p.Box.MinX, b.p.Box.MinX) })
	apart := square(j.s.Gaps.Apart)
	for step := 1; step < len(row); step++ {
		for i := range len(row) - step {
			a, b := row[i], row[i+step]
			if sq := boxApart(a.p.Box, b.p.Box); sq > max(apart, a.nearSq, b.nearSq) {
				continue
			}
			gap := gapBetween(a, b)
			a.keep(b.m.ID, gap)
			b.keep(a.m.ID, gap)
			j.pair(a, b, gap)
		}
	}
}

// pair judges the gap between two modules: they overlap, they touch, or they stand apart.
// The finding is about the later of the two.
func (j *job) pair(a, b *body, gap unit.Length) {
	g := &j.s.Gaps
	if !short(gap, g.Apart) || !short(gap, g.Touching) && gap <= g.Touching+unit.Touch {
		return
	}
	if b.rank < a.rank {
		a, b = b, a
	}
	f := finding.Finding{Place: j.at(b), Value: words.LengthOf(gap),
		Args: []words.Arg{words.Name("module", b.label()), words.Name("other", a.label())}}
	switch {
	case short(gap, 0):
		f.Kind, f.Value, f.Limit = modulesOverlap, words.LengthOf(-gap), words.LengthOf(g.Touching)
		f.Remedies = append(j.moves(b), turned(b))
	case short(gap, g.Touching):
		f.Kind, f.Limit = tightGap, words.LengthOf(g.Touching)
		f.Remedies = append(j.nudged(a, b, g.Touching), finding.Remedy{Key: "hang-with-gauge", Args: []words.Arg{words.Length("by", g.Touching)}})
	default:
		f.Kind, f.Limit = nearMiss, words.LengthOf(g.Apart)
		f.Remedies = append(j.moves(b), j.nudged(a, b, g.Touching)...)
		f.Remedies = append(f.Remedies, finding.Remedy{Key: "leave-gap"})
	}
	j.add(f)
}

// nudged returns the move that brings b to stand so far from a, where they face each
// other along x or y. It is exact, not rounded to a step: a gap is set with a gauge.
func (j *job) nudged(a, b *body, want unit.Length) []finding.Remedy {
	p, q := b.p.Box, a.p.Box
	switch {
	case p.MinX >= q.MaxX && overlap(p.MinY, p.MaxY, q.MinY, q.MaxY):
		return []finding.Remedy{j.moved(b, want-(p.MinX-q.MaxX), 0)}
	case p.MaxX <= q.MinX && overlap(p.MinY, p.MaxY, q.MinY, q.MaxY):
		return []finding.Remedy{j.moved(b, q.MinX-p.MaxX-want, 0)}
	case p.MinY >= q.MaxY && overlap(p.MinX, p.MaxX, q.MinX, q.MaxX):
		return []finding.Remedy{j.moved(b, 0, want-(p.MinY-q.MaxY))}
	case p.MaxY <= q.MinY && overlap(p.MinX, p.MaxX, q.MinX, q.MaxX):
		return []finding.Remedy{j.moved(b, 0, q.MinY-p.MaxY-want)}
	}
	return nil
}

func overlap(a1, a2, b1, b2 unit.Length) bool { return a1 < b2 && b1 < a2 }
