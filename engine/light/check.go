package light

import (
	"strings"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The rules of this room.
var (
	grooveFace    = finding.Kind{Key: "groove-face", Verdict: finding.Takes, Severity: finding.Stop}
	grooveSize    = finding.Kind{Key: "groove-impossible", Verdict: finding.Takes, Severity: finding.Stop}
	grooveOff     = finding.Kind{Key: "groove-off-board", Verdict: finding.Takes, Severity: finding.Stop}
	grooveEmpty   = finding.Kind{Key: "groove-empty", Verdict: finding.Takes, Severity: finding.Stop}
	grooveDeep    = finding.Kind{Key: "groove-deep", Verdict: finding.Takes, Severity: finding.Mend}
	grooveFront   = finding.Kind{Key: "groove-near-front", Verdict: finding.Takes, Severity: finding.Mend}
	grooveStop    = finding.Kind{Key: "groove-stop", Verdict: finding.Takes, Severity: finding.Mend}
	grooveJoint   = finding.Kind{Key: "groove-into-joint", Verdict: finding.Takes, Severity: finding.Mend}
	grooveCorner  = finding.Kind{Key: "groove-corner", Verdict: finding.Takes, Severity: finding.Mend}
	stripTurn     = finding.Kind{Key: "strip-turn", Verdict: finding.Takes, Severity: finding.Note}
	leadExit      = finding.Kind{Key: "lead-exit", Verdict: finding.Takes, Severity: finding.Mend}
	stripUnknown  = finding.Kind{Key: "strip-unknown", Verdict: finding.Takes, Severity: finding.Stop}
	stripNone     = finding.Kind{Key: "strip-none", Verdict: finding.Takes, Severity: finding.Mend}
	stripWide     = finding.Kind{Key: "strip-wide", Verdict: finding.Takes, Severity: finding.Mend}
	stripLong     = finding.Kind{Key: "strip-long", Verdict: finding.Takes, Severity: finding.Mend}
	stripWarm     = finding.Kind{Key: "strip-warm", Verdict: finding.Takes, Severity: finding.Note}
	voltDrop      = finding.Kind{Key: "volt-drop", Verdict: finding.Takes, Severity: finding.Mend}
	sourceNone    = finding.Kind{Key: "source-none", Verdict: finding.Takes, Severity: finding.Unknown}
	sourceUnknown = finding.Kind{Key: "source-unknown", Verdict: finding.Takes, Severity: finding.Stop}
	sourceVolts   = finding.Kind{Key: "source-volts", Verdict: finding.Takes, Severity: finding.Mend}
	sourceSmall   = finding.Kind{Key: "source-small", Verdict: finding.Takes, Severity: finding.Mend}
)

// Kinds returns the kinds of findings of this room.
func Kinds() []finding.Kind {
	return []finding.Kind{grooveFace, grooveSize, grooveOff, grooveEmpty, grooveDeep, grooveFront, grooveStop, grooveJoint,
		grooveCorner, stripTurn, leadExit, stripUnknown, stripNone, stripWide, stripLong, stripWarm, voltDrop,
		sourceNone, sourceUnknown, sourceVolts, sourceSmall}
}

// say adds a finding at this light, on board i.
func (j *job) say(k finding.Kind, i int, value, limit words.Value, remedies ...finding.Remedy) {
	id := j.Boards[i].ID
	j.out.Findings = append(j.out.Findings, finding.Finding{
		Kind: k, Value: value, Limit: limit,
		Place:    finding.Place{Module: j.module(), Board: id, Light: j.Light},
		Args:     []words.Arg{words.Name("light", j.Light), words.Name("board", id)},
		Remedies: remedies,
	})
}

// module returns the id of the module, which a board's id begins with.
func (j *job) module() string {
	if j.Module != "" {
		return j.Module
	}
	id, _, _ := strings.Cut(j.Boards[0].ID, ".")
	return id
}

// remedy is something that the maker does.
func remedy(key string, args ...words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: args}
}

// change is a remedy that changes this light.
func (j *job) change(key string, arg words.Arg) finding.Remedy {
	args := []words.Arg{words.Name("light", j.Light), arg}
	return finding.Remedy{Key: key, Args: args, Edit: finding.Edit{Do: "set-light", Args: args}}
}

func (j *job) remove() finding.Remedy {
	args := []words.Arg{words.Name("light", j.Light)}
	return finding.Remedy{Key: "remove-light", Args: args, Edit: finding.Edit{Do: "remove-light", Args: args}}
}

