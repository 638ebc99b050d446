package mount

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

const (
	mm = unit.Millimetre
	in = unit.Inch
)

// plain returns a board with square ends, walked to the right: face A is up.
func plain(long, wide, thick unit.Length) board.Board {
	return board.Board{ID: "m1.1", Role: board.Chain, Wood: "white-oak", Length: long, Width: wide, Thickness: thick,
		Features: []board.Feature{
			{Kind: board.EndCut, Enter: board.Start},
			{Kind: board.EndCut, Enter: board.End, AtA: long, AtB: long},
		}}
}

// mitred returns the same with both ends mitred at 45°, short points on face A.
func mitred(long, wide, thick unit.Length) board.Board {
	b := plain(long, wide, thick)
	b.Features[0].AtA = thick
	b.Features[1].AtA = long - thick
	return b
}

// upright returns a board that rises, face A on its left.
func upright(long, wide, thick unit.Length) board.Board {
	b := plain(long, wide, thick)
	b.Frame.Dir = unit.QuarterTurn
	return b
}

// on asks for one bracket on a board of 520 by 200 in 26 mm stock.
func on(kind string) Input {
	i := Input{Bracket: "b5", Module: "m1", Kind: kind, Board: plain(520*mm, 200*mm, 26*mm), At: 120 * mm, Shop: shop.Default(unit.Metric)}
	if k, _ := hardware.Bracket(kind); k.Attitude == hardware.Plumb {
		i.Board, i.Upright = upright(520*mm, 200*mm, 26*mm), true
	}
	return i
}

// keys returns the kinds of what was found.
func keys(o Output) []string {
	out := []string{}
	for _, f := range o.Findings {
		out = append(out, f.Kind.Key)
	}
	return out
}

// only returns the features of one kind.
func only(kind board.Kind, features []board.Feature) (out []board.Feature) {
	for _, f := range features {
		if f.Kind == kind {
			out = append(out, f)
		}
	}
	return out
}

func TestPlateInTheBackEdge(t *testing.T) {
	o := Fit(on("plate-back-12"))
	require.Empty(t, keys(o))
	cause := board.Cause{What: "bracket", ID: "b5"}
	axis := board.Point{U: 120 * mm, W: 13 * mm}
	require.Equal(t, []board.Feature{
		{Kind: board.Bore, Cause: cause, Enter: board.Back, Mouth: axis, Diameter: 13 * mm, Depth: 140 * mm, After: board.OnBlank},
		{Kind: board.Pocket, Cause: cause, Enter: board.Back, Mouth: axis, Along: 42 * mm, Across: 18 * mm, Depth: 6 * mm, After: board.OnBlank},
		{Kind: board.Bore, Cause: cause, Enter: board.FaceB, Mouth: board.Point{U: 120 * mm, V: 67*mm + mm/2, W: 26 * mm}, Diameter: 8 * mm, Depth: 13 * mm, After: board.AfterGlue},
	}, o.Features)
	require.Equal(t, board.Fixing{
		Bracket: "b5", Kind: "plate-back-12", Board: "m1.1", At: axis,
		Rods: []board.Rod{{At: axis, Diameter: 12 * mm, Root: 12 * mm, InBoard: 135 * mm, Bore: 13 * mm}},
		Screws: []board.Screw{
			{DU: -12 * mm, Diameter: mm * 9 / 2, Root: mm * 31 / 10, Length: 60 * mm, Drill: mm * 5 / 2, Plug: 8 * mm},
			{DU: 12 * mm, Diameter: mm * 9 / 2, Root: mm * 31 / 10, Length: 60 * mm, Drill: mm * 5 / 2, Plug: 8 * mm},
		},
		Plate: board.Plate{AlongU: 40 * mm, AlongW: 16 * mm, Thickness: 5 * mm},
		Lock:  "grub-screw", Seat: "pocket", Attitude: board.Level, Carries: true,
	}, o.Fixing)
}

// A rod of 12 mm sits 75 mm (3 in) in its stud, as in Fine Homebuilding, Hidden shelf
// connections, September 1981.
func TestRodInTheStructure(t *testing.T) {
	o := Fit(on("rod-structure-12"))
	require.Empty(t, keys(o))
	require.Empty(t, only(board.Pocket, o.Features))
	require.Equal(t, 75*mm, o.Fixing.Rods[0].InWall)
	require.Equal(t, []board.Screw{{Diameter: 12 * mm, Root: 12 * mm, Length: 75 * mm, Rod: true, Drill: 14 * mm, Plug: 14 * mm}}, o.Fixing.Screws)
	require.Equal(t, board.Plate{}, o.Fixing.Plate)
}

