package space

import "pappus/testdata/thorough"

func init() { thorough.Random() }
