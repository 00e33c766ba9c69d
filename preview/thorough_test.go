package preview

import "pappus/testdata/thorough"

func init() { thorough.Random() }
