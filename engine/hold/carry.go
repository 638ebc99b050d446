package hold

import (
	"math"
	"slices"

	"ledgewright/engine/strength"
)

// A Case is where the things on a shelf stand.
type Case string

// The cases. Nobody loads a shelf evenly for ever: books are piled at one end.
const (
	Even      Case = "even"
	LeftHalf  Case = "left-half"
	RightHalf Case = "right-half"
	Overhung  Case = "overhang" // all of it beyond the last bracket
)

// A Carrying is what one shelf can carry.
type Carrying struct {
	Board   string
	Clear   float64 // length that things can stand on, mm
	Alone   float64 // kg, with nothing on the other shelves: the least of all cases
	Carries float64 // kg, with all shelves of the module loaded in the same measure
	Case    Case    // that governs Alone
	On      []Span  // where things stand then, as places along the board
	Governs Use     // at Alone
	Even    float64 // kg, spread evenly, alone
}

// A Verdict is what can be said of a module where it hangs.
type Verdict struct {
	Shelves []Carrying
	Uses    []Use  // of every check, with all shelves carrying what they can
	Gaps    []Gap  // checks that could not be made, each once
	Hand    []Use  // the greatest use of each kind by a hand on a front edge, or a knock
	Off     []Push // pushes that take it off the wall, since nothing holds it against them
	// NoCorners says that nothing depends on the corners: the module stands as well where they
	// carry no moment.
	NoCorners bool
}

// mostCarried is where the search for what a shelf carries ends, kg: no shelf of wood is
// told to carry more.
const mostCarried = 500.0

// closeness is how near to 1 the greatest use comes where a load is found.
const closeness = 1e-6

// Judge returns what a module can carry on a site.
func (r *Response) Judge(site *Site) (Verdict, error) {
	var v Verdict
	for i := range r.Shelves {
		c, err := r.alone(site, i)
		if err != nil {
			return v, err
		}
		v.Shelves = append(v.Shelves, c)
	}
	if err := r.together(site, &v); err != nil {
		return v, err
	}
	v.Hand, v.Off = r.brief(site)
	return v, nil
}

// alone finds what shelf i carries with the others empty.
func (r *Response) alone(site *Site, i int) (Carrying, error) {
	s := &r.Shelves[i]
	c := Carrying{Board: s.Board, Clear: s.Clear, Alone: math.Inf(1)}
	for k, stand := range s.ways {
		kg, use, err := r.greatest(site, func(kg float64) []load { return []load{{i, k, kg}} })
		if err != nil {
			return c, err
		}
		if stand.is == Even {
			c.Even = kg
		}
		if kg < c.Alone {
			c.Alone, c.Case, c.On, c.Governs = kg, stand.is, stand.on, use
		}
	}
	return c, nil
}

// A load is so many kilograms on a shelf, in one of the ways that things stand on it.
type load struct {
	shelf, stand int
	kg           float64
}

// A stand is one way that things stand on a shelf.
type stand struct {
	is     Case
	effect *Effect // of 1 kg
	on     []Span
	area   float64 // mm²
}

// stands lists the ways that things stand on a shelf: evenly first.
func (s *ShelfResponse) stands() (out []stand) {
	add := func(is Case, e *Effect, on []Span) {
		area := 0.0
		for _, p := range on {
			area += p.length() * s.depth * BooksDeep
		}
		out = append(out, stand{is, e, on, area})
	}
	add(Even, &s.Even, s.spans)
	add(LeftHalf, &s.Left, s.half(false))
	add(RightHalf, &s.Right, s.half(true))
	for i := range s.Over {
		add(Overhung, &s.Over[i].Effect, []Span{s.Over[i].Span})
	}
	return out
}

// greatest returns the greatest load at which nothing is used more than wholly, and what is
// then used most: by chords, with the end that stays weighed down (the Illinois form of
// regula falsi), since uses grow with the load nearly in a line.
func (r *Response) greatest(site *Site, at func(kg float64) []load) (kg float64, most Use, err error) {
	over := func(kg float64) float64 {
		j, e := r.judged(site, at(kg))
		if e != nil && err == nil {
			err = e
		}
		most = j.worst()
		return most.Part - 1
	}
	low, high := 0.0, 10.0
	atLow := over(low)
	if atLow >= 0 || err != nil {
		return 0, most, err
	}
	atHigh := over(high)
	for atHigh < 0 && high < mostCarried {
		low, atLow = high, atHigh
		high = min(high*4, mostCarried)
		atHigh = over(high)
	}
	if atHigh < 0 {
		return mostCarried, most, err
	}
	return r.between(over, low, atLow, high, atHigh), most, err
}

