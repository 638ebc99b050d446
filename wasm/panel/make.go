package panel

import "ledgewright/wasm/app"

// makeJob returns the sections of the panel for the shop.
func makeJob(app.State) []Node { return nil }
