package hand

import (
	"encoding/binary"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// play steps through events and returns all gestures.
func play(events []Event) (out []Gesture) {
	var h Hand
	for _, e := range events {
		var g []Gesture
		h, g = h.Step(e)
		out = append(out, g...)
	}
	return out
}

// count counts gestures of a kind.
func count(gs []Gesture, kind GestureKind) (n int) {
	for _, g := range gs {
		if g.Kind == kind {
			n++
		}
	}
	return n
}

// anyEvent draws an event of a small world: a mouse, a pen and five fingers, now and
// then an id of the wrong kind, and figures that cannot be.
func anyEvent(t *rapid.T, now *float64) Event {
	*now += rapid.SampledFrom([]float64{0, 1, 8, 16, 100, 499, 500, 501, -20}).Draw(t, "later")
	place := rapid.OneOf(rapid.Float64Range(0, 60), rapid.Float64Range(0, 60), rapid.Float64Range(-1e4, 1e4))
	e := Event{
		Kind: rapid.SampledFrom([]Kind{Down, Motion, Motion, Motion, Up, Up, Cancel, Wheel, Tick, 0, 99}).Draw(t, "kind"),
		ID:   rapid.IntRange(1, 7).Draw(t, "id"),
		X:    place.Draw(t, "x"), Y: place.Draw(t, "y"), Time: *now,
		DX: place.Draw(t, "dx"), DY: place.Draw(t, "dy"),
		Control: rapid.Bool().Draw(t, "control"), Shift: rapid.Bool().Draw(t, "shift"),
		Button:  rapid.SampledFrom([]int{0, 0, 0, 0, 1, 2, 5, -1}).Draw(t, "button"),
		Primary: rapid.IntRange(0, 9).Draw(t, "primary") == 0,
		Loose:   rapid.IntRange(0, 9).Draw(t, "loose") == 0,
	}
	switch e.ID {
	case 1:
		e.Type = Mouse
	case 2:
		e.Type = Pen
	default:
		e.Type = Touch
	}
	switch rapid.IntRange(0, 40).Draw(t, "oddity") {
	case 0:
		e.X = rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), -math.MaxFloat64}).Draw(t, "figure")
	case 1:
		e.Time = math.Inf(1)
	}
	return e
}

// A ledger watches a hand and fails when a rule is broken. It keeps its own account of
// which pen is down: the last that came, because an id that comes again, and a second pen,
// tell of an Up that was lost.
type ledger struct {
	t       require.TestingT
	hand    Hand
	open    bool // a drag is
	penDown map[int]bool
}

func (l *ledger) step(e Event) {
	switch {
	case e.Kind == Down && e.possible():
		delete(l.penDown, e.ID)
		if e.Type == Pen {
			clear(l.penDown)
			l.penDown[e.ID] = true
		}
	case e.Kind == Up || e.Kind == Cancel, e.Kind == Motion && e.Loose && e.possible():
		delete(l.penDown, e.ID)
	}
	was := l.hand
	var out []Gesture
	l.hand, out = l.hand.Step(e)
	again, same := was.Step(e)
	require.Equal(l.t, l.hand, again, "a hand is a value")
	require.Equal(l.t, out, same)
	for _, g := range out {
		l.take(g)
	}
	_, wakes := l.hand.Wakes()
	require.False(l.t, wakes && l.hand.n == 0, "a hand that touches nothing waits for nothing")
}

func (l *ledger) take(g Gesture) {
	switch g.Kind {
	case DragStart:
		require.False(l.t, l.open, "a second drag in the first")
		l.open = true
	case Drag:
		require.True(l.t, l.open)
	case Drop, DragCancel:
		require.True(l.t, l.open, "closed twice, or never begun")
		l.open = false
	case Tap, LongPress, PanZoom, Hover:
		require.False(l.t, l.open, "something else in a drag")
	default:
		require.Fail(l.t, "no kind of gesture")
	}
	if len(l.penDown) > 0 {
		require.True(l.t, g.Type != Touch || g.Kind == DragCancel, "of a touch while a pen is down: %+v", g)
	}
	require.Greater(l.t, g.Scale, 0.0)
	for _, f := range []float64{g.X, g.Y, g.FromX, g.FromY, g.DX, g.DY, g.Scale} {
		require.False(l.t, math.IsNaN(f) || math.IsInf(f, 0))
	}
}

