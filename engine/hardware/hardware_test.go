package hardware

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
)

func TestEveryFamilyHasSizes(t *testing.T) {
	seen := map[string]bool{}
	for _, b := range Brackets() {
		require.False(t, seen[b.ID], b.ID)
		seen[b.ID] = true
		require.Contains(t, Families(), b.Family)
		got, ok := Bracket(b.ID)
		require.True(t, ok)
		require.Equal(t, b, got)
		require.NotEmpty(t, b.Basis, b.ID)
	}
	for _, f := range Families() {
		require.True(t, IsFamily(string(f)))
		require.GreaterOrEqual(t, len(Of(f)), 3, f)
		_, ok := Bracket(string(f))
		require.True(t, ok, "a family's name alone stands for its usual size: %s", f)
	}
	_, ok := Bracket("nail")
	require.False(t, ok)
}

// A plate takes its screws' heads and its rod, none over another.
func TestPlatesTakeTheirScrews(t *testing.T) {
	for _, b := range Brackets() {
		for _, h := range b.Screws {
			s, ok := FindScrew(h.Screw)
			require.True(t, ok, "%s: %s", b.ID, h.Screw)
			require.GreaterOrEqual(t, s.Diameter, 4496*um, "%s: never under 4.5 mm (No. 9)", b.ID)
			if b.Rod > 0 {
				require.Greater(t, max(h.DU.Abs(), h.DW.Abs()), (b.Rod+s.Diameter)/2, "%s: screw into the rod", b.ID)
			}
			if b.Plate.AlongW == 0 {
				continue
			}
			require.LessOrEqual(t, 2*h.DW.Abs()+s.Head, b.Plate.AlongW, "%s: head over the plate's edge", b.ID)
			if b.Plate.AlongU > 0 {
				require.LessOrEqual(t, 2*h.DU.Abs()+s.Diameter, b.Plate.AlongU, "%s: hole over the plate's end", b.ID)
			}
		}
		require.LessOrEqual(t, b.Root, b.Rod, b.ID)
	}
}

// The stud face is 38 mm (1 1/2 in); 1.5 D from the edge leaves 38 − 2 · 1.5 D: a
// 4.5 mm screw may stand ±12.25 from the middle.
func TestNarrowPlatesHitAStud(t *testing.T) {
	for _, id := range []string{"plate-back-8", "plate-back-10", "plate-back-12", "plate-back-14", "bar-12-400", "bar-14-400"} {
		b, _ := Bracket(id)
		for _, h := range b.Screws {
			s, _ := FindScrew(h.Screw)
			require.LessOrEqual(t, 2*h.DU.Abs()+3*s.Diameter, 38*mm, id)
		}
	}
}

// ISO 724: d₃ = d − 1.22687 P, M12 coarse has P = 1.75 mm and d₃ = 9.853 mm.
func TestRootOfAThreadedRod(t *testing.T) {
	b, _ := Bracket("plate-back-12-threaded")
	require.InDelta(t, 12-1.22687*1.75, b.Root.MM(), 0.0005)
}

func TestSized(t *testing.T) {
	require.Equal(t, "plate-back-12", Sized("plate-back", 200*mm, unit.Metric))
	require.Equal(t, "rod-structure-1-2in", Sized("rod-structure", 8*in, unit.Inches))
	require.Equal(t, "cleat-16in", Sized("cleat", 8*in, unit.Inches))
	require.Equal(t, "plate-back-16", Sized("plate-back-16", 100*mm, unit.Metric))
	require.Equal(t, "", Sized("nail", 100*mm, unit.Metric))
	for _, f := range Families() {
		for _, depth := range []unit.Length{100 * mm, 200 * mm, 260 * mm, 320 * mm} {
			for _, system := range []unit.System{unit.Metric, unit.Inches, ""} {
				id := Sized(string(f), depth, system)
				b, ok := Bracket(id)
				require.True(t, ok, id)
				require.Equal(t, f, b.Family)
				require.NotEqual(t, Open, b.Lock, "the usual size is locked")
			}
		}
	}
}

// Cut lengths as the wiring guides give them: 12 V 60/m 50 mm, 120/m 25 mm; 24 V 60/m
// 100 mm, 120/m 50 mm.
func TestCutUnits(t *testing.T) {
	for id, want := range map[string]unit.Length{
		"strip-12-4.8": 50 * mm, "strip-12-9.6": 25 * mm, "strip-24-4.8": 100 * mm, "strip-24-9.6": 50 * mm,
	} {
		s, ok := FindStrip(id)
		require.True(t, ok, id)
		require.Equal(t, want, s.CutUnit(), id)
	}
}

// 14.4 W/m at 12 V is 60 chips of 0.06 A in 20 groups of 3 (a wiring guide's own sum).
func TestPowerOfAStrip(t *testing.T) {
	s, _ := FindStrip("strip-12-14.4")
	require.InDelta(t, 12*0.06*float64(s.Chips/s.Group), s.Watts, 1e-12)
}

// Two tracks of the assumed section at the resistivity of IEC 60028.
func TestLoopOfAStrip(t *testing.T) {
	for _, s := range Strips() {
		section := 0.07 * (s.Width.MM() - 2) / 2
		require.InDelta(t, 2*0.017241/section, s.Loop, 0.0005, s.ID)
	}
}

func TestSourcesAndChannels(t *testing.T) {
	for _, s := range Sources() {
		got, ok := FindSource(s.ID)
		require.True(t, ok)
		require.Equal(t, s, got)
		require.Equal(t, s.WattHours > 0, s.Efficiency > 0 && s.Discharge > 0, s.ID)
		if s.WattHours == 0 {
			require.LessOrEqual(t, s.Watts, map[float64]float64{12: 60, 24: 96}[s.Volts], s.ID)
		}
	}
	for _, c := range Channels() {
		require.Less(t, c.Inside, c.Groove, c.ID)
	}
}

func BenchmarkBracket(b *testing.B) {
	for b.Loop() {
		Bracket("rail-24in")
	}
}
