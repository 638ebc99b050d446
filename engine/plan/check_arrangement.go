package plan

import (
	"ledgewright/engine/finding"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

func (c *checker) arrangement(i int) {
	a, s := &c.p.Arrangements[i], inArrangement(i)
	if _, ok := c.p.Wall(a.Wall); !ok {
		c.noWall(s, a)
	}
	if a.Corner != "" {
		if n, ok := c.p.Arrangement(a.Corner); !ok || n.ID == a.ID || n.Wall == a.Wall {
			args := []words.Arg{words.Name("neighbour", a.Corner)}
			c.add(noNeighbour, s, "corner", args, advice("name-neighbour"))
		}
	}
	placed := make(map[string]bool, len(a.Poses))
	for j := range a.Poses {
		c.pose(i, j, placed)
	}
	for j, l := range a.Lines {
		c.length(s.of("lines", j), "height", l.Height, -m1, 20*m1)
	}
	datum := s.at("datum", -1)
	c.known(datum, "level", a.Datum.Level, -m1, 20*m1)
	c.known(datum, "plumb", a.Datum.Plumb, -50*m1, 100*m1)
}

func (c *checker) noWall(s spot, a *Arrangement) {
	remedy := advice("add-wall")
	if len(c.p.Walls) > 0 {
		w := c.p.Walls[0]
		remedy = finding.Remedy{Key: "use-wall", Args: []words.Arg{words.Name("wall", w.Label())}}
		remedy.Edit = finding.Edit{Do: "set-arrangement", Args: []words.Arg{words.Name("arrangement", a.ID), words.Name("wall", w.ID)}}
	}
	c.add(noWall, s, "wall", []words.Arg{words.Name("wall", a.Wall)}, remedy)
}

// pose checks one pose; placed holds the modules of the poses before it.
func (c *checker) pose(i, j int, placed map[string]bool) {
	a := &c.p.Arrangements[i]
	o, s := &a.Poses[j], inArrangement(i).of("poses", j)
	switch {
	case !c.modules[o.Module]:
		c.add(noModule, s, "module", []words.Arg{words.Name("module", o.Module)}, c.takeOff(s))
	case placed[o.Module]:
		c.add(placedTwice, s, "module", nil, c.takeOff(s))
	}
	placed[o.Module] = true
	c.figures(s, o)
}

// figures checks the figures of a pose.
func (c *checker) figures(s spot, o *Pose) {
	c.length(s, "x", o.X, -50*m1, 100*m1)
	c.length(s, "y", o.Y, -20*m1, 40*m1)
	if o.Turn < 0 || o.Turn >= unit.FullTurn {
		least, most := words.AngleOf(0), words.AngleOf(unit.FullTurn-unit.Degree/100)
		c.figure(s, "turn", words.AngleOf(o.Turn), least, most, o.Turn < 0)
	}
}

// takeOff is the remedy that takes a pose off its wall.
func (c *checker) takeOff(s spot) finding.Remedy {
	a := &c.p.Arrangements[s.i]
	args := []words.Arg{words.Name("arrangement", a.ID), words.Name("module", a.Poses[s.j].Module)}
	return finding.Remedy{Key: "take-off", Args: c.where(s), Edit: finding.Edit{Do: "take-off", Args: args}}
}

// names notes things of one kind that have the same name, so that a sheet could mix
// them up.
func (c *checker) names() {
	seen := make(map[[2]string]bool, len(c.p.Modules)+8)
	again := func(what, name string, s spot) {
		if name == "" {
			return
		}
		if key := [2]string{what, name}; !seen[key] {
			seen[key] = true
			return
		}
		c.add(sameName, s, "name", []words.Arg{words.Name("name", name)}, advice("rename"))
	}
	for i, w := range c.p.Walls {
		again("wall", w.Name, inWall(i))
	}
	for i, m := range c.p.Modules {
		again("module", m.Name, inModule(i))
	}
	for i, a := range c.p.Arrangements {
		again("arrangement", a.Name, inArrangement(i))
	}
}
