package mount

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// studs returns studs 38 wide with their middles at the given places, in mm.
func studs(at ...int) (out []Interval) {
	for _, x := range at {
		c := unit.Length(x) * mm
		out = append(out, Interval{c - 19*mm, c + 19*mm})
	}
	return out
}

// placing is a board with the shop's rule and rods of 12.
func placing(long int, rule string, s []Interval) Placing {
	r := shop.Default(unit.Metric).Brackets
	r.Rule = rule
	return Placing{Length: unit.Length(long) * mm, Studs: s, Rule: r, Rod: 12 * mm}
}

func inMM(at []unit.Length) (out []float64) {
	for _, l := range at {
		out = append(out, l.MM())
	}
	return out
}

func TestPlaced(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Placing
		at   []float64
		how  string
	}{
		{"two studs", placing(520, shop.RuleStuds, studs(60, 460)), []float64{60, 460}, "place.studs"},
		{"in any order", placing(520, shop.RuleStuds, studs(460, 60)), []float64{60, 460}, "place.studs"},
		{"of three the pair with least over L/4", placing(1000, shop.RuleStuds, studs(100, 500, 900)), []float64{100, 500, 900}, "place.studs"},
		{"short overhangs before even ones", placing(600, shop.RuleStuds, studs(100, 200, 400, 540)), []float64{100, 540}, "place.studs"},
		{"widest of the even ones", placing(600, shop.RuleStuds, studs(60, 140, 460, 540)), []float64{60, 540}, "place.studs"},
		{"a stud at the end is met beside its middle", placing(520, shop.RuleStuds, studs(45, 445)), []float64{48, 445}, "place.studs"},
		{"a stud beyond the end is not in reach", placing(520, shop.RuleStuds, studs(35, 435)), []float64{85, 435}, "place.one-stud"},
		{"one stud, the other opposite", placing(520, shop.RuleStuds, studs(100)), []float64{100, 420}, "place.one-stud"},
		{"one stud too near the middle", placing(520, shop.RuleStuds, studs(200)), nil, "place.no-stud"},
		{"none", placing(520, shop.RuleStuds, nil), []float64{104, 416}, "place.no-stud"},
		{"a fifth", placing(520, shop.RuleOverhang, studs(60, 460)), []float64{104, 416}, "place.overhang"},
		{"three from 760 on", placing(761, shop.RuleOverhang, nil), []float64{152.2, 380.5, 608.8}, "place.overhang"},
		{"two up to 760", placing(760, shop.RuleOverhang, nil), []float64{152, 608}, "place.overhang"},
		{"fixed, but 4 d from the end", placing(520, shop.RuleFixed, nil), []float64{125, 395}, "place.fixed"},
		{"too short for two", placing(90, shop.RuleStuds, studs(45)), []float64{45}, "place.no-room"},
	} {
		at, how := Placed(c.p)
		require.Equal(t, c.how, how, c.name)
		if c.at != nil {
			require.Equal(t, c.at, inMM(at), c.name)
		}
		require.Equal(t, at, Places(c.p))
	}
}

// Common practice, without a source: marks 5 in from each end.
func TestMarksFiveInchesFromEachEnd(t *testing.T) {
	p := Placing{Length: 24 * in, Rule: shop.Default(unit.Inches).Brackets, Rod: in / 2}
	p.Rule.Rule = shop.RuleFixed
	require.Equal(t, []unit.Length{5 * in, 19 * in}, Places(p))
}

// One per 15 in (380 mm), at least two: common practice.
func TestHowMany(t *testing.T) {
	for long, want := range map[int]int{100: 2, 380: 2, 760: 2, 761: 3, 1140: 3, 1141: 4} {
		require.Equal(t, want, placing(long, shop.RuleOverhang, nil).count(), long)
	}
	p := placing(1000, shop.RuleOverhang, nil)
	p.Count = 1
	require.Equal(t, []float64{500}, inMM(Places(p)))
}

func TestPlacesAreRoundedToAStep(t *testing.T) {
	p := placing(523, shop.RuleOverhang, nil)
	p.Step = mm
	require.Equal(t, []float64{104, 419}, inMM(Places(p)))
}

