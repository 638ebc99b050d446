// Build writes the site as files, to be put on any static host: the maker's page with
// its programs, and the still page of the examples.
//
// Usage, from the top of the repository; the second writes one program alone:
//
//	go run ./site/build site/dist
//	go run ./site/build ./wasm/workshop build/workshop.wasm
package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"ledgewright/site"
	"ledgewright/site/program"
)

func main() {
	var err error
	switch len(os.Args) {
	case 2:
		err = build(os.Args[1])
	case 3:
		err = program.Compile(os.Args[1], os.Args[2])
	default:
		fmt.Fprintln(os.Stderr, "usage: build DIRECTORY, or build PACKAGE FILE")
		os.Exit(2)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func build(dir string) error {
	p, err := workshop()
	if err != nil {
		return err
	}
	pages, err := site.BuildWorkshop(p)
	if err != nil {
		return err
	}
	return write(dir, pages)
}

// workshop compiles the programs of the maker's page and finds their glue.
func workshop() (p site.Program, err error) {
	if p.Wasm, err = compiled("workshop"); err != nil {
		return p, err
	}
	if p.Stage, err = compiled("stage"); err != nil {
		return p, err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return p, err
	}
	p.Exec, err = os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib/wasm/wasm_exec.js"))
	return p, err
}

// compiled compiles one of the programs in wasm.
func compiled(name string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "ledgewright")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, name+".wasm")
	if err := program.Compile("./wasm/"+name, file); err != nil {
		return nil, err
	}
	return os.ReadFile(file)
}

// write fills a directory, which it empties first: a release is whole or not there.
func write(dir string, pages site.Pages) error {
	if err := os.RemoveAll(dir); err != nil {
		return err
	}
	for name, body := range pages {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, body, 0o644); err != nil {
			return err
		}
	}
	fmt.Printf("%d files in %s\n", len(pages), dir)
	return nil
}
