package part

import (
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/unit"
)

// A counted is one board that waits to be grouped.
type counted struct {
	part  Part   // of this board alone
	own   bool   // the name is the maker's
	plain string // what it is called else
	same  string
	twin  string       // as same, of its mirror twin
	b     *board.Board // for saying where twins differ
}

// A party is a part being gathered.
type party struct {
	Part
	own   bool
	first *counted
}

// group makes parts of boards that are the same, in the order of their first boards.
func group(all []Counted, boards int) []Part {
	at := make(map[string]int, boards)
	parties := make([]party, 0, boards)
	ids := make([]string, 0, boards) // of every board, party by party, in the end
	for i := range all {
		for k := range all[i].boards {
			c := &all[i].boards[k]
			n, ok := at[c.same]
			if !ok {
				n = len(parties)
				at[c.same] = n
				p := party{Part: c.part, own: c.own, first: c}
				p.Number, p.Boards, p.Quantity = n+1, nil, 0
				parties = append(parties, p)
			}
			parties[n].join(c)
		}
	}
	for i := range parties {
		p := &parties[i]
		from := len(ids)
		ids = append(ids, p.Boards...)
		p.Boards = ids[from:len(ids):len(ids)]
	}
	pair(parties, at)
	out := make([]Part, len(parties))
	for i := range parties {
		out[i] = parties[i].Part
	}
	return out
}

// join adds a board to a part. The maker's name stays while all agree on it.
func (p *party) join(c *counted) {
	p.Boards = append(p.Boards, c.part.Boards[0])
	p.Quantity++
	if p.own && (!c.own || c.part.Name != p.Name) {
		p.own, p.Name = false, p.first.plain
	}
}

// pair names mirror twins in each other and says where they differ.
func pair(parties []party, at map[string]int) {
	for i := range parties {
		p := &parties[i]
		k, ok := at[p.first.twin]
		if !ok || k == i {
			continue
		}
		p.MirrorOf = k + 1
		if k < i {
			p.Differs = differences(p.first.b, parties[k].first.b)
			parties[k].Differs = p.Differs
		}
	}
}

// differences returns the keys of the words for the kinds of cuts in which two boards of
// one size differ, as they are laid side by side with the fewest: as they are walked, or
// one of them turned end for end.
func differences(a, b *board.Board) []string {
	plain, turned := differing(a, b, false), differing(a, b, true)
	if len(turned) < len(plain) {
		return turned
	}
	return plain
}

func differing(a, b *board.Board, turn bool) (keys []string) {
	for _, kind := range []board.Kind{board.EndCut, board.Groove, board.Bore, board.Pocket, board.Slot, board.Housing, board.Chamfer, board.RoundOver} {
		if !sameCuts(a, b, kind, turn) {
			keys = append(keys, "differs."+string(kind))
		}
	}
	return keys
}

// sameCuts reports whether two boards have the same cuts of a kind.
func sameCuts(a, b *board.Board, kind board.Kind, turn bool) bool {
	var left []board.Feature
	for i := range b.Features {
		if b.Features[i].Kind != kind {
			continue
		}
		f := b.Features[i]
		if turn {
			f = turnedOver(f, b)
		}
		left = append(left, f)
	}
	for i := range a.Features {
		f := &a.Features[i]
		if f.Kind != kind {
			continue
		}
		k := slices.IndexFunc(left, func(g board.Feature) bool { return sameCut(f, &g) })
		if k < 0 {
			return false
		}
		left = slices.Delete(left, k, k+1)
	}
	return len(left) == 0
}

// turnedOver returns a cut of a board that is turned end for end, half round about v:
// start and end change places, and so do faces A and B.
func turnedOver(f board.Feature, b *board.Board) board.Feature {
	f.Mouth.U, f.Mouth.W = b.Length-f.Mouth.U, b.Thickness-f.Mouth.W
	f.AtA, f.AtB = b.Length-f.AtB, b.Length-f.AtA
	f.Enter = other(f.Enter)
	if f.Arris != "" {
		f.Arris = turnedArris(f.Arris)
	}
	return f
}

func other(f board.Face) board.Face {
	switch f {
	case board.FaceA:
		return board.FaceB
	case board.FaceB:
		return board.FaceA
	case board.Start:
		return board.End
	case board.End:
		return board.Start
	}
	return f
}

// turnedArris names the arris that a half turn about v brings an arris to.
func turnedArris(arris string) string {
	side, face := arris[:max(len(arris)-2, 0)], "-b"
	if arris[len(side):] == "-b" {
		face = "-a"
	}
	return string(other(board.Face(side))) + face
}

// sameCut compares what two cuts remove, within the touch.
func sameCut(f, g *board.Feature) bool {
	near := func(a, b unit.Length) bool { return (a - b).Abs() <= unit.Touch }
	if f.Enter != g.Enter || f.Arris != g.Arris || f.Tilt != g.Tilt || f.Through != g.Through || !near(f.Size, g.Size) {
		return false
	}
	switch f.Kind {
	case board.EndCut:
		return near(f.AtA, g.AtA) && near(f.AtB, g.AtB)
	case board.Chamfer, board.RoundOver:
		return true
	}
	return near(f.Mouth.U, g.Mouth.U) && near(f.Mouth.V, g.Mouth.V) && near(f.Mouth.W, g.Mouth.W) &&
		near(f.Along, g.Along) && near(f.Across, g.Across) && near(f.Diameter, g.Diameter) && near(f.Depth, g.Depth)
}
