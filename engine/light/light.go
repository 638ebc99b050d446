// Package light fits a light strip into a groove along one board or several: grooves,
// the strip in whole cut units, what feeds it, and the exit for its lead.
//
// With p the strip's power for a metre, L its length, V the volts, P = pL and I = P/V:
//
//	length   ⌊groove / unit⌋ · unit
//	source   P / 0.8 at most of what it gives (a fifth in reserve, common practice)
//	drop     2 ρ l I / A in the lead, r′ L I / 2 in a strip fed at one end, r′ L I / 8
//	         at both; ρ = 0.017241 Ω mm²/m (IEC 60028), r′ the strip's loop
//	run      V C η d / P hours on a battery of V C watt-hours, η its efficiency, d the
//	         share of it that is used
//
// The drop is asked to stay within 3 % of V, as wiring guides for strips do. A strip
// lies on the floor of its groove, so its length is taken there. lux.go says how bright it
// is; how warm it gets is not here.
package light

import (
	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

// Input is one light to be fitted.
type Input struct {
	Light     string                    // id in the plan
	Module    string                    // id of its module, for places and remedies; empty: taken from the first board's id
	Boards    []board.Board             // of the run, in walk order, with end cuts, and bores if they are known
	Joined    []bool                    // the groove passes the corner between board i and i+1; one fewer than Boards
	Face      board.Face                // FaceA, FaceB or Back; the same letter on every board
	FromFront document.Opt[unit.Length] // near side of the groove from the front edge, on the back edge from face A; missing: centred
	Width     unit.Length
	Depth     unit.Length
	StartStop document.Opt[unit.Length] // the groove stops so far from the first board's start; missing: it runs out
	EndStop   document.Opt[unit.Length] // likewise at the last board's end
	Strip     string                    // id in package hardware
	Source    string                    // id of a driver or battery in package hardware; empty: not chosen
	Exit      string                    // "start" (also when empty) or "end": where the lead leaves
	Lead      unit.Length               // length of the lead to the source; 0: none or not known
	Shop      shop.Profile
}

// Output is what fitting a light gives.
type Output struct {
	Features [][]board.Feature // to be added to each board of the run
	Strip    board.Strip
	Findings []finding.Finding
}

// A job is one light being fitted.
type job struct {
	Input
	runs []run
	out  Output
}

// A run is the groove in one board.
type run struct {
	from, to       unit.Length // of the prism that the cutter takes away, past a mitre's plane where it runs out
	start, end     unit.Length // on the floor of the groove: what the strip can use
	openIn, openTo bool        // runs out at the board's start, end
}

// Fit fits a light. A groove that cannot be cut is a finding, and nothing is cut.
func Fit(in Input) Output {
	j := job{Input: in}
	j.out.Features = make([][]board.Feature, len(in.Boards))
	j.out.Strip = board.Strip{Light: in.Light, Kind: in.Strip, Source: in.Source, Runs: []board.StripRun{}}
	if len(in.Boards) == 0 || !j.checkSize() {
		return j.out
	}
	for i := range in.Boards {
		j.runs = append(j.runs, j.run(i))
	}
	if !j.checkRuns() {
		return j.out
	}
	for i := range j.runs {
		j.out.Features[i] = append(j.out.Features[i], j.groove(i))
	}
	j.checkGroove()
	j.addExit()
	j.addStrip()
	return j.out
}

func (j *job) cause() board.Cause { return board.Cause{What: "light", ID: j.Light} }

// across returns the near and the far side of the groove in board i: v on a face, w on
// the back edge.
func (j *job) across(i int) (lo, hi unit.Length) {
	b := &j.Boards[i]
	switch {
	case j.Face == board.Back && j.FromFront.Known:
		lo = j.FromFront.Value
	case j.Face == board.Back:
		lo = (b.Thickness - j.Width) / 2
	case j.FromFront.Known:
		lo = b.Width - j.FromFront.Value - j.Width
	default:
		lo = (b.Width - j.Width) / 2
	}
	return lo, lo + j.Width
}

// walls returns the two w between which the groove lies in board i, and that of its
// floor's middle.
func (j *job) walls(i int) (mouth, far, floor unit.Length) {
	t := j.Boards[i].Thickness
	switch j.Face {
	case board.FaceA:
		return 0, j.Depth, j.Depth
	case board.FaceB:
		return t, t - j.Depth, t - j.Depth
	}
	lo, hi := j.across(i)
	return lo, hi, lo + (hi-lo)/2
}

// run works out the groove in board i.
func (j *job) run(i int) run {
	b := &j.Boards[i]
	start, end := b.Ends()
	a, z, floor := j.walls(i)
	t := b.Thickness
	r := run{
		from: min(start.At(a, t), start.At(z, t)), to: max(end.At(a, t), end.At(z, t)),
		start: start.At(floor, t), end: end.At(floor, t), openIn: true, openTo: true,
	}
	if stop, ok := j.stop(i, i == 0, i-1, j.StartStop); ok {
		r.from, r.start, r.openIn = stop, stop, false
	}
	if stop, ok := j.stop(i, i == len(j.Boards)-1, i, j.EndStop); ok {
		r.to, r.end, r.openTo = b.Length-stop, b.Length-stop, false
	}
	return r
}

// stop returns how far from the end of board i its groove stops, if it does: as asked
// at the run's own end, and as the shop does at a corner that it does not pass.
func (j *job) stop(i int, own bool, corner int, asked document.Opt[unit.Length]) (unit.Length, bool) {
	switch {
	case own:
		return asked.Value, asked.Known
	case j.passes(corner):
		return 0, false
	}
	return j.Shop.Grooves.StopJoint, true
}

// passes reports whether the groove passes the corner after board i.
func (j *job) passes(i int) bool { return i < len(j.Joined) && j.Joined[i] }

// groove returns the groove in board i.
func (j *job) groove(i int) board.Feature {
	r := j.runs[i]
	lo, _ := j.across(i)
	f := board.Feature{
		Kind: board.Groove, Cause: j.cause(), Enter: j.Face, Along: r.to - r.from, Across: j.Width,
		Depth: j.Depth, Through: r.openIn && r.openTo, After: board.OnBlank,
	}
	f.Mouth = j.point(i, r.from+f.Along/2, lo+j.Width/2, 0)
	return f
}

// point returns the point of board i at u, across the groove and so deep.
func (j *job) point(i int, u, across, deep unit.Length) board.Point {
	switch j.Face {
	case board.Back:
		return board.Point{U: u, V: deep, W: across}
	case board.FaceB:
		return board.Point{U: u, V: across, W: j.Boards[i].Thickness - deep}
	}
	return board.Point{U: u, V: across, W: deep}
}

// addStrip measures the strip, and works out what feeds it.
func (j *job) addStrip() {
	s := &j.out.Strip
	for _, r := range j.runs {
		s.Groove += r.end - r.start
	}
	kind, ok := hardware.FindStrip(j.Strip)
	if !ok {
		j.unknownStrip()
		return
	}
	s.Units, s.Length = j.fill(kind)
	s.Runs = j.lay(s.Length)
	s.Lumens, s.Kelvin = Lumens(kind), hardware.WarmWhite
	s.Dots = Dots(kind, (j.Depth - hardware.TapeThick).MM())
	j.feed(kind)
}

// fill returns how many whole cut units lie in the groove, and how long they are. On
// the back edge a strip does not turn a corner, so each board is filled by itself.
func (j *job) fill(kind hardware.Strip) (units int, long unit.Length) {
	u := kind.CutUnit()
	if j.Face != board.Back {
		n := max(j.out.Strip.Groove, 0) / u
		return int(n), n * u
	}
	for _, r := range j.runs {
		n := (r.end - r.start) / u
		units, long = units+int(n), long+n*u
	}
	return units, long
}

// lay returns where the strip lies: from the exit on, as far as it goes.
func (j *job) lay(long unit.Length) []board.StripRun {
	skip := unit.Length(0)
	if j.Exit == "end" {
		skip = j.out.Strip.Groove - long
	}
	out := []board.StripRun{}
	for i, r := range j.runs {
		from := r.start + max(skip, 0)
		to := min(r.end, from+long)
		skip -= r.end - r.start
		if to <= from {
			continue
		}
		long -= to - from
		lo, _ := j.across(i)
		mid := lo + j.Width/2
		out = append(out, board.StripRun{
			Board: j.Boards[i].ID, Face: j.Face,
			From: j.point(i, from, mid, j.Depth), To: j.point(i, to, mid, j.Depth),
		})
	}
	return out
}
