package app

import (
	"math"
	"strconv"

	"ledgewright/engine/module"
	"ledgewright/engine/unit"
	"ledgewright/engine/view"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/hand"
)

// A Round is the view in the round, which takes the place of the flat picture in Arrange
// and Make: the boards of the arrangement seen from anywhere and pulled apart along their
// joints. It is no part of the plan. Nothing that the hand or a key does in it changes one,
// and when it is left the flat picture is as it was.
type Round struct {
	Camera view.Camera
	Fitted bool         // shows all of it, and follows the size of the picture
	Apart  int          // per cent of the way that the boards are pulled apart
	Pulled *view.Pulled // worked out

	whole  *view.Round
	of     roundOf
	began  view.Camera // when the finger went down
	tapped tapped
	sheet  int // the sheet's height in the flat view, and 1; 0 where it was left alone
}

// roundOf is what a view in the round is worked out from. Builds are told apart by where
// their parts lie.
type roundOf struct {
	modules           *module.Result
	results           *wall.Result
	wall, arrangement string
	alone             string
}

// tapped is when and where a finger tapped last.
type tapped struct {
	known      bool
	time, x, y float64
}

// Two taps within this time, in ms, and this distance, in px, are a double tap: our
// assumption of what a hand does at ease.
const (
	doubleTime  = 400
	doubleReach = 24
)

// Steps of the view in the round.
const (
	OrbitStep   = 15.0  // degrees of a key or a button
	halfTurn    = 180.0 // degrees of a finger over the shorter side of the picture
	mostApart   = 100
	firstYaw    = -35.0 // from where one who comes in sees it
	firstPitch  = 20.0
	overhead    = 80.0 // degrees from which on it is seen from above
	sightSector = 45.0 // degrees of each of the eight sides
)

// Events of the view in the round.
type (
	// Orbit turns what is seen as a finger would that goes so many degrees to the right
	// and up.
	Orbit struct{ X, Y float64 }
	// SeeFrom looks from one of the fixed places, at all of it.
	SeeFrom struct{ Side view.Side }
	// PullApart pulls the boards apart by so many per cent of the way, in figures.
	PullApart struct{ Text string }
)

func (Orbit) event()     {}
func (SeeFrom) event()   {}
func (PullApart) event() {}

// RoundOffered reports whether there is something to see in the round.
func (s *State) RoundOffered() bool {
	return s.Screen == AtWork && (s.Job == Arrange || s.Job == Make && !s.On[Bench]) && len(s.result().Placed) > 0
}

// InRound reports whether the picture is the one in the round.
func (s *State) InRound() bool { return s.On[InTheRound] && s.RoundOffered() }

// AloneAt is the module that can be seen alone, because it is chosen and stands on the
// wall; empty for none.
func (s *State) AloneAt() string {
	id := last(s.Chosen)
	for _, p := range s.result().Placed {
		if p.Module == id {
			return id
		}
	}
	return ""
}

// InSight lists the modules that are seen in the round.
func (s *State) InSight() (ids []string) {
	alone := s.Round.of.alone
	for _, p := range s.result().Placed {
		if alone == "" || p.Module == alone {
			ids = append(ids, p.Module)
		}
	}
	return ids
}

// rounded works the view in the round out where something that it shows has changed, and
// drops it when it has been left.
func rounded(s State) State {
	if !s.InRound() {
		return flattened(s)
	}
	from := roundOf{modules: of(s.Build.Modules), results: of(s.Build.Arrangements), wall: s.Wall, arrangement: s.Arrangement}
	if s.On[Alone] {
		from.alone = s.AloneAt()
	}
	switch fresh := s.Round.Pulled == nil; {
	case fresh:
		s = enteredRound(s)
	case s.Round.of == from:
		return s
	case s.Round.of.alone != from.alone:
		s.Round.Fitted = true
	}
	w, _ := s.Plan.Wall(s.Wall)
	r := s.result()
	if from.alone != "" {
		r.Placed = only(r.Placed, from.alone)
	}
	s.Round.of, s.Round.whole = from, view.NewRound(w, r, s.Build.Modules)
	return s.pulled()
}

// only is a module among those that are placed.
func only(placed []wall.Placed, module string) []wall.Placed {
	for i := range placed {
		if placed[i].Module == module {
			return placed[i : i+1]
		}
	}
	return nil
}

// of is where the first of several lies.
func of[T any](all []T) *T {
	if len(all) == 0 {
		return nil
	}
	return &all[0]
}

