package app

import (
	"strconv"
	"strings"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/link"
	"ledgewright/engine/part"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
)

// stepFiles takes the events of files and of keeping.
func stepFiles(s State, e Event) (State, []Effect) {
	switch e := e.(type) {
	case Opened:
		return opened(s, e.Text)
	case Open:
		return open(s, e)
	case Read:
		return read(s, e)
	case keepNow:
		return keep(s)
	case toastOver:
		s.Toast = Toast{}
	case restNow:
		return rest(s)
	case Kept:
		return kept(s, e)
	case copyDue:
		return due(s)
	case Persisted:
		s.Lasting = MayGo
		if e.Lasts {
			s.Lasting = Lasts
		}
	case Listed:
		s.Jobs = e.Jobs
	case Forget:
		return s, []Effect{ForgetKept{e.ID}, ListKept{}}
	case HandOn:
		return handOn(s, e)
	case Done:
		return done(s, e)
	}
	return s, nil
}

// started begins with what the browser knows: a link opens at once, else the job that
// was open last.
func started(s State, e Started) (State, []Effect) {
	s.Now, s.Today, s.Size, s.Jobs, s.Settings = e.Now, e.Today, e.Size, e.Jobs, e.Settings
	s.Painted.Asked = e.Picture
	if s.Settings.Theme == "" {
		s.Settings.Theme = "day"
	}
	if s.Settings.Hand == "" {
		s.Settings.Hand = "right"
	}
	if s.Settings.Units == "" {
		s.Settings.Units = unit.Metric
	}
	s.On = map[Switch]bool{Studs: true, Bands: true}
	s.SheetAt = 1
	if e.Address != "" {
		s, effects := opened(s, e.Address)
		return s, append(effects, Address{})
	}
	for _, j := range e.Jobs {
		if j.ID == e.Last {
			return s, []Effect{ReadKept{j.ID}}
		}
	}
	return s, nil
}

// opened opens a text: a plan, a link or a code.
func opened(s State, text string) (State, []Effect) {
	text = strings.TrimSpace(text)
	if strings.HasPrefix(text, "{") {
		p, err := plan.Decode([]byte(text))
		if err != nil {
			return problem(s, err.Error())
		}
		return begin(s, p, "")
	}
	p, err := link.DecodePlan(text)
	if err != nil {
		return problem(s, err.Error())
	}
	return begin(s, p, "")
}

// open opens an example as a new job, or asks for a kept one.
func open(s State, e Open) (State, []Effect) {
	if e.Kept != "" {
		return s, []Effect{ReadKept{e.Kept}}
	}
	p, err := assets.Plan(e.Example)
	if err != nil {
		return problem(s, err.Error())
	}
	s, effects := begin(s, p, "")
	s.Job = Arrange
	return s, effects
}

// read opens a kept job with its history.
func read(s State, e Read) (State, []Effect) {
	if e.Err != "" {
		return problem(s, e.Err)
	}
	r, p, h, err := decodeRecord(e.Record)
	if err != nil {
		return problem(s, err.Error())
	}
	s.Store = Store{ID: e.ID, Revision: r.Revision, Stored: r.Revision, At: s.Now, CopyAt: r.CopyAt, Copied: r.Copied}
	s.Store.Due = s.Uncopied() >= manySteps
	s, effects := begin(s, p, e.ID)
	s.History = h
	s.Job = Job(r.Job)
	if _, ok := p.Arrangement(r.View); ok {
		s.Arrangement = r.View
		s = consistent(s)
	}
	return s, effects
}

// freeID returns the next id that no kept job has.
func freeID(jobs []Listing) string {
	for n := 1; ; n++ {
		id, taken := "j"+strconv.Itoa(n), false
		for _, j := range jobs {
			taken = taken || j.ID == id
		}
		if !taken {
			return id
		}
	}
}

// handOn makes a file, or a link, of the plan.
func handOn(s State, e HandOn) (State, []Effect) {
	save := Save{By: e.By, What: e.What}
	var err error
	name := fileName(s.Title())
	switch e.What {
	case "plan":
		var text []byte
		text, err = plan.Pretty(s.Plan)
		save.Name, save.Type, save.Text = name+".json", "application/json", string(text)
	case "build":
		var text []byte
		text, err = engine.Encode(engine.Derive(s.Plan, &s.Build))
		save.Name, save.Type, save.Text = name+"-build.json", "application/json", string(text)
	case "parts":
		save.Name, save.Type, save.Text = name+"-parts.csv", "text/csv", string(part.CSV(s.Build.Parts, s.Plan.Units.System, false))
	case "picture":
		save.Name, save.Type, save.Text = name+".svg", "image/svg+xml", s.pictureFile()
	case "link":
		save.Text, err = link.EncodePlan(s.Plan, link.Options{})
	}
	if err != nil {
		return told(s, nil, err.Error())
	}
	return s, []Effect{save}
}

// pictureFile is the wall picture as a file: with its text and its grain.
func (s *State) pictureFile() string {
	w, _ := s.Plan.Wall(s.Wall)
	o := view.Options{Style: s.Plan.Style(), Shallow: true, ShowStuds: true, ShowSizes: true, ShowMarks: true, Evening: s.On[Evening]}
	return drawing.SVG(view.Wall(w, s.result(), s.Build.Modules, o), view.FileOptions(s.On[Evening]))
}

// result returns the arrangement in view, worked out.
func (s *State) result() wall.Result {
	_, b := s.Shown()
	for _, r := range b.Arrangements {
		if r.Arrangement == s.Arrangement {
			return r
		}
	}
	return wall.Result{Arrangement: s.Arrangement, Wall: s.Wall}
}

// fileName makes a title fit for a file: letters, digits and hyphens.
func fileName(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if name := strings.Trim(b.String(), "-"); name != "" {
		return name
	}
	return "ledgewright"
}

// done says how handing on ended.
func done(s State, e Done) (State, []Effect) {
	if e.Err != "" {
		return told(s, nil, words.Text("page.not-handed-on", []words.Arg{words.Name("why", e.Err)}, s.Plan.Style()))
	}
	var effects []Effect
	if e.What == "plan" || e.What == "link" {
		s, effects = copied(s)
	}
	return told(s, effects, words.Text("page.handed-on-"+e.What, nil, s.Plan.Style()))
}
