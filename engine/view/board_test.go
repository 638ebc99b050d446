package view_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
)

// made gives every example, worked out.
func made(t testing.TB) map[string]engine.Build {
	out := map[string]engine.Build{}
	for _, name := range assets.Names() {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		out[name] = engine.Derive(p, nil)
	}
	return out
}

// checked asks of every drawing on paper: figures and words do not touch, all words are
// in the catalogue, all tones in the table, every number finite.
func checked(t testing.TB, name string, d drawing.Drawing) {
	tones := map[drawing.Tone]bool{"": true}
	for _, tone := range drawing.Tones() {
		tones[tone] = true
	}
	var boxes []drawing.Box
	for _, it := range d.Items {
		require.True(t, tones[it.Tone] && tones[it.Line.Tone] && tones[it.Text.Halo], "%s: tones %q %q", name, it.Tone, it.Line.Tone)
		b := drawing.Bounds(it.Path)
		if it.Kind == drawing.TextKind {
			require.NotContains(t, it.Text.String, "[", "%s: words missing", name)
			b = it.Text.Extent()
			for _, c := range boxes {
				require.False(t, c.Grown(-0.15).Meets(b.Grown(-0.15)), "%s: %q touches another", name, it.Text.String)
			}
			boxes = append(boxes, b)
		}
		for _, x := range [...]float64{b.MinX, b.MinY, b.MaxX, b.MaxY} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%s: %v", name, it)
		}
		require.True(t, d.Box.Grown(0.01).MinX <= b.MinX && d.Box.Grown(0.01).MaxX >= b.MaxX || it.Kind == drawing.GlowKind, "%s: %v outside %v, %v", name, b, d.Box, it)
	}
}

func TestBoardsOfTheExamples(t *testing.T) {
	n := 0
	for name, b := range made(t) {
		for _, m := range b.Modules {
			for _, x := range m.Boards {
				d := view.Board(x, view.Options{Style: b.Style()})
				checked(t, name+" "+x.ID, d)
				complete(t, name+" "+x.ID, x, d, b.Style())
				n++
			}
			for _, c := range m.Corners {
				checked(t, name+" corner "+m.ID, view.Corner(m, c.Number, view.Options{Style: b.Style()}))
			}
		}
	}
	require.Greater(t, n, 100)
}

// complete asks that every place and size of every cut stands on the drawing as a figure.
func complete(t testing.TB, name string, b board.Board, d drawing.Drawing, s unit.Style) {
	figures, list := map[string]bool{}, ""
	for _, it := range d.Items {
		if it.Kind == drawing.TextKind {
			figures[it.Text.String] = true
			list += it.Text.String + "\n"
		}
	}
	has := func(what string, l unit.Length) {
		require.True(t, figures[s.Length(l)], "%s: no figure for %s, %s", name, what, s.Length(l))
	}
	has("length", b.Length)
	has("thickness", b.Thickness)
	has("width", b.Width)
	for _, f := range b.Features {
		switch f.Kind {
		case board.EndCut, board.Chamfer, board.RoundOver:
			continue
		}
		if f.Through && f.Diameter > 0 {
			require.Contains(t, list, "ø "+s.Length(f.Diameter)+", through", name)
		} else {
			require.Contains(t, list, s.Length(f.Depth)+" deep", "%s: depth of %s", name, f.Kind)
		}
		if f.Diameter > 0 {
			require.Contains(t, list, "ø "+s.Length(f.Diameter), name)
		}
		u := []unit.Length{f.Mouth.U - f.Along/2, f.Mouth.U - f.Along/2 + f.Along}
		if f.Diameter > 0 || f.Tilt != 0 {
			u = []unit.Length{f.Mouth.U}
		}
		switch f.Enter {
		case board.Back, board.Front, board.FaceA, board.FaceB:
			if f.Kind == board.Groove && f.Through {
				break
			}
			for _, x := range u {
				if x > 0 && x < b.Length {
					has(string(f.Kind)+" along", x)
				}
			}
		case board.Start, board.End:
			v := f.Mouth.V - f.Along/2
			if f.Diameter == 0 && v > 0 {
				has("slot across", v)
			}
		}
		if f.Diameter > 0 && (f.Enter == board.Back || f.Enter == board.Front) {
			has("bore from A", f.Mouth.W)
		}
		if f.Diameter > 0 && (f.Enter == board.FaceA || f.Enter == board.FaceB) {
			has("bore from the back", f.Mouth.V)
		}
	}
}

