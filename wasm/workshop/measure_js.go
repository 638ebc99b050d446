package main

import (
	"strings"
	"syscall/js"

	"ledgewright/wasm/app"
	"ledgewright/wasm/panel"
)

// A timeline is the browser's own. With ?measure in its address the page tells it how
// long each step of the state takes, and each page that is made of a state; the bench
// asks for that.
type timeline struct{ js.Value }

// measured returns the timeline if the address asks for it.
func measured() (timeline, bool) {
	query := js.Global().Get("location").Get("search").String()
	return timeline{js.Global().Get("performance")}, strings.Contains(query, "measure")
}

func (t timeline) took(what string, from float64) {
	t.Call("measure", what, map[string]any{"start": from, "end": t.now()})
}

func (t timeline) now() float64 { return t.Call("now").Float() }

func (t timeline) step(step func(app.State, app.Event) (app.State, []app.Effect)) func(app.State, app.Event) (app.State, []app.Effect) {
	return func(s app.State, e app.Event) (app.State, []app.Effect) {
		defer t.took("step", t.now())
		return step(s, e)
	}
}

func (t timeline) page(page func(app.State, int) (panel.Node, bool)) func(app.State, int) (panel.Node, bool) {
	return func(s app.State, most int) (panel.Node, bool) {
		defer t.took("page", t.now())
		return page(s, most)
	}
}
