package view

import (
	"strconv"

	"ledgewright/engine/drawing"
)

// A face is one face of a solid to be painted.
type face struct {
	scene, solid int
	side         int // index of the outline's side; −1: the front
	a, b         point
	t0, t1       float64
	tri          []point // part of a front farther back than the picture plane
	part         int     // 0: all of it; else which part, from 1
	seam         bool    // it ends where there is no arris
}

// modules paints the boards, far to near.
func (p *painter) modules(scenes []scene) {
	if !p.o.Shallow {
		for i := range scenes {
			p.fronts(scenes, []int{i})
		}
		return
	}
	for _, group := range p.farToNear(scenes) {
		for _, f := range p.behind(scenes, group) {
			if f.side < 0 {
				p.setBack(scenes, f)
			} else {
				p.side(scenes, f)
			}
		}
		p.fronts(scenes, group)
	}
}

// behind lists the faces of a group that lie behind the picture plane and look at the
// eye, from far to near.
func (p *painter) behind(scenes []scene, group []int) []face {
	faces, nodes := p.looking(scenes, group)
	out := p.sorted[:0]
	parts := make([]int, len(faces))
	for _, n := range p.table.order(nodes, p.eye) {
		f := faces[n.face]
		if f.side >= 0 && length(sub(f.b, f.a)) > length(sub(n.pts[1], n.pts[0]))+near {
			parts[n.face]++ // split by the cut
			f.part, f.seam = 100*f.part+parts[n.face], true
		}
		if f.side >= 0 {
			f.a, f.b = n.pts[0], n.pts[1]
		} else {
			f.tri = n.pts
		}
		out = append(out, f)
	}
	p.sorted = out
	return out
}

// looking lists the faces that look at the eye, and their nodes.
func (p *painter) looking(scenes []scene, group []int) (faces []face, nodes []node) {
	faces, nodes = p.faces[:0], p.nodes[:0]
	for _, k := range group {
		s := &scenes[k]
		for i := range s.solids {
			v := &s.solids[i]
			for side1 := range v.ring {
				a, b := side(v.ring, side1)
				if s.touched[i][side1] || !looksAt(a, b, p.eye) {
					continue
				}
				from := len(faces)
				faces = s.pieces(faces, face{scene: k, solid: i, side: side1, a: a, b: b, t0: v.t0, t1: v.t1})
				for n := from; n < len(faces); n++ {
					f := &faces[n]
					nodes = append(nodes, newNode(p.pair(f.a, f.b), p.eye, n).deep(f.t0, f.t1))
				}
			}
			if v.t0 > near {
				for _, t := range triangles(v.ring) {
					nodes = append(nodes, newNode(t, p.eye, len(faces)).deep(v.t0, v.t0))
				}
				faces = append(faces, face{scene: k, solid: i, side: -1, t0: v.t0, t1: v.t0})
			}
		}
	}
	p.faces, p.nodes = faces, nodes
	return faces, nodes
}

// pair is the two ends of a side, in storage of their own.
func (p *painter) pair(a, b point) []point {
	if cap(p.pairs)-len(p.pairs) < 2 {
		p.pairs = make([]point, 0, p.many(512, cap(p.pairs)))
	}
	p.pairs = append(p.pairs, a, b)
	return p.pairs[len(p.pairs)-2 : len(p.pairs) : len(p.pairs)]
}

// looksAt reports whether the side a–b of a counter-clockwise outline looks at c, by more
// than a touch.
func looksAt(a, b, c point) bool {
	d := sub(b, a)
	return cross(d, sub(c, a)) < -near*length(d)
}

// back returns where a point of the plan t behind the picture plane comes to.
func (p *painter) back(q point, t float64) point {
	if !p.o.Shallow {
		return q
	}
	return plus(p.eye, sub(q, p.eye), eyeDepth/(eyeDepth+t))
}

// storage hands out room for a path.
func (p *painter) storage(n int) []drawing.Step {
	if cap(p.steps)-len(p.steps) < n {
		p.steps = make([]drawing.Step, 0, max(n, p.many(2048, cap(p.steps))))
	}
	from := len(p.steps)
	p.steps = p.steps[:from+n]
	return p.steps[from : from+n : from+n]
}

