package part_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/module"
	"ledgewright/engine/part"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
)

const (
	mm  = unit.Millimetre
	deg = unit.Degree
)

func some[T any](v T) document.Opt[T] { return document.Some(v) }

// chain is a plan's module of boards that are all turned left by 90° and mitred.
func chain(id string, t unit.Length, lengths ...unit.Length) plan.Module {
	m := plan.Module{ID: id, Depth: 200 * mm, Wood: "white-oak"}
	for i, l := range lengths {
		m.Boards = append(m.Boards, plan.Board{Length: some(l), Thickness: t})
		if i > 0 {
			m.Corners = append(m.Corners, plan.Corner{Turn: 90 * deg, Joint: plan.Mitre})
		}
	}
	return m
}

func box(id string, t, w, h unit.Length) plan.Module {
	m := chain(id, t, w, h, w, h)
	m.Closed = true
	m.Boards[2].Length, m.Boards[3].Length = document.Opt[unit.Length]{}, document.Opt[unit.Length]{}
	m.Corners = append(m.Corners, plan.Corner{Turn: 90 * deg, Joint: plan.Mitre})
	return m
}

func derive(modules ...plan.Module) (out []module.Result) {
	for _, m := range modules {
		out = append(out, module.Derive(m, shop.Default(unit.Metric)))
	}
	return out
}

func list(modules ...plan.Module) part.List {
	return part.Of(derive(modules...), shop.Default(unit.Metric))
}

// A square box of four boards is one part, whichever way each is walked: turned end for
// end a mitred board is the same piece.
func TestFourBoardsOfABoxAreOnePart(t *testing.T) {
	l := list(box("m1", 24*mm, 300*mm, 300*mm))
	require.Len(t, l.Parts, 1)
	p := l.Parts[0]
	require.Equal(t, []string{"m1.1", "m1.2", "m1.3", "m1.4"}, p.Boards)
	require.Equal(t, 4, p.Quantity)
	require.Equal(t, [4]unit.Length{24 * mm, 200 * mm, 300 * mm, 252 * mm}, [4]unit.Length{p.Thickness, p.Width, p.Overall, p.Inside})
	require.Equal(t, [2]string{"end.mitre", "end.mitre"}, [2]string{p.Start, p.End})
	require.Equal(t, []part.Note{{Key: "note.tilt", Count: 2, Angle: 45 * deg}}, p.Notes)
	require.Zero(t, p.MirrorOf)
	require.Equal(t, 4, l.Boards)
	// Four mitred boards of 300, each 24 × 200 × 276 at its middle: 4 × 1.3248 litres.
	require.InDelta(t, 5.2992e-3, float64(l.Volume), 1e-12)
	oak, _ := wood.Find("white-oak")
	require.InDelta(t, 5.2992e-3*float64(oak.DensityAt(8.5)), float64(l.Mass), 1e-2)
	require.InDelta(t, 4*0.2*0.024*1.41421356, float64(l.Glue), 1e-8, "four mitres of 24·√2")
}

// The uprights of a U are a left and a right one: the mitre leans the other way.
func TestLeftAndRightUpright(t *testing.T) {
	l := list(chain("m1", 24*mm, 260*mm, 520*mm, 260*mm))
	require.Len(t, l.Parts, 3)
	require.Equal(t, 3, l.Parts[0].MirrorOf)
	require.Equal(t, 1, l.Parts[2].MirrorOf)
	require.Zero(t, l.Parts[1].MirrorOf)
	require.Equal(t, []string{"differs.end-cut"}, l.Parts[0].Differs)
	require.Equal(t, l.Parts[0].Differs, l.Parts[2].Differs)
	require.Equal(t, [2]string{"end.square", "end.mitre"}, [2]string{l.Parts[0].Start, l.Parts[0].End})
	require.Equal(t, [2]unit.Length{260 * mm, 236 * mm}, [2]unit.Length{l.Parts[0].Overall, l.Parts[0].Inside})
	require.Equal(t, [2]unit.Length{520 * mm, 472 * mm}, [2]unit.Length{l.Parts[1].Overall, l.Parts[1].Inside})
}

