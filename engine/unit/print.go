package unit

import "strconv"

// Decimal returns l in millimetres as a decimal of at most six places, exactly and
// without a unit: "292.1". It is how a length stands in a document. ([ParseDecimal]
// is the way back.)
func (l Length) Decimal() string { return string(l.AppendDecimal(nil)) }

// AppendDecimal appends [Length.Decimal] to dst.
func (l Length) AppendDecimal(dst []byte) []byte { return appendMillionths(dst, int64(l)) }

// String returns l exactly, in millimetres, with its unit.
func (l Length) String() string { return l.Decimal() + " mm" }

// Decimal returns a in degrees as a decimal of at most six places, exactly and
// without a unit: "22.5".
func (a Angle) Decimal() string { return string(a.AppendDecimal(nil)) }

// AppendDecimal appends [Angle.Decimal] to dst.
func (a Angle) AppendDecimal(dst []byte) []byte { return appendMillionths(dst, int64(a)) }

// String returns a exactly, in degrees, with its unit.
func (a Angle) String() string { return a.Decimal() + "°" }

// appendMillionths appends n millionths as a decimal without trailing zeros.
func appendMillionths(dst []byte, n int64) []byte {
	size := uint64(n)
	if n < 0 {
		dst, size = append(dst, '-'), -size
	}
	dst = strconv.AppendUint(dst, size/1_000_000, 10)
	rest := size % 1_000_000
	if rest == 0 {
		return dst
	}
	dst = append(dst, '.')
	for div := uint64(100_000); rest > 0; div /= 10 {
		dst = append(dst, byte('0'+rest/div))
		rest %= div
	}
	return dst
}
