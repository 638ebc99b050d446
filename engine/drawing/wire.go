package drawing

import (
	"encoding/binary"
	"math"
	"slices"
	"strconv"
	"unicode/utf8"
)

// The wire is a drawing as bytes, for the program that paints it with the graphics
// processor. It lives for one frame and is never kept, so there is one version and no
// migration: a reader refuses every other.
//
//	head     "LWD", version (1 byte), length of what follows (4 bytes)
//	drawing  paper (1 byte), title, language, box (4 numbers), pixel, count of items, count of steps
//	item     kind (1 byte), parts that it has (1 byte), id, group, layer, those parts
//	path     count of steps; each its letter and its points
//
// A number is an IEEE 754 double, little-endian, and finite. A count is a varint of
// package encoding/binary, as short as it can be. A text is its length and its bytes in
// UTF-8. Names that come again and again (groups, layers, tones, species) are numbered:
// 0 is empty, n is the n-th name so far, and one more than there are so far announces
// a new one, whose text follows. So every drawing has one encoding.

const (
	wireMagic   = "LWD"
	wireVersion = 1
	wireHead    = 8
)

// Limits of what a reader takes: far above any wall, and low enough that a mistake
// cannot fill the memory.
const (
	wireMaxBytes = 16 << 20
	wireMaxItems = 200_000
	wireMaxSteps = 1_000_000
	wireMaxText  = 4_096
	wireMaxDash  = 16
	wireMaxNames = 65_536
)

// Parts that an item may have.
const (
	hasTone = 1 << iota
	hasFade
	hasSoft
	hasLine
	hasPath
)

// parts of a line and of a text are flags of their own.
const (
	lineMM = 1 << iota
	lineRound
)

const (
	textFigure = 1 << iota
	textBold
	textSlant
)

const (
	woodEnd = 1 << iota
	woodEdge
)

// A Packer writes drawings to the wire. It is used again and again, so that after the
// first few frames it needs no new memory. The zero value is ready.
type Packer struct {
	Bare bool // leaves out what a painter of paths and wood does not need: texts and ids

	to    []byte
	names map[string]uint64
}

// Append appends a drawing's bytes to dst. Numbers that are not finite become 0, so that
// a picture opens whatever happened before.
func (p *Packer) Append(dst []byte, d *Drawing) []byte {
	if p.names == nil {
		p.names = map[string]uint64{}
	}
	clear(p.names)
	at := len(dst)
	p.to = append(dst, wireMagic...)
	p.to = append(p.to, wireVersion, 0, 0, 0, 0)
	p.flags(d.Paper)
	p.text(d.Title)
	p.text(d.Lang)
	p.numbers(d.Box.MinX, d.Box.MinY, d.Box.MaxX, d.Box.MaxY, d.Pixel)
	items, steps := p.totals(d)
	p.count(items)
	p.count(steps)
	for i := range d.Items {
		if it := &d.Items[i]; !p.Bare || it.Kind != TextKind {
			p.item(it)
		}
	}
	out := p.to
	p.to = nil
	binary.LittleEndian.PutUint32(out[at+4:], uint32(len(out)-at-wireHead))
	return out
}

// totals returns how many items are written, and steps in all of them.
func (p *Packer) totals(d *Drawing) (items, steps int) {
	for i := range d.Items {
		switch it := &d.Items[i]; it.Kind {
		case TextKind:
			if !p.Bare {
				items++
			}
		case PathKind, WoodKind:
			steps += len(it.Path)
			items++
		default:
			items++
		}
	}
	return items, steps
}

func (p *Packer) item(it *Item) {
	has := it.parts()
	p.to = append(p.to, byte(it.Kind), has)
	if p.Bare {
		p.text("")
	} else {
		p.text(it.ID)
	}
	p.name(it.Group)
	p.name(string(it.Layer))
	if has&hasTone != 0 {
		p.name(string(it.Tone))
	}
	if has&hasFade != 0 {
		p.number(it.Fade)
	}
	if has&hasSoft != 0 {
		p.number(it.Soft)
	}
	if has&hasLine != 0 {
		p.line(&it.Line)
	}
	if has&hasPath != 0 {
		p.path(it.Path)
	}
	switch it.Kind {
	case WoodKind:
		p.wood(&it.Wood)
	case TextKind:
		p.letters(&it.Text)
	case GlowKind:
		p.glow(&it.Glow)
	}
}