// Common practice, without a source: a shelf 5 3/4 in deep takes a 1/2 in bore 4 1/2 in
// deep. Here the rod is 12 mm with 0.7 mm of slack, and the bore 1/2 in deeper than it.
func TestBoreOfAShallowShelf(t *testing.T) {
	i := on("rod-structure-12")
	i.Shop = shop.Default(unit.Inches)
	i.Board = plain(24*in, in*23/4, in*9/8)
	i.At = 5 * in
	i.Shop.Rods.SlackSingle, i.Shop.Rods.Deeper = mm*7/10, in/2
	o := Fit(i)
	require.Empty(t, keys(o))
	require.Equal(t, in/2, o.Features[0].Diameter)
	require.Equal(t, in*9/2, o.Features[0].Depth)
}

// Common practice, without a source: a pocket that reaches 2 in to both sides of the
// bore, 3/4 in high and 1/2 in deep. Under a cover of 3 mm it needs boards of 25.05 mm:
// 3/4 in + 2 · 3 mm.
func TestPocketOfTwoInches(t *testing.T) {
	j := job{Input: on("plate-back-12")}
	j.start, j.end = j.Board.Ends()
	j.kind, _ = hardware.Bracket("plate-back-12")
	j.kind.Plate = hardware.Plate{AlongU: 4*in - 2*mm, AlongW: in*3/4 - 2*mm, Thickness: in/2 - mm}
	j.out.Fixing.Plate = board.Plate(j.kind.Plate)
	j.Board.Thickness = mm * 2505 / 100
	j.checkPlate()
	require.Empty(t, keys(j.out))
	require.Equal(t, [2]unit.Length{j.At - 2*in, j.At + 2*in}, j.addPocket(0))
	pocket := j.out.Features[0]
	require.Equal(t, []unit.Length{4 * in, in * 3 / 4, in / 2}, []unit.Length{pocket.Along, pocket.Across, pocket.Depth})
	j.Board.Thickness -= mm / 100
	j.checkPlate()
	require.Equal(t, []string{"plate-proud"}, keys(j.out))
}

// A concealed plate is at most t − 8 high: 16 in 24 mm, 12 in 20 mm, 18 in 26 mm.
func TestPlateThatABoardHides(t *testing.T) {
	for _, c := range []struct {
		kind  string
		thick unit.Length
		proud bool
	}{
		{"plate-back-12", 24 * mm, false}, {"plate-back-12", 24*mm - 1, true},
		{"plate-back-8", 20 * mm, false}, {"plate-back-12", 20 * mm, true},
		{"plate-back-14", 28 * mm, false}, {"plate-back-14", 26 * mm, true},
		{"plate-upright-12", 24 * mm, false}, {"plate-upright-12", 22 * mm, true},
		{"bar-12-400", 24 * mm, false}, {"bar-12-400", 22 * mm, true},
		{"hook-keyhole", 22 * mm, false}, {"hook-keyhole", 20 * mm, true},
		{"plate-lining-12", 20 * mm, false}, {"rod-structure-12", 20 * mm, false},
	} {
		i := on(c.kind)
		i.Board.Thickness, i.At = c.thick, 50*mm
		if c.proud {
			require.Contains(t, keys(Fit(i)), "plate-proud", "%s in %v", c.kind, c.thick)
		} else {
			require.NotContains(t, keys(Fit(i)), "plate-proud", "%s in %v", c.kind, c.thick)
		}
	}
}

// A bore of 12.5 in 24 mm leaves 5.75 above and below; it should leave 6 (worked by hand).
func TestWoodAboveAndBelowABore(t *testing.T) {
	i := on("rod-structure-12")
	i.Board.Thickness = 24 * mm
	i.Shop.Rods.SlackSingle = mm / 2
	o := Fit(i)
	require.Equal(t, []string{"bore-thin"}, keys(o))
	require.Equal(t, words.LengthOf(mm*575/100), o.Findings[0].Value)
	require.Equal(t, words.LengthOf(6*mm), o.Findings[0].Limit)
	require.Equal(t, words.Length("thickness", 26*mm), o.Findings[0].Remedies[0].Edit.Args[1])
	i.Board.Thickness = 25 * mm
	i.Shop.Rods.SlackSingle = mm
	require.Empty(t, keys(Fit(i)), "t ≥ bore + 12")
	i.Kind, i.Board.Thickness, i.Shop.Rods.SlackSingle = "rod-structure-16", 32*mm, mm/2
	require.Equal(t, []string{"bore-thin"}, keys(Fit(i)), "half the rod is 8, left are 7.75")
}

