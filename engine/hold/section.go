package hold

import (
	"slices"

	"ledgewright/engine/beam"
	"ledgewright/engine/board"
	"ledgewright/engine/strength"
	"ledgewright/engine/unit"
)

// A Section is what is left of a board at one place: the rectangle less the cuts there.
type Section struct {
	Area float64 // mm²
	// Flat is the second moment, mm⁴, about the axis across the board (bending up and down
	// of a level board), Deep about the axis through its thickness.
	Flat, Deep float64
	// Least is the smallest thickness of wood left anywhere across the width.
	Least float64
	// High is the greatest distance from the centre to the wood's edge in w, for stress.
	High float64
	// Torsion is that of a rectangle of the least thickness.
	Torsion float64
}

// beam returns the section for a frame whose y runs through the thickness.
func (s Section) beam() beam.Section {
	return beam.Section{A: s.Area, Iz: s.Flat, Iy: s.Deep, J: s.Torsion, Ay: s.Area * 5 / 6, Az: s.Area * 5 / 6}
}

// A cell is a rectangle of the section, v across the board and w through it.
type cell struct{ v0, v1, w0, w1 float64 }

// sectionAt returns what is left of a board at u. Cuts that lean are taken with the whole
// of their extent along w.
func sectionAt(b *board.Board, u unit.Length) Section {
	var cuts []cell
	for i := range b.Features {
		if c, ok := cutAt(b, &b.Features[i], u); ok {
			cuts = append(cuts, c)
		}
	}
	return left(b.Width.MM(), b.Thickness.MM(), cuts)
}

// cutAt returns what a feature takes out of the section at u, and whether it does.
func cutAt(b *board.Board, f *board.Feature, u unit.Length) (cell, bool) {
	along, across, depth := f.Along/2, f.Across.MM()/2, f.Depth.MM()
	if f.Diameter > 0 {
		along, across = f.Diameter/2, f.Diameter.MM()/2
	}
	if (u - f.Mouth.U).Abs() > along {
		return cell{}, false
	}
	v, w, t, width := f.Mouth.V.MM(), f.Mouth.W.MM(), b.Thickness.MM(), b.Width.MM()
	switch f.Enter {
	case board.FaceA:
		return cell{v - across, v + across, 0, depth}, true
	case board.FaceB:
		return cell{v - across, v + across, t - depth, t}, true
	case board.Back:
		return cell{0, depth, w - across, w + across}, true
	case board.Front:
		return cell{width - depth, width, w - across, w + across}, true
	}
	return cell{}, false
}

// left returns the section of a rectangle less the cuts, which may overlap: the lines of all
// cuts divide it into cells, each either wood or not.
func left(width, thickness float64, cuts []cell) Section {
	vs, ws := []float64{0, width}, []float64{0, thickness}
	for i := range cuts {
		vs = append(vs, within(cuts[i].v0, width), within(cuts[i].v1, width))
		ws = append(ws, within(cuts[i].w0, thickness), within(cuts[i].w1, thickness))
	}
	slices.Sort(vs)
	slices.Sort(ws)
	var cells []cell
	s := Section{Least: thickness}
	for i := range len(vs) - 1 {
		if vs[i+1] <= vs[i] {
			continue
		}
		wood := 0.0
		for j := range len(ws) - 1 {
			c := cell{vs[i], vs[i+1], ws[j], ws[j+1]}
			if c.w1 > c.w0 && !taken(cuts, (c.v0+c.v1)/2, (c.w0+c.w1)/2) {
				cells = append(cells, c)
				wood += c.w1 - c.w0
			}
		}
		s.Least = min(s.Least, wood)
	}
	s.sum(cells)
	s.Torsion = strength.RectangleTorsion(width, max(s.Least, leastWood))
	return s
}

// leastWood keeps a board that is cut through, which other rooms refuse, from having no
// stiffness at all. mm.
const leastWood = 0.1

func within(x, limit float64) float64 { return min(max(x, 0), limit) }

func taken(cuts []cell, v, w float64) bool {
	return slices.ContainsFunc(cuts, func(c cell) bool { return v > c.v0 && v < c.v1 && w > c.w0 && w < c.w1 })
}

// sum fills area and second moments about the centre of the cells.
func (s *Section) sum(cells []cell) {
	var v, w float64
	for _, c := range cells {
		a := (c.v1 - c.v0) * (c.w1 - c.w0)
		s.Area += a
		v += a * (c.v0 + c.v1) / 2
		w += a * (c.w0 + c.w1) / 2
	}
	s.Area = max(s.Area, leastWood)
	v, w = v/s.Area, w/s.Area
	for _, c := range cells {
		dv, dw := c.v1-c.v0, c.w1-c.w0
		a := dv * dw
		cv, cw := (c.v0+c.v1)/2-v, (c.w0+c.w1)/2-w
		s.Flat += a * (dw*dw/12 + cw*cw)
		s.Deep += a * (dv*dv/12 + cv*cv)
		s.High = max(s.High, c.w1-w, w-c.w0)
	}
	s.Flat, s.Deep = max(s.Flat, leastWood), max(s.Deep, leastWood)
}
