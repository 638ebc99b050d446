package browser

import (
	"strings"
	"syscall/js"

	"ledgewright/wasm/app"
)

// largestFile is how much of a file is read, in bytes: more than any plan may have, so
// that what is too large is refused by its reader, in its words.
const largestFile = 4 << 20

// files come in and go out.
type files struct {
	w       *window
	chooser js.Value
}

// listen takes files that are dropped or pasted anywhere on the page.
func (f *files) listen() {
	doc := f.w.doc.Value
	f.w.on(doc, "dragover", func(e js.Value) {
		if !isTyped(e.Get("target")) {
			prevent(e)
		}
	})
	f.w.on(doc, "drop", func(e js.Value) {
		if !isTyped(e.Get("target")) {
			prevent(e)
			f.take(e.Get("dataTransfer"))
		}
	})
	f.w.on(doc, "paste", func(e js.Value) {
		if !isTyped(e.Get("target")) {
			f.take(e.Get("clipboardData"))
		}
	})
}

// take opens the first file, or else the text, of what was dropped or pasted.
func (f *files) take(data js.Value) {
	if !data.Truthy() {
		return
	}
	if list := data.Get("files"); list.Length() > 0 {
		f.open(list.Index(0))
		return
	}
	if text := strings.TrimSpace(data.Call("getData", "text/plain").String()); text != "" {
		f.w.loop.Send(app.Opened{Text: text})
	}
}

// pick opens the browser's file chooser.
func (f *files) pick() {
	if !f.chooser.Truthy() {
		f.chooser = f.w.doc.Call("createElement", "input")
		f.chooser.Set("type", "file")
		f.chooser.Set("accept", ".json,.txt,application/json,text/plain")
		f.chooser.Set("hidden", true)
		f.w.doc.Get("body").Call("append", f.chooser) // some browsers open none that is not in the page
	}
	f.chooser.Call("click")
}

// chosen opens the file of a chooser.
func (f *files) chosen(input js.Value) {
	list := input.Get("files")
	if list.Length() > 0 {
		f.open(list.Index(0))
	}
	input.Set("value", "") // so that the same file can be chosen again
}

func (f *files) open(file js.Value) {
	name := file.Get("name").String()
	f.w.then(file.Call("slice", 0, largestFile).Call("text"), func(text js.Value) {
		f.w.loop.Send(app.Opened{Name: name, Text: text.String()})
	}, func(string) {
		f.done("open", word("browser.file-unread"))
	})
}

func (f *files) done(what, err string) {
	f.w.loop.Send(app.Clock{Now: f.w.now(), Today: f.w.today()})
	f.w.loop.Send(app.Done{What: what, Err: err})
}

// save hands a file or a link on.
func (f *files) save(s app.Save) {
	if s.What == "link" {
		at := f.w.Get("location")
		s.Text = at.Get("origin").String() + at.Get("pathname").String() + "#" + s.Text
	}
	switch {
	case s.By == "share":
		f.share(s)
	case s.By == "copy" || s.Name == "":
		f.copy(s)
	case f.w.Get("showSaveFilePicker").Truthy():
		f.saveAs(s)
	default:
		f.download(s)
	}
}

// saveAs asks where to, where the browser can. Who closes the chooser wants no file.
func (f *files) saveAs(s app.Save) {
	failed := func(why string) {
		if why != "AbortError" {
			f.download(s)
		}
	}
	var asked js.Value
	if why := try(func() {
		asked = f.w.Call("showSaveFilePicker", map[string]any{"suggestedName": s.Name})
	}); why != "" {
		failed(why)
		return
	}
	f.w.then(asked, func(handle js.Value) {
		f.w.then(handle.Call("createWritable"), func(out js.Value) {
			out.Call("write", s.Text)
			f.w.then(out.Call("close"), func(js.Value) { f.done(s.What, "") }, failed)
		}, failed)
	}, failed)
}

func (f *files) file(s app.Save, name, kind string) js.Value {
	return f.w.Get("File").New([]any{s.Text}, name, map[string]any{"type": kind})
}

// download lets the browser put the file where it puts files.
func (f *files) download(s app.Save) {
	url := f.w.Get("URL").Call("createObjectURL", f.file(s, s.Name, s.Type))
	a := f.w.doc.Call("createElement", "a")
	a.Set("href", url)
	a.Set("download", s.Name)
	a.Call("click")
	f.w.timer("download "+url.String(), 60_000, func() { f.w.Get("URL").Call("revokeObjectURL", url) })
	f.done(s.What, "")
}

// share opens the system's sheet, else copies, else shows the text.
func (f *files) share(s app.Save) {
	what, ok := f.shareable(s)
	if !ok {
		f.copy(s)
		return
	}
	f.w.then(f.w.Get("navigator").Call("share", what), func(js.Value) { f.done(s.What, "") }, func(why string) {
		if why != "AbortError" { // who closes the sheet wants nothing shared
			f.copy(s)
		}
	})
}

// shareable returns what the system's sheet takes of a file. Many sheets refuse JSON
// and take plain text.
func (f *files) shareable(s app.Save) (js.Value, bool) {
	n := f.w.Get("navigator")
	if !n.Get("share").Truthy() {
		return js.Value{}, false
	}
	if s.Name == "" {
		return js.ValueOf(map[string]any{"url": s.Text}), true
	}
	if !n.Get("canShare").Truthy() {
		return js.Value{}, false
	}
	for _, file := range []js.Value{f.file(s, s.Name, s.Type), f.file(s, s.Name+".txt", "text/plain")} {
		what := js.ValueOf(map[string]any{"files": []any{file}})
		if n.Call("canShare", what).Bool() {
			return what, true
		}
	}
	return js.Value{}, false
}

// copy puts the text on the clipboard, or shows it to be copied by hand.
func (f *files) copy(s app.Save) {
	board := f.w.Get("navigator").Get("clipboard")
	if !board.Truthy() {
		f.showText(s.Text)
		return
	}
	f.w.then(board.Call("writeText", s.Text), func(js.Value) { f.done(s.What, "") }, func(string) { f.showText(s.Text) })
}

// showText shows a text, chosen, to be copied by hand.
func (f *files) showText(text string) {
	dialog, label := f.w.plain("dialog", ""), f.w.plain("label", word("browser.copy-by-hand"))
	area, close := f.w.plain("textarea", text), f.w.plain("button", word("browser.close"))
	area.Set("readOnly", true)
	close.Set("type", "button")
	close.Set("className", "btn")
	label.Call("append", area)
	dialog.Set("className", "by-hand")
	dialog.Call("append", label, close)
	f.w.doc.Get("body").Call("append", dialog)
	dialog.Call("showModal")
	area.Call("select")
	f.w.once(close, map[string]func(js.Value){"click": func(js.Value) { dialog.Call("close") }})
	f.w.once(dialog, map[string]func(js.Value){"close": func(js.Value) { dialog.Call("remove") }})
}
