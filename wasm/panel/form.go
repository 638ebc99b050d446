package panel

import (
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A form makes the controls of one thing of the plan: each changes one of its members.
type form struct {
	s     *app.State
	key   string      // begins the keys of its controls: "m1.b2" for "m1.b2.length"
	words string      // begins the keys of their labels: "editor.board" for "editor.board-length"
	args  []words.Arg // of the labels, besides {unit}
	do    string      // the edit, and what names the thing in it
	of    []any
}

// typed returns the field of a member with its label and its edit. A member of a member
// is written with a point: "lining.kind".
func (f form) typed(member string, kind app.FieldKind, value string) app.Field {
	name := kebab(member)
	args := append(f.args[:len(f.args):len(f.args)], unitWord(f.s))
	return app.Field{
		Key: f.key + "." + name, Label: say(f.s, f.words+"-"+name, args...),
		Kind: kind, Line: memberLine(f.do, f.of, member), Value: value,
	}
}

// memberLine is the line of an edit with the value to come in a member, or in a member
// of a member.
func memberLine(do string, of []any, member string) string {
	outer, inner, deep := strings.Cut(member, ".")
	if !deep {
		return line(do, append(of[:len(of):len(of)], member, "$")...)
	}
	whole := line(do, of...)
	return whole[:len(whole)-1] + `,"` + outer + `":{"` + inner + `":"$"}}`
}

// kebab writes the name of a member as in the keys of words: "floor-rise",
// "lining-kind".
func kebab(member string) string {
	var b strings.Builder
	for _, r := range member {
		switch {
		case r >= 'A' && r <= 'Z':
			b.WriteByte('-')
			b.WriteRune(r - 'A' + 'a')
		case r == '.':
			b.WriteByte('-')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// unitWord is the unit of the plan as the argument {unit}.
func unitWord(s *app.State) words.Arg {
	if s.Plan.Units.System == unit.Inches {
		return words.Word("unit", "form.in")
	}
	return words.Word("unit", "form.mm")
}

// exact returns a length as a field holds it: as the plan prints its lengths where
// nothing is lost by that, and else in full, so that a figure that is only looked at is
// never changed by its rounding.
func exact(s *app.State, l unit.Length) string {
	style := s.Plan.Style()
	if rounded, _ := style.Rounded(l); rounded == l {
		return style.Length(l)
	}
	if style.System != unit.Inches {
		return l.Decimal()
	}
	style.Step = unit.Inch / 64
	if rounded, _ := style.Rounded(l); rounded == l {
		return style.Length(l)
	}
	return l.String() // with its unit, which is not the plan's
}

// maybe is exact for a length that may be missing.
func maybe(s *app.State, l document.Opt[unit.Length]) string {
	if !l.Known {
		return ""
	}
	return exact(s, l.Value)
}

// length is a field for a length that is always known.
func (f form) length(member string, l unit.Length) Node {
	return field(f.s, f.typed(member, app.LengthField, exact(f.s, l)))
}

// maybe is a field for a length that may be missing; without says what that means, as a
// key of words.
func (f form) maybe(member string, l document.Opt[unit.Length], without string) Node {
	typed := f.typed(member, app.LengthField, maybe(f.s, l))
	typed.Optional = true
	return placeholder(field(f.s, typed), say(f.s, without))
}

// asked is maybe for a fact about the world: while it is missing, that is seen.
func (f form) asked(member string, l document.Opt[unit.Length]) Node {
	n := f.maybe(member, l, "form.not-measured")
	if !l.Known {
		n = asking(n)
	}
	return n
}

// text is a field for words; empty words are none.
func (f form) text(member, value, without string) Node {
	typed := f.typed(member, app.TextField, value)
	typed.Optional = true
	return placeholder(field(f.s, typed), say(f.s, without))
}

// choice is a list to choose from.
func (f form) choice(member, value string, options []option) Node {
	return choice(f.s, f.typed(member, app.ChoiceField, value), options)
}

// unknown is a list to choose from, with not known as the first of it.
func (f form) unknown(member, value string, options []option) Node {
	options = append([]option{{"", say(f.s, "form.not-known")}}, options...)
	n := f.choice(member, value, options)
	if value == "" {
		n = asking(n)
	}
	return n
}

// tick is a box to tick.
func (f form) tick(member string, on bool) Node {
	value := "false"
	if on {
		value = "true"
	}
	return tick(f.s, f.typed(member, app.TickField, value))
}

// signed is a length with its direction in words: its size in one field, its way in a
// list. The words of the two ways are "…-more" and "…-less" behind the member's.
func (f form) signed(member string, l document.Opt[unit.Length], optional bool) (out kids) {
	size := f.typed(member, app.LengthField, "")
	size.Optional = optional
	if l.Known {
		size.Value = exact(f.s, l.Value.Abs())
	}
	if l.Value < 0 {
		size.Sign = -1
	}
	n := field(f.s, size)
	if !l.Known {
		n = asking(placeholder(n, say(f.s, "form.not-measured")))
	}
	out = kids{n}
	if l.Known && l.Value != 0 {
		out.add(f.way(member, l.Value))
	}
	return out
}

// way is the list of the two ways of a signed length. It holds the length itself, so
// that choosing the other way is one edit.
func (f form) way(member string, l unit.Length) Node {
	typed := f.typed(member, app.LengthField, exact(f.s, l))
	key := f.words + "-" + kebab(member)
	typed.Key += "-way"
	typed.Label = say(f.s, key+"-way", f.args...)
	return choice(f.s, typed, []option{
		{exact(f.s, l.Abs()), say(f.s, key+"-more")},
		{exact(f.s, -l.Abs()), say(f.s, key+"-less")},
	})
}

// options returns the options of a list with their words under a prefix.
func options(s *app.State, prefix string, values ...string) []option {
	out := make([]option, len(values))
	for i, v := range values {
		out[i] = option{v, say(s, prefix+v)}
	}
	return out
}

// placeholder says in a field that is empty what that means.
func placeholder(n Node, says string) Node {
	for i := range n.Kids {
		if n.Kids[i].Tag == "input" {
			at("placeholder", says).join(n.Kids[i])
		}
	}
	return n
}

// asking marks a field whose answer is not known with the sign of what is not checked.
func asking(n Node) Node {
	for i := range n.Kids {
		if n.Kids[i].Tag == "label" {
			n.Kids[i].Kids = append([]Node{sign(finding.Unknown), text(" ")}, n.Kids[i].Kids...)
		}
	}
	attr("data-unknown").join(n)
	return n
}

// hint adds a sentence below a field.
func hint(n Node, sentence string) Node {
	for i := range n.Kids {
		if k := n.Kids[i]; k.Tag == "input" || k.Tag == "select" {
			describe(k, n.Key+"-hint")
		}
	}
	n.add(el("span", "hint", class("says"), at("id", n.Key+"-hint"), said(sentence)))
	return n
}

// describe adds the id of words about a control.
func describe(n Node, id string) {
	for i := range n.Attrs {
		if n.Attrs[i].Name == "aria-describedby" {
			n.Attrs[i].Value += " " + id
			return
		}
	}
	at("aria-describedby", id).join(n)
}

// two puts fields side by side.
func two(of ...part) Node { return boxed("fields", of) }

// boxed puts parts into a box.
func boxed(names class, of []part) Node {
	n := el("div", "", names)
	n.with(of)
	return n
}

// rowOf puts buttons in a row.
func rowOf(of ...part) Node { return boxed("row", of) }

// fold is a thing of a list, folded under a summary: a sentence that says its state, and
// signs. It opens when it, or a field in it, is pointed at.
func fold(s *app.State, key string, thing app.Thing, sentence string, signs part, of ...part) Node {
	open := thing.Kind != "" && s.At == thing || s.At.Kind == fieldThing && strings.HasPrefix(s.At.ID, key+".")
	n := el("details", key, class("fold"), flag("open", open), el("summary", key+".head", el("span", "", said(sentence)), signs))
	n.with(of)
	return n
}

// fieldThing is the kind of a field that the page goes to.
const fieldThing = "field"

// goTo returns the event that moves to a field, by its key.
func goTo(key string) app.Event { return app.Point{At: app.Thing{Kind: fieldThing, ID: key}} }

// plain is the class of a quiet button.
func plainButton(key, label string, e app.Event, of ...part) Node {
	n := button(key, label, e, class("btn plain"))
	n.with(of)
	return n
}

// makes is a button that makes an edit, written as in a document.
func makes(key, label, line string) Node { return button(key, label, app.DoLine{Line: line}) }

// nothing is no part at all.
func nothing() part { return parts(nil) }

// drops is a quiet button that takes a thing away.
func drops(key, label, line string) Node { return plainButton(key, label, app.DoLine{Line: line}) }

// blocked is a button that does nothing now, and the sentence that says why.
func blocked(key, label, why string) Node {
	return el("div", "",
		el("button", key, attr("type=button"), class("btn plain"), attr("aria-disabled=true"), at("aria-describedby", key+"-why"), said(label)),
		el("p", "", class("small mute"), at("id", key+"-why"), said(why)))
}

// notice is a caution: what the hazard is, what happens, what to do.
func notice(key, title, sentence string) Node {
	return el("article", key, class("finding is-warn"), at("aria-labelledby", key+"-title"),
		sign(finding.Mend), el("div", "",
			el("h4", "", at("id", key+"-title"), text(title)), el("p", "", said(sentence))))
}
