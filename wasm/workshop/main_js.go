// Workshop is the program of the maker's page.
package main

import (
	"runtime/debug"

	"ledgewright/wasm/app"
	"ledgewright/wasm/browser"
	"ledgewright/wasm/panel"
)

// Memory that a page may take before the collector runs more often than it has to, and how
// much of what lives it lets be waste until then. The program of job L lives in a few MB,
// so that at Go's own 100 it would collect at nearly every edit, inside the same task.
const (
	memoryLimit = 48 << 20
	wasteLimit  = 400 // percent
)

func main() {
	debug.SetGCPercent(wasteLimit)
	debug.SetMemoryLimit(memoryLimit)
	var painter panel.Painter
	step, page := app.Step, func(s app.State, most int) (panel.Node, bool) { return painter.Part(&s, most) }
	if t, ok := measured(); ok {
		step, page = t.step(step), t.page(page)
	}
	browser.Run(step, page, painter.Sight)
}
