package recording_test

import "pappus/testdata/thorough"

func init() { thorough.Random() }
