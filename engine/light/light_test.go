package light

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

const (
	mm = unit.Millimetre
	in = unit.Inch
)

// plain returns a board with square ends, walked to the right.
func plain(id string, long, wide, thick unit.Length) board.Board {
	return board.Board{ID: id, Role: board.Chain, Wood: "white-oak", Length: long, Width: wide, Thickness: thick,
		Features: []board.Feature{
			{Kind: board.EndCut, Enter: board.Start},
			{Kind: board.EndCut, Enter: board.End, AtA: long, AtB: long},
		}}
}

// cut gives a board its two end cuts.
func cut(b board.Board, startA, startB, endA, endB unit.Length) board.Board {
	b.Features = append([]board.Feature{
		{Kind: board.EndCut, Enter: board.Start, AtA: startA, AtB: startB},
		{Kind: board.EndCut, Enter: board.End, AtA: endA, AtB: endB},
	}, b.Features[2:]...)
	return b
}

func some(l unit.Length) document.Opt[unit.Length] { return document.Some(l) }

// shelf is a groove 12 by 8 in the underside of a shelf, 34 from the front.
func shelf() Input {
	return Input{
		Light: "l1", Module: "m1", Boards: []board.Board{plain("m1.1", 520*mm, 200*mm, 24*mm)}, Face: board.FaceB,
		FromFront: some(34 * mm), Width: 12 * mm, Depth: 8 * mm, StartStop: some(40 * mm), EndStop: some(40 * mm),
		Strip: "strip-24-9.6", Source: "driver-24-15", Lead: 2 * unit.Metre, Shop: shop.Default(unit.Metric),
	}
}

// keys returns the kinds of what was found.
func keys(o Output) []string {
	out := []string{}
	for _, f := range o.Findings {
		out = append(out, f.Kind.Key)
	}
	return out
}

func TestStoppedGroove(t *testing.T) {
	o := Fit(shelf())
	require.Empty(t, keys(o))
	require.Equal(t, board.Feature{
		Kind: board.Groove, Cause: board.Cause{What: "light", ID: "l1"}, Enter: board.FaceB,
		Mouth: board.Point{U: 260 * mm, V: 160 * mm, W: 24 * mm}, Along: 440 * mm, Across: 12 * mm, Depth: 8 * mm,
		After: board.OnBlank,
	}, o.Features[0][0])
	s := o.Strip
	require.Equal(t, 440*mm, s.Groove)
	require.Equal(t, 400*mm, s.Length, "whole units of 50 mm")
	require.Equal(t, 8, s.Units)
	require.Equal(t, unit.Power(9.6*0.4), s.Watts)
	require.Equal(t, []board.StripRun{{Board: "m1.1", Face: board.FaceB,
		From: board.Point{U: 40 * mm, V: 160 * mm, W: 16 * mm}, To: board.Point{U: 440 * mm, V: 160 * mm, W: 16 * mm}}}, s.Runs)
}

// Common practice, without a source: a stopped groove ends 1 in before the edge.
func TestGrooveStopsAnInchBeforeTheEdge(t *testing.T) {
	i := shelf()
	i.Shop = shop.Default(unit.Inches)
	i.Boards = []board.Board{plain("m1.1", 30*in, 8*in, in)}
	i.FromFront, i.Width, i.Depth = some(in), in/2, in/4
	i.StartStop, i.EndStop = some(in), some(in)
	o := Fit(i)
	require.Empty(t, keys(o))
	g := o.Features[0][0]
	require.Equal(t, in, g.Mouth.U-g.Along/2)
	require.Equal(t, 29*in, g.Mouth.U+g.Along/2)
}

// 905 mm of groove hold 18 units of 50 mm: 120 chips a metre at 24 V, 6 a group.
func TestWholeCutUnits(t *testing.T) {
	i := shelf()
	i.Boards = []board.Board{plain("m1.1", 985*mm, 200*mm, 24*mm)}
	o := Fit(i)
	require.Equal(t, 905*mm, o.Strip.Groove)
	require.Equal(t, 18, o.Strip.Units)
	require.Equal(t, 900*mm, o.Strip.Length)
}

