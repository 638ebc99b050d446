//go:build browser

package main

import (
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	. "github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"ledgewright/site"
	"ledgewright/testdata/visitor"
)

// These tests use the stage as a page's program does, through package browser.

// pane compiles the page's program, once.
var pane = sync.OnceValues(func() ([]byte, error) {
	dir, err := os.MkdirTemp("", "pane")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "pane.wasm")
	c := exec.Command("go", "build", "-ldflags=-s -w", "-o", file, "./testdata/pane")
	c.Env, c.Stderr = append(os.Environ(), "GOOS=js", "GOARCH=wasm"), os.Stderr
	if err := c.Run(); err != nil {
		return nil, err
	}
	return os.ReadFile(file)
})

// glue is the Go distribution's own.
func glue() ([]byte, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib/wasm/wasm_exec.js"))
}

// small is a window in which software paints quickly.
var small = visitor.Size{Width: 480, Height: 320}

// enter opens the page; the script runs before every document of it.
func enter(t *testing.T, script string) *visitor.Tab {
	t.Helper()
	program, err := pane()
	require.NoError(t, err)
	exec, err := glue()
	require.NoError(t, err)
	url := house.Serve(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch name := strings.TrimPrefix(r.URL.Path, "/"); name {
		case "pane.wasm":
			w.Header().Set("Content-Type", "application/wasm")
			_, _ = w.Write(program)
		case "wasm_exec.js":
			w.Header().Set("Content-Type", "text/javascript")
			_, _ = w.Write(exec)
		case "pane.html", "pane.js", "host.css":
			file(w, name)
		default:
			site.Handler(house.Pages).ServeHTTP(w, r)
		}
	}))
	b := house.Visit(t, small, script)
	b.Allow(url)
	b.Do(Navigate(url + "/pane.html"))
	b.Until(`typeof window.pane`, "object")
	return b
}

// staged is a page with a stage that is shown.
func staged(t *testing.T, script string) *visitor.Tab {
	t.Helper()
	b := enter(t, script)
	b.Run(`pane.draw('one', 0.1, 20, 280)`)
	b.Run(`pane.choose('stage')`)
	arrives(b, `pane.shown()`, "true")
	return b
}

// arrives waits for what needs the stage's program: ten megabytes that the browser has to
// compile again, a while on a machine that does other things as well.
func arrives(b *visitor.Tab, js, want string) {
	b.T.Helper()
	for end := time.Now().Add(time.Minute); b.Text(js) != want && time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
	}
	b.Until(js, want)
}

func TestAPageShowsItsStage(t *testing.T) {
	b := staged(t, "")
	require.Equal(t, "visible", b.Text(`glass().style.visibility`))
	require.Equal(t, "1", b.Text(`inside().stageCounts().drawings`), "the drawing from before it was there")
	for _, call := range []string{`pane.draw('one', 0.1, 21, 280)`, `pane.look(0.1, 22, 280)`} {
		before := b.Text(`inside().stageCounts().draws`)
		require.Equal(t, before+" 1", b.Text(`(() => { const n = inside().stageCounts().draws; `+call+`; return n + ' ' + (inside().stageCounts().draws - n) })()`))
	}
	require.Empty(t, b.Text(`inside().refused.join()`), "what the policy refused in the stage's own document")
	b.Run(`pane.choose('svg')`)
	require.Equal(t, "false null", b.Text(`pane.shown() + ' ' + glass()`))
	require.Equal(t, "true,false", b.Text(`pane.said`))
}

// hours lets the page believe that time passes.
const hours = `if (window === top) { const now = performance.now.bind(performance); window.later = 0; performance.now = () => now() + later }`

// The context is lost: the SVG at once, the stage back with its drawing, and the page's
// program is none the wiser. The maker's page goes through it twenty times.
func TestTheContextIsLost(t *testing.T) {
	b := staged(t, hours)
	for range 3 {
		b.Run(`window.later += 11 * 60 * 1000; pane.said.length = 0; lose()`)
		arrives(b, `pane.said`, "false,true")
		require.Equal(t, "1", b.Text(`inside().stageCounts().drawings`))
		require.NotEqual(t, "0", b.Text(`inside().stageCounts().triangles`))
		require.Empty(t, b.Text(`inside().refused.join()`), "what the policy refused")
	}
	require.Equal(t, "1 false", b.Text(`pane.alive() + ' ' + ended`))
}

func TestTwoLossesInTenMinutesAreOneTooMany(t *testing.T) {
	b := staged(t, "")
	b.Run(`pane.said.length = 0; lose()`)
	arrives(b, `pane.said`, "false,true")
	b.Run(`lose()`)
	b.Until(`pane.said`, "false,true,false")
	require.Equal(t, "lost twice null", b.Text(`pane.why() + ' ' + glass()`))
	b.Run(`pane.draw('one', 0.1, 20, 280); pane.look(0.1, 21, 280)`)
	require.Equal(t, "1 false", b.Text(`pane.alive() + ' ' + ended`))
}

// A stage that dies takes nothing with it.
func TestAStageThatDies(t *testing.T) {
	b := staged(t, "")
	b.Run(`try { inside().stageView() } catch {}`) // no arguments: the program panics
	b.Run(`pane.draw('one', 0.1, 20, 280)`)
	b.Until(`pane.shown()`, "false")
	require.Equal(t, "null", b.Text(`glass()`))
	require.NotEmpty(t, b.Text(`pane.why()`))
	require.Equal(t, "1 false", b.Text(`pane.alive() + ' ' + ended`))
	b.Forgive()
}

