package view

import (
	"math"
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/engine/rank"
)

// Which of two faces is behind the other.
//
// Boards stand square to the wall, so the whole scene is a plan in the plane of the
// wall, pulled back in depth. A ray of the eye through a point of the picture goes
// straight away from C in that plane while it goes back in depth: p = C + (q − C)·(D +
// t)/D. So of two faces that a ray meets, the one nearer to C along the ray is in front,
// and depth never has to be compared.
//
//  1. A front in the picture plane (t = 0) is in front of everything.
//  2. A side is a segment of the plan; a front farther back is a polygon, convex or cut
//     into triangles. Two that do not cross are parted by the line of a side of one of
//     them; the one on C's side of that line is in front, on every ray that meets both.
//     Two that cross in the plan stand one behind the other in depth.
//  3. So paint from far to near: a topological order. Seen from C all round, three can
//     lie in a ring, each before the next; cut along one ray from C there is no ring
//     (convex things seen over less than a full turn have an order: it is sorting by
//     translation along a direction, carried over by a projective map). Whatever the
//     ray passes through is then split by it.
//
// Modules whose outlines' boxes are apart are ordered as wholes in the same way, so that
// the faces of one module stay together in the list.

// A node is a convex thing of the plan: a segment or a polygon.
type node struct {
	pts    []point
	lo, hi float64 // directions from C that it spans, as [direction]
	round  bool    // it spans the cut: below lo and above hi instead
	all    bool    // C lies within it
	face   int     // what it belongs to
	depth  [2]float64
}

// deep gives a node its depths behind the picture plane.
func (n node) deep(from, to float64) node {
	n.depth = [2]float64{from, to}
	return n
}

// direction maps the direction of v to [0, 4), growing counter-clockwise from straight
// down, where the cut is. It is not an angle but grows with it.
func direction(v point) float64 {
	x, y := -v.Y, v.X
	switch {
	case x == 0 && y == 0:
		return 0
	case y >= 0 && x >= 0:
		return y / (x + y)
	case y >= 0:
		return 1 + x/(x-y)
	case x < 0:
		return 2 + y/(x+y)
	}
	return 3 + x/(x-y)
}

// newNode fills in what a node spans, seen from c.
func newNode(pts []point, c point, face int) node {
	n := node{pts: pts, face: face, lo: 4, hi: 0}
	n.all = len(pts) > 2 && within(pts, c)
	for _, q := range pts {
		d := direction(sub(q, c))
		n.lo, n.hi = min(n.lo, d), max(n.hi, d)
	}
	if n.hi-n.lo <= 2 || n.all {
		return n
	}
	n.round = true
	lo, hi := 0.0, 4.0
	for _, q := range pts {
		if d := direction(sub(q, c)); d < 2 {
			lo = max(lo, d)
		} else {
			hi = min(hi, d)
		}
	}
	n.lo, n.hi = lo, hi
	return n
}

// within reports whether a counter-clockwise convex polygon holds a point.
func within(pts []point, q point) bool {
	for i := range pts {
		if a, b := side(pts, i); cross(sub(b, a), sub(q, a)) < 0 {
			return false
		}
	}
	return true
}

// shares reports whether some ray from C meets both.
func (n *node) shares(m *node) bool {
	const least = 1e-9
	switch {
	case n.all || m.all:
		return true
	case n.round && m.round:
		return n.lo > least || n.hi < 4-least
	case n.round:
		return m.lo < n.lo-least || m.hi > n.hi+least
	case m.round:
		return m.shares(n)
	}
	return min(n.hi, m.hi)-max(n.lo, m.lo) > least
}

// before reports whether n is in front of m (+1), behind it (−1) or neither (0), seen
// from c.
func (n *node) before(m *node, c point) int {
	if !n.shares(m) {
		return 0
	}
	if r, ok := parted(n, m, c); ok {
		return n.possible(m, r)
	}
	if r, ok := parted(m, n, c); ok {
		return n.possible(m, -r)
	}
	switch { // one over the other, as a rail behind a divider
	case n.depth[1] <= m.depth[0]+near && n.depth != m.depth:
		return 1
	case m.depth[1] <= n.depth[0]+near && n.depth != m.depth:
		return -1
	}
	return n.nearer(m, c)
}

