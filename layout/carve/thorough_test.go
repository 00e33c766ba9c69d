package carve_test

import "pappus/testdata/thorough"

func init() { thorough.Random() }