// The best pair is what a search over all pairs finds, ranked in words: overhang over
// L/4 first, then evenness, then width.
func TestStudsAgainstAllPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := placing(rapid.IntRange(200, 740).Draw(t, "long"), shop.RuleStuds, nil)
		for i := range rapid.IntRange(2, 5).Draw(t, "studs") {
			p.Studs = append(p.Studs, studs(rapid.IntRange(0, 740).Draw(t, "stud")+i)...)
		}
		at, how := Placed(p)
		reach := p.reached(48*mm, p.Length-48*mm)
		if len(reach) < 2 {
			require.NotEqual(t, "place.studs", how)
			return
		}
		require.Len(t, at, 2)
		over := func(a, b unit.Length) unit.Length { return max(a-p.Length/4, p.Length-b-p.Length/4, 0) }
		uneven := func(a, b unit.Length) unit.Length { return (a - (p.Length - b)).Abs() }
		for i, a := range reach {
			for _, b := range reach[i+1:] {
				require.LessOrEqual(t, over(at[0], at[1]), over(a, b))
				if over(at[0], at[1]) == over(a, b) {
					require.LessOrEqual(t, uneven(at[0], at[1]), uneven(a, b))
				}
			}
		}
	})
}

func TestPlacesAreInOrderAndKeepOffTheEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := placing(rapid.IntRange(1, 6000).Draw(t, "long"), rapid.SampledFrom([]string{shop.RuleStuds, shop.RuleOverhang, shop.RuleFixed}).Draw(t, "rule"), nil)
		for x := rapid.IntRange(0, 900).Draw(t, "first"); x < 6000; x += rapid.IntRange(300, 900).Draw(t, "pitch") {
			p.Studs = append(p.Studs, studs(x)...)
		}
		p.Step = unit.Length(rapid.IntRange(0, 5).Draw(t, "step")) * mm
		p.HeelStart = unit.Length(rapid.IntRange(0, 100).Draw(t, "heel")) * mm
		at, how := Placed(p)
		require.NotEmpty(t, at)
		require.True(t, slices.IsSorted(at))
		require.Equal(t, len(at), len(slices.Compact(slices.Clone(at))), "none twice: %v", at)
		if how == "place.no-room" {
			return
		}
		require.GreaterOrEqual(t, at[0], max(48*mm, p.HeelStart))
		require.LessOrEqual(t, at[len(at)-1], p.Length-48*mm)
	})
}

// Inside the room that it says a bracket has, no end is too near; a hair outside, one is.
func TestRoomIsWhatTheChecksAsk(t *testing.T) {
	near := []string{"rod-near-end", "bore-near-heel", "pocket-near-end", "bracket-too-early", "bracket-too-long"}
	complains := func(i Input) bool {
		return slices.ContainsFunc(keys(Fit(i)), func(k string) bool { return slices.Contains(near, k) })
	}
	for _, k := range hardware.Brackets() {
		for _, b := range []board.Board{plain(900*mm, 200*mm, 45*mm), mitred(900*mm, 200*mm, 45*mm)} {
			i := on(k.ID)
			i.Board.Features, i.Board.Length, i.Board.Thickness = b.Features, b.Length, b.Thickness
			if k.Pitch > 0 {
				i.Length = 2*k.Margin + k.Pitch
			}
			from, to := Room(i)
			require.LessOrEqual(t, from, to, k.ID)
			for _, at := range []unit.Length{from, to} {
				i.At = at
				require.False(t, complains(i), "%s at %v: %v", k.ID, at.MM(), keys(Fit(i)))
			}
			for _, at := range []unit.Length{from - 2, to + 2} {
				i.At = at
				require.True(t, complains(i) || at < 0 || at > i.Board.Length, "%s at %v", k.ID, at.MM())
			}
		}
	}
}

// Whatever is asked, nothing breaks, and every finding is whole.
func TestAnythingCanBeAsked(t *testing.T) {
	all := hardware.Brackets()
	length := func(t *rapid.T, name string) unit.Length {
		return unit.Length(rapid.Int64Range(-10, 2000).Draw(t, name)) * mm
	}
	rapid.Check(t, func(t *rapid.T) {
		i := on(rapid.SampledFrom(all).Draw(t, "kind").ID)
		i.Board = rapid.SampledFrom([]board.Board{plain(700*mm, 200*mm, 24*mm), mitred(700*mm, 200*mm, 24*mm)}).Draw(t, "board")
		i.Board.Width = max(length(t, "width"), mm)
		i.Board.Frame.Dir = unit.Angle(rapid.Int64Range(-360, 360).Draw(t, "dir")) * unit.Degree
		i.Upright = rapid.Bool().Draw(t, "upright")
		i.Edge = rapid.SampledFrom([]board.Face{"", board.Back, board.Front}).Draw(t, "edge")
		i.At, i.Length = length(t, "at"), length(t, "length")
		o := Fit(i)
		require.Equal(t, o, Fit(i))
		for _, f := range o.Findings {
			requireWhole(t, f)
		}
		for _, f := range o.Features {
			require.Positive(t, f.Depth)
			require.Positive(t, f.Diameter+f.Along)
		}
		for _, b := range o.Extra {
			require.Positive(t, b.Length)
		}
	})
}
