package beam_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "ledgewright/engine/beam"
)

// A steel bar of 20 x 30 as a case without shear deformation, in N and mm.
const (
	e, g = 210000.0, 81000.0
	l    = 800.0
	iz   = 20 * 30 * 30 * 30 / 12.0
	iy   = 30 * 20 * 20 * 20 / 12.0
	ei   = e * iz
)

var (
	steel = Material{E: e, G: g}
	bar   = Section{A: 600, Iy: iy, Iz: iz, J: 15000}
	up    = Vec{0, 1, 0}
)

func rigid(ways ...int) (h [6]Hold) {
	for _, i := range ways {
		h[i].Rigid = true
	}
	return h
}

func fixed() [6]Hold { return rigid(0, 1, 2, 3, 4, 5) }

// pinned holds the shifts, and the turn about the beam itself.
func pinned() [6]Hold { return rigid(0, 1, 2, 3) }

// straight is a beam along x over nodes at the places, each held as told.
func straight(places []float64, holds [][6]Hold) *Frame {
	f := &Frame{}
	for i, x := range places {
		f.Nodes = append(f.Nodes, Node{Name: "n", At: Vec{x}, Hold: holds[i]})
		if i > 0 {
			f.Members = append(f.Members, Member{Name: "m", Start: End{Node: i - 1}, Finish: End{Node: i},
				Section: bar, Material: steel, Up: up})
		}
	}
	return f
}

func solve(t *testing.T, f *Frame, c Case) Answer {
	t.Helper()
	s, err := f.Ready()
	require.NoError(t, err)
	a, err := s.Solve(c)
	require.NoError(t, err)
	return a[0]
}

// near holds to a part in 10⁹ of the larger of want and scale.
func near(t *testing.T, want, got, scale float64, what string) {
	t.Helper()
	require.InDelta(t, want, got, 1e-9*max(math.Abs(want), math.Abs(scale)), what)
}

func sag(a Answer, member int, x float64) float64 {
	c, _ := a.Along(member, x)
	return -c.Shift[1]
}

func moment(a Answer, member int, x float64) float64 {
	c, _ := a.Along(member, x)
	return c.Mz
}

func uniform(member int, w float64) Line {
	return Line{Member: member, To: l, Start: Vec{0, -w}, Finish: Vec{0, -w}}
}

func point(member int, at, p float64) Point {
	return Point{Member: member, At: at, Wrench: Wrench{Force: Vec{0, -p}}}
}

const w, p = 3.0, 700.0

