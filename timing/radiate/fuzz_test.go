package radiate

import (
	"testing"

	"pappus/timing/boundary"

	"pappus/testdata/drawn"
)

// FuzzUnpack: what is kept of a solved body gives a table that can be looked up in, or an error.
func FuzzUnpack(f *testing.F) {
	t := &boundary.Table{Step: 2, Reach: 0.1, Degree: []int{0, 1, 1}, Off: []float64{0, 0.01, 0.02}}
	for _, degree := range t.Degree {
		row := make([][]complex64, 2)
		for i := range row {
			row[i] = make([]complex64, boundary.Wide(degree))
		}
		t.Waves = append(t.Waves, row)
	}
	whole, err := pack(t)
	if err != nil {
		f.Fatal(err)
	}
	drawn.Bytes(f, []string{"", string(whole), string(whole[:len(whole)/2])}, func(t testing.TB, data []byte) {
		got, err := unpack(data)
		if err != nil {
			return
		}
		if len(got.Waves) != len(got.Degree) || !(got.Top() > 0) {
			t.Fatalf("%d waves of %d, up to %g", len(got.Waves), len(got.Degree), got.Top())
		}
		for i, row := range got.Waves {
			for _, one := range row {
				if len(one) != boundary.Wide(got.Degree[i]) {
					t.Fatalf("%d waves of degree %d", len(one), got.Degree[i])
				}
			}
		}
	})
}
