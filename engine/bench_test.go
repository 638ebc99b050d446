package engine_test

import (
	"testing"

	"ledgewright/engine"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/testdata/jobs"
)

// BenchmarkReference is a fixed piece of arithmetic, printed beside every table so
// that figures of two machines can be compared.
func BenchmarkReference(b *testing.B) {
	for b.Loop() {
		x := uint64(1)
		for range 1_000_000 {
			x = x*6364136223846793005 + 1442695040888963407
		}
		if x == 0 {
			b.Fatal("a full period of the generator in a million steps")
		}
	}
}

func benchDerive(b *testing.B, p plan.Plan) {
	b.ReportAllocs()
	for b.Loop() {
		engine.Derive(p, nil)
	}
}

func BenchmarkDeriveOne(b *testing.B) { benchDerive(b, jobs.One()) }
func BenchmarkDeriveS(b *testing.B)   { benchDerive(b, jobs.S()) }
func BenchmarkDeriveM(b *testing.B)   { benchDerive(b, jobs.M(1)) }
func BenchmarkDeriveL(b *testing.B)   { benchDerive(b, jobs.L()) }

// BenchmarkMoveOneOfM is one step of a drag: one pose of 48 changes, every time to another
// place, or the arrangement would be lent too.
func BenchmarkMoveOneOfM(b *testing.B) {
	p := jobs.M(1)
	build := engine.Derive(p, nil)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		q := p
		q.Arrangements = append([]plan.Arrangement(nil), p.Arrangements...)
		q.Arrangements[0].Poses = append([]plan.Pose(nil), p.Arrangements[0].Poses...)
		q.Arrangements[0].Poses[7].X += unit.Length(i%16) * unit.Millimetre
		build = engine.Derive(q, &build)
	}
}
