package jobs

import (
	"slices"
	"strconv"

	"ledgewright/engine/document"
	"ledgewright/engine/hardware"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
)

// RandomPlan returns a plan with anything that a plan may hold: its own check finds
// nothing to put right, but what it describes may be impossible on a wall or at the
// bench.
func RandomPlan(seed uint64) plan.Plan {
	system := unit.Metric
	r := &random{draw: draw{seed}}
	if r.chance(35) {
		system = unit.Inches
	}
	r.system = system
	p := plan.New(system)
	p.Job, p.Units.Step, p.Shop = r.job(), r.step(), r.shop()
	for i := range 1 + r.upTo(3) {
		p.Walls = append(p.Walls, r.wall(i))
	}
	for range r.upTo(6) {
		p.Modules = append(p.Modules, r.module())
	}
	for i := range r.upTo(4) {
		p.Arrangements = append(p.Arrangements, r.arrangement(p, i))
	}
	r.corners(p.Arrangements)
	p.Counters = r.ids.counters
	p.Counters.Part += r.upTo(3)
	p.Extra = r.extra()
	return p
}

// RandomModule returns a module of any shape, which may cross itself.
func RandomModule(seed uint64) plan.Module {
	r := &random{draw: draw{seed}, system: unit.Metric}
	return r.module()
}

// SimpleModule returns a module of any shape that does not cross itself, without
// dividers.
func SimpleModule(seed uint64) plan.Module {
	r := &random{draw: draw{seed}, system: unit.Metric, simple: true}
	return r.module()
}

// A random draws the parts of one plan.
type random struct {
	draw
	ids    ids
	system unit.System
	simple bool // no chain crosses itself, and none has dividers
	named  int
}

// size draws a length from least to most as it is typed: in half millimetres or
// thirty-seconds of an inch, and sometimes exact to the nanometre.
func (r *random) size(least, most unit.Length) unit.Length {
	step := mm / 2
	switch {
	case r.system == unit.Inches:
		step = in / 32
		least = (least + step - 1) / step * step
	case r.chance(10):
		return least + unit.Length(r.next()>>1%uint64(most-least+1))
	}
	return r.length(least, most, step)
}

// maybe draws a size, or leaves it out.
func (r *random) maybe(percent int, least, most unit.Length) (o document.Opt[unit.Length]) {
	if r.chance(percent) {
		o = document.Some(r.size(least, most))
	}
	return o
}

// name draws a name that no other thing of this plan has, or none.
func (r *random) name(what string) string {
	if r.chance(30) {
		return ""
	}
	r.named++
	return one(&r.draw, what, "Große "+what, what+" \"ε\"", "棚") + " " + strconv.Itoa(r.named)
}

// text draws a remark, or none.
func (r *random) text() string {
	return one(&r.draw, "", "By the window", "line\nbreak and \\ slash", "ö 𝒳 \u2028")
}

// extra draws members that this version does not know, mostly none.
func (r *random) extra() (e document.Extra) {
	if !r.chance(8) {
		return nil
	}
	for _, key := range []string{"X-hue", "alpha seven", "zeta", "é", "ﬁ"} {
		if r.chance(40) {
			e = append(e, document.Member{Key: key, Value: one(&r.draw, `"amber"`, `1.5`, `[1,null,{"b":[],"c":"d"}]`, `true`, `{}`, `-20`)})
		}
	}
	return e
}

func (r *random) step() unit.Length {
	if r.system == unit.Inches {
		return one(&r.draw, in/64, in/32, in/16)
	}
	return one(&r.draw, mm/10, mm/2, mm)
}

func (r *random) job() plan.Job {
	return plan.Job{
		Number: one(&r.draw, "", "17", "A-3/9"), Title: r.text(), Maker: r.text(), Client: r.text(),
		Date: one(&r.draw, "", "2031-04-30", "2032-02-29"), Note: r.text(), Extra: r.extra(),
	}
}

// shop draws a profile with some fields other than the default.
func (r *random) shop() shop.Profile {
	p := shop.Default(r.system)
	if r.chance(60) {
		return p
	}
	changes := [][2]string{
		{"name", `"Bench 2"`}, {"covers.pocket", "4"}, {"covers.bore", "5"}, {"rods.deeper", "8"}, {"brackets.rule", `"overhang"`},
		{"brackets.fixed", "100"}, {"joints.splineThickness", "4"}, {"joints.tenonPitch", "90"}, {"grooves.deepestPart", "4"},
		{"gaps.apart", "30"}, {"stock.thicknesses", "[18,27]"}, {"machines.saw.maxTilt", "47"}, {"machines.saw.tiltsLeft", "false"},
		{"moisture.shop", "9.25"}, {"moisture.seen", "0.15"}, {"moisture.sawn", `"flat"`}, {"tape.site", "0.5"}, {"covers.slot", "2.5"},
	}
	for range 1 + r.upTo(4) {
		c := one(&r.draw, changes...)
		next, err := shop.Set(p, c[0], c[1])
		if err != nil {
			panic("jobs: a wrong change of the shop: " + err.Error())
		}
		p = next
	}
	p.Covers.Extra, p.Extra = r.extra(), r.extra()
	return p
}

