//go:build browser

package browser

import (
	"bytes"
	"context"
	"html/template"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/page"
	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// These tests need Chromium, so they are built only with -tags browser. They fail where
// it is missing.

const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; frame-src 'self'; worker-src 'self'; " +
	"manifest-src 'self'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'"

// watched runs before the page: it notes what the policy refused and counts the frames
// that are asked for.
const watched = `window.refused = []; window.frames_ = 0
document.addEventListener('securitypolicyviolation', e => refused.push(e.effectiveDirective + ' ' + e.blockedURI))
const ask = window.requestAnimationFrame
window.requestAnimationFrame = f => { frames_++; return ask.call(window, f) }
delete window.showSaveFilePicker`

// toy builds the toy page and serves it as the site serves the workshop.
func toy(t *testing.T) http.Handler {
	dir := t.TempDir()
	build := exec.Command("go", "build", "-ldflags=-s -w", "-o", filepath.Join(dir, "toy.wasm"), "./testdata/toy")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := build.CombinedOutput()
	require.NoError(t, err, "%s", out)
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	read := func(path string) []byte {
		body, err := os.ReadFile(path)
		require.NoError(t, err)
		return body
	}
	program := read(filepath.Join(dir, "toy.wasm"))
	shell, err := template.ParseFiles("../../site/workshop/app.html")
	require.NoError(t, err)
	var html bytes.Buffer
	require.NoError(t, shell.Execute(&html, map[string]any{
		"CSP": policy, "Icon": "icon.svg", "Style": "shell.css", "Shell": "shell.css", "Exec": "wasm_exec.js",
		"Loader": "loader.js", "Program": "toy.wasm", "Size": len(program),
	}))
	files := map[string]struct {
		kind string
		body []byte
	}{
		"/":             {"text/html; charset=utf-8", html.Bytes()},
		"/shell.css":    {"text/css", read("../../site/workshop/shell.css")},
		"/loader.js":    {"text/javascript", read("../../site/workshop/loader.js")},
		"/wasm_exec.js": {"text/javascript", read(filepath.Join(strings.TrimSpace(string(root)), "lib/wasm/wasm_exec.js"))},
		"/toy.wasm":     {"application/wasm", program},
		"/icon.svg":     {"image/svg+xml", []byte(`<svg xmlns="http://www.w3.org/2000/svg"/>`)},
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		f, ok := files[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", f.kind)
		_, _ = w.Write(f.body)
	})
}

// A tab is a page in Chromium.
type tab struct {
	t   *testing.T
	ctx context.Context
	url string
}

// chromium opens a browser of its own, with a fresh profile.
func chromium(t *testing.T) context.Context {
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if at, err := exec.LookPath(name); err == nil {
			path = at
			break
		}
	}
	require.NotEmpty(t, path, "these tests need Chromium: install the package chromium")
	ctx, cancel := NewExecAllocator(context.Background(), append(DefaultExecAllocatorOptions[:], ExecPath(path), NoSandbox,
		Flag("disable-background-networking", true), Flag("disable-component-update", true), Flag("disable-sync", true))...)
	t.Cleanup(cancel)
	ctx, stop := context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(stop)
	ctx, cancel = NewContext(ctx)
	t.Cleanup(cancel)
	require.NoError(t, Do(ctx, Navigate("about:blank")))
	return ctx
}

// open opens a tab whose page is at an address of its own, so that nothing is kept for
// it from another. The script runs before the page does.
func open(t *testing.T, chromium context.Context, handler http.Handler, script string) *tab {
	server := httptest.NewServer(handler)
	t.Cleanup(server.Close)
	ctx, cancel := NewContext(chromium)
	t.Cleanup(cancel)
	b := &tab{t, ctx, server.URL + "/"}
	b.do(EmulateViewport(810, 1080))
	_, err := Call(ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: watched + ";" + script})
	require.NoError(t, err)
	return b
}

func (b *tab) do(steps ...Action[Void]) {
	b.t.Helper()
	require.NoError(b.t, Do(b.ctx, steps...))
}

func (b *tab) text(js string) string {
	b.t.Helper()
	s, err := Run(b.ctx, Evaluate[string]("String("+js+")"))
	require.NoError(b.t, err)
	return s
}

