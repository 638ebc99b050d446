package panel

import (
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// corners are the corners of the chain, each with the board before it.
func (e *editor) corners() Node {
	var list kids
	for i := range e.m.Corners {
		list.add(e.corner(i + 1))
	}
	return counted("editor-corners", e.term("editor.corners"), len(e.m.Corners), list,
		when(list == nil, note("corners-none", e.term("editor.corners-none"))))
}

func (e *editor) corner(n int) Node {
	c, key, count := e.m.Corners[n-1], e.m.ID+".c"+numeral(n), words.Count("n", n)
	f := e.form(key, "corner", "set-corner", []words.Arg{count}, "corner", n)
	is := func(p finding.Place) bool { return p.Corner == n }
	to := n%max(len(e.m.Boards), 1) + 1
	head := e.say("editor.corner-head", count, words.Count("to", to), words.Word("turn", turnWord(c.Turn)), words.Angle("by", c.Turn.Abs()), words.Word("joint", jointWord(c.Joint)))
	return fold(e.s, key, app.Thing{Kind: "corner", Owner: e.m.ID, Index: n}, head, e.worst(is),
		e.about(is, key),
		hint(field(e.s, f.typed("turn", app.AngleField, c.Turn.Decimal())), e.term("editor.turn-how")),
		rowOf(makes(key+".left", e.say("editor.quarter-left", count), line("set-corner", "module", e.m.ID, "corner", n, "turn", unit.QuarterTurn)),
			makes(key+".right", e.say("editor.quarter-right", count), line("set-corner", "module", e.m.ID, "corner", n, "turn", -unit.QuarterTurn))),
		two(f.choice("joint", c.Joint, options(e.s, "joint.", joints()...)), f.choice("reinforcement.kind", c.Reinforcement.Kind, e.reinforcements())),
		e.pieces(f, c.Reinforcement))
}

func joints() []string {
	return []string{plan.Mitre, plan.ButtFirst, plan.ButtSecond, plan.RebateFirst, plan.RebateSecond}
}

func jointWord(joint string) string {
	if slices.Contains(joints(), joint) {
		return "joint." + joint
	}
	return "form.not-known"
}

// turnWord is the direction of a turn in words.
func turnWord(turn unit.Angle) string {
	if turn < 0 {
		return "editor.turns-right"
	}
	return "editor.turns-left"
}

func (e *editor) reinforcements() []option {
	return append([]option{{"", e.term("editor.reinforcement-none")}}, options(e.s, "editor.reinforcement-", "spline", "tenon", "dowel", "key", "screw")...)
}

// pieces are the sizes of a reinforcement: those that its kind has, and those that the
// plan holds all the same.
func (e *editor) pieces(f form, r plan.Reinforcement) (out kids) {
	thick, wide, many := sizesOfKind(r.Kind)
	if thick || r.Thickness.Known {
		name := "reinforcement.thickness"
		n := f.maybe(name, r.Thickness, "editor.by-shop")
		out.add(n)
	}
	if wide || r.Width.Known {
		out.add(f.maybe("reinforcement.width", r.Width, "editor.by-shop"))
	}
	if many || r.Count.Known {
		out.add(f.maybeCount("reinforcement.count", r.Count, "editor.by-shop"))
	}
	if out == nil {
		return nil
	}
	return kids{two(out)}
}

// sizesOfKind says which sizes a kind of reinforcement has.
func sizesOfKind(kind string) (thickness, width, count bool) {
	switch kind {
	case "spline":
		return true, true, false
	case "tenon":
		return true, true, true
	case "dowel", "key", "screw":
		return true, false, true
	}
	return false, false, false
}

// maybeCount is a field for a whole number that may be missing.
func (f form) maybeCount(member string, n document.Opt[int], without string) Node {
	typed := f.typed(member, app.CountField, "")
	typed.Optional = true
	if n.Known {
		typed.Value = numeral(n.Value)
	}
	return placeholder(field(f.s, typed), say(f.s, without))
}
