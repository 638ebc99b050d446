package view_test

import (
	"encoding/xml"
	"flag"
	"io"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/assets"
	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares a picture with its file.
func golden(t *testing.T, name, got string) {
	at := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.WriteFile(at, []byte(got), 0o644))
	}
	want, err := os.ReadFile(at)
	require.NoError(t, err)
	require.Equal(t, string(want), got, "%s: renew with -update and look at it", name)
}

func TestGoldenPictures(t *testing.T) {
	w, r, m := corner()
	w.Obstacles = w.Obstacles[:1]
	r.Placed = r.Placed[1:2]
	r.Points = r.Points[2:4]
	line := []plan.Line{{ID: "h1", Height: 1790 * mm}}
	o := drawing.SVGOptions{Grain: 1, Woods: view.Woods()}
	golden(t, "box-day.svg", drawing.SVG(view.Wall(w, r, m, view.Options{Shallow: true, ShowStuds: true, ShowMarks: true, ShowSizes: true, Selected: "m2", Lines: line}), o))
	o.Theme = drawing.Evening
	golden(t, "box-evening.svg", drawing.SVG(view.Wall(w, r, m, view.Options{Shallow: true, Evening: true}), o))
	o.Theme = drawing.Paper
	golden(t, "box-hang.svg", drawing.SVG(view.Wall(w, r, m, view.Options{ShowStuds: true, ShowBands: true, Numbers: true, ShowSizes: true}), o))
	b := m[1].Boards[0]
	b.Features = append(b.Features,
		board.Feature{Kind: board.Bore, Enter: board.Back, Mouth: board.Point{U: 120 * mm, W: 17 * mm}, Diameter: 13 * mm, Depth: 160 * mm, After: board.OnBlank},
		board.Feature{Kind: board.Bore, Enter: board.Back, Mouth: board.Point{U: 340 * mm, W: 17 * mm}, Diameter: 13 * mm, Depth: 160 * mm, After: board.OnBlank},
		board.Feature{Kind: board.Slot, Enter: board.End, Mouth: board.Point{U: 436 * mm, V: 110 * mm, W: 10 * mm}, Along: 190 * mm, Across: 4 * mm, Depth: 12 * mm, Tilt: -45 * unit.Degree, After: board.AfterMitre},
	)
	golden(t, "board.svg", drawing.SVG(view.Board(b, view.Options{}), o))
}

// drawn gives every arrangement of every example in several ways of drawing.
func drawn(t *testing.T, use func(name string, d drawing.Drawing)) {
	for name, b := range made(t) {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, r := range b.Arrangements {
			w, _ := p.Wall(r.Wall)
			for _, o := range []view.Options{
				{Shallow: true, ShowStuds: true, ShowBands: true, ShowSizes: true, ShowMarks: true}, {Shallow: true, Evening: true},
				{Shallow: true, ShowSizes: true, Selected: b.Modules[0].ID}, {Numbers: true, ShowSizes: true, ShowStuds: true},
			} {
				o.Style = b.Style()
				use(name+" "+r.Arrangement, view.Wall(w, r, b.Modules, o))
			}
		}
	}
}

// Every picture of the examples is well formed, finite, and has all its words and tones.
func TestWallsOfTheExamples(t *testing.T) {
	tones := map[drawing.Tone]bool{"": true}
	for _, tone := range drawing.Tones() {
		tones[tone] = true
	}
	drawn(t, func(name string, d drawing.Drawing) {
		ids := map[string]bool{}
		for _, it := range d.Items {
			require.True(t, tones[it.Tone] && tones[it.Line.Tone], "%s: %q %q", name, it.Tone, it.Line.Tone)
			require.NotContains(t, it.Text.String, "[", name)
			require.False(t, it.ID != "" && ids[it.ID], "%s: %s twice", name, it.ID)
			ids[it.ID] = true
		}
		s := drawing.SVG(d, drawing.SVGOptions{Woods: view.Woods()})
		require.NotContains(t, s, "NaN")
		dec := xml.NewDecoder(strings.NewReader(s))
		for {
			if _, err := dec.Token(); err == io.EOF {
				break
			} else {
				require.NoError(t, err, name)
			}
		}
	})
}

// Figures of the sizes do not touch each other.
func TestFiguresOfWallsStandApart(t *testing.T) {
	drawn(t, func(name string, d drawing.Drawing) {
		var boxes []drawing.Box
		for _, it := range d.Items {
			if it.Kind != drawing.TextKind || it.Layer != drawing.LayerSizes {
				continue
			}
			b := it.Text.Extent()
			for _, c := range boxes {
				require.False(t, c.Grown(-0.1).Meets(b.Grown(-0.1)), "%s: %q touches another", name, it.Text.String)
			}
			boxes = append(boxes, b)
		}
	})
}

