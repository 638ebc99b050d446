package slim

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// The form of a WebAssembly module: WebAssembly Core Specification 1.0, section 5.5.
const (
	header      = "\x00asm\x01\x00\x00\x00"
	dataSection = 11
	i32Const    = 0x41
	end         = 0x0b
)

var errForm = errors.New("not a WebAssembly module as Go writes it")

// A section is a part of a module.
type section struct {
	id   byte
	body []byte
}

// split parts a module into its sections.
func split(wasm []byte) (out []section, err error) {
	if len(wasm) < len(header) || string(wasm[:len(header)]) != header {
		return nil, errForm
	}
	r := &reader{rest: wasm[len(header):]}
	for len(r.rest) > 0 && r.err == nil {
		id := r.byte()
		out = append(out, section{id, r.bytes(r.number())})
	}
	return out, r.err
}

// join is the opposite of split.
func join(sections []section) []byte {
	out := []byte(header)
	for _, s := range sections {
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out
}

// A reader reads numbers as modules write them; after a mistake it reads zeros.
type reader struct {
	rest []byte
	err  error
}

func (r *reader) fail() { r.rest, r.err = nil, errForm }

func (r *reader) byte() byte {
	b := r.bytes(1)
	if len(b) == 0 {
		return 0
	}
	return b[0]
}

func (r *reader) bytes(n uint64) []byte {
	if n > uint64(len(r.rest)) {
		r.fail()
		return nil
	}
	b := r.rest[:n]
	r.rest = r.rest[n:]
	return b
}

func (r *reader) number() uint64 {
	x, n := binary.Uvarint(r.rest)
	if n <= 0 {
		r.fail()
		return 0
	}
	r.rest = r.rest[n:]
	return x
}

// signed reads the operand of i32.const (section 5.2.2, signed LEB128).
func (r *reader) signed() int64 {
	var x int64
	for shift := 0; shift < 35; shift += 7 {
		b := r.byte()
		x |= int64(b&0x7f) << shift
		if b < 0x80 {
			return x << (57 - shift) >> (57 - shift)
		}
	}
	r.fail()
	return 0
}

// appendSigned is the opposite of signed, for offsets, which are not negative.
func appendSigned(out []byte, x uint64) []byte {
	for ; x >= 0x40; x >>= 7 {
		out = append(out, byte(x)|0x80)
	}
	return append(out, byte(x))
}

// A memory is what a program's data is before its first step, from address 0.
type memory []byte

// limit is how much memory is believed: a page of maps and strings, not a film.
const limit = 64 << 20

// readMemory lays the segments of a data section out.
func readMemory(body []byte) (m memory, err error) {
	r := &reader{rest: body}
	for n := r.number(); n > 0 && r.err == nil; n-- {
		if kind, op := r.number(), r.byte(); kind != 0 || op != i32Const {
			return nil, fmt.Errorf("a data segment of another kind: %w", errForm)
		}
		at := r.signed()
		if r.byte() != end || at < 0 || at > limit {
			return nil, fmt.Errorf("a data segment without a place: %w", errForm)
		}
		b := r.bytes(r.number())
		if need := int(at) + len(b); need > len(m) {
			m = append(m, make([]byte, need-len(m))...)
		}
		copy(m[at:], b)
	}
	return m, r.err
}

// gap is how many zeros keep two segments apart. A head of 8 bytes hardly shrinks, zeros
// do, to a hundredth: of the maker's page 32 make 2.20 MB after gzip, 256 make 2.18, and
// 512 no less.
const gap = 256

// segments writes a memory as a data section.
func (m memory) segments() []byte {
	var body []byte
	n := 0
	for from := m.skip(0); from < len(m); n++ {
		to, next := m.run(from)
		body = append(body, 0, i32Const)
		body = appendSigned(body, uint64(from))
		body = append(body, end)
		body = binary.AppendUvarint(body, uint64(to-from))
		body = append(body, m[from:to]...)
		from = next
	}
	return append(binary.AppendUvarint(nil, uint64(n)), body...)
}

// skip returns the first place from there on that is not zero.
func (m memory) skip(from int) int {
	for from < len(m) && m[from] == 0 {
		from++
	}
	return from
}

// run returns where the segment that starts there ends, and where the next starts.
func (m memory) run(from int) (to, next int) {
	for to = from; to < len(m); to = next {
		for to < len(m) && m[to] != 0 {
			to++
		}
		if next = m.skip(to); next-to > gap || next == len(m) {
			return to, next
		}
	}
	return to, len(m)
}

// word reads 4 bytes; word64 reads 8, of which a program in 4 GiB uses the lower half.
func (m memory) word(at int) int { return int(binary.LittleEndian.Uint32(m[at:])) }

func (m memory) word64(at int) int {
	return int(min(binary.LittleEndian.Uint64(m[at:]), math.MaxInt32))
}

func (m memory) put(at int, x uint32) { binary.LittleEndian.PutUint32(m[at:], x) }
