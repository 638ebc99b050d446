package hold

import (
	"math"

	"ledgewright/engine/beam"
	"ledgewright/engine/strength"
)

// How a shelf droops at its front edge follows from what nobody measures: how wood gives in
// a bore, how screws give as they are drawn, how the lining gives under a plate. So it is a
// range, told with its parts: of each rod, from the force V and the moment M at its root,
// whatever else holds the module, since rod, bore and plate follow each other.

// DroopPart is the part of a shelf's depth that its front edge may droop, its bracket and
// the wall counted in: depth/100. Common practice (memory).
const DroopPart = 100

// Stiffness of gypsum board under the heel of a plate, N/mm², and what it may be. Our
// assumption.
const LiningE, LiningSoft, LiningStiff = 500.0, 100.0, 2000.0

// rigid stands for screws that do not give, as a part of what is likely; rigidBore for wood
// that hardly does, N/mm²: a rod of 12 mm bends in the first centimetre of such a bore.
const (
	rigid     = 1e7
	rigidBore = 1e5
)

// A Range is a figure that depends on what is assumed, mm.
type Range struct{ Least, Likely, Most float64 }

func (r Range) plus(o Range) Range {
	return Range{r.Least + o.Least, r.Likely + o.Likely, r.Most + o.Most}
}

// A Droop is how far the front edge of a shelf goes down at one rod, and why.
type Droop struct {
	Board   string
	Bracket string
	Front   Range // all of it: the sum of what follows
	Rod     Range // the rod bends
	Bore    Range // the wood in its bore, or round it in the stud, gives
	Screws  Range // its plate's screws are drawn
	Wall    Range // the lining gives under its plate
	Slack   Range // the bore is wider than the rod
	Back    Range // how far the back edge rises
	Tilt    Range // front down and back up together, over the depth
	Later   float64
	Limit   float64 // depth/100
	Pretilt float64 // by how much to set the front high, so that it comes level under the load
	Shim    float64 // under the lower edge of the plate, for the same
}

// A give is how far front and back go down by what one thing gives.
type give struct{ front, back float64 }

func (g give) less(o give) give { return give{g.front - o.front, g.back - o.back} }

// droop returns the droop at rod i under what an effect does to it.
func (f *model) droop(e *Effect, i int) (d Droop, err error) {
	r := &f.rods[i]
	q := e.Rods[i]
	q.M = max(q.M, f.unaided(e, i))
	depth := f.boards[r.bar].board.Width.MM()
	d.Board, d.Bracket, d.Limit = r.fixing.Board, r.fixing.Bracket, depth/DroopPart
	ask := func(bore, slip float64) (g give) {
		if err == nil {
			g, err = f.gives(r, q, bore, slip)
		}
		return g
	}
	rod := ask(rigidBore, rigid)
	bores := [3]give{ask(BoreStiff, rigid), ask(f.assumed.Bore, rigid), ask(BoreSoft, rigid)}
	all := ask(f.assumed.Bore, f.assumed.Slip)
	var backs Range
	d.Rod, backs = same(rod.front), same(rod.back)
	add := func(into *Range, least, likely, most give) {
		*into = Range{least.front, likely.front, most.front}
		backs = backs.plus(Range{least.back, likely.back, most.back})
	}
	soft := bores[2]
	if lying := f.lying(r, q); lying.front > soft.front {
		soft = lying
	}
	add(&d.Bore, bores[0].less(rod), bores[1].less(rod), soft.less(rod))
	screws := all.less(bores[1])
	add(&d.Screws, screws.times(1/SlipStiff), screws, screws.times(1/SlipSoft))
	turn := f.pressed(r, q.M)
	heel := give{turn * depth, 0}
	add(&d.Wall, heel.times(LiningE/LiningStiff), heel, heel.times(LiningE/LiningSoft))
	var rise Range
	d.Slack, rise = f.slack(r, q)
	d.Front = d.Rod.plus(d.Bore).plus(d.Screws).plus(d.Wall).plus(d.Slack)
	d.Back = Range{-backs.Least, -backs.Likely, -backs.Most}.plus(rise)
	d.Tilt = d.Front.plus(d.Back)
	d.Later = d.Front.Likely + Creep*(d.Bore.Likely+d.Wall.Likely)
	d.Pretilt = max(d.Front.Likely, 0)
	p := f.plate(r)
	d.Shim = max(d.Tilt.Likely, 0) / depth * 2 * p.half[1]
	return d, err
}

func same(x float64) Range { return Range{x, x, x} }

func (g give) times(k float64) give { return give{g.front * k, g.back * k} }

