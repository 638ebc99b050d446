// Package hand turns pointer events into gestures, the same for mouse, touch and pen.
//
// It knows no shelves and no browser: events in, gestures out, all in pixels of the
// picture and milliseconds, so that a recorded stroke is a test. [Hand] is the machine;
// the rules that it keeps:
//
//   - One pointer presses. Released within 8 px it taps; from 8 px on it drags.
//   - A finger or pen that rests for 500 ms within 10 px presses long. A drag that has
//     begun by then, between 8 and 10 px, is called back first. A mouse has its second
//     button for that.
//   - A second finger calls a drag back, and the two pan and zoom. After that neither
//     taps nor drags until both are lifted.
//   - From the third finger on nothing comes of any of them until all are lifted.
//   - Touches that land while a pen is down, and until 500 ms after, are a palm, however
//     long they stay. A pen that comes down calls back what fingers had begun.
//   - The middle button pans. A page that pans with the space key held sends button 1.
//   - The wheel pans; with the control key, which is how a track pad's pinch arrives, it
//     zooms. While something is pressed the wheel does nothing.
//   - What the browser cancels, and what it forgets to end, is called back.
package hand

// An Event is one pointer event as the browser tells it.
type Event struct {
	Kind Kind
	ID   int     // pointer id
	Type Type    // what touches
	X, Y float64 // px from the picture's upper left corner
	Time float64 // ms, from any fixed moment
	// Wheel events only: how far, in px, and whether the control key is down (a track
	// pad's pinch arrives so).
	DX, DY  float64
	Control bool
	Shift   bool
	Button  int // of the mouse: 0 main, 1 middle, 2 second

	// What the browser knows better than a row of events from which one is missing;
	// false where it is not asked.
	Primary bool // of a finger's Down: no other finger is down ("isPrimary")
	Loose   bool // of a Motion of mouse or pen: no button is down ("buttons" is 0)
}

// A Kind of Event.
type Kind uint8

// Kinds of events. Tick carries the time alone: a long press needs it.
const (
	Down Kind = iota + 1
	Motion
	Up
	Cancel
	Wheel
	Tick
)

// A Type says what touches.
type Type uint8

// Types of pointers.
const (
	Mouse Type = iota
	Touch
	Pen
)

// A Gesture is what a hand did.
type Gesture struct {
	Kind         GestureKind
	X, Y         float64 // where, px; for a pinch the point between the fingers
	FromX, FromY float64 // where the pointer went down: of taps, long presses and drags
	DX, DY       float64 // pan since the last gesture, px
	Scale        float64 // zoom since the last gesture, about X, Y and after the pan; 1 for none
	Shift        bool
	Type         Type
}

// A GestureKind names a gesture.
type GestureKind uint8

// The gestures.
const (
	Tap GestureKind = iota + 1
	LongPress
	DragStart // passed 8 px; X, Y as the pointer is, FromX, FromY where it went down
	Drag
	Drop
	DragCancel // a second finger, a pointercancel: what was dragged goes back
	PanZoom    // two fingers, the middle button, or the wheel
	Hover
)
