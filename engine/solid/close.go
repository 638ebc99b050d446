package solid

import (
	"cmp"
	"math"

	"ledgewright/engine/rank"
)

// close makes corners that are one place one, and faces of the edges.
func (m *maker) close() Solid {
	s := Solid{}
	at, welded := m.weld(&s)
	edges := make([]edge, 0, len(m.edges))
	for _, e := range m.edges {
		if e.from, e.to = at[e.from], at[e.to]; e.from != e.to {
			edges = append(edges, e)
		}
	}
	if welded {
		edges = cancel(s.split(edges))
	}
	rank.By(edges, func(a, b edge) int { return cmp.Compare(a.class, b.class) })
	for len(edges) > 0 {
		n := 1
		for n < len(edges) && edges[n].class == edges[0].class {
			n++
		}
		m.face(&s, edges[:n])
		edges = edges[n:]
	}
	return s
}

// weld keeps one of all corners that are within a touch of it, in order of u.
func (m *maker) weld(s *Solid) (at []int, welded bool) {
	order := make([]int, len(m.places))
	for i := range order {
		order[i] = i
	}
	rank.By(order, func(a, b int) int { return cmp.Compare(m.places[a].U, m.places[b].U) })
	at = make([]int, len(m.places))
	for _, i := range order {
		p := m.places[i]
		at[i] = -1
		for k := len(s.Vertices) - 1; k >= 0 && s.Vertices[k].U > p.U-touch; k-- {
			if s.Vertices[k].Sub(p).Size() < touch {
				at[i], welded = k, true
				break
			}
		}
		if at[i] < 0 {
			at[i] = len(s.Vertices)
			s.Vertices = append(s.Vertices, p)
		}
	}
	return at, welded
}

// split divides edges at corners that lie on them: where corners became one, what was a
// narrow face may have become a line with corners on it.
func (s *Solid) split(edges []edge) []edge {
	out := make([]edge, 0, len(edges))
	for _, e := range edges {
		a, b := s.Vertices[e.from], s.Vertices[e.to]
		d := b.Sub(a)
		size := d.Size()
		var on []stop
		for k, q := range s.Vertices {
			if k == e.from || k == e.to || q.U < min(a.U, b.U)-touch || q.U > max(a.U, b.U)+touch {
				continue
			}
			t := q.Sub(a).Dot(d) / size
			if t > 0 && t < size && a.Add(d, t/size).Sub(q).Size() < touch {
				on = append(on, stop{t, k})
			}
		}
		rank.By(on, func(x, y stop) int { return cmp.Compare(x.t, y.t) })
		for _, x := range on {
			out = append(out, edge{e.class, e.from, x.plane})
			e.from = x.plane
		}
		out = append(out, e)
	}
	return out
}

// cancel drops edges that run both ways in one plane: nothing ends there.
func cancel(edges []edge) []edge {
	count := map[edge]int{}
	for _, e := range edges {
		if back := (edge{e.class, e.to, e.from}); count[back] > 0 {
			count[back]--
		} else {
			count[e]++
		}
	}
	out := edges[:0]
	for _, e := range edges {
		if count[e] > 0 {
			count[e]--
			out = append(out, e)
		}
	}
	return out
}

// face chains the edges of one plane to loops, and the loops to faces.
func (m *maker) face(s *Solid, edges []edge) {
	p := &m.planes[edges[0].class]
	f := Face{Normal: p.n, Feature: m.bodies[p.body].feature, Smooth: p.smooth}
	if p.body > 0 {
		f.Normal = p.n.scaled(-1)
	}
	var outer, holes [][]int
	for _, loop := range s.chain(f.Normal, edges) {
		if len(loop) < 3 {
			continue
		}
		if s.loopArea(f.Normal, loop) > 0 {
			outer = append(outer, loop)
		} else {
			holes = append(holes, loop)
		}
	}
	from := len(s.Faces)
	for _, loop := range outer {
		g := f
		g.Loops = [][]int{loop}
		s.Faces = append(s.Faces, g)
	}
	for _, h := range holes {
		k := s.around(f.Normal, s.Faces[from:from+len(outer)], h)
		if k < 0 { // a sliver that the moving of planes turned round
			f.Loops = [][]int{h}
			s.Faces = append(s.Faces, f)
			continue
		}
		g := &s.Faces[from+k]
		g.Loops = append(g.Loops, h)
	}
}

// chain links edges end to end. Where several leave a corner the one most to the left is
// taken, so that loops which touch stay apart.
func (s *Solid) chain(n Vec, edges []edge) (loops [][]int) {
	used := make([]bool, len(edges))
	for i := range edges {
		if used[i] {
			continue
		}
		var loop []int
		for k := i; k >= 0 && !used[k]; k = s.next(n, edges, used, k) {
			used[k] = true
			loop = append(loop, edges[k].from)
		}
		loops = append(loops, loop)
	}
	return loops
}

// next returns the edge that goes on from edge k, −1 where the loop is closed.
func (s *Solid) next(n Vec, edges []edge, used []bool, k int) int {
	at := s.Vertices[edges[k].to]
	back := s.Vertices[edges[k].from].Sub(at)
	best, least := -1, math.Inf(1)
	for i, e := range edges {
		if used[i] || e.from != edges[k].to {
			continue
		}
		d := s.Vertices[e.to].Sub(at)
		turn := math.Atan2(d.Cross(back).Dot(n), d.Dot(back)) // clockwise from back
		if turn <= 0 {
			turn += 2 * math.Pi
		}
		if turn < least {
			best, least = i, turn
		}
	}
	return best
}

// around returns the smallest of some faces that has a hole in it.
func (s *Solid) around(n Vec, faces []Face, hole []int) int {
	if len(faces) == 1 {
		return 0
	}
	best, area := -1, math.Inf(1)
	at := s.Vertices[hole[0]].Add(s.Vertices[hole[1]], 1).scaled(0.5)
	for i := range faces {
		a := s.loopArea(n, faces[i].Loops[0])
		if a < area && s.turns(n, faces[i].Loops[0], at) {
			best, area = i, a
		}
	}
	return best
}

// turns reports whether a loop goes round a place in its plane: how often a ray from it is
// crossed.
func (s *Solid) turns(n Vec, loop []int, at Vec) (in bool) {
	x := Vec{U: 1}.Cross(n)
	if x.Size() < 0.5 {
		x = Vec{V: 1}.Cross(n)
	}
	x = x.unit()
	y := n.Cross(x)
	for i, k := range loop {
		a, b := s.Vertices[k].Sub(at), s.Vertices[loop[(i+1)%len(loop)]].Sub(at)
		ay, by := a.Dot(y), b.Dot(y)
		if (ay > 0) != (by > 0) && a.Dot(x)+float64((b.Dot(x)-a.Dot(x))*ay/(ay-by)) > 0 {
			in = !in
		}
	}
	return in
}
