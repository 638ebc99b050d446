package view_test

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

const mm = unit.Millimetre

// chain builds a mitred chain of boards of one thickness, walked from the origin along x:
// a slow twin of what package module does, so that pictures do not depend on it.
func chain(id, wood string, depth, t unit.Length, lengths []unit.Length, turns []unit.Angle, closed bool) module.Result {
	m := module.Result{ID: id, Depth: depth}
	n := len(lengths)
	lead := func(turn unit.Angle) float64 { return t.MM() * math.Tan(math.Abs(turn.Degrees())*math.Pi/360) }
	var x, y float64
	var dir unit.Angle
	for i, l := range lengths {
		var s, e [2]float64 // u on faces A and B
		e = [2]float64{l.MM(), l.MM()}
		if i > 0 || closed {
			turn := turns[(i+n-1)%n]
			s[inner(turn)] = lead(turn)
		}
		if i < len(turns) {
			e[inner(turns[i])] -= lead(turns[i])
		}
		sin, cos := dir.SinCos()
		if i > 0 { // the A points of the two mitres meet
			x, y = x-s[0]*cos, y-s[0]*sin
		} else {
			x, y = -s[0], 0
		}
		b := board.Board{
			ID: id + "." + string(rune('1'+i)), Role: board.Chain, Wood: wood, Length: l, Width: depth, Thickness: t,
			Frame: board.Frame{X: unit.Nearest(x), Y: unit.Nearest(y), Dir: dir.Turn()},
			Features: []board.Feature{
				{Kind: board.EndCut, Enter: board.Start, AtA: unit.Nearest(s[0]), AtB: unit.Nearest(s[1])},
				{Kind: board.EndCut, Enter: board.End, AtA: unit.Nearest(e[0]), AtB: unit.Nearest(e[1])},
			},
		}
		m.Boards = append(m.Boards, b)
		x, y = x+e[0]*cos, y+e[0]*sin
		if i < len(turns) {
			dir += turns[i]
		}
	}
	outlines(&m)
	return m
}

// inner is the face on the side turned to: A for a turn to the left.
func inner(turn unit.Angle) int {
	if turn > 0 {
		return 0
	}
	return 1
}

// outlines fills in the outlines, the box and the pivot.
func outlines(m *module.Result) {
	first := true
	for _, b := range m.Boards {
		o := module.Outline{Board: b.ID}
		for _, q := range b.Outline() {
			xy := module.XY{X: q[0], Y: q[1]}
			o.Points = append(o.Points, xy)
			if first {
				m.Box, first = module.Box{MinX: xy.X, MinY: xy.Y, MaxX: xy.X, MaxY: xy.Y}, false
			}
			m.Box.MinX, m.Box.MaxX = min(m.Box.MinX, xy.X), max(m.Box.MaxX, xy.X)
			m.Box.MinY, m.Box.MaxY = min(m.Box.MinY, xy.Y), max(m.Box.MaxY, xy.Y)
		}
		m.Outlines = append(m.Outlines, o)
	}
	m.Pivot = module.XY{X: (m.Box.MinX + m.Box.MaxX) / 2, Y: (m.Box.MinY + m.Box.MaxY) / 2}
}

const (
	left  = 90 * unit.Degree
	right = -90 * unit.Degree
)

