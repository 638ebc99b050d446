package beam_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "ledgewright/engine/beam"
)

func TestLooseFramesAreNamed(t *testing.T) {
	named := func(f *Frame) *Frame {
		for i, name := range []string{"left", "middle", "right"}[:len(f.Nodes)] {
			f.Nodes[i].Name = name
		}
		return f
	}
	for _, c := range []struct {
		name  string
		frame *Frame
		first string
		way   int
	}{
		{"nothing holds it", straight([]float64{0, l}, [][6]Hold{{}, {}}), "", -1},
		{"a hinge at one end only", straight([]float64{0, l}, [][6]Hold{rigid(0, 1, 2, 3, 4), {}}), "middle", 1},
		{"rollers only", straight([]float64{0, l}, [][6]Hold{rigid(1, 2, 3, 4), rigid(1, 2)}), "", 0},
	} {
		_, err := named(c.frame).Ready()
		var loose *Loose
		require.ErrorAs(t, err, &loose, c.name)
		require.NotEmpty(t, loose.Error())
		if c.first != "" {
			require.Equal(t, c.first, loose.Names[0], c.name)
		}
		if c.way >= 0 {
			require.Equal(t, c.way, loose.Way, c.name)
		}
	}
	// A hinge in the middle of a span: only the middle moves.
	f := named(straight([]float64{0, l / 2, l}, [][6]Hold{rigid(0, 1, 2, 3, 4), {}, rigid(0, 1, 2, 3, 4)}))
	f.Members[0].Finish.Springs[5].Free = true
	_, err := f.Ready()
	var loose *Loose
	require.ErrorAs(t, err, &loose)
	require.Equal(t, "middle", loose.Names[0])
	require.Equal(t, 1, loose.Way)
}

func TestBadFramesAreNamed(t *testing.T) {
	good := func() *Frame { return straight([]float64{0, l}, [][6]Hold{fixed(), {}}) }
	for what, spoil := range map[string]func(f *Frame){
		NoLength:    func(f *Frame) { f.Nodes[1].At = Vec{} },
		NoUp:        func(f *Frame) { f.Members[0].Up = Vec{1} },
		NoSection:   func(f *Frame) { f.Members[0].Section.Iz = 0 },
		NoMaterial:  func(f *Frame) { f.Members[0].Material.E = -1 },
		NoNode:      func(f *Frame) { f.Members[0].Finish.Node = 2 },
		NotANumber:  func(f *Frame) { f.Members[0].Section.A = math.NaN() },
		BedTooStiff: func(f *Frame) { f.Members[0].Bed.Y = 1e15 },
		Unstrung: func(f *Frame) {
			f.Members[0].Start.Springs[3].Free, f.Members[0].Finish.Springs[3].Free = true, true
		},
	} {
		f := good()
		spoil(f)
		_, err := f.Ready()
		var bad *MemberError
		require.ErrorAs(t, err, &bad, what)
		require.Equal(t, what, bad.What)
	}
	f := good()
	f.Nodes[1].At[0] = math.Inf(1)
	var bad *NodeError
	_, err := f.Ready()
	require.ErrorAs(t, err, &bad)
}

func TestBadLoadsAreNamed(t *testing.T) {
	s, err := straight([]float64{0, l}, [][6]Hold{fixed(), {}}).Ready()
	require.NoError(t, err)
	for _, c := range []Case{
		{Nodes: []NodeLoad{{Node: 9}}},
		{Nodes: []NodeLoad{{Wrench: Wrench{Force: Vec{math.NaN()}}}}},
		{Points: []Point{{Member: 1}}},
		{Points: []Point{{At: l + 1}}},
		{Points: []Point{{At: math.NaN()}}},
		{Lines: []Line{{From: 3, To: 2}}},
		{Lines: []Line{{To: 2, Start: Vec{math.Inf(1)}}}},
	} {
		_, err := s.Solve(c)
		var bad *LoadError
		require.ErrorAs(t, err, &bad)
	}
}
