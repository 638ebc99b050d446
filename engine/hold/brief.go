package hold

import (
	"math"
	"slices"

	"ledgewright/engine/strength"
)

// Loads of a moment: a hand that leans on a front edge, or an armful dropped on it; a knock
// from the side; a push from below. Nothing may break and nothing stay bent, so steel is
// held against its yield, and wood and screws are allowed what they bear for minutes. The
// shelf is empty: what stands on it is checked by itself.

// brief returns the greatest use of each kind by any push, with all rods and with each that
// may carry nothing away.
func (r *Response) brief(site *Site) (worst []Use, off []Push) {
	worst, off = r.briefAsIs(site, Hand)
	for _, less := range r.lacking {
		uses, more := less.briefAsIs(site, Hand)
		for _, p := range more {
			if !slices.Contains(off, p) {
				off = append(off, p)
			}
		}
		for i := range uses {
			uses[i].Missing = less.missing
		}
		worst = greatestOf(worst, uses)
	}
	return worst, off
}

// Child returns the greatest use of each kind by a child's weight on a front edge, to be told
// in words and never rated.
func (r *Response) Child(site *Site) []Use {
	uses, _ := r.briefAsIs(site, Child)
	return uses
}

// briefAsIs also lists the pushes under which no state of contact holds the module: they
// take it off the wall.
func (r *Response) briefAsIs(site *Site, hand float64) (worst []Use, off []Push) {
	for i := range r.Pushes {
		p := &r.Pushes[i]
		force := Knock
		if p.Kind == Down {
			force = hand
		}
		e, err := r.Together(Amount{force, &p.Effect})
		if err != nil {
			if !slices.Contains(off, p.Kind) {
				off = append(off, p.Kind)
			}
			continue
		}
		j := &judge{r: r, site: site, hand: hand, lasts: strength.Minutes}
		j.passing(&e, p)
		worst = greatestOf(worst, j.uses)
	}
	return worst, off
}

// greatestOf keeps the greater use of each kind.
func greatestOf(worst, uses []Use) []Use {
next:
	for _, u := range uses {
		for i := range worst {
			if worst[i].Kind == u.Kind {
				if u.Part > worst[i].Part {
					worst[i] = u
				}
				continue next
			}
		}
		worst = append(worst, u)
	}
	return worst
}

// passing checks an effect of weight and a push.
func (j *judge) passing(e *Effect, p *PushResponse) {
	f := j.r.model
	for i := range f.rods {
		r := &f.rods[i]
		on := Use{Bracket: r.fixing.Bracket, Board: r.fixing.Board}
		j.bends(on, r, e.Rods[i])
		j.root(on, r, e.Rods[i])
		if p.Kind == Down && r.bar == p.bar {
			j.tornByHand(on, r, p)
		}
	}
	j.mitres(e)
	j.links(e)
}

// tornByHand checks the wood in front of a rod's tip, and of a groove there, under a hand
// near the rod: it spreads from where it stands.
func (j *judge) tornByHand(on Use, r *rod, p *PushResponse) {
	f := j.r.model
	b := &f.boards[r.bar]
	u, depth, t := r.of.At.U.MM(), b.board.Width.MM(), b.board.Thickness.MM()
	if math.Abs(u-p.At) > nearStation {
		return
	}
	strip := strength.Strip{Out: depth - r.of.InBoard.MM(), Left: t, Rod: r.of.Diameter.MM(),
		Room: f.tributary(r).length(), Rib: f.ribbed(r.bar, u, strength.RibReach)}
	j.tornBriefly(on, TipTears, strip)
	for _, g := range b.grooves {
		if g.span.From <= u && g.span.To >= u && g.back >= r.of.InBoard.MM() {
			strip.Out, strip.Left, strip.Groove = depth-g.back, g.left, true
			j.tornBriefly(on, GrooveTears, strip)
		}
	}
}

// tornBriefly checks a strip under a hand at the front edge.
func (j *judge) tornBriefly(on Use, kind Kind, s strength.Strip) {
	if s.Out <= 0 || s.Left <= 0 {
		return
	}
	on.Kind, on.Value = kind, s.Stress(j.hand*s.Out)*strength.HandPart
	on.Limit = strength.TensionAcrossBriefly(0, s.Width()*s.Left*s.Out)
	j.use(on)
}
