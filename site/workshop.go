package site

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"path"
	"strings"

	"ledgewright/assets/fonts"
)

//go:embed workshop
var workshop embed.FS

// A Program is the maker's page as a program: its js/wasm, that of its stage, and the Go
// distribution's own wasm_exec.js of the same version.
type Program struct{ Wasm, Stage, Exec []byte }

// shell is what app.html and stage.html are filled with.
type shell struct {
	CSP, Icon, Manifest        string
	Style, Shell, Exec, Loader string
	Program                    string
	Size                       int
	Stage, StageLoader         string
}

// BuildWorkshop makes all files of the site with the maker's page at its front; the
// still page of the examples, which needs no program, stands beside it.
func BuildWorkshop(program Program) (Pages, error) {
	p, err := Build()
	if err != nil {
		return nil, err
	}
	for _, end := range []string{"", ".gz", ".br"} {
		p["examples.html"+end] = p["index.html"+end]
	}
	own := Pages{}
	s := shell{
		CSP: Policy, Icon: own.add("icon.svg", source("icon.svg")),
		Style: own.add("page.css", []byte(withFonts(tokens()+string(part("page.css")), own))), Shell: own.add("shell.css", part("shell.css")),
		Exec: own.add("wasm_exec.js", program.Exec), Loader: own.add("loader.js", part("loader.js")),
		Program: own.add("workshop.wasm", program.Wasm), Size: len(program.Wasm),
		Stage: own.add("stage.wasm", program.Stage), StageLoader: own.add("stage.js", part("stage.js")),
	}
	s.Manifest = own.add("ledgewright.webmanifest", manifest(s.Icon))
	for name, from := range map[string]string{"index.html": "app.html", "stage.html": "stage.html"} {
		if own[name], err = s.fill(from); err != nil {
			return nil, fmt.Errorf("%s: %w", from, err)
		}
	}
	own.compress()
	for name, body := range own {
		p[name] = body
	}
	return p, nil
}

// fill makes a page of its template.
func (s *shell) fill(name string) ([]byte, error) {
	t, err := template.ParseFS(workshop, "workshop/"+name)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Execute(&b, s)
	return b.Bytes(), err
}

// part returns a file of the maker's page.
func part(name string) []byte {
	body, err := workshop.ReadFile("workshop/" + name)
	if err != nil {
		panic(err) // the file is part of the program
	}
	return body
}

// withFonts puts the fonts beside a style sheet and names them in it.
func withFonts(css string, p Pages) string {
	for _, f := range fonts.All() {
		if path.Ext(f.Name) == ".woff2" {
			css = strings.ReplaceAll(css, "fonts/"+f.Name, p.add("fonts/"+f.Name, f.Body))
		}
	}
	return css
}

// manifest lets the page be put on a home screen.
func manifest(icon string) []byte {
	return fmt.Appendf(nil, `{
  "name": "Ledgewright",
  "short_name": "Ledgewright",
  "description": "Plans solid-wood wall shelves for one wall: what fits, what holds, what it takes.",
  "start_url": ".",
  "display": "standalone",
  "background_color": "#f6f2e9",
  "theme_color": "#f6f2e9",
  "icons": [{"src": %q, "sizes": "any", "type": "image/svg+xml", "purpose": "any"}]
}
`, icon)
}
