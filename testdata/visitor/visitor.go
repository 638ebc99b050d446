// Package visitor visits the maker's page in Chromium, as its tests, its pictures and
// its bench do: it builds the site as it is released, serves it, and uses it with
// finger, pen, mouse and keys. Things on the page are found by their role and their
// name, as somebody finds them who hears the page; never by how it is made.
//
// It waits for what is to be seen and never for a time.
package visitor

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/site"
)

// A T is a test, or what stands for one in a program.
type T interface {
	require.TestingT
	Helper()
	Cleanup(func())
	Name() string
	Failed() bool
}

// A House is the site as it is released, served, and a browser to visit it with.
type House struct {
	URL   string      // ends with a slash
	Pages site.Source // its files
	Root  string      // the top of the repository
	ctx   context.Context
	ends  []func()
}

// Open builds the site, serves it and starts Chromium. It is made once and then visited
// often: every visit has a profile of its own.
func Open() (h *House, err error) {
	h = &House{}
	defer func() {
		if err != nil {
			h.Close()
		}
	}()
	if h.Root, err = top(); err != nil {
		return h, err
	}
	dir, err := os.MkdirTemp("", "ledgewright")
	if err != nil {
		return h, err
	}
	h.ends = append(h.ends, func() { _ = os.RemoveAll(dir) })
	c := exec.Command("go", "run", "./site/build", filepath.Join(dir, "site"))
	c.Dir = h.Root
	if out, err := c.CombinedOutput(); err != nil {
		return h, fmt.Errorf("building the site: %w\n%s", err, out)
	}
	root, err := os.OpenRoot(filepath.Join(dir, "site"))
	if err != nil {
		return h, err
	}
	h.ends = append(h.ends, func() { _ = root.Close() })
	h.Pages = func(path string) ([]byte, bool) {
		body, err := root.ReadFile(path)
		return body, err == nil
	}
	h.URL = h.Serve(site.Handler(h.Pages)) + "/"
	return h, h.chromium()
}

// top finds the directory of go.mod.
func top() (string, error) {
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "ledgewright").Output()
	return strings.TrimSpace(string(out)), err
}

// Serve serves something else beside the site, until the house is closed.
func (h *House) Serve(handler http.Handler) (url string) {
	s := httptest.NewServer(handler)
	h.ends = append(h.ends, s.Close)
	return s.URL
}

// chromium starts the browser.
func (h *House) chromium() error {
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if at, err := exec.LookPath(name); err == nil {
			path = at
			break
		}
	}
	if path == "" {
		return fmt.Errorf("visiting the page needs Chromium: install the package chromium")
	}
	ctx, cancel := NewExecAllocator(context.Background(), append(DefaultExecAllocatorOptions[:], ExecPath(path), NoSandbox,
		Flag("disable-background-networking", true), Flag("disable-component-update", true), Flag("disable-sync", true),
		Flag("hide-scrollbars", true), Flag("js-flags", "--expose-gc"))...)
	h.ends = append(h.ends, cancel)
	ctx, cancel = NewContext(ctx)
	h.ends = append(h.ends, cancel)
	h.ctx = ctx
	return Do(ctx, Navigate("about:blank"))
}

// Close ends all that was begun.
func (h *House) Close() {
	for i := len(h.ends) - 1; i >= 0; i-- {
		h.ends[i]()
	}
	h.ends = nil
}

// A Size is that of a window.
type Size struct{ Width, Height int64 }

func (s Size) String() string { return fmt.Sprintf("%dx%d", s.Width, s.Height) }

// The windows that the page is made for: a tablet both ways, a phone, and a small one.
var (
	Tablet  = Size{1180, 820}
	Upright = Size{820, 1180}
	Phone   = Size{390, 844}
	Small   = Size{320, 640}
)

// Sizes are all of them.
func Sizes() []Size { return []Size{Tablet, Upright, Phone, Small} }

