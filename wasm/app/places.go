package app

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/wall"
)

// Suggest asks for places at which a module fits on the wall in view.
type Suggest struct{ Module string }

func (Suggest) event() {}

// Places are poses in which a module fits, nearest first. They were found for one
// revision of the plan and mean nothing in another.
type Places struct {
	Asked    bool
	Module   string
	Revision int
	Poses    []plan.Pose
}

// mostPlaces is how many places are shown.
const mostPlaces = 3

// suggest finds places for a module.
func suggest(s State, id string) State {
	a, w, ok := s.arranged()
	if !ok {
		return s
	}
	s.Places = Places{Asked: true, Module: id, Revision: s.Store.Revision,
		Poses: wall.Places(w, a, s.Build.Modules, id, s.Plan.Shop, s.Plan.Units, mostPlaces)}
	return s
}

// Suggested returns the places that were found for a module, and whether they were
// asked for and still mean something.
func (s *State) Suggested(id string) ([]plan.Pose, bool) {
	p := s.Places
	if !p.Asked || p.Module != id || p.Revision != s.Store.Revision {
		return nil, false
	}
	return p.Poses, true
}

// added returns the id of the module that a plan has and the one before had not.
func added(before, after plan.Plan) string {
	if len(after.Modules) != len(before.Modules)+1 {
		return ""
	}
	for _, m := range after.Modules {
		if _, ok := before.Module(m.ID); !ok {
			return m.ID
		}
	}
	return ""
}
