package hold

import (
	"math"

	"ledgewright/engine/strength"
)

// rod writes how a rod, its bore, the wood before it and its hold on the wall are used.
func (w *working) rod(j *judge, e *Effect, i int, s *stand, shelf int, things, wood figure) {
	r := &w.r.model.rods[i]
	w.where = r.fixing.Bracket
	down, moment := w.forces(e, i, s, shelf, things, wood)
	if down.value <= 0 {
		return
	}
	v, m := w.resultant(e, i, down, moment)
	w.bends(r, v, m)
	w.bore(r, v, m)
	w.tip(j, r)
	if r.of.InWall > 0 {
		w.inStud(r, v, m)
		return
	}
	w.plate(e, i, v, moment)
}

// forces writes the force and the moment at the root: by statics where two rods of one board
// carry all of it and nothing ties it, else as the frame has them.
func (w *working) forces(e *Effect, i int, s *stand, shelf int, things, wood figure) (down, moment figure) {
	f := w.r.model
	q := e.Rods[i]
	q.M = max(q.M, f.unaided(e, i))
	if len(f.rods) != 2 || f.rods[0].bar != f.rods[1].bar || f.tied() || f.rods[0].bar != w.r.Shelves[shelf].bar {
		return w.step("force-frame", "N", num(q.V)), w.step("moment-frame", "N mm", num(q.M))
	}
	own := w.r.Weight.Rods
	other := &f.rods[1-i]
	here, there := f.rods[i].of.At.U.MM(), other.of.At.U.MM()
	apart := num(math.Abs(there - here))
	middle := num(centreOf(s.on))
	arm := num(there).less(middle)
	if there < here {
		arm = middle.less(num(there))
	}
	to := w.step("arm-things", "mm", arm)
	leverWood := num(own[i].V / (own[0].V + own[1].V) * apart.value)
	down = w.step("force", "N", things.x(to).plus(wood.x(leverWood)).whole().over(apart))
	depth := num(w.r.Shelves[shelf].depth)
	at := w.step("things-at", "mm", num(BooksAt).x(depth))
	woodAt := num((own[0].M + own[1].M) / (own[0].V + own[1].V))
	centre := w.step("centre", "mm", things.x(at).plus(wood.x(woodAt)).whole().over(things.plus(wood).whole()))
	moment = w.step("moment", "N mm", down.x(centre))
	if e.Rods[i].M > moment.value*1.001 {
		moment = w.step("moment-frame", "N mm", num(e.Rods[i].M))
	}
	return down, moment
}

// centreOf returns the middle of what stands on stretches.
func centreOf(on []Span) float64 {
	sum, length := 0.0, 0.0
	for _, p := range on {
		sum += p.length() * (p.From + p.To) / 2
		length += p.length()
	}
	return sum / length
}

// resultant takes in the force and the moment along the wall, where there are any to speak of.
func (w *working) resultant(e *Effect, i int, down, moment figure) (v, m figure) {
	v, m = down, moment
	if side := num(e.Rods[i].H); !side.small(down) {
		v = w.step("force-both", "N", hypotenuse(down, num(math.Abs(side.value))))
	}
	if twist := num(e.Rods[i].T); !twist.small(moment) {
		m = w.step("moment-both", "N mm", hypotenuse(moment, num(math.Abs(twist.value))))
	}
	return v, m
}

// behind adds the lever of the lining.
func (w *working) behind(v, m figure) figure {
	if w.site.Lining.Thickness == 0 {
		return m
	}
	return w.step("moment-behind", "N mm", m.plus(v.x(num(w.site.Lining.Thickness))))
}

func (w *working) bends(r *rod, v, m figure) {
	if r.of.Root == 0 || r.of.InWall > 0 && !w.site.Lining.Known {
		return
	}
	if r.of.InWall > 0 {
		m = w.behind(v, m)
	}
	d := num(r.of.Root.MM())
	section := w.step("rod-section", "mm³", num(math.Pi).x(d).x(d).x(d).over(num(32)))
	stress := w.step("rod-stress", "MPa", m.over(section))
	limit := w.step("rod-limit", "MPa", num(strength.PlainSteel).over(num(strength.SteelFactor)))
	w.use(RodBends, 0, stress.over(limit))
}