// A Tab is a page that is visited by somebody with a profile of their own.
type Tab struct {
	T     T
	Ctx   context.Context
	House *House
	Size  Size

	allowed  string // another address that may be asked
	mu       sync.Mutex
	requests []string // to anywhere but the house
	troubles []string // errors of the page and its console
}

// watch runs before the page: it notes what the policy refused, and counts the frames
// that are asked for.
const watch = `window.refused = []; window.framesAsked = 0; window.framesShown = 0
document.addEventListener('securitypolicyviolation', e => refused.push(e.effectiveDirective + ' ' + e.blockedURI))
delete window.showSaveFilePicker // a dialog of the browser that nobody could answer
window.askFrame = window.requestAnimationFrame.bind(window)
window.requestAnimationFrame = f => { framesAsked++; return askFrame(t => { framesShown++; f(t) }) }
`

// Visit opens a tab with a fresh profile, on a touch screen of that size. The script
// runs before each page. What the policy refused, requests to anywhere else and errors
// of the page fail the test at its end.
func (h *House) Visit(t T, size Size, script string) *Tab {
	t.Helper()
	ctx, cancel := NewContext(h.ctx, WithNewBrowserContext())
	b := &Tab{T: t, Ctx: ctx, House: h}
	t.Cleanup(cancel)
	require.NoError(t, Listen(ctx, b.hear))
	t.Cleanup(b.leave)
	_, err := Call(ctx, network.Enable, network.EnableParams{})
	require.NoError(t, err)
	_, err = Call(ctx, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true}) // several tabs at once have the focus
	require.NoError(t, err)
	_, err = Call(ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: watch + script})
	require.NoError(t, err)
	b.Resize(size)
	return b
}

