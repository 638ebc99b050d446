// Build writes the pages as files, to be put on any static host.
//
// Usage, from the top of the repository:
//
//	go run ./site/build site/dist
package main

import (
	"fmt"
	"os"
	"path/filepath"

	"ledgewright/site"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: build DIRECTORY")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// write fills a directory, which it empties first: a release is whole or not there.
func write(dir string) error {
	pages, err := site.Build()
	if err != nil {
		return err
	}
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
