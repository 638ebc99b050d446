package hold

import (
	"strconv"

	"ledgewright/engine/strength"
)

// A Pull is how hard the most pulled screw of a bracket is pulled, N, and with how much to
// try one out at the site where nobody knows what its wall bears.
type Pull struct {
	Bracket string
	Service float64
	Try     float64 // for five minutes, without moving
}

// Pulls returns the pulls with so many kilograms spread over each shelf, in the order of the
// brackets that have screws.
func (r *Response) Pulls(kg []float64) ([]Pull, error) {
	amounts, err := r.evenly(kg)
	if err != nil {
		return nil, err
	}
	e, err := r.Together(amounts...)
	if err != nil {
		return nil, err
	}
	f := r.model
	var out []Pull
	take := func(bracket string, pull float64) {
		if n := len(out); n == 0 || out[n-1].Bracket != bracket {
			out = append(out, Pull{Bracket: bracket})
		}
		p := &out[len(out)-1]
		p.Service = max(p.Service, pull)
		p.Try = p.Service * strength.MasonryTestFactor
	}
	for i := range f.rods {
		p, inertia := f.plate(&f.rods[i]), 0.0
		q := e.Rods[i]
		q.M = max(q.M, f.unaided(&e, i))
		for _, s := range p.screws {
			inertia += sq(p.leverX(s))
		}
		for _, s := range p.screws {
			take(f.rods[i].fixing.Bracket, max(q.M, 0)*p.leverX(s)/inertia+max(q.N, 0)/float64(len(p.screws)))
		}
	}
	for i, l := range f.links {
		if l.way[2] != 0 {
			take(f.of.Fixings[l.fixing].Bracket, max(e.Links[i], 0))
		}
	}
	return out, nil
}

// A LoadError says that a load is none: not a number, less than nothing, or beyond measure.
type LoadError struct{ Shelf int }

// Error says so.
func (e *LoadError) Error() string {
	return "the load of shelf " + strconv.Itoa(e.Shelf+1) + " is no load"
}

// mostLoad is the greatest load that is taken for one, kg.
const mostLoad = 1e5

// evenly returns kilograms spread over each shelf; missing ones are empty.
func (r *Response) evenly(kg []float64) (out []Amount, err error) {
	for i := range min(len(kg), len(r.Shelves)) {
		if !(kg[i] >= 0 && kg[i] <= mostLoad) {
			return nil, &LoadError{i}
		}
		out = append(out, Amount{kg[i], &r.Shelves[i].Even})
	}
	return out, nil
}
