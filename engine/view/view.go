// Package view draws what the engine works out: a wall with its modules, a board with
// every cut dimensioned, a corner.
//
// The wall is an elevation with shallow depth. The fronts of the modules lie in the
// picture plane and are true to scale; what is t behind the plane is shrunk towards
// one point C in the middle of the wall, 1 330 mm above the floor:
//
//	p′ = C + (p − C) · D/(D + t)
//
// with D such that a back 220 mm deep comes to 0.925. It is the perspective of an eye D
// before the picture plane, of a wall whose modules all have their fronts in that
// plane; order.go says how hidden surfaces follow from it exactly. The look (shades,
// line weights, what means what) is this project's own.
package view

import (
	"slices"

	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/wood"
)

// Options say what a picture shows.
type Options struct {
	Style    unit.Style // of its figures
	Selected string     // id of the module that is chosen
	Shallow  bool       // backs recede; else a flat elevation
	Evening  bool       // lights are on

	ShowStuds bool
	ShowBands bool // where cables are expected
	ShowSizes bool // dimensions: of the chosen module, or of all where none is chosen
	ShowMarks bool // bracket points
	Numbers   bool // wall points by their numbers, for hanging; dimensions are then theirs, from the level and the plumb line

	Lines   []plan.Line // chalk lines at a height
	Wrapped []string    // modules whose figure runs round the corners
	Point   string      // number of the wall point that is looked at
	Tight   bool        // there is little room round the wall: dimensions stand nearer to it, words are short
	Beyond  float64     // mm that the room goes on outside the picture, for a picture that is moved about
	Pixel   float64     // mm of the wall for one pixel of the screen, for sizes that do not grow with the wall; 0: a thousandth of the picture's width, at most 4.2

	Scale float64  // of a board's drawing, such as 0.2 for 1 : 5; 0: the largest usual one that fits
	Names []string // what a drawing calls the board, or the two of a corner; empty: their ids and names
	Sheet float64  // width that a board's drawing may take, paper mm; 0: 277, A4 lying down less 10 mm at each side
}

// eyeHeight and eyeDepth place the eye: the point that backs recede to, above the
// floor (lower on a wall that ends lower), and D for a back 220 mm deep at 0.925: 220 · 0.925/(1 − 0.925).
const (
	eyeHeight = 1330.0
	eyeDepth  = 220 * 0.925 / (1 - 0.925)
)

// largestPixel keeps marks and figures smaller than boards where a long wall's picture
// is not told how large it will be seen.
const largestPixel = 4.2

// A painter collects the items of a wall's picture.
type painter struct {
	o     Options
	w     *plan.Wall
	eye   drawing.Point
	px    float64 // mm for a pixel
	box   drawing.Box
	light float64 // −1: daylight comes from the left, +1: from the right
	items []drawing.Item
	far   float64       // how far the room goes on towards the eye, as a scale from its point
	said  []drawing.Box // words that marks keep clear of
	some  bool          // only the modules in only are drawn, and the dimensions
	only  []string
	store
}

// A store is what a painter hands out or uses again.
type store struct {
	steps, outer, joint []drawing.Step
	pairs               []point
	faces, sorted       []face
	nodes               []node
	scenes              []scene
	taken               []drawing.Box
	table               table
}

// Wall returns the picture of one arrangement on its wall. Modules that the result does
// not place are left out.
func Wall(w plan.Wall, r wall.Result, modules []module.Result, o Options) drawing.Drawing {
	p := newPainter(&w, o)
	p.room()
	if o.ShowStuds {
		p.studs()
	}
	if o.ShowBands {
		p.bands()
	}
	p.obstacles()
	p.hang(r, modules)
	return p.drawing()
}

// Held draws what is drawn again at every step while some modules are moved: these, as
// they would be on a wall where nothing else hangs, because what is in the hand lies on top
// of all that is not, and the dimensions of the whole wall. Modules that stay are asked
// only for their boxes.
//
// It keeps its storage from one step to the next; what it draws does not depend on that.
// The zero Held is ready.
type Held struct{ p painter }

// Draw draws one step. The drawing holds until the next one.
func (h *Held) Draw(w plan.Wall, r wall.Result, modules []module.Result, o Options, held []string) drawing.Drawing {
	p := &h.p
	items, kept := p.items[:0], p.store
	kept.steps, kept.pairs = kept.steps[:0], kept.pairs[:0]
	*p = *newPainter(&w, o)
	p.some, p.only, p.items, p.store = true, held, items, kept
	p.hang(r, modules)
	return p.drawing()
}

