//go:build !js

package beam_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	. "ledgewright/engine/beam"
)

// some gives each property many frames with beds, springs, arms and all kinds of load.
func some(t *testing.T, count int, check func(t *testing.T, r *rand.Rand, f *Frame, c Case)) {
	for seed := range count {
		r := rand.New(rand.NewPCG(uint64(seed), 11))
		f, c := randomFrame(r)
		for i := range f.Members {
			garnish(r, &f.Members[i])
		}
		c.Lines = nil
		for range 4 {
			c.Points = append(c.Points, randomPoint(r, f))
			c.Lines = append(c.Lines, randomLine(r, f))
		}
		check(t, r, f, c)
	}
}

func garnish(r *rand.Rand, b *Member) {
	if r.IntN(4) == 0 {
		b.Bed = Bed{X: 5 * r.Float64(), Y: 200 * r.Float64(), Z: 200 * r.Float64(), Twist: 1e4 * r.Float64()}
		b.Bed.OnNode = r.IntN(2) == 0
		b.Bed.Node = 1
	}
	if r.IntN(3) == 0 {
		b.Start.Arm = randomVec(r, 40)
		b.Finish.Arm = randomVec(r, 40)
	}
	if r.IntN(3) == 0 {
		b.Finish.Springs[3+r.IntN(3)].Stiffness = 1e5 + 1e8*r.Float64()
		b.Start.Springs[r.IntN(3)].Stiffness = 100 + 1e4*r.Float64()
	}
}

func randomVec(r *rand.Rand, size float64) Vec {
	return Vec{size * (2*r.Float64() - 1), size * (2*r.Float64() - 1), size * (2*r.Float64() - 1)}
}

func randomPoint(r *rand.Rand, f *Frame) Point {
	m := r.IntN(len(f.Members))
	return Point{Member: m, At: r.Float64() * armed(f, m), Off: randomVec(r, 60),
		Wrench: Wrench{randomVec(r, 300), randomVec(r, 2e4)}}
}

func randomLine(r *rand.Rand, f *Frame) Line {
	m := r.IntN(len(f.Members))
	a, b := r.Float64(), r.Float64()
	return Line{Member: m, From: min(a, b) * armed(f, m), To: max(a, b) * armed(f, m),
		Start: randomVec(r, 2), Finish: randomVec(r, 2), Off: randomVec(r, 60)}
}

// ends returns where the axis of a member begins and ends.
func ends(f *Frame, m int) (a, b Vec) {
	s, e := &f.Members[m].Start, &f.Members[m].Finish
	for k := range a {
		a[k], b[k] = f.Nodes[s.Node].At[k]+s.Arm[k], f.Nodes[e.Node].At[k]+e.Arm[k]
	}
	return a, b
}

func armed(f *Frame, m int) float64 {
	a, b := ends(f, m)
	return math.Sqrt((b[0]-a[0])*(b[0]-a[0]) + (b[1]-a[1])*(b[1]-a[1]) + (b[2]-a[2])*(b[2]-a[2]))
}

func place(f *Frame, m int, x float64, off Vec) (p Vec) {
	a, b := ends(f, m)
	l := armed(f, m)
	for k := range p {
		p[k] = a[k] + (b[k]-a[k])*x/l + off[k]
	}
	return p
}

