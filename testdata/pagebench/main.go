// Pagebench measures the maker's page in Chromium with the processor slowed down four
// times: what a step of a drag costs on job M and one of turning S and M in the round, how long 200 gestures take to be
// answered, how soon the page can be read and used over a slow line, what it weighs, and
// the memory of job L. Figures are of this machine: a fixed loop beside them says how
// fast it is.
//
// Usage, from the top of the repository:
//
//	go run ./testdata/pagebench
//	go run ./testdata/pagebench stage
//
// With stage: only the picture as the graphics processor paints it.
package main

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/performance"
	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/engine"
	"ledgewright/engine/plan"
	"ledgewright/testdata/jobs"
	"ledgewright/testdata/visitor"
)

// slow is how many times the processor is slowed down.
const slow = 4

func main() {
	house, err := visitor.Open()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	defer house.Close()
	b := &bench{house: house}
	if len(os.Args) < 2 || os.Args[1] != "stage" {
		b.page()
	}
	b.stage()
	if b.over > 0 {
		fmt.Printf("%d figures over their limit\n", b.over)
	}
}

// page is all but the stage.
func (b *bench) page() {
	b.weight()
	b.loading()
	b.drag()
	b.turning("S", jobs.S())
	b.turning("M", jobs.M(1))
	b.gestures()
	b.memory()
}

// A bench stands in for a test: what goes wrong ends the program.
type bench struct {
	house *visitor.House
	ends  []func()
	over  int // figures over their limits
}

func (b *bench) Errorf(format string, args ...any) { fmt.Fprintf(os.Stderr, format+"\n", args...) }
func (b *bench) FailNow()                          { b.leave(); b.house.Close(); os.Exit(1) }
func (b *bench) Helper()                           {}
func (b *bench) Cleanup(f func())                  { b.ends = append(b.ends, f) }
func (b *bench) Name() string                      { return "bench" }
func (b *bench) Failed() bool                      { return false }

func (b *bench) leave() {
	for i := len(b.ends) - 1; i >= 0; i-- {
		b.ends[i]()
	}
	b.ends = nil
}

// row prints a figure and its limit; 0 for none.
func (b *bench) row(what, unit string, figure, limit float64) {
	line := fmt.Sprintf("  %-58s %10.2f %s", what, figure, unit)
	if limit > 0 {
		line += fmt.Sprintf("  of %g", limit)
		if figure > limit {
			line += "  over"
			b.over++
		}
	}
	fmt.Println(line)
}

// watch notes long tasks, slow answers and the program's memory before the page is there.
const watch = `window.long = []; window.answers = {}; window.frames = []
new PerformanceObserver(l => l.getEntries().forEach(e => long.push(e.duration))).observe({type: 'longtask', buffered: true})
new PerformanceObserver(l => l.getEntries().forEach(e => { if (e.interactionId) answers[e.interactionId] = Math.max(answers[e.interactionId] || 0, e.duration) })).observe({type: 'event', durationThreshold: 16, buffered: true})
new PerformanceObserver(l => l.getEntries().forEach(e => window.lcp = e.startTime)).observe({type: 'largest-contentful-paint', buffered: true})
{ const build = WebAssembly.instantiateStreaming
  WebAssembly.instantiateStreaming = async (...a) => { const r = await build.apply(WebAssembly, a); window.program = r.instance; return r } }
{ const ask = window.requestAnimationFrame
  window.requestAnimationFrame = f => ask(t => { const from = performance.now(); f(t); frames.push(performance.now() - from) }) }
`

func (b *bench) visit() *visitor.Tab { return b.house.Visit(b, visitor.Tablet, watch) }

func (b *bench) throttle(v *visitor.Tab, rate float64) {
	_, err := Call(v.Ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: rate})
	require.NoError(b, err)
	v.Run(`const from = performance.now(); let x = 1; for (let i = 0; i < 2e7; i++) x = (x * 1103515245 + 12345) & 0x7fffffff; window.loop = performance.now() - from + x * 0`)
	b.row(fmt.Sprintf("a fixed loop of 20 million steps, slowed %g times", rate), "ms", number(v.Text("loop")), 0)
}

