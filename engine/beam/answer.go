package beam

// An Answer is what a case does to a frame.
type Answer struct {
	system *System
	load   *Case
	moves  [][6]float64
	starts []states // of the pieces, relative to what their beds move with
	holds  []Wrench // what the ground does to each node of the frame
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
	a := Answer{system: s, load: c, moves: make([][6]float64, len(s.rows)), starts: make([]states, len(s.mesh.pieces))}
	for n := range s.rows {
		for i, row := range s.rows[n] {
			if row >= 0 {
				a.moves[n][i] = x[row]
			}
		}
	}
	a.recover()
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
	b := m.turner(p)
	out = b.back(&f)
	if p.tie >= 0 {
		w := m.total(p, c, m.frame.Nodes[p.tie].At)
		for i, v := range w.sixth() {
			out[12+i] += v
		}
	}
	return out
}

// recover finds the states at the start of every piece, and what the ground does.
func (a *Answer) recover() {
	s := a.system
	a.holds = make([]Wrench, len(s.mesh.frame.Nodes))
	for i := range s.mesh.pieces {
		p := &s.mesh.pieces[i]
		x := a.movesOf(p)
		b := s.mesh.turner(p)
		d := b.on(&x)
		fixed := s.mesh.fixed(p, a.load)
		forces, kept := fixed, [12]float64{}
		p.forces(&forces, &kept)
		p.endsOf(&d, &kept)
		for row := range fixed {
			fixed[row] += product(p.stiff[row][:], d[:])
		}
		a.starts[i] = startOf(&d, &fixed)
		a.hold(p, &b, &fixed)
	}
	for _, l := range a.load.Nodes {
		w := &a.holds[l.Node]
		w.Force, w.Moment = w.Force.sub(l.Force), w.Moment.sub(l.Moment)
	}
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

// hold adds what the ends of a piece pull at their nodes with: the ground must do it. The
// forces on the ends are those that nodes exert on the piece.
func (a *Answer) hold(p *piece, b *turner, f *[12]float64) {
	out := b.back(f)
	if p.tie >= 0 {
		w := a.system.mesh.total(p, a.load, a.system.mesh.frame.Nodes[p.tie].At)
		for i, v := range w.sixth() {
			out[12+i] -= v
		}
		a.add(p.tie, out[12:18])
	}
	a.add(p.ends[0], out[0:6])
	a.add(p.ends[1], out[6:12])
}

// add adds to what the ground does to a node of the frame.
func (a *Answer) add(n int, f []float64) {
	if n < len(a.holds) {
		w := &a.holds[n]
		for i := range 3 {
			w.Force[i] += f[i]
			w.Moment[i] += f[i+3]
		}
	}
}

// Move returns how node n of the frame moves.
func (a *Answer) Move(n int) Motion {
	x := &a.moves[n]
	return Motion{Vec(x[:3]), Vec(x[3:])}
}

// Hold returns what the ground does to node n of the frame; rounding where it does nothing.
func (a *Answer) Hold(n int) Wrench { return a.holds[n] }

// A Cut is what passes through a section of a member, on the side that looks along its x,
// in its own axes, and how the section moves, in the axes of the frame.
type Cut struct {
	N, Vy, Vz, T, My, Mz float64
	Motion
}

// Along returns the cuts just before and just after the place x of a member; they differ
// where a load stands at x.
func (a *Answer) Along(member int, x float64) (before, after Cut) {
	m := a.system.mesh
	first, last := m.first[member], m.first[member+1]-1
	i := first
	for i < last && m.pieces[i].to < x {
		i++
	}
	before = a.cut(i, x, false)
	for i < last && m.pieces[i].to <= x {
		i++
	}
	return before, a.cut(i, x, true)
}

// cut returns the cut at x of the member on piece i.
func (a *Answer) cut(i int, x float64, over bool) Cut {
	m := a.system.mesh
	p := &m.pieces[i]
	s := &m.shapes[p.member]
	at := m.march(p, a.load, a.starts[i], min(x, s.length), over)
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
	_, start = a.Along(member, 0)
	finish, _ = a.Along(member, a.system.Length(member))
	return start, finish
}

// Length returns the length of a member between its ends.
func (s *System) Length(member int) float64 { return s.mesh.shapes[member].length }
