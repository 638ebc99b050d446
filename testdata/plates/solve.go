package plates

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// Bend returns how a board bends under loads.
func Bend(b Board, loads ...Load) (Bent, error) {
	m := meshOf(&b)
	for round := range 80 {
		x, err := m.solve(loads)
		if err != nil {
			return Bent{}, err
		}
		if b.Slack == 0 || !m.lifts(x, round > 12) {
			return m.read(x), nil
		}
	}
	return Bent{}, errors.New("plates: no state of contact agrees with itself")
}

// enough is a motion, mm, that counts as none.
const enough = 1e-4

// lifts moves the springs to the state that the motions say, all at once or only the one
// that is most wrong, and says whether any changed.
func (m *mesh) lifts(x *mat.VecDense, single bool) (changed bool) {
	var worst [2]int
	most, to := 0.0, 0
	for r := range m.b.Rods {
		i := m.column(m.b.Rods[r])
		for j, node := range m.rods[r] {
			for n := range 3 {
				at := [2]int{m.first[i+n-1][j], node}
				state, wrong := m.agrees(x.AtVec(at[0])-x.AtVec(node), m.state[at])
				if wrong <= enough {
					continue
				}
				changed = true
				if !single {
					m.state[at] = state
				} else if wrong > most {
					worst, most, to = at, wrong, state
				}
			}
		}
	}
	if single && changed {
		m.state[worst] = to
	}
	return changed
}

// agrees returns the state next to the one that a spring is in, and by how much its motion
// disagrees with that.
func (m *mesh) agrees(down float64, state int) (next int, wrong float64) {
	switch {
	case state == 0:
		return 1, -down
	case state == 2:
		return 1, down + m.b.Slack
	case down > 0:
		return 0, down
	}
	return 2, -m.b.Slack - down
}

// plate assembles what does not depend on the state of the springs.
func (m *mesh) plate(loads []Load) {
	k, f := mat.NewSymBandDense(m.count, m.band, nil), mat.NewVecDense(m.count, nil)
	m.elements(k, f, loads)
	if m.b.Ribs {
		m.rib(k, 0)
		if !m.b.Half {
			m.rib(k, len(m.xs)-1)
		}
	}
	for i := range m.held {
		k.SetSymBand(i, i, k.At(i, i)+1e12)
	}
	for _, l := range loads {
		if l.Force != 0 {
			i := m.column(l.At)
			f.SetVec(m.first[i][len(m.ys)-1], l.Force)
		}
	}
	m.stiff, m.force = k, f
}

// solve adds the rods and solves.
func (m *mesh) solve(loads []Load) (*mat.VecDense, error) {
	if m.stiff == nil {
		m.plate(loads)
	}
	raw := m.stiff.RawSymBand()
	k := mat.NewSymBandDense(m.count, m.band, slices.Clone(raw.Data))
	f := mat.VecDenseCopyOf(m.force)
	for r := range m.b.Rods {
		m.rod(k, f, r)
	}
	t, ok := lapack64.Pbtrf(k.RawSymBand())
	if !ok {
		return nil, errors.New("plates: nothing holds the board")
	}
	lapack64.Pbtrs(t, blas64.General{Rows: m.count, Cols: 1, Stride: 1, Data: f.RawVector().Data})
	return f, nil
}

// column returns the line of nodes nearest to x.
func (m *mesh) column(x float64) int {
	best := 0
	for i := range m.xs {
		if math.Abs(m.xs[i]-x) < math.Abs(m.xs[best]-x) {
			best = i
		}
	}
	return best
}

func add(k *mat.SymBandDense, i, j int, v float64) {
	if i <= j && v != 0 {
		k.SetSymBand(i, j, k.At(i, j)+v)
	}
}

// elements adds the plate and what presses on it. Down is +.
func (m *mesh) elements(k *mat.SymBandDense, f *mat.VecDense, loads []Load) {
	known := map[[3]float64]*mat.Dense{}
	for i := range len(m.xs) - 1 {
		for j := range len(m.ys) - 1 {
			a, b := m.xs[i+1]-m.xs[i], m.ys[j+1]-m.ys[j]
			mid := (m.ys[j] + m.ys[j+1]) / 2
			s := m.shapes(a, b)
			of := [3]float64{math.Round(a * 1e6), math.Round(b * 1e6), m.b.thick(mid)}
			e := known[of]
			if e == nil {
				e = m.b.element(s, a, b, mid)
				known[of] = e
			}
			at := m.corners(i, j)
			for r, row := range at {
				for c, column := range at {
					add(k, row, column, e.At(r, c))
				}
			}
			for _, l := range loads {
				m.press(f, &l, i, j, s)
			}
		}
	}
}

// element integrates the stiffness of one element.
func (b *Board) element(s *mat.Dense, long, wide, mid float64) *mat.Dense {
	d := b.stiffness(mid)
	dm := mat.NewDense(3, 3, []float64{d[0][0], d[0][1], 0, d[1][0], d[1][1], 0, 0, 0, d[2][2]})
	out := mat.NewDense(12, 12, nil)
	for _, p := range gauss() {
		for _, q := range gauss() {
			n := bends(s, p[0]*long, q[0]*wide)
			var dn, part mat.Dense
			dn.Mul(dm, n)
			part.Mul(n.T(), &dn)
			part.Scale(p[1]*q[1]*long*wide, &part)
			out.Add(out, &part)
		}
	}
	return out
}

