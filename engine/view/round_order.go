package view

import (
	"cmp"
	"math"
	"slices"

	"ledgewright/engine/rank"
)

// Hidden surfaces in the round.
//
// A board is a convex body W less its cuts. Seen from outside of W, a side of it that
// looks at the eye is in front of everything inside W: a ray enters W there. So a board is
// drawn as what is cut into it, then its sides; the sides hide nothing of each other. What
// is cut into it is ordered by a tree of planes (Fuchs, Kedem and Naylor, On visible
// surface generation by a priori tree structures, SIGGRAPH 1980), and left out where no
// side that it opens in looks at the eye.
//
// Two convex bodies that do not meet are parted by a plane. The one on the eye's side of
// it is not hidden by the other. Where every plane that parts them lies so that neither
// hides the other, their order is free. Boards stand square to the wall, so a plane of one
// of the two parts them.
//
// A board that is let into another (a divider, a rail, a rod in its bore) is cut by the
// planes of the other's body: what lies inside is drawn with what is cut into that one,
// what lies outside is a body of its own. Nothing visible is cut: the cut runs where the
// one enters the other.
//
// Modules whose boxes are apart are ordered as wholes; those whose boxes meet are one
// group. Bodies that lie in a ring, each before the next, are ordered face by face, by a
// tree of planes over all of them, which cuts faces where it must.

// apart3 is the distance within which places in space are one, mm: twice what [solid.Of]
// allows a corner to be off its plane.
const apart3 = 2e-3

// A body3 is a convex body with what is drawn for it.
type body3 struct {
	hull  hull
	outer []sheet
	inner []sheet
	tree  *branch // of inner, grown when it is first looked into
}

// A pair3 is two bodies of a group with the planes that part them: a on the lower side.
type pair3 struct {
	a, b   int
	planes []flat3 // n looks from a to b
}

// A group3 is bodies that are ordered among themselves.
type group3 struct {
	box    bounds
	bodies []body3
	pairs  []pair3
	tree   *branch            // of faces that are ordered one by one
	rings  map[string]*group3 // such trees, of bodies that lay in a ring
}

// A Pulled is a Round pulled apart so far, with the order of its faces prepared for any
// camera.
type Pulled struct {
	round  *Round
	share  float64
	caves  [][]flat3
	base   []int // index of the first hollow of each part
	groups []*group3
	merged map[string]*group3
	middle spot
	radius float64
	all    bounds
}

// Open pulls every module apart at its joints: 0 as it hangs, 1 as far as it goes.
func (r *Round) Open(share float64) *Pulled {
	u := &Pulled{round: r, share: min(max(share, 0), 1), merged: map[string]*group3{}, all: noBounds()}
	at := make([]int, r.modules)
	boxes := r.moduleBounds(u.share)
	for i, b := range boxes {
		at[i] = i
		u.all = u.all.with(b.lo).with(b.hi)
	}
	if len(boxes) == 0 {
		return u
	}
	u.middle = u.all.middle()
	u.radius = u.all.hi.minus(u.all.lo).size() / 2
	u.hollows()
	for _, members := range boxesMeeting(boxes) {
		u.groups = append(u.groups, u.group(members))
	}
	return u
}

// hollows places the openings of all hollows.
func (u *Pulled) hollows() {
	for _, p := range u.round.parts {
		u.base = append(u.base, len(u.caves))
		for _, mouths := range p.caves {
			moved := make([]flat3, len(mouths))
			for i, f := range mouths {
				moved[i] = f.moved(p.shift, u.share)
			}
			u.caves = append(u.caves, moved)
		}
	}
}

func (f flat3) moved(by spot, share float64) flat3 {
	return flat3{f.n, f.d + float64(f.n.dot(by)*share)}
}

// meets reports whether two boxes come within a touch of each other in every direction.
func (b bounds) meets(o bounds) bool {
	return b.lo.x < o.hi.x-apart3 && o.lo.x < b.hi.x-apart3 &&
		b.lo.y < o.hi.y-apart3 && o.lo.y < b.hi.y-apart3 &&
		b.lo.z < o.hi.z-apart3 && o.lo.z < b.hi.z-apart3
}

// touches reports whether two boxes come within a touch of each other.
func (b bounds) touches(o bounds) bool {
	grown := spot{2 * apart3, 2 * apart3, 2 * apart3}
	return bounds{b.lo.minus(grown), b.hi.plus(grown, 1)}.meets(o)
}

