// Package solid turns a board with its cuts into closed faces: flat polygons with holes,
// every edge shared by two of them in opposite sense.
//
// The wood is a convex body W, what each feature takes away a convex body K: a prism, or
// a prism with corners on the circle in place of a cylinder. The surface of W less all K
// consists of parts of the planes of W outside every K, and parts of the planes of each K
// inside W and outside the others, turned round. It is found edge by edge, not face by
// face: an edge lies where two planes meet, between the places where a third one ends it,
// and goes to both its faces at once, once each way. So the faces close whatever the
// numbers do.
//
// Planes of different cuts often lie in one (the mouth of a groove in its face, two cuts
// of one depth, cuts side by side). To decide such cases the same way everywhere each
// plane is moved a little, by its own amount: those of W inwards, those of every K
// outwards, by 50 to 500 nm. That decides which edges there are (the idea of Edelsbrunner
// and Mücke, Simulation of simplicity, ACM Transactions on Graphics 9 (1990), 66–104,
// with real amounts in place of infinitesimal ones). The corners are then worked out
// where the planes truly are, and those within [unit.Touch] become one.
//
// A round cut with n sides takes n/2·r²·sin(2π/n) in place of πr².
package solid

import (
	"math"

	"ledgewright/engine/board"
)

// Options say how fine the faces are.
type Options struct {
	Chord float64 // how far a flat side may leave the circle that it stands for, mm, 0.002 at least; 0: 0.05
}

func (o Options) chord() float64 {
	if o.Chord > 0 {
		return max(o.Chord, 0.002)
	}
	return 0.05
}

// A Face is one flat face. Its loops run counter-clockwise about the normal round the
// face, the outer one first, and clockwise round its holes.
type Face struct {
	Normal  Vec // out of the wood
	Loops   [][]int
	Feature int  // index of the feature that cut it; −1: a side of the board, its arrises included
	Smooth  bool // stands for a part of something round
}

// A Solid is the surface of a board.
type Solid struct {
	Vertices []Vec
	Faces    []Face
}

// touch is what counts as one place, mm.
const touch = 1e-3

// Of returns the surface of a board. The wood must have length, width and thickness.
func Of(b *board.Board, o Options) Solid {
	m := maker{b: b, o: o}
	m.wood()
	for _, r := range b.Removed() {
		m.removed(r)
	}
	m.move()
	m.classify()
	m.within()
	m.between()
	return m.close()
}

// move moves each plane by its own amount. Multiples of the golden ratio keep any two
// amounts apart.
func (m *maker) move() {
	for i := range m.planes {
		p := &m.planes[i]
		_, part := math.Modf(float64(i+1) * 0.6180339887498949)
		by := 5e-5 + float64(part*4.5e-4)
		if p.body == 0 {
			by = -by
		}
		p.moved = p.d + by
	}
}

// classify finds the planes that lie in one and bound the wood from the same side.
func (m *maker) classify() {
	for i := range m.planes {
		p := &m.planes[i]
		p.class = i
		for j := range i {
			q := &m.planes[j]
			way := 1.0
			if (p.body == 0) != (q.body == 0) {
				way = -1
			}
			if p.n == q.n.scaled(way) && math.Abs(p.d-float64(way*q.d)) < touch {
				p.class = q.class
				break
			}
		}
	}
}

// Volume returns the volume inside the faces, mm³, by Gauss's theorem: a third of the sum
// of each face's distance from a point times its area.
func (s *Solid) Volume() (v float64) {
	if len(s.Vertices) == 0 {
		return 0
	}
	from := s.Vertices[0]
	for i := range s.Faces {
		f := &s.Faces[i]
		at := s.Vertices[f.Loops[0][0]].Sub(from)
		for _, loop := range f.Loops {
			v += f.Normal.Dot(at) * s.loopArea(f.Normal, loop) / 3
		}
	}
	return v
}

// Area returns the area of a face, mm².
func (s *Solid) Area(face int) (a float64) {
	f := &s.Faces[face]
	for _, loop := range f.Loops {
		a += s.loopArea(f.Normal, loop)
	}
	return a
}

// loopArea returns the area inside a loop, negative where it runs clockwise (Newell's
// sum about the loop's first corner).
func (s *Solid) loopArea(n Vec, loop []int) float64 {
	o := s.Vertices[loop[0]]
	sum := Vec{}
	for i := 1; i+1 < len(loop); i++ {
		a, b := s.Vertices[loop[i]].Sub(o), s.Vertices[loop[i+1]].Sub(o)
		sum = sum.Add(a.Cross(b), 1)
	}
	return sum.Dot(n) / 2
}
