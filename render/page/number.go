package page

import (
	"math"
	"strconv"
)

// number is a value with so many places after the point; null where it is none.
type number struct {
	value  float64
	places int
}

func (n number) MarshalJSON() ([]byte, error) { return appendNumber(nil, n.value, n.places), nil }

// numbers are values with so many places each. Infinity, where it is allowed,
// stands for most.
type numbers struct {
	values []float64
	scale  float64 // from SI to the unit that is written
	places int
	most   float64 // what +Inf is written as; 0: null
}

func (n numbers) MarshalJSON() ([]byte, error) {
	out := make([]byte, 0, 8*len(n.values)+2)
	out = append(out, '[')
	for i, v := range n.values {
		if i > 0 {
			out = append(out, ',')
		}
		if n.most > 0 && math.IsInf(v, 1) {
			v = n.most / n.scale
		}
		out = appendNumber(out, v*n.scale, n.places)
	}
	return append(out, ']'), nil
}

// appendNumber appends a number without needless zeros.
func appendNumber(dst []byte, v float64, places int) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return append(dst, "null"...)
	}
	start := len(dst)
	dst = strconv.AppendFloat(dst, v, 'f', places, 64)
	if places > 0 {
		for dst[len(dst)-1] == '0' {
			dst = dst[:len(dst)-1]
		}
		if dst[len(dst)-1] == '.' {
			dst = dst[:len(dst)-1]
		}
	}
	if string(dst[start:]) == "-0" {
		dst = append(dst[:start], '0')
	}
	return dst
}
