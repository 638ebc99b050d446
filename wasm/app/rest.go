package app

// restAfter is how long nothing must have changed, in ms, until the picture takes its
// time for what is only looks: the grain of the boards. What an edit changes is seen at
// once without it.
const restAfter = 300

// restNow says that nothing has changed for so long.
type restNow struct{}

func (restNow) event() {}

// stirred is a state that has just changed, and the effect that waits until it rests.
func stirred(s State) (State, Effect) {
	s.Rests = false
	return s, After{Name: "grain", Ms: restAfter, Event: restNow{}}
}

// rest has the picture drawn in full; while something is in the hand it waits.
func rest(s State) (State, []Effect) {
	if s.Drag.Active {
		s, wait := stirred(s)
		return s, []Effect{wait}
	}
	s.Rests = true
	return s, nil
}
