//go:build !js

package beam_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	. "ledgewright/engine/beam"
)

// chain is a row of boxes of n nodes, as long shelves are.
func chain(n int) (*Frame, Case) {
	f := &Frame{}
	for i := range n {
		f.Nodes = append(f.Nodes, Node{At: Vec{float64(i/2) * 300, float64(i%2) * 250, 0}})
	}
	member := func(a, b int) {
		f.Members = append(f.Members, Member{Start: End{Node: a}, Finish: End{Node: b}, Section: bar, Material: steel, Up: Vec{-1, 2, 0}})
	}
	for i := 2; i < n; i++ {
		member(i-2, i)
		if i%2 == 1 {
			member(i-1, i)
		}
	}
	f.Nodes[0].Hold, f.Nodes[n-1].Hold = fixed(), fixed()
	return f, Case{Lines: []Line{{Member: 0, To: 300, Start: Vec{0, -1}, Finish: Vec{0, -1}}}}
}

// Ours against the dense matrix of a general-purpose library, by size: make ready and solve.
func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{8, 16, 32, 64, 128} {
		f, c := chain(n)
		b.Run(fmt.Sprintf("nodes=%d/ours", n), func(b *testing.B) {
			for b.Loop() {
				s, err := f.Ready()
				if err == nil {
					_, err = s.Solve(c)
				}
				if err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprintf("nodes=%d/dense", n), func(b *testing.B) {
			r := rand.New(rand.NewPCG(1, 2))
			k := mat.NewSymDense(6*n, nil)
			for i := range 6 * n {
				for j := i; j < 6*n; j++ {
					k.SetSym(i, j, r.Float64())
				}
				k.SetSym(i, i, float64(6*n))
			}
			p, x := mat.NewVecDense(6*n, nil), mat.NewVecDense(6*n, nil)
			for b.Loop() {
				var factors mat.Cholesky
				factors.Factorize(k)
				if err := factors.SolveVecTo(x, p); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
