package plan

import (
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Short names for limits.
const (
	mm = unit.Millimetre
	m1 = unit.Metre
)

// Check returns what is wrong with the document itself: ids, references, words and
// figures that no later room could work with. The findings stand in the order of the
// document, then those about ids. What depends on the shape of the boards is asked by
// the rooms that cut them.
//
// Limits of sizes are our assumption of what a workshop makes and a room holds; they
// are wide, so that they refuse mistakes and never a design.
func Check(p Plan) []finding.Finding {
	c := &checker{p: p, modules: make(map[string]bool, len(p.Modules))}
	for _, m := range p.Modules {
		c.modules[m.ID] = true
	}
	c.job()
	c.shop()
	for i := range p.Walls {
		c.wall(i)
	}
	for i := range p.Modules {
		c.module(i)
	}
	for i := range p.Arrangements {
		c.arrangement(i)
	}
	c.names()
	c.ids()
	return c.found
}

// A checker gathers findings. It makes places and words only for what is wrong, so
// that a plan in order costs little at every step of a drag.
type checker struct {
	p       Plan
	modules map[string]bool // ids
	found   []finding.Finding
}

// A spot is where something stands in the plan: walls[i], modules[i].boards[j] or
// modules[i].boards[j].edges[k].
type spot struct {
	top string // "walls", "modules", "arrangements"; empty for the rest of the plan
	i   int
	in  string // "boards", "poses", …
	j   int
	sub string // "edges", "each", or the name of a single part: "reinforcement"
	k   int
}

func inWall(i int) spot        { return spot{top: "walls", i: i, j: -1, k: -1} }
func inModule(i int) spot      { return spot{top: "modules", i: i, j: -1, k: -1} }
func inArrangement(i int) spot { return spot{top: "arrangements", i: i, j: -1, k: -1} }

// of returns the spot of item j of a list, or of a single part for j = −1.
func (s spot) of(in string, j int) spot { s.in, s.j = in, j; return s }

// at likewise, one level further down.
func (s spot) at(sub string, k int) spot { s.sub, s.k = sub, k; return s }

// path returns the path into the document, down to a member.
func (s spot) path(member string) string {
	out := ""
	step := func(name string, i int) {
		if name == "" {
			return
		}
		if out != "" {
			out += "."
		}
		out += name
		if i >= 0 {
			out += "[" + strconv.Itoa(i) + "]"
		}
	}
	step(s.top, s.i)
	step(s.in, s.j)
	step(s.sub, s.k)
	step(member, -1)
	return out
}

// place returns the place of a finding about a member of what stands at s.
func (c *checker) place(s spot, member string) finding.Place {
	at := finding.Place{Path: s.path(member)}
	switch s.top {
	case "walls":
		w := c.p.Walls[s.i]
		at.Wall = w.ID
		if s.in == "obstacles" {
			at.Obstacle = w.Obstacles[s.j].ID
		}
	case "modules":
		c.placeInModule(c.p.Modules[s.i], s, &at)
	case "arrangements":
		a := c.p.Arrangements[s.i]
		at.Arrangement, at.Wall = a.ID, a.Wall
		if s.in == "poses" {
			at.Module = a.Poses[s.j].Module
		}
	}
	return at
}

func (c *checker) placeInModule(m Module, s spot, at *finding.Place) {
	at.Module = m.ID
	switch s.in {
	case "boards":
		at.Board = m.ID + "." + strconv.Itoa(s.j+1)
	case "corners":
		at.Corner = s.j + 1
	case "dividers":
		at.Divider = m.Dividers[s.j].ID
	case "lights":
		at.Light = m.Lights[s.j].ID
	case "brackets":
		at.Bracket = m.Brackets[s.j].ID
	}
}

// where returns the arguments that say in words where s is: the word "where" and what
// its text asks for.
func (c *checker) where(s spot) []words.Arg {
	of := func(key string, args ...words.Arg) []words.Arg {
		return append([]words.Arg{words.Word("where", "where."+key)}, args...)
	}
	number := words.Count("where-number", s.j+1)
	switch s.top {
	case "walls":
		w := c.p.Walls[s.i]
		name := words.Name("where-wall", w.Label())
		switch {
		case s.in == "obstacles":
			o := w.Obstacles[s.j]
			return of("obstacle", name, words.Name("where-id", label(o.Name, o.ID)))
		case s.sub == "each":
			return of("stud", name, words.Count("where-number", s.k+1))
		case s.in == "plumb" || s.in == "flat":
			return of(s.in, name, number)
		}
		return of("wall", name)
	case "modules":
		return c.whereInModule(s, of, number)
	case "arrangements":
		return c.whereInArrangement(s, of)
	}
	return of("plan")
}

type phrase func(key string, args ...words.Arg) []words.Arg

func (c *checker) whereInModule(s spot, of phrase, number words.Arg) []words.Arg {
	m := c.p.Modules[s.i]
	name := words.Name("where-module", m.Label())
	switch s.in {
	case "boards":
		return of("board", name, number)
	case "corners":
		return of("corner", name, number)
	case "dividers":
		d := m.Dividers[s.j]
		return of("divider", name, words.Name("where-id", label(d.Name, d.ID)))
	case "lights":
		return of("light", name, words.Name("where-id", m.Lights[s.j].ID))
	case "brackets":
		return of("bracket", name, words.Name("where-id", m.Brackets[s.j].ID))
	}
	return of("module", name)
}

func (c *checker) whereInArrangement(s spot, of phrase) []words.Arg {
	a := c.p.Arrangements[s.i]
	name := words.Name("where-arrangement", a.Label())
	switch s.in {
	case "poses":
		id := a.Poses[s.j].Module
		if m, ok := c.p.Module(id); ok {
			id = m.Label()
		}
		return of("pose", name, words.Name("where-module", id))
	case "lines":
		return of("line", name, words.Name("where-id", a.Lines[s.j].ID))
	}
	return of("arrangement", name)
}

// add adds a finding about a member of what stands at s.
func (c *checker) add(k finding.Kind, s spot, member string, args []words.Arg, remedies ...finding.Remedy) {
	c.say(finding.Finding{Kind: k, Args: args, Remedies: remedies}, s, member)
}

// say adds f with its place and its words of where.
func (c *checker) say(f finding.Finding, s spot, member string) {
	f.Place = c.place(s, member)
	f.Args = append(c.where(s), f.Args...)
	c.found = append(c.found, f)
}

// advice is a remedy in words alone.
func advice(key string, args ...words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: args}
}

