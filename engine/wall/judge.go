package wall

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Depths from which a hole is to be looked at twice. A cable that was bored through a
// stud may lie 1 1/4 in behind the stud's face (NEC 300.4(A)(1)); one in a wall may lie 50
// mm from the surface (UK practice; wiki.diyfaq.org.uk, Safe zones for electric cables).
const (
	deepInStud = 32 * unit.Millimetre
	deepInWall = 50 * unit.Millimetre
)

// rodCover is the least wood in a stud beside a rod, half its diameter at 12 mm; our
// assumption.
const rodCover = 6 * unit.Millimetre

// onePoint is the extent of a bracket's holes below which it is one point, about which a
// module can swing; our assumption.
const onePoint = 100 * unit.Millimetre

// edgeWanted returns how far the axis of a hole must be from a stud's edge: 1 1/2 diameters
// of a screw (NDS 2005, table 11.5.1A, loading along the grain), a rod's radius and its
// cover.
func edgeWanted(p *Point) unit.Length {
	if p.Rod {
		return p.Screw/2 + rodCover
	}
	return p.Screw * 3 / 2
}

// NearEdge reports whether a hole is nearer to the edge of its stud than its screw or rod
// asks for.
func (p Point) NearEdge() bool { return p.In.Wood() && short(p.In.Edge, edgeWanted(&p)) }

// judge says what there is to say about the fixings and holes of every module. The marks
// stand in the order of their numbers, so those of one body stand together.
func (j *job) judge(marks []*mark) {
	from := 0
	for from < len(marks) {
		to := from + 1
		for to < len(marks) && marks[to].body == marks[from].body {
			to++
		}
		b := &j.bodies[marks[from].body]
		for k := range b.bears {
			j.judgeFixing(b, k, marks[from:to])
		}
		from = to
	}
	for i := range j.bodies {
		j.judgeHang(&j.bodies[i])
	}
	j.judgeStuds(marks)
	j.judgeDepth(marks)
}

// judgeHang says whether a module hangs at all.
func (j *job) judgeHang(b *body) {
	if len(b.m.Boards) == 0 {
		return
	}
	n := b.carrying()
	if n > 1 && b.idle == 0 {
		return
	}
	name := []words.Arg{words.Name("module", b.label())}
	place := func() finding.Remedy {
		return finding.Remedy{Key: "place-brackets", Args: name, Edit: j.placedAgain(b).Edit}
	}
	switch {
	case len(b.m.Fixings) == 0:
		j.add(finding.Finding{Kind: noBracket, Place: j.at(b), Args: name, Remedies: []finding.Remedy{place()}})
	case n == 0:
		j.add(finding.Finding{Kind: nothingCarries, Place: j.at(b), Args: name, Limit: words.AngleOf(attitude),
			Remedies: []finding.Remedy{{Key: "add-bracket-for-pose", Args: name, Edit: j.placedAgain(b).Edit}, {Key: "turn-back", Args: name}}})
	case n == 1 && j.single(b):
		j.add(finding.Finding{Kind: oneBracket, Place: j.at(b), Args: name, Value: words.CountOf(1), Limit: words.CountOf(2),
			Remedies: []finding.Remedy{place(), {Key: "lock-to-neighbour", Args: name}}})
	}
	if b.idle > 0 && n > 0 {
		j.add(finding.Finding{Kind: bracketIdle, Place: j.at(b), Limit: words.AngleOf(attitude),
			Args:     append(name[:1:1], words.Count("n", b.idle)),
			Remedies: []finding.Remedy{{Key: "cover-idle", Args: name}, {Key: "turn-back", Args: name}}})
	}
}

// single reports whether all that holds a module is in one place.
func (j *job) single(b *body) bool {
	for _, h := range b.bears {
		if len(h.fix.Rods) > 1 {
			return false
		}
		for _, s := range h.fix.Screws {
			if s.DU.Abs() >= onePoint {
				return false
			}
		}
	}
	return true
}