func TestTopmostIsNearestInTheExamples(t *testing.T) {
	for name, b := range made(t) {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, r := range b.Arrangements {
			w, _ := p.Wall(r.Wall)
			bad, met := wrong(t, rand.New(rand.NewSource(3)), 8000, w, r, b.Modules)
			require.Zero(t, bad, "%s %s", name, r.Arrangement)
			require.Greater(t, met, 20, "%s %s", name, r.Arrangement)
		}
	}
}

// Fronts are true to scale, and a back 220 mm deep comes to 0.925 of it towards the
// point 1 330 above the floor in the wall's middle.
func TestFrontsAreTrueToScale(t *testing.T) {
	w, r, m := corner()
	d := view.Wall(w, r, m, view.Options{Shallow: true})
	eye := drawing.Point{X: 1480, Y: 1330}
	fronts, backs := 0, 0
	for _, it := range d.Items {
		if it.ID == "m2.1/front" {
			b := drawing.Bounds(it.Path)
			require.InDelta(t, 460, b.Width(), 1e-9)
			require.InDelta(t, 34, b.Height(), 1e-9)
			fronts++
		}
		if it.Kind == drawing.WoodKind && strings.HasSuffix(it.ID, "/A") && len(it.Path) == 5 {
			for i, k := range [2]int{3, 2} { // a side runs front, front, back, back
				front, back := it.Path[i].P, it.Path[k].P
				require.InDelta(t, eye.X+0.925*(front.X-eye.X), back.X, 1e-9)
				require.InDelta(t, eye.Y+0.925*(front.Y-eye.Y), back.Y, 1e-9)
				backs++
			}
		}
	}
	require.Equal(t, 1, fronts)
	require.Greater(t, backs, 4)
}

// A flat elevation has fronts only.
func TestFlatElevationHasFrontsOnly(t *testing.T) {
	w, r, m := corner()
	boards := 0
	for _, it := range view.Wall(w, r, m, view.Options{}).Items {
		if it.Kind == drawing.WoodKind {
			require.True(t, strings.HasSuffix(it.ID, "/front"), it.ID)
			boards++
		}
	}
	require.Equal(t, 12, boards)
}

// A module keeps its items and its wood while another is dragged: only the dragged
// module's group changes.
func TestDraggingChangesOneGroup(t *testing.T) {
	w, r, m := corner()
	before := view.Wall(w, r, m, view.Options{Shallow: true})
	r.Placed = append([]wall.Placed(nil), r.Placed...)
	r.Placed[3] = wall.Place(m[3], plan.Pose{Module: "m4", X: 1570 * mm, Y: 985 * mm, Turn: 270 * unit.Degree})
	after := view.Wall(w, r, m, view.Options{Shallow: true})
	require.Equal(t, of(before, "m1"), of(after, "m1"))
	require.Equal(t, of(before, "m2"), of(after, "m2"))
	require.NotEqual(t, of(before, "m4"), of(after, "m4"))
}

func of(d drawing.Drawing, group string) (items []drawing.Item) {
	for _, it := range d.Items {
		if it.Group == group {
			items = append(items, it)
		}
	}
	return items
}

// Point marks say what a hole meets: filled with a ring, hollow, or slashed in the
// warning ink.
func TestMarksSayWhatAHoleMeets(t *testing.T) {
	w, r, m := corner()
	tones := map[string][]drawing.Tone{}
	for _, it := range view.Wall(w, r, m, view.Options{ShowMarks: true}).Items {
		if it.Layer == drawing.LayerMarks && strings.Contains(it.ID, "/point") {
			tones[it.ID] = []drawing.Tone{it.Tone, it.Line.Tone}
		}
	}
	require.Equal(t, []drawing.Tone{"chalk", ""}, tones["b1/point1"], "stud with both edges found")
	require.Equal(t, []drawing.Tone{"leaf", "warn"}, tones["b3/point3"], "lining alone")
	require.Equal(t, []drawing.Tone{"leaf", "chalk"}, tones["b9/point9"], "not known")
	require.Len(t, tones, 9)
}

// Marks keep their size on the screen; where the wall is small there they give way to the
// boards and keep their size on the wall, but for a ring's least radius of 4 px.
func TestMarksAreSmallerWhereTheWallIsSmall(t *testing.T) {
	w, r, m := corner()
	for pixel, want := range map[float64]float64{4: 8.5, 7: 8.5, 10: 8.5 * 7 / 10, 12: 8.5 * 7 / 12, 20: 4} {
		widest := 0.0
		for _, it := range view.Wall(w, r, m, view.Options{ShowMarks: true, Pixel: pixel}).Items {
			if it.Layer != drawing.LayerMarks || it.Kind != drawing.PathKind {
				continue
			}
			low, high := it.Path[0].P.X, it.Path[0].P.X
			for _, s := range it.Path {
				if s.To != 'Z' {
					low, high = min(low, s.P.X), max(high, s.P.X)
				}
			}
			widest = max(widest, (high-low)/2/pixel)
		}
		require.InDelta(t, want, widest, 1e-9, "a pixel is %g mm", pixel)
	}
}

