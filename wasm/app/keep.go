package app

import (
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/words"
)

// keepAfter is how long a change waits for the next one before it is stored, in ms.
const keepAfter = 300

// keepNow stores the job if there is anything new.
type keepNow struct{}

func (keepNow) event() {}

// Flush is the event that stores the job at once: the page is about to go away.
func Flush() Event { return keepNow{} }

// recordSchema names the format of a kept job.
const recordSchema = "ledgewright/kept/1"

// A record is a job as it is kept: the plan, and the steps that led to it from the
// oldest plan that can still be reached by undoing.
type record struct {
	Schema   string        `json:"schema"`
	Revision int           `json:"revision"`
	Job      int           `json:"job"`
	View     string        `json:"view,omitempty"` // arrangement in view
	CopyAt   string        `json:"copyAt,omitempty"`
	Copied   int           `json:"copied,omitempty"`
	Plan     document.Node `json:"plan"`
	Oldest   document.Node `json:"oldest"`
	Steps    []lines       `json:"steps"`
	Undone   []lines       `json:"undone"` // last undone first
}

// lines are the edits of one step, as in a document.
type lines struct {
	Lines []string `json:"lines"`
}

// turned has it kept what is looked at, so that a page that was away comes back as it was.
// The plan is the same, and so is its revision.
func turned(s State) (State, []Effect) {
	s.Store.Turned = true
	return s, []Effect{After{Name: "keep", Ms: keepAfter, Event: keepNow{}}}
}

// keep stores the job.
func keep(s State) (State, []Effect) {
	if s.Screen != AtWork || s.Store.Revision == s.Store.Stored && !s.Store.Turned {
		return s, nil
	}
	s.Store.Turned = false
	text, err := s.encodeRecord()
	if err != nil {
		s.Store.Err = err.Error()
		return s, nil
	}
	return s, []Effect{Keep{
		ID: s.Store.ID, Title: s.Title(), Summary: s.summary(),
		Revision: s.Store.Revision, Before: s.Store.Stored, Record: text,
		Blank: len(s.Plan.Modules) == 0,
	}}
}

// kept takes the answer of the store.
func kept(s State, e Kept) (State, []Effect) {
	if e.Err != "" {
		first := s.Store.Err == ""
		s.Store.Err = e.Err
		if first {
			return s, []Effect{Say{Text: words.Text("page.not-kept", []words.Arg{words.Name("why", e.Err)}, s.Plan.Style()), Urgent: true}}
		}
		return s, nil
	}
	s.Store.Stored, s.Store.At, s.Store.Err = e.Revision, e.Now, ""
	return remind(s)
}

// When to remind of a copy outside the browser. That one is due after half an hour of
// work, and after a survey, is asked of the page; the counts are our assumption.
const (
	copyAfter = 30 * 60 * 1000 // ms
	manySteps = 40             // changes without a copy
	surveyed  = 5              // changes without a copy when a survey is left
)

// copyDue says that changes have had no copy for long.
type copyDue struct{}

func (copyDue) event() {}

// Uncopied is how many changes there are since the last copy outside.
func (s *State) Uncopied() int { return s.Store.Revision - s.Store.Copied }

// remind sees to it that changes without a copy are not forgotten.
func remind(s State) (State, []Effect) {
	switch n := s.Uncopied(); {
	case n <= 0:
		return s, nil
	case n >= manySteps:
		return due(s)
	case !s.Store.Awaits:
		s.Store.Awaits = true
		return s, []Effect{After{Name: "copy", Ms: copyAfter, Event: copyDue{}}}
	}
	return s, nil
}

// due reminds of a copy: it is shown from then on, and spoken once.
func due(s State) (State, []Effect) {
	if s.Store.Due || s.Screen != AtWork || s.Uncopied() <= 0 {
		return s, nil
	}
	s.Store.Due = true
	return s, []Effect{Say{Text: words.Text("page.copy-due", []words.Arg{words.Count("n", s.Uncopied())}, s.Plan.Style())}}
}

// copied notes that the plan as it is now is outside too.
func copied(s State) (State, []Effect) {
	s.Store.CopyAt, s.Store.Copied = strings.TrimSpace(s.Today+" "+s.Now), s.Store.Revision
	s.Store.Due, s.Store.Awaits = false, false
	return turned(s)
}

// When shortens a moment of today to its time.
func (s *State) When(moment string) string { return strings.TrimPrefix(moment, s.Today+" ") }

