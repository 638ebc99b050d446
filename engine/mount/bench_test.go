package mount

import "testing"

func BenchmarkFit(b *testing.B) {
	for _, kind := range []string{"plate-back-12", "rod-structure", "cleat-400"} {
		b.Run(kind, func(b *testing.B) {
			i := on(kind)
			i.At = 60 * mm
			b.ReportAllocs()
			for b.Loop() {
				Fit(i)
			}
		})
	}
}