// A stage that is not there is given up.
func TestAStageThatDoesNotArrive(t *testing.T) {
	b := enter(t, `if (window !== top) window.fetch = () => Promise.reject(new Error('no connection'))`)
	b.Run(`pane.choose('stage')`)
	b.Until(`pane.why()`, "Error: no connection")
	require.Equal(t, "null false", b.Text(`glass() + ' ' + pane.shown()`))
}

// real makes the software renderer pass for a graphics processor.
const real = `const ask = WebGL2RenderingContext.prototype.getParameter
WebGL2RenderingContext.prototype.getParameter = function (n) { return n === 37446 ? 'Mali-G52' : ask.call(this, n) }
`

// timed makes every trial frame take so long.
func timed(ms string) string {
	return `if (window !== top) Object.defineProperty(window, 'stageTimed', { get: () => () => ` + ms + `, set() {} })`
}

func TestTheChoiceByMeasurement(t *testing.T) {
	for name, c := range map[string]struct{ script, why, shown string }{
		"a software renderer is not tried": {"", "", "false"},
		"a fast one is shown":              {real + timed("6"), "", "true"},
		"a slow one is not":                {real + timed("20"), "slow", "false"},
		"nor where traffic is dear":        {real + `Object.defineProperty(navigator, 'connection', { value: { saveData: true } })`, "", "false"},
	} {
		t.Run(name, func(t *testing.T) {
			b := enter(t, c.script)
			b.Run(`pane.draw('one', 0.1, 20, 280)`)
			b.Run(`pane.choose('')`)
			arrives(b, `pane.shown() + ' ' + pane.why()`, c.shown+" "+c.why)
			if c.shown == "false" {
				require.Equal(t, "null", b.Text(`glass()`))
			}
		})
	}
}

// A screen with other pixels: the stage comes again with as many, at most two for one.
func TestOtherPixels(t *testing.T) {
	b := staged(t, "")
	require.Equal(t, "480", b.Text(`inside().document.querySelector('canvas').width`))
	for scale, want := range map[float64]string{2: "960", 3: "960"} {
		b.Do(EmulateViewport(small.Width, small.Height, EmulateScale(scale)))
		arrives(b, `pane.shown() && inside().document.querySelector('canvas').width`, want)
		b.Until(`inside().stageCounts().drawings`, "1")
	}
	require.Empty(t, b.Text(`pane.why()`))
}

// Keys, pointers and readers pass the stage by.
func TestTheStageIsGlass(t *testing.T) {
	b := staged(t, "")
	names := ""
	for range 3 {
		b.Press(kb.Tab)
		names += b.Focused().Name + " "
	}
	require.Equal(t, "Before After ", names[:len("Before After ")])
	require.Equal(t, "false", b.Text(`document.elementFromPoint(240, 250) === glass()`))
	require.Equal(t, "BODY", b.Text(`inside().document.activeElement.tagName`))
	require.False(t, b.Has("Iframe", "…"))
	source, err := os.ReadFile(filepath.Join(house.Root, "testdata/npm/node_modules/axe-core/axe.min.js"))
	require.NoError(t, err, "run testdata/tools.sh")
	b.Do(Evaluate[Void](string(source)))
	require.Equal(t, "", b.Await(`axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'], resultTypes: ['violations', 'incomplete'] })
		.then(r => ['violations', 'incomplete'].flatMap(kind => r[kind].flatMap(v => v.nodes.map(n => kind + ' ' + v.id + ' ' + n.html))).join())`))
}

// counting counts what reaches WebGL.
const counting = `{ const draw = WebGL2RenderingContext.prototype.drawElements
window.drawn = 0
WebGL2RenderingContext.prototype.drawElements = function (...a) { window.drawn++; return draw.apply(this, a) } }`

// The job of 48 modules: one draw call for the picture, and Ebitengine's own to the screen.
func TestWhatAFrameOfTheLargeJobCosts(t *testing.T) {
	b := staged(t, counting)
	const fit = `0.018, 10, 250`
	b.Run(`pane.draw('large', ` + fit + `)`)
	calls := b.Text(`(() => { const n = inside().drawn; pane.draw('large', ` + fit + `); return inside().drawn - n })()`)
	n, err := strconv.Atoi(calls)
	require.NoError(t, err)
	require.LessOrEqual(t, n, 12)
	vertices, err := strconv.Atoi(b.Text(`inside().stageCounts().vertices`))
	require.NoError(t, err)
	require.Greater(t, vertices, 10_000)
	require.LessOrEqual(t, vertices, 60_000)
	t.Logf("%d vertices, %d calls to WebGL a frame, %s bytes on the wire", vertices, n, b.Text(`inside().stageCounts().bytes / inside().stageCounts().drawings`))
	median := func(do string) string {
		return b.Await(`(async () => { const all = []; for (let i = 0; i < 15; i++) {
			await new Promise(done => askFrame(() => setTimeout(done, 60))) // what was drawn before is through
			const t = performance.now(); ` + do + `; all.push(performance.now() - t) }
			return all.sort((a, b) => a - b)[7].toFixed(2) })()`)
	}
	t.Logf("ms, median: pack and copy %s; all of a drawing with its draw calls %s; a view %s, of it %s for the frame", median(`pane.pack(1)`),
		median(`pane.draw('large', `+fit+`)`), median(`pane.look(`+fit+`)`), median(`inside().stageFrame()`))
	t.Logf("reference loop %s ms", median(`{ let x = 0; for (let i = 0; i < 1e6; i++) x = (x * 1103515245 + 12345) & 0x7fffffff; window.sink = x }`))
	t.Logf("memory of the stage's program: %s MB", b.Text(`(inside().stageMemory() / 1e6).toFixed(1)`))
}
