package plan

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/words"
)

// ids checks that every id is of its kind, stands once, and does not run ahead of the
// counter that gives ids.
func (c *checker) ids() {
	seen := make(map[string]bool, 8*len(c.p.Modules)+8)
	most := map[Letter]int{}
	id := func(l Letter, id string, s spot) {
		n, ok := number(id, l)
		if !ok {
			args := []words.Arg{words.Name("id", id), words.Name("letter", string(l))}
			c.add(badID, s, "id", args, advice("give-id", args[1]))
			return
		}
		if seen[id] {
			c.add(sameID, s, "id", []words.Arg{words.Name("id", id), words.Name("first", c.first(id).path(""))}, advice("give-other-id"))
			return
		}
		seen[id] = true
		most[l] = max(most[l], n)
	}
	c.eachID(id)
	c.counters(most)
}

// first returns the spot of the first thing with an id that stands in the plan.
func (c *checker) first(id string) (first spot) {
	found := false
	c.eachID(func(_ Letter, other string, s spot) {
		if other == id && !found {
			first, found = s, true
		}
	})
	return first
}

// eachID calls visit for everything in the plan that has an id.
func (c *checker) eachID(visit func(Letter, string, spot)) {
	for i, w := range c.p.Walls {
		visit(LetterWall, w.ID, inWall(i))
		for j, o := range w.Obstacles {
			visit(LetterObstacle, o.ID, inWall(i).of("obstacles", j))
		}
	}
	for i, m := range c.p.Modules {
		s := inModule(i)
		visit(LetterModule, m.ID, s)
		for j, d := range m.Dividers {
			visit(LetterDivider, d.ID, s.of("dividers", j))
		}
		for j, l := range m.Lights {
			visit(LetterLight, l.ID, s.of("lights", j))
		}
		for j, b := range m.Brackets {
			visit(LetterBracket, b.ID, s.of("brackets", j))
		}
	}
	for i, a := range c.p.Arrangements {
		visit(LetterArrangement, a.ID, inArrangement(i))
		for j, l := range a.Lines {
			visit(LetterLine, l.ID, inArrangement(i).of("lines", j))
		}
	}
}

// counters checks that no id in use lies above its counter: the next new thing would
// get an id again.
func (c *checker) counters(most map[Letter]int) {
	part := max(most[LetterDivider], most[LetterLight], most[LetterBracket], most[LetterObstacle], most[LetterLine])
	for _, k := range []struct {
		member string
		have   int
		need   int
	}{
		{"wall", c.p.Counters.Wall, most[LetterWall]},
		{"module", c.p.Counters.Module, most[LetterModule]},
		{"arrangement", c.p.Counters.Arrangement, most[LetterArrangement]},
		{"part", c.p.Counters.Part, part},
	} {
		if k.have >= k.need {
			continue
		}
		f := finding.Finding{Kind: counterLow, Value: words.CountOf(k.have), Limit: words.CountOf(k.need)}
		f.Args = []words.Arg{words.Word("what", "size."+k.member)}
		f.Remedies = []finding.Remedy{advice("raise-counter", words.Count("limit", k.need))}
		c.say(f, spot{in: "counters", j: -1, k: -1}, k.member)
	}
}
