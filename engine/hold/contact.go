package hold

import "slices"

// Where a module leans on the wall is not known beforehand: a back edge can push, never
// pull. The frame has a spring k at every touch, both ways. A touch that would pull is let
// go by pushing its place with the force p that its spring pulls with: with d the way that
// the touches move off the wall under the loads, and F what each moves by when another is
// pushed with 1 N, the touches that are let go have
//
//	(1/k − F) p = d    with p ≥ 0,
//
// and those that bear have p = 0 and d + F p ≤ 0; they bear with −k (d + F p).

// mostRounds bounds the search: each round takes in or drops what is wrong, and a state
// that comes back ends it.
const mostRounds = 400

// blockRounds is how many of them change whole sets.
const blockRounds = 20

// Undecided says that no state of contact between module and wall was found that agrees
// with itself.
type Undecided struct{}

// Error says so.
func (*Undecided) Error() string { return "no state of contact with the wall agrees with itself" }

// lean returns the pushes p that let go of the touches that would pull, for the motions
// away, and whether they were found. First whole sets are changed at once; where that goes
// in circles, or lets go of so many that nothing holds the rest, one at a time from all of
// them bearing, the least in number first, which cannot go in circles (K. G. Murty, Linear
// Complementarity, 1988, ch. 3).
func lean(flex [][]float64, away []float64) (pushes []float64, err error) {
	free := make([]bool, len(away))
	for i := range away {
		free[i] = away[i] > 0
	}
	if pushes = settled(flex, away, free, blockRounds, len(away)); pushes != nil {
		return pushes, nil
	}
	clear(free)
	if pushes = settled(flex, away, free, mostRounds, 1); pushes != nil {
		return pushes, nil
	}
	return nil, &Undecided{}
}

// settled changes up to so many touches a round until none is wrong. It returns nil where
// the rounds do not suffice or nothing holds what is left.
func settled(flex [][]float64, away []float64, free []bool, rounds, most int) []float64 {
	for range rounds {
		pushes := letGo(flex, away, free)
		if pushes == nil {
			return nil
		}
		wrong := disagrees(flex, away, free, pushes)
		if len(wrong) == 0 {
			return pushes
		}
		for _, i := range wrong[:min(most, len(wrong))] {
			free[i] = !free[i]
		}
	}
	return nil
}

// leastPivot is the part of a spring's give below which what is left of the module hangs
// on nothing.
const leastPivot = 1e-13

// noForce and noWay are what counts as nothing, N and mm.
const (
	noForce = 1e-6
	noWay   = 1e-9
)

// disagrees lists the touches that were let go though they bear, or bear though they pull.
func disagrees(flex [][]float64, away []float64, free []bool, pushes []float64) (wrong []int) {
	for i := range away {
		if free[i] {
			if pushes[i] < -noForce {
				wrong = append(wrong, i)
			}
			continue
		}
		moved := away[i]
		for j, p := range pushes {
			moved += float64(flex[i][j] * p)
		}
		if moved > noWay {
			wrong = append(wrong, i)
		}
	}
	return wrong
}

// letGo solves for the pushes of the touches that are free, by elimination: their matrix is
// symmetric, and positive while what is left holds the module.
func letGo(flex [][]float64, away []float64, free []bool) []float64 {
	var at []int
	for i, on := range free {
		if on {
			at = append(at, i)
		}
	}
	n := len(at)
	rows := make([][]float64, n)
	for a, i := range at {
		rows[a] = make([]float64, n+1)
		for b, j := range at {
			rows[a][b] = -flex[i][j]
		}
		rows[a][a] += 1 / TouchStiffness
		rows[a][n] = away[i]
	}
	if !eliminate(rows) {
		return nil
	}
	out := make([]float64, len(away))
	for a, i := range at {
		out[i] = rows[a][n]
	}
	return out
}

// eliminate solves rows, a square matrix with its right side as last column, and leaves the
// solution there. It returns false where a pivot vanishes.
func eliminate(rows [][]float64) bool {
	n := len(rows)
	for k := range n {
		if !(rows[k][k] > leastPivot/TouchStiffness) {
			return false
		}
		for i := k + 1; i < n; i++ {
			f := rows[i][k] / rows[k][k]
			for j := k; j <= n && f != 0; j++ {
				rows[i][j] -= float64(f * rows[k][j])
			}
		}
	}
	for i := range slices.Backward(rows) {
		for j := i + 1; j < n; j++ {
			rows[i][n] -= float64(rows[i][j] * rows[j][n])
		}
		rows[i][n] /= rows[i][i]
	}
	return true
}
