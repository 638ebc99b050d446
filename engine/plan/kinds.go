package plan

import "ledgewright/engine/finding"

// What a check of the plan alone can find. What concerns a wall and the places on it
// is asked under "fits", what concerns the document and the making under "takes".
var (
	badID       = finding.Kind{Key: "bad-id", Verdict: finding.Takes, Severity: finding.Stop}
	sameID      = finding.Kind{Key: "same-id", Verdict: finding.Takes, Severity: finding.Stop}
	counterLow  = finding.Kind{Key: "counter-low", Verdict: finding.Takes, Severity: finding.Mend}
	badShop     = finding.Kind{Key: "shop-value", Verdict: finding.Takes, Severity: finding.Stop}
	unknownWord = finding.Kind{Key: "unknown-word", Verdict: finding.Takes, Severity: finding.Stop}
	unknownFact = finding.Kind{Key: "unknown-fact", Verdict: finding.Fits, Severity: finding.Mend}
	unknownWood = finding.Kind{Key: "unknown-wood", Verdict: finding.Takes, Severity: finding.Stop}
	unknownItem = finding.Kind{Key: "unknown-hardware", Verdict: finding.Takes, Severity: finding.Stop}
	tooSmall    = finding.Kind{Key: "too-small", Verdict: finding.Takes, Severity: finding.Stop}
	tooLarge    = finding.Kind{Key: "too-large", Verdict: finding.Takes, Severity: finding.Stop}
	badDate     = finding.Kind{Key: "bad-date", Verdict: finding.Takes, Severity: finding.Note}
	sameName    = finding.Kind{Key: "same-name", Verdict: finding.Takes, Severity: finding.Note}

	noBoards     = finding.Kind{Key: "no-boards", Verdict: finding.Takes, Severity: finding.Stop}
	cornerCount  = finding.Kind{Key: "corner-count", Verdict: finding.Takes, Severity: finding.Stop}
	noTurn       = finding.Kind{Key: "no-turn", Verdict: finding.Takes, Severity: finding.Stop}
	sharpTurn    = finding.Kind{Key: "sharp-turn", Verdict: finding.Takes, Severity: finding.Stop}
	openTurns    = finding.Kind{Key: "turns-do-not-close", Verdict: finding.Takes, Severity: finding.Stop}
	fewClosed    = finding.Kind{Key: "closed-of-few", Verdict: finding.Takes, Severity: finding.Stop}
	noLength     = finding.Kind{Key: "no-length", Verdict: finding.Takes, Severity: finding.Stop}
	closingCount = finding.Kind{Key: "closing-count", Verdict: finding.Takes, Severity: finding.Stop}
	sameArris    = finding.Kind{Key: "same-arris", Verdict: finding.Takes, Severity: finding.Mend}
	noBoard      = finding.Kind{Key: "no-such-board", Verdict: finding.Takes, Severity: finding.Stop}
	noDivider    = finding.Kind{Key: "no-such-divider", Verdict: finding.Takes, Severity: finding.Stop}
	ownBoard     = finding.Kind{Key: "divider-to-itself", Verdict: finding.Takes, Severity: finding.Stop}
	offBoard     = finding.Kind{Key: "off-board", Verdict: finding.Takes, Severity: finding.Stop}
	openRun      = finding.Kind{Key: "run-past-open-end", Verdict: finding.Takes, Severity: finding.Stop}
	onNothing    = finding.Kind{Key: "bracket-on-nothing", Verdict: finding.Takes, Severity: finding.Stop}
	onTwo        = finding.Kind{Key: "bracket-on-two", Verdict: finding.Takes, Severity: finding.Stop}

	studState    = finding.Kind{Key: "stud-state-missing", Verdict: finding.Fits, Severity: finding.Unknown}
	studsCrowded = finding.Kind{Key: "studs-crowded", Verdict: finding.Fits, Severity: finding.Mend}
	outsideWall  = finding.Kind{Key: "outside-wall", Verdict: finding.Fits, Severity: finding.Mend}
	noWall       = finding.Kind{Key: "no-such-wall", Verdict: finding.Fits, Severity: finding.Stop}
	noModule     = finding.Kind{Key: "no-such-module", Verdict: finding.Fits, Severity: finding.Stop}
	noNeighbour  = finding.Kind{Key: "no-such-neighbour", Verdict: finding.Fits, Severity: finding.Mend}
	placedTwice  = finding.Kind{Key: "placed-twice", Verdict: finding.Fits, Severity: finding.Stop}
)

// Kinds lists the kinds of findings of [Check].
func Kinds() []finding.Kind {
	return []finding.Kind{
		badID, sameID, counterLow, badShop, unknownWord, unknownFact, unknownWood, unknownItem, tooSmall, tooLarge, badDate, sameName,
		noBoards, cornerCount, noTurn, sharpTurn, openTurns, fewClosed, noLength, closingCount, sameArris,
		noBoard, noDivider, ownBoard, offBoard, openRun, onNothing, onTwo,
		studState, studsCrowded, outsideWall, noWall, noModule, noNeighbour, placedTwice,
	}
}