// press adds the pressure on an element.
func (m *mesh) press(f *mat.VecDense, l *Load, i, j int, s *mat.Dense) {
	right := l.Right
	if right == 0 {
		right = m.b.Length
	}
	a, b := m.xs[i+1]-m.xs[i], m.ys[j+1]-m.ys[j]
	for _, p := range gauss() {
		for _, q := range gauss() {
			x, y := m.xs[i]+p[0]*a, m.ys[j]+q[0]*b
			if l.Pressure == 0 || y < l.From || y > l.To || x < l.Left || x > right {
				continue
			}
			for n, at := range m.corners(i, j) {
				v := 0.0
				for k, t := range powers() {
					v += term(t, p[0]*a, q[0]*b, 0, 0) * s.At(k, n)
				}
				f.SetVec(at, f.AtVec(at)+v*l.Pressure*p[1]*q[1]*a*b)
			}
		}
	}
}

// beam returns the stiffness of a beam of length l: w, slope at both ends.
func beam(ei, l float64) [4][4]float64 {
	a, b, c := 12*ei/(l*l*l), 6*ei/(l*l), 2*ei/l
	return [4][4]float64{{a, b, -a, b}, {b, 2 * c, -b, c}, {-a, -b, a, -b}, {b, c, -b, 2 * c}}
}

func spread(k *mat.SymBandDense, at []int, e [4][4]float64) {
	for r, row := range at {
		for c, column := range at {
			add(k, row, column, e[r][c])
		}
	}
}

// rod adds a rod and what ties the plate to it, across its diameter by 1/4, 1/2 and 1/4.
func (m *mesh) rod(k *mat.SymBandDense, f *mat.VecDense, r int) {
	d := m.b.Rod
	steel := 210000 * math.Pi * d * d * d * d / 64
	nodes := m.rods[r]
	i := m.column(m.b.Rods[r])
	for j := range nodes {
		if j+1 < len(nodes) {
			spread(k, []int{nodes[j], nodes[j] + 1, nodes[j+1], nodes[j+1] + 1}, beam(steel, m.ys[j+1]-m.ys[j]))
		}
		length := 0.0
		if j > 0 {
			length += (m.ys[j] - m.ys[j-1]) / 2
		}
		if j+1 < len(nodes) {
			length += (m.ys[j+1] - m.ys[j]) / 2
		}
		for n, part := range [3]float64{0.25, 0.5, 0.25} {
			w, s := m.first[i+n-1][j], part*m.b.Bed*length
			switch m.state[[2]int{w, nodes[j]}] {
			case 1:
				s *= 1e-5
			case 2:
				f.SetVec(w, f.AtVec(w)-s*m.b.Slack)
				f.SetVec(nodes[j], f.AtVec(nodes[j])+s*m.b.Slack)
			}
			add(k, w, w, s)
			add(k, nodes[j], nodes[j], s)
			add(k, min(w, nodes[j]), max(w, nodes[j]), -s)
		}
	}
}

// rib stiffens an end against bending along the depth.
func (m *mesh) rib(k *mat.SymBandDense, i int) {
	for j := range len(m.ys) - 1 {
		a, b := m.first[i][j], m.first[i][j+1]
		spread(k, []int{a, a + 2, b, b + 2}, beam(1e11, m.ys[j+1]-m.ys[j]))
	}
}

// read finds the greatest tension across the grain on the upper side, at the middles of the
// elements' edges along x, and the droop.
func (m *mesh) read(x *mat.VecDense) (out Bent) {
	last := len(m.ys) - 1
	for i := range m.xs {
		out.Front = max(out.Front, x.AtVec(m.first[i][last]))
	}
	for i := range len(m.xs) - 1 {
		for j := range len(m.ys) - 1 {
			m.stress(x, i, j, &out)
		}
	}
	return out
}

// stress takes in an element's stress at its middle, where elements of this kind are most
// exact.
func (m *mesh) stress(x *mat.VecDense, i, j int, out *Bent) {
	a, b := m.xs[i+1]-m.xs[i], m.ys[j+1]-m.ys[j]
	mid := m.ys[j] + b/2
	n := bends(m.shapes(a, b), a/2, b/2)
	var bent [3]float64
	for r := range bent {
		for k, at := range m.corners(i, j) {
			bent[r] += n.At(r, k) * x.AtVec(at)
		}
	}
	d := m.b.stiffness(mid)
	t := m.b.thick(mid)
	// the front goes down: curved downwards, w,yy + with w down, and the upper side pulled
	if s := 6 * (d[1][0]*bent[0] + d[1][1]*bent[1]) / (t * t); s > out.Across {
		out.Across, out.At = s, [2]float64{m.xs[i] + a/2, mid}
	}
}
