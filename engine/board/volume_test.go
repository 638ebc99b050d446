package board

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
)

// The tests of this file compute the volume a second way: the board is cut into
// columns along w, and the wood in each column is found from the words of [Feature]
// alone, without a body, a section or a formula of the package.

// A half is the half-plane a·u + b·w <= c.
type half struct{ a, b, c float64 }

// column returns the stretch of w at u that lies in all half-planes.
func column(u float64, halves ...half) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	for _, h := range halves {
		rest := h.c - h.a*u
		switch {
		case h.b > 0:
			hi = min(hi, rest/h.b)
		case h.b < 0:
			lo = max(lo, rest/h.b)
		case rest < 0:
			return 0, -1
		}
	}
	return lo, hi
}

// cutAt returns the stretches of w that f removes at u and v.
func cutAt(b Board, f Feature, u, v float64) [][2]float64 {
	t, far := b.Thickness.MM(), b.Width.MM()
	switch {
	case f.Kind == Chamfer || f.Kind == RoundOver:
		return arrisAt(b, f, u, v)
	case f.Enter == FaceA || f.Enter == FaceB:
		x, y := u-f.Mouth.U.MM(), v-f.Mouth.V.MM()
		r := f.Diameter.MM() / 2
		in := math.Abs(x) <= f.Along.MM()/2 && math.Abs(y) <= f.Across.MM()/2
		if f.Through && f.Kind == Groove {
			in = math.Abs(y) <= f.Across.MM()/2
		}
		if !in && !(r > 0 && x*x+y*y <= r*r) {
			return nil
		}
		if f.Enter == FaceB {
			return [][2]float64{{t - f.Depth.MM(), t}}
		}
		return [][2]float64{{0, f.Depth.MM()}}
	case f.Enter == Back || f.Enter == Front:
		if f.Enter == Front {
			v = far - v
		}
		x, w := u-f.Mouth.U.MM(), f.Mouth.W.MM()
		h := f.Across.MM() / 2
		if f.Diameter > 0 {
			h = math.Sqrt(math.Max(0, f.Diameter.MM()*f.Diameter.MM()/4-x*x))
		}
		if v > f.Depth.MM() || h == 0 || f.Along > 0 && math.Abs(x) > f.Along.MM()/2 {
			return nil
		}
		return [][2]float64{{w - h, w + h}}
	}
	y := v - f.Mouth.V.MM()
	h := f.Across.MM() / 2
	if f.Diameter > 0 {
		h = math.Sqrt(math.Max(0, f.Diameter.MM()*f.Diameter.MM()/4-y*y))
	} else if math.Abs(y) > f.Along.MM()/2 {
		return nil
	}
	turn := f.Tilt.Degrees() * math.Pi / 180
	if f.Enter == End {
		turn += math.Pi
	}
	c, s := math.Cos(turn), math.Sin(turn)
	p, q := f.Mouth.U.MM(), f.Mouth.W.MM()
	lo, hi := column(u, half{c, s, c*p + s*q + f.Depth.MM()}, half{-s, c, h - s*p + c*q}, half{s, -c, h + s*p - c*q})
	if hi <= lo {
		return nil
	}
	return [][2]float64{{lo, hi}}
}

// arrisAt is cutAt for chamfers on any arris and round-overs where two sides meet
// square.
func arrisAt(b Board, f Feature, u, v float64) [][2]float64 {
	t, far, size := b.Thickness.MM(), b.Width.MM(), f.Size.MM()
	start, end := b.Ends()
	side, face, _ := splitArris(f.Arris)
	x := v // from the edge or end
	switch side {
	case Front:
		x = far - v
	case Start, End:
		tip := []Cut{start, end}[map[Face]int{Start: 0, End: 1}[side]]
		if tip.AtA != tip.AtB {
			return endChamferAt(b, side, face, size, u)
		}
		x = math.Abs(u - tip.AtA.MM())
	}
	if x >= size || x < 0 {
		return nil
	}
	deep := size - x
	if f.Kind == RoundOver {
		deep = size - math.Sqrt(size*size-(size-x)*(size-x))
	}
	if face == FaceB {
		return [][2]float64{{t - deep, t}}
	}
	return [][2]float64{{0, deep}}
}

