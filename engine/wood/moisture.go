package wood

// Wood left in air of one temperature and humidity long enough comes to one moisture
// content, its equilibrium. For the relative humidity h as a part of 1, in percent of the
// ovendry mass:
//
//	M = 1800/W (K h/(1 − K h) + (K₁ K h + 2 K₁ K₂ K² h²)/(1 + K₁ K h + K₁ K₂ K² h²))
//
// Wood Handbook, FPL-GTR-190 (2010), eq. 4-5 (Simpson 1973), from which its table 4-2 was
// worked out. W, K, K₁ and K₂ are quadratics of the temperature, printed for degrees Celsius
// and for Fahrenheit; the two sets differ in the third digit of M. All woods count as one,
// and wood that is drying out as wood that is taking water up: real boards differ by a
// percent or two. Above about 50 °C, in a kiln, the equation is a few tenths too high.

// A sorption is one set of coefficients: each row a + b T + c T².
type sorption struct{ w, k, k1, k2 [3]float64 }

func celsius() sorption {
	return sorption{
		w:  [3]float64{349, 1.29, 0.0135},
		k:  [3]float64{0.805, 0.000736, -0.00000273},
		k1: [3]float64{6.27, -0.00938, -0.000303},
		k2: [3]float64{1.91, 0.0407, -0.000293},
	}
}

func fahrenheit() sorption {
	return sorption{
		w:  [3]float64{330, 0.452, 0.00415},
		k:  [3]float64{0.791, 0.000463, -0.000000844},
		k1: [3]float64{6.34, 0.000775, -0.0000935},
		k2: [3]float64{1.09, 0.0284, -0.0000904},
	}
}

// Range of temperature in which the equation holds: that of table 4-2 and of kilns.
const (
	coldest, hottest   = -2, 130 // °C
	coldestF, hottestF = 28, 266 // °F
)

// Equilibrium returns the moisture content in percent to which wood comes in air of a
// temperature in °C and a relative humidity from 0 to less than 1. It is false outside
// −2 to 130 °C and outside that humidity.
func Equilibrium(temperature, humidity float64) (mc float64, ok bool) {
	if !(temperature >= coldest && temperature <= hottest && humidity >= 0 && humidity < 1) {
		return 0, false
	}
	return celsius().at(temperature, humidity), true
}

// EquilibriumF is [Equilibrium] for a temperature in °F, with the coefficients printed for
// that. It is false outside 28 to 266 °F.
func EquilibriumF(temperature, humidity float64) (mc float64, ok bool) {
	if !(temperature >= coldestF && temperature <= hottestF && humidity >= 0 && humidity < 1) {
		return 0, false
	}
	return fahrenheit().at(temperature, humidity), true
}

// halvings of the humidity from 0 to 1 leave less than 1e-15 of it.
const halvings = 50

// Humidity returns the relative humidity, as a part of 1, of air in which wood comes to mc
// percent of moisture at a temperature in °C: the inverse of [Equilibrium]. It is false where
// there is none: below 0 %, or more than air of nearly 1 gives.
func Humidity(temperature, mc float64) (humidity float64, ok bool) {
	if !(temperature >= coldest && temperature <= hottest && mc >= 0) {
		return 0, false
	}
	s := celsius()
	low, high := 0.0, 1.0
	if mc >= s.at(temperature, high) {
		return 0, false
	}
	for range halvings {
		middle := (low + high) / 2
		if s.at(temperature, middle) > mc {
			high = middle
		} else {
			low = middle
		}
	}
	return low, true
}

// at is the equation.
func (s sorption) at(t, h float64) float64 {
	w, k1, k2 := quadratic(s.w, t), quadratic(s.k1, t), quadratic(s.k2, t)
	kh := quadratic(s.k, t) * h
	one, two := float64(k1*kh), float64(k1*k2)*float64(kh*kh)
	return 1800 / w * (kh/(1-kh) + (one+2*two)/(1+one+two))
}

// quadratic returns c[0] + c[1] x + c[2] x².
func quadratic(c [3]float64, x float64) float64 {
	return c[0] + float64(x*(c[1]+float64(x*c[2])))
}
