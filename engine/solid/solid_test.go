package solid_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/assets"
	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/solid"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

// closed asks whether every edge is run both ways equally often. Only where two cuts
// touch along a line do more than two faces share an edge.
func closed(s *solid.Solid) error {
	count := map[[2]int]int{}
	for _, f := range s.Faces {
		for _, loop := range f.Loops {
			for i, a := range loop {
				count[[2]int{a, loop[(i+1)%len(loop)]}]++
			}
		}
	}
	for e, n := range count {
		if back := count[[2]int{e[1], e[0]}]; n != back {
			return fmt.Errorf("edge %v runs %d times, back %d times", e, n, back)
		}
	}
	return nil
}

// shells counts the parts of a surface that hang together by edges.
func shells(s *solid.Solid) (n int) {
	root := make([]int, len(s.Vertices))
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			i = root[i]
		}
		return i
	}
	seen := map[int]bool{}
	for _, f := range s.Faces {
		for _, loop := range f.Loops {
			for _, k := range loop {
				root[find(k)] = find(f.Loops[0][0])
				seen[k] = true
			}
		}
	}
	for k := range seen {
		if root[k] == k {
			n++
		}
	}
	return n
}

// euler returns V − E + F − H, H the number of holes in faces: 2·(shells − handles). A
// corner at which the surface touches itself counts as often as it is gone round. It
// reports false where it touches itself along a line.
func euler(s *solid.Solid) (x int, ok bool) {
	after := map[[2]int]int{} // the edge that leaves a corner, by the edge that comes to it
	edges := 0
	for _, f := range s.Faces {
		x += 2 - len(f.Loops)
		for _, loop := range f.Loops {
			edges += len(loop)
			for i, a := range loop {
				n := len(loop)
				after[[2]int{a, loop[(i+1)%n]}] = loop[(i+2)%n]
			}
		}
	}
	if len(after) != edges {
		return 0, false
	}
	seen := map[[2]int]bool{}
	for e := range after {
		if !seen[e] {
			x++
		}
		for !seen[e] { // round the corner from face to face
			seen[e] = true
			e = [2]int{after[e], e[1]}
		}
	}
	return x - edges/2, true
}

// flat returns how far the corners of faces lie off their planes.
func flat(s *solid.Solid) (off float64) {
	for _, f := range s.Faces {
		at := s.Vertices[f.Loops[0][0]]
		for _, loop := range f.Loops {
			for _, k := range loop {
				off = max(off, math.Abs(f.Normal.Dot(s.Vertices[k].Sub(at))))
			}
		}
	}
	return off
}

// excess is by how much a faceted board may hold more wood than the round one: each round
// cut takes n/2·r²·sin(2π/n) in place of πr² over its length.
func excess(b *board.Board, chord float64) (most float64) {
	for _, r := range b.Removed() {
		if r.Radius == 0 {
			continue
		}
		long := r.V1 - r.V0
		if !r.AlongV {
			long = math.Hypot(r.To[0]-r.From[0], r.To[1]-r.From[1])
		}
		n := float64(solid.Facets(r.Radius, chord))
		most += long * r.Radius * r.Radius * (math.Pi - n/2*math.Sin(2*math.Pi/n))
	}
	return most
}

func boards(t testing.TB) (all []board.Board) {
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, m := range p.Modules {
			all = append(all, module.Derive(m, p.Shop).Boards...)
		}
	}
	return all
}

// shortfall is by how much a faceted board may hold less wood: the chords of a round-over
// lie inside its arc, r²/2·(φ − n·sin(φ/n)) of each section, with φ the angle that the arc
// goes through.
func shortfall(b *board.Board, chord float64) (most float64) {
	start, end := b.Ends()
	lean := map[string]float64{
		"start-a": lean(start, b), "start-b": -lean(start, b), "end-a": -lean(end, b), "end-b": lean(end, b),
	}
	for _, f := range b.Features {
		if f.Kind != board.RoundOver {
			continue
		}
		r, turn := f.Size.MM(), math.Pi/2+lean[f.Arris]
		long := b.Length.MM()
		if lean[f.Arris] != 0 || f.Arris[:3] == "sta" || f.Arris[:3] == "end" {
			long = b.Width.MM()
		}
		n := math.Ceil(turn/(2*math.Acos(1-min(chord/r, 1))) - 1e-9)
		most += long * r * r / 2 * (turn - n*math.Sin(turn/n))
	}
	return most
}

// lean is the angle of an end from square, positive where face B is the farther along u.
func lean(c board.Cut, b *board.Board) float64 {
	return math.Atan2((c.AtB - c.AtA).MM(), b.Thickness.MM())
}

