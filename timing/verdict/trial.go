package verdict

import (
	_ "embed"
	"sync"

	"pappus/timing/trial"
)

// Misnamed is what a row of the Trial counts of faults of which something else was said.
const Misnamed = "named otherwise"

//go:embed trial.csv
var trialText string

// Trial returns what became of made-up loudspeakers whose faults are known (package rehearsal): by the
// words for their kinds (rehearsal.Kind) what was missed, and by a Code how often that was said of
// what has no fault.
var Trial = sync.OnceValue(func() trial.Table { return trial.Embedded(trialText) })