// boxesMeeting groups boxes that meet, a group's box counting for all of it.
func boxesMeeting(boxes []bounds) [][]int {
	var groups [][]int
	var round []bounds
	for i, b := range boxes {
		members := []int{i}
		for k := 0; k < len(groups); k++ {
			if round[k].meets(b) {
				b = b.with(round[k].lo).with(round[k].hi)
				members = append(members, groups[k]...)
				groups, round = slices.Delete(groups, k, k+1), slices.Delete(round, k, k+1)
				k = -1
			}
		}
		rank.Up(members)
		groups, round = append(groups, members), append(round, b)
	}
	return groups
}

// group makes bodies of the parts of some modules, none of which meets another.
func (u *Pulled) group(modules []int) *group3 {
	g := &group3{box: noBounds()}
	for i, p := range u.round.parts {
		if slices.Contains(modules, p.module) {
			g.bodies = append(g.bodies, u.body(p, u.base[i]))
			b := p.bounds(u.share)
			g.box = g.box.with(b.lo).with(b.hi)
		}
	}
	u.settle(g)
	g.part()
	return g
}

// body places a part.
func (u *Pulled) body(p *part, base int) body3 {
	by := spot{}.plus(p.shift, u.share)
	b := body3{outer: movedSheets(p.outer, by, base), inner: movedSheets(p.inner, by, base)}
	b.hull.planes = make([]flat3, len(p.hull.planes))
	for i, f := range p.hull.planes {
		b.hull.planes[i] = f.moved(p.shift, u.share)
	}
	for _, ring := range p.hull.polys {
		at := make([]spot, len(ring))
		for i, q := range ring {
			at[i] = q.plus(by, 1)
		}
		b.hull.polys = append(b.hull.polys, at)
	}
	return b
}

func movedSheets(all []sheet, by spot, base int) []sheet {
	out := make([]sheet, len(all))
	n := 0
	for i := range all {
		for _, loop := range all[i].loops {
			n += len(loop)
		}
	}
	store := make([]mark, 0, n)
	for i, s := range all {
		s.flat3 = s.flat3.moved(by, 1)
		if s.cave >= 0 {
			s.cave += base
		}
		loops := make([][]mark, len(s.loops))
		for k, loop := range s.loops {
			from := len(store)
			for _, m := range loop {
				store = append(store, mark{m.spot.plus(by, 1), m.seam})
			}
			loops[k] = store[from:len(store):len(store)]
		}
		s.loops = loops
		out[i] = s
	}
	return out
}

// settle cuts bodies until none meets another.
func (u *Pulled) settle(g *group3) {
	for i := 0; i < len(g.bodies); i++ {
		for j := 0; j < len(g.bodies); j++ {
			if i == j || len(g.parting(i, j)) > 0 {
				continue
			}
			host, guest := i, j
			if a, b := g.cuts(i, j), g.cuts(j, i); b < a || a == b && j < i {
				host, guest = j, i
			}
			u.letIn(g, host, guest)
			i, j = -1, len(g.bodies) // look at all of them again
		}
	}
}

// cuts counts the planes of one body that pass through another.
func (g *group3) cuts(host, guest int) (n int) {
	for _, f := range g.bodies[host].hull.planes {
		if lo, hi := g.bodies[guest].hull.along(f); lo < -apart3 && hi > apart3 {
			n++
		}
	}
	return n
}

// letIn draws what of a guest lies in its host with what is cut into the host, and makes
// bodies of the rest.
func (u *Pulled) letIn(g *group3, host, guest int) {
	rest := g.bodies[guest]
	var mouths []flat3
	for _, f := range g.bodies[host].hull.planes {
		_, hi := rest.hull.along(f)
		if hi >= -apart3 {
			mouths = append(mouths, f)
		}
		if hi <= apart3 {
			continue
		}
		in, out := rest.cut(f)
		rest = in
		if out.hull.thick() {
			g.bodies = append(g.bodies, out)
		}
	}
	h := &g.bodies[host]
	cave := len(u.caves)
	u.caves = append(u.caves, append(mouths, u.opening(h, &rest)...))
	for _, s := range append(rest.outer, rest.inner...) {
		s.cave = cave
		h.inner = append(h.inner, s)
	}
	g.bodies = slices.Delete(g.bodies, guest, guest+1)
}

