//go:build browser

package main

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"ledgewright/engine/link"
	"ledgewright/engine/unit"
	"ledgewright/testdata/visitor"
)

// From an empty plan to a link by keys alone: Tab, arrows, Enter, the space bar, what is
// typed, and the shortcuts for undoing. Every stop of the way shows its focus.
func TestKeysAloneFromAnEmptyPlanToALink(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, copied).Go("")
	b.TabTo("textbox", "Wall width")
	b.Press("2960")
	b.TabTo("textbox", "Height")
	b.Press("2460" + kb.Enter)
	b.See("heading", "Survey")

	b.TabTo("combobox", "Made of")
	b.Press("board on s") // a list takes what is typed
	b.Keeps("what it is made of", func(k visitor.Kept) bool { return k.Plan.Walls[0].Build == "studs" })
	b.TabTo("textbox", "First stud at, mm")
	b.Press("150" + kb.Enter)
	b.Keeps("the first stud", func(k visitor.Kept) bool { return k.Plan.Walls[0].Studs.First.Value == 150*unit.Millimetre })

	b.TabTo("button", "Arrange")
	b.Press(kb.Enter)
	b.See("heading", "Arrange")
	require.Equal(t, "Arrange", b.Focused().Name, "the focus goes on to what was asked for")
	b.TabTo("button", "Add a Shelf")
	b.Press(" ")
	k := b.Keeps("a shelf", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 1 })
	pose := k.Plan.Arrangements[0].Poses[0]

	b.TabTo("group", "Wall: the arrow keys move what is chosen, or else the view")
	b.Press(kb.ArrowRight)
	b.Press(kb.ArrowUp, visitor.Shift())
	k = b.Keeps("two moves", func(k visitor.Kept) bool { p := k.Plan.Arrangements[0].Poses[0]; return p.X > pose.X && p.Y > pose.Y })
	require.Equal(t, unit.Millimetre, k.Plan.Arrangements[0].Poses[0].X-pose.X)
	require.Equal(t, 10*unit.Millimetre, k.Plan.Arrangements[0].Poses[0].Y-pose.Y)
	b.Press("z", visitor.Control())
	b.Keeps("a move less", func(k visitor.Kept) bool { return k.Plan.Arrangements[0].Poses[0].Y == pose.Y })
	b.Press("Z", visitor.Control(), visitor.Shift())
	b.Keeps("the move again", func(k visitor.Kept) bool { return k.Plan.Arrangements[0].Poses[0].Y > pose.Y })
	b.Press("z", visitor.Control())
	b.Keeps("a move less", func(k visitor.Kept) bool { return k.Plan.Arrangements[0].Poses[0].Y == pose.Y })
	b.Press("y", visitor.Control())
	b.Keeps("the move again", func(k visitor.Kept) bool { return k.Plan.Arrangements[0].Poses[0].Y > pose.Y })

	// A figure of the picture is a control too; Escape leaves it, and the focus goes
	// back to it.
	b.TabTo("button", "Width of Shelf, mm: 800")
	b.Press(kb.Enter)
	b.Wait("the strip", func() bool { return b.Focused().Role == "textbox" })
	b.Replace("9")
	b.Press(kb.Escape)
	b.Wait("the focus back on the figure", func() bool { return b.Focused().Name == "Width of Shelf, mm: 800" })
	b.Press(kb.Enter)
	b.Wait("the strip", func() bool { return b.Focused().Role == "textbox" })
	b.Type("900")
	b.Keeps("a longer shelf", func(k visitor.Kept) bool { return k.Plan.Modules[0].Boards[0].Length.Value == 900*unit.Millimetre })

	// Letters do nothing: there are no shortcuts of one letter.
	before, _ := b.Kept()
	b.Press("abcdefghijklmnopqrstuvwxyz")
	b.Calm()
	after, _ := b.Kept()
	require.Equal(t, before.Plan, after.Plan)

	b.TabTo("button", "Agree")
	b.Press(kb.Enter)
	b.TabTo("button", "Copy link")
	b.Press(kb.Enter)
	b.Says("Link ready to be sent")
	p, err := link.DecodePlan(b.Text("window.copied"))
	require.NoError(t, err)
	require.Len(t, p.Modules, 1)
}

// From an empty plan to a link by the panel alone: the picture takes no finger and
// nobody sees it.
func TestListAloneFromAnEmptyPlanToALink(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, copied).Go("")
	b.Write("Wall width", "2960")
	b.Write("Height", "2460")
	b.Tap("button", "Draw this wall")
	b.See("heading", "Survey")
	b.Run(`document.querySelector('main').style.setProperty('visibility', 'hidden')`)
	require.False(t, b.Has("button", "Fit the wall"))

	b.Pick("Made of", "board on studs")
	b.Pick("Stud material", "wood")
	b.Fill("Stud width, mm", "38")
	b.Fill("First stud at, mm", "150")
	b.Fill("Stud spacing, mm", "400")
	b.Pick("Studs by spacing are", "edges found")
	b.Job("Arrange")
	b.Tap("button", "Add a U")
	b.Tap("button", "Place again: on the studs within reach")
	b.Tap("button", "Add a Box")
	b.Fill("New line above the floor, mm", "1500")
	b.Keeps("a line", func(k visitor.Kept) bool { return len(k.Plan.Arrangements[0].Lines) == 1 })

	// Choose, move, turn, flip, mirror, duplicate, take off, place, delete.
	b.Tap("button", "U")
	b.Fill("From the left end, mm", "400")
	b.Fill("Underside above the floor, mm", "1500")
	b.Tap("button", "Turn right 90°")
	b.Tap("button", "Flip")
	b.Tap("button", "Mirror")
	b.Tap("button", "Delete")
	b.Tap("button", "U")
	b.Tap("button", "Flip")
	b.Tap("button", "Turn left 90°") // so that its brackets hold it again
	b.Tap("button", "Box")
	b.Tap("button", "Duplicate")
	b.Tap("button", "Take off the wall")
	b.Tap("button", "Place Box 2")
	b.Keeps("three modules on the wall", func(k visitor.Kept) bool {
		return len(k.Plan.Modules) == 3 && len(k.Plan.Arrangements[0].Poses) == 3
	})

	// Several at once.
	b.Tap("checkbox", "Choose several")
	for _, name := range []string{"U", "Box", "Box 2"} {
		if b.See("button", name).State("pressed") != "true" {
			b.Tap("button", name)
		}
	}
	b.Tap("button", "Tops")
	b.Fill("Gaps across, mm", "150")
	b.Tap("button", "Move up 10 mm")
	k := b.Keeps("modules moved together", func(k visitor.Kept) bool {
		return len(k.Steps) > 3 && k.Did(`"do":"align"`) && k.Did(`"do":"spread"`) && k.Did(`"dy":10`)
	})

	// Places that fit are to be tapped in the list as well.
	b.Tap("checkbox", "Choose several")
	b.Tap("button", "Find places that fit")
	b.Tap("button", "Place 1: …")
	b.Steps(len(k.Steps) + 1)

	b.Job("Make")
	b.See("heading", "Make")
	b.Job("Hang")
	b.See("region", "Wall points, mm")
	b.Job("Agree")
	b.Tap("button", "Copy link")
	b.Says("Link ready to be sent")
	p, err := link.DecodePlan(b.Text("window.copied"))
	require.NoError(t, err)
	require.Len(t, p.Modules, 3)
}