// Two shelves with a groove near the front, the one in its upper, the other in its lower
// face: which cuts make them twins depends on how they lie side by side with the fewest.
func TestTwinsSayExactlyWhereTheyDiffer(t *testing.T) {
	shelf := func(id, face, exit string, stop unit.Length) plan.Module {
		m := chain(id, 26*mm, 600*mm)
		l := plan.Light{ID: "l1", First: 1, Last: 1, Face: face, FromFront: some(30 * mm), Width: 12 * mm, Depth: 7 * mm, Strip: "strip-24-9.6"}
		l.Power.Exit = exit
		if stop > 0 {
			l.StartStop = some(stop)
		}
		m.Lights = []plan.Light{l}
		return m
	}
	l := list(shelf("m1", "A", "start", 0), shelf("m2", "B", "end", 0))
	require.Len(t, l.Parts, 1, "from end to end: the one is the other, turned end for end")
	l = list(shelf("m1", "A", "start", 0), shelf("m2", "B", "start", 0))
	require.Equal(t, 2, l.Parts[0].MirrorOf)
	require.Equal(t, []string{"differs.bore"}, l.Parts[1].Differs, "turned end for end the grooves agree, and the leads leave at different ends")
	l = list(shelf("m1", "A", "start", 50*mm), shelf("m2", "B", "start", 50*mm))
	require.Equal(t, 2, l.Parts[0].MirrorOf)
	require.Contains(t, l.Parts[1].Differs, "differs.groove")
	require.NotContains(t, l.Parts[1].Differs, "differs.end-cut")
	l = list(shelf("m1", "A", "start", 0), shelf("m2", "A", "start", 50*mm))
	require.Zero(t, l.Parts[0].MirrorOf, "no twin at all")
}

func TestEndsAndInsideLengths(t *testing.T) {
	m := box("m1", 24*mm, 600*mm, 300*mm)
	m.Dividers = []plan.Divider{{ID: "d5", From: 1, To: 3, At: 300 * mm, Thickness: 20 * mm, Start: "housed", End: "butt"}}
	l := list(m)
	d := l.Parts[slices.IndexFunc(l.Parts, func(p part.Part) bool { return p.Boards[0] == "d5" })]
	require.Equal(t, "divider", d.Name)
	require.Equal(t, [2]string{"end.housed", "end.square"}, [2]string{d.Start, d.End})
	require.Equal(t, [2]unit.Length{260 * mm, 252 * mm}, [2]unit.Length{d.Overall, d.Inside}, "a third of 24 in the housing")

	butt := chain("m2", 24*mm, 300*mm, 400*mm)
	butt.Corners[0].Joint = plan.ButtFirst
	l = list(butt)
	require.Equal(t, [4]string{"end.square", "end.square", "end.square", "end.square"}, [4]string{l.Parts[0].Start, l.Parts[0].End, l.Parts[1].Start, l.Parts[1].End})
	butt.Corners[0].Turn = 60 * deg
	l = list(butt)
	require.Equal(t, [4]string{"end.square", "end.butt-bevel", "end.butt-bevel", "end.square"}, [4]string{l.Parts[0].Start, l.Parts[0].End, l.Parts[1].Start, l.Parts[1].End})
	butt.Corners[0] = plan.Corner{Turn: 90 * deg, Joint: plan.RebateSecond}
	l = list(butt)
	require.Equal(t, [4]string{"end.square", "end.square", "end.rebate", "end.square"}, [4]string{l.Parts[0].Start, l.Parts[0].End, l.Parts[1].Start, l.Parts[1].End})
	hexagon := chain("m3", 20*mm, 300*mm, 300*mm)
	hexagon.Corners[0].Turn = 60 * deg
	l = list(hexagon)
	require.Equal(t, "end.mitre", l.Parts[0].End)
	require.Equal(t, "note.tilt", l.Parts[0].Notes[0].Key)
	require.Equal(t, 30*deg, l.Parts[0].Notes[0].Angle, "90° − 120°/2")
}

