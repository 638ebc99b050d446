package panel

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	testjobs "ledgewright/testdata/jobs"
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"

	"ledgewright/engine"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// jobM is the reference job of 48 modules.
func jobM() app.State { return jobOf(testjobs.M(1)) }

func jobOf(p plan.Plan) app.State {
	s := startPage()
	s.Screen, s.Job, s.Plan, s.Build = app.AtWork, app.Arrange, p, engine.Derive(p, nil)
	s.Arrangement = p.Arrangements[0].ID
	s.Wall = p.Arrangements[0].Wall
	return steps(s, app.Fit{})
}

// The first page draws the wall, grain and all.
func BenchmarkFirstPageM(b *testing.B) {
	s := jobM()
	for b.Loop() {
		Page(&s)
	}
}

// Later pages of a wall that has not changed keep the drawing.
func BenchmarkNextPageM(b *testing.B) {
	s := jobM()
	var p Painter
	p.Page(&s)
	for b.Loop() {
		p.Page(&s)
	}
}

// While a module is in the hand only its own group is drawn at every step, and the
// dimensions; here it is carried over its neighbours.
func BenchmarkDragPageM(b *testing.B) {
	s := jobM()
	id := s.Plan.Modules[20].ID
	s.Chosen = []string{id}
	var p Painter
	p.Page(&s)
	s.Drag = app.Drag{Active: true, Modules: s.Chosen}
	var steps []app.Preview
	for i := range 40 {
		moved, _, err := edit.Apply(s.Plan, edit.Move{Arrangement: s.Arrangement, Module: id,
			DX: unit.Length(100+5*i) * unit.Millimetre, DY: unit.Length(5*(i%25)) * unit.Millimetre})
		require.NoError(b, err)
		steps = append(steps, app.Preview{Shown: true, Plan: moved, Build: engine.Derive(moved, &s.Build)})
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s.Preview = steps[i%len(steps)]
		p.Page(&s)
	}
}

// A step of turning the boards in the round, from the finger's move to the page's tree: in
// every example, and in the reference jobs of 12 and 48 modules.
func BenchmarkOrbitStep(b *testing.B) {
	jobs := map[string]app.State{"S": jobOf(testjobs.S()), "M": jobM()}
	names := append(assets.Names(), "S", "M")
	for _, name := range assets.Names() {
		jobs[name] = desk(b, name)
	}
	for _, name := range names {
		b.Run(name, func(b *testing.B) {
			s := steps(jobs[name], app.Show{What: app.InTheRound}, finger(hand.Down, 300, 300))
			var p Painter
			p.Page(&s)
			b.ReportAllocs()
			n := 0
			for b.Loop() {
				s = steps(s, finger(hand.Motion, float64(320+n%200), float64(280+n%90)))
				p.Page(&s)
				n++
			}
			b.ReportMetric(float64(len(p.round.world)), "elements")
		})
	}
}

func finger(kind hand.Kind, x, y float64) app.Event {
	return app.Pointer{Event: hand.Event{Kind: kind, ID: 1, Type: hand.Touch, X: x, Y: y, Primary: kind == hand.Down}}
}

// The bench is left on for the next time, but other jobs, and a job with nothing to show,
// keep the wall: there is no way back from a bench without a part or a point.
func TestTheBenchIsOnlyWhereThereIsSomethingOnIt(t *testing.T) {
	s := desk(t, "study", app.Go{Job: app.Make}, app.Show{What: app.Bench})
	require.Equal(t, "bench", viewOf(&s))
	require.Equal(t, "bench", viewOf(new(steps(s, app.Go{Job: app.Hang}))))
	for _, job := range []app.Job{app.Survey, app.Arrange, app.Agree} {
		require.Equal(t, "day", viewOf(new(steps(s, app.Go{Job: job}))))
	}
	bare := steps(startPage(), app.NewJob{Width: "2960", Height: "2460"}, app.Show{What: app.Bench})
	for _, job := range []app.Job{app.Make, app.Hang} {
		require.Equal(t, "day", viewOf(new(steps(bare, app.Go{Job: job}))))
	}
}
