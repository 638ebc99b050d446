package edit

import (
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/hardware"
	"ledgewright/engine/module"
	"ledgewright/engine/mount"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// PlaceBrackets puts brackets on a module by a rule, once; after that they are decisions
// like any other.
//
// A kind that works in a level board goes on the highest level board that has uprights
// below it, or else on the highest level board; a kind that works in an upright goes to
// the top of each upright. Which board is level or high is asked of every arrangement in
// which the module stands, and each board that is the one in some arrangement gets
// brackets of its own, in its front edge where the module stands flipped there. Among the
// arrangements that ask for the same board and edge, the places are those that put the
// most brackets on studs in the most arrangements; the first of equals. A module that
// stands nowhere is taken as it hangs, and reaches no stud.
//
// Lock holes and cleats go below the boards as the module hangs in the first of these
// arrangements.
//
// The module's brackets are replaced; with an arrangement, only those on the board and
// edge that it asks for.
type PlaceBrackets struct {
	Module      string                    `json:"module"`
	Arrangement string                    `json:"arrangement,omitempty"` // missing: all in which the module stands
	Kind        string                    `json:"kind,omitempty"`        // a kind or family; missing: the shop's
	Rule        string                    `json:"rule,omitempty"`        // missing: the shop's
	Fixed       document.Opt[unit.Length] `json:"fixed,omitempty"`       // from each end, for the rule "fixed"
	Board       int                       `json:"board,omitempty"`       // missing: by the rule
	Count       int                       `json:"count,omitempty"`       // missing: by the length
}

// Do returns "place-brackets".
func (PlaceBrackets) Do() string { return "place-brackets" }

func (e PlaceBrackets) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	g, err := e.placing(p, p.Modules[i])
	if err != nil {
		return p, Name{}, err
	}
	seats := g.seats()
	if len(seats) == 0 {
		return p, Name{}, refuse("nothing-to-carry", where("module", e.Module))
	}
	m := p.Modules[i]
	m.Hung = g.hung
	m.Brackets = kept(m.Brackets, func(b plan.Bracket) bool { return e.Arrangement != "" && !g.takes(seats, b) })
	for _, s := range seats {
		for _, b := range g.brackets(s) {
			b.ID = next(&p, plan.LetterBracket)
			m.Brackets = append(m.Brackets, b)
		}
	}
	p.Modules = with(p.Modules, i, m)
	return p, did(e, ofModule(m)), nil
}

// A placing is the work of PlaceBrackets on one module.
type placing struct {
	edit   PlaceBrackets
	kind   hardware.BracketKind
	rule   shop.BracketRule
	shop   shop.Profile
	step   unit.Length
	worked module.Result
	stands []stand
	hung   unit.Angle // the turn at which the module hangs in the first of the stands
	chain  int        // boards of the chain
}

// A stand is one arrangement in which the module stands.
type stand struct {
	on    wall.Placing
	flip  bool
	studs []wall.Stud // edges found, of known width
	solid bool        // masonry: a bracket may stand anywhere
}

func (e PlaceBrackets) placing(p plan.Plan, m plan.Module) (*placing, error) {
	at := where("module", m.ID)
	g := &placing{edit: e, rule: p.Shop.Brackets, shop: p.Shop, step: p.Shop.Tape.Bench, chain: len(m.Boards)}
	if e.Kind != "" {
		g.rule.Kind = e.Kind
	}
	if e.Rule != "" {
		g.rule.Rule = e.Rule
	}
	g.rule.Fixed = e.Fixed.Or(g.rule.Fixed)
	rules := []string{shop.RuleStuds, shop.RuleOverhang, shop.RuleFixed}
	if !slices.Contains(rules, g.rule.Rule) {
		return nil, notOneOf(at, "rule", g.rule.Rule, rules...)
	}
	var ok bool
	if g.kind, ok = hardware.Bracket(hardware.Sized(g.rule.Kind, m.Depth, p.Shop.System)); !ok {
		return nil, noSuch("bracket-kind", at, g.rule.Kind, bracketKinds())
	}
	if e.Board != 0 {
		if _, err := number(e.Board, len(m.Boards), "board", at); err != nil {
			return nil, err
		}
	}
	m.Brackets = nil
	g.hung = m.Hung
	if g.worked = module.Derive(m, p.Shop); len(g.worked.Boards) < len(m.Boards) {
		return nil, refuse("not-worked-out", at)
	}
	return g, g.stand(p)
}

// bracketKinds returns the families and kinds of brackets.
func bracketKinds() []string {
	var ids []string
	for _, f := range hardware.Families() {
		ids = append(ids, string(f))
	}
	for _, k := range hardware.Brackets() {
		ids = append(ids, k.ID)
	}
	return ids
}

