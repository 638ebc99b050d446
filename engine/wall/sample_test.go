package wall

import (
	"ledgewright/engine/board"
	"ledgewright/engine/document"
	"ledgewright/engine/finding"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
)

const (
	mm  = unit.Millimetre
	in  = unit.Inch
	deg = unit.Degree
)

func some[T any](v T) document.Opt[T] { return document.Some(v) }

// plank is a straight board along x or, turned, along some other way, as a module of its
// own with rods in its back edge.
func plank(id string, length, depth, t unit.Length, dir unit.Angle, rods ...unit.Length) module.Result {
	b := board.Board{ID: id + ".1", Role: board.Chain, Length: length, Width: depth, Thickness: t, Frame: board.Frame{Dir: dir}}
	r := module.Result{ID: id, Depth: depth, Boards: []board.Board{b}}
	corner := func(u, w unit.Length) module.XY {
		x, y := unit.Rotate(u, -w, dir)
		return module.XY{X: x, Y: y}
	}
	r.Outlines = []module.Outline{{Board: b.ID, Points: []module.XY{corner(0, t), corner(length, t), corner(length, 0), corner(0, 0)}}}
	finish(&r)
	for i, u := range rods {
		r.Fixings = append(r.Fixings, rodAt(b.ID, "b"+string(rune('1'+i)), u, t))
	}
	return r
}

// finish fills box and pivot from the outlines.
func finish(r *module.Result) {
	var all []module.XY
	for _, o := range r.Outlines {
		all = append(all, o.Points...)
	}
	r.Box = boxOf(all)
	half := func(a, b unit.Length) unit.Length {
		s := a + b
		if s < 0 && s%2 != 0 {
			s--
		}
		return s / 2
	}
	r.Pivot = module.XY{X: half(r.Box.MinX, r.Box.MaxX), Y: half(r.Box.MinY, r.Box.MaxY)}
}

// rodAt is a 12 mm rod set 75 mm into the structure, 125 mm into the board.
func rodAt(on, id string, u, t unit.Length) board.Fixing {
	at := board.Point{U: u, W: t / 2}
	return board.Fixing{
		Bracket: id, Board: on, At: at, Seat: "wall", Attitude: board.Level, Carries: true,
		Rods:   []board.Rod{{At: at, Diameter: 12 * mm, InBoard: 125 * mm, InWall: 75 * mm, Bore: 13 * mm}},
		Screws: []board.Screw{{Diameter: 12 * mm, Length: 75 * mm, Rod: true, Drill: 12 * mm}},
	}
}

// plateAt is a rod on a plate 60 high and 5 thick with a screw above and below.
func plateAt(on, id string, u, t unit.Length) board.Fixing {
	f := rodAt(on, id, u, t)
	f.Seat = "pocket"
	f.Rods[0].InWall = 0
	f.Plate = board.Plate{AlongU: 30 * mm, AlongW: 60 * mm, Thickness: 5 * mm}
	f.Screws = []board.Screw{
		{DW: -20 * mm, Diameter: 5 * mm, Length: 70 * mm, Drill: 3 * mm, Plug: 8 * mm},
		{DW: 20 * mm, Diameter: 5 * mm, Length: 70 * mm, Drill: 3 * mm, Plug: 8 * mm, Slotted: true},
	}
	return f
}

// hookAt is a hook in the back of an upright that is raised by 15 to hang it.
func hookAt(on, id string, u, t unit.Length) board.Fixing {
	return board.Fixing{
		Bracket: id, Board: on, At: board.Point{U: u, W: t / 2}, Seat: "module", Attitude: board.Plumb, Carries: true,
		Lift: 15 * mm, Top: board.End,
		Plate:  board.Plate{AlongU: 40 * mm, AlongW: 16 * mm, Thickness: 2 * mm},
		Screws: []board.Screw{{Diameter: 5 * mm, Length: 60 * mm, Drill: 3 * mm}},
	}
}

// surveyed is a wall of which everything is known: studs 38 wide at 400 centres.
func surveyed() plan.Wall {
	return plan.Wall{
		ID: "w1", Width: 3600 * mm, Height: 2500 * mm, FloorRise: some(unit.Length(0)), CeilingRise: some(unit.Length(0)),
		Build: plan.BuildStuds, Lining: plan.Lining{Kind: "plasterboard", Thickness: some(12500 * unit.Micrometre)},
		Studs:     plan.Studs{Material: "wood", Width: some(38 * mm), Depth: some(89 * mm), First: some(400 * mm), Spacing: some(400 * mm), State: plan.EdgesFound},
		Plumb:     []plan.Plumb{{X: 0, Over: 2000 * mm}, {X: 1800 * mm, Over: 2000 * mm}, {X: 3600 * mm, Over: 2000 * mm}},
		CableRule: "uk", FarSide: "the maker's own hall", BuiltYear: some(2010),
	}
}

func arrange(w plan.Wall, a plan.Arrangement, modules ...module.Result) Result {
	if a.ID == "" {
		a.ID = "a1"
	}
	return Arrange(w, a, modules, shop.Default(unit.Metric), plan.Units{System: unit.Metric, Step: mm})
}

func poses(p ...plan.Pose) plan.Arrangement { return plan.Arrangement{ID: "a1", Wall: "w1", Poses: p} }

// kinds lists the kinds of some findings, in order.
func kindsOf(fs []finding.Finding) (keys []string) {
	for _, f := range fs {
		keys = append(keys, f.Kind.Key)
	}
	return keys
}

// only returns the one finding of a kind.
func only(t interface {
	Helper()
	Fatalf(string, ...any)
}, r Result, key string) finding.Finding {
	t.Helper()
	var out []finding.Finding
	for _, f := range r.Findings {
		if f.Kind.Key == key {
			out = append(out, f)
		}
	}
	if len(out) != 1 {
		t.Fatalf("%d findings %s among %v", len(out), key, kindsOf(r.Findings))
	}
	return out[0]
}
