package browser

import (
	"slices"

	"ledgewright/wasm/app"
	"ledgewright/wasm/panel"
)

// A Signal is what the document tells of an element of the page.
type Signal struct {
	On   string // "click", "input", "change", "submit", "keydown", "cancel", "close", "pointerenter", "pointerleave", "focusin", "focusout"
	Mark int    // of the nearest marked element at or above the one that is meant

	// Of keydown only.
	Key                 string
	Control, Shift, Alt bool
}

// An Answer is what comes of a signal.
type Answer struct {
	Event   app.Event // nil: nothing is sent
	Prevent bool      // the browser must not do what it would by itself
}

// Hear returns the event that a signal means: that of the nearest node at or above the
// element that has a handler for it, with the control's text in it.
//
//   - Of "input" and "change": [app.TypedInto] and [app.Entered] take the text of the
//     control, a checkbox "true" or "false". Events that say what is chosen, and say
//     nothing yet, take it too: Set, ShowArrangement, ShowWall, Open, Go none.
//   - Of "submit": Entered takes the form's first text field, [app.NewJob] those named
//     width and height, [app.Opened] the textarea.
//   - Of "keydown": [app.StepField] is sent by the arrow keys up and down, and ten times
//     as large by the page keys; [app.Key] by every key, which it takes; Dismiss by
//     Escape; every other event by Enter and the space bar.
//   - The Enter key in a field finishes it.
//   - "cancel" and "close" of a dialog without such a handler are Dismiss.
//   - "pointerenter", "pointerleave", "focusin" and "focusout" are heard by the very
//     element only: what lies in it is entered and left by the way.
func (t *Tree) Hear(s Signal) Answer {
	o := t.marked[s.Mark]
	if o == nil {
		return Answer{}
	}
	switch s.On {
	case "keydown":
		return t.key(o, s)
	case "pointerenter", "pointerleave", "focusin", "focusout":
		if at, e := handler(o, s.On); at == o {
			return Answer{Event: e}
		}
		return Answer{}
	case "input":
		o.said, t.stir = typing, true
	case "change":
		t.settle(o)
	}
	at, e := handler(o, s.On)
	if e == nil {
		return t.unheard(o, s)
	}
	if k, ok := e.(app.PressKey); ok {
		return t.put(k)
	}
	switch s.On {
	case "click":
		if at != o && o.sort.isControl() {
			return Answer{} // a control in a row is not the row
		}
		return Answer{Event: e, Prevent: at.is.Tag == "a"}
	case "input", "change":
		return Answer{Event: filled(e, o)}
	case "submit":
		at.each(t.settle)
		return Answer{Event: sent(e, at), Prevent: true}
	case "cancel", "close":
		t.settle(at)
	}
	return Answer{Event: e, Prevent: true}
}

// unheard is the answer to a signal without a handler. No form of the page is ever
// sent anywhere, and no dialog closes unless the page says so.
func (t *Tree) unheard(o *node, s Signal) Answer {
	switch {
	case s.On == "submit":
		return Answer{Prevent: true}
	case (s.On == "cancel" || s.On == "close") && o.sort == dialog && isOpen(o.is):
		if s.On == "close" {
			t.settle(o)
		}
		return Answer{Event: app.Dismiss{}, Prevent: true}
	}
	return Answer{}
}

// KeepsFocus reports whether pressing an element leaves the focus where it is: the keys
// of the page's own strip go into the field that is being typed in.
func (t *Tree) KeepsFocus(mark int) bool {
	_, e := handler(t.marked[mark], "click")
	_, key := e.(app.PressKey)
	return key
}

// put puts a key of the page's strip into its field, and answers as to any typing there.
func (t *Tree) put(k app.PressKey) Answer {
	o := t.top.find(func(o *node) bool { return o.is.Key == k.Into && o.sort == textControl })
	if o == nil {
		return Answer{}
	}
	o.el.Insert(k.Key)
	return t.Hear(Signal{On: "input", Mark: o.mark})
}

// settle says that what a person did to a control is finished. Of the radio buttons of
// a name the browser has changed others too.
func (t *Tree) settle(o *node) {
	if !o.sort.isControl() && o.sort != dialog {
		return
	}
	o.said, t.stir = settled, true
	if o.sort != radioControl {
		return
	}
	name, _ := attr(o.is.Attrs, "name")
	t.top.each(func(other *node) {
		if of, _ := attr(other.is.Attrs, "name"); other.sort == radioControl && of == name {
			other.said, t.stir = settled, true
		}
	})
}