// Wood Handbook, FPL-GTR-282 (2021), table 9-1 and eq. 9-2, for the simple span, the span
// fixed at both ends and the cantilever; the others are the elementary formulas of
// Euler-Bernoulli beams as in Roark's Formulas for Stress and Strain (from memory).
func TestSingleSpans(t *testing.T) {
	simple := straight([]float64{0, l}, [][6]Hold{pinned(), pinned()})
	a := solve(t, simple, Case{Lines: []Line{uniform(0, w)}})
	near(t, 5*w*l*l*l*l/(384*ei), sag(a, 0, l/2), 0, "B01 sag")
	near(t, w*l*l/8, moment(a, 0, l/2), 0, "B01 moment")
	near(t, w*l/2, a.Hold(0).Force[1], 0, "B01 reaction")
	near(t, -w*l*l*l/(24*ei), a.Move(0).Turn[2], 0, "B01 slope")

	a = solve(t, simple, Case{Points: []Point{point(0, l/2, p)}})
	near(t, p*l*l*l/(48*ei), sag(a, 0, l/2), 0, "B02 sag")
	near(t, p*l/4, moment(a, 0, l/2), 0, "B02 moment")

	from, b := 0.65*l, 0.35*l
	a = solve(t, simple, Case{Points: []Point{point(0, from, p)}})
	near(t, p*from*from*b*b/(3*ei*l), sag(a, 0, from), 0, "B03 sag at the load")
	near(t, p*b*math.Pow(l*l-b*b, 1.5)/(9*math.Sqrt(3)*ei*l), sag(a, 0, math.Sqrt((l*l-b*b)/3)), 0, "B03 greatest sag")
	near(t, p*from*b/l, moment(a, 0, from), 0, "B03 moment")

	a = solve(t, simple, Case{Points: []Point{{Member: 0, At: 0, Wrench: Wrench{Moment: Vec{0, 0, -p * 100}}}}})
	near(t, p*100*l*l/(9*math.Sqrt(3)*ei), sag(a, 0, l*(1-1/math.Sqrt(3))), 0, "B05 sag")

	clamped := straight([]float64{0, l}, [][6]Hold{fixed(), fixed()})
	a = solve(t, clamped, Case{Lines: []Line{uniform(0, w)}})
	near(t, w*l*l*l*l/(384*ei), sag(a, 0, l/2), 0, "B07 sag")
	near(t, -w*l*l/12, moment(a, 0, 0), 0, "B07 end")
	near(t, w*l*l/24, moment(a, 0, l/2), 0, "B07 middle")
	a = solve(t, clamped, Case{Points: []Point{point(0, l/2, p)}})
	near(t, p*l*l*l/(192*ei), sag(a, 0, l/2), 0, "B08 sag")
	near(t, -p*l/8, moment(a, 0, l), 0, "B08 end")

	propped := straight([]float64{0, l}, [][6]Hold{pinned(), fixed()})
	a = solve(t, propped, Case{Lines: []Line{uniform(0, w)}})
	x := l * (1 + math.Sqrt(33)) / 16
	near(t, w*x*(l*l*l-3*l*x*x+2*x*x*x)/(48*ei), sag(a, 0, x), 0, "B17 sag")
	near(t, 3*w*l/8, a.Hold(0).Force[1], 0, "B17 prop")
	near(t, 9*w*l*l/128, moment(a, 0, 3*l/8), 0, "B17 span")
	a = solve(t, propped, Case{Points: []Point{point(0, l/2, p)}})
	near(t, 7*p*l*l*l/(768*ei), sag(a, 0, l/2), 0, "B18 sag")
	near(t, 5*p/16, a.Hold(0).Force[1], 0, "B18 prop")
}

func TestCantilevers(t *testing.T) {
	f := straight([]float64{0, l}, [][6]Hold{fixed(), {}})
	a := solve(t, f, Case{Lines: []Line{uniform(0, w)}})
	near(t, w*l*l*l*l/(8*ei), sag(a, 0, l), 0, "B09 sag")
	near(t, -w*l*l/2, moment(a, 0, 0), 0, "B09 root")
	near(t, -w*l*l*l/(6*ei), a.Move(1).Turn[2], 0, "B09 slope")
	a = solve(t, f, Case{Points: []Point{point(0, l, p)}})
	near(t, p*l*l*l/(3*ei), sag(a, 0, l), 0, "B10 sag")
	at := 0.3 * l
	a = solve(t, f, Case{Points: []Point{point(0, at, p)}})
	near(t, p*at*at*(3*l-at)/(6*ei), sag(a, 0, l), 0, "B11 tip")
	a = solve(t, f, Case{Lines: []Line{{To: at, Start: Vec{0, -w}, Finish: Vec{0, -w}}}})
	near(t, w*at*at*at*(4*l-at)/(24*ei), sag(a, 0, l), 0, "B12 tip")
	a = solve(t, f, Case{Nodes: []NodeLoad{{1, Wrench{Moment: Vec{0, 0, -5000}}}}})
	near(t, 5000*l*l/(2*ei), sag(a, 0, l), 0, "B13 tip")

	const spring = 4e7
	held := pinned()
	held[4].Rigid, held[5].Stiffness = true, spring
	a = solve(t, straight([]float64{0, l}, [][6]Hold{held, {}}), Case{Points: []Point{point(0, l, p)}})
	near(t, p*l*l*l/(3*ei)+p*l/spring*l, sag(a, 0, l), 0, "B14 tip, spring at the root")
	f.Members[0].Start.Springs[5].Stiffness = spring
	a = solve(t, f, Case{Points: []Point{point(0, l, p)}})
	near(t, p*l*l*l/(3*ei)+p*l/spring*l, sag(a, 0, l), 0, "B14 tip, spring in the member")
}

