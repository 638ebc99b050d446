//go:build browser

package main

import (
	"fmt"
	"math"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"ledgewright/testdata/visitor"
)

// inTheRound opens the study in the round.
func inTheRound(t *testing.T, size visitor.Size) *visitor.Tab {
	t.Helper()
	b := house.Visit(t, size, "").Go("")
	b.Tap("button", "Study")
	b.See("heading", "Arrange")
	b.Tap("button", "In the round")
	b.See("slider", "Pull apart")
	b.Calm()
	return b
}

// picture is the accessible name of the picture, which says from where it is seen.
func picture(says string) string { return "In the round: 4 modules. " + says + "…" }

// middle is a point of the picture, by its parts.
func middle(b *visitor.Tab, x, y float64) visitor.Point {
	b.T.Helper()
	var p visitor.Point
	_, err := fmt.Sscan(b.Text(fmt.Sprintf(`(r => (r.x + %g * r.width) + ' ' + (r.y + %g * r.height))(document.querySelector('[data-hand]').getBoundingClientRect())`, x, y)), &p.X, &p.Y)
	require.NoError(b.T, err)
	return p
}

// metalShown counts the faces of brackets that are drawn.
func metalShown(b *visitor.Tab) string {
	return b.Text(`document.querySelectorAll('.picture .metal').length + ''`)
}

// One finger turns the boards; two move and enlarge them about the place between; a double
// tap shows all again. After 20 of them and more the plan has not been touched.
func TestTheRoundByFinger(t *testing.T) {
	t.Parallel()
	b := inTheRound(t, visitor.Tablet)
	before := b.Keeps("the study", func(k visitor.Kept) bool { return len(k.Plan.Modules) > 0 })
	b.See("group", picture("Seen from the front left, 20° above."))

	from := middle(b, 0.5, 0.5)
	short := math.Min(asFigure(b, "clientWidth"), asFigure(b, "clientHeight"))
	b.Stroke(from, visitor.Point{X: from.X - short*35/180, Y: from.Y - short*20/180}, 8)
	b.See("group", picture("Seen from the front."))
	b.Says("Seen from the front")

	// The place between two fingers stays between them.
	mid := middle(b, 0.4, 0.6)
	across := func(d float64) [2]visitor.Point {
		return [2]visitor.Point{{X: mid.X - d, Y: mid.Y}, {X: mid.X + d, Y: mid.Y}}
	}
	scale, at := scaleOf(b), wallAt(b, mid)
	b.Pinch(across(40), across(100), 12)
	b.Calm()
	require.InDelta(t, 2.5*scale, scaleOf(b), 0.02*scale)
	is := b.Wall(at.X, at.Y)
	require.LessOrEqual(t, math.Hypot(is.X-mid.X, is.Y-mid.Y), 2.0, "drift in pixels")
	b.See("group", picture("Seen from the front."))

	b.TapAt(mid)
	b.TapAt(mid)
	b.Calm()
	require.InDelta(t, scale, scaleOf(b), 0.02*scale)

	for i := range 24 {
		p, q := middle(b, 0.2+0.02*float64(i), 0.3), middle(b, 0.7, 0.2+0.02*float64(i))
		switch i % 3 {
		case 0:
			b.Stroke(p, q, 4)
		case 1:
			b.Pinch([2]visitor.Point{p, q}, [2]visitor.Point{p.To(q, 0.2), q.To(p, 0.1)}, 3)
		default:
			b.TapAt(p)
		}
	}
	b.Pen(input.DispatchMouseEventTypeMousePressed, from)
	b.Pen(input.DispatchMouseEventTypeMouseMoved, visitor.Point{X: from.X + 60, Y: from.Y})
	b.Pen(input.DispatchMouseEventTypeMouseReleased, visitor.Point{X: from.X + 60, Y: from.Y})
	b.Tap("button", "In the round")
	b.See("group", "Wall: …")
	nothingChanged(t, b, before)
}

func asFigure(b *visitor.Tab, of string) (x float64) {
	b.T.Helper()
	_, err := fmt.Sscan(b.Text(`document.querySelector('[data-hand]').`+of+` + ''`), &x)
	require.NoError(b.T, err)
	return x
}

