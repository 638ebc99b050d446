package drawing

import (
	"encoding/binary"
	"math"
	"unicode/utf8"
)

// An Unpacker reads drawings from the wire. It is used again and again and keeps its
// memory: a drawing that it returns lasts until the next. The zero value is ready.
type Unpacker struct {
	from  []byte
	at    int
	err   *WireError
	names []string
	known map[string]string // texts of earlier drawings, which come again
	items []Item
	steps []Step
	dash  []float64
	left  int // steps still announced
	sums  []uint64
}

// Sums returns a number for each item of the drawing that was read last: the same number
// for the same item under the same names. One who paints can keep what he made of an item
// that comes again.
func (u *Unpacker) Sums() []uint64 { return u.sums }

// Read reads one drawing, which must be all of b.
func (u *Unpacker) Read(b []byte) (Drawing, error) {
	u.begin(b)
	var d Drawing
	d.Paper = u.flags(1)&1 != 0
	d.Title, d.Lang = u.text(), u.text()
	d.Box = Box{u.number(), u.number(), u.number(), u.number()}
	d.Pixel = u.number()
	items, steps := u.count(wireMaxItems, "items"), u.count(wireMaxSteps, "steps")
	u.room(items, steps)
	for range items {
		if u.err != nil {
			break
		}
		at := u.at
		u.item()
		u.sums = append(u.sums, sum(sumBasis, u.from[at:u.at]))
	}
	switch {
	case u.err != nil:
	case u.left != 0:
		u.fail("fewer steps than announced")
	case u.at != len(u.from):
		u.fail("more bytes than the drawing has")
	}
	if u.err != nil {
		return Drawing{}, u.err
	}
	if len(u.items) > 0 {
		d.Items = u.items
	}
	u.named()
	return d, nil
}

// sumBasis and sumPrime are those of FNV-1a for 64 bits (G. Fowler, L. Noll, K.-P. Vo).
const (
	sumBasis = 14695981039346656037
	sumPrime = 1099511628211
)

// sum goes on with FNV-1a over eight bytes at a time, and mixes each well: their highest
// bits must reach the lowest.
func sum(h uint64, b []byte) uint64 {
	for ; len(b) >= 8; b = b[8:] {
		h = (h ^ binary.LittleEndian.Uint64(b)) * sumPrime
		h ^= h >> 29
	}
	for _, c := range b {
		h = (h ^ uint64(c)) * sumPrime
	}
	return h ^ h>>32
}

// named mixes the names into the sums, since items say names by their numbers.
func (u *Unpacker) named() {
	h := uint64(sumBasis)
	for _, n := range u.names {
		for i := range len(n) {
			h = (h ^ uint64(n[i])) * sumPrime
		}
		h = (h ^ 0xff) * sumPrime // no letter of UTF-8: "ab", "c" is not "a", "bc"
	}
	for i := range u.sums {
		u.sums[i] ^= h
	}
}

// begin checks the head.
func (u *Unpacker) begin(b []byte) {
	*u = Unpacker{from: b, names: u.names[:0], known: u.known, items: u.items[:0], steps: u.steps[:0], dash: u.dash[:0], sums: u.sums[:0]}
	if u.known == nil || len(u.known) > wireMaxNames {
		u.known = map[string]string{}
	}
	switch {
	case len(b) > wireMaxBytes:
		u.fail("longer than 16 MiB")
	case len(b) < wireHead || string(b[:3]) != wireMagic:
		u.fail("not a drawing")
	case b[3] != wireVersion:
		u.at = 3
		u.fail("of another version")
	case int(binary.LittleEndian.Uint32(b[4:])) != len(b)-wireHead:
		u.at = 4
		u.fail("cut off, or longer than it says")
	default:
		u.at = wireHead
	}
}

// leastItem is the least that an item takes: kind, parts, id, group, layer.
const leastItem = 5