func TestRodLengthByDepth(t *testing.T) {
	for depth, want := range map[unit.Length]unit.Length{
		200 * mm: 135 * mm, 220 * mm: 150 * mm, 240 * mm: 160 * mm, 250 * mm: 170 * mm, 300 * mm: 200 * mm,
	} {
		i := on("rod-structure-12")
		i.Board.Width = depth
		got := Fit(i).Fixing.Rods[0].InBoard
		require.Equal(t, want, got, depth)
		require.GreaterOrEqual(t, 3*got, 2*depth, "two thirds")
		require.GreaterOrEqual(t, got, depth*5/8+10*mm, "10 beyond books at 5/8")
	}
}

func TestBoreTooDeep(t *testing.T) {
	i := on("rod-structure-12")
	i.Board.Width = 100 * mm
	o := Fit(i)
	require.Equal(t, []string{"bore-deep"}, keys(o))
	require.Equal(t, words.LengthOf(20*mm), o.Findings[0].Value)
	i.Board.Width = o.Findings[0].Remedies[0].Edit.Args[1].Value.Length
	require.Empty(t, keys(Fit(i)), "the depth that it asks for is enough")
}

// The riser of a step stands at 966 to 1000; a bore of 13 at 941 comes within 18.5 of
// it, 20 are asked, and the pocket cuts the mitre.
func TestNearAMitre(t *testing.T) {
	i := on("plate-back-12-wide")
	i.Board = mitred(1000*mm, 220*mm, 34*mm)
	i.At = 941 * mm
	o := Fit(i)
	require.Equal(t, []string{"bore-near-heel", "pocket-near-end"}, keys(o))
	require.Equal(t, words.LengthOf(mm*185/10), o.Findings[0].Value)
	require.Equal(t, words.LengthOf(0), o.Findings[1].Value, "it cuts into the mitre")
	i.At = o.Findings[0].Remedies[0].Edit.Args[1].Value.Length
	require.Equal(t, 907*mm, i.At, "966 − 10 − 49")
	require.Empty(t, keys(Fit(i)))
	i.At++
	require.NotEmpty(t, keys(Fit(i)))
}

func TestNearAnEnd(t *testing.T) {
	i := on("rod-structure-12")
	i.At = 48 * mm
	require.Empty(t, keys(Fit(i)), "4 d")
	i.At--
	require.Equal(t, []string{"rod-near-end"}, keys(Fit(i)))
	i.At = 520*mm - 47*mm
	o := Fit(i)
	require.Equal(t, []string{"rod-near-end"}, keys(o))
	require.Equal(t, words.Length("at", 472*mm), o.Findings[0].Remedies[0].Edit.Args[1])
	i.Board = plain(80*mm, 200*mm, 26*mm)
	i.At = 40 * mm
	require.Equal(t, "board-longer", Fit(i).Findings[0].Remedies[0].Key, "no room at all")
}

func TestUprightPlateStandsTall(t *testing.T) {
	o := Fit(on("plate-upright-12"))
	require.Empty(t, keys(o))
	pocket := only(board.Pocket, o.Features)[0]
	require.Equal(t, 62*mm, pocket.Along, "along the upright")
	require.Equal(t, 18*mm, pocket.Across)
	require.Equal(t, []unit.Length{-22 * mm, 22 * mm}, []unit.Length{o.Fixing.Screws[0].DU, o.Fixing.Screws[1].DU})
	require.Equal(t, board.Plumb, o.Fixing.Attitude)
}

func TestPlateLetIntoTheLining(t *testing.T) {
	o := Fit(on("plate-lining-12"))
	require.Empty(t, keys(o))
	require.Empty(t, only(board.Pocket, o.Features), "it sits in the wall, not in the board")
	require.Equal(t, []unit.Length{-20 * mm, 20 * mm}, []unit.Length{o.Fixing.Screws[0].DW, o.Fixing.Screws[1].DW}, "one above the other, both in the stud")
	require.Equal(t, "lining", o.Fixing.Seat)
}

