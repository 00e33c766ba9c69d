package store_test

import (
	"testing"

	"pappus/timing/store"
)

// made are as many values as a body of 40 drivers at 40 frequencies has, with orders to 25.
func made() []complex128 {
	out := make([]complex128, 40*40*26*26)
	for i := range out {
		out[i] = complex(1/float64(i+1), float64(i))
	}
	return out
}

func BenchmarkPut(b *testing.B) {
	s := store.Store{Folder: b.TempDir()}
	values := made()
	b.ReportAllocs()
	for b.Loop() {
		data, err := store.Pack(values)
		if err != nil {
			b.Fatal(err)
		}
		if err := s.Put(key("a"), data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkGet(b *testing.B) {
	s := store.Store{Folder: b.TempDir()}
	data, err := store.Pack(made())
	if err != nil {
		b.Fatal(err)
	}
	if err := s.Put(key("a"), data); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		data, there := s.Get(key("a"))
		if !there {
			b.Fatal("not there")
		}
		if _, err := store.Unpack(data); err != nil {
			b.Fatal(err)
		}
	}
}
