package board

import (
	"encoding/binary"
	"strings"

	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
)

// Which boards are the same piece of wood?
//
// A board that is turned end for end in its own plane of u and w (half a turn about v)
// keeps its back edge at the wall, and changes start with end and face A with face B. It
// is the same piece, only walked the other way. So two boards are identical when their
// cuts agree as they are, or after u → L − u, w → t − w.
//
// A board that is turned over about u brings its front edge to the wall. A maker could
// cut both from one card, but the back edge is the one that was jointed first and that
// every set-out is measured from; such boards count as different.
//
// A reflection, u → L − u alone or w → t − w alone (the other follows by the half turn),
// can be cut from wood but never be reached by turning. Two boards that agree only after
// a reflection are mirror twins, and a board that agrees with its own reflection has no
// twin.
//
// Coordinates that come out of trigonometry agree within a micrometre; the signature
// counts micrometres, with the step between two counts laid where no millimetre and no
// 1/128 in can fall.

// Signature returns a text that is equal for boards that are the same piece of wood:
// same wood, size and cuts, however they are named and placed and whatever asked for
// each cut. With mirror it is that of the board's mirror twin.
func (b *Board) Signature(mirror bool) string {
	head := []byte(b.Wood)
	for _, l := range [...]unit.Length{b.Length, b.Width, b.Thickness} {
		head = append(head, 0)
		head = binary.AppendVarint(head, counted(l))
	}
	one := b.signed(mirror, false)
	return string(head) + min(one, b.signed(!mirror, true))
}

// Same reports whether two boards are the same piece of wood.
func Same(a, b *Board) bool { return a.Signature(false) == b.Signature(false) }

// Twins reports whether two boards are mirror twins and not the same piece.
func Twins(a, b *Board) bool { return a.Signature(true) == b.Signature(false) && !Same(a, b) }

// counted returns l in micrometres, rounded with the step at 0.531 of a micrometre.
func counted(l unit.Length) int64 {
	n := int64(l) + 469
	if n < 0 {
		n -= 999
	}
	return n / 1000
}

// signed returns the cuts as one text, after w → t − w where w is set and u → L − u
// where u is set.
func (b *Board) signed(w, u bool) string {
	cuts := make([]string, 0, len(b.Features))
	var buf [64]byte
	for i := range b.Features {
		f := b.Features[i]
		if w {
			b.overFaces(&f)
		}
		if u {
			b.overEnds(&f)
		}
		cuts = append(cuts, string(f.sign(buf[:0])))
	}
	rank.Up(cuts)
	return strings.Join(cuts, "")
}

// overFaces reflects a feature by w → t − w.
func (b *Board) overFaces(f *Feature) {
	f.Mouth.W = b.Thickness - f.Mouth.W
	f.Tilt = -f.Tilt
	f.AtA, f.AtB = f.AtB, f.AtA
	if f.Enter == FaceA || f.Enter == FaceB {
		f.Enter = opposite(f.Enter)
	}
	f.Arris = swapTail(f.Arris)
}

// overEnds reflects a feature by u → L − u.
func (b *Board) overEnds(f *Feature) {
	f.Mouth.U = b.Length - f.Mouth.U
	f.Tilt = -f.Tilt
	f.AtA, f.AtB = b.Length-f.AtA, b.Length-f.AtB
	if f.Enter == Start || f.Enter == End {
		f.Enter = opposite(f.Enter)
	}
	f.Arris = swapHead(f.Arris)
}

// swapTail names the same arris of the other face.
func swapTail(arris string) string {
	if s, ok := strings.CutSuffix(arris, "-a"); ok {
		return s + "-b"
	}
	if s, ok := strings.CutSuffix(arris, "-b"); ok {
		return s + "-a"
	}
	return arris
}

// swapHead names the same arris of the other end.
func swapHead(arris string) string {
	if s, ok := strings.CutPrefix(arris, "start-"); ok {
		return "end-" + s
	}
	if s, ok := strings.CutPrefix(arris, "end-"); ok {
		return "start-" + s
	}
	return arris
}

// sign appends what a feature removes. What asked for it, and when it is cut, do not
// take part; nor does what its kind leaves unused.
func (f *Feature) sign(to []byte) []byte {
	to = append(to, f.Kind...)
	to = append(to, ' ')
	to = append(to, f.Enter...)
	to = append(to, f.Arris...)
	switch f.Kind {
	case EndCut:
		return f.measures(to, f.AtA, f.AtB)
	case Chamfer, RoundOver:
		return f.measures(to, f.Size)
	}
	if f.Through {
		to = append(to, '+')
	}
	to = binary.AppendVarint(to, int64(f.Tilt))
	return f.measures(to, f.Mouth.U, f.Mouth.V, f.Mouth.W, f.Along, f.Across, f.Diameter, f.Depth)
}

func (f *Feature) measures(to []byte, all ...unit.Length) []byte {
	for _, l := range all {
		to = binary.AppendVarint(to, counted(l))
	}
	return append(to, '\n')
}