func (p *painter) drawing() drawing.Drawing {
	return drawing.Drawing{Title: p.w.Name, Lang: lang, Box: p.box, Pixel: p.px, Items: p.items}
}

// draws reports whether a module is to be drawn.
func (p *painter) draws(id string) bool { return !p.some || slices.Contains(p.only, id) }

// drawn returns the scenes of the modules that are to be drawn.
func (p *painter) drawn(all []scene) (drawn []scene) {
	if !p.some {
		return all
	}
	for i := range all {
		if p.draws(all[i].id) {
			drawn = append(drawn, all[i])
		}
	}
	return drawn
}

// hang draws the modules, and what is before the wall.
func (p *painter) hang(r wall.Result, modules []module.Result) {
	all := p.place(r, modules)
	scenes := p.drawn(all)
	p.items = p.grow(scenes)
	p.shadows(scenes)
	if p.o.Evening {
		p.washes(scenes)
	}
	if !p.some {
		p.lines()
	}
	p.modules(scenes)
	if p.o.Evening {
		p.strips(scenes)
	}
	p.chosen(scenes)
	if p.o.ShowSizes && p.o.Numbers {
		p.datum(r)
	}
	if p.o.ShowMarks || p.o.Numbers {
		p.points(r.Points)
	}
	switch {
	case p.o.ShowSizes && p.o.Numbers:
		p.running(r)
	case p.o.ShowSizes:
		p.sizes(r, all)
	}
}

func newPainter(w *plan.Wall, o Options) *painter {
	p := &painter{o: o, w: w, light: -1}
	width, height := w.Width.MM(), w.Height.MM()
	top := height + max(w.CeilingRise.Or(0).MM(), 0)
	bottom := min(w.FloorRise.Or(0).MM(), 0)
	margin := 0.1 * max(width, height) // more at the left, for the column of heights
	p.box = drawing.Box{MinX: -1.4 * margin, MinY: bottom - 0.9*margin, MaxX: width + margin, MaxY: top + 0.55*margin}
	p.eye = drawing.Point{X: width / 2, Y: min(eyeHeight, 0.6*height)}
	p.px = o.Pixel
	if !(p.px > 0) {
		p.px = min(max(p.box.Width(), 1)/1000, largestPixel)
	}
	p.far = p.reach(width, height)
	for i := range w.Obstacles {
		if ob := &w.Obstacles[i]; ob.Kind == plan.Window {
			if ob.X+ob.Width/2 > w.Width/2 {
				p.light = 1
			}
			break
		}
	}
	return p
}

// grow makes room once for what the modules will need.
func (p *painter) grow(scenes []scene) []drawing.Item {
	n := 32
	for i := range scenes {
		n += 3*len(scenes[i].solids) + 9
	}
	return slices.Grow(p.items, n)
}

// add appends an item and gives it back to be filled in further.
func (p *painter) add(it drawing.Item) *drawing.Item {
	p.items = append(p.items, it)
	return &p.items[len(p.items)-1]
}

// path appends a path item.
func (p *painter) path(layer drawing.Layer, group string, tone drawing.Tone, line drawing.Line, path []drawing.Step) *drawing.Item {
	return p.add(drawing.Item{Group: group, Layer: layer, Kind: drawing.PathKind, Tone: tone, Line: line, Path: path})
}

// stroke is a line in pixels.
func stroke(tone drawing.Tone, px float64) drawing.Line {
	return drawing.Line{Tone: tone, Width: px, Round: true}
}

// dashed is a broken line in pixels.
func dashed(tone drawing.Tone, px float64, dash ...float64) drawing.Line {
	return drawing.Line{Tone: tone, Width: px, Dash: dash}
}

// lang is the language of the catalogue of words.
const lang = "en"

// FileOptions are those of a wall's picture as a file: with its text and its grain.
func FileOptions(evening bool) drawing.SVGOptions {
	o := drawing.SVGOptions{Grain: -1, Woods: Woods()}
	if evening {
		o.Theme = drawing.Evening
	}
	return o
}

// Woods returns the looks of all woods, for a writer's table.
func Woods() []drawing.Species {
	all := wood.All()
	out := make([]drawing.Species, len(all))
	for i, s := range all {
		out[i] = drawing.Species{ID: s.ID, Look: drawing.Look(s.Look)}
	}
	return out
}
