package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
)

// placed lists where the brackets of a module stand: board, edge and u.
type at struct {
	board int
	edge  string
	u     unit.Length
}

func placed(p plan.Plan, id string) (out []at) {
	m, _ := p.Module(id)
	for _, b := range m.Brackets {
		out = append(out, at{b.Board, b.Edge, b.At})
	}
	return out
}

// The studs of the long wall stand at 200, 600, 1000 … Long hangs from 2150 to 3050, so
// u = x − 2150; the base of the low U from 400 to 1000, so u = x − 400 and only one stud
// is in reach of it.
func TestBracketsGoOnStuds(t *testing.T) {
	p := applied(t, bench(t), `{"do":"place-brackets","module":"m3"}`)
	require.Equal(t, []at{{1, "", 50 * mm}, {1, "", 450 * mm}, {1, "", 850 * mm}}, placed(p, "m3"))
	require.Equal(t, "rod-structure-12", p.Modules[2].Brackets[0].Kind, "12 mm for a depth of 200")

	p = applied(t, p, `{"do":"place-brackets","module":"m3","count":2}`)
	require.Equal(t, []at{{1, "", 50 * mm}, {1, "", 850 * mm}}, placed(p, "m3"))
	require.Equal(t, "b5", p.Modules[2].Brackets[0].ID, "new brackets, new ids")

	p = applied(t, p, `{"do":"place-brackets","module":"m1"}`)
	require.Equal(t, []at{{2, "", 200 * mm}, {2, "", 400 * mm}}, placed(p, "m1"), "one on the stud, the other opposite")

	p = applied(t, p, `{"do":"place-brackets","module":"m3","rule":"fixed","fixed":127}`)
	require.Equal(t, []at{{1, "", 127 * mm}, {1, "", 450 * mm}, {1, "", 773 * mm}}, placed(p, "m3"), "5 in from both ends")
}

// Every screw and rod that the rule puts on a stud lies in one, by the wall's own
// reckoning of its points.
func TestPlacedBracketsMeetWood(t *testing.T) {
	p := applied(t, bench(t), `{"do":"place-brackets","module":"m3","kind":"plate-back"}`)
	worked := []module.Result{module.Derive(p.Modules[0], p.Shop), module.Derive(p.Modules[1], p.Shop), module.Derive(p.Modules[2], p.Shop)}
	r := wall.Arrange(p.Walls[0], p.Arrangements[0], worked, p.Shop, p.Units)
	holes := 0
	for _, pt := range r.Points {
		if pt.What == "rod" {
			require.True(t, pt.In.Wood(), "rod at %v", pt.X)
			holes++
		}
	}
	require.Equal(t, 3, holes)
}

func TestBracketsGoToTheHighestBoardWithUprightsBelow(t *testing.T) {
	p := bench(t)
	p = applied(t, p, `{"do":"place-brackets","module":"m2","rule":"overhang"}`)
	require.Equal(t, 3, placed(p, "m2")[0].board, "the top of the box")
	p = applied(t, p, `{"do":"turn","arrangement":"a1","module":"m2","to":90}`, `{"do":"turn","arrangement":"a2","module":"m2","to":90}`,
		`{"do":"place-brackets","module":"m2","rule":"overhang"}`)
	require.Equal(t, 2, placed(p, "m2")[0].board, "the board that is the top after a quarter turn")
	p = applied(t, p, `{"do":"add-module","shape":"Z","width":800,"height":260,"depth":200,"thickness":26,"wood":"white-oak","arrangement":"a1","x":1000,"y":1900}`,
		`{"do":"place-brackets","module":"m4","rule":"overhang"}`)
	require.Equal(t, 1, placed(p, "m4")[0].board, "the upper board: the upright stands below it")
}

// A module that stands otherwise in another arrangement gets brackets for each way.
func TestEveryArrangementGetsItsBores(t *testing.T) {
	p := applied(t, bench(t),
		`{"do":"turn","arrangement":"a2","module":"m2","by":180}`,
		`{"do":"flip","arrangement":"a2","module":"m3"}`,
		`{"do":"place-brackets","module":"m2","rule":"overhang"}`,
		`{"do":"place-brackets","module":"m3"}`)
	boards := map[int]int{}
	for _, b := range placed(p, "m2") {
		boards[b.board]++
	}
	require.Equal(t, map[int]int{3: 2, 1: 2}, boards)
	// Half a turn about the upright axis puts the studs at L − u from the board's start.
	require.Equal(t, []at{{1, "", 50 * mm}, {1, "", 450 * mm}, {1, "", 850 * mm}, {1, "front", 50 * mm}, {1, "front", 450 * mm}, {1, "front", 850 * mm}}, placed(p, "m3"))

	p = applied(t, p, `{"do":"place-brackets","module":"m2","arrangement":"a2","rule":"fixed","fixed":150}`)
	boards = map[int]int{}
	for _, b := range placed(p, "m2") {
		boards[b.board]++
	}
	require.Equal(t, map[int]int{3: 2, 1: 2}, boards, "only those for that arrangement are replaced")
}