// requireSound asks of a board's surface what every surface must have. Volume is checked
// against [board.Board.Volume], which integrates sections and knows no faces: equal but
// for the chords of round cuts, and for what its rule of integration leaves, as a share
// of the board.
func requireSound(t require.TestingT, b *board.Board, chord, rest float64, says string) {
	s := solid.Of(b, solid.Options{Chord: chord})
	require.NoError(t, closed(&s), says)
	require.LessOrEqual(t, flat(&s), 1e-3, "%s: no corner is more than a touch off its face", says)
	x, _ := euler(&s)
	require.LessOrEqual(t, x, 2*shells(&s), says)
	require.Zero(t, x%2, "%s: twice shells less handles", says)
	over := s.Volume() - float64(b.Volume())*1e9
	slack := rest * float64(b.Volume()) * 1e9
	require.LessOrEqual(t, over, excess(b, chord)+slack, says)
	require.GreaterOrEqual(t, over, -shortfall(b, chord)-slack, says)
}

func TestSurfacesOfExamplesAreClosed(t *testing.T) {
	for _, b := range boards(t) {
		requireSound(t, &b, 0.05, 2e-7, b.ID)
	}
}

func TestSurfacesOfRandomPlansAreClosed(t *testing.T) {
	for seed := range uint64(150) {
		p := jobs.RandomPlan(seed)
		for _, m := range p.Modules {
			for _, b := range module.Derive(m, p.Shop).Boards {
				requireSound(t, &b, 0.2, 2e-7, fmt.Sprintf("plan %d, %s", seed, b.ID))
			}
		}
	}
}

const mm = unit.Millimetre

// plain is a square board of 300 × 200 × 24 with cuts.
func plain(f ...board.Feature) *board.Board {
	return &board.Board{Length: 300 * mm, Width: 200 * mm, Thickness: 24 * mm, Features: f}
}

func bore(u, w, diameter, depth unit.Length) board.Feature {
	return board.Feature{Kind: board.Bore, Enter: board.Back, Mouth: board.Point{U: u, W: w}, Diameter: diameter, Depth: depth}
}

func groove(u, v, along, across, depth unit.Length) board.Feature {
	return board.Feature{Kind: board.Groove, Enter: board.FaceA, Mouth: board.Point{U: u, V: v}, Along: along, Across: across, Depth: depth}
}

func pocket(u, w, along, across, depth unit.Length) board.Feature {
	return board.Feature{Kind: board.Pocket, Enter: board.Back, Mouth: board.Point{U: u, W: w}, Along: along, Across: across, Depth: depth}
}

func mitres(a, b unit.Length) []board.Feature {
	return []board.Feature{
		{Kind: board.EndCut, Enter: board.Start, AtA: max(a, 0), AtB: max(-a, 0)},
		{Kind: board.EndCut, Enter: board.End, AtA: 300*mm - max(b, 0), AtB: 300*mm - max(-b, 0)},
	}
}

// What can be counted and worked out by hand: faces, handles, and the wood that is left.
func TestSurfacesByHand(t *testing.T) {
	const whole = 300. * 200 * 24
	through := func(f board.Feature) board.Feature { f.Through = true; return f }
	ngon := func(r float64) float64 {
		n := float64(solid.Facets(r, 0.05))
		return n / 2 * r * r * math.Sin(2*math.Pi/n)
	}
	sides := solid.Facets(6, 0.05)
	cases := []struct {
		name   string
		b      *board.Board
		faces  int
		euler  int
		volume float64
	}{
		{"board", plain(), 6, 2, whole},
		{"mitred", plain(mitres(24*mm, 24*mm)...), 6, 2, whole - 24*24*200},
		{"leaning the other way at each end", plain(mitres(-10*mm, 24*mm)...), 6, 2, whole - 17*24*200},
		{"blind bore", plain(bore(60*mm, 12*mm, 12*mm, 100*mm)), 6 + sides + 1, 2, whole - 100*ngon(6)},
		{"bore right through", plain(bore(60*mm, 12*mm, 12*mm, 200*mm)), 6 + sides, 0, whole - 200*ngon(6)},
		{"stopped groove", plain(groove(150*mm, 100*mm, 200*mm, 12*mm, 8*mm)), 6 + 5, 2, whole - 200*12*8},
		{"groove through both ends", plain(through(groove(150*mm, 100*mm, 300*mm, 12*mm, 8*mm))), 6 + 3 + 1, 2, whole - 300*12*8},
		{"bore in its pocket", plain(pocket(60*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(60*mm, 12*mm, 12*mm, 100*mm)), 6 + 5 + sides + 1, 2, whole - 60*16*6 - 94*ngon(6)},
		{"the same cut three times", plain(groove(150*mm, 100*mm, 200*mm, 12*mm, 8*mm), groove(150*mm, 100*mm, 200*mm, 12*mm, 8*mm), groove(150*mm, 100*mm, 200*mm, 12*mm, 8*mm)), 11, 2, whole - 200*12*8},
		{"two grooves end to end", plain(groove(100*mm, 100*mm, 100*mm, 12*mm, 8*mm), groove(200*mm, 100*mm, 100*mm, 12*mm, 8*mm)), 11, 2, whole - 200*12*8},
		{"two grooves that cross, one depth", plain(groove(150*mm, 100*mm, 200*mm, 12*mm, 8*mm), groove(150*mm, 100*mm, 12*mm, 100*mm, 8*mm)), 6 + 1 + 12, 2, whole - (200*12+100*12-12*12)*8},
		{"rebate", plain(board.Feature{Kind: board.Housing, Enter: board.FaceA, Mouth: board.Point{U: 288 * mm, V: 100 * mm}, Along: 24 * mm, Across: 200 * mm, Depth: 12 * mm, Through: true}), 8, 2, whole - 24*12*200},
		{"chamfer", plain(board.Feature{Kind: board.Chamfer, Arris: "front-a", Size: 3 * mm}), 7, 2, whole - 4.5*300},
	}
	for _, c := range cases {
		s := solid.Of(c.b, solid.Options{})
		require.NoError(t, closed(&s), c.name)
		require.Equal(t, c.faces, len(s.Faces), c.name)
		x, ok := euler(&s)
		require.True(t, ok, c.name)
		require.Equal(t, c.euler, x, c.name)
		require.InEpsilon(t, c.volume, s.Volume(), 1e-9, c.name)
	}
}

// A light's groove with the bore of its lead is a handle: in at one, out at the other.
func TestGrooveAndLeadMakeAHandle(t *testing.T) {
	s := solid.Of(plain(groove(150*mm, 100*mm, 200*mm, 12*mm, 8*mm), bore(150*mm, 6*mm, 6*mm, 100*mm)), solid.Options{})
	require.NoError(t, closed(&s))
	x, ok := euler(&s)
	require.True(t, ok)
	require.Equal(t, 0, x)
}

func TestFacetsKeepToTheirChord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, chord := rapid.Float64Range(0.5, 40).Draw(t, "r"), rapid.Float64Range(0.01, 0.5).Draw(t, "chord")
		n := float64(solid.Facets(r, chord))
		require.LessOrEqual(t, r*(1-math.Cos(math.Pi/n)), chord+1e-12)
	})
}

