package site

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/require"
)

var few = Pages{
	"index.html": []byte("plain"), "index.html.gz": []byte("small"), "index.html.br": []byte("smaller"),
	"app-0123abcd.wasm": []byte("\x00asm"), "deep/er.json": []byte("{}"), "strange.xyz": []byte("?"),
}

func TestHandler(t *testing.T) {
	for _, c := range []struct {
		method, path, accept string
		code                 int
		body, coding, is     string
	}{
		{"GET", "/", "", 200, "plain", "", "text/html; charset=utf-8"},
		{"GET", "/index.html", "gzip, deflate", 200, "small", "gzip", "text/html; charset=utf-8"},
		{"GET", "/", "gzip;q=0.5, br;q=1.0", 200, "smaller", "br", "text/html; charset=utf-8"},
		{"GET", "/", "br;q=0, gzip;q=0.000", 200, "plain", "", "text/html; charset=utf-8"},
		{"GET", "/", "identity", 200, "plain", "", "text/html; charset=utf-8"},
		{"HEAD", "/", "", 200, "", "", "text/html; charset=utf-8"},
		{"GET", "/app-0123abcd.wasm", "br", 200, "\x00asm", "", "application/wasm"},
		{"GET", "/deep/../deep/er.json", "", 200, "{}", "", "application/json"},
		{"GET", "/strange.xyz", "", 200, "?", "", "application/octet-stream"},
		{"GET", "/../../etc/passwd", "", 404, "there is no such page here\n", "", "text/plain; charset=utf-8"},
		{"GET", "/deep/", "", 404, "there is no such page here\n", "", "text/plain; charset=utf-8"},
		{"POST", "/", "", 405, "only GET and HEAD are answered here\n", "", "text/plain; charset=utf-8"},
	} {
		w := answer(c.method, c.path, http.Header{"Accept-Encoding": {c.accept}})
		require.Equal(t, c.code, w.Code, c.path)
		require.Equal(t, c.body, w.Body.String(), c.path)
		require.Equal(t, c.coding, w.Header().Get("Content-Encoding"), c.path)
		require.Equal(t, c.is, w.Header().Get("Content-Type"), c.path)
	}
}

func answer(method, path string, h http.Header) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	r := httptest.NewRequest(method, "http://localhost"+path, nil)
	r.Header = h
	Handler(few.Open).ServeHTTP(w, r)
	return w
}

func TestHandlerKeepsWhatCarriesItsDigest(t *testing.T) {
	require.Equal(t, "no-cache", answer("GET", "/", nil).Header().Get("Cache-Control"))
	require.Equal(t, "public, max-age=31536000, immutable", answer("GET", "/app-0123abcd.wasm", nil).Header().Get("Cache-Control"))
	first := answer("GET", "/", nil)
	require.Equal(t, "Accept-Encoding", first.Header().Get("Vary"))
	again := answer("GET", "/", http.Header{"If-None-Match": {first.Header().Get("ETag")}})
	require.Equal(t, http.StatusNotModified, again.Code)
	small := answer("GET", "/", http.Header{"If-None-Match": {first.Header().Get("ETag")}, "Accept-Encoding": {"gzip"}})
	require.Equal(t, http.StatusOK, small.Code, "another encoding is another answer")
}
