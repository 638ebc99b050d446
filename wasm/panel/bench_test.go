package panel

import (
	"testing"

	testjobs "ledgewright/testdata/jobs"
	"ledgewright/wasm/app"

	"ledgewright/engine"
	"ledgewright/engine/edit"
	"ledgewright/engine/unit"
)

// jobM is the reference job of 48 modules.
func jobM() app.State {
	p := testjobs.M(1)
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
// dimensions.
func BenchmarkDragPageM(b *testing.B) {
	s := jobM()
	id := s.Plan.Modules[20].ID
	s.Chosen = []string{id}
	var p Painter
	p.Page(&s)
	s.Drag = app.Drag{Active: true, Modules: s.Chosen}
	moved, _, err := edit.Apply(s.Plan, edit.Move{Arrangement: s.Arrangement, Module: id, DX: 20 * unit.Millimetre})
	if err != nil {
		b.Fatal(err)
	}
	s.Preview = app.Preview{Shown: true, Plan: moved, Build: engine.Derive(moved, &s.Build)}
	for b.Loop() {
		p.Page(&s)
	}
}
