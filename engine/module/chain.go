package module

import (
	"strconv"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Limits beyond which a module is not worked out: a slip of the hand, or an attack.
const (
	mostBoards = 500
	longest    = 100 * unit.Metre
	thickest   = unit.Metre
	sharpest   = 150 * unit.Degree
)

// sound reports whether a module has what it takes to be worked out. The plan's own
// check says what is wrong, member by member.
func sound(m plan.Module) bool {
	n := len(m.Boards)
	corners := n - 1
	if m.Closed {
		corners = n
	}
	if n == 0 || n > mostBoards || m.Closed && n < 3 || len(m.Corners) != corners || m.Depth <= 0 || m.Depth > longest {
		return false
	}
	open, turns := 0, unit.Angle(0)
	for _, b := range m.Boards {
		if b.Thickness <= 0 || b.Thickness > thickest || b.Length.Known && (b.Length.Value <= 0 || b.Length.Value > longest) {
			return false
		}
		if !b.Length.Known {
			open++
		}
	}
	for _, c := range m.Corners {
		if c.Turn == 0 || c.Turn.Abs() > sharpest {
			return false
		}
		turns += c.Turn
	}
	if m.Closed {
		return turns.Abs() == unit.FullTurn && (open == 0 || open == 2)
	}
	return open == 0
}

// A link is one board of the chain with its two ends.
type link struct {
	start, end     joint.Side // free ends are zero
	before, after  int        // numbers of the corners; 0: a free end
	startIn, endIn board.Face // the inside at each corner
	dir            unit.Angle
}

// corner returns the geometry of corner i (from 0), after board i.
func (w *work) corner(i int) joint.Corner {
	n := len(w.m.Boards)
	c := w.m.Corners[i]
	return joint.Corner{
		Number: i + 1, Turn: c.Turn, Joint: c.Joint,
		First: w.m.Boards[i].Thickness, Second: w.m.Boards[(i+1)%n].Thickness,
	}
}

// shapeCorners works out all corners and the ends that they give the boards.
func (w *work) shapeCorners() {
	n := len(w.m.Boards)
	w.links = make([]link, n)
	for i := range w.links {
		w.links[i].startIn, w.links[i].endIn = board.FaceA, board.FaceA
	}
	for i := range w.m.Corners {
		s := w.corner(i).Shape()
		a, b := &w.links[i], &w.links[(i+1)%n]
		a.end, a.after, a.endIn = s.Sides[0], i+1, s.Inside
		b.start, b.before, b.startIn = s.Sides[1], i+1, s.Inside
		if i+1 < n {
			b.dir = (a.dir + w.m.Corners[i].Turn).Turn()
		}
	}
}

// foot returns where the inner points of a board of length l lie in its frame, at its
// start and its end.
func (k *link) foot(l, t unit.Length) (start, end board.Point) {
	start = board.Point{U: k.start.Reach(), W: inner(k.startIn, t)}
	end = board.Point{U: l - k.end.Reach(), W: inner(k.endIn, t)}
	return start, end
}

// inner returns w of a face.
func inner(f board.Face, t unit.Length) unit.Length {
	if f == board.FaceB {
		return t
	}
	return 0
}

// least returns the length at which the shorter face of a board of thickness t would
// have none left, or its two inner points would meet.
func (k *link) least(t unit.Length) unit.Length {
	start, end := k.foot(0, t)
	short := unit.Length(0)
	for _, f := range [2]board.Face{board.FaceA, board.FaceB} {
		from, to := start.U-k.start.Inner, end.U+k.end.Inner
		if f != k.startIn {
			from = start.U - k.start.Outer
		}
		if f != k.endIn {
			to = end.U + k.end.Outer
		}
		short = max(short, from-to)
	}
	if k.startIn == k.endIn {
		short = max(short, start.U-end.U)
	}
	return short
}

// checkLengths asks whether every board is longer than its joints; the smallest piece
// of wood between them that counts is a micrometre.
func (w *work) checkLengths() bool {
	ok := true
	for i, l := range w.lengths {
		least := w.links[i].least(w.m.Boards[i].Thickness)
		if l-least >= unit.Touch {
			continue
		}
		ok = false
		w.say(w.tooShort(i, l, least))
	}
	return ok
}

func (w *work) tooShort(i int, l, least unit.Length) finding.Finding {
	f := finding.Finding{
		Kind: boardShort, Value: words.LengthOf(l), Limit: words.LengthOf(least),
		Place: finding.Place{Board: w.id(i)}, Args: []words.Arg{words.Name("board", w.label(i))},
	}
	if w.m.Boards[i].Length.Known {
		step := unit.Millimetre
		if w.s.System == unit.Inches {
			step = unit.Inch / 16
		}
		f.Remedies = append(f.Remedies, setLength("longer-board", i, least-least%step+20*step))
	} else {
		f.Remedies = append(f.Remedies, finding.Remedy{Key: "move-the-closing"})
	}
	f.Remedies = append(f.Remedies, finding.Remedy{Key: "use-thinner-boards"})
	return f
}

// id returns the id of board i of the chain.
func (w *work) id(i int) string { return w.m.ID + "." + strconv.Itoa(i+1) }

// label returns what the maker calls board i of the chain.
func (w *work) label(i int) string {
	if name := w.m.Boards[i].Name; name != "" {
		return name
	}
	return w.id(i)
}

// layChain makes the boards of the chain, with their end cuts and rebates, each placed
// so that its first inner point lies on the last inner point of the one before.
func (w *work) layChain() {
	w.boards = make([]board.Board, len(w.m.Boards), len(w.m.Boards)+len(w.m.Dividers))
	for i := range w.m.Boards {
		b := &w.boards[i]
		p, k := w.m.Boards[i], &w.links[i]
		*b = board.Board{
			ID: w.id(i), Name: p.Name, Role: board.Chain, Wood: w.m.Wood,
			Length: w.lengths[i], Width: w.m.Depth, Thickness: p.Thickness,
			Frame: board.Frame{Dir: k.dir}, Features: make([]board.Feature, 0, 12),
		}
		start, _ := k.foot(b.Length, b.Thickness)
		if i > 0 {
			last := &w.boards[i-1]
			_, end := w.links[i-1].foot(last.Length, last.Thickness)
			x, y := last.Frame.Plane(end.U, end.W)
			dx, dy := b.Frame.Plane(start.U, start.W)
			b.Frame.X, b.Frame.Y = x-dx, y-dy
		}
		w.cutEnds(i)
	}
}

// cutEnds gives board i of the chain its end cuts and rebates.
func (w *work) cutEnds(i int) {
	b, k := &w.boards[i], &w.links[i]
	first, last := k.foot(b.Length, b.Thickness)
	start := joint.Seat{At: board.Start, Inside: k.startIn, Foot: first.U, Thickness: b.Thickness}
	end := joint.Seat{At: board.End, Inside: k.endIn, Foot: last.U, Thickness: b.Thickness}
	b.Features = append(b.Features, endCut(k.start, start, k.before), endCut(k.end, end, k.after))
	if f, ok := k.start.Housing(start, b.Width, k.before); ok {
		b.Features = append(b.Features, f)
	}
	if f, ok := k.end.Housing(end, b.Width, k.after); ok {
		b.Features = append(b.Features, f)
	}
}

// endCut returns the cut of an end: of a joint, or square for a free end.
func endCut(s joint.Side, at joint.Seat, number int) board.Feature {
	if number > 0 {
		return s.Cut(at, number)
	}
	return board.Feature{
		Kind: board.EndCut, Cause: board.Cause{What: "end"}, Enter: at.At,
		AtA: at.Foot, AtB: at.Foot, After: board.OnBlank,
	}
}
