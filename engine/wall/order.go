package wall

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A module that hangs by a cleat or a hook is raised over it and let down, so what hangs
// close above it has to come later. Modules on rods slide straight out and wait for
// nobody.

// order fills Order where one is forced, and says what cannot be hung at all.
func (j *job) order() {
	n := len(j.bodies)
	var later [][]int // by body: those that must come after it
	for i := range j.bodies {
		b := &j.bodies[i]
		if b.lift == 0 || len(b.boxes) == 0 {
			continue
		}
		j.headroom(b)
		for k := range j.bodies {
			if k == i || !rises(b, &j.bodies[k], b.lift) {
				continue
			}
			if later == nil {
				later = make([][]int, n)
			}
			later[i] = append(later[i], k)
		}
	}
	if later == nil {
		return
	}
	order, stuck := sequence(later)
	if stuck >= 0 {
		j.cycle(&j.bodies[stuck])
		return
	}
	for _, i := range order {
		j.r.Order = append(j.r.Order, j.bodies[i].m.ID)
	}
}

// sequence returns the indices so that each stands before those that must come later, the
// smallest first where there is a choice; or one that waits for itself, else −1.
func sequence(later [][]int) (order []int, stuck int) {
	waits := make([]int, len(later))
	for _, after := range later {
		for _, k := range after {
			waits[k]++
		}
	}
	for len(order) < len(later) {
		next := -1
		for i, w := range waits {
			if w == 0 {
				next = i
				break
			}
		}
		if next < 0 {
			return nil, waiting(later, waits)
		}
		waits[next] = -1
		order = append(order, next)
		for _, k := range later[next] {
			waits[k]--
		}
	}
	return order, -1
}

// waiting returns one of a ring that wait for each other. Everything that is left waits
// for something that is left, so going back from any of them ends in a ring.
func waiting(later [][]int, waits []int) int {
	before := func(k int) int {
		for i := range later {
			if waits[i] <= 0 {
				continue
			}
			for _, x := range later[i] {
				if x == k {
					return i
				}
			}
		}
		return k
	}
	at := 0
	for waits[at] <= 0 {
		at++
	}
	for range later {
		at = before(at)
	}
	return at
}

// rises reports whether b, raised by lift, comes against o above it.
func rises(b, o *body, lift unit.Length) bool {
	p := b.p.Box
	p.MaxY += lift
	if boxApart(p, o.p.Box) > 0 {
		return false
	}
	for i := range b.p.Outlines {
		for k := range o.p.Outlines {
			if under(b.p.Outlines[i].Points, o.p.Outlines[k].Points, lift) {
				return true
			}
		}
	}
	return false
}

// under reports whether q lies above p, and nearer than lift.
func under(p, q []module.XY, lift unit.Length) bool {
	down, _, ok := reach(p, q, true)
	return ok && down <= unit.Touch && short(-down, lift)
}

// headroom asks for room to raise a module below ceiling and obstacles.
func (j *job) headroom(b *body) {
	for i := range j.w.Obstacles {
		o := &j.w.Obstacles[i]
		rect := rectangle(o)
		for k := range b.p.Outlines {
			if !blocks(o) || !under(b.p.Outlines[k].Points, rect[:], b.lift) {
				continue
			}
			j.noLift(b, obstacleName(o), o.ID, o.Y-b.p.Box.MaxY)
			break
		}
	}
	above := b.lift
	for i := range b.p.Outlines {
		for _, c := range b.p.Outlines[i].Points {
			above = min(above, ceilingAt(j.w, c.X)-c.Y)
		}
	}
	if short(above, b.lift) && !short(above, 0) {
		j.noLift(b, words.Word("obstacle", "side."+Ceiling), "", above)
	}
}

func (j *job) noLift(b *body, under words.Arg, obstacle string, room unit.Length) {
	p := j.at(b)
	p.Obstacle = obstacle
	room = max(room, 0)
	j.add(finding.Finding{
		Kind: noLift, Place: p, Value: words.LengthOf(room), Limit: words.LengthOf(b.lift),
		Args:     []words.Arg{words.Name("module", b.label()), under},
		Remedies: []finding.Remedy{j.moved(b, 0, -j.up(b.lift-room)), {Key: "hang-on-rods", Args: []words.Arg{words.Name("module", b.label())}}},
	})
}

func (j *job) cycle(b *body) {
	j.add(finding.Finding{
		Kind: hangingCycle, Place: j.at(b), Limit: words.LengthOf(b.lift), Args: []words.Arg{words.Name("module", b.label())},
		Remedies: []finding.Remedy{{Key: "leave-lift", Args: []words.Arg{words.Length("by", b.lift)}}, {Key: "hang-on-rods", Args: []words.Arg{words.Name("module", b.label())}}},
	})
}
