package board

import (
	"math"

	"ledgewright/engine/finding"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The rules of this room.
var (
	cutsMeet     = finding.Kind{Key: "cuts-meet", Verdict: finding.Takes, Severity: finding.Stop}
	cutsNear     = finding.Kind{Key: "cuts-too-near", Verdict: finding.Takes, Severity: finding.Mend}
	breaksOut    = finding.Kind{Key: "cut-breaks-out", Verdict: finding.Takes, Severity: finding.Stop}
	woodLeft     = finding.Kind{Key: "too-little-wood", Verdict: finding.Takes, Severity: finding.Mend}
	boreAtHeel   = finding.Kind{Key: "bore-at-heel", Verdict: finding.Holds, Severity: finding.Mend}
	pocketAtHeel = finding.Kind{Key: "pocket-at-heel", Verdict: finding.Takes, Severity: finding.Mend}
)

// Kinds lists the kinds of findings of this room.
func Kinds() []finding.Kind {
	return []finding.Kind{cutsMeet, cutsNear, breaksOut, woodLeft, boreAtHeel, pocketAtHeel}
}

// SpokenFor reports whether a kind of finding about a feature is the business of the
// room that fits brackets or lights: how much wood its own cuts leave.
func SpokenFor(k finding.Kind, f Feature) bool {
	bracket, light := f.Cause.What == "bracket", f.Cause.What == "light" && f.Kind == Groove
	return (bracket || light) && k == woodLeft || bracket && (k == boreAtHeel || k == pocketAtHeel)
}

// A solid is a feature with its body, and what it may leave of the wood.
type solid struct {
	*Feature
	body
	index int // in the board's features
}

// A clash is one board being asked.
type clash struct {
	b          *Board
	c          shop.Covers
	start, end Cut
	out        []finding.Finding
}

// Clash asks whether the cuts of a board leave each other, and its surfaces, the wood
// that the shop's covers ask for. Distances are exact distances of boxes, cylinders and
// end cuts. Cuts of the same cause are meant to meet. Chamfers and round-overs take part
// in nothing. Findings come in the order of the features.
func Clash(b Board, covers shop.Covers) []finding.Finding {
	c := clash{b: &b, c: covers}
	c.start, c.end = b.Ends()
	var store [16]solid
	all := store[:0]
	for i := range b.Features {
		f := &b.Features[i]
		if f.Kind == Chamfer || f.Kind == RoundOver {
			continue
		}
		if k := b.body(f, c.start, c.end); k.form != nothing {
			all = append(all, solid{f, k, i})
		}
	}
	for i := range all {
		c.surfaces(&all[i])
		c.heels(&all[i])
		for j := range all[:i] {
			c.pair(&all[j], &all[i])
		}
	}
	return c.out
}

// pair asks how far two cuts are apart.
func (c *clash) pair(a, b *solid) {
	if a.Cause == b.Cause {
		return
	}
	limit := c.c.BoreToSlot
	if a.Kind == Pocket || b.Kind == Pocket {
		limit = c.c.Pocket
	}
	if a.gap(&b.body) >= limit.MM() {
		return
	}
	switch d := distance(&a.body, &b.body); {
	case d <= 1e-6:
		c.say(cutsMeet, b, words.LengthOf(0), words.LengthOf(limit), words.Word("other", "cut."+a.word()), c.apart(a, b, limit))
	case unit.Nearest(d)+unit.Touch < limit:
		c.say(cutsNear, b, words.LengthOf(unit.Nearest(d)), words.LengthOf(limit), words.Word("other", "cut."+a.word()), c.apart(a, b, limit-unit.Nearest(d)))
	}
}

// gap returns the distance of the boxes of two bodies along the axis where they are
// farthest apart: never more than the distance of the bodies.
func (k *body) gap(o *body) float64 {
	return max(k.v0-o.v1, o.v0-k.v1, k.lo.u-o.hi.u, o.lo.u-k.hi.u, k.lo.w-o.hi.w, o.lo.w-k.hi.w)
}

// surfaces asks how much wood a cut leaves before the surfaces that it does not enter.
func (c *clash) surfaces(s *solid) {
	for _, side := range [...]Face{FaceA, FaceB, Back, Front, Start, End} {
		if c.opens(s, side) {
			continue
		}
		left := unit.Nearest(max(min(c.left(s, side), 1e9), -1e9))
		need := c.cover(s, side)
		switch {
		case left+unit.Touch >= need:
		case left < -unit.Touch:
			c.say(breaksOut, s, words.LengthOf(-left), words.LengthOf(need), words.Word("side", "face."+string(side)), c.less(s, need-left, side))
		default:
			c.say(woodLeft, s, words.LengthOf(max(left, 0)), words.LengthOf(need), words.Word("side", "face."+string(side)), c.less(s, need-left, side))
		}
	}
}

// opens reports whether a cut is meant to run out of a side, or its distance from that
// side is another rule's.
func (c *clash) opens(s *solid, side Face) bool {
	if side == s.Enter {
		return true
	}
	atEnd := side == Start || side == End
	switch s.Kind {
	case Groove:
		return atEnd // where a groove stops is the light's own business
	case Housing:
		return side == Back || side == Front || atEnd && s.Cause == c.endCause(side)
	case Slot, Bore:
		if s.Through && side == opposite(s.Enter) || s.Through && s.After == AfterGlue {
			return true
		}
	case Pocket:
		if s.Through && side == opposite(s.Enter) {
			return true
		}
	}
	if s.Cause.What != "corner" {
		return false
	}
	// Of a corner's own cuts only the face that the tool heads for counts, and the far
	// side: the joint is glued over the rest.
	return atEnd && s.Cause == c.endCause(side) || s.Enter != FaceA && s.Enter != FaceB && c.leans(s, opposite(side))
}

// leans reports whether a cut goes towards face A or B from the other.
func (c *clash) leans(s *solid, face Face) bool {
	if s.form != prism && s.form != leaning {
		return false
	}
	axis := mid(s.quad[1], s.quad[2]).sub(mid(s.quad[0], s.quad[3]))
	return face == FaceB && axis.w > 1e-9 || face == FaceA && axis.w < -1e-9
}

func opposite(f Face) Face {
	switch f {
	case FaceA:
		return FaceB
	case FaceB:
		return FaceA
	case Back:
		return Front
	case Front:
		return Back
	case Start:
		return End
	}
	return Start
}

// endCause returns the cause of the cut at an end.
func (c *clash) endCause(side Face) Cause {
	for i := range c.b.Features {
		if f := &c.b.Features[i]; f.Kind == EndCut && f.Enter == side {
			return f.Cause
		}
	}
	return Cause{}
}

// left returns the wood between a cut and a side, in millimetres, negative where it
// breaks out.
func (c *clash) left(s *solid, side Face) float64 {
	t := c.b.Thickness.MM()
	switch side {
	case FaceA:
		return s.lo.w
	case FaceB:
		return t - s.hi.w
	case Back:
		return s.v0
	case Front:
		return c.b.Width.MM() - s.v1
	case Start:
		a, b := place(c.start.AtA, 0), place(c.start.AtB, c.b.Thickness)
		return s.beyond(b, a)
	}
	a, b := place(c.end.AtA, 0), place(c.end.AtB, c.b.Thickness)
	return s.beyond(a, b)
}

// beyond returns how far the section of a body stays to the left of the line from a
// to b.
func (k *body) beyond(a, b vec) float64 {
	along := b.sub(a)
	along = along.scale(1 / along.size())
	if k.form == pin {
		return along.cross(k.from.sub(a)) - k.radius
	}
	near := math.Inf(1)
	for _, p := range k.quad {
		near = min(near, along.cross(p.sub(a)))
	}
	return near
}

// cover returns the wood that a cut must leave before a side.
func (c *clash) cover(s *solid, side Face) unit.Length {
	faces := side == FaceA || side == FaceB
	switch {
	case s.Cause.What == "corner" && s.Kind != Housing && faces && c.b.Thickness < c.c.Thin:
		return c.c.SlotThin
	case s.Cause.What == "corner" && s.Kind != Housing && faces:
		return c.c.Slot
	case s.Kind == Bore && s.Cause.What == "bracket" && faces && (s.Enter == Back || s.Enter == Front):
		return max(c.c.Bore, (s.Diameter+1)/2)
	}
	return c.c.Pocket
}

// heels asks how far bores and pockets of brackets keep from the heel of a mitre: along
// the board, from the cut's side to the short point.
func (c *clash) heels(s *solid) {
	if s.Cause.What != "bracket" || s.Kind != Bore && s.Kind != Pocket {
		return
	}
	kind, need := boreAtHeel, c.c.BoreToHeel
	if s.Kind == Pocket {
		kind, need = pocketAtHeel, c.c.PocketToHeel
	}
	near := unit.Length(math.MaxInt64)
	if c.start.AtA != c.start.AtB {
		near = min(near, unit.Nearest(s.lo.u)-c.start.Greatest())
	}
	if c.end.AtA != c.end.AtB {
		near = min(near, c.end.Least()-unit.Nearest(s.hi.u))
	}
	if near < need {
		c.say(kind, s, words.LengthOf(near), words.LengthOf(need), words.Arg{}, []finding.Remedy{{Key: "move-bracket-in", Args: []words.Arg{words.Length("by", need-near)}}})
	}
}

// word returns the word for a cut: its kind, or what it is for.
func (f *Feature) word() string {
	switch {
	case f.Kind == Bore && f.Cause.What == "light":
		return "lead-hole"
	case f.Kind == Bore && f.Cause.What == "corner":
		return "dowel-hole"
	case f.Kind == Housing && f.Cause.What == "corner":
		return "rebate"
	}
	return string(f.Kind)
}

// say adds a finding about a feature.
func (c *clash) say(k finding.Kind, s *solid, value, limit words.Value, other words.Arg, remedies []finding.Remedy) {
	name := c.b.Name
	if name == "" {
		name = c.b.ID
	}
	f := finding.Finding{
		Kind: k, Value: value, Limit: limit,
		Place:    finding.Place{Board: c.b.ID, Feature: s.index + 1},
		Args:     []words.Arg{words.Name("board", name), words.Word("cut", "cut."+s.word())},
		Remedies: remedies,
	}
	if other.Name != "" {
		f.Args = append(f.Args, other)
	}
	switch s.Cause.What {
	case "bracket":
		f.Place.Bracket = s.Cause.ID
	case "light":
		f.Place.Light = s.Cause.ID
	case "divider":
		f.Place.Divider = s.Cause.ID
	}
	c.out = append(c.out, f)
}

// apart returns what would bring two cuts apart that lack some wood between them.
func (c *clash) apart(a, b *solid, lack unit.Length) (remedies []finding.Remedy) {
	for _, s := range []*solid{a, b} {
		if s.Kind == Groove && s.Cause.What == "light" {
			if s.Depth-lack > unit.Millimetre {
				remedies = append(remedies, shallower(s, lack))
			}
			remedies = append(remedies, finding.Remedy{Key: "move-groove"})
		}
	}
	for _, s := range []*solid{a, b} {
		switch s.Cause.What {
		case "bracket":
			remedies = append(remedies, finding.Remedy{Key: "move-bracket", Args: []words.Arg{words.Name("bracket", s.Cause.ID)}})
		case "divider":
			remedies = append(remedies, finding.Remedy{Key: "move-divider", Args: []words.Arg{words.Name("divider", s.Cause.ID)}})
		case "corner":
			remedies = append(remedies, finding.Remedy{Key: "other-piece"})
		}
	}
	return append(remedies, finding.Remedy{Key: "use-thicker-boards"})
}

// shallower is a remedy that makes a groove less deep by what it lacks.
func shallower(s *solid, lack unit.Length) finding.Remedy {
	depth := s.Depth - lack
	depth -= depth % (unit.Millimetre / 10)
	return finding.Remedy{Key: "shallower-groove", Args: []words.Arg{words.Length("depth", depth)}, Edit: finding.Edit{
		Do: "set-light", Args: []words.Arg{words.Name("light", s.Cause.ID), words.Length("depth", depth)},
	}}
}

// less returns what would leave more wood between a cut and a side.
func (c *clash) less(s *solid, lack unit.Length, side Face) (remedies []finding.Remedy) {
	deep := side == opposite(s.Enter)
	switch {
	case deep && s.Kind == Groove && s.Cause.What == "light" && s.Depth-lack > unit.Millimetre:
		remedies = append(remedies, shallower(s, lack))
	case deep && s.Kind == Housing:
		remedies = append(remedies, finding.Remedy{Key: "shallower-housing"})
	case s.Cause.What == "bracket":
		remedies = append(remedies, finding.Remedy{Key: "move-bracket", Args: []words.Arg{words.Name("bracket", s.Cause.ID)}})
	case s.Cause.What == "corner":
		remedies = append(remedies, finding.Remedy{Key: "other-piece"})
	case s.Cause.What == "divider":
		remedies = append(remedies, finding.Remedy{Key: "move-divider", Args: []words.Arg{words.Name("divider", s.Cause.ID)}})
	case s.Kind == Groove:
		remedies = append(remedies, finding.Remedy{Key: "move-groove"})
	}
	return append(remedies, finding.Remedy{Key: "use-thicker-boards"})
}
