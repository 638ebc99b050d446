package light

import (
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

const (
	leadBore  = 6 * unit.Millimetre  // 6 to 8 mm, common practice
	fromBores = 25 * unit.Millimetre // wood between the lead's bore and a rod's, common practice
	fromEnd   = 2 * unit.Millimetre  // groove beyond the lead's bore, so that the wire can bend in
)

// addExit bores from the back edge to the groove, for the lead. A groove in the back
// edge needs none.
func (j *job) addExit() {
	if j.Face == board.Back {
		return
	}
	i := 0
	if j.Exit == "end" {
		i = len(j.Boards) - 1
	}
	u, ok := j.exitAt(i)
	if !ok {
		j.noExit(i)
		return
	}
	lo, _ := j.across(i)
	j.out.Features[i] = append(j.out.Features[i], board.Feature{
		Kind: board.Bore, Cause: j.cause(), Enter: board.Back,
		Mouth:    board.Point{U: u, W: j.exitW(i)},
		Diameter: leadBore, Depth: lo + j.Width/2, After: board.OnBlank,
	})
}

// exitW returns w of the lead's bore: as near to the groove's floor as lets it meet the
// groove, with the shop's cover to the face.
func (j *job) exitW(i int) unit.Length {
	deep := max(leadBore/2+j.Shop.Covers.BoreToSlot, j.Depth-leadBore/2)
	if j.Face == board.FaceB {
		return j.Boards[i].Thickness - deep
	}
	return deep
}

// exitAt returns u of the lead's bore in board i: as near to the exit's end of the
// groove as bores, pockets and mitres allow.
func (j *job) exitAt(i int) (u unit.Length, ok bool) {
	lo, hi := j.exitRoom(i)
	blocked := j.blocked(i)
	u = lo
	if j.Exit == "end" {
		u = hi
		slices.Reverse(blocked)
	}
	for _, x := range blocked {
		if u <= x[0] || u >= x[1] {
			continue
		}
		if u = x[1]; j.Exit == "end" {
			u = x[0]
		}
	}
	return u, lo <= u && u <= hi
}

// exitRoom returns between what u the lead's bore meets the groove and keeps off the
// ends of the board.
func (j *job) exitRoom(i int) (lo, hi unit.Length) {
	b, r := &j.Boards[i], j.runs[i]
	start, end := b.Ends()
	keep := func(c board.Cut) unit.Length {
		if c.AtA != c.AtB {
			return leadBore/2 + j.Shop.Covers.BoreToHeel
		}
		return leadBore/2 + j.Shop.Covers.Bore
	}
	lo = max(r.from+leadBore/2+fromEnd, start.Greatest()+keep(start))
	hi = min(r.to-leadBore/2-fromEnd, end.Least()-keep(end))
	return lo, hi
}

// blocked returns where along board i the lead's bore must not stand, in order, none
// over another.
func (j *job) blocked(i int) [][2]unit.Length {
	var out [][2]unit.Length
	for k := range j.Boards[i].Features {
		f := &j.Boards[i].Features[k]
		var half unit.Length
		switch {
		case f.Enter != board.Back && f.Enter != board.Front:
			continue
		case f.Kind == board.Bore:
			half = (f.Diameter+1)/2 + leadBore/2 + fromBores
		case f.Kind == board.Pocket && f.Enter == board.Back:
			half = (f.Along+1)/2 + leadBore/2 + j.Shop.Covers.BoreToSlot
		default:
			continue
		}
		out = append(out, [2]unit.Length{f.Mouth.U - half, f.Mouth.U + half})
	}
	rank.By(out, func(a, b [2]unit.Length) int { return int(max(min(a[0]-b[0], 1), -1)) })
	return merged(out)
}

// merged joins stretches that overlap. They must be in order.
func merged(in [][2]unit.Length) (out [][2]unit.Length) {
	for _, x := range in {
		if n := len(out); n > 0 && x[0] < out[n-1][1] {
			out[n-1][1] = max(out[n-1][1], x[1])
			continue
		}
		out = append(out, x)
	}
	return out
}
