package panel

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

func TestHangIsSound(t *testing.T) {
	eachDesk(t, app.Hang, func(t *testing.T, s app.State) {
		requireSound(t, hang(&s))
		requireFieldsWork(t, s, hang(&s))
	})
}

// The figures of the table, typed again and taken from the lines, lead to where the holes
// are, but for the rounding of the tape that is stated; and they are the figures of a
// build of its own.
func TestFiguresLeadToTheHoles(t *testing.T) {
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Hang})
		b := engine.Derive(s.Plan, nil)
		for _, r := range b.Arrangements {
			at, _ := app.Step(s, app.ShowArrangement{ID: r.Arrangement})
			if len(r.Points) == 0 {
				continue
			}
			rows := rowsOf([]Node{atKey(t, hang(&at), "points")})[1:]
			require.Len(t, rows, len(r.Points))
			half := s.Plan.Shop.Tape.Site / 2
			for i, p := range r.Points {
				dx, dy := typedLength(t, s, rows[i][1]), typedLength(t, s, rows[i][2])
				require.Equal(t, p.Number, rows[i][0])
				require.Equal(t, p.DX, dx)
				require.Equal(t, p.DY, dy)
				require.LessOrEqual(t, (r.Plumb + dx - p.X).Abs(), half)
				require.LessOrEqual(t, (r.Level + dy - p.Y).Abs(), half)
				require.Equal(t, p.What == wall.Axis, rows[i][3] == "axis")
			}
		}
	}
}

func typedLength(t *testing.T, s app.State, cell string) unit.Length {
	t.Helper()
	l, err := unit.ParseLength(strings.NewReplacer("−", "-", "+", "").Replace(cell), s.Plan.Units.System)
	require.NoError(t, err, cell)
	return l
}

// The two lines are placed by typing, and all figures follow; taken away, they are
// proposals again.
func TestTheLinesAreTyped(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Hang})
	was := resultOf(s.Build, s.Arrangement)
	f := deskField(t, hang(&s), "datum-level")
	next, _ := app.Step(s, app.Entered{Field: f, Text: "1000"})
	r := resultOf(next.Build, next.Arrangement)
	require.Equal(t, 1000*unit.Millimetre, r.Level)
	require.Contains(t, reads(atKey(t, hang(&next), "lines-stand")), "The level line stands where you put it")
	for i, p := range r.Points {
		require.Equal(t, was.Points[i].DY+was.Level-r.Level, p.DY)
	}
	f = deskField(t, hang(&next), "datum-level")
	back, _ := app.Step(next, app.Entered{Field: f, Text: ""})
	require.Equal(t, was.Level, resultOf(back.Build, back.Arrangement).Level)
	require.Contains(t, reads(atKey(t, hang(&back), "lines-stand")), "Both lines are proposals")

	f = deskField(t, hang(&s), "datum-plumb")
	next, _ = app.Step(s, app.Entered{Field: f, Text: "9 m"})
	require.True(t, next.Fields[f.Key].Bad, "a plumb line beyond the wall")
}

func deskField(t *testing.T, nodes []Node, key string) app.Field {
	t.Helper()
	for _, h := range atKey(t, nodes, key).On {
		if e, ok := h.Event.(app.Entered); ok {
			return e.Field
		}
	}
	require.Fail(t, "no field", key)
	return app.Field{}
}

// A hazard, what happens and what to do, in 25 words with the signal word (ISO 3864-2
// asks for short texts; the number is this project's own).
func TestCautionsAreShort(t *testing.T) {
	n := 0
	for _, key := range words.Keys() {
		if strings.HasPrefix(key, "hang.caution-") {
			n++
			says := words.Text("hang.warning", nil, unit.Style{}) + " " + words.Text(key, nil, unit.Style{})
			require.LessOrEqual(t, len(strings.Fields(says)), 25, key)
		}
	}
	require.Equal(t, 5, n)
}

func TestCautionsFollowTheAgeOfTheWall(t *testing.T) {
	for _, c := range []struct {
		year  int
		known bool
		want  string
	}{{0, false, "hang.caution-age"}, {1977, true, "hang.caution-old"}, {1978, true, "hang.caution-asbestos"}, {1999, true, "hang.caution-asbestos"}, {2000, true, ""}} {
		require.Equal(t, c.want, oldWall(c.year, c.known), c.year)
	}
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Hang})
		nodes := hang(&s)
		w, _ := s.Plan.Wall(s.Wall)
		require.True(t, hasKey(nodes, "caution-cables"))
		require.True(t, hasKey(nodes, "caution-children"))
		require.Equal(t, !w.BuiltYear.Known || w.BuiltYear.Value < 2000, hasKey(nodes, "caution-age"), name)
	}
}

