package drawing_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/drawing"
)

// everything is a drawing with every kind of item.
func everything() drawing.Drawing {
	board := drawing.Rect(100, 100, 600, 220)
	return drawing.Drawing{
		Title: `Wall "A" <1> & 2`, Lang: "en", Box: drawing.Box{MinX: -20, MinY: -10, MaxX: 900, MaxY: 600}, Pixel: 1,
		Items: []drawing.Item{
			{Kind: drawing.PathKind, Layer: drawing.LayerWall, Group: "w1", Tone: "wall", Path: drawing.Rect(0, 0, 900, 600), ID: "w1/wall"},
			{Kind: drawing.PathKind, Layer: drawing.LayerShadow, Group: "m1", Tone: "shade", Fade: 0.7, Soft: 20, Path: board},
			{Kind: drawing.GlowKind, Layer: drawing.LayerLight, Group: "m1", ID: "l1/wash", Glow: drawing.Glow{
				From: drawing.Point{X: 120, Y: 100}, To: drawing.Point{X: 680, Y: 100}, Reach: 300, Cut: 90, Before: 50, After: 60,
			}},
			{Kind: drawing.WoodKind, Layer: drawing.LayerBoards, Group: "m1", ID: "m1.1/A", Path: board, Line: drawing.Line{Tone: "edge", Width: 1.2}, Wood: drawing.Wood{
				Species: "oak", Seed: 7, Origin: drawing.Point{X: 100, Y: 100}, Along: drawing.Point{X: 1}, Across: drawing.Point{Y: 1}, Shade: -0.26,
			}},
			{Kind: drawing.PathKind, Layer: drawing.LayerMarks, Path: drawing.Circle(400, 200, 12), Line: drawing.Line{Tone: "chalk", Width: 1.5, Dash: []float64{4, 2}, Round: true}},
			{Kind: drawing.TextKind, Layer: drawing.LayerSizes, Group: "dim", ID: "m1/width", Tone: "chalk", Text: drawing.Text{
				At: drawing.Point{X: 400, Y: 350}, Size: 15, String: "600", Turn: 90, Figure: true, Halo: "plaster", Anchor: drawing.AnchorEnd, Bold: true, Slant: true,
			}},
		},
	}
}

func woods() []drawing.Species {
	return []drawing.Species{{ID: "oak", Look: drawing.Look{Colour: "#d9be93", Line: "#7f5a2e", Edge: "#cba97a", End: "#b89463", Ring: 2.5, Contrast: 0.6, Pores: 0.8}}}
}

// svg11 is the part of SVG 1.1 that files keep to: elements and their attributes, from
// the element index and the property index of the recommendation (W3C, Scalable Vector
// Graphics 1.1, second edition, 2011, appendices K and N).
func svg11() map[string]string {
	const core, paint = " id xml:lang ", " class transform fill fill-rule fill-opacity stroke stroke-width stroke-opacity stroke-linecap stroke-linejoin stroke-dasharray opacity filter clip-path shape-rendering "
	return map[string]string{
		"svg": core + paint + "xmlns version width height viewBox font-family", "title": core, "defs": core,
		"g": core + paint, "path": core + paint + "d", "rect": core + paint + "x y width height rx ry",
		"text":           core + paint + "x y font-family font-size font-weight font-style text-anchor",
		"linearGradient": core + "x1 y1 x2 y2 gradientUnits", "radialGradient": core + "cx cy r fx fy gradientUnits",
		"stop": core + "offset stop-color stop-opacity", "clipPath": core + "clipPathUnits",
		"filter": core + "x y width height filterUnits", "feGaussianBlur": core + "stdDeviation in",
	}
}

func TestFilesKeepToSVG11(t *testing.T) {
	allowed := svg11()
	for theme := drawing.Day; theme < drawing.ThemeCount; theme++ {
		ids := map[string]bool{}
		d := xml.NewDecoder(strings.NewReader(drawing.SVG(everything(), drawing.SVGOptions{Theme: theme, Grain: -1, Woods: woods()})))
		for {
			token, err := d.Token()
			if err == io.EOF {
				break
			}
			require.NoError(t, err)
			e, ok := token.(xml.StartElement)
			if !ok {
				continue
			}
			attrs, known := allowed[e.Name.Local]
			require.True(t, known, "element %s", e.Name.Local)
			for _, a := range e.Attr {
				name := a.Name.Local
				if a.Name.Space != "" && a.Name.Space != "xmlns" {
					name = "xml:" + name
				}
				require.Contains(t, strings.Fields(attrs), name, "%s of %s", name, e.Name.Local)
				if name == "id" {
					require.False(t, ids[a.Value], "id %s twice", a.Value)
					ids[a.Value] = true
				}
			}
		}
	}
}

