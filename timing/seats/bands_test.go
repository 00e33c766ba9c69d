package seats_test

import (
	"math/rand/v2"
	"testing"

	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// TestOfBands: the losses in bands have all that figures tell.
func TestOfBands(t *testing.T) {
	frequency, thirds, ends := seats.Frequencies()
	random := rand.New(rand.NewPCG(3, 14))
	f := seats.Field{Frequency: frequency, Ends: ends, Drivers: 6, Weight: []float64{1, 0.5, 3}}
	for range f.Weight {
		p := make([]complex128, f.Drivers*len(frequency))
		for i := range p {
			p[i] = complex(random.NormFloat64(), random.NormFloat64())
		}
		f.Place = append(f.Place, p)
	}
	want := f.Judge([][]int{{0, 1, 2}, {3, 4, 5}}, nil, []float64{0, 1e-4})
	if diff := cmp.Diff(want, seats.OfBands(want.Band, thirds, f.Weight), cmpopts.EquateApprox(1e-12, 0)); diff != "" {
		t.Error(diff)
	}
}
