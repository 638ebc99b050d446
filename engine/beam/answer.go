package beam

// An Answer is what a case does to a frame.
type Answer struct {
	system *System
	load   *Case
	moves  [][6]float64
}

// Solve returns the answer to each case, or a *LoadError.
func (s *System) Solve(cases ...Case) ([]Answer, error) {
	out := make([]Answer, len(cases))
	for i := range cases {
		if err := s.mesh.check(&cases[i]); err != nil {
			return nil, err
		}
		out[i] = s.answer(&cases[i])
	}
	return out, nil
}

// answer solves for one case.
func (s *System) answer(c *Case) Answer {
	x := make([]float64, len(s.factors.top))
	for _, l := range c.Nodes {
		w := l.sixth()
		s.push(x, s.rows[l.Node][:], w[:], 1)
	}
	for i := range s.mesh.pieces {
		p := &s.mesh.pieces[i]
		f, rows := s.mesh.pushed(p, c), s.rowsOf(p)
		s.push(x, rows[:], f[:], 1)
	}
	s.factors.solve(x)
	a := Answer{system: s, load: c, moves: make([][6]float64, len(s.rows))}
	for n := range s.rows {
		for i, row := range s.rows[n] {
			if row >= 0 {
				a.moves[n][i] = x[row]
			}
		}
	}
	return a
}

// sixth returns the wrench as force and moment in a row.
func (w *Wrench) sixth() [6]float64 {
	return [6]float64{w.Force[0], w.Force[1], w.Force[2], w.Moment[0], w.Moment[1], w.Moment[2]}
}

// push adds forces to the rows that can move.
func (s *System) push(x []float64, rows []int, f []float64, sign float64) {
	for i, row := range rows {
		if row >= 0 {
			x[row] += sign * f[i]
		}
	}
}

// pushed returns what the loads on a piece do to its nodes and to what its bed moves with.
// Held relative to its bed the piece carries its loads to its ends; what the bed moves with
// is pushed by the loads as a whole, less what the ends take.
func (m *mesh) pushed(p *piece, c *Case) (out [18]float64) {
	if !c.loads(p.member) {
		return out
	}
	f := m.fixed(p, c)
	var kept [12]float64
	p.forces(&f, &kept)
	for i := range f {
		f[i] = -f[i]
	}
	out = p.turner.back(&f)
	if p.tie >= 0 {
		w := m.total(p, c, m.frame.Nodes[p.tie].At)
		for i, v := range w.sixth() {
			out[12+i] += v
		}
	}
	return out
}

// ends returns the motions of a piece's ends and the forces on them, in its own axes.
func (a *Answer) ends(p *piece) (d, f [12]float64) {
	m := a.system.mesh
	x := a.movesOf(p)
	d = p.turner.on(&x)
	f = m.fixed(p, a.load)
	if len(p.releases) > 0 {
		forces, kept := f, [12]float64{}
		p.forces(&forces, &kept)
		p.endsOf(&d, &kept)
	}
	for row := range f {
		f[row] += product(p.stiff[row][:], d[:])
	}
	return d, f
}

// movesOf returns the motions of the nodes of a piece.
func (a *Answer) movesOf(p *piece) (x [18]float64) {
	copy(x[:6], a.moves[p.ends[0]][:])
	copy(x[6:], a.moves[p.ends[1]][:])
	if p.tie >= 0 {
		copy(x[12:], a.moves[p.tie][:])
	}
	return x
}

// startOf returns the states at the start from the motions and the forces on the ends.
func startOf(d, f *[12]float64) (out states) {
	for n := range out {
		of := slots[n].of
		out[n].v, out[n].force = d[of[0]], -f[of[0]]
		if of[1] >= 0 {
			turns := slots[n].turns
			out[n].theta, out[n].moment = turns*d[of[1]], -turns*f[of[1]]
		}
	}
	return out
}

// Move returns how node n of the frame moves.
func (a *Answer) Move(n int) Motion {
	x := &a.moves[n]
	return Motion{Vec(x[:3]), Vec(x[3:])}
}

// Hold returns what the ground does to node n of the frame: what the pieces there need, less
// the loads on it. It is rounding where the ground does nothing.
func (a *Answer) Hold(n int) (w Wrench) {
	m := a.system.mesh
	for i := range m.pieces {
		p := &m.pieces[i]
		if n == p.ends[0] || n == p.ends[1] || n == p.tie {
			_, f := a.ends(p)
			w.gather(p, n, p.turner.back(&f))
			if n == p.tie {
				t := m.total(p, a.load, m.frame.Nodes[n].At)
				w.Force, w.Moment = w.Force.sub(t.Force), w.Moment.sub(t.Moment)
			}
		}
	}
	for _, l := range a.load.Nodes {
		if l.Node == n {
			w.Force, w.Moment = w.Force.sub(l.Force), w.Moment.sub(l.Moment)
		}
	}
	return w
}

// gather adds the forces on a piece that node n exerts.
func (w *Wrench) gather(p *piece, n int, f [18]float64) {
	for at, node := range [...]int{p.ends[0], p.ends[1], p.tie} {
		if node == n {
			w.Force = w.Force.add(Vec(f[6*at : 6*at+3]))
			w.Moment = w.Moment.add(Vec(f[6*at+3 : 6*at+6]))
		}
	}
}

// A Cut is what passes through a section of a member, on the side that looks along its x,
// in its own axes, and how the section moves, in the axes of the frame.
type Cut struct {
	N, Vy, Vz, T, My, Mz float64
	Motion
}

// Along returns the cuts just before and just after the place x of a member; they differ
// where a load stands at x.
func (a *Answer) Along(member int, x float64) (before, after Cut) {
	return a.Before(member, x), a.After(member, x)
}

// Before returns the cut just before the place x of a member.
func (a *Answer) Before(member int, x float64) Cut {
	m := a.system.mesh
	i := m.first[member]
	for i < m.first[member+1]-1 && m.pieces[i].to < x {
		i++
	}
	return a.cut(i, x, false)
}

// After returns the cut just after the place x of a member.
func (a *Answer) After(member int, x float64) Cut {
	m := a.system.mesh
	i := m.first[member]
	for i < m.first[member+1]-1 && m.pieces[i].to <= x {
		i++
	}
	return a.cut(i, x, true)
}

// cut returns the cut at x of the member on piece i.
func (a *Answer) cut(i int, x float64, over bool) Cut {
	m := a.system.mesh
	p := &m.pieces[i]
	s := &m.shapes[p.member]
	d, f := a.ends(p)
	at := m.march(p, a.load, startOf(&d, &f), min(x, s.length), over)
	c := Cut{
		N: at[pull].force, Vy: at[bendY].force, Vz: at[bendZ].force,
		T: at[twist].force, My: -at[bendZ].moment, Mz: at[bendY].moment,
	}
	c.Shift = s.axes.global(Vec{at[pull].v, at[bendY].v, at[bendZ].v})
	c.Turn = s.axes.global(Vec{at[twist].v, -at[bendZ].theta, at[bendY].theta})
	if p.tie >= 0 {
		base := a.Move(p.tie).At(s.at(x).sub(m.frame.Nodes[p.tie].At))
		c.Shift, c.Turn = c.Shift.add(base.Shift), c.Turn.add(base.Turn)
	}
	return c
}

// Ends returns the cuts just after the start of a member and just before its finish.
func (a *Answer) Ends(member int) (start, finish Cut) {
	return a.After(member, 0), a.Before(member, a.system.Length(member))
}

// Length returns the length of a member between its ends.
func (s *System) Length(member int) float64 { return s.mesh.shapes[member].length }