func TestBarWithRods(t *testing.T) {
	i := on("bar-12-400")
	i.Board, i.At, i.Length = plain(1000*mm, 200*mm, 26*mm), 100*mm, 860*mm
	o := Fit(i)
	require.Empty(t, keys(o))
	require.Len(t, o.Fixing.Rods, 3)
	require.Len(t, o.Fixing.Screws, 6, "two beside each rod")
	require.Equal(t, 900*mm, o.Fixing.Rods[2].At.U)
	require.Equal(t, mm*125/10, o.Features[0].Diameter, "rods of one welded bar need 0.5 of slack")
	pocket := only(board.Pocket, o.Features)[0]
	require.Equal(t, []unit.Length{862 * mm, 500 * mm}, []unit.Length{pocket.Along, pocket.Mouth.U}, "a groove along the back edge")
	i.Length = 0
	require.Equal(t, o, Fit(i), "its own length ends as far from the far end")
	i.Length = 300 * mm
	require.Equal(t, []string{"bracket-too-short"}, keys(Fit(i)))
	i.Length = 950 * mm
	o = Fit(i)
	require.Equal(t, []string{"bracket-too-long"}, keys(o))
	require.Empty(t, o.Features)
}

func TestKeyhole(t *testing.T) {
	o := Fit(on("hook-keyhole"))
	require.Empty(t, keys(o))
	require.Len(t, o.Features, 2)
	hollow := o.Features[1]
	require.Equal(t, 22*mm, hollow.Along, "10 of travel, a head of 10, 2 round it")
	require.Equal(t, 115*mm, hollow.Mouth.U, "below the seat: the upright rises")
	require.Equal(t, 15*mm, o.Fixing.Lift)
	require.Equal(t, board.End, o.Fixing.Top)
	i := on("hook-keyhole")
	i.Board.Frame.Dir = 3 * unit.QuarterTurn
	o = Fit(i)
	require.Equal(t, board.Start, o.Fixing.Top)
	require.Equal(t, 125*mm, o.Features[1].Mouth.U)
	require.Len(t, o.Fixing.Screws, 1)
	require.True(t, o.Fixing.Carries)
	peg := Fit(on("hook-peg-8"))
	require.Empty(t, keys(peg))
	require.False(t, peg.Fixing.Carries, "a peg takes pull only")
}

// Two cleats of 18 by 50, tips cut by 2: bevels of 16 meet with the wall's cleat 36
// below the other, hooked by 14. All by hand from the section.
func TestCleats(t *testing.T) {
	i := on("cleat-400")
	i.At = 60 * mm
	o := Fit(i)
	require.Empty(t, keys(o))
	require.Empty(t, o.Features, "nothing is cut in the board")
	require.Len(t, o.Extra, 2)
	ours, theirs := o.Extra[0], o.Extra[1]
	require.Equal(t, []string{"b5a", "b5b"}, []string{ours.ID, theirs.ID})
	for _, b := range o.Extra {
		require.Equal(t, []unit.Length{500 * mm, 18 * mm, 50 * mm}, []unit.Length{b.Length, b.Width, b.Thickness})
		require.Equal(t, board.Rail, b.Role)
	}
	require.Equal(t, board.Frame{X: 10 * mm, Y: -26 * mm}, ours.Frame)
	require.Equal(t, board.Frame{X: 10 * mm, Y: -62 * mm}, theirs.Frame)
	require.Equal(t, "front-b", ours.Features[0].Arris)
	require.Equal(t, "back-a", theirs.Features[0].Arris)
	require.Equal(t, 16*mm, theirs.Features[0].Size)
	require.Equal(t, 19*mm, o.Fixing.Lift, "14 hooked and 5 more")
	require.Equal(t, board.FaceA, o.Fixing.Top)
	require.Len(t, only(board.Bore, theirs.Features), 2)
	require.Empty(t, only(board.Bore, ours.Features))
	requireBevelsMeet(t, ours, theirs)
	requireScrewsInBores(t, i.Board, o, theirs)
}

