package edit

import (
	"cmp"
	"slices"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/rank"
	"ledgewright/engine/words"
)

// AddWall adds a wall: its width and height, and whatever else of it is known.
type AddWall struct {
	With document.Extra `json:"-"`
}

// Do returns "add-wall".
func (AddWall) Do() string { return "add-wall" }

func (e AddWall) apply(p plan.Plan) (plan.Plan, Name, error) {
	w, err := fresh(plan.Wall{}, e.With, "new wall", "id", "studs", "obstacles", "plumb", "flat")
	if err != nil {
		return p, Name{}, err
	}
	w.ID = next(&p, plan.LetterWall)
	p.Walls = inserted(p.Walls, len(p.Walls), w)
	return p, did(e, ofWall(w)), nil
}

// SetWall changes what is known of a wall, but for its studs, obstacles and readings.
type SetWall struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "set-wall".
func (SetWall) Do() string { return "set-wall" }

func (e SetWall) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (plan.Wall, error) {
		return patch(w, e.With, where("wall", w.ID), "id", "studs", "obstacles", "plumb", "flat")
	})
}

// RemoveWall takes a wall away. It is refused while an arrangement stands on the wall.
type RemoveWall struct {
	Wall string `json:"wall"`
}

// Do returns "remove-wall".
func (RemoveWall) Do() string { return "remove-wall" }

func (e RemoveWall) apply(p plan.Plan) (plan.Plan, Name, error) {
	i, err := findWall(p, e.Wall)
	if err != nil {
		return p, Name{}, err
	}
	for _, a := range p.Arrangements {
		if a.Wall == e.Wall {
			return p, Name{}, refuse("wall-in-use", where("wall", e.Wall), ofArrangement(a), words.Name("id", a.ID))
		}
	}
	name := did(e, ofWall(p.Walls[i]))
	p.Walls = without(p.Walls, i)
	return p, name, nil
}

// onWall applies a change to one wall and names it after e.
func onWall(p plan.Plan, e Edit, id string, change func(plan.Wall) (plan.Wall, error)) (plan.Plan, Name, error) {
	var name Name
	p, err := changeWall(p, id, func(w plan.Wall) (plan.Wall, error) {
		w, err := change(w)
		name = did(e, ofWall(w))
		return w, err
	})
	return p, name, err
}

// SetStuds changes what is known of all studs of a wall.
type SetStuds struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "set-studs".
func (SetStuds) Do() string { return "set-studs" }

func (e SetStuds) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Studs, err = patch(w.Studs, e.With, where("wall", w.ID)+", studs", "each")
		return w, err
	})
}

// AddStud adds one stud, found by itself. Studs stand in the order of their centres.
type AddStud struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "add-stud".
func (AddStud) Do() string { return "add-stud" }

func (e AddStud) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (plan.Wall, error) {
		s, err := fresh(plan.Stud{}, e.With, where("wall", w.ID)+", new stud")
		w.Studs.Each = sortedStuds(inserted(w.Studs.Each, len(w.Studs.Each), s))
		return w, err
	})
}

// SetStud changes one stud, by its number from the left.
type SetStud struct {
	Wall string         `json:"wall"`
	Stud int            `json:"stud"`
	With document.Extra `json:"-"`
}

// Do returns "set-stud".
func (SetStud) Do() string { return "set-stud" }

func (e SetStud) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Studs.Each, err = setAt(w.Studs.Each, e.Stud, e.With, "stud", where("wall", w.ID))
		w.Studs.Each = sortedStuds(w.Studs.Each)
		return w, err
	})
}

// RemoveStud takes one stud away, by its number from the left.
type RemoveStud struct {
	Wall string `json:"wall"`
	Stud int    `json:"stud"`
}

// Do returns "remove-stud".
func (RemoveStud) Do() string { return "remove-stud" }

func (e RemoveStud) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Studs.Each, err = removeAt(w.Studs.Each, e.Stud, "stud", where("wall", w.ID))
		return w, err
	})
}

// sortedStuds returns s, which is the caller's own, in the order of the centres.
func sortedStuds(s []plan.Stud) []plan.Stud {
	rank.By(s, func(a, b plan.Stud) int { return cmp.Compare(a.X, b.X) })
	return s
}

// setAt changes the nth of s.
func setAt[T any](s []T, n int, changes document.Extra, what, where string) ([]T, error) {
	i, err := number(n, len(s), what, where)
	if err != nil {
		return nil, err
	}
	v, err := patch(s[i], changes, where+", "+what, "id")
	return with(s, i, v), err
}

// removeAt takes the nth of s away.
func removeAt[T any](s []T, n int, what, where string) ([]T, error) {
	i, err := number(n, len(s), what, where)
	if err != nil {
		return nil, err
	}
	return without(s, i), nil
}

// AddObstacle adds an obstacle to a wall.
type AddObstacle struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "add-obstacle".
func (AddObstacle) Do() string { return "add-obstacle" }

func (e AddObstacle) apply(p plan.Plan) (plan.Plan, Name, error) {
	id := next(&p, plan.LetterObstacle)
	return onWall(p, e, e.Wall, func(w plan.Wall) (plan.Wall, error) {
		o, err := fresh(plan.Obstacle{}, e.With, where("wall", w.ID)+", new obstacle", "id")
		o.ID = id
		w.Obstacles = inserted(w.Obstacles, len(w.Obstacles), o)
		return w, err
	})
}

// SetObstacle changes an obstacle.
type SetObstacle struct {
	Wall     string         `json:"wall,omitempty"`
	Obstacle string         `json:"obstacle"`
	With     document.Extra `json:"-"`
}

// Do returns "set-obstacle".
func (SetObstacle) Do() string { return "set-obstacle" }

func (e SetObstacle) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onObstacle(p, e, e.Wall, e.Obstacle, func(s []plan.Obstacle, i int) ([]plan.Obstacle, error) {
		o, err := patch(s[i], e.With, where("obstacle", e.Obstacle), "id")
		return with(s, i, o), err
	})
}

// RemoveObstacle takes an obstacle away.
type RemoveObstacle struct {
	Wall     string `json:"wall,omitempty"`
	Obstacle string `json:"obstacle"`
}

// Do returns "remove-obstacle".
func (RemoveObstacle) Do() string { return "remove-obstacle" }

func (e RemoveObstacle) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onObstacle(p, e, e.Wall, e.Obstacle, func(s []plan.Obstacle, i int) ([]plan.Obstacle, error) {
		return without(s, i), nil
	})
}

// onObstacle changes the obstacles of the wall that holds one, given its place.
func onObstacle(p plan.Plan, e Edit, claimed, id string, change func([]plan.Obstacle, int) ([]plan.Obstacle, error)) (plan.Plan, Name, error) {
	obstacles := func(w plan.Wall) []plan.Obstacle { return w.Obstacles }
	on, err := owner(p.Walls, wallID, obstacles, obstacleID, "obstacle", "wall", claimed, id)
	if err != nil {
		return p, Name{}, err
	}
	return onWall(p, e, on, func(w plan.Wall) (_ plan.Wall, err error) {
		i := slices.IndexFunc(w.Obstacles, func(o plan.Obstacle) bool { return o.ID == id })
		w.Obstacles, err = change(w.Obstacles, i)
		return w, err
	})
}
