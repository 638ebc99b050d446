// Package site is the pages as files: the still page with the example jobs, its
// pictures and documents, the style sheet, the fonts and the schemas.
//
// Everything is made from the embedded examples by the engine, so a page never shows
// a figure that the engine does not give. Names of files that can change with a
// release carry a digest of their content; pages and schemas keep their names.
package site

import (
	"bytes"
	"compress/gzip"
	"embed"
	"fmt"
	"hash/crc32"
	"maps"
	"path"
	"strings"

	"github.com/andybalholm/brotli"

	"ledgewright/assets"
	"ledgewright/assets/fonts"
)

//go:embed still.html tokens.css ledgewright.css icon.svg
var sources embed.FS

//go:embed schema/*.json
var schemas embed.FS

// Policy is the content security policy of every page.
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; frame-src 'self'; worker-src 'self'; " +
	"manifest-src 'self'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'"

// Pages are the files of the site by their path.
type Pages map[string][]byte

// Open is the pages as a [Source].
func (p Pages) Open(path string) ([]byte, bool) {
	body, ok := p[path]
	return body, ok
}

// Build makes all files of the site, with compressed twins (name.gz, name.br) beside
// each that is smaller for it.
func Build() (Pages, error) {
	p := Pages{}
	if err := p.addSchemas(); err != nil {
		return nil, err
	}
	page := still{CSP: Policy, Icon: p.add("icon.svg", source("icon.svg")), Style: p.addStyle()}
	for _, e := range assets.Examples() {
		j, err := p.addJob(e)
		if err != nil {
			return nil, fmt.Errorf("example %s: %w", e.Name, err)
		}
		page.Jobs = append(page.Jobs, j)
	}
	page.Schemas, page.Cautions = p.schemaLinks(), cautions()
	var err error
	if p["index.html"], err = page.html(); err != nil {
		return nil, err
	}
	p.compress()
	return p, nil
}

// source returns a file of the program.
func source(name string) []byte {
	body, err := sources.ReadFile(name)
	if err != nil {
		panic(err) // the file is part of the program
	}
	return body
}

// add puts a file under its name with a digest of its content, and returns its path.
func (p Pages) add(name string, body []byte) string {
	end := path.Ext(name)
	at := fmt.Sprintf("%s-%08x%s", strings.TrimSuffix(name, end), crc32.ChecksumIEEE(body), end)
	p[at] = body
	return at
}

// addStyle puts the fonts and the style sheet that names them.
func (p Pages) addStyle() string {
	for _, f := range fonts.All() {
		if path.Ext(f.Name) != ".woff2" {
			p["fonts/"+f.Name] = f.Body
		}
	}
	return p.add("ledgewright.css", []byte(withFonts(tokens()+dark()+string(source("ledgewright.css")), p)))
}

// tokens is the sheet that both pages begin with.
func tokens() string { return string(source("tokens.css")) }

// dark gives the evening's tokens to a reader whose system is dark.
func dark() string {
	const evening = "[data-view=evening]{"
	_, rest, _ := strings.Cut(tokens(), evening)
	values, _, _ := strings.Cut(rest, "}")
	return "@media (prefers-color-scheme:dark){:root:not([data-view]){" + values + "}}\n"
}

func (p Pages) addSchemas() error {
	entries, err := schemas.ReadDir("schema")
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := "schema/" + e.Name()
		if p[name], err = schemas.ReadFile(name); err != nil {
			return err
		}
	}
	return nil
}

// compress puts compressed twins (name.gz, name.br) beside every file that is at least
// a tenth smaller for it; fonts are not, they are compressed already.
func (p Pages) compress() {
	small := Pages{}
	for name, body := range p {
		for end, packed := range map[string][]byte{".gz": gzipped(body), ".br": brotlied(body)} {
			if len(packed) < len(body)*9/10 {
				small[name+end] = packed
			}
		}
	}
	maps.Copy(p, small)
}

func gzipped(body []byte) []byte {
	var b bytes.Buffer
	w, _ := gzip.NewWriterLevel(&b, gzip.BestCompression) // fails only for levels that do not exist
	_, _ = w.Write(body)                                  // into memory: cannot fail
	_ = w.Close()
	return b.Bytes()
}

// brotliQuality packs the program in a second, to 2.23 MB; the best, 11, would make it
// 1.96 MB and take 18 s at every start.
const brotliQuality = 9

func brotlied(body []byte) []byte {
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, brotliQuality)
	_, _ = w.Write(body) // into memory: cannot fail
	_ = w.Close()
	return b.Bytes()
}