func TestNames(t *testing.T) {
	m := chain("m1", 24*mm, 300*mm, 200*mm, 300*mm)
	m.Corners[1].Turn = 45 * deg
	var names []string
	for _, p := range list(m).Parts {
		names = append(names, p.Name)
	}
	require.Equal(t, []string{"shelf board", "upright", "slanting board"}, names)
	a, b := chain("m1", 24*mm, 300*mm), chain("m2", 24*mm, 300*mm)
	a.Boards[0].Name, b.Boards[0].Name = "Ledge", "Ledge"
	require.Equal(t, "Ledge", list(a, b).Parts[0].Name)
	b.Boards[0].Name = "Sill"
	require.Equal(t, "shelf board", list(a, b).Parts[0].Name, "they are one part, and no longer of one name")
	b.Boards[0].Name = ""
	require.Equal(t, "shelf board", list(a, b).Parts[0].Name)
	require.Equal(t, []string{"m1.1", "m2.1"}, list(a, b).Parts[0].Boards)
}

func TestRailsAndCleats(t *testing.T) {
	m := chain("m1", 26*mm, 900*mm)
	m.Brackets = []plan.Bracket{{ID: "b1", Kind: "cleat", Board: 1, At: 250 * mm, Length: some(500 * mm)}}
	names := map[string]string{}
	for _, p := range list(m).Parts {
		names[p.Boards[0]] = p.Name
	}
	require.Equal(t, map[string]string{"m1.1": "shelf board", "b1a": "cleat on the module", "b1b": "cleat on the wall"}, names)
	m.Brackets[0].Kind = "rail"
	l := list(m)
	require.Equal(t, "rail", l.Parts[1].Name)
	require.Equal(t, 2, l.Boards)
}

func TestHardware(t *testing.T) {
	m := chain("m1", 26*mm, 260*mm, 700*mm, 260*mm)
	m.Corners[0].Reinforcement.Kind, m.Corners[1].Reinforcement.Kind = "spline", "tenon"
	m.Brackets = []plan.Bracket{
		{ID: "b1", Kind: "rod-structure-12", Board: 2, At: 150 * mm},
		{ID: "b2", Kind: "rod-structure-12", Board: 2, At: 550 * mm},
	}
	m.Lights = []plan.Light{{ID: "l3", First: 2, Last: 2, Face: "A", FromFront: some(22 * mm), Width: 12*mm + mm/5, Depth: 7 * mm,
		StartStop: some(60 * mm), EndStop: some(60 * mm), Strip: "strip-24-9.6", Power: plan.Power{Source: "driver-24-15", Exit: "start", Lead: some(mm * 1000)}}}
	r := derive(m, m)
	l := part.Of(r, shop.Default(unit.Metric))
	got := map[string]part.Item{}
	for _, it := range l.Hardware {
		require.NotContains(t, it.Name(), "[")
		got[it.Kind] = it
	}
	require.Equal(t, 4, got["rod-structure-12"].Quantity)
	rod := r[0].Fixings[0].Rods[0]
	require.Equal(t, part.Item{Kind: "item.rod", Size: "12 mm", Quantity: 4, Length: rod.InBoard + rod.InWall}, got["item.rod"])
	require.Equal(t, r[0].Strips[0].Length, got["strip-24-9.6"].Length)
	require.Equal(t, 2, got["strip-24-9.6"].Quantity)
	require.Zero(t, got["strip-24-9.6"].Length%(50*mm), "120 chips a metre, 6 a group: 50 mm a unit")
	require.Equal(t, fmt.Sprint(r[0].Strips[0].Units), got["strip-24-9.6"].Size)
	require.Equal(t, 2, got["channel-12x7"].Quantity)
	require.Equal(t, 2, got["driver-24-15"].Quantity)
	splines := 0
	for _, p := range r[0].Corners[0].Pieces {
		splines += p.Count
	}
	require.Equal(t, 2*splines, got["piece.spline"].Quantity)
	require.Positive(t, got["piece.tenon"].Quantity)
	require.True(t, slices.IsSortedFunc(kinds(l), func(a, b string) int { return class(a) - class(b) }), "%v", kinds(l))
}

func kinds(l part.List) (out []string) {
	for _, it := range l.Hardware {
		out = append(out, it.Kind)
	}
	return out
}