// length checks that a length lies within limits.
func (c *checker) length(s spot, member string, l, least, most unit.Length) {
	if l < least || l > most {
		c.figure(s, member, words.LengthOf(l), words.LengthOf(least), words.LengthOf(most), l < least)
	}
}

// known checks a length if it is known.
func (c *checker) known(s spot, member string, l document.Opt[unit.Length], least, most unit.Length) {
	if l.Known {
		c.length(s, member, l.Value, least, most)
	}
}

// count checks that a number lies within limits.
func (c *checker) count(s spot, member string, n, least, most int) {
	if n < least || n > most {
		c.figure(s, member, words.CountOf(n), words.CountOf(least), words.CountOf(most), n < least)
	}
}

// figure adds the finding that a figure is outside its limits.
func (c *checker) figure(s spot, member string, v, least, most words.Value, small bool) {
	kind, limit, key := tooLarge, most, "make-it-smaller"
	if small {
		kind, limit, key = tooSmall, least, "make-it-larger"
	}
	what := words.Word("what", "size."+kebab(member))
	args := []words.Arg{what}
	remedy := finding.Remedy{
		Key:  key,
		Args: append(c.where(s), what, words.Arg{Name: "limit", Value: limit}),
		Edit: c.set(s, words.Arg{Name: member, Value: limit}),
	}
	c.say(finding.Finding{Kind: kind, Value: v, Limit: limit, Args: args, Remedies: []finding.Remedy{remedy}}, s, member)
}

