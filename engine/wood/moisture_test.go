package wood

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}

// Every row of emc.csv: the equation, worked out elsewhere to ten digits with either set of
// coefficients, and the figure printed. The handbook's table 4-2 is held to 0.1: it was worked
// out from the equation, and half of its rows come from memory. The rounded shop values are
// whole percents. The row at 140 °F quotes a table of kilns, which the equation is known to
// overstate: 8.4 for 8.0.
func TestEquilibriumIsThePrinted(t *testing.T) {
	rows := published(t, "emc.csv")
	require.Len(t, rows, 37)
	for _, r := range rows {
		f, h := number(t, r["temp_f"]), number(t, r["rh_pct"])/100
		inF, ok := EquilibriumF(f, h)
		require.True(t, ok)
		inC, ok := Equilibrium(number(t, r["temp_c"]), h)
		require.True(t, ok)
		requirePrinted(t, r["emc_eq_fahrenheit_pct"], inF, "eq. 4-5, Fahrenheit")
		requirePrinted(t, r["emc_eq_celsius_pct"], inC, "eq. 4-5, Celsius")
		within := 0.1
		switch {
		case strings.Contains(r["source"], "rounded shop values"):
			within = 0.5
		case f > 120:
			within = 0.4
			require.Greater(t, inC, number(t, r["emc_table_pct"])+0.3)
		}
		require.InDelta(t, number(t, r["emc_table_pct"]), inC, within, "%s °F, %s %%", r["temp_f"], r["rh_pct"])
	}
}

// Worked out elsewhere from eq. 4-5 to ten digits.
func TestEquilibriumWorkedExamples(t *testing.T) {
	for _, c := range []struct {
		temperature, humidity float64
		of                    func(t, h float64) (float64, bool)
		want                  string
	}{
		{20, 0.35, Equilibrium, "6.963230585"},
		{20, 0.50, Equilibrium, "9.27114071"},
		{20, 0.65, Equilibrium, "11.99626722"},
		{25, 0.40, Equilibrium, "7.608177614"},
		{70, 0.40, EquilibriumF, "7.702052301"}, // table 4-2 prints 7.7
	} {
		got, ok := c.of(c.temperature, c.humidity)
		require.True(t, ok)
		requirePrinted(t, c.want, got, c.want)
	}
}

func TestEquilibriumHasItsRange(t *testing.T) {
	nan := math.NaN()
	for _, c := range [][2]float64{{-3, 0.5}, {131, 0.5}, {20, -0.01}, {20, 1}, {nan, 0.5}, {20, nan}, {math.Inf(1), 0.5}} {
		_, ok := Equilibrium(c[0], c[1])
		require.False(t, ok, "%v", c)
		_, ok = EquilibriumF(c[0]*1.8+32, c[1])
		require.False(t, ok, "%v", c)
	}
	for _, c := range [][2]float64{{20, -1}, {20, 40}, {-3, 8}, {131, 8}, {nan, 8}, {20, nan}} {
		_, ok := Humidity(c[0], c[1])
		require.False(t, ok, "%v", c)
	}
	dry, ok := Equilibrium(20, 0)
	require.True(t, ok)
	require.Zero(t, dry)
}

// The two sets of coefficients are one equation rounded twice; damper air makes damper wood,
// warmer air drier wood in the range of rooms; and Humidity leads back.
func TestEquilibriumProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		temperature := rapid.Float64Range(-1, 50).Draw(t, "°C")
		h := rapid.Float64Range(0, 0.94).Draw(t, "humidity")
		mc, ok := Equilibrium(temperature, h)
		require.True(t, ok)
		f, ok := EquilibriumF(temperature*1.8+32, h)
		require.True(t, ok)
		require.InDelta(t, mc, f, 0.05)
		damper, _ := Equilibrium(temperature, h+0.01)
		require.Greater(t, damper, mc)
		if temperature > 5 && temperature < 45 && h > 0.1 {
			warmer, _ := Equilibrium(temperature+2, h)
			require.Less(t, warmer, mc)
		}
		back, ok := Humidity(temperature, mc)
		require.True(t, ok)
		require.InDelta(t, h, back, 1e-12)
	})
}

// made is a wood with one coefficient and one shrinkage either way.
func made(c, s float64) Facts {
	return Facts{CR: c, CT: c, ShrinkRadial: s, ShrinkTangential: s}
}