// opening returns the sides that the hollows of a host open in where a guest lies in them:
// what is let in is seen through these, and where it comes out.
func (u *Pulled) opening(host, guest *body3) (out []flat3) {
	box := noBounds()
	for _, ring := range guest.hull.polys {
		for _, q := range ring {
			box = box.with(q)
		}
	}
	var met []int
	for i := range host.inner {
		if s := &host.inner[i]; !slices.Contains(met, s.cave) && s.bounds().touches(box) {
			met = append(met, s.cave)
			out = append(out, u.caves[s.cave]...)
		}
	}
	return out
}

func (s *sheet) bounds() bounds {
	b := noBounds()
	for _, loop := range s.loops {
		for _, m := range loop {
			b = b.with(m.spot)
		}
	}
	return b
}

// thick reports whether a hull is more than a touch thick in all its directions.
func (h *hull) thick() bool {
	for _, f := range h.planes {
		if lo, _ := h.along(f); lo > -apart3 {
			return false
		}
	}
	return len(h.polys) > 0
}

// along returns how far a hull reaches below and above a plane.
func (h *hull) along(f flat3) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, ring := range h.polys {
		for _, q := range ring {
			d := f.above(q)
			lo, hi = min(lo, d), max(hi, d)
		}
	}
	return lo, hi
}

// cut returns the parts of a hull below and above a plane.
func (h *hull) cut(f flat3) (below, above hull) {
	back := flat3{spot{}.plus(f.n, -1), -f.d}
	below.planes = append(slices.Clone(h.planes), f)
	above.planes = append(slices.Clone(h.planes), back)
	var on []spot
	for _, ring := range h.polys {
		if r := clipRing(ring, f); len(r) > 0 {
			below.polys = append(below.polys, r)
			for _, q := range r {
				if math.Abs(f.above(q)) < 1e-9 {
					on = append(on, q)
				}
			}
		}
		if r := clipRing(ring, back); len(r) > 0 {
			above.polys = append(above.polys, r)
		}
	}
	if len(on) > 2 {
		on = roundAbout(on, f.n)
		below.polys, above.polys = append(below.polys, on), append(above.polys, on)
	}
	return below, above
}

// roundAbout orders the corners of a flat convex polygon by their direction from its
// middle. Corners that come twice stay.
func roundAbout(ring []spot, n spot) []spot {
	m := mean(ring)
	x := spot{x: 1}.cross(n)
	if x.size() < 0.5 {
		x = spot{y: 1}.cross(n)
	}
	y := n.cross(x)
	turn := func(q spot) float64 { return math.Atan2(q.minus(m).dot(y), q.minus(m).dot(x)) }
	rank.By(ring, func(a, b spot) int { return cmp.Compare(turn(a), turn(b)) })
	return ring
}

// clipRing keeps what of a polygon lies below a plane.
func clipRing(ring []spot, f flat3) (out []spot) {
	for i, q := range ring {
		last := ring[(i+len(ring)-1)%len(ring)]
		a, b := f.above(last), f.above(q)
		if (a > 0) != (b > 0) {
			out = append(out, last.plus(q.minus(last), a/(a-b)))
		}
		if b <= 0 {
			out = append(out, q)
		}
	}
	return out
}

func (b *body3) cut(f flat3) (below, above body3) {
	below.hull, above.hull = b.hull.cut(f)
	below.outer, above.outer = cutAll(b.outer, f)
	below.inner, above.inner = cutAll(b.inner, f)
	return below, above
}

// part finds the planes that part the bodies of a group.
func (g *group3) part() {
	for j := range g.bodies {
		for i := range j {
			g.pairs = append(g.pairs, pair3{i, j, g.parting(i, j)})
		}
	}
}

// parting returns the planes of two bodies that have one on each side.
func (g *group3) parting(i, j int) (out []flat3) {
	a, b := &g.bodies[i].hull, &g.bodies[j].hull
	for _, f := range a.planes {
		if lo, _ := b.along(f); lo >= -apart3 {
			out = append(out, f)
		}
	}
	for _, f := range b.planes {
		if lo, _ := a.along(f); lo >= -apart3 {
			out = append(out, flat3{spot{}.plus(f.n, -1), -f.d})
		}
	}
	return out
}