// many is how much storage a whole wall needs at a time. What is used again grows until it
// has room for all.
func (p *painter) many(whole, had int) int {
	if p.some {
		return max(whole/16, 2*had)
	}
	return whole
}

// ringPath is the closed path of an outline t behind the picture plane.
func (p *painter) ringPath(ring []point, t float64) []drawing.Step {
	out := p.storage(len(ring) + 1)
	for i, q := range ring {
		out[i] = drawing.Step{To: 'L', P: p.back(q, t)}
	}
	out[0].To = 'M'
	out[len(ring)] = drawing.Close()
	return out
}

// Shades of faces: tops 16 % lighter, uprights 26 % and undersides 40 % darker; between
// them in proportion to the height of the normal.
const (
	shadeTop     = 0.16
	shadeUpright = -0.26
	shadeUnder   = -0.40
)

func shade(normal point) float64 {
	if normal.Y > 0 {
		return shadeUpright + float64(normal.Y*(shadeTop-shadeUpright))
	}
	return shadeUpright - float64(normal.Y*(shadeUnder-shadeUpright))
}

// side paints one side of a board.
func (p *painter) side(scenes []scene, f face) {
	s := &scenes[f.scene]
	v := &s.solids[f.solid]
	path := p.storage(5)
	path[0] = drawing.Step{To: 'M', P: p.back(f.a, f.t0)}
	path[1] = drawing.Step{To: 'L', P: p.back(f.b, f.t0)}
	path[2] = drawing.Step{To: 'L', P: p.back(f.b, f.t1)}
	path[3] = drawing.Step{To: 'L', P: p.back(f.a, f.t1)}
	path[4] = drawing.Close()
	normal := outward(f.a, f.b)
	name, end := v.sideName(f.side, normal)
	w := drawing.Wood{Species: v.b.Wood, Seed: v.seed, WindowAlong: v.window, End: end, Shade: shade(normal)}
	if p.o.Evening {
		w.Shade += s.lit(f, normal)
	}
	p.axes(&w, v, f, end)
	line := drawing.Line{Tone: "arris", Width: 0.7}
	if f.part > 0 {
		name += "/" + strconv.Itoa(f.part)
	}
	if f.seam || f.t0 != v.t0 || f.t1 != v.t1 {
		line = drawing.Line{}
	}
	p.add(drawing.Item{
		ID: v.b.ID + "/" + name, Group: s.id, Layer: drawing.LayerBoards, Kind: drawing.WoodKind,
		Path: path, Wood: w, Line: line,
	})
}

// axes lays the plank's coordinates on a side. The face is foreshortened in depth and
// all but parallel, so the scale at its middle stands for all of it.
func (p *painter) axes(w *drawing.Wood, v *solid, f face, end bool) {
	m := middle(f.a, f.b)
	front, back := p.back(m, v.t0), p.back(m, v.t1)
	inward := scaled(sub(back, front), 1/(v.t1-v.t0))
	half := eyeDepth / (eyeDepth + (v.t0+v.t1)/2)
	along := scaled(direct(f.a, f.b), half)
	if end {
		w.Origin, w.Along, w.Across = p.back(f.a, v.t0), inward, along
		return
	}
	start := f.a
	if dot(along, v.along) < 0 {
		along, start = scaled(along, -1), f.b
	}
	w.Origin, w.Along, w.Across = p.back(start, v.t0), along, inward
	w.WindowAlong += dot(start, v.along) - v.u0
}

// sideName names a side of a board by where its normal points: A, B, start or end; a
// side that is not the first of its name has its index too.
func (v *solid) sideName(i int, normal point) (name string, end bool) {
	u, w := dot(normal, v.along), dot(normal, v.across)
	const level = 0.1 // ends lean by a mitre at most, faces not at all
	switch {
	case w < 0 && u < level && u > -level:
		name = "A"
	case w > 0 && u < level && u > -level:
		name = "B"
	case u < 0:
		name, end = "start", true
	default:
		name, end = "end", true
	}
	if len(v.ring) > 4 {
		name += strconv.Itoa(i)
	}
	return name, end
}