// randomBoard is a board with cuts of every kind, some of them at odd places.
func randomBoard(t *rapid.T) board.Board {
	size := func(lo, hi int, name string) unit.Length {
		return unit.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
	}
	b := board.Board{ID: "m1.1", Wood: "white-oak", Length: size(120, 2400, "length"), Width: size(80, 400, "width"), Thickness: size(16, 60, "thickness")}
	lead := func(name string) unit.Length { return unit.Length(rapid.IntRange(-40, 40).Draw(t, name)) * mm }
	for i, side := range []board.Face{board.Start, board.End} {
		l := lead("lead")
		f := board.Feature{Kind: board.EndCut, Enter: side, AtA: max(l, 0), AtB: max(-l, 0)}
		if i == 1 {
			f.AtA, f.AtB = b.Length-f.AtA, b.Length-f.AtB
		}
		b.Features = append(b.Features, f)
	}
	n := rapid.IntRange(0, 8).Draw(t, "cuts")
	for range n {
		f := board.Feature{
			Kind: rapid.SampledFrom([]board.Kind{board.Bore, board.Pocket, board.Groove, board.Slot, board.Housing}).Draw(t, "kind"), Depth: size(2, 30, "depth"),
			Enter: rapid.SampledFrom([]board.Face{board.FaceA, board.FaceB, board.Back, board.Front, board.Start, board.End}).Draw(t, "enter"),
			Mouth: board.Point{U: size(0, int(b.Length/mm), "u"), V: size(0, int(b.Width/mm), "v"), W: size(0, int(b.Thickness/mm), "w")},
			Along: size(4, 90, "along"), Across: size(2, 20, "across"), After: board.OnBlank,
		}
		if f.Kind == board.Bore {
			f.Diameter, f.Along, f.Across = size(4, 16, "diameter"), 0, 0
		}
		b.Features = append(b.Features, f)
	}
	return b
}

func TestRandomBoards(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		b := randomBoard(rt)
		o := view.Options{Style: unit.Style{System: rapid.SampledFrom([]unit.System{unit.Metric, unit.Inches}).Draw(rt, "system")}}
		d := view.Board(b, o)
		checked(t, "random", d)
		complete(t, "random", b, d, o.Style)
		require.Equal(t, d, view.Board(b, o))
	})
}

// F1 of the drawing style: figures at least 2.5 mm high, thin lines 0.25 and thick 0.5,
// arrowheads 3 mm, 3 : 1 (ISO 128 and teaching texts), at final size.
func TestStyleOfDimensions(t *testing.T) {
	b := made(t)["library"].Modules[0].Boards[2]
	d := view.Board(b, view.Options{})
	require.True(t, d.Paper)
	widths := map[float64]bool{}
	for _, it := range d.Items {
		if it.Kind == drawing.TextKind && it.Text.Figure {
			require.GreaterOrEqual(t, 0.7*it.Text.Size, 2.5, "digits are 0.7 em high")
		}
		if it.Line.Width > 0 {
			require.True(t, it.Line.MM)
			widths[it.Line.Width] = true
		}
		if it.Kind == drawing.PathKind && it.Tone == "chalk" && len(it.Path) == 4 {
			tip, p, q := it.Path[0].P, it.Path[1].P, it.Path[2].P
			long := math.Hypot(tip.X-(p.X+q.X)/2, tip.Y-(p.Y+q.Y)/2)
			wide := math.Hypot(p.X-q.X, p.Y-q.Y)
			require.InDelta(t, 3, long, 1e-9)
			require.InDelta(t, 3, long/wide, 1e-9)
		}
	}
	require.True(t, widths[0.25] && widths[0.5])
	for w := range widths {
		require.Contains(t, []float64{0.18, 0.25, 0.5}, w, "0.18 is the centre line's")
	}
}

// The scale is stated and kept: the outline of face A is as long on paper as it says.
func TestScaleIsStatedAndKept(t *testing.T) {
	b := board.Board{ID: "m1.1", Wood: "white-oak", Length: 930 * mm, Width: 220 * mm, Thickness: 34 * mm}
	d := view.Board(b, view.Options{Scale: 0.2})
	found := false
	for _, it := range d.Items {
		found = found || strings.Contains(it.Text.String, "1 : 5")
		if it.ID == "A/face" {
			box := drawing.Bounds(it.Path)
			require.InDelta(t, 186, box.Width(), 1e-9)
			require.InDelta(t, 44, box.Height(), 1e-9)
		}
	}
	require.True(t, found)
}

func TestCornerThatIsNotThere(t *testing.T) {
	require.Empty(t, view.Corner(module.Result{}, 1, view.Options{}).Items)
}
