package drawing

import (
	"math"
	"strconv"
)

// appendNumber appends x with at most so many decimals (0 to 3), without trailing
// zeros, so that goldens do not depend on the last bits. What is not finite is 0: a
// picture must open whatever happened before.
func appendNumber(dst []byte, x float64, decimals int) []byte {
	scale := [...]float64{1, 10, 100, 1000}[decimals]
	return appendScaled(dst, quantum(x, scale), decimals)
}

// quantum returns x in whole parts of 1/scale, halves away from zero.
func quantum(x, scale float64) int64 {
	if math.IsNaN(x) || math.Abs(x) > 1e12 {
		return 0
	}
	return int64(math.Round(float64(x * scale)))
}

// appendScaled appends n/10^decimals.
func appendScaled(dst []byte, n int64, decimals int) []byte {
	if n < 0 {
		dst, n = append(dst, '-'), -n
	}
	div := [...]int64{1, 10, 100, 1000}[decimals]
	whole, rest := n/div, n%div
	if whole != 0 || rest == 0 {
		dst = strconv.AppendInt(dst, whole, 10)
	}
	if rest == 0 {
		return dst
	}
	dst = append(dst, '.')
	for div /= 10; rest > 0; div /= 10 {
		dst = append(dst, byte('0'+rest/div))
		rest %= div
	}
	return dst
}
