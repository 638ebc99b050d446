package engine

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Style returns how lengths of the build are printed.
func (b Build) Style() unit.Style { return unit.Style{System: b.Units.System, Step: b.Units.Step} }

// Say returns a finding in words: what, and the limit.
func Say(f finding.Finding, style unit.Style) string {
	args := f.Args
	if f.Value.Is != words.None {
		args = append(args[:len(args):len(args)], words.Arg{Name: "value", Value: f.Value})
	}
	if f.Limit.Is != words.None {
		args = append(args[:len(args):len(args)], words.Arg{Name: "limit", Value: f.Limit})
	}
	return words.Text("finding."+f.Kind.Key, args, style)
}

// SayRemedy returns a remedy in words.
func SayRemedy(r finding.Remedy, style unit.Style) string {
	return words.Text("remedy."+r.Key, r.Args, style)
}

// SayVerdict returns a verdict in words, 60 characters at most.
func SayVerdict(v Verdict, style unit.Style) string { return words.Text(v.Key, v.Args, style) }