// end lifts everything and sees that nothing is left open.
func (l *ledger) end() {
	for id := range 16 {
		l.step(Event{Kind: Cancel, ID: id, Time: 1e9})
	}
	require.False(l.t, l.open, "a drag that nothing closes")
	require.Zero(l.t, l.hand.n)
}

func TestAnyEventsKeepTheRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := ledger{t: t, penDown: map[int]bool{}}
		now := 0.0
		for range rapid.IntRange(1, 120).Draw(t, "events") {
			l.step(anyEvent(t, &now))
		}
		l.end()
	})
}

// FuzzStep keeps the rules of the ledger over any bytes: ten make an event.
func FuzzStep(f *testing.F) {
	for _, text := range strokes(f) {
		s, err := parseStroke(text)
		require.NoError(f, err)
		f.Add(bytesOf(s.events))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		l := ledger{t: t, penDown: map[int]bool{}}
		for now := 0.0; len(data) >= 10; data = data[10:] {
			e := eventOf(data)
			now += e.Time
			e.Time = now
			l.step(e)
		}
		l.end()
	})
}

// eventOf reads an event from ten bytes; its time is that since the last.
func eventOf(b []byte) Event {
	two := func(i int) float64 { return float64(int16(binary.LittleEndian.Uint16(b[i:]))) }
	return Event{
		Kind: Kind(b[0] & 7), Type: Type(b[0] >> 3 & 3), Shift: b[0]&32 != 0, Control: b[0]&64 != 0,
		ID: int(b[1] & 15), Button: int(b[1] >> 4 & 3), Primary: b[1]&64 != 0, Loose: b[1]&128 != 0,
		Time: two(2) / 4, X: two(4) / 4, Y: two(6) / 4, DX: float64(int8(b[8])), DY: float64(int8(b[9])),
	}
}

// bytesOf writes events as eventOf reads them, as near as it can.
func bytesOf(events []Event) (out []byte) {
	bit := func(is bool, at int) byte {
		if is {
			return 1 << at
		}
		return 0
	}
	quarters := func(f float64) uint16 { return uint16(int16(f * 4)) }
	now := 0.0
	for _, e := range events {
		out = append(out, byte(e.Kind)|byte(e.Type)<<3|bit(e.Shift, 5)|bit(e.Control, 6),
			byte(e.ID)|byte(e.Button)<<4|bit(e.Primary, 6)|bit(e.Loose, 7))
		for _, f := range []float64{e.Time - now, e.X, e.Y} {
			out = binary.LittleEndian.AppendUint16(out, quarters(f))
		}
		out = append(out, byte(int8(e.DX)), byte(int8(e.DY)))
		now = e.Time
	}
	return out
}

// A pinched is a pinch drawn at random: two fingers come down, move by turns, and are
// lifted one after the other.
type pinched struct {
	events []Event
	x, y   [2]float64
	now    float64
}

func (p *pinched) event(kind Kind, finger int) {
	p.events = append(p.events, Event{Kind: kind, ID: 5 + finger, Type: Touch, X: p.x[finger], Y: p.y[finger], Time: p.now, Primary: kind == Down && finger == 0})
}

