//go:build browser

package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/visitor"
)

// inch16 is a length in sixteenths of an inch.
func inch16(n unit.Length) unit.Length { return n * unit.Inch / 16 }

// A whole job in inches: feet, inches and fractions are typed as they are read from a
// tape, and are read so in every job, in the link and in the files.
func TestAPlanInInches(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, copied).Go("")
	b.Tap("radio", "Inches")
	b.Write("Wall width", `10'-6"`)
	b.Write("Height", `8' 1/2"`)
	b.Tap("button", "Draw this wall")
	b.See("heading", "Survey")
	k := b.Keeps("a wall in inches", func(k visitor.Kept) bool { return len(k.Plan.Walls) == 1 })
	require.Equal(t, unit.Inches, k.Plan.Units.System)
	require.Equal(t, 126*unit.Inch, k.Plan.Walls[0].Width)
	require.Equal(t, inch16(96*16+8), k.Plan.Walls[0].Height)
	require.Equal(t, "96 1/2", plainly(b.Value(b.See("textbox", "Height at the left end, in"))))

	b.Pick("Made of", "board on studs")
	b.Pick("Lining", "plasterboard")
	b.Fill("Lining thickness, in", "1/2")
	b.Pick("Stud material", "wood")
	b.Fill("Stud width, in", "1 1/2")
	b.Fill("Stud depth, in", "3 1/2")
	b.Fill("First stud at, in", `1'-4"`)
	b.Fill("Stud spacing, in", "16")
	b.Pick("Studs by spacing are", "edges found")
	k = b.Keeps("its studs", func(k visitor.Kept) bool { return k.Plan.Walls[0].Studs.State == plan.EdgesFound })
	require.Equal(t, inch16(24), k.Plan.Walls[0].Studs.Width.Value)
	require.Equal(t, 16*unit.Inch, k.Plan.Walls[0].Studs.First.Value)

	b.Job("Arrange")
	b.Tap("button", "Add a U")
	b.Unfold("Board 1: …")
	b.Fill("Board 1 length, in", "20 1/2")
	b.Unfold("Board 2: …")
	b.Fill("Board 2 length, in", "3'-3 3/16\"")
	b.Tap("button", "Place again: on the studs within reach")
	b.Keeps("brackets", func(k visitor.Kept) bool { return len(k.Plan.Modules[0].Brackets) > 0 })
	if points := rods(k.Plan); !onStuds(k.Plan) { // a place that fits is offered, and taken
		require.Empty(t, points)
		b.Tap("button", "Find places that fit")
		b.Tap("button", "Place 1: …")
	}
	k = b.Keeps("brackets on studs", func(k visitor.Kept) bool { return onStuds(k.Plan) })
	require.Equal(t, inch16(20*16+8), k.Plan.Modules[0].Boards[0].Length.Value)
	require.Equal(t, inch16(39*16+3), k.Plan.Modules[0].Boards[1].Length.Value)
	b.Fill("Underside above the floor, in", "4' 7 1/8")
	b.See("textbox", "Underside above the floor, in")
	b.Wait("the height", func() bool { return plainly(b.Value(b.See("textbox", "Underside above the floor, in"))) == "55 1/8" })

	b.Job("Make")
	b.See("region", "Parts, finished sizes in inches")
	text := plainly(b.Text(`document.querySelector('main').innerText`))
	require.Contains(t, text, "20 1/2")
	require.Contains(t, text, "39 3/16")
	require.NotContains(t, text, " mm")
	require.Contains(t, b.Text(`document.querySelector('main .fr').textContent`), "/", "a fraction is set as one")

	b.Job("Hang")
	b.See("region", "Wall points, inches")
	require.Contains(t, rowsOf(b, "Wall points, inches"), "/")
	require.NotContains(t, plainly(b.Text(`document.querySelector('aside').innerText`)), " mm")

	mine := build(b)
	b.Tap("button", "Copy link")
	b.Says("Link ready to be sent")
	other := house.Visit(t, visitor.Phone, "")
	other.Go(b.Text("window.copied")[len(house.URL):])
	other.See("heading", "Survey")
	require.Equal(t, "126", other.Value(other.See("textbox", "Wall width, in")))
	require.Equal(t, withoutNames(t, mine), withoutNames(t, build(other)))
	require.True(t, strings.Contains(mine, `"system": "in"`) || strings.Contains(mine, `"system":"in"`))
}

// rowsOf is the text of a table's rows.
func rowsOf(b *visitor.Tab, name string) string {
	b.T.Helper()
	b.See("region", name)
	return plainly(b.Text(`[...document.querySelectorAll('[role=region]')].find(e => e.getAttribute('aria-label') === '` + name + `').querySelector('tbody').innerText`))
}
