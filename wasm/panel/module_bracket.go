package panel

import (
	"strings"

	"ledgewright/engine/finding"
	"ledgewright/engine/hardware"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// brackets are what the module hangs on.
func (e *editor) brackets() Node {
	var list kids
	for i := range e.m.Brackets {
		list.add(e.bracket(i))
	}
	at, _ := e.s.Plan.Style().Rounded(e.lengthOf(1) / 2)
	return counted("editor-brackets", e.term("editor.brackets"), len(e.m.Brackets), list,
		when(list == nil, note("brackets-none", e.term("editor.brackets-none"))),
		e.placeAgain(),
		when(len(e.m.Boards) > 0, rowOf(makes("add-bracket", e.term("editor.add-bracket"), line("add-bracket", "module", e.m.ID, "board", 1, "at", at)))))
}

// placeAgain puts all brackets of the module by a rule: the shop's own, or another.
func (e *editor) placeAgain() part {
	verb := func(key, member string, of []option) Node {
		return choice(e.s, app.Field{Key: e.m.ID + "." + key, Label: e.say("editor." + key), Kind: app.ChoiceField,
			Line: line("place-brackets", "module", e.m.ID, member, "$")}, append([]option{{"", e.term("editor.choose")}}, of...))
	}
	var families []option
	for _, f := range hardware.Families() {
		families = append(families, option{string(f), e.say("bracket." + string(f))})
	}
	return parts{
		rowOf(makes("place-again", e.say("editor.place-again", words.Word("rule", ruleWord(e.s.Plan.Shop.Brackets.Rule))), line("place-brackets", "module", e.m.ID))),
		two(verb("place-by", "rule", options(e.s, "editor.rule-", rules()...)), verb("place-with", "kind", families)),
	}
}

func rules() []string { return []string{shop.RuleStuds, shop.RuleOverhang, shop.RuleFixed} }

func ruleWord(rule string) string {
	for _, r := range rules() {
		if r == rule {
			return "editor.rule-" + rule
		}
	}
	return "form.not-known"
}

func (e *editor) bracket(i int) Node {
	b, count := e.m.Brackets[i], words.Count("n", i+1)
	f := e.form(b.ID, "bracket", "set-bracket", []words.Arg{count}, "bracket", b.ID)
	is := func(p finding.Place) bool { return p.Bracket == b.ID }
	head := e.say("editor.bracket-head", count, words.Name("kind", e.kindLabel(b.Kind)), words.Name("on", e.bears(b)), words.Length("at", b.At))
	return fold(e.s, b.ID, app.Thing{Kind: "bracket", Owner: e.m.ID, ID: b.ID}, head, e.worst(is),
		e.about(is, b.ID),
		e.kindChoice(f, b.Kind),
		e.bearing(f, b),
		two(f.length("at", b.At), f.choice("edge", b.Edge, e.edgesOf(b.Edge))),
		f.maybe("length", b.Length, "editor.own-length"),
		drops(b.ID+".remove", e.say("editor.remove-bracket", count), line("remove-bracket", "module", e.m.ID, "bracket", b.ID)))
}

// bears is what a bracket stands on, in words.
func (e *editor) bears(b plan.Bracket) string {
	for i, d := range e.m.Dividers {
		if d.ID == b.Divider {
			return e.dividerName(i)
		}
	}
	return e.say("editor.board-n", words.Count("n", b.Board))
}

// edgesOf are the edges in which a bracket may stand; the back is also meant where
// nothing is said.
func (e *editor) edgesOf(now string) []option {
	back := "back"
	if now == "" {
		back = ""
	}
	return []option{{back, e.term("editor.edge-back")}, {"front", e.term("editor.edge-front")}}
}

// bearing is the board or the divider that a bracket stands on, and a way to change from
// the one to the other.
func (e *editor) bearing(f form, b plan.Bracket) (out kids) {
	if b.Divider == "" {
		out.add(f.boardChoice(e, "board", b.Board))
		for i, d := range e.m.Dividers {
			name := e.dividerName(i)
			out.add(plainButton(f.key+".on-"+d.ID, e.say("editor.put-on", append(f.args, words.Name("name", name))...),
				app.DoLine{Line: swapped(line("set-bracket", "module", e.m.ID, "bracket", b.ID, "divider", d.ID), "board")}))
		}
		return out
	}
	var dividers []option
	for i, d := range e.m.Dividers {
		dividers = append(dividers, option{d.ID, e.dividerName(i)})
	}
	name := e.say("editor.board-n", words.Count("n", 1))
	return kids{f.choice("divider", b.Divider, dividers),
		plainButton(f.key+".on-board", e.say("editor.put-on", append(f.args, words.Name("name", name))...),
			app.DoLine{Line: swapped(line("set-bracket", "module", e.m.ID, "bracket", b.ID, "board", 1), "divider")})}
}

// swapped is the line of an edit that takes a member away besides.
func swapped(whole, member string) string { return whole[:len(whole)-1] + `,"` + member + `":null}` }

// kindChoice is the list of the kinds of brackets in the plan's own system, family by
// family; a family by itself takes the size that suits the module's depth.
func (e *editor) kindChoice(f form, now string) Node {
	n := f.choice("kind", now, []option{{now, e.kindLabel(now)}})
	for i := range n.Kids {
		if n.Kids[i].Tag == "select" {
			n.Kids[i].Kids = e.kindGroups(now)
		}
	}
	return n
}

func (e *editor) kindGroups(now string) (out kids) {
	known := false
	one := func(id, name string) Node {
		known = known || id == now
		return el("option", "o-"+id, at("value", id), flag("selected", id == now), text(name))
	}
	for _, family := range hardware.Families() {
		name := e.say("bracket." + string(family))
		group := el("optgroup", "g-"+string(family), at("label", name), one(string(family), e.say("editor.bracket-fitting", words.Name("name", name))))
		for _, k := range hardware.Of(family) {
			if e.ours(k) || k.ID == now {
				group.add(one(k.ID, e.bracketLabel(k)))
			}
		}
		out.add(group)
	}
	if !known {
		out = append(kids{one(now, now)}, out...)
	}
	return out
}

// ours reports whether a kind is sized in the plan's own system. The ids of those in
// inches end with the unit.
func (e *editor) ours(k hardware.BracketKind) bool {
	inches := strings.HasSuffix(k.ID, "in")
	return k.Family == hardware.Hook || inches == (e.s.Plan.Units.System == unit.Inches)
}

// kindLabel is the name of a kind or family; one that there is not stands as it is.
func (e *editor) kindLabel(id string) string {
	if hardware.IsFamily(id) {
		return e.say("bracket." + id)
	}
	if k, ok := hardware.Bracket(id); ok {
		return e.bracketLabel(k)
	}
	return id
}

// bracketLabel tells the kinds of a family apart: by the rod, the pitch, and what else
// stands in the id.
func (e *editor) bracketLabel(k hardware.BracketKind) string {
	name := words.Name("name", e.say("bracket."+string(k.Family)))
	label := e.say("editor.bracket-bare", name)
	switch {
	case k.Rod > 0 && k.Pitch > 0:
		label = e.say("editor.bracket-bar", name, words.Length("rod", k.Rod), words.Length("pitch", k.Pitch))
	case k.Rod > 0:
		label = e.say("editor.bracket-rod", name, words.Length("rod", k.Rod))
	case k.Pitch > 0:
		label = e.say("editor.bracket-pitch", name, words.Length("pitch", k.Pitch))
	}
	if v := variant(k); v != "" {
		label += ", " + e.say("editor.variant-"+v)
	}
	return label
}

// variant returns what an id says beside the family and sizes: "threaded".
func variant(k hardware.BracketKind) string {
	var out []string
	for _, word := range strings.Split(strings.TrimPrefix(k.ID, string(k.Family)), "-") {
		if word != "" && !digit(word[0]) {
			out = append(out, word)
		}
	}
	return strings.Join(out, "-")
}
