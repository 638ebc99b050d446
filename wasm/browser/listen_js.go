package browser

import (
	"strconv"
	"strings"
	"syscall/js"

	"ledgewright/wasm/app"
)

// listen hears what happens to the page: one listener for each kind of event.
func (w *window) listen() {
	for _, kind := range []string{"click", "input", "change", "submit"} {
		w.on(w.doc.Value, kind, func(e js.Value) { w.heard(kind, e) })
	}
	for _, kind := range []string{"cancel", "close"} { // these do not rise
		w.on(w.doc.Value, kind, func(e js.Value) { w.heard(kind, e) }, true)
	}
	for _, kind := range []string{"pointerenter", "pointerleave"} { // nor do these
		w.on(w.doc.Value, kind, func(e js.Value) { w.met(kind, e) }, true)
	}
	for _, kind := range []string{"focusin", "focusout"} {
		w.on(w.doc.Value, kind, func(e js.Value) { w.met(kind, e) })
	}
	w.on(w.doc.Value, "keydown", w.key)
	w.on(w.doc.Value, "mousedown", func(e js.Value) {
		if w.loop.Tree.KeepsFocus(nearest(e.Get("target"))) {
			prevent(e)
		}
	})
	w.on(w.doc.Value, "visibilitychange", func(js.Value) { w.seen() })
	w.on(w.Value, "beforeprint", func(js.Value) { w.pane.prints() })
	w.on(w.Value, "afterprint", func(js.Value) { w.pane.printed() })
	w.on(w.Value, "hashchange", func(js.Value) { w.hashed() })
	w.files.listen()
}

// heard passes an event of an element on.
func (w *window) heard(kind string, e js.Value) {
	target := e.Get("target")
	if kind == "change" && target.Get("type").Equal(js.ValueOf("file")) {
		w.files.chosen(target)
		return
	}
	if kind == "click" && (w.elsewhere(e) || labels(target)) {
		return
	}
	w.answer(e, w.loop.Hear(Signal{On: kind, Mark: nearest(target)}))
}

// met passes on that an element is pointed at or has the focus, or no longer.
func (w *window) met(kind string, e js.Value) {
	if mark := markOf(e.Get("target")); mark != 0 {
		w.answer(e, w.loop.Hear(Signal{On: kind, Mark: mark}))
	}
}

// elsewhere reports whether a click is meant to open a link in another tab.
func (w *window) elsewhere(e js.Value) bool {
	return (flag(e, "ctrlKey") || flag(e, "metaKey")) && e.Get("target").Call("closest", "a[href]").Truthy()
}

// labels reports whether a click is on the words of a control: the control gets a click
// of its own.
func labels(target js.Value) bool {
	label := target.Call("closest", "label")
	return label.Truthy() && label.Get("control").Truthy() && !label.Get("control").Equal(target)
}

func flag(e js.Value, name string) bool { return e.Get(name).Truthy() }

func (w *window) answer(e js.Value, a Answer) {
	if a.Prevent {
		e.Call("preventDefault")
	}
	if a.Event != nil {
		w.loop.Send(a.Event)
	}
}

// key passes a key on: to the element that has the focus, and else to the picture.
func (w *window) key(e js.Value) {
	if flag(e, "isComposing") || flag(e, "defaultPrevented") {
		return
	}
	s := Signal{
		On: "keydown", Mark: nearest(e.Get("target")), Key: e.Get("key").String(),
		Control: flag(e, "ctrlKey") || flag(e, "metaKey"), Shift: flag(e, "shiftKey"), Alt: flag(e, "altKey"),
	}
	if a := w.loop.Hear(s); a.Event != nil {
		w.answer(e, a)
		return
	}
	inField, inPicture := isTyped(e.Get("target")), w.hand.holds(e.Get("target"))
	switch {
	case s.Key == "Escape" && inField, !s.Control && !inPicture && s.Key != "Escape":
		return
	case taken(s, inField):
		e.Call("preventDefault")
	}
	w.loop.Send(app.Key{Name: s.Key, Control: s.Control, Shift: s.Shift, Alt: s.Alt, InField: inField})
}

// taken reports whether the page takes a key from the browser, which would scroll, or
// undo what was typed elsewhere.
func taken(s Signal, inField bool) bool {
	if inField {
		return false
	}
	if s.Control {
		return strings.EqualFold(s.Key, "z") || strings.EqualFold(s.Key, "y")
	}
	return strings.HasPrefix(s.Key, "Arrow") || s.Key == "Delete" || s.Key == "Backspace"
}

// isTyped reports whether text is typed in an element.
func isTyped(target js.Value) bool {
	if !target.Truthy() || target.Get("matches").IsUndefined() {
		return false
	}
	return target.Call("matches", "textarea, select, [contenteditable], input:not([type=checkbox], [type=radio], [type=button], [type=submit], [type=file])").Bool()
}

// seen stores the job at once when the page is hidden: it may never be seen again.
func (w *window) seen() {
	if w.doc.Get("visibilityState").String() != "hidden" {
		w.loop.Send(app.Clock{Now: w.now(), Today: w.today()})
		return
	}
	w.hand.giveUp()
	w.loop.Send(app.Flush())
}

// hashed opens what came into the address. A link to a place on the page is not a plan.
func (w *window) hashed() {
	fragment := w.fragment()
	if fragment == "" || w.doc.Call("getElementById", fragment).Truthy() {
		return
	}
	w.loop.Send(app.Opened{Text: fragment})
	w.hash.set(w, "")
}

// keyboardRoom is the least distance of the field in use from the keyboard, in px.
const keyboardRoom = 16

// watch follows the part of the window that is not covered by a keyboard.
func (w *window) watch() {
	view := w.Get("visualViewport")
	if !view.Truthy() {
		return
	}
	style := w.doc.Get("documentElement").Get("style")
	follow := func(js.Value) {
		height := view.Get("height").Float()
		w.tell("--vvh", strconv.FormatFloat(height, 'f', 1, 64)+"px", func(s string) {
			style.Call("setProperty", "--vvh", s)
			w.uncover(view.Get("offsetTop").Float() + height - keyboardRoom)
		})
	}
	follow(js.Null())
	w.on(view, "resize", follow)
}

// uncover brings the field in use above a height of the window.
func (w *window) uncover(height float64) {
	field := w.doc.Get("activeElement")
	if isTyped(field) && field.Call("getBoundingClientRect").Get("bottom").Float() > height {
		field.Call("scrollIntoView", map[string]any{"block": "center"})
	}
}
