package plates

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/strength"
)

const gravity = 9.80665

func oak(length, depth float64, rods []float64, tip float64) Board {
	return Board{Length: length, Depth: depth, Thick: 24, Wood: Oak(), Rods: rods, Rod: 12, Tip: tip, Bed: 500, Slack: 0.5, Fine: 14}
}

func ends(length, in float64) []float64 { return []float64{in, length - in} }

// A job is a board with its load, and what the rule says of it.
type job struct {
	name string
	b    Board
	kg   float64
}

// books stand flush with the front edge, 3/4 as deep as the board.
func (c *job) books() Load {
	return Load{Pressure: c.kg * gravity / (c.b.Length * c.b.Depth) / 0.75, From: c.b.Depth / 4, To: c.b.Depth}
}

// half is the left half of the board where it is its own mirror picture without a rod in
// the middle.
func (c *job) half() Board {
	b := c.b
	if len(b.Rods) == 2 {
		b.Half, b.Length, b.Rods = true, b.Length/2, b.Rods[:1]
	}
	return b
}

// rule is the greatest stress that the rule of package strength has at any of the rods.
func (c *job) rule() (most float64) {
	b := &c.b
	for i, r := range b.Rods {
		from, to := 0.0, b.Length
		if i > 0 {
			from = (r + b.Rods[i-1]) / 2
		}
		if i+1 < len(b.Rods) {
			to = (r + b.Rods[i+1]) / 2
		}
		s := strength.Strip{Out: b.Depth - b.Tip, Left: b.Thick, Rod: b.Rod, Room: to - from,
			Rib: b.Ribs && (r <= strength.RibReach || b.Length-r <= strength.RibReach)}
		q := c.kg * gravity / (b.Length * b.Depth) / 0.75 * s.Room
		most = max(most, s.Stress(q*s.Out*s.Out/2))
		if b.Groove.To > 0 {
			s.Out, s.Left, s.Groove = b.Depth-b.Groove.From, b.Groove.Left, true
			most = max(most, s.Stress(q*s.Out*s.Out/2))
		}
	}
	return most
}

func cases() (out []job) {
	for _, l := range []float64{520, 900} {
		for _, depth := range []float64{150, 200, 250, 300} {
			for _, tip := range []float64{0.4, 0.55, 0.7} {
				b := oak(l, depth, ends(l, l*0.12), depth*tip)
				out = append(out, job{fmt.Sprintf("%v x %v, tip %v", l, depth, depth*tip), b, l / 30})
			}
		}
	}
	for _, v := range []func(*Board){
		func(b *Board) { b.Thick = 18 },
		func(b *Board) { b.Thick = 32 },
		func(b *Board) { b.Rod = 16 },
		func(b *Board) { b.Bed = 100 },
		func(b *Board) { b.Bed = 2000 },
		func(b *Board) { b.Slack = 1 },
		func(b *Board) { b.Ribs = true },
		func(b *Board) { b.Groove = Groove{b.Tip + 4, b.Tip + 16, b.Thick - 8} },
		func(b *Board) { b.Groove, b.Ribs = Groove{b.Tip + 4, b.Tip + 16, b.Thick - 8}, true },
		func(b *Board) { b.Groove = Groove{b.Tip + 20, b.Tip + 30, b.Thick - 10} },
		func(b *Board) { b.Length, b.Rods = 900, ends(900, 100) },
		func(b *Board) {
			b.Length, b.Rods, b.Groove = 900, ends(900, 100), Groove{b.Tip + 4, b.Tip + 16, b.Thick - 8}
		},
		func(b *Board) { b.Length, b.Rods, b.Ribs = 900, ends(900, 80), true },
		func(b *Board) { b.Wood = Wood{9400, 480, 600, 0.02} }, // a light softer wood
		func(b *Board) { b.Rods = []float64{b.Length * 0.12, b.Length / 2, b.Length * 0.88} },
		func(b *Board) { b.Rods = ends(b.Length, b.Length/4) },
	} {
		for _, depth := range []float64{200, 250} {
			b := oak(520, depth, ends(520, 60), depth*0.6)
			v(&b)
			out = append(out, job{fmt.Sprintf("%+v", b), b, 15})
		}
	}
	return out
}

