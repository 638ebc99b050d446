package joint

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// corner returns two boards 600 long that meet at a corner, with their end cuts.
func corner(c Corner, width unit.Length, kind string) Input {
	s := c.Shape()
	in := Input{Corner: c, Reinforcement: Reinforcement{Kind: kind}, Shop: shop.Default(unit.Metric)}
	for i, t := range [2]unit.Length{c.First, c.Second} {
		b := board.Board{ID: []string{"m1.1", "m1.2"}[i], Length: 600 * mm, Width: width, Thickness: t}
		seat := Seat{At: board.End, Inside: s.Inside, Foot: 600*mm - s.Sides[i].Reach(), Thickness: t}
		free := board.Feature{Kind: board.EndCut, Enter: board.Start, Cause: board.Cause{What: "end"}}
		if i == 1 {
			seat.At, seat.Foot = board.Start, s.Sides[i].Reach()
			free.Enter, free.AtA, free.AtB = board.End, 600*mm, 600*mm
		}
		b.Features = []board.Feature{s.Sides[i].Cut(seat, c.Number), free}
		if f, ok := s.Sides[i].Housing(seat, width, c.Number); ok {
			b.Features = append(b.Features, f)
		}
		in.Boards[i] = b
	}
	return in
}

func square(kind string) Input {
	return corner(Corner{Number: 1, Turn: 90 * deg, Joint: Mitre, First: 24 * mm, Second: 24 * mm}, 200*mm, kind)
}

func keys(o Output) (out []string) {
	for _, f := range o.Findings {
		out = append(out, f.Kind.Key)
	}
	return out
}

// 24 mm stock at 45°: a spline 4 thick, slots 12.5 deep and 6 from the heel leave
// t − (s + w + d)/√2 = 24 − 22.5/√2 = 8.1; with 5 mm of cover they could be
// (24 − 5)·√2 − 6 − 4 = 16.9 deep.
func TestSplineInASquareMitre(t *testing.T) {
	in := square(Spline)
	out := Join(in)
	require.Equal(t, []string{"spline-long"}, keys(out))
	require.Equal(t, []board.Piece{{What: "spline", Count: 1, Thickness: 4 * mm, Width: 24 * mm, Length: 170 * mm}}, out.Corner.Pieces)
	for i := range 2 {
		require.Len(t, out.Features[i], 1)
		f := out.Features[i][0]
		require.Equal(t, 4*mm, f.Across)
		require.Equal(t, 12*mm+mm/2, f.Depth)
		require.Equal(t, board.AfterMitre, f.After)
		s := math.Hypot(f.Mouth.W.MM(), f.Mouth.U.MM()-[2]float64{576, 24}[i])
		require.InDelta(t, 6+2, s, 2e-6, "from the heel to the middle of the slot")
	}
	j := job{Input: in, shape: in.Corner.Shape()}
	deep, ok := j.room(0, 6*mm, 4*mm)
	require.True(t, ok)
	require.Equal(t, "16.9", unit.Style{Step: mm / 10}.Length(deep))
	require.InDelta(t, 24-22.5/math.Sqrt2, 24-lowest(out.Features[0][0], in.Boards[0]), 1e-5)
}

// lowest returns how far a slot reaches from the inner face A, from its mouth, size and
// tilt alone.
func lowest(f board.Feature, b board.Board) float64 {
	turn := f.Tilt.Degrees() * math.Pi / 180
	if f.Enter == board.End {
		turn += math.Pi
	}
	c, s := math.Cos(turn), math.Sin(turn)
	deepest := 0.
	for _, x := range []float64{-f.Across.MM() / 2, f.Across.MM() / 2} {
		for _, d := range []float64{0, f.Depth.MM()} {
			deepest = max(deepest, f.Mouth.W.MM()+d*s+x*c)
		}
	}
	return deepest
}

func TestWidthIsLimitedByTheCover(t *testing.T) {
	in := square(Spline)
	in.Width = document.Some(40 * mm)
	out := Join(in)
	require.Equal(t, []string{"piece-too-wide", "spline-long"}, keys(out))
	require.Equal(t, 16*mm+mm/2, out.Features[0][0].Depth, "rounded down to the bench's step")
	require.Equal(t, 32*mm, out.Findings[0].Limit.Length)
	in.Width = document.Some(32 * mm)
	require.Equal(t, []string{"spline-long"}, keys(Join(in)))
}

