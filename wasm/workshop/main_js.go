// Workshop is the program of the maker's page.
package main

import (
	"ledgewright/wasm/app"
	"ledgewright/wasm/browser"
	"ledgewright/wasm/panel"
)

func main() { browser.Run(app.Step, new(panel.Painter).Page) }
