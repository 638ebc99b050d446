package panel

import (
	"unicode/utf8"

	"ledgewright/engine/drawing"
	"ledgewright/wasm/app"
)

// The names of modules stand over or under them in the round, where they lie on nothing
// and on no other name; a module without such a place has none. The list beside the
// picture has them all.

// A nameSpot is a module in the picture: its name, the box about its boards, and where
// these begin and end above and below the middle of the box, where the name is.
type nameSpot struct {
	id, name    string
	box         drawing.Box
	over, under float64
}

// spotsOf finds the modules in a drawing that is shown at a scale.
func spotsOf(s *app.State, items []drawing.Item, scale float64) []nameSpot {
	out, at := modulesIn(s)
	for i := range items {
		if k, ok := at[items[i].Group]; ok {
			b := drawing.Bounds(items[i].Path)
			if o := &out[k].box; o.Width() > 0 || o.Height() > 0 {
				b = b.With(drawing.Point{X: o.MinX, Y: o.MinY}).With(drawing.Point{X: o.MaxX, Y: o.MaxY})
			}
			out[k].box = b
		}
	}
	for i := range out {
		n := &out[i]
		n.over, n.under = n.box.MinY, n.box.MaxY
	}
	for i := range items {
		if k, ok := at[items[i].Group]; ok {
			out[k].reach(items[i].Path, out[k].half()/scale)
		}
	}
	return out
}

// half is half the width of the name, in px.
func (n *nameSpot) half() float64 { return letterWide*float64(utf8.RuneCountInString(n.name))/2 + 2 }

// reach spreads over and under to the part of a face that lies within half of the middle.
func (n *nameSpot) reach(path []drawing.Step, half float64) {
	x := (n.box.MinX + n.box.MaxX) / 2
	var from, first drawing.Point
	for i, st := range path {
		to := st.P
		switch {
		case i == 0 || st.To == 'M':
			from, first = to, to
		case st.To == 'Z':
			to = first
		}
		for _, at := range [...]float64{x - half, x + half} {
			if (from.X < at) != (to.X < at) {
				y := from.Y + (to.Y-from.Y)*(at-from.X)/(to.X-from.X)
				n.over, n.under = max(n.over, y), min(n.under, y)
			}
		}
		if to.X >= x-half && to.X <= x+half {
			n.over, n.under = max(n.over, to.Y), min(n.under, to.Y)
		}
		from = to
	}
}

// modulesIn lists the modules in sight, and to which of them each board belongs.
func modulesIn(s *app.State) (out []nameSpot, at map[string]int) {
	at = map[string]int{}
	for _, id := range s.InSight() {
		for i := range s.Build.Modules {
			m := &s.Build.Modules[i]
			if m.ID != id {
				continue
			}
			for k := range m.Boards {
				at[m.Boards[k].ID] = len(out)
			}
			out = append(out, nameSpot{id: id, name: labelOf(s, id)})
		}
	}
	return out, at
}

// Sizes of a name on the screen, in px: of a letter, wide enough for most, and of the
// line; and how far it stands off.
const (
	letterWide = 7.5
	nameHigh   = 18.0
	nameOff    = 3.0
)

// names are the names of the modules, as many as have room.
func (r *round) names(s *app.State, c app.Camera) (out kids) {
	var taken []drawing.Box
	for i, n := range r.spots {
		x, over := c.Pixel((n.box.MinX+n.box.MaxX)/2, n.over, s.Size)
		_, under := c.Pixel(0, n.under, s.Size)
		half := n.half()
		for _, y := range [...]float64{over - nameOff - nameHigh, under + nameOff} {
			b := drawing.Box{MinX: x - half, MinY: y, MaxX: x + half, MaxY: y + nameHigh}
			if !r.free(s, c, b, i) || onAny(taken, b) {
				continue
			}
			taken = append(taken, b)
			mmX, mmY := c.X+(x-s.Size.Width/2)/c.Scale, c.Y-(y-s.Size.Height/2)/c.Scale
			out.add(el("span", "name-"+n.id, class("note name"), attr("aria-hidden=true"),
				set("--x", decimal(mmX)), set("--y", decimal(mmY)), text(n.name)))
			break
		}
	}
	return out
}

// free reports whether a box of the screen is in the picture, and on no other module.
func (r *round) free(s *app.State, c app.Camera, b drawing.Box, own int) bool {
	if b.MinX < nameOff || b.MinY < nameOff || b.MaxX > s.Size.Width-nameOff || b.MaxY > s.Size.Height-nameOff {
		return false
	}
	for i, n := range r.spots {
		x1, y1 := c.Pixel(n.box.MinX, n.box.MaxY, s.Size)
		x2, y2 := c.Pixel(n.box.MaxX, n.box.MinY, s.Size)
		if i != own && b.Meets(drawing.Box{MinX: x1, MinY: y1, MaxX: x2, MaxY: y2}) {
			return false
		}
	}
	return true
}

func onAny(all []drawing.Box, b drawing.Box) bool {
	for _, o := range all {
		if o.Meets(b) {
			return true
		}
	}
	return false
}
