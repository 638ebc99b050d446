package browser

import (
	"syscall/js"

	"ledgewright/wasm/app"
	"ledgewright/wasm/panel"
)

// A pane keeps the stage at the page's picture: in its place, with its drawing, in its
// view. It begins once the page can be used.
type pane struct {
	w     *window
	sight func() panel.Sight
	stage *Stage // nil: it has not begun
	seen  panel.Sight
}

// begin lets the stage come.
func (p *pane) begin() {
	p.stage = NewStage(js.Undefined(), func(bool) { p.tell() })
	p.stage.told = func(string) { p.tell() }
	p.tell()
	p.follow()
}

// tell tells the page what paints its picture, or why the stage does not. Where it does
// not any more the page's own picture is there before anything else happens.
func (p *pane) tell() {
	gone := p.w.loop.state.Painted.Shown && !p.stage.shown
	p.w.loop.Send(app.Stage{Shown: p.stage.shown, Why: p.stage.glass.plain()})
	if gone && !p.w.loop.changing {
		p.w.loop.Frame()
	}
}

// prints has the page's own picture brought up to date: paper shows that, not the stage.
func (p *pane) prints() {
	if p.w.loop.state.Painted.Shown {
		p.w.loop.Send(app.Stage{Why: "printing"})
		p.w.loop.Frame()
	}
}

// printed tells the page what is so again.
func (p *pane) printed() {
	if p.stage != nil {
		p.tell()
	}
}

// follow shows on the stage what the page shows, before the browser paints.
func (p *pane) follow() {
	if p.stage != nil {
		p.place()
		p.show()
	}
}

// place puts the stage into the glass of the page.
func (p *pane) place() {
	place := js.Undefined()
	if e, ok := p.w.loop.Tree.Glass(); ok {
		place = e.(*element).v
	}
	p.stage.Stand(place, Want(p.w.loop.state.Picture()))
}

// show hands over what has changed. Where the page has no picture the last one stays
// behind what it shows instead.
func (p *pane) show() {
	if !p.stage.Awake() {
		p.seen = panel.Sight{}
		return
	}
	now := p.sight()
	if now.Drawing == nil || now == p.seen {
		return
	}
	v, same := now.View, now.Number == p.seen.Number
	switch {
	case now.Over != nil && same:
		p.stage.Carry(nil, now.Over, v)
	case now.Over != nil:
		p.stage.Carry(now.Drawing, now.Over, v)
	case same:
		p.stage.Look(v)
	default:
		p.stage.Draw(now.Drawing, v)
	}
	p.seen = now
}
