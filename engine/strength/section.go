package strength

import "math"

// RectangleTorsion returns the torsion constant J of a rectangle of the sides a and b, by
// Saint-Venant's series (S. Timoshenko, J. Goodier, Theory of Elasticity, 1951, art. 109).
func RectangleTorsion(a, b float64) float64 {
	h, b := max(a, b), min(a, b) // h ≥ b
	sum := 0.0
	for n := 1.0; n < 200; n += 2 {
		sum += tanh(n*math.Pi*h/(2*b)) / (n * n * n * n * n)
	}
	return h * b * b * b / 3 * (1 - 192*b/(pi5*h)*sum)
}

const pi5 = math.Pi * math.Pi * math.Pi * math.Pi * math.Pi

// tanh returns the hyperbolic tangent of x > 0, the same on every machine.
func tanh(x float64) float64 {
	if x > 20 {
		return 1
	}
	e := power(math.E, 2*x)
	return (e - 1) / (e + 1)
}
