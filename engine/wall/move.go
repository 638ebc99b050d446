package wall

import (
	"cmp"

	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// A move takes a module along x or y.
type move struct{ dx, dy unit.Length }

func (m move) size() unit.Length { return m.dx.Abs() + m.dy.Abs() }

// Moves offered for one module, and pushes tried for each.
const (
	mostMoves  = 2
	mostPushes = 12
)

// moves returns the shortest moves along x or y, in whole steps, that bring a module
// clear of everything on the wall: the remedies for all that it is too near to. They are
// found once a module. Boxes of boards stand for their outlines, so a move may be a little
// longer than it must.
func (j *job) moves(b *body) []finding.Remedy {
	if !b.asked {
		b.asked = true
		for _, way := range [...]move{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
			if m, ok := j.pushed(b, way); ok {
				b.free = append(b.free, m)
			}
		}
		rank.By(b.free, func(x, y move) int { return cmp.Compare(x.size(), y.size()) })
		b.free = b.free[:min(len(b.free), mostMoves)]
	}
	out := make([]finding.Remedy, 0, len(b.free)+2)
	for _, m := range b.free {
		out = append(out, j.moved(b, m.dx, m.dy))
	}
	return out
}

// pushed moves a module one way until it is clear of everything, and reports whether that
// can be done on the wall.
func (j *job) pushed(b *body, way move) (move, bool) {
	var far unit.Length
	for range mostPushes {
		m := move{way.dx * far, way.dy * far}
		need := j.push(b, m, way)
		if need == 0 {
			return m, far > 0 && j.onWall(b, m)
		}
		far = j.up(far + need)
	}
	return move{}, false
}

// push returns how much farther a module that was moved must go to be clear of all that
// it is now too near to.
func (j *job) push(b *body, m, way move) (need unit.Length) {
	g := &j.s.Gaps
	for i := range j.bodies {
		o := &j.bodies[i]
		if o == b || len(o.boxes) == 0 || clearOf(shifted(b.p.Box, m), o.p.Box, g.Apart) {
			continue
		}
		least, most := unit.Length(1<<62), unit.Length(0)
		for _, q := range o.boxes {
			d, n := b.press(q, m, way, g.Apart)
			least, most = min(least, d), max(most, n)
		}
		if least < -unit.Touch || least > g.Touching+unit.Touch {
			need = max(need, most)
		}
	}
	for i := range j.w.Obstacles {
		o := &j.w.Obstacles[i]
		if blocks(o) {
			_, n := b.press(obstacleBox(o), m, way, j.obstacleGap(o))
			need = max(need, n)
		}
	}
	return need
}

// press returns the least gap from a module that was moved to a box, along x or y, and
// how far the module must go for the gap that is wanted; 0 when it has it.
func (b *body) press(q module.Box, m, way move, want unit.Length) (least, need unit.Length) {
	least = 1 << 62
	for _, p := range b.boxes {
		p = shifted(p, m)
		least = min(least, max(p.MinX-q.MaxX, q.MinX-p.MaxX, p.MinY-q.MaxY, q.MinY-p.MaxY))
		if clearOf(p, q, want) {
			continue
		}
		switch {
		case way.dx < 0:
			need = max(need, p.MaxX-q.MinX+want)
		case way.dx > 0:
			need = max(need, q.MaxX-p.MinX+want)
		case way.dy < 0:
			need = max(need, p.MaxY-q.MinY+want)
		default:
			need = max(need, q.MaxY-p.MinY+want)
		}
	}
	return least, need
}

// clearOf reports whether two boxes stand so far apart, along x or y.
func clearOf(p, q module.Box, want unit.Length) bool {
	return p.MinX-q.MaxX >= want || q.MinX-p.MaxX >= want || p.MinY-q.MaxY >= want || q.MinY-p.MaxY >= want
}

func shifted(b module.Box, m move) module.Box {
	return module.Box{MinX: b.MinX + m.dx, MaxX: b.MaxX + m.dx, MinY: b.MinY + m.dy, MaxY: b.MaxY + m.dy}
}

// onWall reports whether a module that was moved keeps clear of the wall's ends, floor and
// ceiling.
func (j *job) onWall(b *body, m move) bool {
	p, g := shifted(b.p.Box, m), &j.s.Gaps
	low := max(floorAt(j.w, p.MinX), floorAt(j.w, p.MaxX))
	high := min(ceilingAt(j.w, p.MinX), ceilingAt(j.w, p.MaxX)) - g.Ceiling
	return p.MinX >= g.Frame && p.MaxX <= j.w.Width-g.Frame && p.MinY >= low && p.MaxY <= high
}
