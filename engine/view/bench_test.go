package view_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/document"
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
)

// many is a wall of 48 modules of four boards, 8 by 6, about 600 faces.
func many() (plan.Wall, wall.Result, []module.Result) {
	w := plan.Wall{
		ID: "w1", Width: 9000 * mm, Height: 3000 * mm, Build: plan.BuildStuds,
		Studs: plan.Studs{First: document.Some(100 * mm), Spacing: document.Some(600 * mm), Width: document.Some(45 * mm), State: plan.EdgesFound},
	}
	var res wall.Result
	var all []module.Result
	for i := range 48 {
		id := fmt.Sprintf("m%d", i+1)
		var m module.Result
		switch i % 3 {
		case 0:
			m = chain(id, "white-oak", 220*mm, 34*mm, mms(700, 300, 700, 300), []unit.Angle{left, left, left, left}, true)
		case 1:
			m = chain(id, "black-walnut", 200*mm, 26*mm, mms(150, 800, 150), []unit.Angle{left, left}, false)
		default:
			m = chain(id, "white-ash", 250*mm, 26*mm, mms(400, 300, 400, 100), []unit.Angle{left, right, left}, false)
		}
		all = append(all, m)
		res.Placed = append(res.Placed, wall.Place(m, plan.Pose{
			Module: id, X: unit.Length(600+1100*(i%8)) * mm, Y: unit.Length(300+470*(i/8)) * mm, Turn: unit.Angle(90*(i%4)) * unit.Degree,
		}))
		for k := range 2 {
			res.Points = append(res.Points, wall.Point{
				Number: fmt.Sprint(2*i + k + 1), Module: id, Bracket: fmt.Sprintf("b%d", 2*i+k), What: "rod",
				X: unit.Length(450+1100*(i%8)+300*k) * mm, Y: unit.Length(300+470*(i/8)) * mm, In: wall.Structure{Kind: wall.InStud, State: plan.EdgesFound},
			})
		}
	}
	return w, res, all
}

func BenchmarkWall48(b *testing.B) {
	w, r, m := many()
	o := view.Options{Shallow: true, ShowStuds: true, ShowMarks: true}
	b.ReportAllocs()
	for b.Loop() {
		d := view.Wall(w, r, m, o)
		b.ReportMetric(float64(len(d.Items)), "items")
	}
}

func BenchmarkSVG48(b *testing.B) {
	w, r, m := many()
	d := view.Wall(w, r, m, view.Options{Shallow: true, ShowStuds: true, ShowMarks: true})
	o := drawing.SVGOptions{Scale: 0.2, Woods: view.Woods(), Grain: -1}
	b.ReportAllocs()
	for b.Loop() {
		b.ReportMetric(float64(len(drawing.SVG(d, o))), "bytes")
	}
}

// A wall of 48 modules stays a file of ordinary size.
func TestSizeOfAFullWall(t *testing.T) {
	w, r, m := many()
	d := view.Wall(w, r, m, view.Options{Shallow: true, ShowStuds: true, ShowMarks: true, ShowSizes: true})
	for _, scale := range []float64{0.1, 0.2, 1} {
		grain := len(drawing.SVG(d, drawing.SVGOptions{Scale: scale, Woods: view.Woods(), Grain: -1}))
		plain := len(drawing.SVG(d, drawing.SVGOptions{Scale: scale, Woods: view.Woods()}))
		t.Logf("scale %v: %d bytes with grain, %d without", scale, grain, plain)
		require.Less(t, grain, 3_000_000)
		require.Less(t, plain, 300_000)
	}
}
