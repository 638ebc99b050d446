package wall

import (
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// A CableRule says where cables are expected in a wall, as a country's practice has it.
// Older walls may follow none.
type CableRule struct {
	Key      string // in a plan's wall; "rule.cable.<key>" are its words
	Upright  bool   // straight up and down from every socket and switch, as wide as it is
	Sideways bool   // straight sideways, as high as it is
	Ceiling  unit.Length
	Corners  unit.Length // within so far of the ceiling, and of the wall's ends
	Source   string
}

// NoRule is the key of having chosen none; a wall that names none has chosen none.
const NoRule = "none-chosen"

// CableRules returns the rules that are known, by country.
func CableRules() []CableRule {
	return []CableRule{{
		Key: "uk", Upright: true, Sideways: true,
		Ceiling: 150 * unit.Millimetre, Corners: 150 * unit.Millimetre,
		Source: "wiki.diyfaq.org.uk, Safe zones for electric cables: UK practice; full height and width lines through each fitting, 150 mm from ceiling and from wall corners",
	}}
}

// cableRule returns the rule that a wall has chosen, and whether it has.
func cableRule(w *plan.Wall) (CableRule, bool) {
	for _, r := range CableRules() {
		if r.Key == w.CableRule {
			return r, true
		}
	}
	return CableRule{}, false
}

// A Band is a part of the wall in which cables are expected: a convex outline,
// counter-clockwise.
type Band struct {
	From    string // id of the socket or switch, or "ceiling", "left-end", "right-end"
	Upright bool   // it runs up and down
	Points  [4]module.XY
}

// Bands returns the cable bands of a wall: those of its sockets and switches in their
// order, upright before sideways, then ceiling, left end and right end. There are none
// while no rule is chosen, which is a finding and does not say that there are no cables.
func Bands(w plan.Wall) []Band {
	r, ok := cableRule(&w)
	if !ok {
		return nil
	}
	var out []Band
	for _, o := range w.Obstacles {
		if o.Kind != plan.Socket && o.Kind != plan.Switch {
			continue
		}
		if r.Upright {
			out = append(out, uprightBand(w, o.ID, o.X, o.X+o.Width))
		}
		if r.Sideways {
			out = append(out, Band{o.ID, false, quad(0, w.Width, o.Y, o.Y, o.Y+o.Height, o.Y+o.Height)})
		}
	}
	if r.Ceiling > 0 {
		l, h := ceilingAt(&w, 0), ceilingAt(&w, w.Width)
		out = append(out, Band{Ceiling, false, quad(0, w.Width, l-r.Ceiling, h-r.Ceiling, l, h)})
	}
	if r.Corners > 0 {
		out = append(out, uprightBand(w, LeftEnd, 0, r.Corners), uprightBand(w, RightEnd, w.Width-r.Corners, w.Width))
	}
	return out
}

// uprightBand returns a band from floor to ceiling.
func uprightBand(w plan.Wall, from string, x1, x2 unit.Length) Band {
	return Band{from, true, quad(x1, x2, floorAt(&w, x1), floorAt(&w, x2), ceilingAt(&w, x1), ceilingAt(&w, x2))}
}

// quad returns an outline from x1 to x2, given the heights of its lower and upper side at
// the two.
func quad(x1, x2, low1, low2, high1, high2 unit.Length) [4]module.XY {
	return [4]module.XY{{X: x1, Y: low1}, {X: x2, Y: low2}, {X: x2, Y: high2}, {X: x1, Y: high1}}
}

// floorAt returns the height of the floor at x. Where its slope is not known it is taken
// as level, and the wall has a finding that says so.
func floorAt(w *plan.Wall, x unit.Length) unit.Length {
	return rise(w.FloorRise.Or(0), x, w.Width)
}

// ceilingAt returns the height of the ceiling at x, likewise.
func ceilingAt(w *plan.Wall, x unit.Length) unit.Length {
	return w.Height + rise(w.CeilingRise.Or(0), x, w.Width)
}

// rise returns how far a slope that rises by r over the wall's width has risen at x.
func rise(r, x, width unit.Length) unit.Length {
	if r == 0 || width <= 0 {
		return 0
	}
	return unit.Nearest(r.MM() * (x.MM() / width.MM()))
}

// in reports whether a hole of the given radius reaches into the band.
func (b *Band) in(at module.XY, radius unit.Length) bool {
	if !boxMeets(boxOf(b.Points[:]), at, radius) {
		return false
	}
	if inside(at, b.Points[:]) {
		return true
	}
	r := float64(radius)
	return corners([]module.XY{at}, b.Points[:]) <= float64(r*r)
}

// boxMeets reports whether a box has a point within r of a place, in x and in y.
func boxMeets(b module.Box, at module.XY, r unit.Length) bool {
	return at.X+r >= b.MinX && at.X-r <= b.MaxX && at.Y+r >= b.MinY && at.Y-r <= b.MaxY
}
