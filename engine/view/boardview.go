package view

import (
	"cmp"
	"math"
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/rank"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
)

// The views of a board's drawing, in third-angle projection, u to the right in all:
//
//	back edge   w up,   seen along +v, over face A
//	face A      v down, seen along +w
//	front edge  w down, seen along −v, only where a cut enters it
//	face B      v up,   seen along −w, only where a cut enters it
//
// and below them each end that is cut or slotted: its section, w up, and the surface of
// the end itself. Running figures start at the left end (the least u of finished wood),
// at the back edge, at face A, and along an end's surface at its heel: edges that exist
// when the cut is made. What a tool is set to (diameter, depth, tilt) stands once, in the
// list of cuts; letters tie it to the views.

// sheetWidth is what a drawing may take unless the options say otherwise: A4 lying down
// less a margin of 10 at both sides.
const sheetWidth = 277.0

// Room kept for dimensions on the four sides of a view, paper mm.
const (
	roomLeft  = 46.0
	roomRight = 30.0
)

// A bench is one board's drawing while it is made.
type bench struct {
	sheetOf
	b          board.Board
	k          float64 // paper mm for a mm
	start, end board.Cut
	cuts       []cut // in the order of the list
	y          float64
}

// A cut is one kind of cut: features that are made with the same setting.
type cut struct {
	letter string
	is     []board.Feature
}

// Board returns the dimensioned drawing of a board, at its stated scale.
func Board(b board.Board, o Options) drawing.Drawing {
	k := bench{sheetOf: sheetOf{o: o}, b: b}
	k.start, k.end = b.Ends()
	k.k = k.chooseScale()
	k.cuts = cutsOf(b)
	k.title()
	k.backView()
	k.view(func() { k.faceView(board.FaceA) })
	if k.enters(board.Front) {
		k.view(k.frontView)
	}
	if k.enters(board.FaceB) {
		k.view(func() { k.faceView(board.FaceB) })
	}
	k.view(k.ends)
	k.list()
	return drawing.Drawing{Title: k.name(), Lang: lang, Paper: true, Box: k.box(), Items: k.items}
}

// view draws a view below the others, clear of their figures.
func (k *bench) view(draw func()) {
	items, texts := len(k.items), len(k.wrote)
	draw()
	k.y -= k.clear(items, texts)
}

// name is what the board is called: as the options say, or its id, and its name where it has one.
func (k *bench) name() string {
	switch {
	case len(k.o.Names) > 0:
		return k.o.Names[0]
	case k.b.Name == "":
		return k.b.ID
	}
	return k.b.ID + " " + k.b.Name
}

// chooseScale returns the scale of the options, or the largest usual one at which the
// board fits the sheet.
func (k *bench) chooseScale() float64 {
	if k.o.Scale > 0 {
		return k.o.Scale
	}
	sheet := k.o.Sheet
	if !(sheet > 0) {
		sheet = sheetWidth
	}
	for _, n := range [...]float64{1, 2, 2.5, 4, 5, 8, 10, 15, 20, 25, 50, 100} {
		if k.b.Length.MM()/n <= sheet-roomLeft-roomRight && k.b.Width.MM()/n <= 120 {
			return 1 / n
		}
	}
	return min((sheet-roomLeft-roomRight)/max(k.b.Length.MM(), 1), 0.01)
}

// say prints words of the catalogue.
func (k *sheetOf) say(key string, args ...words.Arg) string { return words.Text(key, args, k.o.Style) }

// figureOf prints a length as a figure on the drawing, without a unit.
func (k *sheetOf) figureOf(l unit.Length) string { return k.o.Style.Length(l) }

func (k *bench) title() {
	b := k.b
	name := b.Wood
	if s, ok := wood.Find(b.Wood); ok {
		name = s.Name
	}
	size := k.say("view.board.size", words.Name("t", k.figureOf(b.Thickness)), words.Name("w", k.figureOf(b.Width)), words.Name("l", k.figureOf(b.Length)))
	k.text("title", "ink", drawing.Text{At: point{X: 0, Y: 0}, Size: titleEm, String: k.name(), Anchor: drawing.AnchorStart, Bold: true})
	k.text("subtitle", "ink-2", drawing.Text{At: point{X: 0, Y: -6}, Size: wordEm, String: name + ", " + size, Anchor: drawing.AnchorStart})
	unitWord := "view.unit.mm"
	if k.o.Style.System == unit.Inches {
		unitWord = "view.unit.in"
	}
	scale := k.say("view.scale", words.Name("scale", ratio(k.k)), words.Word("unit", unitWord))
	k.text("scale", "ink-2", drawing.Text{At: point{X: 0, Y: -11}, Size: wordEm, String: scale, Anchor: drawing.AnchorStart})
	k.y = -11
}

// ratio writes a scale as 1 : n.
func ratio(k float64) string {
	n := math.Round(10/k) / 10
	if k > 1 {
		return trim(k) + " : 1"
	}
	return "1 : " + trim(n)
}