// stand finds the arrangements that count.
func (g *placing) stand(p plan.Plan) error {
	if g.edit.Arrangement != "" {
		i, err := findArrangement(p, g.edit.Arrangement)
		if err == nil {
			_, err = findPose(p.Arrangements[i], g.edit.Module)
		}
		if err != nil {
			return err
		}
	}
	for _, a := range p.Arrangements {
		o, ok := poseOf(p, a.ID, g.edit.Module)
		if !ok || g.edit.Arrangement != "" && a.ID != g.edit.Arrangement {
			continue
		}
		w, _ := p.Wall(a.Wall)
		if len(g.stands) == 0 {
			g.hung = hanging(o)
		}
		g.stands = append(g.stands, g.at(o, w))
	}
	if len(g.stands) == 0 {
		g.stands = []stand{g.at(plan.Pose{Turn: g.hung}, plan.Wall{})}
	}
	return nil
}

// hanging is the turn at which what is below in a pose is below. A flip turns left and
// right round, and with them the turn.
func hanging(o plan.Pose) unit.Angle {
	if o.Flip {
		return (-o.Turn).Turn()
	}
	return o.Turn.Turn()
}

func (g *placing) at(o plan.Pose, w plan.Wall) stand {
	s := stand{on: wall.PlacingOf(g.worked, o), flip: o.Flip}
	switch w.Build {
	case "":
	case plan.BuildStuds, plan.BuildLath:
		for _, t := range wall.Studs(w) {
			if t.State == plan.EdgesFound && t.Half > 0 {
				s.studs = append(s.studs, t)
			}
		}
	default:
		s.solid = true
	}
	return s
}

// A seat is a board and an edge that gets brackets, and the stands that ask for it.
type seat struct {
	board  int // index
	edge   string
	stands []stand
}

// seats returns the boards that get brackets, in the order of the stands.
func (g *placing) seats() []seat {
	var out []seat
	for _, s := range g.stands {
		edge := ""
		if s.flip {
			edge = string(board.Front)
		}
		for _, b := range g.carriers(s) {
			i := slices.IndexFunc(out, func(o seat) bool { return o.board == b && o.edge == edge })
			if i < 0 {
				i = len(out)
				out = append(out, seat{board: b, edge: edge})
			}
			out[i].stands = append(out[i].stands, s)
		}
	}
	return out
}

// takes reports whether a bracket stands where new ones go.
func (g *placing) takes(seats []seat, b plan.Bracket) bool {
	return slices.ContainsFunc(seats, func(s seat) bool {
		return b.Divider == "" && b.Board == s.board+1 && (b.Edge == string(board.Front)) == (s.edge == string(board.Front))
	})
}

// level and plumb boards, within the angle at which a bracket still works.
const within = 2 * unit.Degree

func isLevel(a unit.Angle) bool { return off(a, 0) <= within }
func isPlumb(a unit.Angle) bool { return off(a, unit.QuarterTurn) <= within }

// off is the angle between two directions, whichever way they are walked.
func off(a, b unit.Angle) unit.Angle {
	d := (a - b).Turn() % unit.HalfTurn
	return min(d, unit.HalfTurn-d)
}

// carriers returns the indices of the boards that carry the module in one stand.
func (g *placing) carriers(s stand) []int {
	if g.edit.Board != 0 {
		return []int{g.edit.Board - 1}
	}
	if g.kind.Attitude == hardware.Plumb {
		var out []int
		for i := range g.chain {
			if isPlumb(s.on.Dir(g.worked.Boards[i].Frame.Dir)) {
				out = append(out, i)
			}
		}
		return out
	}
	best, bestHas := -1, false
	var bestHeight unit.Length
	for i := range g.chain {
		b := g.worked.Boards[i]
		if !isLevel(s.on.Dir(b.Frame.Dir)) {
			continue
		}
		box := boxOn(s, b)
		height, has := (box.MinY+box.MaxY)/2, g.hasUprightsBelow(s, i)
		if best < 0 || has && !bestHas || has == bestHas && height > bestHeight {
			best, bestHas, bestHeight = i, has, height
		}
	}
	if best < 0 {
		return nil
	}
	return []int{best}
}

// hasUprightsBelow reports whether an upright, of the chain or a divider, hangs from the
// board with index i.
func (g *placing) hasUprightsBelow(s stand, i int) bool {
	const touch = unit.Touch
	own := boxOn(s, g.worked.Boards[i])
	for k, b := range g.worked.Boards {
		if k == i || b.Role == board.Rail || !isPlumb(s.on.Dir(b.Frame.Dir)) {
			continue
		}
		box := boxOn(s, b)
		under := box.MinX >= own.MinX-touch && box.MaxX <= own.MaxX+touch
		if under && box.MaxY >= own.MinY-touch && box.MinY < own.MinY {
			return true
		}
	}
	return false
}

// boxOn returns the box of a board on the wall.
func boxOn(s stand, b board.Board) module.Box {
	var box module.Box
	for i, p := range b.Profile() {
		at, _ := s.on.Point(b.Frame, p)
		if i == 0 {
			box = module.Box{MinX: at.X, MinY: at.Y, MaxX: at.X, MaxY: at.Y}
			continue
		}
		box.MinX, box.MaxX = min(box.MinX, at.X), max(box.MaxX, at.X)
		box.MinY, box.MaxY = min(box.MinY, at.Y), max(box.MaxY, at.Y)
	}
	return box
}

