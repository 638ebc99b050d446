package module

import (
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A divider leaves the board it starts from square, on the side where the board it ends
// at stands. Three lines run across, at its centre and at its two faces; where they meet
// the other board says how long each face is, and where the divider lands.

// Joints of a divider's ends, as they stand in a plan.
const (
	housed = "housed"
	butt   = "butt"
)

// A crossing is one end of a divider on a board of the chain.
type crossing struct {
	chain, divider string // ids
	at, outer      [2]unit.Length
	interior, tilt unit.Angle
	lead           unit.Length
	area           unit.Area
}

// A landing is where the lines of a divider meet the board it ends at.
type landing struct {
	face      board.Face     // of the board it ends at
	reach     [3]unit.Length // from the face it leaves: at its face A, its centre, its face B
	at        [3]unit.Length // u on the board it ends at
	across    bool           // square to that board
	direction unit.Angle     // of the divider
}

// divide adds the dividers.
func (w *work) divide() {
	for _, d := range w.m.Dividers {
		w.addDivider(d)
	}
}

func (w *work) addDivider(d plan.Divider) {
	n := len(w.m.Boards)
	if d.From < 1 || d.From > n || d.To < 1 || d.To > n || d.From == d.To || d.Thickness <= 0 || d.Thickness > thickest {
		w.say(finding.Finding{
			Kind: notSound, Place: finding.Place{Divider: d.ID}, Remedies: []finding.Remedy{{Key: "see-the-check"}},
		})
		return
	}
	from, to := &w.boards[d.From-1], &w.boards[d.To-1]
	side := board.FaceA
	l, ok := land(from, to, side, d.At, d.Thickness)
	if !ok {
		side = board.FaceB
		l, ok = land(from, to, side, d.At, d.Thickness)
	}
	if !ok {
		w.say(w.misses(d, from, to))
		return
	}
	if lo, hi := from.On(side); d.At-d.Thickness/2 < lo || d.At+(d.Thickness+1)/2 > hi {
		w.say(w.offFace(d, from, lo+(d.Thickness+1)/2, hi-(d.Thickness+1)/2))
		return
	}
	w.makeDivider(d, from, to, side, l)
}

// land follows the lines of a divider from a face of one board to another, and reports
// whether all three meet one face of it.
func land(from, to *board.Board, side board.Face, at, t unit.Length) (l landing, ok bool) {
	w0, half := unit.Length(0), unit.QuarterTurn
	if side == board.FaceB {
		w0, half = from.Thickness, -half
	}
	l.direction = (from.Frame.Dir + half).Turn()
	turn := l.direction - to.Frame.Dir
	sin, cos := turn.SinCos()
	l.across = (turn.Turn() % unit.HalfTurn) == unit.QuarterTurn
	target := unit.Length(0)
	if l.face = board.FaceA; sin > 0 { // against w: it meets face B first
		l.face, target = board.FaceB, to.Thickness
	}
	if sin == 0 {
		return l, false
	}
	lo, hi := to.On(l.face)
	for i, off := range [3]unit.Length{-(t / 2), 0, t - t/2} {
		if side == board.FaceB { // its face A looks to larger u
			off = -off
		}
		u, v := to.Frame.Local(from.Frame.Plane(at+off, w0))
		way := (target - v).MM() / -sin
		l.reach[i] = unit.Nearest(min(max(way, -1e7), 1e7))
		l.at[i] = u + unit.Nearest(min(max(way*cos, -1e7), 1e7))
		if l.reach[i] < unit.Touch || l.at[i] < lo-unit.Touch || l.at[i] > hi+unit.Touch {
			return l, false
		}
	}
	return l, true
}

// makeDivider makes the board and the housings that take its ends.
func (w *work) makeDivider(d plan.Divider, from, to *board.Board, side board.Face, l landing) {
	into, beyond := unit.Length(0), unit.Length(0)
	if d.Start == housed {
		into = w.housingDepth(d, from)
		from.Features = append(from.Features, housing(d, side, d.At, into, from))
	}
	switch {
	case d.End == housed && l.across:
		beyond = w.housingDepth(d, to)
		to.Features = append(to.Features, housing(d, l.face, l.at[1], beyond, to))
	case d.End == housed:
		w.say(w.slanted(d, l.direction-to.Frame.Dir))
	}
	b := board.Board{
		ID: d.ID, Name: d.Name, Role: board.Divider, Wood: w.m.Wood,
		Width: w.m.Depth, Thickness: d.Thickness, Features: make([]board.Feature, 0, 8),
	}
	cut := board.Cut{AtA: into + l.reach[0] + beyond, AtB: into + l.reach[2] + beyond}
	b.Length = cut.Greatest()
	b.Frame = dividerFrame(d, from, side, into, l.direction)
	cause := board.Cause{What: "divider", ID: d.ID}
	b.Features = append(b.Features,
		board.Feature{Kind: board.EndCut, Cause: cause, Enter: board.Start, After: board.OnBlank},
		board.Feature{Kind: board.EndCut, Cause: cause, Enter: board.End, AtA: cut.AtA, AtB: cut.AtB, After: whenCut(cut)})
	w.crossed = append(w.crossed, startOf(&b, from, into), w.endOf(&b, to, beyond, l, cut))
	w.boards = append(w.boards, b)
}

// dividerFrame places a divider: its corner on face A at its start.
func dividerFrame(d plan.Divider, from *board.Board, side board.Face, into unit.Length, dir unit.Angle) board.Frame {
	u, w := d.At-d.Thickness/2, into
	if side == board.FaceB {
		u, w = d.At+d.Thickness/2, from.Thickness-into
	}
	x, y := from.Frame.Plane(u, w)
	return board.Frame{X: x, Y: y, Z: from.Frame.Z, Dir: dir}
}

func whenCut(c board.Cut) board.Moment {
	if c.AtA == c.AtB {
		return board.OnBlank
	}
	return board.AfterMitre
}

// housingDepth returns how deep a housing goes into a board: as typed, or the shop's
// part of the thickness rounded down to what the bench can set.
func (w *work) housingDepth(d plan.Divider, b *board.Board) unit.Length {
	deep := b.Thickness / unit.Length(max(w.s.Joints.HousingDepthPart, 1))
	if step := max(w.s.Tape.Bench, 1); deep > step {
		deep -= deep % step
	}
	return min(max(d.HousingDepth.Or(deep), 0), b.Thickness)
}

// housing returns the housing for a divider in a face of a board.
func housing(d plan.Divider, face board.Face, at, depth unit.Length, b *board.Board) board.Feature {
	return board.Feature{
		Kind: board.Housing, Cause: board.Cause{What: "divider", ID: d.ID}, Enter: face,
		Mouth: board.Point{U: at, V: b.Width / 2, W: inner(face, b.Thickness)},
		Along: d.Thickness, Across: b.Width, Depth: depth, Through: true, After: board.OnBlank,
	}
}

// startOf describes the square end of a divider.
func startOf(b, from *board.Board, into unit.Length) crossing {
	c := crossing{chain: from.ID, divider: b.ID, interior: unit.QuarterTurn}
	x, y := b.Frame.Plane(into, 0)
	ox, oy := b.Frame.Plane(into, b.Thickness)
	c.at, c.outer = [2]unit.Length{x, y}, [2]unit.Length{ox, oy}
	c.area = unit.Rectangle(b.Thickness+2*into, b.Width)
	return c
}

// endOf describes the other end, and asks whether the saw tilts so far.
func (w *work) endOf(b, to *board.Board, beyond unit.Length, l landing, cut board.Cut) crossing {
	c := crossing{chain: to.ID, divider: b.ID}
	turn := (l.direction - to.Frame.Dir).Turn() % unit.HalfTurn
	c.interior = min(turn, unit.HalfTurn-turn)
	c.lead = cut.AtB - cut.AtA
	if c.tilt = unit.QuarterTurn - c.interior; c.lead < 0 {
		c.tilt = -c.tilt
	}
	x, y := b.Frame.Plane(cut.AtA-beyond, 0)
	ox, oy := b.Frame.Plane(cut.AtB-beyond, b.Thickness)
	c.at, c.outer = [2]unit.Length{x, y}, [2]unit.Length{ox, oy}
	c.area = unit.Rectangle(unit.Nearest(b.Thickness.MM()/c.tilt.Cos())+2*beyond, b.Width)
	for _, f := range joint.CheckTilt(*b, c.tilt, w.s) {
		f.Place.Divider = b.ID
		w.say(f)
	}
	return c
}

// crossings adds the ends of dividers to the corners, for those who reckon with them.
// Nothing is claimed of them: they glue end grain to side grain.
func (w *work) crossings() {
	for _, c := range w.crossed {
		w.out.Corners = append(w.out.Corners, board.Corner{
			First: c.chain, Second: c.divider, At: c.at, Outer: c.outer, Interior: c.interior,
			Tilt: [2]unit.Angle{0, c.tilt}, Lead: [2]unit.Length{0, c.lead}, GlueArea: c.area, ClaimBasis: "claim.none",
		})
	}
}

// setDivider is a remedy that sets a member of a divider.
func setDivider(key, id string, arg words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: []words.Arg{words.Name("divider", id), arg}, Edit: finding.Edit{
		Do: "set-divider", Args: []words.Arg{words.Name("divider", id), arg},
	}}
}

