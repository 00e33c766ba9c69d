package store

import (
	"encoding/binary"
	"fmt"
	"math"
	"math/cmplx"
)

// packed is what a value takes in bytes: its real and its imaginary part in single precision.
const packed = 8

// Pack writes values as pairs of IEEE 754 binary32, the least byte first, and rounds them to
// what Unpack will read: so they are the same to the bit in the run that computes them and in
// those that read them. A part keeps 24 bits, 6e-8 of itself, from 1.2e-38 up; smaller ones
// keep less, to 7e-46. It is an error where a part is no number or above 3.4e38; values then
// stay as they are.
func Pack(values []complex128) ([]byte, error) {
	for i, v := range values {
		if w := complex128(complex64(v)); cmplx.IsInf(w) || cmplx.IsNaN(w) {
			return nil, fmt.Errorf("value %d of %d, %v, cannot be kept in single precision", i, len(values), v)
		}
	}
	out := make([]byte, 0, packed*len(values))
	for i, v := range values {
		single := complex64(v)
		values[i] = complex128(single)
		out = binary.LittleEndian.AppendUint32(out, math.Float32bits(real(single)))
		out = binary.LittleEndian.AppendUint32(out, math.Float32bits(imag(single)))
	}
	return out, nil
}

// Unpack reads what Pack wrote. It is an error where that is not a whole number of values.
func Unpack(data []byte) ([]complex128, error) {
	if len(data)%packed != 0 {
		return nil, fmt.Errorf("%d bytes are not a whole number of values of %d bytes", len(data), packed)
	}
	out := make([]complex128, len(data)/packed)
	for i := range out {
		re := math.Float32frombits(binary.LittleEndian.Uint32(data[packed*i:]))
		im := math.Float32frombits(binary.LittleEndian.Uint32(data[packed*i+packed/2:]))
		out[i] = complex(float64(re), float64(im))
	}
	return out, nil
}
