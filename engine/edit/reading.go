package edit

import (
	"ledgewright/engine/document"
	"ledgewright/engine/plan"
)

// AddPlumb adds a reading of how far a wall is out of plumb.
type AddPlumb struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "add-plumb".
func (AddPlumb) Do() string { return "add-plumb" }

func (e AddPlumb) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (plan.Wall, error) {
		r, err := fresh(plan.Plumb{}, e.With, where("wall", w.ID)+", new plumb reading")
		w.Plumb = inserted(w.Plumb, len(w.Plumb), r)
		return w, err
	})
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
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Plumb, err = setAt(w.Plumb, e.Plumb, e.With, "plumb", where("wall", w.ID))
		return w, err
	})
}

// RemovePlumb takes a plumb reading away, by its number.
type RemovePlumb struct {
	Wall  string `json:"wall"`
	Plumb int    `json:"plumb"`
}

// Do returns "remove-plumb".
func (RemovePlumb) Do() string { return "remove-plumb" }

func (e RemovePlumb) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Plumb, err = removeAt(w.Plumb, e.Plumb, "plumb", where("wall", w.ID))
		return w, err
	})
}

// AddFlat adds a reading along a straightedge.
type AddFlat struct {
	Wall string         `json:"wall"`
	With document.Extra `json:"-"`
}

// Do returns "add-flat".
func (AddFlat) Do() string { return "add-flat" }

func (e AddFlat) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (plan.Wall, error) {
		r, err := fresh(plan.Flat{}, e.With, where("wall", w.ID)+", new straightedge reading")
		w.Flat = inserted(w.Flat, len(w.Flat), r)
		return w, err
	})
}

// SetFlat changes a straightedge reading, by its number.
type SetFlat struct {
	Wall string         `json:"wall"`
	Flat int            `json:"flat"`
	With document.Extra `json:"-"`
}

// Do returns "set-flat".
func (SetFlat) Do() string { return "set-flat" }

func (e SetFlat) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Flat, err = setAt(w.Flat, e.Flat, e.With, "flat", where("wall", w.ID))
		return w, err
	})
}

// RemoveFlat takes a straightedge reading away, by its number.
type RemoveFlat struct {
	Wall string `json:"wall"`
	Flat int    `json:"flat"`
}

// Do returns "remove-flat".
func (RemoveFlat) Do() string { return "remove-flat" }

func (e RemoveFlat) apply(p plan.Plan) (plan.Plan, Name, error) {
	return onWall(p, e, e.Wall, func(w plan.Wall) (_ plan.Wall, err error) {
		w.Flat, err = removeAt(w.Flat, e.Flat, "flat", where("wall", w.ID))
		return w, err
	})
}