// References to gradients, filters and clips point at something.
func TestReferencesPointAtSomething(t *testing.T) {
	s := drawing.SVG(everything(), drawing.SVGOptions{Grain: -1, Woods: woods(), Prefix: "p1-"})
	n := 0
	for rest := s; ; n++ {
		_, after, found := strings.Cut(rest, "url(#")
		if !found {
			break
		}
		id, tail, _ := strings.Cut(after, ")")
		require.Contains(t, s, `id="`+id+`"`)
		require.True(t, strings.HasPrefix(id, "p1-"), id)
		rest = tail
	}
	require.Greater(t, n, 4)
}

// A file for paper states its size in millimetres and a view box of the same numbers.
func TestFilesStateMillimetres(t *testing.T) {
	d := drawing.Drawing{Box: drawing.Box{MaxX: 3500, MaxY: 2450}, Pixel: 3.5}
	require.Contains(t, drawing.SVG(d, drawing.SVGOptions{}), `width="250mm" height="175mm" viewBox="0 0 250 175"`) // 1 : 14
	d.Paper = true
	require.Contains(t, drawing.SVG(d, drawing.SVGOptions{}), `width="3500mm" height="2450mm" viewBox="0 0 3500 2450"`)
	require.Contains(t, drawing.SVG(d, drawing.SVGOptions{Scale: 0.1}), `width="350" height="245" viewBox="0 0 350 245"`)
}

// A line of one pixel is 0.25 mm on paper and 1 on the screen; one in millimetres goes
// with the scale.
func TestLineWidths(t *testing.T) {
	width := func(l drawing.Line, o drawing.SVGOptions) string {
		d := drawing.Drawing{Box: drawing.Box{MaxX: 100, MaxY: 100}, Items: []drawing.Item{{Kind: drawing.PathKind, Line: l, Path: drawing.Segment(0, 0, 9, 9)}}}
		_, after, _ := strings.Cut(drawing.SVG(d, o), `stroke-width="`)
		w, _, _ := strings.Cut(after, `"`)
		return w
	}
	px, mm := drawing.Line{Tone: "ink", Width: 2}, drawing.Line{Tone: "ink", Width: 2, MM: true}
	require.Equal(t, ".5", width(px, drawing.SVGOptions{Scale: 0.1, Millimetre: true}))
	require.Equal(t, "2", width(px, drawing.SVGOptions{Scale: 0.1}))
	require.Equal(t, ".2", width(mm, drawing.SVGOptions{Scale: 0.1}))
}

// tree is a second sink.
type tree struct {
	nodes []*node
	roots []*node
}

type node struct {
	tag, key string
	attrs    []drawing.Attr
	text     string
	kids     []*node
}

func (t *tree) Open(tag, key string, attrs []drawing.Attr) {
	n := &node{tag: tag, key: key, attrs: slices.Clone(attrs)}
	if len(t.nodes) == 0 {
		t.roots = append(t.roots, n)
	} else {
		up := t.nodes[len(t.nodes)-1]
		up.kids = append(up.kids, n)
	}
	t.nodes = append(t.nodes, n)
}
func (t *tree) Text(s string) { t.nodes[len(t.nodes)-1].text += s }
func (t *tree) Close()        { t.nodes = t.nodes[:len(t.nodes)-1] }

// flat lists a tree's elements.
func (n *node) flat(out []string) []string {
	line := n.tag
	for _, a := range n.attrs {
		line += fmt.Sprintf(" %s=%q", a.Name, a.Value)
	}
	out = append(out, line+" "+n.text)
	for _, k := range n.kids {
		out = k.flat(out)
	}
	return out
}