// class is the stated order of the list.
func class(kind string) int {
	for i, head := range []string{"rod-structure", "item.rod", "lock.", "item.screw", "piece.", "strip-", "channel-", "driver-"} {
		if strings.HasPrefix(kind, head) {
			return i
		}
	}
	return -1
}

// A screw of a plate is counted by its size, a rod's own hole not at all.
func TestScrewsAndLocks(t *testing.T) {
	f := board.Fixing{Kind: "plate-back-12", Lock: "grub-screw", Rods: []board.Rod{{Diameter: 12 * mm, InBoard: 120 * mm}, {Diameter: 12 * mm, InBoard: 120 * mm}},
		Screws: []board.Screw{{Diameter: 5 * mm, Root: 3400 * unit.Micrometre, Length: 70 * mm}, {Diameter: 5 * mm, Root: 3400 * unit.Micrometre, Length: 70 * mm}, {Diameter: 12 * mm, Length: 75 * mm, Rod: true}, {Diameter: unit.Inch / 4, Length: 3 * unit.Inch}}}
	l := part.Of([]module.Result{{ID: "m1", Fixings: []board.Fixing{f}}}, shop.Default(unit.Metric))
	require.Equal(t, []part.Item{
		{Kind: "plate-back-12", Quantity: 1},
		{Kind: "item.plate-rod", Size: "12 mm", Quantity: 2, Length: 120 * mm},
		{Kind: "lock.grub-screw", Quantity: 2},
		{Kind: "item.screw", Size: "5x70", Quantity: 2, Length: 70 * mm},
		{Kind: "item.screw", Size: "1/4 in", Quantity: 1, Length: 3 * unit.Inch},
	}, l.Hardware)
}

// Read back by encoding/csv of the standard library, both ways of separating.
func TestCSVReadsBack(t *testing.T) {
	m := chain("m1", 26*mm, 260*mm, 520*mm+mm/2, 260*mm)
	m.Boards[1].Name = `=HYPERLINK("x"),"y"`
	m.Boards[0].Name, m.Boards[2].Name = "-left;", "tab\tinside"
	l := list(m)
	for _, comma := range []bool{false, true} {
		text := part.CSV(l, unit.Metric, comma)
		require.Equal(t, bytes.Count(text, []byte("\n")), bytes.Count(text, []byte("\r\n")), "every line ends by CR LF")
		r := csv.NewReader(bytes.NewReader(text))
		if comma {
			r.Comma = ';'
		}
		rows, err := r.ReadAll()
		require.NoError(t, err)
		require.Len(t, rows, 4)
		require.Equal(t, []string{"number", "part", "quantity", "thickness (mm)", "width (mm)", "length, finished (mm)", "inside length (mm)"}, rows[0][:7])
		length := "520.5"
		if comma {
			length = "520,5"
		}
		require.Equal(t, []string{"2", `'=HYPERLINK("x"),"y"`, "1", "26", "200", length}, rows[2][:6])
		require.Equal(t, "'-left;", rows[1][1])
		require.Equal(t, "tab\tinside", rows[3][1])
		require.Equal(t, "1", rows[3][13], "mirror twin of part 1")
	}
	rows, err := csv.NewReader(bytes.NewReader(part.CSV(l, unit.Inches, false))).ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"length, finished (in)", "20.492126"}, []string{rows[0][5], rows[2][5]})
}

// Whatever a maker calls a board, a spreadsheet reads it as text, and as what it was.
func TestCSVOfAnyName(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringOf(rapid.RuneFrom([]rune("=+-@\t\r\n\",;' aé·木"))).Draw(t, "name")
		l := part.List{Parts: []part.Part{{Number: 1, Name: name, Start: "end.square", End: "end.square"}}}
		for _, comma := range []bool{false, true} {
			r := csv.NewReader(bytes.NewReader(part.CSV(l, unit.Metric, comma)))
			if comma {
				r.Comma = ';'
			}
			rows, err := r.ReadAll()
			require.NoError(t, err)
			got := rows[1][1]
			require.False(t, got != "" && strings.ContainsAny(got[:1], "=+-@\t\r\n"), "%q", got)
			// encoding/csv reads CR LF inside quotes as LF, as its documentation says.
			require.Equal(t, strings.ReplaceAll(name, "\r\n", "\n"), strings.TrimPrefix(got, disarmed(name)))
		}
	})
}

