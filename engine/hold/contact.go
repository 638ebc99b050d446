package hold

import "slices"

// Where a module leans on the wall is not known beforehand: a back edge can push, never
// pull. With d the way that the touches move off the wall under the loads alone, F what
// each moves by when another is pushed with 1 N, and k the stiffness of a touch, the forces
// r of those that act follow from
//
//	(F + 1/k) r = −d    with r ≥ 0 where it acts, and d + F r ≥ 0 where it does not.

// mostRounds bounds the search: each round takes in or drops what is wrong, and a state
// that comes back ends it.
const mostRounds = 60

// Undecided says that no state of contact between module and wall was found that agrees
// with itself.
type Undecided struct{}

// Error says so.
func (*Undecided) Error() string { return "no state of contact with the wall agrees with itself" }

// lean returns the forces of the touches for the motions away, and whether they were found.
// First whole sets are changed at once; where that goes in circles, one at a time, the
// least in number first, which cannot (K. G. Murty, Linear Complementarity, 1988, ch. 3).
func lean(flex [][]float64, away []float64) (forces []float64, err error) {
	acts := make([]bool, len(away))
	for round := range mostRounds {
		forces = push(flex, away, acts)
		if forces == nil {
			return nil, &Undecided{}
		}
		wrong := disagrees(flex, away, acts, forces)
		if len(wrong) == 0 {
			return forces, nil
		}
		if round >= mostRounds/3 {
			wrong = wrong[:1]
		}
		for _, i := range wrong {
			acts[i] = !acts[i]
		}
	}
	return nil, &Undecided{}
}

// noForce and noWay are what counts as nothing, N and mm.
const (
	noForce = 1e-9
	noWay   = 1e-12
)

// disagrees lists the touches that act though they would pull, or do not though they would
// move into the wall.
func disagrees(flex [][]float64, away []float64, acts []bool, forces []float64) (wrong []int) {
	for i := range away {
		if acts[i] {
			if forces[i] < -noForce {
				wrong = append(wrong, i)
			}
			continue
		}
		moved := away[i]
		for j, r := range forces {
			moved += float64(flex[i][j] * r)
		}
		if moved < -noWay {
			wrong = append(wrong, i)
		}
	}
	return wrong
}

// push solves for the forces of the touches that act, by elimination: their matrix is
// symmetric and positive.
func push(flex [][]float64, away []float64, acts []bool) []float64 {
	var at []int
	for i, on := range acts {
		if on {
			at = append(at, i)
		}
	}
	n := len(at)
	rows := make([][]float64, n)
	for a, i := range at {
		rows[a] = make([]float64, n+1)
		for b, j := range at {
			rows[a][b] = flex[i][j]
		}
		rows[a][a] += 1 / TouchStiffness
		rows[a][n] = -away[i]
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
		if !(rows[k][k] > 0) {
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
