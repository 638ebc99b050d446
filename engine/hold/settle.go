package hold

// A Settled is how a module stands under what is on its shelves: nothing of it breaks, but
// all of it is seen.
type Settled struct {
	Sags    []Sag   // of the shelves, in their order
	Droops  []Droop // of each rod, in the order of the brackets
	Turning Turning
}

// Settle returns how the module settles with so many kilograms spread over each shelf, in
// the order of Shelves; missing ones are empty. Sag is held against the limit.
func (r *Response) Settle(kg []float64, limit Limit) (Settled, error) {
	f := r.model
	amounts, err := r.evenly(kg)
	if err != nil {
		return Settled{}, err
	}
	e, err := r.Together(amounts...)
	if err != nil {
		return Settled{}, err
	}
	out := Settled{Turning: f.turning()}
	for i := range r.Shelves {
		out.Sags = append(out.Sags, f.sags(&e, r.Shelves[i].bar, limit)...)
	}
	for i := range f.rods {
		d, err := f.droop(&e, i)
		if err != nil {
			return out, err
		}
		out.Droops = append(out.Droops, d)
	}
	return out, nil
}

// LimitBy returns the limit with the key, the usual one where there is none.
func LimitBy(key string) Limit {
	var usual Limit
	for _, l := range Limits() {
		if l.Key == key {
			return l
		}
		if l.Key == UsualLimit {
			usual = l
		}
	}
	return usual
}
