package panel

import (
	"slices"
	"strconv"
	"strings"

	"ledgewright/engine"
	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// term returns words of the catalogue that need no figures.
func term(s *app.State, key string) string { return words.Text(key, nil, s.Plan.Style()) }

// say returns words of the catalogue in the plan's units.
func say(s *app.State, key string, args ...words.Arg) string {
	return words.Text(key, args, s.Plan.Style())
}

// said is a sentence with its figures set as figures.
func said(sentence string) part { return runs(sentence).alone() }

// alone is the row as it stands, or the only one in it by itself.
func (k kids) alone() part {
	switch len(k) {
	case 0:
		return nil
	case 1:
		return k[0]
	}
	return k
}

// runs are the runs of a sentence, its figures set as figures.
func runs(sentence string) kids {
	var out kids
	for sentence != "" {
		from, size := figureIn(sentence)
		if size == 0 {
			return append(out, text(sentence))
		}
		if from > 0 {
			out = append(out, text(sentence[:from]))
		}
		out = append(out, figure(sentence[from:from+size]))
		sentence = sentence[from+size:]
	}
	return out
}

// figureIn finds the first figure with its unit in a sentence: size 0 for none.
func figureIn(s string) (from, size int) {
	for i := 0; i < len(s); i++ {
		if !digit(s[i]) {
			continue
		}
		if i > 0 && (letter(s[i-1]) || s[i-1] == '-' || s[i-1] == '.') {
			for i+1 < len(s) && digit(s[i+1]) {
				i++
			}
			continue // part of a name, such as m2
		}
		return i, figureEnd(s[i:])
	}
	return 0, 0
}

// figureEnd returns the length of the figure that s begins with.
func figureEnd(s string) int {
	n := digits(s)
	for n+1 < len(s) && (s[n] == '.' || s[n] == '/') && digit(s[n+1]) {
		n += 1 + digits(s[n+1:])
	}
	if rest, ok := strings.CutPrefix(s[n:], "'-"); ok && rest != "" && digit(rest[0]) { // feet and inches
		n += 2 + digits(rest)
	}
	n += fractionAfter(s[n:])
	if strings.HasPrefix(s[n:], `"`) {
		return n + 1
	}
	for _, u := range [...]string{" mm", " in", " kg", " lb", "°", " m²", " W"} {
		if strings.HasPrefix(s[n:], u) && (n+len(u) == len(s) || !letter(s[n+len(u)])) {
			return n + len(u)
		}
	}
	return n
}

// fractionAfter returns the length of " 1/2" at the start of s, 0 where there is none.
func fractionAfter(s string) int {
	if len(s) < 4 || s[0] != ' ' {
		return 0
	}
	a := digits(s[1:])
	if a == 0 || 1+a >= len(s) || s[1+a] != '/' {
		return 0
	}
	b := digits(s[2+a:])
	if b == 0 {
		return 0
	}
	return 2 + a + b
}

func digit(c byte) bool  { return c >= '0' && c <= '9' }
func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c >= 0x80 }

func digits(s string) (n int) {
	for n < len(s) && digit(s[n]) {
		n++
	}
	return n
}

// figure returns a figure, with or without its unit, set in the face for figures.
func figure(s string) Node { return el("span", "", class("n"), fractions(s)) }

// length returns a length of the plan as a figure, without its unit.
func length(s *app.State, l unit.Length) Node { return figure(s.Plan.Style().Length(l)) }

// narrow and nobreak keep a figure together: narrow between thousands, nobreak before
// a fraction and before a unit.
const (
	narrow  = "\u202f"
	nobreak = "\u00a0"
)

// fractions is a figure of which only the fraction is set as one, whole inches stay as
// they are; thousands are parted from five digits on.
func fractions(s string) part { return parted(s).alone() }

// parted are the runs of a figure.
func parted(s string) kids {
	slash := strings.IndexByte(s, '/')
	if slash < 0 {
		return kids{text(grouped(strings.ReplaceAll(s, " ", nobreak)))}
	}
	from, to := slash, slash+1
	for from > 0 && digit(s[from-1]) {
		from--
	}
	for to < len(s) && digit(s[to]) {
		to++
	}
	if from == slash || to == slash+1 {
		return kids{text(s)}
	}
	var out kids
	if from > 0 {
		out = append(out, text(strings.ReplaceAll(s[:from], " ", nobreak)))
	}
	out = append(out, el("span", "", class("fr"), text(s[from:to])))
	if to < len(s) {
		out = append(out, parted(s[to:])...)
	}
	return out
}

