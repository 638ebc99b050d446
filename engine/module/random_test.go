package module

import (
	"math/rand/v2"
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// randomModule draws a module: open or closed, any turns, unequal thicknesses, all
// joints, dividers. Most can be made; some cannot.
func randomModule(seed uint64) plan.Module {
	rng := rand.New(rand.NewPCG(seed, 2))
	length := func(lo, hi int) unit.Length { return unit.Length(lo+rng.IntN(hi-lo)) * mm / 4 }
	m := plan.Module{ID: "m1", Depth: length(400, 1200), Wood: "white-oak", Closed: rng.IntN(3) == 0}
	n := 1 + rng.IntN(6)
	if m.Closed {
		n += 2
	}
	t := length(64, 176)
	for i := range n {
		b := plan.Board{Thickness: t, Length: document.Some(length(600, 3200))}
		if rng.IntN(3) == 0 {
			b.Thickness = length(64, 176)
		}
		if m.Closed && i >= n-2 {
			b.Length = document.Opt[unit.Length]{}
		}
		m.Boards = append(m.Boards, b)
	}
	m.Corners = randomCorners(rng, n, m.Closed)
	for i := range rng.IntN(3) {
		if n < 3 {
			break
		}
		from, to := 1+rng.IntN(n), 1+rng.IntN(n)
		m.Dividers = append(m.Dividers, plan.Divider{
			ID: "d" + strconv.Itoa(i+1), From: from, To: to, At: length(200, 2000), Thickness: length(64, 120),
			Start: []string{"housed", "butt"}[rng.IntN(2)], End: []string{"housed", "butt"}[rng.IntN(2)],
		})
	}
	return m
}

func randomCorners(rng *rand.Rand, n int, closed bool) (out []plan.Corner) {
	turns := make([]unit.Angle, n-1)
	for i := range turns {
		turns[i] = unit.Angle(rng.IntN(280)-140) * unit.Degree
		if rng.IntN(3) > 0 || turns[i] == 0 {
			turns[i] = []unit.Angle{unit.QuarterTurn, -unit.QuarterTurn}[rng.IntN(2)]
		}
		if rng.IntN(4) == 0 {
			turns[i] += unit.Angle(rng.IntN(1_000_000))
		}
	}
	if closed {
		turns = closedTurns(rng, n)
	}
	for _, a := range turns {
		c := plan.Corner{Turn: a, Joint: joint.Mitre}
		if rng.IntN(3) == 0 {
			c.Joint = []string{joint.ButtFirst, joint.ButtSecond}[rng.IntN(2)]
		}
		if a.Abs() == unit.QuarterTurn && rng.IntN(4) == 0 {
			c.Joint = []string{joint.RebateFirst, joint.RebateSecond}[rng.IntN(2)]
		}
		out = append(out, c)
	}
	return out
}

// closedTurns draws turns whose sum is a full turn, often those of a regular polygon.
func closedTurns(rng *rand.Rand, n int) []unit.Angle {
	turns := make([]unit.Angle, n)
	rest := unit.FullTurn
	for i := range turns {
		share := rest / unit.Angle(n-i)
		if i < n-1 && rng.IntN(2) == 0 {
			share += unit.Angle(rng.IntN(41)-20) * unit.Degree
		}
		turns[i] = share
		rest -= share
	}
	if rng.IntN(2) == 0 {
		for i := range turns {
			turns[i] = -turns[i]
		}
	}
	return turns
}