// The longest stretch of a spline counts, from stop to stop: 60 mm in boards of 90.
func TestSplineOfPlywood(t *testing.T) {
	depth := func(d unit.Length) Output {
		return Join(corner(Corner{Number: 2, Turn: 90 * deg, Joint: Mitre, First: 24 * mm, Second: 24 * mm}, d, Spline))
	}
	require.Empty(t, keys(depth(90*mm)))
	out := depth(91 * mm)
	require.Equal(t, []string{"spline-long"}, keys(out))
	f := out.Findings[0]
	require.Equal(t, []unit.Length{61 * mm, 60 * mm}, []unit.Length{f.Value.Length, f.Limit.Length})
	require.True(t, Once(f.Kind))
	require.NotContains(t, keys(Join(corner(Corner{Number: 2, Turn: 90 * deg, Joint: Mitre, First: 24 * mm, Second: 24 * mm}, 200*mm, Dowel))), "spline-long")
}

func TestNoRoomForAThickSpline(t *testing.T) {
	in := square(Spline)
	in.Reinforcement.Thickness = document.Some(12 * mm)
	out := Join(in)
	require.Equal(t, []string{"piece-no-room"}, keys(out))
	require.Empty(t, out.Features[0])
	require.Equal(t, "8.9", unit.Style{Step: mm / 10}.Length(out.Findings[0].Value.Length), "(24 − 5)·√2 − 6 − 12")
	require.Equal(t, unit.Pressure(1e6), out.Corner.Claim)
}

// Slots keep the cover at every angle, thickness and joint, and the two slots of a piece
// stand opposite each other.
func TestSlotsKeepTheCover(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCorner(t)
		in := corner(c, unit.Length(rapid.Int64Range(60, 400).Draw(t, "width"))*mm, rapid.SampledFrom([]string{Spline, Tenon, Dowel, Key, Screw}).Draw(t, "kind"))
		if rapid.Bool().Draw(t, "typed") {
			in.Width = document.Some(unit.Length(rapid.Int64Range(4, 80).Draw(t, "across")) * mm)
		}
		out := Join(in)
		if in.Kind != Screw {
			require.Equal(t, len(out.Features[0]), len(out.Features[1]))
		}
		for i := range 2 {
			b := in.Boards[i]
			b.Features = append(slices.Clone(b.Features), out.Features[i]...)
			require.Empty(t, board.Clash(b, in.Shop.Covers))
			for k, f := range out.Features[i] {
				require.True(t, in.Kind == Screw || f.Mouth.V == out.Features[0][k].Mouth.V)
			}
		}
		if len(out.Features[0]) > 0 {
			require.NotEmpty(t, out.Corner.Pieces)
			require.Positive(t, float64(out.Corner.GlueArea))
		}
		if in.Kind == Spline || in.Kind == Tenon || in.Kind == Dowel {
			for _, p := range out.Corner.Pieces {
				across := p.Width
				if in.Kind == Dowel {
					across = p.Length
				}
				require.Equal(t, across+in.Shop.Joints.SplinePlay, 2*out.Features[0][0].Depth, "both slots together are the piece and its play")
			}
		}
	})
}

// A row of tenons in 200 mm: two, 40 long, 30 from the edges; in 300 three.
func TestRows(t *testing.T) {
	centres := func(in Input) (v []unit.Length) {
		for _, f := range Join(in).Features[0] {
			v = append(v, f.Mouth.V)
		}
		return v
	}
	require.Equal(t, []unit.Length{50 * mm, 150 * mm}, centres(square(Tenon)))
	in := square(Tenon)
	in.Boards[0].Width, in.Boards[1].Width = 300*mm, 300*mm
	require.Equal(t, []unit.Length{50 * mm, 150 * mm, 250 * mm}, centres(in))
	require.Len(t, centres(square(Dowel)), 3)
	require.Len(t, centres(square(Key)), 3)
	in = square(Dowel)
	in.Count = document.Some(5)
	require.Len(t, centres(in), 5)
	in.Count = document.Some(0)
	require.Empty(t, centres(in))
	for kind, want := range map[string][]unit.Length{Tenon: {30 * mm}, Dowel: {14 * mm, 46 * mm}} {
		in = square(kind)
		in.Boards[0].Width, in.Boards[1].Width = 60*mm, 60*mm
		require.Equal(t, want, centres(in), "a narrow board has them nearer to its edges")
	}
}

