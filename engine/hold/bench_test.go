package hold

import (
	"testing"

	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// All unit responses of a U on two rods.
func BenchmarkTray(b *testing.B) {
	for _, kind := range []string{"plate-back-12-open", "plate-back-12"} {
		b.Run(kind, func(b *testing.B) {
			m := module.Derive(tray(kind), shop.Default(unit.Metric))
			for b.Loop() {
				if _, err := Respond(&m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What a moved module costs, and what its settling and its worked lines do.
func BenchmarkJudge(b *testing.B) {
	for _, kind := range []string{"plate-back-12-open", "plate-back-12"} {
		m := module.Derive(tray(kind), shop.Default(unit.Metric))
		r, err := Respond(&m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
		if err != nil {
			b.Fatal(err)
		}
		site := studs(&m)
		b.Run(kind, func(b *testing.B) {
			for b.Loop() {
				if _, err := r.Judge(site); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run("settle "+kind, func(b *testing.B) {
			for b.Loop() {
				if _, err := r.Settle([]float64{10}, LimitBy("")); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