// The text, parsed by encoding/xml, is the tree: one writer, two sinks.
func TestBothSinksSeeTheSame(t *testing.T) {
	o := drawing.SVGOptions{Grain: -1, Woods: woods()}
	var made tree
	drawing.WriteSVG(everything(), o, &made)
	require.Empty(t, made.nodes, "every Open has its Close")
	var read tree
	d := xml.NewDecoder(strings.NewReader(drawing.SVG(everything(), o)))
	for {
		token, err := d.RawToken()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			var attrs []drawing.Attr
			for _, a := range e.Attr {
				name := a.Name.Local
				if a.Name.Space != "" {
					name = a.Name.Space + ":" + name
				}
				attrs = append(attrs, drawing.Attr{Name: name, Value: a.Value})
			}
			read.Open(e.Name.Local, "", attrs)
		case xml.EndElement:
			read.Close()
		case xml.CharData:
			if s := strings.TrimSpace(string(e)); s != "" {
				read.Text(s)
			}
		}
	}
	require.Equal(t, made.roots[0].flat(nil), read.roots[0].flat(nil))
}

// Keys tell neighbours apart.
func TestKeysAreUniqueAmongNeighbours(t *testing.T) {
	var made tree
	drawing.WriteSVG(everything(), drawing.SVGOptions{Grain: -1, Woods: woods()}, &made)
	var walk func(n *node)
	walk = func(n *node) {
		seen := map[string]bool{}
		for _, k := range n.kids {
			require.False(t, k.key != "" && seen[k.key], "%s twice under %s", k.key, n.key)
			seen[k.key] = true
			walk(k)
		}
	}
	walk(made.roots[0])
}

// Text that is no XML comes out as XML.
func TestTextIsEscaped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "text")
		d := drawing.Drawing{Title: s, Box: drawing.Box{MaxX: 1, MaxY: 1}, Items: []drawing.Item{{
			ID: s, Group: s, Kind: drawing.TextKind, Tone: drawing.Tone(s), Text: drawing.Text{Size: 1, String: s},
		}}}
		dec := xml.NewDecoder(strings.NewReader(drawing.SVG(d, drawing.SVGOptions{Prefix: "p"})))
		for {
			_, err := dec.Token()
			if err == io.EOF {
				return
			}
			if err != nil {
				t.Fatalf("%q: %v", s, err)
			}
		}
	})
}

// Numbers in paths are those of the drawing, rounded to three decimals: strconv says
// what that is.
func TestNumbersAreRounded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e5, 1e5).Draw(t, "x")
		d := drawing.Drawing{Box: drawing.Box{MaxX: 1, MaxY: 1}, Items: []drawing.Item{{Kind: drawing.PathKind, Path: drawing.Segment(x, 0, 0, 0)}}}
		_, after, _ := strings.Cut(drawing.SVG(d, drawing.SVGOptions{}), ` d="M`)
		got, _, _ := strings.Cut(after, " ")
		n, err := strconv.ParseFloat(got, 64)
		if err != nil {
			t.Fatal(err)
		}
		if d := n - x; d > 0.000500001 || d < -0.000500001 {
			t.Fatalf("%v became %s", x, got)
		}
		if _, frac, _ := strings.Cut(got, "."); len(frac) > 3 || strings.HasSuffix(frac, "0") {
			t.Fatalf("%v became %s", x, got)
		}
	})
}

// Contrast of inks on their grounds, as the WCAG 2 formula gives it (W3C, Web Content
// Accessibility Guidelines 2.1, relative luminance and contrast ratio).
func TestContrastOfInks(t *testing.T) {
	for _, c := range []struct {
		ink, on drawing.Tone
		theme   drawing.Theme
		least   float64
	}{
		{"ink", "paper", drawing.Day, 4.5}, {"chalk", "plaster", drawing.Day, 4.5}, {"chalk", "floor", drawing.Day, 4.5}, {"warn", "plaster", drawing.Day, 4.5}, {"line", "plaster", drawing.Day, 3},
		{"ink", "paper", drawing.Evening, 4.5}, {"chalk", "plaster", drawing.Evening, 4.5}, {"chalk", "floor", drawing.Evening, 4.5}, {"warn", "plaster", drawing.Evening, 4.5}, {"line", "plaster", drawing.Evening, 3},
		{"ink", "paper", drawing.Paper, 7}, {"chalk", "paper", drawing.Paper, 7}, {"line", "paper", drawing.Paper, 4.5},
	} {
		require.GreaterOrEqual(t, contrast(t, c.ink, c.on, c.theme), c.least, "%s on %s, theme %d", c.ink, c.on, c.theme)
	}
	require.InDelta(t, 13.2, contrast(t, "ink", "paper", drawing.Day), 0.05) // as the look's own table prints it
}

func contrast(t *testing.T, a, b drawing.Tone, theme drawing.Theme) float64 {
	x, y := luminance(t, a, theme), luminance(t, b, theme)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}