// requireBevelsMeet holds that the two bevels lie in one plane at 45°: on each, height
// less distance from the wall is the same all along.
func requireBevelsMeet(t *testing.T, ours, theirs board.Board) {
	leg := ours.Features[0].Size
	_, lower := ours.Frame.Plane(0, ours.Thickness)
	_, upper := theirs.Frame.Plane(0, 0)
	fromTip := lower - (ours.Width - leg) // at the lower end of ours' bevel, z = width − leg
	fromWall := upper - leg               // at the wall, z = 0
	require.Equal(t, fromTip, fromWall)   // height − z on both
	require.Greater(t, lower, upper-leg)  // tips do not touch the bottom
	require.Less(t, lower, upper)         // and they do hook
}

// requireScrewsInBores holds that every screw of the fixing goes through the bore of
// its strip.
func requireScrewsInBores(t *testing.T, b board.Board, o Output, strip board.Board) {
	bores := only(board.Bore, strip.Features)
	require.Len(t, o.Fixing.Screws, len(bores))
	for k, s := range o.Fixing.Screws {
		x, y := b.Frame.Plane(o.Fixing.At.U+s.DU, o.Fixing.At.W+s.DW)
		bx, by := strip.Frame.Plane(bores[k].Mouth.U, bores[k].Mouth.W)
		require.Equal(t, []unit.Length{x, y}, []unit.Length{bx, by})
	}
}

func TestRail(t *testing.T) {
	for name, dir := range map[string]unit.Angle{"walked right": 0, "walked left": unit.HalfTurn} {
		i := on("rail-400")
		i.At, i.Board.Frame = 60*mm, board.Frame{X: 7 * mm, Y: 300 * mm, Dir: dir}
		o := Fit(i)
		require.Empty(t, keys(o), name)
		require.Len(t, o.Extra, 1, name)
		rail := o.Extra[0]
		requireScrewsInBores(t, i.Board, o, rail)
		_, upper := rail.Frame.Plane(0, 0)
		_, lower := rail.Frame.Plane(0, rail.Thickness)
		_, boardA := i.Board.Frame.Plane(0, 0)
		_, boardB := i.Board.Frame.Plane(0, i.Board.Thickness)
		require.Equal(t, min(boardA, boardB), max(upper, lower), "%s: it hangs from what is below", name)
		require.Equal(t, "screwed", o.Fixing.Lock)
	}
}

func TestRailTakesASecondScrew(t *testing.T) {
	o := Fit(on("rail-400"))
	require.Equal(t, []string{"bracket-too-short"}, keys(o), "the second screw would stand at 520")
	i := on("rail-400")
	i.At = o.Findings[0].Remedies[0].Edit.Args[1].Value.Length
	require.Empty(t, keys(Fit(i)))
	i.At = 70 * mm
	o = Fit(i)
	require.Empty(t, keys(o))
	require.Equal(t, 500*mm, o.Extra[0].Length, "20 to 520: it takes the second screw")
}

// A rail hangs from the inside of a mitred board: it must not run into the upright.
func TestRailBetweenUprights(t *testing.T) {
	i := on("rail-400")
	i.Board = mitred(600*mm, 200*mm, 26*mm)
	i.Board.Features[0].AtA, i.Board.Features[0].AtB = 0, 26*mm
	i.Board.Features[1].AtA, i.Board.Features[1].AtB = 600*mm, 574*mm
	i.At = 70 * mm
	o := Fit(i)
	require.Equal(t, []string{"bracket-too-early", "bracket-too-long"}, keys(o), "20 to 580, room 26 to 574")
	require.Equal(t, []words.Value{words.LengthOf(20 * mm), words.LengthOf(26 * mm)}, []words.Value{o.Findings[0].Value, o.Findings[0].Limit})
	require.Equal(t, []words.Value{words.LengthOf(580 * mm), words.LengthOf(574 * mm)}, []words.Value{o.Findings[1].Value, o.Findings[1].Limit})
	requireWhole(t, o.Findings[0])
	i.At = o.Findings[0].Remedies[0].Edit.Args[1].Value.Length
	require.Empty(t, keys(Fit(i)))
}

