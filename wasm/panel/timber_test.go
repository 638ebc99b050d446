package panel

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/wood"
)

// exactContrast is the formula of WCAG 2.2 with the curve of sRGB itself (IEC 61966-2-1).
func exactContrast(a, b rgb) float64 {
	light := func(c rgb) float64 {
		l := 0.0
		for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
			v := c[i] / 255
			if v <= 0.04045 {
				v /= 12.92
			} else {
				v = math.Pow((v+0.055)/1.055, 2.4)
			}
			l += weight * v
		}
		return l + 0.05
	}
	return max(light(a), light(b)) / min(light(a), light(b))
}

// The words of the stick can be read on every wood and on its grain, by day and in the
// evening; and a wood that is pale or dark enough is shown as it is.
func TestTheStickIsLegibleInEveryWood(t *testing.T) {
	untouched := 0
	for _, w := range wood.All() {
		for _, dark := range []bool{false, true} {
			k := timberOf(w.Look, dark)
			for _, under := range []rgb{k.wood, k.wood2} {
				require.GreaterOrEqual(t, exactContrast(under, k.ink), 4.5, w.ID)
				require.GreaterOrEqual(t, exactContrast(under.mixed(k.line, grainShare), k.ink), 4.5, w.ID)
			}
			if !dark && k.wood.hex() == w.Look.Colour {
				untouched++
			}
		}
	}
	require.Greater(t, untouched, len(wood.All())/3)
}

func TestTheStickIsOfTheJobsWood(t *testing.T) {
	s := desk(t, "music")
	page := Page(&s)
	w, _ := wood.Find(mostUsed(s.Plan.Modules))
	require.Contains(t, Write(page), timberOf(w.Look, false).wood.hex())
}
