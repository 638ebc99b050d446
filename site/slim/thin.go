package slim

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// The buckets of findfunc: 16 of them for a function on js/wasm, of which the first is
// read. Each begins with the number of the function to begin looking at.
const (
	bucketsEach = 16
	bucketSize  = 20
)

// stride is how many functions share the place where looking begins; findfunc walks on
// from there, three more steps at most.
const stride = 4

// kept marks the bytes of the names, steps and data that are still read.
type kept []bool

// keeps says whether a function's table is still read: all of a wrapper, and what is not
// loose of any other.
func (t tables) keeps(at, n int, loose []int) bool {
	return t.memory[at+funcID] == idWrapper || !slices.Contains(loose, n)
}

// kept goes through everything that is still read, if all of it is where it should be.
func (t tables) kept(funcs []int) (k kept, ok bool) {
	k = make(kept, t.buckets)
	ok = true
	for _, at := range funcs {
		ok = ok && k.name(t, t.word(at+funcName)) && k.walk(t, t.word(at+funcSP))
		for n := range t.word(at + funcSteps) {
			if t.keeps(at, n, looseSteps) {
				ok = ok && k.walk(t, t.word(t.stepsAt(at, n)))
			}
		}
		if p := t.dataAt(at, inlined); p > 0 && t.keeps(at, inlined, looseData) && t.word(p) != none {
			ok = ok && k.calls(t, at, t.gofunc+t.word(p))
		}
	}
	return k, ok && k.data(t, funcs)
}

func (k kept) mark(from, to int) {
	for i := from; i < to; i++ {
		k[i] = true
	}
}

// name keeps a name and the zero behind it.
func (k kept) name(t tables, off int) bool {
	if off < 0 || off >= t.names.size {
		return false
	}
	from := t.names.at + off
	n := bytes.IndexByte(t.memory[from:t.names.to()], 0)
	k.mark(from, from+n+1)
	return n >= 0
}

// walk keeps a table of steps: pairs of numbers, how much the value changes and for how
// far it holds, until a change of zero that is not the first (runtime.step).
func (k kept) walk(t tables, off int) bool {
	if off == 0 {
		return true
	}
	if off >= t.steps.size {
		return false
	}
	r := &reader{rest: t.memory[t.steps.at+off : t.steps.to()]}
	before := len(r.rest)
	for first := true; r.number() != 0 || first; first = false {
		if r.number(); r.err != nil {
			return false
		}
	}
	k.mark(t.steps.at+off, t.steps.at+off+before-len(r.rest))
	return r.err == nil
}

// calls keeps the names of the calls that were inlined in a function; its table of steps
// tells how many there are.
func (k kept) calls(t tables, at, from int) bool {
	p := t.stepsAt(at, 2)
	if p == 0 || t.word(p) == 0 || t.word(p) >= t.steps.size {
		return true
	}
	most, ok := t.most(t.word(p))
	for i := 0; i <= most && ok; i++ {
		if from+16*i+16 > t.buckets {
			return false
		}
		ok = k.name(t, t.word(from+16*i+4))
	}
	return ok
}

// most is the greatest value in a table of steps.
func (t tables) most(off int) (most int, ok bool) {
	r := &reader{rest: t.memory[t.steps.at+off : t.steps.to()]}
	most = -1
	value := int64(-1)
	for first := true; ; first = false {
		change := r.number()
		if change == 0 && !first || r.err != nil {
			return most, r.err == nil
		}
		value += int64(change>>1) ^ -int64(change&1)
		most = max(most, int(value))
		r.number()
	}
}

// data keeps the tables of data that are still read: each goes on until the next begins.
func (k kept) data(t tables, funcs []int) bool {
	var all []int
	still := map[int]bool{}
	for _, at := range funcs {
		for n := range int(t.memory[at+funcData]) {
			if off := t.word(t.dataAt(at, n)); off != none {
				all = append(all, off)
				still[off] = still[off] || t.keeps(at, n, looseData)
			}
		}
	}
	slices.Sort(all)
	all = append(slices.Compact(all), t.buckets-t.gofunc)
	if !slices.IsSorted(all) {
		return false
	}
	for i, off := range all[:len(all)-1] {
		if still[off] {
			k.mark(t.gofunc+off, t.gofunc+all[i+1])
		}
	}
	return true
}

