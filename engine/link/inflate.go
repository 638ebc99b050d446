package link

// inflated unfolds a payload, but never past the limit, and only if nothing follows it.
func inflated(payload []byte) ([]byte, error) {
	f := &inflater{bitReader: bitReader{in: payload}, out: []byte(dictionary)}
	for last := false; !last && !f.bad; {
		last = f.bits(1) == 1
		f.block(f.bits(2))
	}
	switch raw := f.out[len(dictionary):]; {
	case len(raw) > mostBytes:
		return nil, &Error{Key: TooLarge}
	case f.bad || len(f.in) > 0:
		return nil, incomplete()
	default:
		return raw, nil
	}
}

// A bitReader reads bits, the lowest of a byte first. After a mistake it reads zeros.
type bitReader struct {
	in   []byte
	held uint
	n    int
	bad  bool
}

func (r *bitReader) bits(n int) (x int) {
	for r.n < n {
		if len(r.in) == 0 {
			r.bad = true
			return 0
		}
		r.held |= uint(r.in[0]) << r.n
		r.in, r.n = r.in[1:], r.n+8
	}
	x = int(r.held & (1<<n - 1))
	r.held, r.n = r.held>>n, r.n-n
	return x
}

// A decoder is a set of codes: how many there are of each size, and what they stand for,
// the shorter first.
type decoder struct {
	count [mostBits + 1]int
	says  []int
}

// decoderOf returns the decoder of codes of some sizes, if they leave no bits without a
// meaning; a single code may.
func decoderOf(sizes []int) (d decoder, ok bool) {
	left, all := 1<<mostBits, 0
	for size := 1; size <= mostBits; size++ {
		for i, s := range sizes {
			if s == size {
				d.says = append(d.says, i)
				d.count[size]++
			}
		}
		left -= d.count[size] << (mostBits - size)
		all += d.count[size]
	}
	return d, left == 0 || all == 0 || all == 1 && d.count[1] == 1
}

// next reads a code and returns what it says.
func (r *bitReader) next(d *decoder) int {
	first, at, x := 0, 0, 0
	for size := 1; size <= mostBits && !r.bad; size++ {
		x = x<<1 | r.bits(1)
		if x-first < d.count[size] {
			return d.says[at+x-first]
		}
		at += d.count[size]
		first = (first + d.count[size]) << 1
	}
	r.bad = true
	return 0
}

// An inflater unfolds blocks behind the dictionary.
type inflater struct {
	bitReader
	out []byte
}

// block reads a block of a kind: as it is, in the standard's codes, or in its own.
func (f *inflater) block(kind int) {
	switch kind {
	case 0:
		f.stored()
	case 1:
		l, d := fixedSizes()
		f.tokens(l[:], d[:])
	case 2:
		if sizes, n := f.sizes(); !f.bad {
			f.tokens(sizes[:n], sizes[n:])
		}
	default:
		f.bad = true
	}
}

// stored reads bytes that were left as they are.
func (f *inflater) stored() {
	f.held, f.n = 0, 0
	n, check := f.bits(16), f.bits(16)
	if f.bad || n != check^0xffff || n > len(f.in) {
		f.bad = true
		return
	}
	f.out, f.in = append(f.out, f.in[:n]...), f.in[n:]
	f.bound()
}

// bound stops it when there is too much.
func (f *inflater) bound() { f.bad = f.bad || len(f.out)-len(dictionary) > mostBytes }

// sizes reads the sizes of a block's own codes, and how many of them are for literals.
func (f *inflater) sizes() (sizes []int, literals int) {
	literals, distances, n := f.bits(5)+257, f.bits(5)+1, f.bits(4)+4
	var of [sizeCodes]int
	for _, i := range lengthOrder()[:n] {
		of[i] = f.bits(3)
	}
	d, ok := decoderOf(of[:])
	f.bad = f.bad || !ok || literals > literalCodes || distances > distanceCodes
	for len(sizes) < literals+distances && !f.bad {
		size, again := f.next(&d), 1
		switch size {
		case 16:
			again = 3 + f.bits(2)
			if len(sizes) == 0 {
				f.bad = true
				break
			}
			size = sizes[len(sizes)-1]
		case 17:
			size, again = 0, 3+f.bits(3)
		case 18:
			size, again = 0, 11+f.bits(7)
		}
		for range again {
			sizes = append(sizes, size)
		}
	}
	f.bad = f.bad || len(sizes) != literals+distances
	return sizes, literals
}

// tokens reads literals and matches to the end of the block.
func (f *inflater) tokens(literals, distances []int) {
	l, lok := decoderOf(literals)
	d, dok := decoderOf(distances)
	f.bad = f.bad || !lok || !dok
	lengthTiers, distanceTiers := lengthTiers(), distanceTiers()
	for !f.bad {
		x := f.next(&l)
		switch {
		case f.bad || x == endOfBlock:
			return
		case x < endOfBlock:
			f.out = append(f.out, byte(x))
		default:
			length := f.tier(lengthTiers[:], x-endOfBlock-1)
			f.again(length, f.tier(distanceTiers[:], f.next(&d)))
		}
		f.bound()
	}
}

// tier reads the rest of a length or a distance.
func (f *inflater) tier(tiers []tier, i int) int {
	if f.bad || i >= len(tiers) {
		f.bad = true
		return 0
	}
	return tiers[i].base + f.bits(tiers[i].bits)
}

// again writes what stands so far back once more; it may run into itself.
func (f *inflater) again(length, back int) {
	f.bad = f.bad || back > len(f.out) || back > window
	for i := 0; i < length && !f.bad; i++ {
		f.out = append(f.out, f.out[len(f.out)-back])
	}
}