// Pieces stand clear of a groove that passes the corner and of a bore, and what finds no
// place is said.
func TestPiecesKeepClear(t *testing.T) {
	groove := board.Feature{Kind: board.Groove, Cause: board.Cause{What: "light", ID: "l1"}, Enter: board.FaceA,
		Mouth: board.Point{U: 300 * mm, V: 150 * mm}, Along: 600 * mm, Across: 12 * mm, Depth: 8 * mm, Through: true}
	for _, kind := range []string{Spline, Tenon, Dowel, Key, Screw} {
		in := square(kind)
		for i := range 2 {
			in.Boards[i].Features = append(in.Boards[i].Features, groove)
		}
		out := Join(in)
		require.NotEmpty(t, out.Features[0], kind)
		for i := range 2 {
			b := in.Boards[i]
			b.Features = append(slices.Clone(b.Features), out.Features[i]...)
			require.Empty(t, board.Clash(b, in.Shop.Covers), kind)
		}
		plain := Join(square(kind))
		if kind == Spline {
			require.Len(t, out.Features[0], 2, "a spline on each side of the groove")
			require.InDelta(t, float64(unit.Rectangle(12*mm, unit.Nearest(8*math.Sqrt2))+unit.Rectangle(4*mm, 152*mm)),
				float64(unit.Rectangle(unit.Nearest(24*math.Sqrt2), 200*mm)-out.Corner.GlueArea), 1e-9)
		} else {
			require.Len(t, out.Features[0], len(plain.Features[0]), kind)
		}
	}
	in := square(Tenon)
	in.Count = document.Some(9)
	require.Equal(t, []string{"pieces-left-out"}, keys(Join(in)))
}

// The screw's hole goes on in the other board on the same axis.
func TestScrewsAreStraight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCorner(t)
		in := corner(c, 200*mm, Screw)
		out := Join(in)
		if len(out.Corner.Pieces) == 0 {
			require.NotEmpty(t, out.Findings)
			return
		}
		s := c.Shape()
		th := max(s.Through, 0)
		hole, pilot := out.Features[th][1], out.Features[1-th][0]
		j := job{Input: in, shape: s}
		j.seats = [2]Seat{j.seat(0), j.seat(1)}
		// from the through board: x beyond P, y at the far end of the hole
		x := beyond(j.seats[th], hole.Mouth.U)
		y := in.Boards[th].Thickness.MM() - hole.Depth.MM()
		ox, oy := beyond(j.seats[1-th], pilot.Mouth.U), depth(j.seats[1-th], pilot.Mouth.W)
		px, py := fromFirst(s.Interior, ox, oy)
		require.InDelta(t, x, px, 1e-5)
		require.InDelta(t, y, py, 1e-5)
		// the pilot's axis in the other board, turned into the through board, runs along −y
		sin, cos := pilot.Tilt.SinCos()
		ax, ay := cos, sin
		if j.seats[1-th].At == board.End {
			ax, ay = -cos, -sin
		}
		out2 := 1. // x counts out of the wood
		if j.seats[1-th].At == board.Start {
			out2 = -1
		}
		down := 1.
		if s.Inside == board.FaceB {
			down = -1
		}
		dx, dy := fromFirst(s.Interior, out2*ax, down*ay)
		require.InDelta(t, 0, dx, 1e-6)
		require.InDelta(t, -1, dy, 1e-6)
	})
}

// beyond and depth read a seat backwards.
func beyond(s Seat, u unit.Length) float64 {
	if s.At == board.Start {
		return (s.Foot - u).MM()
	}
	return (u - s.Foot).MM()
}

func depth(s Seat, w unit.Length) float64 {
	if s.Inside == board.FaceB {
		return (s.Thickness - w).MM()
	}
	return w.MM()
}

