package main

import (
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/finding"
)

// report is a build in sentences: the three verdicts, then the findings, worst first,
// each with what would help.
func report(b engine.Build) []byte {
	style := b.Style()
	var t strings.Builder
	for i, v := range b.Verdicts {
		t.WriteString(verdictWords[i] + engine.SayVerdict(v, style) + "\n")
	}
	for _, f := range b.Findings {
		t.WriteString("\n" + severityWords[f.Kind.Severity] + engine.Say(f, style) + "\n")
		for _, r := range f.Remedies[:min(3, len(f.Remedies))] {
			t.WriteString("         " + engine.SayRemedy(r, style) + "\n")
		}
	}
	return []byte(t.String())
}

var verdictWords = [3]string{"Fits     ", "Holds    ", "Takes    "}

var severityWords = map[finding.Severity]string{
	finding.Stop: "stop     ", finding.Mend: "mend     ", finding.Unknown: "unknown  ", finding.Note: "note     ",
}
