package plan

import (
	"slices"
	"strings"

	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// The words that a document may use, list by list.
func systems() []string { return []string{string(unit.Metric), string(unit.Inches)} }

func builds() []string {
	return []string{BuildStuds, BuildLath, BuildDabs, BuildBrick, BuildHollow, BuildAerated, BuildConcrete}
}

func linings() []string {
	return []string{"plasterboard", "plaster", "tile-over-plasterboard", "tile-over-plaster", "none"}
}

func states() []string { return []string{EdgesFound, OnePoint, Guess} }

func obstacles() []string {
	return []string{Socket, Switch, Pipe, Radiator, Window, Door, Picture, Furniture, Other}
}

// job checks the title block, the units and the counters.
func (c *checker) job() {
	if d := c.p.Job.Date; d != "" && !isDate(d) {
		c.add(badDate, spot{j: -1, k: -1}, "job.date", []words.Arg{words.Name("date", d)}, advice("write-date"))
	}
	units := spot{in: "units", j: -1, k: -1}
	c.word(units, "system", string(c.p.Units.System), systems(), false)
	if step := c.p.Units.Step; step < mm/1000 || step > 100*mm {
		// In a style with this step no length could be read, so they are names.
		c.figure(units, "step", nameOf(step), nameOf(mm/1000), nameOf(100*mm), step < mm)
	}
	counters := spot{in: "counters", j: -1, k: -1}
	c.count(counters, "wall", c.p.Counters.Wall, 0, mostNumber)
	c.count(counters, "module", c.p.Counters.Module, 0, mostNumber)
	c.count(counters, "arrangement", c.p.Counters.Arrangement, 0, mostNumber)
	c.count(counters, "part", c.p.Counters.Part, 0, mostNumber)
}

func nameOf(l unit.Length) words.Value { return words.Name("", l.String()).Value }

// mostNumber bounds the numbers in ids.
const mostNumber = 999_999_999

// isDate reports whether s is a day of ISO 8601: 2031-04-30.
func isDate(s string) bool {
	if len(s) != 10 || s[4] != '-' || s[7] != '-' {
		return false
	}
	digits := s[:4] + s[5:7] + s[8:]
	for i := range len(digits) {
		if digits[i] < '0' || digits[i] > '9' {
			return false
		}
	}
	month, day := s[5:7], s[8:]
	longest := "31"
	switch month {
	case "04", "06", "09", "11":
		longest = "30"
	case "02":
		longest = "29"
	}
	return "01" <= month && month <= "12" && "01" <= day && day <= longest
}

// word checks that a member holds one of the words that the document knows. What is
// only a fact about a wall is put right; what shapes wood stops.
func (c *checker) word(s spot, member, have string, known []string, fact bool) {
	if slices.Contains(known, have) {
		return
	}
	kind := unknownWord
	if fact {
		kind = unknownFact
	}
	args := []words.Arg{
		words.Word("what", "size."+kebab(member)), words.Name("found", have), words.Name("known", strings.Join(known, ", ")),
	}
	c.add(kind, s, member, args, advice("use-known-word", args[2]))
}

// fact likewise for a member that may be left out.
func (c *checker) fact(s spot, member, have string, known []string) {
	if have != "" {
		c.word(s, member, have, known, true)
	}
}

func (c *checker) wall(i int) {
	w, s := &c.p.Walls[i], inWall(i)
	c.length(s, "width", w.Width, 100*mm, 50*m1)
	c.length(s, "height", w.Height, 100*mm, 20*m1)
	c.known(s, "floorRise", w.FloorRise, -m1, m1)
	c.known(s, "ceilingRise", w.CeilingRise, -10*m1, 10*m1)
	c.fact(s, "build", w.Build, builds())
	c.fact(s.at("lining", -1), "kind", w.Lining.Kind, linings())
	c.known(s.at("lining", -1), "thickness", w.Lining.Thickness, 0, 300*mm)
	if w.BuiltYear.Known {
		c.count(s, "builtYear", w.BuiltYear.Value, 1000, 2200)
	}
	c.studs(i)
	for j := range w.Obstacles {
		c.obstacle(i, j)
	}
	for j, r := range w.Plumb {
		at := s.of("plumb", j)
		c.length(at, "x", r.X, 0, max(w.Width, 0))
		c.length(at, "over", r.Over, 10*mm, 10*m1)
		c.length(at, "lean", r.Lean, -m1, m1)
	}
	for j, r := range w.Flat {
		at := s.of("flat", j)
		c.length(at, "x", r.X, 0, max(w.Width, 0))
		c.length(at, "y", r.Y, -m1, 20*m1)
		c.length(at, "over", r.Over, 10*mm, 10*m1)
		c.length(at, "gap", r.Gap, -500*mm, 500*mm)
	}
}

// Limits of studs: from a batten to a post.
const (
	leastStud = 10 * mm
	mostStud  = 500 * mm
)

func (c *checker) studs(i int) {
	w, s := &c.p.Walls[i], inWall(i)
	all := s.at("studs", -1)
	c.fact(all, "material", w.Studs.Material, []string{"wood", "metal"})
	c.known(all, "width", w.Studs.Width, leastStud, mostStud)
	c.known(all, "depth", w.Studs.Depth, leastStud, mostStud)
	c.known(all, "spacing", w.Studs.Spacing, 50*mm, 5*m1)
	c.known(all, "first", w.Studs.First, -5*m1, 50*m1)
	c.fact(all, "state", w.Studs.State, states())
	if w.Studs.Spacing.Known && w.Studs.State == "" {
		remedy := finding.Remedy{Key: "find-edges-of-all", Args: []words.Arg{words.Name("wall", w.Label())}}
		c.add(studState, all, "state", nil, remedy)
	}
	for j := range w.Studs.Each {
		c.stud(i, j)
	}
}

func (c *checker) stud(i, j int) {
	w, d := &c.p.Walls[i], c.p.Walls[i].Studs.Each[j]
	s := inWall(i).of("studs", -1).at("each", j)
	c.word(s, "state", d.State, states(), true)
	c.known(s, "width", d.Width, leastStud, mostStud)
	if d.X < 0 || d.X > w.Width {
		c.outside(s, "x", words.LengthOf(d.X), words.LengthOf(w.Width))
	}
	for _, e := range w.Studs.Each[:j] {
		apart, least := (d.X - e.X).Abs(), w.width(d)/2+w.width(e)/2
		if apart < least || apart == 0 {
			f := finding.Finding{Kind: studsCrowded, Value: words.LengthOf(apart), Limit: words.LengthOf(least)}
			f.Remedies = []finding.Remedy{advice("measure-studs")}
			c.say(f, s, "x")
			return
		}
	}
}

// width returns the face width of a stud as far as it is known, else 0.
func (w *Wall) width(s Stud) unit.Length { return max(s.Width.Or(w.Studs.Width.Or(0)), 0) }

func (c *checker) obstacle(i, j int) {
	w, o := &c.p.Walls[i], c.p.Walls[i].Obstacles[j]
	s := inWall(i).of("obstacles", j)
	c.word(s, "kind", o.Kind, obstacles(), true)
	c.length(s, "width", o.Width, mm, 50*m1)
	c.length(s, "height", o.Height, mm, 20*m1)
	c.length(s, "x", o.X, -50*m1, 100*m1)
	c.length(s, "y", o.Y, -20*m1, 40*m1)
	c.known(s, "depth", o.Depth, 0, 10*m1)
	switch {
	case o.X >= w.Width:
		c.outside(s, "x", words.LengthOf(o.X), words.LengthOf(w.Width))
	case o.X+o.Width <= 0:
		c.outside(s, "x", words.LengthOf(o.X+o.Width), words.LengthOf(0))
	}
}

// outside adds the finding that something stands beyond the end of its wall.
func (c *checker) outside(s spot, member string, at, end words.Value) {
	f := finding.Finding{Kind: outsideWall, Value: at, Limit: end, Remedies: []finding.Remedy{advice("measure-again")}}
	c.say(f, s, member)
}
