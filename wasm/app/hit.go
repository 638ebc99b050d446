package app

import (
	"cmp"
	"math"
	"slices"

	"ledgewright/engine/module"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// hitReach is the radius of a finger, in pixels: what lies within it is under it.
const hitReach = 22

// moduleAt returns the topmost module under a pixel, or nothing.
func (s *State) moduleAt(px, py float64) string {
	x, y := s.Camera.mm(px, py, s.Size)
	if under := s.modulesAt(x, y); len(under) > 0 {
		return under[0]
	}
	return ""
}

// modulesAt returns the modules within a finger of a place on the wall: those with a
// board under it, later modules before earlier ones; then those whose box is in reach,
// the one with the nearest wood first.
func (s *State) modulesAt(x, y float64) (ids []string) {
	_, b := s.Shown()
	reach := s.Camera.reach(hitReach)
	at := module.XY{X: unit.Nearest(x), Y: unit.Nearest(y)}
	type beside struct {
		id  string
		far float64
	}
	var near []beside
	for _, r := range b.Arrangements {
		if r.Arrangement != s.Arrangement {
			continue
		}
		for _, p := range slices.Backward(r.Placed) {
			switch {
			case onBoard(p, at):
				ids = append(ids, p.Module)
			case inBox(p.Box, at, reach):
				near = append(near, beside{p.Module, fromWood(p, at)})
			}
		}
	}
	rank.By(near, func(a, b beside) int { return cmp.Compare(a.far, b.far) })
	for _, n := range near {
		ids = append(ids, n.id)
	}
	return ids
}

// fromWood returns the distance, in mm, of a place from the nearest edge of a module's
// boards.
func fromWood(p wall.Placed, at module.XY) float64 {
	far := math.Inf(1)
	for _, o := range p.Outlines {
		for i, a := range o.Points {
			far = min(far, fromEdge(a, o.Points[(i+1)%len(o.Points)], at))
		}
	}
	return far
}

// fromEdge returns the distance of a place from the line between two others: from its
// foot on that line, or from the end that it lies beyond.
func fromEdge(a, b, at module.XY) float64 {
	dx, dy := (b.X - a.X).MM(), (b.Y - a.Y).MM()
	x, y := (at.X - a.X).MM(), (at.Y - a.Y).MM()
	if long := dx*dx + dy*dy; long > 0 {
		along := min(max((x*dx+y*dy)/long, 0), 1)
		x, y = x-along*dx, y-along*dy
	}
	return math.Hypot(x, y)
}

func inBox(b module.Box, at module.XY, reach unit.Length) bool {
	return at.X >= b.MinX-reach && at.X <= b.MaxX+reach && at.Y >= b.MinY-reach && at.Y <= b.MaxY+reach
}

func onBoard(p wall.Placed, at module.XY) bool {
	for _, o := range p.Outlines {
		if inside(o.Points, at) {
			return true
		}
	}
	return false
}

// inside counts the edges of a polygon to the right of a place.
func inside(points []module.XY, at module.XY) bool {
	in := false
	for i, a := range points {
		b := points[(i+1)%len(points)]
		if (a.Y > at.Y) != (b.Y > at.Y) {
			x := a.X.MM() + (at.Y-a.Y).MM()*(b.X-a.X).MM()/(b.Y-a.Y).MM()
			if x > at.X.MM() {
				in = !in
			}
		}
	}
	return in
}

// thingAt returns the obstacle, stud or line under a place on bare wall.
func (s *State) thingAt(x, y float64) Thing {
	w, ok := s.Plan.Wall(s.Wall)
	if !ok {
		return Thing{}
	}
	ux, uy, reach := unit.Nearest(x), unit.Nearest(y), s.Camera.reach(hitReach)/2
	for _, o := range w.Obstacles {
		if inBox(module.Box{MinX: o.X, MinY: o.Y, MaxX: o.X + o.Width, MaxY: o.Y + o.Height}, module.XY{X: ux, Y: uy}, reach) {
			return Thing{Kind: "obstacle", Owner: w.ID, ID: o.ID}
		}
	}
	a, _ := s.Plan.Arrangement(s.Arrangement)
	for _, l := range a.Lines {
		if (l.Height - uy).Abs() <= reach {
			return Thing{Kind: "line", Owner: a.ID, ID: l.ID}
		}
	}
	for i, st := range w.Studs.Each {
		if (st.X - ux).Abs() <= reach {
			return Thing{Kind: "stud", Owner: w.ID, Index: i + 1}
		}
	}
	return Thing{}
}
