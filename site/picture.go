package site

import (
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
)

// Wall draws one arrangement as people see it: with depth, studs and bracket points
// showing through, by day or with its lights on in the evening.
func Wall(p plan.Plan, b engine.Build, r wall.Result, evening bool) drawing.Drawing {
	w, _ := p.Wall(r.Wall)
	a, _ := p.Arrangement(r.Arrangement)
	o := view.Options{Style: b.Style(), Shallow: true, Evening: evening, ShowStuds: true, ShowMarks: true, Lines: a.Lines}
	for _, m := range p.Modules {
		if m.GrainWrap {
			o.Wrapped = append(o.Wrapped, m.ID)
		}
	}
	return view.Wall(w, r, b.Modules, o)
}

// SVG writes a picture as a file. grain is how many of the largest faces show their
// grain: negative, all of them.
func SVG(d drawing.Drawing, theme drawing.Theme, grain int) []byte {
	return []byte(drawing.SVG(d, drawing.SVGOptions{Theme: theme, Grain: grain, Woods: view.Woods()}))
}
