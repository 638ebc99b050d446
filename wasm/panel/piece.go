package panel

import (
	"slices"

	"ledgewright/engine"
	"ledgewright/engine/board"
	"ledgewright/engine/module"
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/wall"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// A piece is a module with its place on the wall in view.
type piece struct {
	m       plan.Module
	worked  module.Result
	pose    plan.Pose
	placed  wall.Placed
	stands  bool // it has a place
	nearest wall.Clearance
	near    bool // nearest is known
}

// piecesOf returns the modules of a plan in its order.
func piecesOf(s *app.State, p plan.Plan, b engine.Build) []piece {
	r := resultOf(b, s.Arrangement)
	a, _ := p.Arrangement(s.Arrangement)
	out := make([]piece, len(p.Modules))
	for i, m := range p.Modules {
		out[i].m = m
		if i < len(b.Modules) {
			out[i].worked = b.Modules[i]
		}
		out[i].stand(a, r)
	}
	return out
}

// pieceOf returns one module.
func pieceOf(s *app.State, p plan.Plan, b engine.Build, id string) (piece, bool) {
	for i := range p.Modules {
		if p.Modules[i].ID != id {
			continue
		}
		one := piece{m: p.Modules[i]}
		if i < len(b.Modules) {
			one.worked = b.Modules[i]
		}
		a, _ := p.Arrangement(s.Arrangement)
		one.stand(a, resultOf(b, s.Arrangement))
		return one, true
	}
	return piece{}, false
}

// stand finds where the module stands.
func (p *piece) stand(a plan.Arrangement, r wall.Result) {
	i := slices.IndexFunc(a.Poses, func(o plan.Pose) bool { return o.Module == p.m.ID })
	k := slices.IndexFunc(r.Placed, func(o wall.Placed) bool { return o.Module == p.m.ID })
	if i < 0 || k < 0 {
		return
	}
	p.pose, p.placed, p.stands = a.Poses[i], r.Placed[k], true
	if n := slices.IndexFunc(r.Nearest, func(c wall.Clearance) bool { return c.Module == p.m.ID }); n >= 0 {
		p.nearest, p.near = r.Nearest[n], true
	}
}

// box is the module's box on the wall, or in its own plane where it hangs nowhere.
func (p *piece) box() module.Box {
	if p.stands {
		return p.placed.Box
	}
	return p.worked.Box
}

func (p *piece) outlines() []module.Outline {
	if p.stands {
		return p.placed.Outlines
	}
	return p.worked.Outlines
}

func (p *piece) width() unit.Length  { b := p.box(); return b.MaxX - b.MinX }
func (p *piece) height() unit.Length { b := p.box(); return b.MaxY - b.MinY }

// named is the module's name as an argument.
func (p *piece) named() words.Arg { return words.Name("module", p.m.Label()) }

// unitOf is the unit in which the plan's figures stand.
func unitOf(s *app.State) string {
	if s.Plan.Units.System == unit.Inches {
		return "in"
	}
	return "mm"
}

// lengthField is a field of a length: its label says the unit.
func lengthField(s *app.State, key, label, line string, value unit.Length) app.Field {
	return app.Field{Key: key, Label: label + ", " + unitOf(s), Kind: app.LengthField, Line: line, Value: s.Plan.Style().Length(value)}
}

// moveX moves a module so that something of it stands at a typed x; now is where that
// is at present.
func (p *piece) moveX(s *app.State, key, label string, now unit.Length) app.Field {
	f := lengthField(s, key, label, line("move", "arrangement", s.Arrangement, "module", p.m.ID, "x", "$"), now)
	f.Offset = p.pose.X - now
	return f
}

// moveY is moveX for heights.
func (p *piece) moveY(s *app.State, key, label string, now unit.Length) app.Field {
	f := lengthField(s, key, label, line("move", "arrangement", s.Arrangement, "module", p.m.ID, "y", "$"), now)
	f.Offset = p.pose.Y - now
	return f
}

// gap moves a module so that its gap to the nearest thing is the one typed. There is no
// such field where the two lie neither beside nor above each other.
func (p *piece) gap(s *app.State, pl plan.Plan, key string) (app.Field, bool) {
	to, ok := p.other(s, pl)
	if !p.near || !ok {
		return app.Field{}, false
	}
	label := say(s, "page.gap-to", p.named(), words.Name("to", toName(s, pl, p.nearest.To)))
	b, g := p.placed.Box, p.nearest.Gap
	beside, above := b.MinY < to.MaxY && to.MinY < b.MaxY, b.MinX < to.MaxX && to.MinX < b.MaxX
	var f app.Field
	switch {
	case beside && to.MaxX <= b.MinX:
		f = p.moveX(s, key, label, g)
	case beside && b.MaxX <= to.MinX:
		f = p.moveX(s, key, label, g)
		f.Sign, f.Offset = -1, p.pose.X+g
	case above && to.MaxY <= b.MinY:
		f = p.moveY(s, key, label, g)
	case above && b.MaxY <= to.MinY:
		f = p.moveY(s, key, label, g)
		f.Sign, f.Offset = -1, p.pose.Y+g
	default:
		return app.Field{}, false
	}
	return f, true
}

// far is beyond every wall.
const far = 1_000_000 * unit.Millimetre

// other is the box of the nearest thing.
func (p *piece) other(s *app.State, pl plan.Plan) (module.Box, bool) {
	w, _ := pl.Wall(s.Wall)
	switch p.nearest.To {
	case wall.LeftEnd:
		return module.Box{MinX: -far, MinY: -far, MaxX: 0, MaxY: far}, true
	case wall.RightEnd:
		return module.Box{MinX: w.Width, MinY: -far, MaxX: far, MaxY: far}, true
	case wall.Floor:
		return module.Box{MinX: -far, MinY: -far, MaxX: far, MaxY: p.placed.Box.MinY - p.nearest.Gap}, true
	case wall.Ceiling:
		return module.Box{MinX: -far, MinY: p.placed.Box.MaxY + p.nearest.Gap, MaxX: far, MaxY: far}, true
	}
	if b, ok := boxOf(s, p.nearest.To); ok {
		return b, true
	}
	for _, o := range w.Obstacles {
		if o.ID == p.nearest.To {
			return module.Box{MinX: o.X, MinY: o.Y, MaxX: o.X + o.Width, MaxY: o.Y + o.Height}, true
		}
	}
	return module.Box{}, false
}

// toName is what the nearest thing is called.
func toName(s *app.State, p plan.Plan, id string) string {
	switch id {
	case wall.LeftEnd, wall.RightEnd, wall.Floor, wall.Ceiling:
		return term(s, "page.end-"+id)
	}
	if m, ok := p.Module(id); ok {
		return m.Label()
	}
	if w, ok := p.Wall(s.Wall); ok {
		for _, o := range w.Obstacles {
			if o.ID == id {
				return obstacleLabel(s, o)
			}
		}
	}
	return id
}

// obstacleLabel is what an obstacle is called: by its name, or by its kind.
func obstacleLabel(s *app.State, o plan.Obstacle) string {
	if o.Name != "" {
		return o.Name
	}
	return term(s, "page.obstacle-"+o.Kind)
}

// size changes the outside width or height of a module through the lengths of its
// boards: of all that reach from side to side, or of the only one that lies that way
// between others. There is no such field where no board has the size for its own, as in
// a hexagon.
func (p *piece) size(s *app.State, key string, upright bool) (app.Field, bool) {
	boards := p.spanning(upright)
	if boards == nil {
		return app.Field{}, false
	}
	now, word := p.width(), "page.width-of"
	if upright {
		now, word = p.height(), "page.height-of"
	}
	lines := ""
	for i, n := range boards {
		if i > 0 {
			lines += "\n"
		}
		lines += line("set-board", "module", p.m.ID, "board", n, "length", "$")
	}
	f := lengthField(s, key, say(s, word, p.named()), lines, now)
	f.Offset = p.worked.Boards[boards[0]-1].Length - now
	return f, true
}

// spanning returns the numbers of the boards that have the outside size for their own.
func (p *piece) spanning(upright bool) []int {
	n := len(p.m.Boards)
	if len(p.worked.Boards) < n || len(p.outlines()) < n {
		return nil
	}
	g := wall.PlacingOf(p.worked, p.pose)
	var all, whole []int
	for i := range n {
		dir := g.Dir(p.worked.Boards[i].Frame.Dir) % unit.HalfTurn
		switch {
		case dir%unit.QuarterTurn != 0:
			return nil // a slanting board has part in both sizes
		case (dir != 0) != upright || !p.m.Boards[i].Length.Known:
			continue
		}
		all = append(all, i+1)
		if p.reaches(i, upright) {
			whole = append(whole, i+1)
		}
	}
	switch {
	case whole != nil && alike(p.worked.Boards, whole):
		return whole
	case len(all) == 1 && p.alone(all[0], upright):
		return all
	}
	return nil
}

// alone reports whether all other boards of the chain that lie as board n does are to
// close, so that they follow it.
func (p *piece) alone(n int, upright bool) bool {
	g := wall.PlacingOf(p.worked, p.pose)
	for i, b := range p.m.Boards {
		dir := g.Dir(p.worked.Boards[i].Frame.Dir) % unit.HalfTurn
		if i+1 != n && (dir != 0) == upright && b.Length.Known {
			return false
		}
	}
	return true
}

func alike(boards []board.Board, numbers []int) bool {
	for _, n := range numbers {
		if boards[n-1].Length != boards[numbers[0]-1].Length {
			return false
		}
	}
	return true
}

// reaches reports whether a board goes from one side of the module's box to the other.
func (p *piece) reaches(i int, upright bool) bool {
	box, o := p.box(), p.outlines()[i].Points
	least, most := o[0], o[0]
	for _, q := range o {
		least.X, least.Y = min(least.X, q.X), min(least.Y, q.Y)
		most.X, most.Y = max(most.X, q.X), max(most.Y, q.Y)
	}
	if upright {
		return least.Y-box.MinY <= unit.Touch && box.MaxY-most.Y <= unit.Touch
	}
	return least.X-box.MinX <= unit.Touch && box.MaxX-most.X <= unit.Touch
}
