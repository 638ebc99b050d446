//go:build js

// Pane is a page's program with nothing but a stage in it, for the tests of what stands
// between the two. What it can do stands on the window as "pane".
package main

import (
	"syscall/js"

	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/testdata/jobs"
	"ledgewright/wasm/browser"
)

func main() {
	window := js.Global()
	pane := window.Get("Object").New()
	window.Set("pane", pane)
	said := window.Get("Array").New()
	pane.Set("said", said)
	s := browser.NewStage(window.Get("document").Get("body"), func(shown bool) { said.Call("push", shown) })
	one, large := wall(jobs.One()), wall(jobs.M(1))
	alive := 0
	on := func(name string, do func(args []js.Value) any) {
		pane.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any { return do(args) }))
	}
	on("alive", func([]js.Value) any { alive++; return alive })
	on("choose", func(args []js.Value) any { s.Choose(browser.Want(args[0].String())); return nil })
	on("shown", func([]js.Value) any { return s.Shown() })
	on("why", func([]js.Value) any { return s.Why() })
	on("draw", func(args []js.Value) any {
		d := &one
		if args[0].String() == "large" {
			d = &large
		}
		s.Draw(d, seen(args[1:]))
		return nil
	})
	on("look", func(args []js.Value) any { s.Look(seen(args)); return nil })
	on("pack", func(args []js.Value) any { return packed(&large, args[0].Int()) })
	select {}
}

func seen(args []js.Value) browser.View {
	return browser.View{Scale: args[0].Float(), X: args[1].Float(), Y: args[2].Float()}
}

func wall(p plan.Plan) drawing.Drawing {
	b := engine.Derive(p, nil)
	w, _ := p.Wall(b.Arrangements[0].Wall)
	return view.Wall(w, b.Arrangements[0], b.Modules, view.Options{Style: b.Style(), Shallow: true, ShowStuds: true, ShowMarks: true, ShowSizes: true})
}

// packed returns the milliseconds that packing and copying a drawing take, the mean of n.
func packed(d *drawing.Drawing, n int) float64 {
	var k drawing.Packer
	b := k.Append(nil, d)
	to := js.Global().Get("Uint8Array").New(len(b))
	clock := js.Global().Get("performance")
	begun := clock.Call("now").Float()
	for range n {
		b = k.Append(b[:0], d)
		js.CopyBytesToJS(to, b)
	}
	return (clock.Call("now").Float() - begun) / float64(n)
}