func disarmed(name string) string {
	if name != "" && strings.ContainsAny(name[:1], "=+-@\t\r\n") {
		return "'"
	}
	return ""
}

func TestText(t *testing.T) {
	text := part.Text(list(chain("m1", 26*mm, 260*mm, 520*mm, 260*mm)), unit.Style{System: unit.Metric, Step: mm / 2})
	require.NotContains(t, text, "[")
	require.Contains(t, text, "26 x 200 x 520")
	require.Contains(t, text, "mirror twin of 1, differs in ends")
	require.Contains(t, text, "3 boards, ")
}

// A list is the sum of its modules: counting each by itself and merging is the same as
// all together, in any order but for the numbers.
func TestMergeIsOfTheWhole(t *testing.T) {
	s := shop.Default(unit.Metric)
	rapid.Check(t, func(t *rapid.T) {
		var modules []plan.Module
		for i := range rapid.IntRange(0, 6).Draw(t, "modules") {
			w := unit.Length(rapid.IntRange(4, 6).Draw(t, "w")) * 100 * mm
			id := fmt.Sprintf("m%d", i+1)
			modules = append(modules, rapid.SampledFrom([]plan.Module{box(id, 24*mm, w, 300*mm), chain(id, 24*mm, w, 300*mm), chain(id, 24*mm, 300*mm, w, 300*mm), chain(id, 24*mm, w)}).Draw(t, "shape"))
		}
		results := derive(modules...)
		l := part.Of(results, s)
		sum, ids := 0, map[string]bool{}
		for i, p := range l.Parts {
			require.Equal(t, i+1, p.Number)
			require.Len(t, p.Boards, p.Quantity)
			sum += p.Quantity
			for _, id := range p.Boards {
				require.False(t, ids[id], "in one part only")
				ids[id] = true
			}
			if p.MirrorOf > 0 {
				twin := l.Parts[p.MirrorOf-1]
				require.Equal(t, p.Number, twin.MirrorOf)
				require.NotEmpty(t, p.Differs)
				require.Equal(t, p.Overall, twin.Overall)
			}
			for _, key := range append([]string{p.Start, p.End}, p.Differs...) {
				require.True(t, words.Has(key), key)
			}
		}
		require.Equal(t, l.Boards, sum)
		slices.Reverse(results)
		back := part.Of(results, s)
		require.Len(t, back.Parts, len(l.Parts))
		require.InDelta(t, float64(l.Mass), float64(back.Mass), 1e-9)
	})
}

func BenchmarkMerge(b *testing.B) {
	s := shop.Default(unit.Metric)
	for _, n := range []int{48, 200} {
		var counts []part.Counted
		for i := range n {
			m := box(fmt.Sprintf("m%d", i), 24*mm, unit.Length(300+i%7*10)*mm, 300*mm)
			counts = append(counts, part.Count(module.Derive(m, s), s))
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				part.Merge(counts)
			}
		})
	}
}

// A module is named as it hangs: an L that is walked from the top of its upright lies on
// its side in its own frame.
func TestBoardsAreNamedAsTheModuleHangs(t *testing.T) {
	p, _, err := edit.Apply(plan.New(unit.Metric), edit.AddModule{Shape: "L", Wood: "white-oak",
		Width: 1100 * unit.Millimetre, Height: 320 * unit.Millimetre, Depth: 200 * unit.Millimetre, Thickness: 26 * unit.Millimetre})
	require.NoError(t, err)
	names := map[unit.Length]string{}
	for _, one := range part.Of([]module.Result{module.Derive(p.Modules[0], p.Shop)}, p.Shop).Parts {
		names[one.Overall] = one.Name
	}
	require.Equal(t, map[unit.Length]string{1100 * unit.Millimetre: "shelf board", 320 * unit.Millimetre: "upright"}, names)
}
