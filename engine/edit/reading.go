package edit

import (
	"ledgewright/engine/document"
	"ledgewright/engine/plan"
)

// A reading is a kind of reading of a wall: how its edits name it, how a new one is
// called, and where the wall has its list.
type reading[T any] struct {
	what, fresh string
	of          func(*plan.Wall) *[]T
}

func plumb() reading[plan.Plumb] {
	return reading[plan.Plumb]{"plumb", "new plumb reading", func(w *plan.Wall) *[]plan.Plumb { return &w.Plumb }}
}

func flat() reading[plan.Flat] {
	return reading[plan.Flat]{"flat", "new straightedge reading", func(w *plan.Wall) *[]plan.Flat { return &w.Flat }}
}

func (r reading[T]) add(p plan.Plan, e Edit, wall string, with document.Extra) (plan.Plan, Name, error) {
	return r.change(p, e, wall, func(all []T, where string) ([]T, error) {
		var none T
		one, err := fresh(none, with, where+", "+r.fresh)
		return inserted(all, len(all), one), err
	})
}

func (r reading[T]) set(p plan.Plan, e Edit, wall string, n int, with document.Extra) (plan.Plan, Name, error) {
	return r.change(p, e, wall, func(all []T, where string) ([]T, error) { return setAt(all, n, with, r.what, where) })
}

func (r reading[T]) remove(p plan.Plan, e Edit, wall string, n int) (plan.Plan, Name, error) {
	return r.change(p, e, wall, func(all []T, where string) ([]T, error) { return removeAt(all, n, r.what, where) })
}

// change changes the list of readings of a wall.
func (r reading[T]) change(p plan.Plan, e Edit, wall string, how func(all []T, where string) ([]T, error)) (plan.Plan, Name, error) {
	return onWall(p, e, wall, func(w plan.Wall) (_ plan.Wall, err error) {
		all := r.of(&w)
		*all, err = how(*all, where("wall", w.ID))
		return w, err
	})
}

// AddPlumb adds a reading of how far a wall is out of plumb.
type AddPlumb struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "add-plumb".
func (AddPlumb) Do() string { return "add-plumb" }

func (e AddPlumb) apply(p plan.Plan) (plan.Plan, Name, error) {
	return plumb().add(p, e, e.Wall, e.With)
}

// SetPlumb changes a plumb reading, by its number.
type SetPlumb struct {
	Wall  string         `json:"wall"`
	Plumb int            `json:"plumb"`
	With  document.Extra `json:"-"`
}

// Do returns "set-plumb".
func (SetPlumb) Do() string { return "set-plumb" }

func (e SetPlumb) apply(p plan.Plan) (plan.Plan, Name, error) {
	return plumb().set(p, e, e.Wall, e.Plumb, e.With)
}

// RemovePlumb takes a plumb reading away, by its number.
type RemovePlumb struct {
	Wall  string `json:"wall"`
	Plumb int    `json:"plumb"`
}

// Do returns "remove-plumb".
func (RemovePlumb) Do() string { return "remove-plumb" }

func (e RemovePlumb) apply(p plan.Plan) (plan.Plan, Name, error) {
	return plumb().remove(p, e, e.Wall, e.Plumb)
}

// AddFlat adds a reading along a straightedge.
type AddFlat struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "add-flat".
func (AddFlat) Do() string { return "add-flat" }

func (e AddFlat) apply(p plan.Plan) (plan.Plan, Name, error) { return flat().add(p, e, e.Wall, e.With) }

// SetFlat changes a straightedge reading, by its number.
type SetFlat struct {
	Wall string         `json:"wall"`
	Flat int            `json:"flat"`
	With document.Extra `json:"-"`
}

// Do returns "set-flat".
func (SetFlat) Do() string { return "set-flat" }

func (e SetFlat) apply(p plan.Plan) (plan.Plan, Name, error) {
	return flat().set(p, e, e.Wall, e.Flat, e.With)
}

// RemoveFlat takes a straightedge reading away, by its number.
type RemoveFlat struct {
	Wall string `json:"wall"`
	Flat int    `json:"flat"`
}

// Do returns "remove-flat".
func (RemoveFlat) Do() string { return "remove-flat" }

func (e RemoveFlat) apply(p plan.Plan) (plan.Plan, Name, error) {
	return flat().remove(p, e, e.Wall, e.Flat)
}