func (r *random) wall(i int) plan.Wall {
	w := plan.Wall{ID: r.ids.next(plan.LetterWall), Name: r.name("Wall"), Width: r.size(900*mm, 6000*mm), Height: r.size(2000*mm, 3200*mm)}
	w.FloorRise, w.CeilingRise = r.maybe(40, -12*mm, 12*mm), r.maybe(40, -40*mm, 40*mm)
	w.Build = one(&r.draw, "", plan.BuildStuds, plan.BuildStuds, plan.BuildStuds, plan.BuildLath, plan.BuildDabs, plan.BuildBrick,
		plan.BuildHollow, plan.BuildAerated, plan.BuildConcrete)
	w.Lining = plan.Lining{
		Kind: one(&r.draw, "", "plasterboard", "plaster", "tile-over-plasterboard", "tile-over-plaster", "none"), Thickness: r.maybe(60, 0, 30*mm),
	}
	w.Studs = r.studs(w.Width)
	for range r.upTo(4) {
		w.Obstacles = append(w.Obstacles, r.obstacle(w))
	}
	w.CableRule = one(&r.draw, "", "uk")
	for range r.upTo(4) {
		w.Plumb = append(w.Plumb, plan.Plumb{X: r.size(0, w.Width), Over: r.size(600*mm, 2000*mm), Lean: r.size(-12*mm, 12*mm), Extra: r.extra()})
	}
	for range r.upTo(3) {
		w.Flat = append(w.Flat, plan.Flat{
			X: r.size(0, w.Width), Y: r.size(0, 2000*mm), Over: r.size(600*mm, 2000*mm), Gap: r.size(-6*mm, 6*mm), Upright: r.chance(30),
		})
	}
	w.FarSide, w.Extra = r.text(), r.extra()
	if r.chance(30) {
		w.BuiltYear = document.Some(1870 + r.upTo(150))
	}
	return w
}

func (r *random) studs(width unit.Length) (s plan.Studs) {
	state := func() string { return one(&r.draw, plan.EdgesFound, plan.EdgesFound, plan.OnePoint, plan.Guess) }
	s.Material = one(&r.draw, "", "wood", "wood", "metal")
	s.Width, s.Depth = r.maybe(80, 35*mm, 50*mm), r.maybe(50, 60*mm, 150*mm)
	if r.chance(60) {
		s.First, s.Spacing, s.State = r.maybe(85, 0, 600*mm), document.Some(one(&r.draw, 400*mm, 16*in, 600*mm, 24*in)), state()
	}
	for x := r.size(50*mm, 500*mm); x < width && r.chance(60); x += r.size(120*mm, 640*mm) {
		s.Each = append(s.Each, plan.Stud{X: x, Width: r.maybe(20, 35*mm, 90*mm), State: state(), Extra: r.extra()})
	}
	return s
}

func (r *random) obstacle(w plan.Wall) plan.Obstacle {
	return plan.Obstacle{
		ID:   r.ids.next(plan.LetterObstacle),
		Kind: one(&r.draw, plan.Socket, plan.Socket, plan.Switch, plan.Pipe, plan.Radiator, plan.Window, plan.Door, plan.Picture, plan.Furniture, plan.Other),
		Name: r.name("Thing"), X: r.size(-100*mm, w.Width-mm), Y: r.size(0, 2000*mm), Width: r.size(110*mm, 1200*mm), Height: r.size(60*mm, 900*mm),
		Depth: r.maybe(70, 0, 400*mm), Extra: r.extra(),
	}
}

// module draws a module with all that goes into one.
func (r *random) module() plan.Module {
	m := r.chain()
	m.ID, m.Name, m.Extra = r.ids.next(plan.LetterModule), r.name("Module"), r.extra()
	m.Depth, m.Wood, m.GrainWrap = r.size(120*mm, 320*mm), one(&r.draw, wood.All()...).ID, r.chance(20)
	for i := range m.Boards {
		b := &m.Boards[i]
		b.Name, b.Edges, b.Extra = one(&r.draw, "", "", "Shelf", "Side"), r.edges(b.Thickness), r.extra()
	}
	if !r.simple {
		r.dividers(&m)
	}
	for range max(0, r.upTo(4)-1) {
		m.Lights = append(m.Lights, r.light(m))
	}
	for range r.upTo(4) {
		if b, ok := r.bracket(m); ok {
			m.Brackets = append(m.Brackets, b)
		}
	}
	return m
}

func (r *random) edges(t unit.Length) (edges []plan.Edge) {
	for _, a := range []string{"front-a", "front-b", "back-a", "back-b", "start-a", "start-b", "end-a", "end-b"} {
		if r.chance(8) {
			edges = append(edges, plan.Edge{Arris: a, Cut: one(&r.draw, "chamfer", "round"), Size: r.size(mm, t/3), Extra: r.extra()})
		}
	}
	return edges
}