// each calls do for every node below o.
func (o *node) each(do func(*node)) {
	for _, k := range o.kids {
		do(k)
		k.each(do)
	}
}

// handler returns the nearest node at or above o that sends an event on a signal, and
// the event.
func handler(o *node, on string) (*node, app.Event) {
	for ; o != nil; o = o.up {
		for _, h := range o.is.On {
			if h.On == on {
				return o, h.Event
			}
		}
	}
	return nil, nil
}

// text returns what a control says.
func (o *node) text() string {
	switch {
	case o.sort != tickControl:
		return o.el.Value()
	case o.el.Checked():
		return "true"
	}
	return "false"
}

// filled puts what a control says into the event that takes it.
func filled(e app.Event, control *node) app.Event {
	if control.sort == plain {
		return e
	}
	switch e := e.(type) {
	case app.TypedInto:
		e.Text = control.text()
		return e
	case app.Entered:
		e.Text = control.text()
		return e
	case app.Opened:
		e.Text = control.text()
		return e
	case app.PullApart:
		e.Text = control.text()
		return e
	case app.Set:
		e.Value = orText(e.Value, control)
		return e
	case app.ShowArrangement:
		e.ID = orText(e.ID, control)
		return e
	case app.ShowWall:
		e.ID = orText(e.ID, control)
		return e
	}
	return e
}

func orText(s string, control *node) string {
	if s != "" {
		return s
	}
	return control.text()
}

// sent puts what the fields of a form say into the event that takes it.
func sent(e app.Event, form *node) app.Event {
	switch e := e.(type) {
	case app.Entered:
		e.Text = form.field(isField)
		return e
	case app.TypedInto:
		e.Text = form.field(isField)
		return e
	case app.NewJob:
		e.Width = form.field(named("width"))
		e.Height = form.field(named("height"))
		return e
	case app.Opened:
		area := func(n panel.Node) bool { return n.Tag == "textarea" }
		if form.find(func(o *node) bool { return area(o.is) }) == nil {
			area = isField
		}
		e.Text = form.field(area)
		return e
	}
	return e
}

func isField(n panel.Node) bool { return sortOf(n) == textControl }

func named(name string) func(panel.Node) bool {
	return func(n panel.Node) bool {
		has, _ := attr(n.Attrs, "name")
		return isField(n) && has == name
	}
}

// field returns the text of the first field that is meant.
func (o *node) field(meant func(panel.Node) bool) string {
	if f := o.find(func(o *node) bool { return meant(o.is) }); f != nil {
		return f.el.Value()
	}
	return ""
}

// steps are the keys that change a figure, in its steps.
var stepKeys = [...]struct {
	key string
	by  int
}{{"ArrowUp", 1}, {"ArrowDown", -1}, {"PageUp", 10}, {"PageDown", -10}}

// key returns what a key means on a node of the page.
func (t *Tree) key(o *node, s Signal) Answer {
	if s.Key == "Enter" && o.sort == textControl && o.is.Tag == "input" {
		if a := t.enter(o); a.Prevent {
			return a
		}
	}
	for at := o; at != nil; at = at.up {
		for _, h := range at.is.On {
			if h.On != "keydown" {
				continue
			}
			if e := pressed(h.Event, s, at == o); e != nil {
				return Answer{Event: e, Prevent: true}
			}
		}
	}
	return Answer{}
}

// enter finishes a field, if leaving it would. In a form that is sent by its own rule
// the browser does what it would.
func (t *Tree) enter(o *node) Answer {
	if at, _ := handler(o, "submit"); at != nil {
		return Answer{}
	}
	at, e := handler(o, "change")
	if e == nil {
		return Answer{}
	}
	if _, takes := e.(app.Entered); !takes || at != o && !slices.Contains([]string{"label", "div", "span"}, at.is.Tag) {
		return Answer{}
	}
	t.settle(o)
	return Answer{Event: filled(e, o), Prevent: true}
}

// pressed returns the event that a key sends, nil for none. Own says that the handler
// stands on the very element.
func pressed(e app.Event, s Signal, own bool) app.Event {
	switch e := e.(type) {
	case app.Key:
		e.Name, e.Control, e.Shift, e.Alt = s.Key, s.Control, s.Shift, s.Alt
		return e
	case app.StepField:
		for _, k := range stepKeys {
			if k.key == s.Key && !s.Control && !s.Alt && !s.Shift {
				e.By = k.by
				return e
			}
		}
		return nil
	case app.Dismiss:
		if s.Key == "Escape" {
			return e
		}
		return nil
	}
	if own && (s.Key == "Enter" || s.Key == " ") {
		return e
	}
	return nil
}
