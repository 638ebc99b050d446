package movement

import (
	"cmp"

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

// Check finds the gaps of a module that would be seen, and the woods whose movement is not
// known. Of mitres it names the one that opens widest, and says how many open too wide.
func Check(r module.Result, s shop.Moisture) (found []finding.Finding) {
	of := Of(r, s)
	c := checker{&r, s, of}
	for _, id := range of.Unknown {
		found = append(found, c.unknown(id))
	}
	if f, ok := c.mitres(); ok {
		found = append(found, f)
	}
	for i := range of.Dividers {
		if d := &of.Dividers[i]; d.Side.Range() > s.Gap() {
			found = append(found, c.divider(d))
		}
	}
	return found
}

// A checker looks for what would be seen.
type checker struct {
	of    *module.Result
	s     shop.Moisture
	moves Result
}

// module is the name of the module, for words.
func (c *checker) module() words.Arg { return words.Name("module", cmp.Or(c.of.Name, c.of.ID)) }

func (c *checker) unknown(id string) finding.Finding {
	name := id
	if s, ok := wood.Find(id); ok {
		name = s.Name
	}
	return finding.Finding{
		Kind: notChecked, Place: finding.Place{Module: c.of.ID}, Value: words.Value{Is: words.IsName, Text: name},
		Args: []words.Arg{c.module()}, Remedies: []finding.Remedy{{Key: "choose-wood-that-is-known"}},
	}
}

// widest returns the mitre that opens widest, the first of equal ones, and how many open
// wider than may be.
func widest(all []Mitre, limit unit.Length) (most Mitre, n int) {
	for _, m := range all {
		if m.Most() > limit {
			n++
		}
		if m.Most() > most.Most() {
			most = m
		}
	}
	return most, n
}

func (c *checker) mitres() (finding.Finding, bool) {
	m, n := widest(c.moves.Mitres, c.s.Gap())
	if n == 0 {
		return finding.Finding{}, false
	}
	side := "movement.heel"
	if m.Toe > m.Heel {
		side = "movement.toe"
	}
	f := finding.Finding{
		Kind: mitreOpens, Place: finding.Place{Module: c.of.ID, Corner: m.Corner},
		Value: words.FineOf(m.Most()), Limit: words.FineOf(c.s.Gap()),
		Args: []words.Arg{c.module(), words.Count("n", n), words.Count("corner", m.Corner), words.Word("side", side)},
	}
	f.Remedies = append(c.drier(m.Most(), mostOfMitres), finding.Remedy{Key: "reinforce-and-seal"}, finding.Remedy{Key: "use-thinner-boards"})
	f.Remedies = append(f.Remedies, c.accept(m.Most())...)
	return f, true
}

func mostOfMitres(r Result) unit.Length {
	m, _ := widest(r.Mitres, 0)
	return m.Most()
}

func (c *checker) divider(d *Divider) finding.Finding {
	f := finding.Finding{
		Kind: housingOpens, Place: finding.Place{Module: c.of.ID, Divider: d.ID},
		Value: words.FineOf(d.Side.Range()), Limit: words.FineOf(c.s.Gap()),
		Args: []words.Arg{c.module(), words.Name("divider", c.label(d.ID)), words.Fine("way", max(d.Side.Damp, d.Side.Dry, 0))},
	}
	f.Remedies = append(c.drier(d.Side.Range(), func(r Result) unit.Length {
		for i := range r.Dividers {
			if r.Dividers[i].ID == d.ID {
				return r.Dividers[i].Side.Range()
			}
		}
		return 0
	}), finding.Remedy{Key: "shoulder-the-divider"})
	f.Remedies = append(f.Remedies, c.accept(d.Side.Range())...)
	return f
}

// label is what a maker calls a board.
func (c *checker) label(id string) string {
	for i := range c.of.Boards {
		if b := &c.of.Boards[i]; b.ID == id && b.Role == board.Divider {
			return cmp.Or(b.Name, b.ID)
		}
	}
	return id
}

// drier lists what makes a gap smaller without another shape: flat-sawn boards, whose
// thickness moves less, and wood worked at the middle of what it will have in use. Each says
// what is then left.
func (c *checker) drier(now unit.Length, gap func(Result) unit.Length) (out []finding.Remedy) {
	flat, middle := c.s, c.s
	flat.Sawn = string(wood.FlatSawn)
	if left := gap(Of(*c.of, flat)); left < now {
		out = append(out, setShop("saw-flat", "moisture.sawn", words.Value{Is: words.IsName, Text: flat.Sawn}, words.Fine("left", left)))
	}
	// Whole and half percents can be read off a meter.
	middle.Shop = float64(int(c.s.UseLow+c.s.UseHigh+0.5)) / 2
	if left := gap(Of(*c.of, middle)); left < now {
		mc := words.Value{Is: words.IsNumber, Number: middle.Shop}
		out = append(out, setShop("work-at-moisture", "moisture.shop", mc, words.Fine("left", left), words.Arg{Name: "percent", Value: mc}))
	}
	return out
}

// accept is the remedy that takes a gap as it is: the limit goes up to the next tenth of a
// millimetre, if it can.
func (c *checker) accept(gap unit.Length) []finding.Remedy {
	const tenth = unit.Millimetre / 10
	to := (gap + tenth - 1) / tenth * tenth
	if to > shop.MostSeen {
		return nil
	}
	return []finding.Remedy{setShop("accept-the-gap", "moisture.seen", words.LengthOf(to), words.Fine("to", to))}
}

// setShop is a remedy that sets one value of the shop's profile.
func setShop(key, path string, value words.Value, args ...words.Arg) finding.Remedy {
	return finding.Remedy{Key: key, Args: args, Edit: finding.Edit{
		Do: "set-shop", Args: []words.Arg{words.Name("path", path), {Name: "value", Value: value}},
	}}
}