// judgeFixing asks every hole of one fixing, and says the worst once.
func (j *job) judgeFixing(b *body, k int, marks []*mark) {
	hole := func(is func(*mark) bool) func(*mark) bool {
		return func(m *mark) bool { return m.bear == k && m.What == Hole && is(m) }
	}
	_, all, _ := holes(marks, hole(func(*mark) bool { return true }))
	if all == 0 {
		return
	}
	j.judgeBand(b, k, marks, hole(func(m *mark) bool { return m.Band != "" }))
	j.judgeBehind(b, k, marks, hole(func(m *mark) bool { return m.Behind != "" }))
	_, off, first := holes(marks, hole(func(m *mark) bool { return m.In.Kind == InLining }))
	if off > 0 {
		j.judgeOff(b, marks[first], off, all)
		return
	}
	_, n, first := holes(marks, hole(func(m *mark) bool { return m.NearEdge() }))
	if n > 0 {
		m := marks[first]
		f := j.ofHole(b, m, studEdge, n)
		f.Value, f.Limit = words.LengthOf(m.In.Edge), words.LengthOf(edgeWanted(&m.Point))
		f.Remedies = append(j.toStud(b, m), j.placedAgain(b))
		j.add(f)
	}
}

// ofHole is a finding about a hole, with the number of holes like it.
func (j *job) ofHole(b *body, m *mark, kind finding.Kind, n int) finding.Finding {
	p := j.at(b)
	p.Bracket, p.Point = m.Bracket, m.Number
	return finding.Finding{Kind: kind, Place: p,
		Args: []words.Arg{words.Name("module", b.label()), words.Name("point", m.Number), words.Count("n", n)}}
}

// judgeOff says that holes miss the stud.
func (j *job) judgeOff(b *body, m *mark, off, all int) {
	kind := screwOffStud
	if off == all {
		kind = nothingInStud
	}
	f := j.ofHole(b, m, kind, off)
	f.Args = append(f.Args, words.Count("all", all), words.Count("stud", m.In.Stud))
	f.Value, f.Limit = words.LengthOf(-m.In.Edge), words.LengthOf(edgeWanted(&m.Point))
	f.Remedies = append(j.toStud(b, m), j.placedAgain(b), finding.Remedy{Key: "bridge-studs"})
	j.add(f)
}

// toStud is the move that brings a hole to the middle of its nearest stud, if the studs'
// edges are found.
func (j *job) toStud(b *body, m *mark) []finding.Remedy {
	s := &j.studs[m.In.Stud-1]
	if s.State != plan.EdgesFound || s.X == m.X {
		return nil
	}
	r := j.moved(b, s.X-m.X, 0)
	r.Key += "-to-stud"
	r.Args = append(r.Args, words.Count("stud", s.Number))
	return []finding.Remedy{r}
}

// judgeBand says that holes lie where cables are expected.
func (j *job) judgeBand(b *body, k int, marks []*mark, is func(*mark) bool) {
	box, n, first := holes(marks, is)
	if n == 0 {
		return
	}
	m := marks[first]
	f := j.ofHole(b, m, holeInBand, n)
	f.Args = append(f.Args, j.bandOf(m.Band))
	for i := range j.bands {
		band := &j.bands[i]
		if band.From != m.Band || !band.in(module.XY{X: m.X, Y: m.Y}, m.Drill/2) {
			continue
		}
		q := boxOf(band.Points[:])
		if band.Upright {
			f.Remedies = append(f.Remedies, j.moved(b, -j.up(box.MaxX-q.MinX+unit.Nanometre), 0), j.moved(b, j.up(q.MaxX-box.MinX+unit.Nanometre), 0))
		} else {
			f.Remedies = append(f.Remedies, j.moved(b, 0, -j.up(box.MaxY-q.MinY+unit.Nanometre)), j.moved(b, 0, j.up(q.MaxY-box.MinY+unit.Nanometre)))
		}
		break
	}
	f.Remedies = append(j.staying(b, f.Remedies), j.placedAgain(b))
	j.add(f)
}