// possible drops an order that no ray asks for: what is in front in the plan and wholly
// deeper meets no ray that meets the other.
func (n *node) possible(m *node, r int) int {
	if r > 0 && n.depth[0] >= m.depth[1]-near && n.depth[1] > m.depth[0]+near || r < 0 && m.depth[0] >= n.depth[1]-near && m.depth[1] > n.depth[0]+near {
		return 0
	}
	return r
}

// parted looks for a side of n whose line has n on one hand and m on the other.
func parted(n, m *node, c point) (int, bool) {
	sides := len(n.pts)
	if sides == 2 {
		sides = 1
	}
	for i := range sides {
		a, b := side(n.pts, i)
		d := sub(b, a)
		size := length(d)
		if size < near {
			continue
		}
		nLow, nHigh := span(n.pts, a, d, size)
		mLow, mHigh := span(m.pts, a, d, size)
		eye := cross(d, sub(c, a)) / size
		switch {
		case mLow >= -near && mHigh <= near && nLow >= -near && nHigh <= near: // all on one line
		case mLow >= -near && nHigh <= near: // m on the left
			return leftward(eye), true
		case mHigh <= near && nLow >= -near:
			return -leftward(eye), true
		}
	}
	return 0, false
}

// leftward turns the eye's distance from a line with m on the left and n on the right
// into which is in front.
func leftward(eye float64) int {
	switch {
	case eye > near:
		return -1 // the eye is on m's side
	case eye < -near:
		return 1
	}
	return 0
}

// span returns the least and greatest distance of some points to the left of a line.
func span(pts []point, a, d point, size float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, q := range pts { // not min and max, which are calls where there is no instruction for them
		x := cross(d, sub(q, a)) / size
		if x < low {
			low = x
		}
		if x > high {
			high = x
		}
	}
	return low, high
}

// nearer decides between things that cross and share depths, as a board does with a rail
// that is let into it: what begins nearer to the picture plane, then what is nearer to the
// eye.
func (n *node) nearer(m *node, c point) int {
	if n.depth[0] != m.depth[0] {
		return sign(m.depth[0] - n.depth[0])
	}
	return sign(m.distance(c) - n.distance(c))
}

func sign(x float64) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

func (n *node) distance(c point) float64 {
	var s point
	for _, q := range n.pts {
		s = plus(s, q, 1/float64(len(n.pts)))
	}
	return length(sub(s, c))
}

// A table says for each two nodes which is in front.
type table struct {
	front []int8 // at i·n + j: +1, node i is in front of node j; −1, behind it; 0, neither
	wait  []int  // how many nodes are still behind
	out   []node
}

// fill fills the table in.
func (t *table) fill(nodes []node, c point) {
	n := len(nodes)
	t.front = resized(t.front, n*n)
	for i := range nodes {
		t.front[i*n+i] = 0
		for j := i + 1; j < n; j++ {
			r := int8(nodes[i].before(&nodes[j], c))
			t.front[i*n+j], t.front[j*n+i] = r, -r
		}
	}
}

// resized returns a slice of n, with what is in it where its storage is used again.
func resized[T any](s []T, n int) []T {
	if n <= cap(s) {
		return s[:n]
	}
	return make([]T, n)
}

// ordered returns the nodes from far to near; of those that are free, the first in the
// list comes first. It reports false where they lie in a ring, and what it could then
// order. The answer holds until the next one.
func (t *table) ordered(nodes []node, c point) ([]node, bool) {
	t.fill(nodes, c)
	n := len(nodes)
	t.wait = resized(t.wait, n)
	for i := range t.wait {
		t.wait[i] = 0
		for _, r := range t.front[i*n : i*n+n] {
			if r > 0 {
				t.wait[i]++
			}
		}
	}
	t.out = t.out[:0]
	for len(t.out) < n {
		k := slices.Index(t.wait, 0)
		if k < 0 {
			return t.out, false
		}
		t.wait[k] = -1
		t.out = append(t.out, nodes[k])
		for i, r := range t.front[k*n : k*n+n] {
			if r < 0 {
				t.wait[i]--
			}
		}
	}
	return t.out, true
}

