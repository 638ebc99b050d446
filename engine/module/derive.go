package module

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
)

// Derive works a module out. It never fails: what cannot be made is a finding, and a
// module too broken to have boards has none.
func Derive(m plan.Module, s shop.Profile) Result { return Result{ID: m.ID} }
