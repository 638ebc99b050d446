package panel

import "ledgewright/wasm/app"

// hang returns the sections of the panel for the wall.
func hang(app.State) []Node { return nil }