// Any cuts into a board with any ends, over the edge or not, into each other or not: three
// round things through one place leave the integral some parts in 10⁶.
func TestSurfacesOfRandomCutsAreClosed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi int) unit.Length {
			return unit.Length(rapid.IntRange(2*lo, 2*hi).Draw(t, name)) * mm / 2
		}
		b := plain(mitres(draw("start", -40, 40), draw("end", -40, 40))...)
		start, _ := b.Ends()
		for range rapid.IntRange(0, 6).Draw(t, "cuts") {
			u, v, w := draw("u", 10, 290), draw("v", 0, 200), draw("w", 0, 24)
			tilt := unit.Angle(rapid.IntRange(-60, 60).Draw(t, "tilt")) * unit.Degree
			f := []board.Feature{
				groove(u, v, draw("along", 10, 200), draw("across", 2, 20), draw("deep", 2, 20)),
				bore(u, w, draw("diameter", 3, 20), draw("deep", 10, 190)),
				pocket(u, w, draw("along", 10, 60), draw("across", 4, 20), draw("deep", 3, 15)),
				{Kind: board.Slot, Enter: board.Start, Mouth: board.Point{U: start.At(w, b.Thickness), V: v, W: w}, Along: draw("along", 10, 100), Across: draw("across", 2, 6), Depth: draw("deep", 5, 30), Tilt: tilt},
				{Kind: board.Bore, Enter: board.Start, Mouth: board.Point{U: start.At(w, b.Thickness), V: v, W: w}, Diameter: draw("diameter", 4, 10), Depth: draw("deep", 5, 30), Tilt: tilt},
			}[rapid.IntRange(0, 4).Draw(t, "kind")]
			b.Features = append(b.Features, f)
		}
		for _, arris := range []string{"front-a", "back-b", "start-a"} {
			if size := draw(arris, -4, 4); size > 0 {
				kind := []board.Kind{board.Chamfer, board.RoundOver}[rapid.IntRange(0, 1).Draw(t, "round")]
				b.Features = append(b.Features, board.Feature{Kind: kind, Arris: arris, Size: size})
			}
		}
		requireSound(t, b, 0.1, 5e-6, "random cuts")
	})
}

func BenchmarkBoardsOfJobM(b *testing.B) {
	p := jobs.M(1)
	var all []board.Board
	for _, m := range p.Modules {
		all = append(all, module.Derive(m, p.Shop).Boards...)
	}
	for b.Loop() {
		n := 0
		for i := range all {
			s := solid.Of(&all[i], solid.Options{Chord: 0.2})
			n += len(s.Faces)
		}
		b.ReportMetric(float64(n), "faces")
		b.ReportMetric(float64(len(all)), "boards")
	}
}