// A rail that starts too early and ends in its room says where room begins, and is moved,
// not cut; one that only ends too late is cut.
func TestStripSaysWhichEndIsOff(t *testing.T) {
	i := on("rail-400")
	i.Board = mitred(1300*mm, 200*mm, 26*mm)
	i.Board.Features[0].AtA, i.Board.Features[0].AtB = 0, 26*mm
	i.Board.Features[1].AtA, i.Board.Features[1].AtB = 1300*mm, 1274*mm
	i.At, i.Length = 60*mm, 1200*mm
	o := Fit(i)
	require.Equal(t, []string{"bracket-too-early"}, keys(o))
	require.Equal(t, "b5 on m1.1 would start at 10 mm; there is room from 26 mm.", said(o.Findings[0]))
	require.Equal(t, "bracket-at", o.Findings[0].Remedies[0].Key)
	i.At = o.Findings[0].Remedies[0].Edit.Args[1].Value.Length
	require.Empty(t, keys(Fit(i)))
	i.At, i.Length = 100*mm, 1250*mm
	o = Fit(i)
	require.Equal(t, []string{"bracket-too-long"}, keys(o))
	require.Equal(t, "b5 on m1.1 would reach to 1300 mm; there is room to 1274 mm.", said(o.Findings[0]))
	i.Length = o.Findings[0].Remedies[0].Edit.Args[1].Value.Length
	require.Empty(t, keys(Fit(i)))
}

// said is what a user reads of a finding.
func said(f finding.Finding) string {
	args := append([]words.Arg{{Name: "value", Value: f.Value}, {Name: "limit", Value: f.Limit}}, f.Args...)
	return words.Text("finding."+f.Kind.Key, args, unit.Style{})
}

func TestFrontEdge(t *testing.T) {
	i := on("plate-back-12")
	i.Edge = board.Front
	o := Fit(i)
	require.Empty(t, keys(o))
	for _, f := range o.Features[:2] {
		require.Equal(t, board.Front, f.Enter)
		require.Equal(t, 200*mm, f.Mouth.V)
	}
	require.Equal(t, 200*mm-135*mm/2, o.Features[2].Mouth.V)
	i.Kind, i.At = "cleat-400", 60*mm
	o = Fit(i)
	require.Equal(t, 182*mm, o.Extra[1].Frame.Z)
	require.Equal(t, []string{"back-b", "front-a"}, []string{o.Extra[0].Features[0].Arris, o.Extra[1].Features[0].Arris})
}

// A family's name alone stands for its size by the board's depth.
func TestFamilyAlone(t *testing.T) {
	i := on("rod-structure")
	require.Equal(t, "rod-structure-12", Fit(i).Fixing.Kind)
	i.Board.Width = 260 * mm
	require.Equal(t, "rod-structure-14", Fit(i).Fixing.Kind)
}

// Each of the other rules is broken once.
func TestEachRuleIsFound(t *testing.T) {
	for want, change := range map[string]func(*Input){
		"bracket-unknown":   func(i *Input) { i.Kind = "nail" },
		"bracket-off-board": func(i *Input) { i.At = 521 * mm },
		"bracket-attitude":  func(i *Input) { i.Upright = true },
		"bracket-unlocked":  func(i *Input) { i.Kind = "plate-back-12-open" },
	} {
		i := on("plate-back-12")
		change(&i)
		require.Equal(t, []string{want}, keys(Fit(i)), want)
	}
	i := on("plate-back-12-slotted")
	require.Equal(t, []string{"bracket-slotted", "bracket-root"}, keys(Fit(i)))
	i = on("plate-upright-12")
	i.Upright = false
	require.Equal(t, []string{"bracket-attitude"}, keys(Fit(i)))
}

// The remedy of an unlocked, slotted or unknown rod is a kind of the same rod that has
// the fault no more.
func TestKindRemediesMend(t *testing.T) {
	for _, kind := range []string{"plate-back-12-open", "rod-structure-12-open", "plate-back-12-slotted"} {
		i := on(kind)
		o := Fit(i)
		r := o.Findings[0].Remedies[0]
		require.Equal(t, "set-bracket", r.Edit.Do)
		i.Kind = r.Edit.Args[1].Value.Text
		mended := Fit(i)
		require.Empty(t, keys(mended), i.Kind)
		require.Equal(t, o.Fixing.Rods[0].Diameter, mended.Fixing.Rods[0].Diameter)
	}
}

// requireWhole holds that a finding is a declared one with place, words and remedies.
func requireWhole(t require.TestingT, f finding.Finding) {
	require.Contains(t, Kinds(), f.Kind)
	require.NotEmpty(t, f.Remedies, f.Kind.Key)
	require.Equal(t, "b5", f.Place.Bracket)
	require.NotContains(t, said(f), "[")
	for _, r := range f.Remedies {
		require.NotContains(t, words.Text("remedy."+r.Key, r.Args, unit.Style{}), "[")
	}
}
