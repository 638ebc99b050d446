package view

// A branch is a node of a tree of planes: what lies in its plane, below it and above.
type branch struct {
	flat3
	on           []sheet
	below, above *branch
}

// grow3 builds a tree over faces; nil for none. Of the first few faces the plane that
// cuts fewest others is taken, then the one that halves them best.
func grow3(all []sheet) *branch {
	if len(all) == 0 {
		return nil
	}
	const tries = 6
	best, least := 0, 1<<30
	for i := range min(tries, len(all)) {
		k := i * len(all) / min(tries, len(all))
		if c := cost(all, all[k].flat3); c < least {
			best, least = k, c
		}
	}
	b := &branch{flat3: all[best].flat3}
	var below, above []sheet
	for i := range all {
		lo, hi := all[i].along(b.flat3)
		switch {
		case i == best || lo >= -apart3 && hi <= apart3:
			b.on = append(b.on, all[i])
		case hi <= apart3:
			below = append(below, all[i])
		case lo >= -apart3:
			above = append(above, all[i])
		default:
			l, h := all[i].cut(b.flat3)
			below, above = append(below, l...), append(above, h...)
		}
	}
	b.below, b.above = grow3(below), grow3(above)
	return b
}

// cost says how badly a plane divides faces.
func cost(all []sheet, f flat3) int {
	cut, side := 0, 0
	for i := range all {
		lo, hi := all[i].along(f)
		switch {
		case hi <= apart3:
			side--
		case lo >= -apart3:
			side++
		default:
			cut++
		}
	}
	return 8*cut + max(side, -side)
}

// along returns how far a face reaches below and above a plane.
func (s *sheet) along(f flat3) (lo, hi float64) {
	first := true
	for _, loop := range s.loops {
		for i := range loop {
			d := f.above(loop[i].spot)
			if first {
				lo, hi, first = d, d, false
			}
			lo, hi = min(lo, d), max(hi, d)
		}
	}
	return lo, hi
}

// cut returns what of a face lies below and above a plane: none or one face each.
func (s *sheet) cut(f flat3) (below, above []sheet) {
	if l, ok := s.clip(f, 1); ok {
		below = append(below, l)
	}
	if h, ok := s.clip(flat3{spot{}.plus(f.n, -1), -f.d}, 2); ok {
		above = append(above, h)
	}
	return below, above
}

// clip keeps what of a face lies below a plane. Each loop is clipped by itself; along the
// plane loops may then run back and forth over nothing, which fills nothing.
func (s *sheet) clip(f flat3, piece int) (sheet, bool) {
	out := *s
	out.loops = nil
	for _, loop := range s.loops {
		if r := clipLoop(loop, f); len(r) > 2 {
			out.loops = append(out.loops, r)
		}
	}
	out.piece = 2*max(s.piece, 1) + piece - 1
	lo, _ := out.along(f)
	return out, len(out.loops) > 0 && lo < -apart3
}

func clipLoop(loop []mark, f flat3) (out []mark) {
	for i, m := range loop {
		next := loop[(i+1)%len(loop)]
		a, b := f.above(m.spot), f.above(next.spot)
		if a <= 0 {
			out = append(out, m)
		}
		if (a > 0) != (b > 0) {
			out = append(out, mark{m.spot.plus(next.spot.minus(m.spot), a/(a-b)), m.seam || a <= 0})
		}
	}
	return out
}

// cutAll divides faces by a plane.
func cutAll(all []sheet, f flat3) (below, above []sheet) {
	for i := range all {
		lo, hi := all[i].along(f)
		switch {
		case hi <= apart3:
			below = append(below, all[i])
		case lo >= -apart3:
			above = append(above, all[i])
		default:
			l, h := all[i].cut(f)
			below, above = append(below, l...), append(above, h...)
		}
	}
	return below, above
}

// walk calls visit for the faces of a tree from back to front.
func (b *branch) walk(e *eye, visit func(*sheet)) {
	if b == nil {
		return
	}
	first, last := b.below, b.above
	if e.side(b.n, b.d) < 0 {
		first, last = last, first
	}
	first.walk(e, visit)
	for i := range b.on {
		visit(&b.on[i])
	}
	last.walk(e, visit)
}
