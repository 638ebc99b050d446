package drawing

import (
	"math"

	"ledgewright/engine/rank"
)

// wood writes a face of wood: fill, grain, outline.
func (w *writer) wood(i int, it *Item) {
	look := find(w.o.Woods, it.Wood.Species)
	fill, line := woodInk(look, it.Wood, w.o.Theme)
	w.start("path").id(it.ID).str("d", w.steps(it.Path)).str("fill", fill.String())
	if !w.hasGrain(i) {
		w.stroke(it.Line)
		w.fade(it.Fade)
		w.leaf(it.ID)
		return
	}
	w.fade(it.Fade)
	w.leaf(it.ID)
	g := Grain(look, it.Wood, it.Path, w.pixel()/w.o.Scale)
	w.strands(g.Bold, line, g.BoldWidth, g.BoldStrength*(1-it.Fade))
	w.strands(g.Fine, line, g.FineWidth, g.FineStrength*(1-it.Fade))
	w.strands(g.Pores, line, g.FineWidth, g.PoreInk*(1-it.Fade))
	if it.Line.Width > 0 {
		w.start("path").str("d", w.steps(it.Path)).str("fill", "none")
		w.stroke(it.Line)
		w.leaf("")
	}
}

func (w *writer) hasGrain(i int) bool {
	if w.grained == nil {
		return w.o.Grain < 0
	}
	return w.grained[i]
}

// largest picks the faces that get their grain, by area in the picture, the earlier
// one first where two are equal. It returns nil where the answer is all or none.
func largest(items []Item, n int) map[int]bool {
	if n <= 0 {
		return nil
	}
	type big struct {
		i    int
		area float64
	}
	var all []big
	for i := range items {
		if items[i].Kind == WoodKind {
			all = append(all, big{i, area(items[i].Path)})
		}
	}
	rank.By(all, func(a, b big) int {
		switch {
		case a.area > b.area:
			return -1
		case a.area < b.area:
			return 1
		}
		return 0
	})
	chosen := map[int]bool{}
	for _, b := range all[:min(n, len(all))] {
		chosen[b.i] = true
	}
	return chosen
}

// area returns the area of a polygon, rounded so that equal faces are equal.
func area(path []Step) float64 {
	sum := 0.0
	var last, first Point
	for i, s := range path {
		if s.To == 'Z' {
			continue
		}
		if i == 0 {
			first, last = s.P, s.P
		}
		sum += float64(last.X*s.P.Y) - float64(last.Y*s.P.X)
		last = s.P
	}
	sum += float64(last.X*first.Y) - float64(last.Y*first.X)
	return math.Round(math.Abs(sum) / 2)
}

// strands writes lines of one weight as one path, in hundredths of a unit and relative
// steps, so that a wall with all its grain stays a file of ordinary size.
func (w *writer) strands(lines [][]Point, ink rgb, width, strength float64) {
	if len(lines) == 0 || strength <= 0 {
		return
	}
	b := w.buf[:0]
	for _, line := range lines {
		b = w.strand(b, line)
	}
	w.buf = b
	w.start("path").str("d", string(b)).str("fill", "none").str("stroke", ink.String())
	w.num("stroke-width", width*w.o.Scale).num("stroke-opacity", strength)
	w.leaf("")
}

func (w *writer) strand(b []byte, line []Point) []byte {
	const scale = 100
	px, py := quantum(w.x(line[0].X), scale), quantum(w.y(line[0].Y), scale)
	b = append(b, 'M')
	b = appendScaled(b, px, 2)
	b = spaced(b, py)
	command := true
	for _, p := range line[1:] {
		x, y := quantum(w.x(p.X), scale), quantum(w.y(p.Y), scale)
		if x == px && y == py {
			continue
		}
		if command {
			b, command = append(b, 'l'), false
			b = appendScaled(b, x-px, 2)
		} else {
			b = spaced(b, x-px)
		}
		b = spaced(b, y-py)
		px, py = x, y
	}
	return b
}

// spaced appends a number after another one; a minus sign keeps them apart by itself.
func spaced(b []byte, n int64) []byte {
	if n >= 0 {
		b = append(b, ' ')
	}
	return appendScaled(b, n, 2)
}
