package edit

import (
	"math"
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// A Ready is a ready shape with its sizes. Width and height are the outside sizes of the
// shape as it stands upright.
//
// In a mitre both boards count to the outside, so an upright U of outside width W and
// height H is the chain H, W, H. In a butt joint the board that runs through counts to
// the outside and the other to the face it meets, a thickness t less: uprights running
// through make it H, W − 2t, H. A Z is the chain of its upper board, its upright and its
// lower board, whose horizontal extents overlap by one thickness:
//
//	W = upper + lower − t
//
// A hexagon lies on one of its sides a. With the sloping sides b at 60°,
//
//	W = a + 2·b·cos 60° = a + b,  H = 2·b·sin 60° = b·√3
//
// and a regular one has a = b = W/2. All turns are 60°, so the six boards are
// a, b, b, a, b, b.
type Ready struct {
	Shape     string      // "shelf", "L", "U", "Z", "box", "hexagon"
	Width     unit.Length // outside
	Height    unit.Length // outside; not for a shelf; missing for a regular hexagon
	Upper     unit.Length // length of the upper board of a Z; missing: as long as the lower one
	Depth     unit.Length
	Thickness unit.Length
	Wood      string
	Joint     string // missing: mitre with a spline
	Typed     bool   // box and hexagon: all lengths typed, none to close
}

// A Shape describes a ready shape, for a list to choose from.
type Shape struct {
	ID     string
	Height bool // has a height of its own
	Upper  bool // has an upper board
	Closed bool
	Turn   unit.Angle // turn of the pose that sets it upright
	Sizes  Ready      // usual sizes to begin with
}

// Shapes returns the ready shapes.
func Shapes() []Shape {
	const mm = unit.Millimetre
	usual := func(id string, width, height unit.Length) Ready {
		return Ready{Shape: id, Width: width * mm, Height: height * mm, Depth: 200 * mm, Thickness: 26 * mm}
	}
	shapes := []Shape{
		{ID: "shelf", Sizes: usual("shelf", 800, 0)},
		{ID: "L", Height: true, Turn: unit.HalfTurn + unit.QuarterTurn, Sizes: usual("L", 600, 260)},
		{ID: "U", Height: true, Turn: unit.HalfTurn + unit.QuarterTurn, Sizes: usual("U", 600, 260)},
		{ID: "Z", Height: true, Upper: true, Sizes: usual("Z", 800, 260)},
		{ID: "box", Height: true, Closed: true, Sizes: usual("box", 400, 400)},
		{ID: "hexagon", Height: true, Closed: true, Sizes: usual("hexagon", 600, 0)},
	}
	return shapes
}

// shape returns the description of a shape, or an error that names the nearest.
func shape(id string) (Shape, error) {
	all := Shapes()
	i, err := find(all, func(s Shape) string { return s.ID }, "shape", "new module", id)
	return all[i], err
}

// module returns the shape as a module without ids.
func (r Ready) module() (plan.Module, error) {
	kind, err := shape(r.Shape)
	if err != nil {
		return plan.Module{}, err
	}
	if r.Joint == "" {
		r.Joint = plan.Mitre
	}
	if err := r.check(kind); err != nil {
		return plan.Module{}, err
	}
	lengths, turns := r.chain()
	m := plan.Module{Depth: r.Depth, Wood: r.Wood, Closed: kind.Closed, Hung: kind.Turn}
	for i, l := range lengths {
		b := plan.Board{Thickness: r.Thickness, Length: document.Some(l)}
		if l <= 0 {
			return m, refuse("no-board-left", "new "+r.Shape, words.Count("n", i+1), words.Length("value", l), words.Length("limit", unit.Nanometre))
		}
		if kind.Closed && !r.Typed && i >= len(lengths)-2 {
			b.Length = document.Opt[unit.Length]{}
		}
		m.Boards = append(m.Boards, b)
	}
	for _, t := range turns {
		m.Corners = append(m.Corners, plan.Corner{Turn: t, Joint: r.Joint, Reinforcement: reinforcement(r.Joint)})
	}
	return m, nil
}

// reinforcement is what a ready shape's joints get: a spline in a mitre, dowels in a
// butt. Its sizes follow the shop's habits.
func reinforcement(joint string) plan.Reinforcement {
	if joint == plan.Mitre {
		return plan.Reinforcement{Kind: "spline"}
	}
	return plan.Reinforcement{Kind: "dowel"}
}

func (r Ready) check(kind Shape) error {
	at := "new " + r.Shape
	joints := []string{plan.Mitre, plan.ButtFirst, plan.ButtSecond}
	needsHeight := kind.Height && r.Shape != "hexagon"
	for _, size := range []struct {
		member string
		value  unit.Length
		must   bool
	}{
		{"width", r.Width, true}, {"height", r.Height, needsHeight}, {"upper", r.Upper, false},
		{"depth", r.Depth, true}, {"thickness", r.Thickness, true},
	} {
		if size.must && size.value == 0 {
			return refuse("missing", at, words.Name("member", size.member))
		}
		if size.value < 0 {
			return refuse("not-positive", at, words.Name("member", size.member), words.Length("value", size.value))
		}
		if err := far(at, size.value); err != nil {
			return err
		}
	}
	switch {
	case !slices.Contains(joints, r.Joint):
		return notOneOf(at, "joint", r.Joint, joints...)
	case r.Shape == "hexagon" && r.Joint != plan.Mitre:
		return notOneOf(at, "joint", r.Joint, plan.Mitre)
	case r.Height != 0 && !kind.Height:
		return refuse("not-of-shape", at, words.Name("member", "height"))
	case r.Upper != 0 && !kind.Upper:
		return refuse("not-of-shape", at, words.Name("member", "upper"))
	case r.Typed && !kind.Closed:
		return refuse("not-of-shape", at, words.Name("member", "typed"))
	case r.Wood == "":
		return refuse("missing", at, words.Name("member", "wood"))
	}
	return nil
}

// chain returns the lengths of the boards and the turns of the corners.
func (r Ready) chain() (lengths []unit.Length, turns []unit.Angle) {
	const left = unit.QuarterTurn
	w, h := r.Width, r.Height
	switch r.Shape {
	case "shelf":
		return []unit.Length{w}, nil
	case "L":
		lengths, turns = []unit.Length{h, w}, []unit.Angle{left}
	case "U":
		lengths, turns = []unit.Length{h, w, h}, []unit.Angle{left, left}
	case "Z":
		upper := r.Upper
		if upper == 0 {
			upper = (w + r.Thickness) / 2
		}
		lengths, turns = []unit.Length{upper, h, w + r.Thickness - upper}, []unit.Angle{-left, left}
	case "box":
		lengths, turns = []unit.Length{w, h, w, h}, []unit.Angle{left, left, left, left}
	case "hexagon":
		a, b := hexagon(w, h)
		const sixth = 60 * unit.Degree
		return []unit.Length{a, b, b, a, b, b}, []unit.Angle{sixth, sixth, sixth, sixth, sixth, sixth}
	}
	return r.butted(lengths, len(turns)), turns
}

// butted takes a thickness off every end that meets a board running through.
func (r Ready) butted(lengths []unit.Length, corners int) []unit.Length {
	n := len(lengths)
	for i := range corners {
		switch r.Joint {
		case plan.ButtFirst:
			lengths[(i+1)%n] -= r.Thickness
		case plan.ButtSecond:
			lengths[i] -= r.Thickness
		}
	}
	return lengths
}

// hexagon returns the level and the sloping side of a hexagon w wide and h high; h of 0
// makes it regular. The sloping side is rounded to the nanometre.
func hexagon(w, h unit.Length) (a, b unit.Length) {
	if h == 0 {
		return w - w/2, w / 2
	}
	b = unit.Nearest(h.MM() / math.Sqrt(3))
	return w - b, b
}
