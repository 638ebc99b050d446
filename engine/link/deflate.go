package link

import "ledgewright/engine/rank"

// Deflate (RFC 1951) writes texts as literal bytes and as matches, which point back at
// bytes that have been there, and both in Huffman's codes. This is all of it that links
// need, an eighth of compress/flate in the page's program: one block, the codes of the
// standard or codes of its own, whichever is shorter. Any reader of deflate reads it;
// [inflated] reads what any other writes.

// Bounds of RFC 1951, sections 3.2.5 to 3.2.7.
const (
	leastMatch = 3
	mostMatch  = 258
	window     = 32 << 10
	endOfBlock = 256
	mostBits   = 15 // of a code
	mostBitsOf = 7  // of a code for lengths of codes

	literalCodes  = 286 // that may be written: of literals, the end and lengths
	distanceCodes = 30
	sizeCodes     = 19 // codes for lengths of codes
)

// A token is a literal byte, or a match of a length so far back.
type token struct{ length, value int }

// A tier is where a code's values begin, and how many bits follow to tell them apart.
type tier struct{ base, bits int }

// lengthTiers are those of codes 257 to 285.
func lengthTiers() (t [literalCodes - endOfBlock - 1]tier) {
	base := leastMatch
	for i := range t {
		t[i] = tier{base, max(i/4-1, 0)}
		base += 1 << t[i].bits
	}
	t[28] = tier{mostMatch, 0}
	return t
}

// distanceTiers are those of codes 0 to 29.
func distanceTiers() (t [distanceCodes]tier) {
	base := 1
	for i := range t {
		t[i] = tier{base, max(i/2-1, 0)}
		base += 1 << t[i].bits
	}
	return t
}

// tierOf returns the last tier that begins at x or before.
func tierOf(tiers []tier, x int) int {
	i := len(tiers) - 1
	for tiers[i].base > x {
		i--
	}
	return i
}

// lengthOrder is the order in which the lengths of the codes for lengths are written.
func lengthOrder() []int {
	return []int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15}
}

// deflated compresses a text; matches may reach into the dictionary before it.
func deflated(raw []byte) []byte {
	tokens := matches(append([]byte(dictionary), raw...), len(dictionary))
	ownBlock, fixedBlock := &bitWriter{}, &bitWriter{}
	own := codesFor(tokens)
	ownBlock.put(1|2<<1, 3)
	own.describe(ownBlock)
	own.write(ownBlock, tokens)
	fixedBlock.put(1|1<<1, 3)
	fixedCodes().write(fixedBlock, tokens)
	if a, b := ownBlock.end(), fixedBlock.end(); len(a) >= len(b) {
		return b
	}
	return ownBlock.out
}

// matches goes through data from a place on and finds for every byte what was there
// before. A match that begins one byte later waits only for a longer one.
func matches(data []byte, from int) (out []token) {
	f := finder{data: data, before: make([]int, len(data))}
	for i := range from {
		f.add(i)
	}
	var last token // a match at the byte before, not yet taken
	for i := from; i < len(data); i++ {
		t := f.longest(i)
		f.add(i)
		switch {
		case last.length >= max(t.length, leastMatch):
			out = append(out, last)
			for end := i - 1 + last.length; i+1 < end; {
				i++
				f.add(i)
			}
			last = token{}
			continue
		case i > from && last != token{}:
			out = append(out, token{0, int(data[i-1])})
		}
		last = t
		if t.length < leastMatch {
			out, last = append(out, token{0, int(data[i])}), token{}
		}
	}
	if last.length > 0 {
		out = append(out, last)
	}
	return out
}

// A finder knows where three bytes that look alike have been: last, and before that. Its
// numbers are places plus one.
type finder struct {
	data   []byte
	head   [1 << 12]int
	before []int
}