func cross(a, b Vec) Vec {
	return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func dot(a, b Vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// The holds of the ground balance the loads, forces and moments. Beds that stand on the
// ground are left out here: what they carry is no hold of a node.
func TestEquilibrium(t *testing.T) {
	some(t, 120, func(t *testing.T, r *rand.Rand, f *Frame, c Case) {
		for i := range f.Members {
			f.Members[i].Bed.OnNode = true
			f.Members[i].Bed.Node = 1
		}
		a := solve(t, f, c)
		var force, moment Vec
		size, size2 := 0.0, 0.0
		add := func(at, p, m Vec) {
			arm := cross(at, p)
			for k := range force {
				force[k] += p[k]
				moment[k] += m[k] + arm[k]
				size += math.Abs(p[k])
				size2 += math.Abs(m[k]) + math.Abs(arm[k])
			}
		}
		for n := range f.Nodes {
			h := a.Hold(n)
			add(f.Nodes[n].At, h.Force, h.Moment)
		}
		eachLoad(f, &c, add)
		for k := range force {
			require.InDelta(t, 0, force[k], 1e-9*size)
			require.InDelta(t, 0, moment[k], 1e-9*size2)
		}
	})
}

// eachLoad gives every load as forces and moments at places; lines at three places by
// Simpson's rule, exact for force and moment of a line that changes evenly.
func eachLoad(f *Frame, c *Case, add func(at, p, m Vec)) {
	for _, l := range c.Nodes {
		add(f.Nodes[l.Node].At, l.Force, l.Moment)
	}
	for _, l := range c.Points {
		add(place(f, l.Member, l.At, l.Off), l.Force, l.Moment)
	}
	for _, l := range c.Lines {
		for i, weight := range []float64{1, 4, 1} {
			share := float64(i) / 2
			var q Vec
			for k := range q {
				q[k] = (l.Start[k] + (l.Finish[k]-l.Start[k])*share) * weight * (l.To - l.From) / 6
			}
			add(place(f, l.Member, l.From+(l.To-l.From)*share, l.Off), q, Vec{})
		}
	}
}

func TestSuperposition(t *testing.T) {
	some(t, 60, func(t *testing.T, r *rand.Rand, f *Frame, c Case) {
		one, two := Case{Nodes: c.Nodes, Points: c.Points[:2]}, Case{Points: c.Points[2:], Lines: c.Lines}
		s, err := f.Ready()
		require.NoError(t, err)
		a, err := s.Solve(c, one, two)
		require.NoError(t, err)
		for n := range f.Nodes {
			for k := range 3 {
				require.InDelta(t, a[0].Move(n).Shift[k], a[1].Move(n).Shift[k]+a[2].Move(n).Shift[k], 1e-9*(1+math.Abs(a[1].Move(n).Shift[k])))
			}
		}
	})
}

// Maxwell and Betti: the loads of one case do as much work on the motions of the other as
// the other way round.
func TestReciprocity(t *testing.T) {
	some(t, 60, func(t *testing.T, r *rand.Rand, f *Frame, _ Case) {
		one, two := Case{Points: []Point{randomPoint(r, f)}}, Case{Points: []Point{randomPoint(r, f)}}
		s, err := f.Ready()
		require.NoError(t, err)
		a, err := s.Solve(one, two)
		require.NoError(t, err)
		there, back := work(&a[1], one.Points[0]), work(&a[0], two.Points[0])
		require.InDelta(t, there, back, 1e-7*(math.Abs(there)+1e-3*math.Abs(work(&a[0], one.Points[0]))))
	})
}

func work(a *Answer, l Point) float64 {
	c, _ := a.Along(l.Member, l.At)
	m := c.Motion.At(l.Off)
	return dot(m.Shift, l.Force) + dot(m.Turn, l.Moment)
}

// A frame that is moved as a whole feels nothing: a wedge under its only foot, with the
// foot's spring as soft as the motion needs, leaves all sections without force.
func TestRigidMotionCostsNothing(t *testing.T) {
	some(t, 60, func(t *testing.T, r *rand.Rand, f *Frame, _ Case) {
		for n := range f.Nodes {
			f.Nodes[n].Hold = [6]Hold{}
		}
		for i := range f.Members {
			f.Members[i].Bed.OnNode, f.Members[i].Bed.Node = true, 1
		}
		for k := range 6 {
			f.Nodes[0].Hold[k].Stiffness = 1e4 + 1e7*float64(k/3)
		}
		push := Wrench{randomVec(r, 100), randomVec(r, 1e5)}
		a := solve(t, f, Case{Nodes: []NodeLoad{{0, push}}})
		for m := range f.Members {
			c, _ := a.Along(m, armed(f, m)/3)
			for _, v := range []float64{c.N, c.Vy, c.Vz, c.T / 100, c.My / 100, c.Mz / 100} {
				require.InDelta(t, 0, v, 1e-6)
			}
			moved := a.Move(0).At(place(f, m, armed(f, m)/3, Vec{}))
			for k := range 3 {
				require.InDelta(t, moved.Shift[k], c.Shift[k], 1e-8)
			}
		}
	})
}

// A member cut in two by a node behaves as before.
func TestCuttingAMemberChangesNothing(t *testing.T) {
	some(t, 60, func(t *testing.T, r *rand.Rand, f *Frame, c Case) {
		before := solve(t, f, c)
		m := r.IntN(len(f.Members))
		x := (0.2 + 0.6*r.Float64()) * armed(f, m)
		cut, loads := cutAt(f, c, m, x)
		after := solve(t, cut, loads)
		want, _ := before.Along(m, x/2)
		got, _ := after.Along(m, x/2)
		size := math.Abs(want.Mz) + math.Abs(want.My) + math.Abs(want.T) + 1
		require.InDelta(t, want.Mz, got.Mz, 1e-7*size)
		require.InDelta(t, want.My, got.My, 1e-7*size)
		for n := range f.Nodes {
			for k := range 3 {
				require.InDelta(t, before.Move(n).Shift[k], after.Move(n).Shift[k], 1e-7*(1+math.Abs(before.Move(n).Shift[k])))
			}
		}
	})
}

// cutAt puts a node at x of member m, whose second part becomes the last member.
func cutAt(f *Frame, c Case, m int, x float64) (*Frame, Case) {
	out := &Frame{Nodes: append([]Node(nil), f.Nodes...), Members: append([]Member(nil), f.Members...)}
	second := out.Members[m]
	out.Nodes = append(out.Nodes, Node{At: place(f, m, x, Vec{})})
	out.Members[m].Finish = End{Node: len(f.Nodes)}
	second.Start = End{Node: len(f.Nodes)}
	out.Members = append(out.Members, second)
	last := len(out.Members) - 1
	var loads Case
	loads.Nodes = c.Nodes
	for _, l := range c.Points {
		if l.Member == m && l.At >= x {
			l.Member, l.At = last, l.At-x
		}
		loads.Points = append(loads.Points, l)
	}
	for _, l := range c.Lines {
		loads.Lines = append(loads.Lines, split(l, m, last, x)...)
	}
	return out, loads
}

func split(l Line, m, last int, x float64) []Line {
	if l.Member != m || l.To <= x {
		return []Line{l}
	}
	if l.From >= x {
		l.Member, l.From, l.To = last, l.From-x, l.To-x
		return []Line{l}
	}
	var at Vec
	for k := range at {
		at[k] = l.Start[k] + (l.Finish[k]-l.Start[k])*(x-l.From)/(l.To-l.From)
	}
	one, two := l, l
	one.To, one.Finish = x, at
	two.Member, two.From, two.To, two.Start = last, 0, l.To-x, at
	return []Line{one, two}
}

// A spring more never raises the work that the loads do.
func TestMoreStiffnessNeverRaisesTheWork(t *testing.T) {
	some(t, 60, func(t *testing.T, r *rand.Rand, f *Frame, _ Case) {
		load := randomPoint(r, f)
		before := solve(t, f, Case{Points: []Point{load}})
		n := 1 + r.IntN(len(f.Nodes)-1)
		f.Nodes[n].Hold[r.IntN(6)].Stiffness += 1e3 * r.Float64()
		after := solve(t, f, Case{Points: []Point{load}})
		had := work(&before, load)
		require.LessOrEqual(t, work(&after, load), had+1e-9*math.Abs(had))
	})
}

// The equations of the package comment hold between any two near places of a member: the
// moment's change is the shear less what turns there.
func TestSectionsObeyTheirEquations(t *testing.T) {
	some(t, 60, func(t *testing.T, r *rand.Rand, f *Frame, c Case) {
		for i := range f.Members {
			f.Members[i].Bed = Bed{}
		}
		c.Points = nil
		for i := range c.Lines {
			c.Lines[i].Off = Vec{}
		}
		a := solve(t, f, c)
		for m := range f.Members {
			l := armed(f, m)
			x := l * (0.1 + 0.8*r.Float64())
			const h = 1e-3
			low, _ := a.Along(m, x-h)
			high, _ := a.Along(m, x+h)
			here, _ := a.Along(m, x)
			size := math.Abs(here.Vy) + math.Abs(here.Vz) + math.Abs(here.Mz)*1e-4 + math.Abs(here.My)*1e-4 + 1
			require.InDelta(t, -here.Vy, (high.Mz-low.Mz)/(2*h), 1e-3*size)
			require.InDelta(t, here.Vz, (high.My-low.My)/(2*h), 1e-3*size)
		}
	})
}