// grouped parts the thousands of a figure of five digits or more before its point.
func grouped(s string) string {
	from := 0
	for from < len(s) && !digit(s[from]) {
		from++
	}
	n := digits(s[from:])
	if n < 5 {
		return s
	}
	var b strings.Builder
	b.WriteString(s[:from])
	for i := range n {
		if i > 0 && (n-i)%3 == 0 {
			b.WriteString(narrow)
		}
		b.WriteByte(s[from+i])
	}
	b.WriteString(s[from+n:])
	return b.String()
}

// button returns a button that sends an event. Its label may be overruled by an
// aria-label among the parts.
func button(key, label string, e app.Event, of ...part) Node {
	n := &Element{Tag: "button", Key: key, Attrs: make([]Attr, 0, 3), On: []Handler{{"click", e}}}
	if !slices.ContainsFunc(of, isClass) {
		class("btn").join(n)
	}
	attr("type=button").join(n)
	oneRun(label).join(n)
	n.with(of)
	return n
}

// oneRun is a sentence as one kid, so that a row of kids does not pull it apart.
func oneRun(sentence string) kids {
	k := runs(sentence)
	if len(k) > 1 {
		return kids{el("span", "", k)}
	}
	return k
}

// isClass reports whether a part is the attribute class.
func isClass(p part) bool {
	_, is := p.(class)
	return is
}

// act returns a button that makes edits, as one step.
func act(key, label string, e edit.Edit, of ...part) Node {
	return button(key, label, app.Do{Edits: []edit.Edit{e}}, of...)
}

// iconButton returns a button that shows an icon and, where there is room, its words.
func iconButton(key, name, label string, e app.Event, of ...part) Node {
	n := el("button", key, attr("type=button"), onClick(e), icon(name), el("span", "", class("txt"), said(label)))
	n.with(of)
	return n
}

// line writes the edit of a field as in a document, with the value "$" where what is
// typed goes: line("set-board", "module", "m1", "board", 2, "length", "$"). Values are
// strings, whole numbers, booleans, lengths, angles and lists of strings.
func line(do string, members ...any) string {
	var b strings.Builder
	b.WriteString(`{"schema":"` + edit.Schema + `","do":"` + do + `"`)
	for i := 0; i+1 < len(members); i += 2 {
		b.WriteString(`,"` + members[i].(string) + `":`)
		jsonValue(&b, members[i+1])
	}
	b.WriteByte('}')
	return b.String()
}

func jsonValue(b *strings.Builder, v any) {
	switch v := v.(type) {
	case string:
		quote(b, v)
	case int:
		b.WriteString(numeral(v))
	case bool:
		b.WriteString(strconv.FormatBool(v))
	case unit.Length:
		b.WriteString(document.LengthNode(v).Text)
	case unit.Angle:
		b.WriteString(document.AngleNode(v).Text)
	case []string:
		b.WriteByte('[')
		for i, s := range v {
			if i > 0 {
				b.WriteByte(',')
			}
			quote(b, s)
		}
		b.WriteByte(']')
	default:
		panic("panel: a value of an edit that no document holds")
	}
}

// quote writes a string of JSON. Ids and names of members need no escapes; what a maker
// typed may.
func quote(b *strings.Builder, s string) {
	plain := true
	for i := range len(s) {
		plain = plain && s[i] >= 0x20 && s[i] != '"' && s[i] != '\\'
	}
	if plain {
		b.WriteString(`"` + s + `"`)
		return
	}
	quoted, _ := document.Encode(s)
	b.Write(quoted)
}

// echo returns what was typed into a field so far, or its value.
func echo(s *app.State, f app.Field) (value string, e app.Echo) {
	if e, ok := s.Fields[f.Key]; ok {
		return e.Text, e
	}
	return f.Value, app.Echo{}
}

