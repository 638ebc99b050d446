// Package edit changes a plan: every change is data, and [Apply] gives a new plan.
//
// An edit stands in a document as one JSON object on one line,
//
//	{"schema":"ledgewright/edit/1","do":"move","arrangement":"a1","module":"m2","dx":16}
//
// with its arguments beside its name. Boards, corners and readings are named by their
// number from 1, everything else by its id. In an edit that begins with "set-" only the
// members that are named change; null takes an optional member away.
//
// Apply copies what it changes and shares the rest, so that a module that an edit did
// not touch keeps its storage and is known to be equal without being read. Ids come from
// the plan's counters and are never given twice.
package edit

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
)

// Schema names the format of an edit.
const Schema = "ledgewright/edit/1"

// An Edit is one change, as data. Its kinds are the types of this package that have a
// method Do.
type Edit interface {
	// Do returns the edit's name in a document.
	Do() string
	// apply returns the changed plan and the edit's name, or an error and any plan.
	apply(plan.Plan) (plan.Plan, Name, error)
}

// A Name says what an edit did, in words under "edit.<name>": "move {module}".
type Name struct {
	Key  string
	Args []words.Arg
}

// Apply returns p with e done to it, and what to call that. The error is an [*Error],
// and p is then returned as it was. Apply changes nothing that p reaches.
func Apply(p plan.Plan, e Edit) (plan.Plan, Name, error) {
	if p.Newer() {
		return p, Name{}, named(e.Do(), refuse("newer", "plan"))
	}
	next, name, err := e.apply(p)
	if err == nil {
		err = tooMuch(next)
	}
	if err != nil {
		return p, Name{}, named(e.Do(), err)
	}
	return next, name, nil
}

// did is the Name of e.
func did(e Edit, args ...words.Arg) Name { return Name{Key: "edit." + e.Do(), Args: args} }

// doing is the Name of e in a variant of its words.
func doing(e Edit, variant string, args ...words.Arg) Name {
	return Name{Key: "edit." + e.Do() + "-" + variant, Args: args}
}
