package edit

import (
	"slices"
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/hardware"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// MirrorModule adds a module of the other hand. One made module cannot be mirrored: its
// bores would face the room. With an arrangement the new module is placed there, as the
// mirror picture of the original if that stands there too.
//
// The mirror picture is walked from the other end, so that left of the walk stays left:
//
//	board i of n   becomes board n + 1 − i, its start its end
//	turn           stays: the picture turns the other way, and so does the walk
//	u              becomes length − u
//	face A         stays left of the walk, and the wall edge the wall edge
//	first, second  of a corner's joint change places
//
// A divider keeps its start and its end, so its own faces change places. Directions of
// the walk, from x: board i of the original points to t + Σ turns before it, its picture
// walked the other way to minus that. The picture's first board is the original's last,
// so a module that stands turned by t has its picture turned by −(t + S), S the sum of
// the turns of an open chain's corners, without the closing one. Flipped, the picture
// turns by S − t, as the half turn about an upright axis takes turns to their opposite.
type MirrorModule struct {
	Module      string      `json:"module"`
	Name        string      `json:"name,omitempty"`
	Arrangement string      `json:"arrangement,omitempty"`
	X           unit.Length `json:"x,omitempty"` // of the pivot
	Y           unit.Length `json:"y,omitempty"`
}

// Do returns "mirror-module".
func (MirrorModule) Do() string { return "mirror-module" }

func (e MirrorModule) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findModule(p, e.Module)
	if err != nil {
		return p, Name{}, err
	}
	was := p.Modules[i]
	m, err := mirrored(was, p.Shop)
	if err != nil {
		return p, Name{}, err
	}
	m = renamed(&p, m)
	if e.Name != "" {
		m.Name = e.Name
	}
	p.Modules = inserted(p.Modules, len(p.Modules), m)
	o, ok := poseOf(p, e.Arrangement, e.Module)
	if !ok {
		o.Turn = was.Hung
	}
	o = plan.Pose{Module: m.ID, X: e.X, Y: e.Y, Turn: mirroredTurn(was, o), Flip: o.Flip}
	p, err = placedAt(p, e.Arrangement, o)
	return p, did(e, ofModule(was)), err
}

// mirroredTurn is the turn of the mirror picture of a module that stands as o says.
func mirroredTurn(m plan.Module, o plan.Pose) unit.Angle {
	var s unit.Angle
	for _, c := range m.Corners[:min(max(len(m.Boards)-1, 0), len(m.Corners))] {
		s += c.Turn
	}
	if o.Flip {
		return (s - o.Turn).Turn()
	}
	return (-s - o.Turn).Turn()
}

// mirrored returns the module of the other hand, with the ids of m.
func mirrored(m plan.Module, s shop.Profile) (plan.Module, error) {
	n := len(m.Boards)
	if want := max(n-1, 0); len(m.Corners) != want && !(m.Closed && len(m.Corners) == n) {
		return m, refuse("corners-wrong", where("module", m.ID), words.Count("value", len(m.Corners)), words.Count("limit", want))
	}
	sizes, err := measured(m, s)
	if err != nil {
		return m, err
	}
	m.Hung = mirroredTurn(m, plan.Pose{Turn: m.Hung})
	m.Boards = slices.Clone(m.Boards)
	slices.Reverse(m.Boards)
	for i := range m.Boards {
		m.Boards[i].Edges = swapped(m.Boards[i].Edges, "start", "end")
	}
	m.Corners = mirroredCorners(m.Corners, n)
	m.Dividers = mirroredDividers(m.Dividers, sizes)
	m.Lights = mirroredLights(m.Lights)
	m.Brackets = mirroredBrackets(m.Brackets, sizes)
	return renumbered(m, func(old int) int {
		if old < 1 || old > n {
			return old
		}
		return n + 1 - old
	}), nil
}

// sizes are what of a module has to be worked out before it can be mirrored.
type sizes struct {
	lengths []unit.Length               // of the boards
	spans   []document.Opt[unit.Length] // of the brackets that have one
}

func (s sizes) length(board int) unit.Length {
	if board < 1 || board > len(s.lengths) {
		return 0
	}
	return s.lengths[board-1]
}

