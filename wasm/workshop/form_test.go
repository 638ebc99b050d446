//go:build browser

package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/visitor"
)

// house5 is the plan of TestAFreeFormByFinger, typed by hand: a closed module of five
// boards of four thicknesses with two corners that are not square, and a divider, on a
// wall whose studs are known in all three ways, with two sockets.
const house5 = `{
  "schema": "ledgewright/plan/1", "job": {}, "units": {"system": "mm", "step": 0.5}, "shop": {},
  "counters": {"wall": 1, "module": 1, "arrangement": 1, "part": 3},
  "walls": [{
    "id": "w1", "name": "Wall", "width": 3000, "height": 2400, "build": "studs",
    "lining": {"kind": "plasterboard", "thickness": 12.5},
    "studs": {"material": "wood", "width": 38, "depth": 89, "each": [
      {"x": 1000, "state": "edges-found"}, {"x": 1600, "state": "one-point"}, {"x": 2200, "state": "guess"}]},
    "obstacles": [
      {"id": "o1", "kind": "socket", "x": 50, "y": 300, "width": 146, "height": 86},
      {"id": "o2", "kind": "socket", "x": 2500, "y": 300, "width": 146, "height": 86}]
  }],
  "modules": [{
    "id": "m1", "name": "Gable", "depth": 200, "wood": "white-oak", "closed": true,
    "boards": [{"length": 600, "thickness": 26}, {"length": 300, "thickness": 20}, {"length": 424, "thickness": 26}, {"thickness": 26}, {"thickness": 32}],
    "corners": [{"turn": 90, "joint": "mitre"}, {"turn": 45, "joint": "mitre"}, {"turn": 90, "joint": "mitre"},
      {"turn": 45, "joint": "mitre"}, {"turn": 90, "joint": "mitre"}],
    "dividers": [{"id": "d3", "from": 1, "to": 3, "at": 420, "thickness": 18, "start": "housed", "end": "housed"}]
  }],
  "arrangements": [{"id": "a1", "name": "First arrangement", "wall": "w1", "poses": [{"module": "m1", "x": 1500, "y": 1200}]}]
}`

// A free form by finger: from an empty plan to the build that the same plan gives when
// it is typed by hand.
func TestAFreeFormByFinger(t *testing.T) {
	t.Parallel()
	b := arrive(t)
	b.Write("Wall width", "3000")
	b.Write("Height", "2400")
	b.Tap("button", "Draw this wall")
	b.See("heading", "Survey")
	b.Pick("Made of", "board on studs")
	b.Pick("Lining", "plasterboard")
	b.Fill("Lining thickness, mm", "12.5")
	b.Pick("Stud material", "wood")
	b.Fill("Stud width, mm", "38")
	b.Fill("Stud depth, mm", "8.9 cm")
	for i, at := range []string{"1000", "1600", "2200"} {
		b.Fill("Add a stud at, mm", at)
		b.Steps(7 + i)
	}
	b.Tap("button", "Change stud 1")
	b.Pick("Stud 1 is", "edges found")
	b.Tap("button", "Change stud 2")
	b.Pick("Stud 2 is", "one point")
	b.Tap("button", "Add a socket")
	b.Tap("button", "Add a socket")
	b.Unfold("Socket 2: …")
	b.Fill("Socket 2, left edge at, mm", "2500")
	b.Steps(14)

	b.Job("Arrange")
	b.Tap("button", "Add a Shelf")
	b.Fill("Name", "Gable")
	for range 4 {
		b.Tap("button", "Add a board at the end")
	}
	b.Keeps("five boards", func(k visitor.Kept) bool { return len(k.Plan.Modules) > 0 && len(k.Plan.Modules[0].Boards) == 5 })
	for board, sizes := range map[string][2]string{"1": {"600", ""}, "2": {"300", "20"}, "3": {"424", ""}, "5": {"", "32"}} {
		b.Unfold("Board " + board + ": …")
		if sizes[0] != "" {
			b.Fill("Board "+board+" length, mm", sizes[0])
		}
		if sizes[1] != "" {
			b.Fill("Board "+board+" thickness, mm", sizes[1])
		}
	}
	for _, corner := range []string{"2", "4"} {
		b.Unfold("Corner " + corner + " …")
		b.Fill("Corner "+corner+" turn, °", "45")
	}
	b.Tap("checkbox", "Closed: the last board meets the first")
	b.Keeps("a closed module", func(k visitor.Kept) bool { return k.Plan.Modules[0].Closed })
	b.Tap("button", "Add a divider")
	b.Unfold("Divider 1: …")
	b.Fill("Divider 1 at, along its first board, mm", "420")
	b.Fill("Divider 1 thickness, mm", "18")

	want, err := plan.Decode([]byte(house5))
	require.NoError(t, err)
	wanted := engine.Derive(want, nil)
	box := wanted.Arrangements[0].Placed[0].Box
	b.Fill("From the left end, mm", box.MinX.Decimal())
	b.Fill("Underside above the floor, mm", box.MinY.Decimal())
	b.Keeps("the place", func(k visitor.Kept) bool {
		have, want := k.Plan.Arrangements[0].Poses[0], want.Arrangements[0].Poses[0]
		return have.X == want.X && have.Y == want.Y
	})

	text, err := engine.Encode(wanted)
	require.NoError(t, err)
	require.JSONEq(t, string(text), build(b))
	require.True(t, string(text) == build(b), "byte for byte")
}

// A module whose turns do not close says so at the box that was ticked, and what to do; once
// they do, the same box closes it.
func TestWhyAModuleDoesNotClose(t *testing.T) {
	t.Parallel()
	const box = "Closed: the last board meets the first"
	b := aWall(t)
	b.Job("Arrange")
	b.Tap("button", "Add a Shelf")
	why := func(says string) {
		t.Helper()
		b.Tap("checkbox", box)
		b.Wait(says, func() bool {
			all := b.All("checkbox", box)
			return len(all) > 0 && strings.Contains(all[0].Described(), says)
		})
		tick := b.See("checkbox", box)
		require.Equal(t, "true", tick.State("invalid"))
		require.Equal(t, "false", tick.State("checked"), "the box shows what is so")
	}
	why("1 board does not close; it takes 3 or more")
	for range 4 {
		b.Tap("button", "Add a board at the end")
	}
	b.Keeps("five boards", func(k visitor.Kept) bool { return len(k.Plan.Modules[0].Boards) == 5 })
	why("the turns add up to 360°, and no last corner makes 360° of that; change the turns first")
	n := steps(b)

	for _, corner := range []string{"2", "4"} {
		b.Unfold("Corner " + corner + " …")
		b.Fill("Corner "+corner+" turn, °", "45")
	}
	b.Steps(n + 2)
	b.Tap("checkbox", box)
	k := b.Keeps("a closed module", func(k visitor.Kept) bool { return k.Plan.Modules[0].Closed })
	require.Len(t, k.Plan.Modules[0].Corners, 5)
	require.Equal(t, 90*unit.Degree, k.Plan.Modules[0].Corners[4].Turn, "the last corner makes up what is missing")
	b.Wait("no more words at the box", func() bool { return b.See("checkbox", box).Described() == "" })
}