// set returns the edit that sets a member of what stands at s, or none where there is
// no such edit.
func (c *checker) set(s spot, member words.Arg) finding.Edit {
	do, args := "", []words.Arg(nil)
	switch {
	case s.sub != "":
		return finding.Edit{}
	case s.top == "walls" && s.in == "":
		do, args = "set-wall", []words.Arg{words.Name("wall", c.p.Walls[s.i].ID)}
	case s.top == "walls" && s.in == "obstacles":
		do, args = "set-obstacle", []words.Arg{words.Name("obstacle", c.p.Walls[s.i].Obstacles[s.j].ID)}
	case s.top == "modules":
		do, args = c.setInModule(c.p.Modules[s.i], s)
	case s.in == "lines":
		do, args = "set-line", []words.Arg{words.Name("line", c.p.Arrangements[s.i].Lines[s.j].ID)}
	}
	if do == "" {
		return finding.Edit{}
	}
	return finding.Edit{Do: do, Args: append(args, member)}
}

func (c *checker) setInModule(m Module, s spot) (string, []words.Arg) {
	id := words.Name("module", m.ID)
	switch s.in {
	case "":
		return "set-module", []words.Arg{id}
	case "boards":
		return "set-board", []words.Arg{id, words.Count("board", s.j+1)}
	case "corners":
		return "set-corner", []words.Arg{id, words.Count("corner", s.j+1)}
	case "dividers":
		return "set-divider", []words.Arg{words.Name("divider", m.Dividers[s.j].ID)}
	case "lights":
		return "set-light", []words.Arg{words.Name("light", m.Lights[s.j].ID)}
	case "brackets":
		return "set-bracket", []words.Arg{words.Name("bracket", m.Brackets[s.j].ID)}
	}
	return "", nil
}

// takeAway returns the remedy that removes what stands at s, in "dividers", "lights"
// or "brackets".
func (c *checker) takeAway(s spot) finding.Remedy {
	m, what := c.p.Modules[s.i], ""
	switch s.in {
	case "dividers":
		what = "divider"
		return finding.Remedy{Key: "take-away", Args: c.where(s), Edit: removal(what, m.Dividers[s.j].ID)}
	case "lights":
		what = "light"
		return finding.Remedy{Key: "take-away", Args: c.where(s), Edit: removal(what, m.Lights[s.j].ID)}
	}
	return finding.Remedy{Key: "take-away", Args: c.where(s), Edit: removal("bracket", m.Brackets[s.j].ID)}
}

func removal(what, id string) finding.Edit {
	return finding.Edit{Do: "remove-" + what, Args: []words.Arg{words.Name(what, id)}}
}

// kebab returns the name of a member as it stands in a key: housingDepth is
// housing-depth.
func kebab(member string) string {
	out := make([]byte, 0, len(member)+2)
	for i := range len(member) {
		b := member[i]
		if 'A' <= b && b <= 'Z' {
			out = append(out, '-')
			b += 'a' - 'A'
		}
		out = append(out, b)
	}
	return string(out)
}

// shop checks the profile that the plan carries.
func (c *checker) shop() {
	for _, f := range shop.Check(c.p.Shop) {
		args := []words.Arg{words.Name("path", f.Path), words.Name("found", f.Found()), words.Name("allowed", f.Allowed())}
		remedy := finding.Remedy{Key: "set-shop", Args: args}
		if v := value(f.Default); v.Is != words.None {
			remedy.Args = append(args[:1:1], words.Arg{Name: "value", Value: v})
			remedy.Key = "set-shop-default"
			remedy.Edit = finding.Edit{Do: "set-shop", Args: []words.Arg{words.Name("path", f.Path), {Name: "value", Value: v}}}
		}
		c.add(badShop, spot{j: -1, k: -1}, "shop."+f.Path, args, remedy)
	}
}

// value returns a value of the shop's table as one of a message, if it has that form.
func value(v any) words.Value {
	switch v := v.(type) {
	case unit.Length:
		return words.LengthOf(v)
	case unit.Angle:
		return words.AngleOf(v)
	case int:
		return words.CountOf(v)
	case float64:
		return words.Value{Is: words.IsNumber, Number: v}
	case string:
		return words.Value{Is: words.IsName, Text: v}
	case unit.System:
		return words.Value{Is: words.IsName, Text: string(v)}
	}
	return words.Value{}
}
