package slim

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// known is the version of Go whose tables are known: runtime/symtab.go (pcHeader,
// moduledata, findfunc), runtime/runtime2.go (_func), runtime/symtabinl.go (inlinedCall)
// and internal/abi/symtab.go of go1.26.
const known = "go1.26"

// magic opens pcHeader: abi.Go120PCLnTabMagic, two zeros, the least size of an
// instruction and the size of a pointer.
var magic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// The words of moduledata, of 8 bytes; a slice has three of them.
const (
	modHeader      = 0
	modNames       = 1
	modUnits       = 4
	modFiles       = 7
	modSteps       = 10
	modFuncs       = 13
	modIndex       = 16
	modBuckets     = 19
	modText        = 22
	modGoFunc      = 40
	modEnd         = 41
	moduledataSize = 8 * 42
)

// The fields of _func, in bytes.
const (
	funcEntry     = 0
	funcName      = 4
	funcSP        = 16
	funcFile      = 20
	funcLine      = 24
	funcSteps     = 28 // how many tables of steps (PCDATA)
	funcUnit      = 32
	funcStartLine = 36
	funcID        = 40
	funcData      = 43 // how many tables of data (FUNCDATA)
	funcSize      = 44
)

// idWrapper is abi.FuncIDWrapper: recover asks what was inlined in a wrapper.
const idWrapper = 23

// Tables that only debuggers, traces and asynchronous preemption read, of which js/wasm
// has none: by their numbers in internal/abi.
var (
	looseSteps = []int{0, 2, 3} // unsafe points, inlined calls, living arguments
	looseData  = []int{3, 5, 6} // inlined calls, arguments, living arguments
)

const (
	inlined = 3 // the number of inlined calls among data
	none    = 0xffffffff
)

// tables is where the parts of the function tables are.
type tables struct {
	memory
	names, units, files, steps, funcs span
	index                             int // of functions: their offsets in funcs
	count                             int // of functions
	gofunc, buckets, end              int
}

type span struct{ at, size int }

func (s span) to() int { return s.at + s.size }

// thin empties what no page reads. It changes nothing before it has read everything.
func (m memory) thin(version string) error {
	if !strings.HasPrefix(version, known+".") && version != known {
		return fmt.Errorf("%s: %w", version, ErrUnknown)
	}
	t, ok := m.tables()
	if !ok {
		return fmt.Errorf("no function tables: %w", ErrUnknown)
	}
	funcs, ok := t.functions()
	if !ok {
		return fmt.Errorf("function tables that do not agree: %w", ErrUnknown)
	}
	kept, ok := t.kept(funcs)
	if !ok {
		return fmt.Errorf("function tables that lead outside: %w", ErrUnknown)
	}
	t.empty(funcs, kept)
	return nil
}

// tables finds the function tables by their head and by moduledata, which points to it.
func (m memory) tables() (t tables, ok bool) {
	at := bytes.Index(m, magic)
	for at >= 0 {
		for mod := 0; mod+moduledataSize <= len(m); mod += 8 {
			if m.word64(mod) == at && m.word64(mod+8) == at+m.word64(at+32) {
				return m.tablesOf(at, mod)
			}
		}
		next := bytes.Index(m[at+1:], magic)
		if next < 0 {
			break
		}
		at += 1 + next
	}
	return t, false
}

// tablesOf reads the tables of a head and a moduledata, and whether they agree.
func (m memory) tablesOf(at, mod int) (tables, bool) {
	slice := func(word, size int) span {
		return span{m.word64(mod + 8*word), m.word64(mod+8*word+8) * size}
	}
	t := tables{
		memory: m, names: slice(modNames, 1), units: slice(modUnits, 4), files: slice(modFiles, 1),
		steps: slice(modSteps, 1), funcs: slice(modFuncs, 1), index: m.word64(mod + 8*modIndex),
		count: m.word64(at + 8), gofunc: m.word64(mod + 8*modGoFunc), buckets: m.word64(mod + 8*modBuckets),
		end: m.word64(mod + 8*modEnd),
	}
	ok := true
	for i, s := range []span{t.names, t.units, t.files, t.steps, t.funcs} {
		ok = ok && s.at == at+m.word64(at+32+8*i) && s.size > 0
	}
	// The parts stand one after another; a function has a bucket for every 4096 of its
	// 65536 places, of 20 bytes each; the last has one only, cut off.
	order := []int{t.names.at, t.names.to(), t.units.at, t.units.to(), t.files.at, t.files.to(), t.steps.at, t.steps.to(), t.funcs.at, t.funcs.to(), t.gofunc, t.buckets, t.end, len(m)}
	ok = ok && slices.IsSorted(order) && t.index == t.funcs.at && m.word64(mod+8*modText) == 0 &&
		m.word64(mod+8*(modIndex+1)) == t.count+1 && t.index+8*t.count+4 <= t.funcs.to() &&
		t.end-t.buckets > bucketsEach*bucketSize*(t.count-1)+4
	return t, ok
}

// functions returns where the functions are described, if each is what it says.
func (t tables) functions() (out []int, ok bool) {
	for i := range t.count {
		at := t.funcs.at + t.word(t.index+8*i+4)
		if at < t.index+8*t.count || at+funcSize > t.funcs.to() || at+t.size(at) > t.funcs.to() {
			return nil, false
		}
		if t.word(at+funcEntry) != t.word(t.index+8*i) || t.word(at+funcName) >= t.names.size {
			return nil, false
		}
		out = append(out, at)
	}
	return out, true
}

// size is how long the description of a function is.
func (t tables) size(at int) int {
	return funcSize + 4*t.word(at+funcSteps) + 4*int(t.memory[at+funcData])
}

// stepsAt and dataAt return where a function tells the place of a table; 0 if it has none
// of that number.
func (t tables) stepsAt(at, n int) int {
	if n >= t.word(at+funcSteps) {
		return 0
	}
	return at + funcSize + 4*n
}

func (t tables) dataAt(at, n int) int {
	if n >= int(t.memory[at+funcData]) {
		return 0
	}
	return at + funcSize + 4*t.word(at+funcSteps) + 4*n
}