// The fixed views and the four ways to turn are buttons; from behind the brackets are to
// be seen. The way back gives the flat view as it was.
func TestTheRoundByButtons(t *testing.T) {
	t.Parallel()
	for _, size := range []visitor.Size{visitor.Tablet, visitor.Phone} {
		t.Run(size.String(), func(t *testing.T) {
			t.Parallel()
			b := house.Visit(t, size, "").Go("")
			b.Tap("button", "Study")
			b.See("heading", "Arrange")
			b.Tap("button", "Zoom in")
			b.Tap("button", "Look right")
			b.Calm()
			flat := b.Wall(1000, 1000)
			b.Tap("button", "In the round")
			for _, side := range []string{"Front", "Left", "Right", "Above", "Below"} {
				b.Tap("button", side)
				says := "Seen from the " + map[string]string{"Front": "front", "Left": "left", "Right": "right"}[side]
				if side == "Above" || side == "Below" {
					says = "Seen from " + map[string]string{"Above": "above", "Below": "below"}[side]
				}
				b.See("group", picture(says+"."))
			}
			b.Tap("button", "Back")
			b.See("group", picture("Seen from the back."))
			b.Says("Seen from the back")
			b.Calm()
			require.NotEqual(t, "0", metalShown(b))
			b.Tap("button", "Turn up")
			b.Tap("button", "Turn right")
			b.Tap("button", "Turn right")
			b.See("group", picture("Seen from the back right, 15° below."))
			b.Tap("button", "Turn down")
			b.Tap("button", "Turn left")
			b.Tap("button", "Turn left")
			b.See("group", picture("Seen from the back."))
			scale := scaleOf(b)
			b.Tap("button", "Zoom in")
			b.Calm()
			require.InEpsilon(t, 1.25*scale, scaleOf(b), 0.01)
			b.Tap("button", "Show all")
			b.Calm()
			b.Tap("button", "In the round")
			b.See("group", "Wall: …")
			b.Calm()
			is := b.Wall(1000, 1000)
			require.InDelta(t, flat.X, is.X, 0.5)
			require.InDelta(t, flat.Y, is.Y, 0.5)
		})
	}
}

// The slider is pulled by a finger, and stepped by the keyboard; with the keyboard alone
// the boards are turned, moved and fitted.
func TestTheRoundBySliderAndKeys(t *testing.T) {
	t.Parallel()
	b := inTheRound(t, visitor.Upright)
	before := b.Keeps("the study", func(k visitor.Kept) bool { return len(k.Plan.Modules) > 0 })
	require.Equal(t, "Together", b.Text(`document.querySelector('[type=range]').getAttribute('aria-valuetext')`))
	faces := b.Text(`document.querySelectorAll('.picture path').length + ''`)
	var box [4]float64
	_, err := fmt.Sscan(b.Text(`(r => [r.x, r.y, r.width, r.height].join(' '))(document.querySelector('[type=range]').getBoundingClientRect())`), &box[0], &box[1], &box[2], &box[3])
	require.NoError(t, err)
	require.GreaterOrEqual(t, box[3], 44.0)
	y := box[1] + 0.7*box[3]
	b.Stroke(visitor.Point{X: box[0] + 12, Y: y}, visitor.Point{X: box[0] + box[2]/2, Y: y}, 6)
	b.Until(`document.querySelector('[type=range]').getAttribute('aria-valuetext')`, "50 % apart")
	b.Says("50 % apart")
	b.Calm()
	require.NotEqual(t, faces, b.Text(`document.querySelectorAll('.picture path').length + ''`), "mitres are seen")
	b.TabTo("slider", "Pull apart")
	b.Press(kb.ArrowRight)
	b.Press(kb.ArrowRight)
	b.Says("60 % apart")
	b.Press(kb.End)
	b.Says("Wholly apart")
	b.Press(kb.Home)
	b.Says("Together")

	b.TabTo("group", "In the round: …")
	for range 3 {
		b.Press(kb.ArrowRight)
	}
	b.See("group", picture("Seen from the left, 20° above."))
	for range 3 {
		b.Press(kb.ArrowLeft)
	}
	b.Press(kb.ArrowUp)
	b.See("group", picture("Seen from the front left, 5° above."))
	scale, at := scaleOf(b), b.Wall(0, 0)
	b.Press("+")
	b.Calm()
	require.InEpsilon(t, 1.25*scale, scaleOf(b), 0.01)
	b.Press("-")
	b.Press(kb.ArrowRight, visitor.Shift())
	b.Calm()
	require.Less(t, b.Wall(0, 0).X, at.X-10)
	b.Press("0")
	b.Calm()
	fitted := scaleOf(b)
	b.Press("+")
	b.Tap("button", "Show all")
	b.Calm()
	require.InEpsilon(t, fitted, scaleOf(b), 0.001, "0 does what the button does")
	b.TabTo("group", "In the round: …")
	b.Press(kb.Delete)
	b.Press(kb.Escape)
	b.See("group", "Wall: …")
	nothingChanged(t, b, before)
}

// A reload does not bring the view back: it is no part of the plan.
func TestTheRoundIsNotKept(t *testing.T) {
	t.Parallel()
	b := inTheRound(t, visitor.Tablet)
	b.Keeps("the study", func(k visitor.Kept) bool { return len(k.Plan.Modules) > 0 })
	b.Reload()
	b.See("heading", "Arrange")
	b.See("group", "Wall: …")
	require.False(t, b.Has("slider", "Pull apart"))
}
