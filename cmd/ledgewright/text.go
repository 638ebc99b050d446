package main

import (
	"fmt"
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
		fmt.Fprintf(&t, "%-*s%s\n", columns, labels()[i], engine.SayVerdict(v, style))
	}
	for _, f := range b.Findings {
		fmt.Fprintf(&t, "\n%-*s%s\n", columns, severity(f.Kind.Severity), engine.Say(f, style))
		for _, r := range f.Remedies[:min(3, len(f.Remedies))] {
			fmt.Fprintf(&t, "%-*s%s\n", columns, "", engine.SayRemedy(r, style))
		}
	}
	return []byte(t.String())
}

// columns is how far the sentences stand in.
const columns = 9

// labels of the three verdicts, in their order.
func labels() [3]string { return [3]string{"Fits", "Holds", "Takes"} }

// severity is the name of a severity, as the build has it.
func severity(s finding.Severity) string {
	switch s {
	case finding.Stop:
		return "stop"
	case finding.Mend:
		return "mend"
	case finding.Unknown:
		return "unknown"
	}
	return "note"
}
