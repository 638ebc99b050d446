package beam

// A release is a freedom of an end that a spring, or nothing, joins to its node: the row of
// the stiffness when it was let go.
type release struct {
	freedom int
	row     [12]float64
	spring  float64
	pivot   float64 // row[freedom] + spring
}

// release lists what the springs let go, one after the other: with the end of the member at
// u and its node at n, a spring k gives k (n − u) = row·u + f, from which u follows.
func (p *piece) release(name string) error {
	k := p.stiff
	for i, s := range p.springs {
		if !s.Free && s.Stiffness <= 0 {
			continue
		}
		r := release{freedom: i, row: k[i]}
		if !s.Free {
			r.spring = s.Stiffness
		}
		r.pivot = k[i][i] + r.spring
		if !(r.pivot > p.stiff[i][i]*leastPivot) {
			return &MemberError{Member: p.member, Name: name, What: Unstrung}
		}
		r.soften(&k)
		p.releases = append(p.releases, r)
	}
	return nil
}

// soften turns the freedom of the member's end in k into that of its node.
func (r *release) soften(k *[12][12]float64) {
	i := r.freedom
	for a := range 12 {
		for b := range 12 {
			if a != i && b != i {
				k[a][b] -= float64(r.row[a] * r.row[b] / r.pivot)
			}
		}
	}
	for a := range 12 {
		share := r.row[a] * r.spring / r.pivot
		k[a][i], k[i][a] = share, share
	}
	k[i][i] = r.row[i] * r.spring / r.pivot
}

// forces turns the forces that hold the loaded member still into those that hold its nodes
// still, and keeps in kept what each release had to give.
func (p *piece) forces(f *[12]float64, kept *[12]float64) {
	for n := range p.releases {
		r := &p.releases[n]
		i := r.freedom
		kept[n] = f[i]
		share := f[i] / r.pivot
		for a := range 12 {
			if a != i {
				f[a] -= float64(r.row[a] * share)
			}
		}
		f[i] = r.spring * share
	}
}

// ends turns the motions of the nodes into those of the member's ends, last release first.
func (p *piece) endsOf(d *[12]float64, kept *[12]float64) {
	for n := len(p.releases) - 1; n >= 0; n-- {
		r := &p.releases[n]
		i := r.freedom
		push := r.spring*d[i] - kept[n]
		for a := range 12 {
			if a != i {
				push -= float64(r.row[a] * d[a])
			}
		}
		d[i] = push / r.pivot
	}
}

// soft returns the stiffness of the piece between its nodes, in its own axes.
func (p *piece) soft() [12][12]float64 {
	k := p.stiff
	for n := range p.releases {
		p.releases[n].soften(&k)
	}
	return k
}