func TestContinuousBeams(t *testing.T) {
	three := straight([]float64{0, l, 2 * l}, [][6]Hold{pinned(), pinned(), pinned()})
	a := solve(t, three, Case{Lines: []Line{uniform(0, w), uniform(1, w)}})
	near(t, 10*w*l/8, a.Hold(1).Force[1], 0, "B19 middle")
	near(t, -w*l*l/8, moment(a, 0, l), 0, "B19 moment")
	a = solve(t, three, Case{Lines: []Line{uniform(0, w)}})
	near(t, 7*w*l/16, a.Hold(0).Force[1], 0, "B20")
	near(t, -w*l/16, a.Hold(2).Force[1], 0, "B20 uplift")
	near(t, 49*w*l*l/512, moment(a, 0, 7*l/16), 0, "B20 span")

	four := straight([]float64{0, l, 2 * l, 3 * l}, [][6]Hold{pinned(), pinned(), pinned(), pinned()})
	a = solve(t, four, Case{Lines: []Line{uniform(0, w), uniform(1, w), uniform(2, w)}})
	near(t, 0.4*w*l, a.Hold(0).Force[1], 0, "B21 end")
	near(t, 1.1*w*l, a.Hold(1).Force[1], 0, "B21 inner")
	near(t, 0.025*w*l*l, moment(a, 1, l/2), 0, "B21 centre")

	over := straight([]float64{0, l, l + 200}, [][6]Hold{pinned(), pinned(), {}})
	a = solve(t, over, Case{Points: []Point{point(1, 200, p)}})
	near(t, p*200*200*(l+200)/(3*ei), sag(a, 1, 200), 0, "B16 tip")
	near(t, -p*200*l*l/(9*math.Sqrt(3)*ei), sag(a, 0, l/math.Sqrt(3)), 0, "B16 uplift")

	const out = 150.0
	ends := straight([]float64{0, out, l - out, l}, [][6]Hold{{}, pinned(), pinned(), {}})
	load := Case{}
	for i, n := range []float64{out, l - 2*out, out} {
		load.Lines = append(load.Lines, Line{Member: i, To: n, Start: Vec{0, -w}, Finish: Vec{0, -w}})
	}
	a = solve(t, ends, load)
	span := l - 2*out
	near(t, w*span*span*(5*span*span-24*out*out)/(384*ei), sag(a, 1, span/2), 0, "B15 middle")
	near(t, w*out*(3*out*out*out+6*out*out*span-span*span*span)/(24*ei), sag(a, 0, 0), 0, "B15 ends")
}

// The parts of shear: ks W L / G A′ with ks 1/8, 1/4, 1/2 and 1 (Wood Handbook eq. 9-2).
func TestShear(t *testing.T) {
	thick := func(f *Frame) *Frame {
		for i := range f.Members {
			f.Members[i].Section.Ay = 500
		}
		return f
	}
	simple := thick(straight([]float64{0, l}, [][6]Hold{pinned(), pinned()}))
	root := thick(straight([]float64{0, l}, [][6]Hold{fixed(), {}}))
	ga := g * 500
	a := solve(t, simple, Case{Lines: []Line{uniform(0, w)}})
	near(t, 5*w*l*l*l*l/(384*ei)+w*l*l/8/ga, sag(a, 0, l/2), 0, "simple, uniform")
	a = solve(t, simple, Case{Points: []Point{point(0, l/2, p)}})
	near(t, p*l*l*l/(48*ei)+p*l/4/ga, sag(a, 0, l/2), 0, "simple, point")
	a = solve(t, root, Case{Lines: []Line{uniform(0, w)}})
	near(t, w*l*l*l*l/(8*ei)+w*l*l/2/ga, sag(a, 0, l), 0, "cantilever, uniform")
	a = solve(t, root, Case{Points: []Point{point(0, l, p)}})
	near(t, p*l*l*l/(3*ei)+p*l/ga, sag(a, 0, l), 0, "cantilever, point")
}

