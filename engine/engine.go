// Package engine goes the whole way from a plan to all that is live: boards with
// every cut, arrangements with their wall points, the part list, findings and
// verdicts.
//
// It is the only package that imports all the live rooms. Nothing in it can fail: a
// plan that can be read gives a Build, and what is wrong with it is a finding.
package engine

import (
	"cmp"

	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/movement"
	"ledgewright/engine/part"
	"ledgewright/engine/plan"
	"ledgewright/engine/wall"
)

// Schema names the format of a build.
const Schema = "ledgewright/build/1"

// A Build is a plan worked out. It is the document for other tools.
type Build struct {
	Schema       string            `json:"schema"`
	Job          plan.Job          `json:"job"`
	Units        plan.Units        `json:"units"`
	Modules      []module.Result   `json:"modules"`
	Arrangements []wall.Result     `json:"arrangements"`
	Parts        part.List         `json:"parts"`
	Holds        []Holding         `json:"holds"`
	Findings     []finding.Finding `json:"-"` // all of them, worst first; written as documents by Encode
	Verdicts     [3]Verdict        `json:"-"` // fits, holds, takes; likewise

	from source
}

// A source is what a build was worked out from, so that the next one can lend what
// has not changed.
type source struct {
	plan     plan.Plan
	counts   []part.Counted
	moves    [][]finding.Finding // of each module: how its wood moves
	placings []placing
	checked  []finding.Finding
	broken   map[string]bool // ids of what is not worked out
}

// A placing is one arrangement before its holes are compared with those of others.
type placing struct {
	arrangement plan.Arrangement
	result      wall.Result
}

// Derive works a plan out completely. From before, which may be nil, it takes the
// results of modules and arrangements whose content is unchanged; the answer is the
// same without.
func Derive(p plan.Plan, before *Build) Build {
	b := DeriveLive(p, before)
	b, _ = Reckon(b, len(b.Holds))
	return b
}

// DeriveLive is Derive without what may take longer than a frame: a module whose
// responses are not known yet is marked as reckoning, and [Reckon] fills it in.
func DeriveLive(p plan.Plan, before *Build) Build {
	b := Build{Schema: Schema, Job: p.Job, Units: p.Units}
	b.from = source{plan: p}
	b.from.checked = check(p, before)
	b.from.broken = broken(b.from.checked)
	lent := b.deriveModules(before)
	b.arrange(p, before, lent)
	var ok bool
	if b.Parts, ok = lendParts(before, b.from, lent); !ok {
		b.Parts = part.Merge(b.from.counts)
	}
	b.Holds = holdings(b.Modules, before, lent)
	b.conclude(p)
	return b
}

// check checks the plan, again only where it has changed if it can.
func check(p plan.Plan, before *Build) []finding.Finding {
	if before == nil || before.Schema == "" {
		return plan.Check(p)
	}
	return plan.Recheck(p, before.from.plan, before.from.checked)
}

// deriveModules fills Modules and says which results were lent by before.
func (b *Build) deriveModules(before *Build) []bool {
	n := len(b.from.plan.Modules)
	b.Modules = make([]module.Result, n)
	b.from.counts = make([]part.Counted, n)
	b.from.moves = make([][]finding.Finding, n)
	lent := make([]bool, n)
	old := lender(before, b.from.plan.Shop)
	for i, m := range b.from.plan.Modules {
		if b.from.broken[m.ID] {
			b.Modules[i] = module.Result{ID: m.ID}
			continue
		}
		if j := old.find(i, m); j >= 0 {
			b.Modules[i], b.from.counts[i], lent[i] = before.Modules[j], before.from.counts[j], true
			b.from.moves[i] = before.from.moves[j]
			continue
		}
		b.Modules[i] = module.Derive(m, b.from.plan.Shop)
		b.from.counts[i] = part.Count(b.Modules[i], b.from.plan.Shop)
		b.from.moves[i] = movement.Check(&b.Modules[i], &b.from.plan.Shop.Moisture)
	}
	return lent
}

// arrange works out every arrangement whose wall is known.
func (b *Build) arrange(p plan.Plan, before *Build, lent []bool) {
	var results []wall.Result
	for i, a := range p.Arrangements {
		w, ok := findWall(p.Walls, a.Wall)
		if !ok || b.from.broken[a.ID] || b.from.broken[a.Wall] {
			continue
		}
		r, ok := lendPlacing(before, b.from, i, a, w, lent)
		if !ok {
			r = wall.Arrange(w, a, b.Modules, p.Shop, p.Units)
		}
		b.from.placings = append(b.from.placings, placing{a, r})
		results = append(results, r)
	}
	b.Arrangements = wall.Share(results)
}

// broken names the arrangements, walls and modules in which a check of the plan found
// something that stops: they are not worked out. Ids of different kinds begin with
// different letters; an arrangement is named before the wall and the modules that it
// speaks of.
func broken(checked []finding.Finding) map[string]bool {
	out := map[string]bool{}
	for _, f := range checked {
		if f.Kind.Severity == finding.Stop {
			out[cmp.Or(f.Place.Arrangement, f.Place.Module, f.Place.Wall)] = true
		}
	}
	return out
}

func findWall(walls []plan.Wall, id string) (plan.Wall, bool) {
	for _, w := range walls {
		if w.ID == id {
			return w, true
		}
	}
	return plan.Wall{}, false
}