// gives solves one rod by itself, in its bore and on its plate or in the wall, with the
// board's section as a rigid body on it.
func (f *model) gives(r *rod, q RodForce, bore, slip float64) (give, error) {
	b := &f.boards[r.bar]
	one := &model{of: f.of, lining: f.lining, assumed: f.assumed, hang: f.hang}
	one.assumed.Bore, one.assumed.Slip = bore, slip
	u := r.of.At.U.MM()
	one.boards = []bar{{board: b.board, at: b.at, to: b.to, along: b.along, stations: []station{{u, 0}}}}
	n := beam.Node{Name: r.fixing.Bracket, At: b.on(u)}
	n.Hold[2].Rigid, n.Hold[5].Rigid = true, true
	one.frame.Nodes = []beam.Node{n}
	one.rod(r.fixing, r.of, 0)
	system, err := one.frame.Ready()
	if err != nil {
		return give{}, err
	}
	wrench := beam.Wrench{Force: beam.Vec{0, -q.V}, Moment: beam.Vec{q.M - q.V*n.At[2]}}
	answers, err := system.Solve(beam.Case{Nodes: []beam.NodeLoad{{Node: 0, Wrench: wrench}}})
	if err != nil {
		return give{}, err
	}
	move, half := answers[0].Move(0), b.board.Width.MM()/2
	return give{-move.At(beam.Vec{0, 0, half}).Shift[1], -move.At(beam.Vec{0, 0, -half}).Shift[1]}, nil
}

// lying returns what a rod gives when the board only lies on it with its load at one place,
// and its bore holds it nowhere else: V a³/3EI there, and V a²/2EI of slope beyond.
func (f *model) lying(r *rod, q RodForce) give {
	if r.tied || q.V <= 0 || q.M/q.V >= r.of.InBoard.MM() {
		return give{}
	}
	d := r.of.Diameter.MM()
	at, stiff := q.M/q.V, strength.SteelE*math.Pi*d*d*d*d/64
	slope := q.V * at * at / (2 * stiff)
	there := q.V * at * at * at / (3 * stiff)
	return give{there + slope*(f.boards[r.bar].board.Width.MM()-at), there - slope*at}
}

// pressed returns by which angle a plate turns as the lining gives under its heel.
func (f *model) pressed(r *rod, m float64) float64 {
	if r.of.InWall > 0 || r.fixing.Seat == "lining" || f.lining.Thickness == 0 {
		return 0
	}
	p := f.plate(r)
	once, twice := 0.0, 0.0
	for _, s := range p.screws {
		once += p.leverX(s)
		twice += sq(p.leverX(s))
	}
	if once == 0 {
		return 0
	}
	z := twice / once
	area := 2 * p.half[0] * strength.HeelHeight
	return max(m, 0) / z * f.lining.Thickness / (LiningE * area) / z
}

// nearTip is the part of the way to the tip from which a load counts as hardly held flat.
const nearTip = 0.9

// slack returns what a bore that is c wider than its rod gives: a load beyond the tip turns
// the shelf about the tip until the mouth's floor meets the rod, so that with L of rod in
// the bore the front drops by (depth − tip) c / L and the back rises by c. A load before the
// tip keeps it flat on its rods, and a lock takes the slack away.
func (f *model) slack(r *rod, q RodForce) (front, back Range) {
	c := (r.of.Bore - r.of.Diameter).MM()
	if r.tied || c <= 0 || q.V <= 0 {
		return front, back
	}
	depth, tip := f.boards[r.bar].board.Width.MM(), r.of.InBoard.MM()
	drop := max(depth-tip, 0) * c / (tip - r.mouth)
	switch at := q.M / q.V; {
	case at > tip:
		return same(drop), same(c)
	case at > nearTip*tip:
		front.Most, back.Most = drop, c
	}
	return front, back
}

// A Turning is how far a module can turn in its own plane on the slack of its bores.
type Turning struct {
	Spacing float64 // of its two outermost rods, mm
	Arm     float64 // from them to the end of the module that moves most
	Move    float64 // of that end, up or down; 0 for rods side by side, on which it lies
}

// steep is the greatest part of their distance up that two rods may be apart sideways and
// still count as one above the other.
const steep = 0.25

// turning returns how a module can turn: rods one above the other leave c × arm / spacing to
// slack. A single rod would let it swing, which is an error before.
func (f *model) turning() (t Turning) {
	wide, high, slack := 0.0, 0.0, 0.0
	for i := range f.rods {
		a := &f.rods[i]
		if !a.tied {
			slack = max(slack, (a.of.Bore - a.of.Diameter).MM())
		}
		for k := range i {
			wide = max(wide, math.Abs(a.at[0]-f.rods[k].at[0]))
			high = max(high, math.Abs(a.at[1]-f.rods[k].at[1]))
		}
	}
	t.Spacing = max(wide, high)
	if len(f.rods) < 2 || len(f.links) > 0 || wide > steep*high {
		return t
	}
	for i := range f.boards {
		for _, p := range []beam.Vec{f.boards[i].at, f.boards[i].to} {
			t.Arm = max(t.Arm, math.Abs(p[0]-f.rods[0].at[0]))
		}
	}
	t.Move = slack * t.Arm / high
	return t
}
