package edit

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// box is a closed module with a divider, lights round its corners, and brackets.
func box(t testing.TB) plan.Plan {
	return applied(t, plan.New(unit.Metric),
		`{"do":"add-module","name":"Box","shape":"box","width":400,"height":300,"depth":200,"thickness":26,"wood":"white-oak","typed":true}`,
		`{"do":"add-divider","module":"m1","from":1,"to":3,"at":150}`,
		`{"do":"add-light","module":"m1","first":4,"last":1,"face":"A","width":12,"depth":8,"strip":"strip-24-24"}`,
		`{"do":"add-light","module":"m1","first":2,"last":3,"face":"A","width":12,"depth":8,"strip":"strip-24-24"}`,
		`{"do":"add-bracket","module":"m1","board":3,"at":100}`,
		`{"do":"add-bracket","module":"m1","board":4,"at":100}`,
		`{"do":"add-bracket","module":"m1","kind":"hook-keyhole","divider":"d1","at":60}`)
}

// stands lists what stands on the boards of module m1: from-to of dividers, first-last of
// lights, boards of brackets.
func stands(p plan.Plan) (dividers, lights [][2]int, brackets []int) {
	m := p.Modules[0]
	for _, d := range m.Dividers {
		dividers = append(dividers, [2]int{d.From, d.To})
	}
	for _, l := range m.Lights {
		lights = append(lights, [2]int{l.First, l.Last})
	}
	for _, b := range m.Brackets {
		brackets = append(brackets, b.Board)
	}
	return dividers, lights, brackets
}

func TestRemovedBoardsTakeWhatStandsOnThem(t *testing.T) {
	cases := []struct {
		board    string
		dividers [][2]int
		lights   [][2]int
		brackets []int
		said     string
	}{
		{"1", nil, [][2]int{{3, 3}, {1, 2}}, []int{2, 3}, "remove board 1 of Box with 2 things on it"},
		{"2", [][2]int{{1, 2}}, [][2]int{{3, 1}, {2, 2}}, []int{2, 3, 0}, "remove board 2 of Box"},
		{"3", nil, [][2]int{{3, 1}, {2, 2}}, []int{3}, "remove board 3 of Box with 3 things on it"},
		{"4", [][2]int{{1, 3}}, [][2]int{{1, 1}, {2, 3}}, []int{3, 0}, "remove board 4 of Box with 1 thing on it"},
	}
	for _, c := range cases {
		e, err := Decode(line(`{"do":"remove-board","module":"m1","board":` + c.board + `}`))
		require.NoError(t, err)
		p, name, err := Apply(box(t), e)
		require.NoError(t, err)
		d, l, b := stands(p)
		require.Equal(t, c.dividers, d, c.board)
		require.Equal(t, c.lights, l, c.board)
		require.Equal(t, c.brackets, b, c.board)
		require.Len(t, p.Modules[0].Boards, 3)
		require.Len(t, p.Modules[0].Corners, 3)
		require.Equal(t, c.said, words.Text(name.Key, name.Args, p.Style()))
	}
}

func TestAddedBoardsMoveWhatStandsBehindThem(t *testing.T) {
	cases := []struct {
		at       string
		dividers [][2]int
		lights   [][2]int
		brackets []int
		corner   int // index of the new one
	}{
		{`"at":1,`, [][2]int{{2, 4}}, [][2]int{{5, 2}, {3, 4}}, []int{4, 5, 0}, 0},
		{`"at":3,`, [][2]int{{1, 4}}, [][2]int{{5, 1}, {2, 4}}, []int{4, 5, 0}, 1},
		{``, [][2]int{{1, 3}}, [][2]int{{4, 1}, {2, 3}}, []int{3, 4, 0}, 3},
	}
	for _, c := range cases {
		p := applied(t, box(t), `{"do":"add-board","module":"m1",`+c.at+`"turn":45,"length":200}`)
		d, l, b := stands(p)
		require.Equal(t, c.dividers, d, c.at)
		require.Equal(t, c.lights, l, c.at)
		require.Equal(t, c.brackets, b, c.at)
		m := p.Modules[0]
		require.Len(t, m.Boards, 5)
		require.Len(t, m.Corners, 5)
		require.Equal(t, 45*unit.Degree, m.Corners[c.corner].Turn)
		require.Equal(t, plan.Reinforcement{Kind: "spline"}, m.Corners[c.corner].Reinforcement, "as its neighbours")
	}
}

// A board that is added and taken away again leaves no trace.
func TestAddThenRemoveABoard(t *testing.T) {
	before := box(t)
	for _, n := range []string{"1", "2", "3", "4", "5"} {
		p := applied(t, before, `{"do":"add-board","module":"m1","at":`+n+`,"turn":45,"length":200}`)
		p = applied(t, p, `{"do":"remove-board","module":"m1","board":`+n+`}`)
		switch n {
		case "1":
			require.Equal(t, text(t, before), text(t, p))
		default: // the corner after the board goes, and the new one before it stays
			require.Equal(t, before.Modules[0].Boards, p.Modules[0].Boards)
			d, l, b := stands(p)
			d0, l0, b0 := stands(before)
			require.Equal(t, []any{d0, l0, b0}, []any{d, l, b})
		}
	}
}

func TestClosingAndOpening(t *testing.T) {
	p := applied(t, plan.New(unit.Metric),
		`{"do":"add-module","shape":"U","width":400,"height":300,"depth":200,"thickness":26,"wood":"white-oak"}`,
		`{"do":"add-board","module":"m1","turn":90,"length":400}`,
		`{"do":"set-module","module":"m1","closed":true}`)
	m := p.Modules[0]
	require.True(t, m.Closed)
	require.Equal(t, unit.QuarterTurn, m.Corners[3].Turn)
	require.False(t, m.Boards[2].Length.Known || m.Boards[3].Length.Known, "the last two are to close")
	p = applied(t, p, `{"do":"set-module","module":"m1","closed":false}`)
	m = p.Modules[0]
	require.False(t, m.Closed)
	require.Len(t, m.Corners, 3)
	require.Equal(t, 300*mm, m.Boards[2].Length.Value)
	require.Equal(t, 400*mm, m.Boards[3].Length.Value)
	fails(t, applied(t, p, `{"do":"set-corner","module":"m1","corner":1,"turn":-90}`),
		`{"do":"set-module","module":"m1","closed":true}`, "no last corner makes 360° of that")
	fails(t, applied(t, box(t), `{"do":"remove-light","light":"l3"}`), `{"do":"set-module","module":"m1","closed":false}`, "it runs past board 4 to the first")
}

func TestAnotherReinforcementForgetsTheSizesOfTheOld(t *testing.T) {
	p := applied(t, box(t),
		`{"do":"set-corner","module":"m1","corner":1,"reinforcement":{"kind":"tenon","thickness":8,"width":50}}`,
		`{"do":"set-corner","module":"m1","corner":1,"reinforcement":{"count":2}}`)
	r := p.Modules[0].Corners[0].Reinforcement
	require.Equal(t, []any{"tenon", 8 * mm, 50 * mm, 2}, []any{r.Kind, r.Thickness.Value, r.Width.Value, r.Count.Value})
	p = applied(t, p, `{"do":"set-corner","module":"m1","corner":1,"reinforcement":{"kind":"dowel","count":4}}`)
	r = p.Modules[0].Corners[0].Reinforcement
	require.False(t, r.Thickness.Known || r.Width.Known)
	require.Equal(t, 4, r.Count.Value)
}
