package light

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// WallReach returns how far from the strip its light on the wall has fallen to so many lux;
// 0 where it is never more.
func WallReach(lumens, long, standOff float64, back bool, lux float64) float64 {
	if standOff <= 0 || long <= 0 {
		return 0
	}
	wall := onWall(lumens, long, standOff, back)
	at, peak := brightest(wall, standOff)
	if peak <= lux {
		return 0
	}
	return falls(wall, at, lux)
}

// onWall returns the light on the wall at a distance from the strip, opposite its middle.
func onWall(lumens, long, standOff float64, back bool) func(float64) float64 {
	l := Line{From: Spot{-long / 2, 0, standOff}, To: Spot{long / 2, 0, standOff}, Out: Spot{0, -1, 0}, Lumens: lumens}
	if back {
		l.Out = Spot{0, 0, -1}
	}
	return func(y float64) float64 { return l.closed(Spot{0, -y, 0}, Spot{0, 0, 1}) }
}

// brightest returns where the wall is: within twice the stand-off.
func brightest(wall func(float64) float64, standOff float64) (at, peak float64) {
	for i := range 400 {
		y := 2 * standOff * float64(i) / 399
		if e := wall(y); e > peak {
			at, peak = y, e
		}
	}
	return at, peak
}

// falls returns where a light that only falls from a place on comes down to a value.
func falls(light func(float64) float64, from, to float64) float64 {
	lo, hi := from, 2*from+1
	for light(hi) > to {
		lo, hi = hi, 2*hi
	}
	for range 50 {
		if m := (lo + hi) / 2; light(m) > to {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

// openBelow is where a book is looked for under a strip that has no board below it: the
// height of a shelf for books. Our assumption.
const openBelow = 300.0

// below is how far from straight down a strip may shine to light a shelf under it.
const below = 0.94 // cosine, 20°; our assumption

// Book returns what a strip gives on a book that lies under its middle on the next board
// below, or 300 mm below where there is none; direct light only, with every other
// strip dark. hung is the turn at which the module hangs. It is the zero value for a strip
// that does not shine down.
func Book(boards []board.Board, s *board.Strip, hung unit.Angle) board.Lit {
	sin, cos := hung.SinCos()
	up := Spot{sin, cos, 0}
	scene := NewScene(boards, []board.Strip{*s}, 1)
	best := -1
	for i := range scene.Lines {
		if l := &scene.Lines[i]; l.Out.dot(up) < -below && (best < 0 || l.size() > scene.Lines[best].size()) {
			best = i
		}
	}
	if best < 0 {
		return board.Lit{}
	}
	l := &scene.Lines[best]
	from := l.From.plus(l.To, 1)
	from = Spot{}.plus(from, 0.5)
	far, on := openBelow, ""
	for i := range scene.blocks {
		if d, ok := scene.blocks[i].under(from, up); ok && (d < far || on == "") {
			far, on = d, boards[i].ID
		}
	}
	at := from.plus(up, -far)
	return board.Lit{Board: on, Below: unit.Nearest(math.Round(far)), Lux: math.Round(scene.Lux(at, up))}
}

func (l *Line) size() float64 { return l.To.plus(l.From, -1).size() }

// under returns how far straight below a place a block begins.
func (b *block) under(from, up Spot) (float64, bool) {
	const look = 1e4
	way := Spot{}.plus(up, -look)
	lo, hi := b.through(from, way)
	return lo * look, hi-lo > 1e-6 && lo*look > 1
}

// Says returns the words that say what a strip gives on a book, and whether there are any.
func Says(s *board.Strip) (key string, args []words.Arg, ok bool) {
	if s.Book.Below == 0 {
		return "", nil, false
	}
	args = []words.Arg{words.Name("light", s.Light), words.Count("lux", int(s.Book.Lux)), words.Length("below", s.Book.Below)}
	if s.Book.Board == "" {
		return "light.book.open", args, true
	}
	return "light.book", append(args, words.Name("board", s.Book.Board)), true
}