func removeDivider(id string) finding.Remedy {
	args := []words.Arg{words.Name("divider", id)}
	return finding.Remedy{Key: "remove-divider", Args: args, Edit: finding.Edit{Do: "remove-divider", Args: args}}
}

func (w *work) misses(d plan.Divider, from, to *board.Board) finding.Finding {
	return finding.Finding{
		Kind: dividerMisses, Place: finding.Place{Divider: d.ID, Board: from.ID},
		Args: []words.Arg{words.Name("divider", d.ID), words.Name("board", label(from)), words.Name("other", label(to))},
		Remedies: []finding.Remedy{
			{Key: "move-divider", Args: []words.Arg{words.Name("divider", d.ID)}}, {Key: "other-end-board"}, removeDivider(d.ID),
		},
	}
}

// offFace says that a divider starts beyond the end of the face it leaves, which would
// take its centre from lo to hi.
func (w *work) offFace(d plan.Divider, from *board.Board, lo, hi unit.Length) finding.Finding {
	limit := min(max(d.At, lo), hi)
	f := finding.Finding{
		Kind: dividerOff, Value: words.LengthOf(d.At), Limit: words.LengthOf(limit),
		Place: finding.Place{Divider: d.ID, Board: from.ID},
		Args:  []words.Arg{words.Name("divider", d.ID), words.Name("board", label(from))},
	}
	if lo <= hi {
		f.Remedies = append(f.Remedies, setDivider("divider-to", d.ID, words.Length("at", limit)))
	}
	f.Remedies = append(f.Remedies, removeDivider(d.ID))
	return f
}

func (w *work) slanted(d plan.Divider, turn unit.Angle) finding.Finding {
	turn = turn.Turn() % unit.HalfTurn
	return finding.Finding{
		Kind: housingSlant, Value: words.AngleOf(min(turn, unit.HalfTurn-turn)), Limit: words.AngleOf(unit.QuarterTurn),
		Place:    finding.Place{Divider: d.ID},
		Args:     []words.Arg{words.Name("divider", d.ID)},
		Remedies: []finding.Remedy{setDivider("divider-butt", d.ID, words.Name("end", butt))},
	}
}