func number(s string) (x float64) {
	_, _ = fmt.Sscan(s, &x) // of no number, none
	return x
}

// open opens a job as a file.
func (b *bench) open(v *visitor.Tab, p plan.Plan) {
	text, err := plan.Pretty(p)
	require.NoError(b, err)
	file := filepath.Join(os.TempDir(), "ledgewright-bench.json")
	require.NoError(b, os.WriteFile(file, text, 0o600))
	defer os.Remove(file)
	v.Upload("Open a plan from a file", file)
	v.See("region", "Verdicts")
	v.Job("Arrange")
}

// weight is what a first visit fetches, from a host that sends gzip.
func (b *bench) weight() {
	fmt.Println("Bytes after gzip")
	index, ok := b.house.Pages("index.html")
	require.True(b, ok)
	var all, program float64
	names := []string{"index.html"}
	for _, part := range strings.FieldsFunc(string(index), func(r rune) bool { return strings.ContainsRune(`"' <>=`, r) }) {
		if _, ok := b.house.Pages(part); ok && !slices.Contains(names, part) && part != "index.html" && part != "examples.html" {
			names = append(names, part)
		}
	}
	for i := 0; i < len(names); i++ {
		body, _ := b.house.Pages(names[i])
		if strings.HasSuffix(names[i], ".css") {
			for _, part := range strings.FieldsFunc(string(body), func(r rune) bool { return strings.ContainsRune("()", r) }) {
				if _, ok := b.house.Pages(part); ok && !slices.Contains(names, part) {
					names = append(names, part)
				}
			}
		}
		n := float64(gzipped(body))
		all += n
		if strings.HasSuffix(names[i], ".wasm") {
			program = n
		}
	}
	b.row("workshop.wasm", "MB", program/1e6, 1.8)
	b.row("stage.wasm, once the page can be used", "MB", b.stageWeight()/1e6, 2.8)
	b.row(fmt.Sprintf("all %d files of a first visit", len(names)), "MB", all/1e6, 2.0)
}

func gzipped(body []byte) int {
	var small bytes.Buffer
	w, _ := gzip.NewWriterLevel(&small, gzip.BestCompression) // a level that exists
	_, _ = w.Write(body)                                      // into memory: cannot fail
	_ = w.Close()
	return min(small.Len(), len(body))
}

// loading is the page over a slow line, with the processor slowed down: for the first
// time, and again.
func (b *bench) loading() {
	fmt.Println("Loading: 9 Mbit/s down, 3 up, 100 ms, processor slowed 4 times")
	v := b.visit()
	defer b.leave()
	c := network.Conditions{Latency: 100, DownloadThroughput: 9e6 / 8, UploadThroughput: 3e6 / 8}
	_, err := Call(v.Ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{&c}})
	require.NoError(b, err)
	b.throttle(v, slow)
	for _, visit := range []struct {
		name   string
		usable float64
	}{{"first", 5000}, {"again", 1500}} {
		v.Go("")
		b.row(visit.name+": first paint with content", "ms", number(v.Text(`performance.getEntriesByName('first-contentful-paint')[0]?.startTime`)), 1800)
		b.row(visit.name+": largest paint", "ms", number(v.Text(`window.lcp`)), 2500)
		b.row(visit.name+": readable", "ms", number(v.Text(`performance.getEntriesByName('readable')[0].startTime`)), 0)
		b.row(visit.name+": usable", "ms", number(v.Text(`performance.getEntriesByName('usable')[0].startTime`)), visit.usable)
		b.row(visit.name+": bytes fetched", "MB", number(v.Text(`[...performance.getEntriesByType('resource'), ...performance.getEntriesByType('navigation')].reduce((n, e) => n + e.transferSize, 0)`))/1e6, 2.0)
	}
}