// enteredRound begins with a view in the round. Where there is little room the sheet gives way
// to it.
func enteredRound(s State) State {
	s.Typing, s.Preview, s.Drag = Typing{}, Preview{}, Drag{}
	s.Round = Round{Camera: view.Camera{Yaw: firstYaw, Pitch: firstPitch}, Fitted: true}
	if s.Size.Narrow() {
		s.Round.sheet, s.SheetAt = s.SheetAt+1, 0
	}
	return s
}

// flattened leaves the view in the round.
func flattened(s State) State {
	if s.Round.Pulled == nil {
		return s
	}
	if s.SheetAt == 0 && s.Round.sheet > 0 {
		s.SheetAt = s.Round.sheet - 1
	}
	s.Round = Round{}
	for _, w := range [...]Switch{InTheRound, Alone} {
		if s.On[w] {
			s = toggle(s, w)
		}
	}
	return s
}

// pulled pulls the boards apart as far as is wanted.
func (s State) pulled() State {
	s.Round.Pulled = s.Round.whole.Open(float64(s.Round.Apart) / mostApart)
	return s.refitted(true)
}

// refitted shows all of it while nobody has zoomed. Where it need not be tight it never
// comes nearer: what turns keeps its size.
func (s State) refitted(tight bool) State {
	r := &s.Round
	if r.Pulled == nil || !r.Fitted || !(s.Size.Width > 0 && s.Size.Height > 0) {
		return s
	}
	c := r.Pulled.Fit(r.Camera, s.Size.Width/s.Size.Height)
	if !tight {
		c.Span = max(c.Span, r.Camera.Span)
	}
	r.Camera = c
	return s
}

// stepRound takes the events of the view in the round; without it they do nothing.
func stepRound(s State, e Event) (State, []Effect, bool) {
	switch e.(type) {
	case Orbit, SeeFrom, PullApart:
		if !s.InRound() {
			return s, nil, true
		}
	}
	if !s.InRound() {
		return s, nil, false
	}
	var effects []Effect
	switch e := e.(type) {
	case Orbit:
		s, effects = lookedFrom(s, s.Round.Camera.Orbit(-e.X, -e.Y))
	case SeeFrom:
		s.Round.Camera, s.Round.Fitted = s.Round.Camera.Seen(e.Side), true
		s, effects = lookedFrom(s.refitted(true), s.Round.Camera)
	case PullApart:
		n, err := strconv.Atoi(e.Text)
		if n = min(max(n, 0), mostApart); err == nil && n != s.Round.Apart {
			s.Round.Apart = n
			s, effects = turnedInSight(s.pulled())
		}
	case Zoom:
		s = s.roundZoomed(e.By, s.Size.Width/2, s.Size.Height/2)
	case Pan:
		s = s.roundPanned(-e.X*s.Size.Width, e.Y*s.Size.Height)
	case Fit:
		s.Round.Fitted = true
		s = s.refitted(true)
	case Resized:
		s.Size = e.Size
		s = refit(s).refitted(true)
	case Pointer:
		h, gestures := s.Hand.Step(e.Event)
		s.Hand = h
		for _, g := range gestures {
			var more []Effect
			s, more = roundGesture(s, g, e.Event.Time)
			effects = append(effects, more...)
		}
	case Key:
		return roundKey(s, e)
	default:
		return s, nil, false
	}
	return s, effects, true
}

// lookedFrom turns the camera, and says from where it looks.
func lookedFrom(s State, c view.Camera) (State, []Effect) {
	s.Round.Camera = c
	s, effects := turnedInSight(s.refitted(false))
	return s, append(effects, Say{Text: s.SeenFrom()})
}

// turnedInSight is a picture that is drawn anew: its grain waits until it rests.
func turnedInSight(s State) (State, []Effect) {
	s, wait := stirred(s)
	return s, []Effect{wait}
}

// roundGesture does what a gesture of the hand means in the round. None of them touches the
// plan.
func roundGesture(s State, g hand.Gesture, time float64) (State, []Effect) {
	r := &s.Round
	switch g.Kind {
	case hand.Tap:
		return roundTap(s, g, time)
	case hand.DragStart:
		r.began = r.Camera
		s.Drag = Drag{Active: true, Pan: true}
		return orbited(s, g)
	case hand.Drag:
		return orbited(s, g)
	case hand.Drop:
		s, effects := orbited(s, g)
		s.Drag = Drag{}
		return s, append(effects, Say{Text: s.SeenFrom()})
	case hand.DragCancel:
		s.Drag, r.Camera = Drag{}, r.began
	case hand.PanZoom:
		s = s.roundPanned(g.DX, g.DY)
		if g.Scale != 0 && g.Scale != 1 {
			s = s.roundZoomed(g.Scale, g.X, g.Y)
		}
	}
	return s, nil
}

