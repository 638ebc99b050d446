package mount

import (
	"slices"

	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The rules of this room. Those under "takes" cannot be made, or not cleanly; those
// under "holds" can be made and carry less than they seem to, or nobody knows.
var (
	unknownKind  = finding.Kind{Key: "bracket-unknown", Verdict: finding.Takes, Severity: finding.Stop}
	offBoard     = finding.Kind{Key: "bracket-off-board", Verdict: finding.Takes, Severity: finding.Stop}
	stripEarly   = finding.Kind{Key: "bracket-too-early", Verdict: finding.Takes, Severity: finding.Stop}
	stripOff     = finding.Kind{Key: "bracket-too-long", Verdict: finding.Takes, Severity: finding.Stop}
	attitude     = finding.Kind{Key: "bracket-attitude", Verdict: finding.Holds, Severity: finding.Note}
	tooFew       = finding.Kind{Key: "bracket-too-short", Verdict: finding.Holds, Severity: finding.Mend}
	unlocked     = finding.Kind{Key: "bracket-unlocked", Verdict: finding.Holds, Severity: finding.Mend}
	slotted      = finding.Kind{Key: "bracket-slotted", Verdict: finding.Holds, Severity: finding.Mend}
	rootUnknown  = finding.Kind{Key: "bracket-root", Verdict: finding.Holds, Severity: finding.Unknown}
	plateProud   = finding.Kind{Key: "plate-proud", Verdict: finding.Takes, Severity: finding.Mend}
	boreThin     = finding.Kind{Key: "bore-thin", Verdict: finding.Holds, Severity: finding.Mend}
	boreDeep     = finding.Kind{Key: "bore-deep", Verdict: finding.Takes, Severity: finding.Mend}
	rodNearEnd   = finding.Kind{Key: "rod-near-end", Verdict: finding.Holds, Severity: finding.Mend}
	boreNearHeel = finding.Kind{Key: "bore-near-heel", Verdict: finding.Holds, Severity: finding.Mend}
	pocketNear   = finding.Kind{Key: "pocket-near-end", Verdict: finding.Takes, Severity: finding.Mend}
)

// Kinds returns the kinds of findings of this room.
func Kinds() []finding.Kind {
	return []finding.Kind{unknownKind, offBoard, stripEarly, stripOff, attitude, tooFew, unlocked, slotted,
		rootUnknown, plateProud, boreThin, boreDeep, rodNearEnd, boreNearHeel, pocketNear}
}

// gap is a distance for a text: of cuts that overlap it is 0.
func gap(l unit.Length) words.Value { return words.LengthOf(max(l, 0)) }

// say adds a finding at this bracket.
func (j *job) say(k finding.Kind, value, limit words.Value, remedies ...finding.Remedy) {
	j.out.Findings = append(j.out.Findings, finding.Finding{
		Kind: k, Value: value, Limit: limit,
		Place:    finding.Place{Module: j.module(), Board: j.Board.ID, Bracket: j.Bracket},
		Args:     []words.Arg{words.Name("bracket", j.Bracket), words.Name("board", j.Board.ID)},
		Remedies: remedies,
	})
}

func (j *job) unknownKind() {
	kind := j.Shop.Brackets.Kind
	if hardware.Sized(kind, j.Board.Width, j.Shop.System) == "" {
		kind = string(hardware.RodStructure)
	}
	name := words.Value{Is: words.IsName, Text: j.Kind}
	j.say(unknownKind, name, words.Value{}, j.useKind(hardware.Sized(kind, j.Board.Width, j.Shop.System)))
}

func (j *job) offBoard() {
	at := min(max(j.At, 0), j.Board.Length)
	if from, to := j.room(); from <= to {
		at = min(max(j.At, from), to)
	}
	j.say(offBoard, words.LengthOf(j.At), words.LengthOf(j.Board.Length), j.moveTo(at))
}

// checkStrip asks whether a bar, rail or cleat lies on its board, a rail or cleat on the
// face that it hangs from: whether it starts too early, or reaches too far, or both.
func (j *job) checkStrip(start, long unit.Length) bool {
	if long == 0 {
		return true
	}
	from, to := j.start.Least(), j.end.Greatest()
	if j.kind.Strip.Out > 0 {
		from, to = j.Board.On(j.underside())
	}
	early, late := start < from, long > to-start
	others := j.otherFamilies(hardware.RodStructure, hardware.PlateBack)
	if early {
		j.say(stripEarly, words.LengthOf(start), words.LengthOf(from), append(j.laterTo(from+j.kind.Margin, to), others...)...)
	}
	if late {
		j.say(stripOff, words.LengthOf(start+long), words.LengthOf(to), append(j.shorterTo(to-max(start, from)), others...)...)
	}
	return !early && !late
}

// laterTo offers to move the bracket to at, if that is before the end of its room.
func (j *job) laterTo(at, to unit.Length) []finding.Remedy {
	if at >= to {
		return nil
	}
	return []finding.Remedy{j.moveTo(at)}
}

// shorterTo offers to cut the bracket to the room that there is, if two fixings have place
// in it.
func (j *job) shorterTo(room unit.Length) []finding.Remedy {
	if room < 2*j.kind.Margin+j.kind.Pitch {
		return nil
	}
	return []finding.Remedy{j.cutTo(room)}
}

// checkAttitude notes a kind that works in the other kind of board. How the module
// hangs is not known here: a quarter turn may put it right.
func (j *job) checkAttitude() {
	plumb := j.kind.Attitude == hardware.Plumb
	if plumb == j.Upright {
		return
	}
	others := []hardware.Family{hardware.PlateUpright, hardware.Hook}
	if plumb {
		others = []hardware.Family{hardware.RodStructure, hardware.PlateBack}
	}
	j.say(attitude, words.Value{}, words.Value{}, append(j.otherFamilies(others...), remedy("turn-module"))...)
}

// checkCount asks whether a bar, rail or cleat is long enough for two.
func (j *job) checkCount(n int, long unit.Length) {
	if n >= 2 || j.kind.Pitch == 0 {
		return
	}
	two := 2*j.kind.Margin + j.kind.Pitch
	var remedies []finding.Remedy
	middle := (j.Board.Length - j.kind.Pitch) / 2
	switch {
	case j.Length > 0 && j.At-j.kind.Margin+two <= j.Board.Length:
		remedies = append(remedies, j.cutTo(two))
	case j.Length <= 0 && middle >= j.kind.Margin:
		remedies = append(remedies, j.moveTo(middle))
	}
	j.say(tooFew, words.LengthOf(long), words.LengthOf(two),
		append(remedies, j.otherFamilies(hardware.RodStructure, hardware.PlateBack)...)...)
}

func (j *job) checkLock() {
	if j.kind.Lock != hardware.Open {
		return
	}
	locked := j.like(func(k *hardware.BracketKind) bool {
		return k.Lock != hardware.Open && k.Rod == j.kind.Rod && k.Root > 0
	})
	j.say(unlocked, words.Value{}, words.Value{}, append(j.use(locked), remedy("lock-by-resin"))...)
}

func (j *job) checkSlots() {
	s := j.kind.Screws
	if len(s) == 0 || slices.ContainsFunc(s, func(h hardware.Hole) bool { return !h.Slotted }) {
		return
	}
	firm := j.like(func(k *hardware.BracketKind) bool {
		return k.Rod == j.kind.Rod && k.Lock != hardware.Open && !k.Screws[0].Slotted
	})
	j.say(slotted, words.Value{}, words.Value{}, append(j.use(firm), remedy("round-hole"))...)
}

func (j *job) checkRoot() {
	if j.kind.Root > 0 {
		return
	}
	known := j.like(func(k *hardware.BracketKind) bool {
		return k.Rod == j.kind.Rod && k.Lock != hardware.Open && k.Root > 0
	})
	j.say(rootUnknown, words.Value{}, words.Value{}, append(j.use(known), remedy("measure-root"))...)
}

// checkPlate asks whether the board hides the plate in its back edge.
func (j *job) checkPlate() {
	if j.kind.Seat != hardware.InPocket {
		return
	}
	around := 2*j.Shop.Covers.Pocket + 2*j.Shop.Covers.Plate
	limit := j.Board.Thickness - around
	if j.kind.Plate.AlongW <= limit {
		return
	}
	remedies := []finding.Remedy{j.thicker(j.kind.Plate.AlongW + around)}
	remedies = append(remedies, j.use(j.thinner(limit))...)
	if !j.Upright {
		remedies = append(remedies, j.otherFamilies(hardware.PlateLining)...)
	}
	j.say(plateProud, words.LengthOf(j.kind.Plate.AlongW), words.LengthOf(max(limit, 0)), remedies...)
}

// checkBore asks for the wood above and below a bore, and before its tip.
func (j *job) checkBore(depth, bore unit.Length) {
	cover := max(j.Shop.Covers.Bore, (j.kind.Rod+1)/2)
	if left := (j.Board.Thickness - bore) / 2; left < cover {
		remedies := append([]finding.Remedy{j.thicker(bore + 2*cover)}, j.use(j.thinnerRod())...)
		j.say(boreThin, gap(left), words.LengthOf(cover), remedies...)
	}
	j.checkFront(depth)
}

// checkFront asks for the wood before the bottom of a bore or hollow.
func (j *job) checkFront(depth unit.Length) {
	if front := j.Board.Width - depth; front < j.Shop.Covers.Front {
		j.say(boreDeep, gap(front), words.LengthOf(j.Shop.Covers.Front),
			append([]finding.Remedy{j.deeper(depth)}, j.otherFamilies(hardware.Rail, hardware.Cleat)...)...)
	}
}

// checkEnds asks how far bores and pocket keep from the ends of the board.
func (j *job) checkEnds(rods []unit.Length, bore unit.Length, pocket [2]unit.Length) {
	if len(rods) > 0 {
		first, last := rods[0], rods[len(rods)-1]
		least := j.kind.Rod * unit.Length(j.Shop.Brackets.FirstDiameters)
		if near := min(first, j.Board.Length-last); near < least {
			j.say(rodNearEnd, gap(near), words.LengthOf(least), j.moveIn())
		}
		if near, ok := j.heel(first-bore/2, last+bore/2); ok && near < j.Shop.Covers.BoreToHeel {
			j.say(boreNearHeel, gap(near), words.LengthOf(j.Shop.Covers.BoreToHeel), j.moveIn())
		}
	}
	if j.kind.Seat != hardware.InPocket {
		return
	}
	near := min(pocket[0]-j.start.Greatest(), j.end.Least()-pocket[1])
	if near < j.Shop.Covers.PocketToHeel {
		j.say(pocketNear, gap(near), words.LengthOf(j.Shop.Covers.PocketToHeel), j.moveIn())
	}
}

// heel returns the wood between an extent along the board and the nearer heel of a
// mitre, and whether the board has a mitre.
func (j *job) heel(from, to unit.Length) (near unit.Length, ok bool) {
	near = j.Board.Length
	if j.start.AtA != j.start.AtB {
		near, ok = min(near, from-j.start.Greatest()), true
	}
	if j.end.AtA != j.end.AtB {
		near, ok = min(near, j.end.Least()-to), true
	}
	return near, ok
}
