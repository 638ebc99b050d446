package board

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgewright/engine/unit"
)

// turned returns the board turned end for end, as the words of the package say.
func turned(b Board) Board { return reflected(reflected(b, true), false) }

// reflected returns the mirror image over the ends, or over the faces.
func reflected(b Board, ends bool) Board {
	out := b
	out.Features = append([]Feature(nil), b.Features...)
	for i := range out.Features {
		if ends {
			b.overEnds(&out.Features[i])
		} else {
			b.overFaces(&out.Features[i])
		}
	}
	return out
}

// someBoard draws a board with a few cuts of every kind.
func someBoard(t *rapid.T) Board {
	b := mitred(300*mm, 200*mm, 24*mm, unit.Length(rapid.Int64Range(-24, 24).Draw(t, "lead"))*mm)
	length := func(name string, lo, hi int64) unit.Length {
		return unit.Length(rapid.Int64Range(lo*2, hi*2).Draw(t, name)) * mm / 2
	}
	for range rapid.IntRange(0, 5).Draw(t, "cuts") {
		u, v, w := length("u", 30, 270), length("v", 20, 180), length("w", 4, 20)
		b.Features = append(b.Features, rapid.SampledFrom([]Feature{
			groove(u, v, 60*mm, 8*mm, 6*mm),
			bore(u, w, 10*mm, 100*mm),
			pocket(u, w, 50*mm, 14*mm, 6*mm),
			{Kind: Slot, Enter: End, Mouth: Point{U: 290 * mm, V: v, W: w}, Along: 60 * mm, Across: 4 * mm, Depth: 12 * mm, Tilt: 45 * unit.Degree},
			{Kind: Chamfer, Arris: "front-a", Size: mm},
			{Kind: RoundOver, Arris: "end-b", Size: 2 * mm},
			{Kind: Bore, Enter: FaceB, Mouth: Point{U: u, V: v, W: 24 * mm}, Diameter: 5 * mm, Depth: 12 * mm},
		}).Draw(t, "cut"))
	}
	return b
}

func TestSignatureIsOfThePieceAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBoard(t)
		c := turned(b)
		c.ID, c.Name, c.Role, c.Frame = "d9", "other", Divider, Frame{X: mm, Dir: 17}
		for i := range c.Features {
			c.Features[i].Cause, c.Features[i].After = Cause{What: "someone else"}, AfterGlue
		}
		c.Features = append(c.Features[2:], c.Features[:2]...)
		require.True(t, Same(&b, &c), "turned end for end")
		require.False(t, Twins(&b, &c))
		for _, ends := range []bool{true, false} {
			m := reflected(b, ends)
			require.Equal(t, b.Signature(true), m.Signature(false))
			require.Equal(t, b.Signature(false), m.Signature(true))
			require.Equal(t, b.Signature(true) != b.Signature(false), Twins(&b, &m))
		}
	})
}

func TestEveryMeasureCounts(t *testing.T) {
	b := mitred(300*mm, 200*mm, 24*mm, 24*mm, groove(150*mm, 160*mm, 60*mm, 8*mm, 6*mm), bore(60*mm, 12*mm, 10*mm, 100*mm))
	was := b.Signature(false)
	for name, change := range map[string]func(*Board){
		"wood":      func(b *Board) { b.Wood = "cherry" },
		"length":    func(b *Board) { b.Length++; b.Length += unit.Micrometre },
		"width":     func(b *Board) { b.Width += unit.Micrometre },
		"thickness": func(b *Board) { b.Thickness += unit.Micrometre },
		"end":       func(b *Board) { b.Features[0].AtB += mm },
		"face":      func(b *Board) { b.Features[2].Enter, b.Features[2].Mouth.W = FaceB, 24*mm },
		"place":     func(b *Board) { b.Features[2].Mouth.V += unit.Micrometre },
		"depth":     func(b *Board) { b.Features[3].Depth += unit.Micrometre },
		"diameter":  func(b *Board) { b.Features[3].Diameter += unit.Micrometre },
		"tilt":      func(b *Board) { b.Features[3].Tilt++ },
		"through":   func(b *Board) { b.Features[2].Through = true },
		"kind":      func(b *Board) { b.Features[2].Kind = Slot },
		"one more":  func(b *Board) { b.Features = append(b.Features, b.Features[3]) },
		"one less":  func(b *Board) { b.Features = b.Features[:3] },
	} {
		c := b
		c.Features = append([]Feature(nil), b.Features...)
		change(&c)
		require.NotEqual(t, was, c.Signature(false), name)
	}
}

// A nanometre of trigonometry is no other board, in millimetres and in inches.
func TestRoundingIsNoOtherBoard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]unit.Length{unit.Inch / 64, unit.Millimetre / 2}).Draw(t, "step")
		l := step * unit.Length(rapid.Int64Range(-1000, 100_000).Draw(t, "n"))
		off := unit.Length(rapid.Int64Range(-30, 30).Draw(t, "off"))
		require.Equal(t, counted(l), counted(l+off))
		require.Equal(t, counted(l/2), counted(l/2+off))
		require.NotEqual(t, counted(l), counted(l+unit.Micrometre))
	})
}

func TestAPocketIsNotItsTwin(t *testing.T) {
	left := mitred(300*mm, 200*mm, 24*mm, 24*mm, bore(60*mm, 12*mm, 12*mm, 125*mm))
	right := mitred(300*mm, 200*mm, 24*mm, 24*mm, bore(240*mm, 12*mm, 12*mm, 125*mm))
	require.True(t, Twins(&left, &right))
	both := mitred(300*mm, 200*mm, 24*mm, 24*mm, bore(60*mm, 12*mm, 12*mm, 125*mm), bore(240*mm, 12*mm, 12*mm, 125*mm))
	require.False(t, Twins(&both, &both), "its own reflection")
}

func BenchmarkSignature(b *testing.B) {
	shelf := mitred(600*mm, 200*mm, 24*mm, 24*mm, pocket(60*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(60*mm, 12*mm, 12*mm, 125*mm),
		pocket(500*mm, 12*mm, 60*mm, 16*mm, 6*mm), bore(500*mm, 12*mm, 12*mm, 125*mm), groove(300*mm, 160*mm, 400*mm, 12*mm, 8*mm))
	b.ReportAllocs()
	for b.Loop() {
		shelf.Signature(false)
	}
}
