package wall

import (
	"slices"
	"strconv"

	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// plumbPlaces is at how many places a wall is asked to be held plumb; common practice.
const plumbPlaces = 3

// Bows of a wall under a straightedge. Up to leaveBow they are left, up to scribeBow the
// back is scribed or hollowed, beyond it stands on spacers; common practice.
const (
	leaveBow  = 1 * unit.Millimetre
	scribeBow = 3 * unit.Millimetre
)

// asbestosYear is the first year from which no asbestos is expected in a building of the
// UK, where it was banned in November 1999. Lead paint ends earlier: 1978 in homes of the
// US (EPA).
const asbestosYear = 2000

// survey says what is not known of the wall. These findings are about the wall, not the
// arrangement, so that [Share] says them once a wall.
func (j *job) survey() {
	if len(j.bodies) == 0 {
		return
	}
	at := finding.Place{Wall: j.w.ID}
	if missing := missingFacts(j.w, j.studs); len(missing) > 0 {
		j.add(finding.Finding{
			Kind: notSurveyed, Place: at, Args: listed(missing),
			Remedies: []finding.Remedy{{Key: "survey-wall"}},
		})
	}
	if _, ok := cableRule(j.w); !ok {
		j.add(finding.Finding{Kind: cables, Place: at, Remedies: []finding.Remedy{{
			Key: "choose-cable-rule", Edit: finding.Edit{Do: "set-wall", Args: []words.Arg{words.Name("wall", j.w.ID), words.Name("cableRule", "uk")}},
		}, {Key: "detect-cables"}}})
	}
	if j.w.Build == plan.BuildDabs {
		j.add(finding.Finding{Kind: onDabs, Place: at, Remedies: []finding.Remedy{{Key: "fix-through-dabs"}}})
	}
	if y := j.w.BuiltYear; y.Known && y.Value < asbestosYear {
		j.add(finding.Finding{Kind: oldWall, Place: at, Args: []words.Arg{words.Name("year", strconv.Itoa(y.Value))},
			Value: words.Value{}, Remedies: []finding.Remedy{{Key: "test-old-wall"}}})
	}
	for i := range j.w.Flat {
		j.bow(&j.w.Flat[i])
	}
}

// missingFacts returns the keys of the words for what is not known of a wall with these
// studs.
func missingFacts(w *plan.Wall, found []Stud) (keys []string) {
	miss := func(is bool, key string) {
		if is {
			keys = append(keys, "missing."+key)
		}
	}
	studs := w.Build == plan.BuildStuds || w.Build == plan.BuildLath
	miss(w.Build == "", "build")
	miss(w.Lining.Kind == "" || w.Lining.Kind != "none" && !w.Lining.Thickness.Known, "lining")
	miss(studs && len(found) == 0, "studs")
	miss(slices.ContainsFunc(found, func(s Stud) bool { return s.Half == 0 }), "stud-width")
	miss(studs && w.Studs.Material == "", "stud-material")
	miss(!w.FloorRise.Known, "floor")
	miss(!w.CeilingRise.Known, "ceiling")
	miss(len(w.Plumb) < plumbPlaces, "plumb")
	miss(w.FarSide == "", "far-side")
	miss(!w.BuiltYear.Known, "year")
	return keys
}

// listed returns keys as the arguments of a list of so many: {missing} with m1, m2 …
func listed(keys []string) []words.Arg {
	args := []words.Arg{words.Word("missing", "missing.list-"+strconv.Itoa(len(keys)))}
	for i, k := range keys {
		args = append(args, words.Word("m"+strconv.Itoa(i+1), k))
	}
	return args
}

// bow says that a wall is bowed where a module hangs.
func (j *job) bow(f *plan.Flat) {
	if f.Gap.Abs() <= leaveBow {
		return
	}
	box := module.Box{MinX: f.X, MinY: f.Y, MaxX: f.X + f.Over, MaxY: f.Y}
	if f.Upright {
		box.MaxX, box.MaxY = f.X, f.Y+f.Over
	}
	for i := range j.bodies {
		b := &j.bodies[i]
		if len(b.boxes) == 0 || boxApart(b.p.Box, box) > 0 {
			continue
		}
		key := "scribe-back"
		if f.Gap.Abs() > scribeBow {
			key = "spacers"
		}
		j.add(finding.Finding{
			Kind: wallBowed, Place: j.at(b), Value: words.LengthOf(f.Gap.Abs()), Limit: words.LengthOf(leaveBow),
			Args:     []words.Arg{words.Name("module", b.label()), words.Length("over", f.Over)},
			Remedies: []finding.Remedy{{Key: key}},
		})
	}
}
