package app

import (
	"testing"

	"ledgewright/engine"
	"ledgewright/testdata/jobs"
	"ledgewright/wasm/hand"
)

// BenchmarkDragStepM is one step of a drag of job M: hand, snapping, edit, Derive.
func BenchmarkDragStepM(b *testing.B) {
	s := State{Screen: AtWork, Job: Arrange, Size: Size{Width: 1000, Height: 600}, Plan: jobs.M(1)}
	s.Build = engine.Derive(s.Plan, nil)
	s.Arrangement = s.Plan.Arrangements[0].ID
	s, _ = Step(consistent(s), Fit{})
	box := s.Build.Arrangements[0].Placed[20].Outlines[0].Points
	x, y := s.Camera.Pixel((box[0].X+box[2].X).MM()/2, (box[0].Y+box[2].Y).MM()/2, s.Size)
	send := func(kind hand.Kind, x, y float64) {
		s, _ = Step(s, Pointer{Event: hand.Event{Kind: kind, ID: 1, X: x, Y: y}})
	}
	send(hand.Down, x, y)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		send(hand.Motion, x+24+float64(i%40), y-float64(i%25))
	}
	if !s.Preview.Shown {
		b.Fatal("nothing was in the hand")
	}
}