// corner is a reading corner in white oak, 34 × 220, on a wall of 2 960 × 2 460 with a
// window.
func corner() (plan.Wall, wall.Result, []module.Result) {
	w := plan.Wall{
		ID: "w1", Name: "Window wall", Width: 2960 * mm, Height: 2460 * mm, Build: plan.BuildStuds, CableRule: "uk",
		Studs: plan.Studs{Width: document.Some(45 * mm), State: plan.EdgesFound},
		Obstacles: []plan.Obstacle{
			{ID: "o1", Kind: plan.Window, X: 2040 * mm, Y: 860 * mm, Width: 740 * mm, Height: 1240 * mm},
			{ID: "o2", Kind: plan.Radiator, X: 2120 * mm, Y: 140 * mm, Width: 580 * mm, Height: 560 * mm},
			{ID: "o3", Kind: plan.Socket, X: 1857 * mm, Y: 257 * mm, Width: 146 * mm, Height: 86 * mm},
			{ID: "o4", Kind: plan.Furniture, X: 380 * mm, Y: 0, Width: 710 * mm, Height: 880 * mm},
		},
	}
	for _, x := range []unit.Length{128, 534, 941, 1347, 1754, 2015, 2805} {
		state := plan.EdgesFound
		if x == 2015 {
			state = plan.Guess
		}
		w.Studs.Each = append(w.Studs.Each, plan.Stud{X: x * mm, State: state})
	}
	modules := []module.Result{
		chain("m1", "white-oak", 220*mm, 34*mm, []unit.Length{360 * mm, 930 * mm}, []unit.Angle{left}, false),
		chain("m2", "white-oak", 220*mm, 34*mm, []unit.Length{460 * mm, 340 * mm, 460 * mm, 340 * mm}, []unit.Angle{left, left, left, left}, true),
		chain("m3", "white-oak", 220*mm, 34*mm, []unit.Length{700 * mm, 300 * mm, 674 * mm}, []unit.Angle{left, right}, false),
		chain("m4", "white-oak", 220*mm, 34*mm, []unit.Length{210 * mm, 540 * mm, 210 * mm}, []unit.Angle{left, left}, false),
	}
	modules[0].Strips = strip(&modules[0], 1, board.FaceB)
	modules[1].Strips = strip(&modules[1], 2, board.FaceA)
	modules[2].Strips = append(strip(&modules[2], 0, board.FaceB), strip(&modules[2], 2, board.FaceB)...)
	poses := []plan.Pose{
		{Module: "m1", X: 715 * mm, Y: 1970 * mm, Turn: 270 * unit.Degree},
		{Module: "m2", X: 1691 * mm, Y: 1960 * mm},
		{Module: "m3", X: 970 * mm, Y: 1370 * mm},
		{Module: "m4", X: 1560 * mm, Y: 975 * mm, Turn: 270 * unit.Degree},
	}
	r := wall.Result{Wall: "w1", Level: 1790 * mm, Plumb: 250 * mm, Nearest: []wall.Clearance{{Module: "m2", To: "o1", Gap: 119 * mm}}}
	for i, p := range poses {
		r.Placed = append(r.Placed, wall.Place(modules[i], p))
	}
	stud := wall.Structure{Kind: wall.InStud, State: plan.EdgesFound}
	for i, q := range []struct {
		m    string
		x, y unit.Length
		in   wall.Structure
	}{
		{"m1", 534, 1807, stud}, {"m1", 941, 1807, stud}, {"m2", 1564, 1807, wall.Structure{Kind: wall.InLining}},
		{"m2", 1754, 1807, stud}, {"m3", 534, 1237, stud}, {"m3", 941, 1237, stud}, {"m3", 1347, 1503, stud},
		{"m4", 1347, 887, stud}, {"m4", 1754, 887, wall.Structure{Kind: wall.InUnknown}},
	} {
		n := string(rune('1' + i))
		r.Points = append(r.Points, wall.Point{Number: n, Module: q.m, Bracket: "b" + n, What: "rod", X: q.x * mm, Y: q.y * mm, In: q.in, Drill: 12 * mm, DX: (q.x - 250) * mm, DY: (q.y - 1790) * mm})
	}
	return w, r, modules
}

// strip runs along a face of a board, 30 mm from the front, 40 mm from the ends.
func strip(m *module.Result, i int, f board.Face) []board.Strip {
	b := &m.Boards[i]
	from, to := b.On(f)
	var w unit.Length
	if f == board.FaceB {
		w = b.Thickness
	}
	return []board.Strip{{Light: "l" + b.ID, Runs: []board.StripRun{{
		Board: b.ID, Face: f,
		From: board.Point{U: from + 40*mm, V: b.Width - 30*mm, W: w}, To: board.Point{U: to - 40*mm, V: b.Width - 30*mm, W: w},
	}}}}
}
