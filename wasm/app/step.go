package app

import (
	"slices"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Step gives the next state of the page and what the browser has to do.
func Step(s State, e Event) (State, []Effect) {
	if next, effects, ok := stepRound(s, e); ok {
		return rounded(next), effects
	}
	s, effects := stepFlat(s, e)
	return rounded(s), effects
}

// stepFlat takes all events but those of the view in the round.
func stepFlat(s State, e Event) (State, []Effect) {
	switch e := e.(type) {
	case Started:
		return started(s, e)
	case Resized:
		s.Size = e.Size
		return refit(s), nil
	case Clock:
		s.Now, s.Today = e.Now, e.Today
		return s, nil
	case Go:
		s = left(s)
		s.Job, s.Typing, s.Preview, s.Using = e.Job, Typing{}, Preview{}, Field{}
		s, effects := turned(s)
		return s, append(effects, Focus{Key: "panel-title"})
	case Home:
		s.Screen, s.Using = AtStart, Field{}
		return s, []Effect{ListKept{}}
	case Show:
		s = toggle(s, e.What)
		if e.What == Help {
			s.SheetAt = max(s.SheetAt, 1)
			return s, []Effect{Focus{Key: "panel-title"}}
		}
		return s, nil
	case Set:
		return set(s, e.Name, e.Value)
	case Sheet:
		s.SheetAt = (s.SheetAt + 1) % 3
		return s, nil
	case Dismiss:
		figure := s.Typing
		s.Toast, s.Typing, s.Preview = Toast{}, Typing{}, Preview{}
		return s, backTo(figure)
	case Reckon:
		return reckon(s)
	case Stage:
		s.Painted.Shown, s.Painted.why = e.Shown, e.Why
		return s, nil
	}
	if next, effects, ok := stepEdit(s, e); ok {
		return next, effects
	}
	if next, effects, ok := stepChoice(s, e); ok {
		return next, effects
	}
	if next, effects, ok := stepHand(s, e); ok {
		return next, effects
	}
	return stepFiles(s, e)
}

// stepEdit takes the events that change the plan.
func stepEdit(s State, e Event) (State, []Effect, bool) {
	var effects []Effect
	switch e := e.(type) {
	case Do:
		s, effects = press(s, e.Edits...)
	case DoLine:
		s, effects = doLine(s, e.Line)
	case Undo:
		s, effects = undo(s)
	case Redo:
		s, effects = redo(s)
	case TypedInto:
		s, effects = typedInto(s, e.Field, e.Text)
	case Entered:
		s, effects = entered(s, e.Field, e.Text)
	case StepField:
		s, effects = step(s, e.Field, e.By)
	case OpenTyping:
		s.Typing = Typing{Open: true, Field: e.Field, Echo: Echo{Text: e.Field.Value}, Was: e.Field.Value}
		effects = []Effect{Focus{Key: "typing"}}
	case UseField:
		s, effects = use(s, e.Field)
	case NewJob:
		s, effects = newJob(s, e)
	default:
		return s, nil, false
	}
	return s, effects, true
}

// doLine makes an edit that is written as in a document.
func doLine(s State, line string) (State, []Effect) {
	e, err := edit.Decode([]byte(line))
	if err != nil {
		return refuse(s, err)
	}
	return press(s, e)
}

// reckon does the next slice of slow work.
func reckon(s State) (State, []Effect) {
	if s.Screen != AtWork {
		return s, nil
	}
	b, done := engine.Reckon(s.Build, 8)
	s.Build = b
	if done {
		return s, nil
	}
	return s, []Effect{Again{}}
}

// left leaves a job for another. What was measured at a wall is not easily had again, so
// after a survey one is reminded of a copy.
func left(s State) State {
	for _, w := range [...]Switch{Help, InTheRound} {
		if s.On[w] {
			s = toggle(s, w)
		}
	}
	if s.Job == Survey && s.Uncopied() >= surveyed {
		s.Store.Due = true
	}
	return s
}

// toggle turns a switch.
func toggle(s State, w Switch) State {
	on := map[Switch]bool{}
	for k, v := range s.On {
		on[k] = v
	}
	on[w] = !on[w]
	s.On = on
	if w == Several && !on[w] && len(s.Chosen) > 1 {
		s.Chosen = s.Chosen[len(s.Chosen)-1:]
	}
	return s
}

// set changes a setting that outlives the job.
func set(s State, name, value string) (State, []Effect) {
	switch name {
	case "theme":
		s.Settings.Theme = value
	case "hand":
		s.Settings.Hand = value
	case "units":
		s.Settings.Units = unit.System(value)
	case "week":
		s.Settings.Week = value
	case "picture":
		s.Settings.Picture, s.Painted.Asked = strings.TrimPrefix(value, "any"), "" // what is chosen now counts for more than the address
	}
	return s, []Effect{KeepSettings{s.Settings}}
}

// refit follows the size of the picture while nobody has zoomed.
func refit(s State) State {
	if w, ok := s.Plan.Wall(s.Wall); ok && (s.Camera.Fitted || s.Camera.Scale == 0) {
		s.Camera = fit(w, s.Size)
	}
	return s
}

// consistent drops what the present plan does not have: chosen modules that are gone,
// an arrangement or wall that is gone.
func consistent(s State) State {
	var chosen []string
	for _, id := range s.Chosen {
		if _, ok := s.Plan.Module(id); ok {
			chosen = append(chosen, id)
		}
	}
	s.Chosen = chosen
	if _, ok := s.Plan.Arrangement(s.Arrangement); !ok {
		s.Arrangement = firstOn(s.Plan, s.Wall)
		_, stands := s.Plan.Wall(s.Wall)
		if n := len(s.Plan.Arrangements); n > 0 && !stands {
			s.Arrangement = s.Plan.Arrangements[n-1].ID
		}
	}
	if a, ok := s.Plan.Arrangement(s.Arrangement); ok {
		s.Wall = a.Wall
	}
	if _, ok := s.Plan.Wall(s.Wall); !ok {
		s.Wall = ""
		if len(s.Plan.Walls) > 0 {
			s.Wall = s.Plan.Walls[0].ID
		}
	}
	return refit(s)
}

// newJob starts a plan with one wall from two typed figures.
func newJob(s State, e NewJob) (State, []Effect) {
	system := s.Settings.Units
	width, err := unit.ParseLength(e.Width, system)
	if err != nil {
		return problem(s, err.Error())
	}
	height, err := unit.ParseLength(e.Height, system)
	if err != nil {
		return problem(s, err.Error())
	}
	p := plan.New(system)
	for _, line := range []edit.Edit{
		edit.AddWall{With: edit.Changes(edit.Change("width", width), edit.Change("height", height),
			edit.Change("name", words.Text("page.first-wall", nil, p.Style())))},
		edit.AddArrangement{Wall: "w1", Name: words.Text("page.first-arrangement", nil, p.Style())},
	} {
		next, _, err := edit.Apply(p, line)
		if err != nil {
			return problem(s, s.why(err))
		}
		p = next
	}
	s, effects := begin(s, p, "")
	s.Job = Survey
	return s, effects
}

// problem stays on the start page and says what is wrong.
func problem(s State, text string) (State, []Effect) {
	s.Problem = text
	return s, []Effect{Say{Text: text}}
}

// stepChoice takes the events of choosing.
func stepChoice(s State, e Event) (State, []Effect, bool) {
	switch e := e.(type) {
	case Choose:
		s = choose(s, e.Module, e.Add || s.On[Several])
	case Point:
		s.At = e.At
		if e.At.Kind == "field" {
			return s, []Effect{Focus{Key: e.At.ID}}, true
		}
	case ShowArrangement:
		s.Arrangement = e.ID
		s, effects := turned(consistent(s))
		return s, effects, true
	case ShowWall:
		s.Wall, s.Arrangement = e.ID, firstOn(s.Plan, e.ID)
		s.Camera.Fitted = true
		s, effects := turned(refit(s))
		return s, effects, true
	case Suggest:
		s = suggest(s, e.Module)
	case Lead:
		return lead(s, e.Verdict)
	case Try:
		s = try(s, e.Line)
	case Zoom:
		if w, ok := s.Plan.Wall(s.Wall); ok {
			s.Camera = s.Camera.zoom(e.By, s.Size.Width/2, s.Size.Height/2, w, s.Size)
		}
	case Pan:
		s.Camera = s.Camera.pan(-e.X*s.Size.Width, e.Y*s.Size.Height)
	case Fit:
		s.Camera.Fitted = true
		s = refit(s)
	default:
		return s, nil, false
	}
	return s, nil, true
}

func firstOn(p plan.Plan, wall string) string {
	for _, a := range p.Arrangements {
		if a.Wall == wall {
			return a.ID
		}
	}
	return ""
}

// choose chooses a module alone, or adds it to those chosen or takes it from them.
func choose(s State, id string, add bool) State {
	s.At, s.Typing, s.Preview = Thing{}, Typing{}, Preview{}
	at := slices.Index(s.Chosen, id)
	switch {
	case id == "":
		s.Chosen = nil
	case !add:
		s.Chosen = []string{id}
	case at >= 0:
		s.Chosen = slices.Delete(slices.Clone(s.Chosen), at, at+1)
	default:
		s.Chosen = append(slices.Clone(s.Chosen), id)
	}
	return s
}

// lead goes to the worst finding of a verdict: its module is chosen, and the panel
// scrolls to it.
func lead(s State, verdict int) (State, []Effect, bool) {
	for i, f := range s.Build.Findings {
		if int(f.Kind.Verdict) == verdict+1 {
			if f.Place.Module != "" {
				s = choose(s, f.Place.Module, false)
			}
			s.At = Thing{Kind: "finding", Index: i + 1}
			s.SheetAt = max(s.SheetAt, 1)
			if s.Job != Survey && s.Job != Arrange {
				s.Job = Arrange
			}
			return s, []Effect{Focus{Key: FindingKey(i)}}, true
		}
	}
	return s, []Effect{Focus{Key: "panel-title"}}, true
}
