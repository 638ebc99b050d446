package visitor

import (
	"encoding/json"
	"strconv"
	"strings"

	"github.com/chromedp/cdproto/input"
	. "github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// A Point is a place in the window, in CSS pixels.
type Point struct{ X, Y float64 }

// To returns the point so far along the way to another.
func (p Point) To(q Point, f float64) Point { return Point{p.X + f*(q.X-p.X), p.Y + f*(q.Y-p.Y)} }

// Finger sends one touch event with the fingers that are down.
func (b *Tab) Finger(kind input.DispatchTouchEventType, at ...Point) {
	b.T.Helper()
	points := []*input.TouchPoint{} // the end of a touch wants an empty list
	for i, p := range at {
		id := float64(i)
		points = append(points, &input.TouchPoint{X: p.X, Y: p.Y, ID: &id})
	}
	_, err := Call(b.Ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
	require.NoError(b.T, err)
}

// Down puts fingers down, Moved moves them, Up lifts them.
func (b *Tab) Down(at ...Point) {
	b.T.Helper()
	b.Finger(input.DispatchTouchEventTypeTouchStart, at...)
}
func (b *Tab) Moved(at ...Point) {
	b.T.Helper()
	b.Finger(input.DispatchTouchEventTypeTouchMove, at...)
}
func (b *Tab) Up() { b.T.Helper(); b.Finger(input.DispatchTouchEventTypeTouchEnd) }

// Stroke draws a finger along a line in so many moves, and lifts it.
func (b *Tab) Stroke(from, to Point, moves int) {
	b.T.Helper()
	b.Down(from)
	for i := 1; i <= moves; i++ {
		b.Moved(from.To(to, float64(i)/float64(moves)))
	}
	b.Up()
}

// Pinch moves two fingers from two points to two others in so many moves.
func (b *Tab) Pinch(from, to [2]Point, moves int) {
	b.T.Helper()
	b.Down(from[0], from[1])
	for i := 1; i <= moves; i++ {
		f := float64(i) / float64(moves)
		b.Moved(from[0].To(to[0], f), from[1].To(to[1], f))
	}
	b.Up()
}

// TapAt taps a place with one finger.
func (b *Tab) TapAt(p Point) { b.T.Helper(); b.Down(p); b.Up() }

// Spot returns a point of a thing that a finger reaches: nothing covers it.
func (b *Tab) Spot(role, name string) (p Point) {
	b.T.Helper()
	return b.spotOf(func() []Thing { return b.All(role, name) }, role+" “"+name+"”")
}

// spotOf is Spot for the first of some things.
func (b *Tab) spotOf(all func() []Thing, what string) (p Point) {
	b.T.Helper()
	b.Calm() // as somebody who looks before they tap
	b.Wait("a free place on "+what, func() (ok bool) {
		found := all()
		if len(found) == 0 {
			return false
		}
		p.X, p.Y, ok = b.place(found[0])
		return ok
	})
	return p
}

// Tap taps something with one finger.
func (b *Tab) Tap(role, name string) {
	b.T.Helper()
	b.TapAt(b.Spot(role, name))
}

// Pen sends an event of a pen.
func (b *Tab) Pen(kind input.DispatchMouseEventType, p Point) {
	b.T.Helper()
	buttons := int64(1)
	if kind == input.DispatchMouseEventTypeMouseReleased {
		buttons = 0
	}
	_, err := Call(b.Ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: p.X, Y: p.Y,
		Button: input.MouseButtonLeft, Buttons: buttons, ClickCount: 1, PointerType: input.DispatchMouseEventPointerTypePen})
	require.NoError(b.T, err)
}

// Press presses keys, such as "abc", kb.Tab or kb.Enter.
func (b *Tab) Press(keys string, opts ...KeyOption) { b.T.Helper(); b.Do(KeyEvent(keys, opts...)) }

// Control is the control key, held down.
func Control() KeyOption { return KeyModifiers(ModifierCtrl) }

// Shift is the shift key, held down.
func Shift() KeyOption { return KeyModifiers(ModifierShift) }

// Type puts a text into the field that has the focus, in place of what stands there, and
// finishes it with Enter.
func (b *Tab) Type(text string) {
	b.T.Helper()
	b.Replace(text)
	b.Press(kb.Enter)
}

// Replace puts a text into the field that has the focus, in place of what stands there.
func (b *Tab) Replace(text string) {
	b.T.Helper()
	b.Run(`document.activeElement.select()`)
	if text == "" {
		b.Press(kb.Backspace)
		return
	}
	b.Press(text)
}

// Fill taps a field, types into it and finishes it.
func (b *Tab) Fill(name, text string) {
	b.T.Helper()
	b.Write(name, text)
	b.Press(kb.Enter)
}

// Write taps a field and types into it, in place of what stands there.
func (b *Tab) Write(name, text string) {
	b.T.Helper()
	b.Tap("textbox", name)
	b.Wait("the focus on “"+name+"”", func() bool {
		all := b.All("textbox", name)
		return len(all) > 0 && b.on(all[0], `function() { return String(this === document.activeElement) }`) == "true"
	})
	b.Replace(text)
}

// Pick chooses an option of a list by its words, as the browser's own list does.
func (b *Tab) Pick(name, option string) {
	b.T.Helper()
	t := b.See("combobox", name)
	chosen := b.on(t, `function() {
	  const o = [...this.options].find(o => o.textContent === `+quote(option)+`)
	  if (!o) return 'only ' + [...this.options].map(o => o.textContent).join(', ')
	  this.focus(); this.value = o.value
	  this.dispatchEvent(new Event('input', {bubbles: true})); this.dispatchEvent(new Event('change', {bubbles: true}))
	  return '' }`)
	require.Empty(b.T, chosen, "%s of %s", option, name)
}

// Wall returns where a place of the wall is in the window, in millimetres from its left
// end and its floor.
func (b *Tab) Wall(x, y float64) Point {
	b.T.Helper()
	var p [2]float64
	text := b.Text(`JSON.stringify((h => { const r = h.getBoundingClientRect(), v = n => parseFloat(getComputedStyle(h).getPropertyValue(n)), s = v('--s')
	  return [r.x + v('--ox') + s * ` + number(x) + `, r.y + v('--oy') - s * ` + number(y) + `] })(document.querySelector('[data-hand]')))`)
	require.NoError(b.T, json.Unmarshal([]byte(text), &p), text)
	return Point{p[0], p[1]}
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Job goes to one of the five jobs.
func (b *Tab) Job(name string) {
	b.T.Helper()
	b.TapAt(b.spotOf(func() []Thing { return b.job(name) }, name))
	b.Wait("the job "+name, func() bool {
		all := b.job(name)
		return len(all) > 0 && all[0].State("current") == "page" || b.Has("heading", name)
	})
}

// job finds the button of a job: its name may say how much is open there.
func (b *Tab) job(name string) (out []Thing) {
	for _, t := range b.All("button", name+"…") {
		if rest := strings.TrimPrefix(t.Name, name); rest == "" || strings.HasSuffix(rest, " open") {
			out = append(out, t)
		}
	}
	return out
}

// Unfold opens something that is folded away under a summary of that name.
func (b *Tab) Unfold(name string) {
	b.T.Helper()
	t := b.See(disclosure, name)
	if t.State("expanded") != "true" {
		b.Tap(disclosure, name)
		b.Wait("“"+name+"” to open", func() bool { all := b.All(disclosure, name); return len(all) > 0 && all[0].State("expanded") == "true" })
	}
}

// disclosure is the role of a summary in Chromium's tree.
const disclosure = "DisclosureTriangle"

// mostTabs is how many times the Tab key is pressed to reach something.
const mostTabs = 250

// TabTo goes to something with the Tab key alone, and sees that its focus is shown.
func (b *Tab) TabTo(role, name string) {
	b.T.Helper()
	b.Calm()
	var way []string
	for range mostTabs {
		at := b.Focused()
		if at.Role == role && (matches(at.Name, name) || strings.HasPrefix(at.Name, name+" ") && strings.HasSuffix(at.Name, " open")) {
			shown := b.on(at, `function() { const s = getComputedStyle(this); return String(s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2) }`)
			require.Equal(b.T, "true", shown, "the focus on %s “%s” is not shown", role, name)
			return
		}
		way = append(way, at.Role+" “"+at.Name+"”")
		b.Press(kb.Tab)
	}
	require.Fail(b.T, "not reached by the Tab key", "%s “%s”, by way of %s", role, name, strings.Join(append(way[:30], way[len(way)-30:]...), ", "))
}
