package browser

import (
	"math"
	"syscall/js"

	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
)

// slack is how far a pointer that went down on a control of the picture may move and
// still mean the control, in px: the distance from which the hand sees a drag.
const slack = 8

// pointers are what touches the picture.
type pointers struct {
	w           *window
	element     *element  // the one that is listened on
	funcs       []js.Func // its listeners
	observer    js.Value
	size        app.Size
	left, top   float64 // of the element in the window
	down        map[int]*press
	pinchedFrom float64 // scale of a track pad's pinch at its last event
}

// A press is a pointer that is down. One that went down on a control waits until it has
// moved: if it never does, the browser makes a click of it, and the hand, which lies
// below the controls, must not make a tap of it too.
type press struct {
	event   hand.Event
	waits   bool
	touches bool
}

// follow listens on the element with the attribute data-hand, whichever it is now.
func (p *pointers) follow() {
	held, ok := p.w.loop.Tree.Held()
	if !ok {
		p.leave()
		return
	}
	if e := held.(*element); e != p.element {
		p.leave()
		p.attend(e)
	}
}

// leave stops listening.
func (p *pointers) leave() {
	if p.element == nil {
		return
	}
	p.giveUp()
	p.observer.Call("disconnect")
	for _, f := range p.funcs {
		f.Release()
	}
	p.element, p.funcs = nil, nil
}

func (p *pointers) attend(e *element) {
	p.element = e
	style := e.v.Get("style")
	for _, p := range []string{"touch-action", "user-select", "-webkit-user-select", "-webkit-touch-callout"} {
		style.Call("setProperty", p, "none")
	}
	for kind, do := range map[string]func(js.Value){
		"pointerdown": p.pointerDown, "pointermove": p.pointerMove, "pointerup": p.pointerUp,
		"pointercancel": p.pointerLost, "lostpointercapture": p.pointerLost,
		"wheel": p.wheel, "contextmenu": prevent,
		"gesturestart": p.gesture, "gesturechange": p.gesture, "gestureend": p.gesture,
	} {
		f := p.w.callback(func(args []js.Value) { do(args[0]) })
		p.funcs = append(p.funcs, f)
		e.v.Call("addEventListener", kind, f, map[string]any{"passive": false})
	}
	sized := p.w.callback(func([]js.Value) { p.resized() })
	p.funcs = append(p.funcs, sized)
	p.observer = p.w.Get("ResizeObserver").New(sized)
	p.observer.Call("observe", e.v)
}

func prevent(e js.Value) { e.Call("preventDefault") }

// holds reports whether an element is the picture or stands in it.
func (p *pointers) holds(target js.Value) bool {
	return p.element != nil && target.Truthy() && p.element.v.Call("contains", target).Bool()
}

func (p *pointers) resized() {
	if p.element == nil {
		return
	}
	size := app.Size{Width: p.element.v.Get("clientWidth").Float(), Height: p.element.v.Get("clientHeight").Float()}
	if size != p.size && size.Width > 0 && size.Height > 0 {
		p.size = size
		p.w.loop.Send(app.Resized{Size: size})
	}
}

// measure finds where the picture is; it does not move while a pointer is down.
func (p *pointers) measure() {
	box := p.element.v.Call("getBoundingClientRect")
	p.left, p.top = box.Get("left").Float(), box.Get("top").Float()
}

// event reads a pointer event.
func (p *pointers) event(kind hand.Kind, e js.Value) hand.Event {
	h := hand.Event{
		Kind: kind, X: e.Get("clientX").Float() - p.left, Y: e.Get("clientY").Float() - p.top,
		Time: e.Get("timeStamp").Float(), Shift: flag(e, "shiftKey"), Control: flag(e, "ctrlKey"),
	}
	if kind == hand.Wheel {
		return h
	}
	h.ID, h.Button, h.Primary = e.Get("pointerId").Int(), e.Get("button").Int(), flag(e, "isPrimary")
	switch e.Get("pointerType").String() {
	case "touch":
		h.Type = hand.Touch
	case "pen":
		h.Type = hand.Pen
	}
	h.Loose = kind == hand.Motion && h.Type != hand.Touch && e.Get("buttons").Int() == 0
	return h
}