// orbited turns what is seen as far as the finger has gone since it went down.
func orbited(s State, g hand.Gesture) (State, []Effect) {
	if !s.Drag.Active {
		return s, nil
	}
	by := halfTurn / s.shorter()
	c := s.Round.began.Orbit(-by*(g.X-g.FromX), by*(g.Y-g.FromY))
	at := s.Round.Camera
	at.Yaw, at.Pitch = c.Yaw, c.Pitch
	s.Round.Camera = at
	return turnedInSight(s.refitted(false))
}

// roundTap shows all of it when it is the second of two taps.
func roundTap(s State, g hand.Gesture, time float64) (State, []Effect) {
	t := s.Round.tapped
	if t.known && time-t.time <= doubleTime && math.Hypot(g.X-t.x, g.Y-t.y) <= doubleReach {
		s.Round.tapped, s.Round.Fitted = tapped{}, true
		return s.refitted(true), nil
	}
	s.Round.tapped = tapped{true, time, g.X, g.Y}
	return s, nil
}

// roundKey does what a key means while the picture in the round has the focus. Those with
// Control or Command mean what they do everywhere.
func roundKey(s State, k Key) (State, []Effect, bool) {
	if k.Control {
		return s, nil, false
	}
	right, up, ok := arrow(k.Name)
	var e Event
	switch {
	case k.InField:
	case ok && k.Shift:
		e = Pan{X: panStep * float64(right), Y: panStep * float64(up)}
	case ok:
		e = Orbit{X: OrbitStep * float64(right), Y: OrbitStep * float64(up)}
	case k.Name == "+" || k.Name == "=":
		e = Zoom{By: keyZoom}
	case k.Name == "-":
		e = Zoom{By: 1 / keyZoom}
	case k.Name == "0":
		e = Fit{}
	case k.Name == "Escape":
		e = Show{What: InTheRound}
	}
	if e == nil {
		return s, nil, true
	}
	s, effects := Step(s, e)
	return s, effects, true
}

// keyZoom is what the keys + and − enlarge by.
const keyZoom = 1.25

func (s *State) shorter() float64 { return max(min(s.Size.Width, s.Size.Height), 1) }

// RoundPicture is the camera that lays the picture in the round, whose millimetres are
// counted from the middle of the boards, on the screen.
func (s *State) RoundPicture() Camera {
	c := s.Round.Camera
	return Camera{X: c.X, Y: c.Y, Scale: s.shorter() / max(c.Span, 1), Fitted: s.Round.Fitted}
}

// roundPanned moves the picture by pixels.
func (s State) roundPanned(dx, dy float64) State {
	k := s.RoundPicture().Scale
	s.Round.Camera, s.Round.Fitted = s.Round.Camera.Pan(dx/k, -dy/k), false
	return s
}

// roundZoomed enlarges about a pixel, which stays where it is.
func (s State) roundZoomed(by, px, py float64) State {
	x, y := s.RoundPicture().mm(px, py, s.Size)
	s.Round.Camera, s.Round.Fitted = s.Round.Camera.Zoom(by, x, y), false
	return s
}

// SeenFrom says from where the boards are seen in the round.
func (s *State) SeenFrom() string {
	c, style := s.Round.Camera, s.Plan.Style()
	up := int(math.Round(c.Pitch))
	switch {
	case c.Pitch >= overhead:
		return words.Text("round.seen-above", nil, style)
	case c.Pitch <= -overhead:
		return words.Text("round.seen-below", nil, style)
	}
	sector := int(math.Round(c.Yaw/sightSector)+8) % 8
	from := words.Text("round.seen-"+[...]string{"front", "front-right", "right", "back-right", "back", "back-left", "left", "front-left"}[sector], nil, style)
	switch {
	case up > 0:
		return words.Text("round.seen-higher", []words.Arg{words.Name("seen", from), words.Angle("n", unit.Angle(up)*unit.Degree)}, style)
	case up < 0:
		return words.Text("round.seen-lower", []words.Arg{words.Name("seen", from), words.Angle("n", unit.Angle(-up)*unit.Degree)}, style)
	}
	return from
}

// PulledApart says how far the boards are pulled apart.
func (s *State) PulledApart() string {
	style := s.Plan.Style()
	switch s.Round.Apart {
	case 0:
		return words.Text("round.together", nil, style)
	case mostApart:
		return words.Text("round.apart-wholly", nil, style)
	}
	return words.Text("round.apart", []words.Arg{words.Count("n", s.Round.Apart)}, style)
}
