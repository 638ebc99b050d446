package wood

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// published reads a copy of printed rows below testdata/reference.
func published(t *testing.T, file string) []map[string]string {
	f, err := os.Open("../../testdata/reference/" + file)
	require.NoError(t, err)
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var rows []map[string]string
	for _, r := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			row[name] = r[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// requirePrinted holds got against a printed figure, half its last digit apart at
// most. An empty figure must be 0 in the table.
func requirePrinted(t *testing.T, printed string, got float64, what string) {
	t.Helper()
	if printed == "" {
		require.Zero(t, got, what)
		return
	}
	want, err := strconv.ParseFloat(printed, 64)
	require.NoError(t, err)
	digits := 0
	if _, after, ok := strings.Cut(printed, "."); ok {
		digits = len(after)
	}
	half := 0.5 / math.Pow10(digits)
	require.InDelta(t, want, got, half*(1+1e-9), what)
}

func TestFactsAreTheHandbooks(t *testing.T) {
	rows, all := published(t, "species.csv"), All()
	require.Len(t, all, len(rows))
	for i, r := range rows {
		s := all[i]
		require.Equal(t, r["id"], s.ID)
		require.Equal(t, r["common_name"], s.Name)
		require.Equal(t, r["botanical_name"], s.Botanical)
		require.Equal(t, r["kind"], string(s.Group))
		requirePrinted(t, r["sg_green"], s.GBasic, s.ID)
		if r["sg_12pct"] != "" {
			requirePrinted(t, r["sg_12pct"], s.G12, s.ID)
		}
		requirePrinted(t, r["density_12pct_kg_m3"], float64(s.Density), s.ID)
		requirePrinted(t, r["moe_12pct_gpa"], float64(s.MOE)/1e9, s.ID)
		requirePrinted(t, r["mor_12pct_mpa"], float64(s.MOR)/1e6, s.ID)
		requirePrinted(t, r["tension_across_12pct_mpa"], float64(s.TensionAcross)/1e6, s.ID)
		requirePrinted(t, r["shrink_radial_pct"], s.ShrinkRadial, s.ID)
		requirePrinted(t, r["shrink_tangential_pct"], s.ShrinkTangential, s.ID)
		requirePrinted(t, r["c_r_per_pct"], s.CR, s.ID)
		requirePrinted(t, r["c_t_per_pct"], s.CT, s.ID)
		require.Equal(t, Sources{Basis(r["basis_sg_green"]), Basis(r["basis_mech"]), Basis(r["basis_shrink"]), Basis(r["basis_c"]), Basis(r["basis_tension"])}, s.Sources)
	}
}

// Wood Handbook, FPL-GTR-190 (2010), table 4-6a prints 672 kg/m³ for G = 0.60 at 12 %.
func TestDensityAtOfThePrintedExample(t *testing.T) {
	f := Facts{Density: 672}
	requirePrinted(t, "672", float64(f.DensityAt(12)), "table 4-6a")
	ash, ok := Find("white-ash")
	require.True(t, ok)
	require.Equal(t, 0.6, ash.G12)
	requirePrinted(t, "672", float64(ash.DensityAt(12)), "table 4-6a")
}

// Eq. 4-13 by hand for Gb = 0.55 at 12 %: 0.55/(1 − 0.265·0.55·0.6) = 0.602706701.
func TestSpecificGravity(t *testing.T) {
	requirePrinted(t, "0.602706701", SpecificGravity(0.55, 12), "eq. 4-13")
	require.Equal(t, 0.55, SpecificGravity(0.55, 30))
	require.Equal(t, 0.55, SpecificGravity(0.55, 45))
}

// The tables print G at 12 % and density with it: 1000 G12 · 1.12 (eq. 4-14).
func TestDensityAt12IsThePrintedDensity(t *testing.T) {
	for _, s := range All() {
		require.InEpsilon(t, float64(s.Density), float64(s.DensityAt(12)), 1e-12, s.ID)
		require.InDelta(t, 1120*s.G12, float64(s.Density), 0.05, s.ID)
	}
}

func TestWetterIsHeavier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(All()).Draw(t, "species")
		lo := rapid.Float64Range(0, 29).Draw(t, "drier")
		hi := rapid.Float64Range(lo+1e-3, 30).Draw(t, "wetter")
		require.Less(t, s.DensityAt(lo), s.DensityAt(hi))
		require.Greater(t, SpecificGravity(s.GBasic, lo), SpecificGravity(s.GBasic, hi))
	})
}

func TestEverySpeciesHasItsLook(t *testing.T) {
	table := table()
	for i, l := range looks() {
		require.Equal(t, table[i].ID, l.id)
		for _, c := range []string{l.look.Colour, l.look.Line, l.look.Edge, l.look.End} {
			require.Len(t, c, 7, l.id)
			_, err := strconv.ParseUint(c[1:], 16, 32)
			require.NoError(t, err, l.id)
		}
		require.Positive(t, l.look.Ring, l.id)
		require.LessOrEqual(t, l.look.Contrast, 1.0, l.id)
	}
}

func TestFind(t *testing.T) {
	for _, want := range All() {
		got, ok := Find(want.ID)
		require.True(t, ok)
		require.Equal(t, want, got)
	}
	_, ok := Find("marble")
	require.False(t, ok)
}

func BenchmarkFind(b *testing.B) {
	for b.Loop() {
		Find("sapele")
	}
}
