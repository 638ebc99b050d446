package beam

import (
	"slices"

	"ledgewright/engine/rank"
)

// order returns the nodes of the mesh in an order that keeps joined nodes near each other:
// Cuthill and McKee's, reversed (E. Cuthill, J. McKee, Reducing the bandwidth of sparse
// symmetric matrices, ACM 1969; A. George, 1971). Parts that hang together follow one
// another. Ties are broken by number, so that the order is always the same.
func (m *mesh) order() []int {
	near := m.neighbours()
	out := make([]int, 0, len(near))
	seen := make([]bool, len(near))
	for len(out) < len(near) {
		root := farthest(near, seen, fewest(near, seen))
		seen[root] = true
		out = append(out, root)
		for next := len(out) - 1; next < len(out); next++ {
			out = appendUnseen(out, near, seen, out[next])
		}
	}
	slices.Reverse(out)
	return out
}

// neighbours lists the nodes that each node shares a piece with, those with fewest first.
func (m *mesh) neighbours() [][]int {
	near := make([][]int, len(m.places))
	join := func(a, b int) {
		if a != b && !slices.Contains(near[a], b) {
			near[a] = append(near[a], b)
			near[b] = append(near[b], a)
		}
	}
	for i := range m.pieces {
		p := &m.pieces[i]
		join(p.ends[0], p.ends[1])
		if p.tie >= 0 {
			join(p.ends[0], p.tie)
			join(p.ends[1], p.tie)
		}
	}
	return near
}

// fewest returns the node not seen yet with the fewest neighbours.
func fewest(near [][]int, seen []bool) int {
	best := -1
	for i := range near {
		if !seen[i] && (best < 0 || len(near[i]) < len(near[best])) {
			best = i
		}
	}
	return best
}

// farthest returns a node at the end of the longest way from root, breadth first: a good
// one to begin with.
func farthest(near [][]int, seen []bool, root int) int {
	been := slices.Clone(seen)
	been[root] = true
	queue := []int{root}
	for next := 0; next < len(queue); next++ {
		queue = appendUnseen(queue, near, been, queue[next])
	}
	return queue[len(queue)-1]
}

// appendUnseen appends the neighbours of node that were not seen, those with fewest
// neighbours of their own first.
func appendUnseen(out []int, near [][]int, seen []bool, node int) []int {
	from := len(out)
	for _, n := range near[node] {
		if !seen[n] {
			seen[n] = true
			out = append(out, n)
		}
	}
	rank.By(out[from:], func(a, b int) int {
		if d := len(near[a]) - len(near[b]); d != 0 {
			return d
		}
		return a - b
	})
	return out
}
