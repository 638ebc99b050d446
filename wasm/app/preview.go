package app

import (
	"ledgewright/engine"
	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
)

// Shown returns the plan and the build that the picture shows: what is being dragged,
// typed or tried, or else what is decided.
func (s *State) Shown() (plan.Plan, engine.Build) {
	if s.Preview.Shown {
		return s.Preview.Plan, s.Preview.Build
	}
	return s.Plan, s.Build
}

// try shows what an edit, written as in a document, would do, or nothing any more. What
// is in the hand or being typed is not taken from the picture.
func try(s State, line string) State {
	if s.Drag.Active || s.Typing.Open {
		return s
	}
	s.Preview = Preview{}
	if line == "" {
		return s
	}
	if e, err := edit.Decode([]byte(line)); err == nil {
		s = preview(s, e)
		s.Preview.Tried = s.Preview.Shown
	}
	return s
}

// preview shows what edits would do, and says in a sentence what they would cause.
func preview(s State, edits ...edit.Edit) State {
	p := s.Plan
	for _, e := range edits { // not applyAll: what is only looked at is not written down
		next, _, err := edit.Apply(p, e)
		if err != nil {
			s.Typing.Causes = s.why(err)
			return s
		}
		p = next
	}
	before := &s.Build
	if s.Preview.Shown {
		before = &s.Preview.Build
	}
	s.Preview = Preview{Shown: true, Plan: p, Build: engine.Derive(p, before)}
	if s.Typing.Open { // only the strip shows it; a drag has no time for sentences
		s.Typing.Causes = changed(s.Build, s.Preview.Build)
	}
	return s
}

// changed says what the new build finds that the old one did not, worst first, or
// what it puts right; nothing when neither.
func changed(was, now engine.Build) string {
	style := now.Style()
	if f, ok := fresh(now.Findings, was.Findings); ok {
		return engine.Say(f, style)
	}
	if v := now.Verdicts[0]; v.Severity < was.Verdicts[0].Severity {
		return engine.SayVerdict(v, style)
	}
	return ""
}

// fresh returns the first finding of a that b does not have at the same place.
func fresh(a, b []finding.Finding) (finding.Finding, bool) {
	type mark struct {
		key   string
		place finding.Place
	}
	old := map[mark]bool{}
	for _, f := range b {
		old[mark{f.Kind.Key, f.Place}] = true
	}
	for _, f := range a {
		if f.Kind.Severity > finding.Note && !old[mark{f.Kind.Key, f.Place}] {
			return f, true
		}
	}
	return finding.Finding{}, false
}
