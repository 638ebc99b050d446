// Package house holds the shelves of the house at the weir, the invented house of the
// examples, room by room.
//
// Every room is a function that says what was decided, in the words of a maker: this
// wall, these boards, hung so that the box stands from here, its rods on these studs.
// Figures along a board follow from places on the wall once, here, and are then
// decisions like any other.
package house

import (
	"fmt"

	"ledgewright/engine/document"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// Short names for the rooms.
const (
	mm    = unit.Millimetre
	inch  = unit.Inch
	left  = unit.QuarterTurn  // a turn to the left
	right = -unit.QuarterTurn // a turn to the right
	down  = unit.HalfTurn + unit.QuarterTurn
)

// A Job is one example.
type Job struct {
	Name string
	Plan plan.Plan
}

// A draft is a plan in the making. It panics on a mistake of this package.
type draft struct {
	plan.Plan
}

// begin starts the plan of a room.
func begin(system unit.System, number, title, note string) *draft {
	d := &draft{plan.New(system)}
	d.Job = plan.Job{Number: number, Title: title, Date: "2026-10-05", Note: note}
	return d
}

// next gives an id.
func (d *draft) next(l plan.Letter) (id string) {
	id, d.Counters = d.Counters.Next(l)
	return id
}

// some is a known length.
func some(l unit.Length) document.Opt[unit.Length] { return document.Some(l) }

// wall adds a wall and an arrangement on it. Further calls work on these.
func (d *draft) wall(w plan.Wall) {
	w.ID = d.next(plan.LetterWall)
	for i := range w.Obstacles {
		w.Obstacles[i].ID = d.next(plan.LetterObstacle)
	}
	d.Walls = append(d.Walls, w)
	d.arrangement("")
}

// arrangement begins another arrangement on the last wall.
func (d *draft) arrangement(name string) {
	d.Arrangements = append(d.Arrangements, plan.Arrangement{
		ID: d.next(plan.LetterArrangement), Name: name, Wall: d.Walls[len(d.Walls)-1].ID,
	})
}

// line draws a line at a height in the present arrangement.
func (d *draft) line(height unit.Length) {
	a := d.present()
	a.Lines = append(a.Lines, plan.Line{ID: d.next(plan.LetterLine), Height: height})
}

// datum sets the level and the plumb line from which the wall points are measured.
func (d *draft) datum(level, plumb unit.Length) {
	d.present().Datum = plan.Datum{Level: some(level), Plumb: some(plumb)}
}

func (d *draft) present() *plan.Arrangement { return &d.Arrangements[len(d.Arrangements)-1] }

// studs are wooden studs at a spacing, both edges found.
func studs(width, depth, first, spacing unit.Length) plan.Studs {
	return plan.Studs{
		Material: "wood", Width: some(width), Depth: some(depth),
		First: some(first), Spacing: some(spacing), State: plan.EdgesFound,
	}
}

// metal are the same studs in folded steel.
func metal(s plan.Studs) plan.Studs {
	s.Material = "metal"
	return s
}

// thing is an obstacle.
func thing(kind string, x, y, width, height, depth unit.Length) plan.Obstacle {
	return plan.Obstacle{Kind: kind, X: x, Y: y, Width: width, Height: height, Depth: some(depth)}
}

// named gives an obstacle a name.
func named(name string, o plan.Obstacle) plan.Obstacle {
	o.Name = name
	return o
}

// chain is a module of boards of one thickness, every corner turned and joined alike.
// A length of nought is to close.
func chain(name, wood string, depth, thickness unit.Length, turns []unit.Angle, joint string, r plan.Reinforcement, lengths ...unit.Length) plan.Module {
	m := plan.Module{Name: name, Depth: depth, Wood: wood, Closed: len(turns) == len(lengths)}
	for _, l := range lengths {
		b := plan.Board{Thickness: thickness}
		if l > 0 {
			b.Length = some(l)
		}
		m.Boards = append(m.Boards, b)
	}
	for _, t := range turns {
		m.Corners = append(m.Corners, plan.Corner{Turn: t, Joint: joint, Reinforcement: r})
	}
	return m
}

// shelf is one board.
func shelf(name, wood string, depth, thickness, length unit.Length) plan.Module {
	return chain(name, wood, depth, thickness, nil, "", plan.Reinforcement{}, length)
}

// mitred are mitred corners with a spline.
func mitred(name, wood string, depth, thickness unit.Length, turns []unit.Angle, lengths ...unit.Length) plan.Module {
	return chain(name, wood, depth, thickness, turns, plan.Mitre, plan.Reinforcement{Kind: "spline"}, lengths...)
}

// box is a closed module of four mitred boards, walked from its lower left corner to
// the right: bottom, right, top, left.
func box(name, wood string, depth, thickness, width, height unit.Length) plan.Module {
	return mitred(name, wood, depth, thickness, []unit.Angle{left, left, left, left}, width, height, 0, 0)
}

// tray is a U that is open at the top, walked from its upper left end: hang it turned
// down.
func tray(name, wood string, depth, thickness, width, height unit.Length) plan.Module {
	return mitred(name, wood, depth, thickness, []unit.Angle{left, left}, height, width, height)
}

// joined changes the reinforcement of every corner.
func joined(m plan.Module, kind string) plan.Module {
	for i := range m.Corners {
		m.Corners[i].Reinforcement = plan.Reinforcement{Kind: kind}
	}
	return m
}

// eased gives every board of a module a cut along arrises.
func eased(m plan.Module, cut string, size unit.Length, arrises ...string) plan.Module {
	for i := range m.Boards {
		for _, a := range arrises {
			m.Boards[i].Edges = append(m.Boards[i].Edges, plan.Edge{Arris: a, Cut: cut, Size: size})
		}
	}
	return m
}

// A piece is a module that hangs in the present arrangement.
type piece struct {
	d    *draft
	i    int // of the module
	pose plan.Pose
	at   module.Result
}

// hang adds a module and hangs it with the lower left corner of its outline's box at
// (x, y).
func (d *draft) hang(m plan.Module, x, y unit.Length, turn unit.Angle) piece {
	m.ID = d.next(plan.LetterModule)
	m.Hung = turn
	for i := range m.Dividers {
		m.Dividers[i].ID = d.next(plan.LetterDivider)
	}
	d.Modules = append(d.Modules, m)
	return d.again(len(d.Modules)-1, x, y, turn, false)
}

// again hangs a module that hung in an earlier arrangement.
func (d *draft) again(i int, x, y unit.Length, turn unit.Angle, flip bool) piece {
	p := piece{d: d, i: i, at: module.Derive(d.Modules[i], d.Shop)}
	for _, f := range p.at.Findings {
		if f.Kind.Severity > 3 {
			panic(fmt.Sprintf("%s: %s", d.Modules[i].Name, f.Kind.Key))
		}
	}
	p.pose = plan.Pose{Module: d.Modules[i].ID, Turn: turn, Flip: flip}
	b := wall.Place(p.at, p.pose).Box
	p.pose.X, p.pose.Y = x-b.MinX, y-b.MinY
	a := d.present()
	a.Poses = append(a.Poses, p.pose)
	return p
}

// rods puts a bracket of a kind in a board where the axis meets each place on the
// wall: x for a level board, height for an upright.
func (p piece) rods(kind string, board int, places ...unit.Length) piece {
	for _, at := range places {
		p.add(plan.Bracket{Kind: kind, Board: board, At: p.along(board, at)})
	}
	return p
}

// bar puts a bar, cleat or rail of a length in a board, its first axis at a place.
func (p piece) bar(kind string, board int, first, length unit.Length) piece {
	p.add(plan.Bracket{Kind: kind, Board: board, At: p.along(board, first), Length: some(length)})
	return p
}

func (p piece) add(b plan.Bracket) {
	b.ID = p.d.next(plan.LetterBracket)
	m := &p.d.Modules[p.i]
	m.Brackets = append(m.Brackets, b)
}

// along turns a place on the wall into the figure along a board, given by its number
// from 1. The board must lie level or stand plumb.
func (p piece) along(board int, place unit.Length) unit.Length {
	f := p.at.Boards[board-1].Frame
	x, y := unit.Rotate(f.X-p.at.Pivot.X, f.Y-p.at.Pivot.Y, p.pose.Turn)
	switch (f.Dir + p.pose.Turn).Turn() {
	case 0:
		return place - (p.pose.X + x)
	case unit.HalfTurn:
		return p.pose.X + x - place
	case unit.QuarterTurn:
		return place - (p.pose.Y + y)
	case unit.HalfTurn + unit.QuarterTurn:
		return p.pose.Y + y - place
	}
	panic("the board lies slanted")
}

// lit puts a light in the module, its id given here.
func (p piece) lit(l plan.Light) piece {
	l.ID = p.d.next(plan.LetterLight)
	m := &p.d.Modules[p.i]
	m.Lights = append(m.Lights, l)
	return p
}
