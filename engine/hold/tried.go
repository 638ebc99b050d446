package hold

import (
	"ledgewright/engine/board"
	"ledgewright/engine/strength"
	"ledgewright/engine/wall"
)

// What was tried out and typed in takes the place of what nobody can say.

// tried says whether a fixing in a hollow wall or in masonry was tested.
func (h *Screw) tried() bool {
	return h.Pull > 0 && !h.Metal && (h.In == wall.InLining || h.In == wall.InMasonry)
}

// bears returns what may be asked of a fixing that bore a load in its test.
func (h *Screw) bears(load float64) float64 {
	if load <= 0 {
		load = h.Pull
	}
	if h.In == wall.InMasonry {
		return load / strength.MasonryTestFactor
	}
	return load / strength.HollowAnchorFactor
}

// hollow says whether a plate has a screw that hangs in the lining alone.
func (p *plate) hollow(x *board.Fixing, holes []Screw) bool {
	for _, s := range p.screws {
		if n := index(x, s.of); n < len(holes) && holes[n].In == wall.InLining {
			return true
		}
	}
	return false
}

// alone says whether a plate hangs in a hollow wall without two anchors that are far enough
// one above the other to resist turning.
func (p *plate) alone(x *board.Fixing, holes []Screw) bool {
	if !p.hollow(x, holes) {
		return false
	}
	low, high := p.screws[0].y, p.screws[0].y
	for _, s := range p.screws {
		low, high = min(low, s.y), max(high, s.y)
	}
	return high-low < strength.LeastPair
}

// A CornerTest is a shop's own test of its corner: so many corners of one thickness, wood,
// glue and joint, broken by a weight on an arm.
type CornerTest struct {
	Count     int
	Moment    float64 // least that one broke at, N mm
	Width     float64 // of the boards that were broken, mm
	Thickness float64 // mm
	Wood      string  // id in package wood
	Date      string  // ISO 8601
}

// Allowed returns the moment that a corner of the width may have by the test, N mm, and
// whether enough were broken.
func (t *CornerTest) Allowed(width float64) (float64, bool) {
	if t.Count < strength.ShopTestLeast || t.Width <= 0 {
		return 0, false
	}
	return t.Moment / strength.ShopTestFactor * width / t.Width, true
}

// tested returns what a test of its wood and thickness allows a corner; of several tests the
// least.
func (c *mitre) tested(tests []CornerTest) (allowed float64, ok bool) {
	for i := range tests {
		t := &tests[i]
		if t.Wood != c.wood || abs(t.Thickness-c.thickness) > nearStation {
			continue
		}
		if m, enough := t.Allowed(c.width); enough && (!ok || m < allowed) {
			allowed, ok = m, true
		}
	}
	return allowed, ok
}