// measured works out the lengths of boards to close, and the offsets of brackets with
// several rods.
func measured(m plan.Module, s shop.Profile) (sizes, error) {
	out := sizes{make([]unit.Length, len(m.Boards)), make([]document.Opt[unit.Length], len(m.Brackets))}
	need := false
	for i, b := range m.Boards {
		out.lengths[i] = b.Length.Value
		need = need || !b.Length.Known
	}
	for _, b := range m.Brackets {
		kind, _ := hardware.Bracket(hardware.Sized(b.Kind, m.Depth, s.System))
		need = need || kind.Pitch != 0
	}
	if !need {
		return out, nil
	}
	worked := module.Derive(m, s)
	if len(worked.Boards) < len(m.Boards) {
		return out, refuse("not-worked-out", where("module", m.ID))
	}
	for i := range m.Boards {
		out.lengths[i] = worked.Boards[i].Length
	}
	for _, f := range worked.Fixings {
		if i := slices.IndexFunc(m.Brackets, func(b plan.Bracket) bool { return b.ID == f.Bracket }); i >= 0 {
			out.spans[i] = span(f, worked.Boards)
		}
	}
	return out, nil
}

// span is how far a bracket reaches along its board from its axis, which is its first rod
// or screw, to as near to its other end: to the last rod of a bar, or by the length of a
// rail or cleat less both ends.
func span(f board.Fixing, all []board.Board) document.Opt[unit.Length] {
	kind, _ := hardware.Bracket(f.Kind)
	for _, b := range all {
		if b.Role == board.Rail && b.ID[:len(b.ID)-1] == f.Bracket { // a letter follows
			return document.Some(b.Length - 2*kind.Margin)
		}
	}
	if n := len(f.Rods); n > 1 {
		return document.Some(f.Rods[n-1].At.U - f.Rods[0].At.U)
	}
	return document.Opt[unit.Length]{}
}

func mirroredCorners(old []plan.Corner, boards int) []plan.Corner {
	corners := slices.Clone(old)
	slices.Reverse(corners[:min(max(boards-1, 0), len(corners))])
	for i := range corners {
		switch c := &corners[i]; c.Joint {
		case plan.ButtFirst:
			c.Joint = plan.ButtSecond
		case plan.ButtSecond:
			c.Joint = plan.ButtFirst
		case plan.RebateFirst:
			c.Joint = plan.RebateSecond
		case plan.RebateSecond:
			c.Joint = plan.RebateFirst
		}
	}
	return corners
}

func mirroredDividers(old []plan.Divider, s sizes) []plan.Divider {
	out := slices.Clone(old)
	for i := range out {
		d := &out[i]
		d.At = s.length(d.From) - d.At
		d.Edges = swapped(d.Edges, "a", "b")
	}
	return out
}

func mirroredLights(old []plan.Light) []plan.Light {
	out := slices.Clone(old)
	for i := range out {
		l := &out[i]
		l.First, l.Last = l.Last, l.First
		l.StartStop, l.EndStop = l.EndStop, l.StartStop
		if l.Power.Exit == "end" {
			l.Power.Exit = "start"
		} else { // nothing said is the start
			l.Power.Exit = "end"
		}
	}
	return out
}

func mirroredBrackets(old []plan.Bracket, s sizes) []plan.Bracket {
	out := slices.Clone(old)
	for i := range out {
		b := &out[i]
		if b.Divider != "" {
			continue
		}
		long := s.spans[i]
		b.At = s.length(b.Board) - b.At - long.Value
		if kind, _ := hardware.Bracket(b.Kind); long.Known && !b.Length.Known {
			// What takes its length from the board could take another from the other end.
			b.Length = document.Some(long.Value + 2*kind.Margin)
		}
	}
	return out
}

// swapped returns the edges with two words of their arrises in each other's place.
func swapped(old []plan.Edge, one, other string) []plan.Edge {
	edges := slices.Clone(old)
	for i := range edges {
		at, side, _ := strings.Cut(edges[i].Arris, "-")
		edges[i].Arris = swap(at, one, other) + "-" + swap(side, one, other)
	}
	return edges
}

func swap(s, one, other string) string {
	switch s {
	case one:
		return other
	case other:
		return one
	}
	return s
}
