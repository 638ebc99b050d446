package board

import (
	"math"

	"ledgewright/engine/unit"
)

// A vec is a place or a direction in the u–w plane of a board, in millimetres.
type vec struct{ u, w float64 }

func (a vec) add(b vec) vec           { return vec{a.u + b.u, a.w + b.w} }
func (a vec) sub(b vec) vec           { return vec{a.u - b.u, a.w - b.w} }
func (a vec) scale(k float64) vec     { return vec{a.u * k, a.w * k} }
func (a vec) dot(b vec) float64       { return float64(a.u*b.u) + float64(a.w*b.w) }
func (a vec) cross(b vec) float64     { return float64(a.u*b.w) - float64(a.w*b.u) }
func (a vec) across() vec             { return vec{-a.w, a.u} } // a quarter turn from u towards w
func (a vec) size() float64           { return math.Sqrt(a.dot(a)) }
func mid(a, b vec) vec                { return a.add(b).scale(0.5) }
func least(a, b vec) vec              { return vec{min(a.u, b.u), min(a.w, b.w)} }
func greatest(a, b vec) vec           { return vec{max(a.u, b.u), max(a.w, b.w)} }
func place(u, w unit.Length) vec      { return vec{u.MM(), w.MM()} }
func towards(a, b vec, k float64) vec { return a.add(b.sub(a).scale(k)) }

// A form tells the bodies apart.
type form uint8

// The forms. Every cut is one of them because a tool's axis lies either along v or in
// the u–w plane.
const (
	nothing form = iota // an end cut, or a cut without size
	prism               // a quadrangle in the u–w plane, between v0 and v1
	pin                 // a round cut along v
	leaning             // a round cut with its axis in the u–w plane
	fillet              // what a round-over along v removes: a quadrangle less a disc
	ledge               // a chamfer or round-over along u
)

// A body is what a feature removes, before it is clipped by the wood, in millimetres
// in the board's frame.
type body struct {
	form     form
	quad     [4]vec  // prism, fillet: corners in order round it
	from, to vec     // leaning: the two ends of its axis; pin, fillet: the axis stands at from
	radius   float64 // pin, leaning, fillet; ledge: size
	v0, v1   float64
	lo, hi   vec  // box of the section
	round    bool // ledge: a round-over
	atFront  bool // ledge: at v = width
	onB      bool // ledge: on face B
}

// body returns what f removes from b.
func (b *Board) body(f *Feature, start, end Cut) body {
	switch {
	case f.Kind == EndCut:
		return body{}
	case f.Kind == Chamfer || f.Kind == RoundOver:
		return b.arrisBody(f, start, end)
	case f.Depth <= 0 || f.Diameter < 0 || f.Diameter == 0 && (f.Along <= 0 || f.Across <= 0):
		return body{}
	case f.Enter == Back || f.Enter == Front:
		return b.edgeBody(f)
	case f.Enter == FaceA || f.Enter == FaceB || f.Enter == Start || f.Enter == End:
		return b.planeBody(f, start, end)
	}
	return body{}
}

// edgeBody is the body of a cut that enters by the back or the front edge.
func (b *Board) edgeBody(f *Feature) body {
	at := place(f.Mouth.U, f.Mouth.W)
	v := f.Mouth.V.MM()
	k := body{form: pin, from: at, radius: f.Diameter.MM() / 2, v0: v, v1: v + f.Depth.MM()}
	if f.Enter == Front {
		k.v0, k.v1 = v-f.Depth.MM(), v
	}
	if f.Diameter > 0 {
		r := vec{k.radius, k.radius}
		k.lo, k.hi = at.sub(r), at.add(r)
		return k
	}
	half := vec{f.Along.MM() / 2, f.Across.MM() / 2}
	if f.Kind == Groove && f.Through {
		at.u, half.u = b.Length.MM()/2, b.Length.MM()/2
	}
	k.form, k.lo, k.hi = prism, at.sub(half), at.add(half)
	k.quad = [4]vec{k.lo, {k.hi.u, k.lo.w}, k.hi, {k.lo.u, k.hi.w}}
	return k
}

