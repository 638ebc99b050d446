package joint

import (
	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The rules of this room.
var (
	tiltOverSaw  = finding.Kind{Key: "tilt-over-saw", Verdict: finding.Takes, Severity: finding.Mend}
	rebateAngle  = finding.Kind{Key: "rebate-not-square", Verdict: finding.Takes, Severity: finding.Stop}
	unknownJoint = finding.Kind{Key: "joint-unknown", Verdict: finding.Takes, Severity: finding.Stop}
	wrongPiece   = finding.Kind{Key: "piece-does-not-suit", Verdict: finding.Takes, Severity: finding.Mend}
	noRoom       = finding.Kind{Key: "piece-no-room", Verdict: finding.Takes, Severity: finding.Mend}
	tooWide      = finding.Kind{Key: "piece-too-wide", Verdict: finding.Takes, Severity: finding.Mend}
	splineLong   = finding.Kind{Key: "spline-long", Verdict: finding.Takes, Severity: finding.Note}
	leftOut      = finding.Kind{Key: "pieces-left-out", Verdict: finding.Takes, Severity: finding.Note}
)

// Kinds lists the kinds of findings of this room.
func Kinds() []finding.Kind {
	return []finding.Kind{tiltOverSaw, rebateAngle, unknownJoint, wrongPiece, noRoom, tooWide, splineLong, leftOut}
}

// Once reports whether a finding is said once a module, however many corners it is about:
// what it tells holds for all of them alike.
func Once(k finding.Kind) bool { return k == splineLong }

// say adds a finding at this corner.
func (j *job) say(k finding.Kind, value, limit words.Value, args []words.Arg, remedies ...finding.Remedy) {
	j.out.Findings = append(j.out.Findings, finding.Finding{
		Kind: k, Value: value, Limit: limit, Place: finding.Place{Corner: j.Number},
		Args:     append([]words.Arg{words.Count("corner", j.Number)}, args...),
		Remedies: remedies,
	})
}

// change is a remedy that sets a member of the corner to a word.
func (j *job) change(key, member, to string, args ...words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: args, Edit: finding.Edit{
		Do: "set-corner", Args: []words.Arg{words.Count("corner", j.Number), words.Name(member, to)},
	}}
}

// checkJoint asks whether the joint can be cut.
func (j *job) checkJoint() {
	known := map[string]bool{Mitre: true, ButtFirst: true, ButtSecond: true, RebateFirst: true, RebateSecond: true}
	if !known[j.Joint] {
		j.say(unknownJoint, words.Value{Is: words.IsName, Text: j.Joint}, words.Value{}, nil, j.change("make-it-a-mitre", "joint", Mitre))
	}
	if j.rebated() && j.shape.Interior != unit.QuarterTurn {
		butt := ButtFirst
		if j.Joint == RebateSecond {
			butt = ButtSecond
		}
		j.say(rebateAngle, words.AngleOf(j.shape.Interior), words.AngleOf(unit.QuarterTurn), nil,
			j.change("make-it-a-butt", "joint", butt), j.change("make-it-a-mitre", "joint", Mitre))
	}
	for i := range 2 {
		j.checkTilt(i)
	}
}

// checkTilt asks whether the saw tilts as far as a board's end asks.
func (j *job) checkTilt(i int) {
	tilt := j.shape.Sides[i].Tilt
	for _, f := range CheckTilt(j.Boards[i], tilt, j.Shop) {
		f.Place.Corner = j.Number
		if best := j.flattest(tilt.Abs()); best != "" {
			f.Remedies = append([]finding.Remedy{j.change("make-it-a-butt", "joint", best)}, f.Remedies...)
		}
		j.out.Findings = append(j.out.Findings, f)
	}
}

// CheckTilt asks whether the shop's saw tilts as far as an end of a board asks.
func CheckTilt(b board.Board, tilt unit.Angle, s shop.Profile) []finding.Finding {
	limit := s.Machines.Saw.MaxTilt
	if tilt.Abs() <= limit {
		return nil
	}
	return []finding.Finding{{
		Kind: tiltOverSaw, Value: words.AngleOf(tilt.Abs()), Limit: words.AngleOf(limit),
		Place: finding.Place{Board: b.ID}, Args: []words.Arg{words.Name("board", name(b))},
		Remedies: []finding.Remedy{
			{Key: "tall-fence", Args: []words.Arg{words.Angle("rest", unit.QuarterTurn-tilt.Abs())}},
			{Key: "open-the-corner"},
		},
	}}
}

// flattest returns the butt joint with no tilt over the saw's limit, if there is one.
func (j *job) flattest(tilt unit.Angle) string {
	for _, kind := range []string{ButtFirst, ButtSecond} {
		c := j.Corner
		c.Joint = kind
		s := c.Shape()
		if max(s.Sides[0].Tilt.Abs(), s.Sides[1].Tilt.Abs()) <= min(j.Shop.Machines.Saw.MaxTilt, tilt-1) {
			return kind
		}
	}
	return ""
}

// name returns what a maker calls a board.
func name(b board.Board) string {
	if b.Name != "" {
		return b.Name
	}
	return b.ID
}

func (j *job) what() words.Arg { return words.Word("what", "piece."+j.Kind) }

func (j *job) doesNotSuit() {
	remedies := []finding.Remedy{{Key: "other-piece"}}
	if j.Kind == Key && j.shape.Through >= 0 || j.rebated() {
		remedies = append([]finding.Remedy{{Key: "screw-it"}}, remedies...)
	}
	j.say(wrongPiece, words.Value{}, words.Value{}, []words.Arg{j.what(), words.Word("joint", "joint."+j.jointWord())}, remedies...)
}

func (j *job) jointWord() string {
	if j.shape.Through < 0 {
		return Mitre
	}
	return j.Joint
}

// noRoom says that a piece finds less room than it needs.
func (j *job) noRoom(room, need unit.Length) {
	j.say(noRoom, words.LengthOf(room), words.LengthOf(need), []words.Arg{j.what()},
		finding.Remedy{Key: "thinner-piece"}, finding.Remedy{Key: "other-piece"}, finding.Remedy{Key: "use-thicker-boards"})
}

// tooWide says that a piece of a typed width would come too near the outside.
func (j *job) tooWide(width, most unit.Length) {
	j.say(tooWide, words.LengthOf(width), words.LengthOf(most), []words.Arg{j.what()},
		finding.Remedy{Key: "narrower-piece", Args: []words.Arg{words.Length("most", most)}})
}

// A spline of plywood keeps its length while the boards beside it shrink and swell across
// their depth. In lengths of up to plyLength, plyGap apart, it can follow them: common
// practice, without a source. What it is cut from is not in a plan, so it is asked for.
const (
	plyLength = 60 * mm
	plyGap    = 3 * mm
)

// checkSpline notes that a spline runs farther than plywood should.
func (j *job) checkSpline(long unit.Length) {
	if j.Kind != Spline || long <= plyLength {
		return
	}
	j.say(splineLong, words.LengthOf(long), words.LengthOf(plyLength), nil,
		finding.Remedy{Key: "spline-solid"},
		finding.Remedy{Key: "spline-in-lengths", Args: []words.Arg{words.Length("most", plyLength), words.Length("gap", plyGap)}})
}

// leftOut notes pieces for which grooves and bores leave no place.
func (j *job) leftOut(have, wanted int) {
	j.say(leftOut, words.CountOf(have), words.CountOf(wanted), []words.Arg{j.what()},
		finding.Remedy{Key: "make-way"}, finding.Remedy{Key: "shorter-pieces"})
}