// drawPinch draws a pinch whose first finger moves less than far before the second comes.
func drawPinch(t *rapid.T, far float64) pinched {
	place := rapid.Float64Range(0, 900)
	p := pinched{x: [2]float64{place.Draw(t, "x"), place.Draw(t, "x")}, y: [2]float64{place.Draw(t, "y"), place.Draw(t, "y")}}
	p.event(Down, 0)
	x, y := p.x[0], p.y[0]
	for range rapid.IntRange(0, 4).Draw(t, "before") {
		p.now += rapid.Float64Range(0, 60).Draw(t, "wait")
		way, angle := rapid.Float64Range(0, far).Draw(t, "way"), rapid.Float64Range(0, 7).Draw(t, "angle")
		p.x[0], p.y[0] = x+way*math.Cos(angle), y+way*math.Sin(angle)
		p.event(Motion, 0)
	}
	p.event(Down, 1)
	for range rapid.IntRange(0, 30).Draw(t, "moves") {
		p.now += rapid.SampledFrom([]float64{4, 8, 16, 200}).Draw(t, "wait")
		finger := rapid.IntRange(0, 1).Draw(t, "finger")
		p.x[finger] += rapid.Float64Range(-40, 40).Draw(t, "dx")
		p.y[finger] += rapid.Float64Range(-40, 40).Draw(t, "dy")
		p.event(Motion, finger)
		if rapid.IntRange(0, 5).Draw(t, "tick") == 0 {
			p.events = append(p.events, Event{Kind: Tick, Time: p.now})
		}
	}
	first := rapid.IntRange(0, 1).Draw(t, "first up")
	p.event(Up, first)
	for range rapid.IntRange(0, 5).Draw(t, "after") {
		p.now += 200
		p.x[1-first] += rapid.Float64Range(-40, 40).Draw(t, "dx")
		p.event(Motion, 1-first)
	}
	p.event(Up, 1-first)
	return p
}

// No pinch leaves a trace: neither one whose first finger rests, nor one that had begun
// to drag. 100 of each are drawn.
func TestNothingComesOfAPinch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gs := play(drawPinch(t, 7.9).events)
		require.Equal(t, count(gs, PanZoom), len(gs), "%+v", gs)
	})
	rapid.Check(t, func(t *rapid.T) {
		gs := play(drawPinch(t, 60).events)
		require.Zero(t, count(gs, Tap)+count(gs, LongPress)+count(gs, Drop), "%+v", gs)
		require.Equal(t, count(gs, DragStart), count(gs, DragCancel))
	})
}

// A camera takes a point of the picture to the screen, as the page's does: it pans, and
// then zooms about the gesture's place.
type camera struct{ x, y, scale float64 }

func (c camera) after(g Gesture) camera {
	c.x, c.y = c.x+g.DX, c.y+g.DY
	return camera{g.X + (c.x-g.X)*g.Scale, g.Y + (c.y-g.Y)*g.Scale, c.scale * g.Scale}
}

// What was between the fingers stays between them, to a thousandth of the 2 px that are
// allowed, after any number of gestures.
func TestAPinchKeepsThePointBetweenTheFingers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPinch(t, 0)
		c := camera{scale: 1}
		var h Hand
		var under struct{ x, y float64 }
		for _, e := range p.events {
			var gs []Gesture
			if h, gs = h.Step(e); h.does != pinching {
				continue
			}
			m := h.spread()
			if e.Kind == Down {
				under.x, under.y = (m.x-c.x)/c.scale, (m.y-c.y)/c.scale
			}
			for _, g := range gs {
				c = c.after(g)
			}
			drift := math.Hypot(c.x+under.x*c.scale-m.x, c.y+under.y*c.scale-m.y)
			require.Less(t, drift, 0.002)
		}
	})
}

// Touches while a pen is down, and less than 500 ms after, change nothing of what the pen
// does: the gestures are those of the pen alone.
func TestPalmsDoNotCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var both, alone []Event
		now := 0.0
		pen := func(kind Kind, x, y float64) {
			e := Event{Kind: kind, ID: 2, Type: Pen, X: x, Y: y, Time: now}
			both, alone = append(both, e), append(alone, e)
		}
		palm := func() {
			for range rapid.IntRange(0, 6).Draw(t, "palm") {
				now += rapid.Float64Range(0, 16).Draw(t, "wait")
				e := anyEvent(t, new(float64))
				e.ID, e.Type, e.Time = 3+e.ID, Touch, now
				if e.Kind != Wheel && e.Kind != Tick {
					both = append(both, e)
				}
			}
		}
		for range rapid.IntRange(1, 4).Draw(t, "strokes") {
			x, y := 100.0, 100.0
			pen(Down, x, y)
			palm()
			for range rapid.IntRange(0, 10).Draw(t, "moves") {
				x, y = x+rapid.Float64Range(-9, 9).Draw(t, "dx"), y+rapid.Float64Range(-9, 9).Draw(t, "dy")
				now += 16
				pen(Motion, x, y)
				palm()
			}
			pen(Up, x, y)
			palm()
			palm()
		}
		require.Equal(t, play(alone), play(both))
	})
}

