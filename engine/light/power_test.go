package light

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/hardware"
)

// printed holds got against a figure with as many digits as it is printed with, half
// the last one apart at most.
func printed(t *testing.T, want string, got float64) {
	t.Helper()
	x, err := strconv.ParseFloat(want, 64)
	require.NoError(t, err)
	_, after, _ := strings.Cut(want, ".")
	require.InDelta(t, x, got, 0.5000001/math.Pow10(len(after)))
}

// Worked by hand from the formulas at the head of the package, with ρ of IEC 60028:
// 9.6 W/m on 0.9 m at 24 V.
func TestPower(t *testing.T) {
	const watts = 9.6 * 0.9
	printed(t, "8.64", watts)
	printed(t, "0.36", watts/24)
	printed(t, "10.8", watts/reserve)
	pack, ok := hardware.FindSource("battery-12-7ah")
	require.True(t, ok)
	printed(t, "7", runHours(pack, watts))
	require.Zero(t, runHours(pack, 0))
}

// 2.7 m of 14.4 W/m at 12 V takes 3.24 A: 3 m of 0.75 mm² lose 0.44688672 V, which is
// 3.724056 %; a loop of 0.1 Ω/m loses 0.4374 V fed at one end, 0.10935 V at both.
func TestDrop(t *testing.T) {
	const current = 2.7 * 14.4 / 12
	lead := leadDrop(3, 0.75, current)
	printed(t, "0.44688672", lead)
	printed(t, "3.724056", 100*lead/12)
	printed(t, "0.4374", stripDrop(0.1, 2.7, current))
	printed(t, "0.10935", bothDrop(0.1, 2.7, current))
}

// A 24 V source of 96 W with a fifth in reserve feeds 5.333333333 m of 14.4 W/m.
func TestLongestStripOfASource(t *testing.T) {
	printed(t, "5.333333333", longest(96, 14.4))
}

// The drop adds up over short pieces, each carrying what lies beyond it: a slow twin of
// the formula.
func TestDropIsTheSumOverPieces(t *testing.T) {
	const loop, long, current, n = 0.164, 4.0, 2.5, 20000
	one, both := 0.0, 0.0
	for i := range n {
		beyond := 1 - (float64(i)+0.5)/n
		one += loop * long / n * current * beyond
		if half := 0.5 - (float64(i)+0.5)/n; half > 0 {
			both += loop * long / n * current * half
		}
	}
	require.InEpsilon(t, one, stripDrop(loop, long, current), 1e-6)
	require.InEpsilon(t, both, bothDrop(loop, long, current), 1e-6)
}
