// Package rank sorts. It does what slices.SortStableFunc does, with one routine for all
// kinds of things: that one is compiled anew for every kind, at 4 kB a piece in the
// page's program.
//
// What is sorted are places, by insertion and merging; the things move once, in the end.
package rank

import "cmp"

// By sorts things by a comparison and leaves those that it calls equal as they stand.
func By[E any](s []E, compare func(a, b E) int) {
	var near [16]int
	order := near[:]
	if len(s) > len(near) {
		order = make([]int, len(s))
	}
	order = order[:len(s)]
	if !places(order, func(i, j int) int { return compare(s[i], s[j]) }) {
		return
	}
	for i := range order {
		// A ring of places hands its things on, each to the one before.
		first, k := s[i], i
		for order[k] != i {
			next := order[k]
			s[k], order[k], k = s[next], k, next
		}
		s[k], order[k] = first, k
	}
}

// Up sorts numbers or texts, the least first.
func Up[E cmp.Ordered](s []E) { By(s, cmp.Compare) }

// places fills an order with the places 0 to n-1 as they are to stand, and tells whether
// any is to move.
func places(order []int, compare func(i, j int) int) (moved bool) {
	for i := range order {
		order[i] = i
		moved = moved || i > 0 && compare(i-1, i) > 0
	}
	if moved {
		var spare []int
		if len(order) > few {
			spare = make([]int, len(order))
		}
		merge(order, spare, compare)
	}
	return moved
}

// few are sorted by insertion.
const few = 12

// merge sorts each half and then both into one.
func merge(order, spare []int, compare func(i, j int) int) {
	if len(order) <= few {
		insert(order, compare)
		return
	}
	half := len(order) / 2
	merge(order[:half], spare, compare)
	merge(order[half:], spare, compare)
	left, right := spare[:copy(spare, order[:half])], order[half:]
	for k := range order {
		if len(left) == 0 {
			return // the rest of the right stands where it belongs
		}
		if len(right) > 0 && compare(right[0], left[0]) < 0 {
			order[k], right = right[0], right[1:]
		} else {
			order[k], left = left[0], left[1:]
		}
	}
}

func insert(order []int, compare func(i, j int) int) {
	for n := 1; n < len(order); n++ {
		x, k := order[n], n
		for ; k > 0 && compare(x, order[k-1]) < 0; k-- {
			order[k] = order[k-1]
		}
		order[k] = x
	}
}