// drag is one step of a drag on job M, taken 120 times: what the program's parts take,
// and the page's own part of the frame.
func (b *bench) drag() {
	fmt.Println("A step of a drag on job M, processor slowed 4 times: median, 95th of a hundred")
	v := b.visit()
	defer b.leave()
	v.Go("?measure")
	b.open(v, jobs.M(1))
	v.Calm()
	at := b.grip(v)
	b.throttle(v, slow)
	v.Run(`performance.clearMeasures(); frames.length = 0; long.length = 0`)
	v.Down(at)
	v.Moved(visitor.Point{X: at.X + 24, Y: at.Y}) // at once: a finger that rests presses long
	const steps = 120
	for i := range steps {
		v.Moved(visitor.Point{X: at.X + 24 + float64(i%40), Y: at.Y - float64(i%25)})
		v.Await(`new Promise(done => askFrame(() => done('')))`)
	}
	taken, pages, frames := b.measures(v, "step"), b.measures(v, "page"), b.numbers(v, "frames")
	v.Up()
	v.See("button", "Undo: move…") // something was dragged
	rest := make([]float64, 0, len(frames))
	for i := range min(len(frames), len(pages), len(taken)) {
		rest = append(rest, max(frames[i]-pages[i]-taken[i], 0))
	}
	b.spread("hand, snapping, edit, Derive (budget 0.5 + 4)", taken, 4.5)
	b.spread("view and panel, as a tree (budget of view 3)", pages, 3)
	b.spread("the difference, put into the document (budget 3)", rest, 3)
	b.spread("the page's part of the frame (budget without stage 10.5)", frames, 10.5)
	b.row("long tasks meanwhile", "", float64(len(b.numbers(v, "long"))), 0)
}

// turning is one step of turning a job in the round, taken 120 times.
func (b *bench) turning(name string, p plan.Plan) {
	fmt.Printf("A step of turning job %s in the round, processor slowed 4 times: median, 95th of a hundred\n", name)
	v := b.visit()
	defer b.leave()
	v.Go("?measure")
	b.open(v, p)
	v.Tap("button", "In the round")
	v.See("slider", "Pull apart")
	v.Calm()
	at := v.Wall(0, 0)
	b.throttle(v, slow)
	v.Run(`performance.clearMeasures(); frames.length = 0; long.length = 0`)
	v.Down(at)
	for i := range 120 {
		v.Moved(visitor.Point{X: at.X + 24 + float64(2*(i%40)), Y: at.Y - float64(i%25)})
		v.Await(`new Promise(done => askFrame(() => done('')))`)
	}
	taken, pages, frames := b.measures(v, "step"), b.measures(v, "page"), b.numbers(v, "frames")
	v.Up()
	b.spread("hand and camera", taken, 0)
	b.spread("view and panel, as a tree", pages, 0)
	b.spread("the page's part of the frame", frames, 15)
	b.row("long tasks meanwhile", "", float64(len(b.numbers(v, "long"))), 0)
}

// grip is a place on a board of job M that no figure covers.
func (b *bench) grip(v *visitor.Tab) visitor.Point {
	k := v.Keeps("its modules", func(k visitor.Kept) bool { return len(k.Plan.Modules) == 48 })
	for _, placed := range engine.Derive(k.Plan, nil).Arrangements[0].Placed {
		for _, o := range placed.Outlines {
			x, y := 0.0, 0.0
			for _, q := range o.Points {
				x, y = x+q.X.MM()/float64(len(o.Points)), y+q.Y.MM()/float64(len(o.Points))
			}
			p := v.Wall(x, y)
			if v.Text(fmt.Sprintf(`(e => e && !e.closest('button') && !!e.closest('[data-hand]'))(document.elementFromPoint(%g, %g))`, p.X, p.Y)) == "true" {
				return p
			}
		}
	}
	require.Fail(b, "no board of job M is free")
	return visitor.Point{}
}

func (b *bench) measures(v *visitor.Tab, name string) []float64 {
	return b.numbers(v, `performance.getEntriesByName('`+name+`').map(e => e.duration)`)
}

