package hold

import "ledgewright/engine/strength"

// Factors lists every factor, limit and assumption of the verdict, with its source, those of
// package strength first. What is reckoned uses the same constants.
func Factors() []strength.Factor {
	out := append(strength.Factors(), []strength.Factor{
		{Key: "gravity", Value: Gravity, Unit: "m/s²", Source: "CGPM 1901, by definition", Basis: strength.Read},
		{Key: "books-at", Value: BooksAt, Source: "common practice: books flush with the front edge", Basis: strength.Memory},
		{Key: "books-deep", Value: BooksDeep, Source: "follows from their place", Basis: strength.Memory},
		{Key: "hand", Value: Hand, Unit: "N", Source: "our assumption", Basis: strength.Assumption},
		{Key: "knock", Value: Knock, Unit: "N", Source: "our assumption", Basis: strength.Assumption},
		{Key: "child", Value: Child, Unit: "N", Source: "our assumption; never rated", Basis: strength.Assumption},
		{Key: "stud-g", Value: StudG, Source: "NDS 2018, table 12.3.3A, Spruce-Pine-Fir", Basis: strength.Read},
		{Key: "screw-yield", Value: ScrewYield, Unit: "MPa", Source: "NDS 2018, table 12.3.1, 90 000 psi", Basis: strength.Memory},
		{Key: "bending-part", Value: BendingPart, Source: "ASTM D2555, ASTM D245, NDS 2018; a strength ratio of 0.62", Basis: strength.Assumption},
		{Key: "shear-part", Value: shearPart, Source: "Wood Handbook, table 5-1: 1/14 to 1/20", Basis: strength.Memory},
		{Key: "overhang", Value: leastOverhang, Unit: "mm", Source: "our assumption", Basis: strength.Assumption},
		{Key: "bore-stiffness", Value: BoreStiffness, Unit: "N/mm²", Source: "our assumption", Basis: strength.Assumption},
		{Key: "bore-soft", Value: BoreSoft, Unit: "N/mm²", Source: "our assumption", Basis: strength.Assumption},
		{Key: "bore-stiff", Value: BoreStiff, Unit: "N/mm²", Source: "our assumption", Basis: strength.Assumption},
		{Key: "lock-stiffness", Value: LockStiffness, Unit: "N/mm²", Source: "our assumption", Basis: strength.Assumption},
		{Key: "touch-stiffness", Value: TouchStiffness, Unit: "N/mm", Source: "our assumption", Basis: strength.Assumption},
		{Key: "slip-soft", Value: SlipSoft, Source: "our assumption", Basis: strength.Assumption},
		{Key: "slip-stiff", Value: SlipStiff, Source: "our assumption", Basis: strength.Assumption},
		{Key: "lining-e", Value: LiningE, Unit: "MPa", Source: "our assumption", Basis: strength.Assumption},
		{Key: "lining-soft", Value: LiningSoft, Unit: "MPa", Source: "our assumption", Basis: strength.Assumption},
		{Key: "lining-stiff", Value: LiningStiff, Unit: "MPa", Source: "our assumption", Basis: strength.Assumption},
		{Key: "creep", Value: Creep, Source: "EN 1995-1-1, table 3.2, service class 1", Basis: strength.Read},
		{Key: "free-span", Value: FreeSpan, Source: "EN 1995-1-1, table 7.2", Basis: strength.Memory},
		{Key: "droop-part", Value: DroopPart, Source: "common practice", Basis: strength.Memory},
		{Key: "proof-part", Value: ProofPart, Source: "our assumption", Basis: strength.Assumption},
	}...)
	for _, l := range Limits() {
		out = append(out, strength.Factor{Key: "sag-" + l.Key, Value: l.Ratio, Source: l.Source, Basis: l.Basis})
	}
	for _, l := range Things() {
		out = append(out, strength.Factor{Key: "load-" + l.Key, Value: l.PerMetre, Unit: "kg/m", Source: l.Source, Basis: l.Basis})
	}
	return out
}

// ProofPart is by how much the load of a trial after hanging exceeds what a shelf's label
// says. Our assumption.
const ProofPart = 1.5

// A Thing is what a shelf is meant for, and what a metre of it weighs.
type Thing struct {
	Key      string // of the words "things.<key>"
	PerMetre float64
	Source   string
	Basis    strength.Basis
}

// Things lists what shelves are meant for, the usual first.
func Things() []Thing {
	return []Thing{
		{"books", 37, "weighed library stacks: 25 lb a foot (37.2 kg/m)", strength.Read},
		{"large-books", 52, "common practice: large books 30 to 50 lb a foot", strength.Memory},
		{"records", 70, "70 to 90 records a foot of 0.23 to 0.28 kg", strength.Memory},
		{"display", 15, "our assumption", strength.Assumption},
	}
}
