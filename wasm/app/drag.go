package app

import (
	"slices"
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/edit"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/wasm/hand"
)

// Distances of snapping, in pixels: it takes hold within the first and lets go beyond
// the second.
const (
	snapReach = 10
	snapLeave = 16
)

// FindingKey is the key of a finding's place in the panel.
func FindingKey(i int) string { return "finding-" + strconv.Itoa(i) }

// stepHand takes the events of the hand and the keys.
func stepHand(s State, e Event) (State, []Effect, bool) {
	var effects []Effect
	switch e := e.(type) {
	case Pointer:
		h, gestures := s.Hand.Step(e.Event)
		s.Hand = h
		for _, g := range gestures {
			var more []Effect
			s, more = gesture(s, g)
			effects = append(effects, more...)
		}
	case Key:
		s, effects = key(s, e)
	default:
		return s, nil, false
	}
	return s, effects, true
}

// gesture does what a gesture of the hand means on the wall.
func gesture(s State, g hand.Gesture) (State, []Effect) {
	w, ok := s.Plan.Wall(s.Wall)
	if !ok {
		return s, nil
	}
	switch g.Kind {
	case hand.Tap:
		return tap(s, g)
	case hand.LongPress:
		if id := s.moduleAt(g.X, g.Y); id != "" {
			return choose(s, id, true), nil
		}
	case hand.DragStart:
		return pickUp(s, g), nil
	case hand.Drag:
		return carry(s, g), nil
	case hand.Drop:
		return drop(carry(s, g))
	case hand.DragCancel:
		s.Drag, s.Preview = Drag{}, Preview{}
	case hand.PanZoom:
		s.Camera = s.Camera.pan(g.DX, g.DY)
		if g.Scale != 0 && g.Scale != 1 {
			s.Camera = s.Camera.zoom(g.Scale, g.X, g.Y, w, s.Size)
		}
	}
	return s, nil
}

// tap chooses what lies under the finger; a tap on what is chosen already looks at
// the next thing there.
func tap(s State, g hand.Gesture) (State, []Effect) {
	x, y := s.Camera.mm(g.X, g.Y, s.Size)
	if s.On[LineTool] {
		rounded, _ := s.Plan.Style().Rounded(unit.Nearest(y))
		s = toggle(s, LineTool)
		return commit(s, edit.AddLine{Arrangement: s.Arrangement,
			With: edit.Changes(edit.Change("height", rounded))})
	}
	under := s.modulesAt(x, y)
	if len(under) == 0 {
		s = choose(s, "", false)
		s.At = s.thingAt(x, y)
		return s, nil
	}
	next := under[0]
	if i := slices.Index(under, last(s.Chosen)); i >= 0 && len(under) > 1 {
		next = under[(i+1)%len(under)]
	}
	return choose(s, next, g.Shift || s.On[Several]), nil
}

func last(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	return ids[len(ids)-1]
}

// pickUp takes a module into the hand, with the others that are chosen if it is one
// of them; on bare wall the hand moves the picture.
func pickUp(s State, g hand.Gesture) State {
	id := s.moduleAt(g.FromX, g.FromY)
	if id == "" || s.Job != Arrange {
		s.Drag = Drag{Active: true, Pan: true, AtX: g.FromX, AtY: g.FromY}
		return carry(s, g)
	}
	if !slices.Contains(s.Chosen, id) {
		s = choose(s, id, false)
	}
	pose, ok := s.pose(id)
	if !ok {
		return s
	}
	moving := append([]string{id}, slices.DeleteFunc(slices.Clone(s.Chosen), func(o string) bool { return o == id })...)
	s.Drag = Drag{Active: true, Modules: moving, FromX: pose.X, FromY: pose.Y}
	return carry(s, g)
}

// carry shows where what is in the hand would land.
func carry(s State, g hand.Gesture) State {
	switch {
	case !s.Drag.Active:
		return s
	case s.Drag.Pan:
		s.Camera = s.Camera.pan(g.X-s.Drag.AtX, g.Y-s.Drag.AtY)
		s.Drag.AtX, s.Drag.AtY = g.X, g.Y
		return s
	}
	a, w, ok := s.arranged()
	if !ok {
		return s
	}
	want, _ := s.pose(s.Drag.Modules[0])
	want.X = s.Drag.FromX + unit.Nearest((g.X-g.FromX)/s.Camera.Scale)
	want.Y = s.Drag.FromY - unit.Nearest((g.Y-g.FromY)/s.Camera.Scale)
	pose, snaps := wall.SnapTo(w, a, s.Build.Modules, s.Drag.Modules, want, wall.SnapOptions{
		Reach: s.Camera.reach(snapReach), Leave: s.Camera.reach(snapLeave), Held: s.Drag.Snaps, Off: s.snapsOff(), Gaps: s.Plan.Shop.Gaps,
	})
	s.Drag.Snaps = snaps
	return preview(s, s.moved(pose))
}

// moved is the edit that brings what is in the hand to a pose of its first module.
func (s *State) moved(pose plan.Pose) edit.Edit {
	if len(s.Drag.Modules) > 1 {
		return edit.Move{Arrangement: s.Arrangement, Modules: s.Drag.Modules, DX: pose.X - s.Drag.FromX, DY: pose.Y - s.Drag.FromY}
	}
	return edit.Move{Arrangement: s.Arrangement, Module: s.Drag.Modules[0], X: document.Some(pose.X), Y: document.Some(pose.Y)}
}

// drop makes the move that the hand has shown.
func drop(s State) (State, []Effect) {
	d := s.Drag
	s.Drag = Drag{}
	if d.Pan || !d.Active || !s.Preview.Shown {
		return s, nil
	}
	landed, _ := s.Preview.Plan.Arrangement(s.Arrangement)
	s.Preview = Preview{}
	for _, p := range landed.Poses {
		if p.Module == d.Modules[0] {
			if p.X == d.FromX && p.Y == d.FromY {
				return s, nil
			}
			s.Drag = d
			e := s.moved(p)
			s.Drag = Drag{}
			return commit(s, e)
		}
	}
	return s, nil
}

func (s *State) snapsOff() (off []string) {
	for _, k := range Snapping() {
		if s.On[k.Off] {
			off = append(off, k.Kind)
		}
	}
	return off
}

// A Sticking is a kind of snapping and the switch that turns it off.
type Sticking struct {
	Kind string // as in package wall
	Off  Switch
}

// Snapping lists the kinds of snapping; all are on unless their switch is.
func Snapping() [5]Sticking {
	return [...]Sticking{
		{wall.SnapStud, NoSnapStud}, {wall.SnapLine, NoSnapLine}, {wall.SnapFlush, NoSnapFlush},
		{wall.SnapGap, NoSnapGap}, {wall.SnapCentre, NoSnapCentre},
	}
}

// arranged returns the arrangement in view and its wall.
func (s *State) arranged() (plan.Arrangement, plan.Wall, bool) {
	a, ok := s.Plan.Arrangement(s.Arrangement)
	w, found := s.Plan.Wall(s.Wall)
	return a, w, ok && found
}

// pose returns the pose of a module in the arrangement in view.
func (s *State) pose(id string) (plan.Pose, bool) {
	a, _ := s.Plan.Arrangement(s.Arrangement)
	for _, p := range a.Poses {
		if p.Module == id {
			return p, true
		}
	}
	return plan.Pose{}, false
}
