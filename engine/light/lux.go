package light

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
)

// What a strip gives as light.
//
// A strip behind its cover is taken as a narrow band that emits after Lambert's law, Φ′
// lumens a metre, in the mouth of its groove. With n the way it looks, and r from a point
// of it to a place whose surface looks along m, a short piece ds gives there
//
//	dE = Φ′ ds/π · (n·r̂)(−m·r̂)/r²
//
// and the strip what its pieces give together; those that a board hides are left out. Light that boards and walls throw back is not here, so a room with
// light surfaces is brighter than these figures.
//
// The sum is checked against the closed formula: opposite one end of a strip, h from it,
// on a surface parallel to it, E = Φ′ cos θ cos φ/(π h) · ½(β + sin β cos β), with β the angle
// that the strip fills as seen from the place (the parallel-plane aspect factor of a
// uniform diffuser: Offshore Electrical Engineering Manual, Lighting calculations,
// eq. 2.14.4 and 2.14.5; likewise the Illuminating Engineering Society's Lighting
// Handbook, 1947, page 8-41: F = π²/2·I for the flux a unit of length of a round source).
// On a surface square to the strip ½ sin² β stands for the bracket.

// A Spot is a place or a direction in a module's frame, in millimetres: x and y span its
// plane, z points out of the wall.
type Spot [3]float64

func (a Spot) dot(b Spot) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

func (a Spot) plus(b Spot, k float64) Spot {
	return Spot{a[0] + float64(k*b[0]), a[1] + float64(k*b[1]), a[2] + float64(k*b[2])}
}

func (a Spot) size() float64 { return math.Sqrt(a.dot(a)) }

// A Line is a straight piece of a strip as the eye sees it, in the mouth of its groove.
type Line struct {
	From, To Spot
	Out      Spot    // the way the light leaves, a unit vector
	Lumens   float64 // for each metre
}

// A Scene is what shines and what stands in the way.
type Scene struct {
	Lines  []Line
	blocks []block
}

// A block is a board as far as light is concerned: straight between its ends.
type block struct {
	corners [4][2]float64 // counter-clockwise in the module's plane
	z0, z1  float64
}

// NewScene returns the boards of a module as they stand in the way of light, and its
// strips lit. share dims them: 1 is full.
func NewScene(boards []board.Board, strips []board.Strip, share float64) Scene {
	var s Scene
	for i := range boards {
		s.blocks = append(s.blocks, blockOf(&boards[i]))
	}
	for i := range strips {
		s.Lines = append(s.Lines, LinesOf(boards, &strips[i], share)...)
	}
	return s
}

func blockOf(b *board.Board) block {
	k := block{z0: b.Frame.Z.MM(), z1: (b.Frame.Z + b.Width).MM()}
	for i, q := range b.Corners(board.Back) { // A from start to end, back along B: clockwise
		x, y := b.Frame.Plane(q.U, q.W)
		k.corners[3-i] = [2]float64{x.MM(), y.MM()}
	}
	return k
}

// LinesOf returns a strip as straight pieces, one a board.
func LinesOf(boards []board.Board, s *board.Strip, share float64) (out []Line) {
	for i := range s.Runs {
		r := &s.Runs[i]
		for k := range boards {
			if b := &boards[k]; b.ID == r.Board {
				out = append(out, Line{From: mouth(b, r.Face, r.From), To: mouth(b, r.Face, r.To), Out: outward(b, r.Face), Lumens: s.Lumens * share})
			}
		}
	}
	return out
}

// mouth lifts a point of the groove's floor to the surface.
func mouth(b *board.Board, face board.Face, p board.Point) Spot {
	switch face {
	case board.FaceA:
		p.W = 0
	case board.FaceB:
		p.W = b.Thickness
	case board.Back:
		p.V = 0
	}
	x, y, z := b.Point(p)
	return Spot{x.MM(), y.MM(), z.MM()}
}

// outward is the normal of a side of a board.
func outward(b *board.Board, face board.Face) Spot {
	sin, cos := b.Frame.Dir.SinCos()
	switch face {
	case board.FaceA:
		return Spot{-sin, cos, 0}
	case board.FaceB:
		return Spot{sin, -cos, 0}
	}
	return Spot{0, 0, -1}
}

// Lux returns what all lines give at a place on a surface that looks along a unit vector.
func (s *Scene) Lux(at, looks Spot) (lux float64) {
	for i := range s.Lines {
		lux += s.from(&s.Lines[i], at, looks)
	}
	return lux
}

