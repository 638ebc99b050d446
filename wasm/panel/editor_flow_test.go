package panel

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A maker uses the two panels as somebody does who only reads them: by the names of the
// controls.
type maker struct {
	t *testing.T
	s app.State
}

func (m *maker) step(e app.Event) {
	m.t.Helper()
	steps := len(m.s.History.Past)
	m.s, _ = app.Step(m.s, e)
	if _, moves := e.(app.Choose); !moves {
		require.Len(m.t, m.s.History.Past, steps+1, "nothing was done: %s", m.s.Toast.Text)
	}
}

// control returns the one control of a tag with that name.
func (m *maker) control(tag, name string) Node {
	m.t.Helper()
	tree := el("div", "", kids(survey(&m.s)))
	if m.s.Job == app.Arrange {
		tree = el("div", "", wholeEditor(&m.s))
	}
	labels := labelsOf(tree)
	var found []Node
	walk(tree, func(n Node) {
		if n.Tag == tag && nameOf(n, labels) == name {
			found = append(found, n)
		}
		if tag == "input" && n.Tag == "label" && attrOf(n, "for") == "" && textOf(n) == name {
			found = append(found, n.Kids[0]) // a box to tick stands in its label
		}
	})
	require.Len(m.t, found, 1, "%s %q", tag, name)
	return found[0]
}

func handler(n Node, kind string) app.Event {
	for _, h := range n.On {
		if h.On == kind {
			return h.Event
		}
	}
	return nil
}

func (m *maker) press(name string) {
	m.t.Helper()
	m.step(handler(m.control("button", name), "click"))
}

func (m *maker) types(name, text string) {
	m.t.Helper()
	e := handler(m.control("input", name), "change").(app.Entered)
	e.Text = text
	m.step(e)
}

func (m *maker) ticks(name string) { m.t.Helper(); m.types(name, "true") }

func (m *maker) chooses(name, option string) {
	m.t.Helper()
	list := m.control("select", name)
	e := handler(list, "change").(app.Entered)
	found := 0
	walk(list, func(n Node) {
		if n.Tag == "option" && textOf(n) == option {
			e.Text = attrOf(n, "value")
			found++
		}
	})
	require.Equal(m.t, 1, found, "%s: %s", name, option)
	m.step(e)
}

// byHand is the plan that the controls are to give, written out.
const byHand = `{
  "schema": "ledgewright/plan/1", "job": {}, "units": {"system": "mm", "step": 0.5}, "shop": {},
  "counters": {"wall": 1, "module": 1, "arrangement": 1, "part": 5},
  "walls": [{
    "id": "w1", "name": "Wall", "width": 3000, "height": 2400, "floorRise": -4, "build": "studs",
    "lining": {"kind": "plasterboard", "thickness": 12.5}, "cableRule": "uk", "builtYear": 2004,
    "studs": {"material": "wood", "width": 38, "depth": 89, "each": [
      {"x": 1000, "state": "edges-found"}, {"x": 1600, "state": "one-point", "width": 44}, {"x": 2200, "state": "guess"}]},
    "obstacles": [
      {"id": "o1", "kind": "socket", "x": 50, "y": 300, "width": 146, "height": 86, "depth": 10},
      {"id": "o2", "kind": "socket", "x": 2500, "y": 300, "width": 146, "height": 86}],
    "plumb": [{"x": 500, "over": 1800, "lean": -3}]
  }],
  "modules": [{
    "id": "m1", "name": "Form 1", "depth": 200, "wood": "white-oak", "closed": true,
    "boards": [{"length": 600, "thickness": 26}, {"length": 300, "thickness": 20}, {"length": 424, "thickness": 26}, {"thickness": 26},
      {"thickness": 32, "edges": [{"arris": "front-b", "cut": "chamfer", "size": 2}]}],
    "corners": [{"turn": 90, "joint": "mitre", "reinforcement": {"kind": "spline"}}, {"turn": 45, "joint": "mitre"}, {"turn": 90, "joint": "mitre"},
      {"turn": 45, "joint": "mitre"}, {"turn": 90, "joint": "butt-first"}],
    "dividers": [{"id": "d3", "from": 1, "to": 3, "at": 420, "thickness": 18, "start": "housed", "end": "butt"}],
    "brackets": [{"id": "b4", "kind": "rod-structure-10-lag", "board": 1, "at": 120}, {"id": "b5", "kind": "rod-structure-12", "board": 1, "at": 440}]
  }],
  "arrangements": [{"id": "a1", "name": "First arrangement", "wall": "w1", "poses": [{"module": "m1", "x": 1500, "y": 1200}]}]
}`

