package site

import (
	"bytes"
	"fmt"
	"html/template"
	"math"
	"slices"
	"strconv"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/finding"
	"ledgewright/engine/link"
	"ledgewright/engine/plan"
)

// still is what the still page shows.
type still struct {
	CSP, Icon, Style string
	Jobs             []job
	Schemas          []file
	Cautions         []string
}

// hero is the example at the top of the page: several shapes on one wall.
const hero = "study"

// Hero is the job that the page opens with.
func (s still) Hero() job {
	i := slices.IndexFunc(s.Jobs, func(j job) bool { return j.Name == hero })
	return s.Jobs[max(i, 0)]
}

// Rest are the other jobs.
func (s still) Rest() []job {
	return slices.DeleteFunc(slices.Clone(s.Jobs), func(j job) bool { return j.Name == s.Hero().Name })
}

// A job is one example on the page.
type job struct {
	Name, Title, Says string
	Wide              bool // as wide as the page
	Ways              []picture
	Verdicts          []verdict
	Facts             []fact
	Files             []file
}

// A picture shows one way in which a job hangs.
type picture struct {
	Day, Evening, Alt string
	Name              string // of the way, where there is more than one
	Width, Height     int    // in px
	Lazy              bool   // loaded when it comes into view
}

type verdict struct{ Word, Sign, Text string }
type fact struct{ Word, Text string }
type file struct{ Word, Path string }

// addJob puts the pictures and documents of an example and returns what the page says
// of it.
func (p Pages) addJob(e assets.Example) (job, error) {
	decided, err := assets.Plan(e.Name)
	if err != nil {
		return job{}, err
	}
	b := engine.Derive(decided, nil)
	j := job{Name: e.Name, Title: decided.Job.Title, Says: e.Says}
	p.addPictures(&j, decided, b)
	if err := p.addFiles(&j, decided, b); err != nil {
		return job{}, err
	}
	for i, v := range b.Verdicts {
		j.Verdicts = append(j.Verdicts, verdict{labels()[i], signOf(v), engine.SayVerdict(v, b.Style())})
	}
	j.Facts, err = facts(decided, b)
	return j, err
}

// grained is how many faces of a picture on the page show their grain: all but on the
// longest wall, whose picture would weigh 3 MB with it.
const grained = 60

// addPictures draws every arrangement by day and in the evening.
func (p Pages) addPictures(j *job, decided plan.Plan, b engine.Build) {
	for _, r := range b.Arrangements {
		a, _ := decided.Arrangement(r.Arrangement)
		w, _ := decided.Wall(r.Wall)
		d := Wall(decided, b, r, false)
		v := picture{Name: a.Name, Width: 1200, Height: int(math.Round(1200 * d.Box.Height() / d.Box.Width())), Lazy: j.Name != hero}
		at := "pictures/" + j.Name + "-" + a.ID
		v.Day = p.add(at+".svg", SVG(d, drawing.Day, grained))
		v.Evening = p.add(at+"-evening.svg", SVG(Wall(decided, b, r, true), drawing.Evening, grained))
		v.Alt = fmt.Sprintf("%s, %s on a wall %s wide", title(decided, a), pieces(len(r.Placed)), decided.Style().WithUnit(w.Width))
		j.Ways = append(j.Ways, v)
		j.Wide = j.Wide || d.Box.Width() > 2.2*d.Box.Height()
	}
	j.Wide = j.Wide || len(j.Ways) > 1
}

func title(decided plan.Plan, a plan.Arrangement) string {
	if a.Name != "" {
		return decided.Job.Title + ": " + a.Name
	}
	return decided.Job.Title
}

func pieces(n int) string {
	if n == 1 {
		return "one piece"
	}
	return strconv.Itoa(n) + " pieces"
}

// addFiles puts the documents of an example: what was decided, and what follows.
func (p Pages) addFiles(j *job, decided plan.Plan, b engine.Build) error {
	text, err := plan.Pretty(decided)
	if err != nil {
		return err
	}
	build, err := engine.Encode(b)
	if err != nil {
		return err
	}
	p["jobs/"+j.Name+".plan.json"], p["jobs/"+j.Name+".build.json"] = text, build
	j.Files = []file{
		{"Plan", "jobs/" + j.Name + ".plan.json"},
		{"Build", "jobs/" + j.Name + ".build.json"},
		{"Picture", j.Ways[0].Day},
	}
	return nil
}

// facts are the figures of an example.
func facts(decided plan.Plan, b engine.Build) ([]fact, error) {
	code, err := link.EncodePlan(decided, link.Options{})
	if err != nil {
		return nil, err
	}
	points := 0
	for _, a := range b.Arrangements {
		points += len(a.Points)
	}
	out := []fact{
		{"boards", strconv.Itoa(b.Parts.Boards)},
		{"wood", b.Style().Mass(b.Parts.Mass)},
		{"points on the wall", strconv.Itoa(points)},
		{"link code", strconv.Itoa(len(code)) + " characters"},
	}
	if n := len(b.Arrangements); n > 1 {
		out = append(out, fact{"ways to hang it", strconv.Itoa(n)})
	}
	return out, nil
}

// labels of the three verdicts, in their order.
func labels() [3]string { return [3]string{"Fits", "Holds", "Takes"} }

// signOf is the shape that goes with a verdict: nothing is told by colour alone.
func signOf(v engine.Verdict) string {
	switch {
	case v.Severity == finding.Stop:
		return "stop"
	case v.Severity == finding.Mend:
		return "warn"
	case v.Severity == finding.Unknown:
		return "ask"
	case v.Of == finding.Takes:
		return "sum"
	}
	return "ok"
}

func (p Pages) schemaLinks() (out []file) {
	entries, err := schemas.ReadDir("schema")
	if err != nil {
		panic(err) // the directory is part of the program
	}
	for _, e := range entries {
		out = append(out, file{e.Name(), "schema/" + e.Name()})
	}
	return out
}

func (s still) html() ([]byte, error) {
	t, err := template.New("still").Parse(string(source("still.html")))
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Execute(&b, s)
	return b.Bytes(), err
}