// run runs statements.
func (b *tab) run(js string) {
	b.t.Helper()
	b.do(Evaluate[Void]("{" + js + "}"))
}

// await returns what a promise comes to.
func (b *tab) await(js string) string {
	b.t.Helper()
	s, err := Run(b.ctx, Evaluate[string](js, EvalAwaitPromise))
	require.NoError(b.t, err)
	return s
}

// visit opens the page and waits until it is usable.
func (b *tab) visit(rest string) {
	b.t.Helper()
	b.do(Navigate("about:blank"), Navigate(b.url+rest))
	b.until(`performance.getEntriesByName('usable').length`, "1")
}

// until waits until an expression has a value.
func (b *tab) until(js, want string) {
	b.t.Helper()
	var got string
	require.Eventually(b.t, func() bool { got = b.text(js); return got == want }, 20*time.Second, 20*time.Millisecond, "%s is not %s", js, want)
}

// logged waits until a line stands in the page's log.
func (b *tab) logged(line string) {
	b.t.Helper()
	for range 500 {
		if strings.Contains(b.log(), line+"\n") {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	require.Contains(b.t, b.log(), line+"\n")
}

func (b *tab) log() string {
	b.t.Helper()
	return b.text(`[...document.querySelectorAll('#log li')].map(l => l.textContent + '\n').join('')`)
}

func (b *tab) click(id string) { b.t.Helper(); b.do(Click(CSS("#" + id))) }

func TestPageInChromium(t *testing.T) {
	handler, chromium := toy(t), chromium(t)
	for _, part := range []struct {
		name string
		run  func(*testing.T, *tab)
	}{
		{"the first page", firstPage},
		{"typing", typingInChromium},
		{"the hand", handInChromium},
		{"keeping", keeping},
		{"handing on", handingOn},
		{"coming in", comingIn},
		{"dialogs and speech", dialogsAndSpeech},
		{"a broken program", brokenProgram},
	} {
		t.Run(part.name, func(t *testing.T) {
			b := open(t, chromium, handler, "")
			b.visit("")
			part.run(t, b)
			require.Equal(t, "", b.text("refused.join()"), "what the policy refused")
		})
	}
}

func firstPage(t *testing.T, b *tab) {
	b.logged(`started jobs=0 last="" theme="" address=""`)
	require.Equal(t, "1", b.text("performance.getEntriesByName('readable').length"))
	require.Equal(t, "Toy · 0", b.text("document.title"))
	require.Equal(t, "evening", b.text("document.documentElement.dataset.view"))
	require.Equal(t, "http://www.w3.org/2000/svg", b.text("document.getElementById('pan').namespaceURI"))
	require.Equal(t, "0", b.text("document.querySelectorAll('.shell').length"))
	require.NotEqual(t, "", b.text("document.documentElement.style.getPropertyValue('--vvh')"))
	b.until(`/resized \d+x\d+/.test(document.getElementById('log').textContent)`, "true")
	require.Contains(t, b.text(`(() => { try { document.body.innerHTML = '<p>'; return 'taken' } catch (e) { return e.message } })()`),
		"TrustedHTML", "trusted types are on")
	b.run("refused.length = 0")

	b.do(Sleep(300 * time.Millisecond))
	before := b.text("frames_")
	b.do(Sleep(time.Second))
	require.Equal(t, before, b.text("frames_"), "nothing happens, nothing is drawn")
}

func typingInChromium(t *testing.T, b *tab) {
	b.run(`document.getElementById('length').select() || (window.field = document.getElementById('length')).id`)
	b.do(KeyEvent("90"))
	b.run(`document.getElementById('redo').click()`) // elements come and go about the field
	b.until("document.title", "Toy · 1")
	require.Equal(t, "true 90", b.text("(document.activeElement === field) + ' ' + field.value"))
	require.Equal(t, "H2", b.text("field.previousElementSibling.tagName"))
	b.do(KeyEvent("0"))
	b.run(`document.getElementById('redo').click()`)
	b.until("document.title", "Toy · 2")
	require.Equal(t, "true 900", b.text("(document.activeElement === field) + ' ' + field.value"))

	b.click("half") // a key of the page's own strip goes into the field
	b.until("(document.activeElement === field) + ' ' + field.value", "true 900 1/2")

	b.do(KeyEvent("\r"))
	b.logged(`entered length "900 1/2"`)
	b.until("field.value", "816")
	b.click("width") // leaving the field after Enter does not finish it again
	b.do(KeyEvent("2960\t2460\r"))
	b.logged("new 2960x2460")
	require.Equal(t, 1, strings.Count(b.log(), "entered"))

	b.do(KeyEvent("zé"))
	require.NotContains(t, b.log(), "key ", "what is typed is no shortcut")
	b.run("document.getElementById('picture').focus()")
	b.do(KeyEvent("x"))
	b.logged("key x control=false shift=false field=false")
}

// mouse sends one mouse event to the page.
func (b *tab) mouse(kind input.DispatchMouseEventType, x, y float64, opts ...MouseOption) {
	b.t.Helper()
	b.do(MouseEvent(kind, x, y, opts...))
}

// drag draws a mouse along a line in so many moves.
func (b *tab) drag(x, y, toX, toY float64, moves int) {
	b.mouse(input.DispatchMouseEventTypeMousePressed, x, y, ButtonLeft)
	for i := range moves {
		f := float64(i+1) / float64(moves)
		b.mouse(input.DispatchMouseEventTypeMouseMoved, x+f*(toX-x), y+f*(toY-y), ButtonLeft)
	}
	b.mouse(input.DispatchMouseEventTypeMouseReleased, toX, toY, ButtonLeft)
}

func (b *tab) touch(kind input.DispatchTouchEventType, at ...[2]float64) {
	b.t.Helper()
	points := []*input.TouchPoint{}
	for i, p := range at {
		id := float64(i)
		points = append(points, &input.TouchPoint{X: p[0], Y: p[1], ID: &id})
	}
	_, err := Call(b.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
	require.NoError(b.t, err)
}

// place returns where an element is.
func (b *tab) place(id string) (left, top, width, height float64) {
	box := strings.Fields(b.text(`(r => [r.x, r.y, r.width, r.height].join(' '))(document.getElementById('` + id + `').getBoundingClientRect())`))
	require.Len(b.t, box, 4)
	var v [4]float64
	for i := range v {
		var err error
		v[i], err = strconv.ParseFloat(box[i], 64)
		require.NoError(b.t, err)
	}
	return v[0], v[1], v[2], v[3]
}

func handInChromium(t *testing.T, b *tab) {
	left, top, width, height := b.place("picture")
	x, y := left+width/2, top+height/3
	b.mouse(input.DispatchMouseEventTypeMousePressed, x, y, ButtonLeft)
	b.mouse(input.DispatchMouseEventTypeMouseReleased, x, y, ButtonLeft)
	b.logged("gesture 1 at " + strconv.FormatFloat(width/2, 'f', 0, 64) + "," + strconv.FormatFloat(height/3, 'f', 0, 64))

	b.drag(x, y, x+60, y+10, 20)
	b.logged("gesture 5 at " + strconv.FormatFloat(width/2+60, 'f', 0, 64) + "," + strconv.FormatFloat(height/3+10, 'f', 0, 64))

	// A figure of the picture has its own click, and is no tap of the hand; a drag that
	// begins on it is one, and no click.
	fx, fy, fw, fh := b.place("figure")
	fx, fy = fx+fw/2, fy+fh/2
	taps := strings.Count(b.log(), "gesture 1")
	b.mouse(input.DispatchMouseEventTypeMousePressed, fx, fy, ButtonLeft)
	b.mouse(input.DispatchMouseEventTypeMouseReleased, fx, fy, ButtonLeft, func(p *input.DispatchMouseEventParams) { p.ClickCount = 1 })
	b.click("figure")
	b.logged("typing opened")
	require.Equal(t, taps, strings.Count(b.log(), "gesture 1"))
	clicks := strings.Count(b.log(), "typing opened")
	b.drag(fx, fy, fx+90, fy, 5)
	b.until(`[...document.querySelectorAll('#log li')].filter(l => /gesture 5/.test(l.textContent)).length`, "2")
	require.Equal(t, clicks, strings.Count(b.log(), "typing opened"))

	// Two fingers pan and zoom; a finger that rests presses long.
	b.touch(input.DispatchTouchEventTypeTouchStart, [2]float64{x - 40, y}, [2]float64{x + 40, y})
	for i := range 10 {
		d := float64(4 * i)
		b.touch(input.DispatchTouchEventTypeTouchMove, [2]float64{x - 40 - d, y}, [2]float64{x + 40 + d, y})
	}
	b.touch(input.DispatchTouchEventTypeTouchEnd)
	require.NotEqual(t, "0", strings.Fields(b.text("document.getElementById('pan').textContent"))[1])
	require.Equal(t, "1", b.text("visualViewport.scale"), "the page itself is not zoomed")
	b.touch(input.DispatchTouchEventTypeTouchStart, [2]float64{x, y})
	b.until(`[...document.querySelectorAll('#log li')].some(l => /gesture 2/.test(l.textContent))`, "true")
	b.touch(input.DispatchTouchEventTypeTouchEnd)

	wheel := func(p *input.DispatchMouseEventParams) { p.DeltaX, p.DeltaY = 1e-9, -24 } // of none it tells nothing
	b.mouse(input.DispatchMouseEventTypeMouseWheel, x, y, wheel, func(p *input.DispatchMouseEventParams) { p.Modifiers = 2 })
	b.until("document.getElementById('pan').textContent.split(' ')[2]", "1.273")
}

func keeping(t *testing.T, b *tab) {
	for i := range 30 {
		b.click("keep")
		b.logged("kept " + strconv.Itoa(i+1) + ` ""`)
	}
	b.await(`new Promise(done => { const r = indexedDB.open('ledgewright'); r.onsuccess = () => {
		const s = r.result.transaction('jobs', 'readwrite').objectStore('jobs'), g = s.get('j1')
		g.onsuccess = () => { s.put({...g.result, revision: 31}).onsuccess = () => { r.result.close(); done('') } } } })`)
	b.click("conflict")
	b.logged(`kept 99 "a newer state of this job was kept from another tab"`)
	states := `new Promise(done => { const r = indexedDB.open('ledgewright'); r.onsuccess = () => {
		const k = r.result.transaction('states').objectStore('states').getAllKeys(); k.onsuccess = () => done(k.result.map(k => k[1]).join(' ')) } })`
	require.Equal(t, "2 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25 26 27 28 29 30", b.await(states),
		"the last twenty, and the last that is not blank")
	b.run(`(s => { s.value = 'evening'; s.dispatchEvent(new Event('change', {bubbles: true})) })(document.getElementById('theme'))`)

	b.visit("")
	b.logged(`started jobs=1 last="j1" theme="evening" address=""`)
	require.Contains(t, b.log(), `job j1 "Reading corner" "4 modules"`)
	require.Equal(t, "evening", b.text("document.getElementById('theme').value"))
	b.click("read")
	b.logged(`read j1 "record 30" ""`)
	b.click("forget")
	b.logged("listed 0")
	b.click("read")
	b.logged(`read j1 "" "This job is no longer kept in this browser"`)
}

func handingOn(t *testing.T, b *tab) {
	dir, yes := t.TempDir(), true
	_, err := CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir, EventsEnabled: &yes})
	require.NoError(t, err)
	b.click("download")
	b.logged(`done plan ""`)
	require.Eventually(t, func() bool {
		body, err := os.ReadFile(filepath.Join(dir, "corner.json"))
		return err == nil && string(body) == `{"é":"½"}`
	}, 10*time.Second, 20*time.Millisecond)

	// Copied where the clipboard lets it, else shown to be copied by hand.
	b.run(`Object.defineProperty(navigator, 'clipboard', {configurable: true, value: {writeText: s => { window.copied = s; return Promise.resolve() }}})`)
	b.click("copy")
	b.logged(`done link ""`)
	require.Equal(t, b.url+"#A1code", b.text("copied"))
	b.run(`navigator.clipboard.writeText = () => Promise.reject(new DOMException('', 'NotAllowedError'))`)
	b.click("copy")
	b.until("document.querySelector('.by-hand textarea')?.value", b.url+"#A1code")
	require.Equal(t, b.url+"#A1code", b.text("getSelection().toString()"))
	b.do(Click(CSS(".by-hand button")))
	b.until("document.querySelector('.by-hand')", "null")

	// Shared as text where JSON is refused.
	b.run(`navigator.canShare = d => d.files[0].type == 'text/plain'; navigator.share = d => { window.shared = d.files[0]; return Promise.resolve() }`)
	b.click("share")
	b.until("window.shared?.name", "corner.json.txt")
}

func comingIn(t *testing.T, b *tab) {
	path := filepath.Join(t.TempDir(), "job.json")
	require.NoError(t, os.WriteFile(path, []byte(`{"schema":"½"}`), 0o600))
	b.do(SetUploadFiles(CSS("#file"), []string{path}))
	b.logged(`opened "job.json" "{\"schema\":\"½\"}"`)
	b.run(`(d => { d.setData('text/plain', ' a code '); document.body.dispatchEvent(new ClipboardEvent('paste', {clipboardData: d, bubbles: true})) })(new DataTransfer())`)
	b.logged(`opened "" "a code"`)
	b.run(`(d => { d.items.add(new File(['dropped'], 'd.txt')); document.body.dispatchEvent(new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true})) })(new DataTransfer())`)
	b.logged(`opened "d.txt" "dropped"`)
	b.run(`location.hash = 'A1another'`)
	b.logged(`opened "" "A1another"`)
	b.until("location.hash", "")
	b.run(`location.hash = 'log'`) // a place on the page
	b.visit("#A1code")
	b.logged(`started jobs=0 last="" theme="" address="A1code"`)
	b.until("location.hash", "")
	require.NotContains(t, b.log(), "opened")
}

func dialogsAndSpeech(t *testing.T, b *tab) {
	b.click("show")
	b.until("document.getElementById('dialog').matches(':modal')", "true")
	require.Equal(t, "close", b.text("document.activeElement.id"))
	b.do(KeyEvent("\x1b"))
	b.logged("dismissed")
	b.until("document.getElementById('dialog').open", "false")
	require.Equal(t, "show", b.text("document.activeElement.id"), "the focus goes back to where it was")

	b.click("redo")
	b.until("document.querySelector('[role=status]').textContent.trim()", "Done again: 1")
	b.logged("reckoned")
}

func brokenProgram(t *testing.T, b *tab) {
	b.click("break")
	b.until("document.querySelector('.stopped h1')?.textContent", "Ledgewright has stopped")
	require.Contains(t, b.text("document.querySelector('.stopped pre').textContent"), "the toy was told to break")
	require.Equal(t, "0", b.text("document.querySelectorAll('[data-why]:not([hidden])').length"))
}

// What the page says where the program cannot start: readable in any case, and why.
func TestProgramThatDoesNotStart(t *testing.T) {
	handler, chromium := toy(t), chromium(t)
	for _, c := range []struct{ name, before, why string }{
		{"no WebAssembly", "delete window.WebAssembly", "old"},
		{"it does not arrive", "window.fetch = () => Promise.reject(new TypeError('Failed to fetch'))", "away"},
		{"it is not there", "const f = window.fetch; window.fetch = () => f('nothing.wasm')", "away"},
		{"it is no program", "const f = window.fetch; window.fetch = () => f('icon.svg')", "old"},
		{"no memory", "WebAssembly.instantiateStreaming = () => Promise.reject(new RangeError('WebAssembly.Memory(): could not allocate memory'))", "memory"},
		{"it ends", "Object.defineProperty(window, 'Go', {set() {}, get: () => class { importObject = {gojs: new Proxy({}, {get: () => () => {}})}; run() { return Promise.resolve() } }})", "stopped"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := open(t, chromium, handler, c.before)
			b.do(Navigate(b.url))
			b.until("[...document.querySelectorAll('[data-why]:not([hidden])')].map(e => e.dataset.why).join()", c.why)
			require.Equal(t, "Ledgewright", b.text("document.querySelector('h1').textContent"))
			require.Equal(t, "false", b.text("document.getElementById('page').hidden"))
			require.Equal(t, "0", b.text("document.querySelectorAll('[data-waits]:not([hidden])').length"))
			require.Equal(t, "", b.text("refused.join()"))
		})
	}
}
