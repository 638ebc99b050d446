package wall

import (
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A body is a module of an arrangement while it is worked out.
type body struct {
	m      *module.Result
	rank   int // among the modules
	g      Placing
	p      *Placed
	boxes  []module.Box // of the outlines
	bears  []bearing    // fixings that work in this pose
	idle   int          // fixings that do not
	out    unit.Length  // how far it slides straight out to come off its rods; 0: it has none
	lift   unit.Length  // how far it is raised to hang it
	near   Clearance    // the nearest thing
	nearSq float64      // square of its distance in nm², below 0 when it overlaps
	free   []move       // see job.moves
	asked  bool
}

// A bearing is a fixing that works in a pose.
type bearing struct {
	fix *board.Fixing
	on  *board.Board
}

// A job is one arrangement while it is worked out.
type job struct {
	w      *plan.Wall
	a      *plan.Arrangement
	s      *shop.Profile
	tape   unit.Style
	step   unit.Length // of what is typed
	studs  []Stud
	bands  []Band
	bodies []body
	r      Result
}

// Arrange works out one arrangement on its wall: where its modules come to, what is near
// them, in which order they can be hung, and where the holes go. A pose whose module is
// not among the modules is passed over; a module without boards has no outline and is
// asked nothing.
//
// The level line is the datum's; or else the first line of the arrangement; or else the
// height of the topmost rod (of the topmost hole, where there are no rods). The plumb line
// is the datum's, or else the left end of the module that has the leftmost wall point.
// Both are then rounded to the site tape, because somebody sets them out from the floor
// and the wall's end.
func Arrange(w plan.Wall, a plan.Arrangement, modules []module.Result, s shop.Profile, u plan.Units) Result {
	j := job{w: &w, a: &a, s: &s, studs: Studs(w), bands: Bands(w), step: u.Step}
	j.tape = unit.Style{System: u.System, Step: s.Tape.Site}
	if j.step <= 0 {
		j.step = unit.Millimetre
	}
	j.r = Result{Arrangement: a.ID, Wall: w.ID, corner: a.Corner, width: w.Width}
	j.r.Findings = make([]finding.Finding, 0, 8)
	j.place(modules)
	j.setOut()
	j.clear()
	j.order()
	j.survey()
	j.conclude()
	return j.r
}

// place fills Placed and the bodies.
func (j *job) place(modules []module.Result) {
	at := make(map[string]int, len(modules))
	for i := range modules {
		at[modules[i].ID] = i
	}
	j.r.Placed = make([]Placed, 0, len(j.a.Poses))
	j.bodies = make([]body, 0, len(j.a.Poses))
	for _, pose := range j.a.Poses {
		i, ok := at[pose.Module]
		if !ok {
			continue
		}
		j.r.Placed = append(j.r.Placed, Place(modules[i], pose))
		j.bodies = append(j.bodies, body{m: &modules[i], rank: i, g: PlacingOf(modules[i], pose), p: &j.r.Placed[len(j.r.Placed)-1]})
	}
	for i := range j.bodies {
		j.bodies[i].prepare(j.s)
	}
}

// prepare fills what follows from the module and its pose alone.
func (b *body) prepare(s *shop.Profile) {
	b.boxes = make([]module.Box, len(b.p.Outlines))
	for i := range b.p.Outlines {
		b.boxes[i] = boxOf(b.p.Outlines[i].Points)
	}
	for i := range b.m.Fixings {
		f := &b.m.Fixings[i]
		on := b.board(f.Board)
		if on == nil || !b.g.works(f, on) {
			b.idle++
			continue
		}
		b.bears = append(b.bears, bearing{f, on})
		b.lift = max(b.lift, f.Lift)
		for _, r := range f.Rods {
			b.out = max(b.out, r.InBoard+s.Gaps.InFront)
		}
	}
}

func (b *body) board(id string) *board.Board {
	for i := range b.m.Boards {
		if b.m.Boards[i].ID == id {
			return &b.m.Boards[i]
		}
	}
	return nil
}

// attitude is how far a fixing's board may be from level or plumb for the fixing to work.
const attitude = 2 * unit.Degree

// Working lists the brackets of a module that work in a pose, in their order; empty where
// none does, never nil.
func Working(m *module.Result, p plan.Pose) []string {
	b := body{m: m, g: PlacingOf(*m, p)}
	out := make([]string, 0, len(m.Fixings))
	for i := range m.Fixings {
		f := &m.Fixings[i]
		if on := b.board(f.Board); on != nil && b.g.works(f, on) {
			out = append(out, f.Bracket)
		}
	}
	return out
}

// works reports whether a fixing works in a pose: its edge is at the wall, its board is
// level or plumb as it asks, and its upper side is uppermost where it has one.
func (g Placing) works(f *board.Fixing, on *board.Board) bool {
	if z := g.Z(on.Frame.Z + f.At.V); 2*z >= g.Depth {
		return false
	}
	from := g.Dir(on.Frame.Dir) % unit.HalfTurn
	if f.Attitude == board.Plumb {
		from = (from - unit.QuarterTurn).Abs()
	}
	if min(from, unit.HalfTurn-from) > attitude {
		return false
	}
	return f.Top == "" || (g.Up(on.Frame, f.Top)-unit.QuarterTurn).Abs() <= attitude
}

// carrying counts the fixings that carry in this pose.
func (b *body) carrying() (n int) {
	for _, h := range b.bears {
		if h.fix.Carries {
			n++
		}
	}
	return n
}

// label is what the maker calls the module.
func (b *body) label() string { return label(b.m.Name, b.m.ID) }

func label(name, id string) string {
	if name != "" {
		return name
	}
	return id
}

// conclude brings the findings into order, worst first, and keeps what Share needs.
func (j *job) conclude() {
	j.r.Findings = finding.WorstFirst(j.r.Findings)
	j.r.hung = make([]hung, len(j.bodies))
	for i := range j.bodies {
		b := &j.bodies[i]
		j.r.hung[i] = hung{label: b.label(), depth: b.m.Depth, out: b.out, carries: b.carrying() > 0, fixings: len(b.m.Fixings)}
	}
}

// at is the place of a finding about a module.
func (j *job) at(b *body) finding.Place {
	return finding.Place{Wall: j.w.ID, Arrangement: j.a.ID, Module: b.m.ID}
}

func (j *job) add(f finding.Finding) { j.r.Findings = append(j.r.Findings, f) }

// moved is a remedy that moves a module, with the edit that does it. One of dx and dy
// must be 0.
func (j *job) moved(b *body, dx, dy unit.Length) finding.Remedy {
	return moved(j.a.ID, b.m.ID, b.label(), dx, dy)
}

func moved(arrangement, module, label string, dx, dy unit.Length) finding.Remedy {
	key, by, arg := "move-right", dx, words.Length("dx", dx)
	switch {
	case dx < 0:
		key, by = "move-left", -dx
	case dy > 0:
		key, by, arg = "move-up", dy, words.Length("dy", dy)
	case dy < 0:
		key, by, arg = "move-down", -dy, words.Length("dy", dy)
	}
	return finding.Remedy{
		Key:  key,
		Args: []words.Arg{words.Name("module", label), words.Length("by", by)},
		Edit: finding.Edit{Do: "move", Args: []words.Arg{words.Name("arrangement", arrangement), words.Name("module", module), arg}},
	}
}

// placedAgain is the remedy that places a module's brackets anew by the shop's rule.
func (j *job) placedAgain(b *body) finding.Remedy {
	return finding.Remedy{
		Key:  "place-brackets-again",
		Args: []words.Arg{words.Name("module", b.label())},
		Edit: finding.Edit{Do: "place-brackets", Args: []words.Arg{words.Name("module", b.m.ID), words.Name("arrangement", j.a.ID)}},
	}
}

// up returns l rounded up to the next whole step.
func (j *job) up(l unit.Length) unit.Length {
	if rest := l % j.step; rest > 0 {
		return l - rest + j.step
	}
	return l
}
