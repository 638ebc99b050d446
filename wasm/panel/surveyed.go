package panel

import (
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// Survey's dimensions: the wall's size round it, the studs in a row across it, and of
// the obstacle that is chosen its place and size; of others only the size, where there
// is room.

// surveyOut is how far the wall's own dimensions stand from it, in pixels.
const surveyOut = 20.0

// surveyRow is the height of the row of studs, as a share of the wall's.
const surveyRow = 0.62

// surveyMarks are the lines of Survey's dimensions, in the drawing.
func surveyMarks(s *app.State, w plan.Wall, box drawing.Box, px float64) kids {
	if s.Job != app.Survey {
		return nil
	}
	t := tracer{box: box}
	width, height := w.Width.MM(), w.Height.MM()
	t.dimension(0, height+surveyOut*px, width, height+surveyOut*px, px)
	t.dimension(-surveyOut*px, 0, -surveyOut*px, height, px)
	if s.On[app.Studs] {
		for _, st := range w.Studs.Each {
			x, y, k := st.X.MM(), surveyRow*height, 5*px
			t.segment(x-k, y, x+k, y)
			t.segment(x, y-k, x, y+k)
		}
	}
	return kids{ink("survey-lines", "dim", t.b.String())}
}

// dimension traces a level or plumb dimension line with its bars and ticks.
func (t *tracer) dimension(x1, y1, x2, y2, px float64) {
	t.segment(x1, y1, x2, y2)
	bx, by := 0.0, 8*px
	if x1 == x2 {
		bx, by = by, bx
	}
	for _, e := range [...][2]float64{{x1, y1}, {x2, y2}} {
		t.segment(e[0]-bx, e[1]-by, e[0]+bx, e[1]+by)
		t.segment(e[0]-4*px, e[1]-4*px, e[0]+4*px, e[1]+4*px)
	}
}

// surveyFigures are the figures of Survey's dimensions.
func surveyFigures(s *app.State) kids {
	if s.Job != app.Survey {
		return nil
	}
	now, _ := base(s)
	w, ok := now.Wall(s.Wall)
	if !ok {
		return nil
	}
	px := unit.Nearest(pixelOf(s.Camera))
	up := func(f fig) fig { f.up = true; return f }
	out := kids{
		spot("wall/width", w.Width/2, w.Height+(surveyOut+4)*px, w.Width, s).button(s,
			lengthField(s, "fig-wall/width", term(s, "page.wall-width"), line("set-wall", "wall", w.ID, "width", "$"), w.Width)),
		up(spot("wall/height", -(surveyOut+4)*px, w.Height/2, w.Height, s)).button(s,
			lengthField(s, "fig-wall/height", term(s, "page.wall-height"), line("set-wall", "wall", w.ID, "height", "$"), w.Height)),
	}
	if s.On[app.Studs] {
		out.add(studFigures(s, w, px)...)
	}
	for i := range w.Obstacles {
		out.add(obstacleFigures(s, w, i, px)...)
	}
	return out
}

// studFigures are the places of the studs that are known one by one.
func studFigures(s *app.State, w plan.Wall, px unit.Length) (out kids) {
	y := w.Height.MulDiv(surveyRow*100, 100) + 9*px
	for i, st := range w.Studs.Each {
		n := numeral(i + 1)
		f := spot("stud/"+n, st.X, y, st.X, s)
		out.add(f.button(s, lengthField(s, "fig-"+f.id, say(s, "page.stud-at", words.Name("number", n)),
			line("set-stud", "wall", w.ID, "stud", i+1, "x", "$"), st.X)))
	}
	return out
}

// obstacleFigures are the sizes of an obstacle, and its place while it is chosen.
func obstacleFigures(s *app.State, w plan.Wall, i int, px unit.Length) (out kids) {
	o := w.Obstacles[i]
	on := s.At.Kind == "obstacle" && s.At.ID == o.ID
	if !on && (o.Width < 100*px || o.Height < 60*px) {
		return nil
	}
	set := func(member, label string, now unit.Length) app.Field {
		return lengthField(s, "fig-"+o.ID+"/"+member, say(s, label, words.Name("what", obstacleName(s, w, i))),
			line("set-obstacle", "wall", w.ID, "obstacle", o.ID, member, "$"), now)
	}
	up := func(f fig) fig { f.up = true; return f }
	out = append(out,
		spot(o.ID+"/width", o.X+o.Width/2, o.Y+o.Height+6*px, o.Width, s).button(s, set("width", "page.obstacle-width", o.Width)),
		up(spot(o.ID+"/height", o.X+o.Width+18*px, o.Y+o.Height/2, o.Height, s)).button(s, set("height", "page.obstacle-height", o.Height)))
	if !on {
		return out
	}
	left := spot(o.ID+"/x", o.X-8*px, o.Y+4*px, o.X, s)
	left.anchor = drawing.AnchorEnd
	return append(out, left.button(s, set("x", "page.obstacle-x", o.X)),
		spot(o.ID+"/y", o.X+o.Width/2, o.Y-20*px, o.Y, s).button(s, set("y", "page.obstacle-y", o.Y)))
}
