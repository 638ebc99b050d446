// Workshop is the program of the maker's page.
package main

import (
	"ledgewright/wasm/app"
	"ledgewright/wasm/browser"
	"ledgewright/wasm/panel"
)

func main() {
	var painter panel.Painter
	step, page := app.Step, func(s app.State, most int) (panel.Node, bool) { return painter.Part(&s, most) }
	if t, ok := measured(); ok {
		step, page = t.step(step), t.page(page)
	}
	browser.Run(step, page, painter.Sight)
}
