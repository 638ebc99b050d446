package hold

import (
	"math"

	"ledgewright/engine/board"
	"ledgewright/engine/strength"
)

// plate writes the pull and push of a plate's screws and the pressure under its heel.
func (w *working) plate(e *Effect, i int, v, moment figure) {
	r := &w.r.model.rods[i]
	p := w.r.model.plate(r)
	holes := w.site.Screws[r.fixing.Bracket]
	if moment.value > 0 && p.alone(r.fixing, holes) {
		return
	}
	levers := figure{}
	round := 0.0
	for n, s := range p.screws {
		y := num(p.leverX(s)).square()
		if n == 0 {
			levers = y
		} else {
			levers = levers.plus(y)
		}
		if !s.of.Slotted {
			round++
		}
	}
	if len(p.screws) == 0 || levers.value == 0 {
		return
	}
	sum := w.step("screw-levers", "mm²", levers)
	out := num(max(e.Rods[i].N, 0) / float64(len(p.screws)))
	if out.small(moment.over(num(100))) {
		out = num(0)
	}
	total := figure{}
	for _, s := range p.screws {
		pull := moment.x(num(p.leverX(s))).over(sum)
		if out.value > 0 {
			pull = pull.plus(out)
		}
		t := w.step("screw-pull", "N", pull)
		push := num(0)
		if !s.of.Slotted {
			push = w.step("screw-push", "N", v.over(num(round)))
		}
		if total.text == "" {
			total = t
		} else {
			total = total.plus(t)
		}
		if n := index(r.fixing, s.of); n < len(holes) {
			w.screw(ScrewDraws, r.fixing, s.of, &holes[n], t, push)
		}
	}
	w.heel(r, &p, total, holes)
}

// screw writes what of a screw is used.
func (w *working) screw(kind Kind, x *board.Fixing, s *board.Screw, h *Screw, pull, push figure) {
	if h.tried() {
		w.use(kind, 0, pull.over(num(h.bears(h.Pull))).plus(push.over(num(h.bears(h.Push)))))
		return
	}
	j := &judge{r: w.r, site: w.site, lasts: w.lasts}
	if j.unfit(h, s) != "" {
		return
	}
	d := s.Diameter.MM()
	grip := w.step("withdrawal", "N", num(strength.Withdrawal(StudG, d)).x(num(h.Grip)).x(num(float64(w.lasts))))
	z := w.step("yield-mode", "N", num(j.push(x, s, h)).x(num(float64(w.lasts))))
	w.use(kind, 0, pull.over(grip).plus(push.over(z)))
}

func (w *working) heel(r *rod, p *plate, total figure, holes []Screw) {
	if r.fixing.Seat == "lining" || !w.site.Lining.Known || w.site.Lining.Thickness == 0 || len(holes) == 0 {
		return
	}
	sum := w.step("heel-force", "N", total)
	pressure := w.step("heel-pressure", "MPa", sum.over(num(2*p.half[0]).x(num(strength.HeelHeight)).whole()))
	limit := strength.LiningBacked
	if p.hollow(r.fixing, holes) {
		limit = strength.LiningHollow
	}
	w.use(HeelCrushes, 0, pressure.over(num(limit)))
}

// boards writes the bending of each board where it is greatest.
func (w *working) boards(e *Effect) {
	n := 0
	for i := range w.r.model.boards {
		b := &w.r.model.boards[i]
		w.where = b.board.ID
		moment, where := 0.0, b.middles[0]
		worst := func(m float64, s Section) {
			if stress(m, s) > stress(moment, where) {
				moment, where = math.Abs(m), s
			}
		}
		for k := range b.members {
			m := &e.Members[n]
			n++
			worst(m.Start, b.least[k])
			worst(m.Middle, b.middles[k])
			worst(m.End, b.least[k+1])
		}
		high := w.step("board-stress", "MPa", num(moment).x(num(where.High)).over(num(where.Flat)))
		limit := w.step("board-limit", "MPa", num(float64(b.wood.MOR)/1e6).x(num(BendingPart)))
		w.use(BoardBends, 0, high.over(limit))
	}
}

// corners writes the stress in each mitre.
func (w *working) corners(e *Effect) {
	for i := range w.r.model.mitres {
		c := &w.r.model.mitres[i]
		force := &e.Members[c.member]
		m := force.Start
		if c.end {
			m = force.End
		}
		w.where = c.corner.First
		moment := w.step("corner-moment", "N mm", num(math.Abs(m)))
		if allowed, ok := c.tested(w.site.Tests); ok {
			w.use(CornerOpens, c.corner.Number, moment.over(num(allowed)))
			continue
		}
		if c.corner.Claim == 0 {
			continue
		}
		l := num(c.length)
		s := w.step("corner-stress", "MPa", num(6).x(moment).over(num(c.width).x(l).x(l).whole()))
		w.use(CornerOpens, c.corner.Number, s.over(num(float64(c.corner.Claim)/1e6)))
	}
}

// strips writes the screws of cleats, rails and hooks.
func (w *working) strips(e *Effect) {
	f := w.r.model
	for i := 0; i < len(f.links); {
		first := f.links[i]
		pull, push := 0.0, 0.0
		for ; i < len(f.links) && f.links[i].fixing == first.fixing && f.links[i].screw == first.screw; i++ {
			if f.links[i].way[2] != 0 {
				pull = max(e.Links[i], 0)
			} else {
				push = math.Sqrt(sq(push) + sq(e.Links[i]))
			}
		}
		x := &f.of.Fixings[first.fixing]
		holes := w.site.Screws[x.Bracket]
		if first.screw >= len(holes) {
			continue
		}
		w.where = x.Bracket
		w.screw(LinkDraws, x, &x.Screws[first.screw], &holes[first.screw],
			w.step("link-pull", "N", num(pull)), w.step("link-push", "N", num(push)))
	}
}