// One finger alone, by the rules as they are written: within 8 px and 500 ms it taps;
// within 10 px for 500 ms it presses long; else it drags from the first 8 px on.
func TestOneFinger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events := []Event{{Kind: Down, ID: 4, Type: Touch, X: 50, Y: 50}}
		var now, farthest, atTime float64
		step := func(kind Kind) {
			now += rapid.Float64Range(1, 120).Draw(t, "wait")
			way, angle := rapid.Float64Range(0, 12).Draw(t, "way"), rapid.Float64Range(0, 7).Draw(t, "angle")
			if kind == Motion || now < longPress {
				farthest = max(farthest, way)
			}
			if now < longPress {
				atTime = farthest
			}
			events = append(events, Event{Kind: kind, ID: 4, Type: Touch, X: 50 + way*math.Cos(angle), Y: 50 + way*math.Sin(angle), Time: now})
		}
		for range rapid.IntRange(0, 12).Draw(t, "moves") {
			step(Motion)
			if now < longPress {
				continue
			}
			break
		}
		late := now >= longPress
		if !late {
			step(Up)
			late = now >= longPress
		}
		// An event that comes late counts with where it is.
		last := events[len(events)-1]
		if late {
			farthest = max(atTime, math.Hypot(last.X-50, last.Y-50))
		}
		gs := play(events)
		switch {
		case late && farthest <= slipLimit:
			require.Equal(t, 1, count(gs, LongPress))
			require.Zero(t, count(gs, Tap)+count(gs, Drop))
		case farthest >= dragFrom:
			require.Equal(t, 1, count(gs, DragStart))
			require.Zero(t, count(gs, Tap)+count(gs, LongPress))
		default:
			require.Equal(t, []Gesture{{Kind: Tap, X: last.X, Y: last.Y, FromX: 50, FromY: 50, Scale: 1, Type: Touch}}, gs)
		}
	})
}

func TestWakes(t *testing.T) {
	var h Hand
	wakes := func() bool { _, ok := h.Wakes(); return ok }
	step := func(e Event) { h, _ = h.Step(e) }
	require.False(t, wakes())
	step(Event{Kind: Down, ID: 3, Type: Touch, X: 50, Y: 50, Time: 1000})
	at, ok := h.Wakes()
	require.True(t, ok)
	require.Equal(t, 1500.0, at)
	step(Event{Kind: Motion, ID: 3, Type: Touch, X: 59, Y: 50, Time: 1100})
	require.True(t, wakes(), "a slip of 9 px is a drag that may still be called back")
	step(Event{Kind: Motion, ID: 3, Type: Touch, X: 61, Y: 50, Time: 1200})
	require.False(t, wakes())
	step(Event{Kind: Up, ID: 3, Type: Touch, X: 61, Y: 50, Time: 1300})
	step(Event{Kind: Down, ID: 1, Type: Mouse, X: 61, Y: 50, Time: 1400})
	require.False(t, wakes(), "a mouse has a second button")
	step(Event{Kind: Up, ID: 1, Type: Mouse, X: 61, Y: 50, Time: 1500})
	step(Event{Kind: Down, ID: 3, Type: Touch, X: 50, Y: 50, Time: 2000})
	step(Event{Kind: Tick, Time: 2500})
	require.False(t, wakes(), "it has rung")
}

