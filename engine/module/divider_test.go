package module

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

func box() plan.Module {
	return chain(24*mm, true, []unit.Length{460 * mm, 340 * mm, 0, 0}, repeat(90*deg, 4)...)
}

func divided(m plan.Module, d plan.Divider) plan.Module {
	d.ID, d.Thickness = "d1", 20*mm
	m.Dividers = append(m.Dividers, d)
	return m
}

// A box 460 x 340 outside of 24 mm boards is 292 high inside; a divider housed 8 mm (a
// third of 24) at both ends is 308 long.
func TestDividerOfABox(t *testing.T) {
	for _, c := range []struct {
		start, end string
		want       unit.Length
	}{{"butt", "butt", 292 * mm}, {"housed", "butt", 300 * mm}, {"butt", "housed", 300 * mm}, {"housed", "housed", 308 * mm}} {
		r := derive(divided(box(), plan.Divider{From: 1, To: 3, At: 230 * mm, Start: c.start, End: c.end}))
		require.Empty(t, keys(r))
		d := r.Boards[4]
		require.Equal(t, board.Divider, d.Role)
		require.Equal(t, c.want, d.Length)
		require.Equal(t, 200*mm, d.Width)
		area := areaOf(r.Outlines[4].Points)
		require.InDelta(t, c.want.MM()*20, area, 1e-6)
		require.Len(t, r.Corners, 6)
		require.Equal(t, [2]string{"m1.1", "d1"}, [2]string{r.Corners[4].First, r.Corners[4].Second})
		require.Equal(t, 90*deg, r.Corners[5].Interior)
		middle := (r.Corners[4].At[0] + r.Corners[4].Outer[0]) / 2
		require.Equal(t, 230*mm, middle)
	}
	r := derive(divided(box(), plan.Divider{From: 1, To: 3, At: 230 * mm, Start: "housed", End: "butt", HousingDepth: document.Some(5 * mm)}))
	require.Equal(t, 297*mm, r.Boards[4].Length)
}

// From the other side, across and from a box that is walked the other way round.
func TestDividersStandInside(t *testing.T) {
	right := chain(24*mm, true, []unit.Length{460 * mm, 340 * mm, 0, 0}, repeat(-90*deg, 4)...)
	for name, m := range map[string]plan.Module{
		"from the top":        divided(box(), plan.Divider{From: 3, To: 1, At: 100 * mm, Start: "housed", End: "housed"}),
		"across":              divided(box(), plan.Divider{From: 2, To: 4, At: 100 * mm, Start: "housed", End: "housed"}),
		"walked to the right": divided(right, plan.Divider{From: 1, To: 3, At: 100 * mm, Start: "housed", End: "housed"}),
	} {
		r := derive(m)
		require.Empty(t, keys(r), name)
		checkOutlines(t, 0, r, 4, true)
	}
}

// Under a slanting top, 60° to the divider, the divider's own faces differ by
// 20·tan 30° = 11.55.
func TestDividerOnASlant(t *testing.T) {
	lean := func(end string) plan.Module {
		return divided(chain(24*mm, true, []unit.Length{600 * mm, 300 * mm, 0, 0}, 90*deg, 60*deg, 120*deg, 90*deg),
			plan.Divider{From: 1, To: 3, At: 260 * mm, Start: "housed", End: end})
	}
	others := func(r Result) (out []string) {
		for _, k := range keys(r) {
			if k != "tilt-over-saw" { // the corner of 60° itself
				out = append(out, k)
			}
		}
		return out
	}
	r := derive(lean("butt"))
	require.Empty(t, others(r))
	start, end := r.Boards[4].Ends()
	require.Equal(t, board.Cut{}, start)
	require.InDelta(t, 20*math.Tan(math.Pi/6), (end.AtA - end.AtB).MM(), 2e-6, "face A looks left, where the top is higher")
	require.Equal(t, 60*deg, r.Corners[5].Interior)
	require.Equal(t, -30*deg, r.Corners[5].Tilt[1])
	checkOutlines(t, 0, r, 4, true)
	r = derive(lean("housed"))
	require.Equal(t, []string{"housing-not-square"}, others(r))
	f := r.Findings[slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Kind == housingSlant })]
	require.Equal(t, 60*deg, f.Value.Angle)
	require.Equal(t, "set-divider", f.Remedies[0].Edit.Do)
}

func TestDividersThatCannotBe(t *testing.T) {
	cases := []struct {
		name string
		d    plan.Divider
		want string
	}{
		{"over the corner", plan.Divider{From: 1, To: 3, At: 20 * mm}, "divider-misses"},
		{"in the mitre", plan.Divider{From: 1, To: 3, At: 30 * mm}, "divider-misses"},
		{"to its neighbour", plan.Divider{From: 1, To: 2, At: 230 * mm}, "divider-misses"},
		{"to itself", plan.Divider{From: 1, To: 1, At: 230 * mm}, "module-not-worked-out"},
		{"to nothing", plan.Divider{From: 1, To: 9, At: 230 * mm}, "module-not-worked-out"},
	}
	for _, c := range cases {
		r := derive(divided(box(), c.d))
		require.Equal(t, []string{c.want}, keys(r), c.name)
		require.Len(t, r.Boards, 4, c.name)
		require.NotEmpty(t, r.Findings[0].Remedies, c.name)
	}
	wide := chain(24*mm, false, []unit.Length{200 * mm, 300 * mm, 600 * mm}, 90*deg, 90*deg)
	r := derive(divided(wide, plan.Divider{From: 1, To: 3, At: 5 * mm}))
	require.Equal(t, []string{"divider-off-face"}, keys(r))
	require.Equal(t, 10*mm, r.Findings[0].Limit.Length)
	require.Equal(t, 10*mm, r.Findings[0].Remedies[0].Edit.Args[1].Value.Length)
}

func TestDividersInEachOthersWay(t *testing.T) {
	m := divided(box(), plan.Divider{From: 1, To: 3, At: 230 * mm, Start: "housed", End: "housed"})
	m = divided(m, plan.Divider{From: 2, To: 4, At: 150 * mm, Start: "housed", End: "housed"})
	m.Dividers[1].ID = "d2"
	r := derive(m)
	require.Equal(t, []string{"boards-overlap"}, keys(r))
	require.Equal(t, "d2", r.Findings[0].Place.Divider)
}