// What the table says of holes agrees with the findings about them, though those name
// only the first hole of a bracket.
func TestStatesAgreeWithFindings(t *testing.T) {
	kinds := map[string]finding.Severity{"hole-in-cable-band": finding.Stop, "hole-behind-obstacle": finding.Stop,
		"nothing-in-stud": finding.Mend, "screw-off-stud": finding.Mend, "stud-edge": finding.Mend}
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Hang})
		for _, a := range s.Plan.Arrangements {
			at, _ := app.Step(s, app.ShowArrangement{ID: a.ID})
			h := hanging{s: &at, a: a, r: resultOf(at.Build, a.ID)}
			h.w, _ = at.Plan.Wall(at.Wall)
			blamed := map[string]bool{}
			for _, f := range at.Build.Findings {
				if severity, ok := kinds[f.Kind.Key]; ok && f.Place.Arrangement == a.ID {
					p := h.r.Points[mustNumber(t, f.Place.Point)-1]
					got, _ := h.pointState(p)
					require.GreaterOrEqual(t, got, severity, "%s point %s: %s", name, p.Number, f.Kind.Key)
					blamed[p.Module+p.Bracket] = true
				}
			}
			for _, p := range h.r.Points {
				if got, _ := h.pointState(p); p.What == wall.Hole && got >= finding.Mend {
					require.True(t, blamed[p.Module+p.Bracket], "%s point %s", name, p.Number)
				}
			}
		}
	}
}

func mustNumber(t *testing.T, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	require.NoError(t, err)
	return n
}

func TestHolesOfSeveralArrangementsAreCounted(t *testing.T) {
	s := desk(t, "landing", app.Go{Job: app.Hang})
	require.Greater(t, len(s.Plan.Arrangements), 1)
	places := map[string]int{}
	for _, r := range s.Build.Arrangements {
		for _, p := range r.Points {
			if p.What == wall.Hole && r.Wall == s.Wall {
				places[p.X.String()+p.Y.String()+p.Drill.String()]++
			}
		}
	}
	shared := 0
	for _, n := range places {
		if n > 1 {
			shared++
		}
	}
	says := reads(atKey(t, hang(&s), "sharing"))
	require.True(t, strings.HasPrefix(says, strconv.Itoa(len(places))+" hole"), says)
	require.Contains(t, says, "; "+strconv.Itoa(shared)+" of them")
}

func TestTheBenchTurnsThroughAllPoints(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Hang}, app.Show{What: app.Bench})
	r := resultOf(s.Build, s.Arrangement)
	for i, p := range r.Points {
		nodes := hang(&s)
		require.False(t, hasKey(nodes, "points"), "one thing at a time")
		says := reads(atKey(t, nodes, "figures"))
		require.Contains(t, says, s.Plan.Style().WithUnit(p.DX.Abs()))
		require.Contains(t, says, s.Plan.Style().WithUnit(p.DY.Abs()))
		require.Equal(t, p.What == wall.Hole, strings.Contains(says, "Drill"))
		if p.DY < 0 {
			require.Contains(t, says, "Below the level line")
		}
		s, _ = click(t, s, nodes, "next")
		require.Equal(t, app.Thing{Kind: "point", Owner: s.Arrangement, Index: (i+1)%len(r.Points) + 1}, s.At)
	}
}

func TestShimsNameTheirSide(t *testing.T) {
	seen := 0
	for _, name := range assets.Names() {
		s := desk(t, name, app.Go{Job: app.Hang})
		r := resultOf(s.Build, s.Arrangement)
		w, _ := s.Plan.Wall(s.Wall)
		if len(r.Points) == 0 {
			continue
		}
		says := reads(atKey(t, hang(&s), "shims"))
		if len(w.Plumb) == 0 {
			require.Contains(t, says, "Not checked")
			continue
		}
		require.Equal(t, len(r.Shims), strings.Count(says, "end of its plate"), name)
		seen += len(r.Shims)
	}
	require.Positive(t, seen, "no example has shims")
}
