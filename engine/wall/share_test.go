package wall

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// Two arrangements of two equal shelves on one wall. In the second they have changed
// places, so every hole serves both; in the third one has moved by a stud.
func TestHolesThatArrangementsShare(t *testing.T) {
	a, b := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm), plank("m2", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	left, right := plan.Pose{X: 1000 * mm, Y: 1500 * mm}, plan.Pose{X: 2200 * mm, Y: 1500 * mm}
	as := func(id string, p ...plan.Pose) Result {
		ar := poses(p...)
		ar.ID = id
		return arrange(surveyed(), ar, a, b)
	}
	of := func(p plan.Pose, m string) plan.Pose { p.Module = m; return p }
	on := right
	on.X += 400 * mm
	in := []Result{as("a1", of(left, "m1"), of(right, "m2")), as("a2", of(right, "m1"), of(left, "m2")), as("a3", of(on, "m1"))}
	out := Share(in)
	shared := func(r Result) (s [][]string) {
		for _, p := range r.Points {
			s = append(s, p.Shared)
		}
		return s
	}
	require.Equal(t, [][]string{{"a2"}, {"a2"}, {"a2"}, {"a2", "a3"}}, shared(out[0]))
	require.Equal(t, [][]string{{"a1"}, {"a1", "a3"}, {"a1"}, {"a1"}}, shared(out[1]))
	require.Equal(t, [][]string{{"a1", "a2"}, nil}, shared(out[2]))
	all, twice := CountHoles(out, "w1")
	require.Equal(t, [2]int{5, 4}, [2]int{all, twice})
	require.Equal(t, [][]string{nil, nil, nil, nil}, shared(in[0]), "what was given is not changed")
	require.Equal(t, out, Share(in), "and gives the same again")
	require.Equal(t, out, Share(out))
}

func TestADrillOfAnotherSizeIsAnotherHole(t *testing.T) {
	a, b := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm), plank("m2", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	b.Fixings[0].Screws[0].Drill = 14 * mm
	ar := poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm})
	br := poses(plan.Pose{Module: "m2", X: 1000*mm + 1000, Y: 1500 * mm})
	br.ID = "a2"
	out := Share([]Result{arrange(surveyed(), ar, a, b), arrange(surveyed(), br, a, b)})
	require.Nil(t, out[0].Points[0].Shared)
	require.Equal(t, []string{"a2"}, out[0].Points[1].Shared, "a micrometre off is the same hole")
}

func TestBoresThatServeOneArrangementOnly(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	up := poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm, Turn: 90 * deg})
	up.ID = "a2"
	out := Share([]Result{arrange(surveyed(), poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), m), arrange(surveyed(), up, m)})
	require.NotContains(t, kindsOf(out[0].Findings), "bores-serve-one")
	f := only(t, out[1], "bores-serve-one")
	require.Equal(t, "a2", f.Place.Arrangement)
	require.Equal(t, "place-brackets", f.Remedies[0].Edit.Do)
	require.Equal(t, []string{"nothing-carries", "bores-serve-one"}, kindsOf(out[1].Findings), "worst first")
}

func TestAWallIsSpokenOfOnce(t *testing.T) {
	m := plank("m1", 520*mm, 200*mm, 24*mm, 0, 60*mm, 460*mm)
	w := plan.Wall{ID: "w1", Width: 3000 * mm, Height: 2400 * mm}
	a, b := poses(plan.Pose{Module: "m1", X: 1000 * mm, Y: 1500 * mm}), poses(plan.Pose{Module: "m1", X: 1100 * mm, Y: 1500 * mm})
	b.ID = "a2"
	out := Share([]Result{arrange(w, a, m), arrange(w, b, m)})
	require.Equal(t, []string{"wall-not-surveyed", "cables-not-checked", "deep-hole"}, kindsOf(out[0].Findings))
	require.Equal(t, []string{"deep-hole"}, kindsOf(out[1].Findings))
}

// Left of the corner a shelf 200 deep, right of it one 250 deep, each on rods of 125; so
// each slides out by 145. A module keeps from the other's wall by its distance from the
// corner.
func TestCornerPairs(t *testing.T) {
	l, r := plank("m1", 400*mm, 200*mm, 24*mm, 0, 100*mm, 300*mm), plank("m2", 400*mm, 250*mm, 24*mm, 0, 100*mm, 300*mm)
	pair := func(fromLeft, fromRight int64, dy int64) Result {
		w2 := surveyed()
		w2.ID = "w2"
		a := poses(plan.Pose{Module: "m1", X: 3400*mm - mm*unit.Length(fromLeft), Y: 1500 * mm})
		a.Corner = "a2"
		b := plan.Arrangement{ID: "a2", Wall: "w2", Poses: []plan.Pose{{Module: "m2", X: 200*mm + mm*unit.Length(fromRight), Y: 1500*mm + mm*unit.Length(dy)}}}
		return Share([]Result{arrange(surveyed(), a, l, r), arrange(w2, b, l, r)})[1]
	}
	overlapping := only(t, pair(100, 150, 0), "corner-overlap")
	require.Equal(t, 50*mm, overlapping.Value.Length, "200 − 150 along the right wall; 250 − 100 along the left")
	corner := func(r Result) (s []string) {
		for _, k := range kindsOf(r.Findings) {
			if slices.Contains([]string{"corner-overlap", "corner-order"}, k) {
				s = append(s, k)
			}
		}
		return s
	}
	require.Empty(t, corner(pair(100, 150, 24)), "one above the other")
	first := only(t, pair(100, 205, 0), "corner-order")
	require.Equal(t, "m1", first.Args[0].Value.Text, "the right one stands where the left one slides out: 205 < 345")
	require.Empty(t, corner(pair(100, 345, 0)))
	first = only(t, pair(255, 100, 0), "corner-order")
	require.Equal(t, "m2", first.Args[0].Value.Text)
	require.Empty(t, corner(pair(395, 100, 0)))
}

func TestShareKeepsModulesWithoutBoards(t *testing.T) {
	broken := module.Result{ID: "m1", Fixings: []board.Fixing{{Board: "m1.9"}}}
	a := poses(plan.Pose{Module: "m1", X: 5, Y: 5}, plan.Pose{Module: "m9"})
	a.Corner = "a1"
	out := Share([]Result{arrange(plan.Wall{ID: "w1"}, a, broken)})
	require.Len(t, out[0].Placed, 1)
	require.Empty(t, out[0].Nearest)
}
