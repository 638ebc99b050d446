package view_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
)

// TestPictures writes pictures to look at when VIEW_PICTURES names a directory.
func TestPictures(t *testing.T) {
	dir := os.Getenv("VIEW_PICTURES")
	if dir == "" {
		dir = t.TempDir()
	}
	w, r, m := corner()
	line := []plan.Line{{ID: "h1", Height: 1790 * mm}}
	write := func(name string, o view.Options, s drawing.SVGOptions) {
		s.Woods, s.Scale = view.Woods(), 0.33
		text := drawing.SVG(view.Wall(w, r, m, o), s)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name+".svg"), []byte(text), 0o644))
		t.Log(name, len(text))
	}
	big := func(name string, o view.Options, s drawing.SVGOptions) {
		w, r, m := many()
		s.Woods, s.Scale = view.Woods(), 0.16
		require.NoError(t, os.WriteFile(filepath.Join(dir, name+".svg"), []byte(drawing.SVG(view.Wall(w, r, m, o), s)), 0o644))
	}
	big("many", view.Options{Shallow: true, ShowStuds: true, ShowMarks: true, ShowSizes: true, Style: unit.Style{System: unit.Inches}}, drawing.SVGOptions{Grain: -1})
	write("day", view.Options{Shallow: true, ShowStuds: true, ShowMarks: true, ShowSizes: true, Selected: "m2", Lines: line}, drawing.SVGOptions{Grain: -1})
	write("all", view.Options{Shallow: true, ShowStuds: true, ShowBands: true, ShowSizes: true}, drawing.SVGOptions{Grain: 12})
	write("evening", view.Options{Shallow: true, Evening: true, ShowMarks: true, Lines: line}, drawing.SVGOptions{Grain: -1, Theme: drawing.Evening})
	write("flat", view.Options{ShowStuds: true, Numbers: true, ShowSizes: true}, drawing.SVGOptions{})
	write("paper", view.Options{ShowStuds: true, Numbers: true, ShowSizes: true}, drawing.SVGOptions{Theme: drawing.Paper})
}