func (j *job) useStrip(id string) finding.Remedy {
	return j.change("strip-kind", words.Name("strip", id))
}

// useSource feeds the light from a driver that serves; where none does the run must be
// shorter.
func (j *job) useSource(kind hardware.Strip) []finding.Remedy {
	if d := j.driver(kind); d != "" {
		return []finding.Remedy{j.power(d)}
	}
	return []finding.Remedy{remedy("split-run")}
}

// power is the remedy that sets the source.
func (j *job) power(id string) finding.Remedy {
	args := []words.Arg{words.Name("light", j.Light), words.Name("source", id)}
	edit := finding.Edit{Do: "set-light", Args: []words.Arg{args[0], words.Name("power.source", id)}}
	return finding.Remedy{Key: "light-source", Args: args, Edit: edit}
}

// checkSize asks whether the groove can be cut in every board.
func (j *job) checkSize() bool {
	if j.Face != board.FaceA && j.Face != board.FaceB && j.Face != board.Back {
		name := words.Value{Is: words.IsName, Text: string(j.Face)}
		j.say(grooveFace, 0, name, words.Value{}, j.change("light-face", words.Name("face", string(board.FaceB))))
		return false
	}
	for i := range j.Boards {
		if !j.checkSection(i) {
			return false
		}
	}
	return true
}

// checkSection asks whether the groove lies within board i, wood on both sides of it
// and under it.
func (j *job) checkSection(i int) bool {
	b := &j.Boards[i]
	wide, deep := b.Width, b.Thickness
	if j.Face == board.Back {
		wide, deep = deep, wide
	}
	lo, hi := j.across(i)
	third := deep / unit.Length(max(j.Shop.Grooves.DeepestPart, 1))
	switch {
	case j.Width <= 0 || j.Width >= wide:
		j.say(grooveSize, i, words.LengthOf(j.Width), words.LengthOf(wide), j.change("groove-width", words.Length("width", wide/3)))
	case j.Depth <= 0 || j.Depth >= deep:
		j.say(grooveSize, i, words.LengthOf(j.Depth), words.LengthOf(deep), j.change("groove-depth", words.Length("depth", third)))
	case lo <= 0 || hi >= wide:
		j.say(grooveOff, i, words.LengthOf(j.FromFront.Value), words.LengthOf(wide-j.Width), j.change("groove-place", words.Length("fromFront", (wide-j.Width)/2)))
	default:
		return true
	}
	return false
}

// checkRuns asks whether the stops leave a groove in every board.
func (j *job) checkRuns() bool {
	for i, r := range j.runs {
		if r.end <= r.start || r.to <= r.from || r.from < 0 || r.to > j.Boards[i].Length {
			j.say(grooveEmpty, i, words.LengthOf(r.to-r.from), words.LengthOf(j.Boards[i].Length), j.remove())
			return false
		}
	}
	return true
}

// checkGroove asks for the wood under and before the groove, and at its ends.
func (j *job) checkGroove() {
	for i := range j.Boards {
		j.checkDepth(i)
		j.checkFront(i)
	}
	last := len(j.runs) - 1
	j.checkStop(0, "startStop", j.StartStop.Known, j.StartStop.Value, j.runs[0].openIn)
	j.checkStop(last, "endStop", j.EndStop.Known, j.EndStop.Value, j.runs[last].openTo)
	for i := range last {
		if !j.passes(i) {
			j.say(grooveCorner, i, words.LengthOf(j.Shop.Grooves.StopJoint), words.Value{}, remedy("two-lights", words.Name("light", j.Light)))
		} else if j.Face == board.Back {
			j.say(stripTurn, i, words.Value{}, words.Value{}, remedy("link-strips"))
		}
	}
}

// checkDepth asks for the wood under the groove. In the back edge the board is deep, and
// what the groove leaves beside other cuts is asked of all cuts.
func (j *job) checkDepth(i int) {
	part := unit.Length(max(j.Shop.Grooves.DeepestPart, 1))
	limit := j.Boards[i].Thickness / part
	if j.Face == board.Back || j.Depth <= limit {
		return
	}
	thick := words.Length("thickness", j.Depth*part)
	thicker := remedy("thicker-boards", words.Name("module", j.module()), thick)
	thicker.Edit = finding.Edit{Do: "set-module", Args: thicker.Args}
	j.say(grooveDeep, i, words.LengthOf(j.Depth), words.LengthOf(limit),
		j.change("groove-depth", words.Length("depth", limit)), thicker)
}