// room makes room once for all that was announced, unless the bytes cannot hold it.
func (u *Unpacker) room(items, steps int) {
	if u.err == nil && items*leastItem+steps > len(u.from)-u.at {
		u.fail("announces more than its bytes can hold")
	}
	if u.err != nil {
		return
	}
	if cap(u.items) < items {
		u.items = make([]Item, 0, items)
	}
	if cap(u.steps) < steps {
		u.steps = make([]Step, 0, steps)
	}
	u.left = steps
}

func (u *Unpacker) fail(why string) {
	if u.err == nil {
		u.err = &WireError{At: u.at, Why: why}
	}
}

func (u *Unpacker) item() {
	it := Item{Kind: Kind(u.byte())}
	if it.Kind < PathKind || it.Kind > GlowKind {
		u.fail("no such kind of item")
	}
	has := u.flags(5)
	it.ID, it.Group, it.Layer = u.text(), u.name(), Layer(u.name())
	if has&hasTone != 0 {
		it.Tone = Tone(u.name())
	}
	if has&hasFade != 0 {
		it.Fade = u.number()
	}
	if has&hasSoft != 0 {
		it.Soft = u.number()
	}
	if has&hasLine != 0 {
		it.Line = u.line()
	}
	if has&hasPath != 0 {
		it.Path = u.path()
	}
	switch it.Kind {
	case WoodKind:
		it.Wood = u.wood()
	case TextKind:
		it.Text = u.letters()
	case GlowKind:
		it.Glow = u.glow()
	}
	if u.err == nil && it.parts() != has {
		u.fail("an item names parts that it does not have")
	}
	u.items = append(u.items, it)
}

func (u *Unpacker) line() (l Line) {
	l.Tone, l.Width = Tone(u.name()), u.number()
	f := u.flags(2)
	l.MM, l.Round = f&lineMM != 0, f&lineRound != 0
	n := u.count(wireMaxDash, "dashes")
	if n == 0 || u.err != nil {
		return l
	}
	from := len(u.dash)
	for range n {
		u.dash = append(u.dash, u.number())
	}
	l.Dash = u.dash[from:len(u.dash):len(u.dash)]
	return l
}

// path reads steps in one run, without a call for each number: paths are most of a
// drawing.
func (u *Unpacker) path() []Step {
	n := u.count(u.left, "steps")
	u.left -= n
	from := len(u.steps)
	for range n {
		if u.err != nil {
			return nil
		}
		u.steps = append(u.steps, Step{})
		u.step(&u.steps[len(u.steps)-1])
	}
	return u.steps[from:len(u.steps):len(u.steps)]
}

func (u *Unpacker) step(s *Step) {
	b := u.from[u.at:]
	size := 0
	if len(b) > 0 {
		size = stepSize(b[0])
	}
	if size == 0 || size > len(b) {
		u.fail("cut off, or no such step of a path")
		return
	}
	fine := true
	switch s.To = b[0]; size {
	case 17:
		fine = getPoint(&s.P, b[1:17])
	case longestStep:
		fine = getPoint(&s.P, b[1:17]) && getPoint(&s.P1, b[17:33]) && getPoint(&s.P2, b[33:49])
	}
	if !fine {
		u.fail(notFinite)
	}
	u.at += size
}

// stepSize is how many bytes a step takes, 0 for none.
func stepSize(to byte) int {
	switch to {
	case 'M', 'L':
		return 17
	case 'C':
		return longestStep
	case 'Z':
		return 1
	}
	return 0
}

// getPoint reads a point, and reports whether it is one.
func getPoint(p *Point, b []byte) bool {
	x, y := binary.LittleEndian.Uint64(b), binary.LittleEndian.Uint64(b[8:16])
	p.X, p.Y = math.Float64frombits(x), math.Float64frombits(y)
	return p.X-p.X == 0 && p.Y-p.Y == 0 && x != minusNought && y != minusNought
}

// minusNought is the nought that is not written.
const minusNought = 1 << 63

const notFinite = "a number that is not finite, or a nought below nought"

