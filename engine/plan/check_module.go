package plan

import (
	"slices"

	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
)

// Limits of what is made of wood.
const (
	leastBoard     = 10 * mm
	mostBoard      = 6 * m1
	leastThickness = 5 * mm
	mostThickness  = 200 * mm
	leastDepth     = 20 * mm
	mostDepth      = 1500 * mm
)

// MostTurn is the greatest turn of a corner either way.
const MostTurn = 150 * unit.Degree

// closeTurns is how far the turns of a closed module may sum up beside a full turn: a
// hundredth of a degree, so that the corners of a heptagon may be typed as 51.43°.
const closeTurns = unit.Degree / 100

func joints() []string {
	return []string{Mitre, ButtFirst, ButtSecond, RebateFirst, RebateSecond}
}

func reinforcements() []string { return []string{"spline", "tenon", "dowel", "key", "screw"} }

func arrises() []string {
	return []string{"front-a", "front-b", "back-a", "back-b", "start-a", "start-b", "end-a", "end-b"}
}

func (c *checker) module(i int) {
	m, s := &c.p.Modules[i], inModule(i)
	c.length(s, "depth", m.Depth, leastDepth, mostDepth)
	if m.Hung < 0 || m.Hung >= unit.FullTurn {
		c.figure(s, "hung", words.AngleOf(m.Hung), words.AngleOf(0), words.AngleOf(unit.FullTurn-unit.Degree/100), m.Hung < 0)
	}
	if !wood.Known(m.Wood) {
		c.wood(s, m)
	}
	if len(m.Boards) == 0 {
		c.add(noBoards, s, "boards", nil, advice("add-board", c.where(s)...))
		return
	}
	for j := range m.Boards {
		c.board(i, j)
	}
	for j := range m.Corners {
		c.corner(i, j)
	}
	c.chain(i)
	for j := range m.Dividers {
		c.divider(i, j)
	}
	for j := range m.Lights {
		c.light(i, j)
	}
	for j := range m.Brackets {
		c.bracket(i, j)
	}
}

// commonWood is what is offered instead of a wood that is not known.
const commonWood = "white-oak"

func (c *checker) wood(s spot, m *Module) {
	remedy := finding.Remedy{
		Key: "take-known-wood", Args: []words.Arg{words.Name("wood", commonWood)},
		Edit: c.set(s, words.Name("wood", commonWood)),
	}
	c.add(unknownWood, s, "wood", []words.Arg{words.Name("found", m.Wood)}, remedy)
}

func (c *checker) board(i, j int) {
	b, s := &c.p.Modules[i].Boards[j], inModule(i).of("boards", j)
	c.known(s, "length", b.Length, leastBoard, mostBoard)
	c.length(s, "thickness", b.Thickness, leastThickness, mostThickness)
	c.edges(s, b.Edges, b.Thickness)
}

// edges checks the arrises of one board. The two cuts of an edge share its thickness,
// so each may take half.
func (c *checker) edges(s spot, edges []Edge, t unit.Length) {
	for k, e := range edges {
		at := s.at("edges", k)
		c.word(at, "arris", e.Arris, arrises(), false)
		c.word(at, "cut", e.Cut, []string{"chamfer", "round"}, false)
		c.length(at, "size", e.Size, mm/10, max(t/2, mm/10))
		if slices.ContainsFunc(edges[:k], func(o Edge) bool { return o.Arris == e.Arris }) {
			c.add(sameArris, at, "arris", []words.Arg{words.Name("arris", e.Arris)}, advice("keep-one-cut"))
		}
	}
}

func (c *checker) corner(i, j int) {
	k, s := &c.p.Modules[i].Corners[j], inModule(i).of("corners", j)
	switch {
	case k.Turn == 0:
		c.add(noTurn, s, "turn", nil, advice("make-one-board"))
	case k.Turn.Abs() > MostTurn:
		limit := MostTurn
		if k.Turn < 0 {
			limit = -MostTurn
		}
		f := finding.Finding{Kind: sharpTurn, Value: words.AngleOf(k.Turn), Limit: words.AngleOf(MostTurn)}
		f.Remedies = []finding.Remedy{{Key: "turn-less", Args: []words.Arg{words.Angle("limit", MostTurn)}, Edit: c.set(s, words.Angle("turn", limit))}}
		c.say(f, s, "turn")
	}
	c.word(s, "joint", k.Joint, joints(), false)
	r, at := k.Reinforcement, s.at("reinforcement", -1)
	if r.Kind != "" {
		c.word(at, "kind", r.Kind, reinforcements(), false)
	}
	c.known(at, "thickness", r.Thickness, mm, 50*mm)
	c.known(at, "width", r.Width, 2*mm, 200*mm)
	if r.Count.Known {
		c.count(at, "count", r.Count.Value, 1, 100)
	}
}