// The other plane, pull and torsion of one bar.
func TestOtherPlanes(t *testing.T) {
	f := straight([]float64{0, l}, [][6]Hold{fixed(), {}})
	a := solve(t, f, Case{Nodes: []NodeLoad{{1, Wrench{Force: Vec{900, 0, 70}, Moment: Vec{4000}}}}})
	end := a.Move(1)
	near(t, 900*l/(e*600), end.Shift[0], 0, "pull")
	near(t, 70*l*l*l/(3*e*iy), end.Shift[2], 0, "bending in the plane of z")
	near(t, -70*l*l/(2*e*iy), end.Turn[1], 0, "a push along z turns about -y")
	near(t, 4000*l/(g*15000), end.Turn[0], 0, "torsion")
	start, _ := a.Ends(0)
	near(t, 900, start.N, 0, "N")
	near(t, 70, start.Vz, 0, "Vz")
	near(t, -70*l, start.My, 0, "My")
	near(t, 4000, start.T, 0, "T")

	off := Case{Lines: []Line{{To: l, Start: Vec{0, -w}, Finish: Vec{0, -w}, Off: Vec{0, 0, 40}}}}
	a = solve(t, f, off)
	start, _ = a.Ends(0)
	near(t, w*l*40, start.T, 0, "a load in front of the axis twists it")
	near(t, w*40*l*l/2/(g*15000), a.Move(1).Turn[0], 0, "angle")
}

// Kleinlogel's formulas of portals and the closed box (from memory), which leave out axial
// deformation: the area is made large.
func TestPortals(t *testing.T) {
	const h = 500.0
	k := h / l // (I beam / I leg)(h / L)
	portal := func(foot [6]Hold) *Frame {
		f := &Frame{Nodes: []Node{{At: Vec{0, 0}, Hold: foot}, {At: Vec{0, h}}, {At: Vec{l, h}}, {At: Vec{l, 0}, Hold: foot}}}
		thick := bar
		thick.A = 1e9
		for i := range 3 {
			f.Members = append(f.Members, Member{Start: End{Node: i}, Finish: End{Node: i + 1}, Section: thick, Material: steel, Up: Vec{-1, 1, 0}})
		}
		for i := range f.Nodes {
			f.Nodes[i].Hold[2].Rigid = true
		}
		return f
	}
	load, mid := Case{Lines: []Line{uniform(1, w)}}, Case{Points: []Point{point(1, l/2, p)}}
	fits := func(want, got float64, what string) {
		t.Helper()
		require.InEpsilon(t, want, got, 2e-4, what) // the area is large, not infinite
	}
	a := solve(t, portal(fixed()), load)
	fits(-w*l*l/(6*(k+2)), moment(a, 1, 0), "F01 knee")
	fits(w*l*l/(4*h*(k+2)), a.Hold(0).Force[0], "F01 thrust")
	hinge := rigid(0, 1, 2, 3, 4)
	a = solve(t, portal(hinge), load)
	fits(-w*l*l/(4*(2*k+3)), moment(a, 1, 0), "F02 knee")
	a = solve(t, portal(fixed()), mid)
	fits(-p*l/(4*(k+2)), moment(a, 1, 0), "F03 knee")
	fits(p*l/(8*(k+2)), math.Abs(a.Hold(0).Moment[2]), "F03 base")
	a = solve(t, portal(hinge), mid)
	fits(-3*p*l/(8*(2*k+3)), moment(a, 1, 0), "F04 knee")
}

// F05: an L fixed at the foot with a load at the tip, by unit loads; the leg's shortening
// p h / EA belongs to it.
func TestLFrame(t *testing.T) {
	const h, b = 500.0, 300.0
	f := &Frame{
		Nodes: []Node{{At: Vec{}, Hold: fixed()}, {At: Vec{0, h}}, {At: Vec{b, h}}},
		Members: []Member{
			{Start: End{Node: 0}, Finish: End{Node: 1}, Section: bar, Material: steel, Up: Vec{-1, 0, 0}},
			{Start: End{Node: 1}, Finish: End{Node: 2}, Section: bar, Material: steel, Up: up},
		},
	}
	a := solve(t, f, Case{Points: []Point{point(1, b, p)}})
	near(t, p*b*b*b/(3*ei)+p*b*b*h/ei+p*h/(e*bar.A), -a.Move(2).Shift[1], 0, "tip")
	near(t, p*b*h*h/(2*ei), a.Move(1).Shift[0], 0, "knee")
	near(t, p*b, math.Abs(a.Hold(0).Moment[2]), 0, "base")
}

