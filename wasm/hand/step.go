package hand

import "math"

// Distances in px, of the pointer from where it went down, and times in ms.
const (
	dragFrom  = 8
	slipLimit = 10
	longPress = 500
	palmAfter = 500
)

// farthest is the largest figure of an event that is believed. It holds the milliseconds
// since 1970, and leaves room for their sums.
const farthest = 1e15

// fingers is how many touches count; a third one stops the other two.
const fingers = 3

// A Hand is what is known of the pointers between two events. The zero value is a hand
// that touches nothing. It is a plain value: a copy goes its own way.
type Hand struct {
	at [fingers]contact // the pointers that are down, in the order of coming down
	n  int              // how many

	does    doing
	from    contact // where and when the first came down
	slipped bool    // it has been farther than slipLimit from there
	mid     spread  // of the two fingers of a pinch, at the last gesture

	penned bool    // a pen has been down
	penUp  float64 // when it last left
}

// A contact is a pointer that is down.
type contact struct {
	id     int
	kind   Type
	x, y   float64
	time   float64 // when it came down
	button int
}

// doing says what the pointers that are down do together.
type doing uint8

const (
	nothing  doing = iota // none is down, or nothing more comes of those that are
	pressing              // one, that may still tap, drag, or press long
	dragging
	asking   // one, with the second button
	panning  // one, with the middle button
	pinching // two fingers
	crowding // three fingers or more, until all are lifted
)

// Step takes the next event and returns the hand after it, and the gestures that it
// completes. An event whose figures cannot be, by [farthest], does nothing; but a pointer
// that is lifted nowhere is lifted, as if it were cancelled.
func (h Hand) Step(e Event) (Hand, []Gesture) {
	if !e.possible() {
		if e.Kind != Up && e.Kind != Cancel {
			return h, nil
		}
		e = Event{Kind: Cancel, ID: e.ID, Time: h.from.time}
	}
	if e.Type > Pen {
		e.Type = Mouse
	}
	switch e.Kind {
	case Down:
		return h.down(e)
	case Motion:
		return h.motion(e)
	case Up:
		return h.up(e)
	case Cancel:
		return h.forget(h.find(e.ID), e)
	case Wheel:
		return h, h.wheel(e)
	case Tick:
		return h.ripen(e)
	}
	return h, nil
}

// possible reports whether every figure of an event is one, and no larger than farthest.
func (e Event) possible() bool {
	for _, f := range [...]float64{e.X, e.Y, e.Time, e.DX, e.DY} {
		if !(math.Abs(f) <= farthest) { // so that what is no number fails
			return false
		}
	}
	return true
}

// Wakes returns the time at which a Tick is wanted, in ms as events count them, and
// whether one is. A Tick that comes late, or never, is made good by the pointer's next
// event.
func (h Hand) Wakes() (float64, bool) {
	return h.from.time + longPress, h.mayRipen()
}

// GiveUp calls back whatever has begun, as the Escape key does. Nothing more comes of
// the pointers that are down until they are lifted. A page that was hidden gives up and
// goes on with a Hand of no value, because it may have missed how they were lifted.
func (h Hand) GiveUp() (Hand, []Gesture) {
	out := h.backOut(false)
	if h.does != crowding {
		h.does = nothing
	}
	return h, out
}

// backOut returns what calls a drag back, if there is one.
func (h Hand) backOut(shift bool) []Gesture {
	if h.does != dragging {
		return nil
	}
	return []Gesture{h.gesture(DragCancel, shift)}
}

// gesture returns a gesture of the first pointer, where it is now.
func (h Hand) gesture(kind GestureKind, shift bool) Gesture {
	c := h.at[0]
	return Gesture{Kind: kind, X: c.x, Y: c.y, FromX: h.from.x, FromY: h.from.y, Scale: 1, Shift: shift, Type: c.kind}
}

// find returns the index of the pointer that is down, −1 if it is not.
func (h Hand) find(id int) int {
	for i := range h.n {
		if h.at[i].id == id {
			return i
		}
	}
	return -1
}

// holds reports whether a pointer of that kind is down. Pointers of two kinds are never
// held together.
func (h Hand) holds(kind Type) bool { return h.n > 0 && h.at[0].kind == kind }

// down takes a pointer that comes down. One that was down already has lost its Up.
func (h Hand) down(e Event) (Hand, []Gesture) {
	h, out := h.forget(h.find(e.ID), e)
	if h.passedOver(e) {
		return h, out
	}
	if e.Type != Touch || e.Primary {
		// A pen or mouse is alone, and so is a finger that the browser says is: any
		// other pointer that seems to be down is a palm, or has lost its Up.
		out = append(out, h.backOut(e.Shift)...)
		h = h.cleared(e)
	}
	if h.n == fingers {
		return h, out
	}
	h.at[h.n] = contact{e.ID, e.Type, e.X, e.Y, e.Time, e.Button}
	h.n++
	if h.n == 1 {
		return h.press(), out
	}
	return h.join(e.Shift, out)
}

// passedOver reports whether a pointer that comes down does not count: the palm of a hand
// that holds a pen, a finger beside a mouse, or a mouse beside a finger or pen.
func (h Hand) passedOver(e Event) bool {
	switch e.Type {
	case Touch:
		return h.holds(Pen) || h.holds(Mouse) || h.penned && e.Time-h.penUp < palmAfter
	case Mouse:
		return h.holds(Pen) || h.holds(Touch)
	}
	return false
}

