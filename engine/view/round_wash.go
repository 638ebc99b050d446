package view

import (
	"ledgewright/engine/board"
	"ledgewright/engine/drawing"
	"ledgewright/engine/light"
)

// WashOf returns the wash that a strip throws on the wall with the reach and the colour
// that package light works out, for a straight piece from one place on the wall to
// another, standing off the wall so many millimetres. share dims it, 1 is full: a strip
// that is dimmed reaches less far and keeps its colour. It is the zero value where nothing
// shows.
func WashOf(s *board.Strip, from, to, toward drawing.Point, standOff float64, back bool, share float64) drawing.Glow {
	w := light.WallWash(s.Lumens*share, s.Kelvin, length(sub(to, from)), standOff, back)
	if w.Reach <= 0 {
		return drawing.Glow{}
	}
	return drawing.Glow{From: from, To: to, Toward: toward, Reach: w.Reach, Kelvin: s.Kelvin}
}