// chain checks that the corners go with the boards, and that lengths and turns suit an
// open or a closed chain.
func (c *checker) chain(i int) {
	m, s := &c.p.Modules[i], inModule(i)
	want := len(m.Boards) - 1
	if m.Closed {
		want = len(m.Boards)
	}
	if len(m.Corners) != want {
		f := finding.Finding{Kind: cornerCount, Value: words.CountOf(len(m.Corners)), Limit: words.CountOf(want)}
		f.Args = []words.Arg{words.Count("boards", len(m.Boards))}
		f.Remedies = []finding.Remedy{advice("match-corners", words.Count("limit", want))}
		c.say(f, s, "corners")
	}
	if m.Closed {
		c.closed(m, s)
		return
	}
	for j, b := range m.Boards {
		if !b.Length.Known {
			at := s.of("boards", j)
			c.add(noLength, at, "length", nil, advice("type-length"), advice("close-module", c.where(s)...))
		}
	}
}

func (c *checker) closed(m *Module, s spot) {
	if len(m.Boards) < 3 {
		f := finding.Finding{Kind: fewClosed, Value: words.CountOf(len(m.Boards)), Limit: words.CountOf(3)}
		f.Remedies = []finding.Remedy{advice("open-module"), advice("add-board", c.where(s)...)}
		c.say(f, s, "boards")
		return
	}
	free := 0
	for _, b := range m.Boards {
		if !b.Length.Known {
			free++
		}
	}
	if free != 0 && free != 2 {
		f := finding.Finding{Kind: closingCount, Value: words.CountOf(free), Limit: words.CountOf(2)}
		f.Remedies = []finding.Remedy{advice("leave-two-open"), advice("open-module")}
		c.say(f, s, "boards")
	}
	if len(m.Corners) == len(m.Boards) {
		c.turns(m, s)
	}
}

// turns checks that a closed chain comes round once: its turns sum up to a full one.
func (c *checker) turns(m *Module, s spot) {
	var sum unit.Angle
	for _, k := range m.Corners {
		sum += min(max(k.Turn, -unit.FullTurn), unit.FullTurn)
	}
	if (sum.Abs() - unit.FullTurn).Abs() <= closeTurns {
		return
	}
	limit := unit.FullTurn
	if sum < 0 {
		limit = -limit
	}
	last := len(m.Corners) - 1
	f := finding.Finding{Kind: openTurns, Value: words.AngleOf(sum), Limit: words.AngleOf(limit)}
	f.Remedies = []finding.Remedy{advice("change-turns"), advice("open-module")}
	if t := m.Corners[last].Turn + limit - sum; t != 0 && t.Abs() <= MostTurn {
		remedy := finding.Remedy{
			Key: "turn-last", Args: []words.Arg{words.Angle("turn", t)},
			Edit: c.set(s.of("corners", last), words.Angle("turn", t)),
		}
		f.Remedies = append([]finding.Remedy{remedy}, f.Remedies...)
	}
	c.say(f, s, "corners")
}

// onBoard checks the number of a board, from 1, and returns whether there is one.
func (c *checker) onBoard(s spot, member string, n int) bool {
	have := len(c.p.Modules[s.i].Boards)
	if n >= 1 && n <= have {
		return true
	}
	f := finding.Finding{Kind: noBoard, Value: words.CountOf(n), Limit: words.CountOf(have)}
	f.Remedies = []finding.Remedy{advice("name-a-board", words.Count("limit", have)), c.takeAway(s)}
	c.say(f, s, member)
	return false
}

// along checks a place along a board, if the board's length is known.
func (c *checker) along(s spot, member string, at unit.Length, n int) {
	b := c.p.Modules[s.i].Boards[n-1]
	if !b.Length.Known || at >= 0 && at <= b.Length.Value {
		return
	}
	to := min(max(at, 0), b.Length.Value)
	f := finding.Finding{Kind: offBoard, Value: words.LengthOf(at), Limit: words.LengthOf(b.Length.Value)}
	f.Args = []words.Arg{words.Count("n", n)}
	f.Remedies = []finding.Remedy{
		{Key: "move-along", Args: []words.Arg{words.Length("to", to)}, Edit: c.set(s, words.Length(member, to))},
		c.takeAway(s),
	}
	c.say(f, s, member)
}