// alike returns a number that is the same for the same three bytes.
func (f *finder) alike(i int) (hash int, ok bool) {
	if i+leastMatch > len(f.data) {
		return 0, false
	}
	x := uint32(f.data[i]) | uint32(f.data[i+1])<<8 | uint32(f.data[i+2])<<16
	return int(x * 0x9e3779b1 >> 20), true
}

func (f *finder) add(i int) {
	if k, ok := f.alike(i); ok {
		f.before[i], f.head[k] = f.head[k], i+1
	}
}

// patience is how many places are tried for a match.
const patience = 512

// longest returns the longest match at a place, the nearest of them.
func (f *finder) longest(i int) (best token) {
	k, ok := f.alike(i)
	if !ok {
		return best
	}
	most := min(mostMatch, len(f.data)-i)
	at := f.head[k] - 1
	for tries := 0; at >= 0 && i-at <= window && tries < patience && best.length < most; tries++ {
		n := 0
		for n < most && f.data[at+n] == f.data[i+n] {
			n++
		}
		if n > best.length {
			best = token{n, i - at}
		}
		at = f.before[at] - 1
	}
	return best
}

// A book is the codes of a block: of literals and lengths, and of distances.
type book struct{ literals, distances []code }

// A code is some bits, the first the lowest.
type code struct{ bits, size int }

// fixedSizes are those of the codes of section 3.2.6: two more of literals and of distances
// than may be written.
func fixedSizes() (l [literalCodes + 2]int, d [distanceCodes + 2]int) {
	for i := range l {
		l[i] = 8
		switch {
		case i >= 144 && i < 256:
			l[i] = 9
		case i >= 256 && i < 280:
			l[i] = 7
		}
	}
	for i := range d {
		d[i] = 5
	}
	return l, d
}

// fixedCodes are the codes of section 3.2.6.
func fixedCodes() book {
	l, d := fixedSizes()
	return book{codesOf(l[:]), codesOf(d[:])}
}

// codesFor returns the codes that make some tokens shortest.
func codesFor(tokens []token) book {
	var l [literalCodes]int
	var d [distanceCodes]int
	lengths, distances := lengthTiers(), distanceTiers()
	l[endOfBlock] = 1
	for _, t := range tokens {
		if t.length == 0 {
			l[t.value]++
			continue
		}
		l[endOfBlock+1+tierOf(lengths[:], t.length)]++
		d[tierOf(distances[:], t.value)]++
	}
	return book{codesOf(huffman(l[:], mostBits)), codesOf(huffman(d[:], mostBits))}
}

// codesOf gives codes to sizes: the shorter first, in their order (section 3.2.2).
func codesOf(sizes []int) []code {
	out := make([]code, len(sizes))
	next := 0
	for size := 1; size <= mostBits; size++ {
		for i, s := range sizes {
			if s != size {
				continue
			}
			for k := range size {
				out[i].bits |= next >> k & 1 << (size - 1 - k)
			}
			out[i].size = size
			next++
		}
		next <<= 1
	}
	return out
}

// huffman returns the sizes of codes for what comes so often (D. A. Huffman, A Method for
// the Construction of Minimum-Redundancy Codes, 1952): the two rarest become one, until
// one is left. Codes that grow too long are made again, for what differs less.
func huffman(often []int, most int) []int {
	sizes := make([]int, len(often))
	for {
		if longest(often, sizes) <= most {
			return sizes
		}
		flat := make([]int, len(often))
		for i, n := range often {
			flat[i] = (n + 1) / 2
		}
		often = flat
	}
}

