package shell_test

import (
	"flag"
	"os"

	_ "pgregory.net/rapid" // has the flag
)

// Random runs are few, unless THOROUGH is set.
func init() {
	if os.Getenv("THOROUGH") == "" {
		if err := flag.Set("rapid.checks", "25"); err != nil {
			panic(err)
		}
	}
}