// bore writes the pressure in the bore and the force that splits the board.
func (w *working) bore(r *rod, v, m figure) {
	f := w.r.model
	b := &f.boards[r.bar]
	d, deep, mouth := num(r.of.Diameter.MM()), num(r.of.InBoard.MM()-r.mouth), num(r.mouth)
	force, contact := w.contact(r, v, m, deep, mouth)
	pressure := w.step("bore-pressure", "MPa", force.over(d))
	w.use(RodBears, 0, pressure.over(num(f.bears(r))))
	if !f.maySplit(r) {
		return
	}
	t := num(b.board.Thickness.MM())
	he := w.step("to-face", "mm", t.over(num(2)))
	bears := w.step("split-limit", "N", num(14).x(contact).x(he.over(num(1).less(he.over(t)).whole()).root()).x(num(strength.KmodPermanent)).over(num(strength.GammaM)))
	w.use(RodSplits, 0, v.x(num(strength.LoadFactorEN)).over(bears))
}

// contact writes the greatest force per mm in the bore, and over which length it may split
// the board, as judge.bearing has them.
func (w *working) contact(r *rod, v, m, deep, mouth figure) (force, contact figure) {
	at := w.step("load-in-bore", "mm", m.over(v).less(mouth))
	off := math.Abs(at.value - deep.value/2)
	switch {
	case w.r.model.tied() || at.value <= 0 || at.value >= deep.value:
		there := w.step("moment-mouth", "N mm", m.less(v.x(mouth)))
		force = w.step("bore-force", "N/mm", num(4).x(v).plus(num(6).x(num(math.Abs(there.value))).over(deep)).whole().over(deep))
		return force, w.step("bore-contact", "mm", deep.over(num(2)))
	case off <= deep.value/6:
		beside := w.step("off-middle", "mm", num(max(at.value, deep.value/2)).less(num(min(at.value, deep.value/2))))
		return w.step("bore-force", "N/mm", v.over(deep).x(num(1).plus(num(6).x(beside).over(deep)).whole())), deep
	case at.value > deep.value/2:
		contact = w.step("bore-contact", "mm", num(3).x(deep.less(at).whole()))
	default:
		contact = w.step("bore-contact", "mm", num(3).x(at))
	}
	return w.step("bore-force", "N/mm", num(2).x(v).over(contact)), contact
}

// tip writes the tearing of the wood before the tip, and before grooves there.
func (w *working) tip(j *judge, r *rod) {
	for _, s := range j.strips(r) {
		c, t := num(s.Out), num(s.Left)
		moment := w.step("strip-moment", "N mm", num(s.load).x(c).x(c).over(num(2)))
		wide := num(s.Width())
		if rod := s.Rod + s.Spread()*s.Out; s.Width() == rod {
			rod := num(s.Rod)
			wide = w.step("strip-width", "mm", rod.plus(num(s.Spread()).x(c)))
		}
		stress := num(6).x(moment).over(wide.x(t).x(t).whole())
		if s.Rib {
			stress = stress.x(num(strength.RibLeaves()))
		}
		tears := w.step("strip-stress", "MPa", stress.x(num(strength.LoadFactorEN)))
		limit := w.step("strip-limit", "MPa", num(strength.AcrossStrength()).x(num(strength.KmodPermanent)).over(num(strength.GammaM)))
		w.use(s.kind, 0, tears.over(limit))
	}
}

// inStud writes the pressure on a stud round a rod.
func (w *working) inStud(r *rod, v, m figure) {
	h := rodHole(r, w.site)
	if h == nil || w.unfitRod(h, r.of.Diameter.MM()) != "" {
		return
	}
	m = w.behind(v, m)
	deep, d := num(r.of.InWall.MM()), num(r.of.Diameter.MM())
	force := w.step("stud-force", "N/mm", num(4).x(v).plus(num(6).x(m).over(deep)).whole().over(deep))
	limit := w.step("stud-limit", "MPa", num(strength.BearingAlong(StudG, r.of.Diameter.MM())).over(num(4)).x(num(float64(w.lasts))))
	w.use(RodInWood, 0, force.over(d).over(limit))
}

func (w *working) unfitRod(h *Screw, d float64) Why {
	return (&judge{r: w.r, site: w.site}).unfitRod(h, d)
}
