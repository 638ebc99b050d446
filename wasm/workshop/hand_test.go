//go:build browser

package main

import (
	"math"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// Two fingers move and enlarge the picture about themselves, and leave the plan alone:
// also when they come down on a module, and when one of them was there before.
func TestTwoFingersPanAndZoom(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	before, _ := b.Kept()
	pose := before.Plan.Arrangements[0].Poses[0]
	on := b.Wall(pose.X.MM(), pose.Y.MM())

	// The place of the wall between the fingers stays between them.
	mid := visitor.Point{X: on.X + 20, Y: on.Y - 60}
	across := func(d float64) [2]visitor.Point {
		return [2]visitor.Point{{X: mid.X - d, Y: mid.Y}, {X: mid.X + d, Y: mid.Y}}
	}
	scale := scaleOf(b)
	at := wallAt(b, mid)
	b.Pinch(across(40), across(100), 12)
	b.Calm()
	require.InDelta(t, 2.5*scale, scaleOf(b), 0.02*scale)
	is := b.Wall(at.X, at.Y)
	require.LessOrEqual(t, math.Hypot(is.X-mid.X, is.Y-mid.Y), 2.0, "drift in pixels")
	require.Equal(t, "1", b.Text("visualViewport.scale"), "the page itself is not enlarged")

	b.Tap("button", "Fit the wall")
	b.Calm()
	for i := range 50 {
		to := float64(30 + 7*(i%13))
		if i%5 == 4 { // one finger is down first, and has begun to drag
			b.Down(on)
			b.Moved(visitor.Point{X: on.X + 14, Y: on.Y})
			second := visitor.Point{X: on.X + 90, Y: on.Y + 40}
			b.Down(visitor.Point{X: on.X + 14, Y: on.Y}, second)
			b.Moved(on, visitor.Point{X: second.X + to, Y: second.Y})
			b.Up()
			continue
		}
		b.Pinch([2]visitor.Point{{X: on.X - 60, Y: on.Y}, {X: on.X + 60, Y: on.Y}},
			[2]visitor.Point{{X: on.X - to, Y: on.Y - 20}, {X: on.X + to, Y: on.Y + 20}}, 3)
	}
	b.Calm()
	nothingChanged(t, b, before)
}

// nothingChanged makes one step by a button and sees that it is the only one.
func nothingChanged(t *testing.T, b *visitor.Tab, before visitor.Kept) {
	t.Helper()
	b.Job("Survey")
	b.Fill("On the other side", "hall")
	after := b.Keeps("what was typed", func(k visitor.Kept) bool { return k.Plan.Walls[0].FarSide == "hall" })
	require.Len(t, after.Steps, len(before.Steps)+1)
	require.Equal(t, before.Plan.Arrangements, after.Plan.Arrangements)
	require.Equal(t, before.Plan.Modules, after.Plan.Modules)
}

// scaleOf is how many pixels a metre of the wall has.
func scaleOf(b *visitor.Tab) float64 { return b.Wall(1000, 0).X - b.Wall(0, 0).X }

// wallAt is the place of the wall under a point of the window, in millimetres.
func wallAt(b *visitor.Tab, p visitor.Point) visitor.Point {
	o, s := b.Wall(0, 0), scaleOf(b)/1000
	return visitor.Point{X: (p.X - o.X) / s, Y: (o.Y - p.Y) / s}
}

// While a pen is down, and half a second after, hands on the glass do nothing: 50 strokes of a pen
// on the bare wall, while a palm lies or slides on a shelf, leave no edit.
func TestPalmUnderThePen(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	before, _ := b.Kept()
	n := len(before.Steps)
	pose := before.Plan.Arrangements[0].Poses[0]
	on := b.Wall(pose.X.MM(), pose.Y.MM())
	bare := b.Wall(400, 400)
	for i := range 50 {
		to := visitor.Point{X: on.X + 80, Y: on.Y - float64(2*i)}
		rests := i%2 == 0 // it lies there before the pen comes, and goes when it has gone
		if rests {
			b.Down(on)
		}
		b.Pen(input.DispatchMouseEventTypeMousePressed, bare)
		if !rests {
			b.Down(on)
		}
		for k := range 5 { // to and fro
			b.Pen(input.DispatchMouseEventTypeMouseMoved, visitor.Point{X: bare.X + float64(20*min(k, 4-k)), Y: bare.Y})
			b.Moved(on.To(to, float64(k)/4))
		}
		b.Pen(input.DispatchMouseEventTypeMouseReleased, bare)
		b.Moved(visitor.Point{X: on.X - 60, Y: on.Y + 40})
		b.Up()
	}
	b.Calm()
	b.TapAt(bare) // beside a pen Chromium makes no click of the first tap that follows
	nothingChanged(t, b, before)
	n++ // it typed something to be sure
	b.Job("Arrange")
	b.Tap("button", "Fit the wall") // the strokes have moved the view
	b.Calm()
	on = shelfAt(b, 0)

	// The pen itself works.
	b.Pen(input.DispatchMouseEventTypeMousePressed, on)
	for i := range 8 {
		b.Pen(input.DispatchMouseEventTypeMouseMoved, visitor.Point{X: on.X, Y: on.Y - float64(10*i)})
	}
	b.Pen(input.DispatchMouseEventTypeMouseReleased, visitor.Point{X: on.X, Y: on.Y - 70})
	k := b.Steps(n + 1)
	require.Greater(t, k.Plan.Arrangements[0].Poses[0].Y, pose.Y)
}

// Three fingers, or a whole hand, do nothing.
func TestAHandOnTheGlass(t *testing.T) {
	t.Parallel()
	b := aShelf(t)
	before, _ := b.Kept()
	pose := before.Plan.Arrangements[0].Poses[0]
	on := b.Wall(pose.X.MM(), pose.Y.MM())
	place := scaleOf(b)
	for i := range 10 {
		b.Down(on, visitor.Point{X: on.X + 30, Y: on.Y + 30}, visitor.Point{X: on.X + 60, Y: on.Y})
		b.Moved(visitor.Point{X: on.X + float64(20*i), Y: on.Y}, visitor.Point{X: on.X + 130, Y: on.Y + 30}, visitor.Point{X: on.X + 160, Y: on.Y})
		b.Up()
	}
	b.Calm()
	require.InDelta(t, place, scaleOf(b), 1e-6)
	nothingChanged(t, b, before)
}

// A finger that rests on a module adds it to what is chosen; what it does then is also
// on the list.
func TestLongPressAddsToWhatIsChosen(t *testing.T) {
	t.Parallel()
	b := twoShelves(t)
	first, second := shelfAt(b, 0), shelfAt(b, 1)
	b.TapAt(first)
	b.Wait("the first alone", func() bool { return pressed(b) == "Shelf" })
	b.Down(second)
	b.Wait("both", func() bool { return pressed(b) == "Shelf, Shelf 2" })
	b.Up()
	b.See("heading", "Chosen 2")
	b.Tap("button", "Undersides")
	k := b.Keeps("both at a height", func(k visitor.Kept) bool {
		p := k.Plan.Arrangements[0].Poses
		return p[0].Y == p[1].Y
	})
	require.Len(t, k.Plan.Modules, 2)

	// The same by the list alone.
	b.Tap("checkbox", "Choose several")
	b.Tap("button", "Shelf")
	b.Wait("one of them", func() bool { return pressed(b) == "Shelf 2" })
	b.Tap("button", "Shelf")
	b.Wait("both", func() bool { return pressed(b) == "Shelf, Shelf 2" })
}

// pressed are the modules of the list that are chosen.
func pressed(b *visitor.Tab) string {
	out := ""
	for _, name := range []string{"Shelf", "Shelf 2"} {
		if all := b.All("button", name); len(all) > 0 && all[0].State("pressed") == "true" {
			if out != "" {
				out += ", "
			}
			out += name
		}
	}
	return out
}

// twoShelves is a wall with two shelves.
func twoShelves(t *testing.T) *visitor.Tab {
	t.Helper()
	b := aShelf(t)
	b.Tap("button", "Duplicate")
	b.Keeps("two shelves", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 2 })
	b.Calm()
	return b
}

// shelfAt is a place on a shelf in the window, away from its figures.
func shelfAt(b *visitor.Tab, i int) visitor.Point {
	k, _ := b.Kept()
	p := k.Plan.Arrangements[0].Poses[i]
	return b.Wall(p.X.MM()-330, p.Y.MM())
}