// endChamferAt is the triangle between the tip of a mitre and both legs.
func endChamferAt(b Board, side, face Face, size, u float64) [][2]float64 {
	start, end := b.Ends()
	cut, way := start, 1.0
	if side == End {
		cut, way = end, -1
	}
	t := b.Thickness.MM()
	tip, other := [2]float64{cut.AtA.MM(), 0}, [2]float64{cut.AtB.MM(), t}
	if face == FaceB {
		tip, other = other, tip
	}
	l := math.Hypot(other[0]-tip[0], other[1]-tip[1])
	p := [2]float64{tip[0] + way*size, tip[1]}
	q := [2]float64{tip[0] + (other[0]-tip[0])*size/l, tip[1] + (other[1]-tip[1])*size/l}
	var halves []half
	for _, e := range [][3][2]float64{{tip, p, q}, {p, q, tip}, {q, tip, p}} {
		a, b := e[1][1]-e[0][1], e[0][0]-e[1][0]
		c := a*e[0][0] + b*e[0][1]
		if a*e[2][0]+b*e[2][1] > c {
			a, b, c = -a, -b, -c
		}
		halves = append(halves, half{a, b, c})
	}
	if lo, hi := column(u, halves...); hi > lo {
		return [][2]float64{{lo, hi}}
	}
	return nil
}

// woodAt returns the length of wood in the column at u and v.
func woodAt(b Board, u, v float64) float64 {
	start, end := b.Ends()
	t := b.Thickness.MM()
	s, e := (start.AtB-start.AtA).MM()/t, (end.AtB-end.AtA).MM()/t
	lo, hi := column(u, half{-1, s, -start.AtA.MM()}, half{1, -e, end.AtA.MM()}, half{0, 1, t}, half{0, -1, 0})
	if hi <= lo {
		return 0
	}
	var cuts [][2]float64
	for _, f := range b.Features[2:] {
		cuts = append(cuts, cutAt(b, f, u, v)...)
	}
	slices.SortFunc(cuts, func(x, y [2]float64) int { return int(math.Copysign(1, x[0]-y[0])) })
	left := hi - lo
	for _, c := range cuts {
		from, to := max(c[0], lo), min(c[1], hi)
		if to > from {
			left -= to - from
			lo = to
		}
	}
	return left
}

// marks divides [from, to] at the given places and each part into n.
func marks(from, to float64, n int, at ...float64) []float64 {
	all := append(at, from, to)
	slices.Sort(all)
	var out []float64
	for i := range len(all) - 1 {
		l, r := max(all[i], from), min(all[i+1], to)
		if r-l < 1e-9 {
			continue
		}
		for k := range n {
			out = append(out, l+(r-l)*float64(k)/float64(n))
		}
	}
	return append(out, to)
}

// sliced integrates woodAt by Gauss's rule of three points in every cell of a grid with
// n columns between neighbouring edges of cuts.
func sliced(b Board, n int) float64 {
	var us, vs []float64
	start, end := b.Ends()
	us = append(us, start.AtA.MM(), start.AtB.MM(), end.AtA.MM(), end.AtB.MM())
	for _, f := range b.Features[2:] {
		u, v, s := f.Mouth.U.MM(), f.Mouth.V.MM(), f.Size.MM()
		for _, x := range []float64{f.Along.MM() / 2, f.Diameter.MM() / 2, f.Depth.MM()} {
			us = append(us, u-x, u+x)
			vs = append(vs, v-x, v+x)
		}
		vs = append(vs, v-f.Across.MM()/2, v+f.Across.MM()/2, s, b.Width.MM()-s)
		for _, x := range us[:4:4] {
			us = append(us, x-s, x+s)
		}
	}
	grid, rows := marks(0, b.Length.MM(), n, us...), marks(0, b.Width.MM(), 12, vs...)
	nodes, weights := []float64{-math.Sqrt(0.6), 0, math.Sqrt(0.6)}, []float64{5. / 18, 8. / 18, 5. / 18}
	sum := 0.0
	for i := range len(grid) - 1 {
		for j := range len(rows) - 1 {
			du, dv := grid[i+1]-grid[i], rows[j+1]-rows[j]
			for k, x := range nodes {
				for l, y := range nodes {
					sum += weights[k] * weights[l] * du * dv * woodAt(b, (grid[i]+grid[i+1]+x*du)/2, (rows[j]+rows[j+1]+y*dv)/2)
				}
			}
		}
	}
	return sum
}

func groove(u, v, along, across, depth unit.Length) Feature {
	return Feature{Kind: Groove, Enter: FaceA, Mouth: Point{U: u, V: v}, Along: along, Across: across, Depth: depth}
}

func bore(u, w, diameter, depth unit.Length) Feature {
	return Feature{Kind: Bore, Enter: Back, Mouth: Point{U: u, W: w}, Diameter: diameter, Depth: depth}
}

func pocket(u, w, along, across, depth unit.Length) Feature {
	return Feature{Kind: Pocket, Enter: Back, Mouth: Point{U: u, W: w}, Along: along, Across: across, Depth: depth}
}

