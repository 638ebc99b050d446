package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// say returns a finding in words.
func say(f finding.Finding, style unit.Style) string {
	args := append([]words.Arg(nil), f.Args...)
	args = append(args, words.Arg{Name: "value", Value: f.Value}, words.Arg{Name: "limit", Value: f.Limit})
	return words.Text("finding."+f.Kind.Key, args, style)
}

// edits returns the edit of a remedy as text: its name and arguments.
func edits(f finding.Finding) string {
	var all []string
	for _, r := range f.Remedies {
		if r.Edit.Do == "" {
			continue
		}
		text := r.Edit.Do
		for _, a := range r.Edit.Args {
			s, _ := a.Value.Print(unit.Style{})
			text += " " + a.Name + "=" + s
		}
		all = append(all, text)
	}
	return strings.Join(all, "; ")
}

// A wrongPlan is the sample with one thing wrong, and what must be said about it.
type wrongPlan struct {
	kind   string
	change func(p *plan.Plan)
	path   string
	says   string
	edits  string
}

func wrongPlans() []wrongPlan {
	return []wrongPlan{
		{"bad-date", func(p *plan.Plan) { p.Job.Date = "30.04.2031" }, "job.date", `The date of the job, "30.04.2031", is no day.`, ""},
		{"unknown-word", func(p *plan.Plan) { p.Units.System = "ell" }, "units.system", `The plan: the system of units is "ell"; known are mm, in.`, ""},
		{"too-small", func(p *plan.Plan) { p.Units.Step = 0 }, "units.step", "The plan: the smallest step is 0 mm; at least 0.001 mm is possible.", ""},
		{"shop-value", func(p *plan.Plan) { p.Shop.Grooves.DeepestPart = 0 }, "shop.grooves.deepestPart",
			"Shop profile: grooves.deepestPart is 0; allowed is 2 to 20.", "set-shop path=grooves.deepestPart value=3"},
		{"shop-value", func(p *plan.Plan) { p.Shop.Stock.Thicknesses = []unit.Length{-1} }, "shop.stock.thicknesses",
			"Shop profile: stock.thicknesses is -0.000001 mm; allowed is 6 mm to 150 mm.", ""},

		{"too-large", func(p *plan.Plan) { p.Walls[0].Width = 1e6 * mm }, "walls[0].width", "North wall: the width is 1000000 mm; at most 50000 mm is possible.", "set-wall wall=w1 width=50000 mm"},
		{"too-small", func(p *plan.Plan) { p.Walls[1].Height = -mm }, "walls[1].height", "East wall: the height is -1 mm; at least 100 mm is possible.", "set-wall wall=w2 height=100 mm"},
		{"unknown-fact", func(p *plan.Plan) { p.Walls[0].Build = "straw" }, "walls[0].build",
			`North wall: what the wall is made of is "straw"; known are studs, lath-and-plaster, board-on-dabs, brick, hollow-block, aerated-block, concrete.`, ""},
		{"unknown-fact", func(p *plan.Plan) { p.Walls[0].Obstacles[0].Kind = "cat" }, "walls[0].obstacles[0].kind",
			`North wall, Socket by the door: the kind is "cat"; known are socket, switch, pipe, radiator, window, door, picture, furniture, other.`, ""},
		{"too-small", func(p *plan.Plan) { p.Walls[0].Studs.Spacing = some(unit.Nanometre) }, "walls[0].studs.spacing", "North wall: the spacing is 0 mm; at least 50 mm is possible.", ""},
		{"stud-state-missing", func(p *plan.Plan) { p.Walls[0].Studs.State = "" }, "walls[0].studs.state", "North wall: how well the studs are known is not said, so none counts.", ""},
		{"studs-crowded", func(p *plan.Plan) { p.Walls[0].Studs.Each[1].X = 420 * mm }, "walls[0].studs.each[1].x",
			"North wall, stud 2 is 20 mm from another stud; so wide, they are at least 41.5 mm apart.", ""},
		{"outside-wall", func(p *plan.Plan) { p.Walls[0].Obstacles[0].X = 3300 * mm }, "walls[0].obstacles[0].x",
			"North wall, Socket by the door is at 3300 mm, outside the wall, which ends at 3200 mm.", ""},
		{"outside-wall", func(p *plan.Plan) { p.Walls[0].Studs.Each[0].X = -mm }, "walls[0].studs.each[0].x",
			"North wall, stud 1 is at -1 mm, outside the wall, which ends at 3200 mm.", ""},
		{"too-large", func(p *plan.Plan) { p.Walls[0].Plumb[0].X = 4000 * mm }, "walls[0].plumb[0].x",
			"North wall, plumb reading 1: the distance from the wall's left end is 4000 mm; at most 3200 mm is possible.", ""},
		{"too-small", func(p *plan.Plan) { p.Walls[0].Flat[0].Over = 0 }, "walls[0].flat[0].over",
			"North wall, straightedge reading 1: the length of the level or straightedge is 0 mm; at least 10 mm is possible.", ""},

		{"too-small", func(p *plan.Plan) { p.Modules[0].Depth = -200 * mm }, "modules[0].depth", "Left U: the depth is -200 mm; at least 20 mm is possible.", "set-module module=m1 depth=20 mm"},
		{"unknown-wood", func(p *plan.Plan) { p.Modules[0].Wood = "cheese" }, "modules[0].wood", `Left U: the wood "cheese" is not in the table of woods.`, "set-module module=m1 wood=white-oak"},
		{"no-boards", func(p *plan.Plan) { p.Modules[0].Boards = nil }, "modules[0].boards", "Left U has no board.", ""},
		{"too-large", func(p *plan.Plan) { p.Modules[0].Boards[1].Length = some(unit.Length(1e9) * mm) }, "modules[0].boards[1].length",
			"Left U, board 2: the length is 1000000000 mm; at most 6000 mm is possible.", "set-board module=m1 board=2 length=6000 mm"},
		{"too-small", func(p *plan.Plan) { p.Modules[0].Boards[1].Thickness = 0 }, "modules[0].boards[1].thickness",
			"Left U, board 2: the thickness is 0 mm; at least 5 mm is possible.", "set-board module=m1 board=2 thickness=5 mm"},
		{"too-large", func(p *plan.Plan) { p.Modules[0].Boards[1].Edges[0].Size = 14 * mm }, "modules[0].boards[1].edges[0].size",
			"Left U, board 2: the size of the cut is 14 mm; at most 13 mm is possible.", ""},
		{"same-arris", func(p *plan.Plan) { p.Modules[0].Boards[1].Edges[1].Arris = "front-a" }, "modules[0].boards[1].edges[1].arris",
			"Left U, board 2: the arris front-a is cut twice.", ""},
		{"corner-count", func(p *plan.Plan) { p.Modules[0].Corners = p.Modules[0].Corners[:1] }, "modules[0].corners", "Left U has 1 corner; its 3 boards meet at 2.", ""},
		{"no-turn", func(p *plan.Plan) { p.Modules[0].Corners[0].Turn = 0 }, "modules[0].corners[0].turn", "Left U, corner 1 does not turn.", ""},
		{"sharp-turn", func(p *plan.Plan) { p.Modules[0].Corners[1].Turn = -151 * deg }, "modules[0].corners[1].turn",
			"Left U, corner 2 turns -151°; at most 150° either way can be made.", "set-corner module=m1 corner=2 turn=-150°"},
		{"unknown-word", func(p *plan.Plan) { p.Modules[0].Corners[0].Joint = "tongue" }, "modules[0].corners[0].joint",
			`Left U, corner 1: the joint is "tongue"; known are mitre, butt-first, butt-second, rebate-first, rebate-second.`, ""},
		{"too-small", func(p *plan.Plan) { p.Modules[0].Corners[1].Reinforcement.Count = some(0) }, "modules[0].corners[1].reinforcement.count",
			"Left U, corner 2: the count is 0; at least 1 is possible.", ""},
		{"no-length", func(p *plan.Plan) { p.Modules[0].Boards[0].Length.Known = false }, "modules[0].boards[0].length", "Left U, board 1 has no length, and the module is not closed.", ""},
		{"turns-do-not-close", func(p *plan.Plan) {
			c := append([]plan.Corner(nil), p.Modules[1].Corners...)
			c[0].Turn = -80 * deg
			p.Modules[1].Corners = c
		}, "modules[1].corners", "Box: the corners turn -350° in all; to close they turn -360°.", "set-corner module=m2 corner=4 turn=-100°"},
		{"closed-of-few", func(p *plan.Plan) {
			m := &p.Modules[1]
			m.Boards, m.Corners, m.Dividers, m.Lights, m.Brackets = m.Boards[:2], m.Corners[:2], nil, nil, nil
		}, "modules[1].boards", "Box is closed with 2 boards; it takes at least 3.", ""},
		{"closing-count", func(p *plan.Plan) { p.Modules[1].Boards[3].Length = some(340 * mm) }, "modules[1].boards",
			"Box: 1 board has no length; to close, 2 are computed or none.", ""},
		{"no-such-board", func(p *plan.Plan) { p.Modules[0].Brackets[0].Board = 4 }, "modules[0].brackets[0].board",
			"Left U, bracket b3 names board 4; the module has 3.", "remove-bracket bracket=b3"},
		{"no-such-board", func(p *plan.Plan) { p.Modules[1].Dividers[0].To = -1 }, "modules[1].dividers[0].to",
			"Box, divider Middle names board -1; the module has 4.", "remove-divider divider=d5"},
		{"divider-to-itself", func(p *plan.Plan) { p.Modules[1].Dividers[0].To = 1 }, "modules[1].dividers[0].to",
			"Box, divider Middle goes from board 1 to the same board.", "remove-divider divider=d5"},
		{"off-board", func(p *plan.Plan) { p.Modules[1].Dividers[0].At = 461 * mm }, "modules[1].dividers[0].at",
			"Box, divider Middle is at 461 mm along board 1, which is 460 mm long.", "set-divider divider=d5 at=460 mm; remove-divider divider=d5"},
		{"too-large", func(p *plan.Plan) { p.Modules[1].Dividers[0].HousingDepth = some(27 * mm) }, "modules[1].dividers[0].housingDepth",
			"Box, divider Middle: the depth of the housing is 27 mm; at most 26 mm is possible.", "set-divider divider=d5 housingDepth=26 mm"},
		{"run-past-open-end", func(p *plan.Plan) { p.Modules[0].Lights[0].Last = 1 }, "modules[0].lights[0].last",
			"Left U, light l2 runs from board 2 to board 1, past the open end of the module.", "remove-light light=l2"},
		{"unknown-hardware", func(p *plan.Plan) { p.Modules[0].Lights[0].Strip = "moon" }, "modules[0].lights[0].strip",
			`Left U, light l2: the strip "moon" is not in the table of hardware.`, ""},
		{"unknown-hardware", func(p *plan.Plan) { p.Modules[0].Brackets[0].Kind = "glue" }, "modules[0].brackets[0].kind",
			`Left U, bracket b3: the bracket "glue" is not in the table of hardware.`, "set-bracket bracket=b3 kind=rod-structure"},
		{"no-such-divider", func(p *plan.Plan) { p.Modules[1].Brackets[0].Divider = "d6" }, "modules[1].brackets[0].divider",
			"Box, bracket b6 names divider d6, which the module does not have.", "remove-bracket bracket=b6"},
		{"bracket-on-nothing", func(p *plan.Plan) { p.Modules[1].Brackets[0].Divider = "" }, "modules[1].brackets[0].board",
			"Box, bracket b6 is on no board.", "remove-bracket bracket=b6"},
		{"bracket-on-two", func(p *plan.Plan) { p.Modules[1].Brackets[0].Board = 1 }, "modules[1].brackets[0].divider",
			"Box, bracket b6 is on board 1 and on divider d5; it can be on one.", "remove-bracket bracket=b6"},
		{"off-board", func(p *plan.Plan) { p.Modules[0].Brackets[0].At = -mm }, "modules[0].brackets[0].at",
			"Left U, bracket b3 is at -1 mm along board 2, which is 520 mm long.", "set-bracket bracket=b3 at=0 mm; remove-bracket bracket=b3"},

		{"no-such-wall", func(p *plan.Plan) { p.Arrangements[1].Wall = "w9" }, "arrangements[1].wall", "Round the corner: there is no wall w9.", "set-arrangement arrangement=a2 wall=w1"},
		{"no-such-neighbour", func(p *plan.Plan) { p.Arrangements[0].Corner = "a1" }, "arrangements[0].corner", "Side by side: a1 is no arrangement on another wall.", ""},
		{"no-such-module", func(p *plan.Plan) { p.Arrangements[1].Poses[0].Module = "m9" }, "arrangements[1].poses[0].module",
			"m9 in Round the corner: there is no module m9.", "take-off arrangement=a2 module=m9"},
		{"placed-twice", func(p *plan.Plan) { p.Arrangements[0].Poses[1].Module = "m1" }, "arrangements[0].poses[1].module",
			"Left U in Side by side: it is placed twice; there is one of it.", "take-off arrangement=a1 module=m1"},
		{"too-large", func(p *plan.Plan) { p.Arrangements[0].Poses[0].Turn = 360 * deg }, "arrangements[0].poses[0].turn",
			"Left U in Side by side: the turn is 360°; at most 359.99° is possible.", ""},
		{"too-large", func(p *plan.Plan) { p.Arrangements[0].Poses[0].X = 1e8 * mm }, "arrangements[0].poses[0].x",
			"Left U in Side by side: the distance from the wall's left end is 100000000 mm; at most 100000 mm is possible.", ""},
		{"too-small", func(p *plan.Plan) { p.Arrangements[0].Lines[0].Height = -2000 * mm }, "arrangements[0].lines[0].height",
			"Side by side, line h9: the height is -2000 mm; at least -1000 mm is possible.", "set-line line=h9 height=-1000 mm"},

		{"same-name", func(p *plan.Plan) { p.Modules[1].Name = "Left U" }, "modules[1].name", "Left U: another one is called Left U.", ""},
		{"bad-id", func(p *plan.Plan) { p.Modules[1].Lights[0].ID = "lamp" }, "modules[1].lights[0].id",
			`Box, light lamp: "lamp" is no id; here an id is the letter l and a number.`, ""},
		{"bad-id", func(p *plan.Plan) { p.Modules[1].Lights[0].ID = "l08" }, "modules[1].lights[0].id",
			`Box, light l08: "l08" is no id; here an id is the letter l and a number.`, ""},
		{"same-id", func(p *plan.Plan) { p.Modules[1].Lights[0].ID = "l2" }, "modules[1].lights[0].id", "Box, light l2: the id l2 is already that of modules[0].lights[0].", ""},
		{"counter-low", func(p *plan.Plan) { p.Counters.Part = 8 }, "counters.part", "The plan: the counter of parts stands at 8, but 9 is in use.", ""},
		{"too-small", func(p *plan.Plan) { p.Counters.Wall = -1 }, "counters.wall", "The plan: the counter of walls is -1; at least 0 is possible.", ""},
	}
}