// Printed: Wood Handbook, FPL-GTR-190 (2010), p. 13-17, white fir 232 mm from 8 to 11 %,
// 1.7 mm; a flooring reference, 5 in with 0.00129 from 6 to 9 %, 0.019 in. The others were
// worked out elsewhere to ten digits, from eq. 13-2 and the coefficients of table 13-5, and
// the last from eq. 13-3.
func TestMovementWorkedExamples(t *testing.T) {
	of := func(id string) Facts {
		s, ok := Find(id)
		require.True(t, ok)
		return s.Facts
	}
	dry, _ := Equilibrium(20, 0.30)
	damp, _ := Equilibrium(20, 0.60)
	for _, c := range []struct {
		wood     Facts
		sawn     Sawing
		size     float64
		from, to float64
		want     string
		printed  string
	}{
		{of("white-fir"), FlatSawn, 232, 8, 11, "1.7052", "1.7"},
		{made(0.00129, 5), FlatSawn, 5, 6, 9, "0.01935", "0.019"},
		{of("black-walnut"), FlatSawn, 300, 6.9, 11, "3.3702", ""},
		{of("black-walnut"), QuarterSawn, 300, 6.9, 11, "2.337", ""},
		{of("white-oak"), FlatSawn, 280, dry, damp, "4.917443826", ""},
		{of("white-oak"), FlatSawn, 300, 4, 18, "16.17161716", ""},
	} {
		got, ok := c.wood.Move(c.sawn, c.from, c.to)
		require.True(t, ok)
		requirePrinted(t, c.want, c.size*got.Width, c.want)
		if c.printed != "" {
			require.InDelta(t, number(t, c.printed), c.size*got.Width, 0.5*math.Pow10(-len(c.printed)+2), c.want)
		}
	}
}

// The thickness moves with the other coefficient: 24 mm of white oak over 4 % changes by
// 0.17 mm flat-sawn and 0.35 mm quarter-sawn; of what is not known, the greater counts.
func TestThicknessMovesWithTheOtherCoefficient(t *testing.T) {
	oak, _ := Find("white-oak")
	flat, _ := oak.Move(FlatSawn, 8, 12)
	quarter, _ := oak.Move(QuarterSawn, 8, 12)
	unknown, _ := oak.Move(AnySawing, 8, 12)
	requirePrinted(t, "0.17", 24*flat.Thickness, "flat-sawn")
	requirePrinted(t, "0.35", 24*quarter.Thickness, "quarter-sawn")
	require.Equal(t, Moved{flat.Thickness, flat.Width}, quarter)
	require.Equal(t, Moved{flat.Width, quarter.Thickness}, unknown)
}

// Eq. 13-3 for tangential shrinkage of 8.2 % (red maple): 0.002891396333, and table 13-5
// prints 0.00289. It reproduces the hardwoods whose rows we saw in print, to a unit of the
// last digit, but for the oaks, which stand there as commercial groups, and sweet birch, which
// has the row of yellow birch.
func TestCoefficientIsThePrinted(t *testing.T) {
	requirePrinted(t, "0.002891396333", Coefficient(8.2), "eq. 13-3 at 10 %")
	checked := 0
	for _, s := range All() {
		seen := s.Group == Hardwood && s.Sources.Shrinkage == Read && s.Sources.Movement == Read
		if !seen || s.ID == "white-oak" || s.ID == "northern-red-oak" || s.ID == "sweet-birch" {
			continue
		}
		require.InDelta(t, s.CR, Coefficient(s.ShrinkRadial), 1.01e-5, s.ID)
		require.InDelta(t, s.CT, Coefficient(s.ShrinkTangential), 1.01e-5, s.ID)
		checked++
	}
	require.Equal(t, 18, checked)
}

// Eq. 13-3 is the straight line of eq. 4-9 seen from the size at the start: by shrinkage from
// the green size, S (1 − M/30), at either end.
func TestBeyondTheTableIsTheStraightLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(All()).Draw(t, "species")
		from := rapid.Float64Range(0, 5.9).Draw(t, "from")
		to := rapid.Float64Range(0, 40).Draw(t, "to")
		got, ok := s.Move(FlatSawn, from, to)
		require.Equal(t, s.CR > 0, ok)
		if !ok {
			return
		}
		size := func(mc, shrink float64) float64 { return 1 - shrink/100*(1-min(mc, 30)/30) }
		require.InDelta(t, size(to, s.ShrinkTangential)/size(from, s.ShrinkTangential)-1, got.Width, 1e-12)
		require.InDelta(t, size(to, s.ShrinkRadial)/size(from, s.ShrinkRadial)-1, got.Thickness, 1e-12)
	})
}

func TestMoveProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(All()).Draw(t, "species")
		a, b := rapid.Float64Range(6, 14).Draw(t, "a"), rapid.Float64Range(6, 14).Draw(t, "b")
		flat, ok := s.Move(FlatSawn, a, b)
		back, _ := s.Move(FlatSawn, b, a)
		any, _ := s.Move(AnySawing, a, b)
		require.Equal(t, s.Sources.Movement != Gap, ok, s.ID)
		require.Equal(t, flat, Moved{-back.Width, -back.Thickness})
		require.Equal(t, b > a && ok, flat.Width > 0)
		require.Equal(t, max(math.Abs(flat.Width), math.Abs(flat.Thickness)), math.Abs(any.Width))
		require.Equal(t, any.Width, any.Thickness)
	})
}

func TestMoveWithoutFigures(t *testing.T) {
	oak, _ := Find("white-oak")
	cedar, _ := Find("spanish-cedar")
	for _, c := range []struct {
		f        Facts
		from, to float64
	}{{cedar.Facts, 8, 10}, {cedar.Facts, 4, 10}, {Facts{}, 8, 10}, {oak.Facts, math.NaN(), 8}, {oak.Facts, 8, math.NaN()}} {
		_, ok := c.f.Move(AnySawing, c.from, c.to)
		require.False(t, ok)
	}
}
