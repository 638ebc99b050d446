// Size is the smallest program that uses the whole engine: it reads a plan from
// standard input and writes its build and the pictures of its walls. What it weighs as
// js/wasm is what the engine adds to a page.
package main

import (
	"fmt"
	"io"
	"os"

	"ledgewright/engine"
	"ledgewright/engine/drawing"
	"ledgewright/engine/plan"
	"ledgewright/engine/view"
)

func main() {
	if err := run(os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(in io.Reader, out io.Writer) error {
	text, err := io.ReadAll(in)
	if err != nil {
		return err
	}
	p, err := plan.Decode(text)
	if err != nil {
		return err
	}
	b := engine.Derive(p, nil)
	build, err := engine.Encode(b)
	if err != nil {
		return err
	}
	if _, err := out.Write(build); err != nil {
		return err
	}
	for _, r := range b.Arrangements {
		w, _ := p.Wall(r.Wall)
		d := view.Wall(w, r, b.Modules, view.Options{Style: b.Style(), Shallow: true})
		if _, err := io.WriteString(out, drawing.SVG(d, drawing.SVGOptions{Grain: 12, Woods: view.Woods()})); err != nil {
			return err
		}
	}
	return nil
}
