package edit

import (
	"slices"
	"strconv"

	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// with returns s with v in place of element i, in storage of its own.
func with[T any](s []T, i int, v T) []T {
	s = slices.Clone(s)
	s[i] = v
	return s
}

// without returns s without element i, in storage of its own; nil when none is left.
func without[T any](s []T, i int) []T {
	if len(s) == 1 {
		return nil
	}
	return slices.Concat(s[:i], s[i+1:])
}

// inserted returns s with v before element i, in storage of its own.
func inserted[T any](s []T, i int, v T) []T { return slices.Concat(s[:i], []T{v}, s[i:]) }

// find returns the place of the thing with an id, or an error that names the nearest.
func find[T any](s []T, id func(T) string, what, where, want string) (int, error) {
	i := slices.IndexFunc(s, func(v T) bool { return id(v) == want })
	if i >= 0 {
		return i, nil
	}
	have := make([]string, len(s))
	for j, v := range s {
		have[j] = id(v)
	}
	return 0, noSuch(what, where, want, have)
}

func findModule(p plan.Plan, id string) (int, error) {
	return find(p.Modules, func(m plan.Module) string { return m.ID }, "module", "", id)
}

func findWall(p plan.Plan, id string) (int, error) {
	return find(p.Walls, func(w plan.Wall) string { return w.ID }, "wall", "", id)
}

func findArrangement(p plan.Plan, id string) (int, error) {
	return find(p.Arrangements, func(a plan.Arrangement) string { return a.ID }, "arrangement", "", id)
}

func findPose(a plan.Arrangement, module string) (int, error) {
	return find(a.Poses, func(o plan.Pose) string { return o.Module }, "pose", "arrangement "+a.ID, module)
}

// number checks a number that counts things from 1 and returns the index from 0.
func number(n, have int, what, where string) (int, error) {
	if n >= 1 && n <= have {
		return n - 1, nil
	}
	key := "no-number"
	if have == 0 {
		key = "no-number-none"
	}
	return 0, refuse(key, where, words.Word("what", "thing."+what), words.Count("n", n), words.Count("limit", have))
}

// changeModule returns p with one module changed.
func changeModule(p plan.Plan, id string, change func(plan.Module) (plan.Module, error)) (plan.Plan, error) {
	i, err := findModule(p, id)
	if err != nil {
		return p, err
	}
	m, err := change(p.Modules[i])
	if err != nil {
		return p, err
	}
	p.Modules = with(p.Modules, i, m)
	return p, nil
}

// changeWall returns p with one wall changed.
func changeWall(p plan.Plan, id string, change func(plan.Wall) (plan.Wall, error)) (plan.Plan, error) {
	i, err := findWall(p, id)
	if err != nil {
		return p, err
	}
	w, err := change(p.Walls[i])
	if err != nil {
		return p, err
	}
	p.Walls = with(p.Walls, i, w)
	return p, nil
}

// changeArrangement returns p with one arrangement changed.
func changeArrangement(p plan.Plan, id string, change func(plan.Arrangement) (plan.Arrangement, error)) (plan.Plan, error) {
	i, err := findArrangement(p, id)
	if err != nil {
		return p, err
	}
	a, err := change(p.Arrangements[i])
	if err != nil {
		return p, err
	}
	p.Arrangements = with(p.Arrangements, i, a)
	return p, nil
}

// A part is a thing with an id inside a module, wall or arrangement. Its id alone names
// it; an edit may name its owner besides, and is then held to it.

// owner returns the id of the owner that holds a part.
func owner[O, T any](owners []O, name func(O) string, parts func(O) []T, id func(T) string, what, ownerKind, claimed, want string) (string, error) {
	var have []string
	for _, o := range owners {
		for _, v := range parts(o) {
			if id(v) == want && (claimed == "" || claimed == name(o)) {
				return name(o), nil
			}
			have = append(have, id(v))
		}
	}
	where := ""
	if claimed != "" {
		where = ownerKind + " " + claimed
	}
	return "", noSuch(what, where, want, slices.DeleteFunc(have, func(s string) bool { return s == want }))
}

func moduleID(m plan.Module) string           { return m.ID }
func wallID(w plan.Wall) string               { return w.ID }
func arrangementID(a plan.Arrangement) string { return a.ID }
func dividerID(d plan.Divider) string         { return d.ID }
func lightID(l plan.Light) string             { return l.ID }
func bracketID(b plan.Bracket) string         { return b.ID }
func obstacleID(o plan.Obstacle) string       { return o.ID }
func lineID(l plan.Line) string               { return l.ID }

func ofModule(m plan.Module) words.Arg           { return words.Name("module", m.Label()) }
func ofWall(w plan.Wall) words.Arg               { return words.Name("wall", w.Label()) }
func ofArrangement(a plan.Arrangement) words.Arg { return words.Name("arrangement", a.Label()) }

// where joins the names of places: where("module", "m1") is "module m1".
func where(what, id string) string { return what + " " + id }

func whereN(m plan.Module, what string, n int) string {
	return "module " + m.ID + ", " + what + " " + strconv.Itoa(n)
}

// farthest bounds the lengths of a document.
const farthest = 1_000_000_000 * unit.Millimetre

// tooMuch refuses a plan that could not be read back.
func tooMuch(p plan.Plan) error {
	if n := len(p.Modules); n > plan.MostModules {
		return refuse("too-many", "plan", words.Word("what", "thing.modules"), words.Count("value", n), words.Count("limit", plan.MostModules))
	}
	boards := 0
	for i := range p.Modules {
		boards += len(p.Modules[i].Boards)
	}
	if boards > plan.MostBoards {
		return refuse("too-many", "plan", words.Word("what", "thing.boards"), words.Count("value", boards), words.Count("limit", plan.MostBoards))
	}
	return nil
}

// far refuses a place that a document could not hold.
func far(where string, l ...unit.Length) error {
	for _, l := range l {
		if l.Abs() >= farthest {
			return refuse("too-far", where, words.Length("value", l), words.Length("limit", farthest))
		}
	}
	return nil
}

// next gives the next id of a kind. The counter stands in the plan, so an id is never
// given twice, also after its thing was taken away. An id that is taken all the same, in
// a plan with a counter that is too low, is passed over.
func next(p *plan.Plan, l plan.Letter) (id string) {
	for id == "" || taken(p, l, id) {
		id, p.Counters = p.Counters.Next(l)
	}
	return id
}

// taken reports whether a thing of a kind has the id.
func taken(p *plan.Plan, l plan.Letter, id string) bool {
	switch l {
	case plan.LetterWall:
		_, ok := p.Wall(id)
		return ok
	case plan.LetterModule:
		_, ok := p.Module(id)
		return ok
	case plan.LetterArrangement:
		_, ok := p.Arrangement(id)
		return ok
	}
	for i := range p.Modules {
		m := &p.Modules[i]
		if holds(m.Dividers, dividerID, id) || holds(m.Lights, lightID, id) || holds(m.Brackets, bracketID, id) {
			return true
		}
	}
	for i := range p.Walls {
		if holds(p.Walls[i].Obstacles, obstacleID, id) {
			return true
		}
	}
	for i := range p.Arrangements {
		if holds(p.Arrangements[i].Lines, lineID, id) {
			return true
		}
	}
	return false
}

func holds[T any](s []T, name func(T) string, id string) bool {
	return slices.ContainsFunc(s, func(v T) bool { return name(v) == id })
}
