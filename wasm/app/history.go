package app

import (
	"ledgewright/engine"
	"ledgewright/engine/edit"
	"ledgewright/engine/words"
)

// mostSteps bounds the steps that can be undone.
const mostSteps = 400

// commit makes edits as one step. An edit that is refused leaves the state as it was
// and says why.
func commit(s State, edits ...edit.Edit) (State, []Effect) {
	next, name, lines, err := applyAll(s, edits)
	if err != nil {
		return refuse(s, err)
	}
	past := Past{Plan: s.Plan, Name: name, Lines: lines}
	s.History.Past = append(s.History.Past[:len(s.History.Past):len(s.History.Past)], past)
	if extra := len(s.History.Past) - mostSteps; extra > 0 {
		s.History.Past = s.History.Past[extra:]
	}
	s.History.Future = nil
	s.Plan = next.Plan
	if id := added(past.Plan, s.Plan); id != "" {
		s.Chosen, s.At = []string{id}, Thing{} // what was just made is what is worked on
	}
	return settled(lookedAt(s, len(past.Plan.Walls)))
}

// press is commit for edits that a button makes: what was done is said, with the way
// back beside it.
func press(s State, edits ...edit.Edit) (State, []Effect) {
	was := s.Store.Revision
	s, effects := commit(s, edits...)
	if s.Store.Revision == was {
		return s, effects // refused
	}
	done := s.History.Past[len(s.History.Past)-1].Name
	s, effects = told(s, effects, words.Text("page.did", []words.Arg{words.Name("what", s.Called(done))}, s.Plan.Style()))
	s.Toast.Undo = true
	return s, effects
}

// lookedAt has a wall in view that a step has made.
func lookedAt(s State, walls int) State {
	if n := len(s.Plan.Walls); n > walls {
		s.Wall = s.Plan.Walls[n-1].ID
		s.Arrangement, s.Camera.Fitted = firstOn(s.Plan, s.Wall), true
	}
	return s
}

// applyAll applies edits one after the other; the name is that of the first.
func applyAll(s State, edits []edit.Edit) (next State, name edit.Name, lines []string, err error) {
	for i, e := range edits {
		p, n, err := edit.Apply(s.Plan, e)
		if err != nil {
			return s, name, nil, err
		}
		if i == 0 {
			name = n
		}
		s.Plan = p
		lines = append(lines, string(edit.Encode(e)))
	}
	return s, name, lines, nil
}

// settled works the new plan out and sees to it that it is kept.
func settled(s State) (State, []Effect) {
	s.Preview, s.Drag = Preview{}, Drag{}
	s.Build = engine.DeriveLive(s.Plan, &s.Build)
	s.Store.Revision++
	s, rests := stirred(consistent(s))
	return s, []Effect{Again{}, After{Name: "keep", Ms: keepAfter, Event: keepNow{}}, rests}
}

// undo takes the last step back.
func undo(s State) (State, []Effect) {
	n := len(s.History.Past)
	if n == 0 {
		return s, nil
	}
	last := s.History.Past[n-1]
	s.History.Past = s.History.Past[: n-1 : n-1]
	s.History.Future = append(s.History.Future[:len(s.History.Future):len(s.History.Future)], Past{Plan: s.Plan, Name: last.Name, Lines: last.Lines})
	s.Plan = last.Plan
	s, effects := settled(s)
	return told(s, effects, words.Text("page.undone", []words.Arg{words.Name("what", s.Called(last.Name))}, s.Plan.Style()))
}

// redo makes the last undone step again.
func redo(s State) (State, []Effect) {
	n := len(s.History.Future)
	if n == 0 {
		return s, nil
	}
	last := s.History.Future[n-1]
	s.History.Future = s.History.Future[: n-1 : n-1]
	s.History.Past = append(s.History.Past[:len(s.History.Past):len(s.History.Past)], Past{Plan: s.Plan, Name: last.Name, Lines: last.Lines})
	s.Plan = last.Plan
	s, effects := settled(s)
	return told(s, effects, words.Text("page.redone", []words.Arg{words.Name("what", s.Called(last.Name))}, s.Plan.Style()))
}

// Called returns the words of an edit's name: "move Box".
func (s *State) Called(n edit.Name) string { return words.Text(n.Key, n.Args, s.Plan.Style()) }

// told adds a sentence, shown and spoken.
func told(s State, effects []Effect, text string) (State, []Effect) {
	s.Toast = Toast{Text: text}
	return s, append(effects, Say{Text: text}, After{Name: "toast", Ms: 6000, Event: toastOver{}})
}

// toastOver takes the toast away, and nothing else: somebody may be typing by then.
type toastOver struct{}

func (toastOver) event() {}

// refuse shows why an edit was not made.
func refuse(s State, err error) (State, []Effect) { return told(s, nil, s.why(err)) }

// why returns an error in the plan's words and units.
func (s *State) why(err error) string {
	if e, ok := err.(*edit.Error); ok {
		return e.Say(s.Plan.Style())
	}
	return err.Error()
}
