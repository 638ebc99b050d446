package plan_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

const (
	mm  = unit.Millimetre
	deg = unit.Degree
)

func some[T any](v T) document.Opt[T] { return document.Some(v) }

// sample is a plan with something in every member that a plan has: a wall with all
// facts, an open and a closed module, and two arrangements round a corner.
func sample() plan.Plan {
	p := plan.New(unit.Metric)
	p.Job = plan.Job{Number: "31-07", Title: "Reading corner", Maker: "Bench by the window", Client: "Upper flat", Date: "2031-04-30", Note: "Light must face down."}
	p.Counters = plan.Counters{Wall: 2, Module: 2, Arrangement: 2, Part: 9}
	p.Walls = []plan.Wall{northWall(), {ID: "w2", Name: "East wall", Width: 1800 * mm, Height: 2450 * mm}}
	p.Modules = []plan.Module{uModule(), boxModule()}
	p.Arrangements = []plan.Arrangement{
		{
			ID: "a1", Name: "Side by side", Wall: "w1", Corner: "a2",
			Poses: []plan.Pose{{Module: "m1", X: 700 * mm, Y: 1500 * mm}, {Module: "m2", X: 1500 * mm, Y: 1550 * mm, Turn: 90 * deg, Flip: true}},
			Lines: []plan.Line{{ID: "h9", Height: 1400 * mm}},
			Datum: plan.Datum{Level: some(1400 * mm), Plumb: some(400 * mm)},
		},
		{ID: "a2", Name: "Round the corner", Wall: "w2", Poses: []plan.Pose{{Module: "m2", X: 600 * mm, Y: 1550 * mm}}},
	}
	return p
}

func northWall() plan.Wall {
	return plan.Wall{
		ID: "w1", Name: "North wall", Width: 3200 * mm, Height: 2450 * mm, FloorRise: some(5 * mm), CeilingRise: some(-3 * mm),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(12500 * unit.Micrometre)},
		Studs: plan.Studs{
			Material: "wood", Width: some(38 * mm), Depth: some(89 * mm), First: some(400 * mm), Spacing: some(400 * mm), State: plan.OnePoint,
			Each: []plan.Stud{{X: 400 * mm, State: plan.EdgesFound}, {X: 801 * mm, Width: some(45 * mm), State: plan.EdgesFound}},
		},
		Obstacles: []plan.Obstacle{{ID: "o1", Kind: plan.Socket, Name: "Socket by the door", X: 2900 * mm, Y: 300 * mm, Width: 80 * mm, Height: 80 * mm, Depth: some(10 * mm)}},
		CableRule: "uk",
		Plumb:     []plan.Plumb{{X: 400 * mm, Over: 1800 * mm, Lean: 4 * mm}},
		Flat:      []plan.Flat{{X: 300 * mm, Y: 1500 * mm, Over: 1200 * mm, Gap: -2 * mm, Upright: true}},
		FarSide:   "Stairs of the neighbour", BuiltYear: some(1931),
	}
}

func uModule() plan.Module {
	return plan.Module{
		ID: "m1", Name: "Left U", Depth: 200 * mm, Wood: "white-oak", GrainWrap: true,
		Boards: []plan.Board{
			{Name: "Left", Length: some(260 * mm), Thickness: 26 * mm},
			{Name: "Shelf", Length: some(520 * mm), Thickness: 26 * mm, Edges: []plan.Edge{{Arris: "front-a", Cut: "chamfer", Size: 3 * mm / 2}, {Arris: "front-b", Cut: "round", Size: 2 * mm}}},
			{Name: "Right", Length: some(260 * mm), Thickness: 32 * mm},
		},
		Corners: []plan.Corner{
			{Turn: 90 * deg, Joint: plan.Mitre, Reinforcement: plan.Reinforcement{Kind: "spline", Thickness: some(4 * mm), Width: some(24 * mm)}},
			{Turn: 90 * deg, Joint: plan.Mitre, Reinforcement: plan.Reinforcement{Kind: "key", Count: some(3)}},
		},
		Lights: []plan.Light{{
			ID: "l2", First: 2, Last: 3, Face: "B", FromFront: some(34 * mm), Width: 12 * mm, Depth: 8 * mm, StartStop: some(40 * mm), EndStop: some(15 * mm),
			Strip: "strip-24-9.6", Power: plan.Power{Source: "driver-24-30", Exit: "start", Lead: some(1500 * mm)},
		}},
		Brackets: []plan.Bracket{
			{ID: "b3", Kind: "rod-structure", Board: 2, At: 60 * mm},
			{ID: "b4", Kind: "bar", Board: 2, At: 460 * mm, Edge: "front", Length: some(300 * mm)},
		},
	}
}

func boxModule() plan.Module {
	turn := plan.Corner{Turn: -90 * deg, Joint: plan.ButtFirst}
	return plan.Module{
		ID: "m2", Name: "Box", Depth: 200 * mm, Wood: "black-cherry", Closed: true,
		Boards: []plan.Board{
			{Length: some(460 * mm), Thickness: 26 * mm}, {Length: some(340 * mm), Thickness: 26 * mm},
			{Thickness: 26 * mm}, {Thickness: 26 * mm},
		},
		Corners: []plan.Corner{turn, turn, turn, turn},
		Dividers: []plan.Divider{{
			ID: "d5", Name: "Middle", From: 1, To: 3, At: 200 * mm, Thickness: 20 * mm, Start: "housed", End: "butt", HousingDepth: some(6 * mm),
			Edges: []plan.Edge{{Arris: "front-a", Cut: "round", Size: 3 * mm}},
		}},
		Lights:   []plan.Light{{ID: "l8", First: 4, Last: 1, Face: "back", Width: 8 * mm, Depth: 6 * mm, Strip: "strip-24-9.6"}},
		Brackets: []plan.Bracket{{ID: "b6", Kind: "hook", Divider: "d5", At: 30 * mm}, {ID: "b7", Kind: "plate-back", Board: 1, At: 80 * mm, Edge: "back"}},
	}
}

func read(t require.TestingT, path string) []byte {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return text
}

func decoded(t *testing.T, text string) plan.Plan {
	t.Helper()
	p, err := plan.Decode([]byte(text))
	require.NoError(t, err)
	return p
}
