// Package slim makes a js/wasm program of Go smaller: it takes out what the program
// carries for debuggers and for traces with line numbers, and writes its memory in fewer
// pieces. What the program computes stays the same; a trace still names its functions.
//
// Two things are done.
//
//   - The linker leaves out every run of eight zero bytes, so the memory of a page's
//     program comes in nearly a hundred thousand segments, each with a head of its own.
//     Compressed, the heads weigh far more than the zeros: [Program] joins segments.
//   - The function tables (pclntab) tell the file and the line of every instruction, what
//     was inlined there and how to print arguments. No page shows them. What the garbage
//     collector, stack growth, defer and recover read stays: frame sizes, pointer maps,
//     stack objects, function names and the inlined calls of wrappers.
//
// The layout of the tables is no promise of Go's: runtime/symtab.go and
// runtime/runtime2.go of the version that is used are its only source. So it is read with
// distrust. A table that does not agree with itself everywhere is left as it is.
package slim

import (
	"errors"
	"fmt"
)

// ErrUnknown is wrapped by the error of a program whose tables are not as they are known
// here; the program that comes with it is whole, and works.
var ErrUnknown = errors.New("function tables of an unknown form, left as they are")

// Program returns a smaller program that does the same; version is that of Go that built it,
// as go env GOVERSION says. An error that wraps [ErrUnknown]
// comes with a program nevertheless.
func Program(wasm []byte, version string) ([]byte, error) {
	sections, err := split(wasm)
	if err != nil {
		return nil, err
	}
	for i, s := range sections {
		if s.id != dataSection {
			continue
		}
		m, err := readMemory(s.body)
		if err != nil {
			return nil, err
		}
		unknown := m.thin(version)
		sections[i].body = m.segments()
		return join(sections), unknown
	}
	return nil, fmt.Errorf("a program without data: %w", errForm)
}
