package beam

import (
	"cmp"
	"math"

	"ledgewright/engine/rank"
)

// A System is a frame made ready to be loaded: its stiffness, factored.
type System struct {
	mesh    *mesh
	rows    [][6]int // of each node's freedoms in the equations; -1: held rigidly
	factors *skyline
}

// Ready factors the stiffness of the frame. It returns a *MemberError or *NodeError for what
// cannot be, and *Loose for a mechanism. The frame must not change afterwards.
func (f *Frame) Ready() (*System, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	m, err := meshOf(f)
	if err != nil {
		return nil, err
	}
	s := &System{mesh: m}
	count := s.number()
	s.factors = skylineOf(s.tops(count))
	s.assemble()
	if bad := s.factors.factor(); bad >= 0 {
		return nil, s.loose(bad)
	}
	return s, nil
}

// number gives each freedom that can move its row, and returns how many there are.
func (s *System) number() (count int) {
	s.rows = make([][6]int, len(s.mesh.places))
	for _, n := range s.mesh.order() {
		for i := range 6 {
			s.rows[n][i] = -1
			if n >= len(s.mesh.frame.Nodes) || !s.mesh.frame.Nodes[n].Hold[i].Rigid {
				s.rows[n][i] = count
				count++
			}
		}
	}
	return count
}

// rowsOf returns the rows of the freedoms of a piece: of its two ends and of what its bed
// moves with.
func (s *System) rowsOf(p *piece) (rows [18]int) {
	copy(rows[:6], s.rows[p.ends[0]][:])
	copy(rows[6:], s.rows[p.ends[1]][:])
	for i := 12; i < 18; i++ {
		rows[i] = -1
		if p.tie >= 0 {
			rows[i] = s.rows[p.tie][i-12]
		}
	}
	return rows
}

// tops returns where each column of the stiffness begins.
func (s *System) tops(count int) []int {
	top := make([]int, count)
	for j := range top {
		top[j] = j
	}
	for n := range s.rows {
		rise(top, s.rows[n][:])
	}
	for i := range s.mesh.pieces {
		rows := s.rowsOf(&s.mesh.pieces[i])
		rise(top, rows[:])
	}
	return top
}

// rise raises the tops of the columns that meet.
func rise(top, rows []int) {
	least := math.MaxInt
	for _, r := range rows {
		if r >= 0 {
			least = min(least, r)
		}
	}
	for _, r := range rows {
		if r >= 0 {
			top[r] = min(top[r], least)
		}
	}
}

// assemble sums the stiffness of the pieces and of what holds the nodes.
func (s *System) assemble() {
	for i := range s.mesh.pieces {
		p := &s.mesh.pieces[i]
		k := p.stiffness()
		rows := s.rowsOf(p)
		for a, row := range rows {
			for b, column := range rows {
				if row >= 0 && column >= row {
					*s.factors.at(row, column) += k[a][b]
				}
			}
		}
	}
	for n := range s.mesh.frame.Nodes {
		for i, h := range s.mesh.frame.Nodes[n].Hold {
			if row := s.rows[n][i]; row >= 0 {
				*s.factors.at(row, row) += h.Stiffness
			}
		}
	}
}

// loose says what moves when the pivot of a row has vanished: with l the column of the row
// in L, Lᵀ x = −l and 1 in the row itself is a motion without resistance.
func (s *System) loose(bad int) *Loose {
	column := s.factors.column(bad)
	x := make([]float64, bad+1)
	for i, v := range column[:len(column)-1] {
		x[s.factors.top[bad]+i] = -v
	}
	s.factors.back(x[:bad])
	x[bad] = 1
	return s.moving(x)
}

// moving lists the nodes that x moves, those that move most first.
func (s *System) moving(x []float64) *Loose {
	f := s.mesh.frame
	most := make([]float64, len(f.Nodes))
	way := make([]int, len(f.Nodes))
	e := &Loose{}
	peak := 0.0
	for n := range f.Nodes {
		for i, row := range s.rows[n] {
			if row >= 0 && row < len(x) && math.Abs(x[row]) > most[n] {
				most[n], way[n] = math.Abs(x[row]), i
			}
		}
		peak = max(peak, most[n])
	}
	for n := range f.Nodes {
		if most[n] > peak*1e-6 {
			e.Nodes = append(e.Nodes, n)
		}
	}
	rank.By(e.Nodes, func(a, b int) int { return cmp.Compare(most[b], most[a]) })
	for _, n := range e.Nodes {
		e.Names = append(e.Names, f.Nodes[n].Name)
	}
	e.Way = way[e.Nodes[0]]
	return e
}
