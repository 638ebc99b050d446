// Package fonts holds the fonts of the pages, and their licence.
package fonts

import "embed"

//go:embed *.woff2 OFL.txt
var files embed.FS

// A Font is a font file: a subset in WOFF 2, or the licence of them all.
type Font struct {
	Name string // of the file
	Body []byte
}

// All returns the font files and their licence.
func All() []Font {
	entries, err := files.ReadDir(".")
	if err != nil {
		panic(err) // the directory is part of the program
	}
	out := make([]Font, len(entries))
	for i, e := range entries {
		body, err := files.ReadFile(e.Name())
		if err != nil {
			panic(err)
		}
		out[i] = Font{e.Name(), body}
	}
	return out
}