// press begins with the only pointer.
func (h Hand) press() Hand {
	h.from, h.slipped = h.at[0], false
	switch h.from.button {
	case 0:
		h.does = pressing
	case 1:
		h.does = panning
	case 2:
		h.does = asking
	default:
		h.does = nothing
	}
	return h
}

// join goes on with one finger more.
func (h Hand) join(shift bool, out []Gesture) (Hand, []Gesture) {
	out = append(out, h.backOut(shift)...)
	switch {
	case h.n == fingers || h.does == crowding:
		h.does = crowding
	default:
		h.does, h.mid = pinching, h.spread()
	}
	return h, out
}

// cleared forgets every pointer.
func (h Hand) cleared(e Event) Hand {
	if h.holds(Pen) {
		h.penned, h.penUp = true, e.Time
	}
	h.n, h.does = 0, nothing
	return h
}

// forget takes away a pointer of which nothing more comes; none for an index below 0.
func (h Hand) forget(i int, e Event) (Hand, []Gesture) {
	if i < 0 {
		return h, nil
	}
	out := h.backOut(e.Shift)
	return h.lifted(i, e), out
}

// lifted takes a pointer away.
func (h Hand) lifted(i int, e Event) Hand {
	if h.n == 1 {
		return h.cleared(e)
	}
	copy(h.at[i:h.n], h.at[i+1:h.n])
	h.n--
	if h.does != crowding {
		h.does = nothing
	}
	return h
}

// motion takes a pointer that moves.
func (h Hand) motion(e Event) (Hand, []Gesture) {
	i := h.find(e.ID)
	if i < 0 {
		return h, h.hover(e)
	}
	if e.Loose && h.at[i].kind != Touch {
		h, out := h.forget(i, e)
		return h, append(out, h.hover(e)...)
	}
	was := h.at[i]
	h.at[i].x, h.at[i].y = e.X, e.Y
	switch h.does {
	case pressing, dragging:
		return h.travel(e)
	case panning:
		return h, h.pan(was, e)
	case pinching:
		return h.pinch(e)
	}
	return h, nil
}

// hover returns the hovering of a mouse or pen over a picture that nothing touches.
func (h Hand) hover(e Event) []Gesture {
	if h.n > 0 || e.Type == Touch {
		return nil
	}
	return []Gesture{{Kind: Hover, X: e.X, Y: e.Y, Scale: 1, Shift: e.Shift, Type: e.Type}}
}

// gone returns how far the first pointer is from where it came down.
func (h Hand) gone() float64 { return math.Hypot(h.at[0].x-h.from.x, h.at[0].y-h.from.y) }

// travel goes on with a pointer that presses or drags and has moved.
func (h Hand) travel(e Event) (Hand, []Gesture) {
	h.slipped = h.slipped || h.gone() > slipLimit
	if h.ripe(e) {
		return h.ripen(e)
	}
	switch {
	case h.does == dragging:
		return h, []Gesture{h.gesture(Drag, e.Shift)}
	case h.gone() >= dragFrom:
		h.does = dragging
		return h, []Gesture{h.gesture(DragStart, e.Shift)}
	}
	return h, nil
}

// mayRipen reports whether the first pointer may still come to press long.
func (h Hand) mayRipen() bool {
	return (h.does == pressing || h.does == dragging) && !h.slipped && h.from.kind != Mouse
}

// ripe reports whether it does.
func (h Hand) ripe(e Event) bool { return h.mayRipen() && e.Time-h.from.time >= longPress }

// ripen makes a press a long one if it is time, and calls back a drag of less than the
// slip.
func (h Hand) ripen(e Event) (Hand, []Gesture) {
	if !h.ripe(e) {
		return h, nil
	}
	out := append(h.backOut(e.Shift), h.gesture(LongPress, e.Shift))
	h.does = nothing
	return h, out
}

// up takes a pointer that is lifted, at the place where it is.
func (h Hand) up(e Event) (Hand, []Gesture) {
	i := h.find(e.ID)
	if i < 0 {
		return h, nil
	}
	was := h.at[i]
	h.at[i].x, h.at[i].y = e.X, e.Y
	var out []Gesture
	switch h.does {
	case pressing, dragging:
		h, out = h.release(e)
	case asking:
		if h.gone() < dragFrom {
			out = []Gesture{h.gesture(LongPress, e.Shift)}
		}
	case panning:
		out = h.pan(was, e)
	case pinching:
		h, out = h.pinch(e)
	}
	return h.lifted(i, e), out
}

// release ends a press or a drag. What moved and was lifted in one event has dragged.
func (h Hand) release(e Event) (Hand, []Gesture) {
	h.slipped = h.slipped || h.gone() > slipLimit
	switch {
	case h.ripe(e):
		return h.ripen(e)
	case h.does == dragging:
		return h, []Gesture{h.gesture(Drop, e.Shift)}
	case h.gone() < dragFrom:
		return h, []Gesture{h.gesture(Tap, e.Shift)}
	}
	return h, []Gesture{h.gesture(DragStart, e.Shift), h.gesture(Drop, e.Shift)}
}