// staying keeps the moves that leave the module on the wall, the shorter first.
func (j *job) staying(b *body, moves []finding.Remedy) (out []finding.Remedy) {
	for _, r := range moves {
		m := moveOf(r)
		if !j.onWall(b, m) {
			continue
		}
		if len(out) > 0 && m.size() < moveOf(out[0]).size() {
			out = append([]finding.Remedy{r}, out...)
			continue
		}
		out = append(out, r)
	}
	return out
}

// moveOf reads a move back from its remedy.
func moveOf(r finding.Remedy) (m move) {
	for _, a := range r.Edit.Args {
		switch a.Name {
		case "dx":
			m.dx = a.Value.Length
		case "dy":
			m.dy = a.Value.Length
		}
	}
	return m
}

// bandOf names what a band comes from.
func (j *job) bandOf(from string) words.Arg {
	if o := j.obstacleOf(from); o != nil {
		a := obstacleName(o)
		a.Name = "from"
		return a
	}
	return words.Word("from", "side."+from)
}

func (j *job) obstacleOf(id string) *plan.Obstacle {
	for i := range j.w.Obstacles {
		if j.w.Obstacles[i].ID == id {
			return &j.w.Obstacles[i]
		}
	}
	return nil
}

// judgeBehind says that holes lie behind an obstacle.
func (j *job) judgeBehind(b *body, k int, marks []*mark, is func(*mark) bool) {
	_, n, first := holes(marks, is)
	if n == 0 {
		return
	}
	m := marks[first]
	f := j.ofHole(b, m, holeBehind, n)
	f.Place.Obstacle = m.Behind
	f.Args = append(f.Args, obstacleName(j.obstacleOf(m.Behind)))
	f.Remedies = append(j.moves(b), j.placedAgain(b))
	j.add(f)
}

// judgeStuds says, once a stud, that holes rely on a stud that is not found, and, once an
// arrangement, that they are in metal studs.
func (j *job) judgeStuds(marks []*mark) {
	count := make([]int, len(j.studs))
	metal := 0
	for _, m := range marks {
		if m.What == Hole && m.In.Stud > 0 {
			count[m.In.Stud-1]++
			if m.In.Kind == InStud && j.studs[m.In.Stud-1].Material == "metal" {
				metal++
			}
		}
	}
	for i, n := range count {
		s := &j.studs[i]
		if n == 0 || s.State == plan.EdgesFound {
			continue
		}
		state := s.State
		if state != plan.OnePoint {
			state = plan.Guess
		}
		j.add(finding.Finding{
			Kind: studGuessed, Place: finding.Place{Wall: j.w.ID, Arrangement: j.a.ID},
			Args:     []words.Arg{words.Count("stud", s.Number), words.Length("x", s.X), words.Word("state", "stud."+state), words.Count("n", n)},
			Remedies: []finding.Remedy{{Key: "find-stud-edges", Args: []words.Arg{words.Count("stud", s.Number)}}},
		})
	}
	if metal > 0 {
		j.add(finding.Finding{
			Kind: metalStuds, Place: finding.Place{Wall: j.w.ID, Arrangement: j.a.ID},
			Args: []words.Arg{words.Count("n", metal)}, Remedies: []finding.Remedy{{Key: "back-metal-studs"}},
		})
	}
}

// judgeDepth says, once an arrangement, that holes go deeper than cables may lie.
func (j *job) judgeDepth(marks []*mark) {
	n, first := 0, 0
	var deepest unit.Length
	for i, m := range marks {
		if m.What != Hole || m.Depth <= deepInWall && !(m.In.Kind == InStud && m.Grip > deepInStud) {
			continue
		}
		if n == 0 {
			first = i
		}
		n, deepest = n+1, max(deepest, m.Depth)
	}
	if n == 0 {
		return
	}
	j.add(finding.Finding{
		Kind: deepHole, Place: finding.Place{Wall: j.w.ID, Arrangement: j.a.ID, Point: marks[first].Number},
		Value: words.LengthOf(deepest), Limit: words.LengthOf(deepInWall),
		Args:     []words.Arg{words.Count("n", n), words.Length("stud", deepInStud)},
		Remedies: []finding.Remedy{{Key: "detect-cables"}},
	})
}