// longest fills the sizes of codes and returns the greatest.
func longest(often, sizes []int) (most int) {
	type tree struct {
		often  int
		leaves []int
	}
	var forest []tree
	clear(sizes)
	for i, n := range often {
		if n > 0 {
			forest = append(forest, tree{n, []int{i}})
			sizes[i] = 1
		}
	}
	if len(forest) < 2 {
		return len(forest)
	}
	clear(sizes)
	rank.By(forest, func(a, b tree) int { return a.often - b.often })
	for len(forest) > 1 {
		a, b := forest[0], forest[1]
		both := append(a.leaves, b.leaves...)
		for _, i := range both {
			sizes[i]++
			most = max(most, sizes[i])
		}
		forest = append(forest[2:], tree{a.often + b.often, both})
		for i := len(forest) - 1; i > 0 && forest[i-1].often > forest[i].often; i-- {
			forest[i-1], forest[i] = forest[i], forest[i-1]
		}
	}
	return most
}

// describe writes the sizes of both kinds of codes, in codes of their own.
func (b book) describe(w *bitWriter) {
	nl, nd := max(used(b.literals), endOfBlock+1), max(used(b.distances), 1)
	var sizes []int
	for _, c := range append(b.literals[:nl:nl], b.distances[:nd]...) {
		sizes = append(sizes, c.size)
	}
	runs := runsOf(sizes)
	var often [sizeCodes]int
	for _, r := range runs {
		often[r.length]++
	}
	codes := codesOf(huffman(often[:], mostBitsOf))
	order := lengthOrder()
	n := len(order)
	for n > 4 && codes[order[n-1]].size == 0 {
		n--
	}
	w.put(nl-257, 5)
	w.put(nd-1, 5)
	w.put(n-4, 4)
	for _, i := range order[:n] {
		w.put(codes[i].size, 3)
	}
	more := [sizeCodes]int{16: 2, 17: 3, 18: 7}
	for _, r := range runs {
		w.code(codes[r.length])
		w.put(r.value, more[r.length])
	}
}

// used is how many codes there are up to the last that is used.
func used(codes []code) int {
	n := len(codes)
	for n > 0 && codes[n-1].size == 0 {
		n--
	}
	return n
}

// runsOf writes sizes as codes for lengths and what follows them: a size, 16 for the last
// one 3 to 6 times again, 17 and 18 for 3 to 10 and 11 to 138 zeros.
func runsOf(sizes []int) (out []token) {
	for i := 0; i < len(sizes); {
		n := 1
		for i+n < len(sizes) && sizes[i+n] == sizes[i] {
			n++
		}
		switch again := i > 0 && sizes[i-1] == sizes[i]; {
		case sizes[i] == 0 && n >= 11:
			n = min(n, 138)
			out = append(out, token{18, n - 11})
		case sizes[i] == 0 && n >= 3:
			out = append(out, token{17, n - 3})
		case again && n >= 3:
			n = min(n, 6)
			out = append(out, token{16, n - 3})
		default:
			n = 1
			out = append(out, token{sizes[i], 0})
		}
		i += n
	}
	return out
}

func (b book) write(w *bitWriter, tokens []token) {
	lengths, distances := lengthTiers(), distanceTiers()
	for _, t := range tokens {
		if t.length == 0 {
			w.code(b.literals[t.value])
			continue
		}
		i := tierOf(lengths[:], t.length)
		w.code(b.literals[endOfBlock+1+i])
		w.put(t.length-lengths[i].base, lengths[i].bits)
		i = tierOf(distances[:], t.value)
		w.code(b.distances[i])
		w.put(t.value-distances[i].base, distances[i].bits)
	}
	w.code(b.literals[endOfBlock])
}

// A bitWriter packs bits into bytes, the first the lowest.
type bitWriter struct {
	out  []byte
	held uint64
	n    int
}

func (w *bitWriter) code(c code) { w.put(c.bits, c.size) }

func (w *bitWriter) put(x, n int) {
	w.held |= uint64(x) << w.n
	for w.n += n; w.n >= 8; w.n -= 8 {
		w.out, w.held = append(w.out, byte(w.held)), w.held>>8
	}
}

func (w *bitWriter) end() []byte {
	if w.n > 0 {
		w.put(0, 8-w.n)
	}
	return w.out
}