// encodeRecord writes the job as it is kept, and remembers how its plans were written.
func (s *State) encodeRecord() (string, error) {
	now, plans, err := s.written.tree(s.Plan)
	if err != nil {
		return "", err
	}
	s.written = plans
	first := s.Plan
	r := record{Schema: recordSchema, Revision: s.Store.Revision, Job: int(s.Job), View: s.Arrangement, Plan: now, CopyAt: s.Store.CopyAt, Copied: s.Store.Copied}
	for i, p := range s.History.Past {
		if i == 0 {
			first = p.Plan
		}
		r.Steps = append(r.Steps, lines{p.Lines})
	}
	for _, p := range s.History.Future {
		r.Undone = append(r.Undone, lines{p.Lines})
	}
	if r.Oldest, s.oldest, err = s.oldest.tree(first); err != nil {
		return "", err
	}
	text, err := document.Encode(r)
	return string(text), err
}

// decodeRecord rebuilds plan and history. A history that does not lead to the plan
// is dropped: the plan is what counts.
func decodeRecord(text string) (r record, p plan.Plan, h History, err error) {
	if err = (document.Limits{Bytes: 64 << 20, Values: 16 << 20, Runes: 64 << 10}).Decode([]byte(text), &r); err != nil {
		return r, p, h, err
	}
	if p, err = decodeNode(r.Plan); err != nil {
		return r, p, h, err
	}
	if past, ok := replay(r.Oldest, r.Steps, p); ok {
		h.Past = past
		h.Future = redoable(p, r.Undone)
	}
	return r, p, h, nil
}

func decodeNode(n document.Node) (plan.Plan, error) {
	text, err := n.Canonical()
	if err != nil {
		return plan.Plan{}, err
	}
	return plan.Decode(text)
}

// replay makes the steps again from the oldest plan and says whether they end in p.
func replay(oldest document.Node, steps []lines, p plan.Plan) ([]Past, bool) {
	at, err := decodeNode(oldest)
	if err != nil {
		return nil, false
	}
	past := make([]Past, 0, len(steps))
	for _, st := range steps {
		next, name, err := applyLines(at, st.Lines)
		if err != nil {
			return nil, false
		}
		past = append(past, Past{Plan: at, Name: name, Lines: st.Lines})
		at = next
	}
	want, err := plan.Encode(p)
	have, err2 := plan.Encode(at)
	return past, err == nil && err2 == nil && string(want) == string(have)
}

// redoable makes the undone steps again, last undone first, and returns them in the
// order of a Future.
func redoable(at plan.Plan, undone []lines) []Past {
	future := make([]Past, len(undone))
	for i := len(undone) - 1; i >= 0; i-- {
		next, name, err := applyLines(at, undone[i].Lines)
		if err != nil {
			return future[i+1:]
		}
		future[i] = Past{Plan: next, Name: name, Lines: undone[i].Lines}
		at = next
	}
	return future
}

func applyLines(p plan.Plan, text []string) (plan.Plan, edit.Name, error) {
	var name edit.Name
	for i, line := range text {
		e, err := edit.Decode([]byte(line))
		if err != nil {
			return p, name, err
		}
		next, n, err := edit.Apply(p, e)
		if err != nil {
			return p, name, err
		}
		if i == 0 {
			name = n
		}
		p = next
	}
	return p, name, nil
}

// Title is what the job is called.
func (s *State) Title() string {
	if t := s.Plan.Job.Title; t != "" {
		return t
	}
	if w, ok := s.Plan.Wall(s.Wall); ok && w.Name != "" {
		return w.Name
	}
	return words.Text("page.untitled", nil, s.Plan.Style())
}

// summary says in a line what a job holds.
func (s *State) summary() string {
	return words.Text("page.summary", []words.Arg{
		words.Count("modules", len(s.Plan.Modules)), words.Count("boards", s.Build.Parts.Boards),
	}, s.Plan.Style())
}

// begin opens a plan. Stored jobs have an id; a new one gets the next.
func begin(s State, p plan.Plan, id string) (State, []Effect) {
	if id == "" {
		id = freeID(s.Jobs)
		s.Store = Store{ID: id, Revision: 1, Copied: 1}
	}
	s.Screen, s.Problem = AtWork, ""
	s.Plan, s.History = p, History{}
	s.Chosen, s.At, s.Typing, s.Preview, s.Drag, s.Fields, s.Using = nil, Thing{}, Typing{}, Preview{}, Drag{}, nil, Field{}
	s.Arrangement, s.Wall = "", ""
	if len(p.Arrangements) > 0 {
		s.Arrangement = p.Arrangements[0].ID
	}
	s.Camera = Camera{Fitted: true}
	s.Build = engine.DeriveLive(p, nil)
	s, rests := stirred(consistent(s))
	return s, []Effect{Again{}, After{Name: "keep", Ms: keepAfter, Event: keepNow{}}, rests, Focus{Key: "panel-title"}}
}