// brackets returns the brackets of one seat, without ids.
func (g *placing) brackets(s seat) []plan.Bracket {
	var out []plan.Bracket
	b := g.worked.Boards[s.board]
	b.Frame.Dir = (b.Frame.Dir + g.hung).Turn()
	in := mount.Input{Kind: g.kind.ID, Board: b, Edge: board.Face(s.edge), Shop: g.shop, Upright: isPlumb(b.Frame.Dir)}
	blank := plan.Bracket{Kind: g.kind.ID, Board: s.board + 1, Edge: s.edge}
	switch {
	case g.kind.Attitude == hardware.Plumb && g.kind.Pitch == 0:
		blank.At = g.top(s, in)
		out = append(out, blank)
	case g.kind.Family == hardware.Bar:
		at, long := g.bar(s, in)
		blank.At, blank.Length = at, document.Some(long)
		out = append(out, blank)
	case g.kind.Pitch != 0:
		start, end := mount.Heels(in)
		blank.At = g.up(max(start, end))
		out = append(out, blank)
	default:
		for _, at := range g.best(s, in) {
			blank.At = at
			out = append(out, blank)
		}
	}
	return out
}

// up rounds up to the bench's step.
func (g *placing) up(l unit.Length) unit.Length { return (l + g.step - 1) / g.step * g.step }

// top returns the highest place at which a bracket keeps its distances in an upright.
func (g *placing) top(s seat, in mount.Input) unit.Length {
	from, to := mount.Room(in)
	if from > to {
		return in.Board.Length / 2
	}
	if s.stands[0].on.Dir(g.worked.Boards[s.board].Frame.Dir) == unit.QuarterTurn {
		return to / g.step * g.step
	}
	return g.up(from)
}

// best returns the places of single brackets on a level board that serve the stands best.
func (g *placing) best(s seat, in mount.Input) []unit.Length {
	start, end := mount.Heels(in)
	ask := mount.Placing{Length: in.Board.Length, Rule: g.rule, Rod: g.kind.Rod,
		HeelStart: start, HeelEnd: end, Step: g.step, Count: g.edit.Count}
	var best []unit.Length
	most := -1
	for _, t := range s.stands {
		ask.Studs = g.reach(t, g.worked.Boards[s.board])
		at := mount.Places(ask)
		if n := g.served(s, at); n > most {
			best, most = at, n
		}
	}
	return best
}

// served counts, over all stands, the places that meet a stud, or any wall that is solid.
func (g *placing) served(s seat, at []unit.Length) (n int) {
	for _, t := range s.stands {
		studs := g.reach(t, g.worked.Boards[s.board])
		for _, u := range at {
			if t.solid || slices.ContainsFunc(studs, func(i mount.Interval) bool { return u >= i.From+g.kind.Rod && u <= i.To-g.kind.Rod }) {
				n++
			}
		}
	}
	return n
}

// reach returns the studs behind a level board, edge to edge along its u.
func (g *placing) reach(s stand, b board.Board) []mount.Interval {
	zero, _ := s.on.Point(b.Frame, board.Point{W: b.Thickness / 2})
	back := leftward(s.on.Dir(b.Frame.Dir))
	var out []mount.Interval
	for _, t := range s.studs {
		from, to := t.X-t.Half-zero.X, t.X+t.Half-zero.X
		if back {
			from, to = -to, -from
		}
		if to > 0 && from < b.Length {
			out = append(out, mount.Interval{From: from, To: to})
		}
	}
	return out
}

// leftward reports whether a direction points to the left.
func leftward(a unit.Angle) bool { return a > unit.QuarterTurn && a < unit.HalfTurn+unit.QuarterTurn }

// bar returns the first rod and the length of one bar: as many rods as the board takes,
// the most of them on studs, then the most even.
func (g *placing) bar(s seat, in mount.Input) (at, length unit.Length) {
	start, end := mount.Heels(in)
	least := g.kind.Rod * unit.Length(g.rule.FirstDiameters)
	from, to := g.up(max(start, least)), in.Board.Length-max(end, least)
	pitch, margin := g.kind.Pitch, g.kind.Margin
	if to-from < pitch {
		return from, 2*margin + pitch
	}
	rods := (to-from)/pitch + 1
	at = from + ((to-from)-(rods-1)*pitch)/2/g.step*g.step
	most := g.served(s, row(at, pitch, rods))
	for _, t := range s.stands {
		for _, i := range g.reach(t, g.worked.Boards[s.board]) {
			first := from + (i.From+(i.To-i.From)/2-from+1_000*pitch)%pitch
			if first > to {
				continue
			}
			n := (to-first)/pitch + 1
			if served := g.served(s, row(first, pitch, n)); n > 1 && served > most {
				at, rods, most = first, n, served
			}
		}
	}
	return at, 2*margin + (rods-1)*pitch
}

// row returns n places a pitch apart.
func row(at, pitch, n unit.Length) []unit.Length {
	out := make([]unit.Length, n)
	for i := range out {
		out[i] = at + unit.Length(i)*pitch
	}
	return out
}