func TestEachMistakeIsFoundWhereItIs(t *testing.T) {
	for _, c := range wrongPlans() {
		p := sample()
		c.change(&p)
		var got []string
		for _, f := range plan.Check(p) {
			text := fmt.Sprintf("%s | %s | %s | %s", f.Kind.Key, f.Place.Path, say(f, p.Style()), edits(f))
			if f.Kind.Key == c.kind {
				require.Equal(t, fmt.Sprintf("%s | %s | %s | %s", c.kind, c.path, c.says, c.edits), text)
				got = append(got, text)
			}
			requireWhole(t, f, p.Style())
		}
		require.Len(t, got, 1, "%s at %s", c.kind, c.path)
	}
}

// requireWhole checks that a finding has words, a place, a limit where its words speak
// of one, and a remedy in words.
func requireWhole(t *testing.T, f finding.Finding, style unit.Style) {
	t.Helper()
	text := say(f, style)
	require.NotEmpty(t, f.Place.Path, text)
	require.NotEmpty(t, f.Remedies, text)
	holes := strings.NewReplacer(f.Place.Path, "", "modules[0].lights[0]", "").Replace(text)
	require.False(t, strings.ContainsAny(holes, "[]{}"), text)
	for _, name := range words.Placeholders("finding." + f.Kind.Key) {
		if name == "limit" {
			require.NotEqual(t, words.None, f.Limit.Is, text)
		}
	}
	for _, r := range f.Remedies {
		s := words.Text("remedy."+r.Key, r.Args, style)
		require.False(t, strings.ContainsAny(s, "[]{}"), s)
	}
}