func TestClaims(t *testing.T) {
	claim := func(in Input) (float64, string) {
		c := Join(in).Corner
		return float64(c.Claim), c.ClaimBasis
	}
	p, basis := claim(square(""))
	require.Equal(t, 1e6, p)
	require.Equal(t, "claim.mitre", basis)
	p, basis = claim(square(Spline))
	require.Equal(t, 1.3e6, p)
	require.Equal(t, "claim.mitre-reinforced", basis)
	p, _ = claim(square(Tenon)) // 80 of 200
	require.Equal(t, 1e6, p)
	p, _ = claim(square(Key))
	require.Equal(t, 1e6, p, "keys add nothing")
	for _, kind := range []string{ButtFirst, RebateSecond} {
		p, basis = claim(corner(Corner{Number: 1, Turn: 90 * deg, Joint: kind, First: 24 * mm, Second: 24 * mm}, 200*mm, ""))
		require.Zero(t, p)
		require.Equal(t, "claim.none", basis)
	}
	p, _ = claim(corner(Corner{Number: 1, Turn: 60 * deg, Joint: Mitre, First: 24 * mm, Second: 24 * mm}, 200*mm, ""))
	require.Equal(t, 1e6, p, "a hexagon")
	p, _ = claim(corner(Corner{Number: 1, Turn: 30 * deg, Joint: Mitre, First: 24 * mm, Second: 24 * mm}, 200*mm, ""))
	require.Zero(t, p, "nearly end grain")
}

func TestFindings(t *testing.T) {
	at := func(turn unit.Angle, joint, kind string, t1, t2 unit.Length) []string {
		return keys(Join(corner(Corner{Number: 1, Turn: turn, Joint: joint, First: t1, Second: t2}, 200*mm, kind)))
	}
	cases := []struct {
		name string
		got  []string
		want []string
	}{
		{"square", at(90*deg, Mitre, "", 24*mm, 24*mm), nil},
		{"triangle", at(120*deg, Mitre, "", 24*mm, 24*mm), []string{"tilt-over-saw", "tilt-over-saw"}},
		{"30 on 20", at(90*deg, Mitre, "", 30*mm, 20*mm), []string{"tilt-over-saw"}},
		{"sharp butt", at(140*deg, ButtFirst, "", 24*mm, 24*mm), []string{"tilt-over-saw", "tilt-over-saw"}},
		{"rebate not square", at(80*deg, RebateFirst, "", 24*mm, 24*mm), []string{"rebate-not-square"}},
		{"no such joint", at(90*deg, "dovetail", "", 24*mm, 24*mm), []string{"joint-unknown"}},
		{"key in a butt", at(90*deg, ButtFirst, Key, 24*mm, 24*mm), []string{"piece-does-not-suit"}},
		{"spline in a rebate", at(90*deg, RebateFirst, Spline, 24*mm, 24*mm), []string{"piece-does-not-suit"}},
		{"screws in a rebate", at(90*deg, RebateFirst, Screw, 24*mm, 24*mm), nil},
		{"spline in one length", at(90*deg, Mitre, Spline, 24*mm, 24*mm), []string{"spline-long"}},
		{"spline in thin boards", at(90*deg, Mitre, Spline, 8*mm, 8*mm), []string{"piece-no-room"}},
	}
	seen := map[string]bool{"piece-too-wide": true, "pieces-left-out": true} // in tests above
	for _, c := range cases {
		require.Equal(t, c.want, c.got, c.name)
		for _, k := range c.got {
			seen[k] = true
		}
	}
	for _, k := range Kinds() {
		require.True(t, seen[k.Key], "%s is never found", k.Key)
	}
	o := Join(corner(Corner{Number: 3, Turn: 120 * deg, Joint: Mitre, First: 24 * mm, Second: 24 * mm}, 200*mm, ""))
	f := o.Findings[0]
	require.Equal(t, 60*deg, f.Value.Angle)
	require.Equal(t, 45*deg, f.Limit.Angle)
	require.Equal(t, 3, f.Place.Corner)
	require.Equal(t, "make-it-a-butt", f.Remedies[0].Key, "a butt at 60° tilts 30°")
	require.Equal(t, ButtFirst, f.Remedies[0].Edit.Args[1].Value.Text)
}