func (j *job) checkFront(i int) {
	_, hi := j.across(i)
	front := j.Boards[i].Width - hi
	if j.Face == board.Back || front >= j.Shop.Grooves.FromFront {
		return
	}
	j.say(grooveFront, i, words.LengthOf(front), words.LengthOf(j.Shop.Grooves.FromFront),
		j.change("groove-place", words.Length("fromFront", j.Shop.Grooves.FromFront)))
}

// checkStop asks how far from its end the groove of board i stops.
func (j *job) checkStop(i int, member string, known bool, stop unit.Length, open bool) {
	start, end := j.Boards[i].Ends()
	c := start
	if member == "endStop" {
		c = end
	}
	joint := c.AtA != c.AtB
	limit := j.Shop.Grooves.StopShown
	if joint {
		limit = j.Shop.Grooves.StopJoint
	}
	mend := j.change("groove-"+strings.ToLower(member[:len(member)-4])+"-stop", words.Length(member, limit))
	switch {
	case open && joint:
		j.say(grooveJoint, i, words.Value{}, words.LengthOf(limit), mend)
	case known && stop < limit:
		j.say(grooveStop, i, words.LengthOf(stop), words.LengthOf(limit), mend)
	}
}

func (j *job) noExit(i int) {
	j.say(leadExit, i, words.Value{}, words.LengthOf(fromBores), remedy("move-lead", words.Name("light", j.Light)))
}

func (j *job) unknownStrip() {
	j.say(stripUnknown, 0, words.Value{Is: words.IsName, Text: j.Strip}, words.Value{}, j.useStrip("strip-24-9.6"))
}

// checkStrip asks whether the strip lies in its groove, and is fed as far as it goes.
func (j *job) checkStrip(kind hardware.Strip) {
	s := &j.out.Strip
	if s.Units == 0 {
		j.say(stripNone, 0, words.LengthOf(s.Groove), words.LengthOf(kind.CutUnit()), j.remove())
	}
	if room := kind.Width + j.Shop.Grooves.ChannelPlay; j.Width < room {
		j.say(stripWide, 0, words.LengthOf(j.Width), words.LengthOf(room), j.change("groove-width", words.Length("width", room)))
	}
	if s.Length > kind.Longest {
		j.say(stripLong, 0, words.LengthOf(s.Length), words.LengthOf(kind.Longest), remedy("feed-both"), remedy("split-run"))
	}
	if kind.Watts > warm {
		j.say(stripWarm, 0, number(kind.Watts), number(warm), remedy("metal-channel"))
	}
}

// checkDrop holds the drop against the limit; both is what is left when the strip is
// fed at both ends.
func (j *job) checkDrop(kind hardware.Strip, both float64) {
	limit := mostDrop * kind.Volts
	if j.out.Strip.Drop <= limit {
		return
	}
	remedies := []finding.Remedy{remedy("feed-both-drop", words.Number("volts", hundredth(both))), remedy("thicker-lead")}
	if kind.Volts < 24 {
		remedies = append(remedies, j.useStrip("strip-24-9.6"))
	}
	j.say(voltDrop, 0, number(hundredth(j.out.Strip.Drop)), number(hundredth(limit)), remedies...)
}

func number(x float64) words.Value { return words.Value{Is: words.IsNumber, Number: x} }

func (j *job) noSource(kind hardware.Strip) {
	asked := float64(j.out.Strip.Watts) / reserve
	j.say(sourceNone, 0, number(tenth(asked)), words.Value{}, j.useSource(kind)...)
}

func (j *job) unknownSource(kind hardware.Strip) {
	j.say(sourceUnknown, 0, words.Value{Is: words.IsName, Text: j.Source}, words.Value{}, j.useSource(kind)...)
}

// checkSource asks whether the source has the strip's volts, and watts enough.
func (j *job) checkSource(kind hardware.Strip, source hardware.Source) {
	if source.Volts != kind.Volts {
		j.say(sourceVolts, 0, number(source.Volts), number(kind.Volts), j.useSource(kind)...)
		return
	}
	if j.out.Strip.SourceLoad <= 1 {
		return
	}
	room := unit.Nearest(longest(source.Watts, kind.Watts) * 1000)
	j.say(sourceSmall, 0, number(tenth(float64(j.out.Strip.Watts)/reserve)), number(source.Watts),
		append(j.useSource(kind), remedy("shorter-run", words.Length("length", room)))...)
}
