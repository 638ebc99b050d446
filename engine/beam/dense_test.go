//go:build !js

package beam_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	. "ledgewright/engine/beam"
)

// Random frames in space are solved again in the plainest way: the textbook matrix of a
// Timoshenko member (J. S. Przemieniecki, Theory of Matrix Structural Analysis, 1968, from
// memory), loads spread to the ends by the textbook's fixed-end forces, all in one dense
// matrix that a general-purpose library solves.
func TestRandomFramesAgainstADenseSolve(t *testing.T) {
	for seed := range 600 {
		r := rand.New(rand.NewPCG(uint64(seed), 7))
		f, c := randomFrame(r)
		s, err := f.Ready()
		require.NoError(t, err, "seed %d", seed)
		answers, err := s.Solve(c)
		require.NoError(t, err)
		want := dense(f, &c)
		top := 0.0
		for i := range want.Len() {
			top = max(top, math.Abs(want.AtVec(i)))
		}
		for n := range f.Nodes {
			m := answers[0].Move(n)
			for i := range 3 {
				require.InDelta(t, want.AtVec(6*n+i), m.Shift[i], 1e-8*top, "seed %d node %d", seed, n)
				require.InDelta(t, want.AtVec(6*n+3+i), m.Turn[i], 1e-8*top, "seed %d node %d", seed, n)
			}
		}
	}
}

// randomFrame is a tree of members with some rungs, held at its first node and on springs.
func randomFrame(r *rand.Rand) (*Frame, Case) {
	number := func(from, to float64) float64 { return from + (to-from)*r.Float64() }
	f := &Frame{Nodes: []Node{{Name: "foot", Hold: fixed()}}}
	count := 3 + r.IntN(25)
	for i := 1; i < count; i++ {
		n := Node{Name: fmt.Sprint(i), At: Vec{number(-900, 900), number(-900, 900), number(-400, 400)}}
		for k := range n.Hold {
			if r.IntN(8) == 0 {
				n.Hold[k].Stiffness = number(10, 5000)
			}
		}
		f.Nodes = append(f.Nodes, n)
	}
	member := func(a, b int) {
		side, high := number(10, 60), number(10, 60)
		s := Section{A: side * high, Iy: high * side * side * side / 12, Iz: side * high * high * high / 12}
		s.J = (s.Iy + s.Iz) / 2
		if r.IntN(2) == 0 {
			s.Ay, s.Az = s.A*5/6, s.A*5/6
		}
		young := number(8e3, 2.1e5)
		f.Members = append(f.Members, Member{Start: End{Node: a}, Finish: End{Node: b}, Section: s,
			Material: Material{young, young / number(2.4, 16)}, Up: Vec{number(-1, 1), number(-1, 1), number(-1, 1)}})
	}
	for i := 1; i < count; i++ {
		member(r.IntN(i), i)
	}
	for range r.IntN(count) {
		if a, b := r.IntN(count), r.IntN(count); a != b {
			member(a, b)
		}
	}
	var c Case
	for range 1 + r.IntN(4) {
		load := NodeLoad{Node: r.IntN(count)}
		for i := range 3 {
			load.Force[i], load.Moment[i] = number(-500, 500), number(-5e4, 5e4)
		}
		c.Nodes = append(c.Nodes, load)
	}
	for i := range f.Members {
		if r.IntN(3) == 0 {
			w := Vec{number(-2, 2), number(-2, 2), number(-2, 2)}
			c.Lines = append(c.Lines, Line{Member: i, To: lengthOf(f, i), Start: w, Finish: w})
		}
	}
	return f, c
}

func lengthOf(f *Frame, i int) float64 {
	x := along(f, i)
	return math.Sqrt(x[0]*x[0] + x[1]*x[1] + x[2]*x[2])
}

func along(f *Frame, i int) (x Vec) {
	a, b := f.Nodes[f.Members[i].Start.Node].At, f.Nodes[f.Members[i].Finish.Node].At
	for k := range x {
		x[k] = b[k] - a[k]
	}
	return x
}

// turned returns the 12 by 12 matrix that turns motions into the member's axes.
func turned(f *Frame, i int) *mat.Dense {
	unit := func(v Vec) Vec {
		n := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2])
		return Vec{v[0] / n, v[1] / n, v[2] / n}
	}
	cross := func(a, b Vec) Vec {
		return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	}
	x := unit(along(f, i))
	z := unit(cross(x, f.Members[i].Up))
	y := cross(z, x)
	out := mat.NewDense(12, 12, nil)
	for block := range 4 {
		for k, row := range []Vec{x, y, z} {
			for j := range 3 {
				out.Set(3*block+k, 3*block+j, row[j])
			}
		}
	}
	return out
}

