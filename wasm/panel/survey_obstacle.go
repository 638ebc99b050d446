package panel

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
	"ledgewright/wasm/app"
)

// obstaclesOf is what stands on or before the wall.
func obstaclesOf(s *app.State, w plan.Wall) Node {
	var list, add kids
	for i, o := range w.Obstacles {
		list.add(obstacleFold(s, w, o, obstacleName(s, w, i)))
	}
	for _, k := range obstacleKinds() {
		add.add(makes("add-"+k, term(s, "survey.add-"+k), addObstacle(s, w, k)))
	}
	return counted("survey-obstacles", term(s, "survey.obstacles"), len(w.Obstacles),
		list, when(list == nil, note("obstacles-none", term(s, "survey.obstacles-none"))),
		rowOf(add))
}

func obstacleKinds() []string {
	return []string{plan.Socket, plan.Switch, plan.Pipe, plan.Radiator, plan.Window, plan.Door, plan.Picture, plan.Furniture, plan.Other}
}

// obstacleName is what an obstacle is called: its name, or its kind and which of its
// kind it is.
func obstacleName(s *app.State, w plan.Wall, i int) string {
	o := w.Obstacles[i]
	if o.Name != "" {
		return o.Name
	}
	n := 0
	for _, other := range w.Obstacles[:i+1] {
		if other.Kind == o.Kind && other.Name == "" {
			n++
		}
	}
	return kindName(s, o.Kind) + " " + numeral(n)
}

// kindName is the word of a kind of obstacle; a kind that is not known stands as it is.
func kindName(s *app.State, kind string) string {
	for _, k := range obstacleKinds() {
		if k == kind {
			return term(s, "survey.kind-"+kind)
		}
	}
	return kind
}

func obstacleFold(s *app.State, w plan.Wall, o plan.Obstacle, name string) Node {
	called := words.Name("name", name)
	f := form{s: s, key: o.ID, words: "survey.obstacle", args: []words.Arg{called}, do: "set-obstacle", of: []any{"wall", w.ID, "obstacle", o.ID}}
	head := say(s, "survey.obstacle-head", called, words.Length("x", o.X), words.Length("y", o.Y))
	deep := f.maybe("depth", o.Depth, "survey.taken-as-deep")
	if !o.Depth.Known {
		deep = asking(deep)
	}
	return fold(s, o.ID, app.Thing{Kind: "obstacle", Owner: w.ID, ID: o.ID}, head, nothing(),
		two(f.choice("kind", o.Kind, options(s, "survey.kind-", obstacleKinds()...)), f.text("name", o.Name, "form.no-name")),
		two(f.length("x", o.X), f.length("y", o.Y)),
		two(f.length("width", o.Width), f.length("height", o.Height)),
		deep,
		drops(o.ID+".remove", say(s, "survey.remove-obstacle", called), line("remove-obstacle", "wall", w.ID, "obstacle", o.ID)))
}

// usual returns the size and the height above the floor with which an obstacle begins:
// what is common in houses, our assumption.
func usual(s *app.State, kind string) (width, height, y unit.Length) {
	switch kind {
	case plan.Socket:
		return pick(s, 146, 4), pick(s, 86, 5), pick(s, 300, 12)
	case plan.Switch:
		return pick(s, 86, 3), pick(s, 86, 5), pick(s, 1050, 44)
	case plan.Pipe:
		return pick(s, 30, 1), pick(s, 2400, 96), 0
	case plan.Radiator:
		return pick(s, 1000, 40), pick(s, 600, 24), pick(s, 120, 5)
	case plan.Window:
		return pick(s, 1000, 40), pick(s, 1200, 48), pick(s, 900, 36)
	case plan.Door:
		return pick(s, 800, 32), pick(s, 2000, 80), 0
	case plan.Picture:
		return pick(s, 500, 20), pick(s, 700, 28), pick(s, 1300, 52)
	case plan.Furniture:
		return pick(s, 900, 36), pick(s, 800, 32), 0
	}
	return pick(s, 200, 8), pick(s, 200, 8), pick(s, 1000, 40)
}

// pick returns a length in whole units of the plan.
func pick(s *app.State, mm, in unit.Length) unit.Length {
	if s.Plan.Units.System == unit.Inches {
		return in * unit.Inch
	}
	return mm * unit.Millimetre
}

// addObstacle is the edit that adds an obstacle of a kind where nothing stands yet.
func addObstacle(s *app.State, w plan.Wall, kind string) string {
	width, height, y := usual(s, kind)
	width, height = min(width, w.Width), min(height, w.Height)
	y = max(min(y, w.Height-height), 0)
	x := freePlace(w, width, height, y, pick(s, 50, 2))
	return line("add-obstacle", "wall", w.ID, "kind", kind, "x", x, "y", y, "width", width, "height", height)
}

// freePlace returns the left-most x, in steps, at which a rectangle meets no obstacle of
// the wall; the middle of the wall where there is none.
func freePlace(w plan.Wall, width, height, y, step unit.Length) unit.Length {
	const most = 400 // steps; a wall has 50 m at most
	x := step
	for range most {
		if x+width > w.Width {
			break
		}
		if free(w, x, y, width, height) {
			return x
		}
		x += step
	}
	return max((w.Width-width)/2, 0)
}

func free(w plan.Wall, x, y, width, height unit.Length) bool {
	for _, o := range w.Obstacles {
		if x < o.X+o.Width && o.X < x+width && y < o.Y+o.Height && o.Y < y+height {
			return false
		}
	}
	return true
}
