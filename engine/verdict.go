package engine

import (
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/joint"
	"ledgewright/engine/light"
	"ledgewright/engine/module"
	"ledgewright/engine/mount"
	"ledgewright/engine/movement"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
)

// A Verdict is one of the three sentences that sum a plan up: the worst severity of
// its findings (0 if there are none), and its words.
type Verdict struct {
	Of       finding.Verdict
	Severity finding.Severity
	Key      string // words under this key
	Args     []words.Arg
}

var (
	notChecked = finding.Kind{Key: "holds-not-checked", Verdict: finding.Holds, Severity: finding.Unknown}
	newerPlan  = finding.Kind{Key: "newer-plan", Verdict: finding.Takes, Severity: finding.Note}
)

// Kinds lists every kind of finding that a build can carry, room by room.
func Kinds() []finding.Kind {
	return slices.Concat(plan.Kinds(), joint.Kinds(), board.Kinds(), mount.Kinds(), light.Kinds(),
		module.Kinds(), movement.Kinds(), wall.Kinds(), []finding.Kind{notChecked, newerPlan})
}

// conclude gathers the findings of all rooms, worst first and in a stable order
// within a severity, and forms the verdicts.
func (b *Build) conclude(p plan.Plan) {
	n := len(b.from.checked) + len(p.Arrangements) + 1
	for i, m := range b.Modules {
		n += len(m.Findings) + len(b.from.moves[i])
	}
	for _, a := range b.Arrangements {
		n += len(a.Findings)
	}
	all := append(make([]finding.Finding, 0, n), b.from.checked...)
	for i, m := range b.Modules {
		all = append(append(all, m.Findings...), b.from.moves[i]...)
	}
	for _, a := range b.Arrangements {
		all = append(all, a.Findings...)
	}
	for _, a := range p.Arrangements {
		if len(a.Poses) > 0 {
			all = append(all, finding.Finding{
				Kind: notChecked, Place: finding.Place{Arrangement: a.ID, Wall: a.Wall},
				Args:     []words.Arg{words.Name("arrangement", nameOf(p, a))},
				Remedies: []finding.Remedy{{Key: "have-it-judged"}},
			})
		}
	}
	if p.Newer() {
		all = append(all, finding.Finding{
			Kind: newerPlan, Place: finding.Place{Path: "schema"},
			Args:     []words.Arg{words.Name("schema", p.Schema)},
			Remedies: []finding.Remedy{{Key: "newer-program"}},
		})
	}
	b.Findings = finding.WorstFirst(all)
	b.Verdicts = [3]Verdict{fitsVerdict(*b), holdsVerdict(*b), takesVerdict(*b)}
}

func nameOf(p plan.Plan, a plan.Arrangement) string {
	if a.Name != "" {
		return a.Name
	}
	if w, ok := p.Wall(a.Wall); ok && w.Name != "" {
		return w.Name
	}
	return a.ID
}

// worst returns the worst severity among the findings of a verdict, and how many
// there are of it.
func (b *Build) worst(v finding.Verdict) (s finding.Severity, n int) {
	for _, f := range b.Findings {
		switch {
		case f.Kind.Verdict != v:
		case f.Kind.Severity > s:
			s, n = f.Kind.Severity, 1
		case f.Kind.Severity == s:
			n++
		}
	}
	return s, n
}

// Stops reports whether a finding stops the job.
func (b Build) Stops() bool {
	return slices.ContainsFunc(b.Findings, func(f finding.Finding) bool { return f.Kind.Severity == finding.Stop })
}

func fitsVerdict(b Build) Verdict {
	v := b.counted(finding.Fits, "fits")
	if v.Severity > finding.Note {
		return v
	}
	near, ok := nearest(b.Arrangements)
	switch {
	case len(b.Modules) == 0:
		v.Key = "verdict.fits.empty"
	case !ok:
		v.Key = "verdict.fits.unplaced"
	default:
		v.Key = "verdict.fits.ok"
		v.Args = []words.Arg{words.Length("gap", near)}
	}
	return v
}

// nearest returns the least clearance of all arrangements.
func nearest(all []wall.Result) (least unit.Length, ok bool) {
	for _, a := range all {
		for _, c := range a.Nearest {
			if !ok || c.Gap < least {
				least, ok = c.Gap, true
			}
		}
	}
	return least, ok
}

func holdsVerdict(b Build) Verdict {
	v := Verdict{Of: finding.Holds, Severity: finding.Unknown, Key: "verdict.holds.unknown"}
	if len(b.Modules) == 0 {
		v.Key = "verdict.holds.empty"
	}
	for _, h := range b.Holds {
		if h.State == Reckoning {
			v.Key = "verdict.holds.reckoning"
		}
	}
	if c := b.counted(finding.Holds, "holds"); c.Severity > finding.Unknown {
		return c
	}
	return v
}

func takesVerdict(b Build) Verdict {
	v := b.counted(finding.Takes, "takes")
	if v.Severity > finding.Note {
		return v
	}
	v.Key = "verdict.takes.ok"
	v.Args = []words.Arg{words.Count("boards", b.Parts.Boards), words.Mass("mass", b.Parts.Mass)}
	return v
}

// counted says how many findings of the worst severity there are.
func (b *Build) counted(of finding.Verdict, word string) Verdict {
	s, n := b.worst(of)
	keys := [...]string{finding.Note: ".note", finding.Unknown: ".unknown", finding.Mend: ".mend", finding.Stop: ".stop"}
	v := Verdict{Of: of, Severity: s}
	if s > 0 {
		v.Key, v.Args = "verdict."+word+keys[s], []words.Arg{words.Count("n", n)}
	}
	return v
}
