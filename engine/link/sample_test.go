package link

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// shelves is a wall of so many modules in so many arrangements, of the shapes and sizes
// that a maker would give them, placed on whole steps at random.
func shelves(t testing.TB, system unit.System, modules, arrangements int) plan.Plan {
	w := work{t: t, r: rand.New(rand.NewPCG(1, 2)), p: plan.New(system), step: 5 * unit.Millimetre}
	if system == unit.Inches {
		w.step = unit.Inch / 16
	}
	w.p.Job = plan.Job{Number: "L-014", Title: "Long wall", Maker: "Bench by the canal", Client: "The corner house", Note: "ring twice"}
	w.do(edit.AddWall{With: edit.Changes(edit.Change("width", w.near(9000)), edit.Change("height", w.near(2600)))})
	for i := range arrangements {
		w.do(edit.AddArrangement{Wall: "w1", Name: "Choice " + strconv.Itoa(i+1)})
	}
	for i := range modules {
		w.module(i)
		for a := range arrangements {
			w.do(edit.Place{Arrangement: "a" + strconv.Itoa(a+1), Module: "m" + strconv.Itoa(i+1), With: edit.Changes(
				edit.Change("x", w.near(w.r.IntN(9000))), edit.Change("y", w.near(w.r.IntN(2600))),
				edit.Change("turn", unit.Angle(w.r.IntN(4))*unit.QuarterTurn))})
		}
	}
	return w.p
}

type work struct {
	t    testing.TB
	r    *rand.Rand
	p    plan.Plan
	step unit.Length
}

func (w *work) do(e edit.Edit) {
	next, _, err := edit.Apply(w.p, e)
	require.NoError(w.t, err)
	w.p = next
}

// near is a length in millimetres on a whole step.
func (w *work) near(mm int) unit.Length { return unit.Length(mm) * unit.Millimetre / w.step * w.step }

func (w *work) module(i int) {
	shapes := []string{"shelf", "L", "U", "Z", "box"}
	e := edit.AddModule{Shape: shapes[w.r.IntN(len(shapes))], Name: "Piece " + strconv.Itoa(i+1),
		Width: w.near(300 + w.r.IntN(600)), Depth: w.near(200), Thickness: w.near(25), Wood: "white-oak"}
	if e.Shape != "shelf" {
		e.Height = w.near(200 + w.r.IntN(300))
	}
	w.do(e)
	m := "m" + strconv.Itoa(i+1)
	for _, at := range []int{100, 250} {
		w.do(edit.AddBracket{Module: m, With: edit.Changes(edit.Change("board", 1), edit.Change("at", w.near(at+w.r.IntN(40))))})
	}
	if i%4 == 0 {
		w.do(edit.AddLight{Module: m, With: edit.Changes(edit.Change("first", 1), edit.Change("face", "B"),
			edit.Change("width", w.near(12)), edit.Change("depth", w.near(8)), edit.Change("strip", "strip-24-10"))})
	}
}

// odd is a plan with what columns do not expect: members of later versions at every
// depth, lengths off every step, ids and texts of every sort, a shop of its own.
func odd(t testing.TB) plan.Plan {
	p := shelves(t, unit.Metric, 5, 2)
	extra := func(value string) document.Extra { return document.Extra{{Key: "later", Value: value}} }
	p.Extra, p.Job.Extra, p.Units.Extra, p.Counters.Extra = extra(`{"a":[1,2.5,null]}`), extra(`"x"`), extra("true"), extra("0")
	p.Shop.Name = "Bench"
	p.Shop.Covers.Bore = 7 * unit.Millimetre
	p.Shop.Extra, p.Shop.Tape.Extra = extra("[]"), extra("1e30")
	p.Modules[0].Extra, p.Modules[0].Boards[0].Extra = extra("{}"), extra(`"ü 木 \u0000"`)
	p.Modules[1].Boards[0].Length.Value += unit.Nanometre
	p.Modules[2].Name = "Fenster · “links”"
	p.Modules[3].ID = "shelf of old"
	p.Arrangements[0].Poses[1].X = -123_456_789 * unit.Nanometre
	p.Arrangements[0].Poses[2].Turn = 33*unit.Degree + unit.MicroDegree
	p.Arrangements[1].Extra = extra("-0.5")
	return p
}

func text(t testing.TB, p plan.Plan) string {
	t.Helper()
	b, err := plan.Encode(p)
	require.NoError(t, err)
	return string(b)
}
