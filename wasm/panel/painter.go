package panel

import "ledgewright/wasm/app"

// Page returns the whole page.
func Page(s *app.State) Node { return new(Painter).Page(s) }

// A Painter makes pages and keeps picture and panel of the last one: while nothing that
// they show has changed, the next page has the same nodes in it, not only equal ones.
type Painter struct {
	last  picture
	round round
	head  made
	tools [2]made // of a picture that shows the whole wall, and of one that is moved about
	panel made
	stick made
	ledge ledged
	code  linkCode
	wood  tinted

	// The large parts: what stands in the place of the wall, and the panel's sections, of
	// the job in hand or of Arrange.
	boards  madeKids
	own     madeKids
	arrange [7]madeKids

	job   app.Job
	spare int  // large parts that may still be made anew
	late  bool // one of them has to wait
}

// everything is more large parts than a page has.
const everything = 1000

// Page returns the whole page.
func (p *Painter) Page(s *app.State) Node {
	n, _ := p.Part(s, everything)
	return n
}

// Part returns the page with no more than so many of its large parts made anew, and
// reports whether it is whole. The others stand in it as they were. A page of another job
// is always whole.
func (p *Painter) Part(s *app.State, most int) (page Node, whole bool) {
	if s.Job != p.job || s.Screen == app.AtStart {
		most = everything
	}
	p.job, p.spare, p.late = s.Job, most, false
	page = p.page(s)
	return page, !p.late
}

// made is a part of the page that shows what is decided, and the state that it was made of.
type made struct {
	node Node
	of   app.State
}

// once makes a part anew only if the state has changed in what such parts show. They stay
// while something is in the hand or is being typed into the strip.
func (m *made) once(s *app.State, anew func(*app.State) Node) Node {
	if m.node == nil || !samePanel(&m.of, s) {
		m.node, m.of = anew(s), *s
	}
	return m.node
}

// madeKids is a large part of the page: nodes in a row, and the state that they were made
// of.
type madeKids struct {
	kids  kids
	of    app.State
	known bool
}

// large is once for a large part, as long as any may be made anew. What makes it the same
// is for the part to say.
//
// A part whose fields say something new is made at once: what was understood of a letter
// stands below the field in the frame that follows it.
func (p *Painter) large(m *madeKids, s *app.State, same func(a, b *app.State) bool, anew func(*app.State) kids) kids {
	switch {
	case m.known && same(&m.of, s):
	case m.known && p.spare <= 0 && sameMap(m.of.Fields, s.Fields):
		p.late = true
	default:
		p.spare--
		*m = madeKids{anew(s), *s, true}
	}
	return m.kids
}

// aside is the sheet of the job in hand. Its frame is made anew with any part of it.
func (p *Painter) aside(s *app.State) Node {
	if p.panel.node != nil && samePanel(&p.panel.of, s) {
		return p.panel.node
	}
	late := p.late
	p.late = false
	n := p.side(s)
	p.panel = made{node: n}
	if !p.late {
		p.panel.of = *s
	}
	p.late = p.late || late
	return n
}

// sections are those of the job in hand.
func (p *Painter) sections(s *app.State) (out kids) {
	if s.Job != app.Arrange {
		return p.large(&p.own, s, samePanel, p.ownSections)
	}
	var all []piece
	for i, of := range arrangeParts() {
		same := sameDesk
		if !of.fields {
			same = sameShown
		}
		out.add(p.large(&p.arrange[i], s, same, func(s *app.State) kids {
			if all == nil {
				all = piecesOf(s, s.Plan, s.Build)
			}
			return of.of(s, all)
		})...)
	}
	return out
}

func (p *Painter) ownSections(s *app.State) kids {
	switch s.Job {
	case app.Survey:
		return survey(s)
	case app.Make:
		return makeJob(s)
	case app.Hang:
		return hang(s)
	}
	return agreeBy(s, p.link(s))
}