// Odd walls and odd options give finite pictures and end.
func TestOddWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string) unit.Length {
			return unit.Length(rapid.SampledFrom([]int64{0, 1, 1e6, 15e8, 3e9, 12e9, 1e12}).Draw(t, name))
		}
		w, r, m := corner()
		w.Width, w.Height = size("width"), size("height")
		for i := range w.Obstacles {
			o := &w.Obstacles[i]
			o.X, o.Y, o.Width, o.Height = size("x"), size("y"), size("w"), size("h")
			o.Kind = rapid.SampledFrom([]string{"socket", "switch", "pipe", "radiator", "window", "door", "picture", "furniture", "other"}).Draw(t, "kind")
		}
		o := view.Options{
			Shallow: rapid.Bool().Draw(t, "shallow"), Evening: rapid.Bool().Draw(t, "evening"), ShowStuds: true, ShowBands: true, ShowSizes: true,
			ShowMarks: true, Numbers: rapid.Bool().Draw(t, "numbers"), Lines: []plan.Line{{ID: "h1", Height: size("line")}},
		}
		d := view.Wall(w, r, m, o)
		for _, it := range d.Items {
			b := drawing.Bounds(it.Path)
			for _, x := range []float64{b.MinX, b.MinY, b.MaxX, b.MaxY, it.Text.At.X, it.Text.At.Y, it.Text.Size, it.Glow.Reach} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("%+v", it)
				}
			}
		}
		if s := drawing.SVG(d, drawing.SVGOptions{Woods: view.Woods()}); len(s) > 3_000_000 {
			t.Fatalf("%d bytes", len(s))
		}
	})
}

// Places that are far enough apart stay; the others keep their order and their gap, and
// the row as a whole does not drift.
func TestApart(t *testing.T) {
	require.Equal(t, []float64{0, 10, 25}, view.Apart([]float64{0, 10, 25}, 10))
	require.Equal(t, []float64{-5, 5}, view.Apart([]float64{0, 0}, 10))
	require.Equal(t, []float64{-5, 5, 100}, view.Apart([]float64{0, 0, 100}, 10))
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		at := make([]float64, n)
		for i := range at {
			at[i] = rapid.Float64Range(0, 30).Draw(t, "step")
			if i > 0 {
				at[i] += at[i-1]
			}
		}
		got := view.Apart(at, 10)
		drift := 0.0
		for i := range got {
			drift += got[i] - at[i]
			if i > 0 && got[i]-got[i-1] < 10-1e-9 {
				t.Fatalf("%v: %v", at, got)
			}
		}
		if math.Abs(drift) > 1e-6 {
			t.Fatalf("%v drifts by %v", at, drift)
		}
	})
}

// The words and figures of a wall that is hung stand apart on every example, on a tablet
// both ways, a phone and a small one; every hole has its number in a pin or, where there is
// no room for one, none; and figures stay beside the wall.
func TestHangingsFiguresStandApart(t *testing.T) {
	for name, b := range made(t) {
		p, err := assets.Plan(name)
		require.NoError(t, err)
		for _, r := range b.Arrangements {
			w, _ := p.Wall(r.Wall)
			for _, room := range [][2]float64{{628, 506}, {694, 413}, {310, 251}, {240, 119}} { // of the wall, in pixels
				o := view.Options{Style: b.Style(), Numbers: true, ShowSizes: true, Tight: room[0] < 500}
				o.Pixel = max(w.Width.MM()/room[0], w.Height.MM()/room[1])
				d := view.Wall(w, r, b.Modules, o)
				requireHung(t, name, d, w)
			}
		}
	}
}

func requireHung(t *testing.T, name string, d drawing.Drawing, w plan.Wall) {
	var boxes []drawing.Box
	var texts []string
	for _, it := range d.Items {
		if it.Kind != drawing.TextKind {
			continue
		}
		box := it.Text.Extent()
		if _, _, ok := strings.Cut(it.ID, "/number"); ok {
			box = box.Grown(3 * d.Pixel)
			require.GreaterOrEqual(t, box.MinX, -4*d.Pixel, name)
			require.LessOrEqual(t, box.MaxX, w.Width.MM()+4*d.Pixel, name)
		}
		require.Greater(t, box.MaxY, -60*d.Pixel-100, name)
		require.Less(t, box.MinY, w.Height.MM()+100+40*d.Pixel, "%s: %s", name, it.ID)
		for i, c := range boxes {
			require.False(t, c.Grown(-0.1*d.Pixel).Meets(box.Grown(-0.1*d.Pixel)), "%s at a pixel of %.1f mm: %q touches %q", name, d.Pixel, it.Text.String, texts[i])
		}
		boxes, texts = append(boxes, box), append(texts, it.Text.String)
	}
}