func TestAFreeFormFromNothingByItsControlsAlone(t *testing.T) {
	m := &maker{t: t}
	m.s, _ = app.Step(m.s, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	m.s, _ = app.Step(m.s, app.NewJob{Width: "3000", Height: "2400"})

	m.surveys()
	m.s, _ = app.Step(m.s, app.Go{Job: app.Arrange})
	m.builds()

	want, err := plan.Decode([]byte(byHand))
	require.NoError(t, err)
	for _, f := range m.s.Build.Findings {
		require.NotEqual(t, finding.Stop, f.Kind.Severity, engine.Say(f, m.s.Plan.Style()))
	}
	wanted, err := engine.Encode(engine.Derive(want, nil))
	require.NoError(t, err)
	have, err := engine.Encode(engine.Derive(m.s.Plan, nil))
	require.NoError(t, err)
	require.JSONEq(t, string(wanted), string(have))
	require.True(t, string(wanted) == string(have), "the same text as well")
}

// surveys takes the wall down.
func (m *maker) surveys() {
	m.t.Helper()
	m.chooses("Made of", "board on studs")
	m.chooses("Lining", "plasterboard")
	m.types("Lining thickness, mm", "12.5")
	m.types("Year built", "2004")
	m.types("Floor out of level, mm", "4")
	m.chooses("Floor is higher", "at the left end")
	m.chooses("Stud material", "wood")
	m.types("Stud width, mm", "38")
	m.types("Stud depth, mm", "8.9 cm")
	for _, at := range []string{"1600", "1000", "2200"} {
		m.types("Add a stud at, mm", at)
	}
	m.chooses("Stud 1 is", "edges found")
	m.chooses("Stud 2 is", "one point")
	m.types("Stud 2 width, mm", "44")
	m.press("Add a socket")
	m.press("Add a socket")
	m.types("Socket 1, depth out of the wall, mm", "10")
	m.types("Socket 2, left edge at, mm", "2500")
	m.chooses("Where cables are expected", "UK practice; other countries differ")
	m.press("Add a plumb reading")
	m.types("Plumb reading 1 leans by, mm", "3")
	m.chooses("Plumb reading 1, the top leans", "away from the room")
}

// builds makes the module.
func (m *maker) builds() {
	m.t.Helper()
	m.press("Begin with one board")
	for range 4 {
		m.press("Add a board at the end")
	}
	m.types("Board 2 length, mm", "300")
	m.types("Board 3 length, mm", "424")
	m.types("Board 2 thickness, mm", "20")
	m.types("Board 5 thickness, mm", "32")
	m.types("Corner 2 turn, °", "45")
	m.press("Quarter right at corner 3")
	m.press("Quarter left at corner 3")
	m.types("Corner 4 turn, °", "45")
	m.ticks("Closed: the last board meets the first")
	m.chooses("Corner 5 joint", "butt joint, first board through")
	m.chooses("Corner 1 reinforced by", "spline")
	m.chooses("Board 5: the front arris of face B", "chamfer")
	m.types("Board 5: the front arris of face B, size, mm", "2")
	m.press("Add a divider")
	m.types("Divider 1 at, along its first board, mm", "420")
	m.types("Divider 1 thickness, mm", "18")
	m.chooses("Divider 1, joint at the end", "butt")
	m.chooses("Rule to place again by", "by the overhang")
	m.chooses("Bracket 1 kind", "rod set in the wall, rod 10 mm, lag rod")
	m.types("Bracket 2 at, along the board, mm", "440")
}

// What a board cuts off a corner still comes round, and what is removed again leaves the
// plan as it was but for its counters.
func TestABoardInAClosedModuleKeepsTheTurnsWhole(t *testing.T) {
	m := &maker{t: t}
	m.s, _ = app.Step(m.s, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	m.s, _ = app.Step(m.s, app.NewJob{Width: "3000", Height: "2400"})
	m.s, _ = app.Step(m.s, app.Go{Job: app.Arrange})
	m.builds()
	for _, name := range []string{"Add a board at the end", "Add a board before board 1", "Add a board after board 3", "Add a board before board 4"} {
		was := m.s
		boards := len(m.s.Plan.Modules[0].Boards)
		m.press(name)
		require.Len(t, m.s.Plan.Modules[0].Boards, boards+1)
		for _, f := range m.s.Build.Findings {
			require.NotContains(t, []string{"turns-do-not-close", "corner-count", "no-turn"}, f.Kind.Key, name)
		}
		m.s = was
	}
}

func TestWallsAreAddedNamedAndRemoved(t *testing.T) {
	m := &maker{t: t}
	m.s, _ = app.Step(m.s, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	m.s, _ = app.Step(m.s, app.NewJob{Width: "118", Height: "96 in"})
	m.press("Add a wall")
	require.Equal(t, "w2", m.s.Wall)
	require.Equal(t, "a2", m.s.Arrangement, "a wall comes with an arrangement of its own")
	m.types("Name of the wall", "Chimney breast")
	m.s, _ = app.Step(m.s, handler(m.control("button", "Wall"), "click"))
	require.Equal(t, "w1", m.s.Wall)
	m.s, _ = app.Step(m.s, handler(m.control("button", "Chimney breast"), "click"))
	m.press("Remove Chimney breast")
	require.Len(t, m.s.Plan.Walls, 1)
	require.Len(t, m.s.Plan.Arrangements, 1)
}

// A wall on which modules hang says why it stays.
func TestAWallInUseStays(t *testing.T) {
	m := &maker{t: t}
	m.s, _ = app.Step(m.s, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	m.s, _ = app.Step(m.s, app.NewJob{Width: "3000", Height: "2400"})
	m.s, _ = app.Step(m.s, app.Go{Job: app.Arrange})
	m.press("Begin with one board")
	m.s, _ = app.Step(m.s, app.Go{Job: app.Survey})
	n := m.control("button", "Remove Wall")
	require.Equal(t, "true", attrOf(n, "aria-disabled"))
	require.Empty(t, n.On)
}

// What is not known is seen as not known, and each fact is asked for until it is there.
func TestUnknownStaysSeen(t *testing.T) {
	m := &maker{t: t}
	m.s, _ = app.Step(m.s, app.Started{Now: "14:02", Size: app.Size{Width: 754, Height: 660}})
	m.s, _ = app.Step(m.s, app.NewJob{Width: "3000", Height: "2400"})
	seen := func() (unknown, asked int, text string) {
		tree := el("div", "", kids(survey(&m.s)))
		walk(tree, func(n Node) {
			for _, a := range n.Attrs {
				if a.Name == "data-unknown" {
					unknown++
				}
			}
			if n.Tag == "li" && n.Kids[0].Tag == "span" {
				asked++
			}
		})
		return unknown, asked, textOf(tree)
	}
	unknown, asked, text := seen()
	require.Equal(t, 12, unknown, "build, lining twice, year, far side, floor, ceiling, cables; of studs all but first and spacing")
	require.Equal(t, 8, asked, "all but studs, of which a wall of unknown build has none, and things that stand out")
	require.Contains(t, text, "Asbestos is possible")
	require.Contains(t, text, "no hole is checked for cables")
	m.surveys()
	now, left, text := seen()
	require.Less(t, now, unknown)
	require.Less(t, left, asked)
	require.NotContains(t, text, "Asbestos is possible", "the house is of 2004")
	require.Contains(t, text, "Both edges of 2 studs, the first at 1600 mm")
	require.Contains(t, text, "top leans away by 3 mm")
}

// A caution says hazard, outcome and what to do in 25 words at most, so that it is read
// (after ISO 3864-2 and ANSI Z535.4, by our own count).
func TestCautionsOfASurveyAreShort(t *testing.T) {
	for _, system := range []unit.System{unit.Metric, unit.Inches} {
		s := app.State{Plan: plan.New(system)}
		for _, key := range []string{"survey.caution-old", "survey.caution-cables"} {
			says := say(&s, key, words.Length("limit", pick(&s, 150, 6)))
			require.LessOrEqual(t, len(strings.Fields(says)), 25, says)
		}
	}
}
