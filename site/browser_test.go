//go:build browser

package site

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// These tests need Chromium and the packages of testdata/npm, so they are built only
// with -tags browser, as make test does. They fail where a tool is missing.

const tools = "../testdata/npm/node_modules/"

// widths are those of a phone at 400 % zoom, a phone, and a tablet both ways.
const harness = `<!doctype html><title>waiting</title><iframe src="/"></iframe><script>
const sizes = [[320, 640], [390, 844], [820, 1180], [1180, 820]], tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
const frame = document.querySelector('iframe'), said = []
frame.onload = async () => {
  const w = frame.contentWindow, d = frame.contentDocument
  new w.ReportingObserver(reports => reports.forEach(r => said.push('policy: ' + r.body.effectiveDirective + ' ' + r.body.blockedURL)), {types: ['csp-violation'], buffered: true}).observe()
  const policy = w.trustedTypes.createPolicy('test', {createScriptURL: s => s}), script = d.createElement('script')
  script.src = policy.createScriptURL('/axe.min.js')
  await new Promise(done => { script.onload = done; d.head.append(script) })
  for (const [width, height] of sizes) {
    frame.width = width, frame.height = height
    await new Promise(done => setTimeout(done, 100))
    const at = width + ' wide: ', root = d.documentElement
    if (w.innerWidth != width) said.push(at + 'the frame is ' + w.innerWidth)
    if (root.scrollWidth > width) said.push(at + 'scrolls sideways, ' + root.scrollWidth)
    for (const e of d.querySelectorAll('a, summary, button')) {
      const b = e.getBoundingClientRect()
      if (!e.closest('p, footer, .skip') && (b.width < 24 || b.height < 24)) said.push(at + 'small target ' + e.textContent)
    }
    const r = await w.axe.run(d, {runOnly: tags})
    for (const kind of ['violations', 'incomplete']) for (const v of r[kind]) for (const n of v.nodes) said.push(at + kind + ' ' + v.id + ' ' + n.html)
    if (r.passes.length < 10) said.push(at + 'only ' + r.passes.length + ' rules applied')
  }
  for (const i of d.images) { i.loading = 'eager'; await i.decode().catch(() => said.push('no picture: ' + i.currentSrc)) }
  document.title = 'done ' + (w.matchMedia('(prefers-color-scheme: dark)').matches ? 'evening' : 'day')
  document.body.textContent = 'SAID' + JSON.stringify(said) + 'END'
}
</script>`

func TestStillPageInABrowser(t *testing.T) {
	server := testServer(t)
	for _, view := range []struct{ name, setting string }{{"day", "preferredColorScheme=1"}, {"evening", "preferredColorScheme=0"}} {
		t.Run(view.name, func(t *testing.T) {
			dom := dump(t, server.URL+"/harness", "--blink-settings="+view.setting)
			require.Contains(t, dom, "<title>done "+view.name+"</title>")
			_, after, found := strings.Cut(dom, "SAID")
			require.True(t, found, dom)
			text, _, _ := strings.Cut(after, "END")
			var said []string
			require.NoError(t, json.Unmarshal([]byte(text), &said))
			require.Empty(t, said)
		})
	}
}

// testServer serves the pages, the harness and the accessibility checker.
func testServer(t *testing.T) *httptest.Server {
	pages := build(t)
	axe, err := os.ReadFile(tools + "axe-core/axe.min.js")
	require.NoError(t, err, "run make tools first")
	mux := http.NewServeMux()
	mux.Handle("/", Handler(pages.Open))
	mux.HandleFunc("/axe.min.js", func(w http.ResponseWriter, r *http.Request) { _, _ = w.Write(axe) })
	mux.HandleFunc("/harness", func(w http.ResponseWriter, r *http.Request) { _, _ = w.Write([]byte(harness)) })
	server := httptest.NewServer(mux)
	t.Cleanup(server.Close)
	return server
}

// dump returns the document at url as it stands once its scripts are done.
func dump(t *testing.T, url string, flags ...string) string {
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	flags = append(flags, "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(), "--window-size=1300,1300",
		"--virtual-time-budget=60000", "--dump-dom", url)
	cmd := exec.CommandContext(ctx, chromium(t), flags...)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	require.NoError(t, cmd.Run(), errs.String())
	return out.String()
}

func chromium(t *testing.T) string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	require.FailNow(t, "no chromium: run make tools first")
	return ""
}

func TestStillPageIsValidHTML(t *testing.T) {
	pages := build(t)
	file := filepath.Join(t.TempDir(), "index.html")
	require.NoError(t, os.WriteFile(file, pages["index.html"], 0o600))
	cmd := exec.Command("node", tools+"html-validate/bin/html-validate.mjs", "--config", "../testdata/npm/html-validate.json", file)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
}