// field returns a labelled text field. What was understood, or what is wrong, stands
// below it.
func field(s *app.State, f app.Field, of ...part) Node {
	value, e := echo(s, f)
	id := "f-" + f.Key
	mode := "decimal"
	if f.Kind == app.TextField {
		mode = "text"
	}
	n := el("div", f.Key+"-field", class("field"),
		el("label", "", at("for", id), text(f.Label)),
		el("input", f.Key, at("id", id), attr("type=text"), at("inputmode", mode), attr("autocomplete=off"),
			at("value", value), when(e.Bad, attr("aria-invalid=true")),
			when(e.Says != "", at("aria-describedby", id+"-says")), typed(f)),
		says(id, e))
	n.with(of)
	return n
}

// says is the line under a field: nothing while nothing is typed.
func says(id string, e app.Echo) part {
	if e.Says == "" {
		return parts(nil)
	}
	if e.Bad {
		return el("span", "says", class("says is-warn"), at("id", id+"-says"), sign(finding.Mend), el("span", "", said(e.Says)))
	}
	return el("span", "says", class("says"), at("id", id+"-says"), said(e.Says))
}

// typed are the handlers of a field.
func typed(f app.Field) part {
	p := parts{on("input", app.TypedInto{Field: f}), on("change", app.Entered{Field: f})}
	switch f.Kind {
	case app.LengthField:
		p = append(p, used(f), on("keydown", app.StepField{Field: f, By: 1}))
	case app.AngleField, app.CountField:
		p = append(p, on("keydown", app.StepField{Field: f, By: 1}))
	}
	return p
}

// An option is one choice of a list.
type option struct{ value, label string }

// choice returns a labelled list to choose from. The field's value is chosen; a value
// that is not among the options stands as a first one without words for it.
func choice(s *app.State, f app.Field, options []option, of ...part) Node {
	id := "f-" + f.Key
	_, e := echo(s, f)
	n := el("div", f.Key+"-field", class("field"),
		el("label", "", at("for", id), text(f.Label)),
		el("select", f.Key, at("id", id), on("change", app.Entered{Field: f}), optionNodes(f.Value, options)),
		says(id, e))
	n.with(of)
	return n
}

func optionNodes(value string, options []option) (out kids) {
	known := false
	for _, o := range options {
		out = append(out, el("option", "o-"+o.value, at("value", o.value), flag("selected", o.value == value), text(o.label)))
		known = known || o.value == value
	}
	if !known {
		out = append(kids{el("option", "o-", at("value", value), attr("selected"), text(value))}, out...)
	}
	return out
}

// tick returns a labelled box to tick that makes the field's edit. Why it could not be
// ticked stands below it.
func tick(s *app.State, f app.Field, of ...part) Node {
	id := "f-" + f.Key
	_, e := echo(s, f)
	n := el("div", f.Key+"-field", class("ticked"),
		el("label", "label", class("choice"),
			el("input", f.Key, attr("type=checkbox"), flag("checked", f.Value == "true"), on("change", app.Entered{Field: f}),
				when(e.Bad, attr("aria-invalid=true"), at("aria-describedby", id+"-says"))),
			el("span", "", text(f.Label))),
		says(id, e))
	n.with(of)
	return n
}

// toggleBox returns a labelled box to tick that turns a switch of the page.
func toggleBox(s *app.State, key, label string, of app.Switch, ticked bool) Node {
	return el("label", key+"-field", class("choice"),
		el("input", key, attr("type=checkbox"), flag("checked", ticked), on("change", app.Show{What: of})),
		el("span", "", text(label)))
}

// section returns a part of the panel under a heading.
func section(key, title string, of ...part) Node {
	n := el("section", key, at("aria-labelledby", "h-"+key),
		el("h3", "", at("id", "h-"+key), text(title)))
	n.with(of)
	return n
}

// counted is section with a count at the end of its heading.
func counted(key, title string, count int, of ...part) Node {
	n := el("section", key, at("aria-labelledby", "h-"+key),
		el("h3", "", el("span", "", at("id", "h-"+key), text(title)), text(" "), figure(numeral(count))))
	n.with(of)
	return n
}

