//go:build browser

package main

import (
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"path"
	"strconv"
	"strings"
	"testing"
	"time"

	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
	"ledgewright/site"
	"ledgewright/testdata/jobs"
	"ledgewright/testdata/visitor"
)

// These tests run the stage as it is released, in a page of their own, in Chromium with
// software WebGL. They are built only with -tags browser.

var house *visitor.House

func TestMain(m *testing.M) {
	var err error
	if house, err = visitor.Open(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	code := m.Run()
	house.Close()
	os.Exit(code)
}

// A host is a tab with a page that has a stage.
type host struct {
	*visitor.Tab
	pictures map[string]drawing.Drawing
}

// open opens the page with a stage, and waits for it.
func open(t *testing.T, size visitor.Size) *host {
	t.Helper()
	h := &host{pictures: map[string]drawing.Drawing{}}
	url := house.Serve(http.HandlerFunc(h.serve))
	h.Tab = house.Visit(t, size, "")
	h.Allow(url)
	h.Do(Navigate(url + "/host.html"))
	arrives(h.Tab, `window.host && host.ready`, "1")
	return h
}

// serve gives the page, its drawings, and everything of the site.
func (h *host) serve(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if d, ok := h.pictures[strings.TrimSuffix(name, path.Ext(name))]; ok {
		if path.Ext(name) == ".svg" {
			w.Header().Set("Content-Type", "image/svg+xml")
			o := h.options(strings.Contains(name, "evening"))
			o.Scale, _ = strconv.ParseFloat(r.FormValue("scale"), 64)
			_, _ = w.Write([]byte(drawing.SVG(d, o)))
			return
		}
		w.Header().Set("Content-Type", "application/octet-stream")
		_, _ = w.Write(new(drawing.Packer).Append(nil, &d))
		return
	}
	if name == "host.html" || name == "host.css" || name == "host.js" {
		file(w, name)
		return
	}
	site.Handler(house.Pages).ServeHTTP(w, r)
}

// file gives a file of testdata.
func file(w http.ResponseWriter, name string) {
	body, err := os.ReadFile(path.Join("testdata", name))
	if err != nil {
		http.Error(w, err.Error(), http.StatusNotFound)
		return
	}
	types := map[string]string{".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript"}
	w.Header().Set("Content-Type", types[path.Ext(name)])
	_, _ = w.Write([]byte(strings.ReplaceAll(string(body), "POLICY", site.Policy)))
}

// outline is the box of the first module, with room round it.
func outline(d drawing.Drawing) (b drawing.Box) {
	for _, it := range d.Items {
		if strings.HasSuffix(it.ID, "/outline") {
			return drawing.Bounds(it.Path).Grown(120)
		}
	}
	return d.Box
}

// options are those of the SVG picture of the same view.
func (h *host) options(evening bool) drawing.SVGOptions {
	o := drawing.SVGOptions{NoText: true, Grain: -1, Woods: view.Woods()}
	if evening {
		o.Theme = drawing.Evening
	}
	return o
}

// wall draws the first wall of a plan.
func wall(p plan.Plan, evening bool) drawing.Drawing {
	b := engine.Derive(p, nil)
	w, _ := p.Wall(b.Arrangements[0].Wall)
	return view.Wall(w, b.Arrangements[0], b.Modules, view.Options{Style: b.Style(), Shallow: true, Evening: evening, ShowStuds: true, ShowMarks: true, Beyond: 4000})
}

func name(example string, evening bool) string {
	if evening {
		return example + "-evening"
	}
	return example + "-day"
}

// fit returns the view in which a box fills a window.
func fit(b drawing.Box, s visitor.Size) (scale, x, y float64) {
	scale = min(float64(s.Width)/b.Width(), float64(s.Height)/b.Height())
	x = (float64(s.Width)-scale*b.Width())/2 - scale*b.MinX
	y = (float64(s.Height)-scale*b.Height())/2 + scale*b.MaxY
	return scale, x, y
}

// show gives the stage a drawing and a view.
func (h *host) show(name string, d drawing.Drawing, evening bool, scale, x, y float64) {
	h.T.Helper()
	h.pictures[name] = d
	require.Empty(h.T, h.Await(fmt.Sprintf(`host.give(%q, %v, %v, %v, %t)`, name+".bin", scale, x, y, evening)))
}

// counts is what the stage says it has done.
type counts struct{ Drawings, Bytes, Builds, Draws, Calls, Vertices, Triangles, Frames int }

func (h *host) counts() (c counts) {
	h.T.Helper()
	require.NoError(h.T, json.Unmarshal([]byte(h.Text(`host.counts()`)), &c))
	return c
}

func TestExamplesOnTheStage(t *testing.T) {
	h := open(t, visitor.Tablet)
	for _, example := range []string{"study", "library"} {
		p, err := assets.Plan(example)
		require.NoError(t, err)
		for _, evening := range []bool{false, true} {
			d := wall(p, evening)
			s, x, y := fit(d.Box, h.Size)
			h.show(name(example, evening), d, evening, s, x, y)
			h.Photograph(path.Join(house.Root, "build", "stage", name(example, evening)+".png"))
			require.Empty(t, h.Await(fmt.Sprintf(`host.svg(%q, %v, %v)`, fmt.Sprintf("%s.svg?scale=%v", name(example, evening), s), x+s*d.Box.MinX, y-s*d.Box.MaxY)))
			h.Photograph(path.Join(house.Root, "build", "stage", name(example, evening)+"-svg.png"))
			require.Empty(t, h.Await(`host.plain()`))
			s, x, y = fit(outline(d), h.Size)
			h.show(name(example, evening), d, evening, s, x, y)
			h.Photograph(path.Join(house.Root, "build", "stage", name(example, evening)+"-near.png"))
		}
	}
	c := h.counts()
	t.Logf("%+v", c)
	require.Equal(t, 8, c.Drawings)
}

func TestJobMOnTheStage(t *testing.T) {
	h := open(t, visitor.Tablet)
	d := wall(jobs.M(1), false)
	s, x, y := fit(d.Box, h.Size)
	h.show("m-day", d, false, s, x, y)
	c := h.counts()
	t.Logf("%+v", c)
	require.LessOrEqual(t, c.Vertices, 60_000)
	h.Photograph(path.Join(house.Root, "build", "stage", "m-day.png"))
}

// Idle, the stage does nothing: no frame, no draw.
func TestAStageThatIsNotAskedDoesNothing(t *testing.T) {
	h := open(t, visitor.Tablet)
	d := wall(jobs.One(), true)
	s, x, y := fit(d.Box, h.Size)
	h.show("one", d, true, s, x, y)
	before, asked := h.counts(), h.Text(`host.stage().framesAsked`)
	time.Sleep(2 * time.Second) // the rule is about two seconds
	require.Equal(t, before, h.counts())
	require.Equal(t, asked, h.Text(`host.stage().framesAsked`))
	require.Equal(t, "0", asked)
}

func TestADrawForEachThatIsAskedBeforeItReturns(t *testing.T) {
	h := open(t, visitor.Tablet)
	d := wall(jobs.One(), true)
	s, x, y := fit(d.Box, h.Size)
	h.show("one", d, true, s, x, y)
	for range 20 {
		require.Equal(t, "1", h.Text(`host.pan(3, 1)`))
	}
}
