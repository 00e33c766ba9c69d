package radiate

import "pappus/testdata/thorough"

func init() { thorough.Random() }