func (u *Unpacker) wood() (w Wood) {
	w.Species = u.name()
	if b := u.take(8); b != nil {
		w.Seed = binary.LittleEndian.Uint64(b)
	}
	w.Origin, w.Along, w.Across = u.point(), u.point(), u.point()
	w.WindowAlong, w.WindowAcross, w.Shade = u.number(), u.number(), u.number()
	f := u.flags(2)
	w.End, w.Edge = f&woodEnd != 0, f&woodEdge != 0
	return w
}

func (u *Unpacker) letters() (t Text) {
	t.At, t.Size, t.Turn = u.point(), u.number(), u.number()
	if t.Anchor = Anchor(u.byte()); t.Anchor > AnchorEnd {
		u.fail("no such anchor of a text")
	}
	f := u.flags(3)
	t.Figure, t.Bold, t.Slant = f&textFigure != 0, f&textBold != 0, f&textSlant != 0
	t.Halo, t.String = Tone(u.name()), u.text()
	return t
}

func (u *Unpacker) glow() (g Glow) {
	g.From, g.To, g.Toward = u.point(), u.point(), u.point()
	g.Reach, g.Cut, g.Before, g.After, g.Kelvin = u.number(), u.number(), u.number(), u.number(), u.number()
	return g
}

// take returns the next n bytes, or nil where there are not so many.
func (u *Unpacker) take(n int) []byte {
	if u.err == nil && n > len(u.from)-u.at {
		u.fail("cut off")
	}
	if u.err != nil {
		return nil
	}
	u.at += n
	return u.from[u.at-n : u.at]
}

func (u *Unpacker) byte() byte {
	if b := u.take(1); b != nil {
		return b[0]
	}
	return 0
}

// flags reads a byte of which the lowest n bits may be set.
func (u *Unpacker) flags(n int) byte {
	b := u.byte()
	if b>>n != 0 {
		u.fail("a mark that has no meaning")
	}
	return b
}

func (u *Unpacker) uvarint() uint64 {
	if u.err != nil {
		return 0
	}
	x, n := binary.Uvarint(u.from[u.at:])
	if n <= 0 || n > 1 && u.from[u.at+n-1] == 0 {
		u.fail("a count that is cut off, or written longer than it need be")
		return 0
	}
	u.at += n
	return x
}

func (u *Unpacker) count(most int, what string) int {
	x := u.uvarint()
	if x > uint64(most) {
		u.fail("more " + what + " than there can be")
		return 0
	}
	return int(x)
}

func (u *Unpacker) text() string {
	b := u.take(u.count(wireMaxText, "letters"))
	if len(b) == 0 {
		return ""
	}
	if s, ok := u.known[string(b)]; ok {
		return s
	}
	if !utf8.Valid(b) {
		u.fail("a text that is not UTF-8")
		return ""
	}
	s := string(b)
	u.known[s] = s
	return s
}

func (u *Unpacker) name() string {
	n := u.uvarint()
	switch {
	case n == 0 || u.err != nil:
		return ""
	case n <= uint64(len(u.names)):
		return u.names[n-1]
	case n > uint64(len(u.names)+1) || len(u.names) >= wireMaxNames:
		u.fail("a name that was not announced")
		return ""
	}
	s := u.text()
	if u.err == nil && (s == "" || u.has(s)) {
		u.fail("a name that is empty, or announced twice")
	}
	u.names = append(u.names, s)
	return s
}

// has reports whether a name was announced before. There are few: tones, layers, species
// and one for each module.
func (u *Unpacker) has(s string) bool {
	for _, n := range u.names {
		if n == s {
			return true
		}
	}
	return false
}

func (u *Unpacker) number() float64 {
	b := u.take(8)
	if b == nil {
		return 0
	}
	bits := binary.LittleEndian.Uint64(b)
	x := math.Float64frombits(bits)
	if x-x != 0 || bits == minusNought {
		u.at -= 8
		u.fail(notFinite)
	}
	return x
}

func (u *Unpacker) point() (p Point) {
	if b := u.take(16); b != nil && !getPoint(&p, b) {
		u.at -= 16
		u.fail(notFinite)
	}
	return p
}
