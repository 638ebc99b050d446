package hold

import (
	"math"

	"ledgewright/engine/beam"
	"ledgewright/engine/board"
	"ledgewright/engine/strength"
)

// A Lining is what lies between the room and the structure, mm, as far as it is known.
type Lining struct {
	Thickness float64
	Known     bool
}

// A rod is a steel rod from the wall into its bore.
type rod struct {
	id      rodID
	fixing  *board.Fixing
	of      *board.Rod
	bar     int
	station int // node of the board where it sits
	root    int // member next to the wall
	node    int // at the wall's face
	at      beam.Vec
	mouth   float64 // where wood begins to bear, from the wall
	tied    bool    // locked: the rod cannot slide in its bore
}

// A link is a screw of a cleat, rail or hook between the wall and a board's back edge, in
// one direction. It acts both ways: what it pulls at one way leans on the wall the other.
type link struct {
	fixing int
	screw  int
	member int
	way    beam.Vec
}

// A touch is a place where a back edge can bear on the wall, and only that.
type touch struct {
	node int
	arm  beam.Vec // from the node to the place at the wall
}

// fixings hangs the module on its brackets.
func (f *model) fixings() {
	for i := range f.of.Fixings {
		x := &f.of.Fixings[i]
		b := f.find(x.Board)
		if b < 0 || !f.hangsOn(x) {
			continue
		}
		for k := range x.Rods {
			if !f.assumed.lacks(rodID{i, k}) {
				f.rod(x, &x.Rods[k], b)
				f.rods[len(f.rods)-1].id = rodID{i, k}
			}
		}
		if len(x.Rods) == 0 {
			f.strip(i, x, b)
		}
	}
	if f.tied() {
		f.backs()
	} else {
		f.keep()
	}
}

// tied says whether anything holds the module to the wall.
func (f *model) tied() bool {
	for i := range f.rods {
		if f.rods[i].tied {
			return true
		}
	}
	return len(f.links) > 0
}

// keep holds a module that nothing ties where it stands: no load pushes it off or on, since
// friction is not counted, so what holds it carries nothing.
func (f *model) keep() {
	if len(f.rods) > 0 {
		f.frame.Nodes[f.rods[0].station].Hold[2].Rigid = true
	}
}

// rod adds a rod: from the wall's face through a pocket to its tip, in its bore tied to the
// board's section there, and where it is set in the structure on into that.
func (f *model) rod(x *board.Fixing, r *board.Rod, b int) {
	at := f.vec(f.boards[b].board, r.At)
	at[2] = 0
	d := r.Diameter.MM()
	out := rod{fixing: x, of: r, bar: b, at: at, mouth: mouthOf(f.boards[b].board, x), tied: x.Lock != ""}
	out.station = f.nearest(b, r.At.U.MM())
	out.node = f.node(beam.Node{Name: x.Bracket, At: at})
	in := out.node
	out.root = len(f.frame.Members)
	if out.mouth > 0 {
		in = f.node(beam.Node{Name: x.Bracket, At: beam.Vec{at[0], at[1], out.mouth}})
		f.steel(x.Bracket, out.node, in, d, beam.Bed{})
	}
	tip := f.node(beam.Node{Name: x.Bracket, At: beam.Vec{at[0], at[1], max(r.InBoard.MM(), out.mouth+1)}})
	bed := beam.Bed{Y: f.assumed.Bore, Z: f.assumed.Bore, OnNode: true, Node: out.station}
	if out.tied {
		bed.X = f.assumed.Lock
	}
	f.steel(x.Bracket, in, tip, d, bed)
	f.root(&out)
	f.rods = append(f.rods, out)
}

// node adds a node.
func (f *model) node(n beam.Node) int {
	f.frame.Nodes = append(f.frame.Nodes, n)
	return len(f.frame.Nodes) - 1
}

// steel adds a round steel bar along z.
func (f *model) steel(name string, from, to int, d float64, bed beam.Bed) {
	i := math.Pi * d * d * d * d / 64
	f.frame.Members = append(f.frame.Members, beam.Member{
		Name: name, Start: beam.End{Node: from}, Finish: beam.End{Node: to}, Up: beam.Vec{0, 1, 0}, Bed: bed,
		Section:  beam.Section{A: math.Pi * d * d / 4, Iy: i, Iz: i, J: 2 * i, Ay: 0.9 * math.Pi * d * d / 4, Az: 0.9 * math.Pi * d * d / 4},
		Material: beam.Material{E: strength.SteelE, G: strength.SteelG},
	})
}

// mouthOf returns how far from the wall wood begins to bear on a rod: the depth of the
// pocket or groove that the bracket's plate sits in.
func mouthOf(b *board.Board, x *board.Fixing) (deep float64) {
	for i := range b.Features {
		f := &b.Features[i]
		sunk := f.Kind == board.Pocket || f.Kind == board.Groove
		if sunk && (f.Enter == board.Back || f.Enter == board.Front) && f.Cause.ID == x.Bracket {
			deep = max(deep, f.Depth.MM())
		}
	}
	return deep
}

