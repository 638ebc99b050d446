package beam

// A skyline is a symmetric matrix of which each column is kept from its first element that
// is not 0 down to the diagonal, and after factor its parts L D Lᵀ in the same place
// (K.-J. Bathe, E. L. Wilson, Numerical Methods in Finite Element Analysis, 1976, ch. 7).
type skyline struct {
	top    []int // row of the first element of each column
	start  []int // where the column begins in values
	values []float64
}

// skylineOf returns a matrix of zeros whose columns begin at the rows top.
func skylineOf(top []int) *skyline {
	s := &skyline{top: top, start: make([]int, len(top)+1)}
	for j, i := range top {
		s.start[j+1] = s.start[j] + j - i + 1
	}
	s.values = make([]float64, s.start[len(top)])
	return s
}

// at returns where the element of row i and column j >= i stands.
func (s *skyline) at(i, j int) *float64 { return &s.values[s.start[j]+i-s.top[j]] }

// column returns what is kept of column j.
func (s *skyline) column(j int) []float64 { return s.values[s.start[j]:s.start[j+1]] }

// leastPivot is the part of a diagonal element that must be left of it while factoring. A
// mechanism leaves rounding, some 1e-16 of it times the number of steps; a slender frame
// held well leaves 1e-8 and more.
const leastPivot = 1e-11

// factor turns the matrix into L D Lᵀ. It returns the first column whose pivot vanishes,
// with the columns before it done, or -1.
func (s *skyline) factor() int {
	for j := range s.top {
		full := *s.at(j, j)
		s.reduce(j)
		if pivot := *s.at(j, j); !(pivot > full*leastPivot) {
			return j
		}
	}
	return -1
}

// reduce finishes column j, from those before it.
func (s *skyline) reduce(j int) {
	top, column := s.top[j], s.column(j)
	for i := top + 1; i < j; i++ {
		from := max(top, s.top[i])
		a := s.column(i)[from-s.top[i] : i-s.top[i]]
		column[i-top] -= product(a, column[from-top:i-top])
	}
	pivot := &column[j-top]
	for i := top; i < j; i++ {
		share := column[i-top] / *s.at(i, i)
		*pivot -= float64(share * column[i-top])
		column[i-top] = share
	}
}

// product returns the sum of the products, in order.
func product(a, b []float64) (sum float64) {
	b = b[:len(a)]
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}

// solve turns the right side into the solution, for the first n rows.
func (s *skyline) solve(x []float64) {
	for j := range x {
		top := s.top[j]
		x[j] -= product(s.column(j)[:j-top], x[top:j])
	}
	for j := range x {
		x[j] /= *s.at(j, j)
	}
	s.back(x)
}

// back solves Lᵀ x = x.
func (s *skyline) back(x []float64) {
	for j := len(x) - 1; j >= 0; j-- {
		top := s.top[j]
		for i, v := range s.column(j)[:j-top] {
			x[top+i] -= float64(v * x[j])
		}
	}
}
