package damping

import (
	_ "embed"

	"pappus/timing/trial"
)

//go:embed trials.csv
var trials string

// Rows of the table.
const (
	AnyChange   = "a change"
	LargeChange = "a change by over 20 percent"
	InSix       = "the target in six trials"
	WrongWay    = "said the wrong way"
)

// Trials returns what became of made-up bodies whose truth is known: how often a change was
// taken for scatter, or scatter for a change, and how often what is proposed led to the target.
func Trials() trial.Table { return trial.Embedded(trials) }
