package panel

import "ledgewright/wasm/app"

// moduleEditor returns the sections in which the module that is chosen is changed.
func moduleEditor(app.State) []Node { return nil }
