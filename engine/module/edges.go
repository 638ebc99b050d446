package module

import (
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// treatEdges cuts chamfers and round-overs.
func (w *work) treatEdges() {
	for i := range w.m.Boards {
		for _, e := range w.m.Boards[i].Edges {
			w.treat(&w.boards[i], &w.links[i], e, words.Count("board", i+1))
		}
	}
	for _, d := range w.m.Dividers {
		for i := len(w.m.Boards); i < len(w.boards); i++ {
			for _, e := range d.Edges {
				if w.boards[i].ID == d.ID {
					w.treat(&w.boards[i], &link{}, e, words.Name("divider", d.ID))
				}
			}
		}
	}
}

// arrises names the arrises by edge or end and face.
var arrises = [...]struct {
	name string
	side board.Face
	face board.Face
}{
	{"front-a", board.Front, board.FaceA}, {"front-b", board.Front, board.FaceB},
	{"back-a", board.Back, board.FaceA}, {"back-b", board.Back, board.FaceB},
	{"start-a", board.Start, board.FaceA}, {"start-b", board.Start, board.FaceB},
	{"end-a", board.End, board.FaceA}, {"end-b", board.End, board.FaceB},
}

// treat cuts one arris of a board. An arris on the inside of a joint is glued and stays
// sharp; one on the outside of a joint is cut when the corner is closed.
func (w *work) treat(b *board.Board, k *link, e plan.Edge, number words.Arg) {
	for _, a := range arrises {
		if a.name != e.Arris || e.Size <= 0 {
			continue
		}
		atEnd := a.side == board.Start || a.side == board.End
		joined, in := k.after, k.endIn
		if a.side == board.Start {
			joined, in = k.before, k.startIn
		}
		limit := min(b.Thickness, b.Width) / 2
		f := board.Feature{Kind: board.Chamfer, Cause: board.Cause{What: "edge", ID: e.Arris}, Arris: e.Arris, Size: e.Size, After: board.OnBlank}
		if e.Cut == "round" {
			f.Kind = board.RoundOver
		}
		if atEnd && joined > 0 || !atEnd && (k.before > 0 || k.after > 0) && !k.inside(a.face) {
			f.After = board.AfterGlue
		}
		switch {
		case e.Size > limit:
			w.say(w.edgeFinding(arrisLarge, b, e, number, words.LengthOf(e.Size), words.LengthOf(limit), limit))
		case atEnd && (b.Role == board.Divider || joined > 0 && in == a.face):
			w.say(w.edgeFinding(arrisInJoint, b, e, number, words.Value{}, words.Value{}, 0))
		default:
			b.Features = append(b.Features, f)
		}
	}
}

// inside reports whether a face is the inner one at a corner of its board.
func (k *link) inside(f board.Face) bool {
	return k.before > 0 && k.startIn == f || k.after > 0 && k.endIn == f
}

// edgeFinding is a finding about an arris, which the remedy makes as small as size, or
// sharp for 0.
func (w *work) edgeFinding(k finding.Kind, b *board.Board, e plan.Edge, number words.Arg, value, limit words.Value, size unit.Length) finding.Finding {
	f := finding.Finding{
		Kind: k, Value: value, Limit: limit, Place: finding.Place{Board: b.ID},
		Args: []words.Arg{words.Name("board", label(b)), words.Word("arris", "arris."+e.Arris)},
	}
	if b.Role == board.Divider {
		f.Place.Divider = b.ID
	}
	r := finding.Remedy{Key: "leave-sharp", Edit: finding.Edit{Do: "set-edge", Args: []words.Arg{number, words.Name("arris", e.Arris)}}}
	if size > 0 {
		r.Key, r.Args = "smaller-edge", []words.Arg{words.Length("size", size)}
		r.Edit.Args = append(r.Edit.Args, words.Name("cut", e.Cut), words.Length("size", size))
	}
	f.Remedies = []finding.Remedy{r}
	return f
}
