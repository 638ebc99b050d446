package solid

import "math"

// A Vec is a place or a direction in a board's frame, in millimetres.
type Vec struct{ U, V, W float64 }

// Dot is the scalar product.
func (a Vec) Dot(b Vec) float64 {
	return float64(a.U*b.U) + float64(a.V*b.V) + float64(a.W*b.W)
}

// Cross is the vector product.
func (a Vec) Cross(b Vec) Vec {
	return Vec{
		float64(a.V*b.W) - float64(a.W*b.V),
		float64(a.W*b.U) - float64(a.U*b.W),
		float64(a.U*b.V) - float64(a.V*b.U),
	}
}

// Add is a + k·b.
func (a Vec) Add(b Vec, k float64) Vec {
	return Vec{a.U + float64(k*b.U), a.V + float64(k*b.V), a.W + float64(k*b.W)}
}

// Sub is a − b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.U - b.U, a.V - b.V, a.W - b.W} }

// Size is the length of a.
func (a Vec) Size() float64 { return math.Sqrt(a.Dot(a)) }

func (a Vec) scaled(k float64) Vec { return Vec{a.U * k, a.V * k, a.W * k} }

func (a Vec) unit() Vec { return a.scaled(1 / a.Size()) }

func least(a, b Vec) Vec    { return Vec{min(a.U, b.U), min(a.V, b.V), min(a.W, b.W)} }
func greatest(a, b Vec) Vec { return Vec{max(a.U, b.U), max(a.V, b.V), max(a.W, b.W)} }