func TestEveryKindIsShownByAWrongPlan(t *testing.T) {
	shown := map[string]bool{}
	for _, c := range wrongPlans() {
		shown[c.kind] = true
	}
	for _, k := range plan.Kinds() {
		require.True(t, shown[k.Key], k.Key)
		require.True(t, words.Has("finding."+k.Key), k.Key)
	}
	require.Len(t, shown, len(plan.Kinds()))
}

// A stop in a module must name the module, or a later room would work on it.
func TestWhatStopsAModuleNamesIt(t *testing.T) {
	for _, c := range wrongPlans() {
		if !strings.HasPrefix(c.path, "modules[") {
			continue
		}
		p := sample()
		c.change(&p)
		for _, f := range plan.Check(p) {
			if f.Place.Path == c.path {
				require.NotEmpty(t, f.Place.Module, c.path)
			}
		}
	}
}

// Turns of regular polygons, typed in full and as a saw's scale is read.
func TestTurnsOfClosedModulesMayBeRounded(t *testing.T) {
	for n := 3; n <= 12; n++ {
		for _, step := range []unit.Angle{1, unit.Degree / 100} {
			turn := unit.Angle(math.Round(float64(unit.FullTurn)/float64(n)/float64(step))) * step
			p := sample()
			m := &p.Modules[1]
			m.Boards, m.Corners, m.Dividers, m.Lights, m.Brackets = nil, nil, nil, nil, nil
			for range n {
				m.Boards = append(m.Boards, plan.Board{Length: some(300 * mm), Thickness: 26 * mm})
				m.Corners = append(m.Corners, plan.Corner{Turn: turn, Joint: plan.Mitre})
			}
			found := plan.Check(p)
			off := (turn*unit.Angle(n) - unit.FullTurn).Abs()
			require.Equal(t, off > unit.Degree/100, len(found) > 0, "%d corners of %s", n, turn)
		}
	}
}

// What Check passes over does not depend on how often it is asked, and a plan of
// nothing but zeros is a list of findings, not a panic.
func TestCheckOfNothing(t *testing.T) {
	require.NotEmpty(t, plan.Check(plan.Plan{}))
	p := plan.Plan{Walls: make([]plan.Wall, 2), Modules: make([]plan.Module, 2), Arrangements: make([]plan.Arrangement, 2)}
	p.Modules[0] = plan.Module{
		Boards: make([]plan.Board, 2), Corners: make([]plan.Corner, 3), Dividers: make([]plan.Divider, 1),
		Lights: make([]plan.Light, 1), Brackets: make([]plan.Bracket, 1), Closed: true,
	}
	p.Arrangements[0].Poses = make([]plan.Pose, 2)
	p.Walls[0].Studs.Each = make([]plan.Stud, 2)
	for _, f := range plan.Check(p) {
		require.NotEmpty(t, f.Remedies)
	}
	require.Equal(t, plan.Check(p), plan.Check(p))
}