func TestThroughGrooveLeavesBothEnds(t *testing.T) {
	i := shelf()
	i.StartStop, i.EndStop = document.Opt[unit.Length]{}, document.Opt[unit.Length]{}
	g := Fit(i).Features[0][0]
	require.True(t, g.Through)
	require.Equal(t, 520*mm, g.Along)
	i.EndStop = some(40 * mm)
	require.False(t, Fit(i).Features[0][0].Through, "stopped at one end")
}

// corner returns a chain of two boards of 24 mitred at a right angle that turns left:
// face A is the inside. The second rises from the end of the first.
func corner() []board.Board {
	a := cut(plain("m1.1", 520*mm, 200*mm, 24*mm), 0, 0, 496*mm, 520*mm)
	b := cut(plain("m1.2", 260*mm, 200*mm, 24*mm), 24*mm, 0, 260*mm, 260*mm)
	b.Frame = board.Frame{X: 496 * mm, Y: -24 * mm, Dir: unit.QuarterTurn}
	return []board.Board{a, b}
}

// The strip's line turns the corner without a gap, on either face, and is as long as
// the floors of the grooves: on the inside, 8 deep, they meet 8 beyond the inner faces.
func TestGrooveRoundACorner(t *testing.T) {
	for face, want := range map[board.Face]unit.Length{
		board.FaceA: (496 + 8 - 40 + 260 - 24 + 8 - 15) * mm,
		board.FaceB: (520 - 8 - 40 + 260 - 8 - 15) * mm,
	} {
		i := shelf()
		i.Boards, i.Joined, i.Face = corner(), []bool{true}, face
		i.EndStop = some(15 * mm)
		o := Fit(i)
		require.Empty(t, keys(o))
		require.Equal(t, want, o.Strip.Groove, face)
		first, second := Fit(i).Strip.Runs[0], Fit(i).Strip.Runs[1]
		x1, y1, z1 := i.Boards[0].Point(first.To)
		x2, y2, z2 := i.Boards[1].Point(second.From)
		require.Equal(t, []unit.Length{x1, y1, z1}, []unit.Length{x2, y2, z2}, face)
		require.Len(t, o.Features[0], 2, "the lead leaves at the start")
		require.Len(t, o.Features[1], 1)
	}
}

// A groove that runs out of a mitre is open at the whole of the mitre: its prism ends
// where the last of the wood does.
func TestGrooveOpensTheWholeMitre(t *testing.T) {
	i := shelf()
	i.Boards, i.Joined, i.Face = corner(), []bool{true}, board.FaceA
	g := Fit(i).Features[0][0]
	require.Equal(t, 504*mm, g.Mouth.U+g.Along/2, "8 deep under the inner arris at 496")
	i.Face = board.FaceB
	g = Fit(i).Features[0][0]
	require.Equal(t, 520*mm, g.Mouth.U+g.Along/2, "the outer arris")
}

func TestGrooveStopsAtACornerItDoesNotPass(t *testing.T) {
	i := shelf()
	i.Boards, i.Joined = corner(), []bool{false}
	o := Fit(i)
	require.Contains(t, keys(o), "groove-corner")
	require.Equal(t, 480*mm, o.Features[0][0].Mouth.U+o.Features[0][0].Along/2)
	require.Equal(t, 40*mm, o.Features[1][0].Mouth.U-o.Features[1][0].Along/2)
}

func TestBackEdgeGroove(t *testing.T) {
	i := shelf()
	i.Face, i.FromFront, i.Width, i.Depth = board.Back, document.Opt[unit.Length]{}, 10*mm, 8*mm
	i.Boards, i.Joined = corner(), []bool{true}
	i.EndStop = some(15 * mm)
	o := Fit(i)
	require.Equal(t, []string{"strip-turn"}, keys(o))
	require.Equal(t, board.Back, o.Features[0][0].Enter)
	require.Equal(t, 12*mm, o.Features[0][0].Mouth.W)
	require.Len(t, o.Features[0], 1, "the lead needs no bore")
	require.Equal(t, 9+4, o.Strip.Units, "each board for itself: 468 and 233 on the middle line")
}

