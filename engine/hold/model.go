package hold

import (
	"math"
	"slices"

	"ledgewright/engine/beam"
	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/wood"
)

// A Hanging is how a module hangs: what gravity does to it depends on nothing else of its
// pose.
type Hanging struct {
	Turn unit.Angle
	Flip bool
	// Works lists the brackets that work in the pose; nil: all of them.
	Works []string
}

// A model is the frame of a module as it hangs, in the wall's axes: x right, y up, z out of
// the wall, N and mm. The module's pivot is at x = y = 0, its back at z = 0.
type model struct {
	of       *module.Result
	hang     wall.Placing
	works    []string // brackets; nil: all
	lining   Lining
	moisture float64 // of the wood in use, percent
	assumed  Assumed
	frame    beam.Frame
	boards   []bar
	joints   []beam.Vec // places where stations are, before they become nodes
	rods     []rod
	mitres   []mitre
	links    []link
	touches  []touch
}

// A bar is one board in the frame: its centre line from station to station.
type bar struct {
	board    *board.Board
	wood     wood.Species
	at, to   beam.Vec // of u = 0 and u = Length on the centre line
	along    beam.Vec // unit vector of u
	stations []station
	members  []int     // one between each two stations
	least    []Section // what is left at each station
	middles  []Section // and in the middle of each member
	grooves  []groove
}

// A station is a place along a board where something joins it.
type station struct {
	u    float64
	node int // a joint first, a node of the frame once the model is settled
}

// shearPart is G/E of solid wood: about 1/16 (common practice; Wood Handbook, table 5-1,
// gives 1/14 to 1/20 for the two planes of hardwoods).
const shearPart = 1.0 / 16

// modelOf builds the frame of a module as it hangs. It returns false where a wood is not
// known: nothing can be said then.
func modelOf(m *module.Result, h Hanging, w Lining, a Assumed) (*model, bool) {
	f := &model{of: m, lining: w, assumed: a, works: h.Works, hang: wall.Placing{Pivot: m.Pivot, Turn: h.Turn.Turn(), Flip: h.Flip, Depth: m.Depth}}
	for i := range m.Boards {
		b := &m.Boards[i]
		if b.Role == board.Rail {
			continue // part of a bracket; its weight hangs on the board it is fixed to
		}
		s, ok := wood.Find(b.Wood)
		if !ok {
			return nil, false
		}
		f.boards = append(f.boards, f.bar(b, s))
	}
	f.corners()
	f.bores()
	f.settle()
	f.lines()
	f.pin()
	f.fixings()
	f.weak()
	return f, true
}

// vec returns where a point of a board comes to, mm.
func (f *model) vec(b *board.Board, p board.Point) beam.Vec {
	at, z := f.hang.Point(b.Frame, p)
	return beam.Vec{at.X.MM(), at.Y.MM(), z.MM()}
}

// bar returns a board with stations at its two ends.
func (f *model) bar(b *board.Board, s wood.Species) bar {
	mid := board.Point{V: b.Width / 2, W: b.Thickness / 2}
	end := mid
	end.U = b.Length
	out := bar{board: b, wood: s, at: f.vec(b, mid), to: f.vec(b, end)}
	out.along = direction(out.at, out.to)
	f.station(&out, 0)
	f.station(&out, b.Length.MM())
	return out
}

func direction(from, to beam.Vec) (d beam.Vec) {
	n := math.Sqrt(sq(to[0]-from[0]) + sq(to[1]-from[1]) + sq(to[2]-from[2]))
	for k := range d {
		d[k] = (to[k] - from[k]) / n
	}
	return d
}

func sq(x float64) float64 { return float64(x * x) }

// nearStation is how near two places along a board count as one, mm: a member between them
// would be stiffer than the arithmetic bears, and nothing is set out finer.
const nearStation = 1.0

// on returns the place at u of the centre line.
func (b *bar) on(u float64) (p beam.Vec) {
	for k := range p {
		p[k] = b.at[k] + float64(b.along[k]*u)
	}
	return p
}

// station returns the joint at u of a board, a new one unless there is one near.
func (f *model) station(b *bar, u float64) int {
	for _, s := range b.stations {
		if math.Abs(s.u-u) < nearStation {
			return s.node
		}
	}
	f.joints = append(f.joints, b.on(u))
	b.put(station{u, len(f.joints) - 1})
	return len(f.joints) - 1
}

