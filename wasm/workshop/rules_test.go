//go:build browser

package main

import (
	"net/http"
	"strings"
	"testing"
	"time"

	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/site"
	"ledgewright/testdata/visitor"
)

// Through all jobs, files and a reload: nothing that the policy refuses, nothing asked
// of anywhere else. Each visit looks for both at its end.
func TestPolicyIsKeptThroughout(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, copied).Go("")
	b.Tap("button", "Landing")
	for _, job := range []string{"Survey", "Make", "Hang", "Agree", "Arrange"} {
		b.Job(job)
		b.Calm()
	}
	b.Tap("button", "Evening")
	b.Job("Agree")
	for _, what := range []string{"plan", "build", "part list", "wall picture"} {
		require.NotEmpty(t, b.Saved(func() { b.Tap("button", "Save: "+what) }), what)
	}
	b.Reload()
	b.See("heading", "Agree")
	require.Equal(t, site.Policy, b.Text(`document.querySelector('meta[http-equiv="Content-Security-Policy"]').content`))

	// The policy works: no text becomes a page, a program or a style.
	require.Contains(t, b.Text(`(() => { try { document.body.innerHTML = '<p>'; return 'taken' } catch (e) { return e.message } })()`), "TrustedHTML")
	require.Contains(t, b.Text(`(() => { try { document.createElement('script').text = '1'; return 'taken' } catch (e) { return e.message } })()`), "TrustedScript")
	b.Until(`window.refused.length > 0`, "true")
	b.Forgive()
}

// The site works from any path of a host that only hands out files.
func TestAnyPathOfAStaticHost(t *testing.T) {
	t.Parallel()
	const under = "/shop/tools/ledgewright/"
	plain := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, ok := house.Pages(strings.TrimPrefix(r.URL.Path, under))
		if r.URL.Path == under {
			body, ok = house.Pages("index.html")
		}
		if !ok || !strings.HasPrefix(r.URL.Path, under) {
			http.NotFound(w, r)
			return
		}
		// The type by the name as such hosts have it; a program only as bytes.
		switch {
		case strings.HasSuffix(r.URL.Path, ".js"):
			w.Header().Set("Content-Type", "text/javascript")
		case strings.HasSuffix(r.URL.Path, ".css"):
			w.Header().Set("Content-Type", "text/css")
		case strings.HasSuffix(r.URL.Path, ".svg"):
			w.Header().Set("Content-Type", "image/svg+xml")
		case strings.HasSuffix(r.URL.Path, ".wasm"):
			w.Header().Set("Content-Type", "application/octet-stream")
		}
		_, _ = w.Write(body)
	})
	at := house.Serve(plain) + under
	b := house.Visit(t, visitor.Tablet, "")
	b.Allow(at)
	b.Do(Navigate(at))
	b.Until(`performance.getEntriesByName('usable').length`, "1")
	b.Tap("button", "Porch")
	b.See("heading", "Arrange")
}

// With the program blocked, or programs turned off, the page still says what it is.
func TestWithoutTheProgram(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ name, before, says string }{
		{"no WebAssembly", "delete window.WebAssembly", "This browser is too old for it"},
		{"the program does not arrive", "window.fetch = () => Promise.reject(new TypeError('Failed to fetch'))", "The program did not arrive"},
		{"no memory", "WebAssembly.instantiateStreaming = () => Promise.reject(new RangeError('could not allocate memory'))", "Not enough memory"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := house.Visit(t, visitor.Phone, c.before)
			b.Do(Navigate(house.URL))
			b.Says(c.says)
			b.See("heading", "Ledgewright")
			b.Says("Solid-wood shelves, from the wall to the last hole")
			b.Forgive() // the console is told why
		})
	}
}

// While nothing happens, nothing is drawn.
func TestIdlePageAsksForNoFrames(t *testing.T) {
	t.Parallel()
	b := house.Visit(t, visitor.Tablet, "").Go("")
	b.Tap("button", "Study")
	b.See("heading", "Arrange")
	for _, job := range []string{"Survey", "Arrange", "Make", "Hang", "Agree"} {
		b.Job(job)
		b.Calm()
		// What was begun may still end, such as the grain that is drawn when the page
		// rests: the second two seconds are still if the first are not. Time is what is
		// measured here, and not waited for.
		asked := []string{}
		for range 3 {
			asked = append(asked, b.Text("framesAsked"))
			if n := len(asked); n > 1 && asked[n-1] == asked[n-2] {
				break
			}
			b.Do(Sleep(2 * time.Second))
		}
		require.Equal(t, asked[len(asked)-2], asked[len(asked)-1], job)
	}
}
