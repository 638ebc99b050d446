package view

import (
	"ledgewright/engine/drawing"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/wall"
)

// EyeDepth is D for the tests.
const EyeDepth = eyeDepth

// A Face is a face of the plan as it is painted: the side A–B from T0 to T1, or the
// front Ring at T0.
type Face struct {
	A, B   drawing.Point
	Ring   []drawing.Point
	T0, T1 float64
}

// Painted returns the faces of a wall in the order they are painted, and all faces that
// there are, seen or not.
func Painted(w plan.Wall, r wall.Result, modules []module.Result) (eye drawing.Point, painted, all []Face) {
	p := newPainter(&w, Options{Shallow: true})
	scenes := p.place(r, modules)
	for _, group := range p.farToNear(scenes) {
		for _, f := range p.behind(scenes, group) {
			painted = append(painted, Face{A: f.a, B: f.b, Ring: f.tri, T0: f.t0, T1: f.t1})
		}
		for _, k := range group {
			for i := range scenes[k].solids {
				if v := &scenes[k].solids[i]; v.t0 <= near {
					painted = append(painted, Face{Ring: v.ring, T0: 0})
				}
			}
		}
	}
	for k := range scenes {
		for i := range scenes[k].solids {
			v := &scenes[k].solids[i]
			all = append(all, Face{Ring: v.ring, T0: v.t0})
			for n := range v.ring {
				a, b := side(v.ring, n)
				all = append(all, Face{A: a, B: b, T0: v.t0, T1: v.t1})
			}
		}
	}
	return p.eye, painted, all
}

// Clusters returns how many groups of modules are ordered as wholes.
func Clusters(w plan.Wall, r wall.Result, modules []module.Result) int {
	p := newPainter(&w, Options{Shallow: true})
	return len(p.farToNear(p.place(r, modules)))
}

// Apart is for the tests.
func Apart(at []float64, gap float64) []float64 { return apart(at, gap) }