// hear notes what the browser tells.
func (b *Tab) hear(ev any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch ev := ev.(type) {
	case *network.EventRequestWillBeSent:
		if url := ev.Request.URL; !strings.HasPrefix(url, b.House.URL) && (b.allowed == "" || !strings.HasPrefix(url, b.allowed)) && !strings.HasPrefix(url, "blob:") && !strings.HasPrefix(url, "data:") && url != "about:blank" {
			b.requests = append(b.requests, url)
		}
	case *runtime.EventExceptionThrown:
		b.troubles = append(b.troubles, ev.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		if ev.Type == "error" {
			text := ""
			for _, a := range ev.Args {
				text += string(a.Value) + a.Description + " "
			}
			b.troubles = append(b.troubles, text)
		}
	}
}

// Allow allows requests to another address than the house's.
func (b *Tab) Allow(url string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.allowed = url
}

// Forgive forgets what has gone wrong so far: a test that brought it about says so.
func (b *Tab) Forgive() {
	b.Run(`window.refused = []`)
	b.mu.Lock()
	defer b.mu.Unlock()
	b.requests, b.troubles = nil, nil
}

// leave is the end of every visit.
func (b *Tab) leave() {
	b.mu.Lock()
	requests, troubles := b.requests, b.troubles
	b.mu.Unlock()
	if len(requests) > 0 {
		b.T.Errorf("requests to elsewhere: %v", requests)
	}
	if len(troubles) > 0 {
		b.T.Errorf("the page had trouble: %v", troubles)
	}
	if refused, err := Run(b.Ctx, Evaluate[string](`(window.refused || []).join()`)); err == nil && refused != "" {
		b.T.Errorf("the policy refused: %s", refused)
	}
	if b.T.Failed() {
		b.photograph(b.failure())
	}
}

// failure is where the picture of a failed test goes.
func (b *Tab) failure() string {
	return filepath.Join(b.House.Root, "build", "failures", strings.ReplaceAll(b.T.Name(), "/", "-")+".png")
}

// photograph keeps a picture of what is to be seen.
func (b *Tab) photograph(path string) {
	png, err := Run(b.Ctx, CaptureScreenshot())
	if err == nil && os.MkdirAll(filepath.Dir(path), 0o755) == nil {
		_ = os.WriteFile(path, png, 0o644) // of a test that has failed already
	}
}

// Photograph writes a picture of the window to a file.
func (b *Tab) Photograph(path string) {
	b.T.Helper()
	png, err := Run(b.Ctx, CaptureScreenshot())
	require.NoError(b.T, err)
	require.NoError(b.T, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(b.T, os.WriteFile(path, png, 0o644))
}

// Resize gives the window another size.
func (b *Tab) Resize(s Size) {
	b.T.Helper()
	b.Size = s
	b.Do(EmulateViewport(s.Width, s.Height, EmulateMobile, EmulateTouch))
	_, err := Call(b.Ctx, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: true, MaxTouchPoints: 5})
	require.NoError(b.T, err)
}

// Go opens an address of the house, such as "" or "#code", and waits until the page can
// be used.
func (b *Tab) Go(rest string) *Tab {
	b.T.Helper()
	b.Do(Navigate("about:blank"), Navigate(b.House.URL+rest))
	b.Until(`performance.getEntriesByName('usable').length`, "1")
	return b
}

// Reload loads the page again.
func (b *Tab) Reload() {
	b.T.Helper()
	b.Do(Reload())
	b.Until(`performance.getEntriesByName('usable').length`, "1")
}

// Do takes steps in the browser.
func (b *Tab) Do(steps ...Action[Void]) {
	b.T.Helper()
	require.NoError(b.T, Do(b.Ctx, steps...))
}

// Text returns what an expression comes to, as text.
func (b *Tab) Text(js string) string {
	b.T.Helper()
	s, err := Run(b.Ctx, Evaluate[string]("String("+js+")"))
	require.NoError(b.T, err, js)
	return s
}

// Run runs statements.
func (b *Tab) Run(js string) {
	b.T.Helper()
	b.Do(Evaluate[Void]("{" + js + "}"))
}

// Await returns what a promise comes to.
func (b *Tab) Await(js string) string {
	b.T.Helper()
	s, err := Run(b.Ctx, Evaluate[string](js, EvalAwaitPromise))
	require.NoError(b.T, err, js)
	return s
}

// patience is how long anything is waited for: a slow machine with two tests at once
// stays well within it.
const patience = 10 * time.Second

// Wait waits until something holds; what says what is waited for.
func (b *Tab) Wait(what string, holds func() bool) {
	b.T.Helper()
	b.wait(holds, func() string { return what })
}

func (b *Tab) wait(holds func() bool, what func() string) {
	b.T.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
		if holds() {
			return
		}
		if time.Now().After(end) {
			b.photograph(b.failure())
			require.Fail(b.T, "waited in vain", "for %s", what())
		}
	}
}

// Until waits until an expression has a value.
func (b *Tab) Until(js, want string) {
	b.T.Helper()
	got := ""
	b.Wait("until "+js+" is "+want, func() bool { got = b.Text(js); return got == want })
}

// Calm waits until the page shows all that it was told: two frames have passed, and none
// is asked for that has not been shown, and nothing moves or changes its colour any more.
func (b *Tab) Calm() {
	b.T.Helper()
	b.Await(`new Promise(done => { const look = () => askFrame(() => askFrame(() => framesAsked === framesShown && document.getAnimations().every(a => a.playState !== 'running') ? done('') : look())); look() })`)
}

// History are the addresses that Back can go to, up to the present one.
func (b *Tab) History() (out []string) {
	b.T.Helper()
	h, err := Call(b.Ctx, page.GetNavigationHistory, cdp.Empty{})
	if err != nil { // in between two pages there is none
		return nil
	}
	for _, e := range h.Entries[:h.CurrentIndex+1] {
		out = append(out, e.URL)
	}
	return out
}

// Address is what stands in the address bar.
func (b *Tab) Address() string {
	b.T.Helper()
	if all := b.History(); len(all) > 0 {
		return all[len(all)-1]
	}
	return ""
}