// The rule of package strength for wood before a rod's tip and before grooves, against plates
// of all sizes, with the books where the engine puts them: never under 0.9 of what the plate
// has, and never over 1.8 of it. It was under 0.6 with wider spreads and no limit by the
// room, which a first program of even loads on few boards had led to.
func TestRuleAgainstPlates(t *testing.T) {
	all := cases()
	require.GreaterOrEqual(t, len(all), 50)
	low, high := 9.0, 0.0
	for _, c := range all {
		out, err := Bend(c.half(), c.books())
		require.NoError(t, err, c.name)
		part := c.rule() / out.Across
		low, high = min(low, part), max(high, part)
		require.Greater(t, part, 0.9, c.name)
		require.Less(t, part, 1.8, c.name)
	}
	t.Logf("%d plates: the rule has %.2f to %.2f of their stress", len(all), low, high)
}

// Rods that are held all round, as in resin, bend the wood across its grain with them: the
// rule does not know of it, and has down to half of what plates have where rods reach
// further than 0.6 of the depth, or boards are 300 deep. Short of that it holds.
func TestTightBores(t *testing.T) {
	low := 9.0
	for _, c := range cases() {
		c.b.Slack = 0
		out, err := Bend(c.half(), c.books())
		require.NoError(t, err)
		part := c.rule() / out.Across
		low = min(low, part)
		if c.b.Tip < 0.58*c.b.Depth && c.b.Depth < 280 {
			require.Greater(t, part, 0.9, c.name)
		}
	}
	t.Logf("held all round the rule has down to %.2f", low)
	require.Greater(t, low, 0.5)
}

// A finer mesh changes the worst cases by less than a tenth: the greatest stress stands
// at the end of a line of support, and is the sharper the finer the mesh.
func TestMeshIsFineEnough(t *testing.T) {
	for _, c := range cases()[6:7] {
		coarse, err := Bend(c.half(), c.books())
		require.NoError(t, err)
		c.b.Fine = 9
		fine, err := Bend(c.half(), c.books())
		require.NoError(t, err)
		require.InEpsilon(t, fine.Across, coarse.Across, 0.1)
		require.InEpsilon(t, fine.Front, coarse.Front, 0.02)
	}
}

// A hand of 500 N over a rod of a plain board of 520 x 200 x 24 tears with 1.6 MPa by another
// plate program.
func TestHandOnPlate(t *testing.T) {
	b := oak(520, 200, ends(520, 60), 120)
	b.Slack = 0
	out, err := Bend(b, Load{Force: 500, At: 60})
	require.NoError(t, err)
	require.InEpsilon(t, 1.6, out.Across, 0.05)
}

// The rule for a hand over a rod is never under 0.9 of what plates have, with rods near the
// ends and with grooves.
func TestHandRuleAgainstPlates(t *testing.T) {
	low, high := 9.0, 0.0
	for _, depth := range []float64{150, 200, 250, 300} {
		for _, tip := range []float64{0.45, 0.6, 0.7} {
			for _, grooved := range []bool{false, true} {
				for _, at := range []float64{30, 60, 130} {
					b := oak(520, depth, ends(520, at), depth*tip)
					b.Slack = 0
					s := strength.Strip{Out: depth - b.Tip, Left: 24, Rod: 12, Room: 260}
					if grooved {
						b.Groove = Groove{b.Tip + 4, b.Tip + 16, 16}
						s.Out, s.Left, s.Groove = s.Out-4, 16, true
					}
					out, err := Bend(b, Load{Force: 300, At: at})
					require.NoError(t, err)
					part := s.Stress(300*s.Out) * strength.HandPart / out.Across
					low, high = min(low, part), max(high, part)
				}
			}
		}
	}
	t.Logf("the rule has %.2f to %.2f of the stress of plates", low, high)
	require.Greater(t, low, 0.9)
	require.Less(t, high, 3.5)
}

// A strip that is clamped at the wall, without sideways strain: q c⁴ / 8 E I at its front, and
// 6 (q c² / 2) / t² at the wall.
func TestCantilever(t *testing.T) {
	b := Board{Length: 60, Depth: 200, Thick: 24, Wood: Wood{12300, 890, 1000, 0}, Fine: 10, Clamped: true}
	out, err := Bend(b, Load{Pressure: 1e-3, To: 200})
	require.NoError(t, err)
	i := 24.0 * 24 * 24 / 12
	require.InEpsilon(t, 1e-3*200*200*200*200/(8*890*i), out.Front, 1e-3)
	require.InEpsilon(t, 6*(1e-3*196.5*196.5/2)/(24*24), out.Across, 0.01, "at the middle of the first element, 3.4 from the wall")
}
