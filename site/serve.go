package site

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"net/http"
	"path"
	"regexp"
	"strings"
	"time"
)

// A Source gives the files that are served by their path, without a leading slash.
type Source func(path string) (body []byte, ok bool)

// hashed matches a name that carries a digest of its content.
var hashed = regexp.MustCompile(`-[0-9a-f]{8}\.[a-z0-9]+$`)

// Handler serves the files of a source: typed by their names, in the smallest
// encoding that lies beside them (name.br, name.gz) and the browser takes, kept for
// ever where the name carries a digest and asked for again where it does not.
func Handler(files Source) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
			return
		}
		name := fileName(r.URL.Path)
		body, ok := files(name)
		if !ok {
			http.Error(w, "there is no such page here", http.StatusNotFound)
			return
		}
		h := w.Header()
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Content-Type", typeOf(name))
		h.Set("Cache-Control", "no-cache")
		if hashed.MatchString(name) {
			h.Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		h.Add("Vary", "Accept-Encoding")
		if coding, small, ok := encoded(files, name, r.Header.Get("Accept-Encoding")); ok {
			h.Set("Content-Encoding", coding)
			body = small
		}
		h.Set("ETag", tag(body))
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(body))
	})
}

// fileName turns the path of a request into that of a file: "/" into "index.html".
func fileName(p string) string {
	name := strings.TrimPrefix(path.Clean("/"+p), "/")
	if name == "" {
		return "index.html"
	}
	return name
}

// typeOf returns the content type of a file by the end of its name. A browser compiles
// a program while it arrives only if it comes as application/wasm.
func typeOf(name string) string {
	switch path.Ext(name) {
	case ".html":
		return "text/html; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".json":
		return "application/json"
	case ".svg":
		return "image/svg+xml"
	case ".png":
		return "image/png"
	case ".csv":
		return "text/csv; charset=utf-8"
	case ".txt":
		return "text/plain; charset=utf-8"
	case ".wasm":
		return "application/wasm"
	case ".woff2":
		return "font/woff2"
	case ".glb":
		return "model/gltf-binary"
	case ".pdf":
		return "application/pdf"
	case ".webmanifest":
		return "application/manifest+json"
	}
	return "application/octet-stream"
}

// encoded returns the smallest encoding of a file that accept allows.
func encoded(files Source, name, accept string) (coding string, body []byte, ok bool) {
	for _, c := range []struct{ coding, end string }{{"br", ".br"}, {"gzip", ".gz"}} {
		if !accepts(accept, c.coding) {
			continue
		}
		if body, ok := files(name + c.end); ok {
			return c.coding, body, true
		}
	}
	return "", nil, false
}

// accepts reports whether an Accept-Encoding header names a coding and does not
// refuse it by a weight of nought.
func accepts(header, coding string) bool {
	for part := range strings.SplitSeq(header, ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		if strings.TrimSpace(name) == coding {
			q, _ := strings.CutPrefix(strings.TrimSpace(weight), "q=")
			return strings.Trim(q, "0.") != "" || q == ""
		}
	}
	return false
}

func tag(body []byte) string {
	h := fnv.New64a()
	h.Write(body)
	return fmt.Sprintf(`"%016x"`, h.Sum64())
}