func (p *pointers) pointerDown(e js.Value) {
	if len(p.down) == 0 {
		p.measure()
	}
	h := p.event(hand.Down, e)
	for _, other := range p.down {
		p.release(other) // two pointers are a gesture of the hand
	}
	d := &press{event: h, waits: len(p.down) == 0 && p.onControl(e.Get("target")), touches: h.Type == hand.Touch}
	p.down[h.ID] = d
	if !d.waits {
		p.capture(h.ID)
		p.w.loop.Point(h)
	}
}

// onControl reports whether an element is one that a click means, within the picture.
func (p *pointers) onControl(target js.Value) bool {
	c := target.Call("closest", "button, a[href], input, select, textarea, label, [role=button]")
	return c.Truthy() && !c.Equal(p.element.v) && p.holds(c)
}

// release lets the hand know of a pointer that waited.
func (p *pointers) release(d *press) {
	if d.waits {
		d.waits = false
		p.capture(d.event.ID)
		p.w.loop.Point(d.event)
	}
}

// capture keeps the pointer's events coming when it leaves the picture. A pointer that
// is gone already cannot be kept.
func (p *pointers) capture(id int) {
	_ = try(func() { p.element.v.Call("setPointerCapture", id) })
}

func (p *pointers) pointerMove(e js.Value) {
	d, ok := p.down[e.Get("pointerId").Int()]
	if !ok {
		return // nothing follows from hovering
	}
	h := p.event(hand.Motion, e)
	if d.waits {
		if math.Hypot(h.X-d.event.X, h.Y-d.event.Y) < slack && !h.Loose {
			return
		}
		p.release(d)
	}
	if h.Loose {
		delete(p.down, h.ID)
	}
	p.w.loop.Point(h)
}

func (p *pointers) pointerUp(e js.Value) { p.end(hand.Up, e) }

// pointerLost ends what the browser took over.
func (p *pointers) pointerLost(e js.Value) { p.end(hand.Cancel, e) }

func (p *pointers) end(kind hand.Kind, e js.Value) {
	d, ok := p.down[e.Get("pointerId").Int()]
	if !ok || kind == hand.Up && flag(e, "buttons") && d.event.Type == hand.Mouse {
		return
	}
	delete(p.down, d.event.ID)
	if !d.waits {
		p.w.loop.Point(p.event(kind, e))
	}
}

// giveUp calls back what has begun.
func (p *pointers) giveUp() {
	for id, d := range p.down {
		delete(p.down, id)
		if !d.waits {
			p.w.loop.Point(hand.Event{Kind: hand.Cancel, ID: id, Type: d.event.Type, Time: p.w.clock()})
		}
	}
}

// Heights of a line and a page for wheels that count so, in px: our assumption.
const (
	wheelLine = 16
	wheelPage = 400
)

func (p *pointers) wheel(e js.Value) {
	prevent(e)
	p.measure()
	h := p.event(hand.Wheel, e)
	by := 1.0
	switch e.Get("deltaMode").Int() {
	case 1:
		by = wheelLine
	case 2:
		by = wheelPage
	}
	h.DX, h.DY = e.Get("deltaX").Float()*by, e.Get("deltaY").Float()*by
	p.w.loop.Point(h)
}

// gesture takes a track pad's pinch where the browser tells of it by its scale. Fingers
// on the glass come as pointers; what is told of them beside that is not taken.
func (p *pointers) gesture(e js.Value) {
	prevent(e)
	for _, d := range p.down {
		if d.touches {
			return
		}
	}
	scale := e.Get("scale").Float()
	was := p.pinchedFrom
	p.pinchedFrom = scale
	if e.Get("type").String() != "gesturechange" || was <= 0 || scale <= 0 {
		return
	}
	p.measure()
	h := p.event(hand.Wheel, e)
	h.Control, h.DY = true, hand.WheelFor(scale/was)
	p.w.loop.Point(h)
}
