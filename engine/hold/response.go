package hold

import (
	"errors"
	"slices"

	"ledgewright/engine/beam"
	"ledgewright/engine/board"
	"ledgewright/engine/module"
)

// A Response is what unit loads do to a module as it hangs, before anything is compared
// with what it bears. It depends on the module, on how it hangs and on the lining, and on
// nothing else of the wall: a module that is moved keeps it.
type Response struct {
	model   *model
	Weight  Effect
	Shelves []ShelfResponse
	Pushes  []PushResponse
	touches []Effect    // of a push of 1 N at each touch
	flex    [][]float64 // how far touch i moves off the wall by a push at touch j
	lacking []*Response // of the module with each rod, or row of them, away that may carry nothing
	missing string      // of such a response: what carries nothing
	pinned  *Response   // with corners that carry no moment; nil: it does not stand then
}

// A ShelfResponse is one shelf's: each of one kilogram, spread over all of it, over either
// half, and over what hangs out beyond its last rod on either side where that is long.
type ShelfResponse struct {
	shelf
	Board string
	Clear float64 // length of all its stretches, mm
	depth float64 // mm
	ways  []stand
	Even  Effect
	Left  Effect
	Right Effect
	Over  []Overhang
}

// An Overhang is the part of a shelf beyond its last rod.
type Overhang struct {
	Span   Span
	Effect Effect // of one kilogram on it
}

// A PushResponse is one newton at a place of a front edge.
type PushResponse struct {
	Kind   Push
	bar    int
	At     float64 // u
	Effect Effect
}

// A Push is a kind of push.
type Push string

// The pushes.
const (
	Down Push = "hand"  // on a shelf's front edge, downwards
	Up   Push = "up"    // under a front edge
	Side Push = "knock" // along the wall at the highest corner
)

// leastOverhang is how far, mm, a shelf must hang out for all of a load to stand there.
// Our assumption.
const leastOverhang = 150

// Respond works out the response, or says why there is none: *beam.Loose for a module that
// nothing holds, *Unknown for a wood without figures.
func Respond(m *module.Result, h Hanging, w Lining, moisture float64) (*Response, error) {
	return RespondAssuming(m, h, w, moisture, Likely())
}

// RespondAssuming is Respond with other assumptions than the likely ones.
func RespondAssuming(m *module.Result, h Hanging, w Lining, moisture float64, a Assumed) (*Response, error) {
	r, err := responseOf(m, h, w, moisture, a)
	if err != nil {
		return nil, err
	}
	for _, l := range r.model.mayLack() {
		without := a
		without.lack = l.rods
		less, err := responseOf(m, h, w, moisture, without)
		if loose := (*beam.Loose)(nil); errors.As(err, &loose) {
			continue // it turns until the rods that were away carry, too
		}
		if err != nil {
			return nil, err
		}
		less.missing = l.name
		r.lacking = append(r.lacking, less)
	}
	return r, r.pin(m, h, a)
}

// pin finds out how the module stands with its corners pinned, if it does.
func (r *Response) pin(m *module.Result, h Hanging, a Assumed) (err error) {
	if a.Pinned || len(r.model.mitres) == 0 || r.model.dangles() {
		return nil
	}
	a.Pinned = true
	r.pinned, err = responseOf(m, h, r.model.lining, r.model.moisture, a)
	if loose := (*beam.Loose)(nil); errors.As(err, &loose) {
		r.pinned, err = nil, nil
	}
	return err
}

// dangles says whether a board hangs on one corner alone: with a hinge there it swings.
func (f *model) dangles() bool {
	for i := range f.boards {
		b := &f.boards[i]
		joined := 0
		for k := range f.of.Corners {
			if c := &f.of.Corners[k]; c.First == b.board.ID || c.Second == b.board.ID {
				joined++
			}
		}
		held := slices.ContainsFunc(f.of.Fixings, func(x board.Fixing) bool { return x.Board == b.board.ID })
		if joined == 1 && !held {
			return true
		}
	}
	return false
}

// responseOf works out one response.
func responseOf(m *module.Result, h Hanging, w Lining, moisture float64, a Assumed) (*Response, error) {
	f, ok := modelOf(m, h, w, a)
	if !ok {
		return nil, &Unknown{}
	}
	f.moisture = moisture
	if len(f.rods) == 0 && len(f.links) == 0 {
		return nil, &beam.Loose{Nodes: []int{0}, Names: []string{m.ID}, Way: 1}
	}
	system, err := f.frame.Ready()
	if err != nil {
		return nil, err
	}
	r := &Response{model: f}
	return r, r.fill(system)
}

// Unknown says that a board's wood has no figures.
type Unknown struct{}

// Error says so.
func (*Unknown) Error() string { return "a wood has no figures" }

// fill solves every case.
func (r *Response) fill(s *beam.System) error {
	f := r.model
	var into []*Effect
	var cases []beam.Case
	ask := func(c beam.Case, e *Effect) { cases, into = append(cases, c), append(into, e) }
	ask(f.weight(), &r.Weight)
	r.askShelves(ask)
	r.askPushes(ask)
	r.touches = make([]Effect, len(f.touches))
	for i, t := range f.touches {
		force := beam.Vec{0, 0, 1}
		ask(beam.Case{Nodes: []beam.NodeLoad{{Node: t.node, Wrench: beam.Wrench{Force: force, Moment: crossed(t.arm, force)}}}}, &r.touches[i])
	}
	answers, err := s.Solve(cases...)
	if err != nil {
		return err
	}
	for i := range answers {
		bare := len(cases[i].Lines) == 0 && len(cases[i].Points) == 0
		*into[i] = f.read(&answers[i], bare)
	}
	r.flex = make([][]float64, len(f.touches))
	for i := range r.flex {
		r.flex[i] = make([]float64, len(f.touches))
		for j := range r.flex[i] {
			r.flex[i][j] = r.touches[j].Away[i]
		}
	}
	return nil
}

