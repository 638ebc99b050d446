package board

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/unit"
)

const mm = unit.Millimetre

// plain returns a board without cuts but its ends.
func plain(length, width, thickness unit.Length, features ...Feature) Board {
	ends := []Feature{
		{Kind: EndCut, Enter: Start, Cause: Cause{What: "end"}},
		{Kind: EndCut, Enter: End, Cause: Cause{What: "end"}, AtA: length, AtB: length},
	}
	return Board{ID: "m1.1", Length: length, Width: width, Thickness: thickness, Features: append(ends, features...)}
}

// mitred returns a board whose long points are on face B at both ends, or on face A for
// a negative lead.
func mitred(length, width, thickness, lead unit.Length, features ...Feature) Board {
	b := plain(length, width, thickness, features...)
	b.Features[0].AtA, b.Features[0].AtB = max(lead, 0), max(-lead, 0)
	b.Features[1].AtA, b.Features[1].AtB = length-max(lead, 0), length-max(-lead, 0)
	b.Features[0].Cause, b.Features[1].Cause = Cause{What: "corner", ID: "1"}, Cause{What: "corner", ID: "2"}
	return b
}

func TestAxesAreRightHanded(t *testing.T) {
	f := Frame{X: 10 * mm, Y: 20 * mm, Z: 0, Dir: unit.QuarterTurn}
	x, y := f.Plane(100*mm, 24*mm)
	require.Equal(t, []unit.Length{34 * mm, 120 * mm}, []unit.Length{x, y}, "u goes up, w to the right: face A is on the left of the walk")
	px, py, pz := Board{Frame: f}.Point(Point{U: 100 * mm, V: 7 * mm, W: 24 * mm})
	require.Equal(t, []unit.Length{34 * mm, 120 * mm, 7 * mm}, []unit.Length{px, py, pz})
}

func TestLocalIsTheWayBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Int64Range(-3e9, 3e9)
		f := Frame{
			X: unit.Length(length.Draw(t, "x")), Y: unit.Length(length.Draw(t, "y")),
			Dir: unit.Angle(rapid.Int64Range(0, 359_999_999).Draw(t, "dir")),
		}
		u, w := unit.Length(length.Draw(t, "u")), unit.Length(length.Draw(t, "w"))
		x, y := f.Plane(u, w)
		u2, w2 := f.Local(x, y)
		require.InDelta(t, float64(u), float64(u2), 2)
		require.InDelta(t, float64(w), float64(w2), 2)
	})
}

// uw lists the corners of a profile.
func uw(p []Point) (out [][2]unit.Length) {
	for _, q := range p {
		out = append(out, [2]unit.Length{q.U, q.W})
	}
	return out
}

func TestProfileIsTheSection(t *testing.T) {
	housing := func(face Face, u, along, depth unit.Length) Feature {
		f := Feature{Kind: Housing, Enter: face, Mouth: Point{U: u, V: 100 * mm}, Along: along, Across: 200 * mm, Depth: depth, Through: true}
		if face == FaceB {
			f.Mouth.W = 24 * mm
		}
		return f
	}
	type xy = [2]unit.Length
	cases := []struct {
		name string
		b    Board
		want []xy
	}{
		{"square", plain(300*mm, 200*mm, 24*mm), []xy{{0, 24 * mm}, {300 * mm, 24 * mm}, {300 * mm, 0}, {0, 0}}},
		{"mitred", mitred(300*mm, 200*mm, 24*mm, 24*mm), []xy{{0, 24 * mm}, {300 * mm, 24 * mm}, {276 * mm, 0}, {24 * mm, 0}}},
		{
			"housing in A", plain(300*mm, 200*mm, 24*mm, housing(FaceA, 100*mm, 20*mm, 8*mm)),
			[]xy{{0, 24 * mm}, {300 * mm, 24 * mm}, {300 * mm, 0}, {110 * mm, 0}, {110 * mm, 8 * mm}, {90 * mm, 8 * mm}, {90 * mm, 0}, {0, 0}},
		},
		{
			"housing in B", plain(300*mm, 200*mm, 24*mm, housing(FaceB, 100*mm, 20*mm, 8*mm)),
			[]xy{{0, 24 * mm}, {90 * mm, 24 * mm}, {90 * mm, 16 * mm}, {110 * mm, 16 * mm}, {110 * mm, 24 * mm}, {300 * mm, 24 * mm}, {300 * mm, 0}, {0, 0}},
		},
		{
			"rebate at the end", plain(300*mm, 200*mm, 24*mm, housing(FaceA, 288*mm, 24*mm, 12*mm)),
			[]xy{{0, 24 * mm}, {300 * mm, 24 * mm}, {300 * mm, 12 * mm}, {276 * mm, 12 * mm}, {276 * mm, 0}, {0, 0}},
		},
		{
			"two housings that overlap", plain(300*mm, 200*mm, 24*mm, housing(FaceA, 100*mm, 20*mm, 8*mm), housing(FaceA, 108*mm, 20*mm, 6*mm)),
			[]xy{
				{0, 24 * mm}, {300 * mm, 24 * mm}, {300 * mm, 0}, {118 * mm, 0}, {118 * mm, 6 * mm},
				{110 * mm, 6 * mm}, {110 * mm, 8 * mm}, {90 * mm, 8 * mm}, {90 * mm, 0}, {0, 0},
			},
		},
	}
	for _, c := range cases {
		got := uw(c.b.Profile())
		require.ElementsMatch(t, c.want, got, c.name)
		require.Equal(t, shoelace(c.want), shoelace(got), "%s: the same way round", c.name)
	}
}

// shoelace returns twice the area of a polygon by Gauss's area formula, positive for
// counter-clockwise in the module's plane of a board that lies along x (y = −w).
func shoelace(p [][2]unit.Length) (sum float64) {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		sum += a[0].MM()*-b[1].MM() - b[0].MM()*-a[1].MM()
	}
	return sum
}

func TestOutlineRunsCounterClockwise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := mitred(300*mm, 200*mm, 24*mm, unit.Length(rapid.Int64Range(-100e6, 100e6).Draw(t, "lead")))
		b.Frame.Dir = unit.Angle(rapid.Int64Range(0, 359_999_999).Draw(t, "dir"))
		sum := 0.0
		p := b.Outline()
		for i, a := range p {
			n := p[(i+1)%len(p)]
			sum += a[0].MM()*n[1].MM() - n[0].MM()*a[1].MM()
		}
		start, end := b.Ends()
		area := 24 * ((end.AtA - start.AtA).MM() + (end.AtB - start.AtB).MM()) / 2
		require.InDelta(t, area, sum/2, 1e-3)
	})
}

func TestFacesLookOutward(t *testing.T) {
	b := mitred(300*mm, 200*mm, 24*mm, 10*mm)
	centre := point{150, 100, 12}
	for _, side := range []Face{FaceA, FaceB, Back, Front, Start, End} {
		c := b.Corners(side)
		at := func(i int) point { return point{c[i].U.MM(), c[i].V.MM(), c[i].W.MM()} }
		normal := at(1).sub(at(0)).cross(at(2).sub(at(1)))
		require.Positive(t, normal.dot(at(0).sub(centre)), side)
		require.InEpsilon(t, at(2).sub(at(0)).cross(at(3).sub(at(1))).size()/2, float64(b.FaceArea(side))*1e6, 1e-9, side)
	}
}
