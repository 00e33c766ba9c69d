package spread

import "pappus/testdata/thorough"

func init() { thorough.Random() }
