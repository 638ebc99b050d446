package drawing

// Value noise: a hash gives every whole number a value, and a smooth step goes from
// one to the next (the usual construction: K. Perlin, An image synthesizer, SIGGRAPH
// 1985, with values in place of gradients). Whole-number hashing makes the same plank
// on every machine.

// hash mixes a seed and a number into 64 bits (the finaliser of splitmix64: Steele,
// Lea and Flood, Fast splittable pseudorandom number generators, 2014).
func hash(seed uint64, n int64) uint64 {
	z := seed + uint64(n)*0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// unit returns a number in [0, 1) for a seed and a number.
func unit(seed uint64, n int64) float64 {
	return float64(hash(seed, n)>>11) / (1 << 53)
}

// noise returns a smooth value in [−1, 1] at x, changing over a length of 1.
func noise(seed uint64, x float64) float64 {
	i := int64(x)
	if float64(i) > x {
		i--
	}
	f := x - float64(i)
	s := float64(float64(f*f) * (3 - float64(2*f)))
	a, b := unit(seed, i), unit(seed, i+1)
	return 2*(a+float64(s*(b-a))) - 1
}
