package browser

import (
	"ledgewright/wasm/app"
	"ledgewright/wasm/hand"
	"ledgewright/wasm/panel"
)

// An Outside is what a loop asks of the browser.
type Outside interface {
	// AskFrame asks for one call of Frame before the next picture is painted.
	AskFrame()
	// AskTurn asks for one call of Turn once the picture is painted.
	AskTurn()
	// Do carries out an effect.
	Do(e app.Effect)
	// Wake asks for a Tick of the hand at a time, in ms as its events count them.
	Wake(at float64)
}

// A Loop holds the state of the page. Events change it at once; the document follows
// once a frame, and not at all while nothing happens. Large parts of the page follow in
// turns of their own: what was done is seen first, and what is done meanwhile is heard
// between them.
type Loop struct {
	Step func(app.State, app.Event) (app.State, []app.Effect)
	// Page makes a page with no more than so many of its large parts made anew, and
	// reports whether it is whole.
	Page func(s app.State, most int) (page panel.Node, whole bool)
	Tree *Tree
	Out  Outside

	state   app.State
	moves   []hand.Event // that wait for the frame
	after   []app.Effect // that wait for the page
	entered app.Entered  // since the page was last whole
	asked   bool
	turning bool // a turn is asked for
	wakes   float64

	changing bool        // the document is being changed
	late     []app.Event // what it told meanwhile
}

// Send takes an event. Of a field that is finished twice, as by Enter and by leaving it,
// only the first counts until the page is whole, and the field with it. What the document
// tells while it is being changed waits until it is.
func (l *Loop) Send(e app.Event) {
	if l.changing {
		l.late = append(l.late, e)
		return
	}
	l.flush()
	if entered, ok := e.(app.Entered); ok {
		if entered.Field.Key != "" && entered.Field.Key == l.entered.Field.Key && entered.Text == l.entered.Text {
			return
		}
		l.entered = entered
	}
	l.step(e)
	l.ask()
}

// Hear returns what a signal means. What an element in a part that still waits would say
// is of the page before, so the page is made whole first.
func (l *Loop) Hear(s Signal) Answer {
	if l.turning && !l.changing && s.Mark != 0 {
		switch s.On {
		case "click", "change", "submit":
			l.change(everything)
		case "keydown":
			if !l.Tree.isHeld(s.Mark) { // a key in the picture is the hand's: nothing in a part says what it does
				l.change(everything)
			}
		}
	}
	return l.Tree.Hear(s)
}

// Point takes an event of the hand. Moves and turns of the wheel wait for the frame, and
// of several in a row only their sum counts.
func (l *Loop) Point(e hand.Event) {
	switch e.Kind {
	case hand.Motion, hand.Wheel:
		l.moves = joined(l.moves, e)
		l.ask()
	default:
		l.Send(app.Pointer{Event: e})
	}
}

// Frame brings the document up to the state.
func (l *Loop) Frame() {
	l.asked = false
	l.flush()
	l.change(0)
}

// Turn brings another part of the document up to the state.
func (l *Loop) Turn() {
	l.turning = false
	l.change(1)
}

// change brings the document nearer to the state, then sends what it told meanwhile.
func (l *Loop) change(most int) {
	l.changing = true
	if !l.show(most) && !l.turning {
		l.turning = true
		l.Out.AskTurn()
	}
	l.changing = false
	late := l.late
	l.late = nil
	for _, e := range late {
		l.Send(e)
	}
}

// everything is more large parts than a page has.
const everything = 1000

// show applies the page, or as much of it as is to be made at once, and reports whether
// it is whole. Where the focus is to move it is: what gets the focus may be in any part.
func (l *Loop) show(most int) bool {
	if l.after != nil {
		most = everything
	}
	page, whole := l.Page(l.state, most)
	if !whole {
		l.Tree.ApplyPart(page)
		return false
	}
	l.entered = app.Entered{}
	l.Tree.Apply(page)
	for _, f := range l.after {
		switch f := f.(type) {
		case app.Focus:
			l.Tree.Focus(f.Key)
		case app.Uncover:
			l.Tree.Uncover(f.Key)
		}
	}
	l.after = nil
	return true
}

// flush takes the moves that wait.
func (l *Loop) flush() {
	moves := l.moves
	l.moves = nil
	for _, m := range moves {
		l.step(app.Pointer{Event: m})
	}
}

func (l *Loop) step(e app.Event) {
	var effects []app.Effect
	l.state, effects = l.Step(l.state, e)
	for _, f := range effects {
		switch f.(type) {
		case app.Focus, app.Uncover:
			l.after = append(l.after, f)
		default:
			l.Out.Do(f)
		}
	}
	if at, wanted := l.state.Hand.Wakes(); wanted && at != l.wakes {
		l.wakes = at
		l.Out.Wake(at)
	}
}

func (l *Loop) ask() {
	if !l.asked {
		l.asked = true
		l.Out.AskFrame()
	}
}

// joined adds a move to those that wait: a pointer's place replaces its earlier one, and
// turns of the wheel add up, while nothing else came between.
func joined(moves []hand.Event, e hand.Event) []hand.Event {
	for i := len(moves) - 1; i >= 0; i-- {
		m := moves[i]
		switch {
		case m.Kind != e.Kind:
			return append(moves, e)
		case e.Kind == hand.Motion && m.ID == e.ID && m.Loose == e.Loose:
			moves[i] = e
			return moves
		case e.Kind == hand.Wheel && m.Control == e.Control && m.Shift == e.Shift:
			e.DX, e.DY = m.DX+e.DX, m.DY+e.DY
			moves[i] = e
			return moves
		case e.Kind == hand.Wheel:
			return append(moves, e)
		}
	}
	return append(moves, e)
}