// dividers draws dividers between boards that face each other, and now and then
// between boards that do not.
func (r *random) dividers(m *plan.Module) {
	n := len(m.Boards)
	facing := n == 4 && m.Closed || n == 3 && m.Corners[0].Turn == m.Corners[1].Turn && m.Corners[0].Turn.Abs() == 90*deg
	if n < 2 || !(facing && r.chance(50) || r.chance(5)) {
		return
	}
	from, to := 1, 3
	if !facing {
		from = 1 + r.upTo(n)
		to = from%n + 1
	}
	b := m.Boards[from-1]
	if !b.Length.Known {
		return
	}
	m.Dividers = append(m.Dividers, plan.Divider{
		ID: r.ids.next(plan.LetterDivider), Name: r.name("Divider"), From: from, To: to, At: r.size(b.Length.Value/3, b.Length.Value*2/3), Thickness: r.size(14*mm, 26*mm),
		Start: one(&r.draw, "housed", "butt"), End: one(&r.draw, "housed", "butt"), HousingDepth: r.maybe(30, 4*mm, 6*mm),
		Edges: r.edges(14 * mm), Extra: r.extra(),
	})
}

func (r *random) light(m plan.Module) plan.Light {
	n := len(m.Boards)
	l := plan.Light{ID: r.ids.next(plan.LetterLight), Face: one(&r.draw, "A", "B", "B", "back"), Extra: r.extra()}
	l.First = 1 + r.upTo(n)
	l.Last = l.First
	switch {
	case r.chance(25) && l.First < n:
		l.Last++
	case r.chance(15) && m.Closed && l.First == n:
		l.Last = 1
	}
	l.Width, l.Depth, l.FromFront = r.size(6*mm, 14*mm), r.size(4*mm, 9*mm), r.maybe(60, 20*mm, 60*mm)
	l.StartStop, l.EndStop = r.maybe(60, 10*mm, 60*mm), r.maybe(60, 10*mm, 60*mm)
	l.Strip = one(&r.draw, hardware.Strips()...).ID
	if r.chance(70) {
		l.Power = plan.Power{Source: one(&r.draw, hardware.Sources()...).ID, Exit: one(&r.draw, "", "start", "end"), Lead: r.maybe(50, 200*mm, 4000*mm)}
	}
	return l
}

// bracket draws a bracket on a board whose length is typed, or on a divider.
func (r *random) bracket(m plan.Module) (plan.Bracket, bool) {
	b := plan.Bracket{Edge: one(&r.draw, "", "", "", "back", "front"), Extra: r.extra()}
	if len(m.Dividers) > 0 && r.chance(20) {
		b.Divider, b.At = m.Dividers[0].ID, r.size(20*mm, 120*mm)
	} else {
		b.Board = 1 + r.upTo(len(m.Boards))
		l := m.Boards[b.Board-1].Length
		if !l.Known {
			return b, false
		}
		b.At = r.size(l.Value/8, l.Value*7/8)
	}
	if r.chance(50) {
		b.Kind = string(one(&r.draw, hardware.Families()...))
	} else {
		b.Kind = one(&r.draw, hardware.Brackets()...).ID
	}
	if k, _ := hardware.Bracket(b.Kind); k.Pitch > 0 {
		b.Length = r.maybe(60, 150*mm, 900*mm)
	}
	b.ID = r.ids.next(plan.LetterBracket)
	return b, true
}

func (r *random) arrangement(p plan.Plan, i int) plan.Arrangement {
	w := one(&r.draw, p.Walls...)
	a := plan.Arrangement{ID: r.ids.next(plan.LetterArrangement), Name: r.name("Arrangement"), Wall: w.ID, Extra: r.extra()}
	for j, m := range p.Modules {
		if r.chance(25) {
			continue
		}
		o := plan.Pose{Module: m.ID, X: r.size(0, w.Width), Y: r.size(300*mm, w.Height), Flip: r.chance(15), Extra: r.extra()}
		o.Turn = one(&r.draw, 0, 0, 90*deg, 180*deg, 270*deg, 30*deg, unit.Angle(r.upTo(int(unit.FullTurn))))
		a.Poses = append(a.Poses, o)
		if i == 0 {
			p.Modules[j].Hung = o.Turn
		}
	}
	for range r.upTo(3) {
		a.Lines = append(a.Lines, plan.Line{ID: r.ids.next(plan.LetterLine), Height: r.size(300*mm, 2200*mm), Extra: r.extra()})
	}
	a.Datum = plan.Datum{Level: r.maybe(40, 900*mm, 1600*mm), Plumb: r.maybe(40, 0, w.Width)}
	return a
}

// corners names neighbours round a corner where two arrangements are on other walls.
func (r *random) corners(all []plan.Arrangement) {
	for i := range all {
		j := slices.IndexFunc(all, func(a plan.Arrangement) bool { return a.Wall != all[i].Wall })
		if j >= 0 && r.chance(40) {
			all[i].Corner = all[j].ID
		}
	}
}
