//go:build !js

package engine_test

import (
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// rooms is the house plan: a package may import only packages that stand before it.
var rooms = []string{
	"unit", "rank", "document", "words", "beam", "strength", "drawing",
	"wood", "hardware",
	"shop", "finding", "plan",
	"board", "joint", "mount", "light", "module",
	"movement", // of a module's wood between shop and house: reads what is worked out, so it stands after
	"wall", "edit", "hold",
	"part", "solid", "view", "link",
	"", // engine itself
}

// forbidden packages and why.
var forbidden = map[string]string{
	"os":                               "values in, values out: no files",
	"net":                              "no network",
	"time":                             "the same plan gives the same answer at any hour",
	"math/rand":                        "randomness is an argument",
	"math/rand/v2":                     "randomness is an argument",
	"log":                              "findings and errors are values",
	"syscall/js":                       "the browser is another house",
	"text/template":                    "switches off the removal of unused methods: 0.5 MB of wasm",
	"html/template":                    "likewise",
	"fmt":                              "brings os, poll and time: 0.1 MB of wasm",
	"compress/flate":                   "brings fmt",
	"embed":                            "brings time",
	"regexp":                           "0.13 MB of wasm",
	"net/url":                          "0.05 MB of wasm",
	"github.com/hajimehoshi/ebiten/v2": "the stage is another program",
}

// planless rooms take a board, a corner and a size, never the whole document.
var planless = []string{"joint", "mount", "light"}

func TestImportsPointUpTheHouse(t *testing.T) {
	found := map[string]bool{}
	for _, file := range sources(t, ".") {
		room := filepath.ToSlash(filepath.Dir(file))
		if room == "." {
			room = ""
		}
		found[room] = true
		at := slices.Index(rooms, room)
		require.GreaterOrEqual(t, at, 0, "%s: the room %q is not in the house plan", file, room)
		for _, path := range imports(t, file) {
			why, bad := forbidden[path]
			require.False(t, bad, "%s imports %s: %s", file, path, why)
			other, ours := strings.CutPrefix(path, "ledgewright/engine/")
			if !ours {
				require.False(t, strings.HasPrefix(path, "ledgewright/"), "%s imports %s from outside the engine", file, path)
				require.False(t, strings.Contains(path, "."), "%s imports %s: the engine needs the standard library only", file, path)
				continue
			}
			require.Less(t, slices.Index(rooms, other), at, "%s imports %s, which stands below it", file, path)
			if slices.Contains(planless, room) {
				require.NotEqual(t, "plan", other, "%s must not know the plan", file)
			}
		}
	}
	for _, room := range rooms {
		require.True(t, found[room], "the room %q is empty", room)
	}
}

// sources lists the Go files below dir that are not tests.
func sources(t *testing.T, dir string) (files []string) {
	require.NoError(t, filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err == nil && d.IsDir() && d.Name() == "testdata" {
			return filepath.SkipDir
		}
		if strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") {
			files = append(files, path)
		}
		return err
	}))
	return files
}

func imports(t *testing.T, file string) (paths []string) {
	f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	require.NoError(t, err)
	for _, s := range f.Imports {
		p, err := strconv.Unquote(s.Path.Value)
		require.NoError(t, err)
		paths = append(paths, p)
	}
	return paths
}
