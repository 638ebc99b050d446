package main

import (
	"fmt"
	"strings"
	"time"

	"ledgewright/testdata/jobs"
	"ledgewright/testdata/visitor"
)

// shows notes when the stage stands in the place of the picture, and counts draw calls.
const shows = `if (window === top) { const look = () => document.querySelector('.picture.staged') ? performance.mark('staged') : setTimeout(look, 2); look() }
{ const draw = WebGL2RenderingContext.prototype.drawElements
  window.drawn = 0
  WebGL2RenderingContext.prototype.drawElements = function (...a) { window.drawn++; return draw.apply(this, a) } }
`

// timing notes how long the page's calls to the stage take.
const timing = `window.inside = document.querySelector('iframe').contentWindow; window.calls = { stageOver: [], stageFrame: [] }
for (const name in calls) { const f = inside[name]; inside[name] = (...a) => { const from = performance.now(), r = f(...a); calls[name].push(performance.now() - from); return r } }`

// stage is the picture painted by the graphics processor, of which this machine has none:
// what the processor does for a step of a drag on job M, and how long software takes to
// fill the picture.
func (b *bench) stage() {
	fmt.Println("The stage: job M")
	v := b.house.Visit(b, visitor.Tablet, watch+shows)
	defer b.leave()
	v.Go("?measure&picture=stage")
	b.open(v, jobs.M(1))
	b.staged(v)
	v.Reload()
	b.staged(v)
	mark := func(name string) float64 {
		return number(v.Text(`performance.getEntriesByName('` + name + `')[0].startTime`))
	}
	b.row("usable to the stage's first picture, not slowed", "ms", mark("staged")-mark("usable"), 0)
	at := b.grip(v)
	v.Run(timing)
	b.throttle(v, slow)
	v.Down(at)
	v.Moved(visitor.Point{X: at.X + 24, Y: at.Y})
	v.Await(`new Promise(done => askFrame(() => setTimeout(() => done(''))))`)
	v.Run(`performance.clearMeasures(); frames.length = 0; for (const n in calls) calls[n].length = 0; inside.drawn = 0; window.was = inside.stageCounts()`)
	for i := range 60 {
		v.Moved(visitor.Point{X: at.X + 24 + float64(i%40), Y: at.Y - float64(i%25)})
		v.Await(`new Promise(done => askFrame(() => setTimeout(() => done(''))))`)
	}
	pages, frames := b.measures(v, "page"), b.numbers(v, "frames")
	taken, drawn := b.numbers(v, "calls.stageOver"), b.numbers(v, "calls.stageFrame")
	steps := b.measures(v, "step")
	count := func(what string) float64 {
		return number(v.Text(`inside.stageCounts().` + what + ` - was.` + what))
	}
	draws := max(count("draws"), 1)
	b.row("bytes of what is in the hand", "kB", count("bytes")/max(count("drawings"), 1)/1e3, 0)
	b.row("vertices", "", number(v.Text(`inside.stageCounts().vertices`)), 60_000)
	b.row("calls to WebGL that draw, a frame", "", number(v.Text(`inside.drawn`))/draws, 12)
	b.row("draws for a step", "", draws/max(float64(len(frames)), 1), 1)
	v.Up()
	b.throttle(v, 1)
	var timed []float64
	for range 8 {
		timed = append(timed, number(v.Text(`inside.stageTimed()`)))
	}
	b.spread("a picture to its last pixel, by software, not slowed", timed, 0)
	b.row("memory of the stage's program", "MiB", number(v.Text(`inside.stageMemory()`))/(1<<20), 0)

	fmt.Println("A step of a drag on job M with the stage, processor slowed 4 times")
	both, rest := []float64{}, []float64{}
	for i := range min(len(taken), len(drawn), len(frames), len(pages), len(steps)) {
		both = append(both, taken[i]+drawn[i])
		rest = append(rest, max(frames[i]-pages[i]-steps[i]-taken[i]-drawn[i], 0))
	}
	b.spread("hand, snapping, edit, Derive (budget 0.5 + 4)", steps, 4.5)
	b.spread("view and panel, as a tree (budget of view 3)", pages, 3)
	b.spread("the difference, and the drawing's bytes (budget 3)", rest, 3)
	b.spread("the stage: copy and decode", taken, 0)
	b.spread("the stage: triangles and draw calls", drawn, 0)
	b.spread("both (budget 4.5)", both, 4.5)
	b.spread("the page's part of the frame (budget 15)", frames, 15)
}

// staged waits for the stage: its program has ten megabytes to be compiled.
func (b *bench) staged(v *visitor.Tab) {
	for end := time.Now().Add(time.Minute); v.Text(`!!document.querySelector('.picture.staged')`) != "true" && time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
	}
	v.Until(`!!document.querySelector('.picture.staged')`, "true")
	v.Calm()
}

// stageWeight is what the stage's program weighs after gzip, by the name that its page
// has for it.
func (b *bench) stageWeight() (n float64) {
	page, _ := b.house.Pages("stage.html")
	for _, part := range strings.FieldsFunc(string(page), func(r rune) bool { return strings.ContainsRune(`"' <>=`, r) }) {
		if body, ok := b.house.Pages(part); ok && strings.HasSuffix(part, ".wasm") {
			n = float64(gzipped(body))
		}
	}
	return n
}
