// Package jobs makes plans for tests and measurements: the jobs One, S, M and L, which
// a shop could build, and random plans with something of everything.
//
// The same seed gives the same plan on every machine: numbers come from SplitMix64,
//
//	s ← s + 9E3779B97F4A7C15₁₆,  z = s
//	z ← (z ⊕ z≫30) · BF58476D1CE4E5B9₁₆
//	z ← (z ⊕ z≫27) · 94D049BB133111EB₁₆
//	out = z ⊕ z≫31
//
// Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014,
// in the form that Vigna published; and lengths are drawn as whole numbers.
package jobs

import (
	"ledgewright/engine/plan"
	"ledgewright/engine/unit"
)

// Short names.
const (
	mm  = unit.Millimetre
	in  = unit.Inch
	deg = unit.Degree
)

// A draw is a sequence of random numbers.
type draw struct{ s uint64 }

func (d *draw) next() uint64 {
	d.s += 0x9E3779B97F4A7C15
	z := d.s
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// upTo returns a number from 0 to n − 1.
func (d *draw) upTo(n int) int { return int(d.next() >> 1 % uint64(n)) }

// chance is true in n of 100 draws.
func (d *draw) chance(n int) bool { return d.upTo(100) < n }

// length returns a length from least to most in whole steps above least.
func (d *draw) length(least, most, step unit.Length) unit.Length {
	return least + step*unit.Length(d.upTo(int((most-least)/step)+1))
}

// one returns one of the values.
func one[T any](d *draw, of ...T) T { return of[d.upTo(len(of))] }

// An ids gives the ids of a plan under construction.
type ids struct{ counters plan.Counters }

func (g *ids) next(l plan.Letter) (id string) {
	id, g.counters = g.counters.Next(l)
	return id
}