// parts lists what an item has: what its kind does not use is left out.
func (it *Item) parts() (has byte) {
	for _, q := range [...]struct {
		bit byte
		ok  bool
	}{
		{hasTone, it.Tone != ""}, {hasFade, finite(it.Fade) != 0}, {hasSoft, finite(it.Soft) != 0},
		{hasLine, it.Line.Width > 0 && (it.Kind == PathKind || it.Kind == WoodKind)},
		{hasPath, len(it.Path) > 0 && (it.Kind == PathKind || it.Kind == WoodKind)},
	} {
		if q.ok {
			has |= q.bit
		}
	}
	return has
}

func (p *Packer) line(l *Line) {
	p.name(string(l.Tone))
	p.number(l.Width)
	p.flags(l.MM, l.Round)
	dash := l.Dash[:min(len(l.Dash), wireMaxDash)]
	p.count(len(dash))
	p.numbers(dash...)
}

// longestStep is the most bytes that a step takes.
const longestStep = 1 + 6*8

// path writes into room made once for all steps: paths are most of a drawing.
func (p *Packer) path(path []Step) {
	p.count(len(path))
	at := len(p.to)
	b := slices.Grow(p.to, longestStep*len(path))[:at+longestStep*len(path)]
	for i := range path {
		s := &path[i]
		b[at] = s.To
		at++
		switch s.To {
		case 'M', 'L':
			putPoint(b[at:at+16], s.P)
			at += 16
		case 'C':
			putPoint(b[at:at+16], s.P)
			putPoint(b[at+16:at+32], s.P1)
			putPoint(b[at+32:at+48], s.P2)
			at += 48
		default:
			b[at-1] = 'Z'
		}
	}
	p.to = b[:at]
}

func putPoint(b []byte, q Point) {
	binary.LittleEndian.PutUint64(b, math.Float64bits(finite(q.X)))
	binary.LittleEndian.PutUint64(b[8:], math.Float64bits(finite(q.Y)))
}

func (p *Packer) wood(w *Wood) {
	p.name(w.Species)
	p.to = binary.LittleEndian.AppendUint64(p.to, w.Seed)
	p.points(w.Origin, w.Along, w.Across)
	p.numbers(w.WindowAlong, w.WindowAcross, w.Shade)
	p.flags(w.End, w.Edge)
}

func (p *Packer) letters(t *Text) {
	p.points(t.At)
	p.numbers(t.Size, t.Turn)
	p.to = append(p.to, byte(t.Anchor))
	p.flags(t.Figure, t.Bold, t.Slant)
	p.name(string(t.Halo))
	p.text(t.String)
}

func (p *Packer) glow(g *Glow) {
	p.points(g.From, g.To, g.Toward)
	p.numbers(g.Reach, g.Cut, g.Before, g.After, g.Kelvin)
}

func (p *Packer) flags(on ...bool) {
	b := byte(0)
	for i, x := range on {
		if x {
			b |= 1 << i
		}
	}
	p.to = append(p.to, b)
}

func (p *Packer) count(n int) { p.to = binary.AppendUvarint(p.to, uint64(n)) }

// text writes a text, cut to the limit at a whole letter.
func (p *Packer) text(s string) {
	if len(s) > wireMaxText || !utf8.ValidString(s) {
		s = shortened(s)
	}
	p.count(len(s))
	p.to = append(p.to, s...)
}

func shortened(s string) string {
	out := make([]byte, 0, wireMaxText)
	for _, r := range s {
		if len(out)+utf8.UTFMax > wireMaxText {
			break
		}
		out = utf8.AppendRune(out, r)
	}
	return string(out)
}

func (p *Packer) name(s string) {
	if s == "" {
		p.to = append(p.to, 0)
		return
	}
	n, ok := p.names[s]
	if !ok {
		n = uint64(len(p.names) + 1)
		p.names[s] = n
	}
	p.to = binary.AppendUvarint(p.to, n)
	if !ok {
		p.text(s)
	}
}

func (p *Packer) number(x float64) {
	p.to = binary.LittleEndian.AppendUint64(p.to, math.Float64bits(finite(x)))
}

func (p *Packer) numbers(xs ...float64) {
	for _, x := range xs {
		p.number(x)
	}
}

func (p *Packer) points(ps ...Point) {
	for _, q := range ps {
		p.number(q.X)
		p.number(q.Y)
	}
}

// finite returns x, or 0 for what is not finite: less itself that is not 0. There is one
// nought.
func finite(x float64) float64 {
	if x-x != 0 || x == 0 {
		return 0
	}
	return x
}

// A WireError says where bytes stop being a drawing, and why.
type WireError struct {
	At  int // offset, in bytes
	Why string
}

func (e *WireError) Error() string { return "drawing, byte " + strconv.Itoa(e.At) + ": " + e.Why }