// textbook returns the member's stiffness in its own axes.
func textbook(b *Member, l float64) *mat.Dense {
	k := mat.NewDense(12, 12, nil)
	put := func(i, j int, v float64) { k.Set(i, j, v); k.Set(j, i, v) }
	s, e, g := b.Section, b.Material.E, b.Material.G
	for i, v := range map[int]float64{0: e * s.A / l, 3: g * s.J / l} {
		put(i, i, v)
		put(i+6, i+6, v)
		put(i, i+6, -v)
	}
	bend := func(v1, r1, v2, r2 int, i, area, sign float64) {
		phi := 0.0
		if area > 0 {
			phi = 12 * e * i / (g * area * l * l)
		}
		d := e * i / (1 + phi)
		put(v1, v1, 12*d/(l*l*l))
		put(v2, v2, 12*d/(l*l*l))
		put(v1, v2, -12*d/(l*l*l))
		put(v1, r1, sign*6*d/(l*l))
		put(v1, r2, sign*6*d/(l*l))
		put(v2, r1, -sign*6*d/(l*l))
		put(v2, r2, -sign*6*d/(l*l))
		put(r1, r1, (4+phi)*d/l)
		put(r2, r2, (4+phi)*d/l)
		put(r1, r2, (2-phi)*d/l)
	}
	bend(1, 5, 7, 11, s.Iz, s.Ay, 1)
	bend(2, 4, 8, 10, s.Iy, s.Az, -1)
	return k
}

// dense solves frame and case.
func dense(f *Frame, c *Case) *mat.VecDense {
	n := 6 * len(f.Nodes)
	k, p := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
	for _, l := range c.Nodes {
		for i := range 3 {
			p.SetVec(6*l.Node+i, p.AtVec(6*l.Node+i)+l.Force[i])
			p.SetVec(6*l.Node+3+i, p.AtVec(6*l.Node+3+i)+l.Moment[i])
		}
	}
	for i := range f.Members {
		b := &f.Members[i]
		length := lengthOf(f, i)
		turn := turned(f, i)
		var global mat.Dense
		global.Mul(turn.T(), textbook(b, length))
		global.Mul(&global, turn)
		slot := func(a int) int {
			if a < 6 {
				return 6*b.Start.Node + a
			}
			return 6*b.Finish.Node + a - 6
		}
		for a := range 12 {
			for d := range 12 {
				k.Set(slot(a), slot(d), k.At(slot(a), slot(d))+global.At(a, d))
			}
		}
		for _, l := range c.Lines {
			if l.Member == i {
				w := mat.NewVecDense(12, []float64{l.Start[0], l.Start[1], l.Start[2], 0, 0, 0, 0, 0, 0, 0, 0, 0})
				var q mat.VecDense
				q.MulVec(turn, w)
				qx, qy, qz := q.AtVec(0)*length, q.AtVec(1)*length, q.AtVec(2)*length
				ends := mat.NewVecDense(12, []float64{qx / 2, qy / 2, qz / 2, 0, -qz * length / 12, qy * length / 12,
					qx / 2, qy / 2, qz / 2, 0, qz * length / 12, -qy * length / 12})
				var back mat.VecDense
				back.MulVec(turn.T(), ends)
				for a := range 12 {
					p.SetVec(slot(a), p.AtVec(slot(a))+back.AtVec(a))
				}
			}
		}
	}
	hold(f, k, p)
	var x mat.VecDense
	if err := x.SolveVec(k, p); err != nil {
		if _, only := err.(mat.Condition); !only {
			panic(err)
		}
	}
	return &x
}

// hold adds what the ground does; a rigid hold takes the row out.
func hold(f *Frame, k *mat.Dense, p *mat.VecDense) {
	for n := range f.Nodes {
		for i, h := range f.Nodes[n].Hold {
			row := 6*n + i
			k.Set(row, row, k.At(row, row)+h.Stiffness)
			if !h.Rigid {
				continue
			}
			for j := range p.Len() {
				k.Set(row, j, 0)
				k.Set(j, row, 0)
			}
			k.Set(row, row, 1)
			p.SetVec(row, 0)
		}
	}
}