// planeBody is the body of a cut whose axis lies in the u–w plane. Where the axis is
// not square to the surface the body is drawn back out of the wood, so that nothing
// is left standing at its mouth.
func (b *Board) planeBody(f *Feature, start, end Cut) body {
	normal := inward(f.Enter)
	sin, cos := f.Tilt.SinCos()
	axis := vec{float64(normal.u*cos) - float64(normal.w*sin), float64(normal.u*sin) + float64(normal.w*cos)}
	width, run := f.Along, f.Across // across the axis in the plane, and along v
	if f.Enter == Start || f.Enter == End {
		width, run = f.Across, f.Along
	}
	if f.Diameter > 0 {
		width, run = f.Diameter, f.Diameter
	}
	half := width.MM() / 2
	at, v := place(f.Mouth.U, f.Mouth.W), f.Mouth.V.MM()
	back := half * math.Abs(b.slope(f.Enter, axis, start, end))
	from, to := at.sub(axis.scale(back)), at.add(axis.scale(f.Depth.MM()))
	k := body{form: leaning, from: from, to: to, radius: half, v0: v - run.MM()/2, v1: v + run.MM()/2}
	if f.Kind == Groove && f.Through && f.Enter != Start && f.Enter != End {
		k.from.u, k.to.u, half = b.Length.MM()/2, b.Length.MM()/2, b.Length.MM()/2
	}
	side := axis.across().scale(half)
	k.quad = [4]vec{k.from.sub(side), k.to.sub(side), k.to.add(side), k.from.add(side)}
	if f.Diameter == 0 {
		k.form = prism
	}
	k.box()
	return k
}

// box fills in the box of the section from the corners.
func (k *body) box() {
	k.lo, k.hi = k.quad[0], k.quad[0]
	for _, p := range k.quad[1:] {
		k.lo, k.hi = least(k.lo, p), greatest(k.hi, p)
	}
}

// inward returns the direction into the wood, square to a side of a square board.
func inward(side Face) vec {
	switch side {
	case FaceA:
		return vec{0, 1}
	case FaceB:
		return vec{0, -1}
	case Start:
		return vec{1, 0}
	}
	return vec{-1, 0}
}

// slope returns the tangent of the angle between a tool's axis and the normal of the
// surface that it enters by, 0 where they agree within a micro-degree's rounding.
func (b *Board) slope(side Face, axis vec, start, end Cut) float64 {
	normal := inward(side)
	switch side {
	case Start:
		normal = vec{b.Thickness.MM(), -(start.AtB - start.AtA).MM()}
	case End:
		normal = vec{-b.Thickness.MM(), (end.AtB - end.AtA).MM()}
	}
	over := axis.dot(normal)
	if k := axis.cross(normal) / over; over > 0 && math.Abs(k) > 1e-6 {
		return min(math.Abs(k), 100)
	}
	return 0
}

// arrisBody is the body of a chamfer or a round-over.
func (b *Board) arrisBody(f *Feature, start, end Cut) body {
	side, face, ok := splitArris(f.Arris)
	if !ok || f.Size <= 0 {
		return body{}
	}
	if side == Start || side == End {
		return b.endArris(f, side, face, start, end)
	}
	s, t, far := f.Size.MM(), b.Thickness.MM(), b.Width.MM()
	k := body{form: ledge, radius: s, v1: s, round: f.Kind == RoundOver, atFront: side == Front, onB: face == FaceB}
	if k.atFront {
		k.v0, k.v1 = far-s, far
	}
	k.lo, k.hi = vec{min(start.Least().MM(), 0), 0}, vec{end.Greatest().MM(), s}
	if k.onB {
		k.lo.w, k.hi.w = t-s, t
	}
	return k
}

// splitArris reads the name of an arris: which edge or end, and which face.
func splitArris(name string) (side, face Face, ok bool) {
	n := len(name) - 2
	if n < 0 || name[n] != '-' {
		return "", "", false
	}
	side = Face(name[:n])
	switch name[n+1:] {
	case "a":
		face = FaceA
	case "b":
		face = FaceB
	}
	ok = face != "" && (side == Back || side == Front || side == Start || side == End)
	return side, face, ok
}

// endArris is the body of a cut along the arris between an end and a face. The legs of
// a chamfer are equal, on the face and on the end; a round-over touches both.
func (b *Board) endArris(f *Feature, side, face Face, start, end Cut) body {
	cut, along := start, vec{1, 0}
	if side == End {
		cut, along = end, vec{-1, 0}
	}
	t := b.Thickness
	tip, other := place(cut.AtA, 0), place(cut.AtB, t)
	if face == FaceB {
		tip, other = other, tip
	}
	down := other.sub(tip)
	down = down.scale(1 / down.size())
	k := body{form: prism, v1: b.Width.MM()}
	leg := f.Size.MM()
	if f.Kind == RoundOver {
		half := along.add(down)
		half = half.scale(1 / half.size())
		sin := math.Abs(half.cross(along))
		k.form, k.radius = fillet, leg
		k.from = tip.add(half.scale(leg / sin))
		leg *= half.dot(along) / sin
	}
	k.quad = [4]vec{tip, tip.add(along.scale(leg)), mid(tip.add(along.scale(leg)), tip.add(down.scale(leg))), tip.add(down.scale(leg))}
	if k.form == fillet {
		k.quad[2] = k.from
	}
	k.box()
	return k
}