// empty writes zeros over what is not kept, and takes the way to it out of the functions.
func (t tables) empty(funcs []int, k kept) {
	for _, at := range funcs {
		for _, field := range []int{funcFile, funcLine, funcUnit, funcStartLine} {
			t.put(at+field, 0)
		}
		for _, n := range looseSteps {
			if p := t.stepsAt(at, n); p > 0 && !t.keeps(at, n, looseSteps) {
				t.put(p, 0)
			}
		}
		for _, n := range looseData {
			if p := t.dataAt(at, n); p > 0 && !t.keeps(at, n, looseData) {
				t.put(p, none)
			}
		}
	}
	for _, s := range []span{t.names, t.units, t.files, t.steps, {t.gofunc, t.buckets - t.gofunc}} {
		for i := s.at; i < s.to(); i++ {
			if !k[i] {
				t.memory[i] = 0
			}
		}
	}
	for _, at := range funcs {
		t.shorten(t.names.at + t.word(at+funcName))
	}
	t.level(funcs)
	for i := t.buckets; i+4 < t.end; i += bucketSize {
		x := binary.LittleEndian.Uint32(t.memory[i:])
		t.put(i, x-x%stride)
	}
}

// shorten leaves out for which types a function was made. A trace writes "[...]" for them
// anyway (runtime.funcNameForPrint).
func (t tables) shorten(at int) {
	name := t.memory[at : at+bytes.IndexByte(t.memory[at:], 0)]
	from, to := bytes.IndexByte(name, '['), bytes.LastIndexByte(name, ']')
	if from < 0 || to-from <= len("[...") {
		return
	}
	short := append([]byte("[..."), name[to:]...)
	clear(name[from:][copy(name[from:], short):])
}

// What a function's description has at least once it is levelled: steps for pointer maps,
// and data for the pointer maps of arguments and locals and for stack objects.
const (
	leastSteps = 2
	leastData  = 3
)

// level writes the descriptions of functions anew, without the tables that are empty now,
// at distances of 64 bytes: alike bytes then stand at like distances, and the offsets grow
// evenly. Descriptions that would not fit stay where they are.
func (t tables) level(funcs []int) {
	from := t.index + 8*t.count + 4
	from = (from + funcSlot - 1) / funcSlot * funcSlot
	var out memory
	offsets := make([]int, len(funcs))
	for i, at := range funcs {
		offsets[i] = from + len(out) - t.funcs.at
		out = append(out, t.levelled(at)...)
	}
	if from+len(out) > t.funcs.to() {
		return
	}
	for i, off := range offsets {
		t.put(t.index+8*i+4, uint32(off))
	}
	clear(t.memory[t.index+8*t.count+4 : t.funcs.to()])
	copy(t.memory[from:], out)
}

// funcSlot is what the description of a function fills, or a multiple of it.
const funcSlot = 64

// levelled is the description of a function without tables that are not there.
func (t tables) levelled(at int) memory {
	steps, data := t.word(at+funcSteps), int(t.memory[at+funcData])
	for steps > 0 && t.word(t.stepsAt(at, steps-1)) == 0 {
		steps--
	}
	for data > 0 && t.word(t.dataAt(at, data-1)) == none {
		data--
	}
	allSteps, allData := max(steps, leastSteps), max(data, leastData)
	size := funcSize + 4*allSteps + 4*allData
	out := make(memory, (size+funcSlot-1)/funcSlot*funcSlot)
	copy(out, t.memory[at:at+funcSize])
	out.put(funcSteps, uint32(allSteps))
	out[funcData] = byte(allData)
	for n := range allSteps {
		if n < steps {
			out.put(funcSize+4*n, uint32(t.word(t.stepsAt(at, n))))
		}
	}
	for n := range allData {
		x := uint32(none)
		if n < data {
			x = uint32(t.word(t.dataAt(at, n)))
		}
		out.put(funcSize+4*allSteps+4*n, x)
	}
	return out
}
