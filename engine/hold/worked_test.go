package hold

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A calculator follows printed sums: sum of products, with ( ) and √( ).
type calculator struct {
	*testing.T
	rest string
}

func (c *calculator) sum() float64 {
	v := c.product()
	for {
		switch {
		case c.takes(" + "):
			v += c.product()
		case c.takes(" − "):
			v -= c.product()
		default:
			return v
		}
	}
}

func (c *calculator) product() float64 {
	v := c.number()
	for {
		switch {
		case c.takes(" x "):
			v *= c.number()
		case c.takes(" / "):
			v /= c.number()
		default:
			return v
		}
	}
}

func (c *calculator) number() float64 {
	switch {
	case c.takes("√("):
		v := c.sum()
		require.True(c, c.takes(")"))
		return math.Sqrt(v)
	case c.takes("("):
		v := c.sum()
		require.True(c, c.takes(")"))
		return v
	case c.takes("−"):
		return -c.number()
	}
	n := 0
	for n < len(c.rest) && strings.ContainsRune("0123456789.", rune(c.rest[n])) {
		n++
	}
	v, err := strconv.ParseFloat(c.rest[:n], 64)
	require.NoError(c, err, c.rest)
	c.rest = c.rest[n:]
	return v
}

func (c *calculator) takes(s string) (ok bool) {
	c.rest, ok = strings.CutPrefix(c.rest, s)
	return ok
}

// follow checks one printed line to half of its last digit, and returns its result.
func follow(t *testing.T, l Line) float64 {
	text := l.Text()
	sum, rest, ok := strings.Cut(text, " = ")
	require.True(t, ok, text)
	c := calculator{t, sum}
	got := c.sum()
	require.Empty(t, c.rest, text)
	result, _, _ := strings.Cut(rest, " ")
	want, err := strconv.ParseFloat(strings.Replace(result, "−", "-", 1), 64)
	require.NoError(t, err, text)
	_, fraction, _ := strings.Cut(result, ".")
	half := 0.5
	for range len(fraction) {
		half /= 10
	}
	// zeros at the end are not printed: then more digits agree than stand there
	require.InDelta(t, want, got, half*(1+1e-9), text)
	return want
}

// Every printed line of every shelf of every example comes out by a calculator, and its uses
// are those of the verdict.
func TestWorkedLinesComeOut(t *testing.T) {
	lines, shown := 0, map[Kind]int{}
	for _, x := range examples(t) {
		v, err := x.r.Judge(x.site)
		require.NoError(t, err)
		for i, c := range v.Shelves {
			kg := min(c.Alone, 50)
			out, err := x.r.Worked(x.site, i, kg, c.On)
			require.NoError(t, err)
			reached := 0.0
			for _, l := range out {
				lines++
				require.True(t, words.Has("worked."+l.Key), l.Key)
				got := follow(t, l)
				if l.Kind != "" {
					shown[l.Kind]++
					reached = max(reached, got)
				}
			}
			if kg == c.Alone && kg > 0 {
				require.InDelta(t, 1, reached, 0.01, "%s %s %s", x.name, c.Board, c.Governs.Kind)
			}
			sameUses(t, &x, i, kg, c.On, out)
		}
	}
	require.Greater(t, lines, 1000)
	t.Log(lines, shown)
}

// sameUses compares the printed uses with those that the verdict has.
func sameUses(t *testing.T, x *example, shelf int, kg float64, on []Span, out []Line) {
	j, err := x.r.judged(x.site, []load{{shelf, x.r.Shelves[shelf].way(on), kg}})
	require.NoError(t, err)
	most := map[Kind]float64{}
	for _, u := range j.uses {
		most[u.Kind] = max(most[u.Kind], u.Part)
	}
	for _, l := range out {
		if l.Kind != "" {
			require.LessOrEqual(t, follow(t, l), most[l.Kind]*1.01+0.001, "%s %s", x.name, l.Kind)
		}
	}
}

// The worked example of 15 kg: books 147.1 N; 91 N and 64.7 MPa of 140.7 at each rod but for
// the wood of its bores and pockets, which the example leaves in; its screw line by line.
func TestWorkedLinesOfTheWorkedExample(t *testing.T) {
	w := plated(t, 60*mm, 10*mm, -30*mm, 0)
	r, err := Respond(&w.m, Hanging{Turn: -unit.QuarterTurn}, Lining{12.5, true}, 12)
	require.NoError(t, err)
	out, err := r.Worked(w.site, 0, 15, nil)
	require.NoError(t, err)
	first := map[string]Line{}
	for _, l := range out {
		if _, ok := first[l.Key]; !ok {
			first[l.Key] = l
		}
	}
	require.Equal(t, "15 x 9.807 = 147.1 N", text(first["things"]))
	require.Equal(t, "235 / 1.67 = 140.7 MPa", text(first["rod-limit"]))
	require.Equal(t, "3.142 x 12 x 12 x 12 / 32 = 169.7 mm³", text(first["rod-section"]))
	require.InDelta(t, 64.7, follow(t, first["rod-stress"]), 0.6)
	require.InDelta(t, 0.46, follow(t, first["use-rod-bends"]), 0.005)
	require.InDelta(t, 0.78, follow(t, first["use-screw-draws"]), 0.015)
}

func text(l Line) string { return l.Text() }
