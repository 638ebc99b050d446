package beam

// A turner leads from the motions of a piece's nodes, and of what its bed moves with, to the
// motions of its ends in its own axes.
type turner [12][18]float64

// turner returns the matrix of p.
func (m *mesh) turner(p *piece) (b turner) {
	r := &m.shapes[p.member].axes
	for end := range 2 {
		b.place(r, 6*end, 6*end, p.arms[end], 1)
		if p.tie >= 0 {
			b.place(r, 6*end, 12, p.tieArms[end], -1)
		}
	}
	return b
}

// place writes the motion at the end of arm of the node whose freedoms begin at column:
// shift + turn × arm, and turn.
func (b *turner) place(r *axes, row, column int, arm Vec, sign float64) {
	for i := range 3 {
		lever := arm.cross(r[i]) // (turn × arm)·r = turn·(arm × r)
		for j := range 3 {
			b[row+i][column+j] += sign * r[i][j]
			b[row+i][column+3+j] += sign * lever[j]
			b[row+3+i][column+3+j] += sign * r[i][j]
		}
	}
}

// on returns the motions of the ends.
func (b *turner) on(x *[18]float64) (d [12]float64) {
	for i := range d {
		d[i] = product(b[i][:], x[:])
	}
	return d
}

// back returns the forces on the nodes that stand for forces on the ends.
func (b *turner) back(f *[12]float64) (out [18]float64) {
	for i, v := range f {
		if v == 0 {
			continue
		}
		for j := range out {
			out[j] += float64(b[i][j] * v)
		}
	}
	return out
}

// stiffness returns the stiffness of the piece for the motions of its nodes, bᵀ k b. Both k
// and b are mostly zeros, which are passed by.
func (p *piece) stiffness() (out [18][18]float64) {
	b := &p.turner
	k := p.soft()
	width := 12
	if p.tie >= 0 {
		width = 18
	}
	for i := range 12 {
		var row [18]float64
		for l, v := range k[i] {
			if v != 0 {
				addScaled(row[:width], v, b[l][:width])
			}
		}
		for a, v := range b[i][:width] {
			if v != 0 {
				addScaled(out[a][:width], v, row[:width])
			}
		}
	}
	return out
}

// addScaled adds v times x to sum.
func addScaled(sum []float64, v float64, x []float64) {
	x = x[:len(sum)]
	for i := range sum {
		sum[i] += float64(v * x[i])
	}
}
