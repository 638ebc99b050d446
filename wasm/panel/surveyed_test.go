package panel

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine/drawing"
	"ledgewright/wasm/app"
)

// pictureSizes are those of the picture on a tablet both ways, a phone and a small one.
func pictureSizes() []app.Size {
	return []app.Size{{Width: 754, Height: 658}, {Width: 820, Height: 565}, {Width: 390, Height: 378}, {Width: 320, Height: 246}}
}

// Survey's figures stand apart, on every example at every size, whichever obstacle is
// chosen; and what has no place on the wall can be typed in the panel.
func TestSurveysFiguresStandApart(t *testing.T) {
	for _, name := range assets.Names() {
		for _, size := range pictureSizes() {
			s := desk(t, name, app.Resized{Size: size}, app.Go{Job: app.Survey})
			s.On = map[app.Switch]bool{app.Studs: true}
			w, _ := s.Plan.Wall(s.Wall)
			requireApart(t, &s, name, 0)
			lines := fieldLines(survey(&s))
			for _, f := range surveyOf(&s) {
				require.Contains(t, lines, f.field.Line, name)
			}
			for _, o := range w.Obstacles {
				for _, member := range []string{"width", "height", "x", "y"} {
					require.Contains(t, lines, line("set-obstacle", "wall", w.ID, "obstacle", o.ID, member, "$"), name)
				}
				s.At = app.Thing{Kind: "obstacle", Owner: w.ID, ID: o.ID}
				requireApart(t, &s, name+" "+o.ID, 4)
			}
		}
	}
}

// requireApart checks the figures of a survey against each other. At least some are there
// besides the wall's two.
func requireApart(t *testing.T, s *app.State, name string, least int) {
	t.Helper()
	v := surveyor{s: s, px: wholePixel(s.Camera)}
	all := surveyOf(s)
	require.GreaterOrEqual(t, len(all), 2+least, name)
	var boxes []drawing.Box
	for _, f := range all {
		b := v.box(f.fig)
		for i, o := range boxes {
			require.False(t, o.Grown(-0.1).Meets(b.Grown(-0.1)), "%s at %v: %s and %s", name, s.Size, all[i].fig.id, f.fig.id)
		}
		boxes = append(boxes, b)
	}
}

// fieldLines are the edits of all fields.
func fieldLines(nodes []Node) (lines []string) {
	eachNode(nodes, func(n Node) {
		for _, h := range n.On {
			if e, ok := h.Event.(app.Entered); ok {
				lines = append(lines, e.Field.Line)
			}
		}
	})
	return lines
}
