// Package thorough tells tests how much to try: few cases every day, and all where THOROUGH
// is set, as the gate does.
package thorough

import (
	"flag"
	"os"

	_ "pgregory.net/rapid" // has the flag
)

// Set tells whether all is to be tried.
var Set = os.Getenv("THOROUGH") != ""

// Random has few random runs of a package's tests, unless THOROUGH is set.
func Random() {
	if Set {
		return
	}
	if err := flag.Set("rapid.checks", "25"); err != nil {
		panic(err) // rapid has no such flag any more
	}
}
