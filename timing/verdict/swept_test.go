package verdict

import (
	"testing"

	"pappus/testdata/trialtable"
)

// swept are constants that sweeps.csv has at other places, too.
var swept = map[string]float64{
	"foreign": foreign, "quiet": quiet, "alike": alike, "clean": clean, "mostScatter": mostScatter, "better": better, "likeRest": likeRest, "inTime": inTime, "reach": reach, "elsewhere": elsewhere, "otherUneven": otherUneven, "otherBetter": otherBetter, "mostInTime": mostInTime, "fewInTime": fewInTime, "same": same, "planApart": planApart, "wireApart": wireApart, "costResidual": costResidual, "costSaved": costSaved, "costLeft": costLeft, "least": least, "few": float64(few), "looks": float64(looks), "bodyLevel": bodyLevel, "bodyOctave": bodyOctave, "bodyAll": bodyAll, "bodyLate": bodyLate,
}

// TestSwept: none of them is better at another place, beyond chance.
func TestSwept(t *testing.T) { trialtable.Swept(t, "sweeps.csv", swept) }