// between narrows the load down.
func (r *Response) between(over func(float64) float64, low, atLow, high, atHigh float64) float64 {
	side := 0
	for range 60 {
		kg := (low*atHigh - high*atLow) / (atHigh - atLow)
		now := over(kg)
		switch {
		case math.Abs(now) < closeness && now <= 0:
			return kg
		case now > 0:
			high, atHigh = kg, now
			if side > 0 {
				atLow /= 2
			}
			side = 1
		default:
			low, atLow = kg, now
			if side < 0 {
				atHigh /= 2
			}
			side = -1
		}
	}
	over(low)
	return low
}

// judged holds the effect of the loads against what the parts bear, with all rods and with
// each that may carry nothing away.
func (r *Response) judged(site *Site, loads []load) (*judge, error) {
	j, err := r.judgedAsIs(site, loads)
	if err != nil {
		return j, err
	}
	for _, less := range r.lacking {
		k, err := less.judgedAsIs(site, loads)
		if err != nil {
			return j, err
		}
		j.worse(k.uses, less.missing)
	}
	return j, nil
}

func (r *Response) judgedAsIs(site *Site, loads []load) (*judge, error) {
	j := &judge{r: r, site: site, lasts: strength.Permanent, uses: make([]Use, 0, usesRoom)}
	amounts := make([]Amount, len(loads))
	for i, l := range loads {
		stand := &r.Shelves[l.shelf].ways[l.stand]
		amounts[i] = Amount{l.kg, stand.effect}
		j.piles = append(j.piles, pile{l.shelf, stand.on, l.kg * Gravity / stand.area})
	}
	e, err := r.Together(amounts...)
	if err != nil {
		return j, err
	}
	j.lasting(&e)
	return j, nil
}

// usesRoom is how many uses most modules have.
const usesRoom = 24

// worse takes in the uses that are greater than those that j has of the same.
func (j *judge) worse(uses []Use, missing string) {
	for _, u := range uses {
		u.Missing = missing
		i := slices.IndexFunc(j.uses, func(was Use) bool { return was.sameAs(&u) })
		switch {
		case i < 0:
			j.uses = append(j.uses, u)
		case u.Part > j.uses[i].Part:
			j.uses[i] = u
		}
	}
}

// sameAs says whether two uses are of the same check of the same thing.
func (u *Use) sameAs(o *Use) bool {
	return u.Kind == o.Kind && u.Bracket == o.Bracket && u.Board == o.Board && u.Corner == o.Corner
}

// worst returns the use with the greatest part.
func (j *judge) worst() (most Use) {
	for _, u := range j.uses {
		if u.Part > most.Part {
			most = u
		}
	}
	return most
}

// together finds what all shelves carry at once, each the same part of what it carries
// alone, and lists every use then.
func (r *Response) together(site *Site, v *Verdict) error {
	loads := func(part float64) (out []load) {
		for i := range r.Shelves {
			out = append(out, load{i, 0, part / mostCarried * v.Shelves[i].Alone})
		}
		return out
	}
	part, _, err := r.greatest(site, loads)
	if err != nil {
		return err
	}
	j, err := r.judged(site, loads(part))
	if err != nil {
		return err
	}
	for i := range v.Shelves {
		v.Shelves[i].Carries = part / mostCarried * v.Shelves[i].Alone
	}
	v.Uses, v.Gaps = j.uses, once(j.gaps)
	v.NoCorners, err = r.standsPinned(site, loads(part))
	return err
}

// once drops gaps that are listed already.
func once(gaps []Gap) (out []Gap) {
	seen := map[Gap]bool{}
	for _, g := range gaps {
		if !seen[g] {
			seen[g] = true
			out = append(out, g)
		}
	}
	return out
}
