// Pictures draws every example: its walls by day, the first wall in the evening, and
// of each kind of cut the first board that has it. It makes PNG files of them with
// rsvg-convert and one contact sheet, to be looked at.
//
// Usage, from the top of the repository:
//
//	go run ./testdata/pictures build/pictures
package main

import (
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"ledgewright/assets"
	"ledgewright/engine"
	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/view"
	"ledgewright/site"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: pictures DIRECTORY")
		os.Exit(2)
	}
	s := sheet{dir: os.Args[1]}
	if err := s.run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// A sheet is a contact sheet in the making.
type sheet struct {
	dir  string
	html strings.Builder
	n    int
}

func (s *sheet) run() error {
	if err := os.MkdirAll(s.dir, 0o755); err != nil {
		return err
	}
	s.html.WriteString("<!doctype html><meta charset=utf-8><title>Contact sheet</title><style>body{font:14px sans-serif;background:#8a8a85;margin:12px}" +
		"h2{margin:16px 0 4px}figure{display:inline-block;margin:4px;background:#fff;padding:4px}img{height:210px;max-width:100%}</style>\n")
	for _, name := range assets.Names() {
		if err := s.example(name); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	at := filepath.Join(s.dir, "contact.html")
	if err := os.WriteFile(at, []byte(s.html.String()), 0o644); err != nil {
		return err
	}
	fmt.Printf("%d pictures, %s\n", s.n, at)
	return s.photograph(at)
}

// photograph makes one PNG of the contact sheet, with Chromium.
func (s *sheet) photograph(at string) error {
	whole, err := filepath.Abs(at)
	if err != nil {
		return err
	}
	profile, err := os.MkdirTemp("", "pictures")
	if err != nil {
		return err
	}
	defer os.RemoveAll(profile)
	png := strings.TrimSuffix(whole, "html") + "png"
	out, err := exec.Command("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--hide-scrollbars", "--user-data-dir="+profile,
		"--window-size=1800,"+fmt.Sprint(250*s.n/3), "--screenshot="+png, "file://"+whole).CombinedOutput()
	if err != nil {
		return fmt.Errorf("the sheet is there as HTML; no PNG of it without chromium: %w %s", err, out)
	}
	return nil
}

func (s *sheet) example(name string) error {
	p, err := assets.Plan(name)
	if err != nil {
		return err
	}
	b := engine.Derive(p, nil)
	fmt.Fprintf(&s.html, "<h2>%s</h2>\n", html.EscapeString(name+": "+p.Job.Title))
	for i, r := range b.Arrangements {
		if err := s.picture(name+"-"+r.Arrangement, site.Wall(p, b, r, false), drawing.Day); err != nil {
			return err
		}
		if i == 0 {
			if err := s.picture(name+"-evening", site.Wall(p, b, r, true), drawing.Evening); err != nil {
				return err
			}
		}
	}
	seen := map[board.Kind]bool{}
	for _, m := range b.Modules {
		for _, x := range m.Boards {
			if !showsNew(x, seen) {
				continue
			}
			if err := s.picture(name+"-"+x.ID, view.Board(x, view.Options{Style: b.Style()}), drawing.Paper); err != nil {
				return err
			}
		}
	}
	return s.corners(name, b)
}

// corners draws a corner of every pair of joint and angle that an example has.
func (s *sheet) corners(name string, b engine.Build) error {
	seen := map[string]bool{}
	for _, m := range b.Modules {
		for _, c := range m.Corners {
			kind := fmt.Sprint(c.Interior, c.ClaimBasis, c.SlotArea > 0, c.Lead)
			if c.Number == 0 || seen[kind] {
				continue
			}
			seen[kind] = true
			at := fmt.Sprintf("%s-corner-%s-%d", name, m.ID, c.Number)
			if err := s.picture(at, view.Corner(m, c.Number, view.Options{Style: b.Style()}), drawing.Paper); err != nil {
				return err
			}
		}
	}
	return nil
}

// showsNew reports whether a board has a kind of cut that was not seen before, and
// notes its kinds.
func showsNew(b board.Board, seen map[board.Kind]bool) (fresh bool) {
	for _, f := range b.Features {
		fresh = fresh || !seen[f.Kind]
		seen[f.Kind] = true
	}
	return fresh
}

func (s *sheet) picture(name string, d drawing.Drawing, theme drawing.Theme) error {
	at := filepath.Join(s.dir, name)
	if err := os.WriteFile(at+".svg", site.SVG(d, theme, -1), 0o644); err != nil {
		return err
	}
	if out, err := exec.Command("rsvg-convert", "-w", "1400", at+".svg", "-o", at+".png").CombinedOutput(); err != nil {
		return fmt.Errorf("rsvg-convert (Debian: librsvg2-bin): %w %s", err, out)
	}
	fmt.Fprintf(&s.html, "<figure><img src=\"%s.png\" alt=\"\"><figcaption>%s</figcaption></figure>\n", name, name)
	s.n++
	return nil
}
