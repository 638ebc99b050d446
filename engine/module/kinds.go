package module

import (
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/joint"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The rules of this room.
var (
	notSound        = finding.Kind{Key: "module-not-worked-out", Verdict: finding.Takes, Severity: finding.Stop}
	boardShort      = finding.Kind{Key: "board-too-short", Verdict: finding.Takes, Severity: finding.Stop}
	gapOpen         = finding.Kind{Key: "chain-does-not-close", Verdict: finding.Takes, Severity: finding.Stop}
	gapTaken        = finding.Kind{Key: "gap-taken-up", Verdict: finding.Takes, Severity: finding.Note}
	closingParallel = finding.Kind{Key: "closing-boards-parallel", Verdict: finding.Takes, Severity: finding.Stop}
	overlap         = finding.Kind{Key: "boards-overlap", Verdict: finding.Takes, Severity: finding.Stop}
	dividerMisses   = finding.Kind{Key: "divider-misses", Verdict: finding.Takes, Severity: finding.Stop}
	dividerOff      = finding.Kind{Key: "divider-off-face", Verdict: finding.Takes, Severity: finding.Stop}
	housingSlant    = finding.Kind{Key: "housing-not-square", Verdict: finding.Takes, Severity: finding.Mend}
	arrisInJoint    = finding.Kind{Key: "arris-in-joint", Verdict: finding.Takes, Severity: finding.Mend}
	arrisLarge      = finding.Kind{Key: "arris-too-large", Verdict: finding.Takes, Severity: finding.Mend}
	densityUnknown  = finding.Kind{Key: "mass-not-checked", Verdict: finding.Takes, Severity: finding.Unknown}
)

// Kinds lists the kinds of findings of this room.
func Kinds() []finding.Kind {
	return []finding.Kind{notSound, boardShort, gapOpen, gapTaken, closingParallel, overlap, dividerMisses, dividerOff,
		housingSlant, arrisInJoint, arrisLarge, densityUnknown}
}

// say adds a finding of this module.
func (w *work) say(f finding.Finding) { w.out.Findings = append(w.out.Findings, w.own(f)) }

// sayAll adds findings of another room.
func (w *work) sayAll(all []finding.Finding) {
	for _, f := range all {
		if !joint.Once(f.Kind) || !w.said(f.Kind) {
			w.say(f)
		}
	}
}

func (w *work) said(k finding.Kind) bool {
	return slices.ContainsFunc(w.out.Findings, func(f finding.Finding) bool { return f.Kind == k })
}

// own says of which module a finding is: rooms that know no module leave it open.
func (w *work) own(f finding.Finding) finding.Finding {
	if f.Place.Module == "" {
		f.Place.Module = w.m.ID
	}
	if !has(f.Args, "module") {
		f.Args = append(f.Args[:len(f.Args):len(f.Args)], words.Name("module", w.m.Label()))
	}
	for i, r := range f.Remedies {
		if r.Edit.Do != "" && !has(r.Edit.Args, "module") {
			args := r.Edit.Args
			f.Remedies[i].Edit.Args = append(args[:len(args):len(args)], words.Name("module", w.m.ID))
		}
	}
	return f
}

func has(args []words.Arg, name string) bool {
	for _, a := range args {
		if a.Name == name {
			return true
		}
	}
	return false
}

// label returns what a maker calls a board.
func label(b *board.Board) string {
	if b.Name != "" {
		return b.Name
	}
	return b.ID
}

// setLength is a remedy that types the length of board i.
func setLength(key string, i int, to unit.Length, args ...words.Arg) finding.Remedy {
	args = append(args, words.Count("number", i+1), words.Length("length", to))
	return finding.Remedy{Key: key, Args: args, Edit: finding.Edit{
		Do: "set-board", Args: []words.Arg{words.Count("board", i+1), words.Length("length", to)},
	}}
}
