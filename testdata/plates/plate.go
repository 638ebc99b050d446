// Package plates bends boards as thin orthotropic plates on rods. It is the referee of the
// simple rule for wood that tears across its grain in front of a rod's tip, and stands in no
// product.
//
// A plate with the stiffnesses Dx along the grain, Dy across it, D1 for the sideways strain
// and Dk for twisting obeys
//
//	mx = −(Dx w,xx + D1 w,yy)   my = −(D1 w,xx + Dy w,yy)   mxy = −2 Dk w,xy
//
// (S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., art. 85). Its
// elements are rectangles with w, w,x and w,y at their corners and the twelve terms of
// Adini, Clough and Melosh (O. C. Zienkiewicz, The Finite Element Method, 3rd ed., ch. 10).
// A rod is a beam held at the wall, tied by springs to the plate across its diameter. A rib
// is an upright on an end that does not bend in the direction of the depth.
//
// x runs along the board, y from the wall to its front; N and mm.
package plates

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// A Wood is the elastic figures of a board: moduli, and the sideways strain that goes with
// one across the grain.
type Wood struct{ Along, Across, Shear, Sideways float64 }

// Oak is white oak: 12.3 GPa along, 0.072 of it across, 1.0 GPa in shear, ratios of the Wood
// Handbook, table 5-1.
func Oak() Wood { return Wood{12300, 890, 1000, 0.03} }

// A Board is what is bent.
type Board struct {
	Length, Depth, Thick float64
	Wood                 Wood
	Rods                 []float64 // places along it
	Rod, Tip             float64   // diameter, and how far they reach
	Bed                  float64   // stiffness of the wood under a rod, N/mm²
	Groove               Groove
	Ribs                 bool    // uprights on both ends
	Slack                float64 // of its bores: the rod meets the roof, or so much lower the floor; 0: held all round
	Fine                 float64
	Clamped              bool // along all of its back, for tests
	Half                 bool // Length is the left half of it, the right one its mirror picture
}

// A Groove runs along all of the board.
type Groove struct{ From, To, Left float64 }

// A Load presses on the board from From to To of its depth, or stands at a point.
type Load struct {
	Pressure float64 // N/mm²
	From, To float64
	Left     float64 // it begins there along the board
	Right    float64 // and ends there; 0: the board's end
	Force    float64
	At       float64 // along; at the front edge
}

// A Bent is a board under its load.
type Bent struct {
	Front  float64 // how far the front edge goes down at most
	Across float64 // greatest tension across the grain at the plate's upper side, in front of and round the tips
	At     [2]float64
}

// A mesh numbers what can move.
type mesh struct {
	b      *Board
	xs, ys []float64
	first  [][]int // first freedom of node i, j: w, w,x, w,y
	rods   [][]int // first freedom of rod r at y j: w, slope
	count  int
	band   int
	held   map[int]bool
	state  map[[2]int]int // of the springs of a board with slack: 0 on the roof of the bore, 1 on nothing, 2 on its floor
	known  map[[2]float64]*mat.Dense
	stiff  *mat.SymBandDense // of the plate without its rods
	force  *mat.VecDense
}

// lines divides a length at the marks, finer than step.
func lines(marks []float64, step float64) (out []float64) {
	slices.Sort(marks)
	out = []float64{marks[0]}
	for _, m := range marks[1:] {
		from := out[len(out)-1]
		if m-from < 0.5 {
			continue
		}
		n := int(math.Ceil((m - from) / step))
		for k := 1; k <= n; k++ {
			out = append(out, from+(m-from)*float64(k)/float64(n))
		}
	}
	return out
}

func meshOf(b *Board) *mesh {
	step := b.Fine
	if step == 0 {
		step = 10
	}
	mx, my := []float64{0, b.Length}, []float64{0, b.Depth}
	for _, r := range b.Rods {
		mx = append(mx, r-b.Rod/2, r, r+b.Rod/2)
	}
	if len(b.Rods) > 0 {
		my = append(my, b.Tip)
	}
	if b.Groove.To > 0 {
		my = append(my, b.Groove.From, b.Groove.To)
	}
	m := &mesh{b: b, xs: lines(mx, step), ys: lines(my, step*0.7), held: map[int]bool{}, state: map[[2]int]int{}, known: map[[2]float64]*mat.Dense{}}
	m.number()
	return m
}