// M. Hetényi, Beams on Elastic Foundation (1946): the beam of finite length with free ends
// under a load in the middle (ch. III) and the half-infinite beam under a force and a moment
// at its end (ch. II), formulas from memory; λ = (k / 4EI)^¼.
func TestBedOfWinkler(t *testing.T) {
	const k = 60.0
	lambda := math.Sqrt(math.Sqrt(k / (4 * ei)))
	beam := func(length float64) *Frame {
		f := straight([]float64{0, length}, [][6]Hold{rigid(0, 2, 3, 4), {}})
		f.Members[0].Bed.Y = k
		return f
	}
	a := solve(t, beam(l), Case{Points: []Point{point(0, l/2, p)}})
	s := lambda * l
	sum := math.Sinh(s) + math.Sin(s)
	near(t, p*lambda/(2*k)*(math.Cosh(s)+math.Cos(s)+2)/sum, sag(a, 0, l/2), 0, "middle")
	near(t, p*lambda/(2*k)*4*math.Cosh(s/2)*math.Cos(s/2)/sum, sag(a, 0, 0), p*lambda/k, "ends")
	near(t, p/(4*lambda)*(math.Cosh(s)-math.Cos(s))/sum, moment(a, 0, l/2), 0, "moment")

	long := 40 / lambda
	a = solve(t, beam(long), Case{Points: []Point{point(0, 0, p)}})
	near(t, 2*p*lambda/k, sag(a, 0, 0), 0, "force at the end")
	x := 0.8 / lambda
	near(t, 2*p*lambda/k*math.Exp(-0.8)*math.Cos(0.8), sag(a, 0, x), p*lambda/k, "beyond it")
	near(t, -p/lambda*math.Exp(-0.8)*math.Sin(0.8), moment(a, 0, x), p/lambda, "moment beyond it")
	a = solve(t, beam(long), Case{Nodes: []NodeLoad{{0, Wrench{Moment: Vec{0, 0, 9000}}}}})
	near(t, 2*9000*lambda*lambda/k, math.Abs(sag(a, 0, 0)), 0, "moment at the end")
}

// The bed under a member moves with the node it is tied to: a rod in the bore of a rigid
// body takes no force from a rigid motion of both, and passes a load into it.
func TestBedThatMoves(t *testing.T) {
	f := &Frame{
		Nodes: []Node{{Name: "wall", Hold: fixed()}, {Name: "tip", At: Vec{120}}, {Name: "board", At: Vec{60}}},
		Members: []Member{{Start: End{Node: 0}, Finish: End{Node: 1}, Section: bar, Material: steel, Up: up,
			Bed: Bed{X: 10, Y: 900, Z: 900, Twist: 1e6, OnNode: true, Node: 2}}},
	}
	a := solve(t, f, Case{Nodes: []NodeLoad{{2, Wrench{Force: Vec{0, -300}}}}})
	near(t, 300, a.Hold(0).Force[1], 0, "the wall carries what the board carries")
	near(t, 300*60, a.Hold(0).Moment[2], 0, "and its moment")
	require.Less(t, a.Move(2).Shift[1], 0.0)

	f.Nodes[0].Hold = rigid()
	f.Nodes[2].Hold = fixed()
	f.Members[0].Bed.Node = 2
	a = solve(t, f, Case{Points: []Point{point(0, 30, 500)}})
	near(t, 500, a.Hold(2).Force[1], 0, "the body takes the loads of the rod")
	near(t, -500*30, a.Hold(2).Moment[2], 500*60, "at their place")
}