func trim(x float64) string { return unit.Nearest(x).Decimal() }

func (k *bench) enters(side board.Face) bool {
	return slices.ContainsFunc(k.b.Features, func(f board.Feature) bool { return f.Enter == side && f.Kind != board.EndCut })
}

// cutsOf gathers the features of a board by setting, in the order of the board, with
// letters.
func cutsOf(b board.Board) (out []cut) {
	for _, f := range b.Features {
		if f.Kind == board.EndCut {
			continue
		}
		i := slices.IndexFunc(out, func(c cut) bool { return setting(c.is[0]) == setting(f) })
		if i < 0 {
			out = append(out, cut{letter: letter(len(out))})
			i = len(out) - 1
		}
		out[i].is = append(out[i].is, f)
	}
	return out
}

// setting is what a tool is set to for a cut: everything but its place.
func setting(f board.Feature) board.Feature {
	f.Cause, f.Mouth, f.AtA, f.AtB = board.Cause{}, board.Point{}, 0, 0
	return f
}

func letter(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return string(rune('a'+i/26-1)) + string(rune('a'+i%26))
}

// letterOf returns the letter of a feature.
func (k *bench) letterOf(f board.Feature) string {
	for _, c := range k.cuts {
		if setting(c.is[0]) == setting(f) {
			return c.letter
		}
	}
	return ""
}

// An extent is what a cut takes, as a box of the board's frame in millimetres, and its
// outline in the u–w plane.
type extent struct {
	u, v, w [2]float64
	quad    [4]point // u, w
	round   bool
}

// extentOf returns the extent of a cut before it is clipped by the wood.
func (k *bench) extentOf(f board.Feature) (e extent, ok bool) {
	if f.Kind == board.EndCut || f.Kind == board.Chamfer || f.Kind == board.RoundOver || f.Depth <= 0 {
		return e, false
	}
	along, across := f.Along.MM(), f.Across.MM()
	if f.Diameter > 0 {
		along, across, e.round = f.Diameter.MM(), f.Diameter.MM(), true
	}
	at, v := point{X: f.Mouth.U.MM(), Y: f.Mouth.W.MM()}, f.Mouth.V.MM()
	depth := f.Depth.MM()
	if f.Enter == board.Back || f.Enter == board.Front {
		e.v = [2]float64{v, v + depth}
		if f.Enter == board.Front {
			e.v = [2]float64{v - depth, v}
		}
		if f.Kind == board.Groove && f.Through {
			at.X, along = k.b.Length.MM()/2, k.b.Length.MM()
		}
		e.quad = quadOf(at, point{X: 0, Y: 1}, along/2, -across/2, across/2)
		e.measure()
		return e, true
	}
	normal := map[board.Face]point{board.FaceA: {Y: 1}, board.FaceB: {Y: -1}, board.Start: {X: 1}, board.End: {X: -1}}[f.Enter]
	sin, cos := f.Tilt.SinCos()
	axis := point{X: normal.X*cos - normal.Y*sin, Y: normal.X*sin + normal.Y*cos}
	width, run := along, across
	if f.Enter == board.Start || f.Enter == board.End {
		width, run = across, along
	}
	if f.Kind == board.Groove && f.Through {
		at.X, width = k.b.Length.MM()/2, k.b.Length.MM()
	}
	e.v = [2]float64{v - run/2, v + run/2}
	e.quad = quadOf(at, axis, width/2, 0, depth)
	e.measure()
	return e, true
}

// quadOf is a rectangle about an axis: half wide on both sides, from so far to so far
// along it.
func quadOf(at, axis point, half, from, to float64) [4]point {
	n := point{X: axis.Y, Y: -axis.X}
	a, b := plus(at, axis, from), plus(at, axis, to)
	return [4]point{plus(a, n, -half), plus(a, n, half), plus(b, n, half), plus(b, n, -half)}
}

func (e *extent) measure() {
	e.u = [2]float64{math.Inf(1), math.Inf(-1)}
	e.w = e.u
	for _, q := range e.quad {
		e.u = [2]float64{min(e.u[0], q.X), max(e.u[1], q.X)}
		e.w = [2]float64{min(e.w[0], q.Y), max(e.w[1], q.Y)}
	}
}

// box is the extent of all that was drawn, with a margin.
func (k *sheetOf) box() drawing.Box {
	b := drawing.Box{}
	for i := range k.items {
		var c drawing.Box
		if k.items[i].Kind == drawing.TextKind {
			c = k.items[i].Text.Extent()
		} else {
			c = drawing.Bounds(k.items[i].Path)
		}
		if i == 0 {
			b = c
		}
		b = b.With(point{X: c.MinX, Y: c.MinY}).With(point{X: c.MaxX, Y: c.MaxY})
	}
	return b.Grown(8)
}

func sortedStops(s []stop) []stop {
	out := slices.Clone(s)
	rank.By(out, func(a, b stop) int { return cmp.Compare(a.at, b.at) })
	return out
}
