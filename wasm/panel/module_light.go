package panel

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// lights are the strips in their grooves.
func (e *editor) lights() Node {
	var list kids
	for i := range e.m.Lights {
		list.add(e.light(i))
	}
	return counted("editor-lights", e.term("editor.lights"), len(e.m.Lights), list, rowOf(e.addLight()))
}

func (e *editor) light(i int) Node {
	l, count := e.m.Lights[i], words.Count("n", i+1)
	f := e.form(l.ID, "light", "set-light", []words.Arg{count}, "light", l.ID)
	is := func(p finding.Place) bool { return p.Light == l.ID }
	key := "editor.light-head"
	if l.First == l.Last {
		key = "editor.light-head-one"
	}
	head := e.say(key, count, words.Count("first", l.First), words.Count("last", l.Last))
	return fold(e.s, l.ID, app.Thing{Kind: "light", Owner: e.m.ID, ID: l.ID}, head, e.worst(is),
		e.about(is, l.ID),
		two(f.boardChoice(e, "first", l.First), f.boardChoice(e, "last", l.Last)),
		two(f.choice("face", l.Face, options(e.s, "face.", "A", "B", "back")), f.maybe("fromFront", l.FromFront, "editor.centred")),
		two(f.length("width", l.Width), f.length("depth", l.Depth)),
		two(f.maybe("startStop", l.StartStop, "editor.through"), f.maybe("endStop", l.EndStop, "editor.through")),
		f.choice("strip", l.Strip, e.strips()),
		f.unknown("power.source", l.Power.Source, e.sources()),
		two(f.unknown("power.exit", l.Power.Exit, options(e.s, "editor.exit-", "start", "end")), f.maybe("power.lead", l.Power.Lead, "form.not-known")),
		drops(l.ID+".remove", e.say("editor.remove-light", count), line("remove-light", "module", e.m.ID, "light", l.ID)))
}

// addLight adds a light along the first board, in a groove for the narrowest channel.
func (e *editor) addLight() Node {
	width, depth := pick(e.s, 12, 0), pick(e.s, 7, 0)
	if e.s.Plan.Units.System == unit.Inches {
		width, depth = unit.Inch/2, unit.Inch*5/16
	}
	return makes("add-light", e.term("editor.add-light"),
		line("add-light", "module", e.m.ID, "first", 1, "last", 1, "face", "B", "width", width, "depth", depth, "strip", hardware.Strips()[0].ID))
}

// strips are the light strips: volts, watts a metre, and how wide.
func (e *editor) strips() (out []option) {
	for _, s := range hardware.Strips() {
		out = append(out, option{s.ID, e.say("editor.strip", words.Number("volts", s.Volts), words.Number("watts", s.Watts), words.Length("width", s.Width))})
	}
	return out
}

// sources are the drivers and batteries.
func (e *editor) sources() (out []option) {
	for _, s := range hardware.Sources() {
		key, of := "editor.driver", words.Number("watts", s.Watts)
		if s.WattHours > 0 {
			key, of = "editor.battery", words.Number("hours", s.WattHours)
		}
		out = append(out, option{s.ID, e.say(key, words.Number("volts", s.Volts), of)})
	}
	return out
}
