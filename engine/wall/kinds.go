package wall

import "ledgewright/engine/finding"

// The kinds of findings of this room.
var (
	modulesOverlap  = finding.Kind{Key: "modules-overlap", Verdict: finding.Fits, Severity: finding.Stop}
	nearMiss        = finding.Kind{Key: "near-miss", Verdict: finding.Fits, Severity: finding.Mend}
	tightGap        = finding.Kind{Key: "tight-gap", Verdict: finding.Fits, Severity: finding.Note}
	obstacleOverlap = finding.Kind{Key: "obstacle-overlap", Verdict: finding.Fits, Severity: finding.Stop}
	obstacleNear    = finding.Kind{Key: "obstacle-near", Verdict: finding.Fits, Severity: finding.Mend}
	roomInFront     = finding.Kind{Key: "room-in-front", Verdict: finding.Fits, Severity: finding.Mend}
	standsBefore    = finding.Kind{Key: "stands-before", Verdict: finding.Fits, Severity: finding.Note}
	aboveRadiator   = finding.Kind{Key: "above-radiator", Verdict: finding.Fits, Severity: finding.Note}
	pastEnd         = finding.Kind{Key: "past-end", Verdict: finding.Fits, Severity: finding.Stop}
	endNear         = finding.Kind{Key: "end-near", Verdict: finding.Fits, Severity: finding.Mend}
	belowFloor      = finding.Kind{Key: "below-floor", Verdict: finding.Fits, Severity: finding.Stop}
	throughCeiling  = finding.Kind{Key: "through-ceiling", Verdict: finding.Fits, Severity: finding.Stop}
	ceilingNear     = finding.Kind{Key: "ceiling-near", Verdict: finding.Fits, Severity: finding.Mend}
	noLift          = finding.Kind{Key: "no-lift", Verdict: finding.Fits, Severity: finding.Stop}
	hangingCycle    = finding.Kind{Key: "hanging-cycle", Verdict: finding.Fits, Severity: finding.Stop}
	cornerOverlap   = finding.Kind{Key: "corner-overlap", Verdict: finding.Fits, Severity: finding.Stop}
	cornerOrder     = finding.Kind{Key: "corner-order", Verdict: finding.Fits, Severity: finding.Note}

	noBracket      = finding.Kind{Key: "no-bracket", Verdict: finding.Holds, Severity: finding.Stop}
	nothingCarries = finding.Kind{Key: "nothing-carries", Verdict: finding.Holds, Severity: finding.Stop}
	bracketIdle    = finding.Kind{Key: "bracket-idle", Verdict: finding.Holds, Severity: finding.Note}
	oneBracket     = finding.Kind{Key: "one-bracket", Verdict: finding.Holds, Severity: finding.Mend}
	boresServeOne  = finding.Kind{Key: "bores-serve-one", Verdict: finding.Holds, Severity: finding.Mend}
	nothingInStud  = finding.Kind{Key: "nothing-in-stud", Verdict: finding.Holds, Severity: finding.Mend}
	screwOffStud   = finding.Kind{Key: "screw-off-stud", Verdict: finding.Holds, Severity: finding.Mend}
	studEdge       = finding.Kind{Key: "stud-edge", Verdict: finding.Holds, Severity: finding.Mend}
	studGuessed    = finding.Kind{Key: "stud-guessed", Verdict: finding.Holds, Severity: finding.Unknown}
	metalStuds     = finding.Kind{Key: "metal-studs", Verdict: finding.Holds, Severity: finding.Unknown}

	holeInBand  = finding.Kind{Key: "hole-in-cable-band", Verdict: finding.Fits, Severity: finding.Stop}
	holeBehind  = finding.Kind{Key: "hole-behind-obstacle", Verdict: finding.Fits, Severity: finding.Stop}
	deepHole    = finding.Kind{Key: "deep-hole", Verdict: finding.Fits, Severity: finding.Note}
	cables      = finding.Kind{Key: "cables-not-checked", Verdict: finding.Fits, Severity: finding.Unknown}
	notSurveyed = finding.Kind{Key: "wall-not-surveyed", Verdict: finding.Fits, Severity: finding.Unknown}
	onDabs      = finding.Kind{Key: "wall-on-dabs", Verdict: finding.Holds, Severity: finding.Unknown}
	wallBowed   = finding.Kind{Key: "wall-bowed", Verdict: finding.Fits, Severity: finding.Note}
	oldWall     = finding.Kind{Key: "old-wall", Verdict: finding.Fits, Severity: finding.Note}
)

// Kinds returns every kind of finding of this room.
func Kinds() []finding.Kind {
	return []finding.Kind{
		modulesOverlap, nearMiss, tightGap, obstacleOverlap, obstacleNear, roomInFront, standsBefore, aboveRadiator,
		pastEnd, endNear, belowFloor, throughCeiling, ceilingNear, noLift, hangingCycle, cornerOverlap, cornerOrder,
		noBracket, nothingCarries, bracketIdle, oneBracket, boresServeOne, nothingInStud, screwOffStud, studEdge, studGuessed, metalStuds,
		holeInBand, holeBehind, deepHole, cables, notSurveyed, onDabs, wallBowed, oldWall,
	}
}
