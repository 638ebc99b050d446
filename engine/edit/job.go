package edit

import (
	"strings"

	"ledgewright/engine/document"
	"ledgewright/engine/plan"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// SetJob changes what stands in the title block: number, title, maker, client, date,
// note.
type SetJob struct {
	With document.Extra `json:"-"`
}

// Do returns "set-job".
func (SetJob) Do() string { return "set-job" }

func (e SetJob) apply(p plan.Plan) (_ plan.Plan, _ Name, err error) {
	p.Job, err = patch(p.Job, e.With, "job")
	return p, did(e), err
}

// SetUnits changes the plan's system and its smallest step. A system alone brings with it
// the step of a shop that measures in it.
type SetUnits struct {
	With document.Extra `json:"-"`
}

// Do returns "set-units".
func (SetUnits) Do() string { return "set-units" }

func (e SetUnits) apply(p plan.Plan) (plan.Plan, Name, error) {
	u, err := patch(p.Units, e.With, "units")
	switch {
	case err != nil:
		return p, Name{}, err
	case !has(e.With, "step"):
		u.Step = shop.Default(u.System).Tape.Bench
	}
	if u.System != unit.Metric && u.System != unit.Inches {
		return p, Name{}, notOneOf("units", "system", string(u.System), string(unit.Metric), string(unit.Inches))
	}
	if u.Step <= 0 {
		return p, Name{}, refuse("not-positive", "units", words.Name("member", "step"), words.Length("value", u.Step))
	}
	p.Units = u
	return p, did(e), nil
}

// SetShop changes one value of the plan's shop profile, by its path ("covers.bore"), or
// the whole profile.
type SetShop struct {
	Path    string                     `json:"path,omitempty"`
	Profile document.Opt[shop.Profile] `json:"profile,omitempty"`
	With    document.Extra             `json:"-"` // "value"
}

// Do returns "set-shop".
func (SetShop) Do() string { return "set-shop" }

func (e SetShop) apply(p plan.Plan) (plan.Plan, Name, error) {
	if e.Profile.Known {
		if e.Path != "" || len(e.With) > 0 {
			return p, Name{}, refuse("either", "shop", words.Name("member", "path"), words.Name("other", "profile"))
		}
		if faults := shop.Check(e.Profile.Value); len(faults) > 0 {
			return p, Name{}, faults[0]
		}
		p.Shop = e.Profile.Value
		return p, doing(e, "whole"), nil
	}
	if len(e.With) != 1 || e.With[0].Key != "value" {
		return p, Name{}, refuse("missing", "shop", words.Name("member", "value"))
	}
	s, err := shop.Set(p.Shop, e.Path, e.With[0].Value)
	if err == nil {
		if faults := shop.Check(s); len(faults) > 0 {
			err = faults[0]
		}
	}
	p.Shop = s
	return p, did(e, words.Name("path", e.Path)), err
}

// notOneOf says that a word is none of those that a member may have.
func notOneOf(where, member, value string, allowed ...string) *Error {
	return refuse("not-one-of", where, words.Name("member", member), words.Name("value", value),
		words.Name("limit", strings.Join(allowed, ", ")))
}