// The pieces of a line are a quarter of the distance long, and each is taken at the two
// places of Gauss's rule: the sum is then within 0.1 % of the integral over the line.
const (
	finest    = 0.25
	fewest    = 8
	mostParts = 1000
	gauss2    = 0.5 / 1.7320508075688772 // of a piece, from its middle
)

// from returns what one line gives.
func (s *Scene) from(l *Line, at, looks Spot) (lux float64) {
	run := l.To.plus(l.From, -1)
	long := run.size()
	if long == 0 {
		return 0
	}
	n := min(max(int(math.Ceil(long/(finest*max(l.distance(at, run, long), 1)))), fewest), mostParts)
	each := l.Lumens / 1000 * long / float64(2*n) / math.Pi // of half a piece, along its normal, cd
	for i := range 2 * n {
		p := l.From.plus(run, (float64(i/2)+0.5+float64(2*(i%2)-1)*gauss2)/float64(n))
		r := at.plus(p, -1)
		far := r.dot(r)
		leaves, meets := l.Out.dot(r), -looks.dot(r)
		if leaves <= 0 || meets <= 0 || s.hidden(p, at) {
			continue
		}
		lux += each * leaves * meets / (far * far) * 1e6
	}
	return lux
}

// distance returns how far a place is from a line.
func (l *Line) distance(at, run Spot, long float64) float64 {
	k := at.plus(l.From, -1).dot(run) / (long * long)
	return at.plus(l.From.plus(run, min(max(k, 0), 1)), -1).size()
}

// hidden reports whether a board stands between two places: whether the way between them
// goes through wood for more than a hundredth of a millimetre.
func (s *Scene) hidden(from, to Spot) bool {
	way := to.plus(from, -1)
	least := 0.01 / max(way.size(), 0.01)
	for i := range s.blocks {
		if lo, hi := s.blocks[i].through(from, way); hi-lo > least {
			return true
		}
	}
	return false
}

// through returns the shares of a way between which it is inside a block.
func (b *block) through(from, way Spot) (lo, hi float64) {
	lo, hi = 0, 1
	cut := func(out, room float64) { // keeps t with out·t <= room
		switch {
		case out > 0:
			hi = min(hi, room/out)
		case out < 0:
			lo = max(lo, room/out)
		case room < 0:
			hi = -1
		}
	}
	cut(way[2], b.z1-from[2])
	cut(-way[2], from[2]-b.z0)
	for i, p := range b.corners {
		q := b.corners[(i+1)%4]
		nx, ny := q[1]-p[1], p[0]-q[0] // outwards
		cut(float64(nx*way[0])+float64(ny*way[1]), float64(nx*(p[0]-from[0]))+float64(ny*(p[1]-from[1])))
	}
	return lo, hi
}

// closed returns what a line gives at a place that it is in full view of, by the closed
// formula above, on a surface parallel to the line or not.
func (l *Line) closed(at, looks Spot) float64 {
	run := l.To.plus(l.From, -1)
	long := run.size()
	e := Spot{}.plus(run, 1/long)
	r := at.plus(l.From, -1)
	along := r.dot(e)
	foot := r.plus(e, -along)
	h := foot.size()
	if h == 0 {
		return 0
	}
	// from the foot of the place to both ends, as angles; parallel and square parts
	a, b := math.Atan2(-along, h), math.Atan2(long-along, h)
	factor := func(x float64) float64 { s, c := math.Sincos(x); return (x + float64(s*c)) / 2 }
	sin2 := func(x float64) float64 { s := math.Sin(x); return s * s / 2 }
	theta, phi := l.Out.dot(foot)/h, -looks.dot(foot)/h
	return l.Lumens * 1000 / (math.Pi * h) * theta * (float64(phi*(factor(b)-factor(a))) + float64(looks.dot(e)*(sin2(b)-sin2(a))))
}

// Lumens returns what a strip gives through its cover, for each metre.
func Lumens(k hardware.Strip) float64 { return k.Watts * hardware.StripEfficacy * hardware.CoverPasses }

// Dots reports whether single chips show: where they stand farther apart than they lie
// behind the cover. Common practice; a cover that scatters little wants more.
func Dots(k hardware.Strip, behind float64) bool {
	return 1000/float64(max(k.Chips, 1)) > behind
}