// frontWood is the wood of a front edge.
func (v *solid) frontWood(at func(point) point, scale float64) drawing.Wood {
	corner := point{X: float64(v.u0*v.along.X) + float64(v.w0*v.across.X), Y: float64(v.u0*v.along.Y) + float64(v.w0*v.across.Y)}
	return drawing.Wood{
		Species: v.b.Wood, Seed: v.seed, Edge: true, WindowAlong: v.window,
		Origin: at(corner), Along: scaled(v.along, scale), Across: scaled(v.across, scale),
	}
}

// setBack paints a part of a front that stands behind the picture plane.
func (p *painter) setBack(scenes []scene, f face) {
	s := &scenes[f.scene]
	v := &s.solids[f.solid]
	at := func(q point) point { return p.back(q, v.t0) }
	p.add(drawing.Item{
		Group: s.id, Layer: drawing.LayerBoards, Kind: drawing.WoodKind,
		Path: p.ringPath(f.tri, v.t0), Wood: v.frontWood(at, eyeDepth/(eyeDepth+v.t0)),
	})
}

// fronts paints the fronts in the picture plane, then their outlines: what shows in one
// weight, mitres and other joints in a finer one.
func (p *painter) fronts(scenes []scene, group []int) {
	for _, k := range group {
		s := &scenes[k]
		for i := range s.solids {
			if v := &s.solids[i]; v.t0 <= near || !p.o.Shallow {
				p.add(drawing.Item{
					ID: v.b.ID + "/front", Group: s.id, Layer: drawing.LayerBoards, Kind: drawing.WoodKind,
					Path: p.ringPath(v.ring, 0), Wood: v.frontWood(func(q point) point { return q }, 1),
				})
			}
		}
		p.edges(s)
	}
}

// edges draws the outlines of a module's fronts.
func (p *painter) edges(s *scene) {
	outer, joint := p.outer[:0], p.joint[:0]
	for i := range s.solids {
		v := &s.solids[i]
		if v.t0 > near && p.o.Shallow {
			continue
		}
		pen := false // the outer line goes on from the side before
		for k := range v.ring {
			a, b := side(v.ring, k)
			if s.touched[i][k] {
				joint = append(joint, drawing.Step{To: 'M', P: a}, drawing.Step{To: 'L', P: b})
				pen = false
				continue
			}
			if !pen {
				outer = append(outer, drawing.Step{To: 'M', P: a})
			}
			outer = append(outer, drawing.Step{To: 'L', P: b})
			pen = true
		}
	}
	p.outer, p.joint = outer, joint
	if len(joint) > 0 {
		p.path(drawing.LayerBoards, s.id, "", stroke("edge", 0.8), p.kept(joint))
	}
	if len(outer) > 0 {
		p.path(drawing.LayerBoards, s.id, "", stroke("edge", 1.2), p.kept(outer)).ID = s.id + "/outline"
	}
}

// kept copies a path into the picture's own storage.
func (p *painter) kept(path []drawing.Step) []drawing.Step {
	out := p.storage(len(path))
	copy(out, path)
	return out
}

// triangles cuts a simple counter-clockwise polygon into triangles by its ears; a convex
// one stays whole.
func triangles(ring []point) [][]point {
	if convex(ring) {
		return [][]point{ring}
	}
	rest := append([]point(nil), ring...)
	var out [][]point
	for len(rest) > 3 {
		i := ear(rest)
		n := len(rest)
		out = append(out, []point{rest[(i+n-1)%n], rest[i], rest[(i+1)%n]})
		rest = append(rest[:i:i], rest[i+1:]...)
	}
	return append(out, rest)
}

func convex(ring []point) bool {
	n := len(ring)
	for i := range ring {
		a, b, c := ring[(i+n-1)%n], ring[i], ring[(i+1)%n]
		if cross(sub(b, a), sub(c, b)) < -1e-9 {
			return false
		}
	}
	return true
}

// ear returns the index of a corner that can be cut off; 0 where rounding hides them.
func ear(ring []point) int {
	n := len(ring)
	for i := range ring {
		a, b, c := ring[(i+n-1)%n], ring[i], ring[(i+1)%n]
		if cross(sub(b, a), sub(c, b)) <= 0 {
			continue
		}
		free := true
		for k := range ring {
			if k != i && k != (i+1)%n && k != (i+n-1)%n && within([]point{a, b, c}, ring[k]) {
				free = false
				break
			}
		}
		if free {
			return i
		}
	}
	return 0
}
