package part

import (
	"strconv"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// What an end can be: keys of words.
const (
	endSquare = "end.square"
	endMitre  = "end.mitre"
	endBevel  = "end.butt-bevel"
	endRebate = "end.rebate"
	endHoused = "end.housed"
)

// count describes one board.
func count(m *module.Result, b *board.Board) counted {
	c := counted{b: b, same: b.Signature(false), twin: b.Signature(true), own: b.Name != ""}
	start, end := b.Ends()
	p := &c.part
	p.Name, p.Boards, p.Wood = b.Name, []string{b.ID}, b.Wood
	if c.plain = plainName(m, b); !c.own {
		p.Name = c.plain
	}
	p.Thickness, p.Width = min(b.Thickness, b.Width), max(b.Thickness, b.Width)
	p.Overall = b.Length
	p.Inside = end.Least() - start.Greatest()
	p.Start, p.End = endSquare, endSquare
	if b.Role == board.Divider {
		dividerEnds(m, b, p)
	} else {
		p.Start, p.End = chainEnd(m, b, board.Start, start), chainEnd(m, b, board.End, end)
	}
	p.Edges = edges(b)
	p.Notes = notes(m, b)
	return c
}

// plainName says what a board is: by its role, and by its direction as the module
// hangs, within 10°; our assumption.
func plainName(m *module.Result, b *board.Board) string {
	const near = 10 * unit.Degree
	dir := (b.Frame.Dir + m.Hung).Turn() % unit.HalfTurn
	key := "part.slanting"
	switch {
	case b.Role == board.Divider:
		key = "part.divider"
	case b.Role == board.Rail:
		key = railName(m, b.ID)
	case min(dir, unit.HalfTurn-dir) <= near:
		key = "part.shelf-board"
	case (dir - unit.QuarterTurn).Abs() <= near:
		key = "part.upright"
	}
	return words.Text(key, nil, unit.Style{})
}

// railName says what a rail of a bracket is: one of a pair of cleats is raised over the
// other, which stays on the wall. A rail's id is its bracket's and a letter.
func railName(m *module.Result, id string) string {
	bracket, letter := id[:max(len(id)-1, 0)], id[max(len(id)-1, 0):]
	for i := range m.Fixings {
		switch f := &m.Fixings[i]; {
		case f.Bracket != bracket || f.Lift == 0:
		case letter == "a":
			return "part.cleat"
		default:
			return "part.wall-cleat"
		}
	}
	return "part.rail"
}

// chainEnd says what one end of a board of the chain is.
func chainEnd(m *module.Result, b *board.Board, end board.Face, cut board.Cut) string {
	c, side := cornerAt(m, b, end)
	switch {
	case c != nil && rebated(b, c.Number):
		return endRebate
	case cut.AtA == cut.AtB:
		return endSquare
	case c != nil && bevelled(c, side, b.Thickness):
		return endBevel
	}
	return endMitre
}

// cornerAt returns the corner at one end of a board of the chain, and which of its two
// boards this is.
func cornerAt(m *module.Result, b *board.Board, end board.Face) (*board.Corner, int) {
	for i := range m.Corners {
		c := &m.Corners[i]
		switch {
		case c.Number == 0:
		case end == board.End && c.First == b.ID:
			return c, 0
		case end == board.Start && c.Second == b.ID:
			return c, 1
		}
	}
	return nil, 0
}

// rebated reports whether a board carries the rebate of a corner.
func rebated(b *board.Board, corner int) bool {
	for i := range b.Features {
		f := &b.Features[i]
		if f.Kind == board.Housing && f.Cause.What == "corner" && f.Cause.ID == strconv.Itoa(corner) {
			return true
		}
	}
	return false
}

// bevelled reports whether a board of a corner is cut along the other's face, and not
// along a mitre: its lead is then t·cot θ, of its own thickness alone.
func bevelled(c *board.Corner, side int, t unit.Length) bool {
	sin, cos := c.Interior.SinCos()
	return (c.Lead[side] - unit.Nearest(t.MM()*cos/sin)).Abs() <= unit.Touch
}

// dividerEnds says what the ends of a divider are, and takes what sits in housings off
// its inside length. Its corners stand in the order of its ends.
func dividerEnds(m *module.Result, b *board.Board, p *Part) {
	end, n := &p.Start, 0
	for i := range m.Corners {
		c := &m.Corners[i]
		if c.Number != 0 || c.Second != b.ID || n == 2 {
			continue
		}
		if d := housedIn(m, c.First, b.ID); d > 0 {
			*end = endHoused
			p.Inside -= d
		} else if c.Lead[1] != 0 {
			*end = endBevel
		}
		end, n = &p.End, n+1
	}
}

// housedIn returns how deep a divider is let into a board.
func housedIn(m *module.Result, id, divider string) unit.Length {
	if f := cut(m, id, board.Housing, board.Cause{What: "divider", ID: divider}); f != nil {
		return f.Depth
	}
	return 0
}

// cut returns the first cut of a kind and cause in a board, or nil.
func cut(m *module.Result, id string, kind board.Kind, cause board.Cause) *board.Feature {
	for i := range m.Boards {
		b := &m.Boards[i]
		if b.ID != id {
			continue
		}
		for k := range b.Features {
			if f := &b.Features[k]; f.Kind == kind && f.Cause == cause {
				return f
			}
		}
	}
	return nil
}

// edges lists the arrises that are treated, in the order of the cuts.
func edges(b *board.Board) (out []string) {
	for i := range b.Features {
		if f := &b.Features[i]; f.Kind == board.Chamfer || f.Kind == board.RoundOver {
			out = append(out, f.Arris)
		}
	}
	return out
}

// notes lists what is cut into a board, equal cuts once: mitres with their tilt, then
// the others in the order of the cuts. Arrises stand with the edges.
func notes(m *module.Result, b *board.Board) (out []Note) {
	add := func(n Note) {
		for i := range out {
			if out[i].is(n) {
				out[i].Count++
				return
			}
		}
		n.Count = 1
		out = append(out, n)
	}
	for _, end := range []board.Face{board.Start, board.End} {
		if c, side := cornerAt(m, b, end); c != nil && c.Tilt[side] != 0 {
			add(Note{Key: "note.tilt", Angle: c.Tilt[side].Abs()})
		}
	}
	for i := range b.Features {
		f := &b.Features[i]
		switch f.Kind {
		case board.EndCut, board.Chamfer, board.RoundOver:
			continue
		}
		n := Note{Key: "note." + strings.ToLower(string(f.Kind)), Figures: []unit.Length{f.Along, f.Across, f.Depth}}
		if f.Diameter > 0 {
			n = Note{Key: "note.bore", Figures: []unit.Length{f.Diameter, f.Depth}}
		}
		add(n)
	}
	return out
}

// is reports whether two notes say the same of one cut each.
func (n Note) is(o Note) bool {
	if n.Key != o.Key || n.Angle != o.Angle || len(n.Figures) != len(o.Figures) {
		return false
	}
	for i := range n.Figures {
		if (n.Figures[i] - o.Figures[i]).Abs() > unit.Touch {
			return false
		}
	}
	return true
}

// Say returns the words of a note.
func (n Note) Say(style unit.Style) string {
	args := []words.Arg{words.Count("n", n.Count), words.Angle("angle", n.Angle)}
	for i, f := range n.Figures {
		args = append(args, words.Length("f"+strconv.Itoa(i+1), f))
	}
	return words.Text(n.Key, args, style)
}