func TestLeadKeepsOffBores(t *testing.T) {
	i := shelf()
	i.Boards[0].Features = append(i.Boards[0].Features,
		board.Feature{Kind: board.Bore, Enter: board.Back, Mouth: board.Point{U: 60 * mm, W: 12 * mm}, Diameter: 13 * mm, Depth: 130 * mm},
		board.Feature{Kind: board.Pocket, Enter: board.Back, Mouth: board.Point{U: 60 * mm, W: 12 * mm}, Along: 42 * mm, Across: 18 * mm, Depth: 6 * mm},
		board.Feature{Kind: board.Bore, Enter: board.Back, Mouth: board.Point{U: 120 * mm, W: 12 * mm}, Diameter: 13 * mm, Depth: 130 * mm})
	o := Fit(i)
	require.Empty(t, keys(o))
	lead := o.Features[0][1]
	require.Equal(t, board.Bore, lead.Kind)
	require.Equal(t, 154*mm+mm/2, lead.Mouth.U, "120 + 6.5 + 25 + 3")
	require.Equal(t, 160*mm, lead.Depth, "to the middle of the groove")
	require.Equal(t, 18*mm, lead.Mouth.W, "bore 3 to 9 mm from face B")
}

func TestNoPlaceForTheLead(t *testing.T) {
	i := shelf()
	for u := 40 * mm; u < 500*mm; u += 60 * mm {
		i.Boards[0].Features = append(i.Boards[0].Features,
			board.Feature{Kind: board.Bore, Enter: board.Back, Mouth: board.Point{U: u, W: 12 * mm}, Diameter: 13 * mm, Depth: 130 * mm})
	}
	o := Fit(i)
	require.Equal(t, []string{"lead-exit"}, keys(o))
	require.Len(t, o.Features[0], 1)
}

// Each rule is broken once, the others kept.
func TestEachRuleIsFound(t *testing.T) {
	for want, change := range map[string]func(*Input){
		"groove-face":       func(i *Input) { i.Face = board.Front },
		"groove-impossible": func(i *Input) { i.Width = 200 * mm },
		"groove-off-board":  func(i *Input) { i.FromFront = some(195 * mm) },
		"groove-empty":      func(i *Input) { i.StartStop = some(490 * mm) },
		"groove-deep":       func(i *Input) { i.Depth = 8*mm + 1 },
		"groove-near-front": func(i *Input) { i.FromFront = some(20*mm - 1) },
		"groove-stop":       func(i *Input) { i.StartStop = some(15*mm - 1) },
		"strip-unknown":     func(i *Input) { i.Strip = "candle" },
		"strip-wide":        func(i *Input) { i.Width = 8*mm + mm/5 - 1 },
		"strip-warm":        func(i *Input) { i.Strip = "strip-24-14.4" },
		"source-none":       func(i *Input) { i.Source = "" },
		"source-unknown":    func(i *Input) { i.Source = "sun" },
		"source-volts":      func(i *Input) { i.Source = "driver-12-15" },
		"groove-into-joint": func(i *Input) {
			i.Boards[0] = cut(i.Boards[0], 24*mm, 0, 520*mm, 520*mm)
			i.StartStop = document.Opt[unit.Length]{}
		},
		"strip-none": func(i *Input) { i.StartStop, i.EndStop = some(240*mm), some(240*mm) },
		"volt-drop":  func(i *Input) { i.Lead = 200 * unit.Metre },
		"source-small": func(i *Input) {
			i.Boards = []board.Board{plain("m1.1", 1500*mm, 200*mm, 24*mm)}
		},
	} {
		i := shelf()
		change(&i)
		o := Fit(i)
		require.Equal(t, []string{want}, keys(o), want)
		requireWhole(t, o.Findings[0])
	}
}

