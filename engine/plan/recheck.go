package plan

import (
	"reflect"

	"ledgewright/engine/finding"
)

// Recheck is [Check] of a plan that came from another one of which found is known, and
// costs little where nothing was found and modules have only been moved, as at every step
// of a drag. An edit shares what it does not touch, which is how that is told without
// reading the plan.
func Recheck(p, was Plan, found []finding.Finding) []finding.Finding {
	if len(found) > 0 || !sameButPoses(&p, &was) {
		return Check(p)
	}
	c := &checker{p: p}
	for i := range p.Arrangements {
		for j := range p.Arrangements[i].Poses {
			o, old := &p.Arrangements[i].Poses[j], &was.Arrangements[i].Poses[j]
			if o.X != old.X || o.Y != old.Y || o.Turn != old.Turn {
				c.figures(inArrangement(i).of("poses", j), o)
			}
		}
	}
	return c.found
}

// sameButPoses reports whether two plans differ at most in where their modules are.
func sameButPoses(p, was *Plan) bool {
	if !Shared(p.Walls, was.Walls) || !Shared(p.Modules, was.Modules) || len(p.Arrangements) != len(was.Arrangements) {
		return false
	}
	for i := range p.Arrangements {
		if !sameModules(&p.Arrangements[i], &was.Arrangements[i]) {
			return false
		}
	}
	return reflect.DeepEqual(p.Counters, was.Counters) && reflect.DeepEqual(p.Job, was.Job) &&
		reflect.DeepEqual(p.Units, was.Units) && reflect.DeepEqual(p.Shop, was.Shop)
}

// sameModules reports whether two arrangements have the same modules in the same order,
// and differ at most in where these are.
func sameModules(a, was *Arrangement) bool {
	if a.ID != was.ID || a.Name != was.Name || a.Wall != was.Wall || a.Corner != was.Corner ||
		a.Datum.Level != was.Datum.Level || a.Datum.Plumb != was.Datum.Plumb ||
		!Shared(a.Lines, was.Lines) || len(a.Poses) != len(was.Poses) {
		return false
	}
	for j := range a.Poses {
		if a.Poses[j].Module != was.Poses[j].Module {
			return false
		}
	}
	return true
}
