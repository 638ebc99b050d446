// Package finding holds what the engine has to say about a plan: where, what, the
// limit, and what would help.
package finding

import "ledgewright/engine/words"

// A Severity ranks findings; the larger is the worse.
type Severity uint8

// Severities. A verdict is the worst of its findings.
const (
	Note    Severity = iota + 1 // worth knowing
	Unknown                     // a fact is missing: not checked
	Mend                        // should be put right
	Stop                        // the job stops here
)

// A Verdict is one of the three sentences that sum a plan up.
type Verdict uint8

// The three verdicts.
const (
	Fits Verdict = iota + 1
	Holds
	Takes
)

// A Kind is one rule that can be broken or not be checkable. The key names its
// words in the catalogue ("finding.<key>"). Every room lists its kinds in a
// function Kinds, so that a test can ask each for its words, place and limit.
type Kind struct {
	Key      string
	Verdict  Verdict
	Severity Severity
}

// A Place says where a finding points. Empty fields do not take part; indices
// count from 1, and 0 means none.
type Place struct {
	Wall        string `json:"wall,omitempty"`
	Arrangement string `json:"arrangement,omitempty"`
	Module      string `json:"module,omitempty"`
	Board       string `json:"board,omitempty"`   // id of a board: module id + index
	Corner      int    `json:"corner,omitempty"`  // number of the board before the corner
	Divider     string `json:"divider,omitempty"` // id
	Bracket     string `json:"bracket,omitempty"` // id
	Light       string `json:"light,omitempty"`   // id
	Obstacle    string `json:"obstacle,omitempty"`
	Feature     int    `json:"feature,omitempty"` // index + 1 of the feature in its board
	Point       string `json:"point,omitempty"`   // number of a wall point
	Path        string `json:"path,omitempty"`    // path into the document, where no thing can be named
}

// A Finding is one rule broken, or not checkable, at one place.
type Finding struct {
	Kind     Kind
	Place    Place
	Value    words.Value // what was found, if it is a figure
	Limit    words.Value // the limit it was held against, if there is one
	Args     []words.Arg // the other arguments of the words; "value" and "limit" are added by name
	Remedies []Remedy    // best first
}

// A Remedy is what would help, in words and, where the tool can do it, as an edit.
type Remedy struct {
	Key  string // words under "remedy.<key>"
	Args []words.Arg
	Edit Edit // zero if the maker must do it
}

// An Edit is an edit as plain data: which, and its arguments by name. Package edit
// reads it.
type Edit struct {
	Do   string
	Args []words.Arg
}

// WorstFirst returns findings in storage of their own, the worst first, those of one
// severity in their order. None is nil. Findings are large, so each is moved once.
func WorstFirst(all []Finding) []Finding {
	if len(all) == 0 {
		return nil
	}
	out := make([]Finding, 0, len(all))
	for s := Stop; s >= Note; s-- {
		for i := range all {
			if all[i].Kind.Severity == s {
				out = append(out, all[i])
			}
		}
	}
	return out
}