// askShelves asks for the loads of every shelf.
func (r *Response) askShelves(ask func(beam.Case, *Effect)) {
	f := r.model
	shelves := f.shelves()
	r.Shelves = make([]ShelfResponse, len(shelves))
	for i, s := range shelves {
		out := &r.Shelves[i]
		b := f.boards[s.bar].board
		out.shelf, out.Board, out.depth = s, b.ID, b.Width.MM()
		for _, p := range s.spans {
			out.Clear += p.length()
		}
		ask(f.things(s, s.spans), &out.Even)
		ask(f.things(s, s.half(false)), &out.Left)
		ask(f.things(s, s.half(true)), &out.Right)
		overs := f.overhangs(s)
		out.Over = make([]Overhang, len(overs))
		for k, span := range overs {
			out.Over[k].Span = span
			ask(f.things(s, []Span{span}), &out.Over[k].Effect)
		}
		out.ways = out.stands()
	}
}

// overhangs returns what of a shelf stands out beyond the last fixing of its board on
// either side, where that is long. A board without fixings of its own has none.
func (f *model) overhangs(s shelf) (out []Span) {
	b := &f.boards[s.bar]
	first, last, any := b.board.Length.MM(), 0.0, false
	for i := range f.of.Fixings {
		x := &f.of.Fixings[i]
		if x.Board != b.board.ID || !x.Carries || !f.hangsOn(x) {
			continue
		}
		any = true
		first, last = min(first, x.At.U.MM()), max(last, x.At.U.MM())
		for k := range x.Rods {
			last = max(last, x.Rods[k].At.U.MM())
		}
	}
	if !any {
		return nil
	}
	from, to := s.spans[0].From, s.spans[len(s.spans)-1].To
	if first-from > leastOverhang {
		out = append(out, Span{from, first})
	}
	if to-last > leastOverhang {
		out = append(out, Span{last, to})
	}
	return out
}

// askPushes asks for a hand at each place of each shelf's front where it can be worst, for a
// push under it, and for a knock at the highest corner.
func (r *Response) askPushes(ask func(beam.Case, *Effect)) {
	f := r.model
	for i := range r.Shelves {
		b := r.Shelves[i].bar
		for _, u := range f.handPlaces(&r.Shelves[i]) {
			r.Pushes = append(r.Pushes, PushResponse{Kind: Down, bar: b, At: u}, PushResponse{Kind: Up, bar: b, At: u})
		}
	}
	if bar, u, ok := f.highest(); ok {
		r.Pushes = append(r.Pushes, PushResponse{Kind: Side, bar: bar, At: u})
	}
	for i := range r.Pushes {
		p := &r.Pushes[i]
		way := map[Push]beam.Vec{Down: {0, -1}, Up: {0, 1}, Side: {1, 0}}[p.Kind]
		ask(f.push(p.bar, p.At, way), &p.Effect)
	}
}

// handPlaces returns where a hand on a shelf is worst: over each of its rods, at its ends,
// and in the middle of every stretch.
func (f *model) handPlaces(s *ShelfResponse) (out []float64) {
	from, to := s.spans[0].From, s.spans[len(s.spans)-1].To
	out = append(out, from)
	for i := range f.rods {
		if u := f.rods[i].of.At.U.MM(); f.rods[i].bar == s.bar && u > from && u < to {
			out = append(out, u)
		}
	}
	for _, p := range s.spans {
		out = append(out, (p.From+p.To)/2)
	}
	return append(out, to)
}

// highest returns the board and place of the highest end of a board's centre line, the left
// one of two.
func (f *model) highest() (bar int, u float64, ok bool) {
	top := 0.0
	for i := range f.boards {
		b := &f.boards[i]
		for _, s := range []station{b.stations[0], b.stations[len(b.stations)-1]} {
			if y := f.frame.Nodes[s.node].At[1]; !ok || y > top+nearStation {
				bar, u, top, ok = i, s.u, y, true
			}
		}
	}
	return bar, u, ok
}

// Together returns the effect of the own weight and of amounts of other effects, with the
// back edges leaning on the wall where they do.
func (r *Response) Together(parts ...Amount) (Effect, error) {
	e := r.Weight.clone()
	for _, p := range parts {
		e.add(p.Of, p.Effect)
	}
	if len(r.touches) == 0 {
		return e, nil
	}
	pushes, err := lean(r.flex, e.Away)
	if err != nil {
		return Effect{}, err
	}
	for i, p := range pushes {
		if p != 0 {
			e.add(p, &r.touches[i])
		}
	}
	for i, away := range e.Away {
		if pushes[i] == 0 {
			e.Touches[i] = -TouchStiffness * away
		}
	}
	return e, nil
}

// An Amount is so many kilograms, or newtons, of an effect.
type Amount struct {
	Of     float64
	Effect *Effect
}