// nearest returns the node of the station at u.
func (f *model) nearest(b int, u float64) int {
	best := f.boards[b].stations[0]
	for _, s := range f.boards[b].stations {
		if math.Abs(s.u-u) < math.Abs(best.u-u) {
			best = s
		}
	}
	return best.node
}

// root holds a rod at the wall: on its plate, which turns as its screws give, or in the
// structure behind the lining, whose wood bears like that of a bore.
func (f *model) root(r *rod) {
	n := &f.frame.Nodes[r.node]
	if deep := r.of.InWall.MM(); deep > 0 {
		face := f.node(beam.Node{Name: n.Name, At: beam.Vec{r.at[0], r.at[1], -f.lining.Thickness}})
		if f.lining.Thickness > 0 {
			f.steel(n.Name, face, r.node, r.of.Diameter.MM(), beam.Bed{})
		} else {
			face = r.node
		}
		end := f.node(beam.Node{Name: n.Name, At: beam.Vec{r.at[0], r.at[1], -f.lining.Thickness - deep}})
		f.steel(n.Name, end, face, r.of.Diameter.MM(), beam.Bed{X: f.assumed.Lock, Y: f.assumed.Bore, Z: f.assumed.Bore, Twist: 1e5})
		return
	}
	for _, way := range []int{0, 1, 2, 5} {
		n.Hold[way].Rigid = true
	}
	n.Hold[3].Stiffness, n.Hold[4].Stiffness = f.give(r)
}

// give returns how stiffly a plate is held against turning about x and about y: its screws
// are drawn out over the heel opposite them.
func (f *model) give(r *rod) (aboutX, aboutY float64) {
	p := f.plate(r)
	for _, s := range p.screws {
		k := f.assumed.Slip * strength.Slip(s.of.Diameter.MM(), threadIn(s.of, f.lining.Thickness))
		aboutX += k * sq(p.leverX(s))
		aboutY += k * sq(p.leverY(s))
	}
	return max(aboutX, leastGive), max(aboutY, leastGive)
}

// leastGive, N mm, keeps a plate without screws from being a hinge that no error names:
// its missing screws are told elsewhere.
const leastGive = 1e3

// strip supports a board by the screws of a cleat, rail or hook: along the wall where it
// carries, and against coming off it.
func (f *model) strip(i int, x *board.Fixing, b int) {
	for k := range x.Screws {
		u := (x.At.U + x.Screws[k].DU).MM()
		node := f.nearest(b, u)
		at := f.boards[b].on(u)
		at[2] = 0
		ways := []beam.Vec{{0, 0, 1}}
		if x.Carries {
			ways = append(ways, beam.Vec{0, 1, 0}, beam.Vec{1, 0, 0})
		}
		for _, way := range ways {
			f.links = append(f.links, link{i, k, len(f.frame.Members), way})
			f.link(x.Bracket, node, at, way)
		}
	}
}

// linkLength is the length, mm, of the member that stands for a link; only its stiffness
// counts.
const linkLength = 10

// link adds a member from the ground to a place at the wall that carries along itself only.
func (f *model) link(name string, node int, at, way beam.Vec) {
	ground := at
	for k := range ground {
		ground[k] -= linkLength * way[k]
	}
	var fixed [6]beam.Hold
	for k := range fixed {
		fixed[k].Rigid = true
	}
	start := f.node(beam.Node{Name: name, At: ground, Hold: fixed})
	end := beam.End{Node: node, Arm: f.arm(node, at)}
	for k := 1; k < 6; k++ {
		end.Springs[k].Free = true
	}
	up := beam.Vec{0, 1, 0}
	if way[1] != 0 {
		up = beam.Vec{1, 0, 0}
	}
	const e = strength.SteelE
	f.frame.Members = append(f.frame.Members, beam.Member{Name: name, Start: beam.End{Node: start}, Finish: end, Up: up,
		Section:  beam.Section{A: TouchStiffness * linkLength / e, Iy: 1, Iz: 1, J: 1},
		Material: beam.Material{E: e, G: strength.SteelG}})
}

// arm leads from a node to a place.
func (f *model) arm(node int, at beam.Vec) (arm beam.Vec) {
	for k := range arm {
		arm[k] = at[k] - f.frame.Nodes[node].At[k]
	}
	return arm
}

// backs lets the back edges of a module that is tied bear on the wall, with both their
// arrises at every station.
func (f *model) backs() {
	for i := range f.boards {
		b := &f.boards[i]
		half := b.board.Thickness.MM() / 2
		for _, s := range b.stations {
			for _, side := range [...]float64{-half, half} {
				at := f.frame.Nodes[s.node].At
				arm := beam.Vec{-side * b.along[1], side * b.along[0], -at[2]}
				f.touches = append(f.touches, touch{s.node, arm})
				f.link("", s.node, beam.Vec{at[0] + arm[0], at[1] + arm[1], 0}, beam.Vec{0, 0, 1})
			}
		}
	}
}