// order returns the nodes from far to near, split where they must be.
func (t *table) order(nodes []node, c point) []node {
	out, ok := t.ordered(nodes, c)
	if ok {
		return out
	}
	split := make([]node, 0, len(nodes)+8)
	for i := range nodes {
		split = append(split, nodes[i].halves(c)...)
	}
	if out, ok = t.ordered(split, c); ok {
		return out
	}
	// only boards that run through each other come to this
	rank.By(split, func(a, b node) int { return -a.nearer(&b, c) })
	return split
}

// halves splits what the cut passes through.
func (n *node) halves(c point) []node {
	if !n.round {
		return []node{*n}
	}
	var left, right []point
	for i := range n.pts {
		a, b := side(n.pts, i)
		if a.X <= c.X {
			left = append(left, a)
		}
		if a.X >= c.X {
			right = append(right, a)
		}
		if (a.X-c.X)*(b.X-c.X) < 0 && (len(n.pts) > 2 || i == 0) {
			q := point{X: c.X, Y: a.Y + (b.Y-a.Y)*(c.X-a.X)/(b.X-a.X)}
			left, right = append(left, q), append(right, q)
		}
	}
	if len(left) < 2 || len(right) < 2 {
		return []node{*n}
	}
	return []node{newNode(left, c, n.face).deep(n.depth[0], n.depth[1]), newNode(right, c, n.face).deep(n.depth[0], n.depth[1])}
}

// clusters groups scenes whose boxes meet, each group in the order of the scenes.
func clusters(scenes []scene) [][]int {
	group := make([]int, len(scenes))
	boxes := make([]drawing.Box, len(scenes))
	for i := range scenes {
		group[i], boxes[i] = i, scenes[i].box
	}
	for again := true; again; {
		again = false
		for i := range scenes {
			for j := range i {
				if group[i] != group[j] && boxes[group[i]].Meets(boxes[group[j]]) {
					unite(group, boxes, i, j)
					again = true
				}
			}
		}
	}
	return members(group)
}

func unite(group []int, boxes []drawing.Box, i, j int) {
	a, b := min(group[i], group[j]), max(group[i], group[j])
	for k := range group {
		if group[k] == b {
			group[k] = a
		}
	}
	for _, q := range corners(boxes[b]) {
		boxes[a] = boxes[a].With(q)
	}
}

func members(group []int) [][]int {
	out := make([][]int, 0, len(group))
	all := make([]int, 0, len(group))
	for first, g := range group {
		if g != first {
			continue
		}
		from := len(all)
		for i := first; i < len(group); i++ {
			if group[i] == g {
				all = append(all, i)
			}
		}
		out = append(out, all[from:len(all):len(all)])
	}
	return out
}

func corners(b drawing.Box) []point {
	return []point{{X: b.MinX, Y: b.MinY}, {X: b.MaxX, Y: b.MinY}, {X: b.MaxX, Y: b.MaxY}, {X: b.MinX, Y: b.MaxY}}
}

// farToNear orders the clusters as wholes; those that lie in a ring become one.
func (p *painter) farToNear(scenes []scene) [][]int {
	groups := clusters(scenes)
	nodes := make([]node, len(groups))
	for i, g := range groups {
		box := scenes[g[0]].box
		for _, k := range g[1:] {
			for _, q := range corners(scenes[k].box) {
				box = box.With(q)
			}
		}
		nodes[i] = newNode(corners(box), p.eye, i)
	}
	sorted, ok := p.table.ordered(nodes, p.eye)
	out := make([][]int, 0, len(groups))
	taken := make([]bool, len(groups))
	for _, n := range sorted {
		out, taken[n.face] = append(out, groups[n.face]), true
	}
	if ok {
		return out
	}
	var rest []int
	for i, g := range groups {
		if !taken[i] {
			rest = append(rest, g...)
		}
	}
	return append(out, rest)
}