func (c *checker) divider(i, j int) {
	m := &c.p.Modules[i]
	d, s := &m.Dividers[j], inModule(i).of("dividers", j)
	from := c.onBoard(s, "from", d.From)
	to := c.onBoard(s, "to", d.To)
	if from && to && d.From == d.To {
		c.add(ownBoard, s, "to", []words.Arg{words.Count("n", d.From)}, advice("name-other-board"), c.takeAway(s))
	}
	c.length(s, "thickness", d.Thickness, leastThickness, mostThickness)
	c.word(s, "start", d.Start, []string{"housed", "butt"}, false)
	c.word(s, "end", d.End, []string{"housed", "butt"}, false)
	if from {
		c.along(s, "at", d.At, d.From)
	}
	if d.HousingDepth.Known {
		most := mostThickness
		if from && to {
			most = max(min(m.Boards[d.From-1].Thickness, m.Boards[d.To-1].Thickness), mm/10)
		}
		c.length(s, "housingDepth", d.HousingDepth.Value, mm/10, most)
	}
	c.edges(s, d.Edges, d.Thickness)
}

func (c *checker) light(i, j int) {
	m := &c.p.Modules[i]
	l, s := &m.Lights[j], inModule(i).of("lights", j)
	first := c.onBoard(s, "first", l.First)
	last := c.onBoard(s, "last", l.Last)
	if first && last && l.Last < l.First && !m.Closed {
		c.add(openRun, s, "last", []words.Arg{words.Count("n", l.First), words.Count("to", l.Last)}, advice("turn-run-round"), c.takeAway(s))
	}
	c.word(s, "face", l.Face, []string{"A", "B", "back"}, false)
	c.length(s, "width", l.Width, mm, 200*mm)
	c.length(s, "depth", l.Depth, mm/2, mostThickness)
	c.known(s, "fromFront", l.FromFront, 0, mostDepth)
	c.known(s, "startStop", l.StartStop, 0, mostBoard)
	c.known(s, "endStop", l.EndStop, 0, mostBoard)
	if _, ok := hardware.FindStrip(l.Strip); !ok {
		c.item(s, "strip", l.Strip)
	}
	power := s.at("power", -1)
	if l.Power.Source != "" {
		if _, ok := hardware.FindSource(l.Power.Source); !ok {
			c.item(power, "source", l.Power.Source)
		}
	}
	if l.Power.Exit != "" {
		c.word(power, "exit", l.Power.Exit, []string{"start", "end"}, false)
	}
	c.known(power, "lead", l.Power.Lead, 0, 50*m1)
}

// item adds the finding that a kind is not in the tables of hardware.
func (c *checker) item(s spot, member, found string) {
	args := []words.Arg{words.Word("what", "size."+kebab(member)), words.Name("found", found)}
	c.add(unknownItem, s, member, args, advice("take-listed", args[0]))
}

func (c *checker) bracket(i, j int) {
	m := &c.p.Modules[i]
	b, s := &m.Brackets[j], inModule(i).of("brackets", j)
	if !hardware.IsBracket(b.Kind) {
		args := []words.Arg{words.Word("what", "size.bracket"), words.Name("found", b.Kind)}
		kind := c.p.Shop.Brackets.Kind
		c.add(unknownItem, s, "kind", args, finding.Remedy{
			Key: "take-shops-bracket", Args: []words.Arg{words.Name("kind", kind)}, Edit: c.set(s, words.Name("kind", kind)),
		})
	}
	c.known(s, "length", b.Length, leastBoard, mostBoard)
	if b.Edge != "" {
		c.word(s, "edge", b.Edge, []string{"back", "front"}, false)
	}
	switch {
	case b.Divider != "" && b.Board != 0:
		c.add(onTwo, s, "divider", []words.Arg{words.Count("n", b.Board), words.Name("divider", b.Divider)}, advice("name-one"), c.takeAway(s))
	case b.Divider != "":
		if _, ok := m.Divider(b.Divider); !ok {
			c.add(noDivider, s, "divider", []words.Arg{words.Name("divider", b.Divider)}, advice("name-a-divider"), c.takeAway(s))
		}
		c.length(s, "at", b.At, 0, mostBoard)
	case b.Board == 0:
		c.add(onNothing, s, "board", nil, advice("name-a-board", words.Count("limit", len(m.Boards))), c.takeAway(s))
	case c.onBoard(s, "board", b.Board):
		c.along(s, "at", b.At, b.Board)
	}
}