func TestVolumeBySlicing(t *testing.T) {
	onB := func(f Feature) Feature { f.Enter, f.Mouth.W = FaceB, 24*mm; return f }
	through := func(f Feature) Feature { f.Through = true; return f }
	slot := Feature{Kind: Slot, Enter: End, Mouth: Point{U: 300*mm - 24*mm + 6*mm, V: 100 * mm, W: 6 * mm}, Along: 150 * mm, Across: 4 * mm, Depth: 12 * mm, Tilt: -45 * unit.Degree}
	key := Feature{Kind: Slot, Enter: Start, Mouth: Point{U: 8 * mm, V: 60 * mm, W: 16 * mm}, Along: 4 * mm, Across: 26 * mm, Depth: 30 * mm, Tilt: 45 * unit.Degree, Through: true}
	dowel := Feature{Kind: Bore, Enter: End, Mouth: Point{U: 300*mm - 12*mm, V: 30 * mm, W: 12 * mm}, Diameter: 8 * mm, Depth: 9 * mm, Tilt: -45 * unit.Degree}
	pilot := Feature{Kind: Bore, Enter: End, Mouth: Point{U: 300*mm - 12*mm, V: 170 * mm, W: 12 * mm}, Diameter: 5 * mm, Depth: 40 * mm}
	arris := func(kind Kind, name string, size unit.Length) Feature {
		return Feature{Kind: kind, Arris: name, Size: size}
	}
	const w, th = 200 * mm, 24 * mm
	cases := []struct {
		name string
		b    Board
	}{
		{"plain", plain(300*mm, w, th)},
		{"mitred", mitred(300*mm, w, th, th)},
		{"groove, pocket and bore apart", plain(300*mm, w, th, groove(150*mm, 160*mm, 200*mm, 12*mm, 8*mm), pocket(60*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(200*mm, 12*mm, 12*mm, 125*mm))},
		{"bore in its pocket", plain(300*mm, w, th, pocket(60*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(60*mm, 12*mm, 12*mm, 125*mm))},
		{"groove into the bore", plain(300*mm, w, th, groove(150*mm, 100*mm, 200*mm, 12*mm, 10*mm), bore(60*mm, 12*mm, 13*mm, 125*mm))},
		{"bore beside a groove's end, half in", plain(300*mm, w, th, groove(150*mm, 100*mm, 200*mm, 12*mm, 10*mm), bore(52*mm, 11*mm, 13*mm, 125*mm))},
		{"two bores that cross", plain(300*mm, w, th, bore(60*mm, 12*mm, 12*mm, 125*mm), Feature{Kind: Bore, Enter: FaceA, Mouth: Point{U: 63 * mm, V: 60 * mm}, Diameter: 8 * mm, Depth: 15 * mm})},
		{"two bores side by side, running into each other", plain(300*mm, w, th, bore(60*mm, 12*mm, 12*mm, 125*mm), bore(67*mm, 14*mm, 10*mm, 80*mm))},
		{"groove through both mitres", mitred(300*mm, w, th, th, through(groove(150*mm, 160*mm, 252*mm, 12*mm, 8*mm)))},
		{"groove through the long side", mitred(300*mm, w, th, th, onB(through(groove(150*mm, 160*mm, 300*mm, 12*mm, 8*mm))))},
		{"groove wider than the edge leaves", plain(300*mm, w, th, groove(150*mm, 196*mm, 200*mm, 20*mm, 8*mm))},
		{"spline slot in a mitre", mitred(300*mm, w, th, th, slot)},
		{"key out of the corner", mitred(300*mm, w, th, th, key)},
		{"dowel and pilot", mitred(300*mm, w, th, th, dowel, pilot)},
		{"slot across dowel and pilot", mitred(300*mm, w, th, th, slot, dowel, pilot)},
		{"chamfers all round", plain(300*mm, w, th, arris(Chamfer, "front-a", 3*mm), arris(Chamfer, "front-b", 2*mm), arris(Chamfer, "start-a", 3*mm), arris(Chamfer, "end-b", 4*mm), arris(Chamfer, "back-b", mm))},
		{"chamfers on mitres", mitred(300*mm, w, th, th, arris(Chamfer, "front-a", 3*mm), arris(Chamfer, "start-a", 3*mm), arris(Chamfer, "end-b", 4*mm))},
		{"round-overs", plain(300*mm, w, th, arris(RoundOver, "front-a", 6*mm), arris(RoundOver, "back-b", 3*mm))},
		{"round-overs at an end", plain(300*mm, w, th, arris(RoundOver, "front-a", 6*mm), arris(RoundOver, "end-a", 6*mm), arris(RoundOver, "start-b", 4*mm))},
		{"round-over on mitred ends", mitred(300*mm, w, th, 14*mm, arris(RoundOver, "front-b", 6*mm))},
		{"rebate and groove", plain(300*mm, w, th, Feature{Kind: Housing, Enter: FaceA, Mouth: Point{U: 288 * mm, V: 100 * mm}, Along: 24 * mm, Across: w, Depth: 12 * mm, Through: true}, through(groove(150*mm, 160*mm, 300*mm, 12*mm, 8*mm)))},
		{"groove in the back edge", plain(300*mm, w, th, Feature{Kind: Groove, Enter: Back, Mouth: Point{U: 150 * mm, W: 12 * mm}, Along: 200 * mm, Across: 8 * mm, Depth: 10 * mm}, bore(100*mm, 12*mm, 12*mm, 125*mm))},
		{"front bore", plain(300*mm, w, th, Feature{Kind: Bore, Enter: Front, Mouth: Point{U: 100 * mm, V: w, W: 12 * mm}, Diameter: 12 * mm, Depth: 125 * mm}, bore(103*mm, 12*mm, 12*mm, 125*mm))},
	}
	for _, c := range cases {
		require.InEpsilon(t, sliced(c.b, 40), float64(c.b.Volume())*1e9, 1e-6, c.name)
	}
}

// What a hand can work out: 12 × 8 over 200; π·6²·125; and both where they overlap.
func TestVolumesByHand(t *testing.T) {
	solid := 300. * 200 * 24
	taken := func(f ...Feature) float64 { return solid - float64(plain(300*mm, 200*mm, 24*mm, f...).Volume())*1e9 }
	g, b := groove(150*mm, 160*mm, 200*mm, 12*mm, 8*mm), bore(60*mm, 12*mm, 12*mm, 125*mm)
	require.InDelta(t, 12*8*200, taken(g), 1e-3)
	require.InDelta(t, math.Pi*36*125, taken(b), 1e-3)
	require.InDelta(t, 12*8*200+math.Pi*36*125, taken(g, b), 1e-3)
	require.InDelta(t, 12*8*200, taken(g, g, g), 1e-3, "a cut that is made three times")
	p := pocket(60*mm, 12*mm, 60*mm, 16*mm, 6*mm)
	require.InDelta(t, 60*16*6+math.Pi*36*119, taken(p, b), 1e-3)
	require.InDelta(t, math.Pi*36*125, taken(b, bore(60*mm, 12*mm, 8*mm, 125*mm)), 1e-3, "a pilot in its bore")
	slot := Feature{Kind: Slot, Enter: Start, Mouth: Point{V: 40 * mm, W: 14 * mm}, Along: 80 * mm, Across: 6 * mm, Depth: 50 * mm}
	require.InDelta(t, 80*6*50+math.Pi*18*80+math.Pi*36*45, taken(slot, bore(25*mm, 11*mm, 12*mm, 125*mm)), 1e-3, "a bore half in a slot that ends where the bore does, halfway along it")
	cross := Feature{Kind: Bore, Enter: FaceA, Mouth: Point{U: 60 * mm, V: 60 * mm}, Diameter: 12 * mm, Depth: 24 * mm}
	require.InDelta(t, math.Pi*36*(125+24)-16./3*216, taken(b, cross), 1e-3, "two equal cylinders share 16/3·r³ (Archimedes)")
}

func TestVolumeOfRandomBoards(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	length := func(lo, hi int) unit.Length { return unit.Length(lo+rng.IntN(hi-lo)) * mm / 2 }
	for i := range 6 {
		b := mitred(300*mm, 120*mm, 24*mm, length(-40, 40))
		for range 1 + rng.IntN(5) {
			u, v, w := length(20, 580), length(0, 240), length(0, 48)
			start, _ := b.Ends()
			f := []Feature{
				groove(u, v, length(20, 300), length(2, 30), length(2, 30)),
				bore(u, w, length(6, 40), length(40, 230)),
				pocket(u, w, length(20, 120), length(8, 40), length(6, 30)),
				{Kind: Slot, Enter: Start, Mouth: Point{U: start.At(w, b.Thickness), V: v, W: w}, Along: length(20, 100), Across: length(4, 12), Depth: length(10, 60), Tilt: unit.Angle(rng.IntN(120)-60) * unit.Degree},
			}[rng.IntN(4)]
			b.Features = append(b.Features, f)
		}
		require.InEpsilon(t, sliced(b, 100), float64(b.Volume())*1e9, 1e-6, strconv.Itoa(i))
	}
}

func BenchmarkVolume(b *testing.B) {
	shelf := mitred(600*mm, 200*mm, 24*mm, 24*mm,
		pocket(60*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(60*mm, 12*mm, 12*mm, 125*mm),
		pocket(500*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(500*mm, 12*mm, 12*mm, 125*mm),
		Feature{Kind: Groove, Enter: FaceA, Mouth: Point{U: 300 * mm, V: 160 * mm}, Along: 552 * mm, Across: 12 * mm, Depth: 8 * mm, Through: true},
	)
	b.ReportAllocs()
	for b.Loop() {
		shelf.Volume()
	}
}
