package store

import (
	"bytes"
	"testing"

	"pappus/testdata/drawn"
)

// FuzzUnseal: no entry is taken for whole but one that was sealed with its key.
func FuzzUnseal(f *testing.F) {
	key := KeyOf("fuzz", 1, nil)
	whole, other := seal(key, []byte("what took minutes")), seal(KeyOf("fuzz", 2, nil), []byte("what took minutes"))
	drawn.Bytes(f, []string{"", string(whole), string(whole[:40]), string(other)}, func(t testing.TB, data []byte) {
		got, ok := unseal(key, data)
		if ok && !bytes.Equal(seal(key, got), data) {
			t.Fatalf("%q is taken for whole", data)
		}
		if _, err := Unpack(data); (err == nil) != (len(data)%packed == 0) {
			t.Fatalf("%d bytes: %v", len(data), err)
		}
	})
}