func TestLongStrip(t *testing.T) {
	i := shelf()
	i.Boards = []board.Board{plain("m1.1", 11000*mm, 200*mm, 24*mm)}
	i.Strip, i.Source, i.Lead = "strip-24-4.8", "driver-24-96", 0
	require.Equal(t, []string{"strip-long", "volt-drop"}, keys(Fit(i)))
}

// requireWhole holds that a finding is a declared one with place, words and remedies.
func requireWhole(t require.TestingT, f finding.Finding) {
	require.Contains(t, Kinds(), f.Kind)
	require.NotEmpty(t, f.Remedies, f.Kind.Key)
	require.NotZero(t, f.Place)
	args := append([]words.Arg{{Name: "value", Value: f.Value}, {Name: "limit", Value: f.Limit}}, f.Args...)
	text := words.Text("finding."+f.Kind.Key, args, unit.Style{System: unit.Metric, Step: mm / 10})
	require.NotContains(t, text, "[")
	for _, r := range f.Remedies {
		require.NotContains(t, words.Text("remedy."+r.Key, r.Args, unit.Style{}), "[")
	}
}

// Mending what is found by the first remedy that is an edit leaves that finding out.
func TestRemediesMend(t *testing.T) {
	for _, change := range []func(*Input){
		func(i *Input) { i.Depth = 11 * mm },
		func(i *Input) { i.Width = 7 * mm },
		func(i *Input) { i.FromFront = some(3 * mm) },
		func(i *Input) { i.FromFront = some(400 * mm) },
		func(i *Input) { i.StartStop = some(2 * mm) },
		func(i *Input) { i.EndStop = some(2 * mm) },
	} {
		i := shelf()
		change(&i)
		found := Fit(i).Findings
		require.Len(t, found, 1)
		for _, a := range found[0].Remedies[0].Edit.Args {
			switch a.Name {
			case "depth":
				i.Depth = a.Value.Length
			case "width":
				i.Width = a.Value.Length
			case "fromFront":
				i.FromFront = some(a.Value.Length)
			case "startStop":
				i.StartStop = some(a.Value.Length)
			case "endStop":
				i.EndStop = some(a.Value.Length)
			}
		}
		require.Empty(t, keys(Fit(i)))
	}
}

// Whatever is asked, nothing breaks: a strip lies inside its groove in whole units, and
// a groove inside its board.
func TestAnythingCanBeAsked(t *testing.T) {
	length := rapid.Custom(func(t *rapid.T) unit.Length {
		return unit.Length(rapid.Int64Range(-20, 900).Draw(t, "mm")) * mm
	})
	rapid.Check(t, func(t *rapid.T) {
		i := shelf()
		i.Boards, i.Joined = corner(), []bool{rapid.Bool().Draw(t, "joined")}
		i.Face = rapid.SampledFrom([]board.Face{board.FaceA, board.FaceB, board.Back, "x"}).Draw(t, "face")
		i.Width, i.Depth = length.Draw(t, "width")/8, length.Draw(t, "depth")/20
		i.Exit = rapid.SampledFrom([]string{"", "start", "end"}).Draw(t, "exit")
		for _, o := range []*document.Opt[unit.Length]{&i.StartStop, &i.EndStop, &i.FromFront} {
			if *o = (document.Opt[unit.Length]{}); rapid.Bool().Draw(t, "known") {
				*o = some(length.Draw(t, "so far"))
			}
		}
		o := Fit(i)
		require.Len(t, o.Features, 2)
		require.LessOrEqual(t, o.Strip.Length, o.Strip.Groove)
		laid := unit.Length(0)
		for _, r := range o.Strip.Runs {
			laid += r.To.U - r.From.U
		}
		if i.Face != board.Back {
			require.Equal(t, o.Strip.Length, laid)
		}
		for k, fs := range o.Features {
			for _, f := range fs {
				require.GreaterOrEqual(t, f.Mouth.U-f.Along/2, unit.Length(0))
				require.LessOrEqual(t, f.Mouth.U-f.Along/2+f.Along, i.Boards[k].Length)
			}
		}
		for _, f := range o.Findings {
			requireWhole(t, f)
		}
	})
}
