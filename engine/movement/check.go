package movement

import (
	"cmp"
	"slices"

	"ledgewright/engine/board"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
)

// The rules of this room. That a gap may open is a note: it is a bound for joints that
// nothing holds.
var (
	mitreOpens   = finding.Kind{Key: "mitre-opens", Verdict: finding.Takes, Severity: finding.Note}
	housingOpens = finding.Kind{Key: "housing-opens", Verdict: finding.Takes, Severity: finding.Note}
	notChecked   = finding.Kind{Key: "movement-not-checked", Verdict: finding.Takes, Severity: finding.Unknown}
)

// Kinds lists the kinds of findings of this room.
func Kinds() []finding.Kind { return []finding.Kind{mitreOpens, housingOpens, notChecked} }

// tellable is a thousandth of an inch, the last digit in which gaps are told: one that is
// wider than its limit by less would read as equal to it.
const tellable = unit.Inch / 1000

// A checker looks for what would be seen.
type checker struct {
	of    *module.Result
	s     *shop.Moisture
	found []finding.Finding
}

// Check finds the gaps of a module that would be seen, and the woods whose movement is not
// known. Of mitres it names the one that opens widest, and says how many open too wide.
func Check(r *module.Result, s *shop.Moisture) []finding.Finding {
	c := checker{of: r, s: s}
	c.mitres(Mitres(r, s))
	t := timber{s: s}
	for i := range r.Boards {
		b := &r.Boards[i]
		switch {
		case !t.take(b.Wood):
			if !slices.ContainsFunc(r.Boards[:i], func(o board.Board) bool { return o.Wood == b.Wood }) {
				c.unknown(b.Wood)
			}
		case housed(r, b):
			c.divider(b, t.thickness.of(b.Thickness))
		}
	}
	return c.found
}

// seen reports whether a gap is seen.
func (c *checker) seen(gap unit.Length) bool { return gap >= c.s.Gap()+tellable }

// say adds a finding with the module's name.
func (c *checker) say(f *finding.Finding) {
	f.Place.Module = c.of.ID
	f.Args = append(f.Args, words.Name("module", cmp.Or(c.of.Name, c.of.ID)))
	c.found = append(c.found, *f)
}

func (c *checker) unknown(id string) {
	name := id
	if s, ok := wood.Find(id); ok {
		name = s.Name
	}
	c.say(&finding.Finding{
		Kind: notChecked, Value: words.Value{Is: words.IsName, Text: name},
		Remedies: []finding.Remedy{{Key: "choose-wood-that-is-known"}},
	})
}

// mitres says that mitres open: the widest, the first of equal ones, and how many.
func (c *checker) mitres(all []Mitre) {
	n, widest := 0, Mitre{}
	for _, m := range all {
		if c.seen(m.Most()) {
			n++
		}
		if m.Most() > widest.Most() {
			widest = m
		}
	}
	if n == 0 {
		return
	}
	side := "movement.heel"
	if widest.Toe > widest.Heel {
		side = "movement.toe"
	}
	c.gap(&finding.Finding{
		Kind: mitreOpens, Place: finding.Place{Corner: widest.Corner},
		Args: []words.Arg{words.Count("n", n), words.Count("corner", widest.Corner), words.Word("side", side)},
	}, widest.Most(), func(s *shop.Moisture) (most unit.Length) {
		for _, m := range Mitres(c.of, s) {
			most = max(most, m.Most())
		}
		return most
	}, "reinforce-and-seal", "use-thinner-boards")
}

// divider says that a gap comes and goes beside a divider.
func (c *checker) divider(d *board.Board, side Change) {
	if !c.seen(side.Range()) {
		return
	}
	c.gap(&finding.Finding{
		Kind: housingOpens, Place: finding.Place{Divider: d.ID},
		Args: []words.Arg{words.Name("divider", cmp.Or(d.Name, d.ID)), words.Fine("way", side.Growth())},
	}, side.Range(), func(s *shop.Moisture) unit.Length {
		t := timber{s: s}
		t.take(d.Wood)
		return t.thickness.of(d.Thickness).Range()
	}, "shoulder-the-divider")
}

// gap says that a gap opens too wide. What makes it smaller without another shape comes
// first, each with what is then left: flat-sawn boards, whose thickness moves less, and wood
// worked at the middle of what it has in use. Then come other ways, and last to take it as
// it is.
func (c *checker) gap(f *finding.Finding, now unit.Length, left func(*shop.Moisture) unit.Length, ways ...string) {
	f.Value, f.Limit = words.FineOf(now), words.FineOf(c.s.Gap())
	s := *c.s
	s.Sawn = string(wood.FlatSawn)
	if l := left(&s); l < now {
		offer(f, "saw-flat", "moisture.sawn", words.Value{Is: words.IsName, Text: s.Sawn}, l)
	}
	s.Sawn, s.Shop = c.s.Sawn, float64(int(s.UseLow+s.UseHigh+0.5))/2 // halves of a percent can be read off a meter
	if l := left(&s); l < now {
		offer(f, "work-at-moisture", "moisture.shop", words.Value{Is: words.IsNumber, Number: s.Shop}, l)
	}
	for _, key := range ways {
		f.Remedies = append(f.Remedies, finding.Remedy{Key: key})
	}
	const tenth = unit.Millimetre / 10
	if to := (now + tenth - 1) / tenth * tenth; to <= shop.MostSeen {
		offer(f, "accept-the-gap", "moisture.seen", words.LengthOf(to), to)
	}
	c.say(f)
}

// offer adds a remedy that sets one value of the shop's profile, after which a gap is left.
func offer(f *finding.Finding, key, path string, to words.Value, left unit.Length) {
	value := words.Arg{Name: "value", Value: to}
	f.Remedies = append(f.Remedies, finding.Remedy{Key: key, Args: []words.Arg{value, words.Fine("left", left)}, Edit: finding.Edit{
		Do: "set-shop", Args: []words.Arg{words.Name("path", path), value},
	}})
}
