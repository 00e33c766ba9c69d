package store_test

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/timing/store"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// TestPackBytes: the bytes are those that IEEE 754 says, the least first.
func TestPackBytes(t *testing.T) {
	got, err := store.Pack([]complex128{complex(1, -2), complex(0, 0.1)})
	want := []byte{0, 0, 0x80, 0x3f, 0, 0, 0, 0xc0, 0, 0, 0, 0, 0xcd, 0xcc, 0xcc, 0x3d}
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Errorf("%v, %s", err, diff)
	}
}

// TestPackRounds: after Pack values are what Unpack reads, within half a step of what they were.
func TestPackRounds(t *testing.T) {
	part := rapid.Float64Range(-3.4e38, 3.4e38)
	rapid.Check(t, func(t *rapid.T) {
		var before []complex128
		for range rapid.IntRange(0, 20).Draw(t, "count") {
			before = append(before, complex(part.Draw(t, "real"), part.Draw(t, "imaginary")))
		}
		after := slices.Clone(before)
		data, err := store.Pack(after)
		if err != nil {
			t.Fatal(err)
		}
		read, err := store.Unpack(data)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(after, read, cmpopts.EquateEmpty()); diff != "" {
			t.Error(diff)
		}
		for i, v := range before {
			for _, d := range [][2]float64{{real(v), real(read[i])}, {imag(v), imag(read[i])}} {
				if math.Abs(d[0]-d[1]) > max(0x1p-24*math.Abs(d[0]), 0x1p-150) {
					t.Errorf("%v became %v", d[0], d[1])
				}
			}
		}
	})
}

// TestPackRefuses: what single precision does not hold is an error, and nothing is rounded.
func TestPackRefuses(t *testing.T) {
	for _, v := range []complex128{cmplx.NaN(), cmplx.Inf(), complex(3.5e38, 0), complex(0, -1e300), complex(math.NaN(), 1)} {
		values := []complex128{0.1, v}
		if data, err := store.Pack(values); err == nil || data != nil || values[0] != 0.1 {
			t.Errorf("%v: %v, %v, %v", v, data, values, err)
		}
	}
}

// TestUnpackRefuses: bytes that are not a whole number of values are an error.
func TestUnpackRefuses(t *testing.T) {
	for n := range 17 {
		values, err := store.Unpack(make([]byte, n))
		if whole := n%8 == 0; whole != (err == nil) || whole && len(values) != n/8 {
			t.Errorf("%d bytes: %v, %v", n, values, err)
		}
	}
}
