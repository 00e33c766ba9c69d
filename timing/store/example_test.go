package store_test

import (
	"fmt"
	"os"

	"pappus/timing/store"
)

func ExampleStore() {
	folder, err := os.MkdirTemp("", "example")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)

	s := store.Store{Folder: folder}
	key := store.KeyOf("thirds", 1, []byte("what 1/3 is made of"))
	for range 2 {
		data, there := s.Get(key)
		if !there {
			values := []complex128{1. / 3}
			if data, err = store.Pack(values); err != nil {
				fmt.Println(err)
				return
			}
			_ = s.Put(key, data) // where it cannot be kept, it is computed again
			fmt.Println("computed", values)
			continue
		}
		values, err := store.Unpack(data)
		fmt.Println("read", values, err)
	}
	// Output:
	// computed [(0.3333333432674408+0i)]
	// read [(0.3333333432674408+0i)] <nil>
}
