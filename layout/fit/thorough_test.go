package fit

import "pappus/testdata/thorough"

func init() { thorough.Random() }
