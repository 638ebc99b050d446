package site

import (
	"bytes"
	"compress/gzip"
	"io"
	"path"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/require"

	"ledgewright/assets"
	"ledgewright/engine"
)

var once = sync.OnceValues(Build)

// build returns the pages, made once for all tests.
func build(t *testing.T) Pages {
	t.Helper()
	pages, err := once()
	require.NoError(t, err)
	return pages
}

func TestBuildTwiceIsTheSame(t *testing.T) {
	again, err := Build()
	require.NoError(t, err)
	require.Equal(t, build(t), again)
}

var links = regexp.MustCompile(`(?:href|src|srcset)="([^"]*)"`)

// Everything that a page asks for is there, and nothing comes from elsewhere.
func TestLinksOfThePageResolve(t *testing.T) {
	pages := build(t)
	html := string(pages["index.html"])
	all := links.FindAllStringSubmatch(html, -1)
	require.Greater(t, len(all), 3*len(assets.Names()))
	for _, l := range all {
		if at, ok := strings.CutPrefix(l[1], "#"); ok {
			require.Contains(t, html, `id="`+at+`"`)
			continue
		}
		require.Contains(t, pages, l[1])
	}
}

var urls = regexp.MustCompile(`url\(([^")]*)\)`)

func TestLinksOfTheStyleSheetResolve(t *testing.T) {
	pages := build(t)
	for name, body := range pages {
		if path.Ext(name) != ".css" {
			continue
		}
		all := urls.FindAllStringSubmatch(string(body), -1)
		require.Len(t, all, 3)
		for _, u := range all {
			require.Contains(t, pages, u[1])
			require.Regexp(t, hashed, u[1])
		}
	}
}

// The page says of every example what the engine says.
func TestPageShowsTheFiguresOfTheEngine(t *testing.T) {
	html := string(build(t)["index.html"])
	for _, e := range assets.Examples() {
		_, after, found := strings.Cut(html, `<h3 id="`+e.Name+`">`)
		require.True(t, found, e.Name)
		card, _, _ := strings.Cut(after, "</article>")
		p, err := assets.Plan(e.Name)
		require.NoError(t, err)
		b := engine.Derive(p, nil)
		require.Contains(t, card, "<dt>wood</dt><dd>"+b.Style().Mass(b.Parts.Mass)+"</dd>")
		require.Contains(t, card, e.Says)
	}
}

// The policy forbids scripts and styles in the page; a browser would drop them without
// a word.
func TestPageKeepsToItsPolicy(t *testing.T) {
	html := string(build(t)["index.html"])
	require.Contains(t, html, `http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;; script-src &#39;self&#39; &#39;wasm-unsafe-eval&#39;;`)
	for _, word := range []string{"<script", "<style", "style=\"", "javascript:", " onclick", "http://", "https://"} {
		require.NotContains(t, html, word)
	}
}

// Words that promise what nobody can promise, and words for what is not checked.
func TestPagePromisesNothing(t *testing.T) {
	html := strings.ToLower(string(build(t)["index.html"]))
	for _, word := range []string{"safe", "guarantee", "certified"} {
		require.NotRegexp(t, `\b`+word, html)
	}
	require.Contains(t, html, "not checked")
	for _, c := range cautions() {
		require.LessOrEqual(t, len(strings.Fields(c)), 25, c)
	}
}

func TestCompressedTwinsAreTheSameAndSmaller(t *testing.T) {
	pages := build(t)
	for end, unpack := range map[string]func(io.Reader) (io.Reader, error){
		".gz": func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) },
		".br": func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil },
	} {
		twins := 0
		for name, body := range pages {
			plain, ok := strings.CutSuffix(name, end)
			if !ok {
				continue
			}
			twins++
			r, err := unpack(bytes.NewReader(body))
			require.NoError(t, err)
			back, err := io.ReadAll(r)
			require.NoError(t, err)
			require.Equal(t, pages[plain], back)
			require.Less(t, len(body), len(back))
		}
		require.Greater(t, twins, 10, end)
	}
	require.NotContains(t, pages, "index.html.gz.gz")
}