// Several arrangements share one set of bores: the places that meet studs in the most.
func TestPlacesServeMostArrangements(t *testing.T) {
	p := applied(t, bench(t),
		`{"do":"duplicate-arrangement","arrangement":"a1"}`,
		`{"do":"move","arrangement":"a1","module":"m3","dx":-100}`,
		`{"do":"place-brackets","module":"m3","count":2}`)
	// In a1 the studs are at u 150, 550; in a2 and a3 at 50, 450, 850.
	require.Equal(t, []at{{1, "", 50 * mm}, {1, "", 850 * mm}}, placed(p, "m3"))
}

func TestOtherKindsOfBrackets(t *testing.T) {
	p := applied(t, bench(t), `{"do":"place-brackets","module":"m2","kind":"plate-upright"}`)
	require.Len(t, placed(p, "m2"), 2, "one in each upright")
	for _, b := range p.Modules[1].Brackets {
		require.Contains(t, []int{2, 4}, b.Board)
	}
	p = applied(t, p, `{"do":"place-brackets","module":"m3","kind":"bar-12-400"}`)
	require.Equal(t, []at{{1, "", 50 * mm}}, placed(p, "m3"))
	worked := module.Derive(p.Modules[2], p.Shop)
	var rods []unit.Length
	for _, r := range worked.Fixings[0].Rods {
		rods = append(rods, r.At.U)
	}
	require.Equal(t, []unit.Length{50 * mm, 450 * mm, 850 * mm}, rods, "a pitch of 400 on studs 400 apart")
	p = applied(t, p, `{"do":"place-brackets","module":"m3","kind":"cleat"}`)
	require.Len(t, placed(p, "m3"), 1)
	for _, m := range p.Modules[1:] {
		for _, f := range module.Derive(m, p.Shop).Findings {
			require.NotContains(t, []string{"rod-near-end", "bore-near-heel", "pocket-near-end", "bracket-too-early", "bracket-too-long", "bracket-off-board"}, f.Kind.Key, m.Name)
		}
	}
}

func boxesOf(t testing.TB, p plan.Plan, ids ...string) []module.Box {
	b, err := boxes(p, "a1", ids, 1)
	require.NoError(t, err)
	return b
}

func TestAlign(t *testing.T) {
	for _, line := range []string{"left", "right", "top", "bottom", "centre", "middle"} {
		p := applied(t, bench(t), `{"do":"turn","arrangement":"a1","module":"m3","to":30}`)
		was := boxesOf(t, p, "m1")[0]
		p = applied(t, p, `{"do":"align","arrangement":"a1","modules":["m1","m2","m3"],"to":"`+line+`"}`)
		for _, b := range boxesOf(t, p, "m1", "m2", "m3") {
			require.Equal(t, lineOf(was, line), lineOf(b, line), line)
		}
	}
}

func TestSpread(t *testing.T) {
	gaps := func(p plan.Plan) []unit.Length {
		b := boxesOf(t, p, "m1", "m2", "m3")
		return []unit.Length{b[1].MinX - b[0].MaxX, b[2].MinX - b[1].MaxX}
	}
	p := applied(t, bench(t), `{"do":"spread","arrangement":"a1","modules":["m3","m1","m2"],"along":"x"}`)
	// Low U 400 to 1000 and Long 2150 to 3050 stay; the box, 400 wide, comes between.
	require.Equal(t, []unit.Length{375 * mm, 375 * mm}, gaps(p))
	p = applied(t, p, `{"do":"spread","arrangement":"a1","modules":["m3","m1","m2"],"along":"x","gap":60}`)
	require.Equal(t, []unit.Length{60 * mm, 60 * mm}, gaps(p))
	require.Equal(t, 400*mm, boxesOf(t, p, "m1")[0].MinX)
	fails(t, p, `{"do":"spread","arrangement":"a1","modules":["m3","m1"],"along":"x"}`, "2 modules are too few for this; name 3 or more")
}

// Lock holes are bored from below, whichever way up the module is drawn: the base of a U
// lies across the module's own frame, and half a turn puts its other side below.
func TestLocksAreBoredFromBelow(t *testing.T) {
	for _, turn := range []string{"270", "90"} {
		for _, flip := range []string{"false", "true"} {
			p := applied(t, bench(t), `{"do":"remove-arrangement","arrangement":"a2"}`,
				`{"do":"place","arrangement":"a1","module":"m1","turn":`+turn+`,"flip":`+flip+`}`,
				`{"do":"place-brackets","module":"m1","rule":"overhang"}`)
			worked := module.Derive(p.Modules[0], p.Shop)
			on := wall.PlacingOf(worked, p.Arrangements[0].Poses[0])
			holes := 0
			for _, b := range worked.Boards {
				for _, f := range b.Features {
					if f.Cause.What == "bracket" && (f.Enter == board.FaceA || f.Enter == board.FaceB) {
						require.Equal(t, 270*unit.Degree, on.Up(b.Frame, f.Enter), "turn %s, flip %s", turn, flip)
						holes++
					}
				}
			}
			require.Equal(t, 2, holes)
			for _, f := range worked.Findings {
				require.NotEqual(t, "bracket-attitude", f.Kind.Key)
			}
		}
	}
}