// put puts a station in its place along a board.
func (b *bar) put(s station) {
	i := 0
	for i < len(b.stations) && b.stations[i].u < s.u {
		i++
	}
	b.stations = slices.Insert(b.stations, i, s)
}

// corners joins the boards where their centre lines meet. An end of a centre line goes on,
// or stops, at that place: what is beyond belongs to the other board.
func (f *model) corners() {
	for i := range f.of.Corners {
		c := &f.of.Corners[i]
		a, b := f.find(c.First), f.find(c.Second)
		if a < 0 || b < 0 {
			continue
		}
		ua, ub := meet(&f.boards[a], &f.boards[b])
		f.unite(f.move(&f.boards[a], ua), f.move(&f.boards[b], ub))
	}
}

// find returns the place of the board with the id, or −1.
func (f *model) find(id string) int {
	return slices.IndexFunc(f.boards, func(b bar) bool { return b.board.ID == id })
}

// meet returns where along two boards their centre lines cross; boards at a corner are never
// parallel.
func meet(a, b *bar) (ua, ub float64) {
	cross := float64(a.along[0]*b.along[1]) - float64(a.along[1]*b.along[0])
	dx, dy := b.at[0]-a.at[0], b.at[1]-a.at[1]
	ua = (float64(dx*b.along[1]) - float64(dy*b.along[0])) / cross
	ub = (float64(dx*a.along[1]) - float64(dy*a.along[0])) / cross
	return ua, ub
}

// move returns the joint at u; where u is near an end the end's own station moves there.
func (f *model) move(b *bar, u float64) int {
	if i := b.endNear(u); i >= 0 {
		s := &b.stations[i]
		s.u = u
		f.joints[s.node] = b.on(u)
		return s.node
	}
	return f.station(b, u)
}

// endNear returns the index of the end station that a corner at u replaces, or −1: corners
// meet within two thicknesses of a board's end.
func (b *bar) endNear(u float64) int {
	reach := 2 * b.board.Thickness.MM()
	length := b.board.Length.MM()
	switch {
	case u < reach && u < length/2:
		return 0
	case length-u < reach:
		return len(b.stations) - 1
	}
	return -1
}

// unite makes one joint of two.
func (f *model) unite(keep, drop int) {
	for i := range f.boards {
		for k := range f.boards[i].stations {
			if s := &f.boards[i].stations[k]; s.node == drop {
				s.node = keep
			}
		}
	}
}

// bores puts a station where each rod and each screw meets its board.
func (f *model) bores() {
	for i := range f.of.Fixings {
		x := &f.of.Fixings[i]
		b := f.find(x.Board)
		if b < 0 || !f.hangsOn(x) {
			continue
		}
		for k := range x.Rods {
			f.station(&f.boards[b], x.Rods[k].At.U.MM())
		}
		if len(x.Rods) == 0 {
			for k := range x.Screws {
				f.station(&f.boards[b], (x.At.U + x.Screws[k].DU).MM())
			}
		}
	}
}

// settle turns the joints that are in use into nodes.
func (f *model) settle() {
	nodes := make([]int, len(f.joints))
	for i := range f.boards {
		for k := range f.boards[i].stations {
			s := &f.boards[i].stations[k]
			if nodes[s.node] == 0 {
				f.frame.Nodes = append(f.frame.Nodes, beam.Node{Name: f.boards[i].board.ID, At: f.joints[s.node]})
				nodes[s.node] = len(f.frame.Nodes)
			}
			s.node = nodes[s.node] - 1
		}
	}
}

// lines puts a member between each two stations of a board.
func (f *model) lines() {
	for i := range f.boards {
		b := &f.boards[i]
		up := beam.Vec{-b.along[1], b.along[0], 0}
		e := float64(b.wood.MOE) / 1e6
		for k := range len(b.stations) - 1 {
			from, to := b.stations[k], b.stations[k+1]
			s := sectionAt(b.board, unit.Nearest((from.u+to.u)/2))
			b.middles = append(b.middles, s)
			b.members = append(b.members, len(f.frame.Members))
			f.frame.Members = append(f.frame.Members, beam.Member{
				Name: b.board.ID, Start: beam.End{Node: from.node}, Finish: beam.End{Node: to.node},
				Section: s.beam(), Material: beam.Material{E: e, G: e * shearPart}, Up: up,
			})
		}
	}
}