func (m *mesh) number() {
	m.rods = make([][]int, len(m.b.Rods))
	for i, x := range m.xs {
		column := make([]int, len(m.ys))
		for j, y := range m.ys {
			column[j] = m.count
			m.count += 3
			for r, at := range m.b.Rods {
				if math.Abs(at-x) < 1e-6 && y <= m.b.Tip+1e-6 {
					m.rods[r] = append(m.rods[r], m.count)
					if j == 0 {
						m.held[m.count], m.held[m.count+1] = true, true
					}
					m.count += 2
				}
			}
		}
		m.first = append(m.first, column)
		if m.b.Clamped {
			m.held[column[0]], m.held[column[0]+1], m.held[column[0]+2] = true, true, true
		}
		for j := range column {
			if m.b.Half && i == len(m.xs)-1 {
				m.held[column[j]+1] = true
			}
		}
		if i > 0 {
			m.band = max(m.band, m.count-m.first[i-1][0])
		}
	}
}

// thick returns how much wood there is at y.
func (b *Board) thick(y float64) float64 {
	if y > b.Groove.From && y < b.Groove.To {
		return b.Groove.Left
	}
	return b.Thick
}

// stiffness returns the plate's D at y as rows for w,xx, w,yy and 2 w,xy.
func (b *Board) stiffness(y float64) [3][3]float64 {
	t := b.thick(y)
	i := t * t * t / 12
	w := b.Wood
	part := 1 - w.Sideways*w.Sideways*w.Along/w.Across
	dx, dy := w.Along*i/part, w.Across*i/part
	return [3][3]float64{{dx, w.Sideways * dx, 0}, {w.Sideways * dx, dy, 0}, {0, 0, w.Shear * i}}
}

// powers are the exponents of x and y of the twelve terms.
func powers() [12][2]int {
	return [12][2]int{{0, 0}, {1, 0}, {0, 1}, {2, 0}, {1, 1}, {0, 2}, {3, 0}, {2, 1}, {1, 2}, {0, 3}, {3, 1}, {1, 3}}
}

// term returns the derivative of x^p y^q, dx times by x and dy times by y.
func term(p [2]int, x, y float64, dx, dy int) float64 {
	v := 1.0
	for k := range dx {
		v *= float64(p[0] - k)
	}
	for k := range dy {
		v *= float64(p[1] - k)
	}
	if v == 0 {
		return 0
	}
	return v * whole(x, p[0]-dx) * whole(y, p[1]-dy)
}

func whole(x float64, n int) float64 {
	v := 1.0
	for range n {
		v *= x
	}
	return v
}

// shapes returns the matrix that turns what an element's corners do into its terms, for an
// element from 0, 0 to a, b.
func shapes(a, b float64) *mat.Dense {
	c := mat.NewDense(12, 12, nil)
	for n, at := range [4][2]float64{{0, 0}, {a, 0}, {0, b}, {a, b}} {
		for k, p := range powers() {
			c.Set(3*n, k, term(p, at[0], at[1], 0, 0))
			c.Set(3*n+1, k, term(p, at[0], at[1], 1, 0))
			c.Set(3*n+2, k, term(p, at[0], at[1], 0, 1))
		}
	}
	var out mat.Dense
	if err := out.Inverse(c); err != nil {
		panic(err) // a corner twice: a mistake of the mesh
	}
	return &out
}

// shapes is the same, made once for each size.
func (m *mesh) shapes(a, b float64) *mat.Dense {
	key := [2]float64{math.Round(a * 1e6), math.Round(b * 1e6)}
	if m.known[key] == nil {
		m.known[key] = shapes(a, b)
	}
	return m.known[key]
}

// bends returns w,xx, w,yy and 2 w,xy at a place of an element from what its corners do.
func bends(s *mat.Dense, x, y float64) *mat.Dense {
	q := mat.NewDense(3, 12, nil)
	for k, p := range powers() {
		q.Set(0, k, term(p, x, y, 2, 0))
		q.Set(1, k, term(p, x, y, 0, 2))
		q.Set(2, k, 2*term(p, x, y, 1, 1))
	}
	var out mat.Dense
	out.Mul(q, s)
	return &out
}

// gauss are the places and weights of three points between 0 and 1.
func gauss() [3][2]float64 {
	r := math.Sqrt(0.6) / 2
	return [3][2]float64{{0.5 - r, 5.0 / 18}, {0.5, 8.0 / 18}, {0.5 + r, 5.0 / 18}}
}

// corners returns the freedoms of element i, j.
func (m *mesh) corners(i, j int) (out [12]int) {
	for n, at := range [4][2]int{{i, j}, {i + 1, j}, {i, j + 1}, {i + 1, j + 1}} {
		for k := range 3 {
			out[3*n+k] = m.first[at[0]][at[1]] + k
		}
	}
	return out
}
