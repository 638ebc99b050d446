package light

import "math"

// Chromaticity returns the place of a black body in the CIE 1931 diagram, for 1 667 to
// 25 000 K; beyond, that of the nearer end. Cubic splines of Kim and others, Design of
// advanced color temperature control system for HDTV applications, Journal of the Korean
// Physical Society 41 (2002), 865–871.
func Chromaticity(kelvin float64) (x, y float64) {
	t := min(max(kelvin, 1667), 25000) / 1000
	r := 1 / t
	if t <= 4 {
		x = cubic(r, 0.179910, 0.8776956, -0.2343589, -0.2661239)
	} else {
		x = cubic(r, 0.240390, 0.2226347, 2.1070379, -3.0258469)
	}
	switch {
	case t <= 2.222:
		y = cubic(x, -0.20219683, 2.18555832, -1.34811020, -1.1063814)
	case t <= 4:
		y = cubic(x, -0.16748867, 2.09137015, -1.37418593, -0.9549476)
	default:
		y = cubic(x, -0.37001483, 3.75112997, -5.87338670, 3.0817580)
	}
	return x, y
}

func cubic(x, a, b, c, d float64) float64 {
	return a + float64(x*(b+float64(x*(c+float64(x*d)))))
}

// Linear returns the colour of a black body in linear sRGB, its strongest part 1. What
// lies outside of what a screen can show is drawn in to its edge. IEC 61966-2-1 (1999),
// from XYZ.
func Linear(kelvin float64) [3]float64 {
	x, y := Chromaticity(kelvin)
	xx, zz := x/y, (1-x-y)/y
	c := [3]float64{
		float64(3.2406*xx) - 1.5372 - float64(0.4986*zz),
		float64(-0.9689*xx) + 1.8758 + float64(0.0415*zz),
		float64(0.0557*xx) - 0.2040 + float64(1.0570*zz),
	}
	top := max(c[0], c[1], c[2])
	for i := range c {
		c[i] = max(c[i], 0) / top
	}
	return c
}

// Colour returns the colour of a black body as sRGB, "#rrggbb".
func Colour(kelvin float64) string {
	const digits = "0123456789abcdef"
	out := [7]byte{'#'}
	for i, c := range Linear(kelvin) {
		n := int(math.Round(255 * encoded(c)))
		out[1+2*i], out[2+2*i] = digits[n>>4], digits[n&15]
	}
	return string(out[:])
}

// encoded is the curve of sRGB. The power 1/2.4 is 1/4 + 1/6, taken by roots: those are the
// same on every machine.
func encoded(c float64) float64 {
	if c <= 0.0031308 {
		return 12.92 * c
	}
	root := math.Sqrt(math.Sqrt(c)) * math.Sqrt(math.Cbrt(c))
	return float64(1.055*root) - 0.055
}
