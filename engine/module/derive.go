package module

import (
	"cmp"
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/joint"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
)

// A work is one module being worked out.
type work struct {
	m       plan.Module
	s       shop.Profile
	links   []link
	lengths []unit.Length
	boards  []board.Board // chain, then dividers
	extra   []board.Board // rails and cleats
	crossed []crossing    // where dividers end
	out     Result
}

// Derive works a module out. It never fails: what cannot be made is a finding, and a
// module too broken to have boards has none.
func Derive(m plan.Module, s shop.Profile) Result {
	w := work{m: m, s: s, out: Result{ID: m.ID, Name: m.Name, Depth: m.Depth, Hung: m.Hung}}
	if !sound(m) {
		w.say(finding.Finding{Kind: notSound, Remedies: []finding.Remedy{{Key: "see-the-check"}}})
		return w.out
	}
	w.shapeCorners()
	if w.measure() && w.checkLengths() {
		w.build()
	}
	w.out.Findings = finding.WorstFirst(w.out.Findings)
	return w.out
}

// build makes the boards and all that is cut into them, in the order in which each
// needs to know of the others: the shape, then brackets, then lights, whose leads pass
// the bores, and last what reinforces the corners, which can stand where there is room.
func (w *work) build() {
	w.layChain()
	w.checkClosed()
	w.divide()
	w.fitBrackets()
	w.fitLights()
	w.joinCorners()
	w.treatEdges()
	w.out.Boards = append(w.boards, w.extra...)
	w.shine()
	for i := range w.out.Boards {
		order(w.out.Boards[i].Features)
	}
	w.checkOverlap()
	w.checkClashes()
	w.outline()
	w.weigh()
}

// joinCorners sets out the reinforcement of every corner.
func (w *work) joinCorners() {
	n := len(w.m.Boards)
	for i, c := range w.m.Corners {
		first, second := &w.boards[i], &w.boards[(i+1)%n]
		r := c.Reinforcement
		got := joint.Join(joint.Input{
			Corner:        w.corner(i),
			Reinforcement: joint.Reinforcement{Kind: r.Kind, Thickness: r.Thickness, Width: r.Width, Count: r.Count},
			Boards:        [2]board.Board{*first, *second},
			Shop:          w.s,
		})
		first.Features = append(first.Features, got.Features[0]...)
		second.Features = append(second.Features, got.Features[1]...)
		w.sayAll(got.Findings)
		w.out.Corners = append(w.out.Corners, w.placed(got.Corner, i))
	}
	w.crossings()
}

// placed fills in where corner i lies in the module's plane.
func (w *work) placed(c board.Corner, i int) board.Corner {
	b := &w.boards[i]
	_, foot := w.links[i].foot(b.Length, b.Thickness)
	x, y := b.Frame.Plane(foot.U, foot.W)
	out := w.corner(i).Shape().Outer
	ox, oy := b.Frame.Plane(foot.U+out, b.Thickness-foot.W)
	c.At, c.Outer = [2]unit.Length{x, y}, [2]unit.Length{ox, oy}
	return c
}

// order sorts features: end cuts first, then by cause.
func order(features []board.Feature) {
	step := func(f *board.Feature) int {
		if f.Kind == board.EndCut {
			return 0
		}
		return 1 + slices.Index([]string{"corner", "divider", "light", "bracket", "edge"}, f.Cause.What)
	}
	rank.By(features, func(a, b board.Feature) int { return cmp.Compare(step(&a), step(&b)) })
}

// checkClashes asks every board whether its cuts leave enough wood. Of the wood about
// the cuts of brackets and lights their own rooms have spoken already.
func (w *work) checkClashes() {
	for i := range w.out.Boards {
		b := &w.out.Boards[i]
		for _, f := range board.Clash(*b, w.s.Covers) {
			if at := f.Place.Feature; at > 0 && board.SpokenFor(f.Kind, b.Features[at-1]) {
				continue
			}
			if b.Role == board.Divider {
				f.Place.Divider = b.ID
			}
			w.say(f)
		}
	}
}

// outline fills in outlines, box and pivot.
func (w *work) outline() {
	box := &w.out.Box
	for i := range w.out.Boards {
		o := Outline{Board: w.out.Boards[i].ID}
		for _, p := range w.out.Boards[i].Outline() {
			xy := XY{p[0], p[1]}
			if len(w.out.Outlines) == 0 && len(o.Points) == 0 {
				*box = Box{xy.X, xy.Y, xy.X, xy.Y}
			}
			box.MinX, box.MinY = min(box.MinX, xy.X), min(box.MinY, xy.Y)
			box.MaxX, box.MaxY = max(box.MaxX, xy.X), max(box.MaxY, xy.Y)
			o.Points = append(o.Points, xy)
		}
		w.out.Outlines = append(w.out.Outlines, o)
	}
	w.out.Pivot = XY{(box.MinX + box.MaxX) >> 1, (box.MinY + box.MaxY) >> 1}
}

// weigh fills in volume and mass: the mass halfway between the driest and the dampest
// that the shop's profile expects of the house.
func (w *work) weigh() {
	moisture := (w.s.Moisture.UseLow + w.s.Moisture.UseHigh) / 2
	id, density, known := "", unit.Density(0), true
	var unknown []string
	for i := range w.out.Boards {
		b := &w.out.Boards[i]
		if i == 0 || b.Wood != id { // nearly always one wood
			var s wood.Species
			s, known = wood.Find(b.Wood)
			id, density = b.Wood, s.DensityAt(moisture)
		}
		if !known && !slices.Contains(unknown, id) {
			unknown = append(unknown, id)
		}
		v := b.Volume()
		w.out.Volume += v
		w.out.Mass += unit.Mass(float64(v) * float64(density))
	}
	for _, id := range unknown {
		w.out.Mass = 0
		w.say(finding.Finding{
			Kind: densityUnknown, Value: words.Value{Is: words.IsName, Text: id},
			Remedies: []finding.Remedy{{Key: "choose-wood"}},
		})
	}
}
