package engine

import "ledgewright/engine/module"

// A Holding says what is known about whether one module holds.
type Holding struct {
	Module string `json:"module"`
	State  string `json:"state"` // "reckoning" or "not-checked"
}

// States of a Holding. A module is never said to hold for want of a check.
const (
	Reckoning  = "reckoning"
	NotChecked = "not-checked"
)

// holdings starts every module as reckoning, except one that before has finished.
func holdings(modules []module.Result, before *Build, lent []bool) []Holding {
	out := make([]Holding, len(modules))
	for i, m := range modules {
		out[i] = Holding{Module: m.ID, State: Reckoning}
		if lent[i] && before != nil && i < len(before.Holds) && before.Holds[i].Module == m.ID {
			out[i] = before.Holds[i]
		}
	}
	return out
}

// Reckon finishes up to steps modules that are still reckoning and says whether all
// are done. Strength is not computed yet, so every module ends as not checked.
func Reckon(b Build, steps int) (Build, bool) {
	holds := append([]Holding(nil), b.Holds...)
	done := true
	for i := range holds {
		if holds[i].State != Reckoning {
			continue
		}
		if steps <= 0 {
			done = false
			break
		}
		holds[i].State = NotChecked
		steps--
	}
	b.Holds = holds
	b.Verdicts[1] = holdsVerdict(b)
	return b, done
}