func TestGivingUp(t *testing.T) {
	touch := func(h Hand, kind Kind, id int, x, time float64) (Hand, []Gesture) {
		return h.Step(Event{Kind: kind, ID: id, Type: Touch, X: x, Y: 10, Time: time})
	}
	h, _ := touch(Hand{}, Down, 3, 10, 0)
	h, _ = touch(h, Motion, 3, 40, 10)
	h, out := h.GiveUp()
	require.Equal(t, []Gesture{{Kind: DragCancel, X: 40, Y: 10, FromX: 10, FromY: 10, Scale: 1, Type: Touch}}, out)
	h, out = h.GiveUp()
	require.Empty(t, out)
	h, out = touch(h, Motion, 3, 80, 20)
	require.Empty(t, out)
	h, out = touch(h, Up, 3, 80, 30)
	require.Empty(t, out)
	require.Zero(t, h.n)

	for id := 3; id < 6; id++ {
		h, _ = touch(h, Down, id, 100*float64(id), 40)
	}
	h, _ = h.GiveUp()
	h, _ = touch(h, Up, 3, 300, 50)
	h, out = touch(h, Motion, 4, 300, 60)
	require.Empty(t, out, "three fingers are still one too many")
	require.Equal(t, crowding, h.does)
}

func TestLiftedNowhere(t *testing.T) {
	h, _ := Hand{}.Step(Event{Kind: Down, ID: 2, Type: Pen, X: 5, Y: 5, Time: 100})
	h, out := h.Step(Event{Kind: Motion, ID: 2, Type: Pen, X: math.NaN(), Time: 110})
	require.Empty(t, out)
	h, out = h.Step(Event{Kind: Up, ID: 2, Type: Pen, X: 5, Y: 5, Time: math.Inf(1)})
	require.Empty(t, out)
	require.Zero(t, h.n)
	h, _ = h.Step(Event{Kind: Down, ID: 3, Type: Touch, X: 5, Y: 5, Time: 600})
	require.Equal(t, 1, h.n, "the palm's time ran from when the pen came down")
}

// A track pad's pinch told by its scale comes out as that scale, within the limit of one
// event; and in by as much as out is nothing.
func TestWheelFor(t *testing.T) {
	zoom := func(dy float64) float64 {
		_, gs := Hand{}.Step(Event{Kind: Wheel, DY: dy, Control: true})
		return gs[0].Scale
	}
	for _, scale := range []float64{0.8, 0.95, 1.001, 1.05, 1.25} {
		require.InDelta(t, scale, zoom(WheelFor(scale)), 1e-12)
		require.InDelta(t, 1, zoom(WheelFor(scale))*zoom(-WheelFor(scale)), 1e-15)
	}
	require.Equal(t, zoom(-wheelLimit), zoom(WheelFor(100)))
	require.Equal(t, zoom(wheelLimit), zoom(WheelFor(0.01)))
	require.InEpsilon(t, math.Exp(0.1), zoom(-10), 1e-3, "near the exponential, for the few px of a track pad")
}

func BenchmarkStep(b *testing.B) {
	h, _ := Hand{}.Step(Event{Kind: Down, ID: 3, Type: Touch, X: 50, Y: 50})
	h, _ = h.Step(Event{Kind: Motion, ID: 3, Type: Touch, X: 80, Y: 50, Time: 10})
	for b.Loop() {
		h, _ = h.Step(Event{Kind: Motion, ID: 3, Type: Touch, X: 81, Y: 50, Time: 20})
	}
}

// A page gives the hand every pointer event, and does what the gestures say.
func ExampleHand_Step() {
	var h Hand
	for _, e := range []Event{
		{Kind: Down, ID: 3, Type: Touch, X: 120, Y: 80, Time: 0},
		{Kind: Motion, ID: 3, Type: Touch, X: 150, Y: 80, Time: 16},
		{Kind: Up, ID: 3, Type: Touch, X: 160, Y: 80, Time: 32},
	} {
		var gestures []Gesture
		h, gestures = h.Step(e)
		for _, g := range gestures {
			fmt.Println(said(g))
		}
	}
	// Output:
	// drag-start 150 80 from 120 80
	// drop 160 80
}
