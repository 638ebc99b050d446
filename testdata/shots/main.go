// Shots photographs the maker's page: the start page and every job, on a tablet both
// ways, a phone and a small one, by day and in the evening; besides, the boards in the
// round, a figure being typed, a module in the hand, the bench, and the page for a left
// hand.
//
// Usage, from the top of the repository:
//
//	go run ./testdata/shots build/shots
//	go run ./testdata/shots build/shots Kitchen Library
//	go run ./testdata/shots build/shots round
//	go run ./testdata/shots build/shots stage
//
// With round: only the boards in the round. With stage: pictures that the stage paints. With names of examples: only Survey, Arrange and Hang of those, by day.
package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/chromedp/kb"

	"ledgewright/testdata/visitor"
)

// example is the job that is photographed.
const example = "Study"

func main() {
	if len(os.Args) < 2 {
		fmt.Fprintln(os.Stderr, "usage: shots DIRECTORY [EXAMPLE...]")
		os.Exit(2)
	}
	house, err := visitor.Open()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	defer house.Close()
	p := &photographer{dir: os.Args[1], house: house}
	if names := os.Args[2:]; len(names) == 1 && names[0] == "round" {
		for _, size := range visitor.Sizes() {
			p.round(size)
		}
	} else if len(names) == 1 && names[0] == "stage" {
		for _, size := range []visitor.Size{visitor.Tablet, visitor.Phone} {
			p.stage(size)
		}
	} else if len(names) > 0 {
		p.examples(names)
	} else {
		p.all()
	}
	fmt.Printf("%d pictures in %s\n", p.n, p.dir)
}

// A photographer stands in for a test: what goes wrong ends the program.
type photographer struct {
	dir   string
	house *visitor.House
	n     int
	ends  []func()
}

func (p *photographer) Errorf(format string, args ...any) {
	fmt.Fprintf(os.Stderr, format+"\n", args...)
}
func (p *photographer) FailNow()         { p.leave(); p.house.Close(); os.Exit(1) }
func (p *photographer) Helper()          {}
func (p *photographer) Cleanup(f func()) { p.ends = append(p.ends, f) }
func (p *photographer) Name() string     { return "shots" }
func (p *photographer) Failed() bool     { return false }

func (p *photographer) leave() {
	for i := len(p.ends) - 1; i >= 0; i-- {
		p.ends[i]()
	}
	p.ends = nil
}

func (p *photographer) visit(size visitor.Size) *visitor.Tab {
	return p.house.Visit(p, size, "").Go("")
}

func (p *photographer) take(b *visitor.Tab, name string) {
	b.Calm()
	b.Photograph(filepath.Join(p.dir, fmt.Sprintf("%s-%s.png", name, b.Size)))
	p.n++
}

// all takes what a release is looked at by.
func (p *photographer) all() {
	for _, size := range visitor.Sizes() {
		p.jobs(size)
		p.round(size)
	}
	p.moments()
}

// examples takes the jobs that have figures on the wall, of several examples.
func (p *photographer) examples(names []string) {
	for _, name := range names {
		for _, size := range visitor.Sizes() {
			p.example(name, size)
		}
	}
}

func (p *photographer) example(name string, size visitor.Size) {
	b := p.visit(size)
	defer p.leave()
	b.Tap("button", name)
	b.See("heading", "Arrange")
	for _, job := range []string{"Survey", "Arrange", "Hang"} {
		b.Job(job)
		p.take(b, strings.ToLower(name+"-"+job))
	}
}

// evening turns the lamp on where the job has one.
func evening(b *visitor.Tab) {
	b.Job("Arrange")
	b.Tap("button", "Evening")
	b.Until("document.documentElement.dataset.view", "evening")
}

// jobs takes the start page and the five jobs of an example, by day and in the evening.
func (p *photographer) jobs(size visitor.Size) {
	b := p.visit(size)
	defer p.leave()
	p.take(b, "start")
	b.Tap("button", example)
	b.See("heading", "Arrange")
	for _, view := range []string{"", "-evening"} {
		if view != "" {
			evening(b)
		}
		for _, job := range []string{"Survey", "Arrange", "Make", "Hang", "Agree"} {
			b.Job(job)
			p.take(b, strings.ToLower(job)+view)
		}
	}
	b.Tap("button", "All jobs")
	b.See("list", "Kept in this browser")
	p.take(b, "start-evening")
}

// round takes the boards in the round: as one comes in, from behind and half pulled apart,
// and a module alone.
func (p *photographer) round(size visitor.Size) {
	b := p.visit(size)
	defer p.leave()
	b.Tap("button", example)
	b.See("heading", "Arrange")
	b.Tap("button", "In the round")
	b.See("slider", "Pull apart")
	p.take(b, "round")
	b.Tap("button", "Back")
	b.TabTo("slider", "Pull apart")
	for range 8 {
		b.Press(kb.ArrowRight)
	}
	b.Says("40 % apart")
	p.take(b, "round-back")
	b.Tap("button", "Left")
	b.Tap("button", "Turn left")
	b.Tap("button", "Turn left")
	b.Tap("button", "Turn down")
	b.Tap("button", "Evening")
	b.Until("document.documentElement.dataset.view", "evening")
	p.take(b, "round-evening")
}

// moments takes what passes quickly, on a tablet and a phone.
func (p *photographer) moments() {
	for _, size := range []visitor.Size{visitor.Tablet, visitor.Phone} {
		p.chosen(size)
		p.bench(size)
	}
}

// chosen takes a module that is chosen, in the hand, and while a figure of it is typed.
func (p *photographer) chosen(size visitor.Size) {
	b := p.visit(size)
	defer p.leave()
	b.Tap("button", example)
	b.See("heading", "Arrange")
	k := b.Keeps("its modules", func(k visitor.Kept) bool { return len(k.Plan.Modules) > 0 })
	pose, label := k.Plan.Arrangements[0].Poses[0], k.Plan.Modules[0].Label()
	b.Tap("button", label)
	p.take(b, "arrange-chosen")
	b.Tap("button", label+" from the left end, mm: …")
	b.Until("document.activeElement.tagName", "INPUT")
	b.Replace("300")
	p.take(b, "arrange-typing")
	b.Tap("button", "Leave it")
	b.Gone("form", "Type a figure")
	from := b.Wall(pose.X.MM(), pose.Y.MM())
	b.Down(from)
	for i := range 8 {
		b.Moved(visitor.Point{X: from.X + float64(4*i), Y: from.Y - float64(6*i)})
	}
	p.take(b, "arrange-drag")
	b.Up()
}

// bench takes the views for the bench.
func (p *photographer) bench(size visitor.Size) {
	b := p.visit(size)
	defer p.leave()
	b.Tap("button", example)
	b.See("heading", "Arrange")
	b.Job("Make")
	b.Tap("button", "Bench")
	p.take(b, "make-bench")
	b.Job("Hang")
	p.take(b, "hang-bench")
}
