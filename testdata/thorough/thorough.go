// Package thorough tells tests how much to try: few cases every day, and all where THOROUGH
// is set, as before a release.
package thorough

import (
	"flag"
	"math/rand/v2"
	"os"
	"strconv"

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

// Seed is what random cases are drawn by: RAPID_SEED, as package rapid has it; where that is 0 or none, another each time.
func Seed() uint64 {
	if seed, err := strconv.ParseUint(os.Getenv("RAPID_SEED"), 10, 64); err == nil && seed != 0 {
		return seed
	}
	return rand.Uint64()
}
