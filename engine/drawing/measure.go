package drawing

import "unicode/utf8"

// Advance widths in ems. The figures' face has tabular figures of 0.603 em, read from
// the font file; the others are the mean of running English text in the two faces,
// rounded up: an estimate, good enough to keep texts apart.
const (
	emFigure = 0.603
	emSign   = 0.30 // space, point, prime, slash
	emLetter = 0.56
)

// TextWidth returns about how wide a line of text is, for a size of the same unit.
func TextWidth(s string, size float64) float64 {
	ems := 0.0
	for _, r := range s {
		switch {
		case r >= '0' && r <= '9' || r == '°' || r == '−' || r == '+' || r == 'ø':
			ems += emFigure
		case r == ' ' || r == '.' || r == ',' || r == '\'' || r == '"' || r == '/' || r == ':' || r == '\u202f' || r == '\u00a0':
			ems += emSign
		case r == utf8.RuneError:
		default:
			ems += emLetter
		}
	}
	return ems * size
}

// Extent returns the box that a text fills, turned as it stands.
func (t Text) Extent() Box {
	w := TextWidth(t.String, t.Size)
	x := 0.0
	switch t.Anchor {
	case AnchorMiddle:
		x = -w / 2
	case AnchorEnd:
		x = -w
	}
	low, high := -0.22*t.Size, 0.76*t.Size
	b := Box{}
	for i, p := range [4]Point{{x, low}, {x + w, low}, {x + w, high}, {x, high}} {
		q := turned(p, t.Turn)
		q = Point{q.X + t.At.X, q.Y + t.At.Y}
		if i == 0 {
			b = Box{q.X, q.Y, q.X, q.Y}
		}
		b = b.With(q)
	}
	return b
}

// Meets reports whether two boxes share more than an edge.
func (b Box) Meets(c Box) bool {
	return b.MinX < c.MaxX && c.MinX < b.MaxX && b.MinY < c.MaxY && c.MinY < b.MaxY
}

// Grown returns the box with d added on every side.
func (b Box) Grown(d float64) Box {
	return Box{b.MinX - d, b.MinY - d, b.MaxX + d, b.MaxY + d}
}