func (b *bench) numbers(v *visitor.Tab, js string) (out []float64) {
	require.NoError(b, json.Unmarshal([]byte(v.Text(`JSON.stringify(`+js+`)`)), &out))
	return out
}

// spread prints a median and a 95th of a hundred; the median is held to the limit.
func (b *bench) spread(what string, all []float64, limit float64) {
	if len(all) == 0 {
		b.row(what+", never", "", 0, 0)
		return
	}
	slices.Sort(all)
	b.row(what, fmt.Sprintf("ms, %.2f in 5 of a hundred or more, %d times", all[len(all)*95/100], len(all)), all[len(all)/2], limit)
}

// spot returns the middle of the button of that name, found in the document: asking by role
// would make Chromium keep its accessibility tree, which nobody here listens to, at every
// frame.
func spot(v *visitor.Tab, name string) (p visitor.Point) {
	_, _ = fmt.Sscan(v.Text(fmt.Sprintf(`(b => b.x + b.width / 2 + ' ' + (b.y + b.height / 2))([...document.querySelectorAll('button')]
		.find(b => (b.ariaLabel || b.textContent.trim()) === %q).getBoundingClientRect())`, name)), &p.X, &p.Y)
	return p
}

// gestures are 200 of them, and how long the slowest of all but two in a hundred takes
// to be answered: a pan, a pinch, a tap, a nudge, a step undone.
func (b *bench) gestures() {
	fmt.Println("200 gestures on job M, processor slowed 4 times")
	v := b.visit()
	defer b.leave()
	v.Go("")
	b.open(v, jobs.M(1))
	v.Calm()
	at := b.grip(v)
	bare := v.Wall(0, 0)
	bare.X, bare.Y = bare.X+60, bare.Y-12
	b.throttle(v, slow)
	v.Run(`window.answers = {}; long.length = 0`)
	for i := range 40 {
		v.TapAt(at)
		v.Stroke(at, visitor.Point{X: at.X + 30, Y: at.Y - 10}, 5)
		v.Press("z", visitor.Control())
		v.Pinch([2]visitor.Point{{X: bare.X, Y: bare.Y - 80}, {X: bare.X + 90, Y: bare.Y - 80}},
			[2]visitor.Point{{X: bare.X, Y: bare.Y - 80}, {X: bare.X + 90 + float64(i%7*10), Y: bare.Y - 80}}, 3)
		v.Calm()
		v.TapAt(spot(v, "Fit the wall"))
		v.Calm()
	}
	all := b.numbers(v, `Object.values(answers)`)
	slices.Sort(all)
	if n := len(all); n > 0 {
		b.row("answer to the slowest of 98 in a hundred (INP)", "ms", all[max(n*98/100-1, 0)], 200)
	}
	long := b.numbers(v, "long")
	slices.Sort(long)
	b.row("tasks over 50 ms", "", float64(len(long)), 0)
	if len(long) > 0 {
		b.row("the longest of them", "ms", long[len(long)-1], 50)
	}
}

// memory is what job L takes.
func (b *bench) memory() {
	fmt.Println("Memory of job L, after a hundred drawings")
	v := b.visit()
	defer b.leave()
	v.Go("")
	b.open(v, jobs.L())
	_, err := Call(v.Ctx, performance.Enable, performance.EnableParams{})
	require.NoError(b, err)
	for range 50 {
		v.Tap("button", "Zoom in")
		v.Tap("button", "Fit the wall")
	}
	v.Run("gc()")
	m, err := Call(v.Ctx, performance.GetMetrics, struct{}{})
	require.NoError(b, err)
	for _, x := range m.Metrics {
		if x.Name == "JSHeapUsedSize" {
			b.row("JavaScript heap", "MB", x.Value/1e6, 40)
		}
	}
	b.row("memory of the program", "MiB", number(v.Text(`program.exports.mem.buffer.byteLength`))/(1<<20), 96)
}