// sign returns the shape of a severity: a round tick for none and for a note, a dashed
// ring for what is not checked, a diamond for what is to be mended, a square for what
// stops the job.
func sign(of finding.Severity) Node {
	switch of {
	case finding.Stop:
		return signOf("is-warn", path("fill", "M2 2h20v20H2z"), path("cut", "M7.5 7.5l9 9M16.5 7.5l-9 9"))
	case finding.Mend:
		return signOf("is-warn", path("fill", "M12 0l12 12-12 12L0 12z"), path("cut", "M12 6.4v6.4M12 16.9v.2"))
	case finding.Unknown:
		return signOf("is-ask", svg("circle", "", class("dashed"), attr("cx=12"), attr("cy=12"), attr("r=10.5")),
			path("", "M9.2 9.6c.2-3.6 5.8-3.4 5.6-.1-.1 2-2.7 2.1-2.7 4.2M12.1 17v.2"))
	}
	return signOf("is-ok", svg("circle", "", class("fill"), attr("cx=12"), attr("cy=12"), attr("r=11")), path("cut", "M6.8 12.6l3.6 3.7 7-8.3"))
}

func signOf(is string, shapes ...part) Node {
	return svg("svg", "", class("sign "+is), at("viewBox", "0 0 24 24"), attr("aria-hidden=true"), parts(shapes))
}

// path returns a path of an icon.
func path(name, d string) Node {
	return svg("path", "", when(name != "", class(name)), at("d", d))
}

// tone returns the class of a severity.
func tone(of finding.Severity) string {
	switch of {
	case finding.Stop, finding.Mend:
		return "is-warn"
	case finding.Unknown:
		return "is-ask"
	}
	return "is-ok"
}

// label returns a state in a word with its shape.
func label(of finding.Severity, word string) Node {
	return el("span", "state", class("state "+tone(of)), sign(of), el("span", "", said(word)))
}

// findingCard returns the finding with that number in the build, with what would help.
func findingCard(s *app.State, i int) Node {
	f := s.Build.Findings[i]
	style := s.Plan.Style()
	card := el("article", app.FindingKey(i), class("finding "+tone(f.Kind.Severity)), attr("tabindex=-1"),
		flag("data-here", s.At.Kind == "finding" && s.At.Index == i+1),
		sign(f.Kind.Severity), el("h4", "", said(engine.Say(f, style))))
	var do kids
	for k, r := range f.Remedies {
		if k == 3 {
			break
		}
		do = append(do, remedy(s, f, r, app.FindingKey(i)+"-"+numeral(k+1), k == 0))
	}
	if do != nil {
		card.add(el("div", "do", class("do"), do))
	}
	return card
}

// remedy is a button where the tool can do it, and a sentence where the maker must.
func remedy(s *app.State, _ finding.Finding, r finding.Remedy, key string, first bool) Node {
	says := engine.SayRemedy(r, s.Plan.Style())
	if r.Edit.Do == "" {
		return el("p", key, class("small mute"), said(says))
	}
	e, err := edit.From(r.Edit)
	if err != nil {
		return el("p", key, class("small mute"), said(says))
	}
	name := "btn"
	if first {
		name = "btn main"
	}
	return act(key, strings.TrimSuffix(says, "."), e, class(name), tried(string(edit.Encode(e))))
}

// tried are the handlers that show what an edit would do while its button is pointed at
// or has the focus.
func tried(line string) part {
	on := func(kind, line string) *Handler { return on(kind, app.Try{Line: line}) }
	return parts{on("pointerenter", line), on("focusin", line), on("pointerleave", ""), on("focusout", "")}
}

// empty returns the frame of what is not there yet: a sentence, and what to do.
func empty(key, title, sentence string, of ...part) Node {
	n := el("div", key, class("empty"), el("b", "", text(title)), el("p", "", class("mute"), said(sentence)))
	n.with(of)
	return n
}

// note returns a small sentence.
func note(key, sentence string) Node { return el("p", key, class("small mute"), said(sentence)) }

// pairs returns a list of terms and figures.
func pairs(key string, of ...pair) Node {
	n := el("dl", key, class("kv"))
	for _, p := range of {
		n.add(el("dt", "", text(p.term)), el("dd", "", fractions(p.value)))
	}
	return n
}

// A pair is a term and its figure.
type pair struct{ term, value string }

// icon returns a small picture; it says nothing of itself.
func icon(name string) Node {
	of := icons(name)
	box := "0 0 24 24"
	if of.large {
		box = "0 0 26 26"
	}
	n := svg("svg", "", at("viewBox", box), attr("aria-hidden=true"))
	for _, d := range of.paths {
		if d != "" {
			n.add(path("", d))
		}
	}
	return n
}
