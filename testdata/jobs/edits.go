package jobs

import (
	"strconv"
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
)

// RandomEdits returns edits of p as lines of their document, each of which can be read.
// They are made for p as it is: one after another some can no longer be done.
func RandomEdits(seed uint64, p plan.Plan) []string {
	e := &editor{random: random{draw: draw{seed}, system: p.Units.System}, p: p}
	var lines []string
	for range 1 + e.upTo(5) {
		lines = append(lines, e.line())
	}
	return lines
}

// An editor draws edits of one plan.
type editor struct {
	random
	p plan.Plan
}

// edit writes an edit with its arguments; a value is JSON text.
func edit(do string, args ...string) string {
	var b strings.Builder
	b.WriteString(`{"schema":"ledgewright/edit/1","do":"` + do + `"`)
	for i := 0; i < len(args); i += 2 {
		b.WriteString(`,"` + args[i] + `":` + args[i+1])
	}
	return b.String() + "}"
}

func quoted(s string) string { return `"` + s + `"` }

// mmOf draws a length from least to most as JSON text.
func (e *editor) mmOf(least, most unit.Length) string { return e.size(least, most).Decimal() }

// line draws one edit of whatever the plan has.
func (e *editor) line() string {
	for range 20 {
		var line string
		switch e.upTo(4) {
		case 0:
			line = e.onPlan()
		case 1:
			line = e.onWall()
		case 2:
			line = e.onArrangement()
		default:
			line = e.onModule()
		}
		if line != "" {
			return line
		}
	}
	return edit("set-job", "title", quoted("Nothing else to do"))
}

func (e *editor) onPlan() string {
	switch e.upTo(5) {
	case 0:
		return edit("set-job", "title", quoted("Title "+strconv.Itoa(e.upTo(100))))
	case 1:
		return edit("set-shop", "path", quoted("covers.pocket"), "value", e.mmOf(mm, 6*mm))
	case 2:
		return edit("set-shop", "path", quoted("brackets.rule"), "value", one(&e.draw, `"studs"`, `"fixed"`, `"overhang"`))
	case 3:
		return edit("add-module", "shape", quoted(one(&e.draw, "shelf", "L", "U", "Z", "box", "hexagon")))
	}
	text, err := document.Encode(e.module())
	if err != nil {
		panic("jobs: a module that has no document: " + err.Error())
	}
	return edit("add-module", "module", string(text))
}

func (e *editor) onWall() string {
	if len(e.p.Walls) == 0 {
		return ""
	}
	w := one(&e.draw, e.p.Walls...)
	id := quoted(w.ID)
	switch e.upTo(6) {
	case 0:
		return edit("set-wall", "wall", id, "width", e.mmOf(900*mm, 6000*mm))
	case 1:
		return edit("set-studs", "wall", id, "spacing", one(&e.draw, "400", "406.4", "600"), "first", e.mmOf(0, 400*mm), "state", `"edges-found"`)
	case 2:
		return edit("add-stud", "wall", id, "x", e.mmOf(0, w.Width), "state", `"edges-found"`)
	case 3:
		return edit("add-obstacle", "wall", id, "kind", `"switch"`, "x", e.mmOf(0, w.Width), "y", "1100", "width", "80", "height", "80")
	case 4:
		if len(w.Obstacles) == 0 {
			return ""
		}
		return edit("set-obstacle", "obstacle", quoted(one(&e.draw, w.Obstacles...).ID), "x", e.mmOf(0, w.Width))
	}
	return edit("set-wall", "wall", id, "floorRise", one(&e.draw, "null", "4.5"))
}

func (e *editor) onArrangement() string {
	if len(e.p.Arrangements) == 0 {
		return edit("add-arrangement", "wall", quoted(one(&e.draw, e.p.Walls...).ID))
	}
	a := one(&e.draw, e.p.Arrangements...)
	id := quoted(a.ID)
	if e.chance(30) || len(a.Poses) == 0 {
		return one(&e.draw, edit("add-line", "arrangement", id, "height", e.mmOf(300*mm, 2200*mm)),
			edit("set-datum", "arrangement", id, "level", e.mmOf(900*mm, 1500*mm)), edit("duplicate-arrangement", "arrangement", id))
	}
	m := quoted(one(&e.draw, a.Poses...).Module)
	switch e.upTo(5) {
	case 0:
		return edit("move", "arrangement", id, "module", m, "dx", e.mmOf(-200*mm, 200*mm), "dy", e.mmOf(-200*mm, 200*mm))
	case 1:
		return edit("move", "arrangement", id, "module", m, "x", e.mmOf(0, 4000*mm))
	case 2:
		return edit("turn", "arrangement", id, "module", m, "by", one(&e.draw, "90", "-90", "12.5"))
	case 3:
		return edit("flip", "arrangement", id, "module", m)
	}
	return edit("take-off", "arrangement", id, "module", m)
}

func (e *editor) onModule() string {
	if len(e.p.Modules) == 0 {
		return ""
	}
	m := one(&e.draw, e.p.Modules...)
	id := quoted(m.ID)
	board := strconv.Itoa(1 + e.upTo(len(m.Boards)))
	switch e.upTo(10) {
	case 0:
		return edit("set-board", "module", id, "board", board, "length", e.mmOf(200*mm, 900*mm))
	case 1:
		return edit("set-module", "module", id, "wood", quoted(one(&e.draw, wood.All()...).ID), "depth", e.mmOf(120*mm, 300*mm))
	case 2:
		return edit("set-module", "module", id, "thickness", e.mmOf(18*mm, 44*mm))
	case 3:
		return edit("add-board", "module", id, "length", e.mmOf(200*mm, 500*mm), "turn", one(&e.draw, "90", "-90", "33.3"))
	case 4:
		return edit("remove-board", "module", id, "board", board)
	case 5:
		return edit("duplicate-module", "module", id)
	case 6:
		return edit("mirror-module", "module", id)
	case 7:
		return edit("add-bracket", "module", id, "kind", `"rod-structure"`, "board", board, "at", e.mmOf(40*mm, 200*mm))
	case 8:
		return edit("set-edge", "module", id, "board", board, "arris", `"front-a"`, "cut", `"round"`, "size", e.mmOf(mm, 4*mm))
	}
	return e.inModule(m)
}

// inModule draws an edit of a corner, a light, a bracket or a divider.
func (e *editor) inModule(m plan.Module) string {
	id := quoted(m.ID)
	switch {
	case len(m.Corners) > 0 && e.chance(40):
		corner := strconv.Itoa(1 + e.upTo(len(m.Corners)))
		return edit("set-corner", "module", id, "corner", corner, "joint", one(&e.draw, `"mitre"`, `"butt-first"`, `"butt-second"`))
	case len(m.Brackets) > 0 && e.chance(50):
		return edit("set-bracket", "bracket", quoted(one(&e.draw, m.Brackets...).ID), "at", e.mmOf(40*mm, 200*mm))
	case len(m.Lights) > 0:
		return edit("set-light", "light", quoted(one(&e.draw, m.Lights...).ID), "depth", e.mmOf(3*mm, 8*mm))
	case len(m.Dividers) > 0:
		return edit("remove-divider", "divider", quoted(m.Dividers[0].ID))
	}
	return edit("remove-module", "module", id)
}
