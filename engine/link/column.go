package link

import (
	"encoding/binary"

	"ledgewright/engine/unit"
)

// A column holds the values of one member of all things of a kind, one after the other:
// all lengths of boards, all turns of corners. Alike stands beside alike, and deflate
// finds it.
//
// A column of zeros, or of nothing, has no bytes. Every other begins with a byte
//
//	way + 4·step
//
// and then holds varints (encoding/binary): each value as it is, or its difference from
// the one before, or one value for all. A value v that is a whole number k of steps is
// written 1 + zigzag(k). Any other is written 0, zigzag(v). The steps stand in a list
// that depends on the kind of the column.
type way byte

const (
	plain way = iota
	difference
	constant
	ways = 3
)

// lengthSteps are the steps of lengths, the first the plan's own.
func lengthSteps(own unit.Length) []int64 {
	return []int64{int64(own), int64(own+1) / 2, int64(unit.Millimetre), 5 * int64(unit.Millimetre),
		10 * int64(unit.Millimetre), int64(unit.Inch) / 16, int64(unit.Inch) / 64, 1}
}

// angleSteps are the steps of angles.
func angleSteps() []int64 {
	return []int64{int64(unit.QuarterTurn), 60 * int64(unit.Degree), 45 * int64(unit.Degree), 15 * int64(unit.Degree),
		int64(unit.Degree), int64(unit.Degree) / 2, 1}
}

// wholeSteps are the steps of plain numbers.
func wholeSteps() []int64 { return []int64{1} }

// appendColumn appends the shortest form of a column, its size first.
func appendColumn(dst []byte, values, steps []int64) []byte {
	var best []byte
	if !allZero(values) {
		for i, step := range steps {
			for w := range ways {
				form := appendForm([]byte{byte(w) + 4*byte(i)}, values, step, way(w))
				if form != nil && (best == nil || len(form) < len(best)) {
					best = form
				}
			}
		}
	}
	dst = binary.AppendUvarint(dst, uint64(len(best)))
	return append(dst, best...)
}

func allZero(values []int64) bool {
	for _, v := range values {
		if v != 0 {
			return false
		}
	}
	return true
}

// appendForm appends values in one form, or returns nil when they have none.
func appendForm(dst []byte, values []int64, step int64, w way) []byte {
	last := int64(0)
	for i, v := range values {
		switch w {
		case difference:
			dst = appendValue(dst, v-last, step)
			last = v
		case constant:
			if v != values[0] {
				return nil
			}
			if i > 0 {
				continue
			}
			fallthrough
		default:
			dst = appendValue(dst, v, step)
		}
	}
	return dst
}

func appendValue(dst []byte, v, step int64) []byte {
	if v%step == 0 {
		return binary.AppendUvarint(dst, 1+zigzag(v/step))
	}
	return binary.AppendUvarint(append(dst, 0), zigzag(v))
}

// zigzag puts the numbers in the order 0, −1, 1, −2, 2, so that small ones stay short.
func zigzag(v int64) uint64 { return uint64(v<<1) ^ uint64(v>>63) }

func unzigzag(u uint64) int64 { return int64(u>>1) ^ -int64(u&1) }

// A column that is read gives its values one by one.
type column struct {
	bytes []byte
	step  int64
	way   way
	last  int64
	begun bool
}

// readColumn takes one column off the front of src.
func readColumn(src []byte, steps []int64) (c column, rest []byte, ok bool) {
	size, n := binary.Uvarint(src)
	if n <= 0 || size > uint64(len(src)-n) {
		return c, nil, false
	}
	c.bytes, rest = src[n:n+int(size)], src[n+int(size):]
	if size == 0 {
		c.way, c.begun = constant, true
		return c, rest, true
	}
	form := c.bytes[0]
	c.bytes, c.way = c.bytes[1:], way(form%4)
	if c.way >= ways || int(form/4) >= len(steps) {
		return c, nil, false
	}
	c.step = steps[form/4]
	return c, rest, true
}

// next returns the next value.
func (c *column) next() (int64, bool) {
	if c.way == constant && c.begun {
		return c.last, true
	}
	v, ok := c.value()
	if c.way == difference {
		v += c.last
	}
	c.last, c.begun = v, true
	return v, ok
}

func (c *column) value() (int64, bool) {
	u, ok := c.varint()
	if u > 0 {
		k := unzigzag(u - 1)
		return k * c.step, ok && k*c.step/c.step == k
	}
	u, more := c.varint()
	return unzigzag(u), ok && more
}

func (c *column) varint() (uint64, bool) {
	u, n := binary.Uvarint(c.bytes)
	if n <= 0 {
		return 0, false
	}
	c.bytes = c.bytes[n:]
	return u, true
}

// done reports whether nothing is left.
func (c *column) done() bool { return len(c.bytes) == 0 && c.begun }
