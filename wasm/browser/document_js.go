package browser

import "syscall/js"

const svgSpace = "http://www.w3.org/2000/svg"

// markName is the property of an element that holds its mark.
const markName = "ledgewrightMark"

// A document is the browser's. It keeps the functions that are called most, free of
// their elements, and the names that recur, so that neither crosses over each time.
type document struct {
	js.Value
	create, createNS, text                       js.Value
	setAttr, removeAttr, insert, remove, setProp js.Value
	names                                        map[string]js.Value
}

func newDocument() *document {
	d := &document{Value: js.Global().Get("document"), names: map[string]js.Value{}}
	d.create = free("Document", "createElement")
	d.createNS = free("Document", "createElementNS")
	d.text = free("Document", "createTextNode")
	d.setAttr = free("Element", "setAttribute")
	d.removeAttr = free("Element", "removeAttribute")
	d.insert = free("Node", "insertBefore")
	d.remove = free("Node", "removeChild")
	d.setProp = free("CSSStyleDeclaration", "setProperty")
	return d
}

// free returns a method of a class as a function that takes the object first.
func free(class, method string) js.Value {
	f := js.Global().Get(class).Get("prototype").Get(method)
	return js.Global().Get("Function").Get("prototype").Get("call").Call("bind", f)
}

// name returns a recurring name as the browser's own string.
func (d *document) name(s string) js.Value {
	v, ok := d.names[s]
	if !ok {
		v = js.ValueOf(s)
		d.names[s] = v
	}
	return v
}

func (d *document) Create(tag string, svg bool) Element {
	if svg {
		return &element{d, d.createNS.Invoke(d.Value, d.name(svgSpace), d.name(tag))}
	}
	return &element{d, d.create.Invoke(d.Value, d.name(tag))}
}

func (d *document) Text(s string) Element { return &element{d, d.text.Invoke(d.Value, s)} }

func (d *document) Active() int { return markOf(d.Get("activeElement")) }

// markOf returns the mark of an element, 0 for none.
func markOf(v js.Value) int {
	if v.IsNull() || v.IsUndefined() {
		return 0
	}
	if m := v.Get(markName); m.Type() == js.TypeNumber {
		return m.Int()
	}
	return 0
}

// nearest returns the mark of the nearest marked element at or above v.
func nearest(v js.Value) int {
	for v.Truthy() {
		if m := markOf(v); m != 0 {
			return m
		}
		v = v.Get("parentNode")
	}
	return 0
}

// An element of the browser's document.
type element struct {
	d *document
	v js.Value
}

func (e *element) SetText(s string)           { e.v.Set("data", s) }
func (e *element) SetAttr(name, value string) { e.d.setAttr.Invoke(e.v, e.d.name(name), value) }
func (e *element) RemoveAttr(name string)     { e.d.removeAttr.Invoke(e.v, e.d.name(name)) }

func (e *element) SetProp(name, value string) {
	e.d.setProp.Invoke(e.v.Get("style"), e.d.name(name), value)
}

func (e *element) InsertBefore(kid, before Element) {
	at := js.Null()
	if before != nil {
		at = before.(*element).v
	}
	e.d.insert.Invoke(e.v, kid.(*element).v, at)
}

func (e *element) Remove() {
	if up := e.v.Get("parentNode"); up.Truthy() {
		e.d.remove.Invoke(up, e.v)
	}
}

func (e *element) Mark(mark int)     { e.v.Set(markName, mark) }
func (e *element) Value() string     { return e.v.Get("value").String() }
func (e *element) SetValue(s string) { e.v.Set("value", s) }
func (e *element) Insert(s string) {
	e.v.Call("setRangeText", s, e.v.Get("selectionStart"), e.v.Get("selectionEnd"), "end")
}
func (e *element) Checked() bool      { return e.v.Get("checked").Bool() }
func (e *element) SetChecked(on bool) { e.v.Set("checked", on) }
func (e *element) Select(option int)  { e.v.Set("selectedIndex", option) }

func (e *element) ShowModal() {
	if !e.v.Get("open").Bool() {
		e.v.Call("showModal")
	}
}

func (e *element) Close() { e.v.Call("close") }

// Focus gives the focus to the element, also to one that cannot be reached by the Tab
// key, such as a heading.
func (e *element) Focus() {
	e.v.Call("focus")
	if !e.d.Get("activeElement").Equal(e.v) {
		e.v.Set("tabIndex", -1)
		e.v.Call("focus")
	}
}

func (e *element) ScrollIntoView() {
	e.v.Call("scrollIntoView", map[string]any{"block": "nearest", "inline": "nearest"})
}
