package outdir_test

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"pappus/render/outdir"
)

func Example() {
	base, err := os.MkdirTemp("", "example")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(base)

	dir, err := outdir.Open(context.Background(), filepath.Join(base, "plan"), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	defer dir.Abort() // does nothing once committed
	err = dir.Add("delays.csv", func(w io.Writer) error {
		_, err := fmt.Fprintln(w, "id,delay_us")
		return err
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(dir.Commit())
	// Output: <nil>
}
